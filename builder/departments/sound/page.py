"""Sound's pages. They read the pack and compute nothing."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.departments.sound.drawing import (
    band_pictures,
    fill_pictures,
    hangs_from_above,
    pattern_pictures,
    pictures,
    section_picture,
    subs_picture,
)
from builder.document import Block, Caution, Entry, Facts, Folded, Heading, Link, Page, Paragraph, Row, Table
from builder.layout import checked_line, facts_block, figures_block, item_table, shown_fact, shown_figure, working_blocks, workings
from builder.pack import Item, Pack, Section

Shown = tuple[str, str, str, tuple[str, ...]]

HANG_KEYS = ("model", "boxes", "weight", "centre_depth", "top", "bottom", "carried_by")
AIM_KEYS = ("at.across", "at.depth", "turned.by", "turned.to", "first_aim", "last_aim", "down", "last_down")
AIM_LABELS = ("Across", "Depth", "Turned", "To", "First box meets", "Last box meets", "First looks down", "Last looks down")
PAN_KEYS = ("judged", "centre_ray", "edge")
SET_KEYS = ("splay", "pulled_back", "own_drive", "turned_down", "delay", "adjustable", "prediction_file")
BAND_KEYS = ("covers", "straight", "costs", "floor", "floor_straight")
BAND_LABELS = ("Covers", "No delays", "Costs straight ahead", "On the floor", "No delays, floor")
PAIR_KEYS = ("across", "fire_front", "fire_rear", "gradient_front", "gradient_rear")
PAIR_LABELS = ("Across", "End-fire: front", "Rear", "Gradient: front", "Rear, inverted")
WAY_KEYS = ("end_fire_mix", "end_fire_stage", "gradient_mix", "gradient_stage")
WAY_LABELS = ("End-fire: mix position", "Stage", "Gradient: mix position", "Stage")
DRIFT_KEYS = ("drift_5", "drift_15", "drift_25", "drift_35")
DOSE_KEYS = ("niosh", "niosh_two_hours", "osha", "osha_two_hours")
DOSE_LABELS = ("Day's dose full after, first", "2 h fill, first", "Full after, second", "2 h fill, second")
NEIGHBOUR_LABELS = ("Across", "Depth", "Above ground", "At the mix position", "Level there", "Limit")
NO_SOURCE = "no source found"
LEFT_OUT = (
    (
        "Reflections, as single echoes",
        "an echo as loud as the direct sound: +3 dB over a band, +6 dB to a full null at one frequency",
        "Kinsler et al. 2000, ch. 5, from memory",
    ),
    (
        "Reflections, as reverberation",
        "+3 dB where it is as loud as the direct sound, more behind; farther rows then lose less than shown",
        "Kinsler et al. 2000, ch. 5, from memory",
    ),
    ("How well the loss to the air is known", "±10 % of that loss", "ISO 9613-1:1993, clause 7, from memory"),
    ("Wind and layers of warm air", "outdoors ±3 dB up to 1,000 m, for wind from the stage", "ISO 9613-2:1996, table 5"),
    ("People and columns in the way", "they shade high octaves most", NO_SOURCE),
    ("A balcony in the way", "told for each area: who has no straight line to a hang, and what the edge takes at 4 kHz", "ISO 9613-2:1996, 7.4"),
    ("Phase between different models", "two alike: +6 dB to a full null; on average +3 dB", "Kinsler et al. 2000, ch. 5, from memory"),
    ("Differences from box to box, and from the maker's coverage", "ask the maker", NO_SOURCE),
    ("Equalisation and limiting", "as the house sets them", NO_SOURCE),
)
AREA_KEYS = ("mean", "spread", "within_3", "within_6", "bare_within_3", "fills_add", "sees", "edge_takes")
AMPLIFIER_KEYS = ("count", "channels", "drives", "power", "kept")
DRIVE: Shown = ("drive", "Drive lines", "Label", ("feeds", "signals", "connector", "at", "nominal"))
POSITIONS: tuple[Shown, ...] = (
    ("console", "Desks", "Desk", ("place", "inputs", "mono_mixes", "matrices", "outputs", "stage_box", "sample_rate", "can_move")),
    ("monitor", "Wedges, side fills, drum fills", "Model", ("kind", "count", "working", "mixes", "size", "kept")),
    ("split", "Split", "Split", ("kind", "ways", "legs", "connector", "place", "ground_lift")),
    ("dropbox", "Drop boxes", "Box", ("place", "ways", "dead", "first_channel", "returns", "length")),
    ("tail", "Tails", "What", ("count", "ways", "length", "ends", "kept")),
)
LOOSE: tuple[Shown, ...] = (
    ("radio", "Radio systems", "System", ("kind", "channels", "working", "on", "tunes.low", "tunes.high", "used", "can_move", "kept")),
    ("stock", "Microphones, direct boxes, stands", "What", ("kind", "use", "count", "working", "kept")),
)


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """Three pages: the house system, what it covers, and positions with stock."""
    group = "Sound"
    return (
        Page(
            "sound", "House system", tuple(system_blocks(section, pack)), "Who may change it, drive lines, mix position, hangs, subs, fills.", group
        ),
        Page(
            "sound-coverage",
            "Coverage",
            tuple(coverage_blocks(section, pack)),
            "Where the house system reaches, relative to the mix position.",
            group,
        ),
        Page("sound-stage", "Stage sound and stock", tuple(stage_blocks(section)), "Monitors, desks, split, drop boxes, radio, microphones.", group),
    )


def system_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The house system: what a touring engineer must know first, then what it is made of."""
    yield checked_line(section)
    yield from noted(section, "policy", "May you use it", ())
    yield from noted(section, "processor", "Processor", ())
    yield from tables(section, (DRIVE,))
    yield from mix_blocks(section)
    if whole := section.item("whole"):
        yield from (block for block in (facts_block(whole),) if whole.facts)
    yield from hang_blocks(section, pack)
    yield from subs_blocks(section)
    yield from fill_blocks(section)
    yield from tables(
        section,
        (
            ("model", "Loudspeaker models", "Model", MODEL_KEYS),
            ("amplifier", "Amplifiers", "Model", AMPLIFIER_KEYS),
        ),
    )
    if coverage := section.of_kind("coverage"):
        yield Folded("Makers' coverage by octave", [item_table(coverage, ("horizontal", "vertical"), first="Model and octave")])
    yield from noted(section, "room", "The room", ())


