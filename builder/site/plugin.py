"""The bridge to the site generator: our pages become its files, our problems its errors."""

import html as html_module
import logging
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from mkdocs.config import config_options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as SitePage

from builder.document import Document
from builder.files import published, state_of, write_whole
from builder.pipeline import Memory
from builder.reading.failing import program_failed
from builder.reading.problems import Refused
from builder.render.escaping import plain_html
from builder.render.frames import framed_tables
from builder.render.markdown import NavigationEntry, NavigationGroup, PagesBefore, Rendered, render
from builder.site.bundling import Bundles
from builder.site.checking import PAGE, TITLE, check_files
from builder.site.finding import ENTRIES, GUIDE_WEIGHT, Searched, entries_script, searched
from builder.site.guide_parts import guide_lines
from builder.site.guides import guide_navigation
from builder.site.imprint import Imprint, edition_css, imprint_of
from builder.site.pages_before import MarkdownBefore
from builder.site.problems import counted, nothing_yet, problems_html, told

GUIDES = "Guides"
# What the theme brings and our pages never ask for: its own style sheets, scripts and mark.
UNUSED = re.compile(
    r"assets/stylesheets/.*|assets/javascripts/.*|assets/images/favicon\.png|.*\.scss"
)
log = logging.getLogger("mkdocs.plugins.housepack")


@dataclass(frozen=True, slots=True)
class Made:
    """A document with its pages and its imprint."""

    document: Document
    rendered: Rendered
    imprint: Imprint


def made_of(document: Document, before: PagesBefore) -> Made:
    """Render a document; what is the same as before is not rendered again."""
    return Made(document, render(document, before), imprint_of(document))


class PackPluginConfig(Config):  # type: ignore[no-untyped-call]  # the generator's base has an untyped hook
    """What the site's configuration may say to the plugin."""

    venue = config_options.Type(str, default="venue")


