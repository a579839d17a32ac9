"""
What a command loads: only what it needs, so that it answers at once.

No test looks at the clock.
"""

import subprocess
import sys
from pathlib import Path

from builder.cli import main
from tests.cli.test_fit import DEMO, RIDERS, run

HEAVY = ("numpy", "builder.pipeline", "builder.registry", "builder.departments")
LOADED = f"; import sys; print([name for name in {HEAVY} if name in sys.modules])"


def loaded_by(words: list[str]) -> str:
    """Which heavy modules a command has loaded when it ends, in an interpreter of its own."""
    code = (
        "from click.testing import CliRunner; from builder.cli import main;"
        f" CliRunner().invoke(main, {words})" + LOADED
    )
    return subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    ).stdout.strip()


def test_help_loads_no_department() -> None:
    for name in ("", *main.commands):
        assert loaded_by([*name.split(), "--help"]) == "[]", name


def test_a_show_day_against_a_pack_file_loads_no_department(tmp_path: Path) -> None:
    pack = str(tmp_path / "pack.json")
    assert run("pack", *DEMO, "--to", pack).exit_code == 0
    assert (
        loaded_by(["fit", str(RIDERS / "theatre.yml"), str(RIDERS / "club.yml"), "--pack", pack])
        == "[]"
    )
    assert loaded_by(["fit", str(RIDERS / "theatre.yml"), *DEMO]) != "[]"
