"""The tables of the page on lines. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.document import Block, Inline, Link, Row, Small, Strong, Table, Tag, Words
from builder.layout import (
    STANDING_WORDS,
    anchor_of,
    cell,
    item_table,
    name_cell,
    shown_fact,
    shown_figure,
    state,
    under_name,
)
from builder.pack import Fact, Figure, Item, Pack, Section, Standing


def between_places(section: Section) -> Table:
    """A row for two places: what is free, and how many work of how many, kind by kind."""
    rows = [pair_row(number, pair) for number, pair in enumerate(section.of_kind("pair"), 1)]
    return Table(
        ("Between", "Free", "Working"), rows, summary="Free and working ways between places"
    )


def pair_row(number: int, pair: Item) -> Row:
    """Two places, with what is free and what works between them."""
    free: list[Inline] = []
    work: list[Inline] = []
    for figure in pair.figures:
        kind = kind_in(figure)
        if figure.key.endswith(".free"):
            free += [
                *([", "] if free else []),
                *([Strong(figure.value.text)] if figure.value else [Tag(absence(figure), "note")]),
                f" {kind}",
            ]
            free += [" ", Small(f"({figure.note})")] if figure.note else []
        else:
            work += [
                *([", "] if work else []),
                *([figure.value.text] if figure.value else [Tag(absence(figure), "note")]),
                f" {kind}",
            ]
    return Row([[Strong(str(number)), f" {pair.name}"], free, work], anchor=anchor_of(pair.key))


def absence(figure: Figure) -> str:
    """Why a sum has no value: not known yet, not stated, or either."""
    return " or ".join(figure.missing).removeprefix("a count that is ")


def kind_in(figure: Figure) -> str:
    """The kind of line a pair's figure is about, as within a sentence."""
    kind = figure.label.rsplit(", ", 1)[0]
    return kind if kind.isupper() else kind.lower()


def by_kind(section: Section) -> Table:
    """
    A row for two places, a column for each kind of line: what is free, and how many work of how
    many.
    """
    pairs = section.of_kind("pair")
    kinds = [kind for kind in KIND_ORDER if any(pair.figure(f"{kind}.free") for pair in pairs)]
    rows = [
        Row(
            [pair.name, *(between(pair, kind) for kind in kinds)],
            order=(None, *(pair.far_end(f"{kind}.free") for kind in kinds)),
        )
        for pair in pairs
    ]
    columns = (
        "Between",
        *(kind.replace("-", " ").capitalize() if kind != "dmx" else "DMX" for kind in kinds),
    )
    return Table(columns, rows, summary="Free ways between places by kind", sortable=True)


KIND_ORDER = ("analogue", "copper-data", "fibre", "coax", "dmx", "talkback", "loudspeaker")


def between(pair: Item, kind: str) -> list[Inline]:
    """What is free of one kind between two places."""
    free, working = pair.figure(f"{kind}.free"), pair.figure(f"{kind}.working")
    if free is None or working is None:
        return ["–"]
    first: list[Inline] = (
        [Strong(f"{free.value.text} free")]
        if free.value
        else [Tag(f"free ways {absence(free)}", "note")]
    )
    second = f"{working.value.text} work" if working.value else f"working ways {absence(working)}"
    return [*first, " ", Small(second)]


def at_place(section: Section, place: str) -> Table:
    """What ends at one place, panel by panel."""
    rows = [
        row_at(line, near, far)
        for line in section.of_kind("line")
        for near, far in (("from", "to"), ("to", "from"))
        if line.text(f"{near}.place") == place
    ]
    return Table(("Line", "Free", "Goes to", "Path"), rows, summary=f"Lines that end at {place}")


