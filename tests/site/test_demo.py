"""
The demo's whole site in a real browser: every page fits a phone, and every figure has its caution.
"""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from builder.site.engine import SCRIPT
from tests.site.visiting import PHONE, visit

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_page_fits_a_phone_and_keeps_its_place_as_pictures_come(
    browser: Browser, demo: Path, demo_over_http: str, scheme: str
) -> None:
    wrong = []
    with visit(browser, demo_over_http, viewport=PHONE, color_scheme=scheme) as page:
        for name in sorted(path.name for path in demo.glob("*.html")):
            page.goto(f"{demo_over_http}/{name}", wait_until="domcontentloaded")
            if page.evaluate(
                "document.documentElement.scrollWidth > document.documentElement.clientWidth"
            ):
                wrong.append(f"{name} scrolls sideways")
            if page.locator(
                "article img:is(:not([width]), :not([height]), :not([loading=lazy]))"
            ).count():
                wrong.append(f"{name} moves as a picture comes")
            if page.evaluate(
                "[...document.querySelectorAll('.few')].some(frame => frame.scrollWidth >"
                " frame.clientWidth)"
            ):
                wrong.append(f"{name} has a short table that scrolls")
    assert wrong == []


def test_a_table_of_a_few_wide_lines_names_each_value_on_a_phone(
    browser: Browser, demo: Path
) -> None:
    with visit(browser, demo.as_uri(), viewport=PHONE) as page:
        page.goto(f"{demo.as_uri()}/access.html")
        labels = page.evaluate(
            "[...document.querySelectorAll('.few tbody"
            " tr:first-child')][0].querySelectorAll('td').values().map(cell =>"
            " getComputedStyle(cell, '::before').content.slice(1, -1)).toArray()"
        )
        assert labels == page.locator(".few thead").first.locator("th").all_text_contents()[1:]


def test_every_page_with_figures_shows_a_caution(browser: Browser, demo: Path) -> None:
    address = demo.as_uri()
    with visit(browser, address) as page:
        for name in (
            "index",
            "access",
            "stage",
            "rigging",
            "sound",
            "sound-coverage",
            "power",
            "workings",
        ):
            page.goto(f"{address}/{name}.html")
            assert page.locator(".caution", has_text="Planning figures").first.is_visible(), name


@pytest.mark.parametrize(
    ("name", "part", "words"),
    [
        ("access", "Docks", "1.2 m"),
        ("rigging", "Points", "R1-1"),
        ("power", "Services", "255 A"),
        ("house", "Curfew", "22:30"),
        ("stage", "Deck", "1.35 m"),
    ],
)
def test_on_a_phone_what_the_dock_asks_for_is_two_presses_away(
    browser: Browser, demo_over_http: str, name: str, part: str, words: str
) -> None:
    with visit(browser, demo_over_http, viewport=PHONE) as page:
        page.goto(f"{demo_over_http}/{name}.html")
        page.locator(".jump summary").click()
        page.locator(".jump a", has_text=part).first.click()
        assert page.locator(".jump").get_attribute("open") is None
        box = (
            page.locator("article :is(td, th)", has_text=words)
            .locator("visible=true")
            .first.bounding_box()
        )
        assert box
        assert 60 < box["y"] < PHONE["height"], box
        assert 0 <= box["x"] < PHONE["width"] - box["width"], box


def test_first_screen_of_the_house_tells_danger_change_and_numbers(
    browser: Browser, demo_over_http: str
) -> None:
    with visit(browser, demo_over_http, viewport=PHONE) as page:
        page.goto(f"{demo_over_http}/index.html")
        for words in ("R4-3 carries", "Last change", "2,050", "22:30", "99 dB(A)", "1.2 m"):
            box = page.get_by_text(words).first.bounding_box()
            assert box, words
            assert box["y"] < PHONE["height"], words


def test_the_first_page_s_drawing_is_whole_on_a_phone(
    browser: Browser, demo_over_http: str
) -> None:
    with visit(browser, demo_over_http, viewport=PHONE) as page:
        page.goto(f"{demo_over_http}/index.html")
        drawn, frame = (
            page.locator(".beside svg").bounding_box(),
            page.locator(".beside .drawing").bounding_box(),
        )
        assert drawn is not None
        assert frame is not None
        assert drawn["width"] <= frame["width"]


def test_a_page_without_its_pictures_is_light_and_asks_little(
    browser: Browser, demo: Path, demo_over_http: str
) -> None:
    """
    What a phone with bad signal waits for before it can read, without compression: the page, its
    style sheet, its scripts.
    """
    with visit(browser, demo_over_http, viewport=PHONE) as page:
        asked: list[str] = []
        page.on(
            "request", lambda request: asked.append(request.url.removeprefix(f"{demo_over_http}/"))
        )
        for name, most_kb in (
            ("index", 100),
            ("access", 150),
            ("power", 400),
            ("rigging", 450),
            ("check", 750),
        ):
            asked.clear()
            page.goto(f"{demo_over_http}/{name}.html")
            needed = {
                url.partition("#")[0] for url in asked if url.endswith((".html", ".css", ".js"))
            }
            # The check comes by itself, so that its form shows first.
            needed_first = needed - {SCRIPT} if name == "check" else needed
            assert len(needed_first) <= 4, needed
            assert sum((demo / path).stat().st_size for path in needed) < most_kb * 1000, name
