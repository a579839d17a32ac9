"""Conversion factors against published tables and an independent library."""

import math

import pytest
import scipy.constants as reference

from builder.reading import quantities as q
from builder.reading import units
from builder.reading.conductors import awg_mm2

NIST = [
    (units.LOAD_PER_AREA, "psf", 47.88026, 5e-6),
    (units.LOAD_PER_AREA, "psi", 6894.757, 5e-4),
    (units.LOAD_PER_LENGTH, "lb/ft", 1.488164, 5e-7),
    (units.SPEED, "mph", 0.44704, 0),
    (units.SPEED, "kn", 0.5144444, 5e-8),
]


@pytest.mark.source(
    "NIST SP 811 (2008), Appendix B.8, factors listed alphabetically; within half the last digit"
    " printed"
)
@pytest.mark.parametrize(
    ("table", "symbol", "si", "half_digit"), NIST, ids=[each[1] for each in NIST]
)
def test_a_factor_is_the_published_one(
    table: units.Table, symbol: str, si: float, half_digit: float
) -> None:
    assert abs(float(table[symbol].factor) - si) <= half_digit


LIBRARY = [
    (units.LENGTH, "ft", reference.foot),
    (units.LENGTH, "in", reference.inch),
    (units.LENGTH, "yd", reference.yard),
    (units.LENGTH, "mi", reference.mile),
    (units.AREA, "ft2", reference.foot**2),
    (units.VOLUME, "ft3", reference.foot**3),
    (units.VOLUME, "US gal", reference.gallon_US),
    (units.VOLUME, "imperial gal", reference.gallon_imp),
    (units.MASS, "lb", reference.pound),
    (units.MASS, "oz", reference.oz),
    (units.MASS, "short ton", reference.short_ton),
    (units.MASS, "long ton", reference.long_ton),
    (units.MASS, "t", reference.metric_ton),
    (units.FORCE, "lbf", reference.pound_force),
    (units.LOAD_PER_AREA, "kg/m2", reference.kilogram_force),
    (units.LOAD_PER_AREA, "psi", reference.psi),
    (units.LOAD_PER_AREA, "psf", reference.pound_force / reference.foot**2),
    (units.SPEED, "km/h", reference.kmh),
    (units.SPEED, "mph", reference.mph),
    (units.SPEED, "kn", reference.knot),
    (units.POWER, "BTU/h", reference.Btu / reference.hour),
    (units.CROSS_SECTION, "kcmil", 1000 * math.pi / 4 * reference.mil**2),
    (units.DURATION, "weeks", reference.week),
    (units.DURATION, "days", reference.day),
]


@pytest.mark.source("scipy.constants 1.17 (CODATA and NIST values), an independent library")
@pytest.mark.parametrize(("table", "symbol", "si"), LIBRARY, ids=[each[1] for each in LIBRARY])
def test_a_factor_agrees_with_a_reference_library(
    table: units.Table, symbol: str, si: float
) -> None:
    assert float(table[symbol].factor) == pytest.approx(si, rel=1e-12)


@pytest.mark.source("scipy.constants.convert_temperature 1.17")
@pytest.mark.parametrize("text", ["-40 F", "0 °F", "32 F", "68 F", "98.6 F", "20 C", "-5.5 °C"])
def test_a_temperature_agrees_with_a_reference_library(text: str) -> None:
    number, scale = float(text.split()[0]), text[-1]
    assert q.Temperature.parse(text).c == pytest.approx(
        reference.convert_temperature(number, scale, "C"), abs=1e-9
    )


# Diameter and area; the areas carry three digits, so half the last one is the tolerance.
GAUGES = [
    ("4/0", 11.684, 107, 0.5), ("3/0", 10.405, 85.0, 0.05), ("2/0", 9.266, 67.4, 0.05), ("1/0", 8.251, 53.5, 0.05), ("1", 7.348, 42.4, 0.05),  # noqa: E501
    ("2", 6.544, 33.6, 0.05), ("3", 5.827, 26.7, 0.05), ("4", 5.189, 21.2, 0.05), ("6", 4.115, 13.3, 0.05), ("8", 3.264, 8.37, 0.005),  # noqa: E501
    ("10", 2.588, 5.26, 0.005), ("12", 2.053, 3.31, 0.005), ("14", 1.628, 2.08, 0.005), ("16", 1.291, 1.31, 0.005), ("18", 1.024, 0.823, 5e-4),  # noqa: E501
    ("20", 0.812, 0.518, 5e-4), ("22", 0.644, 0.326, 5e-4), ("24", 0.511, 0.205, 5e-4), ("36", 0.127, 0.0127, 5e-5), ("40", 0.0799, 0.00501, 5e-6),  # noqa: E501
]  # fmt: skip


