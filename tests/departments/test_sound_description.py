"""Sound: what the description refuses, in the words its author reads."""

import pytest

from builder.reading.problems import Refused
from tests.departments.sounding import FLOOR, MODELS, SUBS, sound


def refusal(text: str) -> str:
    """The one problem with a text."""
    with pytest.raises(Refused) as refused:
        sound(text)
    (problem,) = refused.value.problems
    return str(problem)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            MODELS + SUBS % ", arc: 60 deg, arc_radius: 9 m",
            (
                "has both an arc and an arc radius; keep one; the other follows from the length"
                " [arc-twice]"
            ),
        ),
        (
            MODELS + SUBS % ", arc: 181 deg",
            "subs[1].arc: '181 deg' cannot be: from zero to 180 deg is possible here; write what"
            " was measured, or leave the key out. Is the decimal point in the wrong place? Then"
            " write '18.1 deg' [impossible]",
        ),
        (MODELS + SUBS % ", arc_radius: 4.1 m", "shorter than half the line, 4.20 m"),
        (
            MODELS + SUBS % ", out_of_service: [9]",
            (
                "names sub 9 as out of service, and the line has 8; count from 1 at stage right to"
                " 8 [sub-unknown]"
            ),
        ),
        (MODELS.replace("lowest: 28 Hz", "lowest: 80 Hz"), "[band-backwards]"),
        (MODELS.replace("horizontal: 80 deg", "horizontal: 361 deg"), "from 1 deg to 360 deg"),
        (MODELS.replace("band: 8 kHz", "band: 500 Hz"), "[bands-not-rising]"),
        (
            MODELS.replace("width: 1 m", "width: 0 m"),
            "'0 m' cannot be: above zero and at most 20 m",
        ),
        (
            "drop_boxes: [{name: A, ways: 12, dead: [13]}]",
            "names way 13 as dead, and the box has 12",
        ),
        ("stock: [{name: M, kind: microphone, count: 4, working: 5}]", "has 5 working of 4"),
    ],
)
def test_what_cannot_be_is_refused_with_what_to_write_instead(text: str, words: str) -> None:
    assert words in refusal(text)


OTHER_POSITION = "{configurations: %s, place: Hall}"
NAMED = "name the configurations in which it is there [configuration-none]"
TAKEN = "one position is there in each configuration [configuration-taken]"


@pytest.mark.parametrize("of", ["mix", "monitor"])
@pytest.mark.parametrize(
    ("configurations", "words"),
    [
        ("[]", " names none"),
        ("none", ": 'none' should be a list"),
        ("unknown", ": 'unknown' should be a list"),
    ],
)
def test_what_stands_instead_says_in_which_configurations(
    of: str, configurations: str, words: str
) -> None:
    key = f"other_{of}_positions"
    told = refusal(f"{key}:\n  - configurations: {configurations}\n    place: Hall")
    assert told == f"sound.yml:2:21 {key}[1].configurations{words}; {NAMED}"


def test_what_stands_instead_is_never_told_that_an_empty_list_will_do() -> None:
    assert refusal("other_mix_positions: [{place: Hall}]") == (
        "sound.yml:1:23 other_mix_positions[1].configurations is missing here; name the"
        " configurations in which it is there [missing-key]"
    )


@pytest.mark.parametrize("of", ["mix", "monitor"])
def test_a_configuration_has_one_position_that_stands_instead(of: str) -> None:
    lines = ", ".join(OTHER_POSITION % names for names in ("[Thrust]", '[Round, "thrust"]'))
    assert refusal(f"other_{of}_positions: [{lines}]").endswith(
        f" other_{of}_positions[2].configurations[2]: 'thrust' is taken already, by"
        f" other_{of}_positions[1]; {TAKEN}"
    )


@pytest.mark.parametrize("of", ["mix", "monitor"])
def test_the_usual_position_takes_the_configurations_that_it_names(of: str) -> None:
    usual = f"{of}_position: {{place: Hall, configurations: [Thrust]}}\n"
    other = f"other_{of}_positions: [{OTHER_POSITION % '[Thrust]'}]"
    assert refusal(usual + other).endswith(
        f" other_{of}_positions[1].configurations[1]: 'Thrust' is taken already, by"
        f" {of}_position; {TAKEN}"
    )


def test_positions_in_configurations_of_their_own_are_read() -> None:
    lines = ", ".join(OTHER_POSITION % names for names in ("[Thrust, Round]", "[Flat]"))
    assert (
        len(
            sound(
                f"mix_position: {{place: Hall}}\nother_mix_positions: [{lines}]"
            ).other_mix_positions
        )
        == 2
    )


def test_a_radius_of_half_the_line_is_the_tightest_arc() -> None:
    assert sound(MODELS + SUBS % ", arc_radius: 4.2 m").subs


def test_unknown_none_and_not_stated_hangs_stay_three_things() -> None:
    standings = [sound(text).hangs for text in ("hangs: ?", "hangs: none", "subs: none")]
    assert len({str(standing) for standing in standings}) == 3


@pytest.mark.parametrize("wrong", ["ears: 0 m", "ears: -1 m"])
def test_ears_at_or_below_the_floor_are_refused(wrong: str) -> None:
    assert "cannot be: above zero and at most 5 m" in refusal(FLOOR.replace("ears: 1.65 m", wrong))


def test_more_boxes_than_the_maps_can_add_up_are_refused_with_their_number() -> None:
    line = (SUBS % "").removeprefix("subs: [").removesuffix("]\n").replace("count: 8", "count: 200")
    lines = ", ".join(line.replace("name: Subs", f"name: Subs {number}") for number in range(6))
    assert refusal(MODELS + f"subs: [{lines}]\n").endswith(
        "has 1,200 loudspeakers in hangs, subs and fills, and 1,000 is the most; describe fewer,"
        " and tell the rest in a note [too-many]"
    )


def test_more_areas_than_the_maps_can_draw_are_refused() -> None:
    area = "{name: A%d, kind: floor, ears: 1.2 m, corners: [" + ", ".join(
        f"{{across: {across}, depth: {depth}, height: 0 m}}"
        for across, depth in (("0 m", "1 m DS"), ("1 m SL", "1 m DS"), ("1 m SL", "2 m DS"))
    )
    areas = ", ".join(area % number + "]}" for number in range(41))
    assert refusal(f"audience: [{areas}]\n") == (
        "sound.yml:1:11 audience has 41 entries, and 40 is the most; describe fewer, and tell the"
        " rest in a note [too-many]"
    )
