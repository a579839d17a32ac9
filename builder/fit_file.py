"""
``fit.json``: what the check reads of a pack, published beside it with its own schema.

The page 'Check your show' reads the same, so whoever takes the file has what the page has.
"""

import json
from collections.abc import Mapping
from typing import Literal

from builder.cautions import EVERYWHERE
from builder.document import Document
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.layout import anchor_of
from builder.pack import Pack, Section
from builder.record_schema import schema_of
from builder.render.references import Anchors, anchors_of

PATH = "fit.json"
SCHEMA_PATH = "fit.schema.json"
FORMAT: Literal[2] = 2


class FitFile(FitPack):
    """
    What the check reads of a pack, with every value's standing, age and page, and the caution that
    stands beside every verdict.
    """

    format: Literal[2]
    caution: str


def fit_file(pack: Pack, document: Document) -> FitFile:
    """What is published of a pack for the check; a document tells where things stand."""
    record = fit_record(pack, pages=pages_of(pack, document))
    return {**record, "format": FORMAT, "caution": EVERYWHERE}


def fit_file_text(pack: Pack, document: Document) -> str:
    """The same as text: keys sorted, lists in the author's order, the same bytes everywhere."""
    return as_text(fit_file(pack, document))


def fit_schema_text() -> str:
    """The JSON Schema as text."""
    return as_text(schema_of(FitFile))


def as_text(record: object) -> str:
    """A record as JSON, keys sorted."""
    text = json.dumps(record, sort_keys=True, ensure_ascii=False, indent=1, allow_nan=False)
    return f"{text}\n"


def pages_of(pack: Pack, document: Document) -> Mapping[str, str]:
    """
    Where each item, fact and figure stands, by its key: on a page of its own department, at its
    anchor there or its item's.
    """
    anchors = anchors_of(document)
    found: dict[str, str] = {}
    for section in pack.sections:
        first = f"{section.space}-{section.key}" if section.space else section.key
        own = [
            page.key
            for page in document.pages
            if page.key == first or page.key.startswith(f"{first}-")
        ]
        for item in section.items:
            place = place_of(plain_anchor(item.key, section), own, anchors) or f"{first}.html"
            found[item.key] = place
            keys = [*(fact.key for fact in item.facts), *(figure.key for figure in item.figures)]
            for key in keys:
                found[key] = place_of(plain_anchor(key, section), own, anchors) or place
    return found


def plain_anchor(key: str, section: Section) -> str:
    """The anchor of a key on the pages of its space, where keys are those of one stage."""
    return anchor_of(key.removeprefix(f"{section.space}/"))


def place_of(anchor: str, pages: list[str], anchors: Anchors) -> str:
    """The first of some pages that has an anchor, with its id; empty where none has."""
    return next(
        (f"{page}.html#{anchors[page][anchor]}" for page in pages if anchor in anchors[page]), ""
    )
