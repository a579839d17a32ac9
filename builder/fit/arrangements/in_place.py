"""What a judge makes of the place in which an act plays."""

from collections.abc import Callable

from builder.fit.arrangements.evenings import MOST
from builder.fit.arrangements.in_doubt import has_doubts, in_both_states
from builder.fit.arrangements.records import Place, View
from builder.fit.arrangements.sentences import (
    NAME_ONE,
    NO_SUCH_CONFIGURATION,
    NOT_FOR_CONFIGURATION,
    TOO_MANY,
    WHICH_CONFIGURATION,
)
from builder.fit.arrangements.views import CONFIGURATION, configurations_of, view_of, whole_view
from builder.fit.needs.sentences import NOT_FOR_VISITORS, NOT_USABLE
from builder.fit.plots.sentences import NO_DECK
from builder.fit.records import FitPack, Verdict
from builder.fit.sections import section_items
from builder.fit.sentences import NOT_SAID, fill
from builder.fit.spaces.views import SPACE
from builder.fit.verdicts import ASK, NOT_NEEDED, SHORT, of_the_act, verdict, with_question
from builder.fit.wording import digits


def judged_in_place(
    place: Place, pack: FitPack, judge: Callable[[View], list[Verdict]]
) -> list[Verdict]:
    """
    The verdicts of a judge in a place. ``judge`` gives as many for any pack.

    Of an open place only that is told which depends on no line of one configuration.
    """
    view = view_of(pack, "" if place["is_open"] else place["configuration"])
    here = in_any_state(view, lambda each: judged_if_open(place, each, judge))
    if not place["is_open"] and not any(is_silent(answer) for answer in here):
        return here
    anywhere = in_any_state(whole_view(pack), judge)
    return [
        answer if answer == other else with_place(answer, place, pack)
        for answer, other in zip(here, anywhere, strict=True)
    ]


def in_any_state(view: View, judge: Callable[[View], list[Verdict]]) -> list[Verdict]:
    """The verdicts of a judge; where nobody knows whether something works, whatever its state."""
    return in_both_states(view, judge) if has_doubts(view) else judge(view)


def judged_if_open(
    place: Place, view: View, judge: Callable[[View], list[Verdict]]
) -> list[Verdict]:
    """The verdicts of a judge in a place, which may be closed."""
    closed = "" if place["is_open"] else why_closed(view, place["configuration"])
    return [closed_to(answer, closed) for answer in judge(view)]


def why_closed(pack: FitPack, configuration: str) -> str:
    """Why no show can play in a configuration, or in the space; empty where one can."""
    for item in section_items(pack, "house"):
        is_place = item["kind"] == CONFIGURATION and item["name"] == configuration
        if is_place or item["kind"] == SPACE:
            name = {"item": item["name"]}
            if item["condition"] == "out of service":
                return fill(NOT_USABLE, name)
            if item["terms"] == "not for visitors":
                return fill(NOT_FOR_VISITORS, name)
    return ""


def closed_to(answer: Verdict, closed: str) -> Verdict:
    """A verdict in a configuration that is closed: nothing of it helps the show."""
    if closed == "" or answer["verdict"] in (NOT_NEEDED, SHORT):
        return answer
    return {
        **answer,
        "verdict": SHORT,
        "reason": closed,
        "margin": ["", ""],
        "notes": [],
        "question": "",
        "lacks": [],
        "parts": [],
        "leans_on": [],
    }


def is_silent(answer: Verdict) -> bool:
    """Whether the house has not said."""
    return answer["verdict"] == ASK and answer["reason"] in (NOT_SAID, NO_DECK)


def with_place(answer: Verdict, place: Place, pack: FitPack) -> Verdict:
    """A verdict that would be another if what stands in other configurations counted."""
    if place["is_open"]:
        return which_place(answer, place, configurations_of(pack))
    if is_silent(answer):
        parts = {"configuration": place["configuration"]}
        return {**answer, "reason": fill(NOT_FOR_CONFIGURATION, parts)}
    return answer


def which_place(answer: Verdict, place: Place, names: list[str]) -> Verdict:
    """The question in which configuration an act plays."""
    if place["configuration"] == "":
        parts = {"number": digits(len(names), 0), "most": digits(MOST, 0)}
        found = verdict(answer, ASK, fill(TOO_MANY, parts))
        return of_the_act(with_question(found, answer, NAME_ONE))
    parts = {
        "act": answer["act"],
        "configuration": place["configuration"],
        "names": "; ".join(names),
    }
    asked = verdict(answer, ASK, fill(NO_SUCH_CONFIGURATION, parts))
    asked["act_question"] = fill(WHICH_CONFIGURATION, parts)
    return asked
