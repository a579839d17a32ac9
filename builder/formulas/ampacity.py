"""
What a feeder cable may carry by the American code: the cable's own table, how many conductors are loaded, and its lugs.

Planning figures: the local code, the maker's data and a licensed electrician decide.
"""

from builder.formulas.cite import cites
from builder.formulas.sources import NFPA_70

FLEXIBLE_SINGLE_90C_A = {"8 AWG": 80, "6 AWG": 105, "4 AWG": 140, "2 AWG": 190, "1 AWG": 220, "1/0": 260, "2/0": 300, "4/0": 405}
"""Table 400.5(A)(2), type W, single conductor, 90 °C, 30 °C around it; 8 and 6 AWG are from memory. [A]"""
TERMINAL_75C_A = {"12 AWG": 25, "8 AWG": 50, "4 AWG": 85, "2 AWG": 115, "4/0": 230}
"""Table 310.16, copper, 75 °C: what lugs marked 75 °C allow. Only the sizes that were checked. [A]"""


@cites(NFPA_70, "table 400.5(A)(3)", equation="1 to 3: 1; to 6: 0.8; to 9: 0.7; to 20: 0.5")
def loaded_conductors_factor(loaded: int) -> float:
    """
    Share of the table's ampacity left when several loaded conductors lie together.

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


@cites(NFPA_70, "tables 400.5(A)(2) and 310.16; lugs by 110.14(C), from memory", equation="I = min(table * factor, terminal)")
def flexible_feeder_a(size: str, *, loaded: int, terminals_75c: bool) -> float:
    """
    Current a set of single flexible conductors may carry.

    Parameters
    ----------
    size
        As in ``FLEXIBLE_SINGLE_90C_A``.
    loaded
        Current-carrying conductors that lie together. [-]
    terminals_75c
        True where the lugs or connectors are marked for 75 °C.

    Returns
    -------
    float
        Ampacity. [A]

    Raises
    ------
    ValueError
        If the size is in neither table that is needed, or the number is not 1 to 20.
    """
    if size not in FLEXIBLE_SINGLE_90C_A:
        raise ValueError(f"size must be one of {', '.join(FLEXIBLE_SINGLE_90C_A)}, got {size!r}")
    cable_a = FLEXIBLE_SINGLE_90C_A[size] * loaded_conductors_factor(loaded)
    if not terminals_75c:
        return cable_a
    if size not in TERMINAL_75C_A:
        raise ValueError(f"size must be one of {', '.join(TERMINAL_75C_A)} where lugs are marked 75 °C, got {size!r}")
    return min(cable_a, TERMINAL_75C_A[size])
