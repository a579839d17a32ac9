"""
A show in a house of several stages: judged in each space as a whole, the best told first.

Acts that name a space are judged there, each space by itself. Acts that name none play where the
others of the day do, else in the space that suits them best.
"""

from collections.abc import Callable

from builder.fit.arrangements.telling import fare_of, first_graver, lines_of
from builder.fit.arrangements.views import configurations_of
from builder.fit.overall import as_far_as_read, not_read_of, overall
from builder.fit.questions import act_questions, questions
from builder.fit.records import (
    ActAnswer,
    Arrangement,
    FitPack,
    FitSpace,
    Line,
    OtherArrangement,
    Result,
    RiderAsked,
    Verdict,
)
from builder.fit.sentences import fill
from builder.fit.spaces.at_once import at_once
from builder.fit.spaces.records import Evening, Group
from builder.fit.spaces.sentences import (
    ACT_IN,
    BEST_OF,
    BETWEEN,
    EACH_IN_ITS_OWN,
    JUDGED_IN,
    NO_SUCH_SPACE,
    WHICH_SPACE,
)
from builder.fit.spaces.views import pack_of_space
from builder.fit.verdicts import ASK, SHORT, verdict
from builder.fit.wording import digits

Judge = Callable[[FitPack, list[RiderAsked]], Result]


def fit_in_spaces(pack: FitPack, riders: list[RiderAsked], judge: Judge) -> Result:
    """
    The verdicts on every requirement of every rider, each act in its space. ``judge`` judges a
    house of one stage.
    """
    spaces = pack["spaces"]
    evenings = [evening_with(free, riders, pack, judge) for free in free_spaces(riders, pack)]
    fares = [fare_of(verdicts_of(evening, riders)) for evening in evenings]
    best = evenings[fares.index(min(fares))]
    others = [
        beside(best, other, riders)
        for other in evenings
        if other["free"]["key"] != best["free"]["key"]
    ]
    verdicts = [
        *verdicts_of(best, riders),
        *unknown_spaces(riders, spaces),
        *at_once(best, acts_in_words(best), pack),
    ]
    return {
        "venue": pack["venue"],
        "revision": pack["revision"],
        "acts": acts_of(riders, best, verdicts),
        "verdict": as_far_as_read(overall(verdicts, ""), riders),
        "verdicts": verdicts,
        "not_read": not_read_of(riders),
        "judged_in": [*judged_in(best, others), *words_within(best)],
        "others": [*others, *(each for result in best["results"] for each in result["others"])],
        "day": [row for result in best["results"] for row in result["day"]],
        "questions": questions(verdicts),
        "act_questions": act_questions(verdicts),
        "cautions": cautions_of(best),
    }


def free_spaces(riders: list[RiderAsked], pack: FitPack) -> list[FitSpace]:
    """
    Where acts may play that name no space: in those that have a configuration which one of them
    names; else where others of the day do; else in any.
    """
    spaces = pack["spaces"]
    meant = [space for space in spaces if has_configuration_of(riders, pack_of_space(pack, space))]
    if len(meant) > 0:
        return meant
    named = [space for space in spaces if any(rider["space"] == space["name"] for rider in riders)]
    if len(named) == 0:
        return spaces
    return named if any(rider["space"] == "" for rider in riders) else named[:1]


def has_configuration_of(riders: list[RiderAsked], own: FitPack) -> bool:
    """Whether a space has a configuration that an act names which names no space."""
    written = [rider["configuration"] for rider in riders if rider["space"] == ""]
    asked = [name for name in written if name != ""]
    if len(asked) == 0:
        return False
    names = configurations_of(own)
    return any(name in names for name in asked)


def evening_with(free: FitSpace, riders: list[RiderAsked], pack: FitPack, judge: Judge) -> Evening:
    """What a day comes to where the acts that name no space play in one."""
    groups: list[Group] = []
    for space in pack["spaces"]:
        own = [rider for rider in riders if plays_in(rider, space, free, pack["spaces"])]
        if len(own) > 0:
            groups.append({"space": space, "riders": own})
    results = [judge(pack_of_space(pack, group["space"]), group["riders"]) for group in groups]
    return {"free": free, "groups": groups, "results": results}


