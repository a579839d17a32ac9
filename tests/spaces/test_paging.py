"""Pages of a space: where their links lead, of pages made by hand."""

import pytest

from builder.document import (
    Bullets,
    Caution,
    Entry,
    Facts,
    Folded,
    Heading,
    Headline,
    Link,
    Page,
    Paragraph,
    Row,
    Table,
)
from builder.pack import Space
from builder.reading.problems import Problem, Where
from builder.spaces.laying_out import is_of
from builder.spaces.naming import told_where
from builder.spaces.paging import Scope, page_of_space
from tests.departments.powered import INTAKE, SWITCH, described

SCOPE = Scope(Space("hall", "Great hall"), frozenset({"index", "stage"}), frozenset({"power"}))


def test_a_page_of_a_space_says_so_in_its_title_and_not_in_its_menu() -> None:
    page = page_of_space(Page("stage", "Stage", (), summary="The deck."), SCOPE)
    assert (page.key, page.title, page.menu) == ("hall-stage", "Stage, Great hall", "Stage")
    assert (page.summary, page.group, page.is_folded) == (
        "Great hall: The deck.",
        "Great hall",
        True,
    )
    assert page_of_space(Page("stage", "Stage", ()), SCOPE).summary == ""


def test_its_first_page_is_called_as_the_space() -> None:
    page = page_of_space(Page("index", "Home", (), summary="Hall of X."), SCOPE)
    assert (page.key, page.title, page.menu) == ("hall", "Great hall", "Overview")
    assert page.summary == "Hall of X."


@pytest.mark.parametrize(
    ("aim", "led"),
    [("stage", "hall-stage"), ("index", "hall"), ("power", "power"), ("flying", "")],
)
def test_a_link_leads_to_the_own_page_else_to_that_of_all_else_nowhere(aim: str, led: str) -> None:
    link = Link("See", aim, "x")
    wanted = Link("See", led, "x") if led else "See"
    words = ["a ", link]
    blocks = (
        Heading(2, "H"),
        Paragraph(words),
        Bullets([words]),
        Table(["A"], [Row([words])]),
        Facts([Entry("L", words, small=words)]),
        Caution(words),
        Folded("More", [Paragraph(words)]),
        Headline([Entry("L", words, anchor=f"{aim}#x")]),
    )
    found = page_of_space(Page("stage", "Stage", blocks), SCOPE).blocks
    told = ["a ", wanted]
    assert found[:7] == (
        Heading(2, "H"),
        Paragraph(told),
        Bullets([told]),
        Table(["A"], [Row([told])]),
        Facts([Entry("L", told, small=told)]),
        Caution(told),
        Folded("More", [Paragraph(told)]),
    )
    headline = found[7]
    assert isinstance(headline, Headline)
    assert headline.entries[0].words == told
    assert headline.entries[0].anchor == (f"{led}#x" if led else "")


def test_words_without_a_link_stay() -> None:
    assert page_of_space(Page("stage", "S", (Paragraph("a"),)), SCOPE).blocks == (Paragraph("a"),)


@pytest.mark.parametrize(
    ("key", "own"), [("sound", True), ("sound-coverage", True), ("soundings", False), ("x", False)]
)
def test_a_page_is_of_the_department_whose_name_it_begins_with(key: str, own: bool) -> None:
    assert is_of(Page(key, "", ()), ["power", "sound"]) is own


def test_another_problem_than_an_unknown_name_tells_of_no_space() -> None:
    problem = Problem(Where("a.yml"), "k", "v", "r", "missing-key", "advice")
    assert told_where(problem, {}) is problem
    unknown = Problem(Where("a.yml"), "k", "Switch", "r", "reference-unknown", "advice")
    assert told_where(unknown, {"Hall": {}}) is unknown
    switch, other = described(INTAKE + SWITCH), described(INTAKE)
    assert told_where(unknown, {"Hall": {"power": other}}) is unknown
    spaces = {"Hall": {"power": switch}, "Yard": {"power": other}, "Studio": {"power": switch}}
    assert told_where(unknown, spaces).advice == (
        "advice; Hall, Studio has one of that name, and what is of one space is named there alone"
    )
