"""
Plans to scale, as SVG that stands in a page and takes its ink from it.

Metres in, drawing units out. The audience is at the bottom, so stage left is on the right: x grows
to the right, depth grows to the top. A look is a set of presentation attributes; shapes and dashes
tell things apart, so a plan reads without colour.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from html import escape
from math import ceil, floor

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


def plan_svg(plan: Plan) -> str:
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
        *(drawn(element, frame) for element in plan.elements),
        scale_bar(frame, plan.lettering),
    ]
    label = (
        f'<title id="{plan.name}-t">{escape(plan.title)}</title><desc'
        f' id="{plan.name}-d">{escape(plan.says)}</desc>'
    )
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(WIDTH)}'
        f' {number(frame.height)}" role="img" class="plan" aria-labelledby="{plan.name}-t'
        f' {plan.name}-d" fill="none" stroke="currentColor" stroke-linejoin="round"'
        ' font-family="inherit" font-size="11">'
    )
    inner = "".join(parts)
    return f"{head}{label}{clipped(plan.name, inner, frame) if plan.across_m else inner}</svg>"


def clipped(name: str, inner: str, frame: Frame) -> str:
    """
    A drawing cut at its frame: where a page leaves more room, what lies beyond must not show
    without its points.
    """
    cut = (
        f'<clipPath id="{name}-cut"><rect width="{number(WIDTH)}"'
        f' height="{number(frame.height)}"/></clipPath>'
    )
    return f'{cut}<g clip-path="url(#{name}-cut)">{inner}</g>'


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


def drawn(element: Element, frame: Frame) -> str:
    """One element as SVG, within its title and link where it has them."""
    match element:
        case Area():
            inner = (
                f'<polygon points="{points(element.corners, frame)}"{attributes(element.look)}/>'
            )
        case Track():
            inner = (
                f'<polyline points="{points(element.points, frame)}"{attributes(element.look)}/>'
            )
        case Mark():
            inner = sign(element, frame)
        case Note():
            return note(element, frame)
    if element.says:
        inner = f"<g><title>{escape(element.says)}</title>{inner}</g>"
    return (
        f'<a href="#{escape(element.anchor, quote=True)}">{inner}</a>' if element.anchor else inner
    )


def attributes(look: Look) -> str:
    """A look as presentation attributes."""
    text = f' stroke-width="{number(look.width)}"'
    if look.dash:
        text += f' stroke-dasharray="{look.dash}"'
    if look.fill:
        text += f' fill="currentColor" fill-opacity="{look.fill:g}"'
    return text + (f' stroke-opacity="{look.opacity:g}"' if look.opacity < 1 else "")


def points(places: Sequence[At], frame: Frame) -> str:
    """Places as SVG points."""
    return " ".join(f"{number(x)},{number(y)}" for x, y in (frame.place(at) for at in places))


def sign(mark: Mark, frame: Frame) -> str:
    """
    A mark: its outline on paper, and the filled share within it.

    Raises
    ------
    ValueError
        If the sign is not one of the known.
    """
    x, y = frame.place(mark.at)
    paper = ' fill="var(--paper, #fff)" stroke-width="1.3"'
    if mark.sign in POLYGONS:
        outline = f'<polygon points="{shape(x, y, mark.size, POLYGONS[mark.sign])}"{paper}/>'
    elif mark.sign in ("circle", "ring"):
        outline = circle(x, y, mark.size, paper) + (
            circle(x, y, mark.size / 2, "") if mark.sign == "ring" else ""
        )
    elif mark.sign == "cross":
        side = number(2 * mark.size)
        outline = (
            f'<path d="M{number(x - mark.size)} {number(y - mark.size)}l{side} {side}m0'
            f' -{side}l-{side} {side}" stroke-width="1.8"/>'
        )
    else:
        raise ValueError(
            f"sign must be circle, ring, cross, {', '.join(POLYGONS)}, got {mark.sign!r}"
        )
    share = min(max(mark.filled, 0.0), 1.0)
    return outline + (filling(mark, x, y, share) if share else "")


POLYGONS: dict[str, Sequence[At]] = {
    "square": ((-1, -1), (1, -1), (1, 1), (-1, 1)),
    "triangle": ((0, -1.15), (1, 0.85), (-1, 0.85)),
    "diamond": ((0, -1.2), (1.2, 0), (0, 1.2), (-1.2, 0)),
}


def filling(mark: Mark, x: float, y: float, share: float) -> str:
    """
    The filled share of a sign: an inner disc of that share of its area for round signs, a bar from
    below for the others.
    """
    ink = ' fill="currentColor" stroke="none"'
    if mark.sign in ("circle", "ring"):
        return circle(x, y, mark.size * share**0.5, ink)
    height = 2 * mark.size * share
    return (
        f'<rect x="{number(x - mark.size)}" y="{number(y + mark.size - height)}"'
        f' width="{number(2 * mark.size)}" height="{number(height)}"{ink}/>'
    )


def circle(x: float, y: float, radius: float, look: str) -> str:
    """A circle in drawing units."""
    return f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(radius)}"{look}/>'


def shape(x: float, y: float, size: float, corners: Sequence[At]) -> str:
    """Corners in units of ``size`` around a place, as SVG points."""
    return " ".join(f"{number(x + dx * size)},{number(y + dy * size)}" for dx, dy in corners)


def note(element: Note, frame: Frame) -> str:
    """Text with a halo in the colour of the paper, so that lines behind it do not disturb."""
    x, y = frame.place(element.at)
    weight = ' font-weight="600"' if element.strong else ""
    return (
        f'<text x="{number(x + element.shift[0])}" y="{number(y + element.shift[1])}"'
        f' font-size="{number(element.size)}" text-anchor="{element.side}"{weight}'
        ' fill="currentColor" stroke="var(--paper, #fff)" stroke-width="3"'
        f' paint-order="stroke">{escape(element.text)}</text>'
    )


def axes(frame: Frame, size: float) -> Iterable[str]:
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


def scale_bar(frame: Frame, lettering: float) -> str:
    """A bar in metres and one in feet, so that a print at any size can be measured."""
    y, size = frame.height - 22, lettering + 1
    metres = bar_length((frame.right_m - frame.left_m) / 4, (1, 2, 5, 10, 20, 50))
    feet = bar_length((frame.right_m - frame.left_m) / 4 / FOOT, (2, 5, 10, 20, 50, 100, 200))
    x = MARGIN
    second = x + metres * frame.scale + 90 * size / 11
    return bar(x, y, metres * frame.scale, f"{metres} m", size) + bar(
        second, y, feet * FOOT * frame.scale, f"{feet} ft", size
    )


def bar_length(most: float, choices: Sequence[int]) -> int:
    """The longest round length that is not longer than ``most``, or the shortest there is."""
    return max([choice for choice in choices if choice <= most], default=choices[0])


def bar(x: float, y: float, length: float, text: str, size: float) -> str:
    """One scale bar with its length in words."""
    path = f"M{number(x)} {number(y - 4)}v8m0 -4h{number(length)}m0 -4v8"
    return (
        f'<path d="{path}" stroke-width="1.2"/><text x="{number(x + length + 6)}"'
        f' y="{number(y + 4)}" font-size="{number(size)}" fill="currentColor"'
        f' stroke="none">{escape(text)}</text>'
    )


def number(value: float) -> str:
    """
    A number with at most one decimal, the same text on every machine.

    Halves go up, so that mirrored drawings stay mirrored to a tenth.
    """
    tenths = floor(value * 10 + 0.5) if value >= 0 else ceil(value * 10 - 0.5)
    whole, rest = divmod(abs(tenths), 10)
    return f"{'-' if tenths < 0 else ''}{whole}{f'.{rest}' if rest else ''}"
