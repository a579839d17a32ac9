"""The rigging page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.departments.rigging.bridle_page import bridles
from builder.departments.rigging.drawing import plans
from builder.departments.rigging.hang_page import hangs
from builder.departments.rigging.shown import caution_of, parts_of
from builder.document import (
    Block,
    Caution,
    Entry,
    Facts,
    Folded,
    Heading,
    Inline,
    Link,
    Page,
    Paragraph,
    Picture,
    Row,
    Small,
    Strong,
    Table,
    Tag,
    Words,
)
from builder.layout import (
    anchor_of,
    checked_line,
    entry_of,
    facts_block,
    findings_block,
    item_table,
    photos,
    shown_fact,
    shown_figure,
    state,
    working_blocks,
)
from builder.pack import Figure, Item, Level, Pack, Section

KEY = (
    "Circles are points, filled as far as they are loaded; a square is over a limit, a cross is out of service, a triangle has a load or a rating "
    "that is not known. Above each its name, below what is left in {unit}, all else staying as it is. Broken lines are beams, strips are what hangs. "
    "Audience at the bottom."
)


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """One page: what the dock needs first, the plan, the points, what hangs, the rules, workings."""
    summary = "Limits, low steel, points with what is left, standing hangs with reactions, hoists, bridles, how to submit a plan."
    return (Page("rigging", "Rigging", tuple(blocks(section, pack)), summary=summary),)


def blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The page from top to bottom."""
    yield from (Caution(caution) for caution in section.cautions)
    yield checked_line(section)
    yield from findings_at(section, pack, notes=False)
    yield from first(section)
    yield from drawn_plans(section, pack)
    yield from points(section)
    yield from limits(section)
    yield from hangs(section)
    yield from bridles(section)
    yield from stock(section)
    yield from wind(section)
    yield from submission(section)
    if notes := list(findings_at(section, pack, notes=True)):
        yield Heading(2, "Good to know", "notes")
        yield from notes
    yield from photos(section.items)
    yield from folded(section)


def findings_at(section: Section, pack: Pack, *, notes: bool) -> Iterator[Block]:
    """The department's findings: dangers and cautions, or notes."""
    found = [finding for finding in pack.findings if finding.subject.startswith(f"{section.key}.") and (finding.level is Level.NOTE) == notes]
    yield from findings_block(found)


def first(section: Section) -> Iterator[Block]:
    """What a rigger on the dock asks first."""
    yield Heading(2, "In short", "in-short")
    yield Facts([*in_short(section)])
    if (house := section.item("house")) and house.facts:
        yield facts_block(house)


def in_short(section: Section) -> Iterator[Entry]:
    """The answers in the order they are asked."""
    roof = section.items[0]
    for name in ("limit", "carried", "left", "full-at-once"):
        if found := roof.figure(name):
            label = {"limit": "Whole roof", "carried": "In use", "left": "Left on the roof", "full-at-once": "Points full at once"}.get(
                name, found.label
            )
            yield Entry(label, shown_figure(found), small=found.note, anchor=anchor_of(found.key))
    for item in section.of_kind("zone") or (roof,):
        yield low_steel(item)
    for name, label in (
        ("each_point", "Each point"),
        ("each_beam", "Each beam"),
        ("spacing_at_least", "Spacing at least"),
        ("directions", "Directions"),
    ):
        if fact := roof.fact(name):
            yield Entry(
                label, shown_fact(fact), small="exceptions below" if section.of_kind("exception") and name in ("each_point", "each_beam") else ""
            )
    yield bridle_answer(section)
    if letter := section.item("letter"):
        yield Entry("Engineer's letter", f"{letter.text('dated')}, {letter.text('from_whom')}", small=letter.text("valid_for"))


def low_steel(item: Item) -> Entry:
    """The low steel over a zone, or over all points, from its lowest to its highest."""
    low, high = item.figure("lowest-steel"), item.figure("highest-steel")
    label = "Low steel" if item.kind == "roof" else f"Low steel, {item.name.lower()}"
    if low is None or high is None or low.value == high.value:
        return Entry(label, shown_figure(low) if low else [Tag("not stated")])
    return Entry(label, [*shown_figure(low), " to ", *shown_figure(high)], small=f"{low.note}, {high.note}")


