"""
Small faults put into one room on purpose, to see whether its tests notice: ``make mutants``.

    python tests/mutants.py formulas --count 200 --seed 1

Each mutant is one change at one place (`mutating.py`), drawn at random from all places of the room
with the seed. The room's tests run once and tell what each reaches (`reaching.py`). Then each
mutant meets, in a copy of the tree and a process of its own, the tests that reach its statement,
up to the first that fails. A mutant that no test notices survives and is printed with its line, so
that somebody can look whether it means anything; so does one that no test reaches. Not part of
``make test``: it takes minutes.
"""

import argparse
import compileall
import json
import math
import os
import shutil
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import groupby
from multiprocessing import get_context
from pathlib import Path
from queue import Queue
from typing import Any, TypeVar

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from importing import modules_apart, name_of
from mutating import Mutant, files_of, mutants
from reaching import Reached, record, serve, try_tests

Answer = TypeVar("Answer")
SPAWNING = get_context("spawn")

ROOT = Path(__file__).parents[1]
COPIED = ("builder", "tests", "docs", "venue", "schemas", "pyproject.toml", "CHANGELOG.md")
BUDGET_S = 6.0
"""
How long the tests of one mutant may take, unless `--seconds` says so: seconds of a processor, by
what they took without it, so that a busy machine leaves out no more of them.
"""
FIRST_FILES = 3
"""So many files of tests run first, for most mutants end there, and each file costs its import."""
WHOLE = ("tests/test_*.py",)
PAGES = ("tests/departments", *WHOLE)
ROOMS: dict[str, tuple[str, ...]] = {
    "departments": PAGES,
    "overview": (*PAGES, "tests/shows"),
    "render": ("tests/render", *PAGES),
    "site": ("tests/site",),
    "stock": ("tests/stock", "tests/cli/test_stock.py", "tests/cli/test_changes.py"),
    "fit": ("tests/fit", "tests/rider", "tests/test_net_of_needs.py"),
    "rider": ("tests/rider", "tests/cli/test_fit.py", "tests/test_net_of_needs.py"),
    "cli": ("tests/cli",),
}
"""The tests of a room, where they are more than the folder of its name."""
WITH_BROWSER = ("site", "compiling")
"""Rooms whose work is seen in a browser alone."""

SURVIVED, NOT_REACHED = "survived", "not reached"
ENDS: dict[object, str] = {
    int(pytest.ExitCode.OK): SURVIVED,
    int(pytest.ExitCode.NO_TESTS_COLLECTED): SURVIVED,
    int(pytest.ExitCode.TESTS_FAILED): "by a test",
    int(pytest.ExitCode.INTERRUPTED): "at import",
    None: "without an end",
}
"""What the end of its tests says of a mutant. What never ends is noticed by whoever waits."""
AT_OTHER_STATUS = "by a crash"


@dataclass(frozen=True, slots=True)
class Known:
    """What the room's tests reach: each test, and each file's imports."""

    tests: list[Reached]
    imported: dict[str, set[str]]


@dataclass(frozen=True, slots=True)
class Plan:
    """The tests of one mutant in their order, and how many more there were no time for."""

    tests: list[str]
    seconds: float
    left_out: int


@dataclass(frozen=True, slots=True)
class Tried:
    """What became of a mutant: an end of `ENDS` or `AT_OTHER_STATUS`, `survived`, `not reached`."""

    mutant: Mutant
    end: str
    left_out: int


def test_files(room: str, named: list[str]) -> list[str]:
    """The files of the room's tests, as paths from the root."""
    top = room.split("/", 1)[0]
    patterns = named or ROOMS.get(top, (f"tests/{top}", f"tests/test_{top}*.py"))
    found = [path for pattern in patterns for path in sorted(ROOT.glob(pattern))]
    files = [
        file
        for path in found
        for file in (sorted(path.rglob("test_*.py")) if path.is_dir() else [path])
    ]
    return list(dict.fromkeys(str(file.relative_to(ROOT)) for file in files))


def copy_of_the_tree(root: Path, folder: Path) -> Path:
    """A copy in which files may be broken."""
    folder.mkdir()
    for source in (root / name for name in COPIED):
        if source.is_dir():
            ignored = shutil.ignore_patterns("__pycache__")
            shutil.copytree(source, folder / source.name, ignore=ignored)
        elif source.exists():
            shutil.copy2(source, folder / source.name)
    for name in ("builder", "tests"):
        compileall.compile_dir(folder / name, quiet=2)
    return folder


