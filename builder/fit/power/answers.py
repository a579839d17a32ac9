"""What is told of each load once all have been placed."""

from typing import TypedDict

from builder.fit.margins import signed
from builder.fit.notes import once
from builder.fit.power.first_look import FirstLook, Outlets, Service
from builder.fit.power.sentences import (
    ADAPTER,
    ALONE_AT_OUTLETS,
    ALONE_ON_SERVICE,
    AT_OUTLETS,
    MAY_HOLD,
    NOT_FOUND,
    ON_OUTLETS,
    ON_PHASES,
    ON_SERVICE,
    POWER,
)
from builder.fit.power.tree import Tree, first_unsure, known_least
from builder.fit.records import PowerAsked, Verdict
from builder.fit.sentences import fill
from builder.fit.values import text_of
from builder.fit.verdicts import FITS, SHORT, asked, settled, verdict, with_remedy
from builder.fit.wording import both, digits
from builder.formulas.circuit_rows import Taken, filled
from builder.formulas.phase_room import Room, Way, least_left

PHASE_SETS = ("L1", "L2", "L3", "L1 L2", "L1 L3", "L2 L3")


class Place(TypedDict):
    """
    Whether a load has a place beside those before it, by the places of its choices in their list;
    ``is_proven`` where it is sure that there is none, should it have none.
    """

    is_placed: bool
    is_proven: bool
    choices: list[int]


def answer_of(look: FirstLook, place: Place, taken: Taken, tree: Tree, sure: bool) -> Verdict:
    """A load's verdict once all have been placed; ``sure`` where only what is surely free was."""
    if look["alone"] is not None:
        return settled(look["alone"])
    if not place["is_placed"]:
        return not_placed(look, place, taken)
    if look["requirement"]["phases"] == "single":
        rows = [look["outlets"][index] for index in place["choices"]]
        answer = on_outlets(look, rows, taken["room"])
        unsure = [first_unsure(outlets["row"]["way"], taken["room"], tree) for outlets in rows]
    else:
        service = look["services"][place["choices"][0]]
        answer = on_service(look["requirement"], service, taken["room"])
        unsure = [first_unsure(service["way"], taken["room"], tree)]
    nodes = [node for node in unsure if node is not None]
    if sure or len(nodes) == 0:
        return answer
    return may_hold(answer, look["requirement"], nodes[0], tree)


def left_along(room: Room, way: Way) -> float:
    """
    The least that is left along a way that something stands on. [A]

    Raises
    ------
    ValueError
        If no figure says what is left there: then nothing can stand there.
    """
    left_a = least_left(room, way)
    if left_a is None:
        node = way[0]["node"]
        raise ValueError(f"room of {node} must have a figure where a load stands, got none")
    return left_a


def on_service(requirement: PowerAsked, service: Service, room: Room) -> Verdict:
    """A feed that has its service, with what is left there."""
    left_a = left_along(room, service["way"])
    words = both("current", left_a)
    reason = fill(ON_SERVICE, {"service": service["item"]["name"], "amount": words[0]})
    answer = verdict(requirement, FITS, reason)
    answer["fact"] = service["fact"]
    answer["margin"] = signed(words, left_a)
    answer["notes"] = service["notes"]
    return settled(answer)


def on_outlets(look: FirstLook, rows: list[Outlets], room: Room) -> Verdict:
    """
    Circuits that have their places: how many at which outlets, on which phases, and what is left.
    """
    left_a = min(left_along(room, outlets["row"]["way"]) for outlets in rows)
    words = both("current", left_a)
    lines = once([outlet_words(outlets, rows) for outlets in rows])
    reason = fill(ON_OUTLETS, {"outlets": "; ".join(lines), "amount": words[0]})
    answer = verdict(look["requirement"], FITS, reason)
    answer["fact"] = look["fact"]
    answer["margin"] = signed(words, left_a)
    answer["notes"] = once([*look["notes"], *adapter_notes(look["requirement"], rows)])
    return settled(answer)


def adapter_notes(requirement: PowerAsked, rows: list[Outlets]) -> list[str]:
    """A note where outlets have another connector than is asked for."""
    for outlets in rows:
        if not outlets["row"]["preferred"]:
            parts = {"asked": requirement["connector"], "there": outlets["item"]["name"]}
            return [fill(ADAPTER, parts)]
    return []


def outlet_words(outlets: Outlets, rows: list[Outlets]) -> str:
    """One line of outlets in words, with how many circuits go on each phase."""
    phases = [
        " ".join(other["row"]["phases"])
        for other in rows
        if other["item"]["key"] == outlets["item"]["key"]
    ]
    circuits = [
        fill(ON_PHASES, {"count": digits(phases.count(phase), 0), "phases": phase})
        for phase in PHASE_SETS
        if phase in phases
    ]
    return fill(
        AT_OUTLETS,
        {
            "place": text_of(outlets["item"], "place"),
            "outlets": outlets["item"]["name"],
            "circuits": ", ".join(circuits),
        },
    )


def may_hold(answer: Verdict, requirement: PowerAsked, node: str, tree: Tree) -> Verdict:
    """A question where something that feeds a load may have too little left."""
    parts = {
        "node": node,
        "least": both("current", known_least(tree[node]["least"]))[0],
        "most": both("current", known_least(tree[node]["free"]))[0],
    }
    question = asked(requirement, POWER, fill(MAY_HOLD, parts))
    question["fact"] = answer["fact"]
    return question


def not_placed(look: FirstLook, place: Place, taken: Taken) -> Verdict:
    """The verdict on a load that would have a place alone."""
    requirement = look["requirement"]
    if not place["is_proven"]:
        return asked(requirement, POWER, NOT_FOUND)
    if requirement["phases"] == "single":
        rows = [outlets["row"] for outlets in look["outlets"]]
        most = len(filled(rows, int(requirement["count"]), taken)["rows"])
        parts = {"most": digits(most, 0), "wanted": digits(requirement["count"], 0)}
        answer = verdict(requirement, SHORT, fill(ALONE_AT_OUTLETS, parts))
        answer["fact"] = look["fact"]
        return with_remedy(answer, POWER)
    service = look["services"][0]
    reason = fill(ALONE_ON_SERVICE, {"service": service["item"]["name"]})
    answer = verdict(requirement, SHORT, reason)
    answer["fact"] = service["fact"]
    return with_remedy(answer, POWER)