def row_at(line: Item, near: str, far: str) -> Row:
    """
    One line as it is found at one of its ends: panel and connector under its name, so that a phone
    shows them beside what is free.
    """
    here = [panel_words(line.fact(f"{near}.panel")), line.text(f"{near}.connector")]
    naming: list[Inline] = [
        line.name,
        *spaced(reduced(line)),
        " ",
        Small("; ".join(part for part in (*here, kind_words(line)) if part)),
    ]
    if shared := line.text("shared_with"):
        naming += [" ", Small(f"same cores as {shared}: plug one of them")]
    there: list[Inline] = [line.text(f"{far}.place") or Tag(STANDING_WORDS[Standing.UNKNOWN])]
    if there_panel := line.text(f"{far}.panel"):
        there += [" ", Small(there_panel)]
    return Row([naming, free_cell(line), there, cell(line, "path")])


def panel_words(panel: Fact | None) -> str:
    """The panel, or which kind of absence it is."""
    if panel is None or panel.value is None:
        return f"panel {STANDING_WORDS[panel.standing if panel else Standing.NOT_STATED]}"
    return f"panel {panel.value.text}"


def kind_words(line: Item) -> str:
    """Kind and grade."""
    return ", ".join(part for part in (line.text("kind"), line.text("grade")) if part)


def free_cell(line: Item) -> Words:
    """Free ways, with how many work, which are dead, and on what terms."""
    terms = next((fact.terms for fact in line.facts if fact.terms), "")
    if terms == "not for visitors" or line.condition == "out of service":
        return [
            Tag(terms if line.condition != "out of service" else "none", "note"),
            " ",
            Small(f"{line.text('ways')} ways"),
        ]
    works = line.text("working-ways") or line.text("working")
    fact = line.fact("working")
    silent = (
        f"{line.text('ways')} ways, working"
        f" {STANDING_WORDS[fact.standing] if fact and not works else ''}"
    )
    parts = [f"{works} work of {line.text('ways')}" if works else silent]
    parts += [f"dead: {dead}" for dead in (line.text("dead"),) if dead]
    parts += [terms] if terms and terms != "included" else []
    return [*shown_fact(line.fact("free")), " ", Small("; ".join(parts))]


def reduced(line: Item) -> list[Inline]:
    """The condition of a line; ways that do not work beside others are told with its free ways."""
    return state(line) if line.condition != "in service" else []


def spaced(pieces: Sequence[Inline]) -> Iterator[Inline]:
    """Pieces with a space before each."""
    for piece in pieces:
        yield " "
        yield piece


def consoles(section: Section, pack: Pack) -> Table:
    """
    What each console position can send, in which format, by which line, through which switcher.
    """
    rows = [console_row(item, section, pack) for item in section.of_kind("console")]
    columns = ("Console position", "Sends", "Ways", "By", "Through", "Reaches")
    return Table(columns, rows, summary="The drive plan")


def console_row(item: Item, section: Section, pack: Pack) -> Row:
    """One console position."""
    head: list[Inline] = [item.name, Small(item.text("place"))]
    can = item.figure("can-send")
    ways: list[Inline] = (
        [*shown_figure(can), " ", Small(can.note)] if can and can.note else shown_figure(can)
    )
    switcher = [*shown_fact(item.fact("switcher"))]
    if entry := item.text("input"):
        switcher += [" ", Small(f"input {entry}")]
    cells: list[Words] = [
        name_cell(item, CONSOLE_KEYS, head=head),
        shown_fact(item.fact("sends")),
        ways,
        by_words(item, section),
        switcher,
        reaches(item, pack),
    ]
    return Row(cells, anchor=anchor_of(item.key))


def by_words(item: Item, section: Section) -> list[Inline]:
    """The lines a console sends by; none is needed beside its switcher."""
    switcher = section.item("switcher", item.text("switcher")) if item.text("switcher") else None
    if switcher and switcher.text("place") == item.text("place") and not item.text("by"):
        return ["beside the switcher"]
    return shown_fact(item.fact("by"))


