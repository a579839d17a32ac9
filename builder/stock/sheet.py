"""
The counting sheet: what should be in which case, place by place, as CSV or to print; and the
counted sheet back, as orders.

A spreadsheet runs a cell that begins with ``=``, ``+``, ``-`` or ``@``. Text cells that do get an
apostrophe in front, which reading takes off again.
"""

import csv
import io
import re
from collections import Counter
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from builder.pack import Revision
from builder.reading.in_part import Between, as_written
from builder.reading.problems import Problem, Refused, Where
from builder.reading.standing_on import state_words
from builder.render.paper import Column, paper
from builder.stock.lines import Held, found
from builder.stock.order import COUNTS, Order, written_line
from builder.stock.orders import count

COLUMNS = (
    "place",
    "list",
    "name",
    "count",
    "working",
    "condition",
    "counted",
    "counted working",
    "note",
)
PRINTED = (
    Column("What", "words"),
    Column("Should be", "number"),
    Column("Should work", "number"),
    Column("Counted", "blank"),
    Column("Of them work", "blank"),
)
NOWHERE = "Nobody has said where"
NO_SPACES: Mapping[str, str] = MappingProxyType({})
NEEDED = ("list", "name", "counted")
SHEET = "the sheet"
LEADING = ("=", "+", "-", "@", "\t", "\r", "'")


def sheet(lines: Sequence[Held]) -> str:
    """The counting sheet as CSV. Two columns wait for the count."""
    written = io.StringIO()
    table = csv.writer(written, lineterminator="\r\n")
    table.writerow(COLUMNS)
    table.writerows([guarded(cell) for cell in each] for each in rows(lines))
    return written.getvalue()


def rows(lines: Sequence[Held]) -> list[tuple[str, ...]]:
    """
    Every counted line by column, by place, then in the order of the files.

    Lines of which nobody says where they are come last.
    """
    found = [row(line, lines) for line in lines if counted_key(line)]
    return sorted(found, key=lambda each: (each[0] == "", in_order(each[0]), space_of(each[1])))


def space_of(within: str) -> str:
    """The folder of the space that a list is of; empty for what all share."""
    return within.rpartition("/")[0]


def where_printed(place: str, within: str, spaces: Mapping[str, str]) -> str:
    """A place with the space that it is in, for two spaces may each have one of that name."""
    space = spaces.get(space_of(within), "")
    return f"{place or NOWHERE}, {space}" if space else place or NOWHERE


def in_order(place: str) -> list[tuple[int, str]]:
    """A place as people sort it: trunk 2 before trunk 10."""
    return [
        (int(part) if part.isdecimal() and part.isascii() else -1, part)
        for part in re.split(r"([0-9]{1,9})", place.casefold())
    ]


def sheet_to_print(
    lines: Sequence[Held],
    venue: str,
    revision: Revision,
    spaces: Mapping[str, str] = NO_SPACES,
) -> str:
    """
    The same on paper: a table a place, with boxes to write in. ``spaces`` are the names of the
    spaces of the house by folder.

    The counts are then typed into the CSV, or ordered one by one.
    """
    found = [dict(zip(COLUMNS, each, strict=True)) for each in rows(lines)]
    names = Counter((each["place"], each["name"]) for each in found)
    places: dict[str, list[list[str]]] = {}
    for each in found:
        small = [
            each["list"] if names[each["place"], each["name"]] > 1 else "",
            "" if each["condition"] == "in service" else state_words(each["condition"]),
            each["note"],
        ]
        words = "; ".join(part.rstrip(".") for part in small if part)
        where = where_printed(each["place"], each["list"], spaces)
        places.setdefault(where, []).append(
            [f"{each['name']}\n{words}", each["count"], each["working"], "", ""]
        )
    above = (
        (
            f"As revision {revision.number} of {revision.on} has it, description"
            f" {revision.fingerprint}."
        ),
        "Counted by ______________________________   on ____________________",
    )
    return paper(f"{venue}: counting sheet", above, PRINTED, places)


def counted_key(line: Held) -> str | None:
    """The key that a line is counted by, where its count is a number or not known yet."""
    return next(
        (
            key
            for key in COUNTS[:2]
            if key in type(line.record).model_fields
            and not isinstance(getattr(line.record, key), tuple)
        ),
        None,
    )


def row(line: Held, lines: Sequence[Held]) -> tuple[str, ...]:
    """One line as it should be found."""
    record = line.record
    numbers = [getattr(record, key, None) for key in (counted_key(line) or "", "working")]
    shown = [count_cell(number) for number in numbers]
    return (
        place_of(line, lines),
        line.within,
        line.name,
        *shown,
        record.condition,
        "",
        "",
        record.note or "",
    )


