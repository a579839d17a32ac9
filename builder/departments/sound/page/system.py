"""The house system: who may change it, hangs, fills, models."""

from collections.abc import Iterator, Sequence

from builder.arranged import usual_pack, usual_part
from builder.departments.sound.drawing.plan import hangs_from_above
from builder.departments.sound.drawing.section import section_picture
from builder.departments.sound.page.mix import mix_blocks
from builder.departments.sound.page.parts import Shown, again, noted, tables
from builder.departments.sound.page.subs import subs_blocks
from builder.document import Block, Caution, Folded, Heading, Paragraph
from builder.layout import checked_line, facts_block, item_table, workings
from builder.pack import Item, Pack, Section

HANG_KEYS = ("model", "boxes", "weight", "centre_depth", "top", "bottom", "carried_by")
AIM_KEYS = (
    "at.across",
    "at.depth",
    "turned.by",
    "turned.to",
    "first_aim",
    "last_aim",
    "down",
    "last_down",
)
AIM_LABELS = (
    "Across",
    "Depth",
    "Turned",
    "To",
    "First box meets",
    "Last box meets",
    "First looks down",
    "Last looks down",
)
PAN_KEYS = ("judged", "centre_ray", "edge")
SET_KEYS = (
    "splay",
    "pulled_back",
    "own_drive",
    "turned_down",
    "delay",
    "adjustable",
    "prediction_file",
)
BOX_COLUMNS = {
    "delay": "Delay",
    "meets": "Hangs are as loud",
    "at.across": "Across",
    "at.depth": "Depth",
    "at.height": "Height",
    "turned.by": "Turned",
    "turned.to": "To",
    "down": "Looks down",
}
DRIFT_KEYS = ("drift_5", "drift_15", "drift_25", "drift_35")
BOXES_KEYS = (
    "use",
    "count",
    "working",
    "a_side",
    "stand",
    "make",
    "apart",
    "splay",
    "driven",
    "kept",
)
AMPLIFIER_KEYS = ("count", "channels", "drives", "power", "kept")
DRIVE: Shown = ("drive", "Drive lines", "Label", ("feeds", "signals", "connector", "at", "nominal"))


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
    yield from subs_blocks(section, pack)
    yield from fill_blocks(section)
    yield from tables(
        section,
        (
            ("model", "Loudspeaker models", "Model", MODEL_KEYS),
            ("boxes", "Loudspeakers as stock", "What", BOXES_KEYS),
            ("amplifier", "Amplifiers", "Model", AMPLIFIER_KEYS),
        ),
    )
    if coverage := section.of_kind("coverage"):
        yield Folded(
            "Makers' coverage by octave",
            [item_table(coverage, ("horizontal", "vertical"), first="Model and octave")],
        )
    yield from noted(section, "room", "The room", ())


MODEL_KEYS = (
    "kind",
    "level",
    "level_crest",
    "level_means",
    "lowest",
    "highest",
    "width",
    "height",
    "depth",
    "weight",
    "drivers",
)


def hang_blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """Hangs: the table, where they look, from the side."""
    hangs = section.of_kind("hang")
    if not hangs:
        return
    yield Heading(2, "Hangs", "hangs")
    yield item_table(
        hangs,
        HANG_KEYS,
        first="Hang",
        summary="Hangs: boxes, heights, angles, weights",
        elsewhere=(*AIM_KEYS, *SET_KEYS),
    )
    if weights := [figure for hang in hangs if (figure := hang.figure("weight"))]:
        yield from (Caution(text) for text in dict.fromkeys(figure.caution for figure in weights))
    yield from aim_blocks(hangs, usual_part(section, pack), usual_pack(pack))
    yield item_table(
        [again(hang, "set") for hang in hangs],
        SET_KEYS,
        first="Hang",
        summary="How each hang is set, and what may be changed",
        elsewhere=None,
    )
    yield workings(
        "How weights and aims were found", [figure for hang in hangs for figure in hang.figures]
    )


def aim_blocks(hangs: Sequence[Item], there: Section, around: Pack) -> Iterator[Block]:
    """Where hangs look, from the side and on the plan, as they are usually there."""
    if drawn := section_picture(there, around):
        yield drawn
    yield item_table(
        [again(hang) for hang in hangs],
        AIM_KEYS,
        labels=AIM_LABELS,
        first="Hang",
        summary="Where each hang is, and where it looks",
        elsewhere=None,
    )
    if drawn := hangs_from_above(there, around):
        yield drawn
        yield item_table(
            [again(hang, "pan") for hang in hangs],
            PAN_KEYS,
            first="Hang",
            summary="Hangs on the plan, by the makers' stated coverage",
            elsewhere=None,
        )


def fill_blocks(section: Section) -> Iterator[Block]:
    """Fills, and the delay of each box."""
    fills = section.of_kind("fill")
    if not fills:
        return
    yield Heading(2, "Fills", "fills")
    yield item_table(
        fills,
        ("kind", "model", "own_drive", "follows", "aligned_at", "after", "turned_down"),
        first="Fill",
        summary="Fills",
    )
    boxes = section.of_kind("fillbox")
    yield item_table(
        boxes,
        tuple(BOX_COLUMNS),
        labels=tuple(BOX_COLUMNS.values()),
        first="Box, from stage right",
        summary="Place and delay of each fill box",
    )
    if drifting := section.of_kind("drift"):
        yield Paragraph(
            "When the air is colder or warmer than the house's usual: how much later (+) or earlier"
            " (−) the hang comes than set."
        )
        yield item_table(
            drifting,
            DRIFT_KEYS,
            first="Box, from stage right",
            summary="Drift of each delay with the air",
        )
    yield workings(
        "How the delays were found",
        [figure for item in (*boxes, *section.of_kind("drift")) for figure in item.figures],
    )
