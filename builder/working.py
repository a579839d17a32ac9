"""
Figures and their workings: the citation is fetched from the formula that computed, so a page cannot
cite another.
"""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from math import floor, log10

from builder.formulas.cite import citation_of
from builder.formulas.sources import COMMON_PRACTICE
from builder.pack import Check, Figure, Input, Reference, Value, Working, sureness
from builder.reading import units
from builder.reading.measures import System, shown
from builder.reading.quantities import Length, Mass
from builder.reading.written import Written

Formula = Callable[..., object]
OTHERS = {
    "kg": ("lb", units.MASS["kg"], units.MASS["lb"]),
    "kg/m": ("lb/ft", units.LOAD_PER_LENGTH["kg/m"], units.LOAD_PER_LENGTH["lb/ft"]),
    "m": ("ft", units.LENGTH["m"], units.LENGTH["ft"]),
    "mm": ("in", units.LENGTH["mm"], units.LENGTH["in"]),
    "m²": ("sq ft", units.AREA["m2"], units.AREA["ft2"]),
    "kN": ("lbf", units.FORCE["kN"], units.FORCE["lbf"]),
    "kPa": ("psf", units.LOAD_PER_AREA["kPa"], units.LOAD_PER_AREA["psf"]),
}
"""
Units that steps are written in, and what a house that measures in feet and pounds reads beside
them.
"""
LEAST_FIGURES = 3
MEASURE = re.compile(
    r"(?<![\w.,])([-−]?\d[\d,]*(?:\.\d+)?) (kg/m|kg|kN|kPa|m²|mm|m)(?![\w·/²³]| m\b| m²)"
)


def worked(
    *formulas: Formula,
    inputs: Sequence[Input],
    steps: Sequence[str] = (),
    leaves_out: str = "",
    equation: str = "",
    lines: Iterable[Written | Check] = (),
) -> Working:
    """
    The working of a figure that one or more formulas gave.

    ``equation`` replaces the formulas' own where a figure joins several; ``steps`` are the same
    with numbers filled in, a line each. ``lines`` are the records of the venue's files that went in
    beside the figure's own, or the checks of another department's: the figure is as sure as the
    least sure of them.
    """
    citations = [citation_of(formula) for formula in formulas]
    references = tuple(
        Reference(found.source.key, found.clause, found.source.title) for found in citations
    )
    joined = equation or "; ".join(dict.fromkeys(found.equation for found in citations))
    return Working(
        equation=joined,
        inputs=tuple(inputs),
        references=tuple(dict.fromkeys(references)),
        steps=tuple(steps),
        leaves_out=leaves_out,
        check=weakest_of(lines),
    )


def by_hand(
    equation: str,
    clause: str,
    *,
    inputs: Sequence[Input],
    steps: Sequence[str] = (),
    lines: Iterable[Written | Check] = (),
) -> Working:
    """A working whose formula is plain geometry or counting; ``lines`` as for :func:`worked`."""
    return Working(
        equation,
        tuple(inputs),
        (Reference(COMMON_PRACTICE.key, clause, COMMON_PRACTICE.title),),
        tuple(steps),
        check=weakest_of(lines),
    )


def weakest_of(lines: Iterable[Written | Check]) -> Check | None:
    """The weakest check of some lines; None where there are none."""
    checks = (line if isinstance(line, Check) else check_of(line) for line in lines)
    return min(checks, key=sureness, default=None)


def check_of(line: Written) -> Check:
    """How a line was checked, as the pack keeps it."""
    said = line.verification
    return Check("", "", "") if said is None else Check(said.on.text, said.by, said.how)


def figure(
    key: str, label: str, value: Value, working: Working, *, caution: str = "", note: str = ""
) -> Figure:
    """A figure with its value."""
    return Figure(key=key, label=label, value=value, working=working, caution=caution, note=note)


def length_value(length_m: float, system: System) -> Value:
    """A length as a value of the pack, in both systems. [m]"""
    text, also = shown(Length, length_m, 2, system)
    return Value(text, also, length_m, "m")


def mass_value(mass_kg: float, system: System) -> Value:
    """A mass as a value of the pack, to the kilogram and in both systems. [kg]"""
    text, also = shown(Mass, mass_kg, 0, system)
    return Value(text, also, mass_kg, "kg")


def missing(
    key: str, label: str, working: Working, inputs: Sequence[str], *, caution: str = ""
) -> Figure:
    """A figure that cannot be computed: it says which inputs are missing, and there is no value."""
    return Figure(
        key=key, label=label, value=None, working=working, caution=caution, missing=tuple(inputs)
    )


def in_both(working: Working) -> Working:
    """
    The working with feet and pounds in brackets behind each measure of its steps, for a house whose
    units they are.
    """
    return replace(working, steps=tuple(MEASURE.sub(both, step) for step in working.steps))


def both(found: re.Match[str]) -> str:
    """
    One measure and the same in the other unit, to a figure less than was written: a whole kilogram
    is no whole pound.
    """
    other, unit, theirs = OTHERS[found[2]]
    digits = found[1].lstrip("-−").replace(",", "")
    value = (
        float(digits) * float(unit.factor / theirs.factor) * (1 if found[1][0].isdigit() else -1)
    )
    if not value:
        return found[0]
    figures = max(LEAST_FIGURES, len(digits.replace(".", "").lstrip("0")) - 1)
    places = figures - 1 - floor(log10(abs(value)))
    return f"{found[0]} ({round(value, places):,.{max(0, places)}f} {other})".replace("(-", "(−")
