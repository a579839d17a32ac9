"""The site in a real browser, from a server and from a folder."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from builder.document import Page
from builder.render.escaping import visible
from builder.site.build import build_document
from tests.render.hostile import HOSTILE, everywhere
from tests.site.sample import document
from tests.site.visiting import PHONE, ask, visit

pytestmark = pytest.mark.browser
PAGES = ("index", "rigging", "power", "sound", "access", "crew", "read-a-pack", "404")


@pytest.mark.parametrize("name", PAGES)
def test_no_page_scrolls_sideways(browser: Browser, over_http: str, name: str) -> None:
    with visit(browser, over_http) as page:
        for width in (1440, 1024, 768, 390, 320):
            page.set_viewport_size({"width": width, "height": 844})
            page.goto(f"{over_http}/{name}.html")
            assert page.locator("h1").is_visible()
            assert page.evaluate("document.documentElement.scrollWidth") <= width, width


def test_a_wide_table_scrolls_in_its_frame_and_keeps_names_and_header_in_sight(
    browser: Browser, over_file: str
) -> None:
    with visit(browser, over_file, viewport=PHONE) as page:
        page.goto(f"{over_file}/rigging.html#p20")
        frame = page.locator(".table", has=page.locator("#p20"))
        frame.evaluate("element => { element.scrollLeft = 300 }")
        name = page.locator("#p20 th").bounding_box()
        head = frame.locator("thead th").nth(5).bounding_box()
        assert name
        assert head
        assert 0 <= name["x"] < 40
        assert 0 <= head["y"] < PHONE["height"]


def test_everything_to_press_on_a_phone_is_large_enough(browser: Browser, over_file: str) -> None:
    """
    WCAG 2.2, 2.5.8 asks 24 px, 2.5.5 asks 44 px; what a gloved hand needs at the top and in the
    contents is held to 44.
    """
    with visit(browser, over_file, viewport=PHONE) as page:
        page.goto(f"{over_file}/rigging.html")
        for place in (
            ".to-contents",
            ".scheme",
            ".search-form",
            ".jump summary",
            ".contents a >> nth=1",
            ".folded summary",
            "thead button >> nth=0",
        ):
            box = page.locator(place).first.bounding_box()
            assert box, place
            assert box["height"] >= 44, place


def test_contents_open_over_the_page_on_a_phone_and_close_again(
    browser: Browser, over_file: str
) -> None:
    with visit(browser, over_file, viewport=PHONE) as page:
        page.goto(f"{over_file}/rigging.html")
        page.locator(".to-contents").click()
        entry = page.locator(".contents a", has_text="Power")
        box = entry.bounding_box()
        assert box
        assert box["y"] < PHONE["height"]
        page.go_back()
        page.wait_for_function(
            "() => getComputedStyle(document.querySelector('.contents')).position === 'static'"
        )
        page.locator(".to-contents").click()
        entry.click()
        page.wait_for_url("**/power.html")


@pytest.mark.parametrize(("scheme", "light"), [("light", True), ("dark", False)])
def test_the_page_follows_the_devices_scheme_and_the_readers_choice(
    browser: Browser, over_http: str, scheme: str, light: bool
) -> None:
    with visit(browser, over_http, color_scheme=scheme) as page:
        page.goto(f"{over_http}/sound.html")

        def paper() -> bool:
            return bool(
                page.evaluate(
                    "getComputedStyle(document.documentElement).backgroundColor === 'rgb(255, 255,"
                    " 255)'"
                )
            )

        assert paper() is light
        assert page.locator(".on-light").is_visible() is light
        assert page.locator(".on-dark").is_visible() is not light
        page.wait_for_load_state("networkidle")
        page.locator(".scheme").click()
        assert paper() is not light
        page.goto(f"{over_http}/power.html")
        assert paper() is not light


def test_a_table_sorts_by_its_numbers_and_says_so(browser: Browser, over_file: str) -> None:
    with visit(browser, over_file) as page:
        page.goto(f"{over_file}/rigging.html")
        table = page.locator("table[data-sortable]")
        used = table.locator("th", has_text="On the books")
        button = used.get_by_role("button")

        def names() -> list[str]:
            return table.locator("tbody th").all_inner_texts()

        written = names()
        button.press("Enter")
        assert used.get_attribute("aria-sort") == "ascending"
        numbers = [
            int(text.replace(",", "").split()[0])
            for text in table.locator("tbody tr td:nth-child(6)").all_inner_texts()
        ]
        assert numbers == sorted(numbers)
        button.press("Enter")
        assert used.get_attribute("aria-sort") == "descending"
        assert names()[0] == "P07"
        button.press("Enter")
        assert used.get_attribute("aria-sort") is None
        assert names() == written


def test_a_long_table_shows_only_the_rows_that_hold_the_words(
    browser: Browser, over_file: str
) -> None:
    with visit(browser, over_file, viewport=PHONE) as page:
        page.goto(f"{over_file}/rigging.html")
        field = page.get_by_label("Only rows with").first
        field.fill("p 07")
        assert page.locator("table[data-sortable] tbody th:visible").all_inner_texts() == ["P07"]
        page.evaluate("location.hash = 'p31'")
        page.locator("#p31 th").wait_for()
        assert not field.input_value()


def test_values_that_are_not_stated_stay_last_in_both_directions(
    browser: Browser, over_file: str
) -> None:
    with visit(browser, over_file) as page:
        page.goto(f"{over_file}/power.html")
        button = page.locator("table[data-sortable] th", has_text="Drop").get_by_role("button")
        for _ in ("ascending", "descending"):
            button.click()
            assert (
                page.locator("table[data-sortable] tbody tr td:last-child").all_inner_texts()[-1]
                == "not stated"
            )


def test_the_keyboard_reaches_text_search_and_answers(browser: Browser, over_http: str) -> None:
    with visit(browser, over_http) as page:
        page.goto(f"{over_http}/index.html")
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.classList.contains('skip')")
        box = page.locator(".skip").bounding_box()
        assert box
        assert box["x"] >= 0
        page.keyboard.press("/")
        page.wait_for_function("() => document.activeElement.classList.contains('search-input')")
        page.keyboard.type("P31", delay=30)
        page.locator(".answers a", has_text="From centre").first.wait_for()
        page.keyboard.press("ArrowDown")
        assert page.evaluate("document.activeElement.matches('.answers a')")
        page.keyboard.press("Escape")
        page.wait_for_function(
            "() => getComputedStyle(document.querySelector('.search-output')).display === 'none'"
        )


def test_focus_can_be_seen(browser: Browser, over_file: str) -> None:
    with visit(browser, over_file) as page:
        page.goto(f"{over_file}/index.html")
        for _ in range(12):
            page.keyboard.press("Tab")
            style = page.evaluate(
                "(({outlineStyle, outlineWidth}) => [outlineStyle,"
                " outlineWidth])(getComputedStyle(document.activeElement))"
            )
            inside = page.evaluate("!!document.activeElement.closest('.search-form')")
            assert inside or (style[0] == "solid" and style[1] == "2px"), page.evaluate(
                "document.activeElement.outerHTML"
            )


def test_every_page_has_landmarks_one_title_and_names_for_what_can_be_pressed(
    browser: Browser, over_file: str
) -> None:
    with visit(browser, over_file) as page:
        for name in PAGES[:-1]:
            page.goto(f"{over_file}/{name}.html")
            assert page.get_by_role("main").count() == 1
            assert page.get_by_role("banner").count() == 1
            assert page.get_by_role("contentinfo").count() == 1
            assert page.get_by_role("heading", level=1).count() == 1
            assert page.locator("html").get_attribute("lang") == "en"
            for press in page.locator("button:visible, a:visible, input:visible").all():
                assert (press.inner_text() or press.get_attribute("aria-label") or "").strip(), (
                    press.evaluate("element => element.outerHTML")
                )
            doubled = page.evaluate(
                "(ids => ids.filter((id, place) => ids.indexOf(id) !=="
                " place))([...document.querySelectorAll('[id]')].map(e => e.id))"
            )
            assert doubled == []


def test_without_scripts_everything_but_search_and_sorting_is_there(
    browser: Browser, over_file: str
) -> None:
    with visit(browser, over_file, java_script_enabled=False, viewport=PHONE) as page:
        page.goto(f"{over_file}/rigging.html")
        assert page.locator("#p45").inner_text().startswith("P45")
        assert not page.locator(".search").is_visible()
        page.locator(".to-contents").click()
        assert page.locator(".contents a", has_text="Power").is_visible()
        page.locator(".contents-close").click()
        page.locator(".folded summary").click()
        assert page.get_by_text("Two legs of a bridle").is_visible()


def test_a_link_to_a_working_opens_it(browser: Browser, over_file: str) -> None:
    with visit(browser, over_file) as page:
        page.goto(f"{over_file}/rigging.html#working-p07")
        assert page.get_by_text("Two legs of a bridle").is_visible()
        page.goto(f"{over_file}/rigging.html#points")
        assert page.locator("#working-p07").get_attribute("open") is not None


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_paper_shows_ink_without_navigation_and_with_workings_open(
    browser: Browser, over_file: str, scheme: str
) -> None:
    with visit(browser, over_file, color_scheme=scheme) as page:
        page.goto(f"{over_file}/rigging.html")
        page.emulate_media(media="print")
        page.evaluate("dispatchEvent(new Event('beforeprint'))")
        for place in (".top", ".contents", ".parts", ".turn"):
            assert not page.locator(place).is_visible(), place
        assert page.get_by_text("Two legs of a bridle").is_visible()
        assert (
            page.evaluate("getComputedStyle(document.querySelector('h1')).color") == "rgb(0, 0, 0)"
        )
        page.evaluate("dispatchEvent(new Event('afterprint'))")
        assert not page.get_by_text("Two legs of a bridle").is_visible()


def test_a_printed_page_is_a_document_of_few_sheets(browser: Browser, over_file: str) -> None:
    with visit(browser, over_file) as page:
        page.goto(f"{over_file}/rigging.html")
        for paper in ("A4", "Letter"):
            sheets = page.pdf(format=paper).count(b"/Type /Page\n")
            assert 2 <= sheets <= 4, paper


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site in which every text field holds every hostile text, a page for each."""
    pages = tuple(
        Page(
            f"hostile-{index}", text, everywhere(text, f"hostile-{index}"), summary=text, group=text
        )
        for index, text in enumerate(HOSTILE)
    )
    site = tmp_path_factory.mktemp("hostile") / "site"
    build_document(document(pages, venue=VENUE), site)
    return site


