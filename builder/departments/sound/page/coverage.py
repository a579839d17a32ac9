"""What the house system covers: areas in numbers, maps, and how far to trust them."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.arranged import stands_in, usual_name, usual_pack, usual_part
from builder.departments.sound.drawing.areas import (
    band_pictures,
    fill_pictures,
    pattern_pictures,
    pictures,
)
from builder.departments.sound.drawing.plan import subs_picture
from builder.document import Block, Caution, Folded, Heading, Link, Paragraph, Row, Table
from builder.layout import figures_block, item_table, working_blocks, workings
from builder.pack import InConfiguration, Pack, Section

NO_SOURCE = "no source found"
LEFT_OUT = (
    (
        "Reflections, as single echoes",
        (
            "an echo as loud as the direct sound: +3 dB over a band, +6 dB to a full null at one"
            " frequency"
        ),
        "Kinsler et al. 2000, ch. 5, from memory",
    ),
    (
        "Reflections, as reverberation",
        (
            "+3 dB where it is as loud as the direct sound, more behind; farther rows then lose"
            " less than shown"
        ),
        "Kinsler et al. 2000, ch. 5, from memory",
    ),
    (
        "How well the loss to the air is known",
        "±10 % of that loss",
        "ISO 9613-1:1993, clause 7, from memory",
    ),
    (
        "Wind and layers of warm air",
        "outdoors ±3 dB up to 1,000 m, for wind from the stage",
        "ISO 9613-2:1996, table 5",
    ),
    ("People and columns in the way", "they shade high octaves most", NO_SOURCE),
    (
        "A balcony in the way",
        "told for each area: who has no straight line to a hang, and what the edge takes at 4 kHz",
        "ISO 9613-2:1996, 7.4",
    ),
    (
        "Phase between different models",
        "two alike: +6 dB to a full null; on average +3 dB",
        "Kinsler et al. 2000, ch. 5, from memory",
    ),
    ("Differences from box to box, and from the maker's coverage", "ask the maker", NO_SOURCE),
    ("Equalisation and limiting", "as the house sets them", NO_SOURCE),
)
AREA_KEYS = (
    "mean",
    "spread",
    "within_3",
    "within_6",
    "bare_within_3",
    "fills_add",
    "sees",
    "edge_takes",
)

BY_AREA = "A-weighted programme relative to the mix position, by area"


def coverage_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """
    What the system covers: the areas in numbers, the maps, octave by octave, and how it was
    computed.
    """
    told = deck_words(pack, section.elsewhere)
    section, pack = usual_part(section, pack), usual_pack(pack)
    if not section.fields:
        yield from blocks_without_maps(section)
        return
    yield Paragraph(
        "Levels at ear height relative to the mix position, with pink noise on all drive lines. 0"
        " dB is what the engineer hears."
    )
    if told:
        yield Paragraph(told)
    yield from (Caution(text) for text in section.cautions)
    areas = section.of_kind("area")
    yield Heading(2, "By area", "areas")
    yield item_table(areas, AREA_KEYS, first="Area", summary=BY_AREA)
    yield from map_blocks(section, pack)
    yield from pattern_blocks(section, pack)
    yield workings(
        "How the maps were computed", [figure for area in areas[:1] for figure in area.figures[:1]]
    )
    yield from trust_blocks(section)


def blocks_without_maps(section: Section) -> Iterator[Block]:
    """What is told of coverage where nothing is there that a map could be made of."""
    yield Paragraph(
        [
            "There are no maps. ",
            Link("The house system", "sound"),
            " says what is described; the findings say what a map needs.",
        ]
    )
    if areas := section.of_kind("area"):
        yield Heading(2, "By area", "areas")
        yield item_table(areas, ("mean",), first="Area", summary="The areas where people listen")


def map_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The maps: of the programme, with and without fills, and octave by octave."""
    yield Heading(2, "Maps", "maps")
    yield from pictures(section, pack)
    if compared := list(fill_pictures(section, pack)):
        yield Heading(2, "With and without fills", "with-fills")
        yield from compared
    yield Heading(2, "Octave by octave", "octaves")
    yield from band_pictures(section, pack)


def pattern_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """How the subs spread over the plan, and how that was computed; nothing without patterns."""
    summed = [each.working for each in section.fields if each.key.startswith("sound.pattern.")]
    if not summed:
        return
    yield Heading(2, "Subs over the plan", "pattern")
    yield from pattern_pictures(section, pack)
    yield Folded(
        "How the patterns were computed",
        [block for working in summed for block in working_blocks(working)],
    )


def coverage_there(section: Section, pack: Pack, told: str, key: str) -> Iterator[Block]:
    """
    What the system covers in another configuration: the areas in numbers, and the maps, as files of
    their own names that begin with ``key``.
    """
    yield Paragraph(f"The maps for {told}: with the loudspeakers and areas that are there then.")
    yield from (Caution(text) for text in section.cautions)
    if not section.fields:
        yield Paragraph("There are no maps: no area or no loudspeaker is there then.")
        return
    yield Heading(2, "By area", "areas")
    summary = f"{BY_AREA}, {told}"
    table = item_table(section.of_kind("area"), AREA_KEYS, first="Area", summary=summary)
    usual = usual_name(pack)
    rows = [
        replace(row, anchor="") if stands_in(area, usual) else row
        for row, area in zip(table.rows, section.of_kind("area"), strict=True)
    ]
    yield replace(table, rows=rows)
    yield Heading(2, "Maps", "maps")
    subs = subs_picture(section)
    for picture in (
        *pictures(section, pack),
        *band_pictures(section, pack),
        *([subs] if subs else []),
        *pattern_pictures(section, pack),
    ):
        yield replace(picture, name=f"{key}-{picture.name}", caption=f"{told}. {picture.caption}")
    yield Paragraph([Link("How far to trust the maps", "sound-coverage", "trust")])


def trust_blocks(section: Section) -> Iterator[Block]:
    """
    How far the maps can be trusted: the measured error of the sum, and what the model does not
    contain.
    """
    yield Heading(2, "How far to trust the maps", "trust")
    if check := section.item("check"):
        yield Paragraph(
            "The error of the arithmetic, measured on this system at some of its listeners when the"
            " pack was made:"
        )
        yield figures_block(check.figures)
    yield Paragraph(
        "What the model leaves out is larger. Where a published source tells how much, it stands"
        " here; where none was found, that is said."
    )
    rows = [Row([[what], [size], [source]]) for what, size, source in LEFT_OUT]
    yield Table(
        ("Left out", "How much", "Source"),
        rows,
        summary="What the maps leave out, and how much that can be",
    )
    if check:
        yield workings("How the error was measured", check.figures)


def deck_words(pack: Pack, elsewhere: Sequence[InConfiguration]) -> str:
    """Which deck the maps are for, and which they are not for."""
    stage = pack.section("stage")
    decks = [outline.name for outline in stage.outlines if outline.kind == "deck"] if stage else []
    words = (
        f"The maps are for the system as it usually stands, with the deck {decks[0]}."
        if decks
        else ""
    )
    others = " or ".join(decks[1:])
    if not others or any(each.fields for each in elsewhere):
        return words
    return (
        f"{words} The house does not say what moves for {others}, so there is no map for it: subs,"
        " fills and floor may differ there."
    )
