"""
Workings and sources: each figure's formula, inputs and source in one place, and every source that
is used.
"""

from collections.abc import Iterator

from builder.cautions import EVERYWHERE
from builder.document import Block, Bullets, Caution, Folded, Heading, Page, Paragraph
from builder.formulas.cite import FROM_MEMORY
from builder.layout import shown_figure, working_blocks
from builder.pack import Field, Figure, Item, Pack, Reference, Section
from builder.reading.values.sentences import within_sentence

MARK = f" ({FROM_MEMORY}: "
MARKED = (
    f"Places behind '{FROM_MEMORY}' are chapters, clauses or values that nobody looked up in that"
    " edition. Workings name them without this mark: look a place up before you rely on it."
)


def workings_page(pack: Pack) -> Page:
    """Every figure by department with its working, then the list of sources."""
    return Page(
        "workings",
        "Workings and sources",
        tuple(blocks(pack)),
        summary="The formula, inputs and source of every figure.",
    )


def blocks(pack: Pack) -> Iterator[Block]:
    """An introduction, the departments' figures, the sources."""
    yield Paragraph("Each figure of this pack can be redone by hand from what stands here.")
    yield Caution(EVERYWHERE)
    for section in pack.sections:
        yield from department_blocks(section)
    yield Heading(2, "Sources", "sources")
    listed = sources(pack)
    if any(MARK in line for line in listed):
        yield Paragraph(MARKED)
    yield Bullets(listed)


def department_blocks(section: Section) -> Iterator[Block]:
    """The figures of one department, one fold an item."""
    items = [item for item in section.items if item.figures]
    if items or section.fields:
        yield Heading(2, section.title, section.key)
    for item in items:
        yield Folded(
            f"{item.name}: {', '.join(within_sentence(figure.label) for figure in item.figures)}",
            tuple(item_blocks(item)),
        )
    for field in section.fields:
        yield Folded(field.name, working_blocks(field.working))


def item_blocks(item: Item) -> Iterator[Block]:
    """The figures of one item. A caution that several share is said once."""
    for figure in item.figures:
        yield Paragraph([f"{figure.label}: ", *shown_figure(figure)])
        yield from working_blocks(figure.working)
    yield from (
        Caution(caution)
        for caution in dict.fromkeys(figure.caution for figure in item.figures)
        if caution
    )


def sources(pack: Pack) -> list[str]:
    """
    Every source that a figure of this pack cites, once, in alphabetical order; with the places in
    it that are from memory.
    """
    computed: list[Figure | Field] = [figure for item in pack.items() for figure in item.figures]
    computed += [field for section in pack.sections for field in section.fields]
    cited = [reference for figure in computed for reference in figure.working.references]
    found = {(reference.source, reference.title) for reference in cited}
    return [
        (f"{source}. {title}" if title else source) + unread_places(source, cited)
        for source, title in sorted(found)
    ]


def unread_places(source: str, cited: list[Reference]) -> str:
    """The places of a source that nobody looked up, each once, as the end of its line."""
    places = {
        reference.clause.removesuffix(FROM_MEMORY).rstrip(", ")
        for reference in cited
        if reference.source == source and reference.clause.endswith(FROM_MEMORY)
    }
    return f"{MARK}{'; '.join(sorted(places))})" if places else ""
