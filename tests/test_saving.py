"""
Writing changed files: whole or not at all, through kills at every call, a second editor, a full
disk and a closed folder.
"""

import errno
import fcntl
import os
import random
import resource
import signal
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from builder import saving
from builder.reading.problems import Refused
from builder.saving import NOTE, recover, save
from builder.stock.rewrite import Rewrite
from tests.laws import share

OLD = {"sound.yml": "a: 1\n" * 900, "log.yml": "entries: []\n"}
NEW = {"sound.yml": "a: 2\n" * 900, "log.yml": "entries: [x]\n"}
BOTH = [Rewrite(name, OLD[name], NEW[name]) for name in OLD]
CALLS = ("open", "write", "fsync", "fchmod", "replace", "unlink", "close")


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """A folder with the old texts."""
    folder = tmp_path / "venue"
    folder.mkdir()
    for name, text in OLD.items():
        (folder / name).write_text(text)
    return folder


def texts(folder: Path) -> dict[str, str]:
    """What the folder's files hold."""
    return {path.name: path.read_text() for path in sorted(folder.glob("*.yml"))}


def hidden(folder: Path) -> list[str]:
    """Files of ours that stay behind."""
    return sorted(path.name for path in folder.iterdir() if path.name.startswith("."))


def told(action: Callable[[], None]) -> str:
    """The one sentence that an action is refused with."""
    with pytest.raises(Refused) as refused:
        action()
    (problem,) = refused.value.problems
    return str(problem)


def in_a_child(action: Callable[[], None]) -> int:
    """Run an action in a process of its own; the signal that ended it, or 0."""
    child = os.fork()
    if child == 0:
        try:
            action()
        except BaseException:
            os._exit(9)
        os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def at_call(number: int, act: Callable[[], None]) -> None:
    """Make the call of that number to the disk act first; counts all of them together."""
    count = 0

    def counted(real: Callable[..., Any]) -> Callable[..., Any]:
        def call(*given: Any, **named: Any) -> Any:
            nonlocal count
            count += 1
            if count == number:
                act()
            return real(*given, **named)

        return call

    for name in CALLS:
        setattr(os, name, counted(getattr(os, name)))


def kill_self() -> None:
    """End this process as a power cut would."""
    os.kill(os.getpid(), signal.SIGKILL)


def test_all_files_are_written_and_nothing_stays_behind(venue: Path) -> None:
    save(venue, BOTH)
    assert texts(venue) == NEW
    assert hidden(venue) == []


def test_a_new_file_is_written(venue: Path) -> None:
    save(venue, [Rewrite("access.yml", None, "b: 1\n")])
    assert texts(venue)["access.yml"] == "b: 1\n"


def test_a_kill_at_every_call_leaves_the_old_or_the_new_and_the_next_change_finishes_it(
    venue: Path,
) -> None:
    ends = set()
    for number in range(1, 200):
        for name, text in OLD.items():
            (venue / name).write_text(text)

        def cut_off(number: int = number) -> None:
            at_call(number, kill_self)
            save(venue, BOTH)

        killed = in_a_child(cut_off) == -signal.SIGKILL
        assert all(text in (OLD[name], NEW[name]) for name, text in texts(venue).items())
        recover(venue)
        found = texts(venue)
        assert found in (OLD, NEW)
        ends.add(found == NEW)
        if found == OLD:
            save(venue, BOTH)
        else:
            saving.finish(venue)
        assert texts(venue) == NEW
        assert hidden(venue) == []
        if not killed:
            assert number > 20
            break
    else:
        pytest.fail("the change never came to its end")
    assert ends == {True, False}


@pytest.mark.laws
def test_kills_at_random_moments_lose_nothing(venue: Path) -> None:
    for moment in share(range(1000), law="kills lose nothing", usually=30):
        chance = random.Random(moment)
        child = os.fork()
        if child == 0:
            try:
                while True:
                    save(venue, BOTH)
                    save(venue, [Rewrite(name, NEW[name], OLD[name]) for name in OLD])
            finally:
                os._exit(1)
        time.sleep(chance.uniform(0.001, 0.02))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        assert all(text in (OLD[name], NEW[name]) for name, text in texts(venue).items())
        recover(venue)
        found = texts(venue)
        assert found in (OLD, NEW)
        if found == NEW:
            save(venue, [Rewrite(name, NEW[name], OLD[name]) for name in OLD])
        assert hidden(venue) == []


def test_a_file_that_was_changed_since_it_was_read_is_left_alone(venue: Path) -> None:
    (venue / "log.yml").write_text("entries: [by hand]\n")
    assert (
        told(lambda: save(venue, BOTH))
        == "log.yml was changed by somebody else since it was read; look at it, and give the order"
        " again; nothing was changed [changed-since]"
    )
    assert texts(venue) == {"sound.yml": OLD["sound.yml"], "log.yml": "entries: [by hand]\n"}
    assert hidden(venue) == []


def test_a_file_that_appeared_since_is_left_alone(venue: Path) -> None:
    assert "changed-since" in told(lambda: save(venue, [Rewrite("log.yml", None, "x: 1\n")]))


