"""
Level outdoors at a receiver by ISO 9613-2:1996: divergence, air, ground and one barrier, octave by
octave.

Planning figures, for downwind propagation; the permit's own method and a measurement decide. The
edition of 2024 gives other numbers.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from builder.formulas.air import air_absorption_db_per_m, exact_midband_hz, weighting_db
from builder.formulas.cite import cites
from builder.formulas.levels import incoherent_sum_db
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import ISO_9613_2

OCTAVES_HZ = (63, 125, 250, 500, 1000, 2000, 4000, 8000)
GREATEST_SINGLE_DB, GREATEST_DOUBLE_DB = 20.0, 25.0
BARRIER_SPEED_M_S = 340.0


@dataclass(frozen=True, slots=True)
class Barrier:
    """
    Paths over a barrier's top edge [m]: source to edge, edge to receiver, part parallel to the
    edge, and between two edges where it is thick.

    Both are taken in the plane at right angles to the edge. ``below_sight`` is True where the
    straight line clears the top.
    """

    source_to_edge_m: float
    edge_to_receiver_m: float
    parallel_m: float = 0.0
    between_edges_m: float = 0.0
    below_sight: bool = False

    def __post_init__(self) -> None:
        """Refuse what is no way over a barrier."""
        above_zero("source_to_edge_m", self.source_to_edge_m)
        above_zero("edge_to_receiver_m", self.edge_to_receiver_m)
        not_negative("parallel_m", self.parallel_m)
        not_negative("between_edges_m", self.between_edges_m)


@dataclass(frozen=True, slots=True)
class Ground:
    """
    Share of porous ground, 0 hard to 1 porous, in the regions of source, middle and receiver. [-]
    """

    source: float
    middle: float
    receiver: float

    def __post_init__(self) -> None:
        """Refuse what is no share."""
        for name in ("source", "middle", "receiver"):
            if not 0 <= getattr(self, name) <= 1:
                raise ValueError(f"{name} must be 0 to 1, got {getattr(self, name)}")


@dataclass(frozen=True, slots=True)
class Path:
    """From a source to a receiver: distance on plan, heights above ground [m]; air [°C], [%]."""

    plan_distance_m: float
    source_height_m: float
    receiver_height_m: float
    temperature_c: float = 10.0
    humidity_percent: float = 70.0

    def __post_init__(self) -> None:
        """Refuse what is no path."""
        above_zero("plan_distance_m", self.plan_distance_m)
        not_negative("source_height_m", self.source_height_m)
        not_negative("receiver_height_m", self.receiver_height_m)

    @property
    def distance_m(self) -> float:
        """Straight from source to receiver over flat ground."""
        return math.hypot(self.plan_distance_m, self.receiver_height_m - self.source_height_m)


@dataclass(frozen=True, slots=True)
class Outdoors:
    """Level at a receiver: each octave unweighted [dB], and all of them A-weighted [dB(A)]."""

    octave_db: dict[int, float]
    total_dba: float


@cites(ISO_9613_2, "7.1, equation (7)", equation="Adiv = 20 lg(d / 1 m) + 11")
def divergence_db(distance_m: float) -> float:
    """
    Loss by spreading over a sphere.

    Parameters
    ----------
    distance_m
        Distance. [m]

    Returns
    -------
    float
        Attenuation from sound power level. [dB]

    Raises
    ------
    ValueError
        If the distance is not above 0.
    """
    return 20 * math.log10(above_zero("distance_m", distance_m)) + 11


@cites(
    ISO_9613_2,
    "7.2, equation (8)",
    equation="Aatm = alpha d, alpha by ISO 9613-1 at the exact midband",
)
def atmospheric_db(octave_hz: int, path: Path) -> float:
    """
    Loss to the air.

    Parameters
    ----------
    octave_hz
        Nominal midband. [Hz]
    path
        Source to receiver. [m], [°C], [%]

    Returns
    -------
    float
        Attenuation. [dB]

    Raises
    ------
    ValueError
        If there is no such octave, or the air is outside ISO 9613-1.
    """
    exact_hz = exact_midband_hz(octave_hz, "octave")
    return path.distance_m * air_absorption_db_per_m(
        exact_hz, temperature_c=path.temperature_c, humidity_percent=path.humidity_percent
    )


@cites(
    ISO_9613_2,
    "7.3.1, table 3",
    equation=(
        "Agr = As + Ar + Am; at 500 Hz As = -1.5 + G (1.5 + 14 e^(-0.46 h^2) (1 - e^(-dp/50))), Am"
        " = -3 q (1 - Gm), q = 1 - 30 (hs + hr)/dp"
    ),
)
def ground_db(octave_hz: int, path: Path, ground: Ground) -> float:
    """
    Effect of the ground; below 0 where it reflects.

    Parameters
    ----------
    octave_hz
        Nominal midband, 63 to 8000. [Hz]
    path, ground
        Source to receiver; what lies between. [m], [-]

    Returns
    -------
    float
        Attenuation. [dB]

    Raises
    ------
    ValueError
        If there is no such octave.
    """
    if octave_hz not in OCTAVES_HZ:
        raise ValueError(
            f"octave_hz must be one of {', '.join(map(str, OCTAVES_HZ))}, got {octave_hz}"
        )
    ends = _end_region_db(octave_hz, ground.source, path.source_height_m, path) + _end_region_db(
        octave_hz, ground.receiver, path.receiver_height_m, path
    )
    q = max(0.0, 1 - 30 * (path.source_height_m + path.receiver_height_m) / path.plan_distance_m)
    return ends - 3 * q * (1 if octave_hz == 63 else 1 - ground.middle)


@cites(
    ISO_9613_2,
    "7.4, equations (14) to (18)",
    equation=(
        "Dz = 10 lg(3 + (C2/lambda) C3 z Kmet), C2 = 20, lambda = 340/f, Kmet = exp(-sqrt(dss dsr"
        " d/(2 z))/2000), at most 20 dB (thick: 25)"
    ),
)
def barrier_db(octave_hz: float, distance_m: float, barrier: Barrier) -> float:
    """
    What a barrier's top edge takes; the ground's effect is then already in it.

    Parameters
    ----------
    octave_hz
        Nominal midband. [Hz]
    distance_m
        Straight from source to receiver. [m]
    barrier
        Paths over the top. [m]

    Returns
    -------
    float
        Attenuation Dz, at least 0. [dB]

    Raises
    ------
    ValueError
        If frequency or distance is not above 0, or the way over the top is shorter than the
        straight one.
    """
    wavelength_m = BARRIER_SPEED_M_S / above_zero("octave_hz", octave_hz)
    z_m = path_difference_m(distance_m, barrier)
    thick = barrier.between_edges_m > 0
    ratio = (5 * wavelength_m / barrier.between_edges_m) ** 2 if thick else 0.0
    thickness = (1 + ratio) / (1 / 3 + ratio) if thick else 1.0
    inside = 3 + 20 / wavelength_m * thickness * z_m * _meteorological_factor(
        distance_m, z_m, barrier
    )
    return min(
        GREATEST_DOUBLE_DB if thick else GREATEST_SINGLE_DB, 10 * math.log10(max(1.0, inside))
    )


@cites(
    ISO_9613_2,
    "7.4, equations (16) and (17)",
    equation=(
        "z = sqrt((dss + dsr + e)^2 + a^2) - d, below 0 where the line of sight clears the edge"
    ),
)
def path_difference_m(distance_m: float, barrier: Barrier) -> float:
    """
    How much longer the way over a barrier is.

    Parameters
    ----------
    distance_m
        Straight from source to receiver. [m]
    barrier
        Paths over the top. [m]

    Returns
    -------
    float
        Difference; below 0 where the line of sight clears the top. [m]

    Raises
    ------
    ValueError
        If the distance is not above 0, or the way over the top is shorter than the straight one.
    """
    over_m = math.hypot(
        barrier.source_to_edge_m + barrier.between_edges_m + barrier.edge_to_receiver_m,
        barrier.parallel_m,
    )
    if over_m < above_zero("distance_m", distance_m) * (1 - 1e-9):
        raise ValueError(
            f"the way over the barrier must be at least distance_m {distance_m:g}, got {over_m:g}"
        )
    difference = max(0.0, over_m - distance_m)
    return -difference if barrier.below_sight else difference


@cites(
    ISO_9613_2,
    "clause 6, equations (3) to (5)",
    equation="L = Lw - (Adiv + Aatm + Agr + Abar); L_A = 10 lg(sum 10^((L + A)/10))",
)
def outdoor_level(
    power_level_db: Mapping[int, float],
    path: Path,
    *,
    ground: Ground,
    barrier: Barrier | None = None,
) -> Outdoors:
    """
    Level at a receiver, downwind.

    Parameters
    ----------
    power_level_db
        Sound power level by octave, towards the receiver with its directivity counted in. [dB]
    path, ground, barrier
        Source to receiver; the ground between; a barrier's top edge, if any. [m], [-]

    Returns
    -------
    Outdoors
        Octaves and A-weighted total. [dB], [dB(A)]

    Raises
    ------
    ValueError
        If there is no octave, or a part refuses its input.

    Notes
    -----
    Left out: foliage, housing, reflections, ways round a barrier's ends, long-term correction Cmet.
    The standard states ±3 dB up to 1000 m for broadband noise with a mean height of source and
    receiver below 30 m.
    """
    found = {
        octave: level - _attenuation_db(octave, path, ground, barrier)
        for octave, level in power_level_db.items()
    }
    return Outdoors(
        found,
        incoherent_sum_db([level + _table_weight_db(octave) for octave, level in found.items()]),
    )


def _attenuation_db(octave_hz: int, path: Path, ground: Ground, barrier: Barrier | None) -> float:
    """
    Equation (4); over a barrier the ground counts only where it takes more than the barrier, as 7.4
    rules by Abar = Dz - Agr > 0.
    """
    agr_db = ground_db(octave_hz, path, ground)
    if barrier is not None:
        agr_db = max(agr_db, barrier_db(octave_hz, path.distance_m, barrier))
    return divergence_db(path.distance_m) + atmospheric_db(octave_hz, path) + agr_db


def _table_weight_db(octave_hz: int) -> float:
    """
    A-weighting as IEC 61672-1, table 3 prints it, to 0.1 dB: the standard's test cases use it so.
    """
    return round(weighting_db(exact_midband_hz(octave_hz, "octave"), "A"), 1)


def _meteorological_factor(distance_m: float, z_m: float, barrier: Barrier) -> float:
    """
    Equation (18). Both distances count along the way actually taken, aslant to the edge, as ISO/TR
    17534-3:2015 does.
    """
    if z_m <= 0:
        return 1.0
    across_m = barrier.source_to_edge_m + barrier.between_edges_m + barrier.edge_to_receiver_m
    aslant = 1 + (barrier.parallel_m / across_m) ** 2
    return math.exp(
        -math.sqrt(
            aslant * barrier.source_to_edge_m * barrier.edge_to_receiver_m * distance_m / (2 * z_m)
        )
        / 2000
    )


def _end_region_db(octave_hz: int, porous: float, height_m: float, path: Path) -> float:
    """Table 3, As and Ar."""
    if octave_hz == 63:
        return -1.5
    if octave_hz >= 2000:
        return -1.5 * (1 - porous)
    return -1.5 + porous * _SHAPES[octave_hz](height_m, path.plan_distance_m)


def _near(plan_m: float) -> float:
    return 1 - math.exp(-plan_m / 50)


_SHAPES: dict[int, Callable[[float, float], float]] = {
    125: (
        lambda h, dp: (
            1.5
            + 3.0 * math.exp(-0.12 * (h - 5) ** 2) * _near(dp)
            + 5.7 * math.exp(-0.09 * h**2) * (1 - math.exp(-2.8e-6 * dp**2))
        )
    ),
    250: lambda h, dp: 1.5 + 8.6 * math.exp(-0.09 * h**2) * _near(dp),
    500: lambda h, dp: 1.5 + 14.0 * math.exp(-0.46 * h**2) * _near(dp),
    1000: lambda h, dp: 1.5 + 5.0 * math.exp(-0.9 * h**2) * _near(dp),
}
