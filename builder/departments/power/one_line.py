"""
The circuits as one line, for a phone: a tree that hangs from its supply, one box below the other,
each indented under what feeds it.

A box tells the rating and, for each phase, a bar: filled is what stands on it, open is what is
free. Drawn in the page's own ink.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from textwrap import wrap

from builder.departments.power.words import ampere_words
from builder.layout import anchor_of
from builder.pack import Item, Section
from builder.render.plan import number

WIDTH = 340.0
"""As wide as a phone leaves, so that letters there have the size they are given here."""
INDENT = 14.0
BOX, GAP, TOP = 64.0, 11.0, 6.0
BAR, AMPERES, ROW = 30.0, 56.0, 18.0
NAME_SIZE, WORD_SIZE = 14.0, 12.0
SIZE = "max-width:26rem;max-height:none;margin:0 auto"
"""A tall drawing: scaled to a screen's height it could not be read on a phone."""
LETTER = 7.2
"""About the width of a letter of a name, in drawing units; of the other words, a seventh less."""
PHASES = ("L1", "L2", "L3")
NODES = ("supply", "generator", "service", "board")


@dataclass(frozen=True, slots=True)
class Branch:
    """A node in the order of drawing, with how deep it hangs and the row of what feeds it."""

    item: Item
    depth: int
    above: int | None


def one_line(section: Section) -> tuple[str, str]:
    """The drawing as SVG and in words."""
    branches = branches_of(section)
    foot = wrapped(section.cautions[0]) if section.cautions else ()
    bottom = TOP + len(branches) * (BOX + GAP)
    height = bottom + len(foot) * 15 + TOP
    says = in_words(branches)
    parts = [
        *(wire(index, branch) for index, branch in enumerate(branches)),
        *(box(index, branch) for index, branch in enumerate(branches)),
    ]
    parts += [text(4, bottom + 12 + row * 15, line, WORD_SIZE) for row, line in enumerate(foot)]
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(WIDTH)} {number(height)}"'
        ' role="img" class="plan one-line" aria-labelledby="one-line-t one-line-d" fill="none"'
        ' stroke="currentColor" stroke-linejoin="round" font-family="inherit" font-size="12"'
        f' width="{number(WIDTH)}" style="{SIZE}">'
    )
    title = (
        '<title id="one-line-t">Circuits in one line</title><desc'
        f' id="one-line-d">{escape(says)}</desc>'
    )
    return f"{head}{title}{''.join(parts)}</svg>", says


def wrapped(words: str) -> Sequence[str]:
    """The caution in lines that fit, so that the drawing as a file carries it too."""
    return wrap(words, 54)


def branches_of(section: Section) -> tuple[Branch, ...]:
    """Every node, each below what feeds it."""
    nodes = [item for kind in NODES for item in section.of_kind(kind)]
    found: list[Branch] = []

    def hang(item: Item, depth: int, above: int | None) -> None:
        found.append(Branch(item, depth, above))
        row = len(found) - 1
        for other in nodes:
            if other.text("fed_from") == item.name:
                hang(other, depth + 1, row)

    for item in nodes:
        if not item.text("fed_from"):
            hang(item, 0, None)
    return tuple(found)


def top_of(index: int) -> float:
    """The upper edge of a row's box."""
    return TOP + index * (BOX + GAP)


def left_of(branch: Branch) -> float:
    """The left edge of a node's box."""
    return 4 + branch.depth * INDENT


def wire(index: int, branch: Branch) -> str:
    """The line from what feeds a node down and across to its breaker and box."""
    if branch.above is None:
        return ""
    x = left_of(branch) - INDENT / 2
    start, end = top_of(branch.above) + BOX, top_of(index) + 18
    path = f"M{number(x)} {number(start)}V{number(end)}H{number(left_of(branch))}"
    breaker = f"M{number(x + 2)} {number(end - 3)}l6 6m0 -6l-6 6"
    return f'<path d="{path}" stroke-width="1.6"/><path d="{breaker}" stroke-width="1.3"/>'


def box(index: int, branch: Branch) -> str:
    """One node: frame, name, rating, bars."""
    item, x, y = branch.item, left_of(branch), top_of(index)
    width = WIDTH - 4 - x
    room = width - BAR - AMPERES - 42
    words = [
        linked(
            item,
            text(x + 8, y + 19, fitting(item.name, room), NAME_SIZE, strong=item.kind != "board"),
        )
    ]
    lines = (rating_words(item), second_line(item))
    words += [
        text(x + 8, y + 38 + row * 17, fitting(line, room * NAME_SIZE / WORD_SIZE), WORD_SIZE)
        for row, line in enumerate(lines)
        if line
    ]
    bars = "".join(
        bar(item, phase, WIDTH - BAR - AMPERES - 10, y + 8 + row * ROW)
        for row, phase in enumerate(phases_of(item))
    )
    return f"<g><title>{escape(hover(item))}</title>{frame(item, x, y, width)}{''.join(words)}{bars}</g>"  # noqa: E501


