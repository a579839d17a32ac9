"""The flying page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.departments.flying.section_drawing import SAYS, section_svg
from builder.document import Block, Bullets, Caution, Entry, Heading, Page, Paragraph, Picture, Tag
from builder.layout import (
    anchor_of,
    checked_line,
    facts_block,
    figures_block,
    findings_block,
    item_table,
    shown_figure,
    workings,
)
from builder.pack import Item, Pack, Section, Standing

SET_KEYS = (
    "distance",
    "carries",
    "use",
    "free",
    "left",
    "low_trim",
    "high_trim",
    "moved_by",
    "pipe_length",
    "hung_weight",
    "load",
    "arbor",
)
RULES_KEY = "flying.whole.rules"
SUMMARY = "Line sets with their distance, what hangs, what is left, and trims; floors, weights."


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """One page: the counts, the schedule, the section, floors and weights, workings."""
    return (Page("flying", "Flying", tuple(blocks(section, pack)), summary=SUMMARY),)


def blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The page from top to bottom."""
    yield checked_line(section)
    yield from (Caution(caution) for caution in section.cautions)
    own = [found for found in pack.findings if found.subject.startswith("flying.")]
    yield from findings_block(own)
    if whole := section.item("whole"):
        yield figures_block(whole.figures)
    yield from schedule(section)
    if drawing := section_svg(section):
        yield Heading(2, "Section", "section")
        yield Picture("flying-section", drawing, SAYS, caption=f"{SAYS} {section.cautions[0]}")
    for kind, title, first, columns in (
        (
            "alike",
            "Line sets by kind",
            "Which",
            ("count", "moved_by", "load", "load_with_pipe", "pipe_length", "high_trim"),
        ),
        ("floor", "Floors", "Floor", ("height", "side", "clear_below", "access")),
        ("spotline", "Spot lines", "What", ("count", "load", "where_they_go")),
        ("weights", "Counterweights on hand", "Which", ("each", "sizes", "in_all", "kept")),
    ):
        if found := section.of_kind(kind):
            yield Heading(2, title, f"{kind}s")
            yield item_table(found, columns, first=first, summary=title)
    if whole := section.item("whole"):
        yield Heading(2, "Also", "also")
        yield facts_block(without_rules(whole))
        yield from rules(whole)
    if usual := section.item("usual"):
        yield Heading(2, "Usual", anchor_of(usual.key))
        yield Paragraph("What holds for each line set that does not say otherwise.")
        yield facts_block(usual)
    yield workings("Workings", [figure for item in section.items for figure in item.figures])


def without_rules(whole: Item) -> Item:
    """What is said of flying as a whole, but for the rules, which stand one below the other."""
    return replace(whole, facts=tuple(each for each in whole.facts if each.key != RULES_KEY))


def rules(whole: Item) -> Iterator[Block]:
    """What whoever hangs something has to keep to."""
    fact = whole.fact("rules")
    if fact is not None and fact.value is not None and fact.value.parts:
        yield Heading(3, fact.label, anchor_of(fact.key))
        yield Bullets([[part] for part in fact.value.parts])


def schedule(section: Section) -> Iterator[Block]:
    """The line sets in their order; or which kind of absence it is."""
    yield Heading(2, "Line sets", "sets")
    sets = section.of_kind("lineset")
    if not sets:
        whole = section.item("whole")
        fact = whole.fact("line_sets") if whole else None
        none = fact is not None and fact.standing is Standing.NONE
        words = "There are no line sets." if none else " No line set is described."
        yield Paragraph([words] if none else [Tag("not stated", "plain"), words])
        return
    yield item_table(
        sets, SET_KEYS, first="Set", summary="Line sets, from downstage to upstage", sortable=True
    )


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """How many line sets are free, for the first page."""
    whole = section.item("whole")
    found = whole.figure("free") if whole else None
    if found is None or not section.of_kind("lineset"):
        return []
    return [Entry(found.label, shown_figure(found), anchor="flying#sets")]