def bridle_answer(section: Section) -> Entry:
    """Whether bridles are allowed, and where."""
    rule, house = section.item("bridles_allowed"), section.item("house")
    if rule is None:
        absence = house.fact("bridles_allowed") if house else None
        return Entry("Bridles", shown_fact(absence) if absence else [Tag("not stated")])
    beams, widest = rule.text("beams"), rule.text("widest_angle")
    words = f"{rule.text('allowed')}: {beams}" if beams else rule.text("allowed")
    return Entry("Bridles", words, small=f"legs at most {widest} apart" if widest else "")


def drawn_plans(section: Section, pack: Pack) -> Iterator[Block]:
    """The plans, each with the key to its signs and the caution."""
    unit = "lb" if pack.system == "imperial" else "kg"
    for name, title, svg, says in plans(section, pack):
        yield Heading(2, title, name)
        yield Picture(name, svg, says, caption=f"{KEY.format(unit=unit)} {caution_of(section)}")


POINT_COLUMNS = ("Point", "Left", "Bound by", "Carried", "May carry", "Low steel", "Across", "Depth", "Beam", "Hung there", "Worst if uneven")


def points(section: Section) -> Iterator[Block]:
    """The point table."""
    found = section.of_kind("point")
    if not found:
        return
    yield Heading(2, "Points", "points")
    yield Paragraph("Left is for one point alone, all else staying as it is: what one point takes, its beam, zone and roof lose.")
    yield Table(POINT_COLUMNS, [point_row(item) for item in found], summary="Points", numeric=(1, 3, 4, 5, 6, 7, 10), sortable=True)


def point_row(item: Item) -> Row:
    """One point."""
    naming: list[Inline] = [item.name]
    left, carried = item.number("left"), item.figure("carried")
    if left is not None and left < 0:
        naming += [" ", Tag("over", "danger")]
    naming += [" ", *state(item)] if state(item) else []
    naming += [" ", Small(item.note)] if item.note else []
    cells: list[Words] = [
        naming,
        shown_figure(item.figure("left")),
        item.text("binds") or "–",
        shown_figure(carried),
        shown_figure(item.figure("limit")),
    ]
    cells += [shown_figure(item.figure("low-steel")), shown_fact(item.fact("at.across")), shown_fact(item.fact("at.depth")), item.text("beam")]
    cells += [(carried.note if carried else "") or "–", worst_cell(item.figure("worst"))]
    order = (
        None,
        left,
        None,
        *(item.number(name) for name in ("carried", "limit", "low-steel", "at.across", "at.depth")),
        None,
        None,
        item.number("worst"),
    )
    return Row(cells, anchor=anchor_of(item.key), order=order)


def left_cell(item: Item) -> list[Inline]:
    """What is left, or a dash where the point is not to be counted on: its state or its limit say why."""
    left, carried = item.figure("left"), item.figure("carried")
    known = carried is not None and carried.value is not None
    return ["–"] if left is None or (left.value is None and known) else shown_figure(left)


def limit_cell(item: Item) -> list[Inline]:
    """The limit of a point, or which kind of absence it is."""
    figure = item.figure("limit")
    if figure is None or figure.value is not None:
        return shown_figure(figure)
    return [Tag(figure.missing[0].removeprefix("a limit: "), "note")]


def worst_cell(figure: Figure | None) -> list[Inline]:
    """The worst case with what makes it."""
    return [*shown_figure(figure), " ", Small(figure.note)] if figure and figure.note else ["–"]


def limits(section: Section) -> Iterator[Block]:
    """Beams, zones, exceptions."""
    yield Heading(2, "Beams, zones, exceptions", "limits")
    for kind, title in (("zone", "Zone"), ("beam", "Beam")):
        if found := section.of_kind(kind):
            columns = ("limit", "carried", "left", "lowest-steel", "highest-steel", "runs", "across", "depth", "access", "beams", "points")
            yield item_table(found, columns, first=title, summary=f"{title}s: what they may carry, carry, and have left")
    if found := section.of_kind("exception"):
        yield item_table(found, ("each_beam", "each_point"), first="Where", summary="Exceptions to the general limits")
    if found := section.of_kind("by"):
        yield item_table(found, ("weight",), first="Hung by", summary="What hangs already, by who hung it")


