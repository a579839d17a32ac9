"""The rigging page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.departments.rigging.page.bridles import bridles
from builder.departments.rigging.page.hangs import hangs
from builder.departments.rigging.page.plan import plans
from builder.departments.rigging.page.points import limits, points, points_by_rule
from builder.departments.rigging.page.shown import caution_of, not_drawn, parts_of
from builder.departments.rigging.page.stock import held_down, stock, submission, wind
from builder.departments.rigging.page.summary import first
from builder.document import Block, Caution, Folded, Heading, Link, Page, Paragraph, Picture, Strong
from builder.layout import checked_line, findings_block, shown_figure, working_blocks
from builder.pack import Figure, Level, Pack, Section
from builder.reading.values.sentences import sentence_start

KEY = (
    "Circles are points, filled as far as they are loaded; a square is over a limit, a cross is out"
    " of service, a triangle has a load or a rating that is not known. Above each its name, below"
    " what is left in {unit} with the house's own hangs at their worst, all else staying as it is."
    " Broken lines are beams, strips are what"
    " hangs. Audience at the bottom."
)


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """
    One page: what the dock needs first, the plan, the points, what hangs, the rules, workings.
    """
    summary = (
        "Limits, low steel, points with what is left, standing hangs with reactions, hoists,"
        " bridles, how to submit a plan."
    )
    return (Page("rigging", "Rigging", tuple(blocks(section, pack)), summary=summary),)


def blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The page from top to bottom."""
    yield from (Caution(caution) for caution in section.cautions)
    yield checked_line(section)
    yield from findings_at(section, pack, notes=False)
    yield from first(section)
    yield from drawn_plans(section, pack)
    yield from points(section)
    yield from points_by_rule(section)
    yield from limits(section)
    yield from hangs(section)
    yield from bridles(section)
    yield from stock(section)
    yield from wind(section)
    yield from held_down(section)
    yield from submission(section)
    if notes := list(findings_at(section, pack, notes=True)):
        yield Heading(2, "Good to know", "notes")
        yield from notes
    yield from folded(section)


def findings_at(section: Section, pack: Pack, *, notes: bool) -> Iterator[Block]:
    """The department's findings: dangers and cautions, or notes."""
    found = [
        finding
        for finding in pack.findings
        if finding.subject.startswith(f"{section.key}.") and (finding.level is Level.NOTE) == notes
    ]
    yield from findings_block(found)


def drawn_plans(section: Section, pack: Pack) -> Iterator[Block]:
    """The plans, each with the caution; the key to the signs stands under the first."""
    unit, told = "lb" if pack.system == "imperial" else "kg", set[str]()
    for sheet in plans(section, pack):
        if sheet.heading not in told:
            yield Heading(2, sheet.heading, sheet.name)
        key = "" if told else f" {KEY.format(unit=unit)}"
        part = f"{sentence_start(sheet.title)}." if sheet.title else ""
        told.add(sheet.heading)
        yield Picture(
            sheet.name, sheet.svg, sheet.says, caption=f"{part}{key} {caution_of(section)}".strip()
        )
    if names := not_drawn(section):
        yield Paragraph(f"Not on the plan, for nobody knows where they are: {', '.join(names)}.")


def folded(section: Section) -> Iterator[Block]:
    """
    The workings of roof, hangs and bridles; those of single points are on the page of all workings.
    """
    yield Heading(2, "Workings", "workings")
    yield Paragraph(
        [
            "Each figure can be redone by hand. Those of single points and beams are under ",
            Link("Workings and sources", "workings"),
            ".",
        ]
    )
    for item in section.items:
        if item.kind in ("roof", "zone", "hang", "bridle", "wanted-spot", "wind-area"):
            figures = (
                *item.figures,
                *(
                    figure
                    for part in parts_of(section, item, "support")
                    for figure in part.figures
                    if item.kind == "hang"
                ),
            )
            yield Folded(f"Workings: {item.name}", tuple(workings_of(figures)))


def workings_of(figures: Sequence[Figure]) -> Iterator[Block]:
    """The workings of some figures; one that several share is told once, and so is the caution."""
    told = set()
    for figure in figures:
        yield Paragraph([Strong(figure.label), ": ", *shown_figure(figure)])
        if figure.working not in told:
            told.add(figure.working)
            yield from working_blocks(figure.working)
    yield from (
        Caution(caution)
        for caution in dict.fromkeys(figure.caution for figure in figures)
        if caution
    )
