"""
Small faults put into one room on purpose, to see whether its tests notice: ``make mutants``.

    python tests/mutants.py formulas --count 200 --seed 1

Each mutant is one change at one place (`faults/mutating.py`), drawn at random from all places of
the room with the seed. The room's tests run once and tell what each reaches (`faults/reaching.py`).
Then each mutant meets, in a copy of the tree and a process of its own (`faults/forking.py`), the
tests that reach its statement (`faults/planning.py`), up to the first that fails. A mutant that no
test notices survives and is printed with its line, so that somebody can look whether it means
anything; so does one that no test reaches. Not part of ``make test``: it takes minutes.
"""

import argparse
import math
import os
import sys
import tempfile
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent / "faults"))

from forking import Worker, each_by_a_worker, workers_in
from mutating import Mutant, files_of, mutants
from planning import BUDGET_S, Known, Plan, known_of, plan_of
from reaching import try_tests

ROOT = Path(__file__).parents[1]
FIRST_FILES = 3
"""So many files of tests run first, for most mutants end there, and each file costs its import."""
ROOMS: dict[str, tuple[str, ...]] = {
    "bearers": (
        "tests/bearers",
        "tests/fit/test_feeders_terms.py",
        "tests/fit/hangs/test_beams_terms.py",
    ),
    "both_ends": (
        "tests/both_ends",
        "tests/test_both_ends.py",
        "tests/test_state_unknown.py",
        "tests/test_knowing_less.py",
        "tests/departments/test_*_in_part.py",
        "tests/departments/test_half_known_places.py",
        "tests/departments/test_rigging_places_unknown.py",
    ),
    "by_configuration": (
        "tests/by_configuration",
        "tests/fit/arrangements/test_arrangements.py",
    ),
    "departments": (
        "tests/departments",
        "tests/test_golden.py",
        "tests/test_key_pages.py",
        "tests/test_oddities.py",
        "tests/test_turned_figures.py",
        "tests/test_alike_names.py",
        "tests/fit/test_power_*.py",
        "tests/fit/test_circuits.py",
        "tests/fit/hangs",
    ),
    "explaining": (
        "tests/explaining",
        "tests/test_explaining.py",
        "tests/test_key_pages.py",
        "tests/site/test_documentation.py",
    ),
    "house_only": (
        "tests/house_only",
        "tests/reading/test_house_only.py",
        "tests/stock/test_house_only.py",
        "tests/site/test_private.py",
    ),
    "overview": (
        "tests/overview",
        "tests/test_golden.py",
        "tests/test_workings.py",
        "tests/test_first_page_words.py",
        "tests/test_what_changed.py",
        "tests/test_elevation.py",
        "tests/test_configurations.py",
        "tests/test_still_useful.py",
        "tests/departments/test_house*.py",
        "tests/cli/test_cautions_beside_findings.py",
        "tests/site/test_ages.py",
        "tests/spaces",
    ),
    "render": (
        "tests/render",
        "tests/departments",
        "tests/test_golden.py",
        "tests/test_hostile_fields.py",
        "tests/test_alike_names.py",
        "tests/test_layout.py",
        "tests/test_elevation.py",
        "tests/test_workings.py",
        "tests/test_what_changed.py",
        "tests/spaces",
    ),
    "site": ("tests/site",),
    "shows": (
        "tests/shows",
        "tests/cli/test_shows.py",
        "tests/cli/test_net.py",
        "tests/spaces/test_one_space_is_meant.py",
        "tests/site/test_private.py",
    ),
    "spaces": ("tests/spaces", "tests/fit/spaces", "tests/site/test_spaces_page.py"),
    "stock": (
        "tests/stock",
        "tests/cli/test_stock.py",
        "tests/cli/test_changes.py",
        "tests/cli/test_upgrade.py",
        "tests/test_saving.py",
        "tests/test_what_changed.py",
        "tests/spaces/test_what_changed.py",
    ),
    "fit": ("tests/fit", "tests/rider", "tests/test_net_of_needs.py"),
    "reading": (
        "tests/reading",
        "tests/test_oddities.py",
        "tests/test_mistakes.py",
        "tests/test_leaning.py",
        "tests/test_key_pages.py",
        "tests/test_schemas.py",
    ),
    "rider": ("tests/rider", "tests/cli/test_fit.py", "tests/test_net_of_needs.py"),
    "cli": (
        "tests/cli",
        "tests/test_confirming.py",
        "tests/test_explaining.py",
        "tests/test_line_ends.py",
        "tests/test_bad_input.py",
    ),
    "compiling": ("tests/compiling", "tests/site/test_bundling.py"),
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
