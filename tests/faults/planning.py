"""Which tests meet a small fault, and in which order: what reaches it first, quick ones first."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from forking import Worker, each_by_a_worker
from mutating import Mutant
from reaching import Reached, record

BUDGET_S = 6.0
"""
How long the tests of one mutant may take, unless `--seconds` says so: seconds of a processor, by
what they took without it, so that a busy machine leaves out no more of them.
"""


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
