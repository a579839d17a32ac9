"""Loads on a hung body, as masses at places along it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.beams import BodyLoad
from builder.formulas.cite import cites
from builder.formulas.sources import COMMON_PRACTICE, HIBBELER


@dataclass(frozen=True, slots=True)
class PointLoad:
    """A load at one place. ``at_m`` counts along the body from its first end. [m], [kg]"""

    at_m: float
    load_kg: float

    def __post_init__(self) -> None:
        """Refuse what is no place or no load."""
        _finite("at_m", self.at_m)
        _not_negative("load_kg", self.load_kg)

    @property
    def total_kg(self) -> float:
        """The load itself."""
        return self.load_kg

    @property
    def centre_m(self) -> float:
        """Where it acts."""
        return self.at_m

    @property
    def as_body_load(self) -> BodyLoad:
        """The load as a beam takes it."""
        return {"from_m": self.at_m, "to_m": self.at_m, "kg": self.load_kg}


@dataclass(frozen=True, slots=True)
class UniformLoad:
    """A load spread evenly between two places along the body. [m], [m], [kg/m]"""

    from_m: float
    to_m: float
    load_kg_per_m: float

    def __post_init__(self) -> None:
        """Refuse what is no stretch or no load."""
        _finite("from_m", self.from_m)
        _finite("to_m", self.to_m)
        _not_negative("load_kg_per_m", self.load_kg_per_m)
        if self.to_m <= self.from_m:
            raise ValueError(f"to_m must be above from_m {self.from_m}, got {self.to_m}")

    @property
    def total_kg(self) -> float:
        """The whole of the spread load."""
        return self.load_kg_per_m * (self.to_m - self.from_m)

    @property
    def centre_m(self) -> float:
        """The middle of the stretch."""
        return (self.from_m + self.to_m) / 2

    @property
    def as_body_load(self) -> BodyLoad:
        """The load as a beam takes it."""
        return {"from_m": self.from_m, "to_m": self.to_m, "kg": self.total_kg}


Load = PointLoad | UniformLoad


@cites(
    HIBBELER,
    "ch. 4, force system resultants: parallel forces",
    equation="x = sum(P_i x_i) / sum(P_i)",
)
def centre_of_mass_m(loads: Sequence[Load]) -> float:
    """
    Where along the body the whole load acts.

    Parameters
    ----------
    loads
        Point and uniform loads. [m], [kg]

    Returns
    -------
    float
        Place of the resultant, from the body's first end. [m]

    Raises
    ------
    ValueError
        If the loads weigh nothing together: they have no centre.
    """
    total_kg = total_load_kg(loads)
    if total_kg <= 0:
        raise ValueError(
            f"loads must weigh more than 0 kg together to have a centre, got {total_kg}"
        )
    return math.fsum(load.total_kg * load.centre_m for load in loads) / total_kg


@cites(
    HIBBELER,
    "ch. 4, force system resultants: parallel forces",
    equation="W = sum(P_i) + sum(w_k l_k)",
)
def total_load_kg(loads: Sequence[Load]) -> float:
    """
    Sum of point and uniform loads.

    Parameters
    ----------
    loads
        Point and uniform loads. [m], [kg]

    Returns
    -------
    float
        The whole load. [kg]
    """
    return math.fsum(load.total_kg for load in loads)


@cites(
    COMMON_PRACTICE,
    "a factor stated by the house, with its own source",
    equation="P_dyn = factor P",
)
def dynamic_load_kg(*, load_kg: float, dynamic_factor: float) -> float:
    """
    A load as the support feels it while it is started, stopped or blown about.

    Parameters
    ----------
    load_kg
        The load at rest. [kg]
    dynamic_factor
        The house's own factor, with its source; 1 is at rest. [-]

    Returns
    -------
    float
        The load with the factor. [kg]

    Raises
    ------
    ValueError
        If the load is negative or the factor is below 1.

    Notes
    -----
    No factor is assumed here. It is not a design factor: a working load limit already holds that
    one.
    """
    if not 1 <= dynamic_factor < math.inf:
        raise ValueError(f"dynamic_factor must be at least 1, got {dynamic_factor}")
    _not_negative("load_kg", load_kg)
    return load_kg * dynamic_factor


def _finite(name: str, value: float) -> None:
    """Refuse infinity and what is no number, by name."""
    if not math.isfinite(value):
        raise ValueError(f"{name} must be a finite number, got {value}")


def _not_negative(name: str, value: float) -> None:
    """Refuse negative, infinite and what is no number, by name."""
    if not 0 <= value < math.inf:
        raise ValueError(f"{name} must be a number of at least 0, got {value}")
