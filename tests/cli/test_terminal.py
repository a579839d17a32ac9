"""What somebody else wrote into a pack, a rider or a name of a file never orders the terminal."""

import ast
import json
import unicodedata
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from builder.cli import main

ROOT = Path(__file__).parents[2]
QUARRY = ROOT / "tests" / "venues" / "quarry"
RIDER = ROOT / "tests" / "riders" / "club.yml"
ORDERS = "\x1b[2J\x1b]0;owned\x07\x9b31m\u202e\r"


def run(*words: str) -> Result:
    """The command's result."""
    return CliRunner().invoke(main, list(words))


def ordering(value: Any, key: str = "") -> Any:
    """A pack's record with orders to a terminal behind every text that a house may word."""
    if isinstance(value, dict):
        return {name: ordering(part, name) for name, part in value.items()}
    if isinstance(value, list):
        return [ordering(part, key) for part in value]
    worded = ("venue", "name", "label", "text", "note", "sentence", "terms", "by", "number", "also")
    return value + ORDERS if key in worded and isinstance(value, str) else value


@pytest.fixture(scope="module")
def packs(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """A pack, and the same from a stranger."""
    folder = tmp_path_factory.mktemp("packs")
    plain, strange = folder / "plain.json", folder / "strange.json"
    run("pack", "--venue", str(QUARRY), "--to", str(plain))
    record = ordering(json.loads(plain.read_text("utf-8")))
    strange.write_text(json.dumps(record), "utf-8")
    return plain, strange


def assert_orders_nothing(result: Result) -> None:
    """No sign of the output is one that a terminal obeys."""
    hidden = {char for char in result.output if unicodedata.category(char) in ("Cc", "Cf", "Cs")}
    assert hidden <= {"\n"}
    assert "Traceback" not in result.output


@pytest.mark.parametrize("form", ["text", "markdown", "json"])
def test_a_strangers_pack_does_not(packs: tuple[Path, Path], form: str) -> None:
    plain, strange = map(str, packs)
    for words in (("fit", str(RIDER), "--pack", strange), ("changes", plain, strange)):
        result = run(*words, "--format", form)
        assert_orders_nothing(result)
        assert "U+001B" in result.output or "\\u001b" in result.output
    if form == "json":
        assert json.loads(result.output)["to"]["venue"].endswith(ORDERS)


@pytest.mark.parametrize("form", ["text", "markdown", "json"])
def test_a_strangers_rider_does_not(packs: tuple[Path, Path], tmp_path: Path, form: str) -> None:
    for number, act in enumerate(('"\\e[2J"', '"a\\x9b31m"', '"\\u202eA"', "'\x1b[2J'", "A")):
        rider = tmp_path / f"{number}.yml"
        rider.write_text(f"act: {act}\nneeds:\n  - {{what: '\x07moon'}}\n", "utf-8")
        result = run("fit", str(rider), "--pack", str(packs[0]), "--format", form)
        assert result.exit_code == 1
        assert_orders_nothing(result)


def test_the_name_of_a_file_does_not(tmp_path: Path) -> None:
    for name in ("\x1b[2Jhouse.yml", "a\nb.yml", "\u202estage.yml"):
        (tmp_path / name).write_text("town: A\n", "utf-8")
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / "\x1b[2J.png").write_bytes(b"\x89PNG\r\n\x1a\n")
    for form in ("text", "json"):
        result = run("check", "--venue", str(tmp_path), "--format", form)
        assert result.exit_code == 1
        assert_orders_nothing(result)
    (tmp_path / "site").mkdir()
    (tmp_path / "site" / "\x1b[2Jletter").touch()
    assert_orders_nothing(run("build", "--venue", str(QUARRY), "--to", str(tmp_path / "site")))


def test_the_commands_speak_through_one_place() -> None:
    speaking = []
    for path in sorted((ROOT / "builder").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            name = node.attr if isinstance(node, ast.Attribute) else getattr(node, "id", "")
            if name in ("echo", "secho", "print", "stdout", "stderr") and path.name != "telling.py":
                speaking.append(f"{path.relative_to(ROOT)}: {name}")
    assert speaking == ["builder/history.py: stdout"]
