"""``trucks``: the trucks, and the largest case in them."""

from builder.fit.records import TrucksAsked
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import asked_base, parts_joined, sized, strictness_of
from builder.rider.asking.asking import Asking
from builder.rider.asking.hangs import or_nothing
from builder.rider.asking.values import ReadValue, count_of, group_of, si_of, words_of

LONGS = {
    "": "{words} long",
    "whole truck": "{words} long, tractor and trailer",
    "trailer": "{words} long, the trailer alone",
}
HIGH = "{words} high"
GROSS = "{words} gross"
WIDE = "{words} wide"
HEAVY = "{words} heavy"
WITH_CASE = "{trucks}; largest case {case}"


def trucks_asked(trucks: ReadValue, asking: Asking) -> TrucksAsked:
    """The trucks and the largest case, as one requirement."""
    case = group_of(trucks, "largest case")
    base = asked_base(
        asking,
        trucks["line"],
        "access",
        "Trucks and the largest case",
        need_words(trucks, case),
        strictness_of(trucks),
    )
    return {
        **base,
        "sort": "trucks",
        "count": or_nothing(count_of(trucks, "count")),
        "length": si_of(trucks, "length"),
        "length_of": words_of(trucks, "length of"),
        "height": si_of(trucks, "height"),
        "weight": si_of(trucks, "weight"),
        "case_width": si_of(case, "width") if case is not None else None,
        "case_height": si_of(case, "height") if case is not None else None,
        "case_weight": si_of(case, "weight") if case is not None else None,
    }


def need_words(trucks: ReadValue, case: ReadValue | None) -> str:
    """How many trucks and all sizes that the rider gives, in its own wording."""
    words = parts_joined(
        [
            str(trucks["keys"]["count"]["count"]),
            sized(LONGS[words_of(trucks, "length of")], trucks, "length"),
            sized(HIGH, trucks, "height"),
            sized(GROSS, trucks, "weight"),
        ]
    )
    if case is None:
        return words
    sizes = [sized(WIDE, case, "width"), sized(HIGH, case, "height"), sized(HEAVY, case, "weight")]
    case_words = parts_joined(sizes)
    return fill(WITH_CASE, {"trucks": words, "case": case_words}) if case_words != "" else words