MODEL_KEYS = ("kind", "level", "level_crest", "level_means", "lowest", "highest", "width", "height", "depth", "weight", "drivers")


def noted(section: Section, kind: str, title: str, only: Sequence[str]) -> Iterator[Block]:
    """All facts of the one item of a kind, with its note."""
    item = section.item(kind)
    if item is None:
        return
    yield Heading(2, title, kind)
    if kind == "processor":
        yield Paragraph(item.name)
    yield facts_block(item, only=only)
    if item.note:
        yield Paragraph(item.note)


def tables(section: Section, shown: Sequence[Shown]) -> Iterator[Block]:
    """Tables, each under its heading where the house has something to say."""
    for kind, title, first, columns in shown:
        if found := section.of_kind(kind):
            yield Heading(2, title, f"{kind}s")
            yield item_table(found, columns, first=first, summary=title, sortable=len(found) > 6)


def mix_blocks(section: Section) -> Iterator[Block]:
    """The mix position, with the levels claimed there."""
    mix = section.item("mix")
    if mix is None:
        return
    yield Heading(2, "Mix position", "mix")
    levels = [figure for figure in mix.figures if "_level" in figure.key]
    yield figures_block([figure for figure in mix.figures if figure not in levels])
    yield facts_block(mix)
    if mix.note:
        yield Paragraph(mix.note)
    yield Heading(3, "Levels", "levels")
    if claims := section.of_kind("claim"):
        yield item_table(claims, ("metric", "over", "at", "signal"), first="Claimed by the house", summary="Levels that the house says it reaches")
    if levels:
        yield figures_block(levels)
    yield from (Caution(text) for text in section.cautions)
    yield workings("How the distances and the level were found", mix.figures)
    yield from limit_blocks(section)


