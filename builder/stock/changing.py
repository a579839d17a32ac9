"""
Orders carried out on a venue's texts: the files as they are to be written, with a line in the log,
and what it does to the pack.

Nothing here writes. ``saving.py`` does, once somebody has seen the knock-ons.
"""

import difflib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from builder.house_only.logged import HiddenNames, hidden_names, public_changes
from builder.overview.log import LOG, LONGEST
from builder.pack import Pack
from builder.pipeline import Venue, packs_of, venue_of
from builder.reading.in_service import NotWorking, not_working
from builder.reading.nodes import Path, compose
from builder.reading.problems import Problem, Refused, Where
from builder.reading.values.sentences import within_sentence
from builder.stock.blocks import key_lines
from builder.stock.comparison import Comparison, compare
from builder.stock.differences import Difference
from builder.stock.edits import Append, Edit, Set, edited, reach
from builder.stock.lines import Held, lines_of
from builder.stock.order import Order, flat, text_of
from builder.stock.ranking import largest
from builder.stock.rewrite import Rewrite
from builder.stock.wording import Data

LOG_HEAD = (
    "# yaml-language-server: $schema=../schemas/log.json\n"
    "# What changed in the house, oldest first. 'housepack stock' adds to it, and the site shows it"
    " as 'What changed'.\n\n"
)


@dataclass(frozen=True, slots=True)
class Asked:
    """Who wants a change, why, and on which day."""

    by: str
    why: str
    on: date


@dataclass(frozen=True, slots=True)
class Stockroom:
    """A venue's texts, read and checked, with its lines by name."""

    texts: Mapping[str, str]
    photos: Mapping[str, bytes]
    venue: Venue
    lines: tuple[Held, ...]


@dataclass(frozen=True, slots=True)
class Changed:
    """
    What a change comes to: the files to write, the packs that are published before and after, and
    the knock-on, which is the difference between the house's own.

    Whatever else reads a pack, such as the check of a show, can be run on both packs and told
    beside this.
    """

    rewrites: tuple[Rewrite, ...]
    before: Pack
    after: Pack
    comparison: Comparison


def stockroom_of(texts: Mapping[str, str], photos: Mapping[str, bytes]) -> Stockroom:
    """
    A venue's stock.

    Raises
    ------
    Refused
        With every problem in the files: what cannot be read cannot be changed.
    """
    venue = venue_of(texts, photos)
    return Stockroom(texts, photos, venue, lines_of(venue.files))


def changed(room: Stockroom, orders: Sequence[Order], asked: Asked) -> Changed:
    """
    Carry out orders, all or none.

    Raises
    ------
    Refused
        With every problem that the changed files would have, `edit-by-hand`, or `changes-nothing`.
    """
    texts = {**room.texts, **edited_files(room.texts, orders)}
    if texts == room.texts:
        raise Refused(
            [
                Problem(
                    Where(orders[0].file),
                    "",
                    orders[0].name,
                    "says all of that already",
                    "changes-nothing",
                    "nothing was changed",
                )
            ]
        )
    venue = venue_of(texts, room.photos)
    before, after = packs_of(room.venue), packs_of(venue)
    comparison = compare(before.house, after.house)
    # The log is published: it tells only what moved in what is published.
    public = comparison
    if before.house is not before.published or after.house is not after.published:
        public = compare(before.published, after.published)
    hidden = hidden_names(room.venue.files).joined(hidden_names(venue.files))
    edits = Edited(room.texts, texts, lines_of(venue.files), hidden)
    texts[LOG] = logged(texts.get(LOG), entries_of(edits, orders, asked, moved_words(public)))
    rewrites = [
        Rewrite(file, room.texts.get(file), text)
        for file, text in texts.items()
        if text != room.texts.get(file)
    ]
    # What the orders concern comes first and the log last: a log must not tell of what is not yet
    # there.
    return Changed(
        tuple(sorted(rewrites, key=lambda each: (each.file == LOG, each.file))),
        before.published,
        with_log(after.published, venue_of(texts, room.photos)),
        comparison,
    )


def with_log(pack: Pack, venue: Venue) -> Pack:
    """A pack with the log, which moves no figure, so that nothing is computed twice."""
    return replace(
        pack,
        log=public_changes(venue.log, venue.files),
        revision=replace(pack.revision, fingerprint=venue.fingerprint),
    )


def edited_files(texts: Mapping[str, str], orders: Sequence[Order]) -> dict[str, str]:
    """
    The texts that orders change.

    Lines are taken out last and from the bottom, so that no path moves under another order.
    """
    by_file: dict[str, list[Edit]] = {}
    for order in sorted(
        orders,
        key=lambda order: (
            order.did == "remove",
            [-step if isinstance(step, int) else 0 for step in order.path],
        ),
    ):
        for file, edit in order.edits:
            by_file.setdefault(file, []).append(edit)
    return {file: edited(texts[file], file, edits) for file, edits in by_file.items()}


@dataclass(frozen=True, slots=True)
class Edited:
    """
    The texts before and after orders, the lines after them, and what is for the house only before
    or after.
    """

    before: Mapping[str, str]
    after: Mapping[str, str]
    lines: tuple[Held, ...]
    hidden: HiddenNames

    def not_working(self, order: Order) -> NotWorking | None:
        """How many of an order's line do not work after it, where it is about that."""
        if order.did not in ("out", "back"):
            return None
        for line in self.lines:
            if (line.file, line.path) == (order.file, order.path):
                return not_working(line.record)
        return None


