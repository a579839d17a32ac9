"""Quantities in both systems, read exactly, or refused in words an author can act on."""

import copy
import pickle
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reading import quantities as q
from builder.reading.problems import Problem, Where
from tests.steps import calls_made

EVERY_KIND = [
    kind
    for name in q.__all__
    if isinstance(kind := getattr(q, name), type)
    and issubclass(kind, q.Quantity)
    and kind is not q.Quantity
]


@pytest.mark.source("the yard and pound agreement of 1959: 1 ft = 0.3048 m, 1 in = 25.4 mm, exact")
@pytest.mark.parametrize(
    ("text", "m"),
    [
        ("18.3 m", 18.3),
        ("60 ft", 18.288),
        ("27'-10 1/2\"", 8.4963),
        ("27' 10.5\"", 8.4963),
        ("27′ 10½″", 8.4963),
        ("27’ 10”", 8.4836),
        ("27' 10''", 8.4836),
        ("27 ft 10 in", 8.4836),
        ("27ft-10in", 8.4836),
        ("950 mm", 0.95),
        ("9'", 2.7432),
        ('9"', 0.2286),
        ("-0' 6\"", -0.1524),
        ("-3' 6\"", -1.0668),
        ("−2 m", -2.0),
        (".5 m", 0.5),
        ("1,200 MM", 1.2),
        ("3/4 in", 0.01905),
        ("10-1/2 in", 0.2667),
        ("1 mile", 1609.344),
        ("2e3 mm", 2.0),
        ("18.3\u00a0m", 18.3),
    ],
)
def test_a_length_is_read_exactly_in_either_system(text: str, m: float) -> None:
    assert q.Length.parse(text).m == m


@pytest.mark.source(
    "definitions of the units (SI Brochure, 9th edition; 1 lb = 0.453 592 37 kg; NIST SP 811 for"
    " psf), by hand"
)
@pytest.mark.parametrize(
    ("kind", "text", "unit", "value"),
    [
        (q.Mass, "2,000 lb", "kg", 907.18474),
        (q.Mass, "1.5 t", "kg", 1500),
        (q.Mass, "2 short tons", "kg", 1814.36948),
        (q.LoadPerArea, "7.4 kPa", "kpa", 7.4),
        (q.LoadPerArea, "155 psf", "kpa", pytest.approx(7.42144, abs=5e-6)),
        (q.LoadPerArea, "500 kg/m2", "kpa", 4.903325),
        (q.LoadPerArea, "5 kN/m²", "kpa", 5),
        (q.LoadPerLength, "30 lb/ft", "kg_per_m", pytest.approx(44.64492, abs=5e-6)),
        (q.Area, "24 sq ft", "m2", 2.22967296),
        (q.Volume, "120 l", "l", 120),
        (q.Current, "400 A", "a", 400),
        (q.Current, "400 amps", "a", 400),
        (q.Voltage, "11 kV", "v", 11000),
        (q.ApparentPower, "12 kVA", "kva", 12),
        (q.Power, "3.2 kW", "kw", 3.2),
        (q.Frequency, "518.200 MHz", "mhz", 518.2),
        (q.Frequency, "518.200 MHz", "hz", 518200000),
        (q.DataRate, "100 Mbit/s", "mbit_per_s", 100),
        (q.DataRate, "1 Gbit/s", "mbit_per_s", 1000),
        (q.Level, "102 dB", "db", 102),
        (q.Duration, "35 ms", "s", 0.035),
        (q.Duration, "1 h 30 min", "s", 5400),
        (q.Duration, "5 days", "days", 5),
        (q.Duration, "2 weeks", "days", 14),
        (q.TimeOfDay, "22:30", "minutes", 1350),
        (q.TimeOfDay, "24:00", "minutes", 1440),
        (q.TimeOfDay, "10:30 pm", "minutes", 1350),
        (q.TimeOfDay, "12:05 a.m.", "minutes", 5),
        (q.TimeOfDay, "12 pm", "minutes", 720),
        (q.Slope, "1:12", "rise_per_run", 1 / 12),
        (q.Slope, "1 in 8", "rise_per_run", 0.125),
        (q.Slope, "8 %", "rise_per_run", 0.08),
        (q.Slope, "45 deg", "rise_per_run", pytest.approx(1)),
        (q.Percent, "8 %", "share", 0.08),
        (q.Angle, "30°", "deg", 30),
        (q.Temperature, "20 °C", "c", 20),
        (q.Temperature, "68 F", "c", 20),
        (q.Speed, "100 km/h", "m_per_s", pytest.approx(27.7778, abs=5e-5)),
        (q.Stiffness, "2,000 kN·m²", "kn_m2", 2000),
        (q.CrossSection, "35 mm²", "mm2", 35),
        (q.CrossSection, "250 kcmil", "mm2", pytest.approx(126.677, abs=5e-4)),
        (q.Across, "4.2 m SL", "m", 4.2),
        (q.Across, "9.5 m SR", "m", -9.5),
        (q.Across, "3 ft stage right", "m", -0.9144),
        (q.Across, "centre", "m", 0),
        (q.Across, "0 m", "m", 0),
        (q.Depth, "3 ft 6 in US", "m", 1.0668),
        (q.Depth, "2 m downstage", "m", -2),
        (q.Height, "1.4 m up", "m", 1.4),
        (q.Height, "22 ft", "m", 6.7056),
        (q.Height, "0.3 m down", "m", -0.3),
    ],
)
def test_a_quantity_is_read_in_the_unit_its_property_names(
    kind: type[q.Quantity], text: str, unit: str, value: float
) -> None:
    assert getattr(kind.parse(text), unit) == value


