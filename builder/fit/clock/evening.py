"""
From doors to the last truck: the first act after doors, sets that end when they say, the load-out
and the crew's day.
"""

from builder.fit.clock.answers import (
    acts_asked,
    asked_together,
    length_answer,
    with_fact,
    with_mender,
)
from builder.fit.clock.house import house_says
from builder.fit.clock.pieces import act_asked
from builder.fit.clock.records import Act, HouseSays
from builder.fit.clock.sentences import (
    ASK_DOORS_BEFORE,
    ASK_LOAD_OUT,
    ASK_LOAD_OUT_UNTIL,
    ASK_LONGEST,
    DAY_IS,
    DAY_NO_LIMIT,
    DAY_OF,
    DAY_OPEN,
    DOORS_OPEN,
    DOORS_TO_FIRST,
    DOORS_TO_FIRST_WANTED,
    LOAD_OUT_IS,
    LOAD_OUT_NOT_SAID,
    MEND_DAY,
    MEND_DOORS,
    MEND_LOAD_OUT,
    MEND_SET,
    NO_HOUR,
    SET_IS,
    SHORT_CALL,
)
from builder.fit.clock.times import known_time, of_the_show, or_none
from builder.fit.notes import age_notes
from builder.fit.records import Line, Section, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import FITS, SHORT, settled, verdict
from builder.fit.wording import clock as clock_words
from builder.fit.wording import lasting


def set_closes(requirement: Line, act: Act) -> Verdict:
    """A set that begins, lasts and ends as stated, or does not."""
    first_s = of_the_show(known_time(act["clock"]["on stage"]))
    last_s = of_the_show(known_time(act["clock"]["ends"]))
    length_s = known_time(act["clock"]["set"])
    words = {
        "from": clock_words(first_s),
        "length": lasting(length_s),
        "until": clock_words(last_s),
    }
    answer = length_answer(requirement, last_s - first_s - length_s, fill(SET_IS, words))
    return with_mender(answer, MEND_SET, "the show")


def after_doors(requirement: Line, first: Act, doors_s: float, section: Section | None) -> Verdict:
    """The first act after doors, and after the time that the house wants between."""
    kept = house_says(section, "identity", "doors_before_show")
    starts_s = known_time(first["starts_s"])
    gap_s = starts_s - doors_s
    if kept["standing"] == "ask" and gap_s >= 0:
        reason = fill(DOORS_OPEN, {"length": lasting(gap_s), "open": kept["open"]})
        return asked_together(requirement, [ASK_DOORS_BEFORE], reason)
    wanted_s = or_none(kept["s"])
    template = DOORS_TO_FIRST_WANTED if wanted_s > 0 else DOORS_TO_FIRST
    words = {
        "doors": clock_words(doors_s),
        "first": clock_words(starts_s),
        "wanted": lasting(wanted_s),
    }
    answer = with_fact(length_answer(requirement, gap_s - wanted_s, fill(template, words)), kept)
    if answer["verdict"] == FITS:
        answer["notes"] = age_notes(kept["value"])
    return settled(with_mender(answer, MEND_DOORS, "the promoter and the house"))


def load_out(requirement: Line, act: Act, section: Section | None) -> Verdict:
    """The end of the load-out against the hour until which work may be heard outside."""
    limit = house_says(section, "identity", "load_out_until")
    if limit["standing"] == "ask":
        return asked_together(requirement, [ASK_LOAD_OUT_UNTIL], limit["open"])
    length_s = act["clock"]["load out"]
    if limit["standing"] == "none":
        answer = verdict(requirement, FITS, NO_HOUR)
    elif length_s is None:
        question = act_asked(act["act"], ASK_LOAD_OUT)
        answer = acts_asked(requirement, [question], LOAD_OUT_NOT_SAID)
    else:
        answer = load_out_answer(requirement, known_time(act["ends_s"]), length_s, limit)
    answer = with_mender(answer, MEND_LOAD_OUT, "the show and the house")
    return settled(with_fact(answer, limit))


def load_out_answer(
    requirement: Line, last_note_s: float, length_s: float, limit: HouseSays
) -> Verdict:
    """A load-out of a known length against the house's hour."""
    until_s = of_the_show(known_time(limit["s"]))
    end_s = last_note_s + length_s
    words = {
        "from": clock_words(last_note_s),
        "length": lasting(length_s),
        "end": clock_words(end_s),
        "until": clock_words(until_s),
    }
    answer = length_answer(requirement, until_s - end_s, fill(LOAD_OUT_IS, words))
    if answer["verdict"] == FITS:
        answer["notes"] = age_notes(limit["value"])
    return answer


def crew_day(requirement: Line, start_s: float, act: Act, section: Section | None) -> Verdict:
    """
    The whole day from the first truck to the last against the longest call; a short load-out is
    paid as the shortest call.
    """
    longest = house_says(section, "crew", "longest_call")
    load_out_s = known_time(act["clock"]["load out"])
    end_s = known_time(act["ends_s"]) + load_out_s
    span_s = end_s - start_s
    words = {"from": clock_words(start_s), "to": clock_words(end_s), "length": lasting(span_s)}
    day = fill(DAY_IS, words)
    if longest["standing"] == "ask":
        return asked_together(
            requirement, [ASK_LONGEST], fill(DAY_OPEN, {"day": day, "open": longest["open"]})
        )
    if longest["standing"] == "none":
        answer = verdict(requirement, FITS, fill(DAY_NO_LIMIT, {"day": day}))
    else:
        longest_s = known_time(longest["s"])
        intro = fill(DAY_OF, {"day": day, "longest": lasting(longest_s)})
        answer = length_answer(requirement, longest_s - span_s, intro)
    answer = with_mender(with_fact(answer, longest), MEND_DAY, "the promoter")
    if answer["verdict"] != SHORT:
        answer["notes"] = [*age_notes(longest["value"]), *short_call_notes(load_out_s, section)]
    return settled(answer)


def short_call_notes(load_out_s: float, section: Section | None) -> list[str]:
    """What a crew that is called for a short load-out alone costs."""
    shortest_s = house_says(section, "crew", "shortest_call")["s"]
    if shortest_s is None or load_out_s >= shortest_s:
        return []
    words = {"length": lasting(load_out_s), "call": lasting(shortest_s)}
    return [fill(SHORT_CALL, words)]
