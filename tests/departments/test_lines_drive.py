"""The drive plan: ways through, what moves at a hand-over, and consoles that reach nothing."""

from datetime import date

import pytest

from builder.department import Surroundings
from builder.exchange import Drive, Offers
from builder.pack import Finding, Level
from builder.stating import Ageing
from tests.departments.lined import (
    DOCK,
    MIX,
    STAGE,
    codes,
    figure,
    findings,
    item,
    line,
    lines,
    published,
)

SWITCHER = "switchers: [{name: S, place: Mix, inputs: 4, ways: 8, formats: [AES3, analogue]}]\n"


def consoles(*each: str) -> str:
    """A list of console positions."""
    return "consoles:\n" + "".join(f"  - {{{words}}}\n" for words in each)


def can_send(text: str) -> tuple[str, str]:
    """What the first console can send, and what limits it."""
    found = figure(text, "console", "can-send")
    return (found.value.text if found.value else f"needs {', '.join(found.missing)}"), found.note


def test_a_console_sends_as_many_ways_as_the_narrowest_part_lets_pass() -> None:
    text = lines(line("Drive", more="working: 6, dead: [1, 2]", ways=8)) + SWITCHER
    assert can_send(
        text + consoles("name: C, place: Stage, ways: 12, by: [Drive], switcher: S, input: 1")
    ) == ("6", "by Drive")
    assert can_send(
        text + consoles("name: C, place: Stage, ways: 4, by: [Drive], switcher: S, input: 1")
    ) == ("4", "by the position")


def test_a_dead_switcher_and_a_dead_line_behind_it_let_nothing_through() -> None:
    on = consoles("name: C, place: Stage, ways: none, by: [Drive], switcher: S, input: 1")
    drive = line("Drive", more="working: 8", ways=8)
    dead = SWITCHER.replace("name: S", "name: S, condition: out of service")
    assert can_send(lines(drive) + dead + on) == ("0", "by S")
    more = line("On", more="condition: out of service", ways=8)
    by = SWITCHER.replace("name: S", "name: S, goes_on_by: On")
    assert can_send(lines(drive, more) + by + on) == ("0", "by On")


def test_lines_beside_each_other_are_one_part() -> None:
    text = lines(line("L", more="working: 2", ways=2), line("R", more="working: 2", ways=2))
    assert can_send(text + consoles("name: C, place: Stage, ways: none, by: [L, R]")) == (
        "4",
        "by L, R",
    )


def test_what_a_part_does_not_say_makes_the_answer_a_most() -> None:
    text = (
        lines(line("Drive", ways=8))
        + SWITCHER
        + consoles("name: C, place: Stage, ways: none, by: [Drive], switcher: S, input: 1")
    )
    assert can_send(text) == ("at most 8", "by S; no count for Drive")


@pytest.mark.parametrize("ways", ["ways: unknown, ", "ways: about 12, ", ""])
def test_a_position_whose_ways_nobody_knows_or_says_makes_the_answer_a_most(ways: str) -> None:
    text = lines(line("Drive", more="working: 6, dead: [1, 2]", ways=8))
    console = f"name: C, place: Stage, {ways}by: [Drive]"
    assert can_send(text + consoles(console)) == (
        "at most 6",
        "by Drive; no count for the position",
    )


def test_without_any_count_the_figure_says_what_it_needs() -> None:
    console = "name: C, place: Mix, by: none"
    assert can_send(consoles(f"{console}, ways: none"))[0] == "needs a line or a switcher"
    assert can_send(consoles(console))[0] == "needs the position"


def test_a_console_beside_its_switcher_needs_no_line() -> None:
    assert codes(SWITCHER + consoles("name: C, place: Mix, switcher: S, input: 1")) == []


@pytest.mark.parametrize(
    ("by", "level", "words"),
    [
        ("by: none", Level.CAUTION, "C: no line leads from it to the house system."),
        (
            "by: ?",
            Level.NOTE,
            "C: the house does not say by which line it drives the house system.",
        ),
        (
            "note: New.",
            Level.NOTE,
            "C: the house does not say by which line it drives the house system.",
        ),
    ],
)
def test_a_console_without_a_drive_line_is_a_finding(by: str, level: Level, words: str) -> None:
    (found,) = findings(SWITCHER + consoles(f"name: C, place: Stage, {by}"))
    assert (found.code, found.level, found.sentence, found.subject) == (
        "console-without-drive",
        level,
        words,
        "lines.console.c",
    )


def test_a_console_whose_only_line_is_out_of_service_has_none() -> None:
    text = lines(line("Drive", more="working: 8, condition: out of service", ways=8)) + consoles(
        "name: C, place: Stage, by: [Drive]"
    )
    (found,) = findings(text)
    assert (
        found.sentence
        == "C: Drive does not work, and no other line leads from it to the house system."
    )
    assert (
        codes(lines(line("Drive", ways=8)) + consoles("name: C, place: Stage, by: [Drive]")) == []
    )


