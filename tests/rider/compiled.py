"""Functions of the package as the page has them: compiled, in a real browser."""

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser

from builder.compiling.program import compiled
from tests.compiling.script import RUNTIME

ROOT = Path(__file__).parents[2]
AT_ONCE = 500
"""Calls that go to the browser in one message: more than the driver's memory holds end it."""
CALLED = """(calls) => JSON.parse(calls).map((given) => JSON.stringify(engine.NAME(...given)))"""


def source_of(name: str) -> str:
    """The source text of a module of the package."""
    return (ROOT / f"{name.replace('.', '/')}.py").read_text("utf-8")


def in_the_browser(browser: Browser, entry: str, calls: Iterable[Iterable[Any]]) -> list[Any]:
    """What a function gives in the browser for each list of arguments."""
    name = entry.rpartition(".")[2]
    script = compiled({name: entry}, source_of=source_of, runtime=RUNTIME, global_name="engine")
    page = browser.new_page()
    page.add_script_tag(content=script)
    every, found = [list(call) for call in calls], list[str]()
    for start in range(0, len(every), AT_ONCE):
        portion = json.dumps(every[start : start + AT_ONCE])
        found += page.evaluate(CALLED.replace("NAME", name), portion)
    page.close()
    # JavaScript writes a float without decimals as digits; as an int it would not be that float.
    return [json.loads(text, parse_int=float) for text in found]
