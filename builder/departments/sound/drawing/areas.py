"""
Coverage maps by area, band by band, with and without fills, and the sub line over the plan.

Reads the pack alone.
"""

from collections.abc import Iterator, Sequence

from builder.departments.sound.drawing.maps import Panel, Sheet, map_svg
from builder.departments.sound.drawing.places import cut, mix_place, outlines, spots, storeys
from builder.document import Picture
from builder.pack import Field, Item, Pack, Section

PROGRAMME, BARE = "A", "A, without fills"
PROGRAMME_STEPS_DB = tuple(range(-10, 7, 2))
HIDDEN = (
    " Dots: a balcony hides every hang there, which the levels do not contain; expect less at high"
    " octaves."
)
SILENT = -600
"""A band that nothing plays has no map. In tenths of a decibel."""


def pictures(section: Section, pack: Pack) -> Iterator[Picture]:
    """The maps of the A-weighted programme, one for each storey of the audience."""
    for number, storey in enumerate(storeys(section), 1):
        names = " and ".join(field.name for field in storey)
        shown = Sheet(
            (Panel(names, PROGRAMME, storey),),
            outlines(section, pack, storey),
            spots(section, pack, storey),
            steps_db=PROGRAMME_STEPS_DB,
        )
        told = (
            f"{names}: A-weighted programme at ear height, all loudspeakers"
            f" on.{HIDDEN if any(field.hidden for field in storey) else ''}"
        )
        yield picture(f"coverage-{number}", shown, in_words(section, storey), told)


def fill_pictures(section: Section, pack: Pack) -> Iterator[Picture]:
    """The same with and without fills, side by side, where fills change anything."""
    for number, storey in enumerate(storeys(section), 1):
        if not any(row(field, PROGRAMME) != row(field, BARE) for field in storey):
            continue
        panels = (Panel("Fills on", PROGRAMME, storey), Panel("Fills off", BARE, storey))
        names = " and ".join(field.name for field in storey)
        shown = Sheet(
            panels,
            outlines(section, pack, storey),
            spots(section, pack, storey),
            columns=2,
            steps_db=PROGRAMME_STEPS_DB,
        )
        yield picture(
            f"fills-{number}",
            shown,
            fills_in_words(section, storey),
            f"{names}: with the fills on, and with hangs and subs alone.",
        )


def band_pictures(section: Section, pack: Pack) -> Iterator[Picture]:
    """Small maps of each octave, one drawing for each storey."""
    for number, storey in enumerate(storeys(section), 1):
        bands = [
            band
            for band in storey[0].bands
            if band.endswith("Hz") and any(max(row(field, band)) > SILENT for field in storey)
        ]
        panels = tuple(Panel(band, band, storey) for band in bands)
        names = " and ".join(field.name for field in storey)
        areas = tuple(
            outline for outline in outlines(section, pack, storey) if outline.kind != "deck"
        )
        shown = Sheet(panels, areas, spots(section, pack, storey), columns=2)
        words = "; ".join(f"{band}: {spread(storey, band)}" for band in bands)
        yield picture(
            f"bands-{number}",
            shown,
            f"{names}, level by octave relative to the mix position. {words}.",
            f"{names}: octave by octave.",
        )


def picture(name: str, sheet: Sheet, alt: str, caption: str) -> Picture:
    """A sheet of maps as a picture for light and dark pages."""
    light, dark = map_svg(sheet)
    return Picture(f"sound-{name}", light, alt, caption, inline=False, dark=dark)


def pattern_pictures(section: Section, pack: Pack) -> Iterator[Picture]:
    """
    How each sub line spreads: third octaves as it is driven, then without delays and as two stacks.
    """
    stage = pack.section("stage")
    decks = [outline for outline in stage.outlines if outline.kind == "deck"][:1] if stage else []
    mix = mix_place(section, pack)
    areas = [outline for outline in section.outlines if outline.kind == "audience"]
    for number, field in enumerate(
        (field for field in section.fields if field.key.startswith("sound.pattern.")), 1
    ):
        panels = tuple(Panel(band, band, (field,)) for band in field.bands)
        shown = Sheet(
            panels, (*areas, *(cut(deck) for deck in decks)), (mix,) if mix else (), columns=2
        )
        words = "; ".join(f"{band}: {spread([field], band)}" for band in field.bands)
        alt = f"{field.name}, level over the plan relative to the mix position. {words}."
        compared = any(band.endswith("no delays") for band in field.bands)
        told = (
            "as it is driven, then without delays and as two stacks of the same subs"
            if compared
            else "third octave by third octave"
        )
        yield picture(f"pattern-{number}", shown, alt, f"{field.name}: {told}.")


def row(field: Field, band: str) -> tuple[int, ...]:
    """The levels of one band, in tenths."""
    return field.levels[field.bands.index(band)]


def spread(storey: Sequence[Field], band: str) -> str:
    """The quietest and loudest level of a band over a storey."""
    levels = [level for field in storey for level in row(field, band)]
    return f"{min(levels) / 10:+.0f} to {max(levels) / 10:+.0f} dB"


def in_words(section: Section, storey: Sequence[Field]) -> str:
    """What a map shows, in numbers."""
    told = []
    for field in storey:
        item = section.item("area", field.name)
        if item:
            told.append(
                f"{field.name}: mean {item.text('mean')}, {item.text('spread')} for nine tenths of"
                f" it, {item.text('within_3')} within 3 dB{sight_words(item)}"
            )
    return (
        "Map of A-weighted levels relative to the mix position, in steps of 2 dB."
        f" {'. '.join(told)}."
    )


def sight_words(item: Item) -> str:
    """How much of an area has a straight line to a hang, where a balcony hides some of it."""
    return (
        f", {item.text('sees')} with a straight line to a hang"
        if item.number("edge_takes") is not None
        else ""
    )


def fills_in_words(section: Section, storey: Sequence[Field]) -> str:
    """What the fills change, in numbers."""
    told = []
    for field in storey:
        item = section.item("area", field.name)
        if item:
            told.append(
                f"{field.name}: {item.text('within_3')} within 3 dB with fills,"
                f" {item.text('bare_within_3')} without"
            )
    return f"Two maps, fills on and fills off. {'. '.join(told)}."
