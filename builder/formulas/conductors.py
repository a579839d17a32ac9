"""
Resistance and reactance of copper and aluminium conductors, by the tables of two codes.

Every value is for one conductor and one way. Which temperature it holds for is part of the record.
"""

import math
from dataclasses import dataclass

from builder.formulas.cite import Citation, cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import BS_7671, IEC_60228, IEC_60364_5_52, NFPA_70

FT_PER_KM = 1000 / 0.3048


@dataclass(frozen=True, slots=True)
class Conductor:
    """
    One conductor: resistance and reactance for each kilometre of it, what they hold for, and where
    they are printed. [ohm/km]
    """

    size: str
    r_ohm_per_km: float
    x_ohm_per_km: float
    condition: str
    citation: Citation


NEC_CLAUSE = "chapter 9, tables 8 and 9"
NEC_TABLE_8_OHM_PER_KFT = {
    "14 AWG": 3.14,
    "12 AWG": 1.98,
    "10 AWG": 1.24,
    "8 AWG": 0.778,
    "6 AWG": 0.491,
    "4 AWG": 0.308,
    "3 AWG": 0.245,
    "2 AWG": 0.194,
    "1 AWG": 0.154,
    "1/0": 0.122,
    "2/0": 0.0967,
    "3/0": 0.0766,
    "4/0": 0.0608,
    "250 kcmil": 0.0515,
    "350 kcmil": 0.0367,
    "500 kcmil": 0.0258,
}
"""
Direct current resistance, stranded uncoated copper, 75 °C. 14 and 8 AWG are from memory; for 8 AWG
table 9 is larger and counts.
"""

NEC_TABLE_9_OHM_PER_KFT = {
    "14 AWG": (3.1, 0.058),
    "12 AWG": (2.0, 0.054),
    "10 AWG": (1.2, 0.050),
    "8 AWG": (0.78, 0.052),
    "6 AWG": (0.49, 0.051),
    "4 AWG": (0.31, 0.048),
    "3 AWG": (0.25, 0.047),
    "2 AWG": (0.19, 0.045),
    "1 AWG": (0.15, 0.046),
    "1/0": (0.12, 0.044),
    "2/0": (0.10, 0.043),
    "3/0": (0.077, 0.042),
    "4/0": (0.062, 0.041),
    "250 kcmil": (0.052, 0.041),
    "350 kcmil": (0.038, 0.040),
    "500 kcmil": (0.027, 0.039),
}
"""
Alternating current resistance and reactance, uncoated copper, three single conductors in PVC
conduit, 75 °C, 60 Hz.
"""

NEC_ALUMINIUM_OHM_PER_KFT = {
    "12 AWG": (3.18, 3.2),
    "10 AWG": (2.00, 2.0),
    "8 AWG": (1.26, 1.3),
    "6 AWG": (0.808, 0.81),
    "4 AWG": (0.508, 0.51),
    "3 AWG": (0.403, 0.40),
    "2 AWG": (0.319, 0.32),
    "1 AWG": (0.253, 0.25),
    "1/0": (0.201, 0.20),
    "2/0": (0.159, 0.16),
    "3/0": (0.126, 0.13),
    "4/0": (0.100, 0.10),
    "250 kcmil": (0.0847, 0.085),
    "350 kcmil": (0.0605, 0.061),
    "500 kcmil": (0.0424, 0.043),
}
"""
Aluminium at 75 °C: direct current, table 8; alternating current in PVC conduit, table 9. Reactance
is that of copper.
"""

IEC_ALUMINIUM_20C_OHM_PER_KM = {
    10: 3.08, 16: 1.91, 25: 1.20, 35: 0.868, 50: 0.641, 70: 0.443, 95: 0.320, 120: 0.253, 150: 0.206, 185: 0.164, 240: 0.125, 300: 0.100,  # noqa: E501
    400: 0.0778, 500: 0.0605, 630: 0.0469,
}  # fmt: skip
"""Greatest resistance of aluminium conductors of class 1 and 2 at 20 °C, by mm²."""
HOT = 1.25
"""Resistance in service over that at 20 °C, as annex G takes it."""

BS_7671_FLEXIBLE_MV_PER_A_M = {
    4: 11.1,
    6: 7.4,
    10: 4.4,
    16: 2.7,
    25: 1.73,
    35: 1.22,
    50: 0.91,
    70: 0.62,
    95: 0.47,
    120: 0.37,
}
"""
Resistive drop between lines of three-phase flexible cable at 90 °C, by mm²; up to 16 mm² the table
prints one value for all.
"""

IEC_RHO_OHM_MM2_PER_M = 0.0225
IEC_LAMBDA_OHM_PER_KM = 0.08
"""
Annex G: resistivity of copper in service, 1.25 times that at 20 °C, and reactance where nothing
better is known (from memory).
"""
ANNEX_G = "Annex G; its reactance of 0.08 ohm/km from memory"
FLEXIBLE_CLAUSE = (
    "Appendix 4, Table 4F2B; reactance of 0.08 ohm/km by IEC 60364-5-52, Annex G, from memory"
)