class Worker:
    """A copy of the tree and a process that stands ready in it: see `serve`."""

    def __init__(self, tree: Path, paths: list[str]) -> None:
        self.tree = tree
        self.connection, theirs = SPAWNING.Pipe()
        apart = modules_apart(tree, paths)
        room = [name_of(tree / path, tree) for path in paths]
        self.process = SPAWNING.Process(target=serve, args=(str(tree), apart, room, theirs))
        self.process.start()
        theirs.close()

    def status_of(self, action: Callable[..., None], *arguments: object, seconds: int) -> object:
        """The exit status of an action in a process of its own; None where it had to be ended."""
        self.connection.send((action, arguments, seconds))
        return self.connection.recv()

    def end(self) -> None:
        """Let the process end."""
        self.connection.send(None)
        self.process.join()


@contextmanager
def workers_in(folder: Path, root: Path, room: str, count: int) -> Iterator[list[Worker]]:
    """So many workers, each in a tree of its own, with all imported that the room cannot reach."""
    trees = [copy_of_the_tree(root, folder / str(number)) for number in range(count)]
    workers = [Worker(tree, files_of(root, room)) for tree in trees]
    try:
        yield workers
    finally:
        for worker in workers:
            worker.end()


def each_by_a_worker(
    action: Callable[[Worker, Any], Answer], cases: Iterable[Any], workers: list[Worker]
) -> list[Answer]:
    """What the workers answer, each at one case at a time, in the order of the cases."""
    free: Queue[Worker] = Queue()
    for worker in workers:
        free.put(worker)

    def by_a_free_one(case: object) -> Answer:
        worker = free.get()
        try:
            return action(worker, case)
        finally:
            free.put(worker)

    with ThreadPoolExecutor(len(workers)) as pool:
        return list(pool.map(by_a_free_one, cases))


def known_of(workers: list[Worker], files: list[str], paths: list[str], browser: bool) -> Known:
    """Run each file of tests once, and gather what its tests reach."""

    def recorded(worker: Worker, file: str) -> dict[str, Any]:
        written = worker.tree / "reached.json"
        written.unlink(missing_ok=True)
        worker.status_of(record, file, paths, str(written), browser, seconds=600)
        return json.loads(written.read_text("utf-8")) if written.exists() else {}

    every = each_by_a_worker(recorded, files, workers)
    return gathered(dict(zip(files, every, strict=True)))


def gathered(every: dict[str, dict[str, list]]) -> Known:
    """What was recorded of all files. A file or test that fails without a mutant is told."""
    tests: list[Reached] = []
    for file, written in every.items():
        if not written:
            print(f"left out, for it does not end: {file}")
        for test, seconds, passed, lines in written.get("tests", []):
            tests.append(Reached(test, seconds, passed, set(lines)))
    for test in tests:
        if not test.passed:
            print(f"left out, for it is skipped or fails without a mutant: {test.test}")
    return Known(
        [test for test in tests if test.passed],
        {file: set(written.get("imported", [])) for file, written in every.items()},
    )


def plan_of(mutant: Mutant, known: Known, budget_s: float) -> Plan:
    """
    The tests of a mutant: those that run its statement, then the others of their files. Where the
    statement runs at import, those that run anything of its file come first.
    """
    place = f"{mutant.path}:{mutant.statement}"
    importing = {file for file, lines in known.imported.items() if place in lines}
    reaching = [test for test in known.tests if reaches(test, place, importing, mutant.path)]
    files = {test.file for test in reaching} | importing
    ids = {test.test for test in reaching}
    others = [test for test in known.tests if test.file in files and test.test not in ids]
    return within_budget([*quick_first(reaching), *quick_first(others)], budget_s)


def reaches(test: Reached, place: str, importing: set[str], path: str) -> bool:
    """Whether a test runs a statement, or any of a file whose statement ran at import."""
    if place in test.lines:
        return True
    return test.file in importing and any(line.startswith(f"{path}:") for line in test.lines)


def quick_first(tests: Iterable[Reached]) -> list[Reached]:
    """Quick files first, and in a file quick tests: a file's tests stay together."""
    by_file = [list(group) for _, group in groupby(tests, key=lambda test: test.file)]
    by_file.sort(key=lambda group: sum(test.seconds for test in group))
    return [test for group in by_file for test in sorted(group, key=lambda test: test.seconds)]


def within_budget(tests: list[Reached], budget_s: float) -> Plan:
    """As many tests as there is time for, in their order; the first in any case."""
    chosen: list[str] = []
    spent = 0.0
    for test in tests:
        if not chosen or spent + test.seconds <= budget_s:
            chosen.append(test.test)
            spent += test.seconds
    return Plan(chosen, spent, len(tests) - len(chosen))


