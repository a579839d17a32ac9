"""What whoever may confirms, when it lapses, and what nobody can confirm."""

import json
from datetime import date
from html import unescape
from pathlib import Path

import pytest
from click.testing import CliRunner

from builder.cli import main
from builder.confirming import settled
from builder.departments.access.description import Access
from builder.departments.house.description import House
from builder.departments.rigging.description import Rigging
from builder.departments.stage.description import Stage
from builder.pack import Finding, Level
from builder.pack_json import from_json, to_json
from builder.pipeline import document_of, finding_of, pack_of, venue_of
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.reading.review import review
from builder.reading.written import DepartmentFile
from builder.render.markdown import render
from builder.stating import place
from builder.stock.wording import written

ON = date(2026, 6, 1)
DOCK = "docks: [{name: Dock, door_width: 30 m, door_height: 9 m, confirmed: CONFIRMED}]\n"
WIDTH = "{what: implausible, value: 30 m, by: stage manager, on: 2026-05-01}"
HEIGHT = "{what: implausible, value: 9 m, by: head rigger, on: 2026-05-02}"


def access(text: str) -> Access:
    """An access file."""
    return read(text, file="access.yml", kind=Access)


def of(file: DepartmentFile) -> list[Finding]:
    """What the text of a file gives cause to look at again, as findings."""
    return [finding_of(remark) for remark in review(file, on=ON, stale_after_days=365)]


def still_open(file: DepartmentFile) -> list[str]:
    """The sentences of what still stands, with codes."""
    return [f"{each.sentence} [{each.code}]" for each in settled(of(file), [file]).open]


def test_a_confirmed_value_is_asked_no_more_and_keeps_who_and_when() -> None:
    file = access(DOCK.replace("CONFIRMED", f"[{WIDTH}, {HEIGHT}]"))
    result = settled(of(file), [file])
    assert result.open == ()
    assert [(each.by, each.on) for each in result.confirmed] == [
        ("stage manager", "2026-05-01"),
        ("head rigger", "2026-05-02"),
    ]
    assert result.confirmed[0].finding.sentence == (
        "Door width is '30 m'. That is unusual here: most lie between 800 mm and 8.00 m."
    ), "what is confirmed asks nothing"


def test_one_confirmation_needs_no_list() -> None:
    file = access(DOCK.replace("CONFIRMED", WIDTH).replace("9 m", "3 m"))
    assert still_open(file) == []


def test_what_is_not_confirmed_says_where_it_could_be() -> None:
    file = access(DOCK.replace("CONFIRMED", WIDTH))
    (finding,) = settled(of(file), [file]).open
    assert (finding.asks_about, finding.confirm_on) == ("9 m", "docks[1] (Dock)")


def test_a_confirmation_lapses_when_the_value_changes() -> None:
    file = access(
        DOCK.replace("CONFIRMED", WIDTH).replace("30 m,", "31 m,", 1).replace("9 m", "3 m")
    )
    assert still_open(file) == [
        "Door width is '31 m'. That is unusual here: most lie between 800 mm and 8.00 m. Is the"
        " decimal point in the wrong place? Then write '3.1 m'. [implausible]",
        "The confirmation of 'implausible' was for '30 m', and now it is '31 m'. It counts for"
        " nothing until somebody looks again and quotes that. [confirmation-lapsed]",
    ]


def test_white_space_is_no_change_of_the_value() -> None:
    file = access(
        DOCK.replace("CONFIRMED", WIDTH.replace("30 m", '" 30  m"')).replace("9 m", "3 m")
    )
    assert still_open(file) == []


def test_a_confirmation_without_its_value_counts_for_nothing() -> None:
    file = access(
        DOCK.replace("CONFIRMED", WIDTH.replace("value: 30 m, ", "")).replace("9 m", "3 m")
    )
    assert still_open(file)[-1] == (
        "The confirmation of 'implausible' quotes no value, so nobody can tell whether it still"
        " holds. Add value: '30 m'. [confirmation-lapsed]"
    )


def test_a_confirmation_of_nothing_is_told_with_what_there_is() -> None:
    file = access(DOCK.replace("CONFIRMED", WIDTH.replace("implausible", "implosible")))
    assert still_open(file)[-1] == (
        "The confirmation of 'implosible' confirms nothing: there is no such finding here. There is"
        " 'implausible'. [confirmation-idle]"
    )


