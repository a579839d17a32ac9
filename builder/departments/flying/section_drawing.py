"""
The section through the line sets, to scale: deck, floors, grid, and how far each pipe goes in and
out. Reads the pack alone.
"""

from collections.abc import Iterator, Sequence

from builder.document import Markup
from builder.pack import Item, Section
from builder.render.plan import (
    DASHED,
    HAIR,
    HEAVY,
    SOLID,
    Element,
    Look,
    Note,
    Plan,
    Track,
    plan_svg,
)

EMPTY = Look(width=1.0, dash="2 3")
"""The way of a pipe that nothing hangs on."""
CLOSE_M = 0.45
"""Nearer than this, the names of two neighbours stand in two rows."""
SAYS = (
    "Section through the stage from the side, downstage on the left. Each upright line is the way"
    " of a pipe from its low to its high trim: dotted where nothing hangs, firm where something"
    " does, with a cross-line at each end."
)


def section_svg(section: Section) -> Markup | None:
    """The section; None where no set says where it hangs and how far it goes."""
    placed = [item for item in section.of_kind("lineset") if has_place(item)]
    if not placed:
        return None
    xs = [distance(item) for item in placed]
    left, right = min(xs) - 1.0, max(xs) + 1.0
    whole = section.item("whole")
    grid = whole.far_end("grid") if whole else None
    elements = [
        *level(0.0, "deck", left, right, HEAVY),
        *(level(grid, "grid", left, right, DASHED) if grid is not None else ()),
        *floors(section, left, right),
        *(part for number, item in enumerate(placed) for part in way(item, number, placed)),
    ]
    highest = max(item.far_end("high_trim") or 0.0 for item in placed)
    middle, half = (left + right) / 2, max(right - left, grid or 0.0, highest) / 2 + 1.0
    plan = Plan(
        "flying-section",
        "Section through the line sets",
        SAYS,
        elements,
        axes=False,
        across_m=(middle - half, middle + half),
    )
    return plan_svg(plan)


def has_place(item: Item) -> bool:
    """Whether a set says where it hangs, and how high it goes."""
    return item.number("distance") is not None and item.far_end("high_trim") is not None


def distance(item: Item) -> float:
    """How far upstage of the reference a set hangs. [m]"""
    return item.number("distance") or 0.0


def level(height_m: float, name: str, left: float, right: float, look: Look) -> Iterator[Element]:
    """A level line with its name at its right end."""
    yield Track(((left, height_m), (right, height_m)), look, says=name)
    yield Note((right, height_m), name, 10, side="end", shift=(0, -4))


def floors(section: Section, left: float, right: float) -> Iterator[Element]:
    """Fly floors and loading floors, each by its height."""
    for item in section.of_kind("floor"):
        height_m = item.far_end("height")
        if height_m is not None:
            yield from level(height_m, item.name.lower(), left, right, HAIR)


def way(item: Item, number: int, placed: Sequence[Item]) -> Iterator[Element]:
    """How far a pipe goes, and its name above; every other name higher where they are close."""
    x, high = distance(item), item.far_end("high_trim") or 0.0
    low = item.far_end("low_trim")
    carries = item.text("carries")
    look = SOLID if carries else EMPTY
    hangs = f", {carries}" if carries else ""
    yield Track(((x, high if low is None else low), (x, high)), look, says=f"{item.name}{hangs}")
    for end in (high, low):
        if end is not None:
            yield Track(((x - 0.12, end), (x + 0.12, end)), look)
    gaps = [abs(distance(other) - x) for other in placed if other is not item]
    is_close = min(gaps, default=CLOSE_M) < CLOSE_M
    up = -18 if is_close and number % 2 else -6
    yield Note((x, high), item.name, 9, shift=(0, up))
