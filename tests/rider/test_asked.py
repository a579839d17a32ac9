"""Reading a rider: what it says in SI, and every mistake with its line."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import acts_differ, rider_of
from tests.fit.sample import Record

KEYS = {"act", "revision", "plays", "configuration", "stays_m", "clock", "requirements", "not_read"}


def read(text: str) -> Record:
    """A rider's record."""
    return rider_of(text, file="rider.yml", rules=RULES)


def problems(text: str) -> list[str]:
    """What a rider is refused for."""
    with pytest.raises(Refused) as refused:
        read(text)
    return [str(problem) for problem in refused.value.problems]


def test_a_rider_needs_no_more_than_a_name() -> None:
    assert read("act: Five Wet Dogs") == {
        "act": "Five Wet Dogs",
        "revision": "",
        "plays": "",
        "space": "",
        "configuration": "",
        "stays_m": None,
        "clock": None,
        "requirements": [],
        "not_read": [],
    }


@pytest.mark.parametrize("key", sorted(RULES))
def test_all_that_may_be_asked_is_found_by_its_name_as_the_guide_writes_it(key: str) -> None:
    assert not any("nothing that can be checked" in told for told in told_of(key))
    assert not any("nothing that can be checked" in told for told in told_of(key.upper()))


def told_of(key: str) -> list[str]:
    """What a rider that asks only to be told of something is refused for; nothing where it is."""
    try:
        read(f"act: A\nneeds:\n  - {{what: '{key}', tell: yes}}\n")
    except Refused as refused:
        return [str(problem) for problem in refused.problems]
    return []


def test_a_need_is_read_in_si_with_its_line_and_its_own_words() -> None:
    found = read("act: A\nneeds:\n  - {what: Stage width, at least: 40 ft, strictness: should}\n")[
        "requirements"
    ][0]
    assert (found["what"], found["low"], found["line"], found["need"], found["strictness"]) == (
        "stage width",
        12.192,
        3,
        "at least 40 ft",
        "should",
    )


def test_feet_inches_and_metric_are_both_read_between_two_values() -> None:
    found = read("""act: A\nneeds:\n  - {what: deck height, between: [3 ft, "1.5 m"]}\n""")[
        "requirements"
    ][0]
    assert (found["low"], found["high"]) == (0.9144, 1.5)


def test_alternatives_keep_their_parts() -> None:
    text = (
        "act: A\nneeds:\n  - any of:\n      - {what: dock height, at least: 1.1 m}\n      - {what:"
        " forklifts, at least: 1}\n"
    )
    found = read(text)["requirements"][0]
    assert found["title"] == "Dock height above the road or forklifts"
    assert [part["what"] for part in found["any"]] == ["dock height", "forklifts"]


@pytest.mark.parametrize("word", ["unknown", "Unknown", "?", '"?"'])
def test_an_amount_not_known_yet_may_be_written(word: str) -> None:
    text = f"act: A\nneeds:\n  - {{what: inputs, at least: {word}}}\n"
    assert read(text)["requirements"][0]["way"] == "unknown"


def test_one_end_not_known_yet_leaves_the_other_as_it_is() -> None:
    text = "act: A\nneeds:\n  - {what: deck height, between: [1 m, unknown]}\n"
    found = read(text)["requirements"][0]
    assert (found["way"], found["need"]) == ("unknown", "1 m to unknown")


def test_a_yes_not_known_yet_may_be_written() -> None:
    text = "act: A\nneeds:\n  - {what: haze, is: unknown}\n"
    assert read(text)["requirements"][0]["way"] == "unknown"


