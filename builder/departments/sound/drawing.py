"""Sound's drawings: coverage maps by area, band by band, the sub line on the plan, and a section with aim lines. Reads the pack alone."""

from collections.abc import Iterator, Mapping, Sequence
from math import cos, inf, radians, sin

from builder.departments.sound.maps import Panel, Sheet, Spot, map_svg
from builder.document import Picture
from builder.pack import Field, Item, Outline, Pack, Section
from builder.render.contours import within
from builder.render.plan import CHAIN, DASHED, HAIR, HEAVY, PALE, Area, Element, Mark, Note, Plan, Track, plan_svg

PROGRAMME, BARE = "A", "A, without fills"
FAR_FROM_DECK_M = 10.0
"""A balcony further than this from the deck is shown without it, or most of the map would be empty."""
PROGRAMME_STEPS_DB = tuple(range(-10, 7, 2))
LETTERS = 17.0
"""Size of the letters in wide drawings: a phone shows them at a third."""
HIDDEN = " Dots: a balcony hides every hang there, which the levels do not contain; expect less at high octaves."
SILENT = -600
"""A band that nothing plays has no map. In tenths of a decibel."""
SEEN_DECK_M = 4.5
"""How much of the deck the maps show: enough to know where the stage is."""


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
        told = f"{names}: A-weighted programme at ear height, all loudspeakers on.{HIDDEN if any(field.hidden for field in storey) else ''}"
        yield picture(f"coverage-{number}", shown, in_words(section, storey), told)


def fill_pictures(section: Section, pack: Pack) -> Iterator[Picture]:
    """The same with and without fills, side by side, where fills change anything."""
    for number, storey in enumerate(storeys(section), 1):
        if not any(row(field, PROGRAMME) != row(field, BARE) for field in storey):
            continue
        panels = (Panel("Fills on", PROGRAMME, storey), Panel("Fills off", BARE, storey))
        names = " and ".join(field.name for field in storey)
        shown = Sheet(panels, outlines(section, pack, storey), spots(section, pack, storey), columns=2, steps_db=PROGRAMME_STEPS_DB)
        yield picture(f"fills-{number}", shown, fills_in_words(section, storey), f"{names}: with the fills on, and with hangs and subs alone.")


def band_pictures(section: Section, pack: Pack) -> Iterator[Picture]:
    """Small maps of each octave, one drawing for each storey."""
    for number, storey in enumerate(storeys(section), 1):
        bands = [band for band in storey[0].bands if band.endswith("Hz") and any(max(row(field, band)) > SILENT for field in storey)]
        panels = tuple(Panel(band, band, storey) for band in bands)
        names = " and ".join(field.name for field in storey)
        areas = tuple(outline for outline in outlines(section, pack, storey) if outline.kind != "deck")
        shown = Sheet(panels, areas, spots(section, pack, storey), columns=2)
        words = "; ".join(f"{band}: {spread(storey, band)}" for band in bands)
        yield picture(f"bands-{number}", shown, f"{names}, level by octave relative to the mix position. {words}.", f"{names}: octave by octave.")


def picture(name: str, sheet: Sheet, alt: str, caption: str) -> Picture:
    """A sheet of maps as a picture for light and dark pages."""
    light, dark = map_svg(sheet)
    return Picture(f"sound-{name}", light, alt, caption, inline=False, dark=dark)


def area_fields(section: Section) -> tuple[Field, ...]:
    """The maps of the audience areas."""
    return tuple(field for field in section.fields if field.key.startswith("sound.field."))


def pattern_pictures(section: Section, pack: Pack) -> Iterator[Picture]:
    """How each sub line spreads: third octaves as it is driven, then without delays and as two stacks."""
    stage = pack.section("stage")
    decks = [outline for outline in stage.outlines if outline.kind == "deck"][:1] if stage else []
    mix = mix_place(section, pack)
    areas = [outline for outline in section.outlines if outline.kind == "audience"]
    for number, field in enumerate((field for field in section.fields if field.key.startswith("sound.pattern.")), 1):
        panels = tuple(Panel(band, band, (field,)) for band in field.bands)
        shown = Sheet(panels, (*areas, *(cut(deck) for deck in decks)), (mix,) if mix else (), columns=2)
        words = "; ".join(f"{band}: {spread([field], band)}" for band in field.bands)
        alt = f"{field.name}, level over the plan relative to the mix position. {words}."
        compared = any(band.endswith("no delays") for band in field.bands)
        told = "as it is driven, then without delays and as two stacks of the same subs" if compared else "third octave by third octave"
        yield picture(f"pattern-{number}", shown, alt, f"{field.name}: {told}.")