def test_a_confirmation_on_a_mended_line_is_told() -> None:
    file = access(
        DOCK.replace("CONFIRMED", WIDTH).replace("30 m,", "3 m,", 1).replace("9 m", "3 m")
    )
    assert still_open(file) == [
        "The confirmation of 'implausible' confirms nothing: there is no such finding here. Delete"
        " it, or mend its code. [confirmation-idle]"
    ]


def test_what_does_not_add_up_cannot_be_confirmed() -> None:
    file = access(
        "docks: [{name: Dock, door_width: 3 m (12 ft), confirmed: {what: units-disagree, value: 3 m"
        " (12 ft), by: stage manager, on: 2026-05-01}}]\n"
    )
    assert still_open(file) == [
        "Door width says '3 m (12 ft)', but that is 3.00 m against 3.66 m. Which one is right?"
        " [units-disagree]",
        "The confirmation of 'units-disagree' counts for nothing: that does not add up, and only"
        " what is merely odd can be confirmed. Mend what the finding tells."
        " [confirmation-refused]",
    ]


def test_no_danger_can_be_confirmed() -> None:
    file = access(DOCK.replace("CONFIRMED", WIDTH.replace("implausible", "limit-passed")))
    danger = Finding(
        Level.DANGER,
        "limit-passed",
        "It carries too much.",
        place=place(file.docks[0].where("door_width")),  # type: ignore[union-attr, index]
        asks_about="30 m",
    )
    result = settled([danger], [file])
    assert result.confirmed == ()
    assert [each.code for each in result.open] == ["limit-passed", "confirmation-refused"]
    assert result.open[1].sentence == (
        "The confirmation of 'limit-passed' counts for nothing: that is a danger, and only what is"
        " merely odd can be confirmed. Mend what the finding tells."
    )


def test_a_confirmation_on_another_line_counts_for_nothing_here() -> None:
    file = access(
        "docks: [{name: A, door_width: 30 m},"
        f" {{name: B, door_width: 3 m, confirmed: {WIDTH}}}]\n"
    )
    assert [sentence.rsplit(" ", 1)[1] for sentence in still_open(file)] == [
        "[implausible]",
        "[confirmation-idle]",
    ]


def test_a_value_within_a_line_is_confirmed_on_the_line() -> None:
    stage = read(
        "datum: {centre_line: a stud, reference_line: the edge}\n"
        "decks: []\n"
        "risers:\n"
        "  - name: Tower\n"
        "    count: 1\n"
        "    width: 2 m\n"
        "    depth: 1 m\n"
        "    heights: [400 mm, 3 m]\n"
        "    confirmed: {what: implausible, value: 3 m, by: stage manager, on: 2026-05-01}\n",
        file="stage.yml",
        kind=Stage,
    )
    assert still_open(stage) == []


def test_a_value_of_the_file_itself_is_confirmed_by_a_key_of_the_file() -> None:
    house = read(
        "name: H\nwhat: a hall\ntown: T\nsetting: indoors\ntime_zone: UTC\n"
        "revision: {number: 1, on: 2026-06-01, by: me}\n"
        "doors_before_show: 45 h\n",
        file="house.yml",
        kind=House,
    )
    (finding,) = settled(of(house), [house]).open
    assert finding.confirm_on == "the left margin, as a key of the file"
    confirmed = read(
        "name: H\nwhat: a hall\ntown: T\nsetting: indoors\ntime_zone: UTC\n"
        "revision: {number: 1, on: 2026-06-01, by: me}\n"
        "doors_before_show: 45 h\n"
        "confirmed: {what: implausible, value: 45 h, by: manager, on: 2026-05-01}\n",
        file="house.yml",
        kind=House,
    )
    assert settled(of(confirmed), [confirmed]).open == ()


def test_a_confirmation_without_a_name_is_a_problem() -> None:
    with pytest.raises(Refused) as refused:
        access(DOCK.replace("CONFIRMED", "{what: implausible, value: 30 m, on: 2026-05-01}"))
    (problem,) = refused.value.problems
    assert (str(problem.where), problem.path, problem.code) == (
        "access.yml:1:69",
        "docks[1].confirmed[1].by",
        "missing-key",
    )


