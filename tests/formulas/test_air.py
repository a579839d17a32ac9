"""
Absorption, speed of sound and weightings against ISO 9613-1, IEC 61672-1 and a reference library.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import air

TEMPERATURES = st.floats(-20, 50)
HUMIDITIES = st.floats(5, 100)
FREQUENCIES = st.floats(20, 20_000)

TABLE_1 = [
    (-20, 10, 50, 0.589),
    (-20, 70, 1000, 11.5),
    (-20, 70, 8000, 27.8),
    (0, 10, 1000, 14.0),
    (0, 15, 1000, 18.3),
    (10, 10, 1000, 21.6),
    (10, 10, 100, 0.585),
    (10, 70, 125, 0.411),
    (10, 70, 1000, 3.66),
    (10, 70, 4000, 32.8),
    (15, 70, 1000, 4.08),
    (15, 70, 4000, 26.4),
    (20, 50, 100, 0.294),
    (20, 10, 1000, 14.1),
    (20, 10, 4000, 109),
    (20, 10, 5000, 133),
    (20, 70, 1000, 4.98),
    (20, 80, 5000, 30.6),
    (30, 50, 1000, 7.03),
    (30, 70, 1000, 7.41),
    (30, 70, 4000, 23.1),
    (35, 60, 4000, 25.8),
    (50, 70, 1000, 8.03),
    (50, 10, 8000, 155),
    (50, 70, 8000, 80.3),
]


@pytest.mark.source(
    "ISO 9613-1:1993, Table 1, dB/km at exact midbands and 101.325 kPa, as transcribed in public"
    " test suites; three digits are printed"
)
@pytest.mark.parametrize(("temperature_c", "humidity_percent", "nominal_hz", "db_per_km"), TABLE_1)
def test_table_1_of_the_standard(
    temperature_c: float, humidity_percent: float, nominal_hz: float, db_per_km: float
) -> None:
    exact_hz = air.exact_midband_hz(nominal_hz)
    found = air.air_absorption_db_per_m(
        exact_hz, temperature_c=temperature_c, humidity_percent=humidity_percent
    )
    half_digit = 0.5 * 10 ** (math.floor(math.log10(db_per_km)) - 2)
    assert 1000 * found == pytest.approx(db_per_km, abs=half_digit)


@pytest.mark.source(
    "ISO 9613-1:1993, Table 1, 50 °C, 70 %, 8 kHz: 80.3 dB/km, which the nominal frequency misses"
)
def test_a_nominal_midband_is_not_the_exact_one() -> None:
    exact, nominal = (
        1000 * air.air_absorption_db_per_m(f, temperature_c=50, humidity_percent=70)
        for f in (air.exact_midband_hz(8000), 8000.0)
    )
    assert exact == pytest.approx(80.3, rel=0.001)
    assert nominal > 80.3 * 1.005


@pytest.mark.source("ISO 9613-2:1996, Table 2, 10 °C, 70 %: dB/km by octave")
@pytest.mark.parametrize(
    ("octave_hz", "db_per_km", "half_digit"),
    [
        (63, 0.1, 0.05),
        (125, 0.4, 0.05),
        (250, 1.0, 0.05),
        (500, 1.9, 0.05),
        (1000, 3.7, 0.05),
        (2000, 9.7, 0.05),
        (4000, 32.8, 0.05),
        (8000, 117, 0.5),
    ],
)
def test_octave_row_of_part_2(octave_hz: float, db_per_km: float, half_digit: float) -> None:
    exact_hz = air.exact_midband_hz(octave_hz, "octave")
    assert 1000 * air.air_absorption_db_per_m(
        exact_hz, temperature_c=10, humidity_percent=70
    ) == pytest.approx(db_per_km, abs=half_digit)


@pytest.mark.source("pyfar 0.8.1, air_attenuation, by ISO 9613-1, at 101.325 kPa")
@pytest.mark.parametrize("temperature_c", [-20, 0, 18, 35, 50])
@pytest.mark.parametrize("humidity", [0.1, 0.45, 1.0])
def test_absorption_agrees_with_a_reference_library(temperature_c: float, humidity: float) -> None:
    pyfar = pytest.importorskip("pyfar")
    for frequency_hz in (63.0, 500.0, 3981.0, 15_849.0):
        theirs = pyfar.constants.air_attenuation(temperature_c, frequency_hz, humidity)[0].item()
        ours = air.air_absorption_db_per_m(
            frequency_hz, temperature_c=temperature_c, humidity_percent=100 * humidity
        )
        assert ours == pytest.approx(theirs, rel=1e-9)


@pytest.mark.source(
    "by hand: the vapour's own pressure does not change with altitude, so its share of the"
    " molecules goes as 1/pa (Dalton)"
)
def test_the_share_of_vapour_rises_as_pressure_falls() -> None:
    sea, hill = (
        air.water_vapour_percent(temperature_c=20, humidity_percent=50, pressure_kpa=p)
        for p in (101.325, 101.325 / 2)
    )
    assert hill == pytest.approx(2 * sea)


@pytest.mark.source(
    "ISO 9613-1:1993 (A.5): 343.2 m/s at 20 °C; 20.045 sqrt(T) from a programmed calculator: 351.87"
    " at 35 °C"
)
def test_speed_of_sound() -> None:
    assert air.speed_of_sound_m_s(20) == pytest.approx(343.2, abs=0.05)
    assert air.speed_of_sound_m_s(35) == pytest.approx(351.87, abs=0.005)


@pytest.mark.source(
    "pyfar 0.8.1: speed_of_sound_simple, and speed_of_sound_cramer for humid air (Cramer, JASA 93,"
    " 1993)"
)
def test_humid_air_is_a_little_faster() -> None:
    constants = pytest.importorskip("pyfar").constants
    for temperature_c in (5, 20, 30):
        assert air.speed_of_sound_m_s(temperature_c) == pytest.approx(
            constants.speed_of_sound_simple(temperature_c), rel=1e-9
        )
        assert (
            1
            < constants.speed_of_sound_cramer(temperature_c, 0.5)
            / air.speed_of_sound_m_s(temperature_c)
            < 1.005
        )


@pytest.mark.source(
    "by hand: with h = 0, equations (3) and (4) of ISO 9613-1:1993 leave 24 and 9 Hz at 20 °C"
)
def test_dry_air_relaxes_at_24_and_9_hertz() -> None:
    assert air.relaxation_frequencies_hz(temperature_c=20, humidity_percent=0) == (
        pytest.approx(24),
        pytest.approx(9),
    )


@pytest.mark.source(
    "steam tables: 2.339 kPa saturation at 20 °C, so 50 % is 1.154 % of 101.325 kPa"
)
def test_water_vapour_at_room_temperature() -> None:
    assert air.water_vapour_percent(temperature_c=20, humidity_percent=50) == pytest.approx(
        1.154, abs=0.003
    )


A_C_WEIGHTS = [
    (31.5, -39.4, -3.0), (63, -26.2, -0.8), (125, -16.1, -0.2), (250, -8.6, 0.0), (500, -3.2, 0.0), (1000, 0.0, 0.0), (2000, 1.2, -0.2),  # noqa: E501
    (4000, 1.0, -0.8), (8000, -1.1, -3.0), (16_000, -6.6, -8.5),
]  # fmt: skip


@pytest.mark.source("IEC 61672-1:2013, Table 3")
@pytest.mark.parametrize(("nominal_hz", "a_db", "c_db"), A_C_WEIGHTS)
def test_weightings_round_to_the_table(nominal_hz: float, a_db: float, c_db: float) -> None:
    exact_hz = air.exact_midband_hz(nominal_hz)
    assert air.weighting_db(exact_hz, "A") == pytest.approx(a_db, abs=0.0501)
    assert air.weighting_db(exact_hz, "C") == pytest.approx(c_db, abs=0.0501)
    assert air.weighting_db(exact_hz, "Z") == 0


@pytest.mark.source("pyfar 0.8.1, frequency_weighting_curve, by IEC 61672-1")
@pytest.mark.parametrize("weighting", ["A", "C"])
def test_weightings_agree_with_a_reference_library(weighting: air.Weighting) -> None:
    constants = pytest.importorskip("pyfar").constants
    for frequency_hz in (31.6, 100.0, 997.0, 5012.0, 15_849.0):
        theirs = constants.frequency_weighting_curve(weighting, [frequency_hz])[0]
        assert air.weighting_db(frequency_hz, weighting) == pytest.approx(
            theirs, abs=0.005
        )  # four digits of 20.60 Hz


@pytest.mark.source(
    "by hand: 1000 * 10^(k/10) for k = -15, -9, 6, 9, 12 (IEC 61260-1:2014, equations (1) and (2)),"
    " five digits"
)
def test_exact_midbands() -> None:
    found = [air.exact_midband_hz(nominal) for nominal in (31.5, 125, 4000, 8000, 16_000)]
    assert found == pytest.approx([31.623, 125.89, 3981.1, 7943.3, 15_849], rel=3e-5)
    assert air.exact_midband_hz(63, "octave") == pytest.approx(63.096, rel=1e-5)


@pytest.mark.law
@given(FREQUENCIES, st.floats(1.01, 2), TEMPERATURES, HUMIDITIES)
def test_absorption_rises_with_frequency(
    frequency_hz: float, ratio: float, temperature_c: float, humidity_percent: float
) -> None:
    lower, higher = (
        air.air_absorption_db_per_m(
            f, temperature_c=temperature_c, humidity_percent=humidity_percent
        )
        for f in (frequency_hz, ratio * frequency_hz)
    )
    assert 0 < lower < higher


@pytest.mark.law
@given(TEMPERATURES, TEMPERATURES)
def test_sound_is_faster_in_warmer_air(one_c: float, other_c: float) -> None:
    cold, warm = sorted((one_c, other_c))
    assert air.speed_of_sound_m_s(cold) <= air.speed_of_sound_m_s(warm)


@pytest.mark.law
@pytest.mark.parametrize(
    ("value", "said"),
    [
        ({"frequency_hz": 0}, "frequency_hz must be a number above 0, got 0"),
        ({"frequency_hz": 100, "temperature_c": 51}, "temperature_c must be -20 to 50, got 51"),
        (
            {"frequency_hz": 100, "humidity_percent": 101},
            "humidity_percent must be 0 to 100, got 101",
        ),
        (
            {"frequency_hz": 100, "humidity_percent": math.nan},
            "humidity_percent must be 0 to 100, got nan",
        ),
        (
            {"frequency_hz": 100, "pressure_kpa": 0},
            "pressure_kpa must be above 0 and at most 200, got 0",
        ),
    ],
)
def test_air_outside_the_standard_is_refused(value: dict[str, float], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        air.air_absorption_db_per_m(**value)


@pytest.mark.law
def test_what_is_no_band_or_weighting_is_refused() -> None:
    with pytest.raises(ValueError, match="nominal_hz must be a nominal octave midband, got 80"):
        air.exact_midband_hz(80, "octave")
    with pytest.raises(ValueError, match="weighting must be A, C or Z, got 'B'"):
        air.weighting_db(1000, "B")  # type: ignore[arg-type]  # what a caller without types could pass
