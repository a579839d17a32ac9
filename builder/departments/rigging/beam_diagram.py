"""A hang from the side: its supports with what each carries, and its loads, a row each. Reads the pack alone."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from builder.departments.rigging.shown import foot, parts_of
from builder.pack import Item, Section
from builder.render.plan import number

WIDTH, LEFT, RIGHT = 900.0, 330.0, 40.0
TOP, BODY, ROWS, STEP = 18.0, 150.0, 214.0, 34.0
NAME, SIZE, SMALL, FOOT_SIZE = 21.0, 20.0, 17.0, 14.0


@dataclass(frozen=True, slots=True)
class Scale:
    """Places along the hang in drawing units. Supports beyond the ends widen it."""

    from_m: float
    to_m: float

    def at(self, place_m: float) -> float:
        """Drawing units of a place along the hang."""
        return LEFT + 40 + (place_m - self.from_m) / (self.to_m - self.from_m) * (WIDTH - LEFT - RIGHT - 80)


def beam_diagram(section: Section, hang: Item) -> tuple[str, str] | None:
    """The diagram as SVG and in words; None for a hang at one place or one whose shares are not known."""
    supports, loads = parts_of(section, hang, "support"), parts_of(section, hang, "load")
    length_m = hang.number("length")
    places = [at for item in supports if (at := item.number("along")) is not None]
    if not length_m or not places or any(item.number("share") is None for item in supports):
        return None
    scale = Scale(min(0.0, *places), max(length_m, *places))
    name = hang.key.replace(".", "-")
    says = in_words(hang, supports, loads)
    lines = foot(section, 105)
    bottom = ROWS + STEP * len(loads) + 22
    height = bottom + 18 * len(lines)
    parts = [
        *body(scale, length_m, hang.text("length")),
        *(mark for item in supports for mark in support(item, scale)),
        *rows(loads, scale),
        *footed(lines, bottom),
    ]
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(WIDTH)} {number(height)}" role="img" class="plan" '
        f'aria-labelledby="{name}-t {name}-d" fill="none" stroke="currentColor" font-family="inherit">'
    )
    label = f'<title id="{name}-t">{escape(hang.name)}</title><desc id="{name}-d">{escape(says)}</desc>'
    return f"{head}{label}{''.join(parts)}</svg>", says


def in_words(hang: Item, supports: Sequence[Item], loads: Sequence[Item]) -> str:
    """What the diagram shows."""
    shares = "; ".join(f"{item.name} at {item.text('along')} carries {item.text('share')}" for item in supports)
    listed = "; ".join(f"{item.name}, {item.text('place')}" for item in loads)
    return f"{hang.name}, {hang.text('length')} long. {shares}. Loads: {listed}."


def text(x: float, y: float, words: str, size: float, side: str = "middle", *, strong: bool = False) -> str:
    """A line of text."""
    weight = ' font-weight="600"' if strong else ""
    return (
        f'<text x="{number(x)}" y="{number(y)}" font-size="{number(size)}" text-anchor="{side}"{weight} fill="currentColor" stroke="none">'
        f"{escape(words)}</text>"
    )


def body(scale: Scale, length_m: float, length: str) -> Iterator[str]:
    """The hang itself, with its length."""
    left, right = scale.at(0.0), scale.at(length_m)
    box = f'<rect x="{number(left)}" y="{number(BODY)}" width="{number(right - left)}" height="16"'
    yield f'{box} fill="currentColor" fill-opacity="0.1" stroke-width="2"/>'
    yield text(20, BODY + 15, "Supports carry", SIZE, "start", strong=True)
    yield text(20, ROWS - 2, "Loads", SIZE, "start", strong=True)
    for place, words in ((left, "0"), (right, length)):
        yield text(place, BODY + 38, words, SMALL)


def support(item: Item, scale: Scale) -> Iterator[str]:
    """A support: a line up with an arrow, dashed where it is slack, with its name, its share, and the worst case."""
    x, share = scale.at(item.number("along") or 0.0), item.number("share") or 0.0
    slack = share == 0
    dash = ' stroke-dasharray="3 4"' if slack else ""
    yield f'<path d="M{number(x)} {number(BODY)}V{number(TOP + 76)}m-6 11l6 -11l6 11" stroke-width="2"{dash}/>'
    yield text(x, TOP + 12, item.name, NAME, strong=True)
    yield text(x, TOP + 36, "slack" if slack else item.text("share"), SIZE)
    if worst := item.text("one-slack"):
        yield text(x, TOP + 60, f"(to {worst})", SMALL)


def rows(loads: Sequence[Item], scale: Scale) -> Iterator[str]:
    """The loads: what on the left, a bar for a spread one, an arrow for one at a place."""
    for index, item in enumerate(loads):
        y = ROWS + 26 + STEP * index
        yield text(20, y, shortened(item.name, 21), SMALL, "start")
        yield text(LEFT + 12, y, item.text("weight"), SMALL, "end")
        from_m, to_m = item.number("from") or 0.0, item.number("to") or 0.0
        left, right = scale.at(from_m), scale.at(to_m)
        if right - left > 1:
            box = f'<rect x="{number(left)}" y="{number(y - 13)}" width="{number(right - left)}" height="13"'
            yield f'{box} fill="currentColor" fill-opacity="0.28" stroke-width="1.2"/>'
        else:
            yield f'<path d="M{number(left)} {number(y - 20)}v20m-6 -9l6 9l6 -9" stroke-width="2.6"/>'


def footed(lines: Sequence[str], top: float) -> Iterator[str]:
    """The caution at the foot of the diagram."""
    for index, line in enumerate(lines):
        yield text(20, top + 12 + 18 * index, line, FOOT_SIZE, "start")


def shortened(words: str, most: int) -> str:
    """Words that fit into the column; the table tells them whole."""
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"
