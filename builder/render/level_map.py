"""
Maps of levels over a plan, as SVG files: filled contours with numbers on them, outlines, marks and
a scale.

Drawn once with a stand-in ink that is then swapped, so the light and the dark version show the
same. The colours run evenly in lightness, so the maps read in grey and for the colour-blind; the
numbers on the contours say it without colour. A phone shows a sheet at nine tenths of its size.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, hypot

import numpy as np

from builder.document import Markup
from builder.render.contours import Array, Frame, Levels, filled_paths, lines_of, within
from builder.render.elements import words
from builder.render.level_colours import level_colours
from builder.render.markup import joined, markup

Place = tuple[float, float]

INK = "#010203"
"""Stands for the ink of the page until the drawing is done."""
DARK, PALE = "#14181d", "#f4f5f6"
WIDTH = 390.0
"""Narrow enough that its lettering can still be read on a phone."""
ON_A_DESK = 1.4
"""How much larger it stands on a wide page."""
LETTERS = 11.5
TICKS_LEFT, TICKS_BELOW, TITLE, GAP, SCALE = 60.0, 20.0, 19.0, 12.0, 46.0
HALF_LABEL = 26.0
"""Half of the longest label below a map: the last one keeps within the drawing."""
NUMBERS_APART = 44.0
"""
How far numbers keep from each other and from marks on the drawing, so that none crowds the next.
"""
CLEAR_M = 0.8
"""How far a number keeps from the outline."""
SHORTEST_M = 6.0
"""Contours shorter than this carry no number: they are the ripple of a sum, not a border."""
PALE_BELOW = 0.45
"""Contours in this lower share of the scale are drawn pale, on dark colours."""


@dataclass(frozen=True, slots=True)
class Layer:
    """
    Levels of one area, cut at its corners; without corners they fill the map. ``hidden`` places are
    marked by a dot each.
    """

    levels: Levels
    corners: tuple[Place, ...] = ()
    hidden: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True)
class Shape:
    """An outline on every map of a sheet; a heavy one carries its name."""

    corners: tuple[Place, ...]
    name: str = ""
    heavy: bool = False


@dataclass(frozen=True, slots=True)
class Sheet:
    """
    Maps that share outlines, marks and scale. ``panels`` are titles with layers; ``spots`` are
    names with places.

    ``extent_m`` is what is shown of the plan: left, right, near, far.
    """

    panels: tuple[tuple[str, tuple[Layer, ...]], ...]
    shapes: tuple[Shape, ...]
    spots: tuple[tuple[str, Place], ...]
    extent_m: tuple[float, float, float, float]
    steps_db: tuple[int, ...]
    reference: str
    columns: int = 1

    @property
    def scale(self) -> float:
        """Drawing units a metre."""
        left, right, _, _ = self.extent_m
        room = (
            WIDTH - TICKS_LEFT - 1
            if self.columns == 1
            else (WIDTH - GAP * (self.columns - 1)) / self.columns
        )
        return room / (right - left)

    @property
    def map_height(self) -> float:
        """Height of one map."""
        _, _, near, far = self.extent_m
        return (far - near) * self.scale

    def frames(self) -> list[Frame]:
        """Where each map stands."""
        left, _, _, far = self.extent_m
        if self.columns == 1:
            step = self.map_height + TICKS_BELOW + GAP
            return [
                Frame(left, far, self.scale, TICKS_LEFT, 8 + place * step)
                for place in range(len(self.panels))
            ]
        wide, step = (WIDTH + GAP) / self.columns, self.map_height + TITLE + GAP
        return [
            Frame(
                left,
                far,
                self.scale,
                place % self.columns * wide,
                place // self.columns * step + TITLE,
            )
            for place in range(len(self.panels))
        ]


def level_map_svg(sheet: Sheet) -> Markup:
    """
    A sheet of maps as SVG, in the stand-in ink.

    Raises
    ------
    ValueError
        If there is no panel.
    """
    if not sheet.panels:
        raise ValueError("sheet.panels must hold at least one map, got none")
    frames = sheet.frames()
    below = frames[-1].down + sheet.map_height + (TICKS_BELOW if sheet.columns == 1 else 0) + 8
    height = below + SCALE
    return markup(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {:g} {:.0f}" width="{:.0f}"'
        ' height="{:.0f}" font-family="system-ui,sans-serif" font-size="{}" text-anchor="middle"'
        ' fill="{}">{}{}</svg>',
        WIDTH,
        height,
        WIDTH * ON_A_DESK,
        height * ON_A_DESK,
        LETTERS,
        words(INK),
        joined(part for number, frame in enumerate(frames) for part in panel(sheet, number, frame)),
        joined(scale_bar(sheet, below)),
    )


def inked(drawn: Markup, ink: str) -> Markup:
    """A drawing in an ink of one's own. A text that reads like the stand-in stays as it is."""
    return Markup(drawn.replace(f'"{INK}"', f'"{words(ink)}"'))