def plays_in(rider: RiderAsked, space: FitSpace, free: FitSpace, spaces: list[FitSpace]) -> bool:
    """
    Whether an act plays in a space. One that names a space which the house has not is judged as if
    it named none.
    """
    if any(each["name"] == rider["space"] for each in spaces):
        return rider["space"] == space["name"]
    return space["key"] == free["key"]


def verdicts_of(evening: Evening, riders: list[RiderAsked]) -> list[Verdict]:
    """
    All verdicts of an evening: one for each requirement in the riders' order, then those on the
    day, space by space.
    """
    own: dict[str, list[Verdict]] = {}
    of_the_day: list[Verdict] = []
    for group, result in zip(evening["groups"], evening["results"], strict=True):
        start = 0
        for rider in group["riders"]:
            end = start + len(rider["requirements"])
            own[rider["act"]] = result["verdicts"][start:end]
            start = end
        of_the_day.extend(result["verdicts"][start:])
    answers = [answer for rider in riders for answer in own[rider["act"]]]
    return [*answers, *of_the_day]


def beside(best: Evening, other: Evening, riders: list[RiderAsked]) -> OtherArrangement:
    """Another space for those that name none, beside the best."""
    verdicts = verdicts_of(other, riders)
    before = verdicts_of(best, riders)
    return {
        "arrangement": {
            "space": other["free"]["name"],
            "configuration": "",
            "settings": [],
        },
        "verdict": overall(verdicts, ""),
        "short": len([answer for answer in verdicts if answer["verdict"] == SHORT]),
        "ask": len([answer for answer in verdicts if answer["verdict"] == ASK]),
        "worse": first_graver(verdicts, before),
        "better": first_graver(before, verdicts),
    }


def judged_in(best: Evening, others: list[OtherArrangement]) -> list[str]:
    """In which space a show is judged, and how the others fare."""
    if len(best["groups"]) > 1:
        return [fill(EACH_IN_ITS_OWN, {"acts": acts_in_words(best)}), *lines_of(others)]
    parts = {"space": best["free"]["name"], "number": digits(len(others) + 1, 0)}
    return [fill(BEST_OF if len(others) > 0 else JUDGED_IN, parts), *lines_of(others)]


def words_within(best: Evening) -> list[str]:
    """In which arrangement of each space its acts are judged."""
    return [words for result in best["results"] for words in result["judged_in"]]


def acts_in_words(evening: Evening) -> str:
    """Each act with its space."""
    return BETWEEN.join(
        fill(ACT_IN, {"act": rider["act"], "space": group["space"]["name"]})
        for group in evening["groups"]
        for rider in group["riders"]
    )


def acts_of(riders: list[RiderAsked], best: Evening, verdicts: list[Verdict]) -> list[ActAnswer]:
    """The answer to each act in the riders' order, with the space that it is judged in."""
    found: list[ActAnswer] = []
    for rider in riders:
        for group, result in zip(best["groups"], best["results"], strict=True):
            for answer in result["acts"]:
                if answer["act"] == rider["act"]:
                    arrangement: Arrangement = {
                        **answer["arrangement"],
                        "space": group["space"]["name"],
                    }
                    own = as_far_as_read(overall(verdicts, rider["act"]), [rider])
                    found.append({**answer, "arrangement": arrangement, "verdict": own})
    return found


def unknown_spaces(riders: list[RiderAsked], spaces: list[FitSpace]) -> list[Verdict]:
    """The question which space is meant, for each act that names one which the house has not."""
    found: list[Verdict] = []
    names = BETWEEN.join(space["name"] for space in spaces)
    for rider in riders:
        written = rider["space"]
        if written != "" and all(space["name"] != written for space in spaces):
            parts = {"act": rider["act"], "space": written, "names": names}
            line: Line = {
                "act": rider["act"],
                "line": 0,
                "department": "house",
                "title": "Space",
                "need": written,
                "strictness": "must",
            }
            answer = verdict(line, ASK, fill(NO_SUCH_SPACE, parts))
            answer["act_question"] = fill(WHICH_SPACE, parts)
            found.append(answer)
    return found


def cautions_of(best: Evening) -> list[str]:
    """The cautions of all spaces, each once."""
    found: list[str] = []
    for result in best["results"]:
        for words in result["cautions"]:
            if words not in found:
                found.append(words)
    return found
