"""The page of crew. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.document import Block, Caution, Entry, Heading, Link, Page, Paragraph, Tag
from builder.layout import (
    checked_line,
    facts_block,
    figures_block,
    item_table,
    shown_figure,
    workings,
)
from builder.pack import Figure, Item, Pack, Section, Standing

SUMMARY = "Who works here, least crew, who operates what, rates, overtime, what a day costs."
Columns = tuple[str, ...]
RULES_OF_CREW: tuple[tuple[str, str, str, Columns], ...] = (
    ("least", "The least crew", "While", ("kind", "people", "persons", "paid_by")),
    ("operating", "Who operates what", "What", ("kind", "by", "visitors", "asks")),
)
TERMS_OF_CALLS: tuple[tuple[str, str, str, Columns], ...] = (
    ("overtime", "When an hour costs more", "When", ("times", "after", "from", "until", "days")),
    ("call-kind", "Calls with a shortest length of their own", "Call", ("kind", "shortest")),
)
ROLE_COLUMNS = ("skill", "there", "to_call", "at-call", "ordered_by")
RATE_COLUMNS = ("amount", "per", "least", "shortest-call", "since", "until", "tax")
CALL_COLUMNS = ("count", "from", "until", "long", "meals", "paid", "cost")


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """One page: what shows ask first, then rates and a day worked out."""
    return (Page("crew", "Crew", tuple(blocks(section, pack)), summary=SUMMARY),)


def blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The page from top to bottom."""
    yield checked_line(section)
    yield from people(section)
    yield from (Caution(caution) for caution in section.cautions)
    for kind, title, first, columns in RULES_OF_CREW:
        yield from table(section, kind, title, first, columns)
    yield from rates(section)
    for kind, title, first, columns in TERMS_OF_CALLS:
        yield from table(section, kind, title, first, columns)
    yield from how_called(pack)
    yield from days(section)
    if whole := section.item("whole"):
        yield Heading(2, "Also", "also")
        yield facts_block(whole)
    yield workings("Workings", list(named_figures(section)))


def named_figures(section: Section) -> Iterator[Figure]:
    """Every figure under the name of its line, for many have the same label."""
    for item in section.items:
        for figure in item.figures:
            yield replace(figure, label=f"{item.name}: {figure.label.lower()}")


def table(
    section: Section, kind: str, title: str, first: str, columns: Sequence[str]
) -> Iterator[Block]:
    """A table under its heading, where the house has something to say."""
    if found := section.of_kind(kind):
        yield Heading(2, title, kind)
        yield item_table(found, columns, first=first, summary=title)


def people(section: Section) -> Iterator[Block]:
    """Who works here, or which kind of absence it is."""
    roles = section.of_kind("role")
    yield Heading(2, "People", "people")
    if roles:
        yield item_table(roles, ROLE_COLUMNS, first="Role", summary="People")
    else:
        yield Paragraph(absence(section))


def absence(section: Section) -> list[str | Tag]:
    """Why no role stands on the page."""
    whole = section.item("whole")
    fact = whole.fact("people") if whole else None
    if fact is not None and fact.standing is Standing.NONE:
        return ["There is no crew here. A show brings its own."]
    if fact is not None and fact.standing is Standing.UNKNOWN:
        return [Tag("unknown", "caution"), " Nobody has said yet who works here."]
    return [Tag("not stated", "plain"), " It is not described who works here."]


def rates(section: Section) -> Iterator[Block]:
    """What one of each role costs, where the house says that."""
    paid = section.of_kind("rate")
    if paid:
        yield Heading(2, "Rates", "rates")
        yield item_table(paid, RATE_COLUMNS, first="Role", summary="Rates")
        figures = [figure for item in paid for figure in item.figures]
        yield from (Caution(words) for words in dict.fromkeys(each.caution for each in figures))


def how_called(pack: Pack) -> Iterator[Block]:
    """How calls are made, which the house's own page tells."""
    house = pack.section("house")
    if house and house.item("crew"):
        yield Heading(2, "How calls are made", "calls")
        yield Paragraph(
            [
                "Shortest and longest call, meal breaks, rest and notice: ",
                Link("Local crew, on the house's page", "house", "crew"),
                ".",
            ]
        )


def days(section: Section) -> Iterator[Block]:
    """Usual days, each with its calls and what they come to."""
    found = section.of_kind("day")
    if not found:
        return
    yield Heading(2, "A usual day worked out", "days")
    for day in found:
        yield Heading(3, day.name, day.key)
        calls = [item for item in section.of_kind("day-call") if is_of(item, day)]
        if calls:
            yield item_table(
                calls,
                CALL_COLUMNS,
                first="Call",
                summary=day.name,
                elsewhere=("who", "what_for"),
            )
        yield figures_block(day.figures)
        yield facts_block(day)
    cautions = dict.fromkeys(
        figure.caution for day in found for figure in day.figures if figure.caution
    )
    yield from (Caution(caution) for caution in cautions)


def is_of(call: Item, day: Item) -> bool:
    """Whether a call belongs to a day."""
    return call.key.rpartition(".")[0] == day.key


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """
    Who can be called, for the first page: the role with the most people in large, the others
    beneath.
    """
    roles = section.of_kind("role")
    if not roles:
        return []
    told = [(role, role.figure("at-call")) for role in roles]
    most = max(told, key=lambda pair: far_end(pair[1]))
    first, figure = most
    others = "; ".join(
        f"{role.name} {each.value.text}"
        for role, each in told
        if role is not first and each and each.value
    )
    return [
        Entry(
            f"{first.name} with all that can be called",
            shown_figure(figure),
            small=others,
            anchor="crew#people",
        )
    ]


def far_end(figure: Figure | None) -> float:
    """What a figure is at most, as far as it is told."""
    return figure.value.far_end or 0.0 if figure and figure.value else 0.0
