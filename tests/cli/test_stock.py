"""`housepack stock` as a crew types it, on the small venue in a folder."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.cli import main
from tests.stock.small import TEXTS, written_to

WHO = ("--by", "head of sound", "--why", "Horn blown.", "--on", "2026-01-02")


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """The small venue's folder."""
    return written_to(tmp_path / "venue")


def run(venue: Path, *words: str, answer: str = "") -> Result:
    """Run the command with the venue."""
    return CliRunner().invoke(main, ["stock", *words, "--venue", str(venue)], input=answer)


def texts(venue: Path) -> dict[str, str]:
    """What the folder's files hold."""
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(venue.iterdir())}


def test_the_difference_is_shown_and_nothing_written_without_a_yes(venue: Path) -> None:
    result = run(venue, "out", "Vellum 7", *WHO, answer="n\n")
    assert result.exit_code == 1
    assert (
        "+  - {name: Vellum 7, kind: microphone, count: 12, condition: out of service}"
        in result.output
    )
    assert result.output.endswith("Nothing was written.\n")
    assert texts(venue) == TEXTS


def test_a_dry_run_asks_and_writes_nothing(venue: Path) -> None:
    result = run(venue, "out", "Vellum 7", *WHO, "--dry-run")
    assert result.exit_code == 0
    assert "Write this?" not in result.output
    assert texts(venue) == TEXTS


def test_a_yes_writes_the_file_and_the_log(venue: Path) -> None:
    result = run(venue, "out", "Vellum 7", *WHO, answer="y\n")
    assert result.exit_code == 0, result.output
    assert result.output.endswith(f"Wrote {venue}/sound.yml and {venue}/log.yml.\n")
    assert "count: 12, condition: out of service}" in texts(venue)["sound.yml"]
    assert "why: Horn blown." in texts(venue)["log.yml"]


def test_every_order_is_written(venue: Path) -> None:
    orders = [
        ("out", "B", "--unit", "2"),
        ("back", "B", "--unit", "2"),
        ("count", "Vellum 7", "11", "--working", "10"),
        ("move", "Pocket", "Mix position"),
        ("move", "Mix position", "depth=17 m DS", "--in", "stage"),
        ("swap", "Pocket", "Pocket 2", "inputs=24"),
        ("add", "sound.stock", "Vellum 9", "kind=microphone", "count=2"),
        ("remove", "Vellum 5"),
    ]
    for words in orders:
        result = run(venue, *words, *WHO, "--yes")
        assert result.exit_code == 0, result.output
    result = run(
        venue,
        "verified",
        "sound.yml",
        "--by",
        "house sound",
        "--how",
        "measured",
        "--on",
        "2026-01-02",
        "--yes",
    )
    assert result.exit_code == 0, result.output
    found = texts(venue)
    assert [
        line.split(": ")[1] for line in found["log.yml"].splitlines() if line.startswith("    did:")
    ] == [
        *(words[0] for words in orders),
        "verified",
    ]
    assert "  - name: Pocket 2\n    place: Mix position\n    inputs: 24\n" in found["sound.yml"]
    assert (
        "{name: Mix position, at: {across: centre, depth: 17 m DS, height: 1 m down}}"
        in found["stage.yml"]
    )
    assert "count: 11, working: 10}" in found["sound.yml"]
    assert "Vellum 5" not in found["sound.yml"]


def test_a_name_that_is_not_there_is_a_sentence_with_near_names(venue: Path) -> None:
    result = run(venue, "out", "Velum 8", *WHO, "--yes")
    assert result.exit_code == 1
    assert "did you mean 'Vellum 8'" in result.output
    assert texts(venue) == TEXTS


def test_who_and_why_are_asked_for(venue: Path) -> None:
    result = run(venue, "out", "Vellum 7")
    assert result.exit_code == 2
    assert "Missing option '--by'" in result.output


def test_a_venue_with_a_problem_is_told_and_left_alone(venue: Path) -> None:
    (venue / "house.yml").write_text("name: x\n")
    result = run(venue, "out", "Vellum 7", *WHO, "--yes")
    assert result.exit_code == 1
    assert "[missing-key]" in result.output