def limit_blocks(section: Section) -> Iterator[Block]:
    """What is left of a limit after a stretch above it, and what the crew's ears get."""
    budgets, doses = section.of_kind("budget"), section.of_kind("dose")
    if budgets:
        yield Heading(3, "What is left of a limit", "budget")
        yield Paragraph("After a stretch above the limit, the steady level that the rest of its time may hold. Quiet between songs counts too.")
        labels = ("1 dB above", "3 dB above")
        yield item_table(budgets, ("plus_1", "plus_3"), labels=labels, first="Limit, and when", summary="Level left for the rest of the time")
    if doses:
        yield Heading(3, "Ears of the crew at the mix position", "dose")
        yield Paragraph(
            "By two published criteria, without hearing protection. The first is 85 dB(A) over 8 h and 3 dB, the second 90 dB(A) and 5 dB."
        )
        yield item_table(doses, DOSE_KEYS, labels=DOSE_LABELS, first="Level", summary="Noise dose of the crew at the mix position")
    neighbours = section.of_kind("neighbour")
    if neighbours:
        yield Heading(3, "Outside", "neighbours")
        columns = ("at.across", "at.depth", "above_ground", "mix_level", "level", "limit")
        yield item_table(neighbours, columns, labels=NEIGHBOUR_LABELS, first="Place", summary="Level at places outside, by ISO 9613-2")
    if budgets or doses or neighbours:
        yield from (Caution(text) for text in section.cautions)
        yield workings(
            "How budgets, doses and levels outside were found", [figure for item in (*budgets, *doses, *neighbours) for figure in item.figures]
        )


def hang_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """Hangs: the table, where they look, from the side."""
    hangs = section.of_kind("hang")
    if not hangs:
        return
    yield Heading(2, "Hangs", "hangs")
    yield item_table(hangs, HANG_KEYS, first="Hang", summary="Hangs: boxes, heights, angles, weights")
    if weights := [figure for hang in hangs if (figure := hang.figure("weight"))]:
        yield from (Caution(text) for text in dict.fromkeys(figure.caution for figure in weights))
    if drawn := section_picture(section, pack):
        yield drawn
    yield item_table([again(hang) for hang in hangs], AIM_KEYS, labels=AIM_LABELS, first="Hang", summary="Where each hang is, and where it looks")
    if drawn := hangs_from_above(section, pack):
        yield drawn
        yield item_table([again(hang, "pan") for hang in hangs], PAN_KEYS, first="Hang", summary="Hangs on the plan, by the makers' stated coverage")
    yield item_table([again(hang, "set") for hang in hangs], SET_KEYS, first="Hang", summary="How each hang is set, and what may be changed")
    yield workings("How weights and aims were found", [figure for hang in hangs for figure in hang.figures])


def again(item: Item, part: str = "aim") -> Item:
    """The same item for a second table: its condition and note stand in the first, and so does what links point at."""
    key = f"{item.key}.{part}"
    facts = tuple(replace(fact, key=key + fact.key.removeprefix(item.key)) for fact in item.facts)
    figures = tuple(replace(figure, key=key + figure.key.removeprefix(item.key)) for figure in item.figures)
    return replace(item, key=key, facts=facts, figures=figures, note="", condition="")


def subs_blocks(section: Section) -> Iterator[Block]:
    """The sub line, with the delay table an engineer types in."""
    lines = section.of_kind("subs")
    if not lines:
        return
    yield Heading(2, "Subs", "subs")
    keys = ("model", "playing", "spacing", "at.depth", "at.height", "sits", "arc", "arc_radius", "fed", "turned_down")
    labels = ("Model", "Play", "Spacing", "Depth", "Height", "Sits", "Arc", "Arc radius", "Fed", "Turned down")
    yield item_table(lines, keys, labels=labels, first="Line", summary="Sub lines")
    for line in lines:
        yield figures_block([figure for figure in line.figures if not figure.key.endswith("playing")])
    yield from (Caution(text) for text in section.cautions)
    subs = section.of_kind("sub")
    if drawn := subs_picture(section):
        yield drawn
    yield item_table(subs, ("across", "delay"), first="Sub, from stage right", summary="Delay of each sub")
    yield workings("How the delays were found", [figure for item in (*lines, *subs) for figure in item.figures])
    yield from sub_band_blocks(section)
    yield from way_blocks(section)


