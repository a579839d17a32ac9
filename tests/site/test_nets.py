"""The net under the pages: a link that was cut, a word that every object of the language has."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.site.visiting import visit

pytestmark = pytest.mark.browser


def test_an_address_that_was_cut_on_the_way_is_told(browser: Browser, demo: Path) -> None:
    with visit(browser, demo.as_uri()) as page:
        for end in ("#show=%7B%22act%22%3A%22B%C3%", "#show=%7B%22act%22", "#day="):
            page.goto("about:blank")
            page.goto(f"{demo.as_uri()}/check.html{end}")
            assert page.locator("p.check-problem[role=alert]").first.inner_text() == (
                "The address of this page cannot be read, so nothing of the show came with it. It"
                " was probably cut on the way: ask for it again, or for the rider file."
            )


def test_a_link_to_a_line_that_was_cut_leads_to_its_page(browser: Browser, demo: Path) -> None:
    with visit(browser, demo.as_uri()) as page:
        page.goto(f"{demo.as_uri()}/rigging.html#point-%E0%")
        assert page.locator("h1").first.is_visible()


@pytest.mark.parametrize("word", ["constructor", "toString", "__proto__", "hasOwnProperty"])
def test_a_word_that_every_object_has_is_searched_like_any_other(
    browser: Browser, demo: Path, word: str
) -> None:
    with visit(browser, demo.as_uri()) as page:
        page.goto(f"{demo.as_uri()}/index.html")
        page.locator(".search-input").fill(word)
        page.wait_for_function("() => document.querySelector('.search-told').textContent !== ''")
        page.wait_for_function(
            "() => !document.querySelector('.search-told').textContent.startsWith('Fetching')"
        )
        assert "found" in page.locator(".search-told").inner_text().lower()