def test_a_drive_line_ends_where_the_console_is() -> None:
    text = lines(line("Drive", ways=8)) + consoles("name: C, place: Dock, by: [Drive]")
    (found,) = findings(text)
    assert found.code == "drive-line-elsewhere"
    assert (
        found.sentence
        == "C is at Dock, but Drive, which it is said to send by, ends at Stage and Mix."
    )


def test_one_format_in_common_is_enough() -> None:
    assert codes(SWITCHER + consoles("name: C, place: Mix, switcher: S, sends: [MADI, AES3]")) == []
    (found,) = findings(
        SWITCHER + consoles("name: C, place: Mix, switcher: S, sends: [MADI, AES67]")
    )
    assert found.code == "drive-format-differs"
    assert found.sentence == "C sends MADI or AES67, but S takes AES3 or analogue only."


def test_an_input_of_a_switcher_is_for_one_console() -> None:
    two = (
        "name: A, place: Mix, switcher: S, input: 1",
        "name: B, place: Mix, switcher: S, input: %d",
    )
    assert codes(SWITCHER + consoles(*two) % 2) == []
    (found,) = findings(SWITCHER + consoles(*two) % 1)
    assert found.code == "switcher-input-twice"
    assert (
        found.sentence
        == "A and B both come in on input 1 of S. Plugs move between them, in the dark."
    )


@pytest.mark.parametrize(
    ("second", "moves"),
    [
        ("switcher: S, input: 2", "the switcher alone, input 1 to 2"),
        ("switcher: S, input: 1", "plugs: both come in on input 1 of S"),
        ("switcher: T, input: 1", "T is heard in place of S"),
        ("switcher: none", "plugs: B has no switcher"),
        ("switcher: S", ""),
        ("switcher: ?", ""),
    ],
)
def test_what_moves_at_a_hand_over(second: str, moves: str) -> None:
    text = "switchers: [{name: S, place: Mix, inputs: 4}, {name: T, place: Mix, inputs: 2}]\n"
    text += consoles("name: A, place: Mix, switcher: S, input: 1", f"name: B, place: Mix, {second}")
    text += (
        "hand_over: [{console: A, when: doors}, {console: B, when: the opener}, {console: B, when:"
        " later}]\n"
    )
    turns = published(text).section.of_kind("turn")
    assert [turn.text("change") for turn in turns] == [
        "nothing: it is heard first",
        moves,
        "nothing: it is heard already",
    ]


def test_a_talkback_channel_that_no_station_has_is_a_note() -> None:
    text = (
        "talkback_channels: [{name: A}, {name: B}]\ntalkback_stations: [{place: Mix, kind: socket,"
        " count: 1, channels: [A]}]\n"
    )
    (found,) = findings(text)
    assert (found.code, found.level, found.sentence) == (
        "channel-without-station",
        Level.NOTE,
        "No talkback station has channel B.",
    )
    assert (
        codes(
            "talkback_channels: [{name: A}]\ntalkback_stations: [{place: Mix, kind: socket, count:"
            " 1}]\n"
        )
        == []
    )


def test_rates_of_a_network_are_in_bits_a_second() -> None:
    network = item(
        "networks: [{name: N, owner: office, internet_down: 500 Mbit/s, internet_up: none}]\n",
        "network",
    )
    assert network.number("internet_down") == 5e8
    assert network.number("internet_up") is None


DRIVES = """switchers: [{{name: Switch, place: Mix, inputs: 2, ways: 8, formats: [AES3, analogue]{converts}}}]
consoles: [{{name: Desk, place: Mix, sends: [{sends}], ways: 8, switcher: Switch, input: 1{reaches}}}]
"""  # noqa: E501


def deaf(sends: str, converts: str = "", reaches: str = "") -> list[Finding]:
    """What is told of drive lines, where left takes AES3 and the fills analogue."""
    drives = (Drive("Left", ("AES3",)), Drive("Fills", ("analogue", "AES67")))
    around = Surroundings(
        Offers(spots=(STAGE, MIX, DOCK), drives=drives), Ageing(date(2026, 6, 1), 365), "metric"
    )
    text = DRIVES.format(
        sends=sends,
        converts=f", converts: {converts}" if converts else "",
        reaches=f", reaches: [{reaches}]" if reaches else "",
    )
    return [
        finding
        for finding in published(text, around).findings
        if finding.code == "drive-signal-differs"
    ]


def test_a_drive_line_that_takes_none_of_what_a_console_sends_is_told() -> None:
    (told,) = deaf("AES3", converts="no")
    assert told.level is Level.CAUTION
    assert (
        told.sentence
        == "Desk sends AES3, and Fills takes analogue or AES67 only. Say what changes the format."
    )


def test_where_nobody_says_whether_the_switcher_changes_formats_it_is_a_note_and_where_it_does_nothing() -> (  # noqa: E501
    None
):
    (told,) = deaf("AES3")
    assert told.level is Level.NOTE
    assert told.sentence.endswith("Say whether Switch changes the format (converts).")
    assert deaf("AES3", converts="yes") == []


def test_what_reaches_no_deaf_line_is_no_finding() -> None:
    assert deaf("AES3, analogue", converts="no") == []
    assert deaf("AES3", converts="no", reaches="Left") == []