def test_knock_ons_are_shown_before_anything_is_written(venue: Path) -> None:
    result = run(
        venue,
        "verified",
        "sound",
        "--by",
        "house sound",
        "--how",
        "measured",
        "--on",
        "2026-03-02",
        "--dry-run",
    )
    said = " ".join(result.output.split())
    assert (
        "Findings that appear: caution: Checked on 2026-03-02, which is after this revision"
        " (2026-01-02)." in said
    )
    assert "Raise it in house.yml before you publish this." in said


def test_the_sheet_goes_out_and_comes_back(venue: Path) -> None:
    sheet = venue.parent / "sheet.csv"
    assert run(venue, "sheet", "--to", str(sheet)).exit_code == 0
    lines = sheet.read_text(encoding="utf-8").splitlines()
    assert (
        run(venue, "count", str(sheet), *WHO).output == "Nothing differs, so nothing was changed.\n"
    )
    sheet.write_text(
        "\r\n".join(
            line.replace("in service,,", "in service,9,") if "Vellum 7" in line else line
            for line in lines
        )
    )
    result = run(venue, "count", str(sheet), *WHO, answer="y\n")
    assert result.exit_code == 0, result.output
    assert "{name: Vellum 7, kind: microphone, count: 9}" in texts(venue)["sound.yml"]
    assert run(venue, "count", "nowhere.csv", *WHO).exit_code == 1


def test_a_sheet_to_print_is_written_where_its_name_ends_so(venue: Path) -> None:
    page = venue.parent / "sheet.html"
    result = run(venue, "sheet", "--to", str(page))
    assert result.exit_code == 0
    assert "Open it in a browser to print." in result.output
    assert "<title>The Small Shed: counting sheet</title>" in page.read_text("utf-8")


def test_loose_stock_is_moved_to_where_it_is_kept_and_on_again(venue: Path) -> None:
    assert run(venue, "move", "Vellum 7", "Trunk 1, top", *WHO, "--yes").exit_code == 0
    assert 'count: 12, kept: "Trunk 1, top"}' in texts(venue)["sound.yml"]
    assert "Trunk 1, top" in run(venue, "sheet").output
    assert run(venue, "move", "Vellum 7", "Trunk 2", *WHO, "--yes").exit_code == 0
    assert 'count: 12, kept: "Trunk 2"}' in texts(venue)["sound.yml"]


def test_a_sheet_that_is_printed_is_the_sheet_alone(venue: Path) -> None:
    assert run(venue, "sheet").output.startswith(
        "place,list,name,count,working,condition,counted,counted working,note"
    )


def test_a_file_that_changed_while_the_question_stood_is_left_alone(
    venue: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    by_hand = TEXTS["sound.yml"] + "# by hand\n"

    def asked(_: str) -> bool:
        (venue / "sound.yml").write_text(by_hand, encoding="utf-8")
        return True

    monkeypatch.setattr("click.confirm", asked)
    result = run(venue, "out", "Vellum 7", *WHO)
    assert result.exit_code == 1
    assert "[changed-since]" in result.output
    assert texts(venue) == TEXTS | {"sound.yml": by_hand}


@pytest.mark.parametrize("why", ["bell \x07", "turned \u202e round", "  ", "half \udc80"])
def test_text_that_cannot_be_seen_is_wrong_usage(venue: Path, why: str) -> None:
    result = run(
        venue, "out", "Vellum 7", "--by", "us", "--why", why, "--on", "2026-01-02", "--yes"
    )
    assert result.exit_code == 2
    assert texts(venue) == TEXTS


def test_a_reason_of_several_lines_and_odd_signs_is_kept_on_one(venue: Path) -> None:
    result = run(
        venue,
        "out",
        "Vellum 7",
        "--by",
        "us: all",
        "--why",
        'It\'s "gone":\n - see # 4, {there}',
        "--on",
        "2026-01-02",
        "--yes",
    )
    assert result.exit_code == 0, result.output
    assert (
        '    by: "us: all"\n    why: "It\'s \\"gone\\": - see # 4, {there}"\n'
        in texts(venue)["log.yml"]
    )


def test_a_value_that_is_no_yaml_is_a_sentence(venue: Path) -> None:
    result = run(venue, "count", "Vellum 7", "3", "verified={on: [", *WHO, "--yes")
    assert result.exit_code == 1
    assert "[yaml-syntax]" in result.output
