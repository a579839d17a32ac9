"""
How facts, figures, workings and findings are laid out, the same on every page.

Reads the pack and gives blocks; departments choose which items and columns, never how a value
looks.
"""

from collections.abc import Iterable, Sequence

from builder.document import (
    Block,
    Bullets,
    Caution,
    Day,
    Entry,
    Facts,
    Folded,
    Heading,
    Inline,
    Paragraph,
    Photo,
    Row,
    Small,
    Table,
    Tag,
    Words,
)
from builder.pack import (
    Confirmed,
    Fact,
    Figure,
    Finding,
    Input,
    Item,
    Section,
    Standing,
    Value,
    Verified,
    Working,
)
from builder.reading.addresses import file_address

STANDING_WORDS = {
    Standing.UNKNOWN: "not known yet",
    Standing.NONE: "none",
    Standing.NOT_STATED: "not stated",
}
CHECKED_BY = {
    "measured": "measured",
    "drawing": "from a drawing",
    "nameplate": "from the nameplate",
    "maker's sheet": "from the maker's sheet",
}


def anchor_of(key: str) -> str:
    """The anchor of an item, fact or figure on its page: its key without the section."""
    return key.split(".", 1)[-1]


def shown_value(value: Value) -> list[Inline]:
    """A value: the author's wording first, the other unit system beside it."""
    return [value.text, Small(value.also)] if value.also else [value.text]


def shown_fact(fact: Fact | None) -> list[Inline]:
    """A fact's value with who confirmed an odd one, or which kind of absence it is."""
    if fact is None:
        return ["–"]
    if fact.value is not None:
        shown = shown_value(fact.value)
        return [*shown, Small(fact.confirmed)] if fact.confirmed else shown
    tone = "note" if fact.standing is Standing.UNKNOWN else "plain"
    return [Tag(STANDING_WORDS[fact.standing], tone)]


def shown_figure(figure: Figure | None) -> list[Inline]:
    """A figure's value, or what is missing for it."""
    if figure is None:
        return ["–"]
    if figure.value is not None:
        return shown_value(figure.value)
    return [Tag(f"needs {', '.join(figure.missing)}", "note")]


def cell(item: Item, name: str) -> list[Inline]:
    """The fact or figure ``name`` of an item as a table cell."""
    figure = item.figure(name)
    return shown_figure(figure) if figure else shown_fact(item.fact(name))


def state(item: Item) -> list[Inline]:
    """
    The condition of an item, said only where it is not simply in service: how many of how many are
    out, where the line tells that.
    """
    if item.condition == "out of service":
        return [Tag(item.out_words or "out of service", "danger")]
    if item.out_words:
        return [Tag(item.out_words, "danger" if item.out == item.of else "caution")]
    return [Tag("limited", "caution")] if item.condition == "limited" else []


def item_table(
    items: Sequence[Item],
    columns: Sequence[str],
    *,
    first: str = "Name",
    labels: Sequence[str] = (),
    summary: str = "",
    sortable: bool = False,
) -> Table:
    """
    A table of items: a row each, a column for each fact or figure named.

    Column labels are those of the facts unless ``labels`` gives others. Columns that no item fills
    are left out. Conditions and notes stand under the item's name.
    """
    used = [
        (name, index)
        for index, name in enumerate(columns)
        if any(item.fact(name) or item.figure(name) for item in items)
    ]
    titles = [labels[index] if labels else label_of(items, name) for name, index in used]
    numeric = [position for position, (name, _) in enumerate(used, 1) if all_numbers(items, name)]
    rows = [row_of(item, [name for name, _ in used]) for item in items]
    return Table((first, *titles), rows, summary=summary, numeric=numeric, sortable=sortable)


def row_of(item: Item, columns: Sequence[str]) -> Row:
    """One item as a row, with a number to sort each cell by where there is one."""
    naming: list[Inline] = [item.name]
    if found := state(item):
        naming += found
    if item.note:
        naming.append(Small(item.note))
    cells: list[Words] = [naming, *(cell(item, name) for name in columns)]
    return Row(
        cells, anchor=anchor_of(item.key), order=(None, *(item.number(name) for name in columns))
    )


def label_of(items: Sequence[Item], name: str) -> str:
    """The label that the first item having the value gives it."""
    for item in items:
        if found := item.fact(name) or item.figure(name):
            return found.label
    raise ValueError(f"name must be a fact or figure of at least one item, got {name!r}")


def all_numbers(items: Sequence[Item], name: str) -> bool:
    """True where every value of a column that is there is a number."""
    values = [
        found.value
        for item in items
        if (found := item.fact(name) or item.figure(name)) and found.value
    ]
    return bool(values) and all(value.number is not None for value in values)


def facts_block(item: Item, *, only: Sequence[str] = ()) -> Facts:
    """
    All facts of an item as labels and values, or those named, in that order; then what qualifies
    the whole line, once.
    """
    chosen = [fact for name in only if (fact := item.fact(name))] if only else item.facts
    return Facts([*(entry_of(fact) for fact in chosen), *qualifiers(item)])


