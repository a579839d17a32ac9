"""
The mix position: where it is, levels claimed and computed, what is left of limits, the ears of the
crew, places outside.
"""

from collections.abc import Iterator, Sequence

from builder.document import Block, Caution, Heading, Paragraph
from builder.layout import facts_block, figures_block, item_table, workings
from builder.pack import Item, Section

DOSE_KEYS = ("niosh", "niosh_two_hours", "osha", "osha_two_hours")
DOSE_LABELS = (
    "Day's dose full after, first",
    "2 h fill, first",
    "Full after, second",
    "2 h fill, second",
)
NEIGHBOUR_LABELS = (
    "Across",
    "Depth",
    "Above ground",
    "At the mix position",
    "Level there",
    "Limit",
)


def mix_blocks(section: Section) -> Iterator[Block]:
    """The mix position, with the levels claimed there."""
    mix = section.item("mix")
    if mix is None:
        return
    yield Heading(2, "Mix position", "mix")
    levels = [figure for figure in mix.figures if "_level" in figure.key]
    yield figures_block([figure for figure in mix.figures if figure not in levels])
    yield facts_block(mix)
    yield Heading(3, "Levels", "levels")
    if claims := section.of_kind("claim"):
        yield item_table(
            claims,
            ("metric", "over", "at", "signal"),
            first="Claimed by the house",
            summary="Levels that the house says it reaches",
        )
    if levels:
        yield figures_block(levels)
    yield from (Caution(text) for text in section.cautions)
    yield workings("How the distances and the level were found", mix.figures)
    yield from limit_blocks(section)


def limit_blocks(section: Section) -> Iterator[Block]:
    """
    What is left of a limit after a stretch above it, what the crew's ears get, and what is heard
    outside.
    """
    told = [item for kind in ("budget", "dose", "neighbour") for item in section.of_kind(kind)]
    yield from budget_blocks(section.of_kind("budget"))
    yield from dose_blocks(section.of_kind("dose"))
    yield from neighbour_blocks(section.of_kind("neighbour"))
    if told:
        yield from (Caution(text) for text in section.cautions)
        yield workings(
            "How budgets, doses and levels outside were found",
            [figure for item in told for figure in item.figures],
        )


def budget_blocks(budgets: Sequence[Item]) -> Iterator[Block]:
    """What the rest of a limit's time may hold after a stretch above it."""
    if not budgets:
        return
    yield Heading(3, "What is left of a limit", "budget")
    yield Paragraph(
        "After a stretch above the limit, the steady level that the rest of its time may hold."
        " Quiet between songs counts too."
    )
    yield item_table(
        budgets,
        ("plus_1", "plus_3"),
        labels=("1 dB above", "3 dB above"),
        first="Limit, and when",
        summary="Level left for the rest of the time",
    )


def dose_blocks(doses: Sequence[Item]) -> Iterator[Block]:
    """What levels at the mix position do to those who work there."""
    if not doses:
        return
    yield Heading(3, "Ears of the crew at the mix position", "dose")
    yield Paragraph(
        "By two published criteria, without hearing protection. The first is 85 dB(A) over 8 h"
        " and 3 dB, the second 90 dB(A) and 5 dB."
    )
    yield item_table(
        doses,
        DOSE_KEYS,
        labels=DOSE_LABELS,
        first="Level",
        summary="Noise dose of the crew at the mix position",
    )


def neighbour_blocks(neighbours: Sequence[Item]) -> Iterator[Block]:
    """What places outside hear."""
    if not neighbours:
        return
    yield Heading(3, "Outside", "neighbours")
    yield item_table(
        neighbours,
        ("at.across", "at.depth", "above_ground", "mix_level", "level", "limit"),
        labels=NEIGHBOUR_LABELS,
        first="Place",
        summary="Level at places outside, by ISO 9613-2",
    )