@pytest.mark.source(
    "American wire gauge after ASTM B258, tabulated diameters and areas of solid wire"
)
@pytest.mark.parametrize(
    ("size", "diameter_mm", "area_mm2", "half_digit"), GAUGES, ids=[each[0] for each in GAUGES]
)
def test_a_wire_gauge_has_its_tabulated_area(
    size: str, diameter_mm: float, area_mm2: float, half_digit: float
) -> None:
    assert abs(awg_mm2(size) - area_mm2) <= half_digit
    assert math.sqrt(4 / math.pi * awg_mm2(size)) == pytest.approx(diameter_mm, abs=0.0006)


@pytest.mark.parametrize("text", ["4/0 AWG", "4/0AWG", "AWG 4/0", "#4/0 awg"])
def test_a_wire_gauge_is_read_in_its_usual_spellings(text: str) -> None:
    assert q.CrossSection.parse(text).mm2 == pytest.approx(107.2, abs=0.05)


def test_no_spelling_of_a_unit_means_two_units_of_one_kind() -> None:
    for kind, table in units.KINDS.items():
        folded: dict[str, set[str]] = {}
        for name, unit in table.items():
            folded.setdefault(name.casefold(), set()).add(unit.symbol)
        clashing = {name for name, symbols in folded.items() if len(symbols) > 1}
        assert clashing <= {"mw"}, kind


def test_capitals_matter_only_where_they_change_the_meaning() -> None:
    assert q.Mass.parse("900 KG").kg == 900
    assert q.Frequency.parse("518.2 mhz").mhz == 518.2
    assert (q.Power.parse("50 mW").kw, q.Power.parse("5 MW").kw) == (5e-5, 5000)
    with pytest.raises(q.Unreadable, match="has a unit that is not known here: 'Mw'"):
        q.Power.parse("5 Mw")


MULTIPLES = [
    *[(units.FORCE, name, si) for name, si in (("N", 1), ("daN", 10), ("kN", 1000))],
    *[(units.LOAD_PER_AREA, name, si) for name, si in (("Pa", 1), ("kPa", 1000))],
    *[(units.LOAD_PER_AREA, name, si) for name, si in (("kg/m2", 9.80665), ("t/m2", 9806.65))],
    *[(units.VOLTAGE, name, si) for name, si in (("V", 1), ("mV", 1e-3), ("kV", 1e3))],
    *[(units.APPARENT_POWER, name, si) for name, si in (("VA", 1), ("kVA", 1e3), ("MVA", 1e6))],
    *[(units.POWER, name, si) for name, si in (("W", 1), ("mW", 1e-3), ("kW", 1e3), ("MW", 1e6))],
    *[(units.FREQUENCY, name, si) for name, si in (("Hz", 1), ("kHz", 1e3), ("GHz", 1e9))],
    *[(units.FREQUENCY, "MHz", 1e6), (units.DATA_RATE, "bit/s", 1), (units.SHARE, "%", 0.01)],
    *[(units.DATA_RATE, name, si) for name, si in (("kbit/s", 1e3), ("Gbit/s", 1e9))],
    *[(units.DATA_RATE, "Mbit/s", 1e6), (units.SPEED, "m/s", 1), (units.SPEED, "km/h", 1 / 3.6)],
    *[(units.DURATION, name, si) for name, si in (("s", 1), ("ms", 1e-3), ("min", 60))],
    *[(units.DURATION, name, si) for name, si in (("h", 3600), ("days", 86400), ("weeks", 604800))],
    *[(units.STIFFNESS, "kN m2", 1e3), (units.STIFFNESS, "N m2", 1)],
    *[(units.CROSS_SECTION, "mm2", 1e-6), (units.LEVEL, "dB", 1), (units.LEVEL, "dB(A)", 1)],
]


@pytest.mark.source("BIPM, SI Brochure, 9th edition, prefixes and units with the SI, from memory")
@pytest.mark.parametrize(("table", "symbol", "si"), MULTIPLES, ids=[m[1] for m in MULTIPLES])
def test_a_multiple_is_that_of_its_prefix(table: units.Table, symbol: str, si: float) -> None:
    assert float(table[symbol].factor) == pytest.approx(si, rel=1e-12)


@pytest.mark.law
def test_a_unit_that_goes_on_in_a_smaller_one_is_so_many_of_it() -> None:
    going_on = [
        (table, unit) for table in units.KINDS.values() for unit in table.values() if unit.smaller
    ]
    assert {unit.symbol for _, unit in going_on} >= {"ft", "min", "h"}
    for table, unit in going_on:
        assert unit.factor == unit.count * table[unit.smaller].factor
