"""The first page of a house of several stages, and the page that compares them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from builder.cautions import EVERYWHERE
from builder.document import (
    Block,
    Caution,
    Entry,
    Facts,
    Heading,
    Headline,
    Inline,
    Link,
    Page,
    Paragraph,
    Row,
    Table,
    Words,
)
from builder.layout import photos, state
from builder.overview.closures import closures, sentence
from builder.overview.elevation import elevation
from builder.overview.home import (
    count_of,
    dangers,
    freshness,
    identity_words,
    lately,
    revision_words,
    shortcomings,
    trouble,
)
from builder.pack import Item, Pack, Section, Space

COMPARISON = "spaces"
TITLE = "Compare the spaces"
MOST_ANSWERS = 6
"""How many answers of each space stand on the first page."""


@dataclass(frozen=True, slots=True)
class SpaceOverview:
    """
    A space with the answers that its first page gives, how many findings it has, and when it is
    closed by itself.
    """

    space: Space
    headlines: Sequence[Entry]
    findings: int
    closed: Sequence[Item] = ()


def home_of_spaces(pack: Pack, house: Pack, spaces: Sequence[SpaceOverview]) -> Page:
    """The answers of each space, and what holds for all of them."""
    return Page(
        "index",
        pack.venue,
        tuple(blocks(pack, house, spaces)),
        summary=f"The tech pack of {pack.venue}, revision {pack.revision.number}.",
    )


def blocks(pack: Pack, house: Pack, spaces: Sequence[SpaceOverview]) -> Iterator[Block]:
    """The page from top to bottom: the house, what is wrong today, then space by space."""
    yield from identity_words(house)
    yield from closures(house)
    yield from dangers(pack)
    yield from lately(pack)
    for each in spaces:
        yield from blocks_of(each, house)
    yield Caution(EVERYWHERE)
    yield Paragraph([Link(f"{TITLE}, answer by answer", COMPARISON)])
    yield from trouble(house)
    yield from shortcomings(house)
    yield Heading(2, "How fresh this is", "fresh")
    yield Facts([freshness(section, named(section, pack)) for section in pack.sections])
    yield Paragraph(revision_words(pack))


def blocks_of(overview: SpaceOverview, house: Pack) -> Iterator[Block]:
    """One space: what it is, whether it can be had, and what it has."""
    yield Heading(2, overview.space.name, f"space-{overview.space.key}")
    item = item_of(overview.space, house)
    what = item.text("what") if item else ""
    words: list[Words] = [[*state(item), " "]] if item and state(item) else []
    told = [piece for each in words for piece in each]
    counted = f"; {count_of(overview.findings, 'finding')}" if overview.findings else ""
    yield Paragraph(
        [
            *told,
            f"{what} " if what else "",
            Link(f"All of {overview.space.name}", overview.space.key),
            f"{counted}.",
        ]
    )
    if overview.closed:
        told_closed = " ".join(sentence(each) for each in overview.closed)
        yield Caution(told_closed, title="Closed", tone="caution")
    yield Headline(overview.headlines[:MOST_ANSWERS])


def space_page_blocks(pack: Pack, space: Space, headlines: Sequence[Entry]) -> Iterator[Block]:
    """
    The first page of a space, as that of a house of one stage; ``pack`` is that of the space.
    """
    if drawing := elevation(pack):
        yield replace(drawing, beside=True)
    item = item_of(space, pack)
    if item:
        words = [*state(item), " "] if state(item) else []
        yield Paragraph([*words, item.text("what") or f"One of the spaces of {pack.venue}."])
        yield from under(item)
    yield from closures(pack)
    yield from dangers(pack)
    yield Headline(headlines)
    yield Caution(EVERYWHERE)
    yield Paragraph([Link(f"{TITLE}, answer by answer", COMPARISON)])
    yield from trouble(pack)
    yield from shortcomings(pack)
    yield Heading(2, "How fresh this is", "fresh")
    yield Facts([freshness(section) for section in pack.sections])


def under(item: Item) -> Iterator[Block]:
    """What else the house says of a space."""
    if item.note:
        yield Paragraph(item.note)
    yield from photos([item])


def item_of(space: Space, house: Pack) -> Item | None:
    """What the house says of a space."""
    return next(
        (item for item in house.items() if item.kind == "space" and item.name == space.name), None
    )


def named(section: Section, pack: Pack) -> str:
    """A section's title, with its space where it is of one."""
    space = next((each.name for each in pack.spaces if each.key == section.space), "")
    return f"{section.title}, {space}" if space else section.title


def comparison_page(house: Pack, spaces: Sequence[SpaceOverview]) -> Page:
    """What each space answers to the first questions, side by side."""
    return Page(
        COMPARISON,
        TITLE,
        tuple(comparison_blocks(house, spaces)),
        summary="The same questions, answered for each space.",
    )


def comparison_blocks(house: Pack, spaces: Sequence[SpaceOverview]) -> Iterator[Block]:
    """A table with a row for each question and a column for each space."""
    yield Paragraph("What a show asks first, for each space of the house.")
    yield Caution(EVERYWHERE)
    labels = dict.fromkeys(entry.label for each in spaces for entry in each.headlines)
    states = [item_of(each.space, house) for each in spaces]
    rows = []
    if any(item and state(item) for item in states):
        cells: list[Words] = [[*state(item)] if item else "" for item in states]
        rows.append(Row(["State", *(cell or "in service" for cell in cells)], "compare-state"))
    if any(each.closed for each in spaces):
        shut = [" ".join(sentence(closure) for closure in each.closed) for each in spaces]
        rows.append(Row(["Closed", *(words or "no" for words in shut)], "compare-closed"))
    rows += [
        Row([label, *(answer_of(each, label) for each in spaces)], f"compare-{number}")
        for number, label in enumerate(labels, 1)
    ]
    yield Table(
        ("What", *(each.space.name for each in spaces)),
        rows,
        summary="The spaces side by side",
        to_compare=True,
    )
    for each in spaces:
        yield Paragraph([Link(f"All of {each.space.name}", each.space.key)])


def answer_of(overview: SpaceOverview, label: str) -> Words:
    """What a space answers to one of the first questions."""
    found = next((entry for entry in overview.headlines if entry.label == label), None)
    if found is None:
        return "not described"
    words = [found.words] if isinstance(found.words, str) else [*found.words]
    return [*words, *small_of(found)]


def small_of(entry: Entry) -> list[Inline]:
    """The small print of an answer, behind it."""
    if not entry.small:
        return []
    words = [entry.small] if isinstance(entry.small, str) else entry.small
    return [" (", *words, ")"]