VENUE = "<script>window.__hostile=10</script> & 'Söhne' \" onload=x {{ nav }} \u202ehall"


SHOWN = """() => ({
  hostile: window.__hostile === undefined ? null : window.__hostile,
  title: document.title,
  heading: document.querySelector('h1').innerText.replace(/#$/, ''),
  row: document.querySelector('#row th').innerText,
  caution: document.querySelector('.caution .caution-title').innerText,
  alt: document.querySelector('figure img').getAttribute('alt'),
  here: document.querySelector('.contents a[aria-current]').innerText,
  summary: document.querySelector('meta[name=description]').content,
  venue: document.querySelector('.venue').innerText,
})"""


def test_hostile_text_is_shown_as_text_and_runs_nothing(browser: Browser, hostile: Path) -> None:
    address = hostile.as_uri()
    with visit(browser, address) as page:
        for index, text in enumerate(HOSTILE):
            page.goto(f"{address}/hostile-{index}.html")
            found, shown = page.evaluate(SHOWN), visible(text)
            assert found["hostile"] is None, text
            assert unspaced(found["title"]).startswith(unspaced(shown)), text
            for place in ("heading", "row", "caution", "here"):
                assert unspaced(found[place]) == unspaced(shown), (place, text)
            assert (found["alt"], found["summary"], found["venue"]) == (
                shown,
                shown,
                visible(VENUE),
            ), text


@pytest.mark.parametrize("text", ["script", "onerror", "javascript", "details"])
def test_hostile_text_in_an_answer_is_text(browser: Browser, hostile: Path, text: str) -> None:
    address = hostile.as_uri()
    with visit(browser, address) as page:
        page.goto(f"{address}/index.html")
        assert ask(page, text)
        assert page.locator(".answers :is(script, img, svg, iframe)").count() == 0
        assert page.evaluate("window.__hostile") is None


def test_a_hostile_name_stays_inside_the_string_of_the_printed_head(hostile: Path) -> None:
    text = (hostile / "assets" / "edition.css").read_text("utf-8")
    found = re.fullmatch(
        r'@media print \{ @page \{ @top-left \{ content: "([A-Za-z0-9 \\]*)"; font: 7\.5pt'
        r" sans-serif; color: #444; \} \} \}\n",
        text,
    )
    assert found
    back = re.sub(r"\\([0-9a-f]+) ", lambda match: chr(int(match[1], 16)), found[1])
    assert back == f"{visible(VENUE)}. Tech pack, revision 7, 2026-11-02"


def unspaced(text: str) -> str:
    """The text without blanks, which a browser folds and places as it likes."""
    return "".join(text.split())
