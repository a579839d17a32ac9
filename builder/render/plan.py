"""
Plans to scale, as SVG that stands in a page and takes its ink from it.

Metres in, drawing units out. The audience is at the bottom, so stage left is on the right: x grows
to the right, depth grows to the top. A look is a set of presentation attributes; shapes and dashes
tell things apart, so a plan reads without colour.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from builder.document import Markup
from builder.reading.addresses import address
from builder.render import svg
from builder.render.elements import element
from builder.render.markup import joined
from builder.render.numbers import number
from builder.render.svg import INK, NONE, PAPER

At = tuple[float, float]

WIDTH = 900.0
MARGIN = 34.0
FOOT = 0.3048


@dataclass(frozen=True, slots=True)
class Look:
    """
    How a line or area is drawn: width in drawing units, dashes, and how strongly it is filled with
    ink (0 to 1).
    """

    width: float = 1.2
    dash: str = ""
    fill: float = 0.0
    opacity: float = 1.0


SOLID = Look()
HEAVY = Look(width=2.4)
HAIR = Look(width=0.6)
DASHED = Look(width=1.0, dash="7 4")
DOTTED = Look(width=1.0, dash="1.5 3.5")
CHAIN = Look(width=0.7, dash="14 4 2 4")
PALE = Look(width=0.8, fill=0.05)
TINT = Look(width=1.0, fill=0.12)


@dataclass(frozen=True, slots=True)
class Area:
    """
    A closed shape. ``says`` is read out and shown on hover; ``anchor`` links to a place on the same
    page.
    """

    corners: Sequence[At]
    look: Look = SOLID
    says: str = ""
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Track:
    """An open line through points."""

    points: Sequence[At]
    look: Look = SOLID
    says: str = ""
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Mark:
    """
    A small sign at a place: ``circle``, ``square``, ``triangle``, ``diamond``, ``cross`` or
    ``ring`` (a circle in a circle).

    ``filled`` from 0 to 1 fills the sign from below, so a share can be read without colour.
    ``size`` is half its width in drawing units.
    """

    at: At
    sign: str = "circle"
    filled: float = 0.0
    size: float = 5.0
    says: str = ""
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Note:
    """
    Text at a place. ``side`` is start, middle or end; ``shift`` moves it in drawing units (right,
    down).
    """

    at: At
    text: str
    size: float = 11.0
    side: str = "middle"
    shift: At = (0.0, 0.0)
    strong: bool = False


Element = Area | Track | Mark | Note


@dataclass(frozen=True, slots=True)
class Plan:
    """
    A plan: its elements in the order of drawing, and what it shows, in a sentence or two for those
    who cannot see it.

    ``across_m`` shows only that stretch across the stage; what reaches beyond is cut off.
    ``lettering`` sizes the words that every plan has.
    """

    name: str
    title: str
    says: str
    elements: Sequence[Element]
    margin_m: float = 1.0
    axes: bool = True
    across_m: tuple[float, float] | None = None
    lettering: float = 10.0


@dataclass(frozen=True, slots=True)
class Frame:
    """The part of the world that is drawn, and the scale."""

    left_m: float
    right_m: float
    near_m: float
    far_m: float

    @property
    def scale(self) -> float:
        """Drawing units a metre."""
        return (WIDTH - 2 * MARGIN) / (self.right_m - self.left_m)

    @property
    def height(self) -> float:
        """Height of the drawing in drawing units, room for the scale bar included."""
        return (self.far_m - self.near_m) * self.scale + 2 * MARGIN + 26

    def place(self, at: At) -> At:
        """Drawing units of a place in metres."""
        return (
            MARGIN + (at[0] - self.left_m) * self.scale,
            MARGIN + (self.far_m - at[1]) * self.scale,
        )


def plan_svg(plan: Plan) -> Markup:
    """
    The plan as an SVG element.

    Raises
    ------
    ValueError
        If the plan has no elements with a place.
    """
    frame = frame_of(plan)
    parts = [
        *(axes(frame, plan.lettering) if plan.axes else ()),
        *(drawn(part, frame) for part in plan.elements),
        scale_bar(frame, plan.lettering),
    ]
    return svg.drawing(
        plan.name,
        plan.title,
        plan.says,
        (WIDTH, frame.height),
        clipped(plan.name, parts, frame) if plan.across_m else parts,
        lettering=11,
    )


def clipped(name: str, parts: Sequence[Markup], frame: Frame) -> tuple[Markup, ...]:
    """
    A drawing cut at its frame: where a page leaves more room, what lies beyond must not show
    without its points.
    """
    key = f"{address(name)}-cut"
    window = element("rect", width=WIDTH, height=frame.height)
    return element("clipPath", window, id=key), element("g", *parts, clip_path=f"url(#{key})")


def frame_of(plan: Plan) -> Frame:
    """The frame that holds every element with the plan's margin."""
    places = [at for element in plan.elements for at in places_of(element)]
    if not places:
        raise ValueError("plan.elements must hold at least one element with a place, got none")
    xs, ys = [at[0] for at in places], [at[1] for at in places]
    near_m, far_m = min(ys) - plan.margin_m, max(ys) + plan.margin_m
    if plan.across_m:
        return Frame(*plan.across_m, near_m, far_m)
    middle, half = (min(xs) + max(xs)) / 2, max((max(xs) - min(xs)) / 2 + plan.margin_m, 1.0)
    return Frame(middle - half, middle + half, near_m, far_m)


