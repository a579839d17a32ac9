"""
The counting sheet: what should be in which case, place by place, as CSV; and the counted sheet back, as orders.

A spreadsheet runs a cell that begins with ``=``, ``+``, ``-`` or ``@``. Text cells that do get an apostrophe in front, which reading takes off again.
"""

import csv
import io
from collections.abc import Mapping, Sequence

from builder.reading.problems import Problem, Refused, Where
from builder.stock.lines import Held, found
from builder.stock.order import COUNTS, Order, written_line
from builder.stock.orders import count

COLUMNS = ("place", "list", "name", "count", "working", "condition", "counted", "counted working", "note")
NEEDED = ("list", "name", "counted")
SHEET = "the sheet"
LEADING = ("=", "+", "-", "@", "\t", "\r", "'")


def sheet(lines: Sequence[Held]) -> str:
    """Every counted line, by place, then in the order of the files. Two columns wait for the count."""
    rows = [row(line) for line in lines if counted_key(line)]
    rows.sort(key=lambda each: (each[0] == "", each[0].casefold()))
    written = io.StringIO()
    table = csv.writer(written, lineterminator="\r\n")
    table.writerow(COLUMNS)
    table.writerows([guarded(cell) for cell in each] for each in rows)
    return written.getvalue()


def counted_key(line: Held) -> str | None:
    """The key that a line is counted by, where its count is a number or not known yet."""
    return next((key for key in COUNTS[:2] if key in type(line.record).model_fields and not isinstance(getattr(line.record, key), tuple)), None)


def row(line: Held) -> tuple[str, ...]:
    """One line as it should be found."""
    record = line.record
    place = getattr(record, "place", None)
    numbers = [getattr(record, key, None) for key in (counted_key(line) or "", "working")]
    shown = [str(number) if isinstance(number, int) else "" for number in numbers]
    return (place if isinstance(place, str) else "", line.within, line.name, *shown, record.condition, "", "", record.note or "")


def guarded(cell: str) -> str:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if cell.startswith(LEADING) else cell


def bare(cell: str) -> str:
    """A cell as it was before it was guarded."""
    text = cell.strip()
    return text[1:] if text.startswith("'") and text[1:].startswith(LEADING) else text


def counted(text: str, lines: Sequence[Held], texts: Mapping[str, str]) -> list[Order]:
    """
    The orders that a counted sheet comes to: one for each line whose count is another. Rows without a count were not counted.

    Raises
    ------
    Refused
        With every row that cannot be used: `sheet-unreadable`, `sheet-number`, `line-unknown`, `count-below-zero`, `count-beyond`.
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
    """The rows by column, each with its line number. Commas, semicolons and tabs divide cells, as spreadsheets in different countries write them."""
    first = text.lstrip("\ufeff").partition("\n")[0]
    divider = max(",;\t", key=first.count)
    table = csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=""), delimiter=divider)
    try:
        rows = [(table.line_num, cells) for cells in table]
    except csv.Error as failure:
        raise Refused([Problem(Where(SHEET), "", "", f"is no CSV: {failure}", "sheet-unreadable", "save it as CSV")]) from None
    head = [cell.strip().lower() for cell in rows[0][1]] if rows else []
    if lacking := [column for column in NEEDED if column not in head]:
        reason = f"lacks the column{'s' if len(lacking) > 1 else ''} {', '.join(lacking)}"
        raise Refused([Problem(Where(SHEET), "", "", reason, "sheet-unreadable", "count on the sheet that 'housepack stock sheet' writes")])
    return [
        (number, dict(zip(head, (bare(cell) for cell in cells), strict=False))) for number, cells in rows[1:] if any(cell.strip() for cell in cells)
    ]


def order_of(number: int, cells: Mapping[str, str], lines: Sequence[Held], texts: Mapping[str, str]) -> list[Order]:
    """The order that one row comes to; none where nothing was counted or nothing differs."""
    whole, working = (number_in(number, cells.get(column, "")) for column in ("counted", "counted working"))
    if whole is None and working is None:
        return []
    line = found([each for each in lines if each.within == cells["list"]], cells["name"])
    said = written_line(line, texts)
    key = counted_key(line) or "count"
    there = whole if whole is not None else getattr(line.record, key)
    same = said.get(key) == str(there) and (working is None or said.get("working", said.get(key)) == str(working))
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
        raise Refused([Problem(Where(SHEET, row, 1), "", text, "is not a whole number", "sheet-number", "write how many there are, such as 12")])
    return int(digits) * (-1 if text.startswith("-") else 1)
