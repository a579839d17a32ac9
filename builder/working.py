"""Figures and their workings: the citation is fetched from the formula that computed, so a page cannot cite another."""

from collections.abc import Callable, Sequence

from builder.formulas.cite import citation_of
from builder.pack import Figure, Input, Reference, Value, Working

Formula = Callable[..., object]


def worked(*formulas: Formula, inputs: Sequence[Input], steps: Sequence[str] = (), leaves_out: str = "", equation: str = "") -> Working:
    """
    The working of a figure that one or more formulas gave.

    ``equation`` replaces the formulas' own where a figure joins several; ``steps`` are the same with numbers filled in, a line each.
    """
    citations = [citation_of(formula) for formula in formulas]
    references = tuple(Reference(found.source.key, found.clause, found.source.title) for found in citations)
    joined = equation or "; ".join(dict.fromkeys(found.equation for found in citations))
    return Working(equation=joined, inputs=tuple(inputs), references=tuple(dict.fromkeys(references)), steps=tuple(steps), leaves_out=leaves_out)


def figure(key: str, label: str, value: Value, working: Working, *, caution: str = "", note: str = "") -> Figure:
    """A figure with its value."""
    return Figure(key=key, label=label, value=value, working=working, caution=caution, note=note)


def missing(key: str, label: str, working: Working, inputs: Sequence[str], *, caution: str = "") -> Figure:
    """A figure that cannot be computed: it says which inputs are missing, and there is no value."""
    return Figure(key=key, label=label, value=None, working=working, caution=caution, missing=tuple(inputs))