def storeys(section: Section) -> list[tuple[Field, ...]]:
    """Fields that do not lie above each other, together: the floor on one map, a balcony above it on the next."""
    found: list[list[Field]] = []
    outlines = {outline.name: outline for outline in section.outlines}
    for field in area_fields(section):
        free = next((storey for storey in found if not any(overlap(field, other, outlines) for other in storey)), None)
        if free is None:
            found.append([field])
        else:
            free.append(field)
    return [tuple(storey) for storey in found]


def overlap(one: Field, other: Field, outlines: Mapping[str, Outline]) -> bool:
    """True where a place of one field lies within the outline of the other, on the plan."""
    import numpy as np

    pairs = ((one, other), (other, one))
    return any(within(outlines[two.name].corners, np.array(first.points)[:, :2]).any() for first, two in pairs)


def outlines(section: Section, pack: Pack, storey: Sequence[Field]) -> tuple[Outline, ...]:
    """The outlines of a storey's areas, and the deck as it usually stands."""
    names = {field.name for field in storey}
    areas = [outline for outline in section.outlines if outline.name in names]
    stage = pack.section("stage")
    decks = [outline for outline in stage.outlines if outline.kind == "deck"][:1] if stage else []
    nearest_m = max((y for area in areas for _, y in area.corners), default=0.0)
    return (*areas, *(cut(deck) for deck in decks if min(y for _, y in deck.corners) - nearest_m < FAR_FROM_DECK_M))


def cut(deck: Outline) -> Outline:
    """The downstage part of a deck."""
    return Outline(deck.key, deck.kind, deck.name, tuple((x, min(y, SEEN_DECK_M)) for x, y in deck.corners))


def spots(section: Section, pack: Pack, storey: Sequence[Field]) -> tuple[Spot, ...]:
    """The mix position, where it lies within a storey."""
    mix = mix_place(section, pack)
    if mix is None:
        return ()
    near = any(abs(x - mix.across_m) <= field.step_m and abs(y - mix.depth_m) <= field.step_m for field in storey for x, y, _ in field.points)
    return (mix,) if near else ()


def mix_place(section: Section, pack: Pack) -> Spot | None:
    """The place of the mix position, from the stage's part of the pack."""
    mix, stage = section.item("mix"), pack.section("stage")
    place = stage.item("place", mix.name) if mix and stage else None
    across, depth = (place.number("at.across"), place.number("at.depth")) if place else (None, None)
    return Spot(place.name, across, depth) if place and across is not None and depth is not None else None


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
                f"{field.name}: mean {item.text('mean')}, {item.text('spread')} for nine tenths of it, "
                f"{item.text('within_3')} within 3 dB{sight_words(item)}"
            )
    return f"Map of A-weighted levels relative to the mix position, in steps of 2 dB. {'. '.join(told)}."


def sight_words(item: Item) -> str:
    """How much of an area has a straight line to a hang, where a balcony hides some of it."""
    return f", {item.text('sees')} with a straight line to a hang" if item.number("edge_takes") is not None else ""


def fills_in_words(section: Section, storey: Sequence[Field]) -> str:
    """What the fills change, in numbers."""
    told = []
    for field in storey:
        item = section.item("area", field.name)
        if item:
            told.append(f"{field.name}: {item.text('within_3')} within 3 dB with fills, {item.text('bare_within_3')} without")
    return f"Two maps, fills on and fills off. {'. '.join(told)}."


