"""
Whatever a house writes into any free text of its files: the pages, the drawings by themselves and
the feed hold no element, attribute or link that the program did not write, and all can be read.
"""

import re
from collections.abc import Callable
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import markdown
import pytest

from builder.document import Document
from builder.files import read_folder, with_photos
from builder.pipeline import document_of, pack_of, venue_of
from builder.render.markdown import render
from builder.site.checking import check_files
from builder.site.engine import LATER_SCRIPT, SCRIPT, engine_scripts
from builder.site.finding import entries_script, searched
from tests.fields import free_texts, with_texts
from tests.laws import share
from tests.render.test_markdown import EXTENSIONS

ROOT = Path(__file__).parents[1]
LONGEST_NAME = 80
PAYLOADS = (
    " & thrust",
    '"><script>a()</script>',
    "' onload='a()' x='",
    "</text></svg><script>",
    "]]>--><svg/onload=a()>",
    "<a href='//e.example'>x",
    "[x](javascript:a())",
    "![x](//e.example/x)",
    "{: #x onclick=a() }",
    "&lt;b&gt; &#60;i&#62;",
    "`x` **y** | z | $w$",
    "{{ config }}{% raw %}",
    '\\ \\\\ \\" \\u003c',
    "//e.example www.e.example",
    "\u00e9\u00df \u6771 \u05e9 \U0001f39b\ufe0f",
)
SIGNS = "!?*#%&+~<>\"'"
Mark = tuple[str, frozenset[str]]


def behind(payload: str) -> Callable[[str], str]:
    """Each text with a payload behind it, within the length of a name where it is short."""

    def other(text: str) -> str:
        room = LONGEST_NAME - len(payload) if len(text) <= LONGEST_NAME else len(text)
        return text[:room].rstrip() + payload

    return other


def in_signs_alone(signs: str) -> Callable[[str], str]:
    """Each text as a word of signs of its own, so that no letter and no digit is left."""
    numbers: dict[str, int] = {}

    def other(text: str) -> str:
        number = numbers.setdefault(text, len(numbers) + 1)
        word = ""
        while number:
            number, place = divmod(number, len(signs))
            word += signs[place]
        return f"{signs[0]}{word}"

    return other


WAYS: dict[str, Callable[[], Callable[[str], str]]] = {
    **{payload: lambda payload=payload: behind(payload) for payload in PAYLOADS},  # type: ignore[misc]  # a lambda with its own payload
    "signs alone": lambda: in_signs_alone(SIGNS),
    "letters of another script": lambda: in_signs_alone("\u6771\u897f\u5357\u5317\u4e0a\u4e0b"),
    "long names": lambda: behind("\u9577" * 25),
}


class Elements(HTMLParser):
    """Every element of a page with the names of its attributes; its links, ids and scripts."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.marks: set[Mark] = set()
        self.links: set[str] = set()
        self.ids: list[str] = []
        self.values: set[tuple[str, str | None]] = set()
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take an element in."""
        self.marks.add((tag, frozenset(name for name, _ in attrs)))
        self.links |= {str(value) for name, value in attrs if name in ("href", "src")}
        self.ids += [str(value) for name, value in attrs if name == "id"]
        self.values |= {pair for pair in attrs if pair[0] in ("style", "class", "role", "type")}

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """The same for an element without an end."""
        self.handle_starttag(tag, attrs)


@cache
def demo() -> Any:
    """The demo's files."""
    return read_folder(ROOT / "venue")


def document(texts: dict[str, str]) -> Document:
    """All that a venue publishes."""
    photos = demo().photos
    return with_photos(document_of(pack_of(venue_of(texts, photos))), photos)


def html_of(text: str) -> str:
    """A page as a browser gets it, but for the theme."""
    return markdown.markdown(text.split("---\n", 2)[2], extensions=EXTENSIONS)


def pages_of(made: Document) -> dict[str, Elements]:
    """The pages of a document, as a browser reads them."""
    return {
        path.removesuffix(".md"): Elements(html_of(text))
        for path, text in render(made).pages.items()
        if isinstance(text, str) and path.endswith(".md")
    }


def drawings_of(made: Document) -> dict[str, ElementTree.Element]:
    """The drawings and the feed, each by itself; what cannot be parsed raises."""
    return {
        path: ElementTree.fromstring(content)  # noqa: S314 - what we wrote ourselves
        for path, content in render(made).pages.items()
        if isinstance(content, bytes) and path.endswith((".svg", ".xml"))
    }


def marks_of(drawn: ElementTree.Element) -> set[Mark]:
    """Every element of a drawing with the names of its attributes."""
    return {(str(each.tag), frozenset(each.attrib)) for each in drawn.iter()}


@cache
def plain() -> tuple[set[Mark], set[tuple[str, str | None]], set[Mark]]:
    """What the program writes for the demo as it is: elements, values, elements of drawings."""
    made = document(demo().texts)
    pages, drawings = pages_of(made).values(), drawings_of(made).values()
    return (
        {mark for page in pages for mark in page.marks} | {("bdi", frozenset())},
        {value for page in pages for value in page.values},
        {mark for drawn in drawings for mark in marks_of(drawn)},
    )


@pytest.mark.laws
@pytest.mark.parametrize("way", share(WAYS, law="no free text becomes more than text", usually=1))
def test_no_free_text_becomes_more_than_text(way: str) -> None:
    spots = free_texts(demo().texts)
    assert len(spots) > 1000
    made = document(with_texts(demo().texts, spots, WAYS[way]()))
    marks, values, drawn_marks = plain()
    pages, drawings = pages_of(made), drawings_of(made)
    for page in pages.values():
        assert page.marks <= marks
        assert page.values <= values
        assert len(page.ids) == len(set(page.ids))
    for drawn in drawings.values():
        assert marks_of(drawn) <= drawn_marks
    assert_links_lead_somewhere(pages, drawings, made)
    scripts = check_files(made)
    # The rules hold no word of a house: they are the same script for all.
    assert (scripts.pop(SCRIPT), scripts.pop(LATER_SCRIPT)) == engine_scripts()
    for script in (*scripts.values(), entries_script(searched(made))):
        assert "<" not in script


def assert_links_lead_somewhere(
    pages: dict[str, Elements], drawings: dict[str, ElementTree.Element], made: Document
) -> None:
    """Every link is one to a page, an id on it, or a file of the site."""
    places = {
        f"{name}.{ending}{aim}"
        for name, page in pages.items()
        for aim in ("", *(f"#{id_}" for id_ in page.ids))
        for ending in ("html", "md")
    }
    files = {*drawings, *(file.path for file in made.files)}
    for name, page in pages.items():
        own = {f"#{id_}" for id_ in page.ids}
        assert page.links - places - files - own == set(), name
    for path, drawn in drawings.items():
        aims = {str(each.get("href")) for each in drawn.iter() if each.get("href")}
        assert {aim.removeprefix("../") for aim in aims} - places == set(), path
        assert re.fullmatch(r"[a-z0-9/-]+\.(svg|xml)", path)
