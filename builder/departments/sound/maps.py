"""
Coverage maps: fields of the pack as filled contours. Reads the pack alone.

Drawn once with a stand-in ink that is then swapped, so the light and the dark version show the same. The colours run evenly in lightness, so the
maps read in grey and for the colour-blind; the numbers on the contours say it without colour.
"""

import io
import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import dist, hypot
from typing import Any

from builder.pack import Field, Outline

INK = "#010203"
"""Stands for the ink of the page until the drawing is done."""

INKS = {"light": "#1b1e23", "dark": "#e6e8eb"}
CHIP_APART_IN = 0.6
"""How far numbers keep from each other and from marks on the drawing, so that none crowds the next."""
CLEAR_M = 0.8
"""How far a number keeps from the outline."""
SHORTEST_M = 6.0
"""Contours shorter than this carry no number: they are the ripple of a sum, not a border."""
WIDTH_IN = 5.4
"""Narrow enough that its lettering can still be read on a phone."""
LETTERS, TITLES = 11.5, 12.5
"""Sizes of the lettering: a phone shows it at nine tenths."""
GROUND = 0.08
"""Where on the colour scale the lowest level lies."""
PALE_BELOW = 0.4
"""Contours in this lower share of the scale are drawn pale, on dark colours."""

LONG_NUMBER = re.compile(r"(\d\.\d)\d+(?=[ \n\"])")
"""Numbers in paths: a tenth of a point is finer than any screen, and halves the file."""

STYLE: Any = {
    "svg.hashsalt": "housepack",
    "svg.fonttype": "none",
    "font.family": "sans-serif",
    "font.size": 11.0,
    "axes.linewidth": 0.6,
    # A name with dollar signs is a name, not a formula.
    "text.parse_math": False,
    "text.usetex": False,
}


@dataclass(frozen=True, slots=True)
class Spot:
    """A named place on a map."""

    name: str
    across_m: float
    depth_m: float


