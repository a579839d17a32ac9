"""
The stage plan: outline, wings, zones, obstructions and places, with dimensions.

Reads the pack alone.
"""

from collections.abc import Iterator
from itertools import pairwise

from builder.document import Markup
from builder.pack import Outline, Section
from builder.reading.addresses import address
from builder.reading.measures import shown
from builder.reading.quantities import Length
from builder.render.plan import (
    DASHED,
    HAIR,
    PALE,
    SOLID,
    Area,
    Element,
    Look,
    Mark,
    Note,
    Plan,
    Track,
    plan_svg,
)

LOOKS = {
    "deck": Look(width=2.2, fill=0.04),
    "wing": PALE,
    "zone": Look(width=1.0, dash="2 3"),
    "obstruction": Look(width=1.2, fill=0.55),
}
NEAR_STAGE_M = 16.0
"""How far from the deck a place may lie to be on the stage plan; the rest are on other plans."""


def stage_plan(section: Section, deck: str) -> tuple[Markup, str]:
    """The plan of the stage with the named deck, as SVG and in words."""
    shapes = [
        outline for outline in section.outlines if outline.kind != "deck" or outline.name == deck
    ]
    elements = [
        *(element for outline in shapes for element in drawn(outline)),
        *dimensions(section, deck),
        *places(section),
    ]
    says = in_words(section, deck)
    return (
        plan_svg(
            Plan(
                f"stage-{address(deck)}",
                f"Stage plan, {deck}",
                says,
                tuple(elements),
                margin_m=2.2,
            )
        ),
        says,
    )


def drawn(outline: Outline) -> Iterator[Element]:
    """An outline in the look of its kind, and its name where it is not told otherwise."""
    hanging = outline.kind == "obstruction" and width(outline) > 4
    yield Area(
        outline.corners,
        DASHED if hanging else LOOKS[outline.kind],
        says=f"{outline.name} ({outline.kind})",
    )
    x, y = middle(outline)
    far = max(depth for _, depth in outline.corners)
    if outline.kind == "wing":
        yield Note((x, far), f"wing {outline.name}", 10, shift=(0, -6))
    elif outline.kind == "obstruction":
        yield Note((x, y), outline.name, 10, shift=(0, 4 if hanging else 18))


def dimensions(section: Section, deck: str) -> Iterator[Element]:
    """
    Width along the upstage edge and depth along one side, each with its length in both systems.
    """
    outline = next(
        outline for outline in section.outlines if outline.kind == "deck" and outline.name == deck
    )
    xs, ys = [x for x, _ in outline.corners], [y for _, y in outline.corners]
    left, right, near, far = min(xs), max(xs), min(ys), max(ys)
    yield from dimension((left, far + 0.8), (right, far + 0.8), right - left)
    for start, end in pairwise(sorted({near, far, *(y for y in ys if near < y < far)})):
        yield from dimension((right - 0.7, start), (right - 0.7, end), end - start)


def dimension(
    start: tuple[float, float], end: tuple[float, float], length_m: float
) -> Iterator[Element]:
    """A dimension line with end ticks and its length."""
    across = start[1] == end[1]
    tick = (0.0, 0.25) if across else (0.25, 0.0)
    yield Track((start, end), HAIR)
    for x, y in (start, end):
        yield Track(((x - tick[0], y - tick[1]), (x + tick[0], y + tick[1])), SOLID)
    metric, imperial = shown(Length, length_m)
    centre = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    if across:
        yield Note(centre, f"{metric} ({imperial})", 11, shift=(0, -5))
    else:
        yield Note(centre, metric, 11, side="end", shift=(-6, 0))
        yield Note(centre, f"({imperial})", 11, side="end", shift=(-6, 14))


def places(section: Section) -> Iterator[Element]:
    """Named places near the stage."""
    for item in section.of_kind("place"):
        x, y = item.number("at.across"), item.number("at.depth")
        if x is None or y is None or not (-6 <= y <= NEAR_STAGE_M and abs(x) <= NEAR_STAGE_M):
            continue
        yield Mark((x, y), "diamond", size=4, says=item.name)
        side, shift = ("end", (-8.0, 4.0)) if x > 8 else ("start", (8.0, 4.0))
        yield Note((x, y), item.name, 10, side=side, shift=shift)


def in_words(section: Section, deck: str) -> str:
    """What the plan shows, for those who cannot see it."""
    item = section.item("deck", deck)
    area = item.text("area") if item else ""
    wings = ", ".join(wing.name for wing in section.of_kind("wing"))
    blocked = ", ".join(thing.name for thing in section.of_kind("obstruction"))
    usable = (
        f" Usable {item.text('usable_width')} wide and {item.text('usable_depth')} deep."
        if item
        else ""
    )
    return (
        f"The deck in its state '{deck}', {area}.{usable} Wings: {wings or 'none'}. In the way:"
        f" {blocked or 'nothing'}."
    )


def middle(outline: Outline) -> tuple[float, float]:
    """The middle of an outline's extent."""
    xs, ys = [x for x, _ in outline.corners], [y for _, y in outline.corners]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def width(outline: Outline) -> float:
    """The extent of an outline across. [m]"""
    xs = [x for x, _ in outline.corners]
    return max(xs) - min(xs)
