"""
'What changed': the house's log, newest first, with the figures that moved.

A script lets a visitor see only what is new to them.
"""

from collections.abc import Iterator, Sequence

from builder.cautions import EVERYWHERE
from builder.document import (
    Block,
    Bullets,
    Caution,
    Day,
    Folded,
    Heading,
    Inline,
    Link,
    Page,
    Paragraph,
    Row,
    Table,
)
from builder.pack import Altered, Change, Pack
from builder.reading.how_many import numbers, out_words
from builder.reading.in_service import UNITS
from builder.reading.values.sentences import ended, sentence_start
from builder.render.feed import FeedEntry, feed

KEY = "changes"
TITLE = "What changed"
FEED = "changes.xml"
DONE = {
    "out": "out of service",
    "back": "back in service",
    "count": "counted",
    "move": "moved",
    "swap": "another in its place",
    "add": "added",
    "remove": "taken out",
    "verified": "checked again",
}
"""What was done, in the words of the page."""
IN_SERVICE = ("out", "back")
"""What was done to what works."""
SAID_ALREADY = ("condition", "working", *UNITS)
"""The keys that the words for what works say by themselves."""
UNIT_WORDS = {"out_of_service": "out of service", "dead": "dead"}
"""Keys that list single units, in the words of the page."""


def changes_page(pack: Pack) -> Page:
    """The log as a page."""
    return Page(
        KEY,
        TITLE,
        tuple(blocks(pack)),
        summary="What the house has changed, when, by whom and why.",
    )


def blocks(pack: Pack) -> Iterator[Block]:
    """An introduction, the table, the figures that moved, how to subscribe."""
    yield Paragraph(
        "What the house has changed, newest first: what went out, came back, was counted or checked"
        " again, and why."
    )
    named = newest_first(pack)
    yield Table(
        ("Day", "What", "Why, and by whom"),
        [row(change, anchor, pack) for change, anchor in named],
        summary="Changes of the house, newest first",
    )
    if any(change.moved for change, _ in named):
        yield Heading(2, "Figures that moved", "moved")
        yield Caution(EVERYWHERE)
        yield from (
            Folded(
                f"{change.on}, {change.line or 'the house'}",
                [Bullets(change.moved)],
                moved_anchor(anchor),
            )
            for change, anchor in named
            if change.moved
        )
    yield Heading(2, "Subscribe", "subscribe")
    yield Paragraph(
        f"A reader of feeds can follow this page: give it the address of this page with {FEED} in"
        f" the place of {KEY}.html."
    )


def newest_first(pack: Pack) -> list[tuple[Change, str]]:
    """
    The changes with the anchor of each: the day, and which of that day's it is.

    The log is oldest first; of one day, later lines are newer.
    """
    count: dict[str, int] = {}
    named = []
    for change in pack.log:
        count[change.on] = count.get(change.on, 0) + 1
        named.append((change.on, count[change.on], change))
    named.sort(key=lambda each: each[:2], reverse=True)
    return [(change, f"change-{on}-{number}") for on, number, change in named]


def row(change: Change, anchor: str, pack: Pack) -> Row:
    """One change as a row."""
    count = len(change.moved)
    moved: list[Inline] = (
        [" ", Link("What moved with it", KEY, moved_anchor(anchor))] if count else []
    )
    return Row(
        (
            [Day(change.on)],
            [*what(change, pack), *moved],
            f"{sentence(change.why)} {sentence(change.by)}",
        ),
        anchor,
    )


def moved_anchor(anchor: str) -> str:
    """Where the figures that moved with a change stand."""
    return f"moved-{anchor.removeprefix('change-')}"


def sentence(text: str) -> str:
    """Words as a sentence."""
    return ended(sentence_start(text))


def what(change: Change, pack: Pack) -> list[Inline]:
    """
    The line that changed, with its department's page, and what was done.

    A change written by hand need not name a line.
    """
    section, page = told_on(change, pack)
    did = done(change)
    if not page:
        return [
            f"{change.line}. {did}" if change.line and did else change.line or did or "The house."
        ]
    return [Link(section, page), f": {change.line}. {did}" if change.line else f". {did}"]


