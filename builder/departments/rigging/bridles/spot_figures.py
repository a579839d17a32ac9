"""
The figures of wanted spots: the points that make each, legs and pulls, other choices, and legs of
steels in stock.
"""

from collections.abc import Callable, Iterator, Sequence

from builder.cautions import LOADS
from builder.departments.rigging.bridles.figures import (
    LEFT_OUT,
    landing_value,
    legs_working,
    pull_figures,
)
from builder.departments.rigging.bridles.spots import Choice, Spotted, apex_of
from builder.departments.rigging.bridles.stock_legs import Leg, Made, length_m, unmeasured_steels
from builder.departments.rigging.description.bridles import WantedSpot, lacking_of_spot
from builder.departments.rigging.steel.figures import by_hand, in_words, mass
from builder.departments.rigging.steel.totals import Whole, factor_of
from builder.formulas.bridles import three_leg_apex, two_leg_apex
from builder.pack import Figure, Input, Value, Working
from builder.reading.absent import Absent
from builder.reading.measures import System
from builder.working import figure, length_value, missing, worked

OTHERS = 3
"""So many other choices of points are told."""
RULES = (
    "in service, nothing on them, angle, direction, rating and what is left all kept; the smallest"
    " greatest pull first"
)


def spot_figures(each: Spotted, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """The figures of one wanted spot."""
    inputs = [Input("Points looked for", RULES)]
    words = "Pairs" if each.spot.legs == 2 else "Threes"
    steps = [
        f"{words} of points that reach the spot: {each.tried}. Of these keep every rule:"
        f" {len(each.choices)}."
    ]
    if each.left_out:
        steps.append(f"Only the nearest points were looked at, {each.left_out} farther ones not.")
    work = by_hand(
        "the choice with the smallest greatest pull",
        "choice of bridle points",
        inputs=inputs,
        steps=steps,
    )
    if not each.choices:
        lacking = each.unplaced or ("points that make it",)
        yield missing(f"{key}.points", "Made by", work, lacking, caution=LOADS)
        return
    first = each.choices[0]
    yield figure(
        f"{key}.points",
        "Made by",
        Value(listed(first.names)),
        work,
        caution=LOADS,
        note=unsaid(whole),
    )
    if others := [choice_words(choice, system) for choice in each.choices[1 : OTHERS + 1]]:
        yield figure(f"{key}.others", "Or by", Value("; ".join(others)), work, caution=LOADS)
    anchors = [point.place for point in first.points]
    load = each.spot.load
    legs = legs_working(
        load.kg, apex_of(each.spot), anchors, first.legs, [Input("Load", load.text)]
    )
    yield from pull_figures(first.names, first.legs, legs, key, system)
    if whole.rigging.steels:
        factor, unmeasured = factor_of(whole.rigging), unmeasured_steels(whole.rigging.steels)
        yield from stock_figures(each, first, factor, key, system, unmeasured)


def unknown_spot_figures(spot: WantedSpot, key: str) -> Iterator[Figure]:
    """What stands for the figures of a spot of which something is not known."""
    work = by_hand("the choice with the smallest greatest pull", "choice of points", inputs=[])
    yield missing(f"{key}.points", "Made by", work, lacking_of_spot(spot), caution=LOADS)


def unsaid(whole: Whole) -> str:
    """What the house has not said about bridles."""
    absent = isinstance(whole.rigging.bridles_allowed, Absent)
    return (
        "Nobody has said whether this house allows bridles. Ask before planning one."
        if absent
        else ""
    )


def listed(names: Sequence[str]) -> str:
    """Two or three names as a sentence says them."""
    return f"{', '.join(names[:-1])} and {names[-1]}"


def choice_words(choice: Choice, system: System) -> str:
    """A choice in a few words."""
    pulls = ", ".join(in_words(kg, system) for kg in choice.legs.tensions_kg)
    return f"{listed(choice.names)} ({pulls}, {choice.legs.widest_deg:.0f} deg)"


def stock_figures(
    each: Spotted,
    first: Choice,
    factor: float,
    key: str,
    system: System,
    unmeasured: Sequence[str],
) -> Iterator[Figure]:
    """
    The legs from stock whose apex lands nearest, and where that is; nothing where another steel,
    which nobody has measured, may make better ones.
    """
    made = each.made
    if unmeasured:
        work = worked(apex_formula(each), inputs=[], leaves_out=LEFT_OUT)
        lacks = tuple(f"length and rating of {name}" for name in unmeasured)
        yield missing(f"{key}.from-stock", "Legs from stock", work, lacks, caution=LOADS)
        return
    if made is None:
        wanted = ", ".join(f"{m:.3f} m" for m in first.legs.lengths_m)
        work = worked(
            apex_formula(each), inputs=[Input("Wanted legs", wanted)], leaves_out=LEFT_OUT
        )
        lacks = ("steels in stock that keep every rule where they land",)
        yield missing(f"{key}.from-stock", "Legs from stock", work, lacks, caution=LOADS)
        return
    work = stock_working(each, first, made, factor)
    legs = "; ".join(
        f"{name}: {leg_words(leg)}" for name, leg in zip(first.names, made.legs, strict=True)
    )
    pull = mass(max(made.pulls.tensions_kg), system)
    for name, label, value, note in (
        ("from-stock", "Legs from stock", Value(legs), "shackles not counted"),
        ("lands", "They land at", landing_value(made.apex, system), ""),
        ("off", "From where it is wanted", length_value(made.off_m, system), ""),
        ("stock-pull", "Greatest pull in them", pull, ""),
    ):
        yield figure(f"{key}.{name}", label, value, work, caution=LOADS, note=note)


def stock_working(each: Spotted, first: Choice, made: Made, factor: float) -> Working:
    """How legs of steels in stock land where they do, and what they pull there."""
    inputs = [
        Input(f"Leg to {name}", leg_words(leg))
        for name, leg in zip(first.names, made.legs, strict=True)
    ]
    if factor > 1:
        inputs.append(Input("Factor for starting and stopping", f"{factor:g}, in the pulls here"))
    return worked(
        apex_formula(each),
        inputs=inputs,
        steps=tuple(made_steps(each, first, made)),
        leaves_out=f"{LEFT_OUT} Shackles between the steels.",
    )


def apex_formula(each: Spotted) -> Callable[..., object]:
    """The formula that says where the legs of a spot meet."""
    return two_leg_apex if each.spot.legs == 2 else three_leg_apex


def leg_words(leg: Leg) -> str:
    """The steels of a leg."""
    return " + ".join(steel.name for steel in leg)


def made_steps(each: Spotted, first: Choice, made: Made) -> Iterator[str]:
    """Where the apex lands, checked by hand, and how far off that is."""
    for point, leg in zip(first.points, made.legs, strict=True):
        dx, dy, dz = (
            point.place.known_at[0] - made.apex[0],
            point.place.known_at[1] - made.apex[1],
            (point.place.steel_m or 0.0) - made.apex[2],
        )
        yield f"Check {point.name}: √({dx:.3f}² + {dy:.3f}² + {dz:.3f}²) = {length_m(leg):.3f} m."
    dx, dy, dz = (here - there for here, there in zip(made.apex, apex_of(each.spot), strict=True))
    yield f"Off by √({dx:.3f}² + {dy:.3f}² + {dz:.3f}²) = {made.off_m:.3f} m."
    yield f"Pulls there: {', '.join(f'{kg:.1f} kg' for kg in made.pulls.tensions_kg)}."
