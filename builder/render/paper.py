"""
A list to fill in by hand, as one HTML file that prints on A4: no script, nothing from elsewhere.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from builder.document import Markup
from builder.render.elements import words
from builder.render.markup import joined, markup

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
) -> Markup:
    """
    A page with one table, its rows in groups.

    All text is escaped; what follows a line's end in a cell stands small below.
    """
    heads = (
        markup('<th class="{}" scope="col">{}</th>', words(column.kind), words(column.title))
        for column in columns
    )
    parts = (group(name, columns, rows) for name, rows in groups.items())
    return markup(
        '<!doctype html>\n<html lang="en">\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width">\n'
        "<title>{title}</title>\n<style>{style}</style>\n<h1>{title}</h1>\n{above}\n"
        "<table>\n<thead><tr>{heads}</tr></thead>\n{parts}\n</table>\n</html>\n",
        title=words(title),
        style=Markup(STYLE),
        above=joined((markup("<p>{}</p>", words(line)) for line in above), "\n"),
        heads=joined(heads),
        parts=joined(parts, "\n"),
    )


def group(name: str, columns: Sequence[Column], rows: Sequence[Sequence[str]]) -> Markup:
    """One group of rows under its name."""
    lines = (
        markup(
            "<tr>{}</tr>",
            joined(cell(column, text) for column, text in zip(columns, row, strict=True)),
        )
        for row in rows
    )
    return markup(
        '<tbody>\n<tr><th class="group" scope="rowgroup" colspan="{}">{}</th></tr>\n{}\n</tbody>',
        len(columns),
        words(name),
        joined(lines, "\n"),
    )


def cell(column: Column, text: str) -> Markup:
    """One cell."""
    first, _, rest = text.partition("\n")
    small = markup("<br><small>{}</small>", words(rest)) if rest else Markup()
    return markup('<td class="{}">{}{}</td>', words(column.kind), words(first), small)
