"""What keeps a hang from being judged: its keys read together."""

from builder.formulas.beams import LEAST_SPACING_M
from builder.reading.values.faults import fault
from builder.reading.values.sentences import fill
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.values import ReadValue, has, items_of, place_of, si_of, words_of

OFF_END_M = 0.005
"""A place this far beyond an end is rounding."""
MOST_SUPPORTS = 12
HAS_SUPPORTS = "has {count} supports"
SPLIT = "write 1 to {most}; split a longer hang"


def note_hang(hang: ReadValue, asking: Asking) -> None:
    """A hang says where it hangs and what it weighs, once, and all of it lies on it."""
    for support in items_of(hang, "supports"):
        note_support(support, asking)
    for load in items_of(hang, "loads"):
        note_load(load, asking)
    note_supports(hang, asking)
    if (words_of(hang, "hoists") == "show") != has(hang, "hoist weight"):
        advice = "write hoists: show together with hoist weight, or neither"
        unclear(asking, hang, "hoists", "needs the weight of the show's hoists", advice)
    if has(hang, "below steel") and not has(hang, "trim"):
        unclear(asking, hang, "below steel", "stands without a trim", "write trim too")
    if any(has(support, "load") for support in items_of(hang, "supports")):
        note_stated(hang, asking)
    else:
        note_weighed(hang, asking)


def note_support(support: ReadValue, asking: Asking) -> None:
    """A support names a point, or tells both coordinates of a spot."""
    if has(support, "across") != has(support, "depth"):
        reason = "needs both across and depth, or a point"
        unclear(asking, support, "across", reason, "write the one that is missing")
    elif has(support, "point") and has(support, "across"):
        advice = "write either point, or across and depth"
        unclear(asking, support, "point", "stands beside a spot", advice)
    elif has(support, "apex") and not has(support, "across"):
        advice = "write across and depth too"
        unclear(asking, support, "apex", "stands without a spot", advice)


def note_load(load: ReadValue, asking: Asking) -> None:
    """A load is at one place, or spread between two; not both."""
    begins_m = si_of(load, "from")
    ends_m = si_of(load, "to")
    has_end = begins_m is not None or ends_m is not None
    if (has(load, "at") and has_end) or (begins_m is None) != (ends_m is None):
        advice = "leave all three out for a load over the whole length"
        unclear(asking, load, "at", "needs either at, or both from and to", advice)
    elif begins_m is not None and ends_m is not None and ends_m <= begins_m:
        advice = "write the place nearer to the first end as from"
        unclear(asking, load, "to", "is not beyond its beginning", advice)


def note_supports(hang: ReadValue, asking: Asking) -> None:
    """A hang has supports, not too many, and each point once."""
    supports = items_of(hang, "supports")
    if len(supports) == 0 or len(supports) > MOST_SUPPORTS:
        reason = fill(HAS_SUPPORTS, {"count": str(len(supports))})
        unclear(asking, hang, "supports", reason, fill(SPLIT, {"most": str(MOST_SUPPORTS)}))
    points = [words_of(support, "point").lower() for support in supports if has(support, "point")]
    if len(set(points)) < len(points):
        unclear(asking, hang, "supports", "names a point twice", "write each point once")


def note_stated(hang: ReadValue, asking: Asking) -> None:
    """
    Loads that are stated are stated for all supports, and weights beside them would count twice.
    """
    if not all(has(support, "load") for support in items_of(hang, "supports")):
        advice = "write load at every support, or at none"
        unclear(asking, hang, "supports", "states the load of some supports only", advice)
    if weighs(hang):
        reason = "states loads at its supports beside weights"
        unclear(asking, hang, "supports", reason, "keep one of them")


def weighs(hang: ReadValue) -> bool:
    """Whether a hang says what it weighs apart from its supports."""
    listed = len(items_of(hang, "loads")) > 0
    return listed or has(hang, "weight") or has(hang, "weight in all")


def note_weighed(hang: ReadValue, asking: Asking) -> None:
    """
    Weights are told once, and places where something must be worked out. Where nothing is told the
    act is asked, and there is nothing to work out.
    """
    if not weighs(hang):
        return
    if has(hang, "weight") and has(hang, "weight in all"):
        unclear(asking, hang, "weight in all", "tells its own weight twice", "keep one of them")
    spread = any(is_spread(load) for load in items_of(hang, "loads"))
    several = len(items_of(hang, "supports")) > 1
    spreads = has(hang, "weight in all") or spread
    if not has(hang, "length") and (has(hang, "weight") or (several and spreads)):
        reason = "needs a length, for a weight is spread over it"
        unclear(asking, hang, "length", reason, "write the length of the hang")
    note_places(hang, several, asking)
    note_length(hang, asking)


def is_spread(load: ReadValue) -> bool:
    """Whether a load lies over the whole length."""
    return not has(load, "at") and not has(load, "from")


def places_of(hang: ReadValue) -> list[float]:
    """Where along a hang its supports are, from the first end on. [m]"""
    found: list[float] = []
    for support in items_of(hang, "supports"):
        at_m = si_of(support, "at")
        if at_m is not None:
            found.append(at_m)
    return sorted(found)


def note_places(hang: ReadValue, several: bool, asking: Asking) -> None:
    """Each of several supports has a place of its own along the hang."""
    places = places_of(hang)
    if several and len(places) < len(items_of(hang, "supports")):
        reason = "does not say where along it each support is"
        unclear(asking, hang, "supports", reason, "write at for every support")
    elif any(places[at + 1] - places[at] < LEAST_SPACING_M for at in range(len(places) - 1)):
        reason = "has two supports at one place"
        unclear(asking, hang, "supports", reason, "write where along it each one is")


def note_length(hang: ReadValue, asking: Asking) -> None:
    """All that is on a hang is within its length, and its length is something."""
    length_m = si_of(hang, "length")
    if length_m is None:
        return
    ends = places_of(hang)
    for load in items_of(hang, "loads"):
        for key in ("at", "from", "to"):
            end_m = si_of(load, key)
            if end_m is not None:
                ends.append(end_m)
    if any(end_m > length_m + OFF_END_M for end_m in ends):
        reason = "is shorter than a place on it"
        unclear(asking, hang, "length", reason, "count places from the first end")
    if length_m <= 0:
        unclear(asking, hang, "length", "is nothing", "leave it out for a hang at one place")


def note_names(hangs: list[ReadValue], hang: ReadValue, asking: Asking) -> None:
    """A hang has a name of its own."""
    name = words_of(hang, "name")
    if len([other for other in hangs if words_of(other, "name") == name]) > 1:
        wrong = fault("is the name of two hangs", "need-unclear", "give each a name of its own")
        note_fault(asking, place_of(hang, "name"), "name", name, wrong)


def unclear(asking: Asking, record: ReadValue, key: str, reason: str, advice: str) -> None:
    """Note a problem of a hang, a support or a load, at its key and under its name."""
    named = "support"
    for key_of_name in ("point", "what", "name"):
        if has(record, key_of_name):
            named = words_of(record, key_of_name)
    note_fault(asking, place_of(record, key), named, "", fault(reason, "need-unclear", advice))
