"""What plans and diagrams need of the pack: points with their state, hangs with their ends."""

from collections.abc import Iterator
from dataclasses import dataclass
from textwrap import wrap

from builder.layout import anchor_of
from builder.pack import Item, Section

At = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Spot:
    """
    A point as the plan shows it. ``state`` is free, loaded, over, out or unknown; ``share`` is
    carried over limit.
    """

    name: str
    beam: str
    beam_across: bool
    at: At
    state: str
    share: float
    left: str
    says: str
    anchor: str


def spots_of(section: Section) -> Iterator[Spot]:
    """Every point with a place."""
    runs = {beam.name.casefold(): beam.text("runs") for beam in section.of_kind("beam")}
    for item in section.of_kind("point"):
        x, y = item.number("at.across"), item.number("at.depth")
        if x is None or y is None:
            continue
        state, carried, limit = limit_state(item), item.number("carried"), item.number("limit")
        share = min((carried or 0.0) / limit, 1.0) if limit else 0.0
        beam = item.text("beam")
        yield Spot(
            item.name,
            beam,
            runs.get(beam.casefold()) == "across",
            (x, y),
            state,
            share,
            left_words(item, state),
            says(item, state),
            anchor_of(item.key),
        )


def not_drawn(section: Section) -> list[str]:
    """The points and hangs of which nobody knows where they are."""
    drawn = {spot.anchor for spot in spots_of(section)}
    points = [item for item in section.of_kind("point") if anchor_of(item.key) not in drawn]
    hangs = [item for item in section.of_kind("hang") if hang_ends(item) is None]
    return [item.name for item in (*points, *hangs)]


def limit_state(item: Item) -> str:
    """How a point stands to its limit."""
    carried, limit, left = item.number("carried"), item.number("limit"), item.far_end("left")
    if item.condition == "out of service":
        return "out"
    if carried is None or limit is None:
        return "unknown"
    if left is not None and left < 0:
        return "over"
    return "loaded" if carried > 0 else "free"


def left_words(item: Item, state: str) -> str:
    """What is written below a point: of what is known in part, what may be counted on."""
    if state in ("out", "unknown"):
        return "out" if state == "out" else "?"
    text, left = item.text("left"), item.figure("left")
    if left and left.value and left.value.least is not None and left.value.most is not None:
        text = text.split(" to ")[0]
    return text.replace("-", "−").removesuffix(" kg").removesuffix(" lb")


def says(item: Item, state: str) -> str:
    """A point in a few words."""
    if state == "out":
        return f"{item.name} is out of service"
    if state == "unknown":
        return f"{item.name}: what it may carry or carries is not known"
    return (
        f"{item.name} carries {item.text('carried')} of {item.text('limit')}, {item.text('left')}"
        " left"
    )


def number_text(item: Item, name: str) -> str:
    """A value as text, or that it is not known."""
    return item.text(name) or "an unknown weight"


def hang_ends(hang: Item) -> tuple[At, At] | None:
    """Both ends of a hang seen from above."""
    numbers = [
        hang.number(f"{end}.{name}")
        for end in ("first_end", "last_end")
        for name in ("across", "depth")
    ]
    x1, y1, x2, y2 = numbers
    if x1 is None or y1 is None or x2 is None or y2 is None:
        return None
    return ((x1, y1), (x2, y2))


def caution_of(section: Section) -> str:
    """The caution that stands under every drawing."""
    return section.cautions[0] if section.cautions else ""


def foot(section: Section, characters: int) -> list[str]:
    """The caution in lines that fit, so that a drawing as a file carries it too."""
    return wrap(caution_of(section), characters)


def parts_of(section: Section, hang: Item, kind: str) -> list[Item]:
    """The supports or loads of a hang."""
    return [item for item in section.of_kind(kind) if item.key.startswith(f"{hang.key}.")]
