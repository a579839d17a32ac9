"""
Power for all departments and acts at the same time: each load in its place, no phase of a service
or of what feeds it above what is free.
"""

from math import fsum
from typing import TypedDict

from builder.fit.power.answers import Place, answer_of
from builder.fit.power.circuits import look_at_outlets
from builder.fit.power.first_look import FirstLook, first_look
from builder.fit.power.more import alone_on_breakers
from builder.fit.power.sentences import NO_POWER, POWER, TOGETHER
from builder.fit.power.services import look_at_services
from builder.fit.power.tree import (
    ROUNDING_A,
    Tree,
    free_room,
    is_for_visitors,
    sure_room,
    tree_of,
)
from builder.fit.records import FitPack, PowerAsked, Section, Verdict
from builder.fit.sections import items_of, section_of
from builder.fit.sentences import SHOW_BRINGS_IT, fill
from builder.fit.values import known_number, number_of
from builder.fit.verdicts import ASK, NOT_NEEDED, SHORT, asked, verdict
from builder.fit.wording import both, digits
from builder.formulas.circuit_rows import Taken
from builder.formulas.load_places import Feed, Line, Places, Steps, ask_too_much, places_for
from builder.formulas.phase_room import Room

MOST_STEPS = 20000


class Placing(TypedDict):
    """Where each load stands, and what is taken then."""

    places: list[Place]
    taken: Taken


def power_for_all(requirements: list[PowerAsked], pack: FitPack) -> list[Verdict]:
    """
    A verdict for each load, in order. A load that has no place beside those before it is short.

    First every load is placed on what is surely free. Where that does not hold them all, they are
    placed on what is free at most, and what then stands on more than is surely free is a question.
    """
    section, stage = section_of(pack, "power"), section_of(pack, "stage")
    tree = tree_of(section)
    looks = [look_at_load(requirement, section, stage, tree) for requirement in requirements]
    sure = True
    placing = placed_on(sure_room(tree), looks, tree)
    if any(is_left_out(look, place) for look, place in zip(looks, placing["places"], strict=True)):
        sure = False
        placing = placed_on(free_room(tree), looks, tree)
    together = together_words(looks, section)
    answers = [
        with_sum(answer_of(look, place, placing["taken"], tree, sure), look, together)
        for look, place in zip(looks, placing["places"], strict=True)
    ]
    if all(requirement["more"] is None for requirement in requirements):
        return answers
    return alone_on_breakers(answers, looks, [place["choices"] for place in placing["places"]])


def together_words(looks: list[FirstLook], section: Section | None) -> str:
    """
    All that feeds ask together beside all that the house's services are rated for; empty where one
    feed is asked or no rating is stated.
    """
    feeds = [look["requirement"] for look in looks if is_feed(look)]
    ratings = [
        known_number(item, "rating")
        for item in items_of(section, "service")
        if is_for_visitors(item) and number_of(item, "rating") is not None
    ]
    if len(feeds) < 2 or len(ratings) == 0:
        return ""
    parts = {
        "wanted": both("current", fsum([feed["current_a"] for feed in feeds]))[0],
        "stated": both("current", fsum(ratings))[0],
        "count": digits(len(ratings), 0),
    }
    return fill(TOGETHER, parts)


def is_feed(look: FirstLook) -> bool:
    """Whether a load is a feed on three phases that the house is to give."""
    requirement = look["requirement"]
    return requirement["phases"] == "three" and requirement["carried"] != "show"


def with_sum(answer: Verdict, look: FirstLook, together: str) -> Verdict:
    """An answer that is no fit, with what is asked and stated in all."""
    if together != "" and is_feed(look) and answer["verdict"] in (SHORT, ASK):
        answer["reason"] = " ".join([answer["reason"], together])
    return answer


def look_at_load(
    requirement: PowerAsked, section: Section | None, stage: Section | None, tree: Tree
) -> FirstLook:
    """A load by itself: what could take it, or why nothing can."""
    look = first_look(requirement)
    if requirement["carried"] == "show":
        look["alone"] = verdict(requirement, NOT_NEEDED, SHOW_BRINGS_IT)
        return look
    if section is None:
        look["alone"] = asked(requirement, POWER, NO_POWER)
        return look
    if requirement["phases"] == "single":
        return look_at_outlets(requirement, section, stage, tree)
    return look_at_services(requirement, section, stage, tree)


def has_choices(look: FirstLook) -> bool:
    """Whether anything could take a load."""
    return len(look["services"]) > 0 or len(look["outlets"]) > 0


def is_left_out(look: FirstLook, place: Place) -> bool:
    """Whether a load that something could take has no place."""
    return has_choices(look) and not place["is_placed"]


def placed_on(room: Room, looks: list[FirstLook], tree: Tree) -> Placing:
    """Place one load after another, each beside all that have a place."""
    start: Taken = {"room": room, "used": {}}
    steps: Steps = {"left": MOST_STEPS}
    places: list[Place] = [{"is_placed": False, "is_proven": False, "choices": []} for _ in looks]
    held: list[int] = []
    end = start
    for index, look in enumerate(looks):
        if has_choices(look):
            trial = [*held, index]
            loads = [load_of(looks[number]) for number in trial]
            is_proven = ask_too_much(loads, free_room(tree), ROUNDING_A)
            found: Places | None = None
            if not is_proven:
                found = places_for(loads, start, steps)
            places[index]["is_proven"] = is_proven or steps["left"] > 0
            if found is not None:
                held = trial
                end = found["taken"]
                for number, choices in zip(trial, found["choices"], strict=True):
                    places[number]["is_placed"] = True
                    places[number]["choices"] = choices
    return {"places": places, "taken": end}


def load_of(look: FirstLook) -> Feed | Line:
    """A load as the search takes it: a feed on services, or a line of circuits on outlets."""
    requirement = look["requirement"]
    if requirement["phases"] == "single":
        rows = [outlets["row"] for outlets in look["outlets"]]
        return {"sort": "line", "number": int(requirement["count"]), "rows": rows}
    ways = [service["way"] for service in look["services"]]
    return {"sort": "feed", "amount": requirement["current_a"], "ways": ways}
