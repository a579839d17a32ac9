"""Power as it is written: systems, phases, loads, and trees that cannot be."""

import pytest

from builder.departments.power.description.systems import read_phases, read_system
from builder.reading.numerals import Unreadable
from tests.departments.powered import INTAKE, SWITCH, described, problems


@pytest.mark.parametrize(
    ("words", "lines", "to_neutral_v", "between_v"),
    [
        ("230/400 V three phase 50 Hz", 3, 230, 400),
        ("120/208 V three-phase, 60 Hz", 3, 120, 208),
        ("120/240 V split phase", 2, 120, 240),
        ("230 V single phase", 1, 230, 230),
        ("400 V three phase, line to line", 3, 230.94, 400),
        ("120 V three phase line to neutral", 3, 120, 207.85),
        ("240 V split phase line to line", 2, 120, 240),
    ],
)
@pytest.mark.source(
    "Nilsson & Riedel 2011, ch. 11: line voltage is √3 times phase voltage; by hand"
)
def test_a_system_says_its_lines_and_both_voltages(
    words: str, lines: int, to_neutral_v: float, between_v: float
) -> None:
    found = read_system(words).voltages
    assert found.lines == lines
    assert found.line_to_neutral_v == pytest.approx(to_neutral_v, abs=0.01)
    assert found.line_to_line_v == pytest.approx(between_v, abs=0.01)


@pytest.mark.parametrize("words", ["120 V three phase", "240 V split phase"])
def test_one_voltage_of_several_lines_without_its_basis_stays_open(words: str) -> None:
    found = read_system(words).voltages
    assert (found.line_to_neutral_v, found.line_to_line_v) == (None, None)


@pytest.mark.parametrize(
    "words",
    [
        "three phase",
        "400 V",
        "400 V three fase",
        "400/230 V three phase",
        "230/400 V single phase",
        "0 V single phase",
        "230/400 V three phase clean",
    ],
)
def test_words_that_make_no_system_are_refused(words: str) -> None:
    with pytest.raises(Unreadable) as refused:
        read_system(words)
    assert refused.value.code == "system-unreadable"


def test_phases_are_read_in_any_order_and_shown_in_one() -> None:
    assert read_phases("L3, L1").names == ("L1", "L3")
    assert read_phases("all").names == ()
    assert read_phases("In turn").in_turn


def test_phases_may_be_a_list() -> None:
    assert (
        described(INTAKE + SWITCH.replace("rating", "phases: [L2, L1], rating")).services[0].phases
        == "L1 L2"
    )


@pytest.mark.parametrize(
    ("words", "code"), [("L1 L1", "phase-twice"), ("L4", "phase-unknown"), ("", "phase-unknown")]
)
def test_a_phase_that_is_none_or_is_named_twice_is_refused(words: str, code: str) -> None:
    with pytest.raises(Unreadable) as refused:
        read_phases(words)
    assert refused.value.code == code


def test_a_phase_named_twice_is_told_at_its_place() -> None:
    assert problems(INTAKE + SWITCH.replace("rating", "phases: L1 L1, rating")) == [
        "power.yml:2:84 services[1].phases: 'L1 L1' names L1 twice; name each phase once"
        " [phase-twice]"
    ]


def test_a_service_fed_from_itself_is_refused() -> None:
    assert problems(INTAKE + SWITCH.replace("fed_from: Intake", "fed_from: Switch")) == [
        "power.yml:2:37 services[1].fed_from: 'Switch' is the service itself; name the supply,"
        " service or board that feeds it [fed-from-itself]"
    ]


def test_a_service_fed_from_nothing_is_refused() -> None:
    assert problems("services: [{name: Switch}]\n") == [
        "power.yml:1:12 services[1].fed_from is missing here; write it: this cannot be"
        " unknown [missing-key]"
    ]


