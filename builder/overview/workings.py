"""Workings and sources: each figure's formula, inputs and source in one place, and every source that is used."""

from collections.abc import Iterator

from builder.cautions import EVERYWHERE
from builder.document import Block, Bullets, Caution, Folded, Heading, Page, Paragraph
from builder.layout import shown_figure, working_blocks
from builder.pack import Field, Figure, Item, Pack, Section


def workings_page(pack: Pack) -> Page:
    """Every figure by department with its working, then the list of sources."""
    return Page("workings", "Workings and sources", tuple(blocks(pack)), summary="The formula, inputs and source of every figure.")


def blocks(pack: Pack) -> Iterator[Block]:
    """An introduction, the departments' figures, the sources."""
    yield Paragraph("Each figure of this pack can be redone by hand from what stands here.")
    yield Caution(EVERYWHERE)
    for section in pack.sections:
        yield from department_blocks(section)
    yield Heading(2, "Sources", "sources")
    yield Bullets(sources(pack))


def department_blocks(section: Section) -> Iterator[Block]:
    """The figures of one department, one fold an item."""
    items = [item for item in section.items if item.figures]
    if items or section.fields:
        yield Heading(2, section.title, section.key)
    for item in items:
        yield Folded(f"{item.name}: {', '.join(figure.label.lower() for figure in item.figures)}", tuple(item_blocks(item)))
    for field in section.fields:
        yield Folded(field.name, working_blocks(field.working))


def item_blocks(item: Item) -> Iterator[Block]:
    """The figures of one item. A caution that several share is said once."""
    for figure in item.figures:
        yield Paragraph([f"{figure.label}: ", *shown_figure(figure)])
        yield from working_blocks(figure.working)
    yield from (Caution(caution) for caution in dict.fromkeys(figure.caution for figure in item.figures) if caution)


def sources(pack: Pack) -> list[str]:
    """Every source that a figure of this pack cites, once, in alphabetical order."""
    computed: list[Figure | Field] = [figure for item in pack.items() for figure in item.figures]
    computed += [field for section in pack.sections for field in section.fields]
    found = {(reference.source, reference.title) for figure in computed for reference in figure.working.references}
    return [f"{source}. {title}" if title else source for source, title in sorted(found)]
