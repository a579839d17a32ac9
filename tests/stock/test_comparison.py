"""Two packs told apart: exactly what changed, in words and by how much."""

from dataclasses import replace

import pytest

from builder.pack import Field, Pack, Reference, Value, Verified, Working
from builder.pipeline import pack_of
from builder.stock.amount import how_much
from builder.stock.comparison import compare
from builder.stock.telling import as_json, as_markdown, as_text
from tests.stock.small import HOUSE, SOUND, STAGE, room


def pack(**texts: str) -> Pack:
    """The small venue's pack with files replaced."""
    return pack_of(room(**texts).venue)


def told(before: Pack, after: Pack) -> list[str]:
    """What changed, without the head."""
    return as_text(compare(before, after)).splitlines()[1:]


def test_a_pack_does_not_differ_from_itself() -> None:
    assert not compare(pack(), pack())
    assert told(pack(), pack()) == ["Nothing changed that the pack shows."]


def test_facts_that_changed_appeared_and_went_are_told_by_line() -> None:
    text = SOUND.replace("count: 14, working: 13", "count: 12").replace(
        "inputs: 16", "inputs: 16\n    mono_mixes: 4"
    )
    assert told(pack(), pack(sound=text)) == [
        "Sound",
        "  Pocket, mono mixes: new, 4",
        "  Vellum 8, count: 14 → 12 (−2)",
        "  Vellum 8, working: no longer there, was 13",
    ]


def test_a_line_added_above_others_is_the_only_change() -> None:
    text = SOUND.replace(
        "  - {name: Vellum 7,",
        "  - {name: Vellum 1, kind: microphone, count: 2}\n  - {name: Vellum 7,",
    )
    assert told(pack(), pack(sound=text)) == ["Sound", "  Vellum 1, stock: added"]
    assert told(pack(sound=text), pack()) == ["Sound", "  Vellum 1, stock: taken out"]


def test_a_figure_that_moves_is_told_with_its_caution() -> None:
    wider = STAGE.replace("across: 5 m S", "across: 6 m S").replace(
        "usable_width: 9 m", "usable_width: 11 m"
    )
    comparison = compare(pack(), pack(stage=wider))
    moved = {
        difference.label: (difference.before, difference.after, difference.by)
        for _, difference in comparison.moved
    }
    assert moved["Deck area"] == ("60.0 m²", "72.0 m²", "+12.0 m²")
    assert "Planning figures." in as_text(comparison)
    assert "Planning figures." in as_markdown(comparison)
    assert '"caution": "Planning figures.' in as_json(comparison)


def test_a_finding_that_appears_and_one_that_vanishes() -> None:
    odd = pack(sound=SOUND.replace('note: "One was dropped."', 'note: "TBC"'))
    (finding,) = compare(pack(), odd).appeared
    assert finding.code == "placeholder"
    assert compare(odd, pack()).vanished == (finding,)
    assert compare(odd, odd).appeared == ()


def test_a_finding_whose_line_moved_is_not_new() -> None:
    odd = SOUND.replace('note: "One was dropped."', 'note: "TBC"')
    assert not compare(pack(sound=odd), pack(sound="# One more line.\n" + odd))


def test_a_department_that_is_new_is_told_line_by_line() -> None:
    house_only = pack_of(room().venue)
    without = replace(
        house_only,
        sections=tuple(section for section in house_only.sections if section.key != "sound"),
    )
    assert "  Meridian, console: added" in told(without, house_only)


def test_a_new_check_is_told_and_ages_are_not() -> None:
    later = HOUSE.replace("on: 2026-01-02", "on: 2026-01-20")
    assert told(pack(), pack(house=later)) == ["Nothing changed that the pack shows."]
    assert told(pack(), pack(sound=SOUND.replace("2025-12-01", "2026-01-01"))) == [
        "Sound",
        "  last checked: 2025-12-01, head of sound, measured → 2026-01-01, head of",
        "      sound, measured",
    ]


