"""
A document as Markdown pages by path, with the files beside them.

Plain data: nothing here knows the site generator.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath

import yaml

from builder.document import Attachment, Bullets, Document, Heading, Page, Paragraph, Table
from builder.render.blocks import NAME, Scribe, level
from builder.render.escaping import plain_html, shown, slug
from builder.render.inline import markdown_linker, written
from builder.render.references import Anchors, anchors_of

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
    if not NAME.fullmatch(page.key):
        raise ValueError(
            f"key of a page must be small letters, digits and hyphens, got {page.key!r}"
        )
    return page.key


def page_text(page: Page, scribe: Scribe) -> str:
    """A page: front matter, title, blocks."""
    head = {"title": plain_html(page.title)} | (
        {"description": plain_html(page.summary)} if page.summary else {}
    )
    front = yaml.safe_dump(head, allow_unicode=True, sort_keys=True, width=1_000_000)
    body = "\n\n".join((f"# {shown(page.title)} {{: #{TITLE} }}", *blocks_text(page, scribe)))
    return f"---\n{front}---\n\n{body}\n"


def blocks_text(page: Page, scribe: Scribe) -> Iterator[str]:
    """The blocks: headings, paragraphs and lists as Markdown, the rest as HTML."""
    taken = set(scribe.anchors[page.key])
    headed = ""
    for block in page.blocks:
        headed = block.text if isinstance(block, Heading) else headed
        match block:
            case Heading():
                yield f"{'#' * level(block)} {shown(block.text)} {{: #{anchor_of(block, taken)} }}"
            case Paragraph() | Bullets():
                yield prose(block, scribe.anchors)
            case Table() if block.summary == headed:
                # The heading says it already; only a reader who hears the table by itself needs it
                # again.
                yield scribe.html(block).replace("<caption>", '<caption class="heard">', 1)
            case _:
                yield scribe.html(block)


def prose(block: Paragraph | Bullets, anchors: Anchors) -> str:
    """A paragraph or a list as Markdown, whose links the generator checks once more."""
    link = markdown_linker(anchors)
    if isinstance(block, Paragraph):
        return written(block.words, link).strip(" ")
    return "\n".join(f"* {written(entry, link).strip(' ')}" for entry in block.entries)


def anchor_of(heading: Heading, taken: set[str]) -> str:
    """The heading's own anchor, or one made from its words that no other has."""
    if heading.anchor:
        return slug(heading.anchor)
    wanted = slug(heading.text) if any(char.isalnum() for char in heading.text) else "part"
    count = 1
    found = wanted
    while found in taken:
        count += 1
        found = f"{wanted}-{count}"
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
