"""Rates, channels and addresses against published tables."""

import ipaddress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.streams import (
    bridged_stream_mbit_s,
    multichannel_channels,
    multichannel_payload_kbit_s,
    universe_address,
)


@pytest.mark.source("ANSI E1.31: 239.255.H.L; examples 1, 256, 7962, 63999")
@pytest.mark.parametrize(
    ("universe", "address"),
    [(1, "239.255.0.1"), (256, "239.255.1.0"), (7962, "239.255.31.26"), (63999, "239.255.249.255")],
)
def test_universe_addresses(universe: int, address: str) -> None:
    assert universe_address(universe) == address


@pytest.mark.source("bridged audio endpoint bandwidth table: 2/4/8/16/32 channels at 48 kHz")
@pytest.mark.parametrize(
    ("channels", "mbit_s"), [(2, 7.81), (4, 10.88), (8, 17.02), (16, 29.31), (32, 53.89)]
)
def test_stream_rates(channels: int, mbit_s: float) -> None:
    assert bridged_stream_mbit_s(channels=channels) == pytest.approx(mbit_s, abs=0.005)


@pytest.mark.source(
    "AES10-2003 as restated: 64 channels at 48 kHz are 98 304 kbit/s; 64 at 48 k, 32 at 96 k, 56"
    " and 28 with varied rate"
)
def test_serial_multichannel() -> None:
    assert multichannel_payload_kbit_s(channels=64, sample_rate_hz=48_000) == 98_304
    assert (
        multichannel_channels(sample_rate_hz=48_000),
        multichannel_channels(sample_rate_hz=96_000),
    ) == (64, 32)
    varied = [
        multichannel_channels(sample_rate_hz=rate, varying_rate=True) for rate in (48_000, 96_000)
    ]
    assert varied == [56, 28]


@pytest.mark.law
@given(st.integers(1, 63999), st.integers(1, 63999))
def test_universes_never_share_an_address(one: int, other: int) -> None:
    assert (universe_address(one) == universe_address(other)) == (one == other)
    assert ipaddress.ip_address(universe_address(one)).is_multicast


@pytest.mark.law
def test_numbers_out_of_range_are_refused() -> None:
    with pytest.raises(ValueError, match="universe must be 1 to 63999, got 0"):
        universe_address(0)
    with pytest.raises(
        ValueError, match="sample_rate_hz must be 44100, 48000, 88200 or 96000, got 192000"
    ):
        multichannel_channels(sample_rate_hz=192_000)
