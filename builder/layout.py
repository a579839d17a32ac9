"""
How facts, figures, workings and findings are laid out, the same on every page.

Reads the pack and gives blocks; departments choose which items and columns, never how a value
looks.
"""

from collections.abc import Container, Iterable, Iterator, Sequence
from dataclasses import replace

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
    Page,
    Paragraph,
    Photo,
    Row,
    Small,
    Table,
    Tag,
    Words,
)
from builder.formulas.cite import FROM_MEMORY
from builder.pack import (
    MEMORY,
    Confirmed,
    Fact,
    Figure,
    Finding,
    Input,
    Item,
    Reference,
    Section,
    Standing,
    Value,
    Verified,
    Working,
    is_day,
)
from builder.reading.addresses import file_address
from builder.reading.standing_on import hard_words
from builder.reading.values.sentences import ended, within_sentence

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
    "seen": "by looking at it",
}

FEWEST_SHARED = 3
"""How many share a check that is told once for all of them."""


def anchor_of(key: str) -> str:
    """The anchor of an item, fact or figure on its page: its key without the section."""
    return key.split(".", 1)[-1]


def name_of(item: Item, fact: Fact) -> str:
    """The name of a fact within its item."""
    return fact.key.removeprefix(f"{item.key}.")


def shown_value(value: Value) -> list[Inline]:
    """A value: the author's wording first, the other unit system beside it."""
    return [value.text, Small(value.also)] if value.also else [value.text]


def shown_fact(fact: Fact | None) -> list[Inline]:
    """A fact's value with who confirmed an odd one, or which kind of absence it is."""
    if fact is None:
        return ["–"]
    if fact.value is not None:
        shown = shown_value(fact.value)
        if fact.standing is Standing.ASSUMED:
            return [*shown, Small(f"assumed: {fact.note}")]
        return [*shown, Small(fact.confirmed)] if fact.confirmed else shown
    tone = "note" if fact.standing is Standing.UNKNOWN else "plain"
    return [Tag(STANDING_WORDS[fact.standing], tone)]


def fact_words(fact: Fact) -> str:
    """A fact's value as plain text."""
    if fact.value is None:
        return STANDING_WORDS[fact.standing]
    also = " ".join(f"({text})" for text in (fact.value.also, fact.confirmed) if text)
    return f"{fact.value.text} {also}".rstrip()


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
    hard = hard_words(item.condition, "")
    return [Tag(hard[0], "caution")] if hard else []


def item_table(
    items: Sequence[Item],
    columns: Sequence[str],
    *,
    first: str = "Name",
    labels: Sequence[str] = (),
    summary: str = "",
    sortable: bool = False,
    elsewhere: Sequence[str] | None = (),
) -> Table:
    """
    A table of items: a row each, a column for each fact or figure named.

    Column labels are those of the facts unless ``labels`` gives others. Columns that no item fills
    are left out. Conditions, notes and all other facts stand under the item's name, but for those
    that the page shows ``elsewhere``; None where it shows all of them elsewhere. A check that many
    rows share is told once, over the table.
    """
    used = [
        (name, index)
        for index, name in enumerate(columns)
        if any(item.fact(name) or item.figure(name) for item in items)
    ]
    titles = [labels[index] if labels else label_of(items, name) for name, index in used]
    numeric = [position for position, (name, _) in enumerate(used, 1) if all_numbers(items, name)]
    checks = [] if elsewhere is None else [(item.name, item.verified) for item in items]
    shared = shared_checks(checks)
    names = [name for name, _ in used]
    rows = [row_of(without_check(item, shared), names, elsewhere=elsewhere) for item in items]
    sentences = [check_of_rows(check, names, of=len(rows)) for check, names in shared.items()]
    told = " ".join([ended(summary), *sentences]) if sentences else summary
    return Table((first, *titles), rows, summary=told, numeric=numeric, sortable=sortable)


def without_check(item: Item, told: Container[Verified]) -> Item:
    """An item without a check that is told elsewhere."""
    return replace(item, verified=None) if item.verified in told else item


def check_of_rows(check: Verified, names: Sequence[str], *, of: int) -> str:
    """A check that many rows of a table share as a sentence, with those that do unless all do."""
    words = f"{checked_words(check)}."
    return words if len(names) == of else f"{', '.join(names)}: {within_sentence(words)}"


def row_of(item: Item, columns: Sequence[str], *, elsewhere: Sequence[str] | None = ()) -> Row:
    """One item as a row, with a number to sort each cell by where there is one."""
    shown = None if elsewhere is None else (*columns, *elsewhere)
    cells: list[Words] = [name_cell(item, shown), *(cell(item, name) for name in columns)]
    return Row(
        cells, anchor=anchor_of(item.key), order=(None, *(item.number(name) for name in columns))
    )


def name_cell(item: Item, shown: Sequence[str] | None, *, head: Words = "") -> list[Inline]:
    """
    An item's name, or ``head`` in its place, with what the other cells of its row do not tell.

    That is its condition, its note and, unless ``shown`` is None, the facts that are not among
    those ``shown``, its terms and its own check.
    """
    words = head or item.name
    naming: list[Inline] = [words] if isinstance(words, str) else [*words]
    return [*naming, *state(item), *under_name(item, shown)]


def under_name(item: Item, shown: Sequence[str] | None) -> list[Small]:
    """What stands under an item's name in small print."""
    under = [item.note, *(() if shown is None else told_under_name(item, shown))]
    return [Small(text) for text in under if text]


