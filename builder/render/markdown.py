"""
A document as Markdown pages by path, with the files beside them.

Plain data: nothing here knows the site generator.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath

import yaml

from builder.document import (
    Attachment,
    Bullets,
    Document,
    Heading,
    Markup,
    Page,
    Paragraph,
    Table,
)
from builder.reading.addresses import address, free
from builder.render.blocks import Scribe, level
from builder.render.escaping import plain_html, shown
from builder.render.inline import markdown_linker, written
from builder.render.markup import joined, markup
from builder.render.references import Anchors, anchors_of, id_of

TITLE = "the_title"
"""The anchor of a page's title. No other anchor has an underscore, so none can meet it."""


@dataclass(frozen=True, slots=True)
class NavigationEntry:
    """One page in the navigation. ``title`` is HTML, already escaped."""

    title: str
    path: str


@dataclass(frozen=True, slots=True)
class NavigationGroup:
    """Pages under one title. ``title`` is HTML, already escaped."""

    title: str
    entries: tuple[NavigationEntry, ...]


Navigation = tuple[NavigationEntry | NavigationGroup, ...]


@dataclass(frozen=True, slots=True)
class Rendered:
    """
    Markdown as text and other files as bytes, by path in the site, and the navigation over the
    pages.
    """

    pages: dict[str, str | bytes]
    navigation: Navigation


def render(document: Document) -> Rendered:
    """
    Render a document.

    Raises
    ------
    ValueError
        If a link points to a page or anchor that is not there, an anchor or a path comes twice, or
        a table's parts do not fit.
    """
    anchors = anchors_of(document)
    files = attached(document.files)
    scribe = Scribe(anchors, files)
    pages = {f"{named(page)}.md": page_text(page, scribe) for page in document.pages}
    return Rendered({**pages, **files, **scribe.files}, navigation_of(document.pages))


def attached(files: Sequence[Attachment]) -> dict[str, str | bytes]:
    """The document's own files by path; a path stays inside the site."""
    found: dict[str, str | bytes] = {}
    for file in files:
        path = PurePosixPath(file.path)
        if (
            path.is_absolute()
            or ".." in path.parts
            or str(path) != file.path
            or path.suffix in {".md", ".html"}
            or path.name.startswith(".")
        ):
            raise ValueError(
                f"path of a file must be relative, inside the site and no page, got {file.path!r}"
            )
        if file.path in found:
            raise ValueError(f"paths of files must differ, got {file.path!r} twice")
        found[file.path] = file.content
    return found


def named(page: Page) -> str:
    """The page's key, checked, for it becomes a file name and an address."""
    if address(page.key) != page.key:
        raise ValueError(
            f"key of a page must be small letters, digits and hyphens, got {page.key!r}"
        )
    return page.key


def page_text(page: Page, scribe: Scribe) -> str:
    """A page: front matter, title, blocks."""
    head = {"title": str(plain_html(page.title))}
    if page.summary:
        head["description"] = str(plain_html(page.summary))
    front = yaml.safe_dump(head, allow_unicode=True, sort_keys=True, width=1_000_000)
    title = markup("# {} {{: #{} }}", shown(page.title), plain_html(TITLE))
    scribe.page = page.key
    body = joined((title, *blocks_text(page, scribe)), "\n\n")
    return f"---\n{front}---\n\n{body}\n"


def blocks_text(page: Page, scribe: Scribe) -> Iterator[Markup]:
    """The blocks: headings, paragraphs and lists as Markdown, the rest as HTML."""
    ids = scribe.anchors[page.key]
    taken = set(ids.values())
    headed = ""
    for block in page.blocks:
        headed = block.text if isinstance(block, Heading) else headed
        match block:
            case Heading():
                found = id_of(block.anchor, ids) if block.anchor else made_id(block, taken)
                marks = Markup("#" * level(block))
                yield markup("{} {} {{: #{} }}", marks, shown(block.text), plain_html(found))
            case Paragraph() | Bullets():
                yield prose(block, scribe.anchors)
            case Table() if block.summary == headed:
                # The heading says it already; only a reader who hears the table by itself needs it
                # again.
                heard = '<caption class="heard">'
                yield Markup(scribe.html(block).replace("<caption>", heard, 1))
            case _:
                yield scribe.html(block)


def prose(block: Paragraph | Bullets, anchors: Anchors) -> Markup:
    """A paragraph or a list as Markdown, whose links the generator checks once more."""
    link = markdown_linker(anchors)
    if isinstance(block, Paragraph):
        return stripped(written(block.words, link))
    return joined((markup("* {}", stripped(written(each, link))) for each in block.entries), "\n")


def stripped(words: Markup) -> Markup:
    """Words without blanks at their ends."""
    return Markup(words.strip(" "))


def made_id(heading: Heading, taken: set[str]) -> str:
    """An id made from the words of a heading, that nothing else has."""
    found = free(address(heading.text), taken)
    taken.add(found)
    return found


def navigation_of(pages: Sequence[Page]) -> Navigation:
    """The pages in their order; those of one group stand together where the group comes first."""
    found: dict[str, list[NavigationEntry]] = {}
    for page in pages:
        found.setdefault(page.group or f"\0{page.key}", []).append(
            NavigationEntry(plain_html(page.title), f"{page.key}.md")
        )
    return tuple(part for group, entries in found.items() for part in parts(group, entries))


def parts(group: str, entries: list[NavigationEntry]) -> Navigation:
    """A group as one part, pages without a group as themselves."""
    return (
        tuple(entries)
        if group.startswith("\0")
        else (NavigationGroup(plain_html(group), tuple(entries)),)
    )


__all__ = ["Navigation", "NavigationEntry", "NavigationGroup", "Rendered", "render"]
