"""
Coverage maps: fields of the pack, laid on a grid and drawn as filled contours.

Reads the pack alone.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from builder.document import Markup
from builder.pack import Field, Outline
from builder.render import level_map
from builder.render.contours import Levels

INKS = {"light": "#1b1e23", "dark": "#e6e8eb"}


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
def map_svg(sheet: Sheet) -> tuple[Markup, Markup]:
    """
    A sheet of maps as SVG, for a light page and for a dark one.

    Raises
    ------
    ValueError
        If there is no panel.
    """
    if not sheet.panels:
        raise ValueError("sheet.panels must hold at least one map, got none")
    drawn = level_map.level_map_svg(laid_out(sheet))
    return level_map.inked(drawn, INKS["light"]), level_map.inked(drawn, INKS["dark"])


def laid_out(sheet: Sheet) -> level_map.Sheet:
    """The sheet as drawings know it: grids and corners."""
    panels = tuple(
        (shown.title, tuple(layer(field, shown.band, sheet.outlines) for field in shown.fields))
        for shown in sheet.panels
    )
    return level_map.Sheet(
        panels=panels,
        shapes=tuple(
            level_map.Shape(outline.corners, outline.name, heavy=outline.kind == "deck")
            for outline in sheet.outlines
        ),
        spots=tuple((spot.name, (spot.across_m, spot.depth_m)) for spot in sheet.spots),
        extent_m=extent(sheet),
        steps_db=sheet.steps_db,
        reference=sheet.panels[0].fields[0].reference,
        columns=sheet.columns,
    )


def extent(sheet: Sheet) -> tuple[float, float, float, float]:
    """The part of the plan that is shown: left, right, near, far."""
    places = [
        (x, y) for panel in sheet.panels for field in panel.fields for x, y, _ in field.points
    ]
    places += [corner for outline in sheet.outlines for corner in outline.corners]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return min(xs) - 0.5, max(xs) + 0.5, min(ys) - 0.5, max(ys) + 0.5


def layer(field: Field, band: str, outlines: Sequence[Outline]) -> level_map.Layer:
    """
    One band of a field, cut at the outline of the area that it was computed over, found by its
    name.
    """
    area = next((outline for outline in outlines if outline.name == field.name), None)
    hidden = tuple(field.points[index][:2] for index in field.hidden)
    return level_map.Layer(Levels(*grid(field, band)), area.corners if area else (), hidden)


def grid(field: Field, band: str) -> tuple[Any, Any, Any]:
    """
    One band as a grid for contours; cells just outside the area take their nearest neighbour's
    level, so that contours reach the outline.

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
    around = np.stack(
        [
            framed[1 + dy : 1 + dy + rows, 1 + dx : 1 + dx + columns]
            for dx in (-1, 0, 1)
            for dy in (-1, 0, 1)
        ]
    )
    there = ~np.isnan(around)
    count = there.sum(axis=0)
    mean = np.where(there, around, 0.0).sum(axis=0) / np.maximum(count, 1)
    return np.where(np.isnan(levels) & (count > 0), mean, levels)
