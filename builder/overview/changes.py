"""'What changed': the house's log, newest first, with the figures that moved. A script lets a visitor see only what is new to them."""

from collections.abc import Iterator

from builder.cautions import EVERYWHERE
from builder.document import Block, Caution, Day, Heading, Inline, Link, Page, Paragraph, Row, Small, Table
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


def changes_page(pack: Pack) -> Page:
    """The log as a page."""
    return Page(KEY, TITLE, tuple(blocks(pack)), summary="What the house has changed, when, by whom and why.")


def blocks(pack: Pack) -> Iterator[Block]:
    """An introduction, the table, how to subscribe."""
    yield Paragraph(
        "What the house has changed, newest first. A line goes out, comes back or is counted anew; figures that moved with it stand below it."
    )
    if any(change.moved for change in pack.log):
        yield Caution(EVERYWHERE)
    rows = [row(change, anchor, pack) for change, anchor in newest_first(pack)]
    yield Table(("Day", "What", "Done", "Why, and by whom"), rows, summary="Changes of the house, newest first")
    yield Heading(2, "Subscribe", "subscribe")
    yield Paragraph(f"A reader of feeds can follow this page: give it the address of this page with {FEED} in the place of {KEY}.html.")


def newest_first(pack: Pack) -> list[tuple[Change, str]]:
    """The changes with the anchor of each: the day, and which of that day's it is. The log is oldest first; of one day, later lines are newer."""
    count: dict[str, int] = {}
    named = []
    for change in pack.log:
        count[change.on] = count.get(change.on, 0) + 1
        named.append((change.on, count[change.on], change))
    named.sort(key=lambda each: each[:2], reverse=True)
    return [(change, f"change-{on}-{number}") for on, number, change in named]


def row(change: Change, anchor: str, pack: Pack) -> Row:
    """One change as a row."""
    moved = [Small(f"Moved: {'; '.join(change.moved)}.")] if change.moved else []
    return Row(([Day(change.on)], what(change, pack), [done(change), *moved], f"{change.why} {change.by}."), anchor)


def what(change: Change, pack: Pack) -> list[Inline]:
    """The line that changed, with its department's page."""
    key = change.file.removesuffix(".yml")
    section = pack.section(key)
    if section is None:
        return [change.line or "The house"]
    return [Link(section.title, key), f": {change.line}" if change.line else ""]


def done(change: Change) -> str:
    """What was done and which keys changed, in a line."""
    words = DONE.get(change.did, change.did)
    keys = "" if change.did in ("add", "remove", "verified") else ", ".join(altered(part) for part in change.altered)
    return ": ".join(part for part in (words[:1].upper() + words[1:], keys) if part) or "Changed"


def altered(part: Altered) -> str:
    """One key before and after."""
    key = part.key.replace("_", " ").replace(".", " ")
    if not part.was:
        return f"{key} {part.now}"
    return f"{key} {part.was} → {part.now}" if part.now else f"{key} {part.was} no longer said"


def changes_feed(pack: Pack) -> str:
    """The same as an Atom feed. Its days are the log's; no clock is asked."""
    entries = [
        FeedEntry(anchor, change.on, change.by, f"{change.line or 'The house'}: {done(change).lower()}", body(change), f"{KEY}.html#{anchor}")
        for change, anchor in newest_first(pack)
    ]
    return feed(pack.venue, f"{pack.venue}: what changed", f"{KEY}.html", entries)


def body(change: Change) -> str:
    """An entry's text: why, what moved, and the caution that goes with figures."""
    moved = f" Moved: {'; '.join(change.moved)}. {EVERYWHERE}" if change.moved else ""
    return f"{change.why}{moved}"