def entries_of(
    edits: Edited, orders: Sequence[Order], asked: Asked, moved: Sequence[str]
) -> list[dict[str, Data]]:
    """An entry of the log for each order; the figures that moved stand in the last."""
    return [entry_of(order, asked, edits, moved if order is orders[-1] else ()) for order in orders]


def entry_of(order: Order, asked: Asked, edits: Edited, moved: Sequence[str]) -> dict[str, Data]:
    """One order as an entry of the log. What was or is not written is left out."""
    altered, lost = alterations(edits.before, edits.after, order), edits.not_working(order)
    entry: dict[str, Data] = {
        "on": asked.on.isoformat(),
        "by": asked.by,
        "why": asked.why,
        "did": order.did,
        "file": order.file,
    }
    entry |= {"house_only": "yes"} if is_for_the_house(order, altered, edits) else {}
    entry |= {"within": order.within, "line": order.name} if order.name else {}
    entry |= {"out": str(lost.out), "of": str(lost.of)} if lost else {}
    keys = [
        {"key": key, **({"was": was} if was else {}), **({"now": now} if now else {})}
        for key, was, now in altered
    ]
    return {
        **entry,
        **({"changes": keys} if keys else {}),
        **({"moved": list(moved)} if moved else {}),
    }


def is_for_the_house(order: Order, altered: Sequence[tuple[str, str, str]], edits: Edited) -> bool:
    """
    Whether an order is for the house only: its line is, or what it wrote there names such a line.
    """
    if edits.hidden.has(order.file, order.within, order.name):
        return True
    lines: list[Any] = [{key: was} | {f"{key} now": now} for key, was, now in altered]
    if order.did == "add":
        lines = [line for _, edit in order.edits for line in added_lines(edit)]
    elif order.did == "remove":
        lines = [data_at(edits.before[order.file], order.file, order.path)]
    return any(
        edits.hidden.names_one(text)
        for line in lines
        if isinstance(line, dict)
        for text in flat(line).values()
    )


def alterations(
    before: Mapping[str, str], after: Mapping[str, str], order: Order
) -> list[tuple[str, str, str]]:
    """The keys of a line that changed, each as it was and is."""
    if order.did == "add":
        return [
            ("line", "", cut(text_of(line)))
            for _, edit in order.edits
            for line in added_lines(edit)
        ]
    old = data_at(before[order.file], order.file, order.path)
    if order.did == "remove":
        return [("line", cut(text_of(old)), "")]
    new = data_at(after[order.file], order.file, order.path)
    found = flat(old), flat(new)
    keys = [
        key
        for key in dict.fromkeys((*found[1], *found[0]))
        if found[0].get(key) != found[1].get(key)
    ]
    if not order.name:
        keys = [key for key in keys if key.startswith("verified")]
    return [(key, cut(found[0].get(key, "")), cut(found[1].get(key, ""))) for key in keys]


def added_lines(edit: Edit) -> list[Data]:
    """The lines that an order to add puts in: one appended, or a list begun."""
    if isinstance(edit, Append):
        return [edit.value]
    return list(edit.value) if isinstance(edit, Set) and isinstance(edit.value, list) else []


def data_at(text: str, file: str, path: Path) -> Any:
    """What is written at a path."""
    return reach(compose(text, file).data, path)


def cut(text: str) -> str:
    """A text no longer than the log holds."""
    return text if len(text) <= LONGEST else f"{text[: LONGEST - 1]}…"


def moved_words(comparison: Comparison) -> list[str]:
    """
    The figures that moved, in words for the log: those that moved most, one a line, and how many
    more.
    """
    rows = largest(comparison)
    rest = len(comparison.moved) - len(rows)
    return [
        *(f"{row.lead.item}, {told(row.lead)}" for row in rows),
        *([f"and {rest} more"] if rest else []),
    ]


def told(difference: Difference) -> str:
    """One difference in words: what, from what, to what, by how much."""
    label = within_sentence(difference.label)
    if difference.kind == "map":
        return f"{label}: {difference.by}"
    if difference.kind == "line":
        return f"{label}: {'added' if difference.after else 'taken out'}"
    if not difference.before:
        return f"{label}: new, {difference.after}"
    if not difference.after:
        return f"{label}: no longer there, was {difference.before}"
    return f"{label}: {difference.before} → {difference.after}" + (
        f" ({difference.by})" if difference.by else ""
    )


def logged(text: str | None, entries: Sequence[dict[str, Data]]) -> str:
    """The log with new entries at its end; a log is begun where there is none."""
    if text is None:
        text, entries = begun(entries[0]), entries[1:]
    return edited(text, LOG, [Append(("entries",), entry) for entry in entries])


def begun(entry: dict[str, Data]) -> str:
    """A log with its first entry."""
    lines = "".join(key_lines("\n", 4, key, value) for key, value in entry.items())
    return f"{LOG_HEAD}entries:\n  - {lines.strip()}\n"


def difference_text(rewrites: Sequence[Rewrite]) -> str:
    """The lines that go and come, file by file."""
    parts = [
        difflib.unified_diff(
            (each.before or "").splitlines(),
            each.after.splitlines(),
            each.file,
            each.file,
            n=0 if each.file == LOG else 1,
            lineterm="",
        )
        for each in rewrites
    ]
    return "\n".join(line for part in parts for line in part)
