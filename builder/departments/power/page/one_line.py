"""
The circuits as one line, for a phone: a tree that hangs from its supply, one box below the other,
each indented under what feeds it.

A box tells the rating and, for each phase, a bar: filled is what stands on it, open is what is
free. Drawn in the page's own ink.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from textwrap import wrap

from builder.departments.power.page.words import ampere_words
from builder.document import Markup
from builder.layout import anchor_of
from builder.pack import Item, Section, Value
from builder.reading.measures import shown
from builder.reading.quantities import Current
from builder.render import svg
from builder.render.markup import joined
from builder.render.numbers import number

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


def one_line(section: Section) -> tuple[Markup, str]:
    """The drawing as SVG and in words."""
    branches = branches_of(section)
    foot = wrapped(section.cautions[0]) if section.cautions else ()
    bottom = TOP + len(branches) * (BOX + GAP)
    height = bottom + len(foot) * 15 + TOP
    says = in_words(branches)
    parts = [
        *(wire(index, branch) for index, branch in enumerate(branches) if branch.above is not None),
        *(box(index, branch) for index, branch in enumerate(branches)),
        *(text(4, bottom + 12 + row * 15, line) for row, line in enumerate(foot)),
    ]
    drawn = svg.drawing(
        "one-line",
        "Circuits in one line",
        says,
        (WIDTH, height),
        parts,
        kind="plan one-line",
        lettering=12,
        style=SIZE,
    )
    return drawn, says


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


def wire(index: int, branch: Branch) -> Markup:
    """The line from what feeds a node down and across to its breaker and box."""
    x = left_of(branch) - INDENT / 2
    start, end = top_of(branch.above or 0) + BOX, top_of(index) + 18
    line = f"M{number(x)} {number(start)}V{number(end)}H{number(left_of(branch))}"
    breaker = f"M{number(x + 2)} {number(end - 3)}l6 6m0 -6l-6 6"
    return joined((svg.path(line, stroke_width=1.6), svg.path(breaker, stroke_width=1.3)))


def box(index: int, branch: Branch) -> Markup:
    """One node: frame, name, rating, bars."""
    item, x, y = branch.item, left_of(branch), top_of(index)
    width = WIDTH - 4 - x
    room = width - BAR - AMPERES - 42
    named = text(x + 8, y + 19, fitting(item.name, room), NAME_SIZE, strong=item.kind != "board")
    lines = (rating_words(item), second_line(item))
    below = [
        text(x + 8, y + 38 + row * 17, fitting(line, room * NAME_SIZE / WORD_SIZE))
        for row, line in enumerate(lines)
        if line
    ]
    bars = [
        bar(item, phase, WIDTH - BAR - AMPERES - 10, y + 8 + row * ROW)
        for row, phase in enumerate(phases_of(item))
    ]
    return svg.told(hover(item), frame(item, x, y, width), linked(item, named), *below, *bars)


def frame(item: Item, x: float, y: float, width: float) -> Markup:
    """
    The frame: heavy for what feeds the house, light for boards, dashed for what is limited or out
    of service, round for a generator.
    """
    return svg.rectangle(
        x,
        y,
        width,
        BOX,
        rx=14 if item.kind == "generator" else 2,
        stroke_width={"supply": 2.6, "generator": 2.6, "service": 1.8}.get(item.kind, 1.0),
        stroke_dasharray=None if item.condition == "in service" else "5 3",
        fill=svg.PAPER,
    )


def linked(item: Item, words: Markup) -> Markup:
    """A service's name as a link to its row."""
    return svg.linked(anchor_of(item.key) if item.kind == "service" else "", words)


def text(
    x: float,
    y: float,
    words: str,
    size: float = WORD_SIZE,
    *,
    strong: bool = False,
    side: str = "start",
) -> Markup:
    """A line of text."""
    return svg.lettered(x, y, words, size, side=side, strong=strong)


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


def free_words(value: Value, far_a: float) -> tuple[str, float]:
    """
    What is free in few words, and what of it to count on: the lower end where there is one, for
    both find no room; else the upper. [A]
    """
    if value.number is not None:
        return shown(Current, far_a)[0], far_a
    if value.least is not None and value.least > 0:
        return f"≥ {shown(Current, value.least)[0]}", value.least
    return f"≤ {shown(Current, far_a)[0]}", far_a


def bar(item: Item, phase: str, x: float, y: float) -> Markup:
    """What stands on one phase and what is free, as a bar with the free ampere."""
    limit, free = item.far_end("continuous"), item.far_end(f"free.{phase}")
    label = text(x - 21, y + 11, phase)
    figure = item.figure(f"free.{phase}")
    if limit is None or free is None or limit <= 0 or figure is None or figure.value is None:
        words = "out of service" if item.condition == "out of service" else "not known"
        return joined((label, text(WIDTH - 9, y + 11, words, side="end")))
    words, counted = free_words(figure.value, free)
    used = min(1.0, max(0.0, 1 - counted / limit))
    told = text(WIDTH - 9, y + 11, words, side="end")
    return joined(
        (
            label,
            svg.rectangle(x, y, BAR * used, 12, fill=svg.INK, fill_opacity="0.75", stroke=svg.NONE),
            svg.rectangle(x, y, BAR, 12, stroke_width=0.8),
            told,
        )
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
