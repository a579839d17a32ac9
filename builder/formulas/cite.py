"""
Citations as data.

A formula says where it comes from with :func:`cites`; pages print that beside the number, and the
sources page is complete by construction.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

Formula = TypeVar("Formula", bound=Callable[..., object])


@dataclass(frozen=True, slots=True)
class Source:
    """
    A published work. ``key`` names the edition, as in ``ISO 9613-1:1993``; ``title`` is what a
    library would list.
    """

    key: str
    title: str


@dataclass(frozen=True, slots=True)
class Citation:
    """A place in a source, with the equation as a reader would write it by hand."""

    source: Source
    clause: str
    equation: str


FROM_MEMORY = "from memory"
"""
A clause ends so where nobody looked the number of its chapter, clause or table up, or where it
holds a value from memory.
"""

CITED: dict[str, Citation] = {}
"""
Every cited formula by its full name, filled while the formula modules load; read by the sources
page and by the completeness tests.
"""


def cites(source: Source, clause: str, *, equation: str) -> Callable[[Formula], Formula]:
    """
    Attach a citation to a formula.

    ``equation`` is plain text, such as ``R_far = sum(P a) / span``.
    """

    def attach(formula: Formula) -> Formula:
        CITED[name_of(formula)] = Citation(source, clause, equation)
        return formula

    return attach


def name_of(formula: Callable[..., object]) -> str:
    """The full name a formula is listed under, such as ``statics.two_support_reactions``."""
    return f"{formula.__module__.removeprefix('builder.formulas.')}.{formula.__qualname__}"


def citation_of(formula: Callable[..., object]) -> Citation:
    """
    The citation of a formula.

    Raises
    ------
    ValueError
        If the formula cites nothing.
    """
    found = CITED.get(name_of(formula))
    if found is None:
        raise ValueError(f"{name_of(formula)} cites no source")
    return found
