"""Line limits and signal arithmetic against published tables."""

import pytest

from builder.formulas.signals import (
    length_left_m,
    line_limit,
)


@pytest.mark.source(
    "IEEE 802.3 media tables: 1000BASE-T 100 m; SX 220/275/500/550 m by modal bandwidth; LX 5 km;"
    " 10GBASE-SR OM3 300 m; LR 10 km"
)
@pytest.mark.parametrize(
    ("kind", "length_m"),
    [
        ("copper data", 100),
        ("fibre 1G 62.5 µm 160 MHz km", 220),
        ("fibre 1G 62.5 µm 200 MHz km", 275),
        ("fibre 1G 50 µm 400 MHz km", 500),
        ("fibre 1G 50 µm 500 MHz km", 550),
        ("fibre 1G single mode", 5000),
        ("fibre 10G OM3", 300),
        ("fibre 10G single mode", 10_000),
    ],
)
def test_data_reach(kind: str, length_m: float) -> None:
    assert line_limit(kind).length_m == length_m


@pytest.mark.source(
    "S. Lampen's article: HD 113 m, 3G 78 m on RG-6 class cable; skin effect by 1/sqrt(rate) gives"
    " 80 m from 113 m"
)
def test_sdi_reach_falls_with_the_root_of_the_rate() -> None:
    assert (line_limit("HD-SDI").length_m, line_limit("3G-SDI").length_m) == (113, 78)
    assert line_limit("HD-SDI").length_m / 2**0.5 == pytest.approx(
        line_limit("3G-SDI").length_m, abs=3
    )


@pytest.mark.source(
    "from memory: E1.11 and RS-485, 300 m practice, 1200 m, 32 unit loads; AES50 summary: about"
    " 100 m"
)
def test_control_and_audio_reach() -> None:
    assert [line_limit(kind).length_m for kind in ("DMX512", "RS-485", "AES50")] == [300, 1200, 100]


@pytest.mark.source("by hand: 85 m of house line and 20 m of tails pass 100 m by 5 m")
def test_the_limit_is_for_the_whole_link() -> None:
    assert length_left_m("copper data", lengths_m=(85, 20)) == pytest.approx(-5)
