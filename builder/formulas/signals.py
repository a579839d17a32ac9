"""
How far a line may run by kind, and the arithmetic of the signals on it.

Limits are for one link in good condition, connectors and patches included where the standard says
so. Planning figures: the maker's data decide.
"""

from dataclasses import dataclass
from math import fsum

from builder.formulas.cite import Citation, Source, cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import (
    AES50,
    COMMON_PRACTICE,
    E1_11,
    IEEE_802_3,
    SMPTE_292,
    SMPTE_424,
    TIA_485,
)


@dataclass(frozen=True, slots=True)
class LineLimit:
    """The longest line of a kind [m], what it depends on, and where that is written."""

    kind: str
    length_m: float
    note: str
    citation: Citation


def _limit(kind: str, length_m: float, note: str, source: Source, clause: str) -> LineLimit:
    return LineLimit(kind, length_m, note, Citation(source, clause, f"length <= {length_m:g} m"))


SDI_NOTE = (
    "coaxial cable of the RG-6 class, 20 dB loss at half the clock; thinner cable runs shorter"
)

LINE_LIMITS: tuple[LineLimit, ...] = (
    _limit(
        "copper data",
        100,
        "twisted pair from end to end, patch cords included",
        IEEE_802_3,
        "clause 40, 1000BASE-T link",
    ),
    _limit(
        "AES50", 100, "category 5 twisted pair, point to point, about 100 m", AES50, "cable length"
    ),
    _limit("HD-SDI", 113, SDI_NOTE, SMPTE_292, "cable maker's article on the 20 dB criterion"),
    _limit("3G-SDI", 78, SDI_NOTE, SMPTE_424, "cable maker's article on the 20 dB criterion"),
    _limit(
        "DMX512",
        300,
        "practice on 120 ohm cable, terminated, up to 32 unit loads; the electrical standard allows"
        " 1200 m",
        E1_11,
        "cable, from memory",
    ),
    _limit(
        "RS-485",
        1200,
        "at low rates, terminated, up to 32 unit loads",
        TIA_485,
        "cable length, from memory",
    ),
    _limit("fibre 1G 62.5 µm 160 MHz km", 220, "1000BASE-SX", IEEE_802_3, "clause 38, 1000BASE-SX"),
    _limit("fibre 1G 62.5 µm 200 MHz km", 275, "1000BASE-SX", IEEE_802_3, "clause 38, 1000BASE-SX"),
    _limit("fibre 1G 50 µm 400 MHz km", 500, "1000BASE-SX", IEEE_802_3, "clause 38, 1000BASE-SX"),
    _limit("fibre 1G 50 µm 500 MHz km", 550, "1000BASE-SX", IEEE_802_3, "clause 38, 1000BASE-SX"),
    _limit(
        "fibre 1G single mode",
        5000,
        "1000BASE-LX; makers rate 10 km",
        IEEE_802_3,
        "clause 38, 1000BASE-LX",
    ),
    _limit("fibre 10G OM3", 300, "10GBASE-SR", IEEE_802_3, "clause 52, 10GBASE-SR"),
    _limit("fibre 10G single mode", 10_000, "10GBASE-LR", IEEE_802_3, "clause 52, 10GBASE-LR"),
)


@cites(COMMON_PRACTICE, "limits by kind; each names its standard", equation="limit by kind")
def line_limit(kind: str) -> LineLimit:
    """
    The limit of a kind of line.

    Parameters
    ----------
    kind
        As in ``LINE_LIMITS``.

    Returns
    -------
    LineLimit
        The limit. [m]

    Raises
    ------
    ValueError
        If the kind is unknown.
    """
    for limit in LINE_LIMITS:
        if limit.kind == kind:
            return limit
    raise ValueError(
        f"kind must be one of {', '.join(limit.kind for limit in LINE_LIMITS)}, got {kind!r}"
    )


@cites(COMMON_PRACTICE, "limits hold for the whole link", equation="left = limit - sum of lengths")
def length_left_m(kind: str, *, lengths_m: tuple[float, ...]) -> float:
    """
    What is left of a limit after lengths in a row: house line, patches, visitor's tails.

    Parameters
    ----------
    kind
        As in ``LINE_LIMITS``.
    lengths_m
        Lengths without an active device between them. [m]

    Returns
    -------
    float
        Length left; below 0 where the limit is passed. [m]

    Raises
    ------
    ValueError
        If the kind is unknown or a length is negative.
    """
    return line_limit(kind).length_m - fsum(
        not_negative("lengths_m", length) for length in lengths_m
    )
