"""
The page 'Check your show' of the demo's site in a real browser: from a folder and from a server, on
a phone, by keyboard, with hostile text.
"""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from builder.fit.interpreter import fit
from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import rider_of
from builder.rider.saying import counted
from tests.fit.test_reference_acts import house
from tests.site.visiting import PHONE, visit

pytestmark = pytest.mark.browser
ROOT = Path(__file__).parents[2]
RIDERS = ROOT / "tests" / "riders"
HOSTILE = "<img src=x onerror=document.title='taken'>"


def opened(page: Page, where: str, act: str) -> None:
    """Open the page, and a rider file in it."""
    page.goto(f"{where}/check.html")
    page.set_input_files(".check-file", RIDERS / f"{act}.yml")
    page.locator("#check-state .tag").wait_for()


def test_a_verdict_follows_as_one_types_and_leads_to_the_fact(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/check.html")
        assert page.locator("#check-state").inner_text().startswith("Nothing is asked yet.")
        page.locator("summary", has_text="Stage").first.click()
        page.get_by_label("Stage width, clear", exact=True).fill("60 ft")
        assert page.locator("#check-state").inner_text() == "short 1 short"
        assert "−2.29 m / −7'-6\"" in page.locator(".check-verdict").inner_text()
        page.get_by_label("Stage width, clear", exact=True).fill("40 ft")
        assert page.locator("#check-state").inner_text() == "fits 1 fit"
        page.locator(".check-fact a").click()
        page.wait_for_url(re.compile(r"stage\.html#"))
        assert page.locator(":target").count() == 1


def test_the_page_says_in_which_configuration_it_judges_and_how_the_others_fare(
    browser: Browser, where: str
) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/check.html")
        told = page.locator("#check-arrangement p")
        assert told.count() == 0
        page.locator("summary", has_text="House").first.click()
        page.get_by_label("Persons in the audience", exact=True).fill("1900")
        assert told.all_inner_texts() == [
            "Judged in the configuration Standing, end stage; of 3, none suits this show better.",
            "In Seated, end stage; Standing, thrust: 1 short; worse there: Persons in the"
            " audience.",
        ]
        page.get_by_label("Configuration of the house").select_option("Standing, thrust")
        assert page.locator("#check-state").inner_text() == "short 1 short"
        assert told.all_inner_texts() == ["Judged in the configuration Standing, thrust."]


CLOSED = """() => {
  const value = (key, text) => ({ key: `house.closure.1.${key}`, label: key, text, also: "",
    standing: "stated", number: null, parts: [], least: null, most: null, can_be_set: false,
    settings: [], page: "house.html", checked: "", stale: false, remembered: false });
  const house = window.housefit.pack.sections.find((section) => section.key === "house");
  const values = { from: value("from", "2027-07-01"), until: value("until", "2027-08-15") };
  house.items.push({ key: "house.closure.1", kind: "closure", name: "The whole house", values,
    condition: "", state: "", terms: "", note: "", page: "house.html", checked: "", stale: false,
    remembered: false, numbers: {}, words: {} });
}"""
"""Closes the house of the page for a time, as its pack would tell it."""


def test_a_house_that_is_closed_asks_for_the_date_and_answers_by_it(
    browser: Browser, where: str
) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/check.html")
        page.evaluate(CLOSED)
        page.locator("summary", has_text="Stage").first.click()
        page.get_by_label("Stage width, clear", exact=True).fill("40 ft")
        state = page.locator("#check-state")
        state.locator(".tag").wait_for()
        assert state.inner_text() == "ask 1 to ask · 1 fit"
        assert "On which date do you play?" in page.locator("#check-act-questions").input_value()
        date = page.get_by_label("Date it plays", exact=True)
        date.fill("2027-07-20")
        assert state.inner_text() == "short 2 short"
        date.fill("2027-09-20")
        assert state.inner_text() == "fits 1 fit"
        date.fill("2027-9")
        assert "1 cannot be read" in state.inner_text()
        assert "is not a date, year first" in page.locator(".check-problem").last.inner_text()


def test_every_link_of_an_answer_leads_to_a_place_that_exists(browser: Browser, demo: Path) -> None:
    with visit(browser, demo.as_uri()) as page:
        opened(page, demo.as_uri(), "theatre")
        links = page.eval_on_selector_all(
            ".check-fact a", "(links) => links.map((link) => link.getAttribute('href'))"
        )
        assert len(links) > 15
        for link in links:
            name, _, anchor = link.partition("#")
            text = (demo / name).read_text("utf-8")
            assert not anchor or f'id="{anchor}"' in text, link
        assert sum("#" in link for link in links) > 0.8 * len(links)


def counted_by_the_terminal(act: str) -> str:
    """How many of each verdict a rider gets in the demo, as the page writes it."""
    rider = rider_of((RIDERS / f"{act}.yml").read_text("utf-8"), file="rider.yml", rules=RULES)
    result = fit(house("demo"), [rider])
    return f"{result['verdict']} {counted(result).removesuffix('.').replace(', ', ' · ')}"


def test_a_rider_file_gives_the_same_as_in_the_terminal(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        opened(page, where, "theatre")
        assert page.locator("#check-state").inner_text() == counted_by_the_terminal("theatre")
        questions = page.locator("#check-questions").input_value()
        assert (
            "Who coordinates radio, which bands are free, and when is the list due? (Pale Ferrymen,"
            " rider line 24:" in questions
        )
        assert "A competent rigger decides" in page.locator("#check-cautions").inner_text()


def test_a_hang_plan_from_a_file_is_answered_hang_by_hang(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/check.html")
        page.locator("summary", has_text="Hang plan").click()
        assert (
            "A hang plan is read from a rider file"
            in page.locator("[data-part=hangs]").inner_text()
        )
        opened(page, where, "theatre")
        answers = page.locator("[data-part=hangs] .check-verdict")
        assert [text.split(",")[0] for text in answers.all_inner_texts()][3:5] == [
            "fits Trim of Back truss",
            "short Hang: Loudspeakers left",
        ]
        assert (
            "1,761 kg left on beam R3, and the show's hangs so far bring 2,041 kg: 280 kg too much."
            in answers.nth(4).inner_text()
        )


def test_a_stage_plot_comes_from_a_rider_file_and_says_which_rectangle_is_short(
    browser: Browser, where: str
) -> None:
    with visit(browser, where) as page:
        page.goto(f"{where}/check.html")
        assert (
            "The form has no place for a stage plot."
            in page.locator("[data-part=plot]").text_content()
        )
        opened(page, where, "theatre")
        plot = page.locator("[data-part=plot]")
        assert (
            plot.locator(".check-note")
            .first.inner_text()
            .startswith("6 rectangles from the rider file.")
        )
        told = plot.locator(".check-verdict").first.inner_text()
        for words in ("3 of 6 as asked: Backline, Monitor desk, Cross", "short: Dimmer racks"):
            assert words in told
        assert "with a note: Band risers, Grand piano" in told
        inner = plot.locator(".check-within").first.inner_text()
        assert "Wing column stands" in inner
        assert "Move it 742 mm (2'-5\") upstage." in inner


def test_the_stage_plot_is_drawn_and_what_is_short_is_crossed_out(
    browser: Browser, demo_over_http: str
) -> None:
    with visit(browser, demo_over_http, viewport=PHONE) as page:
        opened(page, demo_over_http, "theatre")
        drawing = page.locator(".check-plan svg")
        assert drawing.get_attribute("role") == "img"
        assert "5 Dimmer racks, short. 6 Cross in front, fits." in (
            drawing.get_attribute("aria-label") or ""
        )
        assert drawing.locator(".plot-fits polygon").count() == 5
        assert drawing.locator(".plot-short polyline").count() == 2
        assert page.locator(".check-plan li").all_inner_texts()[4:] == [
            "Dimmer racks: short",
            "Cross in front: fits",
        ]
        # The thrust's own zone is no part of the end stage.
        assert drawing.locator("title", has_text="Thrust deck").count() == 0
        height = page.evaluate(
            "[...document.querySelectorAll('.check-plan text')].map((node) =>"
            " node.getBoundingClientRect().height)"
        )
        assert min(height) >= 12
        # Edges drawn to scale: the band risers are 40 ft, the deck is 16.8 m wide.
        wide = (
            "(name) => [...document.querySelectorAll('.check-plan title')].find((node) =>"
            " node.textContent.includes(name)).parentNode"
        )
        wide += ".querySelector('polygon').getBoundingClientRect().width"
        assert page.evaluate(wide, "Band risers") / page.evaluate(
            wide, "End stage"
        ) == pytest.approx(12.192 / 16.8, abs=0.02)


def test_an_opened_rider_shows_only_what_it_asks_until_all_is_wanted(
    browser: Browser, demo_over_http: str
) -> None:
    with visit(browser, demo_over_http) as page:
        opened(page, demo_over_http, "club")
        legends = page.locator(".check-rule legend")
        asked = legends.filter(visible=True).all_inner_texts()
        assert "Stage width, clear" in asked
        assert "Drones allowed" not in asked
        assert page.locator("summary:visible", has_text="Video").count() == 0
        page.get_by_label("Only what is asked").uncheck()
        page.locator("summary", has_text="House").click()
        assert "Drones allowed" in legends.filter(visible=True).all_inner_texts()


def test_the_address_keeps_what_was_written(browser: Browser, where: str) -> None:
    with visit(browser, where) as page:
        opened(page, where, "club")
        state = page.locator("#check-state").inner_text()
        page.wait_for_function("() => location.hash.startsWith('#show=')")
        address = page.url
        page.goto("about:blank")
        page.goto(address)
        assert page.locator("#check-state").inner_text() == state


def test_a_saved_rider_is_read_in_the_terminal(
    browser: Browser, demo_over_http: str, tmp_path: Path
) -> None:
    with visit(browser, demo_over_http) as page:
        opened(page, demo_over_http, "theatre")
        with page.expect_download() as waiting:
            page.get_by_role("button", name="Save as rider file").click()
        waiting.value.save_as(tmp_path / "rider.yml")
    again = rider_of((tmp_path / "rider.yml").read_text("utf-8"), file="rider.yml", rules=RULES)
    first = rider_of((RIDERS / "theatre.yml").read_text("utf-8"), file="rider.yml", rules=RULES)
    for rider in (again, first):
        rider["clock"]["line"] = 0
        for requirement in rider["requirements"]:
            requirement["line"] = 0
            for part in (*requirement.get("any", []), *requirement.get("rectangles", [])):
                part["line"] = 0
    assert again == first


def test_hostile_text_stays_text(browser: Browser, where: str, tmp_path: Path) -> None:
    rider = tmp_path / "rider.yml"
    rider.write_text(
        f'act: "{HOSTILE}"\nconfiguration: "{HOSTILE}"\nquestions: ["{HOSTILE}"]\npower:\n  -'
        f' {{for: "{HOSTILE}", current: 20 A}}\nplot:\n  - {{name: "{HOSTILE}", width: 90 m, depth:'
        f' 1 m, at: {{across: centre, depth: 1 m US}}}}\nhangs:\n  - {{name: "{HOSTILE}", supports:'
        f' [{{point: "{HOSTILE}", load: 3 kg}}]}}\n',
        "utf-8",
    )
    with visit(browser, where) as page:
        page.goto(f"{where}/check.html")
        page.set_input_files(".check-file", rider)
        page.locator("#check-state .tag").wait_for()
        assert page.locator("#check img").count() == 0
        assert "taken" not in page.title()
        assert HOSTILE in page.locator("#check-questions").input_value()


@pytest.mark.parametrize(
    "state",
    [
        "%7B",
        "null",
        "%5B1%5D",
        "%7B%22needs%22%3A5%2C%22power%22%3A%7B%7D%7D",
        "%7B%22plot%22%3A%5B1%2Cnull%2C%7B%22name%22%3A%22x%22%2C%22width%22%3A%221%20m%22%2C%22depth%22%3A%221%20m%22%2C%22at%22%3A%5B%5D%7D%5D%7D",
        "%7B%22plot%22%3A%22x%22%7D",
        "%7B%22hangs%22%3A%5B1%2Cnull%2C%7B%7D%2C%7B%22name%22%3A%7B%7D%2C%22supports%22%3A5%7D%2C%7B%22name%22%3A%22a%22%2C%22supports%22%3A%5Bnull%2C3%5D%2C%22loads%22%3A%7B%7D%7D%5D%7D",
        "%7B%22hangs%22%3A%7B%7D%7D",
        "%7B%22needs%22%3A%5B1%2Cnull%2C%7B%7D%5D%2C%22trucks%22%3A%22x%22%7D",
        "%7B%22act%22%3A%5B%5D%2C%22clock%22%3A%7B%22set%22%3A%5B%5D%2C%22changeover%20parts%22%3A%5B1%5D%7D%7D",
    ],
)
def test_a_broken_address_does_not_break_the_page(
    browser: Browser, demo_over_http: str, state: str
) -> None:
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/check.html#show={state}")
        assert page.locator("#check-state").inner_text() != ""
        page.locator("summary", has_text="Stage").first.click()
        page.get_by_label("Stage width, clear", exact=True).fill("40 ft")
        assert "1 fit" in page.locator("#check-state").inner_text()


def test_a_broken_file_is_refused_with_its_line(
    browser: Browser, demo_over_http: str, tmp_path: Path
) -> None:
    rider = tmp_path / "rider.yml"
    rider.write_text("act: A\nact: B\n", "utf-8")
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/check.html")
        page.set_input_files(".check-file", rider)
        page.locator("#check-problems", has_text="not opened").wait_for()
        assert (
            page.locator("#check-problems").inner_text()
            == "rider.yml was not opened. Line 2: act is written twice; the first is on line 1;"
            " keep one of them."
        )


LONG = """\ufeffact: Five
  Wet Dogs
"needs":
  - what: stage width
    at least: >-
      40
      ft
  - {what: "radio channels",
     at least: '2',
    }
questions:
- |
  Who comes
  first?
"""


def test_text_over_several_lines_is_read_and_keeps_its_lines(
    browser: Browser, demo_over_http: str, tmp_path: Path
) -> None:
    rider = tmp_path / "rider.yml"
    rider.write_bytes(LONG.replace("\n", "\r\n").encode())
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/check.html")
        page.set_input_files(".check-file", rider)
        page.locator("#check-state .tag").wait_for()
        assert page.get_by_label("Act", exact=True).input_value() == "Five Wet Dogs"
        questions = page.locator("#check-questions").input_value()
        assert "Who coordinates radio" in questions
        assert "(Five Wet Dogs, rider line 8:" in questions
        assert "- Who comes first?" in questions
        page.get_by_label("Stage width, clear", exact=True).fill("90 m")
        assert "short" in page.locator("#check-state").inner_text()


def test_what_is_wrong_in_a_file_is_told_in_the_terminal_s_words_beside_its_part(
    browser: Browser, demo_over_http: str, tmp_path: Path
) -> None:
    rider = tmp_path / "rider.yml"
    text = (
        "act: A\nneeds:\n  - {what: stage width, at least: 40 ft}\n"
        "power:\n  - {for: sound, current: 63, count: 2}\nlevle: 3\n"
    )
    rider.write_text(text, "utf-8")
    with pytest.raises(Refused) as refused:
        rider_of(text, file="rider.yml", rules=RULES)
    told = [str(problem).split(" ", 1)[1].rsplit(" [", 1)[0] for problem in refused.value.problems]
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/check.html")
        page.set_input_files(".check-file", rider)
        page.locator("#check-state .tag").wait_for()
        assert page.locator("#check-state").inner_text() == "ask 1 fit · 2 cannot be read"
        beside = page.locator("[data-part=loads] .check-problem").inner_text()
        assert beside == f"Cannot be read: {told[0]}."
        assert page.locator("#check-problems").inner_text() == f"Cannot be read: {told[1]}."


@pytest.mark.parametrize(
    "failing",
    [
        "document.querySelector('#check').addEventListener('input', () => {"
        " throw Error('boom'); })",
        "window.housecheck.fit = () => { throw Error('boom'); }",
        "document.querySelector('#check').addEventListener('input', async () => {"
        " throw Error('boom'); })",
    ],
)
def test_what_nobody_expected_is_said_above_the_form_and_asks_to_be_reported(
    browser: Browser, demo_over_http: str, failing: str
) -> None:
    page = browser.new_page()
    page.goto(f"{demo_over_http}/check.html")
    page.wait_for_load_state("networkidle")
    page.evaluate(f"() => {{ {failing} }}")
    page.locator("summary", has_text="Stage").first.click()
    page.get_by_label("Stage width, clear", exact=True).fill("12 m")
    told = page.locator("p.check-problem[role=alert]")
    told.wait_for()
    assert "boom" in told.inner_text()
    assert "a mistake of the program and not yours; please report it" in told.inner_text()
    page.close()


def test_a_value_without_a_unit_is_told_beside_it(browser: Browser, demo_over_http: str) -> None:
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/check.html")
        page.locator("summary", has_text="Stage").first.click()
        page.get_by_label("Stage width, clear", exact=True).fill("12")
        assert "'12' needs a unit" in page.locator(".check-answer .check-problem").inner_text()
        assert page.locator("#check-state").inner_text() == "1 cannot be read"


def test_it_works_by_keyboard_alone(browser: Browser, demo_over_http: str) -> None:
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/check.html")
        page.get_by_label("Act", exact=True).focus()
        page.keyboard.type("Five Wet Dogs")
        for _ in range(4):
            page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        # How the number is compared comes first, then the number itself.
        page.keyboard.press("Tab")
        page.keyboard.press("Tab")
        page.keyboard.type("2500")
        assert page.locator("#check-state").inner_text() == "short 1 short"
        page.get_by_role("button", name="short Persons in the audience").focus()
        page.keyboard.press("Enter")
        assert (
            page.evaluate("document.activeElement.getAttribute('aria-label')")
            == "Persons in the audience"
        )


def test_every_control_has_a_name_and_no_id_is_given_twice(
    browser: Browser, demo_over_http: str
) -> None:
    with visit(browser, demo_over_http) as page:
        opened(page, demo_over_http, "arena")
        nameless = (
            "(nodes) => nodes.filter((node) => !(node.labels && node.labels.length) &&"
            " !node.getAttribute('aria-label')).length"
        )
        assert (
            page.eval_on_selector_all("#check input, #check select, #check textarea", nameless) == 0
        )
        assert (
            page.eval_on_selector_all(
                "#check [id]",
                "(nodes) => nodes.length - new Set(nodes.map((node) => node.id)).size",
            )
            == 0
        )


@pytest.mark.parametrize("width", [320, 390, 768, 1440])
@pytest.mark.parametrize("act", ["theatre", "arena"])
def test_it_keeps_to_the_width_of_the_screen(
    browser: Browser, demo_over_http: str, width: int, act: str
) -> None:
    with visit(browser, demo_over_http, viewport={"width": width, "height": 844}) as page:
        opened(page, demo_over_http, act)
        assert page.evaluate("document.documentElement.scrollWidth") <= width


OPENER = (
    'act: "{act}"\nclock: {{load in: "14:00", set up: 20 min, check: 30 min, on stage: "19:45",'
    " set: 45 min, strike: 6 min}}\n"
)
HEADLINER = """act: Pale Ferrymen
clock: {day: Tuesday, load in: "08:30", set up: 5 h, check: 90 min, clear after check: 15 min, doors: "19:00", on stage: "21:00", set: 90 min,
        changeover: 25 min}
"""  # noqa: E501


@pytest.fixture
def two(tmp_path: Path) -> list[Path]:
    """An opener with a hostile name, and a headliner."""
    (tmp_path / "opener.yml").write_text(OPENER.format(act=HOSTILE), "utf-8")
    (tmp_path / "headliner.yml").write_text(HEADLINER, "utf-8")
    return [tmp_path / "opener.yml", tmp_path / "headliner.yml"]


def day_of(page: Page, where: str, files: list[Path]) -> None:
    """Open the page, and a day's rider files in it."""
    page.goto(f"{where}/check.html")
    page.set_input_files(".check-file", files)
    page.locator("#check-acts li").nth(1).wait_for()


def test_a_day_of_two_acts_is_told_as_in_the_terminal_and_kept_in_the_address(
    browser: Browser, where: str, two: list[Path]
) -> None:
    with visit(browser, where) as page:
        day_of(page, where, two)
        # Load-in and end of each act, then checks, doors, changeover: seven. 08:30 and 5 h is
        # 13:30; the check waits for 15:30, the end of the quiet hours; 90 + 15 + 20 + 30 min is
        # 18:05, 25 min before 18:30. 20:30 to 21:00 is 30 min of 25. Doors at 19:00 and 45 min is
        # 19:45.
        assert page.locator("#check-state").inner_text() == "The day: fits 7 fit"
        assert page.locator("#check-acts button").all_inner_texts() == [
            f"fits {HOSTILE}",
            "fits Pale Ferrymen",
        ]
        assert "+25 min" in page.locator("[data-part=day] .check-verdict").first.inner_text()
        assert page.locator("#check-day tbody tr").nth(2).locator("td").all_inner_texts() == [
            "15:30",
            "17:00",
            "90 min",
            "check",
            "Pale Ferrymen",
        ]
        assert page.locator("#check img").count() == 0
        page.wait_for_function("() => location.hash.startsWith('#day=')")
        address = page.url
        page.goto("about:blank")
        page.goto(address)
        assert page.locator("#check-state").inner_text() == "The day: fits 7 fit"
        assert page.locator("#check-long").inner_text() == ""


def test_an_act_is_chosen_changed_and_removed_by_keyboard_alone(
    browser: Browser, demo_over_http: str, two: list[Path]
) -> None:
    with visit(browser, demo_over_http) as page:
        day_of(page, demo_over_http, two)
        page.locator("#check-acts button").first.focus()
        page.keyboard.press("Enter")
        assert page.get_by_label("Act", exact=True).input_value() == HOSTILE
        assert page.evaluate("document.activeElement.getAttribute('aria-current')") == "true"
        page.get_by_label("Set", exact=True).fill("80 min")
        # 19:45 and 80 min is 21:05, five minutes after the headliner begins, whose changeover takes
        # 25 min: 30 min short.
        assert (
            page.locator("#check-first button").first.inner_text()
            == "short Changeover to Pale Ferrymen −30 min"
        )
        page.get_by_role("button", name="short Changeover").focus()
        page.keyboard.press("Enter")
        assert page.evaluate("document.activeElement.textContent").startswith(
            "The day, all acts together"
        )
        page.get_by_role("button", name="Remove this act").focus()
        page.keyboard.press("Enter")
        assert page.get_by_label("Act", exact=True).input_value() == "Pale Ferrymen"
        assert not page.locator("#check-acts").is_visible()


def test_a_file_of_the_same_act_takes_its_place_and_an_act_may_be_added_empty(
    browser: Browser, demo_over_http: str, two: list[Path]
) -> None:
    with visit(browser, demo_over_http) as page:
        day_of(page, demo_over_http, two)
        page.set_input_files(".check-file", two[1])
        page.get_by_role("button", name="Add an act").click()
        page.get_by_label("Act", exact=True).fill("Pale Ferrymen")
        assert page.locator("#check-acts button").all_inner_texts() == [
            f"fits {HOSTILE}",
            "fits Pale Ferrymen",
            "not needed Pale Ferrymen (2)",
        ]
        assert "Two acts are called Pale Ferrymen" in page.locator("#check-problems").inner_text()
        page.get_by_role("button", name="Clear all").click()
        assert page.locator("#check-state").inner_text().startswith("Nothing is asked yet.")


def test_acts_of_several_dates_are_told_to_make_no_day_and_get_no_verdict_on_one(
    browser: Browser, demo_over_http: str, two: list[Path]
) -> None:
    for file, date in zip(two, ("2026-12-01", "2026-12-08"), strict=True):
        file.write_text(f"plays: {date}\n{file.read_text('utf-8')}", "utf-8")
    with visit(browser, demo_over_http) as page:
        day_of(page, demo_over_http, two)
        told = "The acts play on several dates: 2026-12-01, 2026-12-08."
        assert page.locator("#check-state").inner_text().startswith(told)
        assert page.locator("#check-problems").inner_text().startswith(told)
        assert (
            page.locator("#check-state .tag, #check-day tr, [data-part=day] .check-verdict").count()
            == 0
        )
        page.get_by_role("button", name="Remove this act").click()
        page.locator("#check-state .tag").wait_for()
        assert not page.locator("#check-problems").is_visible()


def test_the_questions_of_all_acts_are_copied_together_and_a_long_address_says_so(
    browser: Browser, demo_over_http: str, tmp_path: Path
) -> None:
    long = tmp_path / "long.yml"
    long.write_text(
        "act: Long\nquestions:\n"
        + "".join(
            f"  - Question {number} of very many that are asked here?\n" for number in range(200)
        ),
        "utf-8",
    )
    with visit(browser, demo_over_http) as page:
        day_of(page, demo_over_http, [RIDERS / "club.yml", RIDERS / "theatre.yml", long])
        questions = page.locator("#check-questions").input_value()
        assert "Five Wet Dogs" in questions
        assert "Pale Ferrymen" in questions
        assert "Question 199" in questions
        page.locator("#check-long", has_text="Many mail programs cut one so long").wait_for()


def test_one_broken_file_of_several_is_told_and_the_others_are_taken(
    browser: Browser, demo_over_http: str, two: list[Path]
) -> None:
    two[0].write_text("act: A\nact: B\n", "utf-8")
    with visit(browser, demo_over_http) as page:
        page.goto(f"{demo_over_http}/check.html")
        page.set_input_files(".check-file", two)
        page.locator("#check-problems", has_text="not opened").wait_for()
        assert (
            page.locator("#check-problems").inner_text()
            == "opener.yml was not opened. Line 2: act is written twice; the first is on line 1;"
            " keep one of them."
        )
        assert page.get_by_label("Act", exact=True).input_value() == "Pale Ferrymen"


@pytest.mark.parametrize("width", [320, 390, 1440])
def test_a_day_keeps_to_the_width_of_the_screen(
    browser: Browser, demo_over_http: str, width: int, two: list[Path]
) -> None:
    with visit(browser, demo_over_http, viewport={"width": width, "height": 844}) as page:
        day_of(page, demo_over_http, [*two, RIDERS / "arena.yml"])
        assert page.evaluate("document.documentElement.scrollWidth") <= width


COUNT_CALLS = """() => {
  window.calls = { fit: 0, read_form: 0 };
  for (const name of Object.keys(calls)) {
    const own = housecheck[name];
    housecheck[name] = (...given) => { calls[name] += 1; return own(...given); };
  }
}"""


def test_it_is_small_and_an_edit_reads_one_act_and_judges_once(
    browser: Browser, demo: Path
) -> None:
    # How long that takes is the machine's: about 20 ms each on the one that built this.
    assert sum(path.stat().st_size for path in (demo / "assets" / "fit").iterdir()) < 910_000
    with visit(browser, demo.as_uri(), viewport=PHONE) as page:
        opened(page, demo.as_uri(), "arena")
        page.set_input_files(".check-file", [RIDERS / "theatre.yml", RIDERS / "club.yml"])
        page.locator("#check-acts li").nth(2).wait_for()
        page.evaluate(COUNT_CALLS)
        width = page.get_by_label("Stage width, clear", exact=True)
        width.dispatch_event("input")
        assert page.evaluate("() => calls") == {"fit": 1, "read_form": 1}
        width.dispatch_event("input")
        assert page.evaluate("() => calls") == {"fit": 2, "read_form": 2}