def test_a_map_tells_how_far_its_levels_moved() -> None:
    working = Working("L", (), (Reference("s", "c"),))
    field = Field(
        "sound.field.floor",
        "Floor",
        "mix",
        1.0,
        ("A",),
        ((0.0, 0.0, 0.0), (1.0, 0.0, 0.0)),
        ((10, -5),),
        working,
        "Planning figures.",
    )
    section = replace(pack().sections[-1], fields=(field,))
    moved = replace(section, fields=(replace(field, levels=((12, -18),)),))
    assert told(replace(pack(), sections=(section,)), replace(pack(), sections=(moved,)))[1:3] == [
        "  Figures that moved",
        "    Floor, level over the area: up to 1.3 dB",
    ]


@pytest.mark.parametrize(
    ("before", "after", "by"),
    [
        (Value("70.0 A", number=70.0, unit="A"), Value("38.0 A", number=38.0, unit="A"), "−32.0 A"),
        (
            Value("6.32 m", number=6.32, unit="m"),
            Value("6.54 m", number=6.534, unit="m"),
            "+214 mm",
        ),
        (
            Value("18 ft", number=5.4864, unit="m"),
            Value("20 ft", number=6.096, unit="m"),
            "+2'-0\"",
        ),
        (
            Value("−0.5 dB", number=-0.5, unit="dB"),
            Value("+1.0 dB", number=1.0, unit="dB"),
            "+1.5 dB",
        ),
        (
            Value("35 mm²", number=35e-6, unit="m2"),
            Value("50 mm²", number=50e-6, unit="m2"),
            "+15 mm²",
        ),
        (
            Value("−0.5 dB", number=-0.6, unit="dB"),
            Value("−1.0 dB", number=-0.9, unit="dB"),
            "−0.3 dB before rounding",
        ),
        (
            Value("120 dB", number=119.52, unit="dB"),
            Value("119 dB", number=119.45, unit="dB"),
            "−0.1 dB before rounding",
        ),
        (Value("9 of 10", number=9.0), Value("8 of 10", number=8.0), "−1"),
        (
            Value("1,240 kg", number=1240.0, unit="kg"),
            Value("990 kg", number=990.0, unit="kg"),
            "−250 kg",
        ),
        (Value("76 %", number=0.76, unit="1"), Value("69 %", number=0.69, unit="1"), "−7 points"),
        (Value("20 of 41", number=20.0), Value("8 of 41", number=8.0), "−12"),
        (Value("a", number=None), Value("b", number=2.0), ""),
        (Value("1 m", number=1.0, unit="m"), Value("1 kg", number=1.0, unit="kg"), ""),
        (Value("1.00 A", number=1.0, unit="A"), Value("1.00 A", number=1.0001, unit="A"), ""),
    ],
)
def test_how_much_a_number_moved_is_said_in_its_own_unit(
    before: Value, after: Value, by: str
) -> None:
    assert how_much(before, after) == by


def test_markdown_cannot_be_made_by_a_venue() -> None:
    hostile = SOUND.replace(
        'note: "One was dropped."',
        'note: "[x](http://evil.example) <b>*a*</b> www.evil.example a@evil.example"',
    )
    text = as_markdown(compare(pack(), pack(sound=hostile)))
    line = next(line for line in text.splitlines() if "evil" in line)
    assert not any(mark in line.removeprefix("* ") for mark in ("[", "<", "*", "://", "www.", "@"))


def test_ages_of_checks_are_left_out() -> None:
    first = pack()
    older = replace(
        first,
        sections=tuple(
            replace(section, verified=aged(section.verified)) for section in first.sections
        ),
    )
    assert not compare(first, older)


def aged(verified: Verified | None) -> Verified | None:
    """The same check a year later."""
    return replace(verified, age_days=verified.age_days + 365, stale=True) if verified else None
