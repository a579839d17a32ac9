"""``risers``: the risers that a house is to build, as one requirement."""

from builder.fit.records import RiserAsked, RisersAsked, Strictness
from builder.reading.values.faults import fault
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import (
    asked_base,
    parts_joined,
    sized,
    strictness_of,
    with_note,
)
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.hangs import or_nothing
from builder.rider.asking.values import ReadValue, place_of, si_of, words_of, yes_of

MOST = 30
TOO_MANY = "has {count} sizes, and at most {most} are looked at"
WIDE = "{words} wide"
DEEP = "{words} deep"
HIGH = "{words} high"
TIMES = "{count} times"
USE = "{use}: {need}"


def risers_asked(risers: ReadValue, asking: Asking) -> list[RisersAsked]:
    """
    All risers of a rider: those that must be there, and where some only should, all of them
    together once more.
    """
    lines = risers["items"]
    if len(lines) > MOST:
        reason = fill(TOO_MANY, {"count": str(len(lines)), "most": str(MOST)})
        wrong = fault(reason, "need-unclear", "join those of one size by count")
        note_fault(asking, risers, "risers", "", wrong)
    found = [riser_asked(line) for line in lines]
    musts = [one for one in found if one["strictness"] == "must"]
    asked: list[RisersAsked] = []
    if len(musts) > 0:
        asked.append(together(musts, "must", risers, asking))
    if len(musts) < len(found):
        asked.append(together(found, "should", risers, asking))
    return asked


def together(
    found: list[RiserAsked], strictness: Strictness, risers: ReadValue, asking: Asking
) -> RisersAsked:
    """Some risers in one."""
    words = "; ".join(fill(USE, {"use": one["use"], "need": one["need"]}) for one in found)
    base = asked_base(asking, risers["line"], "stage", "Risers", words, strictness)
    return {**base, "sort": "risers", "risers": found}


def riser_asked(line: ReadValue) -> RiserAsked:
    """Risers of one size. [m]"""
    count = line["keys"]["count"]["count"]
    needed = [
        fill(TIMES, {"count": str(count)}) if count > 1 else "",
        sized(WIDE, line, "width"),
        sized(DEEP, line, "depth"),
        sized(HIGH, line, "height"),
        "rolling" if yes_of(line, "rolling") else "",
    ]
    return {
        "line": place_of(line, "for")["line"],
        "use": words_of(line, "for"),
        "need": with_note(parts_joined(needed), line),
        "strictness": strictness_of(line),
        "count": float(count),
        "width_m": or_nothing(si_of(line, "width")),
        "depth_m": or_nothing(si_of(line, "depth")),
        "height_m": si_of(line, "height"),
        "rolling": yes_of(line, "rolling"),
    }
