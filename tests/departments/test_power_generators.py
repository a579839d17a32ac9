"""Generators: rating on site, load share, fuel."""

import pytest

from builder.department import Surroundings
from builder.departments.power.publish import publish
from builder.exchange import Altitude, Offers
from tests.departments.powered import AGEING, described, figure, found, number

MACHINE = (
    "generators: [{{name: G, system: 120/208 V three phase, prime: 250 kVA, rated_power_factor:"
    " 0.8{}}}]\n"
)
SHEET = (
    ", altitude_derating: {above: 1000 m, per: 500 m, loses: 3 %}, temperature_derating: {above: 40"
    " C, per: 5 C, loses: 3 %}"
)
NOTHING_OFF = ", altitude_derating: none, temperature_derating: none"
LOAD = "standing_loads: [{{what: A, on: G, draws: {}, power_factor: {}}}]\n"
BURNS = ", burns: [{load: 25 %, in_one_hour: 20 l}, {load: 50 %, in_one_hour: 35 l}], tank: 700 l"


@pytest.mark.source(
    "a maker's sheet: 3 % each 500 m above 1000 m and each 5 °C above 40 °C, multiplied; 2500 m and"
    " 50 °C leave 0.91 × 0.94 = 0.8554"
)
def test_height_and_heat_take_from_the_rating_together() -> None:
    text = MACHINE.format(SHEET + ", works_at_altitude: 2500 m, works_in_air_of: 50 C")
    assert number(text, "generator", "site-rating") == pytest.approx(250_000 * 0.8554, abs=1)


@pytest.mark.source(
    "by hand: steps of 9 °F are steps of 5 °C; 122 °F is 50 °C, two steps above 104 °F, 6 %"
)
def test_steps_in_fahrenheit_are_differences() -> None:
    text = MACHINE.format(
        ", temperature_derating: {above: 104 F, per: 9 F, loses: 3 %}, works_in_air_of: 122 F,"
        " altitude_derating: none"
    )
    assert number(text, "generator", "site-rating") == pytest.approx(250_000 * 0.94, abs=1)


def test_a_sheet_without_the_site_leaves_the_rating_open() -> None:
    found_figure = figure(
        MACHINE.format(SHEET + ", works_at_altitude: 2500 m"), "generator", "site-rating"
    )
    assert (found_figure.value, found_figure.missing) == (
        None,
        ("a height and air temperature at which it still runs",),
    )


def at_house(text: str, altitude: Altitude | None) -> float | None:
    """Rating on site of the generator of a text in a house at an altitude."""
    part = publish(described(text), Surroundings(Offers(altitude=altitude), AGEING, "metric"))
    item = part.section.item("generator", "G")
    assert item is not None
    return item.number("site-rating")


@pytest.mark.source(
    "a maker's sheet: 3 % each 500 m above 1000 m; 2000 m leave 0.94, 1500 m leave 0.97"
)
def test_the_altitude_of_the_house_counts_unless_the_generator_says_its_own() -> None:
    sheet = (
        ", altitude_derating: {above: 1000 m, per: 500 m, loses: 3 %}, temperature_derating: none"
    )
    house = Altitude(2000.0, "2000 m")
    assert at_house(MACHINE.format(sheet), house) == pytest.approx(250_000 * 0.94)
    assert at_house(MACHINE.format(sheet + ", works_at_altitude: 1500 m"), house) == pytest.approx(
        250_000 * 0.97
    )
    assert at_house(MACHINE.format(sheet + ", works_at_altitude: '?'"), house) is None
    assert at_house(MACHINE.format(sheet), None) is None


@pytest.mark.parametrize(
    ("more", "open_conditions"),
    [
        ("", "height or heat"),
        (", works_at_altitude: 1500 m, works_in_air_of: 20 C", "height"),
        (", works_at_altitude: 100 m, works_in_air_of: 35 C", "heat"),
        (", altitude_derating: none, works_in_air_of: '?'", "heat"),
    ],
)
def test_without_a_sheet_the_rating_is_at_most_the_plate_s(more: str, open_conditions: str) -> None:
    told = figure(MACHINE.format(more), "generator", "site-rating")
    assert told.value
    assert (told.value.number, told.value.most) == (None, 250_000)
    assert told.note == f"no derating by {open_conditions} is stated"
    free = figure(MACHINE.format(more), "generator", "free.L1")
    assert free.value
    assert (free.value.number, free.value.least) == (None, None)
    assert free.note.endswith(f"; less what {open_conditions.replace('or', 'and')} take off G")


@pytest.mark.parametrize("more", [NOTHING_OFF, ", works_at_altitude: 100 m, works_in_air_of: 25 C"])
def test_where_the_plate_holds_or_the_maker_takes_nothing_off_it_is_the_rating(more: str) -> None:
    assert number(MACHINE.format(more), "generator", "site-rating") == 250_000


