"""
The plan of services and outlets over the deck's outline, by numbers that a key explains.

Reads the pack alone.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.departments.power.page.words import ampere_words
from builder.document import Markup
from builder.layout import anchor_of
from builder.pack import Item, Pack, Section
from builder.render.plan import HAIR, PALE, Area, Element, Look, Mark, Note, Plan, plan_svg

LOOKS = {"deck": Look(width=1.8, fill=0.04), "wing": PALE, "obstruction": Look(width=1.0, fill=0.5)}
ASIDE_M, DOWN_M, UP_M = 19.0, -6.0, 18.0
"""
How far from the datum a mark may lie to be on the plan of the stage; the rest are in the key alone.
"""
NUMBER_SIZE, SIGN_SIZE, LETTERING = 38.0, 15.0, 31.0
"""
Of numbers, signs and words: a phone shows the plan at about three eighths, so that words there are
12 px high or more.
"""
HANGING_M = 4.0
"""Obstructions wider than this hang above the stage and are left out here."""


@dataclass(frozen=True, slots=True)
class Spot:
    """
    Something with a place: a supply, a service, or the outlets of one place. ``at`` is None where
    its place is not on the stage's list.
    """

    at: tuple[float, float] | None
    kind: str
    name: str
    words: str
    says: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Keyed:
    """A number on the plan and what it stands for; the number is 0 off the plan."""

    number: int
    spot: Spot


def keyed_spots(section: Section, pack: Pack) -> tuple[Keyed, ...]:
    """
    Everything that has a place, numbered where the plan shows it.

    What shares a place shares a number.
    """
    numbers: dict[tuple[float, float], int] = {}
    found = []
    for spot in (*node_spots(section, pack), *outlet_spots(section, pack)):
        if spot.at is None or not is_near(spot.at):
            found.append(Keyed(0, spot))
            continue
        found.append(
            Keyed(
                numbers.setdefault((round(spot.at[0], 1), round(spot.at[1], 1)), len(numbers) + 1),
                spot,
            )
        )
    return tuple(found)


def outlet_plan(keyed: Sequence[Keyed], pack: Pack) -> tuple[Markup, str] | None:
    """The plan as SVG and in words; None where nothing is on it."""
    shown = [each for each in keyed if each.number]
    if not shown:
        return None
    says = in_words(keyed)
    marks = [
        element
        for number in sorted({each.number for each in shown})
        for element in drawn([each for each in shown if each.number == number])
    ]
    return (
        plan_svg(
            Plan(
                "power-plan",
                "Services and outlets",
                says,
                (*outlines(pack), *marks),
                margin_m=2.6,
                lettering=LETTERING,
            )
        ),
        says,
    )


def is_near(at: tuple[float, float]) -> bool:
    """True where a place is on or about the stage."""
    return abs(at[0]) <= ASIDE_M and DOWN_M <= at[1] <= UP_M


def outlines(pack: Pack) -> Iterator[Element]:
    """The first deck, the wings and what stands in the way, where the stage is described."""
    stage = pack.section("stage")
    every = stage.outlines if stage else ()
    decks = [outline for outline in every if outline.kind == "deck"][:1]
    for outline in (
        *decks,
        *(outline for outline in every if outline.kind in ("wing", "obstruction")),
    ):
        if outline.kind != "obstruction" or outline.across_m <= HANGING_M:
            yield Area(outline.corners, LOOKS.get(outline.kind, HAIR), says=outline.name)


def place_of(name: str, pack: Pack) -> tuple[float, float] | None:
    """The position of a named place of the stage."""
    stage = pack.section("stage")
    there = stage.item("place", name) if stage and name else None
    return there.position if there else None


def node_spots(section: Section, pack: Pack) -> Iterator[Spot]:
    """Supplies, generators and services."""
    for kind in ("supply", "generator", "service"):
        for item in section.of_kind(kind):
            at = item.position or place_of(item.text("place"), pack)
            rating = item.text("rating") or item.text("site-rating") or "rating not known"
            yield Spot(
                at,
                kind,
                item.name,
                rating,
                f"{item.name}: free {ampere_words(item)}",
                anchor_of(item.key),
            )


def outlet_spots(section: Section, pack: Pack) -> Iterator[Spot]:
    """The outlets of each place."""
    places: dict[str, list[Item]] = {}
    for item in section.of_kind("available"):
        places.setdefault(item.text("place"), []).append(item)
    for name, items in places.items():
        there = "; ".join(f"{item.text('there')} × {item.text('connector')}" for item in items)
        yield Spot(
            place_of(name, pack),
            "outlet",
            f"Outlets, {name}",
            there,
            f"{name}: {there}",
            anchor_of(items[0].key),
        )


SIGNS = {"supply": "diamond", "generator": "ring", "service": "square", "outlet": "circle"}


def drawn(together: Sequence[Keyed]) -> Iterator[Element]:
    """
    A mark with its number: on the outer side for services, on the inner side for outlets, so that
    neighbours do not meet.
    """
    first = together[0]
    at = first.spot.at
    if at is None:
        return
    says = "; ".join(each.spot.says for each in together)
    filled = 1.0 if first.spot.kind == "service" else 0.0
    yield Mark(
        at,
        SIGNS[first.spot.kind],
        filled=filled,
        size=SIGN_SIZE,
        says=says,
        anchor=first.spot.anchor,
    )
    right = (at[0] > 0) == (first.spot.kind != "outlet")
    yield Note(
        at,
        str(first.number),
        NUMBER_SIZE,
        side="start" if right else "end",
        shift=(23 if right else -23, 13),
        strong=True,
    )


def in_words(keyed: Sequence[Keyed]) -> str:
    """What the plan shows, and what lies beyond it."""
    near = [
        f"{each.number}: {each.spot.name}, {across_words(each.spot.at)}, {each.spot.words}"
        for each in keyed
        if each.number and each.spot.at
    ]
    beyond = [each.spot.name for each in keyed if not each.number]
    rest = f" Off the plan: {', '.join(beyond)}." if beyond else ""
    return f"Services and outlets about the stage. {'. '.join(near)}.{rest}"


def across_words(at: tuple[float, float]) -> str:
    """A position in short words."""
    side = (
        f"{abs(at[0]):.1f} m {'stage left' if at[0] > 0 else 'stage right'}"
        if at[0]
        else "on the centre line"
    )
    return f"{side} and {abs(at[1]):.1f} m {'upstage' if at[1] >= 0 else 'downstage'}"
