"""Services behind transformers: what their source carries, and what it leaves them."""

import pytest

from tests.departments.powered import figure, item, number

US = "supplies: [{name: Vault, system: 277/480 V three phase, rating: 400 A}]\n"
SPLIT = (
    "services: [{name: Panel, fed_from: Vault, system: 120/240 V split phase, phases: [L1, L2],"
    " rating: 200 A}]\n"
)
STEP_DOWN = (
    "services: [{name: Panel, fed_from: Vault, system: 120/208 V three phase, rating: 400 A}]\n"
)


def load(draws: str, phases: str = "all") -> str:
    """A standing load on the panel."""
    return (
        f"standing_loads: [{{what: A, on: Panel, draws: {draws}, phases: {phases},"
        " power_factor: 1}]\n"
    )


@pytest.mark.source(
    "OpenDSS 0.14.5 by opendssdirect.py 0.9.4: 160 A on each line of 120/240 V are 80.0 A in both"
    " lines of 480 V; a line to neutral share, 160 × 120 / 277, would be 69.3 A"
)
def test_a_split_phase_secondary_is_seen_between_two_lines_of_its_source() -> None:
    text = US + SPLIT + load("160 A")
    for line in ("L1", "L2"):
        assert number(text, "supply", f"current.{line}") == pytest.approx(80.0, abs=0.05)
    assert number(text, "supply", "current.L3") == 0
    assert number(text, "supply", "neutral-current") == pytest.approx(0, abs=1e-6)


@pytest.mark.source("OpenDSS 0.14.5: 160 A on one half are 40.0 A in both lines of 480 V")
def test_one_half_of_a_split_phase_secondary_loads_both_lines_too() -> None:
    text = US + SPLIT + load("160 A", "L1")
    assert [number(text, "supply", f"free.L{k}") for k in (1, 2, 3)] == pytest.approx(
        [360, 360, 400], abs=0.05
    )


def test_a_split_phase_service_without_a_transformer_stays_on_its_lines() -> None:
    supply = "supplies: [{name: Vault, system: 120/208 V three phase, rating: 400 A}]\n"
    legs = SPLIT.replace("120/240", "120/208")
    text = supply + legs + load("160 A", "L1")
    assert [number(text, "supply", f"current.L{k}") for k in (1, 2, 3)] == pytest.approx(
        [160, 0, 0]
    )


@pytest.mark.source(
    "OpenDSS 0.14.5: 100 A on one line of 120/208 V are 25.02 A in two lines of a 480 V delta,"
    " which two by its vector group; before a star winding 43.33 A stay on its line"
)
def test_the_other_lines_of_a_delta_primary_are_not_told_as_empty() -> None:
    text = US + STEP_DOWN + load("100 A", "L1")
    told = [figure(text, "supply", f"current.L{k}") for k in (1, 2, 3)]
    most = [each.value.most for each in told if each.value]
    assert most == pytest.approx([43.33, 25.02, 25.02], abs=0.01)
    assert {each.note for each in told} == {
        "which lines a transformer below puts its uneven load on is not stated"
    }
    assert item(text, "supply").figure("imbalance") is None
    assert [number(text, "supply", f"free.L{k}") for k in (1, 2, 3)] == pytest.approx(
        [356.67, 374.98, 374.98], abs=0.01
    )


@pytest.mark.source("OpenDSS 0.14.5: an even 100 A of 208 V is 43.33 A on each line of 480 V")
def test_an_even_load_behind_a_transformer_has_a_number_on_every_line() -> None:
    text = US + STEP_DOWN + load("100 A")
    for line in ("L1", "L2", "L3"):
        assert number(text, "supply", f"current.{line}") == pytest.approx(43.33, abs=0.01)


@pytest.mark.source(
    "by hand: 100 A of the source over 120 / 277 × 2 / √3 = 199.9 A; two lines of 240 V of 480 V:"
    " 100 A × 480 / 240 = 200 A"
)
@pytest.mark.parametrize(("service", "free_a"), [(STEP_DOWN, 199.91), (SPLIT, 200.0)])
def test_what_a_source_leaves_is_told_in_the_ampere_behind_the_transformer(
    service: str, free_a: float
) -> None:
    text = US.replace("400 A", "100 A") + service
    free = figure(text, "service", "free.L1")
    assert free.value
    assert free.value.number == pytest.approx(free_a, abs=0.01)
    rated = "400 A" if service == STEP_DOWN else "200 A"
    assert free.working.steps[1].startswith("Vault: 100 A − 0 A = 100 A; L1 leaves")
    assert rated in free.working.inputs[0].text


@pytest.mark.source("by hand: a 1:1 transformer of delta and star: 30 A on one line, 17.3 A on two")
def test_an_isolating_transformer_of_the_same_voltage_mixes_lines_too() -> None:
    text = (
        "supplies: [{name: Vault, system: 230/400 V three phase, rating: 100 A}]\n"
        "services: [{name: Panel, fed_from: Vault, system: 230/400 V three phase, rating: 63 A,"
        " transformer: 63 kVA}]\n"
    ) + load("30 A", "L1")
    assert [number(text, "supply", f"free.L{k}") for k in (1, 2, 3)] == pytest.approx(
        [70, 82.68, 82.68], abs=0.01
    )