def section_picture(section: Section, pack: Pack) -> Picture | None:
    """The hall from the side: hangs with the aim of their first and last box, ears of each area, deck and mix position."""
    hangs = [hang for hang in section.of_kind("hang") if hang.number("bottom") is not None]
    if not hangs or not area_fields(section):
        return None
    elements = [
        *slopes(section),
        *deck_line(pack),
        *(element for count, hang in enumerate(one_a_side(hangs)) for element in from_the_side(hang, count)),
        *mix_mark(section, pack),
    ]
    says = " ".join(f"{hang.name}: first box looks at {hang.text('first_aim')}, last box at {hang.text('last_aim')}." for hang in hangs)
    plan = Plan("sound-section", "Section through the audience", says, tuple(elements), margin_m=1.2, axes=False)
    return Picture(
        "sound-section",
        plan_svg(plan),
        says,
        "From the side, stage on the left: where the first and the last box of each hang look. Ears are dashed.",
    )


def hangs_from_above(section: Section, pack: Pack) -> Picture | None:
    """Hangs on the plan: centre rays, and the edges of the stated coverage."""
    hangs = [hang for hang in section.of_kind("hang") if hang.number("judged") is not None]
    areas = [outline for outline in section.outlines if outline.kind == "audience"]
    if not hangs or not areas:
        return None
    far_m = min(y for area in areas for _, y in area.corners)
    widest_m = max(abs(x) for area in areas for x, _ in area.corners) + 2.0
    stage, mix = pack.section("stage"), mix_place(section, pack)
    elements: list[Element] = [Area(area.corners, PALE, says=area.name) for area in areas]
    elements += [Area(cut(deck).corners, HEAVY, says=deck.name) for deck in (stage.outlines if stage else ()) if deck.kind == "deck"][:1]
    for hang in hangs:
        elements += rays(hang, far_m, widest_m)
    if mix:
        elements += [Mark((mix.across_m, mix.depth_m), "ring", size=7, says=mix.name)]
        elements.append(Note((mix.across_m, mix.depth_m), mix.name, LETTERS, shift=(0, 26)))
    told = "; ".join(f"{hang.name}: centre ray at {hang.text('centre_ray')}, holds the edge from {hang.text('edge')}" for hang in hangs)
    says = f"Hangs from above. At the mix position's depth, {told}."
    plan = Plan("sound-pan", "Hangs from above", says, tuple(elements), margin_m=1.5)
    return Picture("sound-pan", plan_svg(plan), says, "From above: centre rays (dash and dot) and the edges of the stated coverage (dashed).")


def rays(hang: Item, far_m: float, widest_m: float) -> Iterator[Element]:
    """The centre ray of a hang and the edges of its coverage, as far as the audience reaches."""
    across, depth, coverage = (hang.number(key) or 0.0 for key in ("at.across", "at.depth", "judged"))
    turned = (hang.number("turned.by") or 0.0) * (1 if hang.text("turned.to") == "stage left" else -1)
    for beside, look in ((0.0, CHAIN), (-coverage / 2, DASHED), (coverage / 2, DASHED)):
        angle = radians(turned + beside)
        run_deep = (depth - far_m) / cos(angle) if cos(angle) > 0 else inf
        room_m = widest_m - across if sin(angle) > 0 else widest_m + across
        run_wide = room_m / abs(sin(angle)) if sin(angle) else inf
        run = max(0.0, min(run_deep, run_wide))
        yield Track(((across, depth), (across + run * sin(angle), depth - run * cos(angle))), look, says=f"{hang.name}, {beside:+g} deg")
    yield Mark((across, depth), "triangle", 1.0, 8.0, says=hang.name)
    yield Note((across, depth), hang.name, LETTERS, shift=(0, -14), strong=True)


def one_a_side(hangs: Sequence[Item]) -> list[Item]:
    """Hangs that look alike from the side are drawn once."""
    seen: dict[tuple[float | None, ...], Item] = {}
    for hang in hangs:
        seen.setdefault(tuple(hang.number(key) for key in ("at.depth", "top", "bottom", "down", "last_down")), hang)
    return list(seen.values())


def slopes(section: Section) -> Iterator[Element]:
    """The ears of each area from the side, as its points near the centre line lie."""
    for field in area_fields(section):
        depths = sorted({(y, z) for _, y, z in field.points})
        (near, near_z), (far, far_z) = depths[-1], depths[0]
        half = field.step_m / 2
        tilt = (far_z - near_z) / (far - near) if far != near else 0.0
        ends = ((-(near + half), near_z + tilt * half), (-(far - half), far_z - tilt * half))
        yield Track(ends, DASHED, says=f"Ears of {field.name}")
        yield Note((-(near + far) / 2, (near_z + far_z) / 2), field.name, LETTERS, shift=(0, 20))


