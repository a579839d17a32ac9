"""
The search in a real browser: from a server and from a folder, what a visitor asks for stands first.
"""

import pytest
from playwright.sync_api import Browser, Page

from builder.site.aliases import ALIASES
from tests.site.visiting import DESK, PHONE, ask, visit

pytestmark = pytest.mark.browser

# What is asked on the way in, and the page and name of the line that answers. Common practice, no
# source.
FIRST = (
    ("400 A", "Power", "SL lighting switch"),
    ("400A", "Power", "SL lighting switch"),
    ("400amp", "Power", "SL lighting switch"),
    ("single-pole 400 amps", "Power", "single-pole 400 A set"),
    ("32A", "Power", "IEC 60309 32 A 3-pin blue"),
    ("32 a", "Power", "IEC 60309 32 A 3-pin blue"),
    ("63A red", "Power", "IEC 60309 63 A 5-pin red"),
    ("free amps stage left", "Power", "Motor switch"),
    ("shore power", "Power", "Shore power"),
    ("R4-3", "Rigging", "R4-3"),
    ("r43", "Rigging", "R4-3"),
    ("r4-3 left", "Rigging", "R4-3"),
    ("mid truss", "Rigging", "Mid truss – R4-3 over the limit"),
    ("dock", "Access", "Docks"),
    ("dock height", "Access", "Rope Street dock"),
    ("hight of the dock", "Access", "Rope Street dock"),
    ("forklfit", "Access", "Yard forklift"),
    ("lorry parking", "Access", "trucks"),
    ("Basin Lane", "Access", "Basin Lane"),
    ("narrowest opening", "Access", "Narrowest opening"),
    ("curfew", "House", "Curfew"),
    ("curfiew", "House", "Curfew"),
    ("22:30", "House", "Sunday to Thursday"),
    ("noise limit", "House", "Noise limits"),
    ("gaffer", "House", "House electrician"),
    ("electrician phone", "House", "House electrician"),
    ("haze", "House", "haze"),
    ("deck height", "Stage", "End stage"),
    ("foh", "House system", "Mix position"),
    ("vocal dynamic", "Stage sound and stock", "Vellum 8"),
    ("kick drum mic", "Stage sound and stock", "Vellum 14"),
    ("split ways", "Stage sound and stock", "Stage split"),
    ("talkback", "Lines", "Talkback"),
    ("internet", "Lines", "Production network"),
    ("power", "Power", "Power"),
)
SEARCHED = (
    "words => window.housesearch.answers(words).lines.map(line =>"
    " [window.housesearch.pages[line[0]][1], line[2]])"
)


def ready(page: Page, address: str) -> None:
    """Open the first page and let it fetch what the search knows."""
    page.goto(f"{address}/index.html")
    page.locator(".search-input").focus()
    page.wait_for_function("() => window.housesearch && window.housesearch.answers")


def test_what_a_visitor_asks_for_stands_first(browser: Browser, demo_over_http: str) -> None:
    with visit(browser, demo_over_http) as page:
        ready(page, demo_over_http)
        first = {
            words: (page.evaluate(SEARCHED, words) or [["nothing", ""]])[0] for words, _, _ in FIRST
        }
    assert {words: tuple(found) for words, found in first.items()} == {
        words: (title, name) for words, title, name in FIRST
    }


def test_the_pack_answers_before_the_guides(browser: Browser, demo_over_http: str) -> None:
    guides = {
        "Every key explained",
        "Problems and findings",
        "Methods",
        "Write a rider",
        "Describe your venue",
        "Keep it true",
    }
    with visit(browser, demo_over_http) as page:
        ready(page, demo_over_http)
        for words in ("dock", "vocal dynamic", "curfew", "limit", "truss", "outlet"):
            titles = [title for title, _ in page.evaluate(SEARCHED, words)]
            assert titles[0] not in guides | {"Workings and sources", "Glossary"}, words


def test_every_alias_is_written_as_the_search_writes_a_word(
    browser: Browser, demo_over_http: str
) -> None:
    """An alias in another form would never be met."""
    with visit(browser, demo_over_http) as page:
        ready(page, demo_over_http)
        words = [
            *ALIASES,
            *(word for said in ALIASES.values() for each in said for word in each.split()),
        ]
        assert (
            page.evaluate(
                "all => all.filter(word => window.housesearch.wordsOf(word)[0].term !== word)",
                words,
            )
            == []
        )


def test_a_name_leads_to_its_own_line(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/index.html")
        answers = ask(page, "R4-3")
        assert answers[0].startswith("R4-3 Rigging › Points"), answers[0]
        page.locator(".answers a").first.click()
        page.wait_for_url(f"{where}/rigging.html#point-r4-3")
        box = page.locator("tr:target").bounding_box()
        assert box
        assert 50 < box["y"] < DESK["height"]


def test_an_answer_on_the_same_page_is_not_hidden_by_the_answers(
    browser: Browser, where: str
) -> None:
    with visit(browser, where, viewport=PHONE) as page:
        page.goto(f"{where}/access.html")
        ask(page, "dock height")
        page.keyboard.press("Enter")
        page.wait_for_url("**/access.html#*")
        assert not page.locator(".search-output").is_visible()
        box = page.locator("tr:target").bounding_box()
        assert box
        assert 50 < box["y"] < PHONE["height"]


def test_nothing_is_fetched_for_a_search_that_nobody_makes(
    browser: Browser, demo_over_http: str
) -> None:
    with visit(browser, demo_over_http) as page:
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        page.goto(f"{demo_over_http}/rigging.html")
        page.wait_for_load_state("networkidle")
        assert not [url for url in asked if "entries" in url or "ranking" in url]
        ask(page, "curfew")
        assert [url for url in asked if "entries" in url]


def test_a_search_without_signal_says_so_and_goes_on_when_it_is_back(
    browser: Browser, demo_over_http: str
) -> None:
    context = browser.new_context(viewport=PHONE)
    page = context.new_page()
    page.goto(f"{demo_over_http}/index.html")
    context.set_offline(True)
    page.locator(".search-input").press_sequentially("curfew")
    page.get_by_text("could not be fetched").wait_for()
    context.set_offline(False)
    assert ask(page, "curfew")[0].startswith("Curfew")
    context.close()


def test_the_search_says_when_there_is_nothing_and_what_it_left_out(
    browser: Browser, where: str
) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/index.html")
        assert ask(page, "xylophonist") == []
        assert (
            page.locator(".search-told").inner_text()
            == "Nothing found. Try fewer words, or the contents."
        )
        assert ask(page, "xylophonist dock")[0].startswith("Docks")
        assert "without xylophonist" in page.locator(".search-told").inner_text()


def test_the_search_hears_words_that_come_without_keys(
    browser: Browser, demo_over_http: str
) -> None:
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/index.html")
        page.locator(".search-input").click()
        page.keyboard.insert_text("leveller")
        page.locator(".answers a", has_text="Leveller").first.wait_for()