def test_the_authors_wording_is_kept_with_its_white_space_folded() -> None:
    assert q.Length.parse("  27′   10½″ ").text == "27′ 10½″"


def test_a_zero_to_stage_right_is_not_a_negative_zero() -> None:
    assert str(q.Across.parse("0 m SR").m) == "0.0"


@pytest.mark.parametrize(
    ("text", "weighting"),
    [("102 dB", ""), ("98 dB(A)", "A"), ("98 dBA", "A"), ("110 dB(C)", "C"), ("102 dB SPL", "")],
)
def test_a_level_keeps_its_weighting(text: str, weighting: str) -> None:
    assert q.Level.parse(text).weighting == weighting


@pytest.mark.parametrize(
    ("kind", "text", "second"),
    [
        (q.Length, "24 ft (7.32 m)", 7.32),
        (q.Length, "60 ft / 18.3 m", 18.3),
        (q.Length, "60 ft/18.3 m", 18.3),
        (q.Length, "27'-10 1/2\" / 8.5 m", 8.5),
        (q.Length, "60 ft", None),
        (q.LoadPerArea, "500 kg/m2 (4.9 kPa)", 4900),
        (q.Level, "98 dB(A)", None),
        (q.Across, "4.2 m SR (13'-9\")", -4.191),
        (q.Across, "4.2 m SR (13'-9\" SR)", -4.191),
        (q.Slope, "1:3 (33 %)", 0.33),
    ],
)
def test_a_second_wording_is_read_too(
    kind: type[q.Quantity], text: str, second: float | None
) -> None:
    assert kind.parse(text).second == second


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        (q.Length, "60 ft"),
        (q.Length, "24 ft (7.32 m)"),
        (q.Length, "60 ft / 18.3 m"),
        (q.Length, "6.4 m (21 ft)"),
        (q.Mass, "9,000 lb (4080 kg)"),
        (q.LoadPerArea, "7.4 kPa / 155 psf"),
        (q.Slope, "1:12 (8.3 %)"),
        (q.Slope, "1:3 (18.4 deg)"),
        (q.Across, "4.2 m SR (13'-9\")"),
    ],
)
def test_two_wordings_within_their_rounding_agree(kind: type[q.Quantity], text: str) -> None:
    assert q.disagreement(kind.parse(text)) is None


@pytest.mark.source("by hand: 12 ft = 3.6576 m; tan 17.3 deg = 0.31147; 9000 lb = 4082.3 kg")
@pytest.mark.parametrize(
    ("kind", "text", "share"),
    [
        (q.Length, "12 ft (3.05 m)", (3.6576 - 3.05) / 3.6576),
        (q.Slope, "1:3 (17.3 deg)", (1 / 3 - 0.31147) * 3),
        (q.Mass, "9,000 lb (4500 kg)", (4500 - 4082.331) / 4500),
        (q.Across, "4 m SL (4 m SR)", 2.0),
    ],
)
def test_two_wordings_beyond_their_rounding_disagree_by_a_share(
    kind: type[q.Quantity], text: str, share: float
) -> None:
    assert q.disagreement(kind.parse(text)) == pytest.approx(share, abs=1e-4)


def said(kind: type[q.Quantity], text: str) -> str:
    """The whole line that the author reads."""
    with pytest.raises(q.Unreadable) as wrong:
        kind.parse(text)
    return str(
        Problem(
            Where("stage.yml", 3, 8),
            "width",
            text,
            wrong.value.reason,
            wrong.value.code,
            wrong.value.advice,
        )
    )


