"""
The shows on a venue's books, as ``check`` and ``stock`` tell of them.

They are private: nothing here is written to a file.
"""

from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from builder.cli.next_step import argument, at, command
from builder.cli.telling import tell
from builder.files import Shows, read_shows
from builder.pack import Pack
from builder.reading.problems import Problem

if TYPE_CHECKING:  # its rules load every department; see carrying.py
    from builder.shows.booked import Books
    from builder.shows.judging import Outlook
    from builder.stock.changing import Asked


def books_at(venue: Path) -> "tuple[Books, Shows]":
    """
    The shows on a venue's books, with what is wrong in their files, and the folder as it was read.
    """
    from builder.registry import RULES
    from builder.shows.booked import Books, books_of

    folder = read_shows(venue)
    books = books_of(folder.texts, RULES)
    return Books(books.shows, tuple(sorted((*folder.problems, *books.problems)))), folder


def outlook_on(books: "Books", pack: Pack, on: date) -> "Outlook":
    """The shows to come from a day on, judged."""
    from builder.shows.judging import outlook

    return outlook(books, pack, on)


def echo_outlook(books: "Books", folder: Shows, pack: Pack, on: date, venue: Path) -> None:
    """
    Print the shows to come, each with its verdicts in numbers and what is short; nothing where no
    show is kept.
    """
    from builder.shows.telling import outlook_lines

    if books.shows:
        tell("")
        for line in outlook_lines(outlook_on(books, pack, on)):
            tell(line)
        rider = argument(venue / books.shows[-1].file)
        tell("  Every verdict of a show, and what to ask:")
        tell(f"    {command('fit', rider, *at(venue))}")
    if folder.others:
        tell(f"Not read, for they do not end in .yml: {', '.join(folder.others)}.")


def turned_by(
    venue: Path, before: Pack, after: Pack, asked: "Asked"
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """
    What a change of the house turns for the shows to come, line by line, and the cautions that
    belong to it. A reason that names an act is told too.

    A show whose file has a problem is named, and judged as far as it can be read: gear that breaks
    cannot wait for a rider to be mended.
    """
    from builder.shows.judging import outlook, turned
    from builder.shows.telling import named_lines, turned_lines

    books, _ = books_at(venue)
    faulty = tuple(dict.fromkeys(problem.where.file for problem in books.problems))
    now = outlook(books, after, asked.on)
    turns = turned(outlook(books, before, asked.on), now)
    lines = (*turned_lines(turns, now, faulty), *named_lines(asked.why, books))
    return lines, now.cautions([turn.found for turn in turns]) if turns else ()


def echo_problems(problems: Iterable[Problem], venue: Path) -> None:
    """Print what is wrong in the files of shows."""
    for problem in problems:
        tell(f"{venue}/{problem}", err=True)