def way_blocks(section: Section) -> Iterator[Block]:
    """Other ways to set the same subs: what to type in, and what changes."""
    ways, pairs, bands = section.of_kind("subways"), section.of_kind("subpair"), section.of_kind("subwayband")
    if not ways:
        return
    yield Heading(3, "Other ways to set the same subs", "sub-ways")
    yield Paragraph(
        "In pairs, one sub behind the other, both looking at the audience. End-fire: the front sub waits for the sound of the rear one. "
        "Gradient: the rear sub is inverted and waits. Ask the house first: it takes floor behind the line, cables and time."
    )
    for way in ways:
        yield figures_block(way.figures)
    yield item_table(pairs, PAIR_KEYS, labels=PAIR_LABELS, first="Pair, from stage right", summary="Delays of the pairs")
    if bands:
        yield Paragraph("Against the line as set, at the same drive: the mix position, and the stage 6 m upstage of the line at ears on the deck.")
        yield item_table(bands, WAY_KEYS, labels=WAY_LABELS, first="Third octave", summary="Pairs against the line as set")
        yield Paragraph(["Drawn over the plan: ", Link("both ways at each third octave", "sound-coverage", "pattern"), "."])
        yield from (Caution(text) for text in section.cautions)
    yield Paragraph(
        "The model takes equal subs that radiate alike all round, in the open. In front it holds as well as for the line. Behind, boxes shade each "
        "other and walls send sound back: expect far less than is shown. No source was found for how much."
    )
    yield workings("How the pairs were found", [figure for item in (*ways, *pairs, *bands) for figure in item.figures])


def sub_band_blocks(section: Section) -> Iterator[Block]:
    """What the line covers and costs by frequency, and what two stacks would do."""
    bands = section.of_kind("subband")
    if not bands:
        return
    yield Heading(3, "What the line covers", "sub-coverage")
    yield Paragraph(
        "Far away the line covers an angle, which is not the angle of its arc. On the floor, at the mix position's depth: the width around "
        "the line's middle that stays within 6 dB of it, and how much of the audience's width that is."
    )
    yield item_table(bands, BAND_KEYS, labels=BAND_LABELS, first="Third octave", summary="Coverage of the sub line by frequency")
    yield item_table(
        [again(item, "stacks") for item in bands],
        ("stack_nulls", "alley"),
        labels=("Nulls at", "Alley on the floor"),
        first="Third octave",
        summary="The same subs as a stack at each end of the line",
    )
    if any(field.key.startswith("sound.pattern.") for field in section.fields):
        yield Paragraph(["Drawn over the plan: ", Link("the line, the line without delays, and two stacks", "sound-coverage", "pattern"), "."])
    yield from (Caution(text) for text in section.cautions)
    yield workings("How the coverage of the subs was found", [figure for item in bands for figure in item.figures])


def fill_blocks(section: Section) -> Iterator[Block]:
    """Fills, and the delay of each box."""
    fills = section.of_kind("fill")
    if not fills:
        return
    yield Heading(2, "Fills", "fills")
    yield item_table(fills, ("kind", "model", "own_drive", "follows", "aligned_at", "after", "turned_down"), first="Fill", summary="Fills")
    boxes = section.of_kind("fillbox")
    columns = ("delay", "meets", "at.across", "at.depth", "at.height", "turned.by", "turned.to", "down")
    labels = ("Delay", "Hangs are as loud", "Across", "Depth", "Height", "Turned", "To", "Looks down")
    yield item_table(boxes, columns, labels=labels, first="Box, from stage right", summary="Place and delay of each fill box")
    if drifting := section.of_kind("drift"):
        yield Paragraph("When the air is colder or warmer than the house's usual: how much later (+) or earlier (−) the hang comes than set.")
        yield item_table(drifting, DRIFT_KEYS, first="Box, from stage right", summary="Drift of each delay with the air")
    yield workings("How the delays were found", [figure for item in (*boxes, *section.of_kind("drift")) for figure in item.figures])


