"""The plan of services and outlets over the deck's outline. Reads the pack alone."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.departments.power.words import ampere_words
from builder.layout import anchor_of
from builder.pack import Item, Pack, Section
from builder.render.plan import HAIR, PALE, Area, Element, Look, Mark, Note, Plan, plan_svg

LOOKS = {"deck": Look(width=1.8, fill=0.04), "wing": PALE, "obstruction": Look(width=1.0, fill=0.5)}
NEAR_M = 17.0
"""How far from the centre of the deck a mark may lie to be on the plan of the stage; the rest are told in words below it."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A mark on the plan with its words."""

    at: tuple[float, float]
    sign: str
    name: str
    second: str
    says: str
    anchor: str


def outlet_plan(section: Section, pack: Pack) -> tuple[str, str] | None:
    """The plan as SVG and in words; None where nothing has a position."""
    spots = [*service_spots(section, pack), *outlet_spots(section, pack)]
    near = [spot for spot in spots if is_near(spot.at)]
    if not near:
        return None
    says = in_words(near, [spot for spot in spots if not is_near(spot.at)])
    elements = [*outlines(pack), *(element for spot in near for element in drawn(spot))]
    return plan_svg(Plan("power-plan", "Services and outlets", says, tuple(elements), margin_m=1.6)), says


def is_near(at: tuple[float, float]) -> bool:
    """True where a place is on or about the stage."""
    return abs(at[0]) <= NEAR_M and -6 <= at[1] <= NEAR_M


def outlines(pack: Pack) -> Iterator[Element]:
    """The first deck, the wings and what is in the way, where the stage is described."""
    stage = pack.section("stage")
    decks = [outline for outline in stage.outlines if outline.kind == "deck"][:1] if stage else []
    others = [outline for outline in stage.outlines if outline.kind in ("wing", "obstruction")] if stage else []
    for outline in (*decks, *others):
        hanging = outline.kind == "obstruction" and max(x for x, _ in outline.corners) - min(x for x, _ in outline.corners) > 4
        if not hanging:
            yield Area(outline.corners, LOOKS.get(outline.kind, HAIR), says=outline.name)


def place_of(name: str, pack: Pack) -> tuple[float, float] | None:
    """The position of a named place of the stage."""
    stage = pack.section("stage")
    item = stage.item("place", name) if stage and name else None
    return position(item) if item else None


def position(item: Item) -> tuple[float, float] | None:
    """The position that an item states."""
    x, y = item.number("at.across"), item.number("at.depth")
    return (x, y) if x is not None and y is not None else None


def service_spots(section: Section, pack: Pack) -> Iterator[Spot]:
    """Supplies, generators and services that have a position of their own or a place."""
    for kind, sign in (("supply", "diamond"), ("generator", "ring"), ("service", "square")):
        for item in section.of_kind(kind):
            at = position(item) or place_of(item.text("place"), pack)
            if at:
                anchor = anchor_of(item.key)
                yield Spot(at, sign, item.name, item.text("rating") or item.text("site-rating"), f"{item.name}: free {ampere_words(item)}", anchor)


def outlet_spots(section: Section, pack: Pack) -> Iterator[Spot]:
    """One mark for each place that has outlets, with what is there."""
    places: dict[str, list[Item]] = {}
    for item in section.of_kind("available"):
        places.setdefault(item.text("place"), []).append(item)
    for name, items in places.items():
        at = place_of(name, pack)
        if at:
            there = [f"{item.text('there')} × {item.text('connector')}" for item in items]
            yield Spot(at, "circle", name, "; ".join(there), f"{name}: {'; '.join(there)}", anchor_of(items[0].key))


def drawn(spot: Spot) -> Iterator[Element]:
    """A mark with its name and what is there."""
    yield Mark(spot.at, spot.sign, filled=1.0 if spot.sign == "square" else 0.0, size=6, says=spot.says, anchor=spot.anchor)
    side, shift = ("end", -11.0) if spot.at[0] > 0 else ("start", 11.0)
    yield Note(spot.at, spot.name, 11, side=side, shift=(shift, 1), strong=spot.sign != "circle")
    yield Note(spot.at, spot.second, 10, side=side, shift=(shift, 13))


def in_words(near: Sequence[Spot], far: Sequence[Spot]) -> str:
    """What the plan shows, and what lies beyond it."""
    words = ". ".join(f"{spot.name}, {across_words(spot.at)}: {spot.second}" for spot in near)
    beyond = f" Beyond the plan: {', '.join(dict.fromkeys(spot.name for spot in far))}." if far else ""
    return f"Services and outlets about the stage. {words}.{beyond}"


def across_words(at: tuple[float, float]) -> str:
    """A position in short words."""
    side = f"{abs(at[0]):.1f} m {'stage left' if at[0] > 0 else 'stage right'}" if at[0] else "on the centre line"
    return f"{side}, {abs(at[1]):.1f} m {'upstage' if at[1] >= 0 else 'downstage'}"
