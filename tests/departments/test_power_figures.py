"""Figures of supplies, services and boards: which formula, which limit, which label."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.cautions import ELECTRICITY
from builder.pack import Standing
from tests.departments.powered import INTAKE, SWITCH, figure, item, number, published

AMERICAN = "supplies: [{{name: Intake, system: 120/208 V three phase, rating: {}}}]\n"
BOARD = "boards: [{name: Board, fed_from: Switch, rating: 63 A}]\n"


@pytest.mark.parametrize(
    ("rating", "kva"), [("100 A", 36.0), ("200 A", 72.1), ("400 A", 144.1), ("600 A", 216.2)]
)
@pytest.mark.source("by hand: S = √3 U I; 208 V nameplates as common practice has them")
def test_the_capacity_of_a_three_phase_supply_is_by_the_voltage_between_lines(
    rating: str, kva: float
) -> None:
    assert number(AMERICAN.format(rating), "supply", "capacity") == pytest.approx(
        kva * 1000, abs=60
    )


@pytest.mark.source("by hand: 32 A × 230 V = 7.36 kVA")
def test_the_capacity_of_a_single_phase_service_is_by_the_voltage_to_neutral() -> None:
    text = (
        INTAKE
        + "services: [{name: S, fed_from: Intake, system: 230 V single phase, phases: L2, rating:"
        " 32 A}]\n"
    )
    assert number(text, "service", "capacity") == pytest.approx(7360)


@pytest.mark.source("by hand: 2 × 50 A × 120 V = 12.0 kVA")
def test_the_capacity_of_a_split_phase_supply_counts_both_halves() -> None:
    assert number(
        "supplies: [{name: I, system: 120/240 V split phase, rating: 50 A}]\n", "supply", "capacity"
    ) == pytest.approx(12_000)


def test_the_least_of_rating_breaker_and_transformer_counts() -> None:
    def limit(more: str) -> float:
        return number(INTAKE.replace("630 A", f"630 A, {more}"), "supply", "continuous")

    assert limit("breaker: 500 A") == 500
    assert limit("breaker: 800 A") == 630
    assert limit("transformer: 250 kVA") == pytest.approx(
        360.8, abs=0.05
    )  # 250 000 / (1.7320508 × 400)


def test_an_open_voltage_basis_leaves_the_capacity_open_and_says_why() -> None:
    text = "supplies: [{name: Intake, system: 120 V three phase, rating: 500 A}]\n"
    found = figure(text, "supply", "capacity")
    assert (found.value, found.missing) == (
        None,
        ("its voltages, line to line and line to neutral",),
    )


def test_an_unknown_rating_leaves_what_is_free_below_it_open() -> None:
    text = INTAKE.replace("630 A", "'?'") + SWITCH
    assert figure(text, "service", "free.L1").missing == ("the rating of Intake",)
    assert figure(text, "service", "capacity").value is not None


def test_the_three_ways_of_not_having_a_rating_stay_three() -> None:
    standings = []
    for said in ("rating: '?'", "rating: none", "breaker: none"):
        fact = item(
            f"supplies: [{{name: I, system: 230 V single phase, {said}}}]\n", "supply"
        ).fact("rating")
        assert fact is not None
        standings.append(fact.standing)
    assert standings == [Standing.UNKNOWN, Standing.NONE, Standing.NOT_STATED]


@pytest.mark.source("by hand: 1000 × (6.4 / 0.9) / (1.7320508 × 400) = 10.264 A")
def test_a_three_phase_load_in_kilowatt_draws_on_each_line() -> None:
    text = (
        INTAKE
        + SWITCH
        + "standing_loads: [{what: Loudspeakers, on: Switch, draws: 6.4 kW, power_factor: 0.9}]\n"
    )
    for phase in ("L1", "L2", "L3"):
        assert number(text, "service", f"current.{phase}") == pytest.approx(10.264, abs=0.0005)
    assert number(text, "supply", "current.L1") == pytest.approx(10.264, abs=0.0005)


@pytest.mark.source("by hand: 2.3 kVA / 230 V = 10 A on the one phase")
def test_a_load_on_one_phase_draws_there_alone() -> None:
    text = (
        INTAKE
        + SWITCH
        + "standing_loads: [{what: Lamps, on: Switch, draws: 2.3 kVA, power_factor: 1, phases:"
        " L2}]\n"
    )
    assert [number(text, "service", f"current.{phase}") for phase in ("L1", "L2", "L3")] == [
        0,
        pytest.approx(10),
        0,
    ]


@pytest.mark.source(
    "Nilsson & Riedel 2011, ch. 11, current law at the star point; 100/80/60 A gives √(100² + 80² +"
    " 60² − 8000 − 4800 − 6000) = 34.641 A"
)
def test_the_neutral_is_the_sum_of_the_phases_by_their_angles() -> None:
    assert number(
        INTAKE + SWITCH + three_loads(100, 80, 60), "service", "neutral-current"
    ) == pytest.approx(34.641, abs=0.0005)


@pytest.mark.source("NEMA MG 1-2016, 12.45: 100 × max|x − mean| / mean; 460/467/450 gives 1.96 %")
def test_imbalance_is_the_greatest_distance_from_the_mean() -> None:
    text = INTAKE + SWITCH.replace("125 A", "600 A") + three_loads(460, 467, 450)
    assert number(text, "service", "imbalance") == pytest.approx(0.0196, abs=0.00005)


@pytest.mark.source("by hand: 32 % of 25 A in three lines, 24 A in the neutral")
def test_third_harmonics_add_up_in_the_neutral_of_an_even_load() -> None:
    text = (
        INTAKE
        + SWITCH
        + "standing_loads: [{what: Dimmers, on: Switch, draws: 25 A, power_factor: 1,"
        " third_harmonic: 32 %}]\n"
    )
    assert number(text, "service", "neutral-current") == pytest.approx(24.0, abs=0.001)


def three_loads(*amperes: float) -> str:
    """A load of so many ampere on each phase in turn."""
    rows = [
        f"{{what: Load {n}, on: Switch, draws: {size} A, power_factor: 1, phases: L{n}}}"
        for n, size in enumerate(amperes, 1)
    ]
    return f"standing_loads: [{', '.join(rows)}]\n"


@pytest.mark.source(
    "by hand: 125 A × 80 % − 30 A = 70 A, and 0.8 × 100 A − 30 A − 20 A = 30 A at a smaller intake"
)
def test_what_is_free_is_the_least_left_up_the_tree_and_that_one_is_named() -> None:
    loads = (
        "standing_loads: [{what: A, on: Switch, draws: 30 A, power_factor: 1}, {what: B, on:"
        " Intake, draws: 20 A, power_factor: 1}]\n"
    )
    own = "continuous_share: 80 %\n" + INTAKE + SWITCH + loads
    assert number(own, "service", "free.L1") == pytest.approx(70)
    assert item(own, "service").text("binding") == "itself"
    bound = own.replace("630 A", "100 A")
    assert number(bound, "service", "free.L1") == pytest.approx(30)
    assert item(bound, "service").text("binding") == "Intake"


def test_a_board_shares_what_its_service_has_left() -> None:
    text = (
        INTAKE
        + SWITCH
        + BOARD
        + "standing_loads: [{what: A, on: Switch, draws: 100 A, power_factor: 1}]\n"
    )
    assert number(text, "board", "free.L1") == pytest.approx(25)
    assert item(text, "board").text("binding") == "Switch"


def test_a_load_out_of_service_is_not_counted() -> None:
    text = (
        INTAKE
        + SWITCH
        + "standing_loads: [{what: A, on: Switch, draws: 30 A, power_factor: 1, condition: out of"
        " service}]\n"
    )
    assert item(text, "service").figure("current.L1") is None
    assert number(text, "service", "free.L1") == 125


def test_a_load_that_nobody_has_measured_is_named_beside_what_is_free() -> None:
    text = INTAKE + SWITCH + "standing_loads: [{what: Kitchen, on: Switch, draws: '?'}]\n"
    told = figure(text, "service", "free.L1")
    assert told.note == "bound by its own limit; less what Kitchen draws, which is not known"
    assert told.value is not None
    assert told.value.text == "at most 125 A"
    assert figure(text, "supply", "free-kva").value.text == "at most 435 kVA"  # type: ignore[union-attr]  # 3 × 630 A × 230 V


@pytest.mark.source(
    "by hand: a load draws no more than the breaker that feeds it lets through; 630 A - 125 A ="
    " 505 A"
)
def at_least(text: str, kind: str, key: str) -> float:
    """The lower end of a figure that has no upper one."""
    value = figure(text, kind, key).value
    assert value is not None
    assert value.least is not None
    assert value.most is None
    return value.least


def test_what_is_free_at_least_counts_a_load_nobody_has_measured_at_the_limit_of_its_feed() -> None:
    text = (
        INTAKE
        + SWITCH
        + "standing_loads: [{what: Kitchen, on: Switch, draws: '?'}, {what: Fans, on: Intake,"
        " draws: 30 A, power_factor: 1}]\n"
    )
    free = figure(text, "supply", "free.L1").value
    assert free is not None
    assert (free.least, free.most) == (pytest.approx(475), pytest.approx(600))
    assert at_least(text, "supply", "free-least.L1") == pytest.approx(475)
    assert at_least(text, "service", "free-least.L1") == 0


def test_a_board_of_unknown_rating_is_counted_at_the_limit_of_what_feeds_it() -> None:
    board = "boards: [{name: Board, fed_from: Switch, rating: '?'}]\n"
    assert (
        at_least(
            INTAKE + SWITCH + board + "standing_loads: [{what: Kitchen, on: Board, draws: '?'}]\n",
            "supply",
            "free-least.L1",
        )
        == 505
    )


def test_nothing_is_free_at_least_where_all_is_measured() -> None:
    assert item(INTAKE + SWITCH, "supply").figure("free-least.L1") is None


@pytest.mark.law
@given(drawn_a=st.integers(0, 125))
@settings(max_examples=30)
def test_however_much_an_unmeasured_load_draws_no_less_is_free_than_at_least(drawn_a: int) -> None:
    unknown = at_least(
        INTAKE + SWITCH + "standing_loads: [{what: Kitchen, on: Switch, draws: '?'}]\n",
        "supply",
        "free-least.L1",
    )
    known = number(
        INTAKE
        + SWITCH
        + f"standing_loads: [{{what: Kitchen, on: Switch, draws: {drawn_a} A, power_factor: 1}}]\n",
        "supply",
        "free.L1",
    )
    assert known >= unknown - 1e-9


@pytest.mark.law
@given(
    sizes=st.lists(st.integers(0, 60), min_size=3, max_size=3),
    more=st.integers(1, 40),
    phase=st.sampled_from(["L1", "L2", "L3"]),
)
@settings(max_examples=40)
def test_one_load_more_never_leaves_more_free_anywhere(
    sizes: list[int], more: int, phase: str
) -> None:
    before = INTAKE + SWITCH + BOARD + three_loads(*sizes)
    extra = f"{{what: More, on: Board, draws: {more} A, power_factor: 0.8, phases: {phase}}}"
    after = before.replace("standing_loads: [", f"standing_loads: [{extra}, ")
    for kind in ("supply", "service", "board"):
        for line in ("L1", "L2", "L3"):
            assert (
                number(after, kind, f"free.{line}") <= number(before, kind, f"free.{line}") + 1e-9
            )


@pytest.mark.source("by hand: 50 A at 120 V is 6 kVA; at 230 V that is 26.087 A")
def test_a_transformer_changes_the_ampere_above_it() -> None:
    service = (
        "services: [{name: T, fed_from: Intake, system: 120/208 V three phase, rating: 100 A,"
        " transformer: 30 kVA}]\n"
    )
    text = INTAKE + service + "standing_loads: [{what: A, on: T, draws: 50 A, power_factor: 1}]\n"
    assert number(text, "supply", "current.L1") == pytest.approx(50 * 120 / 230, abs=0.001)


def test_a_service_on_one_unnamed_phase_counts_on_each_that_it_may_be() -> None:
    service = "services: [{name: S, fed_from: Intake, system: 230 V single phase, rating: 32 A}]\n"
    text = (
        INTAKE + service + "standing_loads: [{what: A, on: S, draws: 2.3 kVA, power_factor: 1}]\n"
    )
    assert [
        number(text, "supply", f"free.{phase}") for phase in ("L1", "L2", "L3")
    ] == pytest.approx([620, 620, 620])
    assert "counted on each" in "".join(figure(text, "service", "current.L1").working.steps)


def test_every_figure_carries_the_caution_and_a_source() -> None:
    text = (
        "continuous_share: 80 %\n"
        + INTAKE
        + SWITCH
        + BOARD
        + "standing_loads: [{what: A, on: Board, draws: 4 kW, power_factor: 0.9}]\n"
    )
    figures = [each for part in published(text).section.items for each in part.figures]
    assert len(figures) > 20
    assert {each.caution for each in figures} == {ELECTRICITY}
    assert all(each.working.references for each in figures)


def test_the_working_of_what_is_free_can_be_redone_by_hand() -> None:
    text = (
        "continuous_share: 80 %\n"
        + INTAKE
        + SWITCH
        + "standing_loads: [{what: A, on: Switch, draws: 30 A, power_factor: 1}]\n"
    )
    assert figure(text, "service", "free.L2").working.steps == (
        "Switch: 100 A − 30 A = 70 A",
        "Intake: 504 A − 30 A = 474 A",
        "the least: Switch",
    )


def test_nothing_is_free_below_a_service_that_is_out_of_service() -> None:
    closed = SWITCH.replace("rating", "condition: out of service, rating", 1)
    outlet = (
        "outlets: [{place: Stage, connector: X, count: 3, rating: 16 A, phases: L1, fed_from:"
        " Board}]\n"
    )
    assert figure(INTAKE + closed + BOARD, "board", "free.L1").missing == (
        "Switch back in service",
    )
    assert figure(INTAKE + closed + BOARD + outlet, "available", "alone").missing == (
        "Switch back in service",
    )
    assert number(INTAKE + closed + BOARD, "supply", "free.L1") == 630


def test_without_a_continuous_share_what_is_free_is_no_more_than_the_rating_leaves() -> None:
    text = INTAKE + SWITCH + "continuous_share: unknown\n"
    free = figure(text, "service", "free.L1")
    assert free.value is not None
    assert (free.value.number, free.value.least, free.value.most) == (None, None, 125)
    assert free.value.text == "at most 125 A"
    assert free.note == (
        "bound by its own limit; less what the continuous share of Switch and Intake leaves off"
    )
    assert item(text, "service").figure("free-least.L1") is None


def test_a_share_of_its_own_makes_what_is_free_there_exact_where_all_above_have_one() -> None:
    shares = "supplies: [{name: Intake, system: 230/400 V three phase, rating: 630 A,"
    text = (
        f"{shares} continuous_share: 80 %}}]\n"
        + SWITCH.replace("breaker: 125 A", "breaker: 125 A, continuous_share: 80 %")
        + "continuous_share: unknown\n"
    )
    assert number(text, "service", "free.L1") == pytest.approx(100)


def test_a_house_that_has_no_continuous_share_leaves_all_of_its_ratings() -> None:
    assert number(INTAKE + SWITCH + "continuous_share: none\n", "service", "free.L1") == 125
    own = SWITCH.replace("breaker: 125 A", "breaker: 125 A, continuous_share: none")
    text = INTAKE + own + "continuous_share: 80 %\n"
    assert number(text, "service", "continuous") == 125


def test_outlets_below_an_open_continuous_share_are_at_most_so_many() -> None:
    text = (
        INTAKE
        + SWITCH
        + "outlets: [{place: Dock, connector: IEC 60309 32 A 5-pin red, count: 2, rating: 32 A,"
        " phases: all, fed_from: Switch}]\ncontinuous_share: unknown\n"
    )
    at_once = figure(text, "available-in-all", "at-once").value
    assert at_once is not None
    assert (at_once.text, at_once.most) == ("at most 2 of 2", 2)


def test_without_a_continuous_share_the_neutral_too_has_no_more_than_its_rating_leaves() -> None:
    text = INTAKE + SWITCH + "continuous_share: unknown\n"
    left = figure(text, "service", "neutral-left").value
    assert left is not None
    assert (left.text, left.most) == ("at most 125 A", 125)
    binds = figure(text, "service", "neutral-binds")
    assert binds.value is None
    assert binds.missing == ("the continuous share of Switch and Intake",)


def test_beside_a_load_nobody_has_measured_nothing_is_told_to_be_left_in_the_neutral() -> None:
    loads = "standing_loads: [{what: Kitchen, on: Switch, draws: unknown}]\n"
    for kind in ("service", "supply"):
        left = figure(INTAKE + SWITCH + loads, kind, "neutral-left")
        assert (left.value, left.missing) == (None, ("what Kitchen draws",))
        assert item(INTAKE + SWITCH + loads, kind).figure("neutral-binds") is None
