"""The stage's figures: what the outlines and the stock make up, each with its working."""

from collections.abc import Sequence

from builder.cautions import STAGE
from builder.departments.stage.description import Deck, Riser
from builder.formulas.polygons import polygon_area_m2
from builder.pack import Figure, Input, Value
from builder.reading.measures import System, shown
from builder.reading.quantities import Area
from builder.working import figure, worked


def area_value(area_m2: float, system: System) -> Value:
    """An area in both unit systems, the house's first."""
    return Value(*shown(Area, area_m2, system=system), number=round(area_m2, 3), unit="m2")


def deck_area(key: str, deck: Deck, system: System) -> Figure:
    """The area that the deck's outline encloses."""
    corners = [(corner.across.m, corner.depth.m) for corner in deck.outline]
    area_m2 = polygon_area_m2(corners)
    listed = "; ".join(f"({x:g}, {y:g})" for x, y in corners)
    working = worked(
        polygon_area_m2,
        inputs=[Input("corners (across, depth) [m]", listed, f"{key}.outline")],
        steps=shoelace(corners, area_m2),
        leaves_out="Columns and what always stands on the deck.",
    )
    return figure(f"{key}.area", "Deck area", area_value(area_m2, system), working, caution=STAGE)


def shoelace(corners: Sequence[tuple[float, float]], area_m2: float) -> list[str]:
    """The area's sum with numbers: for each side one product less the other."""
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    terms = [(f"{x:g} × {signed(v)} − {signed(u)} × {signed(y)}", x * v - u * y + 0.0) for (x, y), (u, v) in sides]
    written = [f"Side {number}: {text} = {term:.2f} m²" for number, (text, term) in enumerate(terms, 1)]
    return [*written, f"A = |{sum(term for _, term in terms):.2f}| / 2 = {area_m2:.1f} m²"]


def signed(number: float) -> str:
    """A number behind a sign: in brackets where it has one of its own."""
    return f"({number:g})" if number < 0 else f"{number:g}"


def riser_area(key: str, riser: Riser, system: System) -> Figure:
    """The area that all decks of one kind make up."""
    width_m, depth_m = riser.width.m, riser.depth.m
    area_m2 = riser.count * polygon_area_m2(((0, 0), (width_m, 0), (width_m, depth_m), (0, depth_m)))
    working = worked(
        polygon_area_m2,
        equation="A = count × width × depth",
        inputs=[Input("count", str(riser.count), f"{key}.count"), Input("width", riser.width.text), Input("depth", riser.depth.text)],
        steps=[f"A = {riser.count} × {width_m:g} m × {depth_m:g} m = {area_m2:.1f} m²"],
    )
    return figure(f"{key}.area", "Area in all", area_value(area_m2, system), working)