@pytest.mark.parametrize(
    ("kind", "text", "line"),
    [
        (q.Length, "12", "'12' needs a unit; write '12 m' or '12 ft' [unit-missing]"),
        (q.Current, "400", "'400' needs a unit; write '400 A' [unit-missing]"),
        (
            q.Length,
            "27'-10",
            "'27'-10' has a second number without a unit: '10'; write '10 in' [unit-missing]",
        ),
        (
            q.Length,
            "12 kg",
            (
                "'12 kg' is a mass, and a length is wanted here; write it like 18.3 m or 60 ft"
                " [unit-wrong]"
            ),
        ),
        (
            q.Mass,
            "20 kN",
            (
                "'20 kN' is a force, and a mass is wanted here; write it like 900 kg or 2000 lb"
                " [unit-wrong]"
            ),
        ),
        (
            q.Level,
            "4 dBu",
            (
                "'4 dBu' is a level against a reference of its own, and a level is wanted here;"
                " write it like 102 dB or 98 dB(A) [unit-wrong]"
            ),
        ),
        (
            q.Length,
            "12 metrs",
            (
                "'12 metrs' has a unit that is not known here: 'metrs'; did you mean 'metres'?"
                " [unit-unknown]"
            ),
        ),
        (
            q.Length,
            "12 M",
            "'12 M' has a unit that is not known here: 'M'; did you mean 'm'? [unit-unknown]",
        ),
        (
            q.Length,
            "4 m SL",
            (
                "'4 m SL' has more after the unit: 'SL'; write one value, and put the rest in"
                " `note:` [unit-unknown]"
            ),
        ),
        (
            q.Length,
            "18 m - 20 m",
            (
                "'18 m - 20 m' has more after the unit: '- 20 m'; write one value, and put the rest"
                " in `note:` [unit-unknown]"
            ),
        ),
        (
            q.Length,
            "5 ft 2 m",
            "'5 ft 2 m' has 'm' after ft; after ft only in can follow [unit-unknown]",
        ),
        (
            q.Mass,
            "2 ton",
            (
                "'2 ton' does not say which ton; write 't' (1,000 kg), 'short ton' (2,000 lb) or"
                " 'long ton' (2,240 lb); for a hoist, its rated capacity in kg or lb"
                " [unit-ambiguous]"
            ),
        ),
        (
            q.Mass,
            "10K",
            (
                "'10K' has a unit that could be thousands or kelvin; write the number in full and"
                " its unit [unit-ambiguous]"
            ),
        ),
        (
            q.Temperature,
            "293 K",
            (
                "'293 K' has a unit that could be thousands or kelvin; write the number in full and"
                " its unit [unit-ambiguous]"
            ),
        ),
        (
            q.Volume,
            "5 gal",
            (
                "'5 gal' does not say which gallon; write 'US gal', 'imperial gal' or litres"
                " [unit-ambiguous]"
            ),
        ),
        (q.Power, "5 hp", "'5 hp' does not say which horsepower; write it in kW [unit-ambiguous]"),
        (
            q.DataRate,
            "100 Mbps",
            (
                "'100 Mbps' has a unit that could be bits or bytes; write 'Mbit/s' or 'Gbit/s'; a"
                " byte is eight bits [unit-ambiguous]"
            ),
        ),
        (
            q.Mass,
            "50#",
            "'50#' has a unit that could be pounds or a count; write 'lb' [unit-ambiguous]",
        ),
        (
            q.Duration,
            "2 months",
            (
                "'2 months' has a unit without a fixed length; write it in days or weeks"
                " [unit-ambiguous]"
            ),
        ),
        (
            q.Length,
            "6,1 m",
            (
                "'6,1 m' has a comma that does not separate thousands; write '6.1 m'"
                " [number-unreadable]"
            ),
        ),
        (
            q.Length,
            "1,2,3 m",
            (
                "'1,2,3 m' has a comma that does not separate thousands; write it without commas"
                " [number-unreadable]"
            ),
        ),
        (
            q.Mass,
            "2 000 kg",
            "'2 000 kg' has a space inside the number; write '2,000 kg' [number-unreadable]",
        ),
        (
            q.Length,
            "about 6 m",
            (
                "'about 6 m' does not start with a number; write it like 18.3 m or 60 ft"
                " [number-unreadable]"
            ),
        ),
        (
            q.Length,
            "TBC",
            "'TBC' does not start with a number; write it like 18.3 m or 60 ft [number-unreadable]",
        ),
        (
            q.Length,
            "18-20 m",
            (
                "'18-20 m' is not one number and its unit, as a length must be; write it like 18.3"
                " m or 60 ft [number-unreadable]"
            ),
        ),
        (
            q.Length,
            "9**9**9 m",
            (
                "'9**9**9 m' is not one number and its unit, as a length must be; write it like"
                " 18.3 m or 60 ft [number-unreadable]"
            ),
        ),
        (
            q.Length,
            "10.5' 6\"",
            (
                "'10.5' 6\"' has a fraction of ft and then in; write the fraction once"
                " [number-unreadable]"
            ),
        ),
        (
            q.Length,
            "1/0 m",
            "'1/0 m' divides by zero; write it like 18.3 m or 60 ft [number-unreadable]",
        ),
        (
            q.Length,
            "NaN m",
            (
                "'NaN m' is not a finite number; write the number, or `unknown` if nobody knows"
                " it yet [number-out-of-range]"
            ),
        ),
        (
            q.Length,
            "-.inf m",
            (
                "'-.inf m' is not a finite number; write the number, or `unknown` if nobody knows"
                " it yet [number-out-of-range]"
            ),
        ),
        (
            q.Length,
            "1e400 m",
            (
                "'1e400 m' has an exponent beyond 15; write the number in full, in a fitting unit"
                " [number-out-of-range]"
            ),
        ),
        (
            q.Length,
            "1.0000000000000001 m",
            (
                "'1.0000000000000001 m' has more than 15 digits; round it to what was measured"
                " [number-out-of-range]"
            ),
        ),
        (
            q.Length,
            "12' 14\"",
            (
                "'12' 14\"' has 14\" after the ft, and 12 in make one; write it like 18.3 m or 60"
                " ft [number-out-of-range]"
            ),
        ),
        (
            q.Length,
            "5' 12\"",
            (
                "'5' 12\"' has 12\" after the ft, and 12 in make one; write it like 18.3 m or 60 ft"
                " [number-out-of-range]"
            ),
        ),
        (
            q.Mass,
            "-3 kg",
            (
                "'-3 kg' is below zero, and a mass cannot be; write it like 900 kg or 2000 lb"
                " [number-out-of-range]"
            ),
        ),
        (
            q.TimeOfDay,
            "25:00",
            "'25:00' is not on the clock; write it like 22:30 or 10:30 pm [number-out-of-range]",
        ),
        (
            q.TimeOfDay,
            "13 pm",
            (
                "'13 pm' has hour 13 with am or pm; write it like 22:30 or 10:30 pm"
                " [number-out-of-range]"
            ),
        ),
        (
            q.TimeOfDay,
            "midnight",
            "'midnight' is not a time of day; write it like 22:30 or 10:30 pm [number-unreadable]",
        ),
        (q.Slope, "1:0", "'1:0' has no run; write rise:run, like 1:12 [number-out-of-range]"),
        (
            q.Slope,
            "90 deg",
            "'90 deg' is as steep as a wall; a slope is less than 90 deg [number-out-of-range]",
        ),
        (
            q.Slope,
            "1:2.3.4",
            (
                "'1:2.3.4' has '2.3.4', which is not a number; write it like 1:12 or 8 % or 4.8 deg"
                " [number-unreadable]"
            ),
        ),
        (
            q.CrossSection,
            "0/0 AWG",
            (
                "'0/0 AWG' is not a gauge between 4/0 and 40; write the cross-section in mm2 or"
                " kcmil [number-out-of-range]"
            ),
        ),
        (
            q.CrossSection,
            "5/0 AWG",
            (
                "'5/0 AWG' is not a gauge between 4/0 and 40; write the cross-section in mm2 or"
                " kcmil [number-out-of-range]"
            ),
        ),
        (
            q.Across,
            "4.2 m",
            (
                "'4.2 m' does not say which way; add SL (stage left) or SR (stage right), like 4.2"
                " m SL or 9.5 m SR or centre [direction-missing]"
            ),
        ),
        (
            q.Depth,
            "-2 m",
            (
                "'-2 m' does not say which way; add US (upstage) or DS (downstage), like 2 m US or"
                " 3 ft 6 in DS [direction-missing]"
            ),
        ),
        (
            q.Across,
            "-4 m SL",
            (
                "'-4 m SL' has a minus and a direction; keep the direction alone, like 4.2 m SL or"
                " 9.5 m SR or centre [number-unreadable]"
            ),
        ),
        (
            q.Depth,
            "2 m SL",
            (
                "'2 m SL' goes 'SL', and a position up or down stage is wanted here; write it like"
                " 2 m US or 3 ft 6 in DS [direction-missing]"
            ),
        ),
        (
            q.Across,
            "4 m house left",
            (
                "'4 m house left' goes 'house left', and a position across the stage is wanted"
                " here; house left is stage right: write SR [direction-missing]"
            ),
        ),
        (
            q.Across,
            "4 m left",
            (
                "'4 m left' goes 'left', and a position across the stage is wanted here; say whose:"
                " SL is stage left, SR stage right [direction-missing]"
            ),
        ),
        (
            q.Percent,
            "0.08",
            "'0.08' needs a unit; write '8 %', or '0.08 %' if that is meant [unit-missing]",
        ),
        (q.Slope, "12", "'12' needs a unit; write it like 1:12 or 8 % or 4.8 deg [unit-missing]"),
        (
            q.Length,
            "",
            (
                " is empty; write a value, `unknown` if nobody knows it yet, `none`, or leave the"
                " key out [empty-value]"
            ),
        ),
        (
            q.Length,
            "9" * 300,
            (
                f"'{'9' * 59}…' is longer than 240 characters, too long for a quantity; write it"
                " like 18.3 m or 60 ft [number-unreadable]"
            ),
        ),
    ],
)
def test_a_refusal_is_a_line_the_author_can_act_on(
    kind: type[q.Quantity], text: str, line: str
) -> None:
    assert (
        said(kind, text)
        == f"stage.yml:3:8 width{':' if text else ''}{'' if line.startswith(' ') else ' '}{line}"
    )


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_every_kind_reads_its_own_examples(kind: type[q.Quantity]) -> None:
    assert kind.examples
    for example in kind.examples:
        read = kind.parse(example)
        assert read.text == example
        assert re.search(kind.pattern, example)
        assert copy.deepcopy(read) == pickle.loads(pickle.dumps(read)) == read  # noqa: S301


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_every_kind_names_itself_and_its_unit(kind: type[q.Quantity]) -> None:
    assert kind.kind.startswith(("a ", "an "))
    assert kind.si_unit
    assert not hasattr(kind.parse(kind.examples[0]), "__dict__")


