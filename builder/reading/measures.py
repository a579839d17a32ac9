"""
Quantities in words: what the author wrote, the same in the other system, and computed values in
both.

Rounding is half to even on the shortest decimal form of the value, in exact arithmetic, so the same
value gives the same words on every machine.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from builder.reading import quantities as q
from builder.reading import units
from builder.reading.units import IMPERIAL, METRIC

System = Literal["metric", "imperial"]
"""The unit system that a computed value is shown in first."""

# A value in SI and the digits asked for, to words.
Form = Callable[[Fraction, int | None], str]
_INCH = units.LENGTH["in"].factor
_FEET_INCHES_BELOW_M = 100


@dataclass(frozen=True, slots=True)
class Forms:
    """How a kind is written: its first system, and the other where there is one."""

    metric: Form
    imperial: Form | None = None


def both(quantity: q.Quantity) -> tuple[str, str]:
    """
    The author's wording, and the same in the other system; the second is empty where the author
    wrote both or there is no other.
    """
    unit = quantity.amounts(quantity.text)[0].unit
    if quantity.second is not None or unit is None:
        return quantity.text, ""
    forms = _forms(type(quantity))
    other = {METRIC: forms.imperial, IMPERIAL: forms.metric}.get(unit.system)
    return quantity.text, other(_exact(quantity.si), None) if other else ""


def shown(
    kind: type[q.Quantity], si: float, digits: int | None = None, system: System = "metric"
) -> tuple[str, str]:
    """
    A computed value in words, in this system and in the other.

    Parameters
    ----------
    kind
        The kind of quantity, such as ``Mass``.
    si
        Its value, in the unit that ``kind.si_unit`` names.
    digits
        Digits after the point in the first wording; None fits them to the size. Feet and inches go
        to the half inch whatever is asked.
    system
        The system of the first wording. A kind with one system has it first, and nothing second.

    Raises
    ------
    ValueError
        If ``si`` is not finite, ``digits`` is below 0, or a time of day is not between 0:00 and
        24:00.
    """
    if digits is not None and digits < 0:
        raise ValueError(f"digits must be 0 or more, got {digits}")
    forms, exact = _forms(kind), _exact(si)
    if forms.imperial is None:
        return forms.metric(exact, digits), ""
    if system == IMPERIAL:
        return forms.imperial(exact, digits), forms.metric(exact, None)
    return forms.metric(exact, digits), forms.imperial(exact, None)


def system_of(number: q.Quantity) -> System:
    """The unit system that a quantity was written in."""
    unit = number.amounts(number.text)[0].unit
    return "imperial" if unit is not None and unit.system == IMPERIAL else "metric"


def _exact(si: float) -> Fraction:
    if not math.isfinite(si):
        raise ValueError(f"si must be finite, got {si}")
    return Fraction(repr(float(si)))


def _forms(kind: type[q.Quantity]) -> Forms:
    for each in kind.__mro__:
        if each in _FORMS:
            return _FORMS[each]
    raise ValueError(f"kind must be a kind of quantity, got {kind.__name__}")


def number(value: Fraction, digits: int, *, trim: bool = False) -> str:
    """
    The number with commas between thousands: `1,240`, `-0.35`. With ``trim``, zeros at the end are
    left off.
    """
    scaled = round(value * 10**digits)
    whole, part = divmod(abs(scaled), 10**digits)
    decimals = f"{part:0{digits}d}" if digits else ""
    if trim:
        decimals = decimals.rstrip("0")
    return f"{'-' if scaled < 0 else ''}{whole:,}{'.' if decimals else ''}{decimals}"


def _fitting(value: Fraction) -> int:
    """Three significant digits for a small number, whole ones for a large."""
    return 0 if abs(value) >= 100 else 1 if abs(value) >= 10 else 2


def _in(
    label: str,
    factor: Fraction | int | str,
    digits: int | None = None,
    *,
    offset: str = "0",
    trim: bool = False,
) -> Form:
    divisor, zero = Fraction(factor), Fraction(offset)

    def form(si: Fraction, asked: int | None) -> str:
        value = si / divisor - zero
        if asked is not None:
            return f"{number(value, asked)} {label}"
        return f"{number(value, _fitting(value) if digits is None else digits, trim=trim)} {label}"

    return form


def _stepped(*steps: tuple[Fraction | int | str, Form]) -> Form:
    """
    The first form whose step the value reaches; zero takes the last but one, the unit without a
    prefix.
    """

    def form(si: Fraction, asked: int | None) -> str:
        reached = [each for least, each in steps if abs(si) >= Fraction(least)]
        return (reached[0] if reached else steps[-1][1])(si, asked)

    return form


def _metres(si: Fraction, digits: int | None) -> str:
    if digits is None and 0 < round(abs(si) * 1000) < 1000:
        return f"{number(si * 1000, 0)} mm"
    return f"{number(si, digits if digits is not None else 2 if abs(si) < 100 else 1)} m"


def _feet_inches(si: Fraction, digits: int | None) -> str:
    if abs(si) >= _FEET_INCHES_BELOW_M:
        return f"{number(si / _INCH / 12, digits or 0)} ft"
    halves = round(abs(si) / _INCH * 2)
    feet, rest = divmod(halves, 24)
    inches, half = divmod(rest, 2)
    words = f"{inches} 1/2" if half else str(inches)
    sign = "-" if si < 0 and halves else ""
    if feet:
        return f"{sign}{feet:,}'-{words}\""
    return f'{sign}{words.removeprefix("0 ")}"'


def _toward(form: Form, above: str, below: str, zero: str = "") -> Form:
    """A position: the length without its sign, and the direction that the sign means."""

    def directed(si: Fraction, digits: int | None) -> str:
        if si == 0 and zero:
            return zero
        return f"{form(abs(si), digits)} {below if si < 0 else above}"

    return directed


def _clock(si: Fraction, digits: int | None) -> str:
    del digits
    minutes = round(si / 60)
    if not 0 <= minutes <= 24 * 60:
        raise ValueError(f"si must be between 0 and 86400 for a time of day, got {float(si)}")
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def _ratio(si: Fraction, digits: int | None) -> str:
    if si == 0:
        return "0 %"
    return f"{'-' if si < 0 else ''}1:{number(1 / abs(si), 2 if digits is None else digits, trim=digits is None)}"  # noqa: E501


_FORMS: Mapping[type, Forms] = MappingProxyType(
    {
        q.Across: Forms(
            _toward(_metres, "SL", "SR", "centre"), _toward(_feet_inches, "SL", "SR", "centre")
        ),
        q.Depth: Forms(
            _toward(_metres, "US", "DS", "0 m"), _toward(_feet_inches, "US", "DS", "0 ft")
        ),
        q.Height: Forms(_toward(_metres, "up", "down"), _toward(_feet_inches, "up", "down")),
        q.Length: Forms(_metres, _feet_inches),
        q.Area: Forms(_in("m²", 1), _in("sq ft", units.AREA["ft2"].factor)),
        q.Volume: Forms(
            _stepped((10, _in("m³", 1)), (0, _in("l", "0.001"))),
            _in("cu ft", units.VOLUME["ft3"].factor),
        ),
        q.Mass: Forms(_in("kg", 1), _in("lb", units.MASS["lb"].factor)),
        q.LoadPerArea: Forms(_in("kPa", 1000), _in("psf", units.LOAD_PER_AREA["psf"].factor)),
        q.LoadPerLength: Forms(_in("kg/m", 1), _in("lb/ft", units.LOAD_PER_LENGTH["lb/ft"].factor)),
        q.Temperature: Forms(
            _in("°C", 1, 1, offset="273.15", trim=True),
            _in("°F", units.TEMPERATURE["F"].factor, 1, offset="459.67", trim=True),
        ),
        q.Speed: Forms(_in("m/s", 1), _in("mph", units.SPEED["mph"].factor)),
        q.Stiffness: Forms(_in("kN m²", 1000)),
        q.CrossSection: Forms(_in("mm²", "0.000001")),
        q.Current: Forms(_in("A", 1)),
        q.Voltage: Forms(_in("V", 1)),
        q.ApparentPower: Forms(_in("kVA", 1000)),
        q.Power: Forms(
            _stepped((1000, _in("kW", 1000)), (1, _in("W", 1)), (0, _in("mW", "0.001")))
        ),
        q.Frequency: Forms(
            _stepped(
                (10**6, _in("MHz", 10**6, 3)),
                (1000, _in("kHz", 1000, 3, trim=True)),
                (0, _in("Hz", 1, 1, trim=True)),
            )
        ),
        q.DataRate: Forms(
            _stepped(
                (10**9, _in("Gbit/s", 10**9, 2, trim=True)),
                (10**6, _in("Mbit/s", 10**6, 2, trim=True)),
                (1000, _in("kbit/s", 1000, 2, trim=True)),
                (0, _in("bit/s", 1, 0)),
            )
        ),
        q.Level: Forms(_in("dB", 1, 1)),
        q.Duration: Forms(
            _stepped(
                (172800, _in("days", 86400, 1, trim=True)),
                (7200, _in("h", 3600, 1, trim=True)),
                (120, _in("min", 60, 1, trim=True)),
                (1, _in("s", 1, 1, trim=True)),
                (0, _in("ms", "0.001", 1, trim=True)),
            )
        ),
        q.TimeOfDay: Forms(_clock),
        q.Slope: Forms(_ratio),
        q.Percent: Forms(_in("%", "0.01", 1, trim=True)),
        q.Angle: Forms(_in("deg", 1, 1, trim=True)),
    }
)
