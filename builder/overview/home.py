"""The first page: whether a show can go in, in two minutes, and what has caught others out."""

from collections import Counter
from collections.abc import Iterator, Sequence

from builder.cautions import EVERYWHERE
from builder.document import Block, Bullets, Caution, Entry, Facts, Heading, Headline, Inline, Link, Page, Paragraph, Tag, Words
from builder.layout import checked_pieces
from builder.pack import Item, Level, Pack, Section, Standing


def home_page(pack: Pack, headlines: Sequence[Entry]) -> Page:
    """Answers, trouble spots, what is out of service or not known, and how fresh each department is."""
    return Page("index", pack.venue, tuple(blocks(pack, headlines)), summary=f"The tech pack of {pack.venue}, revision {pack.revision.number}.")


def blocks(pack: Pack, headlines: Sequence[Entry]) -> Iterator[Block]:
    """The page from top to bottom."""
    identity = next((item for item in pack.items() if item.kind == "identity"), None)
    if identity:
        yield Paragraph([identity.text("what"), " ", identity.text("town"), "."])
    yield from dangers(pack)
    yield Headline(headlines)
    yield Caution(EVERYWHERE)
    yield from trouble(pack)
    yield from shortcomings(pack)
    yield Heading(2, "How fresh this is", "fresh")
    yield Facts([freshness(section) for section in pack.sections])
    yield Paragraph(revision_words(pack))


def dangers(pack: Pack) -> Iterator[Block]:
    """A line that says how many findings are open, before any figure is read."""
    count = Counter(finding.level for finding in pack.findings)
    if count[Level.DANGER] or count[Level.CAUTION]:
        words = " and ".join(
            f"{number} {level.value}{'' if number == 1 else 's'}" for level in (Level.DANGER, Level.CAUTION) if (number := count[level])
        )
        tone = "danger" if count[Level.DANGER] else "caution"
        yield Caution([f"{words} on this revision. ", Link("Read the findings", "findings")], title="Open findings", tone=tone)


def trouble(pack: Pack) -> Iterator[Block]:
    """What has caught visitors out."""
    spots = [item for item in pack.items() if item.kind == "trouble"]
    if spots:
        yield Heading(2, "Known trouble spots", "trouble")
        yield Bullets([trouble_words(spot) for spot in spots])


def trouble_words(spot: Item) -> Words:
    """One trouble spot with what to do about it."""
    advice = spot.text("do")
    what = spot.text("what")
    if not advice:
        return [what]
    return [what if what.endswith((".", "!", "?")) else f"{what}.", f" {advice}"]


def shortcomings(pack: Pack) -> Iterator[Block]:
    """What is out of service or limited, and what the house does not know yet."""
    reduced = [(section, item) for section in pack.sections for item in section.items if item.condition in ("limited", "out of service")]
    if reduced:
        yield Heading(2, "Not in full service today", "reduced")
        yield Bullets([reduced_words(section, item) for section, item in reduced])
    every = [(section, item, fact) for section in pack.sections for item in section.items for fact in item.facts]
    unknown = [(section, item, fact) for section, item, fact in every if fact.standing is Standing.UNKNOWN]
    if unknown:
        yield Heading(2, "Not known yet", "unknown")
        yield Bullets([[Link(section.title, section.key), f": {item.name}, {fact.label.lower()}"] for section, item, fact in unknown])


def reduced_words(section: Section, item: Item) -> Sequence[Inline]:
    """One thing that is limited or out of service."""
    tone = "danger" if item.condition == "out of service" else "caution"
    note = f" {item.note}" if item.note else ""
    return [Tag(item.condition, tone), " ", Link(f"{section.title}: {item.name}", section.key), note]


def freshness(section: Section) -> Entry:
    """When a department was last checked."""
    words: list[Inline] = checked_pieces(section.verified) if section.verified else [Tag("not verified", "caution")]
    if section.verified and section.verified.stale:
        words = [Tag("old check", "caution"), " ", *words]
    return Entry(section.title, words)


def revision_words(pack: Pack) -> str:
    """Which revision this is, for the foot of the page."""
    revision = pack.revision
    note = f" {revision.note}" if revision.note else ""
    return f"Revision {revision.number} of {revision.on}, issued by {revision.by}. Description {revision.fingerprint}.{note}"
