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
    MARGIN,
    SOLID,
    WIDTH,
    Element,
    Look,
    Note,
    Plan,
    Track,
    plan_svg,
)

EMPTY = Look(width=1.0, dash="2 3")
"""The way of a pipe that nothing hangs on."""
LETTERS = 22
"""The height of letters in drawing units: still read where the drawing is as narrow as a phone."""
LETTER_WIDTH = 0.62
"""The width of a figure or letter, in heights."""
TALLEST = 1.25
"""The drawing is at most so much taller than wide."""
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
    highest = max(item.far_end("high_trim") or 0.0 for item in placed)
    middle, tall = (left + right) / 2, max(grid or 0.0, highest)
    half = max(right - left, tall / TALLEST) / 2 + 1.0
    unit_m = 2 * half / (WIDTH - 2 * MARGIN)
    elements = [
        *level(0.0, "deck", left, right, HEAVY),
        *(level(grid, "grid", left, right, DASHED) if grid is not None else ()),
        *floors(section, left, right),
        *(part for item in placed for part in way(item)),
        *names(placed, unit_m),
    ]
    plan = Plan(
        "flying-section",
        "Section through the line sets",
        SAYS,
        elements,
        axes=False,
        across_m=(middle - half, middle + half),
        lettering=LETTERS,
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
    yield Note((right, height_m), name, LETTERS, side="end", shift=(0, -5))


def floors(section: Section, left: float, right: float) -> Iterator[Element]:
    """Fly floors and loading floors, each by its height."""
    for item in section.of_kind("floor"):
        height_m = item.far_end("height")
        if height_m is not None:
            yield from level(height_m, item.name, left, right, HAIR)


def way(item: Item) -> Iterator[Element]:
    """How far a pipe goes."""
    x, high = distance(item), item.far_end("high_trim") or 0.0
    low = item.far_end("low_trim")
    carries = item.text("carries")
    look = SOLID if carries else EMPTY
    hangs = f", {carries}" if carries else ""
    yield Track(((x, high if low is None else low), (x, high)), look, says=f"{item.name}{hangs}")
    for end in (high, low):
        if end is not None:
            yield Track(((x - 0.12, end), (x + 0.12, end)), look)


def names(placed: Sequence[Item], unit_m: float) -> Iterator[Element]:
    """
    The names below the deck, each under its pipe, in as many rows as keep them apart. ``unit_m``:
    metres a drawing unit.
    """
    wide = [len(item.name) * LETTER_WIDTH * LETTERS * unit_m for item in placed]
    rows = rows_of_names([distance(item) for item in placed], wide, LETTERS / 3 * unit_m)
    for item, row in zip(placed, rows, strict=True):
        x, y = distance(item), -(row * 1.2 + 0.6) * LETTERS * unit_m
        yield Track(((x, 0.0), (x, y)), HAIR)
        yield Note((x, y), item.name, LETTERS, shift=(0, LETTERS * 0.85))


def rows_of_names(xs: Sequence[float], widths: Sequence[float], gap: float) -> list[int]:
    """
    The row of each name, 0 the uppermost: no two in a row touch, and no leader of a name further
    down runs through one above it. All in one unit.
    """
    rows = [0] * len(xs)
    done: list[int] = []
    for index in sorted(range(len(xs)), key=lambda each: xs[each]):
        near = [
            rows[other]
            for other in done
            if xs[index] - xs[other] < gap + max((widths[index] + widths[other]) / 2, gap)
        ]
        rows[index] = next(row for row in range(len(xs) + 1) if row not in near)
        done.append(index)
    return rows
