"""The house's page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.document import Block, Caution, Entry, Heading, Page, Paragraph
from builder.layout import checked_line, facts_block, item_table, shown_fact
from builder.pack import Pack, Section


def pages(section: Section, _: Pack) -> Sequence[Page]:
    """One page: capacities, limits, contacts, addresses, rules."""
    return (
        Page(
            "house",
            "House",
            tuple(blocks(section)),
            summary="Capacities, contacts, curfew, noise limits and rules.",
        ),
    )


def blocks(section: Section) -> Iterator[Block]:
    """The page from top to bottom: what most readers come for stands first."""
    identity = section.item("identity")
    if identity:
        yield Paragraph(identity.text("what"))
    yield checked_line(section)
    yield from parts(section)
    if identity:
        yield Heading(2, "Identity", "identity")
        yield facts_block(identity)


def parts(section: Section) -> Iterator[Block]:
    """The tables, each under its heading where the house has something to say."""
    for kind, title, columns in (
        ("closure", "Closed", ("from", "until", "why", "departments")),
        ("works", "Being changed", ("departments", "not_final", "until")),
        (
            "regular",
            "Closed or taken, each time",
            ("days", "from", "first_month", "begins", "last_month", "ends"),
        ),
        ("space", "Spaces", ("what",)),
        (
            "configuration",
            "Capacity by configuration",
            ("audience", "capacity", "blocks", "wheelchair_places", "lost_to_mix_position"),
        ),
        ("seats-out", "Seats that come out", ("rows", "places", "together", "makes_room_for")),
        ("curfew", "Curfew", ("music_ends", "strictness", "overrun")),
        ("quiet", "Quiet hours: no check may be heard", ("from", "until", "why")),
        (
            "noise",
            "Noise limits",
            ("level", "metric", "over", "measured_at", "hours", "enforced_by"),
        ),
        ("contact", "Whom to ask", ("about", "phone", "mail", "hours")),
        ("address", "Addresses", ("lines", "position")),
        ("rule", "House rules", ("kind", "binds", "place", "days", "decided_by")),
        ("rate", "Rates", ("amount", "per", "least", "persons")),
        ("document", "Documents", ("kind", "about", "dated", "had")),
        ("asked", "Documents that a show brings", ("kind", "about", "not_older", "due")),
        ("hired", "What is hired in", ("departments", "from_whom", "asked_for", "make")),
        ("effect", "Effects", ("allowed", "notice", "asks")),
    ):
        if found := section.of_kind(kind):
            yield Heading(2, title, kind)
            yield item_table(found, columns, first=title_of_first_column(kind))
            if kind == "noise":
                yield from (Caution(caution) for caution in section.cautions)
    for kind, title in (("season", "Season"), ("weather", "Weather"), ("crew", "Local crew")):
        if item := section.item(kind):
            yield Heading(2, title, kind)
            yield facts_block(item)


def title_of_first_column(kind: str) -> str:
    """What the first column of a table names."""
    return {
        "closure": "What is closed",
        "regular": "What",
        "works": "What",
        "space": "Space",
        "seats-out": "Seats",
        "curfew": "Days",
        "quiet": "Days",
        "noise": "Limit",
        "contact": "Role",
        "address": "For",
        "effect": "Effect",
        "rule": "Rule",
        "rate": "For",
        "document": "Document",
        "asked": "Document",
        "hired": "What",
    }.get(kind, "Configuration")


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """Capacities, curfew and noise limit for the home page, each kind in one answer."""
    return tuple(
        entry for kind in ("configuration", "curfew", "noise") if (entry := answer(section, kind))
    )


def answer(section: Section, kind: str) -> Entry | None:
    """
    The home page's answer of one kind: the first in large, the others beneath.

    Where there is none, it says which kind of none.
    """
    key, label, fact = {
        "configuration": ("capacity", "Capacity", "configurations"),
        "curfew": ("music_ends", "Curfew", "curfews"),
        "noise": ("level", "Noise limit", "noise_limits"),
    }[kind]
    found = [item for item in section.of_kind(kind) if item.text(key)]
    if found:
        others = "; ".join(f"{item.text(key)} {item.name}" for item in found[1:])
        return Entry(
            label,
            found[0].text(key),
            small=found[0].name + (f"; {others}" if others else ""),
            anchor=f"house#{kind}",
        )
    identity = section.item("identity")
    stated = identity.fact(fact) if identity else None
    return Entry(label, shown_fact(stated), anchor="house#identity") if stated else None
