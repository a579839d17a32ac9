"""
How high a deck is clear as it is found: below what cannot be moved, and below what the house has
hung there.
"""

from collections.abc import Iterator, Sequence
from math import inf

from builder.cautions import STAGE
from builder.departments.stage.description import Deck
from builder.exchange import HALF_HANG_M, Offers, Overhang, with_loads
from builder.formulas.polygons import Point, contains, sides_cross, sides_of, strip_around
from builder.formulas.trim import highest_trim_m
from builder.pack import Figure, Input, Value, Working, one_or_both
from builder.reading.absent import Absent, listed
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Length
from builder.working import figure, missing, worked

LABEL = "Clear height with the house's rig"
LEFT_OUT = "What a show hangs itself, and cable that sags."
NO_RIGGING = "the house describes no rigging, so nobody knows what hangs there"
NOT_TOLD = "nobody has said what of the house hangs there"


def clear_under_rig(key: str, deck: Deck, offers: Offers, system: System) -> Figure:
    """
    The clear height of a deck as its rig hangs, and with what may be taken down away.

    From the one to the other where they differ. A hang of which nobody says whether it comes down
    bounds the first alone.
    """
    over = list(over_deck(deck, offers))
    lows, highs = ends_m(deck)
    least_m = lows
    for hang in over:
        least_m = None if least_m is None or hang.lowest_m is None else min(least_m, hang.lowest_m)
    stays = [
        hang.highest_m
        for hang in over
        if hang.comes_down is False and hang.highest_m is not None and is_surely_over(hang, deck)
    ]
    most_m = min([*([] if highs is None else [highs]), *stays], default=None)
    if offers.overhead_told is False:
        least_m = None
    work = worked(
        highest_trim_m,
        inputs=[
            Input("Clear height", as_written(deck.clear_height), f"{key}.clear_height"),
            *(Input(hang.name, words_of(hang, system)) for hang in over),
        ],
        equation="the lowest over the deck: with the rig, and with what may come down away",
        leaves_out=LEFT_OUT,
        lines=[hang.check for hang in over if hang.check],
    )
    return told(f"{key}.clear-under-rig", (least_m, most_m), over, offers, work, system)


def over_deck(deck: Deck, offers: Offers) -> Iterator[Overhang]:
    """
    What hangs over a deck, with all that departments say of it. Over a deck without an outline any
    of it may hang, and a hang whose place nobody knows over any.
    """
    corners = [(corner.across.m, corner.depth.m) for corner in listed(deck.outline)]
    for hang in offers.overhead:
        ends = hang.ends
        if not corners or ends is None or meet(corners, strip_around(*ends, HALF_HANG_M)):
            yield with_loads(hang, offers.loads)


def is_surely_over(hang: Overhang, deck: Deck) -> bool:
    """Whether what is known of a deck and of a hang over it says that it is over it."""
    return bool(listed(deck.outline)) and hang.ends is not None


def meet(one: Sequence[Point], other: Sequence[Point]) -> bool:
    """Whether two outlines have floor in common."""
    return (
        any(contains(one, corner) for corner in other)
        or any(contains(other, corner) for corner in one)
        or any(sides_cross(a, b) for a in sides_of(one) for b in sides_of(other))
    )


def ends_m(deck: Deck) -> tuple[float | None, float | None]:
    """What the clear height is at least and at most; without end where nothing is above. [m]"""
    if deck.clear_height is Absent.NONE:
        return inf, inf
    low, high = ends_of(deck.clear_height)
    return (None if low is None else low.m), (None if high is None else high.m)


def words_of(hang: Overhang, system: System) -> str:
    """How low a hang reaches, and whether it comes down, in words."""
    lowest = height(hang.lowest_m, system)
    says = {True: "may come down", False: "stays", None: "not said whether it may come down"}
    return f"{lowest.text if lowest else 'not known'}, {says[hang.comes_down]}"


def height(height_m: float | None, system: System) -> Value | None:
    """A height as a value; None where nobody knows it, or nothing bounds it."""
    if height_m is None or height_m == inf:
        return None
    return Value(*shown(Length, height_m, 2, system), height_m, "m")


def told(
    key: str,
    ends: tuple[float | None, float | None],
    over: Sequence[Overhang],
    offers: Offers,
    work: Working,
    system: System,
) -> Figure:
    """The figure from its two ends, saying what bounds it. [m]"""
    note = note_of(ends, over, offers, system)
    if ends == (inf, inf):
        return figure(key, LABEL, Value("no limit"), work, caution=STAGE, note=note)
    least, most = height(ends[0], system), height(ends[1], system)
    value = one_or_both(least, most)
    if value is None:
        return missing(key, LABEL, work, ["clear height"], caution=STAGE)
    return figure(key, LABEL, value, work, caution=STAGE, note=note)


def note_of(
    ends: tuple[float | None, float | None],
    over: Sequence[Overhang],
    offers: Offers,
    system: System,
) -> str:
    """Both heights in words, with what bounds the lower; or that nobody has said what hangs."""
    if offers.overhead_told is False:
        return NOT_TOLD
    if offers.overhead_told is None:
        return NO_RIGGING
    open_ones = [hang.name for hang in over if hang.lowest_m is None]
    if open_ones:
        return f"not known how low it hangs: {', '.join(open_ones)}"
    lowest = height(ends[0], system)
    names = [hang.name for hang in over if hang.lowest_m == ends[0]]
    if not names or lowest is None:
        return ""
    most = height(ends[1], system)
    with_rig = f"{lowest.text} as the house's rig hangs ({', '.join(names)})"
    if ends[0] == ends[1]:
        return with_rig
    away = f"{most.text} with it away" if most else "no limit with it away"
    asks = [hang.name for hang in over if hang.comes_down is None]
    unsaid = f"; not said whether it may come down: {', '.join(asks)}" if asks else ""
    return f"{with_rig}, {away}{unsaid}"
