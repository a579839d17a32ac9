"""
What a feeder cable may carry by the American code: the cable's own table, how many conductors are
loaded, and its lugs.

Planning figures: the local code, the maker's data and a licensed electrician decide.
"""

from builder.formulas.cite import cites
from builder.formulas.sources import NFPA_70

FLEXIBLE_90C_A = {
    "8 AWG": (80, 74, 65),
    "6 AWG": (105, 99, 87),
    "4 AWG": (140, 130, 114),
    "2 AWG": (190, 174, 152),
    "1 AWG": (220, 202, 177),
    "1/0": (260, 234, 205),
    "2/0": (300, 271, 237),
    "4/0": (405, 361, 316),
}
"""
Table 400.5(A)(2), type W, 90 °C, 30 °C around it: one conductor apart from others, two, and three
loaded conductors together. [A]

The first column is only for single conductors that touch no other but for 24 in through the wall of
an enclosure (note 1 of the table).
"""
TERMINAL_75C_A = {
    "8 AWG": 50,
    "6 AWG": 65,
    "4 AWG": 85,
    "2 AWG": 115,
    "1 AWG": 130,
    "1/0": 150,
    "2/0": 175,
    "4/0": 230,
}
"""Table 310.16, copper, 75 °C: what lugs marked 75 °C allow. [A]"""


@cites(NFPA_70, "table 400.5(A)(3)", equation="1 to 3: 1; to 6: 0.8; to 9: 0.7; to 20: 0.5")
def loaded_conductors_factor(loaded: int) -> float:
    """
    Share of the ampacity of three conductors that is left when more loaded ones lie together.

    Parameters
    ----------
    loaded
        Current-carrying conductors; a neutral with harmonics counts. [-]

    Returns
    -------
    float
        Share. [-]

    Raises
    ------
    ValueError
        If the number is not 1 to 20.
    """
    for most, factor in ((3, 1.0), (6, 0.8), (9, 0.7), (20, 0.5)):
        if 1 <= loaded <= most:
            return factor
    raise ValueError(f"loaded must be 1 to 20, got {loaded}")


@cites(
    NFPA_70,
    "tables 400.5(A)(2), 400.5(A)(3) and 310.16; lugs by 110.14(C), from memory",
    equation="I = min(table for 1, 2 or 3 * factor, terminal)",
)
def flexible_feeder_a(size: str, *, loaded: int, terminals_75c: bool) -> float:
    """
    Current each of a set of flexible conductors may carry.

    Parameters
    ----------
    size
        As in ``FLEXIBLE_90C_A``.
    loaded
        Current-carrying conductors that touch each other or share a jacket; 1 only where each
        single conductor lies apart. [-]
    terminals_75c
        True where the lugs or connectors are marked for 75 °C.

    Returns
    -------
    float
        Ampacity. [A]

    Raises
    ------
    ValueError
        If the size is not in the tables, or the number is not 1 to 20.

    Notes
    -----
    The factor for more than three conductors is taken from the ampacity of three, as the code has
    it. Ambient air above 30 °C is left out.
    """
    if size not in FLEXIBLE_90C_A:
        raise ValueError(f"size must be one of {', '.join(FLEXIBLE_90C_A)}, got {size!r}")
    factor = loaded_conductors_factor(loaded)
    cable_a = FLEXIBLE_90C_A[size][min(loaded, 3) - 1] * factor
    return min(cable_a, TERMINAL_75C_A[size]) if terminals_75c else cable_a
