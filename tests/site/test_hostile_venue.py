"""
A venue whose every free text is hostile: from YAML to the browser, it is read as the text it is.
"""

from itertools import cycle
from pathlib import Path
from typing import Any, get_args

import pytest
import yaml
from playwright.sync_api import Browser

from builder.files import read_folder
from builder.keys import records_of
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.nodes import compose
from builder.reading.words import Text
from builder.registry import DEPARTMENTS
from builder.render.escaping import visible
from builder.site.build import build_document
from builder.starter import write_starter
from tests.render.hostile import HOSTILE
from tests.site.visiting import own_guides, visit

pytestmark = pytest.mark.browser
PROSE = Text.__metadata__[0]  # type: ignore[attr-defined]
WRITABLE = [text for text in HOSTILE if text.isprintable()]
"""Texts that a file can hold: control characters are refused while reading."""


def prose_keys() -> set[str]:
    """Keys that hold free text wherever they stand, and nothing else anywhere."""
    fields = [
        (
            field.alias or name,
            PROSE in field.metadata
            or any(
                PROSE in getattr(part, "__metadata__", ()) for part in get_args(field.annotation)
            ),
        )
        for department in DEPARTMENTS
        for record in (department.description, *records_of(department.description))
        for name, field in record.model_fields.items()
    ]
    return {name for name, is_prose in fields if is_prose} - {
        name for name, is_prose in fields if not is_prose
    }


def hostile_texts(folder: Path) -> dict[str, str]:
    """A venue's files with every free text replaced, each hostile text in turn."""
    keys, turn = prose_keys(), cycle(WRITABLE)

    def replaced(value: Any, key: str = "") -> Any:
        if isinstance(value, dict):
            return {name: replaced(part, name) for name, part in value.items()}
        if isinstance(value, list):
            return [replaced(part, key) for part in value]
        return next(turn) if key in keys and value not in ("unknown", "none") else value

    return {
        name: yaml.safe_dump(
            replaced(compose(text, name).data), allow_unicode=True, sort_keys=False
        )
        for name, text in read_folder(folder).texts.items()
    }


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The starting venue with a note on each of its lines."""
    folder = tmp_path_factory.mktemp("noted") / "venue"
    write_starter(folder)
    house = folder / "house.yml"
    troubles = "\n".join(
        f"  - {{what: Spot {number}, do: Mind it.}}" for number in range(len(WRITABLE))
    )
    text = house.read_text("utf-8").replace("trouble_spots:\n", f"trouble_spots:\n{troubles}\n")
    house.write_text(text, "utf-8")
    return folder


@pytest.fixture(scope="module")
def site(folder: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its site."""
    site = tmp_path_factory.mktemp("hostile-venue") / "site"
    with own_guides():
        build_document(document_of(pack_of(venue_of(hostile_texts(folder)))), site)
    return site


def test_enough_hostile_texts_go_through_the_files() -> None:
    assert len(WRITABLE) >= 20


def test_every_hostile_text_of_the_files_is_shown_as_it_is(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        page.goto(f"{site.as_uri()}/index.html")
        shown = "".join(page.locator("article").inner_text().split())
        assert [text for text in WRITABLE if "".join(visible(text).split()) not in shown] == []


def test_no_page_runs_or_grows_what_the_files_say(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        for path in sorted(site.glob("*.html")):
            if path.name == "404.html":
                continue
            page.goto(path.as_uri())
            assert page.evaluate("window.__hostile") is None, path.name
            planted = page.locator(
                "article :is(script, iframe, math, img[src='x'], [onclick], [onload], [onerror],"
                " [ontoggle], [onmouseover])"
            )
            assert planted.count() == 0, path.name
            assert (
                page.locator(
                    "article a[href^='javascript:'], article a[href^='file:///etc']"
                ).count()
                == 0
            ), path.name
