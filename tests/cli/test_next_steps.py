"""What the commands print as the next command runs as it is printed."""

import re
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.cli import main
from builder.cli.next_step import argument, at, command
from tests.stock.small import written_to

ODD = "Our house's stage & yard"
PRINTED = re.compile(r"(?:^ *|: )(housepack .+?)(?: \[[a-z-]+\])?$", re.MULTILINE)
SHOW = "act: Sallow Kestrel\nplays: 2026-03-07\nneeds:\n  - {what: stage width, at least: 8.5 m}\n"


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder that the author stands in."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*words: str) -> Result:
    """Run a command where the author stands."""
    return CliRunner().invoke(main, words)


def next_of(result: Result) -> list[str]:
    """The commands that a result prints."""
    return PRINTED.findall(result.output)


def run_as_printed(line: str) -> Result:
    """Run a printed command as a shell would."""
    first, *words = shlex.split(line)
    assert first == "housepack"
    return run(*words)


@pytest.mark.parametrize("folder", ["myhouse", "my house", ODD, ".", "-house"])
def test_what_new_prints_checks_the_venue_it_wrote(folder: str) -> None:
    result = run("new", "--", folder)
    assert result.exit_code == 0, result.output
    (line,) = next_of(result)
    checked = run_as_printed(line)
    assert checked.exit_code == 0, checked.output
    assert "My venue, revision 1: no problems" in checked.output


@pytest.mark.parametrize("rider", ["rider.yml", f"{ODD}.yml", "-rider.yml"])
def test_what_new_prints_for_a_rider_checks_it_against_the_venue_that_is_there(rider: str) -> None:
    run("new", ".")
    (line,) = next_of(run("new", f"--rider={rider}"))
    checked = run_as_printed(line)
    assert checked.exit_code in (0, 1)
    assert "Questions to the house" in checked.output


@pytest.mark.parametrize(
    ("rider", "first"),
    [
        ("myhouse/venue/shows/act.yml", "# yaml-language-server: $schema=../../schemas/rider.json"),
        ("myhouse/act.yml", "# yaml-language-server: $schema=schemas/rider.json"),
        (
            "elsewhere/act.yml",
            "# What your show needs, for a house to check against its tech pack:",
        ),
    ],
)
def test_a_rider_in_a_house_names_the_schema_that_is_there(
    here: Path, rider: str, first: str
) -> None:
    run("new", "myhouse")
    run("new", "--rider", rider)
    assert (here / rider).read_text(encoding="utf-8").splitlines()[0] == first


@pytest.mark.parametrize("folder", [".", "tour 1"])
def test_what_new_prints_for_a_rider_checks_it_against_a_pack_where_there_is_no_venue(
    here: Path, folder: str
) -> None:
    run("new", "elsewhere")
    (line,) = next_of(run("new", "--rider", f"{folder}/rider.yml"))
    run("pack", "--venue", "elsewhere/venue", "--to", str(here / folder / "pack.json"))
    checked = run_as_printed(line)
    assert checked.exit_code in (0, 1)
    assert "Questions to the house" in checked.output


@pytest.mark.parametrize("folder", ["venue", "the shed", "-shed"])
def test_what_check_prints_tells_every_verdict_of_a_show(here: Path, folder: str) -> None:
    written_to(here / folder)
    (here / folder / "shows").mkdir()
    (here / folder / "shows" / "sallow kestrel.yml").write_text(SHOW, encoding="utf-8")
    (line,) = next_of(run("check", f"--venue={folder}"))
    told = run_as_printed(line)
    assert told.exit_code == 0, told.output
    assert "Sallow Kestrel" in told.output


@pytest.mark.parametrize(
    ("folder", "sheet"), [("venue", "count.csv"), ("the shed", "count 1.csv"), ("venue", "-c.csv")]
)
def test_what_the_sheet_prints_takes_the_sheet_back(here: Path, folder: str, sheet: str) -> None:
    written_to(here / folder)
    (line,) = next_of(run("stock", "sheet", "--venue", folder, f"--to={sheet}"))
    told = run_as_printed(line)
    assert told.exit_code == 0, told.output
    assert told.output == "Nothing differs, so nothing was changed.\n"


def test_what_the_sheet_to_print_prints_writes_the_sheet_that_comes_back(here: Path) -> None:
    written_to(here / "the shed")
    (line,) = next_of(run("stock", "sheet", "--venue", "the shed", "--to", "count.html"))
    told = run_as_printed(line)
    assert told.exit_code == 0, told.output
    assert (here / "count.csv").read_text(encoding="utf-8").startswith("place,list,")
    assert run_as_printed(next_of(told)[0]).exit_code == 0


def test_what_is_printed_for_a_folder_that_is_not_there_begins_one() -> None:
    (line,) = next_of(run("check", "--venue", "nothing"))
    assert run_as_printed(line).exit_code == 0


def test_the_folder_above_a_venue_is_told_with_the_one_that_is_meant(here: Path) -> None:
    run("new", "my house")
    result = run("check", "--venue", "my house")
    assert result.exit_code == 1
    assert result.output.startswith(
        "my house holds a venue in a folder of its own; give it with --venue 'my"
        " house/venue' [folder-above]"
    )
    assert (here / "my house" / "venue" / "house.yml").is_file()


def test_the_folder_that_one_stands_in_has_a_name_too(
    here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("new", "my house")
    monkeypatch.chdir(here / "my house")
    told = run("check", "--venue", ".").output
    assert told.startswith(". holds a venue in a folder of its own; give it with --venue venue [")


def test_a_word_that_a_shell_would_part_is_quoted() -> None:
    assert command("check", *at(Path("my house"))) == "housepack check --venue 'my house'"
    assert command("check", *at(Path("venue"))) == "housepack check"
    assert argument(Path("-odd.yml")) == "./-odd.yml"