class PackPlugin(BasePlugin[PackPluginConfig]):  # type: ignore[no-untyped-call]  # as above
    """
    Adds a venue's pages to the site.

    While building, a description that cannot be read ends the build with every problem. While
    serving, the last good pages stay, and the problems stand in sight on each and in the log.
    """

    def __init__(self) -> None:
        super().__init__()
        self.serving = False
        self.given: Document | None = None
        self.good: Made | None = None
        self.was_good = False
        self.read_as: tuple[tuple[str, int, int], ...] = ()
        self.problems: tuple[str, ...] = ()
        self.guides: list[Searched] = []
        self.bundles = Bundles()
        self.is_known = False
        self.forget()

    def forget(self) -> None:
        """Forget what earlier builds of a venue left for the next."""
        self.memory = Memory()
        self.pages_before = PagesBefore()
        self.markdown_before = MarkdownBefore()

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """
        Remember whether someone is watching.

        Having this hook makes the generator keep the instance for the life of the process: what was
        good before a rebuild is still known after it, and what an earlier build left must go.
        """
        self.serving = command == "serve"
        self.given, self.good, self.problems, self.was_good = None, None, (), False
        self.forget()

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read the venue and put its name and revision where the theme finds them."""
        self.good = self._current(self._venue(config))
        imprint = self.good.imprint
        # The theme prints both raw.
        config.site_name = plain_html(imprint.venue)
        config.extra["imprint"] = {
            "number": plain_html(imprint.number),
            "on": plain_html(imprint.on),
            "fingerprint": plain_html(imprint.fingerprint),
            "serving": self.serving,
        }
        config.extra["problems"] = problems_html(self.problems, pages=self.was_good)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add our pages beside the guides and put both into the navigation."""
        rendered = self._good().rendered
        self.guides = []
        self.bundles = Bundles()
        for unused in [file for file in files if UNUSED.match(file.src_uri)]:
            files.remove(unused)
        guides = [file.src_uri for file in files.documentation_pages()]
        for path, content in rendered.pages.items():
            if files.get_file_from_path(path) is not None:
                raise PluginError(
                    f"docs/{path} would hide the page of that name which the venue's description"
                    " makes; give the guide another name"
                )
            files.append(File.generated(config, path, content=content))
        files.append(
            File.generated(config, "assets/edition.css", content=edition_css(self._good().imprint))
        )
        checking = check_files(self._good().document)
        for path, content in checking.items():
            files.append(File.generated(config, path, content=content))
        config.nav = navigation(rendered, guides, config.nav)
        if checking:
            config.nav.insert(1, {TITLE: PAGE})
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        """
        Date every page by the revision, so that two builds of one revision are the same bytes on
        any day; and fold the pages of each space of the house, short or long, until one is read.
        """
        firsts = folded_at(self._good().rendered.navigation)
        for item in nav.items:
            pages = item.children or []
            item.is_folded = any(
                isinstance(page, SitePage) and page.file.src_uri in firsts for page in pages
            )
        for file in files.documentation_pages():
            if file.page is not None:
                file.page.update_date = self._good().imprint.on
        return nav

    def on_page_markdown(
        self, markdown: str, *, page: SitePage, config: MkDocsConfig, files: Files
    ) -> str:
        """Leave the generator nothing to read where it read the same while serving before."""
        self.is_known = self.serving and self.markdown_before.is_known(page, markdown, files)
        return "" if self.is_known else markdown

    def on_page_content(
        self, html: str, *, page: SitePage, config: MkDocsConfig, files: Files
    ) -> str:
        """
        Give a guide's tables the frame that ours have, and keep what it says for the search.
        """
        if self.is_known:
            html = self.markdown_before.give(page, files)
        elif self.serving:
            self.markdown_before.keep(page, html, files)
        if page.file.src_uri not in self._good().rendered.pages:
            title = html_module.unescape(str(page.title))
            self.guides.append(
                Searched(page.file.url, title, GUIDE_WEIGHT, guide_lines(html, title))
            )
            html = framed_tables(html)
        return html

    def on_post_page(self, output: str, *, page: SitePage, config: MkDocsConfig) -> str:
        """Ask once for what a page would ask for in many requests."""
        return self.bundles.page(output)

    def on_post_template(
        self, output_content: str, *, template_name: str, config: MkDocsConfig
    ) -> str:
        """The same for the page that is shown where there is none."""
        return (
            self.bundles.page(output_content) if template_name.endswith(".html") else output_content
        )

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """
        Write what pages ask for at once, and what the search knows: the pack's pages, then the
        guides.
        """
        self.bundles.write(Path(config.site_dir))
        guides = sorted(self.guides, key=lambda guide: guide.address)
        write_whole(
            Path(config.site_dir) / ENTRIES,
            entries_script((*searched(self._good().document), *guides)),
        )

    def on_serve(
        self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Any
    ) -> LiveReloadServer:
        """
        Rebuild when the description changes, also where it changed before somebody watched: the
        first build takes some seconds.
        """
        venue = self._venue(config)
        server.watch(str(venue))
        if state_of(venue) != self.read_as:
            builder()
        return server

    def _venue(self, config: MkDocsConfig) -> Path:
        beside = Path(config.config_file_path).parent if config.config_file_path else Path()
        return beside / self.config.venue

    def _good(self) -> Made:
        if self.good is None:
            raise PluginError("the pages are asked for before the venue was read")
        return self.good

    def _current(self, venue: Path) -> Made:
        before = self.problems
        self.read_as = state_of(venue) if self.serving else ()
        made = self._made(venue)
        for line in told(before, self.problems, pages=self.was_good):
            log.info(line)
        return made

    def _made(self, venue: Path) -> Made:
        try:
            made = made_of(self.given or published(venue, self.memory), self.pages_before)
            self.problems, self.was_good = (), True
            return made
        except Refused as refused:
            self.problems = tuple(str(problem) for problem in refused.problems)
        except Exception as error:
            if not self.serving:
                raise
            # While serving, an exception would leave every request waiting for ever; the page and
            # the terminal say it instead.
            log.debug("The pages could not be made", exc_info=True)
            self.problems = (str(program_failed(str(venue), error)),)
        if not self.serving:
            raise PluginError(
                "\n".join((f"{counted(len(self.problems))} in {venue}:", *self.problems))
            )
        return self.good or Made(*nothing_yet())


def navigation(rendered: Rendered, guides: list[str], written: list[Any] | None) -> list[Any]:
    """
    The generator's navigation: the pack first, then the guides in the order that the configuration
    gives, or by name.
    """
    guided = written if written is not None else guide_navigation(guides)
    return [
        *(navigated(part) for part in rendered.navigation),
        *([{GUIDES: guided}] if guided else []),
    ]


def folded_at(parts: Sequence[NavigationEntry | NavigationGroup]) -> frozenset[str]:
    """The pages of our navigation that show only while one beside them is read, by path."""
    groups = [part for part in parts if isinstance(part, NavigationGroup) and part.is_folded]
    return frozenset(entry.path for group in groups for entry in group.entries)


def navigated(part: NavigationEntry | NavigationGroup) -> dict[str, Any]:
    """One part of our navigation in the generator's form."""
    if isinstance(part, NavigationGroup):
        return {part.title: [navigated(entry) for entry in part.entries]}
    return {part.title: part.path}
