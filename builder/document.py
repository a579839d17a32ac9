"""
The document: pages as blocks. A block knows no markup; each renderer writes and escapes its own.

Text in a block is a string, or a sequence of inline pieces (strings, :class:`Link`,
:class:`Strong`, :class:`Small`).
"""

from collections.abc import Sequence
from dataclasses import dataclass


class Markup(str):
    """
    Text that is markup already: the render room alone makes it, with all that a venue wrote
    escaped.
    """

    __slots__ = ()


@dataclass(frozen=True, slots=True)
class Link:
    """
    A link to a page of this document (by page key, with an anchor there), never to text that a
    venue wrote.
    """

    text: str
    page: str
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Strong:
    """Text that must be seen first."""

    text: str


@dataclass(frozen=True, slots=True)
class Small:
    """Text of second rank, such as the same length in the other unit system."""

    text: str


@dataclass(frozen=True, slots=True)
class Tag:
    """
    A short state in a frame: ``tone`` is plain, note, caution or danger. The text says it too, so
    colour is never alone.
    """

    text: str
    tone: str = "plain"


@dataclass(frozen=True, slots=True)
class Day:
    """
    A day, year first. A page that can may add how long ago that is when it is read; the text alone
    never needs a clock.
    """

    on: str


Inline = str | Link | Strong | Small | Tag | Day
Words = str | Sequence[Inline]


@dataclass(frozen=True, slots=True)
class Heading:
    """
    A heading. ``level`` is 2 or more (a page's title is its level 1); ``anchor`` is what links
    point at.
    """

    level: int
    text: str
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph of running text."""

    words: Words


@dataclass(frozen=True, slots=True)
class Bullets:
    """An unordered list."""

    entries: Sequence[Words]


@dataclass(frozen=True, slots=True)
class Row:
    """
    One row of a table. ``anchor`` makes it a target, ``order`` gives a number a cell to sort by
    (None sorts by the text).
    """

    cells: Sequence[Words]
    anchor: str = ""
    order: Sequence[float | None] = ()


@dataclass(frozen=True, slots=True)
class Table:
    """
    A table. The first column names the row. ``numeric`` holds the indices of columns set flush
    right.

    ``summary`` is said before the table to those who cannot see it and stands as its caption. Of a
    table ``to_compare`` a phone shows each line as a list of its own, its values abreast.
    """

    columns: Sequence[str]
    rows: Sequence[Row]
    summary: str = ""
    numeric: Sequence[int] = ()
    sortable: bool = False
    to_compare: bool = False


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of a definition list: a label, its value, and what qualifies it in small print."""

    label: str
    words: Words
    small: Words = ""
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Facts:
    """Labels and values, the form most of a pack takes."""

    entries: Sequence[Entry]


@dataclass(frozen=True, slots=True)
class Headline:
    """
    A few large answers for a reader with two minutes: label, value, small print, and the page that
    tells more.
    """

    entries: Sequence[Entry]


@dataclass(frozen=True, slots=True)
class Picture:
    """
    A drawing. ``svg`` is complete; ``alt`` says what it shows. Its file has the address of its
    ``name``.

    ``inline`` drawings use currentColor and stand in the page; others become files, with ``dark``
    as the version for a dark page. A drawing ``beside`` the text stands to its right where the page
    has room.
    """

    name: str
    svg: Markup
    alt: str
    caption: str = ""
    inline: bool = True
    dark: Markup | None = None
    beside: bool = False


@dataclass(frozen=True, slots=True)
class Photo:
    """A photograph of the venue, by its path in the published site."""

    path: str
    alt: str
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning in a frame. ``tone`` is danger, caution or note."""

    words: Words
    title: str = "Planning figures"
    tone: str = "caution"


@dataclass(frozen=True, slots=True)
class Folded:
    """Blocks behind a line that opens them, such as a working."""

    title: str
    blocks: "Sequence[Block]"
    anchor: str = ""


Block = (
    Heading | Paragraph | Bullets | Table | Facts | Headline | Picture | Photo | Caution | Folded
)


@dataclass(frozen=True, slots=True)
class Page:
    """
    A page: ``key`` is its file name without ending, ``title`` its heading, ``menu`` its name in the
    navigation where that is another, ``summary`` a sentence for search. ``is_folded`` where the
    navigation shows it only while a page of its group is read.
    """

    key: str
    title: str
    blocks: Sequence[Block]
    summary: str = ""
    group: str = ""
    menu: str = ""
    is_folded: bool = False


@dataclass(frozen=True, slots=True)
class Document:
    """
    All pages in the order of the navigation, with the files that go beside them by path (pictures,
    data).
    """

    title: str
    pages: Sequence[Page]
    files: "Sequence[Attachment]" = ()


@dataclass(frozen=True, slots=True)
class Attachment:
    """A file published as it is, such as ``pack.json``."""

    path: str
    content: bytes
