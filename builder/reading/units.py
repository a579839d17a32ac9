"""
The units the description language knows, by kind, with exact factors to SI.

Sources: NIST SP 811 (2008), Appendix B.8; the yard and pound agreement of 1959 (1 ft = 0.3048 m, 1
lb = 0.453 592 37 kg, both exact); standard gravity 9.806 65 m/s² (3rd CGPM, 1901). A load per area
given in kg or lb is a weight, so it uses standard gravity.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from builder.formulas.primitives import Ratio
from builder.reading.values import units as values

METRIC, IMPERIAL, NEITHER = "metric", "imperial", ""
_FOOT, _POUND, _GRAVITY = Fraction("0.3048"), Fraction("0.45359237"), Fraction("9.80665")
_CUBIC_INCH = (_FOOT / 12) ** 3


@dataclass(frozen=True, slots=True)
class Unit:
    """
    A unit: `si = (number + offset) * factor`. A length of feet may go on in `smaller` units, of
    which `count` make one.
    """

    symbol: str
    factor: Fraction
    system: str
    offset: Fraction = Fraction(0)
    smaller: str = ""
    count: int = 0


Table = Mapping[str, Unit]


def _table(*rows: tuple[Unit, str]) -> Table:
    spelled = {
        name: unit
        for unit, others in rows
        for name in (unit.symbol, *filter(None, others.split("|")))
    }
    return MappingProxyType(spelled)


def _unit(
    symbol: str, factor: Fraction | float | str, others: str = "", system: str = METRIC
) -> tuple[Unit, str]:
    return Unit(symbol, Fraction(factor), system), others


def _imperial(symbol: str, factor: Fraction, others: str = "") -> tuple[Unit, str]:
    return _unit(symbol, factor, others, IMPERIAL)


LENGTH = _table(
    _unit("m", 1, "metre|metres|meter|meters"),
    _unit("mm", "0.001", "millimetre|millimetres|millimeter|millimeters"),
    _unit("cm", "0.01", "centimetre|centimetres|centimeter|centimeters"),
    _unit("km", 1000, "kilometre|kilometres|kilometer|kilometers"),
    (Unit("ft", _FOOT, IMPERIAL, smaller="in", count=12), "'|foot|feet"),
    _imperial("in", _FOOT / 12, '"|inch|inches'),
    _imperial("yd", _FOOT * 3, "yard|yards"),
    _imperial("mi", _FOOT * 5280, "mile|miles"),
)
AREA = _table(
    _unit("m2", 1, "sq m|sqm|square metre|square metres|square meters"),
    _imperial("ft2", _FOOT**2, "sq ft|sqft|square foot|square feet"),
)
VOLUME = _table(
    _unit("l", "0.001", "L|litre|litres|liter|liters"),
    _unit("m3", 1, "cubic metre|cubic metres|cubic meters"),
    _imperial("ft3", _FOOT**3, "cu ft|cubic foot|cubic feet"),
    _imperial("US gal", 231 * _CUBIC_INCH, "US gallon|US gallons"),
    _imperial("imperial gal", Fraction("0.00454609"), "imperial gallon|imperial gallons"),
)
MASS = _table(
    _unit("kg", 1, "kilo|kilos|kilogram|kilograms"),
    _unit("g", "0.001", "gram|grams"),
    _unit("t", 1000, "tonne|tonnes|metric ton|metric tons"),
    _imperial("lb", _POUND, "lbs|pound|pounds"),
    _imperial("oz", _POUND / 16, "ounce|ounces"),
    _imperial("short ton", _POUND * 2000, "short tons"),
    _imperial("long ton", _POUND * 2240, "long tons"),
)
FORCE = _table(
    _unit("kN", 1000),
    _unit("N", 1, "newton|newtons"),
    _unit("daN", 10),
    _imperial("lbf", _POUND * _GRAVITY),
    _imperial("kip", _POUND * _GRAVITY * 1000, "kips"),
)
LOAD_PER_AREA = _table(
    _unit("kPa", 1000, "kN/m2"),
    _unit("Pa", 1, "N/m2"),
    _unit("kg/m2", _GRAVITY, "kgf/m2|kg/sq m|kg per m2"),
    _unit("t/m2", _GRAVITY * 1000),
    _imperial(
        "psf",
        _POUND * _GRAVITY / _FOOT**2,
        "lb/ft2|lbs/ft2|lbf/ft2|lb/sq ft|lbs/sq ft|pounds per square foot",
    ),
    _imperial("psi", _POUND * _GRAVITY / (_FOOT / 12) ** 2, "lb/in2|lbf/in2"),
)
LOAD_PER_LENGTH = _table(
    _unit("kg/m", 1, "kg per m|kg/metre"),
    _unit("t/m", 1000),
    _imperial("lb/ft", _POUND / _FOOT, "lbs/ft|plf|lb per ft|lb/foot"),
)
CURRENT = _table(
    _unit("A", 1, "amp|amps|ampere|amperes", NEITHER),
    _unit("mA", "0.001", "", NEITHER),
    _unit("kA", 1000, "", NEITHER),
)
VOLTAGE = _table(
    _unit("V", 1, "volt|volts", NEITHER),
    _unit("mV", "0.001", "", NEITHER),
    _unit("kV", 1000, "", NEITHER),
)
APPARENT_POWER = _table(
    _unit("VA", 1, "", NEITHER), _unit("kVA", 1000, "", NEITHER), _unit("MVA", 1000000, "", NEITHER)
)
POWER = _table(
    _unit("W", 1, "watt|watts", NEITHER),
    _unit("mW", "0.001", "milliwatt|milliwatts", NEITHER),
    _unit("kW", 1000, "kilowatt|kilowatts", NEITHER),
    _unit("MW", 1000000, "megawatt|megawatts", NEITHER),
    _imperial("BTU/h", Fraction("1055.05585262") / 3600, "BTU/hr"),
)
FREQUENCY = _table(
    _unit("Hz", 1, "hertz", NEITHER),
    _unit("kHz", 1000, "", NEITHER),
    _unit("MHz", 10**6, "", NEITHER),
    _unit("GHz", 10**9, "", NEITHER),
)
DATA_RATE = _table(
    _unit("bit/s", 1, "bits per second", NEITHER),
    _unit("kbit/s", 1000, "", NEITHER),
    _unit("Mbit/s", 10**6, "Mbit per s|megabits per second", NEITHER),
    _unit("Gbit/s", 10**9, "Gbit per s|gigabits per second", NEITHER),
)
LEVEL = _table(
    _unit("dB", 1, "dB SPL", NEITHER),
    _unit("dB(A)", 1, "dBA|dB A", NEITHER),
    _unit("dB(C)", 1, "dBC|dB C", NEITHER),
)
REFERRED_LEVEL = _table(
    *(_unit(symbol, 1, "", NEITHER) for symbol in ("dBm", "dBu", "dBV", "dBFS", "dBi", "dBW"))
)
DURATION = _table(
    _unit("s", 1, "sec|secs|second|seconds", NEITHER),
    _unit("ms", "0.001", "millisecond|milliseconds", NEITHER),
    (Unit("min", Fraction(60), NEITHER, smaller="s", count=60), "mins|minute|minutes"),
    (Unit("h", Fraction(3600), NEITHER, smaller="min", count=60), "hr|hrs|hour|hours"),
    _unit("days", 86400, "day|d", NEITHER),
    _unit("weeks", 604800, "week|wk|wks", NEITHER),
)
SHARE = _table(_unit("%", "0.01", "percent|per cent", NEITHER))
ANGLE = _table(_unit("deg", 1, "°|degree|degrees", NEITHER))
TEMPERATURE = _table(
    (Unit("°C", Fraction(1), METRIC, offset=Fraction("273.15")), "C|deg C|degC|celsius"),
    (Unit("°F", Fraction(5, 9), IMPERIAL, offset=Fraction("459.67")), "F|deg F|degF|fahrenheit"),
)
SPEED = _table(
    _unit("m/s", 1, "metres per second"),
    _unit("km/h", Fraction(5, 18), "kph|kmh"),
    _unit("m/min", Fraction(1, 60), "metres per minute|metres a minute|m a minute"),
    _imperial("ft/s", _FOOT, "feet per second"),
    _imperial("ft/min", _FOOT / 60, "fpm|feet per minute|feet a minute|ft a minute"),
    _imperial("mph", _FOOT * 5280 / 3600, "miles per hour"),
    _imperial("kn", Fraction(1852, 3600), "kt|knot|knots"),
)
STIFFNESS = _table(_unit("kN m2", 1000, "kN·m2|kNm2|kN*m2|kN-m2"), _unit("N m2", 1, "N·m2|Nm2"))
# A circular mil is the area of a circle of 0.001 in: kcmil sizes follow from it.
CROSS_SECTION = _table(
    _unit("mm2", "0.000001", "sq mm|sqmm|square millimetres"),
    _imperial("kcmil", Fraction(math.pi / 4) * (_FOOT / 12) ** 2 / 1000, "MCM"),
)

KINDS: Mapping[str, Table] = MappingProxyType(
    {
        "a length": LENGTH,
        "an area": AREA,
        "a volume": VOLUME,
        "a mass": MASS,
        "a force": FORCE,
        "a load per area": LOAD_PER_AREA,
        "a load per length": LOAD_PER_LENGTH,
        "a current": CURRENT,
        "a voltage": VOLTAGE,
        "an apparent power": APPARENT_POWER,
        "a power": POWER,
        "a frequency": FREQUENCY,
        "a data rate": DATA_RATE,
        "a level": LEVEL,
        "a level against a reference of its own": REFERRED_LEVEL,
        "a duration": DURATION,
        "a percentage": SHARE,
        "an angle": ANGLE,
        "a temperature": TEMPERATURE,
        "a speed": SPEED,
        "a stiffness": STIFFNESS,
        "a cross-section": CROSS_SECTION,
    }
)

# What these mean depends on who writes them; the answers differ by enough to hurt.
AMBIGUOUS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        **dict.fromkeys(
            ("ton", "tons", "T", "Ton", "Tons", "TON", "TONS"),
            (
                "does not say which ton",
                (
                    "write 't' (1,000 kg), 'short ton' (2,000 lb) or 'long ton' (2,240 lb); for a"
                    " hoist, its rated capacity in kg or lb"
                ),
            ),
        ),
        **dict.fromkeys(
            ("K", "k"),
            (
                "has a unit that could be thousands or kelvin",
                "write the number in full and its unit",
            ),
        ),
        **dict.fromkeys(
            ("gal", "gallon", "gallons"),
            ("does not say which gallon", "write 'US gal', 'imperial gal' or litres"),
        ),
        **dict.fromkeys(
            (
                "Mbps",
                "MBps",
                "mbps",
                "Mb/s",
                "MB/s",
                "mb/s",
                "Gbps",
                "GBps",
                "gbps",
                "Gb/s",
                "GB/s",
                "gb/s",
            ),
            (
                "has a unit that could be bits or bytes",
                "write 'Mbit/s' or 'Gbit/s'; a byte is eight bits",
            ),
        ),
        **dict.fromkeys(("hp", "HP"), ("does not say which horsepower", "write it in kW")),
        **dict.fromkeys(
            ("month", "months"), ("has a unit without a fixed length", "write it in days or weeks")
        ),
        **dict.fromkeys(("#", "k#"), ("has a unit that could be pounds or a count", "write 'lb'")),
    }
)


def table_data(table: Table) -> values.Table:
    """A table as plain data: its units by symbol, and every spelling."""
    return {
        "units": {unit.symbol: unit_data(unit) for unit in table.values()},
        "names": {name: unit.symbol for name, unit in table.items()},
    }


def unit_data(unit: Unit) -> values.Unit:
    """A unit as plain data, its factor to SI as digits: it may be finer than a float holds."""
    data: values.Unit = {"symbol": unit.symbol, "factor": ratio_data(unit.factor)}
    if unit.offset:
        data["offset"] = ratio_data(unit.offset)
    if unit.smaller:
        data["smaller"] = unit.smaller
        data["count"] = unit.count
    return data


def ratio_data(fraction: Fraction) -> Ratio:
    """An exact fraction as digits."""
    return {"top": str(fraction.numerator), "bottom": str(fraction.denominator)}


def unit_book() -> values.UnitBook:
    """All units, and the signs that say too little, as plain data."""
    return {
        "tables": {name: table_data(table) for name, table in KINDS.items()},
        "order": list(KINDS),
        "ambiguous": {sign: list(words) for sign, words in AMBIGUOUS.items()},
    }
