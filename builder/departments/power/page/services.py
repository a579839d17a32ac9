"""
The table that a visiting electrician comes for: services with what is free, rating, connector,
place and tie-in.
"""

from collections.abc import Iterator

from builder.departments.power.page.words import plain_words
from builder.document import (
    Block,
    Bullets,
    Heading,
    Inline,
    Paragraph,
    Row,
    Small,
    Strong,
    Table,
    Tag,
    Words,
)
from builder.layout import anchor_of, shown_fact, shown_figure, state
from builder.pack import Figure, Item, Section
from builder.reading.measures import shown
from builder.reading.quantities import Current

PHASES = ("L1", "L2", "L3")
LEFT_ON_EACH_PHASE = (
    "What the house's own loads leave on each phase, for hours on end. The switch or board that"
    " sets the limit is named."
)
AT_MOST_MEANS = (
    ' "At most" stands where less may be free, for the house has still to measure a load, or to'
    " state a continuous share, a neutral or what takes from a generator; the workings name which."
)


def services(section: Section) -> Iterator[Block]:
    """The table that a visiting electrician comes for."""
    found = section.of_kind("service")
    if not found:
        return
    yield Heading(2, "Services", "services")
    open_words = AT_MOST_MEANS if any(is_open(item) for item in found) else ""
    yield Paragraph(LEFT_ON_EACH_PHASE + open_words)
    columns = ("Service", "Free L1", "Free L2", "Free L3", "Tie-in", "Bound by", "Kept for")
    yield Table(
        columns, [service_row(item) for item in found], summary="Services", numeric=(1, 2, 3)
    )
    said: list[Words] = [[Strong(item.name), f": {item.note}"] for item in found if item.note]
    if said:
        yield Bullets(said)


def is_open(item: Item) -> bool:
    """Whether what is free on some phase of a service is an upper bound."""
    free = [item.figure(f"free.{phase}") for phase in PHASES]
    return any(each and each.value and each.value.number is None for each in free)


def service_row(item: Item) -> Row:
    """
    One service: its name with what it is under it, then the few answers that decide, so that a
    phone shows them side by side.
    """
    free = [free_cell(item.figure(f"free.{phase}")) for phase in PHASES]
    words = [tie_in(item), bound_by(item), shown_fact(item.fact("dedicated_to"))]
    numbers = [item.far_end(f"free.{phase}") for phase in PHASES]
    return Row(
        [named(item), *free, *words],
        anchor=anchor_of(item.key),
        order=(None, *numbers, None, None, None),
    )


def named(item: Item) -> list[Inline]:
    """
    The service with its state, then rating, system, connectors and place, each told or told to be
    missing.
    """
    terms = terms_of(item)
    tags: list[Inline] = [*state(item), *([Tag(terms, "note")] if terms else [])]
    spaced = [piece for tag in tags for piece in (" ", tag)]
    rating = (
        f"{plain_words(item.fact('rating'), 'rating')},"
        f" {item.text('system') or 'system not stated'}"
    )
    return [
        item.name,
        *spaced,
        " ",
        Small("; ".join((rating, plain_words(item.fact("connectors"), "connectors"), where(item)))),
    ]


def free_cell(figure: Figure | None) -> list[Inline]:
    """What is free, with both ends; where it is only an upper bound, that stands beside it."""
    value = figure.value if figure else None
    if value and value.least is not None and value.least > 0 and value.most is not None:
        ends = [shown(Current, end)[0] for end in (value.least, value.most)]
        return [" to ".join(ends)]
    if figure and figure.value and figure.value.number is None and figure.value.most is not None:
        return [shown(Current, figure.value.most)[0], " ", Small("at most")]
    return shown_figure(figure)


def terms_of(item: Item) -> str:
    """The terms that stand on an item's line, where visitors cannot simply use it."""
    terms = next((fact.terms for fact in item.facts if fact.terms), "")
    return "" if terms == "included" else terms


def bound_by(item: Item) -> list[Inline]:
    """
    The limit that binds, loads that nobody has measured, and from which third harmonic the neutral
    binds instead.
    """
    figure, neutral = item.figure("binding"), item.number("neutral-binds")
    notes = [figure.note] if figure and figure.note else []
    if neutral is not None:
        notes.append(
            f"or its neutral, above {item.text('neutral-binds')} third harmonic of an even load"
        )
    return [*shown_figure(figure), *(piece for note in notes for piece in (" ", Small(note)))]


def where(item: Item) -> str:
    """The place, or where there is none its position from the datum."""
    position = ", ".join(
        text for name in ("at.across", "at.depth", "at.height") if (text := item.text(name))
    )
    return item.text("place") or position or "place not stated"


def tie_in(item: Item) -> list[Inline]:
    """Who connects, and with what notice."""
    who, notice = item.text("tie_in.who"), item.text("tie_in.notice")
    if who or notice:
        return [
            who or "nobody named",
            " ",
            Small(f"notice {notice}" if notice else "notice not stated"),
        ]
    return ["–"] if terms_of(item) == "not for visitors" else shown_fact(item.fact("tie_in"))
