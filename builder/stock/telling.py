"""A comparison for people and for programs: text, Markdown, JSON."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import asdict

from builder.cautions import EVERYWHERE
from builder.document import Bullets, Heading, Paragraph
from builder.pack import Finding
from builder.render.light import light_markdown
from builder.render.terminal import hung
from builder.stock.changing import told
from builder.stock.comparison import Comparison
from builder.stock.differences import Difference, Part
from builder.stock.ranking import MOST, MOVED, Row, figures_in, rows_of

NOTHING = "Nothing changed that the pack shows."


def as_text(comparison: Comparison, *, every: bool = False) -> str:
    """
    All that changed, findings first, then by department, under the two revisions.

    Of figures the largest moves, unless ``every``.
    """
    old, new = comparison.revision
    head = (
        f"{comparison.venue[1]}: from revision {old.number} of {old.on} to revision {new.number} of"
        f" {new.on}."
    )
    return "\n".join((hung(head), *(lines(comparison, every) if comparison else (NOTHING,)))) + "\n"


def knock_ons(
    comparison: Comparison,
    shows: Sequence[str] = (),
    warned: Sequence[str] = (),
    *,
    every: bool = False,
) -> str:
    """
    What an edit changes beyond the line itself, by consequence: findings that appear or vanish,
    shows on the books, figures that move.

    ``shows`` are the lines about shows, told between findings and figures, and ``warned`` the
    cautions that belong to them.
    """
    told_of = [*finding_lines(comparison), *shows, *moved_lines(comparison, every)]
    if not (comparison.moved or comparison.appeared or comparison.vanished):
        told_of.append("No figure moves and no finding appears or vanishes.")
    beside = dict.fromkeys((*warned, *(cautions(comparison) if comparison.moved else ())))
    return "\n".join((*told_of, *(hung(caution) for caution in beside)))


def moved_lines(comparison: Comparison, every: bool) -> Iterator[str]:
    """The figures that move, by department."""
    if comparison.moved:
        yield (
            f"{len(comparison.moved)}"
            f" figure{' moves' if len(comparison.moved) == 1 else 's move'}{'' if every else ', the largest moves first'}:"  # noqa: E501
        )
        for part in comparison.parts:
            figures = list(figure_lines(part, every))
            yield from (f"  {part.title}", *figures) if figures else ()


def figure_lines(part: Part, every: bool) -> Iterator[str]:
    """
    A department's figures that moved: each of them, or the largest move of each line, and a count
    of the rest.
    """
    if every:
        yield from (
            hung(difference_words(each), 4) for each in part.differences if each.kind in MOVED
        )
        return
    rows = rows_of(part)
    yield from (hung(row_words(row), 4) for row in rows[:MOST])
    if rest := figures_in(rows[MOST:]):
        yield f"    and {rest} more; --all shows each"


def row_words(row: Row) -> str:
    """The largest move of a line, and how many more figures of it moved."""
    return f"{difference_words(row.lead)}{f'; {row.more} more of it' if row.more else ''}"


def difference_words(difference: Difference) -> str:
    """One difference with the line it is of."""
    return f"{difference.item}{', ' if difference.item else ''}{told(difference)}"


def lines(comparison: Comparison, every: bool) -> Iterator[str]:
    """
    All that changed: the findings, then department by department what was written and the figures
    that moved with it.
    """
    yield from finding_lines(comparison)
    for part in comparison.parts:
        yield part.title
        yield from (
            hung(difference_words(each), 2) for each in part.differences if each.kind not in MOVED
        )
        figures = list(figure_lines(part, every))
        yield from ("  Figures that moved", *figures) if figures else ()
    if comparison.moved:
        yield from (hung(caution) for caution in cautions(comparison))


def cautions(comparison: Comparison) -> tuple[str, ...]:
    """
    The cautions that belong to the figures which moved, each once; the general one where no figure
    has its own.
    """
    own = dict.fromkeys(
        difference.caution for _, difference in comparison.moved if difference.caution
    )
    return tuple(own) or (EVERYWHERE,)


def finding_lines(comparison: Comparison) -> Iterator[str]:
    """Findings that appear and those that vanish."""
    for title, findings in (
        ("Findings that appear:", comparison.appeared),
        ("Findings that vanish:", comparison.vanished),
    ):
        if findings:
            yield title
            yield from (
                hung(f"{heard(finding, comparison)}: {finding.sentence} [{finding.code}]", 2)
                for finding in findings
            )


def heard(finding: Finding, comparison: Comparison) -> str:
    """How grave a finding is, with the space that it is of."""
    space = comparison.space_of(finding)
    return f"{finding.level.value}, {space}" if space else finding.level.value


def as_markdown(comparison: Comparison, *, every: bool = False) -> str:
    """The same as headings and lists. What a venue wrote is escaped: it cannot become markup."""
    return light_markdown(list(blocks(comparison, every)))


def blocks(comparison: Comparison, every: bool) -> Iterator[Heading | Paragraph | Bullets]:
    """The page from top to bottom."""
    old, new = comparison.revision
    yield Heading(1, f"{comparison.venue[1]}: what changed")
    yield Paragraph(f"From revision {old.number} of {old.on} to revision {new.number} of {new.on}.")
    if not comparison:
        yield Paragraph(NOTHING)
    for title, findings in (
        ("Findings that appeared", comparison.appeared),
        ("Findings that vanished", comparison.vanished),
    ):
        if findings:
            yield Heading(2, title)
            yield Bullets(
                [f"{heard(finding, comparison)}: {finding.sentence}" for finding in findings]
            )
    for part in comparison.parts:
        yield Heading(2, part.title)
        yield Bullets(part_words(part, every))
    if comparison.moved:
        yield from (Paragraph(caution) for caution in cautions(comparison))


def part_words(part: Part, every: bool) -> list[str]:
    """
    What changed in one department: what was written, then the figures, each or the largest moves.
    """
    written = [
        difference_words(each) for each in part.differences if every or each.kind not in MOVED
    ]
    if every:
        return written
    rows = rows_of(part)
    rest = figures_in(rows[MOST:])
    return [
        *written,
        *(row_words(row) for row in rows[:MOST]),
        *([f"and {rest} more figures"] if rest else []),
    ]


def as_json(comparison: Comparison) -> str:
    """
    The same for programs, keys sorted: every difference, each with the share of itself that it
    moved by.
    """
    old, new = comparison.revision
    record = {
        "from": {
            "venue": comparison.venue[0],
            "number": old.number,
            "on": old.on,
            "fingerprint": old.fingerprint,
        },
        "to": {
            "venue": comparison.venue[1],
            "number": new.number,
            "on": new.on,
            "fingerprint": new.fingerprint,
        },
        "departments": [part_record(part) for part in comparison.parts],
        "appeared": [finding_record(finding) for finding in comparison.appeared],
        "vanished": [finding_record(finding) for finding in comparison.vanished],
    }
    return json.dumps(record, indent=1, sort_keys=True, ensure_ascii=False) + "\n"


def part_record(part: Part) -> dict[str, object]:
    """One department for programs."""
    return {
        "key": part.key,
        "title": part.title,
        "differences": [asdict(difference) for difference in part.differences],
    }


def finding_record(finding: Finding) -> dict[str, str]:
    """One finding for programs."""
    return {
        "level": finding.level.value,
        "code": finding.code,
        "sentence": finding.sentence,
        "subject": finding.subject,
    }