HOSTILE = [
    "9" * 10_000_000 + " m",
    "1," * 5_000_000,
    "((" * 5_000_000,
    "-" * 1_000_000,
    " " * 10_000_000,
    "1/" * 120,
    "1 " * 110 + "m",
    "9**9**9 m",
    "1e999999999 m",
    "1" + "0" * 200 + " m",
    "\x00\x01 m",
    "٣ m",
    "𝟗 m",
    "__import__('os') m",
    "{0.__class__} m",
    "½" * 100,
    "a" * 200,
    "1 " + "a " * 100,
]


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_a_hostile_text_is_refused_in_few_steps_by_every_kind(kind: type[q.Quantity]) -> None:
    def refuse_all() -> None:
        for text in HOSTILE:
            with pytest.raises(q.Unreadable):
                kind.parse(text)

    assert calls_made(refuse_all) < 1_000 * len(HOSTILE)


@given(
    st.sampled_from(EVERY_KIND),
    st.text(st.sampled_from("0123456789.,-/'\" ()mftinkgSLURDdB%:eE½″"), max_size=25),
)
def test_any_text_is_read_or_refused_and_nothing_else(kind: type[q.Quantity], text: str) -> None:
    try:
        read = kind.parse(text)
    except q.Unreadable as wrong:
        assert wrong.reason and wrong.code and wrong.advice  # noqa: PT017, PT018
    else:
        assert kind.parse(read.text) == read
        assert re.search(kind.pattern, text), "an editor would mark what is read"