def told_under_name(item: Item, shown: Sequence[str]) -> Iterator[str]:
    """The facts of an item that are not shown, each with its label; its terms and its own check."""
    besides = [
        f"{fact.label}: {fact_words(fact)}"
        for fact in item.facts
        if name_of(item, fact) not in shown and not (fact.value and fact.value.text == item.name)
    ]
    yield "; ".join((*besides, *((f"Terms: {item.terms}",) if item.terms else ())))
    if item.verified:
        yield f"{checked_words(item.verified)}."


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
    told = [(entry_of(fact), None if item.verified else fact.verified) for fact in chosen]
    return Facts([*entries_checked(told), *qualifiers(item)])


def facts_list(facts: Iterable[Fact]) -> Facts:
    """Facts of no one item as labels and values, each with its check where that is old or none."""
    return Facts(entries_checked([(entry_of(fact), fact.verified) for fact in facts]))


def entry_of(fact: Fact) -> Entry:
    """A fact with its datum."""
    small = f"from {fact.datum}" if fact.datum else ""
    return Entry(fact.label, shown_fact(fact), small=small, anchor=anchor_of(fact.key))


def entries_checked(told: Sequence[tuple[Entry, Verified | None]]) -> list[Entry]:
    """
    Entries with their checks where these are old or none: at each, or below them all where many
    share one.
    """
    unsure = [(entry, check if is_unsure(check) else None) for entry, check in told]
    shared = shared_checks((entry.label, check) for entry, check in unsure)
    entries = [
        entry if check is None or check in shared else with_check(entry, check)
        for entry, check in unsure
    ]
    return [*entries, *(shared_entry(each, shared[each], of=len(entries)) for each in shared)]


def with_check(entry: Entry, check: Verified) -> Entry:
    """An entry with its check in small print."""
    small = f"{entry.small}; {checked_words(check)}" if entry.small else checked_words(check)
    return replace(entry, small=small)


def shared_entry(check: Verified, labels: Sequence[str], *, of: int) -> Entry:
    """A check that many entries share, with those that do unless it is all of them."""
    small = "" if len(labels) == of else f"for {', '.join(map(within_sentence, labels))}"
    return Entry("Check", check_pieces(check), small=small)


def shared_checks(told: Iterable[tuple[str, Verified | None]]) -> dict[Verified, list[str]]:
    """The checks that so many share that they are told once, each with the names of those."""
    found: dict[Verified, list[str]] = {}
    for name, check in told:
        if check is not None:
            found.setdefault(check, []).append(name)
    return {check: names for check, names in found.items() if len(names) >= FEWEST_SHARED}


def is_unsure(check: Verified | None) -> bool:
    """Whether a check is old or only remembered."""
    return check is not None and (check.stale or check.how == MEMORY)


def qualifiers(item: Item) -> list[Entry]:
    """The condition, terms, note and own check of an item's line, where there is one."""
    found: list[tuple[str, Words]] = [
        ("Condition", state(item)),
        ("Terms", item.terms),
        ("Note", item.note),
        ("Check", check_pieces(item.verified) if item.verified else ""),
    ]
    within = anchor_of(item.key)
    return [
        Entry(label, words, anchor=f"{within}.{label.lower()}") for label, words in found if words
    ]


def check_pieces(verified: Verified) -> list[Inline]:
    """A check as a sentence, marked where it is old."""
    old: list[Inline] = [Tag("old check", "caution"), " "] if verified.stale else []
    return [*old, *checked_pieces(verified), "."]


def photos(items: Iterable[Item]) -> list[Photo]:
    """The photos of items that show one, each under its name."""
    return [
        Photo(photo_path(item.photo), f"Picture: {item.name}", caption=item.name)
        for item in items
        if item.photo
    ]


def other_photos(items: Iterable[Item], pages: Sequence[Page]) -> list[Block]:
    """The photos that pages do not show yet, each once, under a heading of their own."""
    shown = {block.path for page in pages for block in page.blocks if isinstance(block, Photo)}
    rest = {photo.path: photo for photo in photos(items) if photo.path not in shown}
    return [Heading(2, "Pictures", "pictures"), *rest.values()] if rest else []


def photo_path(name: str) -> str:
    """Where the site has a photo, by its name in the venue's folder."""
    return f"photos/{file_address(name)}"


def figures_block(figures: Iterable[Figure]) -> Facts:
    """Figures as labels and values. Their workings are laid out by :func:`workings`."""
    return Facts(entries_checked([(figure_entry(figure), figure.verified) for figure in figures]))


def figure_entry(figure: Figure) -> Entry:
    """A figure with its note."""
    return Entry(
        figure.label, shown_figure(figure), small=figure.note, anchor=anchor_of(figure.key)
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
    sources = [source_words(reference) for reference in working.references]
    if sources:
        blocks.append(Facts([Entry("Source", "; ".join(sources))]))
    if working.leaves_out:
        blocks.append(Facts([Entry("Left out", working.leaves_out)]))
    return blocks


def source_words(reference: Reference) -> str:
    """
    A source with the place in it. That nobody looked a place up is said once, in the list of
    sources.
    """
    clause = reference.clause.removesuffix(FROM_MEMORY).rstrip(", ")
    return f"{reference.source}, {clause}" if clause else reference.source


def checked_line(section: Section) -> Paragraph:
    """
    When a department's facts were last checked, or that nobody says; then its note, if it has one.
    """
    note = [f" {section.note}"] if section.note else []
    if section.verified is None:
        unsaid = " The house does not say when this page was last checked."
        return Paragraph([Tag("not verified", "caution"), unsaid, *note])
    return Paragraph([*check_pieces(section.verified), *note])


def checked_pieces(verified: Verified) -> list[Inline]:
    """A check in words: when, by whom, how, and how old it was on the day of the revision."""
    how = CHECKED_BY.get(verified.how, f"from {verified.how}")
    return [
        "Checked on " if is_day(verified.on) else "Checked in ",
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
