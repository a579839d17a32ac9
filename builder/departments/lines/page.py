"""The page on lines. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.departments.lines.drawing import lines_plan
from builder.departments.lines.tables import (
    at_place,
    between_places,
    by_kind,
    consoles,
    every_line,
    kind_in,
    network_tables,
    stations,
    turns,
)
from builder.document import Block, Entry, Folded, Heading, Page, Paragraph, Picture
from builder.layout import (
    checked_line,
    facts_list,
    findings_block,
    item_table,
    shown_fact,
    shown_figure,
    workings,
)
from builder.pack import Level, Pack, Section

CAUTION = (
    "Lengths left are planning figures: patch cords and your own cable come off them. The maker's"
    " data and a test of the line decide. Each limit and its source is in the workings. Where none"
    " is shown, none is held here for that kind, grade and signal: ask the maker."
)


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """
    One page: from place to place, what ends where, the drive plan, talkback, networks, every line.
    """
    summary = (
        "Permanent lines from place to place with free and working ways, what ends where, the drive"
        " plan, talkback, networks."
    )
    return (Page("lines", "Lines", tuple(blocks(section, pack)), summary=summary),)


def blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The page from top to bottom."""
    yield checked_line(section)
    yield from found(section, pack, worst=True)
    yield from matrix(section, pack)
    yield from ends(section)
    yield from drive(section, pack)
    yield from talking(section)
    yield from signs(section)
    yield from networks(section)
    yield from ramps(section)
    yield from found(section, pack, worst=False)
    yield from limits(section)


def found(section: Section, pack: Pack, *, worst: bool) -> Iterator[Block]:
    """Dangers and cautions above all else; notes below the tables."""
    mine = [
        each
        for each in pack.findings
        if each.subject.startswith(f"{section.key}.") and (each.level is not Level.NOTE) is worst
    ]
    if mine and not worst:
        yield Heading(2, "Good to know", "notes")
    yield from findings_block(mine)


def matrix(section: Section, pack: Pack) -> Iterator[Block]:
    """From place to place by kind, drawn and as a table."""
    if not section.of_kind("pair"):
        if whole := section.item("whole"):
            names = ("lines", "has_no")
            yield facts_list(fact for name in names if (fact := whole.fact(name)))
        return
    yield Heading(2, "From place to place", "places")
    plan = lines_plan(section, pack)
    if plan:
        caption = (
            "Places in the order they lie in, not to scale: upstage at the top, stage left on the"
            " right. Whole strokes have ways free, dashed ones have none that the house tells of."
            " The table says what each number is."
        )
        yield Picture("lines-plan", plan[0], plan[1], caption=caption)
    yield between_places(section)
    yield Folded("The same as a matrix by kind", (by_kind(section),))
    if whole := section.item("whole"):
        facts = [fact for name in ("labels", "patching", "has_no") if (fact := whole.fact(name))]
        if facts:
            yield facts_list(facts)


def ends(section: Section) -> Iterator[Block]:
    """What ends at each place, for who stands there."""
    places = dict.fromkeys(
        place
        for line in section.of_kind("line")
        for end in ("from", "to")
        if (place := line.text(f"{end}.place"))
    )
    if not places:
        return
    yield Heading(2, "What ends where", "ends")
    yield Paragraph(
        "Free is what a visitor finds free. Path is the length of the cable along its way, not the"
        " distance."
    )
    for number, place in enumerate(places, 1):
        yield Heading(3, place, f"at-{number}")
        yield at_place(section, place)


def drive(section: Section, pack: Pack) -> Iterator[Block]:
    """What each console can send to the house system, and the order of hand-over."""
    whole = section.item("whole")
    silent = whole.fact("consoles") if whole else None
    if not section.of_kind("console") and silent is None:
        return
    yield Heading(2, "Drive plan", "drive")
    if silent is not None and silent.value is None and not section.of_kind("console"):
        yield facts_list([silent])
    else:
        yield Paragraph(
            "What each console position can send to the house system. Its inputs are told with the"
            " sound system."
        )
        yield consoles(section, pack)
    if found := section.of_kind("switcher"):
        columns = (
            "place",
            "inputs",
            "ways",
            "formats",
            "converts",
            "switched_by",
            "change",
            "goes_on_by",
            "if_it_fails",
        )
        yield item_table(found, columns, first="Switcher", summary="Switchers")
    if section.of_kind("turn"):
        yield Heading(3, "Who is heard when", "hand-over")
        yield turns(section)