@pytest.mark.parametrize("text", ["12", "wide", "about", "12.5", "-3", ""])
@pytest.mark.parametrize("kind", [q.Length, q.Mass, q.Current, q.Across])
def test_an_editor_marks_a_number_without_a_unit_and_words_without_a_number(
    kind: type[q.Quantity], text: str
) -> None:
    assert not re.search(kind.pattern, text)


@given(st.decimals("0.001", "99999", places=3), st.sampled_from(["m", "mm", "ft", "in"]))
def test_a_number_and_a_unit_read_back_in_any_spelling(value: object, unit: str) -> None:
    spaced, tight = q.Length.parse(f"{value} {unit}"), q.Length.parse(f"{value}{unit}")
    assert spaced.si == tight.si == q.Length.parse(f"{value:,} {unit}").si
    assert q.Length.parse(f"-{value} {unit}").si == -spaced.si


@given(st.integers(0, 500), st.integers(0, 23))
def test_feet_and_inches_are_the_sum_of_their_parts(feet: int, halves: int) -> None:
    inches = f"{halves // 2} 1/2" if halves % 2 else f"{halves // 2}"
    assert q.Length.parse(f"{feet}'-{inches}\"").m == pytest.approx(
        feet * 0.3048 + halves * 0.0127, abs=1e-12
    )
