"""
Builds that are killed: at every step at which something is written the site is the old one or the
new one, whole, and the next build leaves nothing of the dead one.
"""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from builder.document import Document
from builder.site import build as building
from builder.site.build import build_document
from builder.site.manifest import named
from builder.site.replacing import SiteFailed
from builder.site.workshop import workshop
from tests.site.sample import document
from tests.site.test_nothing_lost import contents, small

ROOT = Path(__file__).parents[2]
WRITING = frozenset(
    ("open", "os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.chmod", "tempfile.mkdtemp")
)


def killed_at(step: int, site: Path, *, one_step: bool) -> bool:
    """
    Build in a process of its own that is killed before a given step at which it would write.

    False where it never came so far, so that the build was done.
    """
    process = os.fork()
    if process == 0:
        left = step

        def count(event: str, _: object) -> None:
            nonlocal left
            left -= event in WRITING
            if left < 0 and event != "os.kill":
                os.kill(os.getpid(), signal.SIGKILL)

        try:
            if not one_step:
                building.swap_in.__globals__["exchanged"] = lambda *_: False
            sys.addaudithook(count)
            build_document(document(), site)
        finally:
            os._exit(0)
    _, status = os.waitpid(process, 0)
    return os.WIFSIGNALED(status)


@pytest.mark.parametrize("one_step", [True, False])
@pytest.mark.parametrize("stands", [True, False])
def test_a_build_killed_at_any_write_leaves_a_whole_site_and_the_next_build_no_rest(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, one_step: bool, stands: bool
) -> None:
    monkeypatch.setattr(building, "generate", small)
    site, steps = tmp_path / "site", 0
    if stands:
        build_document(document(), site)
    whole = contents(site)
    while killed_at(steps, site, one_step=one_step):
        steps += 1
        if one_step and stands:
            assert contents(site) == whole
        if site.exists():
            assert named(site) == ""
            assert not stands or contents(site) == whole
        # A build that fails puts right what the dead one left, too.
        with monkeypatch.context() as failing:
            failing.setattr(building, "generate", lambda *_: None)
            with pytest.raises(SiteFailed, match="wrote no"):
                build_document(document(), site)
        assert [path.name for path in tmp_path.iterdir()] in ([], ["site"])
        assert site.exists() or not stands
        assert not site.exists() or named(site) == ""
    assert steps > 30
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_a_live_builds_folder_is_left_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def meanwhile(given: Document, folder: Path) -> None:
        small(given, folder)
        with monkeypatch.context() as other:
            other.setattr(building, "generate", small)
            build_document(document(), tmp_path / "site")
        assert (folder / "index.html").exists()

    monkeypatch.setattr(building, "generate", meanwhile)
    build_document(document(), tmp_path / "site")
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_folders_that_are_only_named_alike_are_left_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(building, "generate", small)
    names = (".housepack-build-site-", ".housepack-build-other-abcd1234", ".site-backup", ".git")
    for name in names:
        (tmp_path / name).mkdir()
        (tmp_path / name / "letter.txt").write_text("mine", "utf-8")
    (tmp_path / ".housepack-build-site-abcd1234").mkdir()
    (tmp_path / ".housepack-build-site-abcd1234" / "letter.txt").write_text("mine", "utf-8")
    build_document(document(), tmp_path / "site")
    for name in (*names, ".housepack-build-site-abcd1234"):
        assert (tmp_path / name / "letter.txt").read_text("utf-8") == "mine"


def test_two_builds_at_once_leave_one_whole_site_and_no_rest(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(building, "generate", small)
    with workshop(tmp_path / "site"):
        build_document(document(), tmp_path / "site")
    assert [path.name for path in tmp_path.iterdir()] == ["site"]
    assert named(tmp_path / "site") == ""


SLOW = """
import sys, time
from pathlib import Path
from builder.site import build
build.generate = lambda _, made: ((made / "index.html").touch(), time.sleep(60))
build.build_document(None, Path(sys.argv[1]))
"""


def test_a_build_that_is_told_to_end_cleans_up_by_itself(tmp_path: Path) -> None:
    words = (sys.executable, "-c", SLOW, str(tmp_path / "site"))
    running = subprocess.Popen(words, stderr=subprocess.DEVNULL, cwd=ROOT)
    while not list(tmp_path.glob(".housepack-build-site-*/new/index.html")):
        assert running.poll() is None
        time.sleep(0.02)
    running.terminate()
    assert running.wait(60) != 0
    assert list(tmp_path.iterdir()) == []