def places_of(element: Element) -> Iterable[At]:
    """The places an element touches."""
    match element:
        case Area():
            return element.corners
        case Track():
            return element.points
        case _:
            return (element.at,)


def drawn(part: Element, frame: Frame) -> Markup:
    """One element as SVG, within its title and link where it has them."""
    match part:
        case Area():
            inner = element("polygon", points=points(part.corners, frame), **attributes(part.look))
        case Track():
            inner = element("polyline", points=points(part.points, frame), **attributes(part.look))
        case Mark():
            inner = sign(part, frame)
        case Note():
            return note(part, frame)
    return svg.linked(part.anchor, svg.told(part.says, inner) if part.says else inner)


def attributes(look: Look) -> dict[str, str | float | None]:
    """A look as presentation attributes."""
    return {
        "stroke_width": look.width,
        "stroke_dasharray": look.dash or None,
        "fill": INK if look.fill else None,
        "fill_opacity": f"{look.fill:g}" if look.fill else None,
        "stroke_opacity": f"{look.opacity:g}" if look.opacity < 1 else None,
    }


def points(places: Sequence[At], frame: Frame) -> str:
    """Places as SVG points."""
    return " ".join(f"{number(x)},{number(y)}" for x, y in (frame.place(at) for at in places))


def sign(mark: Mark, frame: Frame) -> Markup:
    """
    A mark: its outline on paper, and the filled share within it.

    Raises
    ------
    ValueError
        If the sign is not one of the known.
    """
    x, y = frame.place(mark.at)
    share = min(max(mark.filled, 0.0), 1.0)
    outline = outlined(mark, x, y)
    return joined((outline, filling(mark, x, y, share))) if share else outline


def outlined(mark: Mark, x: float, y: float) -> Markup:
    """The outline of a sign; errors as for :func:`sign`."""
    if mark.sign in POLYGONS:
        corners = shape(x, y, mark.size, POLYGONS[mark.sign])
        return element("polygon", points=corners, fill=PAPER, stroke_width=1.3)
    if mark.sign == "cross":
        side = number(2 * mark.size)
        strokes = f"l{side} {side}m0 -{side}l-{side} {side}"
        start = f"M{number(x - mark.size)} {number(y - mark.size)}"
        return svg.path(start + strokes, stroke_width=1.8)
    if mark.sign not in ("circle", "ring"):
        raise ValueError(
            f"sign must be circle, ring, cross, {', '.join(POLYGONS)}, got {mark.sign!r}"
        )
    outer = svg.circle(x, y, mark.size, fill=PAPER, stroke_width=1.3)
    return joined((outer, svg.circle(x, y, mark.size / 2))) if mark.sign == "ring" else outer


