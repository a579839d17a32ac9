"""The page 'What changed', its feed, and the log that both are made from."""

import xml.etree.ElementTree as ET
from datetime import date

import pytest

from builder.document import Document
from builder.overview.changes import done
from builder.pack import Altered, Change
from builder.pack_json import from_json, to_json
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.problems import Refused
from builder.render.feed import feed
from builder.render.markdown import render
from builder.stock.changing import Asked, changed
from builder.stock.lines import found
from builder.stock.order import written_line
from builder.stock.service import out
from tests.stock.small import TEXTS, room

ATOM = "{http://www.w3.org/2005/Atom}"
LOG = """\
entries:
  - {on: 2026-01-05, by: us, why: New desk.}
  - {on: 2026-02-03, by: "<b>us</b>", why: "](x) <script>alert(1)</script> & more", did: out, file: sound.yml, within: sound.stock, line: Vellum 8,
     changes: [{key: working, was: 13, now: 12}], moved: ["Floor, level: 1 dB → 2 dB (+1 dB)"]}
  - {on: 2026-02-03, by: us, why: Again., did: back, file: lights.yml, line: Lamp}
"""  # noqa: E501


def document(log: str | None = LOG) -> Document:
    """The small venue's document with a log."""
    return document_of(pack_of(venue_of({**TEXTS, **({"log.yml": log} if log else {})})))


def page(log: str = LOG) -> str:
    """The page as Markdown."""
    return str(render(document(log)).pages["changes.md"])


def entries(log: str = LOG) -> list[ET.Element]:
    """The entries of the feed."""
    content = render(document(log)).pages["changes.xml"]
    assert isinstance(content, bytes)
    return ET.fromstring(content).findall(f"{ATOM}entry")  # noqa: S314


def test_a_venue_without_a_log_has_neither_page_nor_feed() -> None:
    assert "changes.md" not in render(document(None)).pages
    assert "changes.xml" not in render(document(None)).pages


def test_the_newest_stands_first_and_of_one_day_the_later_line() -> None:
    text = page()
    places = [
        text.index(f'id="{name}"')
        for name in ("change-2026-02-03-2", "change-2026-02-03-1", "change-2026-01-05-1")
    ]
    assert places == sorted(places)


def test_what_was_done_stands_with_before_and_after_and_the_caution() -> None:
    text = page()
    assert "Out of service, 12 work, 13 before" in text
    assert "planning figure" in text
    assert "planning figure" not in page("entries:\n  - {on: 2026-01-05, by: us, why: New desk.}\n")


def test_nothing_in_a_log_becomes_markup() -> None:
    text = page()
    assert "<script" not in text
    assert "<b>" not in text
    (entry,) = [entry for entry in entries() if "alert" in (entry.findtext(f"{ATOM}summary") or "")]
    assert entry.findtext(f"{ATOM}author/{ATOM}name") == "<b>us</b>"


def test_the_feed_is_atom_with_lasting_names_and_days_from_the_log() -> None:
    found = entries()
    assert [entry.findtext(f"{ATOM}updated") for entry in found] == [
        "2026-02-03T00:00:00Z",
        "2026-02-03T00:00:00Z",
        "2026-01-05T00:00:00Z",
    ]
    names = [entry.findtext(f"{ATOM}id") for entry in found]
    assert len(set(names)) == 3
    later = [
        entry.findtext(f"{ATOM}id")
        for entry in entries(LOG + "  - {on: 2026-03-01, by: us, why: More.}\n")
    ]
    assert later[1:] == names


def test_a_feed_without_entries_is_our_mistake() -> None:
    with pytest.raises(ValueError, match="entries must be at least one"):
        feed("x", "x", "x", [])


def test_the_log_is_in_the_pack_and_comes_back_from_json() -> None:
    pack = pack_of(venue_of({**TEXTS, "log.yml": LOG}))
    assert [change.by for change in pack.log] == ["us", "<b>us</b>", "us"]
    assert from_json(to_json(pack)) == pack


def test_a_wrong_log_is_told_like_any_other_file() -> None:
    with pytest.raises(Refused) as refused:
        venue_of({**TEXTS, "log.yml": "entries:\n  - {on: yesterday, by: us, wy: x}\n"})
    assert {problem.code for problem in refused.value.problems} == {
        "date-unreadable",
        "missing-key",
        "unknown-key",
    }


def test_what_an_order_writes_is_on_the_page() -> None:
    there = room()
    line = found(there.lines, "Vellum 7")
    result = changed(
        there,
        [out(line, written_line(line, there.texts), count=1)],
        Asked("head of sound", "Horn blown.", date(2026, 1, 2)),
    )
    text = str(render(document_of(result.after)).pages["changes.md"])
    assert "Vellum 7&#46; 1 of 12 out of service&#46;" in text
    assert "Horn blown" in text


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (
            Change("", "", "", "out", altered=(Altered("out_of_service", "[7]", "[7, 3]"),)),
            "Out of service, number 3.",
        ),
        (
            Change("", "", "", "back", altered=(Altered("dead", "[3]", ""),)),
            "Number 3 back in service.",
        ),
        (
            Change("", "", "", "out", altered=(Altered("condition", "", "out of service"),)),
            "Out of service.",
        ),
        (
            Change(
                "",
                "",
                "",
                "out",
                out=1,
                of=10,
                altered=(Altered("out_of_service", "", "[7]"), Altered("condition", "", "limited")),
            ),
            "1 of 10 out of service, number 7.",
        ),
        (
            Change("", "", "", "back", out=1, of=10, altered=(Altered("dead", "[3, 7]", "[7]"),)),
            "Number 3 back in service, 1 of 10 out of service still.",
        ),
        (
            Change("", "", "", "back", out=0, of=12, altered=(Altered("working", "11", "12"),)),
            "Back in service, all 12.",
        ),
        (
            Change("", "", "", "out", out=12, of=12, altered=(Altered("working", "1", "0"),)),
            "All 12 out of service.",
        ),
        (
            Change("", "", "", "out", altered=(Altered("working", "", "11"),)),
            "Out of service, 11 work.",
        ),
        (
            Change("", "", "", "count", altered=(Altered("dead", "", "[3, 9]"),)),
            "Counted: dead: numbers 3 and 9.",
        ),
        (
            Change("", "", "", "count", altered=(Altered("out_of_service", "[7]", ""),)),
            "Counted: out of service: none any more, number 7 before.",
        ),
        (
            Change(
                "",
                "",
                "",
                "count",
                altered=(Altered("count", "12", "9"), Altered("at.across", "4 m SL", "")),
            ),
            "Counted: count 12 → 9, at across 4 m SL no longer said.",
        ),
        (
            Change("", "", "", "verified", altered=(Altered("verified.on", "", "2026-01-02"),)),
            "Checked again.",
        ),
        (Change("", "", "", "rewired"), "Rewired."),
        (Change("", "", ""), ""),
    ],
)
def test_what_was_done_reads_as_a_sentence(change: Change, words: str) -> None:
    assert done(change) == words
