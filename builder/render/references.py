"""
Where a document can be pointed at: its pages, their anchors and its files.

A link to nowhere is our mistake and stops the build.
"""

from collections.abc import Iterator, Mapping, Sequence

from builder.document import Block, Document, Facts, Folded, Heading, Markup, Page, Table
from builder.reading.addresses import address, free
from builder.render.escaping import plain_html

Anchors = Mapping[str, Mapping[str, str]]
"""The ids of each page, by page key and by anchor as the document gives it."""


def anchors_of(document: Document) -> Anchors:
    """
    The ids of each page.

    Raises
    ------
    ValueError
        If two pages have one key, or a page gives one anchor twice.
    """
    found: dict[str, Mapping[str, str]] = {}
    for page in document.pages:
        if page.key in found:
            raise ValueError(f"page keys must differ, got {page.key!r} twice")
        found[page.key] = ids_on(page)
    return found


def ids_on(page: Page) -> Mapping[str, str]:
    """
    The id of each anchor of one page: its address, or where another anchor has that address
    already, the next that is free.
    """
    found: dict[str, str] = {}
    taken: set[str] = set()
    for anchor in anchors_within(page.blocks):
        if anchor in found:
            raise ValueError(f"anchors on page {page.key!r} must differ, got {anchor!r} twice")
        found[anchor] = free(address(anchor), taken)
        taken.add(found[anchor])
    return found


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
    """The anchor, or nothing."""
    return (anchor,) if anchor else ()


def id_of(anchor: str, page: Mapping[str, str]) -> str:
    """The id that an anchor has on its page; empty where there is none such."""
    if anchor in page or not anchor:
        return page.get(anchor, "")
    wanted = address(anchor)
    return wanted if wanted in page.values() else ""


def target(page: str, anchor: str, *, ending: str, anchors: Anchors) -> Markup:
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
        return plain_html(f"{page}.{ending}")
    found = id_of(anchor, anchors[page])
    if not found:
        known = ", ".join(sorted(anchors[page].values()))
        raise ValueError(f"anchor must be one of page {page!r} ({known}), got {anchor!r}")
    return plain_html(f"{page}.{ending}#{found}")
