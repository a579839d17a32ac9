"""Monitor position, desks, lines on stage, radio and loose stock."""

from collections.abc import Iterator

from builder.departments.sound.page.parts import Shown, noted, tables
from builder.document import Block, Entry, Facts
from builder.layout import checked_line
from builder.pack import Section

POSITIONS: tuple[Shown, ...] = (
    (
        "console",
        "Desks",
        "Desk",
        (
            "place",
            "inputs",
            "mono_mixes",
            "matrices",
            "outputs",
            "stage_box",
            "sample_rate",
            "can_move",
        ),
    ),
    (
        "monitor",
        "Wedges, side fills, drum fills",
        "Model",
        ("kind", "count", "working", "mixes", "size", "kept"),
    ),
    ("feed", "Feeds for others", "For", ("count", "level", "what", "place")),
    ("split", "Split", "Split", ("kind", "ways", "legs", "connector", "place", "ground_lift")),
    (
        "dropbox",
        "Drop boxes",
        "Box",
        ("place", "ways", "dead", "first_channel", "returns", "length"),
    ),
    ("tail", "Tails", "What", ("count", "ways", "length", "ends", "kept")),
)
LOOSE: tuple[Shown, ...] = (
    (
        "radio",
        "Radio systems",
        "System",
        (
            "kind",
            "channels",
            "working",
            "on",
            "tunes.low",
            "tunes.high",
            "used",
            "can_move",
            "kept",
        ),
    ),
    (
        "hearing-help",
        "For people who hear less",
        "What",
        ("kind", "receivers", "handed_out_at"),
    ),
    (
        "stock",
        "Microphones, direct boxes, stands",
        "What",
        ("kind", "use", "count", "working", "kept"),
    ),
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
