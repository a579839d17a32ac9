"""The scripts that the site serves, in a real browser."""

import json
import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Page

from builder.site.engine import engine_script

SCRIPTS = Path(__file__).parents[2] / "builder" / "site" / "theme" / "assets" / "fit"
CHECK = SCRIPTS.parents[1] / "check.html"


def served(last: str) -> tuple[str, ...]:
    """The scripts that the page loads, in its order, up to one of them."""
    listed = re.search(r"for name in \[(.*?)\]", CHECK.read_text("utf-8"), re.DOTALL)
    names = re.findall(r'"(\w+)"', listed[1]) if listed else []
    return tuple(names[: names.index(last) + 1])


@contextmanager
def page_with(browser: Browser, *names: str, pack: object = None) -> Iterator[Page]:
    """An empty page with the compiled check and these scripts, and a pack where one is given."""
    page = browser.new_page()
    page.add_script_tag(content=engine_script())
    for name in names:
        page.add_script_tag(content=(SCRIPTS / f"{name}.js").read_text("utf-8"))
    if pack is not None:
        page.evaluate("(text) => { housefit.pack = JSON.parse(text); }", json.dumps(pack))
    yield page
    page.close()
