"""
Where a document can be pointed at: its pages, their anchors and its files.

A link to nowhere is our mistake and stops the build.
"""

from collections.abc import Iterator, Mapping, Sequence

from builder.document import Block, Document, Facts, Folded, Heading, Page, Table
from builder.render.escaping import slug

Anchors = Mapping[str, frozenset[str]]


def anchors_of(document: Document) -> Anchors:
    """
    The anchors of each page, by page key.

    Raises
    ------
    ValueError
        If two pages have one key, or a page gives one anchor twice.
    """
    found: dict[str, frozenset[str]] = {}
    for page in document.pages:
        if page.key in found:
            raise ValueError(f"page keys must differ, got {page.key!r} twice")
        found[page.key] = anchors_on(page)
    return found


def anchors_on(page: Page) -> frozenset[str]:
    """The anchors of one page."""
    seen: set[str] = set()
    for anchor in anchors_within(page.blocks):
        if anchor in seen:
            raise ValueError(f"anchors on page {page.key!r} must differ, got {anchor!r} twice")
        seen.add(anchor)
    return frozenset(seen)


def anchors_within(blocks: Sequence[Block]) -> Iterator[str]:
    """The anchors that blocks give themselves, from top to bottom."""
    for block in blocks:
        match block:
            case Heading():
                yield from given(block.anchor)
            case Table():
                yield from (anchor for row in block.rows for anchor in given(row.anchor))
            case Facts():
                yield from (anchor for entry in block.entries for anchor in given(entry.anchor))
            case Folded():
                yield from given(block.anchor)
                yield from anchors_within(block.blocks)
            case _:
                pass


def given(anchor: str) -> tuple[str, ...]:
    """The anchor as it is written into the page, or nothing."""
    return (slug(anchor),) if anchor else ()


def target(page: str, anchor: str, *, ending: str, anchors: Anchors) -> str:
    """
    The relative address of a page of the document, with ``ending`` ``md`` in Markdown links and
    ``html`` in HTML ones.

    Raises
    ------
    ValueError
        If there is no such page, or no such anchor on it.
    """
    if page not in anchors:
        raise ValueError(f"page must be one of {', '.join(sorted(anchors))}, got {page!r}")
    if not anchor:
        return f"{page}.{ending}"
    if slug(anchor) not in anchors[page]:
        raise ValueError(
            f"anchor must be one of page {page!r} ({', '.join(sorted(anchors[page]))}), got"
            f" {anchor!r}"
        )
    return f"{page}.{ending}#{slug(anchor)}"
