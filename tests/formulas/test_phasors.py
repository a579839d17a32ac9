"""Phasor sums, neutral and imbalance against published values and laws."""

import cmath
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import phasors as ph

amperes = st.floats(0, 2000)
power_factors = st.floats(0.05, 1)


def neutral_of(*amperes_per_phase: float) -> float:
    loads = [
        ph.line_currents(phases=(p,), current_a=a, power_factor=1)
        for p, a in zip(ph.PHASES, amperes_per_phase, strict=True)
    ]
    return ph.neutral_current(ph.summed_currents(loads)).total_a


@pytest.mark.source(
    "published examples of sqrt(A2+B2+C2-AB-BC-CA), OpenDSS 0.14.5 agrees: 4.3589, 8.6601;"
    " 100/80/60 by phasor sum 34.641"
)
@pytest.mark.parametrize(
    ("phases_a", "neutral_a", "tolerance"),
    [((5, 8, 10), 4.36, 0.005), ((10, 15, 20), 8.66, 0.005), ((100, 80, 60), 34.641, 0.0005)],
)
def test_neutral_of_uneven_phases(
    phases_a: tuple[float, float, float], neutral_a: float, tolerance: float
) -> None:
    assert neutral_of(*phases_a) == pytest.approx(neutral_a, abs=tolerance)


@pytest.mark.source("OpenDSS 0.14.5: 3.4641 A; a published answer of 15.1 A has a sign error")
def test_the_published_wrong_neutral_is_not_ours() -> None:
    assert neutral_of(10, 8, 6) == pytest.approx(3.4641, abs=0.00005)


@pytest.mark.source(
    "IEC 60364-5-52:2009, Annex E principle: balanced 25 A with 44 % third harmonic puts 33.0 A in"
    " the neutral"
)
def test_third_harmonics_add_in_the_neutral() -> None:
    balanced = ph.line_currents(phases=ph.PHASES, current_a=25, power_factor=1)
    neutral = ph.neutral_current(balanced, third_harmonic_a=[0.44 * 25] * 3)
    assert neutral.third_harmonic_a == pytest.approx(33.0, abs=0.005)
    assert neutral.total_a == pytest.approx(33.0, abs=0.005)


@pytest.mark.source(
    "NEMA MG 1 definition, published examples; some pages cut the last digit instead of rounding"
)
@pytest.mark.parametrize(
    ("values", "percent", "tolerance"),
    [
        ((203, 210, 212), 2.56, 0.005),
        ((462, 463, 455), 1.1, 0.05),
        ((480, 476, 472), 0.84, 0.005),
        ((460, 467, 450), 1.96, 0.005),
    ],
)
def test_imbalance(values: tuple[float, float, float], percent: float, tolerance: float) -> None:
    assert ph.imbalance_percent(values) == pytest.approx(percent, abs=tolerance)


@pytest.mark.source("NEMA MG 1 definition: (max - min)/mean, 1.68 % for 480/476/472, is not it")
def test_imbalance_is_not_the_spread() -> None:
    assert ph.imbalance_percent((480, 476, 472)) < 1


@pytest.mark.source(
    "by hand: a unity load between L1 and L2 leads L1 by 30 degrees; the neutral carries nothing"
)
def test_a_load_between_two_lines() -> None:
    first, second, third = ph.line_currents(phases=("L1", "L2"), current_a=10, power_factor=1)
    assert math.degrees(cmath.phase(first)) == pytest.approx(30)
    assert first + second == pytest.approx(0)
    assert third == 0


@pytest.mark.source(
    "by hand: 40 A and 25 A on the halves of a centre-tapped supply leave 15 A in the neutral"
)
def test_split_phase_neutral_is_the_difference() -> None:
    halves = [
        ph.line_currents(
            phases=(p,), current_a=a, power_factor=0.9, angles_deg=ph.SPLIT_PHASE_ANGLES_DEG
        )
        for p, a in (("L1", 40), ("L2", 25))
    ]
    assert ph.neutral_current(ph.summed_currents(halves)).total_a == pytest.approx(15)


@pytest.mark.law
@pytest.mark.parametrize("phases", [(), ("L1", "L1"), ("L4",), ("L1", "L2", "L3", "N")])
def test_phases_that_are_none_are_refused(phases: tuple[str, ...]) -> None:
    with pytest.raises(ValueError, match="phases must be one, two or three of L1, L2, L3"):
        ph.line_currents(phases=phases, current_a=1, power_factor=1)


@pytest.mark.law
@given(amperes, amperes, amperes)
def test_neutral_equals_the_closed_form_at_unity(a: float, b: float, c: float) -> None:
    closed = math.sqrt(max(a * a + b * b + c * c - a * b - b * c - c * a, 0))
    assert neutral_of(a, b, c) == pytest.approx(closed, abs=1e-4)


@pytest.mark.law
@given(amperes, power_factors, st.booleans())
def test_a_load_on_three_phases_leaves_the_neutral_empty(
    current_a: float, power_factor: float, leading: bool
) -> None:
    balanced = ph.line_currents(
        phases=ph.PHASES, current_a=current_a, power_factor=power_factor, leading=leading
    )
    assert ph.neutral_current(balanced).total_a == pytest.approx(0, abs=1e-9)


@pytest.mark.law
@given(st.tuples(amperes, amperes, amperes), st.floats(0.1, 10))
def test_imbalance_does_not_depend_on_scale(
    values: tuple[float, float, float], scale: float
) -> None:
    assert ph.imbalance_percent([scale * v for v in values]) == pytest.approx(
        ph.imbalance_percent(values), abs=1e-6
    )


@pytest.mark.law
def test_phases_that_carry_nothing_are_even() -> None:
    assert ph.imbalance_percent((0, 0, 0)) == 0
