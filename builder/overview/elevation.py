"""
The stage seen from the house, to scale, for the first page: how wide, how high up, how much air
above, with a person beside it.
"""

from collections.abc import Iterator, Sequence

from builder.document import Picture
from builder.pack import Item, Pack
from builder.render.plan import SOLID, Area, At, Element, Look, Mark, Note, Plan, Track, plan_svg

LETTERING = 34.0
"""Height of the numbers in drawing units: about 12 px where the drawing is as wide as a phone."""
PERSON_M = 1.75
TICK_M = 0.22
LIMIT = Look(width=2.5, dash="16 9")


def elevation(pack: Pack) -> Picture | None:
    """The first state of the deck; nothing for a house that does not state its width and height."""
    deck = next((item for item in pack.items() if item.kind == "deck"), None)
    if deck is None or not deck.number("usable_width") or deck.number("height") is None:
        return None
    words = said(deck)
    plan = Plan(
        "stage-elevation",
        "The stage from the house",
        words,
        tuple(elements(deck)),
        margin_m=0.4,
        axes=False,
        lettering=26,
    )
    return Picture(
        "stage-elevation",
        plan_svg(plan),
        words,
        caption=f"The stage from the house, {deck.name}, to scale. The person is 1.75 m tall.",
    )


def said(deck: Item) -> str:
    """What the drawing shows, for those who cannot see it."""
    clear = (
        f", clear height above it {deck.text('clear_height')}"
        if deck.number("clear_height")
        else ""
    )
    return (
        f"The stage seen from the house: {deck.text('usable_width')} wide, {deck.text('height')}"
        f" up{clear}."
    )


def elements(deck: Item) -> Iterator[Element]:
    """From the floor up."""
    half_m, up_m = (deck.number("usable_width") or 0) / 2, deck.number("height") or 0
    out_m = half_m + max(2.6, half_m * 0.36)
    clear_m = deck.number("clear_height")
    yield Track(((-out_m, 0), (out_m, 0)), Look(width=3.5))
    yield Area(
        ((-half_m, 0), (half_m, 0), (half_m, up_m), (-half_m, up_m)), Look(width=2.5, fill=0.13)
    )
    yield from person(-half_m * 0.45, up_m)
    yield from measured(
        (-half_m, up_m + 0.9), (half_m, up_m + 0.9), deck.text("usable_width"), (0, -16)
    )
    if up_m:
        yield from measured(
            (-half_m - 0.7, 0), (-half_m - 0.7, up_m), deck.text("height"), (-16, 0), side="end"
        )
    if clear_m:
        yield Track(((-half_m, up_m + clear_m), (half_m, up_m + clear_m)), LIMIT)
        yield from measured(
            (half_m + 0.7, up_m),
            (half_m + 0.7, up_m + clear_m),
            deck.text("clear_height"),
            (16, 0),
            side="start",
        )


def person(across_m: float, on_m: float) -> Iterator[Element]:
    """Someone to measure by."""
    head_m = on_m + PERSON_M
    yield Area(
        (
            (across_m - 0.16, on_m),
            (across_m + 0.16, on_m),
            (across_m + 0.26, head_m - 0.32),
            (across_m - 0.26, head_m - 0.32),
        ),
        Look(0.6, fill=0.85),
    )
    yield Mark((across_m, head_m - 0.13), filled=1.0, size=6.5)


def measured(
    start: At, end: At, text: str, shift: At, *, side: str = "middle"
) -> Iterator[Element]:
    """A measure with its two ends and its number."""
    upright = start[0] == end[0]
    yield Track((start, end), SOLID)
    for x, y in (start, end):
        yield Track(
            ((x - TICK_M, y), (x + TICK_M, y)) if upright else ((x, y - TICK_M), (x, y + TICK_M)),
            SOLID,
        )
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    yield Note(
        middle,
        text,
        LETTERING,
        side=side,
        shift=(shift[0], shift[1] + (LETTERING / 3 if upright else 0)),
        strong=True,
    )


__all__: Sequence[str] = ("elevation",)
