"""The stage's figures: what the outlines and the stock make up, each with its working."""

from collections.abc import Mapping, Sequence
from math import fsum

from builder.cautions import STAGE
from builder.departments.stage.description import Deck, Obstruction, Outline, Stage, Wing
from builder.departments.stage.distances import Distance
from builder.departments.stage.stock import Furnishing, Riser
from builder.formulas.polygons import extent_m, polygon_area_m2
from builder.pack import Figure, Input, Value, not_more, one_or_both
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.in_part import as_written, ends_of
from builder.reading.maybe import Maybe
from builder.reading.measures import System, shown
from builder.reading.quantities import Area, Length
from builder.working import by_hand, figure, length_value, missing, worked


def area_value(area_m2: float, system: System) -> Value:
    """An area in both unit systems, the house's first."""
    return Value(*shown(Area, area_m2, system=system), number=round(area_m2, 3), unit="m2")


def deck_area(key: str, deck: Deck, system: System) -> Figure:
    """The area that the deck's outline encloses."""
    corners = points(deck.outline)
    if not corners:
        working = worked(polygon_area_m2, inputs=[Input("corners", as_written(deck.outline))])
        return missing(f"{key}.area", "Deck area", working, ["outline"], caution=STAGE)
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
    terms = [
        (f"{x:g} × {signed(v)} − {signed(u)} × {signed(y)}", x * v - u * y + 0.0)
        for (x, y), (u, v) in sides
    ]
    written = [
        f"Side {number}: {text} = {term:.2f} m²" for number, (text, term) in enumerate(terms, 1)
    ]
    return [*written, f"A = |{fsum(term for _, term in terms):.2f}| / 2 = {area_m2:.1f} m²"]


def signed(number: float) -> str:
    """A number behind a sign: in brackets where it has one of its own."""
    return f"({number:g})" if number < 0 else f"{number:g}"


def riser_area(key: str, riser: Riser, system: System) -> Figure:
    """The area that all decks of one kind make up, at least and at most."""
    written = {"count": riser.count, "width": riser.width, "depth": riser.depth}
    return area_in_all(key, riser.name, written, riser_ends_m2(riser), system)


def laid_area(key: str, rolls: Furnishing, system: System) -> Figure:
    """The area that all rolls of a dance floor, or carpets, cover, laid edge to edge."""
    written = {"count": rolls.count, "width": rolls.each_width, "length": rolls.each_length}
    ends_m2 = area_ends_m2(rolls.count, rolls.each_width, rolls.each_length)
    if rolls.count is Absent.NONE:
        ends_m2 = (0.0, 0.0)
    return area_in_all(key, rolls.name, written, ends_m2, system)


def area_in_all(
    key: str,
    of: str,
    written: Mapping[str, object],
    ends_m2: tuple[float | None, float | None],
    system: System,
) -> Figure:
    """Count × one side × the other, at least and at most."""
    factors = " × ".join(as_written(value) for value in written.values())
    value = one_or_both(
        *(None if found_m2 is None else area_value(found_m2, system) for found_m2 in ends_m2)
    )
    found = f" = {value.text}" if value else ""
    working = worked(
        polygon_area_m2,
        equation=f"A = {' × '.join(written)}",
        inputs=[
            Input(name, as_written(value), f"{key}.count" if name == "count" else "")
            for name, value in written.items()
        ],
        steps=[f"A = {factors}{found}"],
    )
    label, name = "Area in all", f"{key}.area"
    if value is None:
        lacks = [word for word, each in written.items() if ends_of(each) == (None, None)]
        return missing(name, label, working, [f"the {word} of {of}" for word in lacks])
    return figure(name, label, value, working)


def riser_ends_m2(riser: Riser) -> tuple[float | None, float | None]:
    """The area of all decks of one kind at least and at most, None for an end nobody knows. [m2]"""
    return area_ends_m2(riser.count, riser.width, riser.depth)


def area_ends_m2(
    count_told: Maybe[int], width_told: Maybe[Length], depth_told: Maybe[Length]
) -> tuple[float | None, float | None]:
    """The area of so many rectangles at least and at most, None for an end nobody knows. [m2]"""
    counts, widths, depths = ends_of(count_told), ends_of(width_told), ends_of(depth_told)
    least, most = (
        area_m2(count, width, depth)
        for count, width, depth in zip(counts, widths, depths, strict=True)
    )
    return least, most


def area_m2(count: int | None, width: Length | None, depth: Length | None) -> float | None:
    """The area of so many rectangles, None where something is not known. [m2]"""
    if count is None or width is None or depth is None:
        return None
    return count * polygon_area_m2(((0, 0), (width.m, 0), (width.m, depth.m), (0, depth.m)))