def panel(sheet: Sheet, number: int, frame: Frame) -> Iterator[Markup]:
    """One map."""
    title, layers = sheet.panels[number]
    taken = [frame.at(*place) for _, place in sheet.spots]
    written: list[Markup] = []
    for place, layer in enumerate(layers):
        yield from painted(sheet, layer, frame, f"c{number}-{place}")
        written += numbers(sheet, layer, frame, taken)
    yield from (outline(shape, frame) for shape in sheet.shapes)
    yield from halo(written)
    yield from (
        part
        for name, place in sheet.spots
        for part in spot(name if sheet.columns == 1 else "", frame.at(*place))
    )
    if sheet.columns == 1:
        yield from ticks(sheet, frame)
        yield from names(sheet, frame)
    else:
        middle = frame.across + (sheet.extent_m[1] - sheet.extent_m[0]) * frame.scale / 2
        yield markup(
            '<text x="{:.1f}" y="{:.1f}" font-size="12.5">{}</text>',
            middle,
            frame.down - 6,
            words(title),
        )


def painted(sheet: Sheet, layer: Layer, frame: Frame, key: str) -> Iterator[Markup]:
    """The filled contours of a layer, cut at its outline."""
    colours = level_colours(len(sheet.steps_db) + 1)
    cut, name = words(path_of(layer.corners or seen(sheet), frame)), words(key)
    shapes = (
        contour(words(path), sheet.steps_db.index(step), sheet, step)
        for step, path in filled_paths(layer.levels.contours(), sheet.steps_db, frame)
    )
    yield markup('<clipPath id="{}"><path d="{}"/></clipPath>', name, cut)
    yield markup(
        '<g clip-path="url(#{})"><path d="{}" fill="{}"/><g transform="scale(.1)"'
        ' fill-rule="evenodd" stroke-linejoin="round">{}</g>{}</g>',
        name,
        cut,
        words(colours[0]),
        joined(shapes),
        joined(dots(layer.hidden, frame)),
    )


def contour(path: Markup, place: int, sheet: Sheet, step: int) -> Markup:
    """The shape of one step of the scale with its line, which is wider at the reference."""
    colours, pale = level_colours(len(sheet.steps_db) + 1), PALE_BELOW * len(sheet.steps_db)
    return markup(
        '<path d="{}" fill="{}" stroke="{}" stroke-width="{}"/>',
        path,
        words(colours[place + 1]),
        words(PALE if place < pale else DARK),
        14 if step == 0 else 4,
    )


def dots(places: Sequence[Place], frame: Frame) -> Iterator[Markup]:
    """A dot at each place, dark with a pale rim: a round end of a line without length."""
    path = "".join(f"M{x:.1f} {y:.1f}h0" for x, y in (frame.at(*each) for each in places))
    for ink, width in ((PALE, 3.2), (DARK, 2)) if places else ():
        yield markup(
            '<path d="{}" stroke="{}" stroke-width="{}" stroke-linecap="round"/>',
            words(path),
            words(ink),
            width,
        )