def test_a_second_editor_is_told_to_wait(venue: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(saving, "PAUSES", 2)
    handle = os.open(venue, os.O_RDONLY)
    fcntl.flock(handle, fcntl.LOCK_EX)
    assert (
        told(lambda: save(venue, BOTH))
        == "venue is being changed by somebody else at this moment; wait, and give the order again;"
        " nothing was changed [being-changed]"
    )
    os.close(handle)
    assert texts(venue) == OLD


def test_of_many_editors_at_once_one_writes_and_the_others_are_told(venue: Path) -> None:
    def edit(number: int) -> int:
        child = os.fork()
        if child == 0:
            try:
                save(venue, [Rewrite(name, OLD[name], f"{OLD[name]}# {number}\n") for name in OLD])
            except Refused:
                os._exit(7)
            os._exit(0)
        return child

    codes = [
        os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        for child in [edit(number) for number in range(8)]
    ]
    assert sorted(codes) == [0, 7, 7, 7, 7, 7, 7, 7]
    writer = codes.index(0)
    assert texts(venue) == {name: f"{text}# {writer}\n" for name, text in OLD.items()}


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EROFS, "it is closed to you, or the disk is read-only"),
        (errno.EIO, "input/output error"),
    ],
)
def test_whichever_call_the_disk_refuses_the_files_are_old_or_finished_later(
    venue: Path, number: int, words: str
) -> None:
    def fail() -> None:
        raise OSError(number, os.strerror(number))

    for call in range(1, 60):

        def attempt(call: int = call) -> None:
            at_call(call, fail)
            try:
                save(venue, BOTH)
            except Refused as refusal:
                os._exit(7 if words in str(refusal) else 8)

        ended = in_a_child(attempt)
        assert ended in (0, 7)
        recover(venue)
        assert texts(venue) in (OLD, NEW)
        if ended == 0 and call > 20:
            break
        for name, text in OLD.items():
            (venue / name).write_text(text)
    else:
        pytest.fail("the change never came to its end")


def test_a_file_that_may_grow_no_further_leaves_all_as_it_was(venue: Path) -> None:
    def attempt() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
        try:
            save(venue, BOTH)
        except Refused as refused:
            if "the disk is full; nothing was changed" in str(refused):
                kill_self()

    assert in_a_child(attempt) == -signal.SIGKILL
    assert texts(venue) == OLD
    assert hidden(venue) == []


def test_a_closed_folder_is_told() -> None:
    """
    The superuser may write anywhere, so a child that is somebody else tries; a temporary folder of
    pytest's is closed to others altogether.
    """
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for file, text in OLD.items():
            (folder / file).write_text(text)
        folder.chmod(0o555)

        def attempt() -> None:
            if os.geteuid() == 0:
                os.setuid(65534)
            try:
                save(folder, BOTH)
            except Refused as refused:
                os._exit(
                    7
                    if "it is closed to you, or the disk is read-only; nothing was changed"
                    in str(refused)
                    else 8
                )

        assert in_a_child(attempt) == 7
        assert texts(folder) == OLD
        folder.chmod(0o755)


def test_a_change_that_was_cut_off_and_touched_since_is_left_to_a_person(venue: Path) -> None:
    (venue / NOTE).write_text('[["sound.yml", "0", "1"]]')
    assert (
        told(lambda: recover(venue))
        == "sound.yml belongs to a change that was cut off, and was changed by hand since; look"
        " through the venue's files, then delete .housepack-unfinished in their folder"
        " [change-unfinished]"
    )


@pytest.mark.parametrize(
    "note",
    [
        "",
        "[]",
        "{}",
        "[1]",
        '[["sound.yml"]]',
        '[["../letter.yml", "", "x"]]',
        '[["/etc/passwd", "", "x"]]',
        '[[".git", "", "x"]]',
        '[["a\\u0000", "", "x"]]',
        "[" * 100_000,
        "\x00",
    ],
)
def test_a_note_that_no_change_of_ours_left_is_left_to_a_person(venue: Path, note: str) -> None:
    (venue / NOTE).write_text(note, "utf-8")
    (venue.parent / "letter.yml").write_text("mine", "utf-8")
    assert told(lambda: recover(venue)) == (
        ".housepack-unfinished is not what a change that was cut off leaves; look through the"
        " venue's files, then delete it [change-unfinished]"
    )
    assert texts(venue) == OLD
    assert (venue.parent / "letter.yml").read_text("utf-8") == "mine"


def test_permissions_links_and_the_byte_order_mark_stay(venue: Path) -> None:
    (venue / "sound.yml").write_bytes(saving.BOM + OLD["sound.yml"].encode())
    (venue / "sound.yml").chmod(0o640)
    (venue / "log.yml").rename(venue / "real.txt")
    (venue / "log.yml").symlink_to("real.txt")
    save(venue, BOTH)
    assert (venue / "sound.yml").read_bytes() == saving.BOM + NEW["sound.yml"].encode()
    assert (venue / "sound.yml").stat().st_mode & 0o777 == 0o640
    assert (venue / "log.yml").is_symlink()
    assert (venue / "real.txt").read_text() == NEW["log.yml"]


def test_a_name_that_leads_elsewhere_is_our_mistake(venue: Path) -> None:
    with pytest.raises(ValueError, match="file must be a plain name"):
        save(venue, [Rewrite("../x.yml", None, "")])