def test_a_loop_is_told_once_with_its_whole_way() -> None:
    text = (
        "services: [{name: A, fed_from: C}, {name: B, fed_from: A}]\nboards: [{name: C, fed_from:"
        " B}]\n"
    )
    assert problems(text) == [
        "power.yml:1:32 services[1].fed_from: 'C' makes a loop: A is fed from C, which is fed from"
        " B, which is fed from A; one of them must be fed from a supply [feed-loop]"
    ]


def test_a_phase_that_the_source_does_not_have_is_refused() -> None:
    text = (
        INTAKE
        + SWITCH.replace("rating", "phases: L1, rating")
        + "standing_loads: [{what: Lamp, on: Switch, draws: 4 A, phases: L2}]\n"
    )
    assert problems(text) == [
        "power.yml:3:63 standing_loads[1].phases: 'L2' asks for L2, and Switch has L1 alone; "
        "name phases that it has, or say which phases the source has [phase-not-there]"
    ]


def test_a_load_with_neither_ampere_nor_watt_is_refused() -> None:
    assert problems(INTAKE + "standing_loads: [{what: Lamp, on: Intake}]\n") == [
        "power.yml:2:18 standing_loads[1] says neither ampere nor watt; write draws: with kW, kVA"
        " or A, or 'unknown' where nobody has measured it yet [load-without-size]"
    ]


@pytest.mark.parametrize("said", ["1.2", "0"])
def test_a_power_factor_outside_its_range_is_refused(said: str) -> None:
    assert problems(
        INTAKE
        + f"standing_loads: [{{what: Lamp, on: Intake, draws: 1 kW, power_factor: {said}}}]\n"
    ) == [
        f"power.yml:2:70 standing_loads[1].power_factor: '{said}' cannot be: above 0 and at most"
        " 1 is possible here; write what was measured, or `unknown` if nobody knows it yet"
        " [impossible]"
    ]


@pytest.mark.parametrize(
    "text",
    [
        "supplies: [{name: Intake, rating: 0 A}]\n",
        "continuous_share: 0 %\n",
        "continuous_share: 120 %\n",
        "supplies: [{name: Intake, transformer: 0 kVA}]\n",
        INTAKE
        + "boards: [{name: B, fed_from: Intake, feeder: {length: 10 m, conductor: 0 mm2}}]\n",
        INTAKE + "boards: [{name: B, fed_from: Intake, feeder: {length: 10 m, conductor: 6 mm2,"
        " in_parallel: 0}}]\n",
        "generators: [{name: G, altitude_derating: {above: 1000 m, per: 0 m, loses: 3 %}}]\n",
        "generators: [{name: G, altitude_derating: {above: 1000 m, per: 500 m, loses: -3 %}}]\n",
    ],
)
def test_a_number_that_makes_no_sense_is_refused_before_any_figure(text: str) -> None:
    (told,) = problems(text)
    assert told.endswith("[impossible]")


def test_a_step_in_temperature_that_is_none_is_refused() -> None:
    (told,) = problems(
        "generators: [{name: G, temperature_derating: {above: 104 F, per: 0 F, loses: 3 %}}]\n"
    )
    assert told.endswith("[number-out-of-range]")


def test_a_load_may_be_written_in_watt_volt_ampere_or_ampere() -> None:
    loads = ", ".join(
        f"{{what: Lamp, on: Intake, draws: {draws}}}"
        for draws in ("6.4 kW", "8 kVA", "16 A", "'?'")
    )
    kinds = [
        type(load.draws).__name__
        for load in described(INTAKE + f"standing_loads: [{loads}]\n").standing_loads
    ]
    assert kinds == ["Power", "ApparentPower", "Current", "Absent"]


def test_a_load_without_a_unit_is_refused() -> None:
    assert problems(INTAKE + "standing_loads: [{what: Lamp, on: Intake, draws: 12}]\n") == [
        "power.yml:2:50 standing_loads[1].draws: '12' needs a unit; write it like 6.4 kW, 8 kVA or"
        " 16 A [unit-missing]"
    ]
