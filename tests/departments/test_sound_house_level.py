"""
The house system's level at the mix position: by the makers' figures, with the crest they are stated
with.
"""

from math import log10

import pytest

from builder.formulas.air import weighting_db
from builder.formulas.band_lines import third_octaves
from tests.departments.sounding import FLOOR, HANGS, MIXING, ROOM, figure

ONE_BOX = """
models:
  - {name: Line, kind: line box, level: 120 dB, level_crest: 12 dB, lowest: 45 Hz, highest: 11 kHz, width: 50 mm, height: 80 mm,
     coverage: [{band: 1 kHz, horizontal: 360 deg}]}
"""  # noqa: E501
HANG = (
    "hangs: [{name: Left, model: Line, boxes: 1, splay: [], at: {across: 0 m, depth: 0 m}, top:"
    " 0.69 m up, down: 0 deg, carried_by: L, frame: 10 kg}]\n"
)


def test_one_small_box_by_hand() -> None:
    # 120 dB less 12 dB of crest, 10 m away: 88 dB of pink noise in 24 third octaves, weighted at
    # each midband (IEC 61672-1), less 0.3 dB of air.
    played = third_octaves(50, 10_000)
    weighted = 10 * log10(
        sum(10 ** (weighting_db(band.exact_midband_hz, "A") / 10) for band in played) / len(played)
    )
    found = figure(ONE_BOX + MIXING + FLOOR + HANG, "mix", "average_level")
    assert found.value is not None
    assert found.value.number == pytest.approx(88 + weighted - 0.3, abs=0.9)
    assert found.value.text.endswith("dB(A)")


def test_less_crest_is_as_much_more_level() -> None:
    twelve, six = (
        figure(
            ONE_BOX.replace("crest: 12", f"crest: {crest}") + MIXING + FLOOR + HANG,
            "mix",
            "average_level",
        ).value
        for crest in (12, 6)
    )
    assert twelve is not None
    assert six is not None
    assert six.number == (twelve.number or 0) + 6


def test_a_crest_that_nobody_stated_is_missing_by_name() -> None:
    found = figure(ROOM + HANGS, "mix", "average_level")
    assert found.value is None
    assert found.missing == ("the crest that the level of Line is stated with",)


def test_the_error_stands_beside_the_level() -> None:
    error = figure(ONE_BOX + MIXING + FLOOR + HANG, "mix", "average_level_error")
    assert error.value is not None
    assert (error.value.text, error.value.number) == ("±5 dB", 5.0)