def told_on(change: Change, pack: Pack) -> tuple[str, str]:
    """
    The title of the section that a change is of, and its page; empty where there is none such. A
    file of a space is told with its space.
    """
    *folders, key = change.file.removesuffix(".yml").split("/")
    space = next((each for each in pack.spaces if each.key == "".join(folders[-1:])), None)
    for section in pack.sections:
        if section.key == key and section.space == (space.key if space else ""):
            if space is None:
                return section.title, key
            return f"{section.title}, {space.name}", f"{space.key}-{key}"
    return "", ""


def done(change: Change) -> str:
    """What was done and which keys changed, as a sentence; empty where the log does not say."""
    words = done_words(change)
    said = () if change.did in ("add", "remove", "verified") else change.altered
    keys = ", ".join(
        altered(part)
        for part in said
        if change.did not in IN_SERVICE or part.key not in SAID_ALREADY
    )
    found = ": ".join(part for part in (words, keys) if part)
    return sentence(found) if found else ""


def done_words(change: Change) -> str:
    """What was done, in the words of the page: how many of how many, where the log tells that."""
    if change.did not in IN_SERVICE:
        return DONE.get(change.did, change.did)
    gone, come = units_moved(change)
    if change.did == "out":
        return went_out(change, gone)
    return came_back(change, come)


def went_out(change: Change, units: Sequence[str]) -> str:
    """What went out of service: how many of how many are since, or as much as the log tells."""
    words = DONE["out"]
    if change.out is not None and change.of is not None:
        words = out_words(change.out, change.of) or words
    elif part := of_key(change, "working"):
        words = f"{words}, {at_work(part)}"
    return f"{words}, {numbers(units)}" if units else words


def came_back(change: Change, units: Sequence[str]) -> str:
    """What came back, and how many are out still."""
    words = f"{numbers(units)} {DONE['back']}" if units else DONE["back"]
    if change.out is not None and change.of is not None and change.of > 1:
        still = f"{out_words(change.out, change.of)} still" if change.out else f"all {change.of}"
        return f"{words}, {still}"
    if part := of_key(change, "working"):
        return f"{words}, {at_work(part)}"
    return words


def at_work(part: Altered) -> str:
    """How many work and did before; all of them where the line no longer says."""
    now = f"{part.now or 'all'} work"
    return f"{now}, {part.was} before" if part.was else now


def of_key(change: Change, key: str) -> Altered | None:
    """What a change says of a key."""
    return next((part for part in change.altered if part.key == key), None)


def units_moved(change: Change) -> tuple[list[str], list[str]]:
    """The numbers of single units that went out with a change, and those that came back."""
    gone: list[str] = []
    come: list[str] = []
    for part in change.altered:
        if part.key in UNITS:
            was, now = listed(part.was), listed(part.now)
            gone += [unit for unit in now if unit not in was]
            come += [unit for unit in was if unit not in now]
    return gone, come


def listed(text: str) -> list[str]:
    """The entries of a list as the log writes it."""
    return [each.strip() for each in text.strip("[]").split(",") if each.strip()]


def altered(part: Altered) -> str:
    """One key before and after."""
    if part.key in UNITS:
        words, was, now = UNIT_WORDS[part.key], listed(part.was), listed(part.now)
        if not now:
            return f"{words}: none any more, {numbers(was)} before"
        return f"{words}: {numbers(now)}" + (f", {numbers(was)} before" if was else "")
    key = part.key.replace("_", " ").replace(".", " ")
    was_text, now_text = part.was.strip("[]"), part.now.strip("[]")
    if not was_text:
        return f"{key} {now_text}"
    return f"{key} {was_text} → {now_text}" if now_text else f"{key} {was_text} no longer said"


def changes_feed(pack: Pack) -> str:
    """The same as an Atom feed. Its days are the log's; no clock is asked."""
    entries = [
        FeedEntry(
            anchor, change.on, change.by, headline(change), body(change), f"{KEY}.html#{anchor}"
        )
        for change, anchor in newest_first(pack)
    ]
    return feed(pack.venue, f"{pack.venue}: what changed", f"{KEY}.html", entries)


def headline(change: Change) -> str:
    """An entry's title."""
    return ": ".join(part for part in (change.line, done(change)) if part) or sentence(change.why)


def body(change: Change) -> str:
    """An entry's text: why, what moved, and the caution that goes with figures."""
    moved = f" Moved: {'; '.join(change.moved)}. {EVERYWHERE}" if change.moved else ""
    return f"{sentence(change.why)}{moved}"
