"""
A hang from the side: its supports with what each carries, and its loads, a row each.

Reads the pack alone.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from builder.departments.rigging.page.shown import foot, parts_of
from builder.document import Markup
from builder.pack import Item, Section
from builder.render import svg
from builder.render.numbers import number

WIDTH, SIDE = 900.0, 95.0
TOP, BODY, ROWS, STEP = 18.0, 210.0, 292.0, 66.0
SIZE, FOOT_SIZE, LEAST = 31.0, 23.0, 15.0
WIDE_WORDS = 7.0
"""
The widest words above a support, such as "(to 1,609 kg)", take this many times the size of their
letters.
"""


@dataclass(frozen=True, slots=True)
class Scale:
    """Places along the hang in drawing units. Supports beyond the ends widen it."""

    from_m: float
    to_m: float

    def at(self, place_m: float) -> float:
        """Drawing units of a place along the hang."""
        return SIDE + (place_m - self.from_m) / (self.to_m - self.from_m) * (WIDTH - 2 * SIDE)


def beam_diagram(section: Section, hang: Item) -> tuple[Markup, str] | None:
    """
    The diagram as SVG and in words; None for a hang at one place or one whose shares are not known.
    """
    supports, loads = parts_of(section, hang, "support"), parts_of(section, hang, "load")
    length_m = hang.number("length")
    places = [at for item in supports if (at := item.number("along")) is not None]
    if not length_m or not places or any(item.number("share") is None for item in supports):
        return None
    scale = Scale(min(0.0, *places), max(length_m, *places))
    says = in_words(hang, supports, loads)
    lines = foot(section, 68)
    bottom = ROWS + STEP * len(loads) + 22
    height = bottom + 28 * len(lines)
    size = lettering([scale.at(place) for place in places])
    parts = [
        *body(scale, length_m, hang.text("length")),
        *(mark for item in supports for mark in support(item, scale, size)),
        *rows(loads, scale),
        *footed(lines, bottom),
    ]
    return svg.drawing(hang.key, hang.name, says, (WIDTH, height), parts), says


def in_words(hang: Item, supports: Sequence[Item], loads: Sequence[Item]) -> str:
    """What the diagram shows."""
    shares = "; ".join(
        f"{item.name} at {item.text('along')} carries {item.text('share')}" for item in supports
    )
    listed = "; ".join(f"{item.name}, {item.text('place')}" for item in loads)
    return f"{hang.name}, {hang.text('length')} long. {shares}. Loads: {listed}."


def text(
    x: float, y: float, words: str, size: float, side: str = "middle", *, strong: bool = False
) -> Markup:
    """A line of text."""
    return svg.lettered(x, y, words, size, side=side, strong=strong)


def body(scale: Scale, length_m: float, length: str) -> Iterator[Markup]:
    """The hang itself, with its length."""
    left, right = scale.at(0.0), scale.at(length_m)
    yield svg.rectangle(
        left, BODY, right - left, 18, fill=svg.INK, fill_opacity="0.1", stroke_width=2
    )
    for place, words in ((left, "0"), (right, length)):
        yield text(place, BODY + 46, words, SIZE)


def lettering(places: Sequence[float]) -> float:
    """The size of the words above the supports: as large as the nearest two supports allow."""
    gaps = [second - first for first, second in pairwise(sorted(places))]
    return min(SIZE, max(LEAST, min(gaps, default=WIDTH) / WIDE_WORDS))


def support(item: Item, scale: Scale, size: float) -> Iterator[Markup]:
    """
    A support: a line up with an arrow, dashed where it is slack, with its name, its share, and the
    worst case.
    """
    x, share = scale.at(item.number("along") or 0.0), item.number("share") or 0.0
    slack = share == 0
    arrow = f"M{number(x)} {number(BODY)}V{number(TOP + 124)}m-8 14l8 -14l8 14"
    yield svg.path(arrow, stroke_width=2.6, stroke_dasharray="3 4" if slack else None)
    yield text(x, TOP + 18, item.name, size, strong=True)
    yield text(x, TOP + 58, "slack" if slack else item.text("share"), size)
    if worst := item.text("one-slack"):
        yield text(x, TOP + 98, f"(to {worst})", size)


def rows(loads: Sequence[Item], scale: Scale) -> Iterator[Markup]:
    """
    The loads: what and how heavy in words, below it a bar for a spread one, an arrow for one at a
    place.
    """
    for index, item in enumerate(loads):
        y = ROWS + 14 + STEP * index
        yield text(20, y, shortened(f"{item.text('weight')}: {item.name}", 52), SIZE, "start")
        left, right = scale.at(item.number("from") or 0.0), scale.at(item.number("to") or 0.0)
        if right - left > 1:
            yield svg.rectangle(
                left,
                y + 10,
                right - left,
                15,
                fill=svg.INK,
                fill_opacity="0.28",
                stroke_width=1.2,
            )
        else:
            arrow = f"M{number(left)} {number(y + 6)}v24m-8 -11l8 11l8 -11"
            yield svg.path(arrow, stroke_width=3.2)


def footed(lines: Sequence[str], top: float) -> Iterator[Markup]:
    """The caution at the foot of the diagram."""
    for index, line in enumerate(lines):
        yield text(20, top + 12 + 28 * index, line, FOOT_SIZE, "start")


def shortened(words: str, most: int) -> str:
    """Words that fit into the column; the table tells them whole."""
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"
