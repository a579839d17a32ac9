"""A comparison for people and for programs: text, Markdown, JSON."""

import json
from collections.abc import Iterator
from dataclasses import asdict

from builder.cautions import EVERYWHERE
from builder.document import Bullets, Heading, Paragraph
from builder.pack import Finding
from builder.render.light import light_markdown
from builder.stock.changing import told
from builder.stock.comparison import Comparison, Part

NOTHING = "Nothing changed that the pack shows."


def as_text(comparison: Comparison) -> str:
    """All that changed, by department and line, under the two revisions."""
    old, new = comparison.revision
    head = f"{comparison.venue[1]}: from revision {old.number} of {old.on} to revision {new.number} of {new.on}."
    return "\n".join((head, *(lines(comparison) if comparison else (NOTHING,)))) + "\n"


def knock_ons(comparison: Comparison) -> str:
    """What an edit changes beyond the line itself: figures that move, findings that appear or vanish."""
    if not (comparison.moved or comparison.appeared or comparison.vanished):
        return "No figure moves and no finding appears or vanishes."
    return "\n".join((*moved_lines(comparison), *finding_lines(comparison)))


def moved_lines(comparison: Comparison) -> Iterator[str]:
    """The figures that move, with their cautions."""
    if comparison.moved:
        yield "Figures that move:"
        for part, difference in comparison.moved:
            yield f"  {part.title}, {difference.item}: {told(difference)}"
        yield from (f"  {caution}" for caution in cautions(comparison))


def lines(comparison: Comparison) -> Iterator[str]:
    """All that changed, department by department, then the findings."""
    for part in comparison.parts:
        yield part.title
        for difference in part.differences:
            item = f"{difference.item}, " if difference.item else ""
            yield f"  {item}{told(difference)}"
    if comparison.moved:
        yield from cautions(comparison)
    yield from finding_lines(comparison)


def cautions(comparison: Comparison) -> tuple[str, ...]:
    """The cautions that belong to the figures which moved, each once; the general one where no figure has its own."""
    own = dict.fromkeys(difference.caution for _, difference in comparison.moved if difference.caution)
    return tuple(own) or (EVERYWHERE,)


def finding_lines(comparison: Comparison) -> Iterator[str]:
    """Findings that appear and those that vanish."""
    for title, findings in (("Findings that appear:", comparison.appeared), ("Findings that vanish:", comparison.vanished)):
        if findings:
            yield title
            yield from (f"  {finding.level.value}: {finding.sentence} [{finding.code}]" for finding in findings)


def as_markdown(comparison: Comparison) -> str:
    """The same as headings and lists. What a venue wrote is escaped: it cannot become markup."""
    return light_markdown(list(blocks(comparison)))


def blocks(comparison: Comparison) -> Iterator[Heading | Paragraph | Bullets]:
    """The page from top to bottom."""
    old, new = comparison.revision
    yield Heading(1, f"{comparison.venue[1]}: what changed")
    yield Paragraph(f"From revision {old.number} of {old.on} to revision {new.number} of {new.on}.")
    if not comparison:
        yield Paragraph(NOTHING)
    for part in comparison.parts:
        yield Heading(2, part.title)
        yield Bullets([f"{difference.item}{', ' if difference.item else ''}{told(difference)}" for difference in part.differences])
    if comparison.moved:
        yield from (Paragraph(caution) for caution in cautions(comparison))
    for title, findings in (("Findings that appeared", comparison.appeared), ("Findings that vanished", comparison.vanished)):
        if findings:
            yield Heading(2, title)
            yield Bullets([f"{finding.level.value}: {finding.sentence}" for finding in findings])


def as_json(comparison: Comparison) -> str:
    """The same for programs, keys sorted."""
    old, new = comparison.revision
    record = {
        "from": {"venue": comparison.venue[0], "number": old.number, "on": old.on, "fingerprint": old.fingerprint},
        "to": {"venue": comparison.venue[1], "number": new.number, "on": new.on, "fingerprint": new.fingerprint},
        "departments": [part_record(part) for part in comparison.parts],
        "appeared": [finding_record(finding) for finding in comparison.appeared],
        "vanished": [finding_record(finding) for finding in comparison.vanished],
    }
    return json.dumps(record, indent=1, sort_keys=True, ensure_ascii=False) + "\n"


def part_record(part: Part) -> dict[str, object]:
    """One department for programs."""
    return {"key": part.key, "title": part.title, "differences": [asdict(difference) for difference in part.differences]}


def finding_record(finding: Finding) -> dict[str, str]:
    """One finding for programs."""
    return {"level": finding.level.value, "code": finding.code, "sentence": finding.sentence, "subject": finding.subject}
