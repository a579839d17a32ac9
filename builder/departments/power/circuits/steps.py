"""What stands between a node and its source: nothing, or a transformer, and how it is joined."""

from builder.departments.power.description import Fed
from builder.departments.power.description.systems import System
from builder.formulas.phasors import PHASES
from builder.formulas.windings import Winding
from builder.reading.quantities import ApparentPower

STEP_SHARE = 0.06
"""Voltages that differ by less are one system: 230/400 and 240/415 V are, 208 and 400 V are not."""


def step_between(
    fed: Fed,
    system: System | None,
    above: System | None,
    phases: tuple[str, ...],
    *,
    three_above: bool,
) -> tuple[float, Winding]:
    """
    Ampere at the source for each ampere of an even load here, and how the lines stand on those of
    the source, where a transformer stands between them: one that is written, or one that other
    voltages tell of.
    """
    here_v, above_v = full_voltages(system), full_voltages(above)
    has_own = isinstance(fed.transformer, ApparentPower)
    on_three: Winding = "three lines" if three_above and len(phases) == len(PHASES) else "line"
    if here_v is None or above_v is None:
        return 1.0, on_three if has_own else "line"
    neutral_v, line_v, lines = here_v
    above_neutral_v, above_line_v, above_lines = above_v
    if lines == 1:
        # A single-phase service may hang between a line and neutral or between two lines of the
        # same source.
        tap_v = above_line_v if len(phases) == 2 else above_neutral_v
        same = any(is_near(neutral_v, one_v) for one_v in (above_neutral_v, above_line_v))
        return (1.0 if same else neutral_v / tap_v), "line"
    same = is_near(neutral_v, above_neutral_v) and is_near(line_v, above_line_v)
    if same and not has_own:
        return 1.0, "line"
    if lines == 2 and above_lines > 1:
        return line_v / above_line_v, "two lines"
    return (1.0 if same else neutral_v / above_neutral_v), on_three


def full_voltages(system: System | None) -> tuple[float, float, int] | None:
    """Line to neutral, line to line and lines of a system, where both voltages are known. [V]"""
    found = system.voltages if system else None
    if found is None or found.line_to_neutral_v is None or found.line_to_line_v is None:
        return None
    return found.line_to_neutral_v, found.line_to_line_v, found.lines


def is_near(one_v: float, other_v: float) -> bool:
    """Whether two voltages are those of one system."""
    return abs(one_v / other_v - 1) < STEP_SHARE
