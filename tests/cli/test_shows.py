"""
Shows on the books as a crew meets them: ``check`` and ``stock`` tell of them, and nothing else
does.
"""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.cli import main
from tests.stock.small import TEXTS, written_to

MARK = "Sallow Kestrel"
WHO = ("--by", "head of sound", "--why", "Horn blown.", "--on", "2026-01-02")
SHOW = (
    f"act: {MARK}\nplays: 2026-03-07\nneeds:\n  - {{what: stage width, at least: 8.5 m}}\n  -"
    " {what: clear height, at least: 7 m}\n"
)


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """The small venue's folder with a show on its books."""
    folder = written_to(tmp_path / "venue")
    (folder / "shows").mkdir()
    (folder / "shows" / "kestrel.yml").write_text(SHOW, encoding="utf-8")
    return folder


def run(venue: Path, *words: str, answer: str = "") -> Result:
    """The result of a command on the venue."""
    return CliRunner().invoke(main, [*words, "--venue", str(venue)], input=answer)


def flat(result: Result) -> str:
    """What was printed, however its lines were broken."""
    return " ".join(result.output.split())


def test_check_tells_each_show_and_a_short_one_is_no_fault_of_the_pack(venue: Path) -> None:
    result = run(venue, "check")
    assert result.exit_code == 0
    assert "Saturday 7 March, Sallow Kestrel: 1 short, 1 with a note" in result.output
    assert "short by 1.00 m: Height to the lowest thing above the deck, at least 7 m" in flat(
        result
    )
    assert "Planning figures." in flat(result)
    assert "no problems" in result.output
    assert run(venue, "check", "--strict").exit_code == 0


def test_shows_before_the_day_are_named_and_not_judged(venue: Path) -> None:
    result = run(venue, "check", "--on", "2026-03-08")
    assert "Played before 2026-03-08, not judged: Sallow Kestrel (2026-03-07)." in flat(result)
    assert "1 short" not in result.output
    assert "1 short" in run(venue, "check", "--on", "2026-03-07").output


def test_a_venue_without_shows_says_nothing_of_them(venue: Path) -> None:
    shutil.rmtree(venue / "shows")
    assert "on the books" not in run(venue, "check").output
    assert "on the books" not in run(venue, "stock", "out", "Vellum 7", *WHO, "--dry-run").output


def test_a_broken_show_is_a_problem_with_its_place_and_hides_no_other(venue: Path) -> None:
    (venue / "shows" / "a.yml").write_text(
        "act: A\nplays: 2026-13-01\nneeds:\n  - {what: stage with, at least: 1 m}\n",
        encoding="utf-8",
    )
    result = run(venue, "check")
    assert result.exit_code == 1
    assert (
        f"{venue}/shows/a.yml:2:8 plays: '2026-13-01' is not a day of the calendar" in result.output
    )
    assert f"{venue}/shows/a.yml:4:12 what: 'stage with' is nothing that can be" in result.output
    assert "2 problems in shows; " in result.output
    assert "Saturday 7 March, Sallow Kestrel" in result.output


def test_a_show_with_one_broken_line_is_judged_as_far_as_it_is_read(venue: Path) -> None:
    (venue / "shows" / "a.yml").write_text(
        "act: Alder\nplays: 2026-03-07\nneeds:\n"
        "  - {what: stage width, at least: 1 m}\n  - {what: stage moon}\n",
        encoding="utf-8",
    )
    result = run(venue, "check")
    assert result.exit_code == 1
    assert "Saturday 7 March, Alder: 1 with a note; 1 line of its rider not judged" in flat(result)
    record = json.loads(run(venue, "check", "--format", "json").output)
    alder = next(show for show in record["shows"]["coming"] if show["act"] == "Alder")
    assert (alder["verdict"], alder["not_read"]) == ("ask", 1)
    stocked = run(venue, "stock", "out", "Deck", "--in", "stage.decks", *WHO, "--dry-run")
    assert "Judged in part, for 'housepack check' finds problems in them: shows/a.yml." in flat(
        stocked
    )
    assert "Alder" in stocked.output


def test_problems_of_venue_and_shows_are_told_at_once(venue: Path) -> None:
    (venue / "house.yml").write_text("name: x\n", encoding="utf-8")
    (venue / "shows" / "a.yml").write_text("act: A\n", encoding="utf-8")
    result = run(venue, "check")
    assert result.exit_code == 1
    assert "[missing-key]" in result.output
    assert "shows/a.yml:1:1 plays is missing" in result.output


def test_json_carries_the_shows(venue: Path) -> None:
    (venue / "shows" / "a.yml").write_text("act: A\n", encoding="utf-8")
    result = run(venue, "check", "--format", "json")
    record = json.loads(result.output)
    assert result.exit_code == 1
    assert [problem["file"] for problem in record["problems"]] == ["shows/a.yml"]
    assert [(show["act"], show["verdict"]) for show in record["shows"]["coming"]] == [
        (MARK, "short")
    ]