def behind_curtain(key: str, deck: Deck, stage: Stage, system: System) -> Figure:
    """The clear depth behind the curtain line, where the house does not write it."""
    work = by_hand(
        "clear depth − from the edge of the stage to the curtain line, at its deepest",
        "plane geometry",
        inputs=[Input("Clear depth", as_written(deck.usable_depth), f"{key}.usable_depth")],
        steps=["Without a proscenium nothing is taken off." if flat(stage) else APRON],
        lines=stage.distances,
    )
    name, label = f"{key}.behind-curtain", "Clear depth behind the curtain line"
    depths_m = [None if end is None else end.m for end in ends_of(deck.usable_depth)]
    aprons_m = (0.0, 0.0) if flat(stage) else apron_ends_m(stage.distances)
    least, most = (
        None if depth is None or apron is None else depth - apron
        for depth, apron in zip(depths_m, reversed(aprons_m), strict=True)
    )
    value = one_or_both(
        *(None if end is None or end <= 0.0 else length_value(end, system) for end in (least, most))
    )
    if value is None:
        lacks = ["the clear depth"] if None in depths_m else ["from the edge to the curtain line"]
        return missing(name, label, work, lacks, caution=STAGE)
    return figure(name, label, value, work, caution=STAGE)


APRON = "What lies in front of the curtain line is no playing area behind it."


def flat(stage: Stage) -> bool:
    """Whether the house says that there is no proscenium."""
    return Absent.NONE in (stage.proscenium, stage.opening_width)


def apron_ends_m(told: Sequence[Distance]) -> tuple[float | None, float | None]:
    """
    How far the edge of the stage is from the curtain line at least and at most, at its deepest;
    nothing for certain where nobody measured it. [m]
    """
    ends = [
        ends_of(each.length)
        for each in told
        if {each.from_, each.to} == {"edge of stage", "curtain line"}
    ]
    mosts = [most for _, most in ends]
    deepest = None if not ends or None in mosts else max(m.m for m in mosts if m is not None)
    return max((least.m for least, _ in ends if least is not None), default=0.0), deepest


def wing_size(
    key: str, wing: Wing, told: Sequence[Obstruction] | Absent, system: System
) -> tuple[Figure, Figure]:
    """
    Width and depth of a wing that is drawn: of its outline where that is a clear rectangle, else at
    most so much. What stands somewhere and is not drawn may stand in it.
    """
    corners, obstructions = points(wing.outline), () if isinstance(told, Absent) else told
    sizes_m = extent_m(corners)
    standing = [
        each.name
        for each in obstructions
        if each.from_height is None
        and not isinstance(each.outline, Absent)
        and meet(corners, points(each.outline))
    ]
    askew = abs(sizes_m[0] * sizes_m[1] - polygon_area_m2(corners)) > 0.001
    less = [
        *(["the outline is no upright rectangle"] if askew else []),
        *(f"{name} stands in it" for name in standing),
        *(
            f"nobody has drawn where {each.name} is"
            for each in obstructions
            if isinstance(each.outline, Absent)
        ),
        *(["nobody knows what is in the way"] if is_unknown(told) else []),
    ]
    listed = "; ".join(f"({x:g}, {y:g})" for x, y in corners)
    found = []
    for name, label, axis, size_m in (
        ("width", "Width", 0, sizes_m[0]),
        ("depth", "Depth", 1, sizes_m[1]),
    ):
        ends_m = [corner[axis] for corner in corners]
        beside_m = None if axis or len(less) > len(standing) else beside_deck_m(wing, obstructions)
        step = f"{label} = {max(ends_m):g} − {signed(min(ends_m))} = {size_m:.2f} m"
        beside = f"Between the deck and the first of what stands in it: {beside_m or 0.0:.2f} m"
        working = worked(
            extent_m,
            inputs=[Input("corners (across, depth) [m]", listed, f"{key}.outline")],
            steps=[step] if beside_m is None else [step, beside],
            leaves_out=f"At most so much, for {' and '.join(less)}." if less else "",
            lines=obstructions,
        )
        text, also = shown(Length, size_m, system=system)
        exact = Value(text, also, number=round(size_m, 3), unit="m")
        value = not_more(exact) if less else exact
        if less and beside_m is not None:
            text, also = shown(Length, beside_m, system=system)
            least = Value(text, also, number=round(beside_m, 3), unit="m")
            value = one_or_both(least, exact) or value
        found.append(figure(f"{key}.{name}", label, value, working, caution=STAGE))
    return found[0], found[1]


def beside_deck_m(wing: Wing, obstructions: Sequence[Obstruction]) -> float | None:
    """
    How wide the floor of a side wing is between the deck and the first thing that stands in it;
    None where nothing is left there, and for a wing upstage. [m]
    """
    if wing.name == "upstage":
        return None
    corners = points(wing.outline)
    inner_m = min((across for across, _ in corners), key=abs)
    free_m = [
        min(abs(across) for across, _ in points(each.outline)) - abs(inner_m)
        for each in obstructions
        if each.from_height is None and meet(corners, points(each.outline))
    ]
    least_m = min(free_m, default=0.0)
    return least_m if least_m > 0.0 else None


def points(outline: Outline | Absent) -> list[tuple[float, float]]:
    """An outline in metres from the datum; empty where nobody drew it."""
    return [(corner.across.m, corner.depth.m) for corner in listed(outline)]


def meet(one: Sequence[tuple[float, float]], other: Sequence[tuple[float, float]]) -> bool:
    """Whether the upright rectangles around two outlines have floor in common."""
    return all(
        min(a[axis] for a in one) < max(b[axis] for b in other)
        and min(b[axis] for b in other) < max(a[axis] for a in one)
        for axis in (0, 1)
    )
