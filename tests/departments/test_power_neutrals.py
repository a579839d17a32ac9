"""
The neutral as a limit of its own: figures by hand and findings on both sides of their boundaries.
"""

import pytest

from builder.pack import Level
from tests.departments.powered import INTAKE, SWITCH, figure, found, number

SHARE = "continuous_share: 80 %\n"


def harmonic(current: float, share: float) -> str:
    """An even three-phase load with third harmonics."""
    return (
        f"standing_loads: [{{what: Dimmers, on: Switch, draws: {current} A, power_factor: 1,"
        f" phases: all, third_harmonic: {share} %}}]\n"
    )


def switch(more: str) -> str:
    """The switch with more keys."""
    return SWITCH.replace("rating: 125 A", f"rating: 125 A, {more}")


@pytest.mark.source(
    "by hand: 125 A × 80 % − 3 × 0.2 × 30 A = 82 A left; 70 A are free on each line, and 82 / (3 ×"
    " 70) = 39 %"
)
def test_what_is_left_in_the_neutral_and_from_which_harmonic_it_binds() -> None:
    text = SHARE + INTAKE + SWITCH + harmonic(30, 20)
    assert number(text, "service", "neutral-left") == pytest.approx(82)
    assert number(text, "service", "neutral-binds") == pytest.approx(82 / 210)
    assert figure(text, "service", "neutral-left").note == "by its rating, as for its lines"


def test_a_neutral_of_double_size_never_binds_first() -> None:
    text = SHARE + INTAKE + switch("neutral_rating: 400 A") + harmonic(30, 20)
    found_figure = figure(text, "service", "neutral-binds").value
    assert found_figure is not None
    assert found_figure.text == "none: the lines bind first"


def test_a_neutral_of_unknown_rating_is_not_guessed() -> None:
    text = INTAKE + "services: [{name: Switch, fed_from: Intake, rating: '?'}]\n"
    assert figure(text, "service", "neutral-left").missing == ("its neutral's rating",)
    assert figure(INTAKE + switch("neutral_rating: '?'"), "service", "neutral-left").missing == (
        "its neutral's rating",
    )


def test_a_service_without_neutral_has_no_figures_of_one() -> None:
    with pytest.raises(AssertionError, match="no figure neutral-left"):
        figure(INTAKE + switch("neutral_rating: none"), "service", "neutral-left")


def test_a_single_phase_service_has_no_neutral_to_tell_of() -> None:
    text = "supplies: [{name: Intake, system: 230 V single phase, rating: 63 A}]\n"
    with pytest.raises(AssertionError, match="no figure neutral-left"):
        figure(text, "supply", "neutral-left")


@pytest.mark.source(
    "by hand: 3 × 0.5 × 66.6 A = 99.9 A and 3 × 0.5 × 66.8 A = 100.2 A against 80 % of 125 A; 83.4"
    " A make 125.1 A"
)
@pytest.mark.parametrize(
    ("current", "code"),
    [
        (66.6, None),
        (66.8, "neutral-over-continuous"),
        (83.3, "neutral-over-continuous"),
        (83.4, "neutral-over-rating"),
    ],
)
def test_a_neutral_at_its_limit_is_no_finding_and_above_it_is_one(
    current: float, code: str | None
) -> None:
    text = SHARE + INTAKE + SWITCH + harmonic(current, 50)
    told = [
        each
        for name in ("neutral-over-continuous", "neutral-over-rating")
        for each in found(text, name)
        if "Switch" in each.sentence
    ]
    assert [each.code for each in told] == ([code] if code else [])
    assert all(
        each.level is (Level.DANGER if code == "neutral-over-rating" else Level.CAUTION)
        for each in told
    )


def test_the_sentence_names_the_neutral_and_both_currents() -> None:
    (told,) = found(SHARE + INTAKE + SWITCH + harmonic(66.8, 50), "neutral-over-continuous")
    assert (
        told.sentence
        == "The neutral of Switch carries 100.2 A of standing loads. For hours on end it may carry"
        " 100 A (rating, as for its lines)."
    )


def test_a_neutral_smaller_than_its_lines_is_told() -> None:
    assert found(INTAKE + switch("neutral_rating: 125 A"), "neutral-under-lines") == []
    (told,) = found(INTAKE + switch("neutral_rating: 63 A"), "neutral-under-lines")
    assert "The neutral of Switch may carry 63 A, and each line 125 A." in told.sentence


