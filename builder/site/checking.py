"""
What the page 'Check your show' needs beside its scripts: the pack's facts and rules as a script,
for a page in a folder cannot fetch a file.
"""

import json
from collections.abc import Iterator, Mapping
from typing import cast

import yaml

from builder.cautions import EVERYWHERE
from builder.document import Document
from builder.fit.published import fit_record
from builder.fit.records import FitPack, Item, Value
from builder.layout import anchor_of
from builder.pack import Pack, from_json
from builder.render.references import Anchors, anchors_of
from builder.rider.table import LANGUAGE
from builder.rider.units import UNITS
from builder.site.engine import LATER_SCRIPT, engine_scripts
from builder.site.engine import SCRIPT as ENGINE
from builder.site.imprint import PACK

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
    """The page and its data by path; nothing for a document whose pack has no rules."""
    content = next((file.content for file in document.files if file.path == PACK), b"{}")
    if not json.loads(content).get("rules"):
        return {}
    pack = from_json(content.decode())
    at_once, later = engine_scripts()
    return {
        PAGE: page_text(),
        SCRIPT: script_of(fit_record(pack, pages=pages_of(pack, document))),
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


def script_of(record: FitPack) -> str:
    """
    The record as a script. A line end of another kind, or a closing tag, cannot end the text early.

    A few sentences on when something was checked stand at hundreds of values: they travel once, by
    number, and are put back when the page loads.
    """
    checks = sorted({each["checked"] for each in checked_in(record)})
    numbers = {words: number for number, words in enumerate(checks)}
    slim: FitPack = json.loads(json.dumps(record))
    for each in checked_in(slim):
        cast(dict[str, object], each)["checked"] = numbers[each["checked"]]
    read_by = {"language": LANGUAGE, "units": UNITS}
    whole = {**slim, **read_by, "checks": checks, "caution": EVERYWHERE}
    text = json.dumps(whole, ensure_ascii=True, sort_keys=True, separators=(",", ":"))
    return (
        "window.housefit = window.housefit || {};\nwindow.housefit.pack ="
        f" {text.replace('<', chr(92) + 'u003c')};\n{PUT_BACK}"
    )


def checked_in(record: FitPack) -> Iterator[Item | Value]:
    """Every item and value, for each tells when it was checked."""
    for section in record["sections"]:
        for item in section["items"]:
            yield item
            yield from item["values"].values()


def pages_of(pack: Pack, document: Document) -> Mapping[str, str]:
    """
    Where each item, fact and figure stands, by its key: on a page of its own department, at its
    anchor there or its item's.
    """
    anchors = anchors_of(document)
    found: dict[str, str] = {}
    for section in pack.sections:
        own = [
            page.key
            for page in document.pages
            if page.key == section.key or page.key.startswith(f"{section.key}-")
        ]
        for item in section.items:
            place = place_of(anchor_of(item.key), own, anchors) or f"{section.key}.html"
            found[item.key] = place
            keys = [*(fact.key for fact in item.facts), *(figure.key for figure in item.figures)]
            for key in keys:
                found[key] = place_of(anchor_of(key), own, anchors) or place
    return found


def place_of(anchor: str, pages: list[str], anchors: Anchors) -> str:
    """The first of some pages that has an anchor, with its id; empty where none has."""
    return next(
        (f"{page}.html#{anchors[page][anchor]}" for page in pages if anchor in anchors[page]), ""
    )