def tried(mutant: Mutant, worker: Worker, known: Known, budget_s: float) -> Tried:
    """Put a mutant into a tree, run its tests, and take it out again, to the file's very time."""
    plan = plan_of(mutant, known, budget_s)
    if not plan.tests:
        return Tried(mutant, NOT_REACHED, 0)
    target = worker.tree / mutant.path
    before, times = target.read_bytes(), target.stat()
    target.write_text(mutant.text, "utf-8")
    try:
        end = end_of(worker, plan)
    finally:
        target.write_bytes(before)
        os.utime(target, ns=(times.st_atime_ns, times.st_mtime_ns))
    return Tried(mutant, end, plan.left_out)


def end_of(worker: Worker, plan: Plan) -> str:
    """What becomes of a mutant in its place: at the first tests, else at the others."""
    files = list(dict.fromkeys(test.split("::", 1)[0] for test in plan.tests))[:FIRST_FILES]
    first = [test for test in plan.tests if test.split("::", 1)[0] in files]
    end = SURVIVED
    for tests in (first, [test for test in plan.tests if test not in set(first)]):
        if tests and end == SURVIVED:
            status = worker.status_of(try_tests, tests, seconds=5 + 4 * math.ceil(plan.seconds))
            end = ENDS.get(status, AT_OTHER_STATUS)
    return end


def lives(one: Tried) -> bool:
    """Whether no test noticed a mutant."""
    return one.end in (SURVIVED, NOT_REACHED)


def summary(room: str, seed: int, results: list[Tried]) -> str:
    """The share of a room's mutants that was noticed, and how."""
    noticed = Counter(one.end for one in results if not lives(one))
    share = f"{noticed.total() / len(results):.1%}" if results else "none"
    how = ", ".join(f"{count} {end}" for end, count in noticed.most_common())
    return f"{room}: {noticed.total()} of {len(results)} noticed, {share}, seed {seed} ({how})"


def line_of(one: Tried) -> str:
    """One mutant that lives, and why its tests may not be the reason."""
    changed = f"{one.mutant.path}:{one.mutant.line}: {one.mutant.was}  ->  {one.mutant.now}"
    reached = f" ({NOT_REACHED})" if one.end == NOT_REACHED else ""
    return changed + reached + (f" ({one.left_out} tests not run, for time)" * bool(one.left_out))


def is_wanted(mutant: Mutant, only: list[str]) -> bool:
    """Whether a mutant's file, or its file and line, is among those asked for; all if none is."""
    return not only or mutant.path in only or f"{mutant.path}:{mutant.line}" in only


def run(
    root: Path,
    room: str,
    drawn: list[Mutant],
    *,
    tests: list[str],
    workers: int = 2,
    budget_s: float = BUDGET_S,
) -> list[Tried]:
    """
    Record what the tests of a room reach, then try its mutants in copies of the tree. Those that
    live are printed at once.
    """
    browser = room.split("/", 1)[0] in WITH_BROWSER
    with (
        tempfile.TemporaryDirectory(prefix="mutants-") as folder,
        workers_in(Path(folder), root, room, workers) as ready,
    ):
        known = known_of(ready, tests, files_of(root, room), browser)

        def tell(worker: Worker, mutant: Mutant) -> Tried:
            one = tried(mutant, worker, known, budget_s)
            if lives(one):
                print(line_of(one), flush=True)
            return one

        return each_by_a_worker(tell, drawn, ready)


def main() -> int:
    """Read the command line."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("room", help="a room or file below builder/, such as formulas or fit")
    reader.add_argument("--count", type=int, default=200)
    reader.add_argument("--seed", type=int, default=1)
    reader.add_argument("--workers", type=int, default=2)
    reader.add_argument("--tests", nargs="*", default=[], help="the room's own when left out")
    reader.add_argument(
        "--only", nargs="*", default=[], help="of those drawn, these files or lines"
    )
    reader.add_argument("--seconds", type=float, default=BUDGET_S, help="of tests for one mutant")
    given = reader.parse_args()
    drawn = mutants(ROOT, given.room, given.count, given.seed)
    wanted = [mutant for mutant in drawn if is_wanted(mutant, given.only)]
    files = test_files(given.room, given.tests)
    results = run(
        ROOT,
        given.room,
        wanted,
        tests=files,
        workers=given.workers,
        budget_s=given.seconds,
    )
    print(summary(given.room, given.seed, results))
    return 0


if __name__ == "__main__":
    sys.exit(main())
