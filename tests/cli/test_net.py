"""
The net at the edge of each command: what the system refuses, and what nobody expected, is a
sentence that names the file; one bad rider never stops the others.
"""

import errno
import json
import os
import socket
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from builder import files, pipeline
from builder.cli import main
from builder.cli.net import within
from builder.pack import FORMAT
from builder.rider import asked
from builder.shows import booked

ROOT = Path(__file__).parents[2]
QUARRY = ("--venue", str(ROOT / "tests" / "venues" / "quarry"))
RIDER = ROOT / "tests" / "riders" / "club.yml"
REPORT = (
    "this is a mistake of the program and not yours; please report it, with what the same command"
    " prints with --details [program-failed]"
)


def run(*words: str) -> Result:
    """The command's result; an exception that reaches the author is no sentence."""
    result = CliRunner().invoke(main, list(words))
    assert result.exception is None or isinstance(result.exception, SystemExit), result.output
    assert "Traceback" not in result.output
    return result


def breaking(*_: object, **__: object) -> None:
    """What nobody expects."""
    raise KeyError("left")


def test_every_command_has_details() -> None:
    for command in within(main):
        options = [word for each in command.params for word in each.opts]
        assert "--details" in options, command.name


def test_a_failure_of_the_program_names_the_file_and_asks_to_report_it(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("builder.pipeline.pack_of", breaking)
    result = run("pack", *QUARRY)
    assert result.exit_code == 1
    assert result.output == f"{QUARRY[1]} made the program fail (KeyError: 'left'); {REPORT}\n"


def test_a_failure_in_a_department_names_the_departments_file(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    broken = tuple(
        replace(each, publish=breaking) if each.key == "power" else each
        for each in pipeline.DEPARTMENTS
    )
    monkeypatch.setattr(pipeline, "DEPARTMENTS", broken)
    assert run("pack", *QUARRY).output == (
        f"{QUARRY[1]}/power.yml made the program fail (KeyError: 'left'); {REPORT}\n"
    )


def test_details_are_told_where_they_are_wanted(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("builder.pipeline.pack_of", breaking)
    output = CliRunner().invoke(main, ["pack", *QUARRY, "--details"]).output
    assert "Traceback (most recent call last)" in output
    assert 'raise KeyError("left")' in output
    assert output.endswith(f"{REPORT}\n")
    assert "Traceback" not in run("pack", *QUARRY).output


def test_one_bad_rider_does_not_stop_the_others(tmp_path: Path) -> None:
    bad = tmp_path / "bad.yml"
    bad.write_text("act: A\nneeds:\n  - {what: moon}\n", "utf-8")
    alone, both = run("fit", str(RIDER), *QUARRY), run("fit", str(bad), str(RIDER), *QUARRY)
    assert both.exit_code == 1
    assert both.stdout == alone.stdout
    assert f"{bad}:3:12 what: 'moon' is nothing that can be checked" in both.stderr
    assert both.stderr.endswith(f"Not judged: {bad}. The answer is only for the others.\n")


REFUSED_LINE = """act: A
needs:
  - {what: moon}
  - {what: stage width, at least: 1 m}
"""


@pytest.mark.parametrize("form", ["text", "markdown", "json"])
def test_one_refused_line_of_a_rider_does_not_stop_the_others(tmp_path: Path, form: str) -> None:
    bad = tmp_path / "bad.yml"
    bad.write_text(REFUSED_LINE, "utf-8")
    result = run("fit", str(bad), *QUARRY, "--format", form)
    assert result.exit_code == 1
    assert f"{bad}:3:12 what: 'moon' is nothing that can be checked" in result.stderr
    assert result.stderr.endswith(
        f"Not judged in {bad}: what cannot be read. The rest of it is judged.\n"
    )
    said = " ".join(result.stdout.split())
    assert "A: line 3: what: 'moon' is nothing that can be checked" in said
    assert "This was not judged, and what it shares with others is counted without it." in said
    assert "at least 1 m" in said


def test_a_show_of_which_a_line_cannot_be_read_is_an_ask_and_no_fit(tmp_path: Path) -> None:
    verdicts = []
    for text in (REFUSED_LINE, REFUSED_LINE.replace("  - {what: moon}\n", "")):
        rider = tmp_path / "rider.yml"
        rider.write_text(text, "utf-8")
        result = json.loads(run("fit", str(rider), *QUARRY, "--format", "json").stdout)
        words = [each["verdict"] for each in result["verdicts"]]
        verdicts.append((words, result["acts"][0]["verdict"], result["verdict"]))
    (words, act, whole), (same, best, _) = verdicts
    assert words == same
    assert best in ("fits", "fits, with a note")
    assert (act, whole) == ("ask", "ask")


def test_a_rider_at_which_the_program_fails_does_not_stop_the_others(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    other, whole = tmp_path / "other.yml", asked.readable_rider
    other.write_text("act: Other\n", "utf-8")
    monkeypatch.setattr(
        asked,
        "readable_rider",
        lambda text, *, file, rules: (
            breaking() if file == "other.yml" else whole(text, file=file, rules=rules)
        ),
    )
    result = run("fit", str(other), str(RIDER), *QUARRY)
    assert result.exit_code == 1
    assert result.stderr == (
        f"{other} made the program fail (KeyError: 'left'); {REPORT}\n"
        f"Not judged: {other}. The answer is only for the others.\n"
    )
    assert "Five Wet Dogs" in result.stdout


def test_a_show_at_which_the_program_fails_does_not_hide_the_others(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    read = booked.booked_in
    monkeypatch.setattr(
        booked,
        "booked_in",
        lambda text, file, *rest: breaking() if file == "a.yml" else read(text, file, *rest),
    )
    texts = {f"{name}.yml": f"act: {name}\nplays: 2026-12-05\n" for name in "ab"}
    books = booked.books_of(texts, {})
    assert [show.file for show in books.shows] == ["b.yml"]
    assert [str(each) for each in books.problems] == [
        f"a.yml made the program fail (KeyError: 'left'); {REPORT}"
    ]


@pytest.mark.parametrize(
    ("number", "why"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EROFS, "it is closed to you, or the disk is read-only"),
        (errno.EACCES, "it is closed to you, or the disk is read-only"),
        (errno.EIO, "input/output error"),
    ],
)
def test_what_the_disk_refuses_is_told(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, number: int, why: str
) -> None:
    def refusing(*_: object) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(files, "put_whole", refusing)
    target = tmp_path / "house.json"
    result = run("schema", "--to", str(tmp_path))
    assert result.exit_code == 1
    assert result.output == (
        f"{target} cannot be written to: {why}; nothing was written [not-written]\n"
    )


def test_a_folder_or_a_device_in_the_place_of_a_file_is_told_and_left_alone(
    tmp_path: Path,
) -> None:
    (tmp_path / "folder").mkdir()
    os.mkfifo(tmp_path / "pipe")
    for name in ("folder", "pipe"):
        before = (tmp_path / name).stat()
        assert run("pack", *QUARRY, "--to", str(tmp_path / name)).output == (
            f"{tmp_path / name} cannot be written to: a folder or a device has that name; nothing"
            " was written [not-written]\n"
        )
        assert (tmp_path / name).stat().st_ino == before.st_ino


def test_a_file_in_the_place_of_a_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", "utf-8")
    assert run("pack", *QUARRY, "--to", str(tmp_path / "file" / "pack.json")).output == (
        f"{tmp_path}/file/pack.json cannot be written to: a file stands where its folder should be;"
        " nothing was written [not-written]\n"
    )
    assert run("build", *QUARRY, "--to", str(tmp_path / "file" / "site")).output == (
        f"Error: {tmp_path}/file is a file, so {tmp_path}/file/site cannot be in it. Nothing was"
        " written.\n"
    )
    assert (tmp_path / "file").read_text("utf-8") == "mine"


@pytest.fixture
def taken() -> Iterator[int]:
    """A port that somebody listens at."""
    with socket.create_server(("127.0.0.1", 0)) as listening:
        yield listening.getsockname()[1]


def test_a_port_that_is_taken_or_none_is_told(taken: int) -> None:
    assert run("serve", *QUARRY, "--port", str(taken)).output == (
        f"Error: 127.0.0.1:{taken} is taken, perhaps by another site that is served. Give another"
        " with --port.\n"
    )
    for port in (0, -1, 65536, 10**30):
        assert run("serve", *QUARRY, "--port", str(port)).output == (
            f"Error: {port} is no port. Give one from 1 to 65535 with --port, such as 8000.\n"
        )


def test_a_venue_that_is_not_there_is_told_before_anything_is_served(tmp_path: Path) -> None:
    for command in ("serve", "build", "pack", "check"):
        result = run(command, "--venue", str(tmp_path / "nothing"))
        assert result.exit_code == 1
        assert result.output.startswith(
            f"{tmp_path}/nothing is not a folder; give a venue's folder with --venue"
        )
        assert "Serving" not in result.output


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        (
            f'{{"format": {FORMAT + 1}}}',
            f"is of format {FORMAT + 1}, and this version reads format {FORMAT}; read it with a"
            " newer version of housepack",
        ),
        (
            '{"format": 1}',
            f"is of format 1, and this version reads format {FORMAT}; ask the house to build its"
            " site again with this version, or run 'housepack pack' on its files; what is not"
            " exact, and what stands in one configuration alone, would be misread",
        ),
        (
            f'{{"format": {FORMAT}, "caution": "A planning figure."}}',
            "is what a page reads of a pack; give the pack.json that stands beside it",
        ),
        ("[]", "is not a pack that this version reads"),
        ("[" * 50_000, "is not a pack that this version reads"),
        ("\ufeff{}", "is not a pack that this version reads"),
        ('{"format": "1"}', "is not a pack that this version reads"),
        ('{"format": true}', "is not a pack that this version reads"),
        ("", "is not a pack that this version reads"),
    ],
)
def test_a_pack_that_is_none_or_newer_is_told(tmp_path: Path, text: str, reason: str) -> None:
    pack = tmp_path / "pack.json"
    pack.write_text(text, "utf-8")
    result = run("fit", str(RIDER), "--pack", str(pack))
    assert result.exit_code == 1
    assert result.output.startswith(f"{pack} {reason}")
    assert result.output.endswith("[pack-unreadable]\n1 problem. Nothing was checked.\n")


def test_a_message_of_wrong_usage_orders_no_terminal() -> None:
    assert "\x1b" not in run("phases", "\x1b[2J", "16 A", *QUARRY).output


def test_the_net_lets_wrong_usage_through() -> None:
    assert run("fit").exit_code == click.UsageError.exit_code