def test_stock_tells_the_verdicts_that_turn_before_it_asks(venue: Path) -> None:
    result = run(venue, "stock", "out", "Deck", "--in", "stage.decks", *WHO, answer="n\n")
    assert "Saturday 7 March, Sallow Kestrel: stage width, clear fits now, would be short" in flat(
        result
    )
    assert result.output.index("Shows on the books") < result.output.index("Write this?")
    assert {path.name: path.read_text("utf-8") for path in venue.glob("*.yml")} == TEXTS


def test_shows_before_the_day_of_a_change_are_left_out(venue: Path) -> None:
    words = ("--by", "us", "--why", "Boards.", "--dry-run")
    assert (
        "Kestrel"
        not in run(
            venue, "stock", "out", "Deck", "--in", "stage.decks", *words, "--on", "2026-03-08"
        ).output
    )
    assert (
        "Kestrel"
        in run(
            venue, "stock", "out", "Deck", "--in", "stage.decks", *words, "--on", "2026-03-07"
        ).output
    )


def test_a_broken_show_stops_no_change_and_is_said(venue: Path) -> None:
    (venue / "shows" / "a.yml").write_text("act: [\n", encoding="utf-8")
    (venue / "shows" / "b.yml").write_bytes(b"\xff\xfe\x00")
    result = run(venue, "stock", "out", "Vellum 7", *WHO, "--yes")
    assert result.exit_code == 0, result.output
    assert (
        "Not judged, for 'housepack check' finds problems in them: shows/a.yml, shows/b.yml."
        in flat(result)
    )
    assert "condition: out of service" in (venue / "sound.yml").read_text("utf-8")


def test_undo_gives_the_first_bytes_with_shows_present_and_turns_no_verdict_on_the_way_back(
    venue: Path,
) -> None:
    shows = {path: path.read_bytes() for path in (venue / "shows").iterdir()}
    assert run(venue, "stock", "out", "Deck", "--in", "stage.decks", *WHO, "--yes").exit_code == 0
    back = run(venue, "stock", "back", "Deck", "--in", "stage.decks", *WHO, "--yes")
    assert "is short" in flat(back)
    assert "now, would fit" in flat(back)
    assert {
        path.name: path.read_text("utf-8") for path in venue.glob("*.yml") if path.name != "log.yml"
    } == TEXTS
    assert {path: path.read_bytes() for path in (venue / "shows").iterdir()} == shows
    assert "1 short, 1 with a note" in run(venue, "check").output


def test_nothing_of_a_show_is_in_the_log_the_pack_or_what_changed(
    venue: Path, tmp_path: Path
) -> None:
    assert run(venue, "stock", "out", "Deck", "--in", "stage.decks", *WHO, "--yes").exit_code == 0
    assert run(venue, "pack", "--to", str(tmp_path / "pack.json")).exit_code == 0
    published = [*venue.glob("*.yml"), tmp_path / "pack.json"]
    assert not [path.name for path in published if "kestrel" in path.read_text("utf-8").lower()]
    other = written_to(tmp_path / "other")
    assert "kestrel" not in run(venue, "changes", str(other), str(venue)).output.lower()


def test_what_is_no_rider_in_the_folder_is_named(venue: Path) -> None:
    (venue / "shows" / "rider.pdf").write_bytes(b"%PDF-1.4")
    (venue / "shows" / ".DS_Store").write_bytes(b"\x00")
    result = run(venue, "check")
    assert result.exit_code == 0
    assert "Not read, for they do not end in .yml: shows/rider.pdf." in result.output


def test_a_show_that_leads_out_of_the_folder_is_refused(venue: Path, tmp_path: Path) -> None:
    (tmp_path / "elsewhere.yml").write_text(SHOW, encoding="utf-8")
    (venue / "shows" / "b.yml").symlink_to(tmp_path / "elsewhere.yml")
    result = run(venue, "check")
    assert result.exit_code == 1
    assert "shows/b.yml leads out of the venue's folder" in result.output


def test_a_rider_on_the_books_answers_to_fit_too(venue: Path) -> None:
    assert (
        "X short: Height to the lowest thing above the deck"
        in run(venue, "fit", str(venue / "shows" / "kestrel.yml")).output
    )


def test_riders_of_two_dates_are_no_show_day(venue: Path) -> None:
    other = venue / "shows" / "other.yml"
    other.write_text(
        SHOW.replace(MARK, "Other").replace("2026-03-07", "2026-03-08"), encoding="utf-8"
    )
    result = run(venue, "fit", str(venue / "shows" / "kestrel.yml"), str(other))
    assert result.exit_code == 2
    assert (
        "The acts play on several dates: 2026-03-07, 2026-03-08. They make no show day, so no"
        " verdict is given on one; check each date by itself." in flat(result)
    )


def test_a_reason_that_names_a_show_is_warned_of_before_it_is_published(venue: Path) -> None:
    words = ("--by", "us", "--why", "Lent to sallow kestrel.", "--on", "2026-01-02")
    result = run(venue, "stock", "out", "Vellum 7", *words, answer="n\n")
    assert "The reason names Sallow Kestrel from your books, and the log is published." in flat(
        result
    )
    assert result.output.index("The reason names") < result.output.index("Write this?")
    assert (
        "The reason names" not in run(venue, "stock", "out", "Vellum 7", *WHO, "--dry-run").output
    )
