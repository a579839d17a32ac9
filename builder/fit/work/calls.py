"""
Crew and tasks. How many people of which skill a house can call no department tells yet, so a call
is a question, with what the house says of its calls beside it.
"""

from builder.fit.records import Advice, CallAsked, Section, TaskAsked, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import SHOW_BRINGS_IT, fill
from builder.fit.values import number_of
from builder.fit.verdicts import NOT_NEEDED, asked, verdict
from builder.fit.wording import both
from builder.fit.work.sentences import (
    ASK_CALL,
    ASK_TASK,
    HOW_MANY,
    IT_AGREES,
    LONGEST,
    MEAL_DUE,
    SHORTEST,
)

CALL: Advice = {"question": ASK_CALL, "remedy": "", "who": ""}
TASK: Advice = {"question": ASK_TASK, "remedy": "", "who": ""}


def crew_called(need: CallAsked, section: Section | None) -> Verdict:
    """A call of crew: asked, with what the house's own rules make of its length."""
    if need["carried"] == "show":
        return verdict(need, NOT_NEEDED, SHOW_BRINGS_IT)
    answer = asked(need, CALL, HOW_MANY)
    long_s = need["long_s"]
    if long_s is not None:
        answer["notes"] = notes_on_length(long_s, need["meals"], section)
    return answer


def notes_on_length(long_s: float, meals: float, section: Section | None) -> list[str]:
    """What the house says of calls as long as one. [s]"""
    notes: list[str] = []
    for item in items_of(section, "crew"):
        shortest_s = number_of(item, "shortest_call")
        if shortest_s is not None and long_s < shortest_s:
            notes.append(fill(SHORTEST, {"amount": both("duration", shortest_s)[0]}))
        longest_s = number_of(item, "longest_call")
        if longest_s is not None and long_s > longest_s:
            notes.append(fill(LONGEST, {"amount": both("duration", longest_s)[0]}))
        meal_s = number_of(item, "meal_after")
        if meal_s is not None and meals == 0 and long_s > meal_s:
            notes.append(fill(MEAL_DUE, {"amount": both("duration", meal_s)[0]}))
    return notes


def task_seen_to(need: TaskAsked) -> Verdict:
    """Something that the house is to do or to keep: it is the house that agrees."""
    if need["carried"] == "show":
        return verdict(need, NOT_NEEDED, SHOW_BRINGS_IT)
    return asked(need, TASK, IT_AGREES)