def test_a_height_or_heat_that_no_sheet_answers_is_a_finding() -> None:
    (told,) = found(
        MACHINE.format(", works_at_altitude: 1500 m, works_in_air_of: 35 C"), "derating-missing"
    )
    assert told.sentence == (
        "G runs at 1500 m and in air of 35 C, and nothing says what its maker takes off for that."
        " What it gives is less than its plate says."
    )
    assert found(MACHINE.format(""), "derating-missing") == []
    assert (
        found(MACHINE.format(", works_at_altitude: 1500 m" + NOTHING_OFF), "derating-missing") == []
    )


@pytest.mark.source(
    "by hand: 250 kVA / (√3 × 208 V) = 693.9 A; 0.8 of it at power factor 1, 555.1 A"
)
def test_a_generator_limits_by_its_rating_on_site_and_its_engine() -> None:
    free = figure(MACHINE.format(NOTHING_OFF), "generator", "free.L1")
    assert free.value
    assert free.value.number == pytest.approx(555.1, abs=0.05)
    assert free.note == "bound by its engine"
    unity = MACHINE.format(NOTHING_OFF).replace("power_factor: 0.8", "power_factor: 1")
    assert number(unity, "generator", "free.L1") == pytest.approx(693.9, abs=0.05)
    small = MACHINE.format(NOTHING_OFF + ", breaker: 500 A")
    assert number(small, "generator", "free.L1") == 500


@pytest.mark.source(
    "by hand: 150 kVA at power factor 0.5 are 416.4 A and 75 kW; 693.9 − 416.4 = 277.6 A are left"
    " by kVA, 555.1 − 208.2 = 346.9 A by kW; 150 kVA at 1 leave 555.1 − 416.4 = 138.8 A by kW"
)
@pytest.mark.parametrize(
    ("power_factor", "free_a", "by"), [(0.5, 277.6, "its own limit"), (1, 138.8, "its engine")]
)
def test_an_engine_is_held_by_active_power_alone(
    power_factor: float, free_a: float, by: str
) -> None:
    text = MACHINE.format(NOTHING_OFF) + LOAD.format("150 kVA", power_factor)
    free = figure(text, "generator", "free.L1")
    assert free.value
    assert free.value.number == pytest.approx(free_a, abs=0.1)
    assert free.note == f"bound by {by}"


def test_an_engine_of_unknown_power_factor_leaves_what_is_free_at_most() -> None:
    text = MACHINE.format(NOTHING_OFF).replace(", rated_power_factor: 0.8", "")
    free = figure(text, "generator", "free.L1")
    assert free.value
    assert (free.value.number, free.value.least) == (None, None)
    assert "whose power factor is not stated" in free.note


def test_a_service_of_a_generator_is_bound_by_the_generator_s_engine() -> None:
    text = MACHINE.format(NOTHING_OFF) + (
        "services: [{name: Tails, fed_from: G, system: 120/208 V three phase, rating: 800 A}]\n"
    )
    free = figure(text, "service", "free.L1")
    assert free.note == "bound by the engine of G"


@pytest.mark.source(
    "by hand: 100 kW at power factor 0.8 is 125 kVA, half of 250; at power factor 1 the engine's"
    " 200 kW count, also half"
)
@pytest.mark.parametrize("power_factor", [0.8, 1])
def test_the_larger_of_both_shares_counts(power_factor: float) -> None:
    assert number(
        MACHINE.format(NOTHING_OFF) + LOAD.format("100 kW", power_factor), "generator", "load-share"
    ) == pytest.approx(0.5)


def test_a_generator_at_its_rating_is_no_finding_and_above_it_is_a_danger() -> None:
    assert found(MACHINE.format("") + LOAD.format("200 kW", 1), "generator-overloaded") == []
    (told,) = found(MACHINE.format("") + LOAD.format("204 kW", 1), "generator-overloaded")
    assert (
        told.sentence
        == "G is loaded to 102 % of its rating on site by the house's own loads alone."
    )


@pytest.mark.source(
    "by hand: 75 kW is 37.5 % of 200 kW, half way from 20 to 35 l an hour: 27.5 l; 700 l last"
    " 25.45 h"
)
def test_fuel_lies_between_the_makers_figures() -> None:
    text = MACHINE.format(BURNS) + LOAD.format("75 kW", 1)
    assert number(text, "generator", "fuel") == pytest.approx(0.0275)
    assert number(text, "generator", "runs-for") == pytest.approx(25.4545 * 3600, abs=1)


def test_fuel_outside_the_makers_figures_is_not_guessed() -> None:
    text = MACHINE.format(BURNS) + LOAD.format("20 kW", 1)
    assert figure(text, "generator", "fuel").missing == ("the maker's consumption at 10 %",)