def entry_of(fact: Fact) -> Entry:
    """A fact with its datum, and its check where that is old."""
    parts = [f"from {fact.datum}" if fact.datum else ""]
    if fact.verified and fact.verified.stale:
        parts.append(checked_words(fact.verified))
    return Entry(
        fact.label,
        shown_fact(fact),
        small="; ".join(part for part in parts if part),
        anchor=anchor_of(fact.key),
    )


def qualifiers(item: Item) -> list[Entry]:
    """The condition, terms and note of an item's line, where there is something to say."""
    terms = next((fact.terms for fact in item.facts if fact.terms), "")
    entries = [Entry("Condition", found)] if (found := state(item)) else []
    return [
        *entries,
        *(Entry(label, text) for label, text in (("Terms", terms), ("Note", item.note)) if text),
    ]


def photos(items: Iterable[Item]) -> list[Block]:
    """The photos of items that show one, each under its name."""
    return [
        Photo(photo_path(item.photo), f"Picture: {item.name}", caption=item.name)
        for item in items
        if item.photo
    ]


def photo_path(name: str) -> str:
    """Where the site has a photo, by its name in the venue's folder."""
    return f"photos/{file_address(name)}"


def figures_block(figures: Iterable[Figure]) -> Facts:
    """Figures as labels and values. Their workings are laid out by :func:`workings`."""
    return Facts(
        [
            Entry(
                figure.label, shown_figure(figure), small=figure.note, anchor=anchor_of(figure.key)
            )
            for figure in figures
        ]
    )


def workings(title: str, figures: Sequence[Figure]) -> Folded:
    """The workings of figures, folded behind one line."""
    blocks: list[Block] = []
    for figure in figures:
        blocks += [
            Paragraph([figure.label, ": ", *shown_figure(figure)]),
            *working_blocks(figure.working),
        ]
        if figure.caution:
            blocks.append(Caution(figure.caution))
    return Folded(title, blocks)


def working_blocks(working: Working) -> list[Block]:
    """
    One working: the equation, the same with numbers, the inputs, the source, and what is left out.
    """
    blocks: list[Block] = [Facts([Entry("Formula", working.equation)])]
    if working.inputs:
        blocks.append(Facts([Entry(entered.label, entered.text) for entered in working.inputs]))
    if working.steps:
        blocks.append(Bullets(working.steps))
    sources = [
        f"{reference.source}, {reference.clause}" if reference.clause else reference.source
        for reference in working.references
    ]
    if sources:
        blocks.append(Facts([Entry("Source", "; ".join(sources))]))
    if working.leaves_out:
        blocks.append(Facts([Entry("Left out", working.leaves_out)]))
    return blocks


def checked_line(section: Section) -> Paragraph:
    """When a department's facts were last checked, or that nobody says."""
    if section.verified is None:
        return Paragraph(
            [
                Tag("not verified", "caution"),
                " The house does not say when this page was last checked.",
            ]
        )
    tone: list[Inline] = [Tag("old check", "caution"), " "] if section.verified.stale else []
    return Paragraph([*tone, *checked_pieces(section.verified), "."])


def checked_pieces(verified: Verified) -> list[Inline]:
    """A check in words: when, by whom, how, and how old it was on the day of the revision."""
    how = CHECKED_BY.get(verified.how, f"from {verified.how}")
    return [
        "Checked on ",
        Day(verified.on),
        f" by {verified.by}, {how}, {verified.age}",
    ]


def checked_words(verified: Verified) -> str:
    """The same as plain text."""
    return "".join(
        piece.on if isinstance(piece, Day) else str(piece) for piece in checked_pieces(verified)
    )


def findings_block(findings: Sequence[Finding]) -> list[Block]:
    """Findings as framed sentences, dangers first."""
    return [
        Caution(finding.sentence, title=finding.level.value.capitalize(), tone=finding.level.value)
        for finding in findings
    ]


def confirmed_blocks(confirmed: Sequence[Confirmed]) -> list[Block]:
    """What looks odd and was confirmed: each with who confirmed it, and when."""
    return [
        Heading(2, "Confirmed", "confirmed"),
        Paragraph("What looks odd here, and who has confirmed that it is right."),
        Bullets([confirmed_pieces(each) for each in confirmed]),
    ]


def confirmed_pieces(confirmed: Confirmed) -> list[Inline]:
    """One confirmed finding as a line of a list."""
    place = confirmed.finding.place
    where = f"{place.file}, line {place.line}. " if place and place.line else ""
    return [
        confirmed.finding.sentence,
        f" Confirmed by {confirmed.by} on ",
        Day(confirmed.on),
        ". ",
        Small(f"{where}Code {confirmed.finding.code}."),
    ]


def input_of(item: Item, name: str, label: str = "") -> Input:
    """
    A fact or figure of an item as an input to a working.

    Raises
    ------
    ValueError
        If the item has no such value.
    """
    found = item.fact(name) or item.figure(name)
    if found is None or found.value is None:
        raise ValueError(f"name must be a value of {item.key}, got {name!r}")
    return Input(label or found.label, found.value.text, found.key)
