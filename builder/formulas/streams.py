"""Arithmetic of networked and multichannel signals: rates, channels, addresses."""

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import AES10, E1_31, IEEE_1722


@cites(E1_31, "9.3.1, multicast addressing", equation="239.255.(universe // 256).(universe % 256)")
def universe_address(universe: int) -> str:
    """
    Multicast address of a lighting universe.

    Parameters
    ----------
    universe
        Number, 1 to 63999. [-]

    Returns
    -------
    str
        Dotted address.

    Raises
    ------
    ValueError
        If the number is out of range.
    """
    if not 1 <= universe <= 63999:
        raise ValueError(f"universe must be 1 to 63999, got {universe}")
    return f"239.255.{universe // 256}.{universe % 256}"


@cites(
    IEEE_1722,
    "stream of AM824 samples, 8000 packets a second, 6 samples each, 74 bytes around them",
    equation="rate = (74 + 24 n) * 8 * 8000 / 10^6",
)
def bridged_stream_mbit_s(*, channels: int) -> float:
    """
    Rate of one audio stream at 48 kHz on a time-sensitive bridged network.

    Parameters
    ----------
    channels
        Channels in the stream. [-]

    Returns
    -------
    float
        Rate on the wire. [Mbit/s]

    Raises
    ------
    ValueError
        If there is no channel.
    """
    return (74 + 24 * above_zero("channels", channels)) * 64 / 1000


@cites(AES10, "transmission rate: subframes of 32 bits", equation="rate = 32 n fs / 1000")
def multichannel_payload_kbit_s(*, channels: int, sample_rate_hz: int) -> float:
    """
    Payload of a serial multichannel audio line.

    Parameters
    ----------
    channels
        Channels on the line. [-]
    sample_rate_hz
        Sample rate. [Hz]

    Returns
    -------
    float
        Payload; framing comes on top. [kbit/s]

    Raises
    ------
    ValueError
        If a number is not above 0.
    """
    return (
        32 * above_zero("channels", channels) * above_zero("sample_rate_hz", sample_rate_hz) / 1000
    )


@cites(
    AES10,
    "channels at 48 and 96 kHz; 56 where the rate may vary",
    equation="n = 64 (or 56), halved at the double rate",
)
def multichannel_channels(*, sample_rate_hz: int, varying_rate: bool = False) -> int:
    """
    Channels of a serial multichannel audio line.

    Parameters
    ----------
    sample_rate_hz
        44 100, 48 000, 88 200 or 96 000. [Hz]
    varying_rate
        True where the line keeps room for a varied sample rate.

    Returns
    -------
    int
        Channels. [-]

    Raises
    ------
    ValueError
        If the rate is none of the four.
    """
    if sample_rate_hz not in (44_100, 48_000, 88_200, 96_000):
        raise ValueError(
            f"sample_rate_hz must be 44100, 48000, 88200 or 96000, got {sample_rate_hz}"
        )
    return (56 if varying_rate else 64) // (1 if sample_rate_hz <= 48_000 else 2)
