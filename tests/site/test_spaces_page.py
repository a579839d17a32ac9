"""
A house of several stages in a real browser: 'Check your show' with a space chosen, left open and
unknown, against what the terminal says; its menu and its addresses.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from builder.files import published
from builder.fit.interpreter import fit
from builder.rider.saying import counted
from builder.site.build import build_document
from tests.site.visiting import PHONE, ask, own_guides, visit
from tests.spaces.houses import ROOMS, asked, record

pytestmark = pytest.mark.browser
NEEDS = """needs:
  - {what: stage width, at least: 10 m}
  - {what: capacity, at least: 500}
  - {what: microphones, at least: 8}
power:
  - {for: lighting, current: 16 A, phases: single, system: 230 V single phase}
hangs:
  - name: Truss
    supports:
      - {across: 3 m SR, depth: 2 m US, load: 100 kg}
      - {across: 3 m SL, depth: 2 m US, load: 100 kg}
plot:
  - {name: Riser, width: 2 m, depth: 2 m, at: {across: centre, depth: 2 m US}}
"""
FOLDERS = {"Great hall": "hall", "Studio B": "studio-b", "Yard": "yard"}
SPACES = ["Great hall", "Studio B", "Yard", "Ballroom", ""]


def rider(space: str, act: str = "Wide") -> str:
    """A show with sums, power, a hang plan and a stage plot."""
    where = f"space: {space}\n" if space else ""
    return f"act: {act}\n{where}{NEEDS}"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """The site of the test venue of three spaces."""
    folder = tmp_path_factory.mktemp("rooms") / "site"
    with own_guides():
        build_document(published(ROOMS), folder)
    return folder


def opened(page: Page, site: Path, *texts: str) -> None:
    """Open the page, and riders in it."""
    page.goto(f"{site.as_uri()}/check.html")
    files = [
        {"name": f"{number}.yml", "mimeType": "text/yaml", "buffer": text.encode()}
        for number, text in enumerate(texts)
    ]
    page.set_input_files(".check-file", files)
    page.locator("#check-state .tag").wait_for()


@pytest.mark.parametrize("space", SPACES)
def test_the_page_gives_the_verdicts_of_the_terminal(
    browser: Browser, site: Path, space: str
) -> None:
    result = fit(record(), asked(rider(space)))
    told = f"{result['verdict']} {counted(result).removesuffix('.').replace(', ', ' · ')}"
    with visit(browser, site.as_uri()) as page:
        opened(page, site, rider(space))
        assert page.locator("#check-state").inner_text() == told
        assert page.locator("#check-arrangement p").all_inner_texts() == result["judged_in"]
        assert page.get_by_label("Space", exact=True).input_value() == space
        where = result["acts"][0]["arrangement"]["space"]
        links = page.eval_on_selector_all(
            ".check-fact a", "(all) => all.map((one) => one.getAttribute('href'))"
        )
        others = [folder for name, folder in FOLDERS.items() if name != where]
        assert links
        assert not [link for link in links if link.startswith(tuple(others))]
        for link in links:
            name, _, anchor = link.partition("#")
            assert not anchor or f'id="{anchor}"' in (site / name).read_text("utf-8"), link


def test_verdicts_follow_the_space_that_is_chosen(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri(), viewport=PHONE) as page:
        page.goto(f"{site.as_uri()}/check.html")
        page.locator("summary", has_text="Stage").first.click()
        page.get_by_label("Stage width, clear", exact=True).fill("10 m")
        told = page.locator("#check-arrangement p").first
        assert told.inner_text() == (
            "Judged in Great hall; of 3 spaces, none suits this show better."
        )
        chosen = page.get_by_label("Space", exact=True)
        chosen.select_option("Studio B")
        assert page.locator("#check-state").inner_text() == "short 1 short"
        assert told.inner_text() == "Judged in Studio B."
        page.wait_for_function("() => location.hash.includes('Studio')")
        chosen.select_option("")
        assert page.locator("#check-state").inner_text() == "fits 1 fit"
        page.get_by_label("Configuration of the house").select_option("Black room")
        assert told.inner_text() == "Judged in Studio B."
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]


def test_the_address_of_the_page_keeps_the_space(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        opened(page, site, rider("Studio B"))
        page.wait_for_function("() => location.hash.includes('Studio')")
        address, state = page.url, page.locator("#check-state").inner_text()
        page.goto("about:blank")
        page.goto(address)
        page.locator("#check-state .tag").wait_for()
        assert page.get_by_label("Space", exact=True).input_value() == "Studio B"
        assert page.locator("#check-state").inner_text() == state


def test_only_configurations_of_the_space_that_is_chosen_are_offered(
    browser: Browser, site: Path
) -> None:
    with visit(browser, site.as_uri()) as page:
        page.goto(f"{site.as_uri()}/check.html")
        options = page.get_by_label("Configuration of the house").locator("option")
        open_ones = ["whichever suits best", "Standing", "Seated", "Black room", "Open yard"]
        assert options.all_inner_texts() == open_ones
        page.get_by_label("Space", exact=True).select_option("Great hall")
        assert options.all_inner_texts() == open_ones[:3]
        page.get_by_label("Configuration of the house").select_option("Seated")
        page.get_by_label("Space", exact=True).select_option("Studio B")
        assert options.all_inner_texts() == ["whichever suits best", "Black room", "Seated"]
        page.get_by_label("Space", exact=True).select_option("")
        assert options.all_inner_texts() == open_ones


def test_a_stage_plot_is_drawn_on_the_deck_of_its_space(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        opened(page, site, rider("Studio B"))
        titles = page.locator(".check-plan title").all_text_contents()
        assert any("Studio floor" in title for title in titles)
        assert not any("Hall deck" in title for title in titles)


def test_two_acts_in_two_spaces_are_asked_what_they_share(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        opened(page, site, rider("Great hall", "Wide"), rider("Studio B", "Narrow"))
        told = page.locator("#check-arrangement p").first.inner_text()
        assert told == (
            "Each act is judged in its own space: Wide in Great hall; Narrow in Studio B."
        )
        asks = page.locator("#check-questions").input_value()
        assert "Can the house serve all of these on one day, and at the same hours" in asks


def test_the_menu_opens_the_space_that_is_read_and_folds_the_others(
    browser: Browser, site: Path
) -> None:
    with visit(browser, site.as_uri()) as page:
        page.goto(f"{site.as_uri()}/index.html")
        groups = page.locator("#the_contents .contents-group")
        folded = groups.locator("a.contents-title")
        assert folded.all_inner_texts() == ["Great hall", "Studio B", "Yard"]
        page.locator("#the_contents a", has_text="Yard").click()
        page.wait_for_url("**/yard.html")
        assert folded.all_inner_texts() == ["Great hall", "Studio B"]
        own = groups.filter(has_text="Yard").locator("li a")
        assert own.first.inner_text() == "Overview"
        assert {link.get_attribute("href", timeout=1000) for link in own.all()} <= {
            path.name for path in site.glob("yard*.html")
        }


def test_what_all_share_keeps_the_address_of_a_house_of_one_stage(site: Path) -> None:
    names = {path.name for path in site.glob("*.html")}
    assert {"index.html", "house.html", "check.html", "findings.html", "spaces.html"} <= names
    assert {"hall.html", "hall-rigging.html", "studio-b-stage.html", "yard.html"} <= names
    assert "rigging.html" not in names


def test_every_answer_of_the_search_says_of_which_space_it_is(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        page.goto(f"{site.as_uri()}/index.html")
        answers = [each for each in ask(page, "P1") if each.startswith("P1")]
        assert any("Great hall" in each for each in answers)
        assert any("Studio B" in each for each in answers)
        assert all("Great hall" in each or "Studio B" in each for each in answers)


def test_the_spaces_side_by_side_scroll_within_their_table_on_a_phone(
    browser: Browser, site: Path
) -> None:
    with visit(browser, site.as_uri(), viewport=PHONE) as page:
        page.goto(f"{site.as_uri()}/spaces.html")
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]
        for name in ("Great hall", "Studio B", "Yard"):
            assert page.locator("th", has_text=name).count() == 1
