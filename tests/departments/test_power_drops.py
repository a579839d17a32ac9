"""Voltage drop: which conductor, which formula, which base, which limit."""

import pytest

from builder.pack import Level
from tests.departments.powered import INTAKE, figure, found, number

SERVICE = (
    "services: [{{name: S, fed_from: Intake, system: {}, rating: {}, feeder: {{length: {},"
    " conductor: {}{}}}}}]\n"
)
SAID = "usual_power_factor: 0.9\n" + INTAKE
AMERICAN = "supplies: [{name: Intake, system: 120/208 V three phase, rating: 400 A}]\n"


@pytest.mark.source(
    "IEC 60364-5-52:2009, Annex G: 35 mm², 100 m, 100 A, power factor 0.8 loses 9.74 V between"
    " lines"
)
def test_a_metric_feeder_loses_what_annex_g_says() -> None:
    text = (
        "usual_power_factor: 0.8\n"
        + INTAKE
        + SERVICE.format("230/400 V three phase", "100 A", "100 m", "35 mm2", "")
    )
    assert number(text, "service", "drop") == pytest.approx(9.74 / 400, abs=0.005 / 400)


@pytest.mark.source(
    "NFPA 70:2020, ch. 9, tables 8 and 9; √3 × 300 A × 91.44 m × (0.062 × 0.85 + 0.041 × 0.527) /"
    " 304.8 m; a four-wire solver gives 11.58 V"
)
def test_an_american_feeder_loses_what_the_national_tables_say() -> None:
    text = (
        "usual_power_factor: 0.85\n"
        + AMERICAN
        + SERVICE.format("120/208 V three phase", "300 A", "300 ft", "4/0 AWG", "")
    )
    assert number(text, "service", "drop") * 208 == pytest.approx(11.58, abs=0.01)


@pytest.mark.source(
    "BS 7671:2018, table 4F2B: 16 mm² flexible, 2.7 mV/A/m: 32 A along 50 m loses 4.32 V, and"
    " reactance at power factor 1 nothing"
)
def test_flexible_cable_has_its_own_table() -> None:
    flexible = SERVICE.format(
        "230/400 V three phase", "32 A", "50 m", "16 mm2", ", cable: flexible"
    )
    assert number(
        "usual_power_factor: 1\n" + INTAKE + flexible, "service", "drop"
    ) * 400 == pytest.approx(4.32, abs=0.005)


@pytest.mark.source(
    "by hand: √3 × 100 A × 0.1 km × 1.25 × 0.641 Ω/km (IEC 60228, aluminium of 50 mm² at 20 °C) ="
    " 13.88 V at power factor 1"
)
def test_aluminium_has_its_own_table() -> None:
    feeder = SERVICE.format(
        "230/400 V three phase", "100 A", "100 m", "50 mm2", ", metal: aluminium"
    )
    assert number(
        "usual_power_factor: 1\n" + INTAKE + feeder, "service", "drop"
    ) * 400 == pytest.approx(13.88, abs=0.005)


@pytest.mark.source(
    "by hand: √3 × 300 A × 91.44 m × 0.100 Ω / 304.8 m (NFPA 70, table 8, aluminium 4/0) = 15.59 V"
    " at power factor 1"
)
def test_american_aluminium_has_its_own_column() -> None:
    text = (
        "usual_power_factor: 1\n"
        + AMERICAN
        + SERVICE.format(
            "120/208 V three phase", "300 A", "300 ft", "4/0 AWG", ", metal: aluminium"
        )
    )
    assert number(text, "service", "drop") * 208 == pytest.approx(15.59, abs=0.005)


@pytest.mark.source("by hand: 2 × 32 A × 0.05 km × 22.5 / 6 Ω/km = 12.0 V of 230 V")
def test_one_phase_loses_out_and_back_and_counts_to_neutral() -> None:
    text = (
        "usual_power_factor: 1\n"
        + INTAKE
        + SERVICE.format("230 V single phase, phases: L1", "32 A", "50 m", "6 mm2", "")
    )
    assert number(text, "service", "drop") == pytest.approx(12.0 / 230, abs=1e-6)
    assert figure(text, "service", "drop").note.startswith("line to neutral")


