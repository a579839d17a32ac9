"""
A document as Markdown pages by path, with the files beside them.

Plain data: nothing here knows the site generator.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
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
    """
    Pages under one title. ``title`` is HTML, already escaped. ``is_folded`` where they show only
    while one of them is read.
    """

    title: str
    entries: tuple[NavigationEntry, ...]
    is_folded: bool = False


Navigation = tuple[NavigationEntry | NavigationGroup, ...]


@dataclass(frozen=True, slots=True)
class Rendered:
    """
    Markdown as text and other files as bytes, by path in the site, and the navigation over the
    pages.
    """

    pages: dict[str, str | bytes]
    navigation: Navigation


@dataclass(frozen=True, slots=True)
class WrittenPage:
    """A page as it was written, with the drawings beside it and the photos that it shows."""

    page: Page
    text: str
    drawings: Mapping[str, bytes]
    photos: Mapping[str, str | bytes]


@dataclass(slots=True)
class PagesBefore:
    """
    The pages that were written last, kept by whoever writes them again after each edit. A page is
    taken from here where nothing that it is made of is another: its blocks, the photos that it
    shows, and where the links of any page lead.
    """

    anchors: Anchors = field(default_factory=dict)
    pages: dict[str, WrittenPage] = field(default_factory=dict)


def render(document: Document, before: PagesBefore | None = None) -> Rendered:
    """
    Render a document; pages that are the same as ``before`` are not written again, and what is
    written is kept there for the next time.

    Raises
    ------
    ValueError
        If a link points to a page or anchor that is not there, an anchor or a path comes twice, or
        a table's parts do not fit.
    """
    anchors = anchors_of(document)
    files = attached(document.files)
    kept = before.pages if before and before.anchors == anchors else {}
    written = {named(page): written_page(page, anchors, files, kept) for page in document.pages}
    if before is not None:
        before.anchors, before.pages = anchors, written
    drawings: dict[str, bytes] = {}
    for each in written.values():
        drawings |= unlike(each.drawings, drawings)
    pages = {f"{key}.md": each.text for key, each in written.items()}
    return Rendered({**pages, **files, **drawings}, navigation_of(document.pages))


def written_page(
    page: Page,
    anchors: Anchors,
    files: Mapping[str, str | bytes],
    kept: Mapping[str, WrittenPage],
) -> WrittenPage:
    """A page, written now or kept from the last time."""
    known = kept.get(page.key)
    if known and known.page == page and is_shown_still(known.photos, files):
        return known
    scribe = Scribe(anchors, files)
    text = page_text(page, scribe)
    return WrittenPage(page, text, scribe.files, scribe.photos)


def is_shown_still(photos: Mapping[str, str | bytes], files: Mapping[str, str | bytes]) -> bool:
    """Whether the photos of a page are there, and the same."""
    return all(files.get(path) == content for path, content in photos.items())


def unlike(drawings: Mapping[str, bytes], others: Mapping[str, bytes]) -> Mapping[str, bytes]:
    """
    The drawings of a page beside those of other pages.

    Raises
    ------
    ValueError
        If two of one name are not the same.
    """
    for path, content in drawings.items():
        if others.get(path, content) != content:
            raise ValueError(f"names of pictures must differ, got {path!r} twice")
    return drawings


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
            NavigationEntry(plain_html(page.menu or page.title), f"{page.key}.md")
        )
    folded = {page.group for page in pages if page.is_folded}
    return tuple(
        part for group, entries in found.items() for part in parts(group, entries, group in folded)
    )


def parts(group: str, entries: list[NavigationEntry], is_folded: bool) -> Navigation:
    """A group as one part, pages without a group as themselves."""
    return (
        tuple(entries)
        if group.startswith("\0")
        else (NavigationGroup(plain_html(group), tuple(entries), is_folded),)
    )


__all__ = ["Navigation", "NavigationEntry", "NavigationGroup", "Rendered", "render"]
