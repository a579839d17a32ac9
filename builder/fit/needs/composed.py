"""Needs that are made of others: one of several, all of several, and what a condition opens."""

from collections.abc import Callable

from builder.fit.needs.sentences import (
    ALL_OF_IT,
    NO_CONDITION,
    NO_WAY,
    OPEN_CONDITION,
    WHICH_IS_WHICH,
    WHICH_WAY,
)
from builder.fit.records import (
    AllAsked,
    AnyAsked,
    IfAsked,
    Line,
    NeedAsked,
    Then,
    Verdict,
    WayAsked,
)
from builder.fit.sentences import BEST_OF_SEVERAL, fill
from builder.fit.verdicts import ASK, FITS, NOT_NEEDED, NOTED, RANK, SHORT, question_of, verdict

Judge = Callable[[Then], Verdict]
"""What gives the verdict on what is not made of others."""
Composed = AnyAsked | AllAsked | IfAsked


def composed(need: Composed, judge: Judge) -> Verdict:
    """The verdict on a need that is made of others."""
    if need["sort"] == "if":
        return on_condition(need, judge)
    if need["sort"] == "all":
        return all_of(need, judge)
    return any_of(need, judge)


def any_of(need: AnyAsked, judge: Judge) -> Verdict:
    """
    Alternatives: the best verdict of them is the verdict. One whose condition does not hold is
    none.
    """
    found = [part_judged(part, judge) for part in need["any"]]
    answers = [answer for answer in found if answer["verdict"] != NOT_NEEDED]
    if len(answers) == 0 and need["carried"] != "show":
        return verdict(need, SHORT, NO_WAY)
    best = found[0] if len(answers) == 0 else answers[0]
    for answer in answers:
        if RANK[answer["verdict"]] < RANK[best["verdict"]]:
            best = answer
    best["reason"] = reason_of(best)
    return in_place_of(best, need)


def part_judged(part: NeedAsked | AllAsked | WayAsked, judge: Judge) -> Verdict:
    """The verdict on one of several alternatives, which may be several needs together."""
    if part["sort"] == "all":
        return all_of(part, judge)
    if part["sort"] == "rule":
        return judge(part)
    met = judge(part["condition"])
    if part["unless"] and met["verdict"] in (FITS, NOTED):
        return verdict(part, NOT_NEEDED, "")
    if not part["unless"] and met["verdict"] == SHORT:
        return verdict(part, NOT_NEEDED, "")
    answer = part_judged(part["then"], judge)
    is_open = met["verdict"] not in (FITS, NOTED, SHORT)
    if is_open and answer["verdict"] != SHORT:
        return condition_asked(part, met, answer)
    return in_place_of(answer, part)


def all_of(need: AllAsked, judge: Judge) -> Verdict:
    """Several needs together: the gravest verdict of them is the verdict, and all are told."""
    answer = gravest_of_parts(need, [judge(part) for part in need["all"]])
    if len(need["turned"]) == 0:
        return answer
    turned = gravest_of_parts(need, [judge(part) for part in need["turned"]])
    if are_alike(answer, turned):
        return answer if RANK[answer["verdict"]] >= RANK[turned["verdict"]] else turned
    parts = {"one": answer["reason"], "other": turned["reason"]}
    whole = verdict(need, ASK, fill(WHICH_WAY, parts))
    whole["act_question"] = question_of(need, WHICH_IS_WHICH)
    return whole


def are_alike(one: Verdict, other: Verdict) -> bool:
    """Whether two verdicts come to the same, with notes or without."""
    both = (one["verdict"], other["verdict"])
    return both[0] == both[1] or all(word in (FITS, NOTED) for word in both)


def gravest_of_parts(need: Line, parts: list[Verdict]) -> Verdict:
    """The gravest verdict of several that are needed together, with all of them told."""
    gravest = parts[0]
    for part in parts:
        if RANK[part["verdict"]] > RANK[gravest["verdict"]]:
            gravest = part
    is_fit = gravest["verdict"] in (FITS, NOTED)
    answer = verdict(need, gravest["verdict"], ALL_OF_IT if is_fit else reason_of(gravest))
    answer["parts"] = parts
    for part in parts:
        answer["leans_on"] = [*answer["leans_on"], *part["leans_on"]]
    return answer


def on_condition(need: IfAsked, judge: Judge) -> Verdict:
    """
    A need that counts on a condition alone. Where nobody has said whether that holds, what fits all
    the same fits, and all else is asked.
    """
    met = judge(need["condition"])
    if not may_hold(need, met):
        return without_need(need, met)
    then = need["then"]
    if then["sort"] == "any" or then["sort"] == "all":
        answer = composed(then, judge)
    else:
        answer = judge(then)
    return under_condition(need, met, answer)


def may_hold(need: IfAsked, met: Verdict) -> bool:
    """Whether the condition of a need holds, or may hold; ``met`` is the verdict on it."""
    if need["unless"]:
        return met["verdict"] not in (FITS, NOTED)
    return met["verdict"] != SHORT


def without_need(need: IfAsked, met: Verdict) -> Verdict:
    """A need whose condition does not hold."""
    return verdict(need, NOT_NEEDED, fill(NO_CONDITION, {"reason": reason_of(met)}))


def under_condition(need: IfAsked, met: Verdict, answer: Verdict) -> Verdict:
    """A need whose condition holds, or may hold: then what does not fit is asked."""
    is_open = met["verdict"] not in (FITS, NOTED, SHORT)
    if is_open and answer["verdict"] in (ASK, SHORT):
        return condition_asked(need, met, answer)
    return in_place_of(answer, need)


def condition_asked(need: Line, met: Verdict, answer: Verdict) -> Verdict:
    """A need whose condition nobody has settled: asked, with what is asked of the need itself."""
    parts = {"condition": reason_of(met), "reason": answer["reason"]}
    whole = verdict(need, ASK, fill(OPEN_CONDITION, parts))
    whole["question"] = met["question"]
    whole["act_question"] = met["act_question"]
    whole["lacks"] = met["lacks"]
    whole["leans_on"] = [*met["leans_on"], *answer["leans_on"]]
    whole["parts"] = [answer] if answer["verdict"] == ASK else []
    return whole


def reason_of(answer: Verdict) -> str:
    """The reason of a verdict with what it is about."""
    return fill(
        BEST_OF_SEVERAL,
        {"title": answer["title"], "need": answer["need"], "reason": answer["reason"]},
    )


def in_place_of(answer: Verdict, need: Line) -> Verdict:
    """A verdict on a part as the verdict on the whole line."""
    answer["act"] = need["act"]
    answer["line"] = need["line"]
    answer["title"] = need["title"]
    answer["need"] = need["need"]
    answer["strictness"] = need["strictness"]
    answer["department"] = need["department"]
    return answer
