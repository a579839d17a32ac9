"""The table that a visiting electrician comes for: services with what is free, rating, connector, place and tie-in."""

from collections.abc import Iterator

from builder.document import Block, Bullets, Heading, Inline, Paragraph, Row, Small, Strong, Table, Tag, Words
from builder.layout import anchor_of, shown_fact, shown_figure, state
from builder.pack import Item, Section

PHASES = ("L1", "L2", "L3")


def services(section: Section) -> Iterator[Block]:
    """The table that a visiting electrician comes for."""
    found = section.of_kind("service")
    if not found:
        return
    yield Heading(2, "Services", "services")
    yield Paragraph("Free is what the house's own loads leave on each phase, for hours on end. The switch or board that sets the limit is named.")
    columns = ("Service", "Free L1", "Free L2", "Free L3", "Rating", "Connectors", "Where", "Tie-in", "Bound by", "Kept for")
    yield Table(columns, [service_row(item) for item in found], summary="Services", numeric=(1, 2, 3))
    said: list[Words] = [[Strong(item.name), f": {item.note}"] for item in found if item.note]
    if said:
        yield Bullets(said)


def service_row(item: Item) -> Row:
    """One service: the few answers that decide."""
    free = [shown_figure(item.figure(f"free.{phase}")) for phase in PHASES]
    words = [rating(item), shown_fact(item.fact("connectors")), where(item), tie_in(item), bound_by(item)]
    numbers = [item.number(f"free.{phase}") for phase in PHASES]
    order = (None, *numbers, item.number("rating"), *(None for _ in range(5)))
    return Row([item.name, *free, *words, shown_fact(item.fact("dedicated_to"))], anchor=anchor_of(item.key), order=order)


def terms_of(item: Item) -> str:
    """The terms that stand on an item's line, where visitors cannot simply use it."""
    terms = next((fact.terms for fact in item.facts if fact.terms), "")
    return "" if terms == "included" else terms


def bound_by(item: Item) -> list[Inline]:
    """The limit that binds, and loads that nobody has measured."""
    figure = item.figure("binding")
    return [*shown_figure(figure), " ", Small(figure.note)] if figure and figure.note else shown_figure(figure)


def rating(item: Item) -> list[Inline]:
    """Ampere a phase with the state of the service, then the system, so that nobody guesses line to what."""
    terms = terms_of(item)
    tags: list[Inline] = [*state(item), *([Tag(terms, "note")] if terms else [])]
    spaced = [piece for tag in tags for piece in (" ", tag)]
    return [*shown_fact(item.fact("rating")), *spaced, " ", Small(item.text("system") or "system not stated")]


def where(item: Item) -> list[Inline]:
    """The place, then its position from the datum."""
    position = ", ".join(text for name in ("at.across", "at.depth", "at.height") if (text := item.text(name)))
    place = item.fact("place")
    if place is None and position:
        return [position]
    return [*shown_fact(place), " ", Small(position)] if position else [*shown_fact(place)]


def tie_in(item: Item) -> list[Inline]:
    """Who connects, and with what notice."""
    who, notice = item.text("tie_in.who"), item.text("tie_in.notice")
    if who or notice:
        return [who or "nobody named", " ", Small(f"notice {notice}" if notice else "notice not stated")]
    return ["–"] if terms_of(item) == "not for visitors" else shown_fact(item.fact("tie_in"))
