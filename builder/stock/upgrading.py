"""
A venue of an older language as the newest says it: the edits, and a record by which they are taken
back to the letter.

Nothing here writes. The record stands in the venue's folder until then, and no other command reads
it.
"""

import hashlib
import json
from collections.abc import Mapping, Sequence
from typing import Any

from builder.pipeline import Venue, venue_of
from builder.reading.absent import Absent
from builder.reading.language import FIRST, NEWEST, old_unknowns
from builder.reading.nodes import compose
from builder.reading.problems import Problem, Refused, Where
from builder.registry import HOUSE
from builder.stock.edits import Set, by_hand, spliced
from builder.stock.rewrite import Rewrite
from builder.stock.splice import Splice
from builder.stock.spots import spots_of
from builder.stock.upgrade_record import RECORD

HOUSE_FILE = f"{HOUSE.key}.yml"
KEY = "language"


def upgraded(
    texts: Mapping[str, str], photos: Mapping[str, bytes], record: str | None = None
) -> list[Rewrite]:
    """
    The files that change where a venue goes over to the newest language, and last the record that
    takes it back. None where it is written in that already. ``record`` is that of an earlier
    upgrade, which the new one takes the place of.

    Raises
    ------
    Refused
        With every problem in the files, or `edit-by-hand`.
    """
    venue = venue_of(texts, photos)
    if venue.house.language == NEWEST:
        return []
    splices = splices_of(texts, venue)
    after = {file: applied(texts[file], each) for file, each in splices.items()}
    venue_of({**texts, **after}, photos)
    rewrites = [Rewrite(file, texts[file], text) for file, text in after.items()]
    return [*rewrites, Rewrite(RECORD, record, record_of(rewrites, splices))]


def splices_of(texts: Mapping[str, str], venue: Venue) -> dict[str, list[Splice]]:
    """The replacements by file, in the order in which they are made."""
    found: dict[str, list[Splice]] = {}
    for key, description in venue.files.items():
        file = f"{key}.yml"
        text = texts[file]
        for path in old_unknowns(text, file, description):
            splice = spliced(text, file, Set(path, Absent.UNKNOWN.value))
            text = splice.applied(text)
            found.setdefault(file, []).append(splice)
        if file == HOUSE_FILE:
            found.setdefault(file, []).append(language_splice(text))
    return found


def language_splice(text: str) -> Splice:
    """
    The language put before the first key of the house's file, or in the place of an older one.

    Raises
    ------
    Refused
        `edit-by-hand`.
    """
    edit, data, root = Set((KEY,), str(NEWEST)), compose(text, HOUSE_FILE).data, spots_of(text)
    if KEY in data or root.flow or root.column:
        return spliced(text, HOUSE_FILE, edit)
    splice = Splice(root.keys[0][0], "", f"{KEY}: {NEWEST}\n")
    if compose(splice.applied(text), HOUSE_FILE).data != {KEY: str(NEWEST), **data}:
        raise Refused([by_hand(text, HOUSE_FILE, edit)])
    return splice


def applied(text: str, splices: Sequence[Splice]) -> str:
    """A text with replacements made, one after the other."""
    for splice in splices:
        text = splice.applied(text)
    return text


def record_of(rewrites: Sequence[Rewrite], splices: Mapping[str, Sequence[Splice]]) -> str:
    """What takes an upgrade back, as text: for each file its replacements and the text's marks."""
    files = [
        {
            "file": each.file,
            "before": mark_of(each.before or ""),
            "after": mark_of(each.after),
            "replaced": [[one.start, one.old, one.new] for one in splices[each.file]],
        }
        for each in rewrites
    ]
    told = {
        "what": "What 'housepack upgrade --undo' takes back. Delete it once that is not wanted.",
        "from": FIRST,
        "to": NEWEST,
        "files": files,
    }
    return json.dumps(told, indent=1, ensure_ascii=False) + "\n"


def taken_back(record: str, texts: Mapping[str, str]) -> list[Rewrite]:
    """
    The files as they were before an upgrade.

    Raises
    ------
    Refused
        `upgrade-not-undone` where a file was changed since, or the record is none of ours.
    """
    try:
        return [file_before(entry, texts) for entry in json.loads(record)["files"]]
    except (ValueError, TypeError, KeyError, RecursionError):
        raise Refused([not_undone(RECORD, "is not what an upgrade leaves")]) from None


def file_before(entry: Mapping[str, Any], texts: Mapping[str, str]) -> Rewrite:
    """One file as it was; refuses where it is not as the upgrade left it."""
    file = str(entry["file"])
    text = texts.get(file, "")
    if mark_of(text) != entry["after"]:
        raise Refused([not_undone(file, "was changed since the upgrade")])
    before = text
    for start, old, new in reversed(entry["replaced"]):
        before = Splice(int(start), str(old), str(new)).undone().applied(before)
    if mark_of(before) != entry["before"]:
        raise ValueError(f"replaced must lead back to the text before, in {file}")
    return Rewrite(file, text, before)


def not_undone(file: str, reason: str) -> Problem:
    """The problem with an upgrade that cannot be taken back."""
    advice = f"take the files from your own copy; nothing was changed. {RECORD} may be deleted"
    return Problem(Where(file), "", "", reason, "upgrade-not-undone", advice)


def mark_of(text: str) -> str:
    """The mark by which a text is known again."""
    return hashlib.sha256(text.encode()).hexdigest()