@pytest.mark.source("by hand: half the current in each of two conductors, half the loss")
def test_conductors_in_parallel_share_the_current() -> None:
    one = SAID + SERVICE.format("230/400 V three phase", "100 A", "100 m", "35 mm2", "")
    two = SAID + SERVICE.format(
        "230/400 V three phase", "100 A", "100 m", "35 mm2", ", in_parallel: 2"
    )
    assert number(two, "service", "drop") == pytest.approx(number(one, "service", "drop") / 2)


@pytest.mark.law
def test_without_a_power_factor_the_worst_one_counts() -> None:
    feeder = SERVICE.format("230/400 V three phase", "100 A", "100 m", "240 mm2", "")
    told = figure(INTAKE + feeder, "service", "drop").value
    assert told is not None
    assert told.number is None
    worst = told.most
    assert worst is not None
    assert all(
        number(f"usual_power_factor: {said}\n" + INTAKE + feeder, "service", "drop")
        <= worst + 1e-12
        for said in (0.5, 0.7, 0.8, 0.9, 1)
    )
    assert "since the house says none" in str(
        figure(INTAKE + feeder, "service", "drop").working.inputs
    )


@pytest.mark.source(
    "by hand: twice the same feeder in a row loses twice as much at the same current"
)
def test_the_drop_from_the_supply_adds_the_feeders_on_the_way() -> None:
    board = (
        "boards: [{name: B, fed_from: S, rating: 100 A, feeder: {length: 100 m, conductor: 35"
        " mm2}}]\n"
    )
    text = SAID + SERVICE.format("230/400 V three phase", "100 A", "100 m", "35 mm2", "") + board
    assert number(text, "board", "drop-total") == pytest.approx(2 * number(text, "service", "drop"))


@pytest.mark.parametrize(
    ("feeder", "missing"),
    [
        ("length: '?', conductor: 35 mm2", ("the feeder's length",)),
        ("length: 10 m", ("the feeder's conductor",)),
        ("length: 10 m, conductor: 6 mm2, metal: aluminium", ("a table for aluminium of 6 mm²",)),
        ("length: 10 m, conductor: 14 AWG, metal: aluminium", ("a table for 14 AWG in aluminium",)),
        (
            "length: 10 m, conductor: 35 mm2, metal: aluminium, cable: flexible",
            ("a table for flexible aluminium, which no code here has",),
        ),
        ("length: 10 m, conductor: 20 AWG", ("a table for 20 AWG",)),
    ],
)
def test_a_drop_that_cannot_be_computed_says_what_is_missing(
    feeder: str, missing: tuple[str, ...]
) -> None:
    text = (
        INTAKE + f"services: [{{name: S, fed_from: Intake, rating: 63 A, feeder: {{{feeder}}}}}]\n"
    )
    found_figure = figure(text, "service", "drop")
    assert (found_figure.value, found_figure.missing) == (None, missing)


@pytest.mark.source(
    "by hand: 12.0 V of 400 V is 3 %: √3 × 100 A × L × 22.5/35 Ω/km = 12 V at L = 107.78 m, power"
    " factor 1"
)
def test_a_drop_at_the_limit_is_no_finding_and_above_it_is_a_caution() -> None:
    head = "usual_power_factor: 1\nvoltage_drop_limits: {feeder: 3 %}\n" + INTAKE
    at_the_limit = head + SERVICE.format("230/400 V three phase", "100 A", "107.7 m", "35 mm2", "")
    (alone,) = found(at_the_limit, "voltage-drop-over-limit")
    assert alone.level is Level.NOTE
    assert alone.sentence == (
        "The feeder of S loses 6.0 % where one line alone is loaded fully; the house's limit is 3"
        " %. An even load holds it."
    )
    without = at_the_limit.replace("rating: 100 A", "rating: 100 A, neutral_rating: none")
    assert found(without, "voltage-drop-over-limit") == []
    (told,) = found(
        head + SERVICE.format("230/400 V three phase", "100 A", "109 m", "35 mm2", ""),
        "voltage-drop-over-limit",
    )
    assert told.level is Level.CAUTION
    assert (
        told.sentence
        == "The feeder of S loses 3.0 % (12.1 V line to line) at full load; the house's limit is"
        " 3 %."
    )


def test_without_a_limit_of_the_house_a_drop_is_shown_and_not_judged() -> None:
    text = SAID + SERVICE.format("230/400 V three phase", "100 A", "400 m", "35 mm2", "")
    assert number(text, "service", "drop") > 0.05
    assert found(text, "voltage-drop-over-limit") == []