@pytest.mark.source(
    "IEC 60364-5-52:2009, Table E.52.1: with 20 % a cable needs I / 0.86; 107.4 A ask 124.9 A and"
    " 107.6 A ask 125.1 A"
)
@pytest.mark.parametrize(("current", "count"), [(107.4, 0), (107.6, 1)])
def test_third_harmonics_ask_a_larger_cable(current: float, count: int) -> None:
    fed = switch("feeder: {length: 20 m, conductor: 50 mm2}")
    told = found(INTAKE + fed + harmonic(current, 20), "harmonics-over-cable")
    assert len(told) == count
    assert found(INTAKE + SWITCH + harmonic(current, 20), "harmonics-over-cable") == []


@pytest.mark.source(
    "IEC 60364-5-52:2009, Table E.52.1: with 44 % the neutral decides, 3 × 0.44 × 82 A / 0.86 ="
    " 125.9 A; a page that keeps 82 / 0.86 = 95 A is wrong"
)
def test_above_a_third_the_neutral_decides_on_the_cable() -> None:
    fed = switch("feeder: {length: 20 m, conductor: 50 mm2}")
    (told,) = found(INTAKE + fed + harmonic(82, 44), "harmonics-over-cable")
    assert "needs a rating of 125.9 A, and Switch is rated 125 A" in told.sentence


LAMP = "standing_loads: [{what: Lamps, on: Switch, draws: 20 A, power_factor: 1, phases: L1}]\n"


@pytest.mark.source(
    "by hand: a neutral of 63 A less the 20 A that return from L1 already leaves 43 A there, 63 A"
    " on the others, where the lines leave 105 A and 125 A"
)
def test_a_neutral_smaller_than_its_lines_binds_what_is_free_and_below_it_too() -> None:
    text = INTAKE + switch("neutral_rating: 63 A") + LAMP
    board = "boards: [{name: Board, fed_from: Switch, rating: 125 A}]\n"
    for kind, note in (
        ("service", "bound by its neutral"),
        ("board", "bound by the neutral"),
    ):
        told = [number(text + board, kind, f"free.L{k}") for k in (1, 2, 3)]
        assert told == pytest.approx([43, 63, 63])
        assert figure(text + board, kind, "free.L1").note.startswith(note)
    steps = figure(text, "service", "free.L1").working.steps
    assert steps[0] == "Switch: 125 A − 20 A = 105 A, and its neutral leaves 43 A"


def test_a_neutral_like_its_lines_binds_no_line_that_single_loads_leave() -> None:
    told = [number(INTAKE + SWITCH + LAMP, "service", f"free.L{k}") for k in (1, 2, 3)]
    assert told == pytest.approx([105, 125, 125])


@pytest.mark.source(
    "by hand: √(125² − (3 × 0.5 × 70)²) = 67.8 A, and the lines leave 55 A; 75 A: 54.5"
)
@pytest.mark.parametrize(("current", "free_a"), [(70, 55.0), (75, 50.0), (80, 35.0)])
def test_third_harmonics_in_the_neutral_bind_where_they_leave_less_than_the_lines(
    current: float, free_a: float
) -> None:
    text = INTAKE + SWITCH + harmonic(current, 50)
    assert number(text, "service", "free.L2") == pytest.approx(free_a)


def test_a_neutral_of_unknown_rating_leaves_what_is_free_at_most() -> None:
    told = figure(INTAKE + switch("neutral_rating: '?'"), "service", "free.L1")
    assert told.value
    assert (told.value.number, told.value.most, told.value.least) == (None, 125, None)
    assert told.note == (
        "bound by its own limit; less what the neutral of Switch cannot carry, whose rating is"
        " unknown"
    )


@pytest.mark.source(
    "by hand: 20 A on L1 alone are 20 A in the neutral; 20 A on L1 and L2 make 20 A too, and 20 A"
    " on all three nothing, but two of them may be off"
)
@pytest.mark.parametrize("phases", [("L1",), ("L1", "L2"), ("L1", "L2", "L3")])
def test_a_load_that_empties_the_neutral_counts_as_nothing_there(phases: tuple[str, ...]) -> None:
    lamps = ", ".join(
        f"{{what: Lamp {phase}, on: Switch, draws: 20 A, power_factor: 1, phases: {phase}}}"
        for phase in phases
    )
    text = INTAKE + SWITCH + f"standing_loads: [{lamps}]\n"
    assert number(text, "service", "neutral-left") == pytest.approx(105)


def test_outlets_and_the_next_loads_are_held_to_the_neutral_too() -> None:
    outlets = (
        "outlets: [{place: Here, connector: IEC 60309 16 A 3-pin blue, count: 9, rating: 16 A,"
        " phases: in turn, fed_from: Switch}]\n"
    )
    text = INTAKE + switch("neutral_rating: 20 A") + outlets
    assert number(text, "available", "alone") == 3
    assert number(text, "next", "holds") == 3
    assert number(INTAKE + SWITCH + outlets, "next", "holds") == 9
