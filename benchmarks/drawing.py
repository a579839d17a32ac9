"""
Maps of levels as drawings: our own writer against matplotlib, on the sheets of the demo.

Peer: matplotlib draws the same grids with the same steps as filled contours with lines, numbers,
outlines, marks and one scale, saved as SVG. Both find contours by the same library, so the ratio is
what the rest of a drawing costs. The peer draws one ink; ours holds both.
"""

import time
from collections.abc import Callable
from io import BytesIO
from math import ceil
from pathlib import Path

from matplotlib.figure import Figure
from matplotlib.patches import Polygon

from builder.files import read_folder
from builder.pipeline import document_of, pack_of, venue_of
from builder.render import level_map
from builder.render.level_map import Sheet

VENUE = Path(__file__).parent.parent / "venue"
RUNS = 3
INCHES_A_PANEL = 3.5


def sheets_of_the_demo() -> list[Sheet]:
    """Every sheet of maps that the demo's pages show."""
    folder = read_folder(VENUE)
    pack = pack_of(venue_of(folder.texts, folder.photos))
    found: list[Sheet] = []
    draw = level_map.level_map_svg

    def kept(sheet: Sheet) -> str:
        found.append(sheet)
        return draw(sheet)

    level_map.level_map_svg = kept
    try:
        document_of(pack)
    finally:
        level_map.level_map_svg = draw
    return found


def by_the_peer(sheet: Sheet) -> bytes:
    """One sheet by matplotlib."""
    columns = sheet.columns
    rows = ceil(len(sheet.panels) / columns)
    figure = Figure(figsize=(INCHES_A_PANEL * columns, INCHES_A_PANEL * rows))
    frames = figure.subplots(rows, columns, squeeze=False).ravel()
    left, right, near, far = sheet.extent_m
    filled = None
    for (title, layers), frame in zip(sheet.panels, frames, strict=False):
        frame.set(title=title, xlim=(left, right), ylim=(near, far), aspect="equal")
        for layer in layers:
            grid = layer.levels
            filled = frame.contourf(
                grid.xs_m, grid.ys_m, grid.db, levels=sheet.steps_db, extend="both"
            )
            lines = frame.contour(
                grid.xs_m, grid.ys_m, grid.db, levels=sheet.steps_db, colors="black", linewidths=0.5
            )
            frame.clabel(lines, fontsize=7)
            if layer.corners:
                area = Polygon(layer.corners, closed=True, transform=frame.transData)
                filled.set_clip_path(area)
                lines.set_clip_path(area)
        for shape in sheet.shapes:
            frame.add_patch(Polygon(shape.corners, closed=True, fill=False))
        for name, (x_m, y_m) in sheet.spots:
            frame.annotate(name, (x_m, y_m))
    if filled is not None:
        figure.colorbar(filled, ax=list(frames), orientation="horizontal")
    held = BytesIO()
    figure.savefig(held, format="svg")
    return held.getvalue()


def best(action: Callable[[], object]) -> float:
    """The least processor time of a few runs, in seconds."""
    times = []
    for _ in range(RUNS):
        start = time.process_time()
        action()
        times.append(time.process_time() - start)
    return min(times)


def main() -> None:
    """Print the two and their ratio."""
    sheets = sheets_of_the_demo()
    ours = best(lambda: [level_map.level_map_svg(sheet) for sheet in sheets])
    peer = best(lambda: [by_the_peer(sheet) for sheet in sheets])
    size = sum(len(level_map.level_map_svg(sheet).encode()) for sheet in sheets)
    size_by_peer = sum(len(by_the_peer(sheet)) for sheet in sheets)
    print(f"{len(sheets)} sheets, {sum(len(sheet.panels) for sheet in sheets)} maps")
    print(
        f"ours {ours:.2f} s, {size / 1000:,.0f} kB; matplotlib {peer:.2f} s,"
        f" {size_by_peer / 1000:,.0f} kB"
    )
    print(f"ratio: {peer / ours:.0f} x as fast, {size_by_peer / size:.1f} x as small")


if __name__ == "__main__":
    main()
