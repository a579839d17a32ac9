"""
Maps of levels over a plan, as SVG files: filled contours with numbers on them, outlines, marks and
a scale.

Drawn once with a stand-in ink that is then swapped, so the light and the dark version show the
same. The colours run evenly in lightness, so the maps read in grey and for the colour-blind; the
numbers on the contours say it without colour. A phone shows a sheet at nine tenths of its size.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from math import ceil, hypot

import numpy as np

from builder.render.contours import Array, Frame, Levels, filled_paths, lines_of, within
from builder.render.level_colours import level_colours

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


def level_map_svg(sheet: Sheet) -> str:
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
    body = "".join(
        part for number, frame in enumerate(frames) for part in panel(sheet, number, frame)
    )
    height = below + SCALE
    size = (
        f'viewBox="0 0 {WIDTH:g} {height:.0f}" width="{WIDTH * ON_A_DESK:.0f}"'
        f' height="{height * ON_A_DESK:.0f}"'
    )
    font = f'font-family="system-ui,sans-serif" font-size="{LETTERS}" text-anchor="middle"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} {font}'
        f' fill="{INK}">{body}{"".join(scale_bar(sheet, below))}</svg>'
    )


def panel(sheet: Sheet, number: int, frame: Frame) -> Iterator[str]:
    """One map."""
    title, layers = sheet.panels[number]
    taken = [frame.at(*place) for _, place in sheet.spots]
    written: list[str] = []
    for place, layer in enumerate(layers):
        yield from painted(sheet, layer, frame, f"c{number}-{place}")
        written += numbers(sheet, layer, frame, taken)
    yield from (outline(shape, frame) for shape in sheet.shapes)
    yield halo(written)
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
        yield (
            f'<text x="{middle:.1f}" y="{frame.down - 6:.1f}"'
            f' font-size="12.5">{escape(title)}</text>'
        )


def painted(sheet: Sheet, layer: Layer, frame: Frame, key: str) -> Iterator[str]:
    """The filled contours of a layer, cut at its outline."""
    colours, pale = level_colours(len(sheet.steps_db) + 1), PALE_BELOW * len(sheet.steps_db)
    corners = layer.corners or seen(sheet)
    cut = path_of(corners, frame)
    yield (
        f'<clipPath id="{key}"><path d="{cut}"/></clipPath><g clip-path="url(#{key})"><path'
        f' d="{cut}" fill="{colours[0]}"/>'
    )
    yield '<g transform="scale(.1)" fill-rule="evenodd" stroke-linejoin="round">'
    for step, path in filled_paths(layer.levels.contours(), sheet.steps_db, frame):
        place = sheet.steps_db.index(step)
        ink, width = PALE if place < pale else DARK, 14 if step == 0 else 4
        yield (
            f'<path d="{path}" fill="{colours[place + 1]}" stroke="{ink}" stroke-width="{width}"/>'
        )
    yield f"</g>{dots(layer.hidden, frame)}</g>"


def dots(places: Sequence[Place], frame: Frame) -> str:
    """A dot at each place, dark with a pale rim: a round end of a line without length."""
    if not places:
        return ""
    path = "".join(f"M{x:.1f} {y:.1f}h0" for x, y in (frame.at(*each) for each in places))
    return "".join(
        f'<path d="{path}" stroke="{ink}" stroke-width="{width}" stroke-linecap="round"/>'
        for ink, width in ((PALE, 3.2), (DARK, 2))
    )


def numbers(sheet: Sheet, layer: Layer, frame: Frame, taken: list[Place]) -> Iterator[str]:
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
                yield f'<text x="{at[0]:.1f}" y="{at[1] + 4:.1f}">{signed(step)}</text>'


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


def outline(shape: Shape, frame: Frame) -> str:
    """An outline in the page's ink."""
    return (
        f'<path d="{path_of(shape.corners, frame)}" fill="none" stroke="{INK}"'
        f' stroke-width="{1.4 if shape.heavy else 0.7}"/>'
    )


def halo(texts: Sequence[str]) -> str:
    """Dark text with a white rim: readable on every colour of the map and on either page."""
    rim = (
        f'fill="{DARK}" stroke="#fff" stroke-width="3" stroke-linejoin="round" paint-order="stroke"'
        ' font-weight="600"'
    )
    return f"<g {rim}>{''.join(texts)}</g>" if texts else ""


def spot(name: str, at: Place) -> Iterator[str]:
    """A marked place, with its name beside it."""
    x, y = at
    yield (
        f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4.2" fill="#fff" stroke="{DARK}"'
        ' stroke-width="1.3"/>'
    )
    yield f'<path d="M{x - 2.4:.1f} {y:.1f}h4.8M{x:.1f} {y - 2.4:.1f}v4.8" stroke="{DARK}"/>'
    if name:
        yield halo(
            [f'<text x="{x + 8:.1f}" y="{y + 4:.1f}" text-anchor="start">{escape(name)}</text>']
        )


def names(sheet: Sheet, frame: Frame) -> Iterator[str]:
    """Names of heavy outlines, in their middle."""
    for shape in sheet.shapes:
        if shape.heavy and shape.name:
            xs, ys = zip(*shape.corners, strict=True)
            x, y = frame.at((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
            yield f'<text x="{x:.1f}" y="{y + 4:.1f}">{escape(shape.name)}</text>'


def ticks(sheet: Sheet, frame: Frame) -> Iterator[str]:
    """Distances from the datum along the left and the lower edge, as crews say them."""
    left, right, near, far = sheet.extent_m
    edge_x, edge_y = frame.at(left, near)
    for metres in round_metres(left, right, 72 / frame.scale):
        x, _ = frame.at(metres, near)
        yield f'<path d="M{x:.1f} {edge_y:.1f}v4" stroke="{INK}" stroke-width=".7"/>'
        yield (
            f'<text x="{min(x, WIDTH - HALF_LABEL):.1f}"'
            f' y="{edge_y + 16:.1f}">{sided(metres, "SL", "SR")}</text>'
        )
    for metres in round_metres(near, far, 50 / frame.scale):
        _, y = frame.at(left, metres)
        yield f'<path d="M{edge_x - 4:.1f} {y:.1f}h4" stroke="{INK}" stroke-width=".7"/>'
        yield (
            f'<text x="{edge_x - 6:.1f}" y="{y + 4:.1f}"'
            f' text-anchor="end">{sided(metres, "US", "DS")}</text>'
        )


def round_metres(low: float, high: float, apart: float) -> list[int]:
    """Whole round distances, at least so far apart."""
    step = next((step for step in (1, 2, 5, 10, 20, 50, 100, 200, 500) if step >= apart), 1000)
    return [step * number for number in range(ceil(low / step), int(high // step) + 1)]


def sided(metres: float, over: str, under: str) -> str:
    """A distance from the datum as crews write it: 10 m DS."""
    return f"{abs(metres):g} m {over if metres > 0 else under}" if metres else "0"


def scale_bar(sheet: Sheet, top: float) -> Iterator[str]:
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
        yield f'<path d="{shape}" fill="{colour}" stroke="{INK}" stroke-width=".5"/>'
    for place, step in enumerate(sheet.steps_db, 1):
        yield f'<text x="{10 + place * wide:.1f}" y="{top + 25:.1f}">{signed(step)}</text>'
    yield (
        f'<text x="{WIDTH / 2:.0f}" y="{top + 41:.1f}">dB relative to'
        f" {escape(sheet.reference)}</text>"
    )
