"""
Small faults put into one room on purpose, to see whether its tests notice: ``make mutants``.

    python tests/mutants.py formulas --count 200 --seed 1

Each mutant is one change at one place, drawn at random from all places of the room with the seed.
The room's own tests run on a copy of the tree, those that name the changed module first. A mutant
that no test notices survives and is printed with its line, so that somebody can look whether it
means anything. Not part of ``make test``: it takes long.
"""

import argparse
import ast
import random
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import Queue

ROOT = Path(__file__).parents[1]
COPIED = ("builder", "tests", "docs", "venue", "schemas", "pyproject.toml", "CHANGELOG.md")
SECONDS = 300
WITHOUT_MEANING = (
    "a text that only a person reads at a fault of the program (raise ValueError)",
    "a docstring, an annotation, a default of __slots__ or of a cache",
)
SWAPPED: dict[type[ast.AST], type[ast.AST]] = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.And: ast.Or,
    ast.Or: ast.And,
}
"""Operators, each with the one that takes its place."""


@dataclass(frozen=True, slots=True)
class Mutant:
    """One change at one place of one file."""

    file: Path
    line: int
    was: str
    now: str
    text: str


def places(tree: ast.Module) -> Iterator[ast.AST]:
    """Every node that can be changed with meaning."""
    passed_over: set[int] = set()
    for node in ast.walk(tree):
        for part in without_meaning(node):
            passed_over.update(id(each) for each in ast.walk(part))
    for node in ast.walk(tree):
        if id(node) not in passed_over and is_changeable(node):
            yield node


def without_meaning(node: ast.AST) -> Iterator[ast.AST]:
    """The parts of a node whose change no test should notice."""
    if isinstance(node, ast.Raise):
        yield node
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        yield node
    if isinstance(node, ast.FunctionDef):
        yield from node.decorator_list
        yield from (part.annotation for part in node.args.args if part.annotation is not None)
    if isinstance(node, ast.AnnAssign):
        yield node.annotation
    if isinstance(node, ast.ClassDef):
        yield from node.decorator_list


def is_changeable(node: ast.AST) -> bool:
    """Whether an operator knows a change for this node."""
    if isinstance(node, ast.Compare):
        return len(node.ops) == 1
    if isinstance(node, ast.BinOp):
        return type(node.op) in SWAPPED
    if isinstance(node, ast.Constant):
        return type(node.value) in (int, float)
    return isinstance(node, ast.BoolOp | ast.If | ast.IfExp) or (
        isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not | ast.USub)
    )


def change(node: ast.AST, draw: random.Random) -> None:
    """Change a node in place."""
    if isinstance(node, ast.Compare):
        node.ops = [SWAPPED[type(node.ops[0])]()]  # type: ignore[list-item]
    elif isinstance(node, ast.BinOp | ast.BoolOp):
        node.op = SWAPPED[type(node.op)]()  # type: ignore[assignment]
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        node.value = draw.choice([node.value + 1, node.value - 1, node.value * 2 + 3])
    elif isinstance(node, ast.If | ast.IfExp):
        node.test = ast.UnaryOp(ast.Not(), node.test)
    elif isinstance(node, ast.UnaryOp):
        node.op = ast.UAdd() if isinstance(node.op, ast.USub) else ast.Not()
        if isinstance(node.op, ast.Not):
            node.operand = ast.UnaryOp(ast.Not(), node.operand)


def mutants(room: Path, count: int, seed: int) -> list[Mutant]:
    """So many mutants of a room, drawn from all its places alike."""
    draw = random.Random(seed)
    every = [
        (file, number)
        for file in sorted([room] if room.suffix else room.rglob("*.py"))
        for number, _ in enumerate(places(ast.parse(file.read_text("utf-8"))))
    ]
    return [
        mutant(file, number, draw) for file, number in draw.sample(every, min(count, len(every)))
    ]


def mutant(file: Path, number: int, draw: random.Random) -> Mutant:
    """The mutant of one place."""
    tree = ast.parse(file.read_text("utf-8"))
    node = list(places(tree))[number]
    was = ast.unparse(node).splitlines()[0]
    change(node, draw)
    now = ast.unparse(node).splitlines()[0]
    return Mutant(
        file, getattr(node, "lineno", 0), was, now, ast.unparse(ast.fix_missing_locations(tree))
    )


def tests_for(file: Path, room_tests: list[Path]) -> list[str]:
    """The tests of a room, those that name the module first."""
    module = ".".join(file.relative_to(ROOT).with_suffix("").parts)
    named = re.compile(rf"\b{re.escape(module)}\b")
    stem = file.stem.strip("_")
    files = [path for place in room_tests for path in sorted(place.rglob("test_*.py"))]
    near = [path for path in files if named.search(path.read_text("utf-8")) or stem in path.stem]
    return [str(path.relative_to(ROOT)) for path in [*near, *(p for p in files if p not in near)]]


def survives(mutant: Mutant, tree: Path, tests: list[str]) -> bool:
    """Whether the tests pass with the mutant in its place."""
    target = tree / mutant.file.relative_to(ROOT)
    before = target.read_text("utf-8")
    target.write_text(mutant.text, "utf-8")
    command = [
        sys.executable,
        "-m",
        "pytest",
        "-x",
        "-q",
        "-n",
        "0",
        "-p",
        "no:cacheprovider",
        *tests,
    ]
    try:
        ran = subprocess.run(command, cwd=tree, capture_output=True, timeout=SECONDS, check=False)
        return ran.returncode == 0
    except subprocess.TimeoutExpired:
        return False  # a loop that never ends is noticed
    finally:
        target.write_text(before, "utf-8")


def copy_of_the_tree(folder: Path) -> Path:
    """A copy in which files may be broken."""
    for name in COPIED:
        source = ROOT / name
        if source.is_dir():
            ignored = shutil.ignore_patterns("__pycache__")
            shutil.copytree(source, folder / name, ignore=ignored)
        else:
            shutil.copy(source, folder / name)
    return folder


def run(room: str, count: int, seed: int, workers: int, tests: list[Path]) -> int:
    """Try the mutants of one room; print those that survive, and the share that was noticed."""
    place = ROOT / "builder" / room
    drawn = mutants(place if place.exists() else place.with_suffix(".py"), count, seed)
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        trees: Queue[Path] = Queue()
        for number in range(workers):
            trees.put(copy_of_the_tree(Path(folder) / str(number)))

        def tried(one: Mutant) -> tuple[Mutant, bool]:
            tree = trees.get()
            try:
                return one, survives(one, tree, tests_for(one.file, tests))
            finally:
                trees.put(tree)

        with ThreadPoolExecutor(workers) as pool:
            results = list(pool.map(tried, drawn))
    alive = [one for one, lives in results if lives]
    for one in alive:
        print(f"{one.file.relative_to(ROOT)}:{one.line}: {one.was}  ->  {one.now}")
    killed = len(results) - len(alive)
    print(f"{room}: {killed} of {len(results)} noticed, {killed / len(results):.0%}, seed {seed}")
    return 0


def main() -> int:
    """Read the command line."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("room", help="a room or file below builder/, such as formulas or fit")
    reader.add_argument("--count", type=int, default=200)
    reader.add_argument("--seed", type=int, default=1)
    reader.add_argument("--workers", type=int, default=2)
    reader.add_argument("--tests", nargs="*", help="folders of tests; the room's own when left out")
    given = reader.parse_args()
    named = given.tests or [f"tests/{given.room}"]
    return run(given.room, given.count, given.seed, given.workers, [ROOT / name for name in named])


if __name__ == "__main__":
    sys.exit(main())
