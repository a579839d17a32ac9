"""What a file of lines refuses, with the sentences its author reads."""

from tests.departments.lined import described, line, lines, problems


def test_more_working_ways_than_ways_are_refused_and_as_many_are_not() -> None:
    assert problems(lines(line(more="working: 24"))) == []
    (problem,) = problems(lines(line(more="working: 25")))
    assert (
        problem
        == "lines.yml:2:93 working: '25' is more than the 24 ways of Send; count those that work"
        " among all there are [working-exceeds-count]"
    )


def test_a_dead_way_that_is_not_there_is_refused() -> None:
    assert problems(lines(line(more="dead: [1, 24]"))) == []
    (problem,) = problems(lines(line(more="dead: [25]")))
    assert (
        "'25' is not a way of Send, which has 24; number them 1 to 24, as on the panel"
        " [way-unknown]" in problem
    )


def test_dead_ways_are_not_counted_among_the_working() -> None:
    assert problems(lines(line(more="dead: [3, 9], working: 22"))) == []
    (problem,) = problems(lines(line(more="dead: [3, 9], working: 23")))
    assert (
        "'23' is too many for Send: 2 of its 24 ways are named as dead; leave the dead ways out of"
        " the count [dead-way-counted]" in problem
    )


def test_a_line_runs_between_two_places() -> None:
    (problem,) = problems(lines(line(end="Stage")))
    assert (
        "'Stage' is both ends of Send; a line runs between two places [line-to-itself]" in problem
    )


def test_a_grade_belongs_to_its_kind() -> None:
    assert problems(lines(line(kind="fibre", more="grade: OM3"))) == []
    (problem,) = problems(lines(line(kind="coax", more="grade: OM3")))
    assert (
        "'OM3' is not a grade of coax; write one of: RG-6 class, RG-59 class, 50 ohm"
        " [grade-of-other-kind]" in problem
    )
    (problem,) = problems(lines(line(more="grade: category 6")))
    assert (
        "'category 6' is not a grade of analogue; leave the grade out [grade-of-other-kind]"
        in problem
    )


def test_an_input_that_the_switcher_does_not_have_is_refused() -> None:
    text = (
        "switchers: [{name: S, place: Mix, inputs: 4}]\nconsoles: [{name: C, place: Mix, switcher:"
        " S, input: %d}]\n"
    )
    assert problems(text % 4) == []
    for wrong in (0, 5):
        (problem,) = problems(text % wrong)
        assert (
            f"consoles.C.input: '{wrong}' is not an input of S, which has 4; number them 1 to 4"
            " [input-unknown]" in problem
        )


def test_more_talkback_stations_working_than_there_are_is_refused() -> None:
    text = "talkback_stations: [{place: Mix, kind: desk station, count: 2, working: %d}]\n"
    assert problems(text % 2) == []
    assert "[working-exceeds-count]" in problems(text % 3)[0]


def test_a_rate_without_a_unit_is_refused_and_none_is_an_answer() -> None:
    text = "networks: [{name: N, internet_down: %s}]\n"
    assert problems(text % "none") == []
    assert problems(text % "?") == []
    assert "[unit-missing]" in problems(text % "500")[0]
    assert "[unit-ambiguous]" in problems(text % "500 Mbps")[0]


def test_a_house_may_have_no_lines_or_not_know() -> None:
    assert described("lines: none\n").lines != described("lines: ?\n").lines
