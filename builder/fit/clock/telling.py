"""Whether the work before doors closes, where it does not, by how much, and how that adds up."""

from builder.fit.clock.answers import is_open
from builder.fit.clock.mending import ways_to_close
from builder.fit.clock.records import Late, Plan, Run
from builder.fit.clock.sentences import (
    ANY_CLOSES,
    ANY_MAY_CLOSE,
    AT_LEAST,
    CLOSES,
    DOES_NOT_CLOSE,
    LATE_AT_DOORS,
    LATE_AT_PIECE,
    LATE_BEFORE_DOORS,
    NO_SINGLE_CHANGE,
    NOT_STATED,
    NOTHING,
    PIECE_OF_SUM,
    SENTENCE,
    SPARED,
    SPARED_AT_END,
    SPARED_AT_PIECE,
    WHOSE,
)
from builder.fit.clock.times import known_time, or_none
from builder.fit.notes import age_notes
from builder.fit.records import Line, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, FITS, SHORT, verdict
from builder.fit.wording import clock as clock_words
from builder.fit.wording import lasting


def closing_answer(requirement: Line, plan: Plan, laid: Run) -> Verdict:
    """
    Whether it closes, where it does not, and by how much.

    A length that nobody stated can only make it later.
    """
    worst = max(laid["late"], key=lambda late: late["late_s"])
    if worst["late_s"] > 0:
        return short_answer(requirement, plan, laid, worst)
    if is_open(laid):
        return verdict(requirement, ASK, "")
    parts = {"spared": spared_words(laid, plan), "sum": sum_words(laid)}
    answer = verdict(requirement, FITS, fill(CLOSES, parts))
    words = lasting(worst["late_s"])
    answer["margin"] = [f"+{words}" if worst["late_s"] < 0 else words, ""]
    answer["notes"] = [
        *plan["notes"],
        *plan["meals"]["notes"],
        *age_notes(plan["ready"]["value"]),
    ]
    return answer


def short_answer(requirement: Line, plan: Plan, laid: Run, worst: Late) -> Verdict:
    """What does not close, and what would mend it."""
    words = lasting(worst["late_s"])
    parts = {
        "where": where_late(worst, plan),
        "least": AT_LEAST if is_open(laid) else "",
        "amount": words,
        "sum": sum_words(laid),
    }
    answer = verdict(requirement, SHORT, fill(DOES_NOT_CLOSE, parts))
    answer["margin"] = [f"−{words}", ""]
    ways = ways_to_close(plan, worst["late_s"])
    if len(ways) == 0:
        answer["remedy"] = NO_SINGLE_CHANGE
        answer["who"] = "the show and the promoter"
        return answer
    template = ANY_MAY_CLOSE if is_open(laid) else ANY_CLOSES
    answer["remedy"] = fill(template, {"ways": "; ".join(words for words, _ in ways)})
    answer["who"] = " or ".join(sorted({who for _, who in ways}))
    return answer


def where_late(late: Late, plan: Plan) -> str:
    """What does not close."""
    ready_s = or_none(plan["ready"]["s"])
    parts = {
        "what": late["what"],
        "whose": late["whose"],
        "time": clock_words(late["at_s"]),
        "doors": clock_words(known_time(plan["doors_s"])),
        "kept": lasting(ready_s),
    }
    if late["what"] != "":
        return fill(LATE_AT_PIECE, parts)
    return fill(LATE_AT_DOORS if ready_s == 0 else LATE_BEFORE_DOORS, parts)


def spared_words(laid: Run, plan: Plan) -> str:
    """How much is to spare, at each agreed time and at doors."""
    words: list[str] = []
    for late in laid["late"]:
        parts = {
            "amount": lasting(late["late_s"]) if late["late_s"] < 0 else NOTHING,
            "what": late["what"],
            "whose": late["whose"],
            "time": clock_words(late["at_s"]),
        }
        words.append(fill(SPARED_AT_PIECE if late["what"] != "" else SPARED_AT_END, parts))
    doors = clock_words(known_time(plan["doors_s"]))
    return fill(SPARED, {"parts": ", ".join(words), "doors": doors})


def sum_words(laid: Run) -> str:
    """The sum, piece by piece."""
    pieces: list[str] = []
    whose = ""
    for row in laid["rows"]:
        before = ", "
        if row["whose"] != whose:
            before = fill(WHOSE, {"whose": row["whose"]})
            if len(pieces) > 0:
                before = f"; {before}"
        length = lasting(row["length_s"]) if row["length_s"] is not None else NOT_STATED
        pieces.append(fill(PIECE_OF_SUM, {"before": before, "what": row["what"], "length": length}))
        whose = row["whose"]
    return fill(SENTENCE, {"words": "".join(pieces)})
