"""The demo's whole site in a real browser: every page fits a phone, and every figure has its caution."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.site.visiting import PHONE, visit

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_page_fits_a_phone(browser: Browser, demo: Path, demo_over_http: str, scheme: str) -> None:
    wide = []
    with visit(browser, demo_over_http, viewport=PHONE, color_scheme=scheme) as page:
        for name in sorted(path.name for path in demo.glob("*.html")):
            page.goto(f"{demo_over_http}/{name}")
            if page.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth"):
                wide.append(name)
    assert wide == []


def test_every_page_with_figures_shows_a_caution(browser: Browser, demo: Path) -> None:
    address = demo.as_uri()
    with visit(browser, address) as page:
        for name in ("index", "access", "stage", "rigging", "sound", "sound-coverage", "power", "workings"):
            page.goto(f"{address}/{name}.html")
            assert page.locator(".caution", has_text="Planning figures").first.is_visible(), name