def test_a_level_without_its_terms_stays_without_them() -> None:
    found = read("act: A\nlevel: {at: 105 dB}\n")["requirements"][0]
    assert (found["weighting"], found["metric"], found["place"], found["over_s"]) == (
        "",
        "",
        "",
        None,
    )


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (
            "act: A\nneeds:\n  - {what: stage widht, at least: 12 m}\n",
            (
                "rider.yml:3:12 what: 'stage widht' is nothing that can be checked; did you mean"
                " 'stage width'? [need-unknown]"
            ),
        ),
        (
            "act: A\nneeds:\n  - {what: stage width}\n",
            (
                "rider.yml:3:12 what: 'stage width' does not say how much; write one of: at least,"
                " at most, between [need-unclear]"
            ),
        ),
        (
            "act: A\nneeds:\n  - {what: haze, at least: 2}\n",
            "rider.yml:3:12 what: 'haze' does not say how much; write one of: is [need-unclear]",
        ),
        (
            "act: A\nneeds:\n  - {what: stage width, at least: 12}\n",
            "rider.yml:3:35 at least: '12' needs a unit; write '12 m' or '12 ft' [unit-missing]",
        ),
        (
            "act: A\nneeds:\n  - {what: forklifts, at least: -1}\n",
            (
                "rider.yml:3:33 at least: '-1' is below zero, and a count cannot be; write it"
                " without the minus [count-negative]"
            ),
        ),
        (
            "act: A\nneeds:\n  - {what: deck height, between: [2 m, 1 m]}\n",
            (
                "rider.yml:3:34 between: '2 m' is more than the second; write the least first"
                " [need-unclear]"
            ),
        ),
        (
            "act: A\nneeds:\n  - {what: haze, is: yes, all of: [{what: smoke, is: yes}]}\n",
            (
                "rider.yml:3:35 all of stands beside what; write one of: what, any of, all of"
                " [need-unclear]"
            ),
        ),
        (
            "act: A\nneeds:\n  - {what: haze, is: yes, if: {what: roof, is: yes}, unless:"
            " {what: smoke, is: yes}}\n",
            ("rider.yml:3:62 unless stands beside if; write one of: if, unless [need-unclear]"),
        ),
        (
            "act: A\nneeds:\n  - {at least: 12 m}\n",
            (
                "rider.yml:3:5 what is missing here; write what is needed, or any of or all of with"
                " a list [missing-key]"
            ),
        ),
        (
            "act: A\npower:\n  - {for: sound, current: 63 A, within: 10 m}\n",
            (
                "rider.yml:3:41 within: '10 m' does not say of what; add of: with a place of the"
                " house [need-unclear]"
            ),
        ),
        (
            "act: A\npower:\n  - {for: sound}\n",
            (
                "rider.yml:3:11 for: 'sound' says no current, and a load on three phases cannot do"
                " without; add current: with the current on each phase [need-unclear]"
            ),
        ),
        (
            "act: A\npower:\n  - {for: sound, current: 63 A, count: 2}\n",
            (
                "rider.yml:3:40 count: '2' counts single-phase circuits, and this load is on three"
                " phases; add phases: single, or write a line for each feed of three phases"
                " [need-unclear]"
            ),
        ),
        (
            "act: A\nneeds:\n  - {what: deck height, at least: 1 m, at most: 2 m}\n",
            (
                "rider.yml:3:12 what: 'deck height' says at least and at most; write between for"
                " the least and the most [need-unclear]"
            ),
        ),
        (
            "act: A\nneeds:\n  - {what: stage width, at least: -3 m}\n",
            (
                "rider.yml:3:35 at least: '-3 m' is below zero; write it without the minus"
                " [number-out-of-range]"
            ),
        ),
        (
            "act: A\nstays on deck: -3 m\n",
            (
                "rider.yml:2:16 stays on deck: '-3 m' is below zero; write it without the minus"
                " [number-out-of-range]"
            ),
        ),
        (
            "act: A\nclock: {set: 90}\n",
            "rider.yml:2:14 clock.set: '90' needs a unit; write '90 min' [unit-missing]",
        ),
        (
            "act: A\nclock: {changeover parts: {patch: 4}}\n",
            (
                "rider.yml:2:35 clock.changeover parts.patch: '4' needs a unit; write '4 min'"
                " [unit-missing]"
            ),
        ),
    ],
)
def test_a_mistake_is_told_with_its_line_and_what_to_write(text: str, problem: str) -> None:
    assert problems(text) == [problem]


def test_all_mistakes_are_told_at_once() -> None:
    assert (
        len(
            problems(
                "act: A\nneeds:\n  - {what: x, at least: 1}\n  - {what: stage width, at least: 3"
                " kg}\n  - {what: haze, is: maybe}\n"
            )
        )
        == 3
    )


def test_two_riders_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="Two acts are called A; give each a name of its own"):
        acts_differ([read("act: A"), read("act: A")])


@given(st.text(max_size=300))
def test_no_text_makes_anything_but_a_rider_or_problems(text: str) -> None:
    try:
        keys, count = set(read(text)), 1
    except Refused as refused:
        keys, count = KEYS, len(refused.problems)
    assert keys == KEYS
    assert count > 0
