"""
What a feeder may carry by the tables of two codes: metal, size, insulation, and how it is laid.

Three loaded conductors, one circuit by itself, air of 30 °C. Planning figures: the local code, the
maker's data and a licensed electrician decide.
"""

from builder.formulas.cite import cites
from builder.formulas.sources import IEC_60364_5_52, NFPA_70

METALS = ("copper", "aluminium")
INSULATIONS = ("PVC", "XLPE")
WAYS_LAID = ("in a wall", "in conduit", "on a wall", "in free air")
"""Reference methods A2, B2, C and E of the table for cables of several cores."""

SIZES_MM2 = (2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300)
B_52_A = {
    ("copper", "PVC", "in a wall"): (17.5, 23, 29, 39, 52, 68, 83, 99, 125, 150, 172, 196, 223, 261, 298),  # noqa: E501
    ("copper", "PVC", "in conduit"): (20, 27, 34, 46, 62, 80, 99, 118, 149, 179, 206, 225, 255, 297, 339),  # noqa: E501
    ("copper", "PVC", "on a wall"): (24, 32, 41, 57, 76, 96, 119, 144, 184, 223, 259, 299, 341, 403, 464),  # noqa: E501
    ("copper", "PVC", "in free air"): (25, 34, 43, 60, 80, 101, 126, 153, 196, 238, 276, 319, 364, 430, 497),  # noqa: E501
    ("copper", "XLPE", "in a wall"): (22, 30, 38, 51, 68, 89, 109, 130, 164, 197, 227, 259, 295, 346, 396),  # noqa: E501
    ("copper", "XLPE", "in conduit"): (26, 35, 44, 60, 80, 105, 128, 154, 194, 233, 268, 300, 340, 398, 455),  # noqa: E501
    ("copper", "XLPE", "on a wall"): (30, 40, 52, 71, 96, 119, 147, 179, 229, 278, 322, 371, 424, 500, 576),  # noqa: E501
    ("copper", "XLPE", "in free air"): (32, 42, 54, 75, 100, 127, 158, 192, 246, 298, 346, 399, 456, 538, 621),  # noqa: E501
    ("aluminium", "PVC", "in a wall"): (13.5, 17.5, 23, 31, 41, 53, 65, 78, 98, 118, 135, 155, 176, 207, 237),  # noqa: E501
    ("aluminium", "PVC", "in conduit"): (15.5, 21, 27, 36, 48, 62, 77, 92, 116, 139, 160, 176, 199, 232, 265),  # noqa: E501
    ("aluminium", "PVC", "on a wall"): (18.5, 25, 32, 44, 59, 73, 90, 110, 140, 170, 197, 227, 259, 305, 351),  # noqa: E501
    ("aluminium", "PVC", "in free air"): (19.5, 26, 33, 46, 61, 78, 96, 117, 150, 183, 212, 245, 280, 330, 381),  # noqa: E501
    ("aluminium", "XLPE", "in a wall"): (18, 24, 31, 41, 55, 71, 87, 104, 131, 157, 180, 206, 233, 273, 313),  # noqa: E501
    ("aluminium", "XLPE", "in conduit"): (21, 28, 35, 48, 64, 84, 103, 124, 156, 188, 216, 240, 272, 318, 364),  # noqa: E501
    ("aluminium", "XLPE", "on a wall"): (24, 32, 41, 57, 76, 90, 112, 136, 174, 211, 245, 283, 323, 382, 440),  # noqa: E501
    ("aluminium", "XLPE", "in free air"): (24, 32, 42, 58, 77, 97, 120, 146, 187, 227, 263, 304, 347, 409, 471),  # noqa: E501
}  # fmt: skip
"""Tables B.52.4, B.52.5 and B.52.10 to B.52.13, three loaded conductors. [A]"""

