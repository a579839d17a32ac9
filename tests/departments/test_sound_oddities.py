"""What is odd about loudspeakers, drop boxes and radio, and what is not."""

import pytest

from builder.departments.sound.oddities.loudspeakers import oddities, out_of_line
from builder.departments.sound.oddities.plugging import plugging_oddities
from builder.departments.sound.oddities.statements import statements
from tests.departments.sounding import HANGS, MODELS, ROOM, SUBS, sound

SPLIT = "splits: [{name: Split, kind: transformer, ways: 48, legs: 2}]\n"


def odd(text: str) -> list[str]:
    """What is odd about the loudspeakers of a text."""
    return [finding.sentence for finding in oddities(sound(text))]


def plugging(text: str) -> list[str]:
    """What is odd about what a show plugs into."""
    return [finding.sentence for finding in plugging_oddities(sound(text))]


def boxes(*each: str) -> str:
    """Drop boxes."""
    return "drop_boxes:\n" + "".join(f"  - {{{box}}}\n" for box in each)


def radio(*each: str, more: str = "") -> str:
    """Radio systems."""
    return "radio:\n" + "".join(f"  - {{{unit}}}\n" for unit in each) + more


def test_the_small_room_is_not_odd() -> None:
    assert odd(ROOM + HANGS + SUBS % "") == []


@pytest.mark.parametrize(
    ("weight", "told"),
    [
        (
            "3.1 kg",
            [
                "Line weighs 3.1 kg and is 600 mm × 250 mm: that is 21 kg/m² of its front, and most"
                " lie between 25 and 450. Is the decimal point in the wrong place? Then write"
                " '31 kg'."
            ],
        ),
        ("20 kg", []),
        ("44 lb", []),
        ("unknown", []),
    ],
)
def test_a_box_that_weighs_what_no_box_of_its_front_does(weight: str, told: list[str]) -> None:
    assert odd(MODELS.replace("weight: 20 kg", f"weight: {weight}")) == told


def test_a_box_ten_times_too_heavy_for_its_size_is_asked_about() -> None:
    deep = MODELS.replace("weight: 20 kg", "depth: 300 mm\n    weight: 200 kg")
    assert odd(deep) == [
        "Line weighs 200 kg and is 600 mm × 250 mm × 300 mm: that is 4,444 kg/m³, and most lie"
        " between 80 and 900. Is the decimal point in the wrong place? Then write '20 kg'."
    ]


def test_subs_may_touch_and_may_stand_on_end() -> None:
    assert odd(ROOM + SUBS.replace("1.2 m", "1 m") % "") == []
    assert odd(ROOM + SUBS.replace("1.2 m", "0.8 m") % "") == [
        "Subs stand 0.8 m apart, from middle to middle, and a Sub is 1 m wide: they would overlap."
        " Do they stand on end, 600 mm wide?"
    ]


def test_subs_nearer_than_any_side_of_them_have_their_gap_written() -> None:
    assert odd(ROOM + SUBS.replace("1.2 m", "0.5 m") % "") == [
        "Subs stand 0.5 m apart, from middle to middle, and a Sub is 1 m wide: they would overlap."
        " Is it the gap between two of them?"
    ]


def test_one_sub_has_no_neighbour() -> None:
    assert odd(ROOM + SUBS.replace("count: 8", "count: 1").replace("1.2 m", "0.5 m") % "") == []


@pytest.mark.parametrize(
    "splay", ["[2 deg, 4 deg]", "[3 deg, 3 deg]", "[4 deg, 4 deg]", "unknown", "[5 deg, 0 deg]"]
)
def test_a_splay_is_told_only_where_it_opens_towards_the_top(splay: str) -> None:
    told = odd(ROOM + HANGS.replace("[2 deg, 4 deg]", splay))
    assert bool(told) == (splay == "[5 deg, 0 deg]")


def test_a_splay_with_a_wide_box_in_the_middle_is_not_reversed() -> None:
    splay = "[1 deg, 6 deg, 2 deg, 3 deg]"
    assert odd(ROOM + HANGS.replace("[2 deg, 4 deg]", splay).replace("boxes: 3", "boxes: 5")) == []


@pytest.mark.parametrize(
    ("values", "found"),
    [
        ([100, 90, 9, 90, 80], (1, 2, 3)),
        ([100, 90, 90, 900, 80], (2, 3, 4)),
        ([130, 60, 50, 100], (0, 2, 3)),
        ([130, 100, 90, 90, 80], None),
        ([100, 80, 95, 90], None),
        ([90, 9], None),
        ([], None),
        ([40, 100, 90], None),
    ],
)
def test_coverage_goes_one_way_or_a_band_is_out_of_line(
    values: list[float], found: tuple[int, int, int] | None
) -> None:
    assert out_of_line(values) == found


def test_a_hang_that_took_the_place_of_one_out_of_service_is_not_odd() -> None:
    row = HANGS[len("hangs: [{") : -len("}]\n")]
    other = row.replace("name: Left", "name: New")
    both = f"hangs: [{{{row}, condition: out of service}}, {{{other}}}]\n"
    assert odd(ROOM + both) == []
    assert odd(ROOM + both.replace(", condition: out of service", "")) == [
        "Left and New are at one spot, 4 m SL, 1 m DS, 5 m up. Was a line copied, or is a side, SL"
        " or SR, US or DS, written wrong?"
    ]


