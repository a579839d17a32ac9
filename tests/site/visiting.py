"""A visit to the site that notes what must not happen: errors, and requests to anywhere else."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from builder.site import build as building
from builder.site.guides import guides_folder

PHONE = {"width": 390, "height": 844}
DESK = {"width": 1440, "height": 900}


@contextmanager
def visit(browser: Browser, address: str, **context: Any) -> Iterator[Page]:
    """
    A page at no address yet.

    On leaving, any error in it, and any request that went elsewhere, fails the test.
    """
    opened = browser.new_context(**{"viewport": DESK, **context})
    page = opened.new_page()
    wrong: list[str] = []
    page.on(
        "console",
        lambda message: (
            wrong.append(message.text) if message.type in ("error", "warning") else None
        ),
    )
    page.on("pageerror", lambda error: wrong.append(str(error)))
    # A request that is given up because the reader goes on to another page is no failure.
    page.on(
        "requestfailed",
        lambda request: (
            wrong.append(f"failed: {request.url}")
            if request.failure != "net::ERR_ABORTED"
            else None
        ),
    )
    page.on(
        "request",
        lambda request: (
            wrong.append(f"elsewhere: {request.url}")
            if not request.url.startswith((address, "data:"))
            else None
        ),
    )
    try:
        yield page
        page.wait_for_load_state("networkidle")
    finally:
        opened.close()
    assert wrong == [], wrong


@contextmanager
def own_guides() -> Iterator[None]:
    """The project's own guides, in place of the sample's that the other tests here stand on."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(building, "guides_folder", guides_folder)
        yield


def ask(page: Page, words: str) -> list[str]:
    """Type into the search and return what each answer says."""
    page.locator(".search-input").fill("")
    page.locator(".search-input").press_sequentially(words)
    page.wait_for_function(
        "words => document.querySelector('.answers').dataset.asked === words", arg=words
    )
    return [text.replace("\u00a0", " ") for text in page.locator(".answers a").all_inner_texts()]