NEC_75C_A = {
    "copper": {
        "12 AWG": 25, "10 AWG": 35, "8 AWG": 50, "6 AWG": 65, "4 AWG": 85, "3 AWG": 100,
        "2 AWG": 115, "1 AWG": 130, "1/0": 150, "2/0": 175, "3/0": 200, "4/0": 230,
        "250 kcmil": 255, "350 kcmil": 310, "500 kcmil": 380,
    },
    "aluminium": {
        "12 AWG": 20, "10 AWG": 30, "8 AWG": 40, "6 AWG": 50, "4 AWG": 65, "3 AWG": 75,
        "2 AWG": 90, "1 AWG": 100, "1/0": 120, "2/0": 135, "3/0": 155, "4/0": 180,
        "250 kcmil": 205, "350 kcmil": 250, "500 kcmil": 310,
    },
}  # fmt: skip
"""Table 310.16, 75 °C: not more than three loaded conductors together. [A]"""

FLEXIBLE_90C_A = {
    "8 AWG": 65,
    "6 AWG": 87,
    "4 AWG": 114,
    "2 AWG": 152,
    "1 AWG": 177,
    "1/0": 205,
    "2/0": 237,
    "4/0": 316,
}
"""Table 400.5(A)(2), type W, 90 °C: three loaded conductors together. [A]"""
NEC_BREAKERS_A = (
    15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300,
    350, 400, 450, 500, 600, 700, 800,
)  # fmt: skip
"""Usual ratings up to 800 A, 240.6(A). [A]"""


@cites(
    IEC_60364_5_52,
    "tables B.52.4, B.52.5, B.52.10 to B.52.13, three loaded conductors, methods A2, B2, C and E",
    equation="I_z by metal, insulation, method and size",
)
def metric_feeder_a(area_mm2: float, *, metal: str, insulation: str, laid: str) -> float:
    """
    What one cable of several cores may carry on each of three loaded conductors.

    Parameters
    ----------
    area_mm2
        Area of one conductor: a size of the table. [mm²]
    metal, insulation, laid
        As in ``METALS``, ``INSULATIONS`` and ``WAYS_LAID``.

    Returns
    -------
    float
        Ampacity. [A]

    Raises
    ------
    ValueError
        If the size or one of the words is not in the table.

    Notes
    -----
    Air of 30 °C, one circuit by itself. Warmer air, cables that lie together and third harmonics
    lower it.
    """
    if area_mm2 not in SIZES_MM2:
        raise ValueError(
            f"area_mm2 must be one of {', '.join(map(str, SIZES_MM2))}, got {area_mm2}"
        )
    row = B_52_A.get((metal, insulation, laid))
    if row is None:
        raise ValueError(
            f"metal, insulation and laid must be of the table, got {metal}, {insulation}, {laid}"
        )
    return float(row[SIZES_MM2.index(area_mm2)])


@cites(
    NFPA_70,
    "tables 310.16 and 400.5(A)(2); lugs by 110.14(C), from memory",
    equation="I = min(flexible cable, 75 °C lugs)",
)
def american_feeder_a(size: str, *, metal: str, flexible: bool) -> float:
    """
    What three loaded conductors together may carry, between lugs marked for 75 °C.

    Parameters
    ----------
    size
        As in ``4/0`` or ``500 kcmil``.
    metal
        Copper or aluminium.
    flexible
        True for portable cable of type W.

    Returns
    -------
    float
        Ampacity. [A]

    Raises
    ------
    ValueError
        If the metal or the size is not in the table.
    """
    table = NEC_75C_A.get(metal, {})
    if size not in table or (flexible and (size not in FLEXIBLE_90C_A or metal != "copper")):
        raise ValueError(f"size must be one of the tables for {metal}, got {size!r}")
    return float(min(table[size], FLEXIBLE_90C_A[size]) if flexible else table[size])


@cites(NFPA_70, "240.4(B) and 240.6(A), from memory", equation="next usual rating >= I, to 800 A")
def largest_breaker_a(ampacity_a: float) -> float:
    """
    The largest usual breaker that may protect a feeder by the American code.

    Parameters
    ----------
    ampacity_a
        What the feeder may carry. [A]

    Returns
    -------
    float
        The next usual rating above the ampacity up to 800 A, above that the ampacity. [A]
    """
    return float(next((a for a in NEC_BREAKERS_A if a >= ampacity_a), ampacity_a))