@cites(NFPA_70, NEC_CLAUSE, equation="per km = per kft / 0.3048")
def awg_conductor(size: str) -> Conductor:
    """
    A conductor by its American size.

    Parameters
    ----------
    size
        As in ``2 AWG``, ``4/0`` or ``500 kcmil``.

    Returns
    -------
    Conductor
        Resistance by table 8, which prints more digits, never below that of table 9's alternating
        current column where that is larger; reactance by table 9. [ohm/km]

    Raises
    ------
    ValueError
        If the size is not in the tables.
    """
    if size not in NEC_TABLE_9_OHM_PER_KFT:
        raise ValueError(f"size must be one of {', '.join(NEC_TABLE_9_OHM_PER_KFT)}, got {size!r}")
    resistance, reactance = NEC_TABLE_9_OHM_PER_KFT[size]
    per_km = FT_PER_KM / 1000
    return Conductor(
        size,
        max(resistance, NEC_TABLE_8_OHM_PER_KFT[size]) * per_km,
        reactance * per_km,
        "copper at 75 °C, 60 Hz, single conductors",
        Citation(
            NFPA_70,
            NEC_CLAUSE + (", from memory" if size == "14 AWG" else ""),
            "per km = per kft / 0.3048",
        ),
    )


ALUMINIUM_TABLE = (
    "resistance of aluminium at 20 °C by class 2; times 1.25 in service and 0.08 ohm/km by IEC"
    " 60364-5-52, Annex G, from memory"
)


@cites(NFPA_70, NEC_CLAUSE, equation="per km = per kft / 0.3048")
def awg_aluminium(size: str) -> Conductor:
    """
    An aluminium conductor by its American size.

    Parameters
    ----------
    size
        As in ``2 AWG``, ``4/0`` or ``500 kcmil``.

    Returns
    -------
    Conductor
        The larger resistance of tables 8 and 9, reactance by table 9. [ohm/km]

    Raises
    ------
    ValueError
        If the size is not in the tables.
    """
    if size not in NEC_ALUMINIUM_OHM_PER_KFT:
        raise ValueError(
            f"size must be one of {', '.join(NEC_ALUMINIUM_OHM_PER_KFT)} in aluminium, got {size!r}"
        )
    per_km = FT_PER_KM / 1000
    return Conductor(
        size,
        max(NEC_ALUMINIUM_OHM_PER_KFT[size]) * per_km,
        NEC_TABLE_9_OHM_PER_KFT[size][1] * per_km,
        "aluminium at 75 °C, 60 Hz, single conductors",
        Citation(NFPA_70, NEC_CLAUSE, "per km = per kft / 0.3048"),
    )


@cites(IEC_60228, ALUMINIUM_TABLE, equation="R = 1.25 R20 ohm/km, X = 0.08 ohm/km")
def metric_aluminium(area_mm2: float) -> Conductor:
    """
    An aluminium conductor of fixed wiring by its area.

    Parameters
    ----------
    area_mm2
        Area of the conductor: a size of the table. [mm²]

    Returns
    -------
    Conductor
        Resistance in service and reactance. [ohm/km]

    Raises
    ------
    ValueError
        If the area is not in the table.
    """
    if area_mm2 not in IEC_ALUMINIUM_20C_OHM_PER_KM:
        raise ValueError(
            f"area_mm2 must be one of {', '.join(map(str, IEC_ALUMINIUM_20C_OHM_PER_KM))} in"
            f" aluminium, got {area_mm2:g}"
        )
    resistance = IEC_ALUMINIUM_20C_OHM_PER_KM[int(area_mm2)] * HOT
    citation = Citation(IEC_60228, ALUMINIUM_TABLE, "R = 1.25 R20 ohm/km, X = 0.08 ohm/km")
    return Conductor(
        f"{area_mm2:g} mm²",
        resistance,
        IEC_LAMBDA_OHM_PER_KM,
        "aluminium in service, 50 Hz",
        citation,
    )


@cites(IEC_60364_5_52, ANNEX_G, equation="R = 22.5 / S ohm/km, X = 0.08 ohm/km")
def metric_conductor(area_mm2: float) -> Conductor:
    """
    A copper conductor by its area, by the informative annex for any cable.

    Parameters
    ----------
    area_mm2
        Area of the conductor. [mm²]

    Returns
    -------
    Conductor
        Resistance in service and reactance. [ohm/km]

    Raises
    ------
    ValueError
        If the area is not above 0.

    Notes
    -----
    About 10 % low for flexible cable at 90 °C; use :func:`flexible_conductor` for that.
    """
    resistance = IEC_RHO_OHM_MM2_PER_M * 1000 / above_zero("area_mm2", area_mm2)
    citation = Citation(IEC_60364_5_52, ANNEX_G, "R = 22.5 / S ohm/km, X = 0.08 ohm/km")
    return Conductor(
        f"{area_mm2:g} mm²", resistance, IEC_LAMBDA_OHM_PER_KM, "copper in service, 50 Hz", citation
    )


@cites(BS_7671, FLEXIBLE_CLAUSE, equation="R = (mV/A/m) / sqrt(3) ohm/km, X = 0.08 ohm/km")
def flexible_conductor(area_mm2: int) -> Conductor:
    """
    One core of a flexible three-phase cable, hot.

    Parameters
    ----------
    area_mm2
        Area of the conductor: a size of the table. [mm²]

    Returns
    -------
    Conductor
        Resistance at 90 °C and reactance. [ohm/km]

    Raises
    ------
    ValueError
        If the size is not in the table.
    """
    if area_mm2 not in BS_7671_FLEXIBLE_MV_PER_A_M:
        raise ValueError(
            f"area_mm2 must be one of {', '.join(map(str, BS_7671_FLEXIBLE_MV_PER_A_M))}, got"
            f" {area_mm2}"
        )
    resistance = BS_7671_FLEXIBLE_MV_PER_A_M[area_mm2] / math.sqrt(3)
    citation = Citation(BS_7671, FLEXIBLE_CLAUSE, "R = (mV/A/m) / sqrt(3) ohm/km, X = 0.08 ohm/km")
    return Conductor(
        f"{area_mm2} mm²",
        resistance,
        IEC_LAMBDA_OHM_PER_KM,
        "flexible copper at 90 °C, 50 Hz",
        citation,
    )
