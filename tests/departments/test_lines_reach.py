"""Paths against limits and against the straight line between the places."""

import pytest

from builder.pack import Level
from tests.departments.lined import codes, figure, findings, item, line, lines, published


@pytest.mark.source("IEEE 802.3: 100 m of twisted pair")
def test_a_path_at_the_limit_is_no_finding_and_beyond_it_is_one() -> None:
    assert codes(lines(line(kind="copper data", more="path: 100 m"))) == []
    (found,) = findings(lines(line(kind="copper data", more="path: 100.5 m")))
    assert (found.code, found.level) == ("line-over-limit", Level.CAUTION)
    assert (
        found.sentence
        == "Send: the path of 100.5 m passes the 100 m limit of 1G ethernet by 500 mm. Patch cords"
        " come on top."
    )


@pytest.mark.source("S. Lampen's article: HD 113 m, 3G 78 m on RG-6 class cable")
def test_each_signal_that_a_line_carries_has_its_own_limit() -> None:
    text = lines(line(kind="coax", more="grade: RG-6 class, carries: [HD-SDI, 3G-SDI], path: 80 m"))
    assert item(text, "line").number("left.hd-sdi") == pytest.approx(33)
    assert item(text, "line").number("left.3g-sdi") == pytest.approx(-2)
    assert item(text, "line").text("left.3g-sdi") == "over by 2.0 m"
    assert [found.sentence.split(" by ")[0] for found in findings(text)] == [
        "Send: the path of 80 m passes the 78 m limit of 3G-SDI"
    ]


@pytest.mark.source(
    "IEEE 802.3: 1000BASE-SX 275 m on 62.5 µm 200 MHz km, 550 m on 50 µm 500 MHz km, LX 5 km;"
    " 10GBASE-SR 300 m on OM3, LR 10 km"
)
@pytest.mark.parametrize(
    ("grade", "signal", "left_m"),
    [
        ("OM1", "1g", 175),
        ("OM2", "1g", 450),
        ("OM3", "1g", 450),
        ("OM3", "10g", 200),
        ("OS2", "1g", 4900),
        ("OS2", "10g", 9900),
    ],
)
def test_fibre_is_held_against_the_limit_of_its_grade(
    grade: str, signal: str, left_m: float
) -> None:
    found = figure(
        lines(line(kind="fibre", more=f"grade: {grade}, path: 100 m")),
        "line",
        f"left.{signal}-ethernet",
    )
    assert found.value is not None
    assert found.value.number == pytest.approx(left_m)


def test_a_limit_names_its_own_source() -> None:
    found = figure(lines(line(kind="copper data", more="path: 71 m")), "line", "left.1g-ethernet")
    assert found.working.references[0].source == "IEEE 802.3-2018"
    assert found.working.steps == ("left = 100 m − 71 m = 29 m",)


def test_without_a_grade_or_a_path_the_figure_says_what_it_needs() -> None:
    assert figure(
        lines(line(kind="fibre", more="path: 74 m")), "line", "left.1g-ethernet"
    ).missing == ("grade of the fibre",)
    assert figure(lines(line(kind="copper data")), "line", "left.1g-ethernet").missing == (
        "the cable's path",
    )
    assert figure(
        lines(line(kind="copper data", more="path: ?")), "line", "left.1g-ethernet"
    ).missing == ("the cable's path",)


def test_where_no_limit_is_held_there_is_no_figure() -> None:
    for kind, more in (
        ("analogue", "path: 62 m"),
        ("coax", "grade: RG-59 class, carries: [3G-SDI], path: 60 m"),
        ("talkback", "path: 68 m"),
    ):
        assert [
            each.key
            for each in item(lines(line(kind=kind, more=more)), "line").figures
            if ".left." in each.key
        ] == []


def test_a_fibre_too_long_for_the_faster_signal_is_a_finding_only_where_that_is_carried() -> None:
    assert codes(lines(line(kind="fibre", more="grade: OM3, path: 400 m"))) == []
    assert codes(
        lines(line(kind="fibre", more="grade: OM3, path: 400 m, carries: [10G ethernet]"))
    ) == ["line-over-limit"]
    assert codes(lines(line(kind="fibre", more="grade: OM3, path: 600 m"))) == [
        "line-over-limit",
        "line-over-limit",
    ]


@pytest.mark.source("by hand: from 9, 2, 0 to 0, -28, -1.2 is sqrt(81 + 900 + 1.44) = 31.344")
def test_the_straight_line_is_that_between_the_places() -> None:
    assert item(lines(line(more="path: 62 m")), "line").number("straight") == pytest.approx(
        31.344, abs=0.0005
    )


@pytest.mark.source("by hand: a metre less than 31.344 m is 30.344 m")
def test_a_path_shorter_than_the_straight_line_is_a_finding_and_a_metre_is_allowed() -> None:
    assert codes(lines(line(more="path: 30.35 m"))) == []
    (found,) = findings(lines(line(more="path: 30.34 m")))
    assert found.code == "path-under-straight"
    assert (
        found.sentence
        == "Send: a path of 30.34 m is stated, but Stage and Mix are 31.34 m apart in a straight"
        " line. Measure the cable's own way, not the distance."
    )
    assert found.place is not None
    assert found.place.file == "lines.yml"


def test_without_a_path_nothing_is_held_against_it() -> None:
    assert codes(lines(line(more="path: ?"))) == []
    assert [found.level for found in published(lines(line())).findings] == []