def numbers(sheet: Sheet, layer: Layer, frame: Frame, taken: list[Place]) -> Iterator[Markup]:
    """
    Numbers on contours, the longest first, each only where there is room; the places taken are
    added to ``taken``.
    """
    contours = layer.levels.contours()
    corners, apart_m = layer.corners or seen(sheet), NUMBERS_APART / frame.scale
    lines = [(step, line) for step in sheet.steps_db for line in lines_of(contours, step)]
    for step, line in sorted(lines, key=lambda pair: -run_m(pair[1])[-1]):
        for place in number_places(line, corners, apart_m=2 * apart_m):
            at = frame.at(*place)
            if all(hypot(at[0] - x, at[1] - y) >= NUMBERS_APART for x, y in taken):
                taken.append(at)
                yield lettered(at[0], at[1] + 4, signed(step))


def run_m(line: Array) -> Array:
    """How far along a line each of its places lies. [m]"""
    return np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])


def number_places(line: Array, corners: Sequence[Place], *, apart_m: float) -> list[Place]:
    """
    Where numbers of one contour may stand: in its middle, and again every so often along a long
    one, well inside the outline.
    """
    clear = np.ones(len(line), dtype=bool)
    for shift in (
        (-CLEAR_M, -CLEAR_M),
        (-CLEAR_M, CLEAR_M),
        (CLEAR_M, -CLEAR_M),
        (CLEAR_M, CLEAR_M),
    ):
        clear &= within(corners, line + np.array(shift))
    inside = line[clear]
    if len(inside) < 2:
        return []
    run = run_m(inside)
    if run[-1] < SHORTEST_M:
        return []
    count = max(1, int(run[-1] // apart_m))
    chosen = (
        inside[int(np.searchsorted(run, run[-1] * (number + 0.5) / count))]
        for number in range(count)
    )
    return [(float(x), float(y)) for x, y in chosen]


def seen(sheet: Sheet) -> tuple[Place, ...]:
    """What is shown of the plan, as an outline."""
    left, right, near, far = sheet.extent_m
    return (left, near), (right, near), (right, far), (left, far)


def signed(step: int) -> str:
    """A level relative to the reference, as it stands on a contour."""
    return f"{step:+d}".replace("-", "−") if step else "0"


def path_of(corners: Sequence[Place], frame: Frame) -> str:
    """A closed outline."""
    return (
        "M"
        + "L".join(f"{x:.1f} {y:.1f}" for x, y in (frame.at(*corner) for corner in corners))
        + "z"
    )


def lettered(x: float, y: float, text: str) -> Markup:
    """A short text about its middle."""
    return markup('<text x="{:.1f}" y="{:.1f}">{}</text>', x, y, words(text))


def outline(shape: Shape, frame: Frame) -> Markup:
    """An outline in the page's ink."""
    return markup(
        '<path d="{}" fill="none" stroke="{}" stroke-width="{}"/>',
        words(path_of(shape.corners, frame)),
        words(INK),
        1.4 if shape.heavy else 0.7,
    )


def halo(texts: Sequence[Markup]) -> Iterator[Markup]:
    """Dark text with a white rim: readable on every colour of the map and on either page."""
    if texts:
        yield markup(
            '<g fill="{}" stroke="#fff" stroke-width="3" stroke-linejoin="round"'
            ' paint-order="stroke" font-weight="600">{}</g>',
            words(DARK),
            joined(texts),
        )


def spot(name: str, at: Place) -> Iterator[Markup]:
    """A marked place, with its name beside it."""
    x, y = at
    yield markup(
        '<circle cx="{:.1f}" cy="{:.1f}" r="4.2" fill="#fff" stroke="{}" stroke-width="1.3"/>',
        x,
        y,
        words(DARK),
    )
    yield markup(
        '<path d="M{:.1f} {:.1f}h4.8M{:.1f} {:.1f}v4.8" stroke="{}"/>',
        x - 2.4,
        y,
        x,
        y - 2.4,
        words(DARK),
    )
    if name:
        yield from halo(
            [
                markup(
                    '<text x="{:.1f}" y="{:.1f}" text-anchor="start">{}</text>',
                    x + 8,
                    y + 4,
                    words(name),
                )
            ]
        )


def names(sheet: Sheet, frame: Frame) -> Iterator[Markup]:
    """Names of heavy outlines, in their middle."""
    for shape in sheet.shapes:
        if shape.heavy and shape.name:
            xs, ys = zip(*shape.corners, strict=True)
            x, y = frame.at((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
            yield lettered(x, y + 4, shape.name)


def ticks(sheet: Sheet, frame: Frame) -> Iterator[Markup]:
    """Distances from the datum along the left and the lower edge, as crews say them."""
    left, right, near, far = sheet.extent_m
    edge_x, edge_y = frame.at(left, near)
    for metres in round_metres(left, right, 72 / frame.scale):
        x, _ = frame.at(metres, near)
        yield tick(f"M{x:.1f} {edge_y:.1f}v4")
        yield lettered(min(x, WIDTH - HALF_LABEL), edge_y + 16, sided(metres, "SL", "SR"))
    for metres in round_metres(near, far, 50 / frame.scale):
        _, y = frame.at(left, metres)
        yield tick(f"M{edge_x - 4:.1f} {y:.1f}h4")
        yield markup(
            '<text x="{:.1f}" y="{:.1f}" text-anchor="end">{}</text>',
            edge_x - 6,
            y + 4,
            words(sided(metres, "US", "DS")),
        )


def tick(path: str) -> Markup:
    """A short stroke at the edge of a map."""
    return markup('<path d="{}" stroke="{}" stroke-width=".7"/>', words(path), words(INK))


def round_metres(low: float, high: float, apart: float) -> list[int]:
    """Whole round distances, at least so far apart."""
    step = next((step for step in (1, 2, 5, 10, 20, 50, 100, 200, 500) if step >= apart), 1000)
    return [step * number for number in range(ceil(low / step), int(high // step) + 1)]


def sided(metres: float, over: str, under: str) -> str:
    """A distance from the datum as crews write it: 10 m DS."""
    return f"{abs(metres):g} m {over if metres > 0 else under}" if metres else "0"


def scale_bar(sheet: Sheet, top: float) -> Iterator[Markup]:
    """
    The colours in steps below the maps, in decibels relative to the reference; open at both ends.
    """
    colours = level_colours(len(sheet.steps_db) + 1)
    wide = (WIDTH - 20) / len(colours)
    for place, colour in enumerate(colours):
        x = 10 + place * wide
        shape = f"M{x:.1f} {top:.1f}h{wide:.1f}v12h-{wide:.1f}z"
        if place == 0:
            shape = f"M{x:.1f} {top + 6:.1f}l{wide / 2:.1f} -6h{wide / 2:.1f}v12h-{wide / 2:.1f}z"
        elif place == len(colours) - 1:
            shape = (
                f"M{x:.1f} {top:.1f}h{wide / 2:.1f}l{wide / 2:.1f} 6l-{wide / 2:.1f}"
                f" 6h-{wide / 2:.1f}z"
            )
        yield markup(
            '<path d="{}" fill="{}" stroke="{}" stroke-width=".5"/>',
            words(shape),
            words(colour),
            words(INK),
        )
    for place, step in enumerate(sheet.steps_db, 1):
        yield lettered(10 + place * wide, top + 25, signed(step))
    yield markup(
        '<text x="{:.0f}" y="{:.1f}">dB relative to {}</text>',
        WIDTH / 2,
        top + 41,
        words(sheet.reference),
    )