@dataclass(frozen=True, slots=True)
class Panel:
    """One map: one band of one or more fields that do not overlap on the plan."""

    title: str
    band: str
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A drawing of one or more maps that share outlines, marks and scale."""

    panels: tuple[Panel, ...]
    outlines: tuple[Outline, ...]
    spots: tuple[Spot, ...]
    columns: int = 1
    steps_db: tuple[int, ...] = tuple(range(-15, 10, 3))


@lru_cache(maxsize=64)
def map_svg(sheet: Sheet) -> tuple[str, str]:
    """
    A sheet of maps as SVG, for a light page and for a dark one.

    Raises
    ------
    ValueError
        If there is no panel.
    """
    if not sheet.panels:
        raise ValueError("sheet.panels must hold at least one map, got none")
    drawn = draw(sheet)
    return drawn.replace(INK, INKS["light"]), drawn.replace(INK, INKS["dark"])


def draw(sheet: Sheet) -> str:
    """The sheet in the stand-in ink."""
    from matplotlib import rc_context  # a quarter of a second that only those who draw should pay
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure

    with rc_context(STYLE):
        rows = -(-len(sheet.panels) // sheet.columns)
        width, height = size_in(sheet, rows)
        figure = Figure(figsize=(width, height), facecolor="none", layout="constrained")
        FigureCanvasSVG(figure)
        axes = figure.subplots(rows, sheet.columns, squeeze=False).flat
        filled = [panel(figure_axes, each, sheet) for figure_axes, each in zip(axes, sheet.panels, strict=False)]
        for spare in list(figure.axes)[len(sheet.panels) :]:
            spare.set_visible(False)
        scale(figure, filled[0], sheet)
        return svg_text(figure)


def size_in(sheet: Sheet, rows: int) -> tuple[float, float]:
    """Width and height of the drawing: as wide as a page, as high as the audience is deep."""
    _, _, near, far = extent(sheet)
    return WIDTH_IN, rows * ((far - near) * inches_a_metre(sheet) + 0.36) + 0.95


def inches_a_metre(sheet: Sheet) -> float:
    """The scale of the maps, as near as the layout keeps it."""
    left, right, _, _ = extent(sheet)
    return (WIDTH_IN - 0.7) / sheet.columns / (right - left)


def extent(sheet: Sheet) -> tuple[float, float, float, float]:
    """The part of the plan that is shown: left, right, near, far."""
    places = [(x, y) for panel in sheet.panels for field in panel.fields for x, y, _ in field.points]
    places += [corner for outline in sheet.outlines for corner in outline.corners]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return min(xs) - 1.5, max(xs) + 1.5, min(ys) - 1.5, max(ys) + 1.0


def panel(axes: Any, shown: Panel, sheet: Sheet) -> Any:
    """One map on its axes; gives the filled contours for the scale."""
    left, right, near, far = extent(sheet)
    filled, taken = None, [(spot.across_m, spot.depth_m) for spot in sheet.spots]
    for field in shown.fields:
        filled, lines = contours(axes, field, shown.band, sheet)
        number(axes, lines, outline_of(field, sheet.outlines), sheet, taken)
    for outline in sheet.outlines:
        xs, ys = zip(*outline.corners, outline.corners[0], strict=True)
        axes.plot(xs, ys, color=INK, linewidth=1.4 if outline.kind == "deck" else 0.7)
    for spot in sheet.spots:
        axes.plot(
            [spot.across_m], [spot.depth_m], marker="o", markersize=6, markerfacecolor="#ffffff", markeredgecolor="#1b1e23", markeredgewidth=1.2
        )
        axes.plot([spot.across_m], [spot.depth_m], marker="+", markersize=6, markeredgecolor="#1b1e23", markeredgewidth=1.0)
        if sheet.columns == 1:
            chip(axes.annotate(spot.name, (spot.across_m, spot.depth_m), xytext=(8, -4), textcoords="offset points", fontsize=LETTERS))
    axes.set(xlim=(left, right), ylim=(near, far), aspect="equal")
    furnish(axes, shown, sheet)
    return filled


def outline_of(field: Field, outlines: Sequence[Outline]) -> Outline | None:
    """The outline of the area that a field was computed over, by its name."""
    return next((outline for outline in outlines if outline.name == field.name), None)


def furnish(axes: Any, shown: Panel, sheet: Sheet) -> None:
    """Title, ticks as crews say them, and the name of the deck. There is no label beside an axis: it would take width from the map."""
    if sheet.columns > 1:
        axes.set_title(shown.title, color=INK, fontsize=TITLES)
    axes.tick_params(colors=INK, labelsize=LETTERS, length=2, width=0.6)
    for spine in axes.spines.values():
        spine.set_visible(False)
    if sheet.columns > 1:
        axes.set(xticks=[], yticks=[])
        return
    axes.locator_params(axis="x", nbins=5, integer=True)
    axes.locator_params(axis="y", nbins=max(3, round((extent(sheet)[3] - extent(sheet)[2]) * inches_a_metre(sheet) / 0.8)), integer=True)
    axes.xaxis.set_major_formatter(lambda metres, _: sided(metres, "SL", "SR"))
    axes.yaxis.set_major_formatter(lambda metres, _: sided(metres, "US", "DS"))
    for outline in sheet.outlines:
        if outline.kind == "deck":
            xs, ys = zip(*outline.corners, strict=True)
            axes.text(sum(xs) / len(xs), (min(ys) + max(ys)) / 2, outline.name, color=INK, ha="center", va="center", fontsize=LETTERS)


def sided(metres: float, over: str, under: str) -> str:
    """A distance from the datum as crews write it: 10 m DS."""
    return f"{abs(metres):g} m {over if metres > 0 else under}" if metres else "0"


def contours(axes: Any, field: Field, band: str, sheet: Sheet) -> tuple[Any, Any]:
    """Filled contours of one field and their lines, cut at the area's outline."""
    from matplotlib.patches import Polygon

    xs, ys, levels = grid(field, band)
    area, steps = outline_of(field, sheet.outlines), list(sheet.steps_db)
    filled = axes.contourf(xs, ys, levels, levels=steps, cmap=colours(), extend="both")
    widths = [1.2 if step == 0 else 0.5 for step in steps]
    lines = axes.contour(xs, ys, levels, levels=steps, colors=line_colours(steps), linewidths=widths, linestyles="solid")
    if area:
        cut = Polygon(area.corners, closed=True, transform=axes.transData)
        filled.set_clip_path(cut)
        lines.set_clip_path(cut)
    return filled, lines


def number(axes: Any, lines: Any, area: Outline | None, sheet: Sheet, taken: list[tuple[float, float]]) -> None:
    """Numbers on contours, the longest first, each only where there is room; the places taken are added to ``taken``."""
    pieces = [(step, piece) for step, each in zip(sheet.steps_db, lines.allsegs, strict=True) for piece in each]
    apart_m = CHIP_APART_IN / inches_a_metre(sheet)
    area = area or seen(sheet)
    for step, piece in sorted(pieces, key=lambda pair: -length_m(pair[1])):
        for place in chip_places(piece, area, apart_m=2 * apart_m):
            if all(hypot(place[0] - x, place[1] - y) >= apart_m for x, y in taken):
                taken.append(place)
                chip(axes.text(*place, signed(step), ha="center", va="center", fontsize=LETTERS))


def seen(sheet: Sheet) -> Outline:
    """The part of the plan that is shown, less a rim for the numbers: what a pattern over the whole plan is cut at."""
    left, right, near, far = extent(sheet)
    rim_m = 0.15 / inches_a_metre(sheet)
    left, right, near, far = left + rim_m, right - rim_m, near + rim_m, far - rim_m
    return Outline("", "seen", "", ((left, near), (right, near), (right, far), (left, far)))


def length_m(piece: Any) -> float:
    """The length of a contour."""
    return sum(dist(one, other) for one, other in pairwise(piece))


