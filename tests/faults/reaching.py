"""
Which tests reach which statement, and a run of chosen tests.

While the tests of a room run once, each statement of the room is compiled with a mark before it
that writes its number down. Files stay as they are, so what reads them (the compiler to the
browser's script) reads what was written. A statement that ran while a test's file was imported
counts for every test of the file. So do marks made by one test of a file for the other ones, in
the second place, for a test may live on what an earlier one left in a cache.
"""

import ast
import builtins
import json
import sys
import time
from collections.abc import Generator
from dataclasses import dataclass, field
from importlib.machinery import SourceFileLoader
from pathlib import Path
from types import CodeType
from typing import Any

import pytest
from hypothesis import Phase, settings

Line = str
"""A statement: the path from the tree's root, a colon, the number of its line."""
MARKS = "__reached__"
UNSHRUNK = "the first failure will do"
settings.register_profile(
    UNSHRUNK, deadline=None, database=None, phases=[Phase.explicit, Phase.generate]
)
LEAN = (
    "-q",
    "--tb=no",
    "--assert=plain",
    "--disable-plugin-autoload",
    *("-p", "xdist.plugin", "-n", "0"),
    *("-p", "_hypothesis_pytestplugin", f"--hypothesis-profile={UNSHRUNK}"),
    *("-p", "no:cacheprovider", "-p", "no:unraisableexception", "-p", "no:threadexception"),
)
"""Pytest without what costs time and changes no verdict of a test."""


@dataclass(slots=True)
class Reached:
    """One test: its seconds of a processor, whether it passed, the statements that it ran."""

    test: str
    seconds: float
    passed: bool = True
    lines: set[Line] = field(default_factory=set)

    @property
    def file(self) -> str:
        """The file of the test."""
        return self.test.split("::", 1)[0]


class Marked(ast.NodeTransformer):
    """Puts a mark before each statement: not a call, for some tests count calls."""

    def __init__(self, path: str) -> None:
        self.path = path

    def generic_visit(self, node: ast.AST) -> ast.AST:
        super().generic_visit(node)
        for name in ("body", "orelse", "finalbody"):
            block = getattr(node, name, None)
            if isinstance(block, list) and block:
                setattr(node, name, self.marked(block, documented=name == "body"))
        return node

    def marked(self, block: list[ast.stmt], *, documented: bool) -> list[ast.stmt]:
        """A block with its marks; what must stand first stays first."""
        first = 1 if documented and is_docstring(block[0]) else 0
        marked = block[:first]
        for statement in block[first:]:
            marked += [statement] if is_future(statement) else [self.mark(statement), statement]
        return marked

    def mark(self, statement: ast.stmt) -> ast.stmt:
        """The mark of one statement."""
        text = f"{MARKS}[{f'{self.path}:{statement.lineno}'!r}] = None"
        mark = ast.parse(text).body[0]
        for node in ast.walk(mark):
            ast.copy_location(node, statement)
        return mark


def is_docstring(statement: ast.stmt) -> bool:
    """Whether a statement is a text alone."""
    return isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Constant)


def is_future(statement: ast.stmt) -> bool:
    """Whether a statement must stand before all others."""
    return isinstance(statement, ast.ImportFrom) and statement.module == "__future__"


def mark_on_import(tree: Path, paths: list[str]) -> dict[Line, None]:
    """From now on these files are imported with marks; what is reached gathers in the result."""
    reached: dict[Line, None] = {}
    setattr(builtins, MARKS, reached)
    by_file = {str(tree / path): path for path in paths}
    unmarked = SourceFileLoader.get_code

    def get_code(loader: SourceFileLoader, name: str) -> CodeType | None:
        path = by_file.get(loader.path)
        if path is None:
            return unmarked(loader, name)
        marked = Marked(path).visit(ast.parse(Path(loader.path).read_text("utf-8")))
        return compile(ast.fix_missing_locations(marked), loader.path, "exec", dont_inherit=True)

    SourceFileLoader.get_code = get_code  # type: ignore[method-assign,assignment]
    return reached


class Recorder:
    """Notes for each test what it reached; what was reached while importing goes to each."""

    def __init__(self, marks: dict[Line, None]) -> None:
        self.marks = marks
        self.imported: set[Line] = set()
        self.tests: dict[str, Reached] = {}

    def pytest_collection_finish(self) -> None:
        self.imported = set(self.marks)

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Generator[None, object, object]:
        self.marks.clear()
        began = time.process_time()
        done = yield
        spent = time.process_time() - began
        test = self.tests.setdefault(item.nodeid, Reached(item.nodeid, spent))
        test.seconds, test.lines = spent, set(self.marks)
        return done

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if not report.passed:
            self.tests.setdefault(report.nodeid, Reached(report.nodeid, 0)).passed = False

    def written(self) -> str:
        """All that was noted, as JSON."""
        tests = [[t.test, t.seconds, t.passed, sorted(t.lines)] for t in self.tests.values()]
        return json.dumps({"imported": sorted(self.imported), "tests": tests})


class Chosen:
    """Runs the chosen tests alone, in their order."""

    def __init__(self, tests: list[str]) -> None:
        self.order = {test: number for number, test in enumerate(tests)}

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        chosen = [item for item in items if item.nodeid in self.order]
        items[:] = sorted(chosen, key=lambda item: self.order[item.nodeid])


class WithoutBrowser:
    """Leaves out what needs a browser: a start of one costs more than a mutant may."""

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = [item for item in items if "browser" not in getattr(item, "fixturenames", ())]


def record(file: str, paths: list[str], written: str, browser: bool) -> int:
    """Run one file of tests and write down what each reached."""
    recorder = Recorder(mark_on_import(Path.cwd(), paths))
    status = pytest_run([file], [recorder] if browser else [recorder, WithoutBrowser()])
    Path(written).write_text(recorder.written(), "utf-8")
    return status


def try_tests(tests: list[str]) -> int:
    """Run tests up to the first that fails, and end as pytest does."""
    sys.dont_write_bytecode = True
    files = list(dict.fromkeys(test.split("::", 1)[0] for test in tests))
    return pytest_run(["-x", *files], [Chosen(tests)])


def pytest_run(arguments: list[str], plugins: list[Any]) -> int:
    """The exit status of pytest, with no more of it than the tests need."""
    return int(pytest.main([*LEAN, *arguments], plugins=plugins))