def test_drop_boxes_one_after_the_other_are_not_odd() -> None:
    text = SPLIT + boxes(
        "name: A, ways: 16, first_channel: 1", "name: B, ways: 32, first_channel: 17"
    )
    assert plugging(text) == []


def test_a_drop_box_that_reaches_one_channel_too_far_is_told() -> None:
    text = SPLIT + boxes(
        "name: A, ways: 16, first_channel: 1", "name: B, ways: 33, first_channel: 16"
    )
    assert plugging(text) == [
        "Drop boxes A (1 to 16) and B (16 to 48) both arrive on channel 16 of the split. Is a first"
        " channel mistyped, or are they two boxes on the same cores?"
    ]
    past = SPLIT + boxes("name: A, ways: 33, first_channel: 17")
    assert plugging(past) == [
        "Drop box A arrives on channels 17 to 49, and Split has 48 ways. Is its first channel, or"
        " the number of its ways, mistyped?"
    ]


@pytest.mark.parametrize(
    "second",
    [
        "name: B, ways: 8, first_channel: unknown",
        "name: B, ways: 8",
        "name: B, ways: 8, first_channel: 1, condition: out of service",
    ],
)
def test_a_drop_box_without_channels_or_out_of_service_takes_none(second: str) -> None:
    assert plugging(SPLIT + boxes("name: A, ways: 16, first_channel: 1", second)) == []


def test_with_two_splits_drop_boxes_may_have_the_same_channels() -> None:
    two = SPLIT.replace("}]", "}, {name: Other, kind: passive, ways: 24, legs: 2}]")
    text = two + boxes("name: A, ways: 16, first_channel: 1", "name: B, ways: 16, first_channel: 1")
    assert plugging(text) == []


def test_a_box_within_a_longer_one_is_told_beside_it() -> None:
    text = SPLIT + boxes(
        "name: A, ways: 40, first_channel: 1",
        "name: B, ways: 2, first_channel: 3",
        "name: C, ways: 4, first_channel: 9",
    )
    assert [sentence.split(" both")[0] for sentence in plugging(text)] == [
        "Drop boxes A (1 to 40) and B (3 to 4)",
        "Drop boxes A (1 to 40) and C (9 to 12)",
    ]


def test_a_frequency_within_its_range_is_not_odd_at_its_ends() -> None:
    unit = "name: R, kind: microphone, channels: 2, tunes: {low: 470 MHz, high: 534 MHz}, on: [470 MHz, 534 MHz]"  # noqa: E501
    assert plugging(radio(unit)) == []


def test_a_frequency_outside_its_range_is_told_with_what_it_may_be() -> None:
    unit = "name: R, kind: microphone, channels: 1, tunes: {low: 470 MHz, high: 534 MHz}, on: [4.8 GHz]"  # noqa: E501
    assert plugging(radio(unit)) == ["R is set to 4.8 GHz, and it tunes from 470 MHz to 534 MHz."]
    kilo = unit.replace("4.8 GHz", "48.2 MHz")
    assert plugging(radio(kilo)) == [
        "R is set to 48.2 MHz, and it tunes from 470 MHz to 534 MHz. Is the decimal point in the"
        " wrong place? Then write '482 MHz'."
    ]


TELEVISION = "spectrum: {television: [{low: 502 MHz, high: 510 MHz}]}\n"


def test_a_frequency_in_television_is_told_but_not_at_its_edge_or_out_of_service() -> None:
    unit = "name: R, kind: in-ear, channels: 1, on: [%s]"
    assert plugging(radio(unit % "503.3 MHz", more=TELEVISION)) == [
        "R is set to 503.3 MHz, and television takes 502 MHz to 510 MHz by this file's own list. Is"
        " a digit mistyped, or is the list old?"
    ]
    assert plugging(radio(unit % "510 MHz", more=TELEVISION)) == []
    out = unit % "503.3 MHz" + ", condition: out of service"
    assert plugging(radio(out, more=TELEVISION)) == []


def test_one_frequency_on_two_systems_is_told_once() -> None:
    first = "name: R, kind: in-ear, channels: 1, on: [503.300 MHz]"
    second = "name: S, kind: microphone, channels: 2, on: [503300 kHz, 504 MHz]"
    assert plugging(radio(first, second)) == [
        "R and S are both set to 503300 kHz. On air at the same time, they are not heard apart. Is"
        " a digit mistyped?"
    ]
    assert plugging(radio(first, second.replace("503300", "503325"))) == []


def test_a_raked_floor_states_no_step_to_the_deck() -> None:
    assert [(each.fact, each.text) for each in statements(sound(ROOM))] == [
        ("step between deck and floor", "1 m down")
    ]
    raked = ROOM.replace("depth: 14 m DS, height: 1 m down", "depth: 14 m DS, height: 1 m up")
    assert list(statements(sound(raked))) == []
