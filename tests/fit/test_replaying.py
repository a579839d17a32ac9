"""
The replay of recorded calls: it tells a wrong translation from a right one, and what it cannot
replay is known by name.
"""

import ast
import importlib
import inspect
import math
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from builder.compiling.program import compiled
from builder.fit.wording import lasting
from tests.compiling.script import RUNTIME
from tests.fit.recording import NotPlainError, Recorded, is_compiled, plain, recording
from tests.fit.replaying import OFFERED_AS, differences, replay_script

HERE = Path(__file__).parent
ROOM = "builder.sample"
SOURCE = """
def added(one: float, other: float) -> float:
    if one > 100.0:
        raise ValueError("one must be at most 100")
    return one + other

def same(number: float) -> float:
    return number

def names_of(counts: dict[str, int]) -> list[str]:
    return [name for name in counts if counts[name] > 1]
"""
STAYS_IN_PYTHON = {
    "builder.bearers.borne.bearing": "makes what the check reads, from the pack's own records",
    "builder.bearers.telling.section_as_told": "makes what the pages read, from a section",
    "builder.departments.access.publish.publish": "makes a section of a pack",
    "builder.files.read_folder": "reads files",
    "builder.fit.published.checked": "makes what the check reads, from the pack's own records",
    "builder.fit.published.fit_record": "makes what the check reads, from the pack's own records",
    "builder.fit.published.rule_record": "makes what the check reads, from the pack's own records",
    "builder.fit.published.section_record": "makes what the check reads, from a pack's records",
    "builder.fit.published.value_record": "makes what the check reads, from the pack's own records",
    "builder.fit.wanted.wanted_of": "tells what the check reads, from the pack's own rules",
    "builder.formulas.slack.each_slack": "the house's own figures, against which the check stands",
    "builder.formulas.slack.held": "the house's own figures, against which the check stands",
    "builder.pack_json.from_json": "reads a whole pack",
    "builder.pack_json.to_json": "writes a whole pack",
    "builder.pipeline.pack_of": "makes a pack",
    "builder.pipeline.venue_of": "reads a description",
    "builder.reading.reader.read": "reads a description",
    "builder.rider.asked.rider_of": "opens a rider file; the reader below it is replayed by its own"
    " tests",
    "builder.site.engine.engine_scripts": "makes the page's scripts",
    "builder.stating.value_of": "makes a fact",
}
"""Functions of ours that tests of the check call and that no browser runs, with the reason."""


def sample() -> dict[str, Callable[..., Any]]:
    """The functions of the sample, as Python runs them."""
    namespace: dict[str, Any] = {"__name__": ROOM}
    exec(SOURCE, namespace)  # noqa: S102 - our own text above
    return {name: value for name, value in namespace.items() if inspect.isfunction(value)}


def sample_script() -> str:
    """The sample, compiled, under the names that the replay calls."""
    offers = {f"{ROOM}.{name}": f"{ROOM}.{name}" for name in sample()}
    return compiled(
        offers, source_of=lambda _: SOURCE, runtime=RUNTIME, global_name=OFFERED_AS, packed=True
    )


def sample_calls() -> Recorded:
    """A few calls of the sample, one of them a fault."""
    recorded = Recorded()
    wrapped = {name: recording(value, recorded) for name, value in sample().items()}
    wrapped["added"](1, other=2.5)
    with pytest.raises(ValueError, match="at most 100"):
        wrapped["added"](101.0, 0.0)
    for number in (-0.0, math.inf, -math.inf, math.nan, 1e21, 1e-7, 0.1 + 0.2, 3):
        wrapped["same"](number)
    wrapped["names_of"]({"b": 2, "a": 3, "c": 1})
    assert len(recorded.results) == 11
    return recorded


@pytest.mark.browser
def test_a_right_translation_gives_the_same(browser: Browser) -> None:
    assert differences(browser, sample_script(), sample_calls()) == []


@pytest.mark.browser
@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("(a + b)", "(a - b)", ["added(1; 2.5): 3.5 in Python, -1.5 in a browser"]),
        (">100.0", ">1000.0", ['added(101.0; 0.0): "a fault of the program" in Python']),
        ("return a;", "return a + 0;", ["same(-0.0)"]),
        ("return a;", "return a * 2;", ["same(1e+21)", "same(1e-07)", "same(0.3", "same(3)"]),
        (">1)", ">2)", ['names_of(b: 2, a: 3, c: 1): ["b","a"]']),
        ("(a + b)", "(a + nothing)", ["added(1; 2.5): 3.5 in Python, builder.sample.added: Ref"]),
    ],
)
def test_a_wrong_translation_is_told(
    browser: Browser, right: str, wrong: str, told: list[str]
) -> None:
    script = sample_script()
    assert script.count(right) == 1
    found = differences(browser, script.replace(right, wrong), sample_calls())
    assert len(found) == len(told)
    for words, expected in zip(found, told, strict=True):
        assert words.removeprefix(f"{ROOM}.").startswith(expected)


@pytest.mark.browser
def test_a_slip_in_the_check_s_own_script_is_told(browser: Browser) -> None:
    recorded = Recorded()
    assert recording(lasting, recorded)(7200.0) == "2 h"
    right = replay_script()
    assert differences(browser, right, recorded) == []
    assert right.count("<1200)") == 1
    found = differences(browser, right.replace("<1200)", "<=1200)"), recorded)
    assert len(found) == 1
    assert found[0].endswith('"2 h" in Python, "120 min" in a browser')


@pytest.mark.parametrize("value", [len, {1}, {"a": {(1, 2): 3}}, 2**53 + 1, {True: 1}])
def test_what_json_has_no_word_for_is_told_and_not_dropped(value: object) -> None:
    recorded = Recorded()
    recording(echo, recorded)([value])
    assert list(recorded.left_out) == [f"{__name__}.echo"]
    with pytest.raises(NotPlainError):
        plain(value)


def echo(value: object) -> object:
    """A function that gives what it takes."""
    return value


def imported() -> Iterator[tuple[str, object]]:
    """Everything of ours that these tests import, by full name, with the file."""
    for file in sorted(HERE.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("builder."):
                home = importlib.import_module(node.module or "")
                for alias in node.names:
                    if file.name not in ("recording.py", "replaying.py", Path(__file__).name):
                        yield f"{node.module}.{alias.name}", getattr(home, alias.name, None)


def is_function(value: object) -> bool:
    """Whether a value is a function, one that keeps its results included."""
    return inspect.isfunction(inspect.unwrap(value) if callable(value) else value)


def test_every_function_that_tests_of_the_check_call_is_replayed_or_known_by_name() -> None:
    called = {name for name, value in imported() if is_function(value)}
    replayed = {name for name, value in imported() if is_compiled(value)}
    assert len(replayed) >= 8
    assert called - replayed == set(STAYS_IN_PYTHON)


def test_no_test_of_the_check_calls_it_by_way_of_its_module() -> None:
    modules = {name for name, value in imported() if inspect.ismodule(value)}
    # This test counts how often rectangles are compared, by a wrapper of its own.
    assert modules == {
        "builder.fit.plots.in_the_way",
        "builder.fit.plots.notes",
        "builder.formulas.rectangles",
    }