def deck_line(pack: Pack) -> Iterator[Element]:
    """The deck from the side."""
    stage = pack.section("stage")
    deck = next((outline for outline in stage.outlines if outline.kind == "deck"), None) if stage else None
    if deck:
        ys = [y for _, y in deck.corners]
        back = -min(max(ys), SEEN_DECK_M)
        yield Track(((back, 0.0), (-min(ys), 0.0)), HEAVY, says=deck.name)
        yield Note((back, 0.0), "deck", LETTERS, side="start", shift=(0, 20))


def from_the_side(hang: Item, count: int) -> Iterator[Element]:
    """One hang with the aim lines of its first and last box. Names of hangs at nearly the same place stand above each other."""
    depth, top, bottom, first, last = (hang.number(key) or 0.0 for key in ("at.depth", "top", "bottom", "down", "last_down"))
    yield Track(((-depth, top), (-depth, bottom)), HEAVY, says=hang.name)
    yield Note((-depth, top), hang.name, LETTERS, side="start", shift=(-20, -8 - 20 * count), strong=True)
    for down, height, key in ((first, top, "first_aim"), (last, bottom, "last_aim")):
        run = hang.number(key) or 12.0
        angle = radians(down)
        yield Track(
            ((-depth, height), (-depth + run, height - run * sin(angle) / cos(angle))), CHAIN, says=f"{key.split('_')[0]} box, {down:g} deg down"
        )
        yield Note((-depth + run * 0.45, height - run * 0.45 * sin(angle) / cos(angle)), f"{down:g}°", LETTERS, shift=(0, -4))


def mix_mark(section: Section, pack: Pack) -> Iterator[Element]:
    """The mix position from the side, at the ears of the area it lies in."""
    mix = mix_place(section, pack)
    if mix is None:
        return
    points = [(abs(y - mix.depth_m) + abs(x - mix.across_m), z) for field in area_fields(section) for x, y, z in field.points]
    at = (-mix.depth_m, min(points)[1])
    yield Mark(at, "ring", size=6, says=mix.name)
    yield Note(at, mix.name, LETTERS, shift=(0, -12))


def subs_picture(section: Section) -> Picture | None:
    """The sub line from above with each sub's delay, as wide as it stands."""
    subs = [item for item in section.of_kind("sub") if item.number("across") is not None]
    if not subs:
        return None
    most = max((item.number("delay") or 0.0) for item in subs) or 1.0
    places = [(item.number("across") or 0.0, -0.9 - 2.6 * (item.number("delay") or 0.0) / most) for item in subs]
    elements: list[Element] = [Track(tuple((x, -y) for x, y in places), HAIR)]
    for item, (x, y) in zip(subs, places, strict=True):
        out = item.condition == "out of service"
        elements += [Area(((x - 0.5, 0.3), (x + 0.5, 0.3), (x + 0.5, -0.3), (x - 0.5, -0.3)), DASHED if out else PALE, says=item.name)]
        if out:
            elements.append(Mark((x, 0.0), "cross", size=7, says=f"{item.name}, out of service"))
        elements += [Mark((x, -y), "circle", 0.0 if out else 1.0, 3.5), Note((x, -0.3), item.name.rsplit(" ", 1)[-1], LETTERS, shift=(0, 20))]
        elements.append(Note((x, -y), item.text("delay").removesuffix(" ms"), LETTERS, shift=(0, -8)))
    told = ", ".join(f"{item.name.rsplit(' ', 1)[-1]}: {item.text('delay')}{' (out)' if item.condition == 'out of service' else ''}" for item in subs)
    says = f"Sub delays from stage right to stage left. {told}."
    plan = Plan("sound-subs", "Sub line with delays", says, tuple(elements), margin_m=1.0, axes=False)
    return Picture(
        "sound-subs",
        plan_svg(plan),
        says,
        "The line from above, audience below. Dots rise with the delay in milliseconds; a cross is out of service.",
    )