def frame(item: Item, x: float, y: float, width: float) -> str:
    """
    The frame: heavy for what feeds the house, light for boards, dashed for what is limited or out
    of service, round for a generator.
    """
    heavy = {"supply": 2.6, "generator": 2.6, "service": 1.8}.get(item.kind, 1.0)
    dash = "" if item.condition == "in service" else ' stroke-dasharray="5 3"'
    corner = 14 if item.kind == "generator" else 2
    return (
        f'<rect x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(BOX)}"'
        f' rx="{corner}" stroke-width="{number(heavy)}"{dash} fill="var(--paper, #fff)"/>'
    )


def linked(item: Item, words: str) -> str:
    """A service's name as a link to its row."""
    return f'<a href="#{anchor_of(item.key)}">{words}</a>' if item.kind == "service" else words


def text(
    x: float,
    y: float,
    words: str,
    size: float = WORD_SIZE,
    *,
    strong: bool = False,
    side: str = "start",
) -> str:
    """A line of text."""
    weight = ' font-weight="600"' if strong else ""
    return (
        f'<text x="{number(x)}" y="{number(y)}" font-size="{number(size)}"'
        f' text-anchor="{side}"{weight} fill="currentColor" stroke="none">{escape(words)}</text>'
    )


def fitting(words: str, width: float) -> str:
    """Words cut to a width, at about so many letters."""
    most = max(8, int(width / LETTER))
    return words if len(words) <= most else words[: most - 1].rstrip() + "…"


def phases_of(item: Item) -> Sequence[str]:
    """The phases a node has."""
    return [phase for phase in PHASES if phase in item.text("wired").split()]


def rating_words(item: Item) -> str:
    """Rating and what may be used of it for hours."""
    breaker = f"{item.text('breaker')} breaker" if item.text("breaker") else "rating not known"
    rating = item.text("rating") or item.text("site-rating") or breaker
    limit = item.text("continuous")
    return f"{rating}, {limit} for hours" if limit else rating


def second_line(item: Item) -> str:
    """The system of a supply; the feeder of the rest."""
    if item.kind in ("supply", "generator"):
        return item.text("system")
    length, conductor = item.text("feeder.length"), item.text("feeder.conductor")
    return " of ".join(part for part in (length, conductor.replace("mm2", "mm²")) if part)


def bar(item: Item, phase: str, x: float, y: float) -> str:
    """What stands on one phase and what is free, as a bar with the free ampere."""
    limit, free = item.number("continuous"), item.number(f"free.{phase}")
    label = text(x - 21, y + 11, phase)
    figure = item.figure(f"free.{phase}")
    if limit is None or free is None or limit <= 0 or figure is None or figure.value is None:
        words = "out of service" if item.condition == "out of service" else "not known"
        return label + text(WIDTH - 9, y + 11, words, side="end")
    used = min(1.0, max(0.0, 1 - free / limit))
    filled = (
        f'<rect x="{number(x)}" y="{number(y)}" width="{number(BAR * used)}" height="12"'
        ' fill="currentColor" fill-opacity="0.75" stroke="none"/>'
    )
    outline = (
        f'<rect x="{number(x)}" y="{number(y)}" width="{number(BAR)}" height="12"'
        ' stroke-width="0.8"/>'
    )
    return (
        label
        + filled
        + outline
        + text(WIDTH - 9, y + 11, figure.value.text.replace("at most", "≤"), side="end")
    )


def hover(item: Item) -> str:
    """What a box says when pointed at or read out."""
    return f"{item.name}: {rating_words(item)}; free {ampere_words(item)}"


def in_words(branches: Sequence[Branch]) -> str:
    """The drawing in words: each node with what feeds it and what is free."""
    return " ".join(sentences(branches))


def sentences(branches: Sequence[Branch]) -> Iterator[str]:
    """A sentence for each node."""
    for branch in branches:
        source = branch.item.text("fed_from")
        fed = f" from {source}" if source else ""
        yield (
            f"{branch.item.name}{fed}: {rating_words(branch.item)}, free"
            f" {ampere_words(branch.item)}."
        )
