"""The tool that puts small faults into a room: what it notices, and what it says of the rest."""

import ast
from importlib import import_module
from pathlib import Path

import pytest

from tests.faults.importing import modules_apart
from tests.mutants import Mutant, files_of, mutants, run, summary

ROOM = """
LIMIT = 10


def passes(load):
    return load > LIMIT


def unread(load):
    return load * 3


def uncalled(load):
    return load - 1


def kept(load):
    return load + 5
"""
TESTS = """
import functools

from builder.room import kept, passes, unread

first = functools.cache(kept)


def test_a_load_passes_above_ten():
    assert not passes(10)
    assert passes(11)


def test_that_looks_at_nothing():
    unread(2)


def test_that_fills_a_cache():
    first(1)


def test_that_lives_on_the_cache():
    assert first(1) == 6


def test_that_fails_by_itself():
    assert passes(0)
"""


def small_tree(folder: Path) -> Path:
    """A tree of one room and its tests."""
    for name, text in (
        ("builder/__init__", ""),
        ("builder/room", ROOM),
        ("tests/test_room", TESTS),
    ):
        file = folder / f"{name}.py"
        file.parent.mkdir(exist_ok=True)
        file.write_text(text, "utf-8")
    return folder


def test_what_no_test_looks_at_survives_and_all_else_is_noticed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    tree = small_tree(tmp_path)
    drawn = mutants(tree, "room", 100, seed=1)
    unchanged = Mutant("builder/room.py", 6, 6, "the same", "the same", ROOM)
    results = run(tree, "room", [*drawn, unchanged], tests=["tests/test_room.py"])
    ends = {(one.mutant.was, one.mutant.line): one.end for one in results}
    assert ends == {
        ("10", 2): "by a test",
        ("load > LIMIT", 6): "by a test",
        ("load * 3", 10): "survived",
        ("3", 10): "survived",
        ("load - 1", 14): "not reached",
        ("1", 14): "not reached",
        ("load + 5", 18): "by a test",
        ("5", 18): "by a test",
        ("the same", 6): "survived",
    }
    assert (tree / "builder" / "room.py").read_text("utf-8") == ROOM
    printed = capsys.readouterr().out.splitlines()
    failing = "tests/test_room.py::test_that_fails_by_itself"
    assert f"left out, for it is skipped or fails without a mutant: {failing}" in printed
    assert "builder/room.py:10: load * 3  ->  load / 3" in printed
    assert "builder/room.py:14: load - 1  ->  load + 1 (not reached)" in printed
    told = summary("room", 1, results)
    assert told == "room: 4 of 9 noticed, 44.4%, seed 1 (4 by a test)"


def test_the_same_seed_draws_the_same_mutants_and_each_is_another_program(tmp_path: Path) -> None:
    tree = small_tree(tmp_path)
    assert files_of(tree, "room") == ["builder/room.py"]
    one, again = mutants(tree, "room", 4, seed=7), mutants(tree, "room", 4, seed=7)
    assert one == again
    assert len(one) == 4
    as_written = ast.unparse(ast.parse(ROOM))
    assert all(each.text != as_written for each in mutants(tree, "room", 100, seed=7))


def test_what_stands_apart_imports_no_file_of_the_room_not_even_through_others(
    tmp_path: Path,
) -> None:
    for name, text in (
        ("__init__", ""),
        ("room", ""),
        ("near", "from builder.room import LIMIT"),
        ("far", "def later():\n    import builder.near\n"),
        ("apart", "from builder import alone"),
        ("alone", "import math"),
        ("cli/__init__", "from builder import far"),
        ("cli/within", "import math"),
    ):
        file = tmp_path / "builder" / f"{name}.py"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, "utf-8")
    apart = modules_apart(tmp_path, ["builder/room.py"])
    assert apart == ["builder", "builder.alone", "builder.apart"]


def test_what_is_told_of_a_fault_and_decorators_and_annotations_stay(tmp_path: Path) -> None:
    tree = small_tree(tmp_path)
    (tree / "builder" / "room.py").write_text(
        "@cited(1)\ndef passes(load: Literal[1]) -> Literal[2]:\n    raise ValueError(load + 1)\n"
    )
    assert mutants(tree, "room", 100, seed=1) == []


def test_quick_files_come_first_and_time_is_bounded() -> None:
    planning = import_module("planning")
    tests = [
        planning.Reached("slow.py::one", 5),
        planning.Reached("slow.py::two", 2.5),
        planning.Reached("quick.py::one", 2),
        planning.Reached("quick.py::two", 1),
    ]
    plan = planning.within_budget(planning.quick_first(tests), 6)
    assert plan.tests == ["quick.py::two", "quick.py::one", "slow.py::two"]
    assert (plan.seconds, plan.left_out) == (5.5, 1)
    assert planning.within_budget(tests[:1], 1).tests == ["slow.py::one"]
