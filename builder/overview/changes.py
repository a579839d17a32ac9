"""
'What changed': the house's log, newest first, with the figures that moved.

A script lets a visitor see only what is new to them.
"""

from collections.abc import Iterator

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
SAID_ALREADY = (("out", "condition"), ("back", "condition"))
"""What the word for the change says by itself."""
UNITS = {"out_of_service": "numbers that do not play", "dead": "dead ways"}
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
    return f"{text[:1].upper()}{text[1:]}{'' if text.endswith(('.', '!', '?')) else '.'}"


def what(change: Change, pack: Pack) -> list[Inline]:
    """
    The line that changed, with its department's page, and what was done.

    A change written by hand need not name a line.
    """
    key = change.file.removesuffix(".yml")
    section = pack.section(key)
    did = done(change)
    if section is None:
        return [
            f"{change.line}. {did}" if change.line and did else change.line or did or "The house."
        ]
    return [Link(section.title, key), f": {change.line}. {did}" if change.line else f". {did}"]


def done(change: Change) -> str:
    """What was done and which keys changed, as a sentence; empty where the log does not say."""
    words = DONE.get(change.did, change.did)
    said = () if change.did in ("add", "remove", "verified") else change.altered
    keys = ", ".join(altered(part) for part in said if (change.did, part.key) not in SAID_ALREADY)
    found = ": ".join(part for part in (words, keys) if part)
    return sentence(found) if found else ""


def altered(part: Altered) -> str:
    """One key before and after."""
    key = UNITS.get(part.key, part.key.replace("_", " ").replace(".", " "))
    was, now = part.was.strip("[]"), part.now.strip("[]")
    if part.key in UNITS:
        return f"{key} {was or 'none'} → {now or 'none'}"
    if not was:
        return f"{key} {now}"
    return f"{key} {was} → {now}" if now else f"{key} {was} no longer said"


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
