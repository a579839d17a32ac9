"""
An Atom feed (RFC 4287) from days, names and plain texts.

Everything is escaped here; names of entries are made from the venue's own words.
"""

import uuid
from collections.abc import Sequence
from dataclasses import dataclass

from builder.document import Markup
from builder.render.elements import words
from builder.render.markup import joined, markup


@dataclass(frozen=True, slots=True)
class FeedEntry:
    """
    One entry: ``name`` is unique in the feed, ``on`` a day such as 2026-11-20, ``link`` relative to
    the feed.
    """

    name: str
    on: str
    by: str
    title: str
    text: str
    link: str


def feed(venue: str, title: str, link: str, entries: Sequence[FeedEntry]) -> Markup:
    """
    The feed, newest entry first as given.

    Raises
    ------
    ValueError
        If there is no entry: a feed must say when it was last updated.
    """
    if not entries:
        raise ValueError("entries must be at least one, got none")
    return markup(
        '<?xml version="1.0" encoding="utf-8"?>\n'
        '<feed xmlns="http://www.w3.org/2005/Atom">\n'
        "<title>{title}</title>\n"
        "<id>{identity}</id>\n"
        "<updated>{updated}</updated>\n"
        '<link rel="alternate" type="text/html" href="{link}"/>\n'
        "{entries}\n"
        "</feed>\n",
        title=words(title),
        identity=words(identity(venue)),
        updated=words(moment(max(entry.on for entry in entries))),
        link=words(link),
        entries=joined((entry_text(venue, entry) for entry in entries), "\n"),
    )


def entry_text(venue: str, entry: FeedEntry) -> Markup:
    """One entry."""
    return markup(
        "<entry>\n"
        "<title>{title}</title>\n"
        "<id>{identity}</id>\n"
        "<updated>{updated}</updated>\n"
        "<author><name>{by}</name></author>\n"
        '<link rel="alternate" type="text/html" href="{link}"/>\n'
        "<summary>{text}</summary>\n"
        "</entry>",
        title=words(entry.title),
        identity=words(identity(venue, entry.name)),
        updated=words(moment(entry.on)),
        by=words(entry.by),
        link=words(entry.link),
        text=words(entry.text),
    )


def identity(*names: str) -> str:
    """A lasting name made from other names: the same on every machine and at every build."""
    # A half of a character, which no file can hold, has no name of its own.
    whole = chr(10).join(("housepack", *names)).encode("utf-8", "replace").decode()
    return f"urn:uuid:{uuid.uuid5(uuid.NAMESPACE_URL, whole)}"


def moment(day: str) -> str:
    """A day as the feed writes moments; the log knows days only."""
    return f"{day}T00:00:00Z"
