"""Quantities are read exactly, and in the page as in the terminal."""

import random
from datetime import date
from difflib import SequenceMatcher, get_close_matches

import pytest
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Browser

from builder.reading.numerals import Unreadable
from builder.reading.values.days import WEEKDAYS, read_day, weekday_of
from builder.reading.values.nearest import likeness_of, nearest
from builder.reading.values.quantities import read_quantity
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import folded, with_commas
from builder.reading.values.words import read_count, read_words, read_yes_no
from builder.registry import RULES
from tests.laws import share
from tests.reading.values.wordings import BOOK, KINDS, ODD, Said, drawn
from tests.rider.compiled import in_the_browser


def parts(law: str, usually: int) -> list[Said]:
    """Wordings of the seeds that this run takes."""
    seeds = share(range(200), law=law, usually=usually)
    return [each for seed in seeds for each in drawn(500, seed)]


@pytest.mark.laws
def test_every_wording_says_the_float_nearest_to_its_exact_value() -> None:
    # The factors are those of NIST SP 811, held to it in tests/reading/test_units.py; a fraction of
    # whole numbers times a factor is worked out here by Python's own fractions.
    known = [each for each in parts("exact quantities", usually=4) if each.si is not None]
    assert len(known) > 100
    for each in known:
        quantity = read_quantity(each.text, each.name, BOOK)
        assert quantity["fault"] is None, each
        assert quantity["si"] == float(each.si or 0), each


@pytest.mark.laws
def test_a_description_s_quantities_are_the_same() -> None:
    for each in parts("quantities of a description", usually=4):
        quantity = read_quantity(each.text, each.name, BOOK)
        wrong = quantity["fault"]
        if wrong is None:
            parsed = KINDS[each.name].parse(each.text)
            assert (parsed.si, parsed.text) == (quantity["si"], quantity["text"])
        else:
            with pytest.raises(Unreadable) as unreadable:
                KINDS[each.name].parse(each.text)
            told = unreadable.value
            assert (told.reason, told.code) == (wrong["reason"], wrong["code"])
            # A description knows that a bare 0.8 is mostly a share of one, and says so.
            if each.name != "share" or told.code != "unit-missing":
                assert told.advice == wrong["advice"]


@pytest.mark.laws
@pytest.mark.browser
def test_the_page_reads_every_wording_as_the_terminal_does(browser: Browser) -> None:
    wordings = [(each.text, each.name) for each in parts("quantities in the browser", usually=4)]
    wordings += [(text, name) for text in ODD for name in KINDS]
    texts, names = [text for text, _ in wordings], [name for _, name in wordings]
    entry = "tests.reading.values.reading_calls.read_all"
    found = in_the_browser(browser, entry, [[texts, names, BOOK]])[0]
    assert found == [read_quantity(text, name, BOOK) for text, name in wordings]


COUNTS = ["2", "2.0", "-1", "1,000", "1/2", "2 m", "4/2", "1e2", "", "999999999999999", "½", "-0"]
DAYS = ["2028-02-29", "2100-02-29", "2026-04-31", "2026-12-31", "0000-01-01", "0001-01-01"]
DAYS += ["5.12.2026", "2026-1-011", "", "２026-01-01", "2026-13-01", " 2026-03-02 "]
YES = ["yes", " No ", "TRUE", "false", "maybe", "", "ye s"]


@pytest.mark.browser
@pytest.mark.parametrize(
    ("entry", "calls"),
    [
        ("builder.reading.values.words.read_count", [[text] for text in COUNTS]),
        ("builder.reading.values.words.read_yes_no", [[text] for text in YES]),
        (
            "builder.reading.values.words.read_words",
            [[text, 5] for text in ("a\u2003 b", "abcdef", "", "\u3000", "😀😀😀😀😀", "\ufeffa")],
        ),
        (
            "builder.reading.values.days.read_day",
            [[f"2{year}-0{month}-{day}"] for year in "041" for month in "2349" for day in (28, 31)]
            + [
                ["2028-02-29"],
                ["0000-01-01"],
                ["5.12.2026"],
                ["2026-1-011"],
                [""],
                ["２026-01-01"],
            ],
        ),
    ],
)
def test_the_page_reads_plain_words_as_the_terminal_does(
    browser: Browser, entry: str, calls: list[list[object]]
) -> None:
    functions = {
        "read_count": read_count,
        "read_yes_no": read_yes_no,
        "read_words": read_words,
        "read_day": read_day,
    }
    read = functions[entry.rpartition(".")[2]]
    assert in_the_browser(browser, entry, calls) == [read(*call) for call in calls]  # type: ignore[operator]


@given(st.dates())
def test_each_day_has_the_day_of_the_week_of_python_s_calendar(day: date) -> None:
    read = read_day(day.isoformat())
    assert (read["text"], read["weekday"], read["fault"]) == (day.isoformat(), f"{day:%A}", None)
    assert WEEKDAYS[day.weekday()] == weekday_of(day.year, day.month, day.day)


@given(st.text("0123456789-", min_size=8, max_size=11))
def test_what_no_calendar_has_is_no_day(text: str) -> None:
    read = read_day(text)
    try:
        known = text[4:5] == text[7:8] == "-" and date.fromisoformat(text).isoformat() == text
    except ValueError:
        known = False
    assert (read["fault"] is None) == known


@given(st.text("abc ", max_size=12), st.text("abc ", max_size=12))
def test_spellings_are_as_alike_as_python_says(one: str, other: str) -> None:
    assert likeness_of(list(one), list(other)) == SequenceMatcher(None, one, other).ratio()


def test_the_nearest_name_is_the_one_that_python_finds() -> None:
    draw = random.Random(20261130)
    names = list(RULES)
    for _ in range(400):
        word = draw.choice(names)
        for _ in range(draw.randrange(5)):
            place = draw.randrange(len(word) + 1)
            word = word[:place] + draw.choice("aeinst ") + word[place + draw.randrange(3) :]
        close = get_close_matches(word, names, n=1, cutoff=0.6)
        assert nearest(word, names, 0.6) == (close[0] if close else "")


@given(st.text())
def test_white_space_is_what_python_takes_for_it(text: str) -> None:
    assert folded(text) == " ".join(text.split())


@given(st.integers(0, 10**12))
def test_thousands_are_parted_as_python_parts_them(number: int) -> None:
    assert with_commas(number) == f"{number:,}"


def test_a_template_is_filled_once() -> None:
    assert fill("{a} and {b}.", {"a": "{b}", "b": "}{"}) == "{b} and }{."
