"""
Generators: what is left of the prime rating on this site, how far it is loaded, and what it burns.

Steps of derating and consumption are the machine's own data. Planning figures: the maker's data and
a competent person decide.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE, ISO_8528_1

REFERENCE_ALTITUDE_M = 111.0
"""
The height at which the standard atmosphere has 100 kPa, the pressure that a rating holds for
(ISO 8528-1, from memory). [m]
"""
REFERENCE_AIR_C = 25.0
"""The air that a rating holds for (ISO 8528-1, from memory). [°C]"""


@dataclass(frozen=True, slots=True)
class DeratingStep:
    """
    A maker's sentence such as '3 % per 500 m above 1000 m': all three in one unit of height [m] or
    temperature [°C], the loss in %.
    """

    starts_at: float
    per: float
    loss_percent: float


@dataclass(frozen=True, slots=True)
class Consumption:
    """A maker's figure: litres an hour at a share of the prime rating."""

    load_share: float
    litre_per_h: float


@dataclass(frozen=True, slots=True)
class GeneratorLoading:
    """Share of the apparent and of the active power a load takes; the larger one counts. [-]"""

    apparent_share: float
    active_share: float

    @property
    def share(self) -> float:
        """The share that counts. [-]"""
        return max(self.apparent_share, self.active_share)


@cites(
    ISO_8528_1,
    "site conditions; steps from the machine's own sheet",
    equation="k = 1 - loss/100 * max(0, value - start) / step",
)
def derating_factor(value: float, step: DeratingStep) -> float:
    """
    Share of the rating left at a height or an air temperature.

    Parameters
    ----------
    value
        Height above sea level [m] or air temperature [°C], as the step counts.
    step
        The machine's own derating step.

    Returns
    -------
    float
        Share left, between 0 and 1. [-]

    Raises
    ------
    ValueError
        If the step is not above 0, the loss is negative, or nothing is left.

    Notes
    -----
    Parts of a step count in proportion. Multiply the factors for height and temperature where the
    sheet says so. Engine and alternator may have steps of their own: the lower result holds.
    """
    if not math.isfinite(value):
        raise ValueError(f"value must be a finite number, got {value}")
    steps = max(0.0, value - step.starts_at) / above_zero("per", step.per)
    left = 1 - not_negative("loss_percent", step.loss_percent) / 100 * steps
    if left <= 0:
        raise ValueError(f"value must be one at which the machine still runs, got {value}")
    return left


@cites(ISO_8528_1, "site conditions; factors multiply", equation="S_site = S_prime * k1 * k2 * ...")
def site_rating_kva(*, prime_kva: float, factors: Sequence[float]) -> float:
    """
    Rating of a generator on its site.

    Parameters
    ----------
    prime_kva
        Prime rating. [kVA]
    factors
        Share left by each condition, each above 0 and at most 1. [-]

    Returns
    -------
    float
        Rating on site. [kVA]

    Raises
    ------
    ValueError
        If the rating is negative or a factor is outside its range.
    """
    for factor in factors:
        if not 0 < factor <= 1:
            raise ValueError(f"factors must be above 0 and at most 1, got {factor}")
    return not_negative("prime_kva", prime_kva) * math.prod(factors)


@cites(
    ISO_8528_1,
    "rated power and rated power factor",
    equation="share = max(S / S_site, P / (S_site * pf_rated))",
)
def generator_loading(
    *, load_kva: float, load_kw: float, site_kva: float, rated_power_factor: float = 0.8
) -> GeneratorLoading:
    """
    How far a load takes a generator: its alternator by kVA, its engine by kW.

    Parameters
    ----------
    load_kva, load_kw
        Apparent and active power of the load. [kVA, kW]
    site_kva
        Rating on site. [kVA]
    rated_power_factor
        Engine power over apparent rating, on the nameplate; usually 0.8. [-]

    Returns
    -------
    GeneratorLoading
        Both shares; above 1 is an overload. [-]

    Raises
    ------
    ValueError
        If a number is out of range, or the load's kW exceed its kVA.
    """
    site = above_zero("site_kva", site_kva)
    if not 0 < rated_power_factor <= 1:
        raise ValueError(
            f"rated_power_factor must be above 0 and at most 1, got {rated_power_factor}"
        )
    if not_negative("load_kw", load_kw) > not_negative("load_kva", load_kva) * (1 + 1e-9):
        raise ValueError(f"load_kw must be at most load_kva, got {load_kw} kW of {load_kva} kVA")
    return GeneratorLoading(load_kva / site, load_kw / (site * rated_power_factor))


@cites(
    COMMON_PRACTICE,
    "the maker's consumption, straight between its points",
    equation="V = hours * (q1 + (q2 - q1)(share - s1)/(s2 - s1))",
)
def fuel_l(*, stated: Sequence[Consumption], load_share: float, hours: float) -> float:
    """
    Fuel burnt at a steady load, by the maker's own figures.

    Parameters
    ----------
    stated
        Consumption at two or more shares of the prime rating.
    load_share
        Share of the prime rating. [-]
    hours
        How long. [h]

    Returns
    -------
    float
        Fuel. [L]

    Raises
    ------
    ValueError
        If fewer than two shares are stated, one is stated twice, or the load lies outside them:
        figures are never stretched outwards.
    """
    points = sorted(stated, key=lambda point: point.load_share)
    if len(points) < 2 or len({point.load_share for point in points}) < len(points):
        raise ValueError(
            "stated must hold at least two different load shares, got"
            f" {[point.load_share for point in points]}"
        )
    not_negative("hours", hours)
    for low, high in pairwise(points):
        if low.load_share <= load_share <= high.load_share:
            way = (load_share - low.load_share) / (high.load_share - low.load_share)
            return hours * (low.litre_per_h + (high.litre_per_h - low.litre_per_h) * way)
    raise ValueError(
        f"load_share must lie within the stated {points[0].load_share} to {points[-1].load_share},"
        f" got {load_share}"
    )
