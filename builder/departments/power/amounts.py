"""Amounts of power as values, and words that several figures of it share."""

from collections.abc import Sequence

from builder.formulas.circuits import Standing
from builder.formulas.phasors import PHASES
from builder.pack import Value
from builder.reading.measures import shown
from builder.reading.quantities import ApparentPower, Current, Percent

PER_PHASE_LEAVES_OUT = (
    "Other shows' loads, inrush, the shift of the neutral under uneven load, and phase shifts"
    " inside transformers. Angles count in the phasor sum only; what is free counts sizes, which"
    " errs to the low side."
)
UNSURE_LINES = "which lines a transformer below puts its uneven load on is not stated"


def ampere(current_a: float) -> Value:
    """A current as a value."""
    return Value(shown(Current, current_a)[0], "", current_a, "A")


def kilovolt_ampere(kva: float) -> Value:
    """An apparent power as a value; its number is in VA, as facts have it."""
    return Value(shown(ApparentPower, kva * 1000)[0], "", kva * 1000, "VA")


def rounded(current_a: float) -> float:
    """A current without the last digits that adding phasors leaves where they cancel."""
    return round(current_a, 9)


def percent(value_percent: float) -> Value:
    """A percentage as a value; its number is a share."""
    return Value(shown(Percent, value_percent / 100, 1)[0], "", value_percent / 100, "1")


def phase_sizes(stands: Standing, phases: Sequence[str]) -> list[float]:
    """Sizes of the standing currents on the phases that are there. [A]"""
    return [abs(stands.carried[PHASES.index(phase)]) for phase in phases]