def coverage_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """What the system covers: the areas in numbers, the maps, octave by octave, and how it was computed."""
    areas = section.of_kind("area")
    if not section.fields:
        yield Paragraph(["There are no maps. ", Link("The house system", "sound"), " says what is described; the findings say what a map needs."])
        return
    yield Paragraph("Levels at ear height relative to the mix position, with pink noise on all drive lines. 0 dB is what the engineer hears.")
    if words := deck_words(pack):
        yield Paragraph(words)
    yield from (Caution(text) for text in section.cautions)
    yield Heading(2, "By area", "areas")
    yield item_table(areas, AREA_KEYS, first="Area", summary="A-weighted programme relative to the mix position, by area")
    yield Heading(2, "Maps", "maps")
    yield from pictures(section, pack)
    yield Heading(2, "With and without fills", "with-fills")
    yield from fill_pictures(section, pack)
    yield Heading(2, "Octave by octave", "octaves")
    yield from band_pictures(section, pack)
    if any(field.key.startswith("sound.pattern.") for field in section.fields):
        yield Heading(2, "Subs over the plan", "pattern")
        yield from pattern_pictures(section, pack)
        told = [field.working for field in section.fields if field.key.startswith("sound.pattern.")]
        yield Folded("How the patterns were computed", [block for working in told for block in working_blocks(working)])
    yield workings("How the maps were computed", [figure for area in areas[:1] for figure in area.figures[:1]])
    yield from trust_blocks(section)


def trust_blocks(section: Section) -> Iterator[Block]:
    """How far the maps can be trusted: the measured error of the sum, and what the model does not contain."""
    yield Heading(2, "How far to trust the maps", "trust")
    if check := section.item("check"):
        yield Paragraph("The error of the arithmetic, measured on this system at some of its listeners when the pack was made:")
        yield figures_block(check.figures)
    yield Paragraph(
        "What the model leaves out is larger. Where a published source tells how much, it stands here; where none was found, that is said."
    )
    rows = [Row([[what], [size], [source]]) for what, size, source in LEFT_OUT]
    yield Table(("Left out", "How much", "Source"), rows, summary="What the maps leave out, and how much that can be")
    if check:
        yield workings("How the error was measured", check.figures)


def deck_words(pack: Pack) -> str:
    """Which deck the maps are for, and which they are not for."""
    stage = pack.section("stage")
    decks = [outline.name for outline in stage.outlines if outline.kind == "deck"] if stage else []
    words = f"The maps are for the system as it usually stands, with the deck {decks[0]}." if decks else ""
    others = " or ".join(decks[1:])
    return (
        f"{words} What moves for {others} cannot be described yet, so there is no map for it: subs, fills and floor there differ."
        if others
        else words
    )


def stage_blocks(section: Section) -> Iterator[Block]:
    """Monitor position, desks, lines on stage, radio and loose stock."""
    yield checked_line(section)
    yield from noted(section, "monitor-position", "Monitor position", ())
    yield from tables(section, POSITIONS)
    yield from noted(section, "spectrum", "Radio: whom to tell", ())
    if television := section.of_kind("television"):
        yield Facts([Entry("Taken by television", ", ".join(item.name for item in television))])
    yield from tables(section, LOOSE)


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """The house system, and the mix position's size and distance, for the home page."""
    return tuple(answers(section))


def answers(section: Section) -> Iterator[Entry]:
    """The home page's answers."""
    if policy := section.item("policy"):
        made = "; ".join(f"{hang.name}: {hang.text('boxes')} {hang.text('model')}" for hang in section.of_kind("hang"))
        yield Entry("House sound system", shown_fact(policy.fact("use")), small=made, anchor="sound#policy")
    if mix := section.item("mix"):
        size = [*shown_fact(mix.fact("width")), " × ", *shown_fact(mix.fact("depth"))]
        distance = mix.figure("distance")
        small = ["from the reference line: ", *shown_figure(distance)] if distance else ""
        yield Entry("Mix position", size, small=small, anchor="sound#mix")
