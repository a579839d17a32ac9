"""
What 'Check your show' weighs, and that what only a rider file needs is loaded only then.
"""

import gzip
import json
from pathlib import Path
from urllib.parse import quote

import pytest
from playwright.sync_api import Browser, Page, Route

from builder.compiling.packing import as_loaded
from builder.site.engine import LATER_SCRIPT, SCRIPT
from tests.site.visiting import visit

pytestmark = pytest.mark.browser
ROOT = Path(__file__).parents[2]
RIDERS = ROOT / "tests" / "riders"
OWN = ("riders", "day_of_acts", "page")
"""The page's own scripts that load at once; the site joins them as they are loaded."""
MOST_B = 60_000
"""What the page, its scripts and the check may weigh, compressed, without the house's data."""
RISER = {
    "name": "Riser",
    "width": "2 m",
    "depth": "2 m",
    "at": {"across": "centre", "depth": "3 m US"},
}
PLAN = "assets/fit/plot_drawing.js"


def compressed_b(text: str) -> int:
    """What a text weighs on its way, in bytes."""
    return len(gzip.compress(text.encode(), 9))


def test_page_and_check_stay_below_their_weight(demo: Path) -> None:
    scripts = [(demo / f"assets/fit/{name}.js").read_text("utf-8") for name in OWN]
    page = compressed_b((demo / "check.html").read_text("utf-8"))
    own = compressed_b("".join(as_loaded(text) for text in scripts))
    check = compressed_b((demo / SCRIPT).read_text("utf-8"))
    # Each part is there: an empty one would pass below.
    assert min(page, own, check) > 1500
    assert page + own + check <= MOST_B


def loaded(page: Page) -> list[str]:
    """Note which scripts of the check a page asks for."""
    asked: list[str] = []
    page.on(
        "request",
        lambda request: (
            asked.append("assets/fit/" + request.url.rpartition("/")[2])
            if "/assets/fit/" in request.url
            else None
        ),
    )
    return asked


def test_files_and_plans_are_loaded_when_a_file_is_opened(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        asked = loaded(page)
        page.goto(f"{where}/check.html")
        page.locator("summary", has_text="Stage").first.click()
        page.get_by_label("Stage width, clear", exact=True).fill("60 ft")
        assert page.locator("#check-state").inner_text() == "short 1 short"
        assert asked == [SCRIPT]
        page.set_input_files(".check-file", RIDERS / "theatre.yml")
        page.locator("#check-acts button").nth(1).wait_for()
        assert asked == [SCRIPT, LATER_SCRIPT, PLAN]


def test_the_clock_of_a_day_loads_its_rules_when_it_is_typed(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        asked = loaded(page)
        page.goto(f"{where}/check.html")
        page.locator("summary", has_text="The day's clock").click()
        page.get_by_label("Load-in", exact=True).fill("10:00")
        page.get_by_label("Doors", exact=True).fill("19:00")
        page.locator("[data-part=clock] .check-verdict").first.wait_for()
        assert asked == [SCRIPT, LATER_SCRIPT, PLAN]


def test_saving_loads_them_too(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        asked = loaded(page)
        page.goto(f"{where}/check.html")
        page.locator("summary", has_text="Stage").first.click()
        page.get_by_label("Stage width, clear", exact=True).fill("60 ft")
        with page.expect_download() as download:
            page.get_by_role("button", name="Save as rider file").click()
        assert "60 ft" in Path(download.value.path()).read_text("utf-8")
        assert asked == [SCRIPT, LATER_SCRIPT, PLAN]


@pytest.mark.parametrize(
    ("show", "words"),
    [
        ({"act": "A", "plot": [RISER]}, "plot"),
        ({"act": "A", "hangs": [{"name": "Mains", "supports": [{"load": "900 kg"}]}]}, "hangs"),
        ({"act": "A", "clock": {"on stage": "21:00", "set": "90 min", "ends": "22:30"}}, "clock"),
    ],
)
def test_a_plan_that_comes_by_the_address_loads_its_rules(
    browser: Browser, where: str, show: dict[str, object], words: str
) -> None:
    with visit(browser, where) as page:
        asked = loaded(page)
        page.goto(f"{where}/check.html#show={quote(json.dumps(show))}")
        page.locator("#check-state .tag").wait_for()
        assert page.locator(f"[data-part={words}] .check-verdict").count() > 0
        assert asked == [SCRIPT, LATER_SCRIPT, PLAN]


def refused(browser: Browser, where: str, script: str) -> Page:
    """A page of the site to which one script does not come."""
    page = browser.new_page()

    def answer(route: Route) -> None:
        route.abort() if route.request.url.endswith(script) else route.continue_()

    page.route("**/*", answer)
    page.goto(f"{where}/check.html")
    return page


def test_a_check_that_does_not_come_is_said(browser: Browser, demo_over_http: str) -> None:
    page = refused(browser, demo_over_http, SCRIPT)
    assert "The check did not load" in page.get_by_role("alert").first.inner_text()
    assert page.get_by_label("Act", exact=True).is_visible()
    page.close()


def test_files_that_cannot_be_read_now_are_said_and_tried_again(
    browser: Browser, demo_over_http: str
) -> None:
    page = refused(browser, demo_over_http, LATER_SCRIPT)
    page.set_input_files(".check-file", RIDERS / "theatre.yml")
    told = page.get_by_role("alert").first
    told.wait_for()
    assert "A part of this page did not load" in told.inner_text()
    page.unroute_all()
    page.set_input_files(".check-file", RIDERS / "theatre.yml")
    page.locator("#check-state .tag").wait_for()
    assert told.is_hidden()
    page.close()


def test_the_form_stands_before_the_check_has_come(browser: Browser, demo_over_http: str) -> None:
    page = browser.new_page()
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route(f"**/{SCRIPT}", hold)
    page.goto(f"{demo_over_http}/check.html", wait_until="commit")
    page.get_by_label("Act", exact=True).fill("Early")
    assert page.locator("#check-state").inner_text() == "The check is loading."
    held[0].continue_()
    page.locator("#check-state", has_text="Nothing is asked yet.").wait_for()
    assert page.get_by_label("Act", exact=True).input_value() == "Early"
    page.close()