def count_cell(number: object) -> str:
    """How many there should be, as written where it is known in part; empty where nobody knows."""
    if isinstance(number, Between):
        return as_written(number)
    return str(number) if isinstance(number, int) else ""


def place_of(line: Held, lines: Sequence[Held]) -> str:
    """
    Where a line is: its place, where it is kept, or the line that it is part of, such as the truss
    that it hangs on.

    Empty where nobody says.
    """
    said = (getattr(line.record, key, None) for key in ("place", "kept"))
    if found := next((place for place in said if isinstance(place, str)), ""):
        return found
    whole = [
        other
        for other in lines
        if other.file == line.file
        and other.path == line.path[: len(other.path)]
        and other is not line
    ]
    return whole[-1].name if whole else ""


def guarded(cell: str) -> str:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if cell.startswith(LEADING) else cell


def bare(cell: str) -> str:
    """A cell as it was before it was guarded."""
    text = cell.strip()
    return text[1:] if text.startswith("'") and text[1:].startswith(LEADING) else text


def counted(text: str, lines: Sequence[Held], texts: Mapping[str, str]) -> list[Order]:
    """
    The orders that a counted sheet comes to: one for each line whose count is another. Rows without
    a count were not counted.

    Raises
    ------
    Refused
        With every row that cannot be used: `sheet-unreadable`, `sheet-number`, `line-unknown`,
        `count-below-zero`, `count-beyond`.
    """
    problems: list[Problem] = []
    orders: list[Order] = []
    for number, cells in rows_of(text):
        try:
            orders += order_of(number, cells, lines, texts)
        except Refused as refused:
            problems += refused.problems
    if problems:
        raise Refused(problems)
    return orders


def rows_of(text: str) -> list[tuple[int, dict[str, str]]]:
    """
    The rows by column, each with its line number.

    Commas, semicolons and tabs divide cells, as spreadsheets in different countries write them.
    """
    first = text.lstrip("\ufeff").partition("\n")[0]
    divider = max(",;\t", key=first.count)
    table = csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=""), delimiter=divider)
    try:
        rows = [(table.line_num, cells) for cells in table]
    except csv.Error as failure:
        raise Refused(
            [
                Problem(
                    Where(SHEET),
                    "",
                    "",
                    f"is no CSV: {failure}",
                    "sheet-unreadable",
                    "save it as CSV",
                )
            ]
        ) from None
    head = [cell.strip().lower() for cell in rows[0][1]] if rows else []
    if lacking := [column for column in NEEDED if column not in head]:
        reason = f"lacks the column{'s' if len(lacking) > 1 else ''} {', '.join(lacking)}"
        raise Refused(
            [
                Problem(
                    Where(SHEET),
                    "",
                    "",
                    reason,
                    "sheet-unreadable",
                    "count on the sheet that 'housepack stock sheet' writes",
                )
            ]
        )
    return [
        (number, dict(zip(head, (bare(cell) for cell in cells), strict=False)))
        for number, cells in rows[1:]
        if any(cell.strip() for cell in cells)
    ]


def order_of(
    number: int, cells: Mapping[str, str], lines: Sequence[Held], texts: Mapping[str, str]
) -> list[Order]:
    """The order that one row comes to; none where nothing was counted or nothing differs."""
    whole, working = (
        number_in(number, cells.get(column, "")) for column in ("counted", "counted working")
    )
    if whole is None and working is None:
        return []
    line = found([each for each in lines if each.within == cells["list"]], cells["name"])
    said = written_line(line, texts)
    key = counted_key(line) or "count"
    there = whole if whole is not None else getattr(line.record, key)
    same = said.get(key) == str(there) and (
        working is None or said.get("working", said.get(key)) == str(working)
    )
    if same or not isinstance(there, int):
        return []
    return [count(line, said, there, working=working)]


def number_in(row: int, cell: str) -> int | None:
    """A whole number in a cell; None where the cell is empty."""
    text = cell.strip()
    if not text:
        return None
    digits = text.removesuffix(".0").removesuffix(",0").removeprefix("-")
    if not (digits.isascii() and digits.isdigit()):
        raise Refused(
            [
                Problem(
                    Where(SHEET, row, 1),
                    "",
                    text,
                    "is not a whole number",
                    "sheet-number",
                    "write how many there are, such as 12",
                )
            ]
        )
    return int(digits) * (-1 if text.startswith("-") else 1)
