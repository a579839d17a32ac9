"""
A row that a link or the search leads to is read under its own head, and no neighbour's numbers in
its place: every row of the demo, and the ways to come to one.
"""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.laws import share
from tests.site.visiting import DESK, PHONE, ask, visit

pytestmark = pytest.mark.browser

STANDING = (Path(__file__).parent / "standing.js").read_text("utf-8")
RIDERS = Path(__file__).parents[1] / "riders"
LINES = (
    "[...document.querySelectorAll('article tr[id], article .facts > [id]:is(:first-child,"
    " :last-child)')].map(line => line.id)"
)
"""Every row, and the first and last of each list of facts, which are all laid out alike."""
IN_FRAME_AND_LAST = "point-h-2"
"""The last of many rows, in a table that is too wide for either page."""
PRESSED = "link => link.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }))"
"""For links in a drawing too."""
ROWS_A_PAGE = 12
"""So many rows of each page are led to; `make laws` takes all."""
SCREENS = [
    pytest.param(PHONE, "dark", id="phone"),
    pytest.param(DESK, "light", id="desk"),
]


def wrong_with(page: Page, line: str) -> list[str]:
    """What is wrong with how a line stands; nothing where it stands as it should."""
    page.evaluate(STANDING)
    found: list[str] = page.evaluate("line => standing(line)", line)
    return found


@pytest.mark.laws
@pytest.mark.parametrize(("screen", "scheme"), SCREENS)
def test_every_row_reached_by_link_stands_whole_under_its_head_and_is_marked(
    browser: Browser, demo: Path, screen: dict[str, int], scheme: str
) -> None:
    wrong: dict[str, list[str]] = {}
    count = 0
    with visit(browser, demo.as_uri(), viewport=screen, color_scheme=scheme) as page:
        for name in sorted({path.stem for path in demo.glob("*.html")} - {"404"}):
            page.goto(f"{demo.as_uri()}/{name}.html", wait_until="domcontentloaded")
            lines = page.evaluate(LINES)
            page.evaluate(STANDING)
            count += len(lines)
            drawn = share(lines, law=f"rows of {name} on {scheme}", usually=ROWS_A_PAGE)
            wrong |= {
                f"{name}#{line}": told
                for line, told in page.evaluate("lines => allStanding(lines)", drawn).items()
            }
    assert count > 450
    assert wrong == {}


@pytest.mark.parametrize(("screen", "scheme"), SCREENS)
def test_a_row_stands_so_on_arrival_on_a_second_press_and_on_coming_back(
    browser: Browser, where: str, screen: dict[str, int], scheme: str
) -> None:
    row = IN_FRAME_AND_LAST
    with visit(browser, where, viewport=screen, color_scheme=scheme) as page:
        page.goto(f"{where}/rigging.html#{row}")
        assert wrong_with(page, row) == []
        page.evaluate("document.querySelector('.wide').scrollTop = 0; scrollTo(0, 0)")
        assert wrong_with(page, row) != []
        page.evaluate(
            "line => { const link = document.createElement('a'); link.href = '#' + line;"
            f" document.body.append(link); ({PRESSED})(link) }}",
            row,
        )
        page.wait_for_function("() => scrollY > 0")
        assert wrong_with(page, row) == []
        page.goto(f"{where}/power.html")
        page.go_back()
        page.wait_for_load_state()
        assert wrong_with(page, row) == []


def test_a_row_stands_so_again_on_coming_back_from_another_part_of_its_page(
    browser: Browser, where: str
) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/rigging.html")
        page.locator("a[href='#point-h-2']").first.focus()
        page.keyboard.press("Enter")
        page.wait_for_url("**#point-h-2")
        page.locator(".parts a").last.click()
        page.wait_for_url(lambda url: not url.endswith("#point-h-2"))
        assert wrong_with(page, "point-h-2") != []
        page.go_back()
        page.wait_for_url("**#point-h-2")
        assert wrong_with(page, "point-h-2") == []


@pytest.mark.parametrize(("screen", "scheme"), SCREENS)
def test_a_row_that_a_filter_hides_is_shown_to_whoever_follows_a_link_to_it(
    browser: Browser, demo_over_http: str, screen: dict[str, int], scheme: str
) -> None:
    with visit(browser, demo_over_http, viewport=screen, color_scheme=scheme) as page:
        page.goto(f"{demo_over_http}/rigging.html#point-r1-1")
        field = page.get_by_label("Only rows with").first
        field.fill("r4-3")
        assert page.locator("#point-r1-1").is_hidden()
        ask(page, "R1-1")
        page.locator(".answers a", has_text="R1-1").first.click()
        page.locator("#point-r1-1").wait_for()
        assert field.input_value() == ""
        assert wrong_with(page, "point-r1-1") == []


@pytest.mark.parametrize(("screen", "scheme"), SCREENS)
def test_a_folded_row_is_unfolded(
    browser: Browser, where: str, screen: dict[str, int], scheme: str
) -> None:
    with visit(browser, where, viewport=screen, color_scheme=scheme) as page:
        page.goto(f"{where}/rigging.html")
        line = page.evaluate("document.querySelector('details:not([open]) tr[id]').id")
        for address in (f"{where}/rigging.html#{line}", f"{where}/rigging.html"):
            page.goto("about:blank")
            page.goto(address)
            page.evaluate("line => { location.hash = line }", line)
            page.locator(f"#{line}").wait_for()
            assert wrong_with(page, line) == []


@pytest.mark.parametrize("height", [300, 420])
def test_of_a_row_higher_than_the_screen_the_top_is_read(
    browser: Browser, demo_over_http: str, height: int
) -> None:
    """A phone that lies on its side has little room between the head and the foot of the screen."""
    with visit(browser, demo_over_http, viewport={"width": 390, "height": height}) as page:
        page.goto(f"{demo_over_http}/power.html")
        page.evaluate(STANDING)
        lines = page.evaluate(LINES)
        assert page.evaluate("lines => allStanding(lines)", lines) == {}
        assert page.evaluate(
            "height => [...document.querySelectorAll('tr[id]')].some(row => row.offsetHeight >"
            " height)",
            height - 120,
        )


@pytest.mark.parametrize(("screen", "scheme"), SCREENS)
@pytest.mark.parametrize(
    "line", ["point-r1-1", "point-r4-3", IN_FRAME_AND_LAST, "beam-h", "hang-main-left-support-1"]
)
def test_without_scripts_a_row_stands_under_its_head_too(
    browser: Browser, demo: Path, screen: dict[str, int], scheme: str, line: str
) -> None:
    with visit(
        browser, demo.as_uri(), viewport=screen, color_scheme=scheme, java_script_enabled=False
    ) as page:
        page.goto(f"{demo.as_uri()}/rigging.html#{line}")
        assert wrong_with(page, line) == []


@pytest.mark.parametrize(("screen", "scheme"), SCREENS)
def test_an_answer_of_check_your_show_leads_to_such_a_row(
    browser: Browser, where: str, screen: dict[str, int], scheme: str
) -> None:
    with visit(browser, where, viewport=screen, color_scheme=scheme) as page:
        page.goto(f"{where}/check.html")
        page.set_input_files(".check-file", RIDERS / "theatre.yml")
        link = page.locator(".check-fact a[href^='rigging.html#']").first
        link.wait_for(state="attached")
        line = str(link.get_attribute("href")).partition("#")[2]
        link.evaluate(PRESSED)
        page.wait_for_url("**/rigging.html#*")
        assert wrong_with(page, line) == []
