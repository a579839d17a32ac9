"""What goes into what the house has, and what is left of the voltage drop for tails."""

import pytest

from tests.departments.powered import INTAKE, SWITCH, figure, item, published


def takes(connector: str) -> str:
    """The plugs that an outlet takes, in words."""
    text = (
        f"outlets: [{{place: Left, connector: {connector}, count: 1, rating: 15 A, phases: L1,"
        " fed_from: Switch}]\n"
    )
    value = figure(INTAKE + SWITCH + text, "connector", "takes").value
    assert value is not None
    return value.text


@pytest.mark.source(
    "NEMA WD 6: a 5-20 receptacle takes 5-15 and 5-20 plugs, an L5-20 its own alone; IEC 60309-2:"
    " one ampere, one colour"
)
@pytest.mark.parametrize(
    ("connector", "plugs"),
    [
        ("NEMA 5-20", "plug NEMA 5-15; plug NEMA 5-20"),
        ("NEMA L5-20", "plug NEMA L5-20"),
        ("IEC 60309 32 A 5-pin red", "plug IEC 60309 32 A 5-pin red"),
        ("single-pole 400 A set", "look at both parts"),
    ],
)
def test_an_outlet_takes_the_plugs_of_its_standard(connector: str, plugs: str) -> None:
    assert takes(connector) == plugs


def test_a_name_that_leaves_the_voltage_open_says_that_colours_do_not_mix() -> None:
    text = (
        "outlets: [{place: Left, connector: IEC 60309 63 A 5-pin, count: 1, rating: 63 A, phases:"
        " all, fed_from: Switch}]\n"
    )
    found = figure(INTAKE + SWITCH + text, "connector", "takes")
    assert found.note == "the name leaves the voltage open: only the same colour goes in"


def test_words_of_no_standard_are_not_guessed() -> None:
    service = SWITCH.replace("rating: 125 A", "connectors: [lugs for bare tails], rating: 125 A")
    assert figure(INTAKE + service, "connector", "takes").missing == ("a standard's name",)
    assert item(INTAKE + service, "connector").text("at") == "Switch"


def test_what_visitors_may_not_use_is_left_out() -> None:
    service = SWITCH.replace(
        "rating: 125 A", "terms: not for visitors, connectors: [NEMA 5-20], rating: 125 A"
    )
    assert published(INTAKE + service).section.of_kind("connector") == ()


@pytest.mark.source(
    "by hand: √3 × 125 A × 0.05 km × 22.5 / 50 Ω/km = 4.87 V, 1.22 % of 400 V; 5 % − 1.22 % = 3.78"
    " %; at 1.2 % nothing is left"
)
@pytest.mark.parametrize(("limit", "left"), [("5 %", 0.0378), ("1.2 %", 0.0)])
def test_the_limit_to_the_load_less_what_is_lost_is_left_for_tails(limit: str, left: float) -> None:
    fed = SWITCH.replace(
        "rating: 125 A", "feeder: {length: 50 m, conductor: 50 mm2}, rating: 125 A"
    )
    text = f"usual_power_factor: 1\nvoltage_drop_limits: {{to_the_load: {limit}}}\n" + INTAKE + fed
    value = figure(text, "service", "drop-left").value
    assert value is not None
    assert value.number == pytest.approx(left, abs=5e-5)
