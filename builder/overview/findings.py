"""The findings page: everything the house should know, dangers first."""

from collections.abc import Iterator

from builder.cautions import EVERYWHERE
from builder.document import Block, Caution, Heading, Page, Paragraph, Small
from builder.layout import confirmed_blocks
from builder.pack import Finding, Level, Pack

TITLES = {Level.DANGER: "Dangers", Level.CAUTION: "Cautions", Level.NOTE: "Notes"}


def findings_page(pack: Pack) -> Page:
    """All findings by level, each with the line it is about."""
    return Page(
        "findings",
        "Findings",
        tuple(blocks(pack)),
        summary="What does not add up, is over a limit, is old or is not finished.",
    )


def blocks(pack: Pack) -> Iterator[Block]:
    """An introduction, then a heading a level."""
    yield Paragraph(
        "What the check of this description found. The pack is published all the same; a finding"
        " stands here until it is mended."
    )
    if pack.findings:
        yield Caution(EVERYWHERE)
    else:
        yield Paragraph("Nothing was found.")
    names = {space.key: space.name for space in pack.spaces}
    for level, title in TITLES.items():
        found = [finding for finding in pack.findings if finding.level is level]
        if found:
            yield Heading(2, title, level.value)
            yield from (framed(finding, names.get(finding.space, "")) for finding in found)
    if pack.confirmed:
        yield from confirmed_blocks(pack.confirmed)


def framed(finding: Finding, space: str = "") -> Caution:
    """One finding with its code and place, and the space that it is of."""
    place, level = finding.place, finding.level.value.capitalize()
    where = f"{place.file}, line {place.line}. " if place and place.line else ""
    return Caution(
        [finding.sentence, " ", Small(f"{where}Code {finding.code}.")],
        title=f"{level}, {space}" if space else level,
        tone=finding.level.value,
    )
