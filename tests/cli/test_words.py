"""What the commands print and take, of values made by hand: no venue is read here."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import click
import pytest

from builder.cautions import ELECTRICITY, EVERYWHERE
from builder.cli.books import echo_outlook
from builder.cli.carrying import day_of, write_asked
from builder.cli.fit import coloured, exit_with, tell_left_out, tell_lines_left_out
from builder.cli.net import refused_by_the_system, worked_at
from builder.cli.next_step import HERE, argument, at, command
from builder.cli.phases import by_phase, lines, one_stage, read_loads
from builder.cli.printing import exit_with_problems, finding_record, print_findings
from builder.cli.stock import WORDS, one_of, settings, whole_number
from builder.cli.telling import tell_in
from builder.departments.power.outlets.extra import Extra
from builder.files import Shows
from builder.formulas.phases import Placing
from builder.pack import Confirmed, Finding, Level, Pack, Place, Revision
from builder.reading.problems import Problem, Where
from builder.shows.booked import Books

Printed = pytest.CaptureFixture[str]
PROBLEM = Problem(Where("a.yml", 3, 5), "k", "v", "is wrong", "code-x", "mend it")


@pytest.mark.parametrize(
    ("written", "loads"),
    [
        (("16 A",), [("1.", 16.0)]),
        (("keys: 6 A", "2 x 10 A"), [("1. keys", 6.0), ("2.", 10.0), ("3.", 10.0)]),
        (("fans: 2 × 3 A",), [("1. fans", 3.0), ("2. fans", 3.0)]),
        (("200 x 1 A",), [(f"{number}.", 1.0) for number in range(1, 201)]),
    ],
)
def test_loads_are_read_each_with_its_number_and_name(
    written: tuple[str, ...], loads: list[tuple[str, float]]
) -> None:
    assert list(read_loads(written)) == loads


@pytest.mark.parametrize(
    ("written", "words"),
    [
        (("",), "LOADS must be written like '16 A' or '4 x 10 A', got ''"),
        (("0 A",), "LOADS must be above 0 A and 200 in all at most, got '0 A'"),
        (("0 x 1 A",), "LOADS must be above 0 A and 200 in all at most, got '0 x 1 A'"),
        (("201 x 1 A",), "LOADS must be above 0 A and 200 in all at most, got '201 x 1 A'"),
        (("199 x 1 A", "2 x 1 A"), "LOADS must be above 0 A and 200 in all at most, got '2 x 1 A'"),
        (("16",), "LOADS: '16' "),
    ],
)
def test_loads_that_cannot_be_read_are_said(written: tuple[str, ...], words: str) -> None:
    with pytest.raises(click.UsageError) as refused:
        list(read_loads(written))
    assert refused.value.message.startswith(words)


def extra(verdict: str, *, evenest: bool = True, unmeasured: tuple[str, ...] = ()) -> Extra:
    """An answer for two loads on a switch of two phases."""
    phase_of = (("1. keys", "L1"), ("2.", "L2")) if verdict == "placed" else ()
    placing = Placing(verdict, "too much", phase_of, (), evenest, 3)  # type: ignore[arg-type]
    return Extra(placing, ("L1", "L2"), (30.0, 40.04), (14.0, 34.0), ("Board", "Board"), unmeasured)


ASKED = [("1. keys", 16.0), ("2.", 6.5)]
FREE = "Switch has free for hours: L1 30.0 A, L2 40.0 A"


def test_a_placing_is_told_with_what_is_left_and_what_binds_it() -> None:
    assert list(lines("Switch", ASKED, extra("placed"))) == [
        FREE,
        "  1. keys  16 A on L1",
        "  2.       6.5 A on L2",
        "Left then: L1 14.0 A, L2 34.0 A, bound by Board",
        "No placing is more even.",
        ELECTRICITY,
    ]


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (
            extra("placed", evenest=False),
            "A more even placing may exist; the search met its bound.",
        ),
        (extra("impossible"), "They do not fit: too much."),
        (extra("not found within the bound"), "Not proven either way: too much."),
        (
            extra("impossible", unmeasured=("Oven", "Fan")),
            "Less what Oven, Fan draws, which nobody has measured.",
        ),
    ],
)
def test_what_is_not_sure_of_a_placing_is_said(found: Extra, words: str) -> None:
    told = list(lines("Switch", ASKED, found))
    assert told[0] == FREE
    assert words in told
    assert ("No placing is more even." in told) is False
    assert any(line.startswith("Left then") for line in told) == words.startswith("A more even")


def test_amperes_by_phase() -> None:
    assert by_phase(("L1", "L3"), (1.25, 10.0)) == "L1 1.2 A, L3 10.0 A"


class Stage:
    """A venue, or a space of it, with the names in its circuits and those that it has alone."""

    def __init__(self, name: str, *spaces: "Stage") -> None:
        self.name, self.spaces, self.venue = name, spaces, self
        self.descriptions: dict[str, object] = {}
        self.own: dict[str, object] = {}


def test_a_house_of_one_stage_takes_no_space_and_one_of_several_only_its_own() -> None:
    alone = Stage("House")
    assert one_stage(alone, "x", None) is alone  # type: ignore[arg-type, comparison-overlap]
    with pytest.raises(click.UsageError, match="The house has one stage, so --space says nothing"):
        one_stage(alone, "x", "Hall")  # type: ignore[arg-type]
    hall, studio = Stage("Hall"), Stage("Studio B")
    house = Stage("House", hall, studio)
    assert one_stage(house, "x", "studio b") is studio  # type: ignore[arg-type, comparison-overlap]
    assert one_stage(house, "x", None) is hall  # type: ignore[arg-type, comparison-overlap]
    with pytest.raises(click.UsageError, match="No space is named 'Yard'; the house has: Hall; S"):
        one_stage(house, "x", "Yard")  # type: ignore[arg-type]


def test_verdicts_are_coloured_where_they_begin_a_line() -> None:
    text = "  X short: power\n  + fits: width\nX short: no\n"
    found = coloured(text)
    assert click.unstyle(found) == text
    assert found.splitlines()[0] == "  " + click.style("X short", fg="red", bold=True) + ": power"
    assert found.splitlines()[1] == "  " + click.style("+ fits", fg="green", bold=True) + ": width"
    assert found.splitlines()[2] == "X short: no"


@pytest.mark.parametrize(("count", "told"), [(1, "1 problem."), (2, "2 problems.")])
def test_riders_that_cannot_be_read_end_with_their_count(
    capsys: Printed, count: int, told: str
) -> None:
    with pytest.raises(SystemExit) as ended:
        exit_with([(Path("riders/a.yml"), PROBLEM)] * count)
    assert ended.value.code == 1
    *problems, last = capsys.readouterr().err.splitlines()
    assert problems == ["riders/a.yml:3:5 k: 'v' is wrong; mend it [code-x]"] * count
    assert last == f"{told} Nothing was checked."


def test_what_of_riders_is_left_out_is_said_and_nothing_where_nothing_is(capsys: Printed) -> None:
    tell_left_out([])
    tell_lines_left_out([])
    assert capsys.readouterr().err == ""
    two = [(Path("riders/a.yml"), PROBLEM)] * 2
    tell_left_out(two)
    assert capsys.readouterr().err.splitlines()[-1] == (
        "Not judged: riders/a.yml. The answer is only for the others."
    )
    tell_lines_left_out(two)
    assert capsys.readouterr().err.splitlines()[-1] == (
        "Not judged in riders/a.yml: what cannot be read. The rest of it is judged."
    )


def test_the_next_command_names_a_venue_unless_it_is_taken_anyway() -> None:
    assert at(HERE) == ()
    assert at(Path("other")) == ("--venue", Path("other"))
    assert argument(Path("-a")) == "./-a"
    assert argument(Path("a")) == "a"
    assert command("fit", "it's", Path("x")) == "housepack fit 'it'\"'\"'s' x"


def test_problems_end_with_their_count_and_name_their_folder(capsys: Printed) -> None:
    missing = replace(PROBLEM, where=Where("venue"), code="folder-missing")
    with pytest.raises(SystemExit) as ended:
        exit_with_problems((PROBLEM, missing), Path("shed/venue"), "text")
    assert ended.value.code == 1
    assert capsys.readouterr().err.splitlines() == [
        "shed/venue/a.yml:3:5 k: 'v' is wrong; mend it [code-x]",
        "shed/venue k: 'v' is wrong; mend it [folder-missing]",
        "2 problems. Nothing was built.",
    ]
    with pytest.raises(SystemExit):
        exit_with_problems((PROBLEM,), Path("venue"), "text")
    assert capsys.readouterr().err.splitlines()[-1] == "1 problem. Nothing was built."
    with pytest.raises(SystemExit):
        exit_with_problems((PROBLEM,), Path("venue"), "json")
    assert '"line": 3' in capsys.readouterr().out


def pack(*findings: Finding, **more: object) -> Pack:
    """A pack of findings."""
    found = Pack("The Shed", Revision("7", "2026-05-10", "tm", ""), (), findings)
    return replace(found, **more)  # type: ignore[arg-type]


DANGER = Finding(Level.DANGER, "code-x", "It falls.", place=Place("stage.yml", 4))
NOTE = Finding(Level.NOTE, "code-y", "Odd.", asks_about="9", confirm_on="stage.yml, decks[1]")


@pytest.mark.parametrize(
    ("found", "problems", "told"),
    [
        (
            pack(DANGER, NOTE, NOTE),
            2,
            [
                "venue/stage.yml:4: danger: It falls. [code-x]",
                "note: Odd. [code-y]",
                "    If it is right, write at stage.yml, decks[1]: confirmed: {what: code-y,"
                " value: 9, by: ROLE, on: 2026-05-10}",
                "note: Odd. [code-y]",
                "    If it is right, write at stage.yml, decks[1]: confirmed: {what: code-y,"
                " value: 9, by: ROLE, on: 2026-05-10}",
                EVERYWHERE,
                "The Shed, revision 7: 2 problems in shows; 1 danger, 0 cautions, 2 notes.",
            ],
        ),
        (pack(), 1, ["The Shed, revision 7: 1 problem in shows; 0 dangers, 0 cautions, 0 notes."]),
        (
            pack(confirmed=(Confirmed(NOTE, "tm", "2026-01-01"),)),
            0,
            ["The Shed, revision 7: no problems; 0 dangers, 0 cautions, 0 notes, 1 confirmed."],
        ),
    ],
)
def test_findings_are_printed_with_place_and_count(
    capsys: Printed, found: Pack, problems: int, told: list[str]
) -> None:
    print_findings(found, Path("venue"), problems=problems)
    assert capsys.readouterr().out.splitlines() == told


def test_a_finding_without_a_place_has_line_0_for_programs() -> None:
    assert (finding_record(NOTE)["file"], finding_record(NOTE)["line"]) == ("", 0)
    assert (finding_record(DANGER)["file"], finding_record(DANGER)["line"]) == ("stage.yml", 4)


def test_words_of_an_order_are_one_line_that_can_be_seen() -> None:
    assert WORDS.convert(" a \n b ", None, None) == "a b"
    for text in (" ", "a\u202eb"):
        with pytest.raises(click.BadParameter):
            WORDS.convert(text, None, None)


def test_keys_with_values_are_taken_apart_at_the_first_sign() -> None:
    assert settings(["a=1", "b=c=d"]) == {"a": "1", "b": "c=d"}
    for word in ("a", "=1", "a="):
        with pytest.raises(click.UsageError, match="is no KEY=VALUE"):
            settings([word])
    assert whole_number("12") == 12
    with pytest.raises(click.UsageError, match="'x' is no whole number"):
        whole_number("x")


def test_a_count_and_a_unit_are_not_given_both() -> None:
    one_of(1, None)
    one_of(None, 0)
    one_of(None, None)
    with pytest.raises(click.UsageError):
        one_of(0, 0)


def test_json_is_printed_plain_and_only_text_is_painted(capsys: Printed) -> None:
    tell_in("text", "a\n", painted=str.upper)
    tell_in("markdown", "b\n", painted=str.upper)
    tell_in("json", '{"c": 1}\n', painted=str.upper)
    assert capsys.readouterr().out == 'A\nb\n{"c": 1}\n'


def test_nothing_is_written_without_a_yes(
    capsys: Printed, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    def confirm(words: str) -> bool:
        asked.append(words)
        return False

    monkeypatch.setattr(click, "confirm", confirm)
    assert write_asked(tmp_path, [], dry_run=True, yes=True) is False
    assert asked == []
    with pytest.raises(SystemExit) as ended:
        write_asked(tmp_path, [], dry_run=False, yes=False)
    assert (ended.value.code, asked) == (1, ["Write this?"])
    assert capsys.readouterr().out == "Nothing was written.\nNothing was written.\n"


def test_the_day_of_a_change_is_the_one_given() -> None:
    assert day_of({"day": datetime(2026, 3, 4, tzinfo=UTC)}).isoformat() == "2026-03-04"
    assert abs((day_of({"day": None}) - datetime.now(UTC).date()).days) <= 1


def test_a_file_that_no_system_writes_is_named() -> None:
    assert refused_by_the_system(PermissionError(13, "x", "a", None, "b")).startswith("b ")
    assert refused_by_the_system(PermissionError(13, "x", "a")).startswith("a ")
    assert refused_by_the_system(OSError("x")).startswith("A file ")


def test_what_a_command_was_at_work_on_is_named() -> None:
    context = click.Context(click.Command("check"), info_name="check")
    failure = KeyError("x")
    assert worked_at(context, failure) == "housepack check"
    context.params = {"venue": Path("venue")}
    assert worked_at(context, failure) == "venue"
    context.params = {"riders": (Path("a.yml"), Path("b.yml"))}
    assert worked_at(context, failure) == "a.yml"
    failure.add_note("stage.yml")
    assert worked_at(context, failure) == "a.yml"
    context.params = {"venue": Path("venue"), "riders": ()}
    assert worked_at(context, failure) == "venue/stage.yml"
    bare = click.Context(click.Command("x"))
    assert worked_at(bare, KeyError("x")) == "housepack"


def test_files_beside_the_shows_that_are_none_are_named(capsys: Printed) -> None:
    echo_outlook(Books(), Shows({}, (), ("notes.txt", "old.yaml")), pack(), None, Path("venue"))  # type: ignore[arg-type]
    assert capsys.readouterr().out == (
        "Not read, for they do not end in .yml: notes.txt, old.yaml.\n"
    )
