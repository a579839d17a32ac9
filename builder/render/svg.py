"""The pieces that drawings are made of, as SVG."""

import re
from collections.abc import Callable, Iterable
from html import unescape

from builder.document import Markup
from builder.reading.addresses import address
from builder.render.elements import element, words
from builder.render.markup import joined, markup
from builder.render.numbers import number

INK, PAPER, NONE = "currentColor", "var(--paper, #fff)", "none"


def drawing(
    name: str,
    title: str,
    says: str,
    size: tuple[float, float],
    parts: Iterable[Markup],
    *,
    kind: str = "plan",
    lettering: float | None = None,
    style: str | None = None,
) -> Markup:
    """
    A whole drawing that takes its ink from the page: what it is called and shows, then its parts.

    With a ``style`` it also has a width of its own, in drawing units.
    """
    key = address(name)
    wide, high = size
    told = (
        element("title", words(title), id=f"{key}-t"),
        element("desc", words(says), id=f"{key}-d"),
    )
    return element(
        "svg",
        *told,
        *parts,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {number(wide)} {number(high)}",
        role="img",
        class_=kind,
        aria_labelledby=f"{key}-t {key}-d",
        fill=NONE,
        stroke=INK,
        stroke_linejoin="round",
        font_family="inherit",
        font_size=lettering,
        width=None if style is None else wide,
        style=style,
    )


def lettered(
    x: float,
    y: float,
    text: str,
    size: float,
    *,
    side: str = "start",
    strong: bool = False,
    halo: bool = False,
) -> Markup:
    """
    A line of text, in ink alone or with a halo in the colour of the paper, so that lines behind it
    do not disturb.
    """
    return element(
        "text",
        words(text),
        x=x,
        y=y,
        font_size=size,
        text_anchor=side,
        font_weight="600" if strong else None,
        fill=INK,
        stroke=PAPER if halo else NONE,
        stroke_width=3 if halo else None,
        paint_order="stroke" if halo else None,
    )


def rectangle(
    x: float, y: float, width: float, height: float, **look: str | float | None
) -> Markup:
    """A rectangle with presentation attributes."""
    return element("rect", x=x, y=y, width=width, height=height, **look)


def circle(x: float, y: float, radius: float, **look: str | float | None) -> Markup:
    """A circle with presentation attributes."""
    return element("circle", cx=x, cy=y, r=radius, **look)


def path(d: str, **look: str | float | None) -> Markup:
    """A path with presentation attributes."""
    return element("path", d=d, **look)


def told(says: str, *inner: Markup) -> Markup:
    """Parts that say something where they are pointed at."""
    return element("g", element("title", words(says)), *inner)


def linked(anchor: str, *inner: Markup) -> Markup:
    """
    Parts that lead to a line of their page; to nowhere without an anchor. Whoever writes the page
    puts the line's id in, see :func:`aimed`.
    """
    return element("a", *inner, href=f"#{anchor}") if anchor else joined(inner)


AIM = re.compile(r'<a href="#([^"]*)">')


def aimed(drawn: Markup, page: str, id_of: Callable[[str], str]) -> Markup:
    """A drawing whose links lead to the ids of lines of a page; no page means their own."""
    return Markup(
        AIM.sub(
            lambda link: markup('<a href="{}#{}">', words(page), words(id_of(unescape(link[1])))),
            drawn,
        )
    )