def reaches(item: Item, pack: Pack) -> list[Inline]:
    """The drive lines it reaches, with a link to the sound system where that is described."""
    words = item.text("reaches") or "all drive lines"
    return [Link(words, "sound")] if pack.section("sound") else [words]


def turns(section: Section) -> Table:
    """The order of hand-over on a show with several consoles."""
    rows = [turn_row(number, item) for number, item in enumerate(section.of_kind("turn"), 1)]
    return Table(
        ("Heard", "From", "Before that", "What moves"), rows, summary="The order of hand-over"
    )


def turn_row(number: int, item: Item) -> Row:
    """One turn: who is heard, from when, what is done before, what moves."""
    when, before = shown_fact(item.fact("when")), shown_fact(item.fact("before"))
    name = name_cell(item, ("when", "before"), head=[Strong(str(number)), f" {item.name}"])
    return Row(
        [name, when, before, shown_figure(item.figure("change"))],
        anchor=anchor_of(item.key),
    )


def stations(section: Section) -> Table:
    """Talkback by place."""
    return item_table(
        section.of_kind("station"),
        ("kind", "count", "working", "channels", "connector"),
        first="Place",
        summary="Talkback by place",
    )


def network_tables(networks: Sequence[Item]) -> Iterator[Block]:
    """Networks with owner, rates and places; then what is asked before one plugs in."""
    columns = ("owner", "internet_down", "internet_up", "wired_rate", "at", "used_for")
    before = ("asks", "connector", "wireless")
    yield item_table(networks, columns, first="Network", summary="Networks", elsewhere=before)
    asked = [network for network in networks if any(network.fact(name) for name in before)]
    if asked:
        rows = [
            Row(
                [
                    network.name,
                    *(shown_fact(network.fact(name)) for name in before),
                ]
            )
            for network in asked
        ]
        yield Table(
            ("Network", "Asks for", "Connector", "Wireless"), rows, summary="Before you plug in"
        )


CONSOLE_KEYS = ("place", "sends", "by", "switcher", "input", "reaches")
"""The facts of a console position that its row shows."""
LINE_KEYS = (
    *("kind", "grade", "path", "used_for", "carries", "shared_with", "ways", "working", "free"),
    *(
        "dead",
        *(f"{end}.{name}" for end in ("from", "to") for name in ("place", "panel", "connector")),
    ),
)
"""The facts of a line that its row, or what ends where, shows."""


def every_line(section: Section) -> Table:
    """
    Each line with its path, the straight line, what is left of its limits, and what the house uses
    it for.
    """
    rows = [line_row(line) for line in section.of_kind("line")]
    columns = ("Line", "Path", "Left of the limit", "Straight line", "The house uses it for")
    return Table(
        columns, rows, summary="Every line, its path and its limits", numeric=(1, 3), sortable=True
    )


def line_row(line: Item) -> Row:
    """One line: its kind and note under its name, then lengths."""
    small = [
        kind_words(line),
        *([f"carries {line.text('carries')}"] if line.text("carries") else []),
    ]
    head: list[Inline] = [line.name, *reduced(line), Small("; ".join(small))]
    naming = [*head, *under_name(line, LINE_KEYS)]
    cells: list[Words] = [
        naming,
        cell(line, "path"),
        left_words(line),
        cell(line, "straight"),
        shown_fact(line.fact("used_for")),
    ]
    return Row(
        cells,
        anchor=anchor_of(line.key),
        order=(None, line.number("path"), None, line.number("straight"), None),
    )


def left_words(line: Item) -> list[Inline]:
    """What is left of each limit, with the limit."""
    words: list[Inline] = []
    for figure in line.figures:
        if ".left." not in figure.key:
            continue
        signal = figure.label.rsplit(", ", 1)[-1]
        left: list[Inline] = (
            [Strong(figure.value.text), f" {signal} ", Small(figure.note)]
            if figure.value
            else [f"{signal}: ", *shown_figure(figure)]
        )
        words += [*([", "] if words else []), *left]
    return words or ["–"]
