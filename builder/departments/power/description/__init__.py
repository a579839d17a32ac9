"""
``power.yml``: what feeds the house, where power is handed over, what a plug goes into, and what
stands on it day and night.
"""

from collections.abc import Iterator
from typing import ClassVar

from pydantic import model_validator

from builder.departments.power.description.loops import phase_problems, refuse_impossible_tree
from builder.departments.power.description.nodes import (
    Board,
    Fed,
    Outlet,
    Service,
    ShoreOutlet,
    StandingLoad,
)
from builder.departments.power.description.supplies import Generator, Supply
from builder.departments.power.description.wiring import DropLimits, Wiring
from builder.reading.problems import Problem


class Power(Wiring):
    """Power: supplies, services, boards, outlets, standing loads, shore power."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"voltage_drop_limits"})

    @model_validator(mode="after")
    def _makes_a_tree(self) -> "Power":
        refuse_impossible_tree(self)
        return self

    def contradictions_when_joined(self) -> Iterator[Problem]:
        """Phases named on something that its source among the shared ones does not have."""
        yield from phase_problems(self)


__all__ = [
    "Board",
    "DropLimits",
    "Fed",
    "Generator",
    "Outlet",
    "Power",
    "Service",
    "ShoreOutlet",
    "StandingLoad",
    "Supply",
]
