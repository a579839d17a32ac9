"""Tables as HTML: scopes, row anchors, numbers flush right, values to sort by."""

from collections.abc import Callable

from builder.document import Row, Table, Words
from builder.render.escaping import escaped, shown
from builder.render.references import given

Writer = Callable[[Words], str]
FEWEST = 3
WIDE = 5


def table(block: Table, words: Writer) -> str:
    """
    A table in a container of its own that scrolls sideways, so that the page never does.

    Raises
    ------
    ValueError
        If a row has more or fewer cells than there are columns, or a numeric column is not there.
    """
    checked(block)
    caption = f"<caption>{shown(block.summary)}</caption>\n" if block.summary else ""
    heads = " ".join(
        f'<th scope="col"{flush(index, block)}>{shown(column)}</th>'
        for index, column in enumerate(block.columns)
    )
    rows = "\n".join(row_of(row, block, words) for row in block.rows)
    label = escaped(block.summary or ", ".join(block.columns))
    sortable = " data-sortable" if block.sortable else ""
    kind = "table few" if few(block) else "table"
    return (
        f'<div class="{kind}" role="region" tabindex="0"'
        f' aria-label="{label}">\n<table{sortable}>\n{caption}'
        f"<thead>\n<tr>{heads}</tr>\n</thead>\n<tbody>\n{rows}\n</tbody>\n</table>\n</div>"
    )


def few(block: Table) -> bool:
    """
    Whether a table has so few lines and so many columns that a phone shows each line as a list of
    its own.
    """
    return len(block.rows) <= FEWEST and len(block.columns) >= WIDE


def checked(block: Table) -> None:
    """Refuse a table whose parts do not fit together."""
    width = len(block.columns)
    for row in block.rows:
        if len(row.cells) != width:
            raise ValueError(
                f"cells of a row must be {width} like the columns {tuple(block.columns)}, got"
                f" {len(row.cells)}"
            )
        if row.order and len(row.order) != width:
            raise ValueError(f"order of a row must be {width} values or none, got {len(row.order)}")
    if wrong := [index for index in block.numeric if not 0 <= index < width]:
        raise ValueError(f"numeric must be columns 0 to {width - 1}, got {wrong}")


def row_of(row: Row, block: Table, words: Writer) -> str:
    """One row; its first cell names it."""
    first, *others = (cell_of(index, row, block, words) for index in range(len(row.cells)))
    identity = "".join(f' id="{name}"' for name in given(row.anchor))
    return (
        f'<tr{identity}><th scope="row"{first}</th>'
        f" {' '.join(f'<td{other}</td>' for other in others)}</tr>"
    )


def cell_of(index: int, row: Row, block: Table, words: Writer) -> str:
    """A cell from its attributes on, without the element's name."""
    value = row.order[index] if row.order else None
    order = "" if value is None else f' data-order="{value:.12g}"'
    label = f' data-label="{escaped(block.columns[index])}"' if index and few(block) else ""
    return f"{flush(index, block)}{order}{label}>{words(row.cells[index])}"


def flush(index: int, block: Table) -> str:
    """The class of a numeric column."""
    return ' class="number"' if index in block.numeric else ""
