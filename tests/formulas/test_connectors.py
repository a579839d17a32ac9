"""What goes into what, by the standards' own naming."""

import pytest

from builder.formulas.connectors import CONNECTORS, Connector, connectors_named, mates


def named(name: str) -> Connector:
    (found,) = connectors_named(name)
    return found


@pytest.mark.source(
    "IEC 60309-1, table of colours, as makers repeat it: 100-130 V yellow, 200-250 V blue, 380-480"
    " V red"
)
@pytest.mark.parametrize(
    ("name", "volts"), [("yellow", "100–130 V"), ("blue", "200–250 V"), ("red", "380–415 V")]
)
def test_colours_say_the_voltage(name: str, volts: str) -> None:
    assert named(f"IEC 60309 32 A 4-pin {name}").volts == volts


@pytest.mark.source(
    "from memory: IEC 60309-2 clock positions, 230 V 2P+E and 400 V 3P+N+E at 6 h, 110 V at 4 h,"
    " 120/208 V 3P+N+E at 9 h"
)
@pytest.mark.parametrize(
    ("name", "position"),
    [
        ("16 A 3-pin blue", "6 h"),
        ("63 A 5-pin red", "6 h"),
        ("16 A 3-pin yellow", "4 h"),
        ("125 A 5-pin blue", "9 h"),
    ],
)
def test_earth_positions(name: str, position: str) -> None:
    assert named(f"IEC 60309 {name}").earth_position == position


@pytest.mark.source(
    "from memory: ANSI/NEMA WD 6 configurations: a 5-20 outlet takes a 5-15 plug; a 5-15 outlet"
    " does not take a 5-20 plug; L5-15 and 5-15 do not mate"
)
def test_the_twenty_ampere_outlet_takes_the_fifteen_ampere_plug() -> None:
    assert mates(plug=named("NEMA 5-15"), outlet=named("NEMA 5-20")).verdict == "yes"
    assert mates(plug=named("NEMA 5-20"), outlet=named("NEMA 5-15")).verdict == "no"
    assert mates(plug=named("NEMA L5-15"), outlet=named("NEMA 5-15")).verdict == "no"


@pytest.mark.source("IEC 60309-2: ampere, contacts and earth position each keep parts apart")
@pytest.mark.parametrize(
    "other",
    [
        "IEC 60309 63 A 5-pin red",
        "IEC 60309 32 A 4-pin red",
        "IEC 60309 32 A 5-pin blue",
        "NEMA L21-30",
    ],
)
def test_a_red_five_pin_plug_fits_nothing_else(other: str) -> None:
    assert mates(plug=named("IEC 60309 32 A 5-pin red"), outlet=named(other)).verdict == "no"


@pytest.mark.source("common practice, no source")
def test_single_pole_sets_must_be_asked_about() -> None:
    found = mates(plug=named("single-pole 400 A set"), outlet=named("single-pole 400 A set"))
    assert found.verdict == "ask"
    assert "compare pattern, gender and colours" in found.why


@pytest.mark.source(
    "ANSI/NEMA WD 6, a dealer's chart: 21 is 120/208 V, three phase, five wire, four pole; 6 is 250"
    " V, grounded; 14 is 125/250 V, four wire, three pole; 15 is 250 V, three phase, four wire"
)
def test_nema_ratings() -> None:
    one, other = named("NEMA L21-30"), named("nema  l6-30")
    assert (one.ampere_a, one.volts, one.phases, one.wires) == (30, "120/208 V", 3, 5)
    assert (other.ampere_a, other.volts, other.phases, other.wires) == (30, "250 V", 1, 3)
    generator, motor = named("NEMA L14-30"), named("NEMA L15-30")
    assert (generator.volts, generator.phases, generator.wires) == ("125/250 V", 1, 4)
    assert (motor.volts, motor.phases, motor.wires) == ("250 V", 3, 4)


@pytest.mark.law
def test_a_name_without_a_colour_leaves_the_voltage_open() -> None:
    assert {one.colour for one in connectors_named("IEC 60309 32 A 5-pin")} == {
        "yellow",
        "blue",
        "red",
    }
    assert connectors_named("IEC 60309 99 A") == ()


@pytest.mark.law
def test_names_are_unique_and_every_keyed_type_mates_with_itself() -> None:
    assert len({one.name for one in CONNECTORS}) == len(CONNECTORS)
    assert all(
        mates(plug=one, outlet=one).verdict == ("yes" if one.keyed else "ask") for one in CONNECTORS
    )
    assert all(one.citation.clause for one in CONNECTORS)


@pytest.mark.source(
    "IEC 60309-1: 2P+E is single phase, 3P+E and 3P+N+E are three phases; 3, 4 and 5 contacts"
)
def test_contacts_of_the_round_connectors_say_their_phases() -> None:
    expected = {"2P+E": (3, 1), "3P+E": (4, 3), "3P+N+E": (5, 3)}
    round_ones = [one for one in CONNECTORS if one.family == "IEC 60309"]
    assert round_ones
    assert all((one.wires, one.phases) == expected[one.poles] for one in round_ones)


@pytest.mark.source(
    "ANSI/NEMA WD 6, a dealer's chart: 5, 6 and 14 are single phase, 15 and 21 three phase; 5 and 6"
    " have three wires, 14 and 15 four, 21 five"
)
def test_a_configurations_number_says_phases_and_wires() -> None:
    expected = {"5": (1, 3), "6": (1, 3), "14": (1, 4), "15": (3, 4), "21": (3, 5)}
    flat = [one for one in CONNECTORS if one.family == "NEMA"]
    assert flat
    for one in flat:
        configuration, ampere = one.name.removeprefix("NEMA ").removeprefix("L").split("-")
        assert (one.phases, one.wires) == expected[configuration]
        assert one.ampere_a == int(ampere)
