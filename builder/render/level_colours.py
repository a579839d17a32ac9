"""
Colours for levels: even in lightness from dark blue to pale yellow, so that they keep their order
in grey and for the colour-blind.

The path is ours: lightness L* rises in equal steps, while the hue turns from blue over green to
yellow. It is laid out in CIELAB and turned into sRGB by the equations of the standards.
"""

from collections.abc import Sequence
from math import fsum

DARKEST_L, PALEST_L = 17.0, 94.0
HUES_AB = ((16.0, -36.0), (-2.0, -34.0), (-22.0, -16.0), (-28.0, 10.0), (-18.0, 37.0), (-8.0, 43.0))
"""Where the path passes in a* and b*, at even steps of lightness."""
WHITE_D65 = (0.95047, 1.0, 1.08883)
TO_LINEAR_RGB = ((3.2406, -1.5372, -0.4986), (-0.9689, 1.8758, 0.0415), (0.0557, -0.2040, 1.0570))
"""IEC 61966-2-1:1999, equation 7, from memory."""


def level_colours(count: int) -> list[str]:
    """So many colours from dark to pale, as an SVG writes them."""
    return [hex_of(lab_at(place / max(count - 1, 1))) for place in range(count)]


def lab_at(share: float) -> tuple[float, float, float]:
    """The colour at a share of the way from dark to pale: L*, a*, b*."""
    place = share * (len(HUES_AB) - 1)
    low = min(int(place), len(HUES_AB) - 2)
    rest = place - low
    a, b = (
        one + (other - one) * rest
        for one, other in zip(HUES_AB[low], HUES_AB[low + 1], strict=True)
    )
    return DARKEST_L + (PALEST_L - DARKEST_L) * share, a, b


def hex_of(lab: tuple[float, float, float]) -> str:
    """A colour of CIELAB (CIE 15, from memory) as #rrggbb, cut where a screen cannot show it."""
    lightness, a, b = lab
    middle = (lightness + 16) / 116
    xyz = [
        white * uncurved(value)
        for white, value in zip(
            WHITE_D65, (middle + a / 500, middle, middle - b / 200), strict=True
        )
    ]
    return "#" + "".join(f"{round(255 * gamma(mixed(row, xyz))):02x}" for row in TO_LINEAR_RGB)


def mixed(row: Sequence[float], xyz: Sequence[float]) -> float:
    """One linear primary, within what a screen shows."""
    return min(max(fsum(factor * value for factor, value in zip(row, xyz, strict=True)), 0.0), 1.0)


def uncurved(value: float) -> float:
    """The inverse of CIELAB's cube root."""
    return value**3 if value > 6 / 29 else 3 * (6 / 29) ** 2 * (value - 4 / 29)


def gamma(linear: float) -> float:
    """The curve of sRGB."""
    return 12.92 * linear if linear <= 0.0031308 else 1.055 * linear ** (1 / 2.4) - 0.055
