"""'Since I last looked' in a real browser: kept there, and only there."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

import builder.site.build as building
from builder.pipeline import document_of, pack_of, venue_of
from builder.site.build import build_document
from tests.site.conftest import served
from tests.stock.small import TEXTS

pytestmark = pytest.mark.browser
OLD = """\
entries:
  - {on: 2026-01-05, by: us, why: New desk.}
  - {on: 2026-02-03, by: us, why: Horn blown., did: out, file: sound.yml, line: Vellum 8}
"""
NEW = f"""\
{OLD}
  - {{on: 2026-02-03, by: us, why: Mended., did: back, file: sound.yml, line: Vellum 8}}
  - {{on: 2026-03-01, by: us, why: New stand.}}
"""


def build(folder: Path, log: str) -> None:
    """Build the small venue's site with a log."""
    build_document(document_of(pack_of(venue_of({**TEXTS, "log.yml": log}))), folder / "site")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the site as it was at the first visit."""
    guides = tmp_path / "guides"
    guides.mkdir()
    (guides / "read-a-pack.md").write_text("# How to read a pack\n", encoding="utf-8")
    monkeypatch.setattr(building, "guides_folder", lambda: guides)
    build(tmp_path, OLD)
    return tmp_path


@pytest.fixture
def address(folder: Path) -> Iterator[str]:
    """The page over http."""
    for root in served(folder):
        yield f"{root}/site/changes.html"


def shown(page: Page) -> list[str]:
    """The reasons in the rows that can be seen."""
    return [
        row.locator("td").last.inner_text()
        for row in page.locator("tbody tr").all()
        if row.is_visible()
    ]


def test_a_visitor_sees_what_is_new_since_they_last_looked(
    folder: Path, address: str, browser: Browser
) -> None:
    context = browser.new_context()
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(address)
    assert (
        page.locator("#since")
        .inner_text()
        .startswith("From your next visit on, this page marks what is new to you.")
    )
    build(folder, NEW)
    page.goto(address)
    assert (
        page.locator("#since").inner_text().startswith("2 changes are new since you last looked.")
    )
    assert page.locator("tbody .tag-note").count() == 2
    page.get_by_label("Only since I last looked").check()
    assert shown(page) == ["New stand. Us.", "Mended. Us."]
    page.get_by_label("Only since I last looked").uncheck()
    assert len(shown(page)) == 4
    page.get_by_label("Only since I last looked").check()
    page.evaluate("location.hash = document.querySelector('tr[hidden]').id")
    page.locator("tr:target").wait_for()
    assert len(shown(page)) == 4
    page.get_by_role("button", name="I have seen these").click()
    assert page.locator("tbody .tag-note").count() == 0
    page.reload()
    assert page.locator("#since").inner_text().startswith("Nothing is new since you last looked.")
    assert all(url.startswith(address.rsplit("/site/", 1)[0]) for url in asked)
    assert context.cookies() == []
    context.close()


def test_without_scripts_the_table_stands_as_written(address: str, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address)
    assert shown(page) == ["Horn blown. Us.", "New desk. Us."]
    context.close()
