"""The first page: whether a show can go in, in two minutes, and what has caught others out."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.cautions import EVERYWHERE
from builder.document import (
    Block,
    Bullets,
    Caution,
    Day,
    Entry,
    Facts,
    Folded,
    Heading,
    Headline,
    Inline,
    Link,
    Page,
    Paragraph,
    Strong,
    Tag,
    Words,
)
from builder.layout import checked_pieces, state, under_name
from builder.overview.changes import done_words, newest_first, sentence
from builder.overview.closures import closures
from builder.overview.elevation import elevation
from builder.pack import Item, Level, Pack, Section, Standing
from builder.reading.values.sentences import within_sentence

SHOWN = 6
"""How many lines of a long list stand open."""


def home_page(pack: Pack, headlines: Sequence[Entry]) -> Page:
    """
    Answers, trouble spots, what is out of service or not known, and how fresh each department is.
    """
    return Page(
        "index",
        pack.venue,
        tuple(blocks(pack, headlines)),
        summary=f"The tech pack of {pack.venue}, revision {pack.revision.number}.",
    )


def blocks(pack: Pack, headlines: Sequence[Entry]) -> Iterator[Block]:
    """
    The page from top to bottom: what the house is, what is wrong today, the numbers, what moved
    last.
    """
    if drawing := elevation(pack):
        yield replace(drawing, beside=True)
    yield from identity_words(pack)
    yield from closures(pack)
    yield from dangers(pack)
    yield from lately(pack)
    yield Headline(headlines)
    yield Caution(EVERYWHERE)
    yield from trouble(pack)
    yield from shortcomings(pack)
    yield Heading(2, "How fresh this is", "fresh")
    yield Facts([freshness(section) for section in pack.sections])
    yield Paragraph(revision_words(pack))


def identity_words(pack: Pack) -> Iterator[Block]:
    """What the house is, and where."""
    identity = next((item for item in pack.items() if item.kind == "identity"), None)
    if identity:
        yield Paragraph(
            [identity.text("what"), " ", Strong(identity.text("town")), "."]
            if identity.text("town")
            else identity.text("what")
        )


def dangers(pack: Pack) -> Iterator[Block]:
    """
    The first danger in its own words and how many findings are open, before any figure is read.
    """
    count = Counter(finding.level for finding in pack.findings)
    said = " and ".join(
        count_of(number, level.value)
        for level in (Level.DANGER, Level.CAUTION)
        if (number := count[level])
    )
    if not said:
        return
    first = next(
        (finding.sentence for finding in pack.findings if finding.level is Level.DANGER), ""
    )
    if first:
        yield Caution(
            [f"{first} ", Link(f"All findings: {said}", "findings")], title="Danger", tone="danger"
        )
    else:
        yield Caution(
            [f"{said} on this revision. ", Link("Read the findings", "findings")],
            title="Open findings",
            tone="caution",
        )


def lately(pack: Pack) -> Iterator[Block]:
    """What the house changed last, where it keeps a log, with the way to what moved with it."""
    newest = newest_first(pack)[:1]
    for change, anchor in newest:
        did = ", ".join(part for part in (change.line, done_words(change)) if part)
        moved = f" {count_of(len(change.moved), 'figure')} moved with it. " if change.moved else " "
        words = f"{sentence(did)} {sentence(change.why)}" if did else sentence(change.why)
        yield Paragraph(
            [
                Strong("Last change"),
                " ",
                Day(change.on),
                f": {words}{moved}",
                Link("What changed", "changes", anchor),
            ]
        )


def count_of(number: int, thing: str) -> str:
    """How many, in words."""
    return f"{number} {thing}{'' if number == 1 else 's'}"


def trouble(pack: Pack) -> Iterator[Block]:
    """What has caught visitors out."""
    spots = [item for item in pack.items() if item.kind == "trouble"]
    if spots:
        yield Heading(2, "Known trouble spots", "trouble")
        yield Bullets([trouble_words(spot) for spot in spots])


def trouble_words(spot: Item) -> Words:
    """One trouble spot with what to do about it."""
    advice, what = spot.text("do"), spot.text("what")
    sentence = what if what.endswith((".", "!", "?")) or not advice else f"{what}."
    return [
        sentence,
        *([f" {advice}"] if advice else []),
        *state(spot),
        *under_name(spot, ("what", "do")),
    ]


def shortcomings(pack: Pack) -> Iterator[Block]:
    """What is out of service or limited, and what the house does not know yet."""
    reduced = [
        (section, item) for section in pack.sections for item in whole_lines(section) if state(item)
    ]
    if reduced:
        reduced.sort(key=lambda pair: how_much_is_out(pair[1]))
        yield Heading(2, "Not in full service today", "reduced")
        yield from some([reduced_words(section, item) for section, item in reduced])
    every = [
        (section, item, fact)
        for section in pack.sections
        for item in section.items
        for fact in item.facts
    ]
    unknown = [
        (section, item, fact) for section, item, fact in every if fact.standing is Standing.UNKNOWN
    ]
    if unknown:
        yield Heading(2, "Not known yet", "unknown")
        yield from some(
            [
                [Link(section.title, section.key), f": {item.name}, {within_sentence(fact.label)}"]
                for section, item, fact in unknown
            ]
        )


def how_much_is_out(item: Item) -> int:
    """What is out of service comes first, then that of which some is, then what is limited."""
    if item.condition == "out of service":
        return 0
    return 1 if item.out else 2


def whole_lines(section: Section) -> Iterator[Item]:
    """
    The items of a section without those single units whose line tells already how many are out.
    """
    told = [item.key for item in section.items if item.units]
    for item in section.items:
        if item.unit_of not in told:
            yield item


def some(entries: Sequence[Words]) -> Iterator[Block]:
    """The first few lines of a list, the rest behind a line that opens it."""
    if len(entries) <= SHOWN + 2:
        yield Bullets(entries)
        return
    yield Bullets(entries[:SHOWN])
    yield Folded(f"{len(entries) - SHOWN} more", [Bullets(entries[SHOWN:])])


def reduced_words(section: Section, item: Item) -> Sequence[Inline]:
    """One thing that is limited or out of service."""
    note = f" {item.note}" if item.note else ""
    return [
        *state(item),
        " ",
        Link(f"{section.title}: {item.name}", section.key),
        note,
    ]


def freshness(section: Section, title: str = "") -> Entry:
    """When a department was last checked, by its title or another."""
    title = title or section.title
    if section.verified is None:
        return Entry(title, [Tag("not verified", "caution")])
    tone: list[Inline] = [Tag("old check", "caution"), " "] if section.verified.stale else []
    when, *how = checked_pieces(section.verified)[1:]
    return Entry(title, [*tone, when], small="".join(str(piece) for piece in how).strip())


def revision_words(pack: Pack) -> str:
    """Which revision this is, for the foot of the page."""
    revision = pack.revision
    note = f" {revision.note}" if revision.note else ""
    return (
        f"Revision {revision.number} of {revision.on}, issued by {revision.by}. Description"
        f" {revision.fingerprint}.{note}"
    )
