"""
A list to fill in by hand, as one HTML file that prints on A4: no script, nothing from elsewhere.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Literal

STYLE = """
@page { size: A4; margin: 14mm 12mm; }
:root { color-scheme: light; }
body { font: 11pt/1.3 system-ui, sans-serif; color: #000; background: #fff; max-width: 186mm; margin: 0 auto; padding: 0 4mm; }
h1 { font-size: 15pt; margin: 4mm 0 1mm; }
p { margin: 0 0 2mm; }
table { border-collapse: collapse; width: 100%; }
thead { display: table-header-group; }
tr, tbody { break-inside: avoid; }
th { text-align: left; font-size: 9pt; font-weight: 600; vertical-align: bottom; }
th, td { padding: 1mm 1.5mm; border-bottom: 0.3mm solid #777; }
td { vertical-align: top; height: 5mm; }
.group { font-size: 11pt; padding-top: 4mm; border-bottom: 0.5mm solid #000; }
.number { text-align: right; width: 14mm; }
.blank { width: 20mm; border: 0.3mm solid #000; }
small { font-size: 9pt; }
@media print { body { padding: 0; } }
"""  # noqa: E501
OPENING = """<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">"""


@dataclass(frozen=True, slots=True)
class Column:
    """
    A column of a table: its heading, and what it is for: words, a number, or an empty box to write
    in.
    """

    title: str
    kind: Literal["words", "number", "blank"]


def paper(
    title: str,
    above: Sequence[str],
    columns: Sequence[Column],
    groups: Mapping[str, Sequence[Sequence[str]]],
) -> str:
    """
    A page with one table, its rows in groups.

    All text is escaped; what follows a line's end in a cell stands small below.
    """
    head = f"<title>{escape(title)}</title>\n<style>{STYLE}</style>"
    body = [f"<h1>{escape(title)}</h1>", *(f"<p>{escape(words)}</p>" for words in above)]
    heads = "".join(
        f'<th class="{column.kind}" scope="col">{escape(column.title)}</th>' for column in columns
    )
    parts = [group(name, columns, rows) for name, rows in groups.items()]
    return (
        "\n".join(
            (
                OPENING,
                head,
                *body,
                "<table>",
                f"<thead><tr>{heads}</tr></thead>",
                *parts,
                "</table>",
                "</html>",
            )
        )
        + "\n"
    )


def group(name: str, columns: Sequence[Column], rows: Sequence[Sequence[str]]) -> str:
    """One group of rows under its name."""
    lines = [
        "<tr>"
        + "".join(cell(column, text) for column, text in zip(columns, row, strict=True))
        + "</tr>"
        for row in rows
    ]
    return (
        '<tbody>\n<tr><th class="group" scope="rowgroup"'
        f' colspan="{len(columns)}">{escape(name)}</th></tr>\n' + "\n".join(lines) + "\n</tbody>"
    )


def cell(column: Column, text: str) -> str:
    """One cell."""
    first, _, rest = text.partition("\n")
    small = f"<br><small>{escape(rest)}</small>" if rest else ""
    return f'<td class="{column.kind}">{escape(first)}{small}</td>'
