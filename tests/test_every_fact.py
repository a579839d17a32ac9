"""
Every fact that a venue states reaches a page and the search, or its field says why not: it bears
``NotInWords`` with the reason. A key that no page tells fails here, a new one too.
"""

import json
from copy import deepcopy
from functools import cache
from html import unescape
from itertools import islice

import pytest

from builder import layout
from builder.files import with_photos
from builder.layout import photo_path
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.written import Line
from builder.render.markdown import render
from builder.site.finding import searched
from tests.facts import Files, Marked, Spot, put, records_of_venue
from tests.other_values import VENUES, Change, base_data, possible_changes, unmarked
from tests.sweep import folder
from tests.told_changes import Pages, batches

QUOTING = ("findings", "workings")
"""Pages that quote what others say: a fact must stand on another one too."""
OF_SPACES = {
    *(("Space", key) for key in ("name", "what", "note", "condition", "terms")),
    *(
        (line, "spaces")
        for line in (
            "Configuration",
            "Closure",
            "TroubleSpot",
            "Curfew",
            "QuietHours",
            "NoiseLimit",
            "Effect",
            "HouseRule",
            "Hired",
            "Works",
            "Regular",
        )
    ),
}
"""Keys that only a house of several stages writes: `tests/spaces/test_rooms.py` looks for them."""
PLACES = 6
"""At how many places a value is tried before it counts as told nowhere."""


def texts_of(files: Files, venue: str) -> dict[str, str]:
    """Files as texts, with those that are no department's. JSON is YAML."""
    made = {file: json.dumps(data, ensure_ascii=False, indent=1) for file, data in files.items()}
    return {**folder(venue).texts, **made}


def words_of(files: Files, venue: str) -> tuple[str, str]:
    """What a venue's pages say, and what the search knows, each as one text."""
    photos = folder(venue).photos
    made = with_photos(document_of(pack_of(venue_of(texts_of(files, venue), photos))), photos)
    pages = {
        name.removesuffix(".md"): text
        for name, text in render(made).pages.items()
        if isinstance(text, str)
    }
    lines = [
        f"{line.name} {line.under} {line.text}"
        for page in searched(made)
        if page.address.removesuffix(".html") not in QUOTING
        for line in page.lines
    ]
    shown = [text for name, text in pages.items() if name not in QUOTING]
    return unescape("\n".join(shown)), "\n".join(lines)


def lost_marks(marked: Marked, venue: str) -> list[Spot]:
    """The places whose mark stands on no page or in no line of the search."""
    pages, search = words_of(marked.data, venue)
    return [spot for mark, spot in marked.marks.items() if mark not in pages or mark not in search]


@cache
def marked(venue: str) -> Marked:
    """A venue with marks, made once."""
    return Marked(venue)


@pytest.mark.parametrize("venue", VENUES)
def test_every_text_and_quantity_stands_on_a_page_and_in_the_search(venue: str) -> None:
    assert len(marked(venue).marks) > 500
    assert [str(spot) for spot in lost_marks(marked(venue), venue)] == []


@cache
def pages(venue: str) -> Pages:
    """A venue's pages, made once."""
    return Pages(venue)


def test_every_other_key_stands_on_a_page_and_in_the_search() -> None:
    keys = list(unmarked())
    first = [next(possible_changes(record, key), None) for record, key in keys]
    unheard = {key for key, change in zip(keys, first, strict=True) if change is None}
    assert {(record.__name__, key.name) for record, key in unheard} == OF_SPACES
    made = [change for change in first if change]
    lost = [
        change
        for venue in VENUES
        for batch in batches([change for change in made if change.venue == venue])
        for change in pages(venue).missing(batch)
    ]
    assert [str(change) for change in lost if not is_told_somewhere(change)] == []


def is_told_somewhere(change: Change) -> bool:
    """Whether the pages tell a key with one of its other values, or at another of its places."""
    changes = possible_changes(change.spot.record, change.spot.key)
    return any(pages(each.venue).tells_alone(each) for each in islice(changes, PLACES))


def test_a_key_that_its_page_forgets_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(layout, "told_under_name", lambda *_: iter(()))
    found = {str(spot).split(" at ")[0] for spot in lost_marks(marked("quarry"), "quarry")}
    assert "access.yml Passage.slope_also" in found
    assert "access.yml Passage.width" not in found


def test_a_confirmation_is_told_with_its_code_who_and_when() -> None:
    files = deepcopy(base_data("demo"))
    confirmed = files["rigging.yml"]["letter"]["confirmed"]
    confirmed |= {"by": "Zq rigger", "on": "2026-03-31"}
    pages, search = words_of(files, "demo")
    for words in (pages, search):
        assert "Confirmed by Zq rigger on " in words
        assert "2026-03-31" in words
        assert f"Code {confirmed['what']}." in words


@pytest.mark.parametrize("venue", VENUES)
def test_every_photo_of_a_line_is_shown(venue: str) -> None:
    photos = {}
    data = deepcopy(base_data(venue))
    picture = next(iter(folder("demo").photos.values()))
    for file, record, _ in records_of_venue(venue):
        if isinstance(record, Line):
            name = f"zq{len(photos):04}.jpg"
            photos[name] = picture
            put(data[file], (*record.path_in_file, "photo"), name)
    made = with_photos(document_of(pack_of(venue_of(texts_of(data, venue), photos))), photos)
    text = "".join(text for text in render(made).pages.values() if isinstance(text, str))
    assert [name for name in photos if photo_path(name) not in text] == []
