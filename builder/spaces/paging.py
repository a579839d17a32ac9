"""Pages of a space within the document of the whole house: their keys, titles, links and files."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.document import (
    Block,
    Bullets,
    Caution,
    Entry,
    Facts,
    Folded,
    Headline,
    Inline,
    Link,
    Page,
    Paragraph,
    Picture,
    Row,
    Table,
    Words,
)
from builder.pack import Space
from builder.reading.addresses import address

HOME = "index"
SEPARATOR = "-"


@dataclass(frozen=True, slots=True)
class Scope:
    """A space, the pages that it has for itself by their plain keys, and those of all."""

    space: Space
    own: frozenset[str]
    shared: frozenset[str]

    def key(self, key: str) -> str:
        """The key of a page of the space within the whole document."""
        if key == HOME:
            return self.space.key
        return address(f"{self.space.key}{SEPARATOR}{key}")

    def link(self, link: Link) -> Inline:
        """A link from a page of the space; words alone where the house has no such page."""
        if link.page in self.own:
            return replace(link, page=self.key(link.page))
        return link if link.page in self.shared else link.text

    def anchor(self, aim: str) -> str:
        """A page with an anchor on it, as the first page's answers name it."""
        page, mark, anchor = aim.partition("#")
        if page in self.own:
            return f"{self.key(page)}{mark}{anchor}"
        return aim if page in self.shared else ""


def page_of_space(page: Page, scope: Scope) -> Page:
    """A page as the whole document has it: the title tells which space it is of."""
    name = scope.space.name
    title = name if page.key == HOME else f"{page.title}, {name}"
    return Page(
        scope.key(page.key),
        title,
        tuple(block_with(block, scope) for block in page.blocks),
        summary=f"{name}: {page.summary}" if page.summary and page.key != HOME else page.summary,
        group=name,
        menu="Overview" if page.key == HOME else page.title,
        is_folded=True,
    )


def block_with(block: Block, scope: Scope) -> Block:
    """A block whose links lead to pages of its space."""
    match block:
        case Paragraph():
            return replace(block, words=words_with(block.words, scope))
        case Bullets():
            return replace(block, entries=[words_with(each, scope) for each in block.entries])
        case Table():
            return replace(block, rows=[row_with(row, scope) for row in block.rows])
        case Facts():
            return replace(block, entries=[entry_with(each, scope) for each in block.entries])
        case Headline():
            return replace(block, entries=headline_entries(block.entries, scope))
        case Caution():
            return replace(block, words=words_with(block.words, scope))
        case Folded():
            return replace(block, blocks=[block_with(each, scope) for each in block.blocks])
        case Picture():
            return replace(block, name=f"{scope.space.key}{SEPARATOR}{block.name}")
        case _:
            return block


def row_with(row: Row, scope: Scope) -> Row:
    """A row whose links lead to pages of its space."""
    return replace(row, cells=[words_with(cell, scope) for cell in row.cells])


def entry_with(entry: Entry, scope: Scope) -> Entry:
    """A labelled value whose links lead to pages of its space."""
    return replace(
        entry, words=words_with(entry.words, scope), small=words_with(entry.small, scope)
    )


def headline_entries(entries: Sequence[Entry], scope: Scope) -> list[Entry]:
    """The first page's answers, each with the page of its space that tells more."""
    return [
        replace(entry_with(entry, scope), anchor=scope.anchor(entry.anchor)) for entry in entries
    ]


def words_with(words: Words, scope: Scope) -> Words:
    """Words whose links lead to pages of their space."""
    if isinstance(words, str):
        return words
    return [scope.link(each) if isinstance(each, Link) else each for each in words]