def line_colours(steps: Sequence[int]) -> list[str]:
    """Pale contours on the dark end of the scale, dark ones on the rest."""
    return ["#f2f3f5" if place < PALE_BELOW * (len(steps) - 1) else "#1b1e23" for place in range(len(steps))]


def chip_places(piece: Any, area: Outline, *, apart_m: float) -> list[tuple[float, float]]:
    """Where numbers of one contour may stand: in its middle, and again every so often along a long one, inside the outline."""
    import numpy as np

    places = [(float(x), float(y)) for x, y in piece]
    inside = [place for place, clear in zip(places, well_inside(places, area), strict=True) if clear]
    if len(inside) < 2:
        return []
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(np.array(inside), axis=0).T))])
    if gone[-1] < SHORTEST_M:
        return []
    count = max(1, int(gone[-1] // apart_m))
    return [inside[int(np.searchsorted(gone, gone[-1] * (number + 0.5) / count))] for number in range(count)]


def well_inside(places: Sequence[tuple[float, float]], outline: Outline) -> list[bool]:
    """For each place, whether a number there would stand clear of the outline."""
    corners = [within(outline, [(x + dx, y + dy) for x, y in places]) for dx in (-CLEAR_M, CLEAR_M) for dy in (-CLEAR_M, CLEAR_M)]
    return [all(each) for each in zip(*corners, strict=True)]


def within(outline: Outline, places: Sequence[tuple[float, float]]) -> list[bool]:
    """For each place, whether it lies within an outline on the plan."""
    from matplotlib.path import Path

    return [bool(each) for each in Path(outline.corners).contains_points(places)] if places else []


def signed(step: int) -> str:
    """A level relative to the reference, as it stands on a contour."""
    return f"{step:+d}".replace("-", "−") if step else "0"


def chip(text: Any) -> None:
    """Dark text on a pale ground, readable on every colour of the map and on either page."""
    text.set_color("#1b1e23")
    text.set_bbox({"boxstyle": "round,pad=0.15", "facecolor": "#ffffff", "alpha": 0.85, "edgecolor": "none"})


def colours() -> Any:
    """The colour scale: even in lightness from dark blue to yellow."""
    from matplotlib import colormaps
    from matplotlib.colors import LinearSegmentedColormap

    whole = colormaps["cividis"]
    return LinearSegmentedColormap.from_list("levels", [whole(GROUND + (1 - GROUND) * share / 31) for share in range(32)])


def grid(field: Field, band: str) -> tuple[Any, Any, Any]:
    """
    One band as a grid for contours; cells just outside the area take their nearest neighbour's level, so that contours reach the outline.

    Raises
    ------
    ValueError
        If the field has no such band.
    """
    import numpy as np

    if band not in field.bands:
        raise ValueError(f"band must be one of {', '.join(field.bands)}, got {band!r}")
    places = np.array(field.points)[:, :2]
    low = places.min(axis=0) - 2 * field.step_m
    index = np.rint((places - low) / field.step_m).astype(int)
    size = index.max(axis=0) + 3
    levels = np.full((size[1], size[0]), np.nan)
    levels[index[:, 1], index[:, 0]] = np.array(field.levels[field.bands.index(band)]) / 10
    for _ in range(2):
        levels = grown(levels)
    xs, ys = (low[axis] + field.step_m * np.arange(size[axis]) for axis in (0, 1))
    return xs, ys, levels


def grown(levels: Any) -> Any:
    """Empty cells beside filled ones take the mean of those."""
    import numpy as np

    framed = np.pad(levels, 1, constant_values=np.nan)
    rows, columns = levels.shape
    around = np.stack([framed[1 + dy : 1 + dy + rows, 1 + dx : 1 + dx + columns] for dx in (-1, 0, 1) for dy in (-1, 0, 1)])
    there = ~np.isnan(around)
    count = there.sum(axis=0)
    mean = np.where(there, around, 0.0).sum(axis=0) / np.maximum(count, 1)
    return np.where(np.isnan(levels) & (count > 0), mean, levels)


def scale(figure: Any, filled: Any, sheet: Sheet) -> None:
    """The scale below the maps, in decibels relative to the reference."""
    reference = sheet.panels[0].fields[0].reference
    bar = figure.colorbar(filled, ax=list(figure.axes), orientation="horizontal", shrink=0.95, aspect=40, pad=0.01)
    bar.set_label(f"dB relative to {reference}", color=INK, fontsize=LETTERS)
    bar.ax.tick_params(colors=INK, labelsize=LETTERS, length=2)
    bar.ax.set_xticks(sheet.steps_db, [signed(step) for step in sheet.steps_db])
    bar.outline.set_edgecolor(INK)
    bar.outline.set_linewidth(0.6)


def svg_text(figure: Any) -> str:
    """A figure as SVG without a date or a random id."""
    text = io.StringIO()
    figure.savefig(text, format="svg", metadata={"Date": None}, transparent=True)
    return LONG_NUMBER.sub(r"\1", text.getvalue())
