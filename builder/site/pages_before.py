"""
Pages as the generator made them from Markdown, kept while a venue is served: reading the Markdown
of a whole pack takes as long as everything else together, and an edit changes a page or two.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page as SitePage
from mkdocs.structure.toc import TableOfContents


@dataclass(frozen=True, slots=True)
class FromMarkdown:
    """
    What became of a page's Markdown: all that the generator keeps of it beside the text. Links to
    anchors are by the path of the page that they lead to.
    """

    markdown: str
    paths: frozenset[str]
    title: str | None
    html: str
    contents: TableOfContents
    anchors: set[str] | None
    links: Mapping[str, dict[str, str]] | None


class MarkdownBefore:
    """The pages of the last build, by path."""

    def __init__(self) -> None:
        self.pages: dict[str, FromMarkdown] = {}

    def is_known(self, page: SitePage, markdown: str, files: Files) -> bool:
        """Whether a page has the Markdown of the last build, and the same files to link to."""
        known = self.pages.get(page.file.src_uri)
        return known is not None and known.markdown == markdown and known.paths == paths_of(files)

    def give(self, page: SitePage, files: Files) -> str:
        """The HTML of the last build; the page is told its contents, anchors and links."""
        known = self.pages[page.file.src_uri]
        page.markdown = known.markdown
        page.title = known.title
        page.toc = known.contents
        page.present_anchor_ids = known.anchors
        if known.links is not None:
            page.links_to_anchors = {
                file_at(path, files): anchors for path, anchors in known.links.items()
            }
        return known.html

    def keep(self, page: SitePage, html: str, files: Files) -> None:
        """Keep what became of a page's Markdown."""
        links: Any = page.links_to_anchors
        self.pages[page.file.src_uri] = FromMarkdown(
            page.markdown or "",
            paths_of(files),
            page.title,
            html,
            page.toc,
            page.present_anchor_ids,
            None if links is None else {file.src_uri: anchors for file, anchors in links.items()},
        )


def paths_of(files: Files) -> frozenset[str]:
    """Where every file of a site comes from: what a link may lead to."""
    return frozenset(file.src_uri for file in files)


def file_at(path: str, files: Files) -> File:
    """
    The file at a path.

    Raises
    ------
    ValueError
        If there is none.
    """
    found = files.get_file_from_path(path)
    if found is None:
        raise ValueError(f"path must be a file of the site, got {path!r}")
    return found