def stock(section: Section) -> Iterator[Block]:
    """Hoists and truss."""
    hoists, trusses, rows = section.of_kind("hoist"), section.of_kind("truss"), section.of_kind("truss-row")
    if hoists or trusses:
        yield Heading(2, "Hoists and truss", "stock")
    if hoists:
        yield item_table(
            hoists, ("count", "used", "free", "rating", "weight", "headroom", "chain", "control"), first="Hoist", summary="Hoists in stock"
        )
    if trusses:
        yield item_table(trusses, ("in_all", "used", "free", "sections", "height"), first="Truss", summary="Truss in stock")
    if rows:
        table = item_table(rows, ("span", "uniform"), first="Truss", summary="Maker's table of uniform loads")
        yield Folded(
            "The maker's table", [Table(table.columns, [Row(row.cells) for row in table.rows], summary=table.summary, numeric=table.numeric)]
        )


def wind(section: Section) -> Iterator[Block]:
    """The site's own wind plan, and what the wind pushes at its steps."""
    steps, areas = section.of_kind("wind"), section.of_kind("wind-area")
    if steps or areas:
        yield Heading(2, "Wind", "wind")
        yield from (Caution(caution) for caution in section.cautions[1:])
    if steps:
        yield item_table(steps, ("at", "measured", "do"), first="Step", summary="The site's wind plan")
    if areas:
        yield item_table(areas, ("area", "coefficient", "alert", "lower", "clear"), first="Area", summary="What the wind pushes with")


def submission(section: Section) -> Iterator[Block]:
    """How to submit a plan, or that nobody says."""
    if item := section.item("submission"):
        yield Heading(2, "Submit a hang plan", "submission")
        yield facts_block(item)
    if item := section.item("dynamic_factor"):
        yield Heading(2, "Starting and stopping", "dynamic")
        yield Facts([entry_of(fact) for fact in item.facts])


def folded(section: Section) -> Iterator[Block]:
    """The workings of roof, hangs and bridles; those of single points are on the page of all workings."""
    yield Heading(2, "Workings", "workings")
    yield Paragraph(["Each figure can be redone by hand. Those of single points and beams are under ", Link("Workings and sources", "workings"), "."])
    for item in section.items:
        if item.kind in ("roof", "zone", "hang", "bridle", "wanted-spot", "wind-area"):
            figures = (*item.figures, *(figure for part in parts_of(section, item, "support") for figure in part.figures if item.kind == "hang"))
            yield Folded(f"Workings: {item.name}", tuple(workings_of(figures)))


def workings_of(figures: Sequence[Figure]) -> Iterator[Block]:
    """The workings of some figures; one that several share is told once, and so is the caution."""
    told = set()
    for figure in figures:
        yield Paragraph([Strong(figure.label), ": ", *shown_figure(figure)])
        if figure.working not in told:
            told.add(figure.working)
            yield from working_blocks(figure.working)
    yield from (Caution(caution) for caution in dict.fromkeys(figure.caution for figure in figures) if caution)


def headline(section: Section, pack: Pack) -> Sequence[Entry]:
    """Low steel, what is left of the roof, and points."""
    del pack
    return tuple(answers(section))


def answers(section: Section) -> Iterator[Entry]:
    """The home page's answers on rigging."""
    roof = section.items[0]
    over_stage = next(iter(section.of_kind("zone")), roof)
    if over_stage.figure("lowest-steel"):
        steel = low_steel(over_stage)
        yield Entry(steel.label, steel.words, small=steel.small, anchor="rigging#in-short")
    if limit := roof.figure("limit"):
        left = roof.figure("left")
        said = f"{left.value.text} left. " if left and left.value else ""
        yield Entry("Roof", shown_figure(limit), small=f"{said}{caution_of(section)}", anchor="rigging#limits")
    points = section.of_kind("point")
    if points:
        full = roof.figure("full-at-once")
        small = f"{full.value.text.split(' of ')[0]} of them can be full at once" if full and full.value else ""
        yield Entry("Points", f"{len(points)}", small=small, anchor="rigging#points")
