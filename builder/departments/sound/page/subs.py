"""The sub line: its delays, what it covers, and other ways to set the same subs."""

from collections.abc import Iterator, Sequence

from builder.arranged import usual_part
from builder.departments.sound.drawing.plan import subs_picture
from builder.departments.sound.page.parts import again
from builder.document import Block, Caution, Heading, Link, Paragraph, Strong
from builder.layout import figures_block, item_table, workings
from builder.pack import Item, Pack, Section

LINE_COLUMNS = {
    "model": "Model",
    "playing": "Play",
    "spacing": "Spacing",
    "at.depth": "Depth",
    "at.height": "Height",
    "sits": "Sits",
    "arc": "Arc",
    "arc_radius": "Arc radius",
    "fed": "Fed",
    "turned_down": "Turned down",
}
BAND_KEYS = ("covers", "straight", "costs", "floor", "floor_straight")
BAND_LABELS = ("Covers", "No delays", "Costs straight ahead", "On the floor", "No delays, floor")
PAIR_KEYS = ("across", "fire_front", "fire_rear", "gradient_front", "gradient_rear")
PAIR_LABELS = ("Across", "End-fire: front", "Rear", "Gradient: front", "Rear, inverted")
WAY_KEYS = ("end_fire_mix", "end_fire_stage", "gradient_mix", "gradient_stage")
WAY_LABELS = ("End-fire: mix position", "Stage", "Gradient: mix position", "Stage")


def subs_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The sub line, with the delay table an engineer types in."""
    lines = section.of_kind("subs")
    if not lines:
        return
    yield Heading(2, "Subs", "subs")
    yield item_table(
        lines,
        tuple(LINE_COLUMNS),
        labels=tuple(LINE_COLUMNS.values()),
        first="Line",
        summary="Sub lines",
        # How many there are and which are out of service stands with how many play.
        elsewhere=("count", "out_of_service"),
    )
    for line in lines:
        if len(lines) > 1:
            yield Paragraph([Strong(line.name)])
        yield figures_block(
            [figure for figure in line.figures if not figure.key.endswith("playing")]
        )
    yield from (Caution(text) for text in section.cautions)
    subs = section.of_kind("sub")
    if drawn := subs_picture(usual_part(section, pack)):
        yield drawn
    yield item_table(
        subs, ("across", "delay"), first="Sub, from stage right", summary="Delay of each sub"
    )
    yield workings(
        "How the delays were found", [figure for item in (*lines, *subs) for figure in item.figures]
    )
    yield from sub_band_blocks(section)
    yield from way_blocks(section)


def way_blocks(section: Section) -> Iterator[Block]:
    """Other ways to set the same subs: what to type in, and what changes."""
    ways, pairs, bands = (
        section.of_kind("subways"),
        section.of_kind("subpair"),
        section.of_kind("subwayband"),
    )
    if not ways:
        return
    yield Heading(3, "Other ways to set the same subs", "sub-ways")
    yield Paragraph(
        "In pairs, one sub behind the other, both looking at the audience. End-fire: the front sub"
        " waits for the sound of the rear one. Gradient: the rear sub is inverted and waits. Ask"
        " the house first: it takes floor behind the line, cables and time."
    )
    for way in ways:
        yield figures_block(way.figures)
    yield item_table(
        pairs,
        PAIR_KEYS,
        labels=PAIR_LABELS,
        first="Pair, from stage right",
        summary="Delays of the pairs",
    )
    if bands:
        yield from way_band_blocks(bands, section)
    yield Paragraph(
        "The model takes equal subs that radiate alike all round, in the open. In front it holds as"
        " well as for the line. Behind, boxes shade each other and walls send sound back: expect"
        " far less than is shown. No source was found for how much."
    )
    yield workings(
        "How the pairs were found",
        [figure for item in (*ways, *pairs, *bands) for figure in item.figures],
    )


def way_band_blocks(bands: Sequence[Item], section: Section) -> Iterator[Block]:
    """What the other ways change by frequency."""
    yield Paragraph(
        "Against the line as set, at the same drive: the mix position, and the stage 6 m"
        " upstage of the line at ears on the deck."
    )
    yield item_table(
        bands,
        WAY_KEYS,
        labels=WAY_LABELS,
        first="Third octave",
        summary="Pairs against the line as set",
    )
    if section.fields:
        where = Link("both ways at each third octave", "sound-coverage", "pattern")
        yield Paragraph(["Drawn over the plan: ", where, "."])
    yield from (Caution(text) for text in section.cautions)


def sub_band_blocks(section: Section) -> Iterator[Block]:
    """What the line covers and costs by frequency, and what two stacks would do."""
    bands = section.of_kind("subband")
    if not bands:
        return
    yield Heading(3, "What the line covers", "sub-coverage")
    yield Paragraph(
        "Far away the line covers an angle, which is not the angle of its arc. On the floor, at the"
        " mix position's depth: the width around the line's middle that stays within 6 dB of it,"
        " and how much of the audience's width that is."
    )
    yield item_table(
        bands,
        BAND_KEYS,
        labels=BAND_LABELS,
        first="Third octave",
        summary="Coverage of the sub line by frequency",
    )
    yield item_table(
        [again(item, "stacks") for item in bands],
        ("stack_nulls", "alley"),
        labels=("Nulls at", "Alley on the floor"),
        first="Third octave",
        summary="The same subs as a stack at each end of the line",
    )
    if any(field.key.startswith("sound.pattern.") for field in section.fields):
        yield Paragraph(
            [
                "Drawn over the plan: ",
                Link(
                    "the line, the line without delays, and two stacks", "sound-coverage", "pattern"
                ),
                ".",
            ]
        )
    yield from (Caution(text) for text in section.cautions)
    yield workings(
        "How the coverage of the subs was found",
        [figure for item in bands for figure in item.figures],
    )
