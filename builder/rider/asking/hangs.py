"""``hangs``: what the show flies, as supports and loads by place."""

from math import fsum

from builder.fit.records import HangAsked, SupportAsked, TrimAsked, WeightAsked
from builder.fit.wording import both
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import asked_base, strictness_of, with_note
from builder.rider.asking.asking import Asking
from builder.rider.asking.values import (
    ReadValue,
    count_of,
    has,
    items_of,
    place_of,
    si_of,
    words_of,
)

TITLE = "Hang: {name}"
TRIM_TITLE = "Trim of {name}"
TRIM = "underside at {words}"
ONE_SUPPORT = "1 support, {mass} ({other}) in all, {hoists}"
SUPPORTS = "{count} supports, {mass} ({other}) in all, {hoists}"
ONE_OPEN = "1 support, a weight that is not said, {hoists}"
OPEN = "{count} supports, a weight that is not said, {hoists}"
HOISTS = {"counted": "hoists in that", "none": "dead hung"}
HOISTS_APART = "hoists apart"


def hang_asked(hang: ReadValue, asking: Asking) -> HangAsked:
    """A hang as a requirement. [m], [kg]"""
    name = words_of(hang, "name")
    supports = [support_asked(support) for support in items_of(hang, "supports")]
    loads = loads_of(hang)
    base = asked_base(
        asking,
        hang["line"],
        "rigging",
        fill(TITLE, {"name": name}),
        with_note(need_words(hang, supports, loads), hang),
        strictness_of(hang),
    )
    hoist_kg = si_of(hang, "hoist weight")
    return {
        **base,
        "sort": "hang",
        "supports": supports,
        "loads": loads,
        "hoists": words_of(hang, "hoists"),
        "hoist_kg": hoist_kg if hoist_kg is not None else 0.0,
        "held": si_of(hang, "held within"),
    }


def support_asked(support: ReadValue) -> SupportAsked:
    """Where a hang is picked up. [m], [kg]"""
    at_m = si_of(support, "at")
    return {
        "point": words_of(support, "point"),
        "across_m": si_of(support, "across"),
        "depth_m": si_of(support, "depth"),
        "apex_m": si_of(support, "apex"),
        "at_m": at_m if at_m is not None else 0.0,
        "load_kg": si_of(support, "load"),
    }


def loads_of(hang: ReadValue) -> list[WeightAsked]:
    """
    Its own weight and each load, at a place or spread; at its beginning where it has no length.
    [m], [kg]
    """
    length_m = or_nothing(si_of(hang, "length"))
    found: list[WeightAsked] = []
    if has(hang, "weight"):
        found.append(weight(0.0, length_m, or_nothing(si_of(hang, "weight")) * length_m))
    if has(hang, "weight in all"):
        found.append(weight(0.0, length_m, or_nothing(si_of(hang, "weight in all"))))
    for load in items_of(hang, "loads"):
        found.append(load_asked(load, length_m))
    return found


def load_asked(load: ReadValue, length_m: float) -> WeightAsked:
    """One load. [m], [kg]"""
    kg = or_nothing(count_of(load, "count")) * or_nothing(si_of(load, "weight"))
    at_m = si_of(load, "at")
    from_m = si_of(load, "from")
    to_m = si_of(load, "to")
    if at_m is not None:
        return weight(at_m, at_m, kg)
    if from_m is not None and to_m is not None:
        return weight(from_m, to_m, kg)
    return weight(0.0, length_m, kg)


def weight(from_m: float, to_m: float, kg: float) -> WeightAsked:
    """A load between two places, or at one. [m], [kg]"""
    return {"from_m": from_m, "to_m": to_m, "kg": kg}


def or_nothing(value: float | None) -> float:
    """A number, or zero where there is none."""
    return value if value is not None else 0.0


def need_words(hang: ReadValue, supports: list[SupportAsked], loads: list[WeightAsked]) -> str:
    """What a hang asks, in a few words."""
    stated = [or_nothing(support["load_kg"]) for support in supports]
    words = both("mass", fsum([*stated, *[load["kg"] for load in loads]]))
    hoists = words_of(hang, "hoists")
    if len(loads) == 0 and not any(has(support, "load") for support in items_of(hang, "supports")):
        count = {"count": str(len(supports)), "hoists": HOISTS.get(hoists, HOISTS_APART)}
        return fill(ONE_OPEN if len(supports) == 1 else OPEN, count)
    parts = {
        "count": str(len(supports)),
        "mass": words[0],
        "other": words[1],
        "hoists": HOISTS.get(hoists, HOISTS_APART),
    }
    return fill(ONE_SUPPORT if len(supports) == 1 else SUPPORTS, parts)


def trim_asked(hang: ReadValue, asking: Asking) -> TrimAsked | None:
    """How high a hang should go; None where the rider does not say."""
    trim_m = si_of(hang, "trim")
    if trim_m is None:
        return None
    base = asked_base(
        asking,
        place_of(hang, "trim")["line"],
        "rigging",
        fill(TRIM_TITLE, {"name": words_of(hang, "name")}),
        fill(TRIM, {"words": words_of(hang, "trim")}),
        strictness_of(hang),
    )
    return {**base, "sort": "trim", "trim_m": trim_m, "below_m": si_of(hang, "below steel")}
