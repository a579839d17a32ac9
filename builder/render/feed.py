"""
An Atom feed (RFC 4287) from days, names and plain texts.

Everything is escaped here; names of entries are made from the venue's own words.
"""

import html
import uuid
from collections.abc import Sequence
from dataclasses import dataclass

from builder.render.escaping import visible


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


def feed(venue: str, title: str, link: str, entries: Sequence[FeedEntry]) -> str:
    """
    The feed, newest entry first as given.

    Raises
    ------
    ValueError
        If there is no entry: a feed must say when it was last updated.
    """
    if not entries:
        raise ValueError("entries must be at least one, got none")
    head = [
        '<?xml version="1.0" encoding="utf-8"?>',
        '<feed xmlns="http://www.w3.org/2005/Atom">',
        f"<title>{text(title)}</title>",
        f"<id>{identity(venue)}</id>",
        f"<updated>{moment(max(entry.on for entry in entries))}</updated>",
        f'<link rel="alternate" type="text/html" href="{text(link)}"/>',
    ]
    return "\n".join([*head, *(entry_text(venue, entry) for entry in entries), "</feed>"]) + "\n"


def entry_text(venue: str, entry: FeedEntry) -> str:
    """One entry."""
    return "\n".join(
        [
            "<entry>",
            f"<title>{text(entry.title)}</title>",
            f"<id>{identity(venue, entry.name)}</id>",
            f"<updated>{moment(entry.on)}</updated>",
            f"<author><name>{text(entry.by)}</name></author>",
            f'<link rel="alternate" type="text/html" href="{text(entry.link)}"/>',
            f"<summary>{text(entry.text)}</summary>",
            "</entry>",
        ]
    )


def text(words: str) -> str:
    """Words that XML takes for words."""
    return html.escape(visible(words), quote=True)


def identity(*names: str) -> str:
    """A lasting name made from other names: the same on every machine and at every build."""
    return f"urn:uuid:{uuid.uuid5(uuid.NAMESPACE_URL, chr(10).join(('housepack', *names)))}"


def moment(day: str) -> str:
    """A day as the feed writes moments; the log knows days only."""
    return f"{day}T00:00:00Z"
