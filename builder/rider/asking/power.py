"""``power``: a load of the show."""

from builder.fit.records import PowerAsked
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import (
    asked_base,
    carried_by,
    parts_joined,
    sized,
    strictness_of,
    with_note,
)
from builder.rider.asking.asking import Asking
from builder.rider.asking.needs import unclear
from builder.rider.asking.values import (
    ReadValue,
    count_of,
    has,
    place_of,
    si_of,
    words_of,
    yes_of,
)

TITLE = "Power for {use}"
SINGLE = "{count} × {words}"
COUNTED = "{count} single-phase circuits"
THREE = "{words} on each of three phases"
WITHIN_OF = "within {words} of {place}"
AT = "at {words}"
ONE_FEED = "add phases: single, or write a line for each feed of three phases"
NO_CURRENT = "says no current, and a load on three phases cannot do without"
ADD_CURRENT = "add current: with the current on each phase"
OF_WHAT = "add of: with a place of the house"


def power_asked(load: ReadValue, asking: Asking) -> PowerAsked:
    """A load as a requirement; a mistake in it is noted."""
    note_unclear(load, asking)
    base = asked_base(
        asking,
        load["line"],
        "power",
        fill(TITLE, {"use": words_of(load, "for")}),
        with_note(need_words(load), load),
        strictness_of(load),
    )
    count = count_of(load, "count")
    current_a = si_of(load, "current")
    return {
        **base,
        "carried": carried_by(load),
        "sort": "power",
        "use": words_of(load, "for"),
        "current_a": current_a if current_a is not None else 0.0,
        "count": count if count is not None else 0.0,
        "phases": "single" if words_of(load, "phases") == "single" else "three",
        "system": words_of(load, "system"),
        "connector": words_of(load, "connector"),
        "within_m": si_of(load, "within"),
        "of": words_of(load, "of"),
        "apart": yes_of(load, "apart from dimmers"),
        "more": None,
    }


def need_words(load: ReadValue) -> str:
    """What a load asks, in the author's wording."""
    current = sized(THREE, load, "current")
    if words_of(load, "phases") == "single":
        parts = {"count": whole_words(load), "words": words_of(load, "current")}
        current = fill(SINGLE if has(load, "current") else COUNTED, parts)
    where = sized(AT, load, "of")
    if has(load, "within"):
        parts = {"words": words_of(load, "within"), "place": words_of(load, "of")}
        where = fill(WITHIN_OF, parts).rstrip(" ")
    apart = "apart from dimmers" if yes_of(load, "apart from dimmers") else ""
    return parts_joined(
        [current, words_of(load, "system"), words_of(load, "connector"), apart, where]
    )


def whole_words(load: ReadValue) -> str:
    """How many circuits, in digits."""
    return str(load["keys"]["count"]["count"]) if has(load, "count") else ""


def note_unclear(load: ReadValue, asking: Asking) -> None:
    """Note what a load leaves open that no verdict can do without."""
    count = whole_words(load)
    if words_of(load, "phases") == "three" and count != "1":
        reason = "counts single-phase circuits, and this load is on three phases"
        unclear(asking, place_of(load, "count"), "count", count, reason, ONE_FEED)
    if words_of(load, "phases") != "single" and not has(load, "current"):
        use = words_of(load, "for")
        unclear(asking, place_of(load, "for"), "for", use, NO_CURRENT, ADD_CURRENT)
    if has(load, "within") and not has(load, "of"):
        words = words_of(load, "within")
        place = place_of(load, "within")
        unclear(asking, place, "within", words, "does not say of what", OF_WHAT)