POLYGONS: dict[str, Sequence[At]] = {
    "square": ((-1, -1), (1, -1), (1, 1), (-1, 1)),
    "triangle": ((0, -1.15), (1, 0.85), (-1, 0.85)),
    "diamond": ((0, -1.2), (1.2, 0), (0, 1.2), (-1.2, 0)),
}


def filling(mark: Mark, x: float, y: float, share: float) -> Markup:
    """
    The filled share of a sign: an inner disc of that share of its area for round signs, a bar from
    below for the others.
    """
    if mark.sign in ("circle", "ring"):
        return svg.circle(x, y, mark.size * share**0.5, fill=INK, stroke=NONE)
    height = 2 * mark.size * share
    return svg.rectangle(
        x - mark.size,
        y + mark.size - height,
        2 * mark.size,
        height,
        fill=INK,
        stroke=NONE,
    )


def shape(x: float, y: float, size: float, corners: Sequence[At]) -> str:
    """Corners in units of ``size`` around a place, as SVG points."""
    return " ".join(f"{number(x + dx * size)},{number(y + dy * size)}" for dx, dy in corners)


def note(part: Note, frame: Frame) -> Markup:
    """Text with a halo in the colour of the paper, so that lines behind it do not disturb."""
    x, y = frame.place(part.at)
    return svg.lettered(
        x + part.shift[0],
        y + part.shift[1],
        part.text,
        part.size,
        side=part.side,
        strong=part.strong,
        halo=True,
    )


def axes(frame: Frame, size: float) -> Iterable[Markup]:
    """
    The centre line and the datum line, where they cross the frame, with their names; the sides,
    where the centre line leaves room.
    """
    if frame.left_m < 0 < frame.right_m:
        yield drawn(Track(((0, frame.near_m), (0, frame.far_m)), CHAIN), frame)
        yield note(Note((0, frame.far_m), "centre line", size, shift=(0, -8)), frame)
    if frame.near_m < 0 < frame.far_m:
        yield drawn(Track(((frame.left_m, 0), (frame.right_m, 0)), CHAIN), frame)
        yield note(Note((frame.left_m, 0), "datum", size, side="start", shift=(-24, -4)), frame)
    room_m = 14 * size / frame.scale
    if not 0 < frame.right_m < room_m:
        yield note(
            Note((frame.right_m, frame.far_m), "stage left →", size, side="end", shift=(24, -8)),
            frame,
        )
    if not 0 < -frame.left_m < room_m:
        yield note(
            Note((frame.left_m, frame.far_m), "← stage right", size, side="start", shift=(-24, -8)),
            frame,
        )


def scale_bar(frame: Frame, lettering: float) -> Markup:
    """A bar in metres and one in feet, so that a print at any size can be measured."""
    y, size = frame.height - 22, lettering + 1
    metres = bar_length((frame.right_m - frame.left_m) / 4, (1, 2, 5, 10, 20, 50))
    feet = bar_length((frame.right_m - frame.left_m) / 4 / FOOT, (2, 5, 10, 20, 50, 100, 200))
    x = MARGIN
    second = x + metres * frame.scale + 90 * size / 11
    return joined(
        (
            bar(x, y, metres * frame.scale, f"{metres} m", size),
            bar(second, y, feet * FOOT * frame.scale, f"{feet} ft", size),
        )
    )


def bar_length(most: float, choices: Sequence[int]) -> int:
    """The longest round length that is not longer than ``most``, or the shortest there is."""
    return max([choice for choice in choices if choice <= most], default=choices[0])


def bar(x: float, y: float, length: float, text: str, size: float) -> Markup:
    """One scale bar with its length in words."""
    strokes = f"M{number(x)} {number(y - 4)}v8m0 -4h{number(length)}m0 -4v8"
    return joined(
        (svg.path(strokes, stroke_width=1.2), svg.lettered(x + length + 6, y + 4, text, size))
    )
