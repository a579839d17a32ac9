"""Tables as HTML: scopes, row anchors, numbers flush right, values to sort by."""

from collections.abc import Callable

from builder.document import Markup, Row, Table, Words
from builder.render.escaping import escaped, shown
from builder.render.markup import joined, markup

Writer = Callable[[Words], Markup]
Identifier = Callable[[str], Markup]
"""From an anchor to the attribute that makes a target of an element, or to nothing."""
FEWEST = 3
WIDE = 5


def table(block: Table, words: Writer, identified: Identifier) -> Markup:
    """
    A table in a container of its own that scrolls sideways, so that the page never does.

    Raises
    ------
    ValueError
        If a row has more or fewer cells than there are columns, or a numeric column is not there.
    """
    checked(block)
    caption = markup("<caption>{}</caption>\n", shown(block.summary)) if block.summary else Markup()
    heads = joined(
        (
            markup('<th scope="col"{}>{}</th>', flush(index, block), shown(column))
            for index, column in enumerate(block.columns)
        ),
        " ",
    )
    return markup(
        '<div class="{kind}" role="region" tabindex="0" aria-label="{label}">\n<table{sortable}>\n'
        "{caption}<thead>\n<tr>{heads}</tr>\n</thead>\n<tbody>\n{rows}\n</tbody>\n</table>\n</div>",
        kind=escaped(class_of(block)),
        label=escaped(block.summary or ", ".join(block.columns)),
        sortable=markup(" data-sortable") if block.sortable else Markup(),
        caption=caption,
        heads=heads,
        rows=joined((row_of(row, block, words, identified) for row in block.rows), "\n"),
    )


def class_of(block: Table) -> str:
    """What the style sheet goes by."""
    if block.to_compare:
        return "table few compared"
    return "table few" if few(block) else "table"


def few(block: Table) -> bool:
    """
    Whether a phone shows each line of a table as a list of its own: one whose values are compared,
    or of so few lines and so many columns.
    """
    return block.to_compare or (len(block.rows) <= FEWEST and len(block.columns) >= WIDE)


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


def row_of(row: Row, block: Table, words: Writer, identified: Identifier) -> Markup:
    """One row; its first cell names it."""
    first, *others = (cell_of(index, row, block, words) for index in range(len(row.cells)))
    return markup(
        '<tr{}><th scope="row"{}</th> {}</tr>',
        identified(row.anchor),
        first,
        joined((markup("<td{}</td>", other) for other in others), " "),
    )


def cell_of(index: int, row: Row, block: Table, words: Writer) -> Markup:
    """A cell from its attributes on, without the element's name."""
    value = row.order[index] if row.order else None
    order = Markup() if value is None else markup(' data-order="{:.12g}"', value)
    named = bool(index) and few(block)
    label = markup(' data-label="{}"', escaped(block.columns[index])) if named else Markup()
    return markup("{}{}{}>{}", flush(index, block), order, label, words(row.cells[index]))


def flush(index: int, block: Table) -> Markup:
    """The class of a numeric column."""
    return markup(' class="number"') if index in block.numeric else Markup()
