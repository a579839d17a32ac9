"""
What the page 'Check your show' needs beside its scripts: what ``fit.json`` publishes as a script,
for a page in a folder cannot fetch a file.
"""

import json
from collections.abc import Iterator
from typing import cast

import yaml

from builder.document import Document
from builder.fit.records import Item, Value
from builder.fit_file import PATH as FIT_FILE
from builder.fit_file import FitFile
from builder.rider.table import LANGUAGE
from builder.rider.units import UNITS
from builder.site.engine import LATER_SCRIPT, engine_scripts
from builder.site.engine import SCRIPT as ENGINE

PAGE = "check.md"
SCRIPT = "assets/fit/pack.js"
PUT_BACK = """(function (pack) {
  for (const section of pack.sections) for (const item of section.items) for (const each of [item, ...Object.values(item.values)]) {
    each.checked = pack.checks[each.checked];
  }
})(window.housefit.pack);
"""  # noqa: E501
TITLE = "Check your show"
INTRODUCTION = (
    "Fill in what your show needs, as much or as little as you like, or open rider files, one for"
    " each act of the day. Verdicts follow as you type, each with the house's fact. Nothing leaves"
    " this device; the address of this page keeps what you wrote, so that you can send it to a"
    " colleague."
)


def check_files(document: Document) -> dict[str, str]:
    """The page and its data by path; nothing for a document without rules."""
    content = next((file.content for file in document.files if file.path == FIT_FILE), b"{}")
    record = json.loads(content)
    if not record.get("rules"):
        return {}
    at_once, later = engine_scripts()
    return {
        PAGE: page_text(),
        SCRIPT: script_of(record),
        ENGINE: at_once,
        LATER_SCRIPT: later,
    }


def page_text() -> str:
    """The page: its title, what it does, and the template that brings the form."""
    front = yaml.safe_dump(
        {"title": TITLE, "template": "check.html", "description": "Does your show fit this house?"},
        allow_unicode=True,
    )
    return f"---\n{front}---\n\n# {TITLE}\n\n{INTRODUCTION}\n"


def script_of(record: FitFile) -> str:
    """
    The record as a script. A line end of another kind, or a closing tag, cannot end the text early.

    A few sentences on when something was checked stand at hundreds of values: they travel once, by
    number, and are put back when the page loads.
    """
    checks = sorted({each["checked"] for each in checked_in(record)})
    numbers = {words: number for number, words in enumerate(checks)}
    slim: FitFile = json.loads(json.dumps(record))
    for each in checked_in(slim):
        cast(dict[str, object], each)["checked"] = numbers[each["checked"]]
    read_by = {"language": LANGUAGE, "units": UNITS}
    whole = {**slim, **read_by, "checks": checks}
    text = json.dumps(whole, ensure_ascii=True, sort_keys=True, separators=(",", ":"))
    return (
        "window.housefit = window.housefit || {};\nwindow.housefit.pack ="
        f" {text.replace('<', chr(92) + 'u003c')};\n{PUT_BACK}"
    )


def checked_in(record: FitFile) -> Iterator[Item | Value]:
    """Every item and value, for each tells when it was checked."""
    for section in record["sections"]:
        for item in section["items"]:
            yield item
            yield from item["values"].values()
