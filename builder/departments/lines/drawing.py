"""
The lines as a drawing for a phone: places in the order they lie in, the lines between them as
strokes with numbers. Reads the pack alone.

A plan to scale would crowd the stage into a corner, for the hall is long. Here places keep their
order, upstage at the top and stage left on the right, and stand evenly apart.
"""

from collections.abc import Iterator, Mapping, Sequence

from builder.departments.lines.naming import Named, named, points_of
from builder.departments.lines.strokes import At, Stroke, bent, label_at
from builder.document import Markup
from builder.layout import anchor_of
from builder.pack import Item, Pack, Section
from builder.render import svg
from builder.render.numbers import number

WIDTH, SIDE, TOP, ROW, FOOT = 390.0, 44.0, 54.0, 84.0, 44.0
SIZE = "max-width:30rem;max-height:none;margin:0 auto"
"""A tall drawing: scaled to a screen's height it could not be read on a phone."""
SAME_ROW_M = 1.5
"""Places that lie no further apart in depth stand in one row."""
NAME_SIZE = 12.5


def lines_plan(section: Section, pack: Pack) -> tuple[Markup, str] | None:
    """The drawing as SVG and in words; None where no two places that lines join are known."""
    places = places_of(section, pack)
    pairs = [
        (index, pair)
        for index, pair in enumerate(section.of_kind("pair"), 1)
        if {pair.text("one"), pair.text("other")} <= places.keys()
    ]
    if not pairs:
        return None
    spots = spread(places)
    strokes = strokes_of(pairs, spots)
    words = named(spots, strokes, width=WIDTH)
    height = max(y for _, y in spots.values()) + FOOT
    says = in_words(pairs)
    parts = [
        *edge(places, spots),
        *(stroke_svg(pair, stroke) for (_, pair), stroke in zip(pairs, strokes, strict=True)),
    ]
    parts += [*names(spots, words), *badges(pairs, strokes, spots, words)]
    drawn = svg.drawing(
        "lines-plan",
        "Lines from place to place",
        says,
        (WIDTH, height),
        parts,
        lettering=12,
        style=SIZE,
    )
    return drawn, says


def places_of(section: Section, pack: Pack) -> Mapping[str, At]:
    """The places that lines join, in metres from the datum, where the stage says where they are."""
    stage = pack.section("stage")
    joined = dict.fromkeys(
        name for pair in section.of_kind("pair") for name in (pair.text("one"), pair.text("other"))
    )
    places = {item.name: item.position for item in stage.of_kind("place")} if stage else {}
    return {name: at for name in joined if (at := places.get(name))}


def spread(places: Mapping[str, At]) -> dict[str, At]:
    """Where each place stands in the drawing: columns by across, rows by depth, evenly apart."""
    columns = sorted(places, key=lambda name: (places[name][0], name))
    rows: dict[str, int] = {}
    row, last = -1, float("inf")
    for name in sorted(places, key=lambda name: (-places[name][1], name)):
        if last - places[name][1] > SAME_ROW_M:
            row, last = row + 1, places[name][1]
        rows[name] = row
    step = (WIDTH - 2 * SIDE) / max(len(columns) - 1, 1)
    return {
        name: (SIDE + index * step if len(columns) > 1 else WIDTH / 2, TOP + rows[name] * ROW)
        for index, name in enumerate(columns)
    }


def strokes_of(pairs: Sequence[tuple[int, Item]], spots: Mapping[str, At]) -> list[Stroke]:
    """
    A stroke for each two places, bent where it would run through another place or along another
    stroke.
    """
    found: list[Stroke] = []
    for _, pair in pairs:
        ends = {pair.text("one"), pair.text("other")}
        others = [at for name, at in spots.items() if name not in ends]
        found.append(bent(spots[pair.text("one")], spots[pair.text("other")], others, found))
    return found


def stroke_svg(pair: Item, stroke: Stroke) -> Markup:
    """One stroke: whole where some way is free, dashed where none is known to be."""
    free = any(
        (figure.value.ends[0] or 0) > 0
        for figure in pair.figures
        if figure.key.endswith(".free") and figure.value
    )
    start, control, end = (
        f"{number(x)} {number(y)}" for x, y in (stroke.start, stroke.control, stroke.end)
    )
    return svg.path(
        f"M{start}Q{control} {end}",
        stroke_width=1.8 if free else 1.4,
        stroke_dasharray=None if free else "5 4",
    )


def badges(
    pairs: Sequence[tuple[int, Item]],
    strokes: Sequence[Stroke],
    spots: Mapping[str, At],
    words: Mapping[str, Named],
) -> Iterator[Markup]:
    """
    The number of each stroke in a circle on it, as far as can be from all other strokes, names and
    numbers.
    """
    taken = [*spots.values(), *(point for name in words.values() for point in points_of(name))]
    for (index, pair), stroke in zip(pairs, strokes, strict=True):
        x, y = label_at(stroke, taken, [other for other in strokes if other is not stroke])
        taken.append((x, y))
        badge = svg.circle(x, y, 10, stroke_width=1.2, fill=svg.PAPER)
        digits = svg.lettered(x, y + 4.5, str(index), 12.5, side="middle", strong=True)
        says = f"{index}: {pair.name}, {free_words(pair)}"
        yield svg.linked(anchor_of(pair.key), svg.told(says, badge, digits))


def names(spots: Mapping[str, At], words: Mapping[str, Named]) -> Iterator[Markup]:
    """Each place as a spot with its name beside it."""
    for name, (x, y) in spots.items():
        yield svg.rectangle(x - 5, y - 5, 10, 10, fill=svg.INK, stroke=svg.NONE)
        for row, (middle, level) in zip(words[name].rows, words[name].middles, strict=True):
            yield svg.lettered(middle, level + 4, row, NAME_SIZE, side="middle", halo=True)


def edge(places: Mapping[str, At], spots: Mapping[str, At]) -> Iterator[Markup]:
    """The datum between the places upstage of it and those in the house, where there are both."""
    above = [spots[name][1] for name, (_, depth) in places.items() if depth >= 0]
    below = [spots[name][1] for name, (_, depth) in places.items() if depth < 0]
    if above and below:
        y = max(above) + 22
        line = f"M4 {number(y)}H{number(WIDTH - 4)}"
        yield svg.path(line, stroke_width=0.7, stroke_dasharray="14 4 2 4")
        yield svg.lettered(6, y - 5, "stage", 10.5, halo=True)
        yield svg.lettered(6, y + 13, "house", 10.5, halo=True)


def free_words(pair: Item) -> str:
    """What is free between two places, by kind."""
    found = [figure for figure in pair.figures if figure.key.endswith(".free")]
    parts = [
        f"{figure.label.removesuffix(', free')} {figure.value.text if figure.value else 'not told'}"
        for figure in found
    ]
    return f"free: {', '.join(parts)}"


def in_words(pairs: Sequence[tuple[int, Item]]) -> str:
    """What the drawing shows: each number, its places and what is free."""
    return "Lines from place to place. " + " ".join(
        f"{index}: {pair.name}, {free_words(pair)}." for index, pair in pairs
    )
