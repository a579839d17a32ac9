"""Every text colour on every ground reaches what WCAG 2.2 asks of normal text, in both schemes."""

import re
from pathlib import Path

import pytest

from builder.site import build

TOKENS = (Path(build.__file__).parent / "theme" / "assets" / "tokens.css").read_text("utf-8")
ASKED = 4.5
"""WCAG 2.2, 1.4.3: contrast of at least 4.5 : 1."""


def schemes() -> list[dict[str, str]]:
    """
    The colours of each block that sets a paper, in the order of the file: light, dark by the
    device, dark by choice.
    """
    blocks = re.findall(r"\{([^{}]*--paper[^{}]*)\}", TOKENS)
    return [dict(re.findall(r"--([a-z]+): (#[0-9a-f]{6});", block)) for block in blocks]


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2, definition."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, WCAG 2.2, definition."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_black_on_white_is_21_to_1() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


def test_both_dark_blocks_are_the_same() -> None:
    light, by_device, by_choice = schemes()
    assert by_device == by_choice
    assert set(light) == set(by_device)


@pytest.mark.parametrize("scheme", [0, 1])
@pytest.mark.parametrize("ground", ["paper", "tint", "found"])
@pytest.mark.parametrize("ink", ["ink", "soft", "accent", "danger", "caution", "note"])
def test_text_can_be_read(scheme: int, ground: str, ink: str) -> None:
    colours = schemes()[scheme]
    assert contrast(colours[ink], colours[ground]) >= ASKED, (colours[ink], colours[ground])