def talking(section: Section) -> Iterator[Block]:
    """Talkback: channels, and what is where."""
    whole = section.item("whole")
    facts = [
        fact
        for name in ("talkback_system", "talkback_channels")
        if whole and (fact := whole.fact(name))
    ]
    channels, places = section.of_kind("channel"), section.of_kind("station")
    if not (facts or channels or places):
        return
    yield Heading(2, "Talkback", "talkback")
    if facts:
        yield facts_list(facts)
    if channels:
        yield item_table(channels, ("used_by",), first="Channel", summary="Talkback channels")
    reaching = section.item("reaching")
    if reaching and (figure := reaching.figure("stations")):
        yield Paragraph([f"{figure.label}: ", *shown_figure(figure), "."])
    if places:
        yield stations(section)


def signs(section: Section) -> Iterator[Block]:
    """Cue lights, and what is heard and seen in other rooms."""
    for kind, title, columns in (
        ("cue-lights", "Cue lights", ("count", "worked_from", "place")),
        ("relay", "Relay to other rooms", ("kind", "everywhere", "rooms")),
    ):
        if found := section.of_kind(kind):
            yield Heading(2, title, kind)
            yield item_table(found, columns, first="What", summary=title)


def networks(section: Section) -> Iterator[Block]:
    """Networks: who owns them, how fast, where."""
    whole = section.item("whole")
    fact = whole.fact("networks") if whole else None
    found = section.of_kind("network")
    if found or fact:
        yield Heading(2, "Networks", "networks")
    if found:
        yield from network_tables(found)
    elif fact:
        yield facts_list([fact])


def ramps(section: Section) -> Iterator[Block]:
    """Ramps where cables cross a way, and how many ways there are to cross."""
    whole = section.item("whole")
    names = ("cable_ramps", "ramps_needed", "crossings")
    facts = [fact for name in names if whole and (fact := whole.fact(name))]
    found = section.of_kind("ramp")
    if found or facts:
        yield Heading(2, "Cable ramps", "ramps")
    if found:
        columns = ("count", "channels", "length", "wheel_load")
        yield item_table(found, columns, first="Ramp", summary="Cable ramps")
    if facts:
        yield facts_list(facts)


def limits(section: Section) -> Iterator[Block]:
    """Every line with what is left of its limits, then the workings."""
    if section.of_kind("line"):
        yield Heading(2, "How far each line may run", "every")
        yield Paragraph(CAUTION)
        yield every_line(section)
    figures = [figure for item in section.items for figure in item.figures]
    reach = [
        figure for figure in figures if ".left." in figure.key or figure.key.endswith(".straight")
    ]
    if figures:
        yield workings("Workings: limits and distances", reach)
        yield workings("Workings: ways", [figure for figure in figures if figure not in reach])


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """Lines to the mix position and the internet, for the home page."""
    return tuple(answers(section))


def answers(section: Section) -> Iterator[Entry]:
    """The home page's answers on lines."""
    pair = section.item("stage-to-mix")
    if pair:
        free = [
            figure
            for figure in pair.figures
            if figure.key.endswith(".free") and figure.value and figure.value.ends[0]
        ]
        words = ", ".join(
            f"{figure.value.text} {kind_in(figure)}" for figure in free if figure.value
        )
        yield Entry(
            "Free lines, stage to mix",
            words or "none stated",
            small=pair.name,
            anchor="lines#places",
        )
    for network in section.of_kind("network"):
        if network.text("internet_down"):
            rates = [
                *shown_fact(network.fact("internet_down")),
                " down, ",
                *shown_fact(network.fact("internet_up")),
                " up",
            ]
            yield Entry("Internet by cable", rates, small=network.name, anchor="lines#networks")
            return
