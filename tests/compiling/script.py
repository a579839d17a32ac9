"""A module of the tests, compiled and run in a real browser."""

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser

from builder.compiling.program import compiled
from builder.site.engine import source_of

SAMPLE = "builder.sample"
RUNTIME = (Path(__file__).parents[2] / "builder" / "compiling" / "runtime.js").read_text("utf-8")

CALLED = """(calls) => JSON.parse(calls).map(([name, given]) =>
  JSON.stringify(engine[name](...given)))"""


def script(text: str, *names: str) -> str:
    """The functions of a source text as a script that offers them as ``engine``."""
    return compiled(
        {name: f"{SAMPLE}.{name}" for name in names},
        source_of=lambda name: text if name == SAMPLE else source_of(name),
        runtime=RUNTIME,
        global_name="engine",
    )


def results(browser: Browser, source: str, calls: Iterable[tuple[str, list[Any]]]) -> list[Any]:
    """What each call gives in the browser: the name of a function, then its arguments."""
    page = browser.new_page()
    page.add_script_tag(content=source)
    found = page.evaluate(CALLED, json.dumps(list(calls)))
    page.close()
    # A float without decimals comes back as digits; as an int they would not be that float.
    return [json.loads(text, parse_int=float) for text in found]
