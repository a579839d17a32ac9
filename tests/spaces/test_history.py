"""A house of several stages at an earlier revision of git."""

import shutil
import subprocess
from pathlib import Path

from builder.history import folder_at
from tests.spaces.houses import ROOMS, rooms


def test_the_files_of_every_space_are_read_from_git(tmp_path: Path) -> None:
    venue = tmp_path / "repository" / "venue"
    shutil.copytree(ROOMS, venue)
    name = ("-c", "user.name=crew", "-c", "user.email=crew@example.org")
    for words in (("init", "-q"), ("add", "-A"), (*name, "commit", "-q", "-m", "First")):
        subprocess.run(("git", *words), cwd=venue.parent, check=True)
    stage = venue / "spaces" / "hall" / "stage.yml"
    stage.write_text("nothing", "utf-8")
    assert folder_at(venue, "HEAD").folder.texts == rooms().texts
