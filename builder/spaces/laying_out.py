"""
The document of a house of several stages: what all share, then the pages of each space, laid out as
those of a house of one stage.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from builder.document import Document, Entry, Page
from builder.house_only.withholding import shown
from builder.overview import overview_pages
from builder.overview.closures import closed_alone
from builder.overview.spaces import (
    SpaceOverview,
    comparison_page,
    home_of_spaces,
    space_page_blocks,
)
from builder.pack import Pack, Space
from builder.spaces.joining import house_of, spaces_of
from builder.spaces.paging import HOME, Scope, headline_entries, page_of_space

COMPARISON = "spaces"
OF_ALL = frozenset({"findings", "changes", "glossary", COMPARISON})
"""Pages that look over the whole house."""
WORKINGS = "workings"


@dataclass(frozen=True, slots=True)
class LaidOut:
    """The document of a pack of one stage, and the answers that stand on its first page."""

    document: Document
    headlines: Sequence[Entry]


def pages_of_spaces(pack: Pack, lay_out: Callable[[Pack], LaidOut]) -> Document:
    """
    The document of a house of several stages. ``lay_out`` lays out a pack of one stage.
    """
    house = lay_out(house_of(pack))
    shared = list(department_pages(house_of(pack), house.document))
    keys = frozenset({page.key for page in shared} | {HOME, WORKINGS} | OF_ALL)
    pages: list[Page] = []
    overviews: list[SpaceOverview] = []
    for space, own in spaces_of(pack).items():
        told = lay_out(own)
        alone = [section.key for section in pack.sections if section.space == space.key]
        shares = {page.key for page in shared if not is_of(page, alone)}
        kept = list(pages_kept(told.document, shares))
        kept[0] = space_page(own, space, told.headlines)
        scope = Scope(space, frozenset(page.key for page in kept), keys)
        pages += [page_of_space(page, scope) for page in kept]
        overviews.append(
            SpaceOverview(
                space,
                headline_entries(told.headlines, scope),
                found_in(pack, space),
                closed_alone(own),
            )
        )
    home, *others = overview_pages(pack, house.headlines)
    del home
    workings = next(page for page in house.document.pages if page.key == WORKINGS)
    others = [workings if page.key == WORKINGS else page for page in others]
    first = home_of_spaces(pack, house_of(pack), overviews)
    return Document(
        pack.venue, (first, comparison_page(house_of(pack), overviews), *shared, *pages, *others)
    )


def space_page(pack: Pack, space: Space, headlines: Sequence[Entry]) -> Page:
    """The first page of a space, before its links know of the whole document."""
    blocks = tuple(space_page_blocks(shown(pack), space, headlines))
    return Page(HOME, space.name, blocks, summary=f"{space.name} of {pack.venue}.")


def found_in(pack: Pack, space: Space) -> int:
    """How many findings there are of a space."""
    return sum(1 for finding in pack.findings if finding.space == space.key)


def department_pages(house: Pack, document: Document) -> Iterator[Page]:
    """The pages of the departments that all share."""
    keys = [section.key for section in house.sections]
    for page in document.pages:
        if is_of(page, keys):
            yield page


def is_of(page: Page, departments: Sequence[str]) -> bool:
    """Whether a page is one of those of some departments."""
    return any(page.key == key or page.key.startswith(f"{key}-") for key in departments)


def pages_kept(document: Document, shared: set[str]) -> Iterator[Page]:
    """The pages that a space has for itself."""
    for page in document.pages:
        if page.key not in shared and page.key not in OF_ALL:
            yield page
