"""The demo's whole site in a real browser: what a visitor looks for is found, and every page fits a phone."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from builder.files import published
from builder.site.build import build_document
from tests.site.conftest import served
from tests.site.visiting import PHONE, ask, own_guides, visit

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("demo")]
ROOT = Path(__file__).parent.parent.parent


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's site, with the project's own guides."""
    site = tmp_path_factory.mktemp("whole-demo") / "site"
    with own_guides():
        build_document(published(ROOT / "venue"), site)
    return site


@pytest.fixture(scope="module")
def on_a_server(demo: Path) -> Iterator[str]:
    """The demo's address on a server."""
    yield from served(demo)


@pytest.fixture(params=["http", "file"])
def place(request: pytest.FixtureRequest, demo: Path, on_a_server: str) -> str:
    """The demo's address, once on a server and once in a folder."""
    return on_a_server if request.param == "http" else demo.as_uri()


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("R4-3", "R4-3"),
        ("r4-3", "R4-3"),
        ("IEC 60309 63 A", "IEC 60309 63 A"),
        ("Vellum 8", "Vellum 8"),
        ("curfew", "Curfew"),
        ("forklift", "Forklifts and lifts"),
        ("Basin Lane", "Basin Lane"),
    ],
)
def test_a_visitor_finds_a_point_a_connector_a_microphone_a_page(browser: Browser, place: str, words: str, told: str) -> None:
    with visit(browser, place) as page:
        page.goto(f"{place}/index.html")
        answers = ask(page, words)
        # The page that holds it stands first, the line itself right under it.
        assert any(told.lower() in answer.splitlines()[0].lower() for answer in answers[:3]), answers[:3]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_page_fits_a_phone(browser: Browser, demo: Path, on_a_server: str, scheme: str) -> None:
    wide = []
    with visit(browser, on_a_server, viewport=PHONE, color_scheme=scheme) as page:
        for name in sorted(path.name for path in demo.glob("*.html")):
            page.goto(f"{on_a_server}/{name}")
            if page.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth"):
                wide.append(name)
    assert wide == []


def test_every_page_with_figures_shows_a_caution(browser: Browser, demo: Path) -> None:
    address = demo.as_uri()
    with visit(browser, address) as page:
        for name in ("index", "access", "stage", "rigging", "sound", "sound-coverage", "power", "workings"):
            page.goto(f"{address}/{name}.html")
            assert page.locator(".caution", has_text="Planning figures").first.is_visible(), name