HOUSE = (
    "name: H\nwhat: a hall\ntown: T\nsetting: indoors\ntime_zone: UTC\n"
    "revision: {number: 1, on: 2026-06-01, by: me}\n"
    "doors_before_show: 45 h\n"
    "language: 2\n"
)
DOORS = "confirmed: {what: implausible, value: 45 h, by: duty manager, on: 2026-05-01}\n"


def test_the_pages_show_who_confirmed_what_and_when() -> None:
    pack = pack_of(venue_of({"house.yml": HOUSE + DOORS}))
    identity = next(item for item in pack.items() if item.kind == "identity")
    doors = identity.fact("doors_before_show")
    assert doors is not None
    assert doors.confirmed == "confirmed by duty manager on 2026-05-01"
    pages = render(document_of(pack)).pages
    for page in ("house.md", "findings.md"):
        words = unescape(str(pages[page])).replace("\N{NO-BREAK SPACE}", " ")
        assert "Doors before show is '45 h'. That is unusual here" in words, page
        assert "Confirmed by duty manager on" in words, page
        assert "Is it minutes?" not in words, page


def test_a_pack_with_confirmations_turns_into_json_and_back() -> None:
    pack = pack_of(venue_of({"house.yml": HOUSE + DOORS}))
    assert pack.confirmed
    assert from_json(to_json(pack)) == pack


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """A venue's folder with one odd value."""
    (tmp_path / "house.yml").write_text(HOUSE, encoding="utf-8")
    return tmp_path


def checked(venue: Path) -> str:
    """What `housepack check` prints of it."""
    result = CliRunner().invoke(main, ["check", "--venue", str(venue)])
    assert result.exit_code == 0, result.output
    return result.output


def test_the_check_prints_the_entry_that_ends_its_question(venue: Path) -> None:
    """What is printed is copied, with a role and a day, and the question is gone."""
    printed = checked(venue)
    assert "0 dangers, 1 caution, 0 notes." in printed
    (line,) = [line for line in printed.splitlines() if "If it is right" in line]
    assert line.startswith(
        "    If it is right, write at the left margin, as a key of the file: confirmed:"
    )
    entry = line.split("as a key of the file: ", 1)[1].replace("ROLE", "duty manager")
    (venue / "house.yml").write_text(f"{HOUSE}{entry}\n", encoding="utf-8")
    assert "0 dangers, 0 cautions, 0 notes, 1 confirmed." in checked(venue)


def test_what_is_printed_can_be_copied_for_every_mistake_that_is_merely_odd() -> None:
    """The value that a finding quotes survives YAML, whatever signs it holds."""
    for value in (
        '9"/0.15m',
        "it's # odd: {a, b}",
        "24 ft beside 23'-0\" of Back",
        "1,250 A",
        "?",
        "no",
    ):
        entry = written({"what": "x", "value": value, "by": "me", "on": "2026-05-01"}, flow=True)
        file = access(f"docks: [{{name: Dock, confirmed: {entry}}}]\n")
        assert file.docks[0].confirmed[0].value == value  # type: ignore[index, union-attr]


def test_the_guide_s_example_is_odd_and_confirmed() -> None:
    """What `describe.md` shows is read: without its last line it is asked about."""
    guide = (Path(__file__).parent.parent / "docs" / "describe.md").read_text(encoding="utf-8")
    example = next(block for block in guide.split("```") if "confirmed:" in block)
    rows = [f"  {row}" for row in example.splitlines()[1:] if row]
    rows.insert(1, "    runs: across")
    rows.insert(1, "    depth: 0 m")
    for last, codes in ((len(rows), []), (len(rows) - 1, ["implausible", "implausible"])):
        text = "\n".join(["limits: {}", "beams:", *rows[:last]]) + "\n"
        rigging = read(text, file="rigging.yml", kind=Rigging)
        assert [finding.code for finding in settled(of(rigging), [rigging]).open] == codes


def test_programs_are_told_what_is_confirmed_too(venue: Path) -> None:
    (venue / "house.yml").write_text(HOUSE + DOORS, encoding="utf-8")
    result = CliRunner().invoke(main, ["check", "--venue", str(venue), "--format", "json"])
    told = json.loads(result.output)
    assert told["findings"] == []
    assert [(entry["code"], entry["by"], entry["on"]) for entry in told["confirmed"]] == [
        ("implausible", "duty manager", "2026-05-01")
    ]
