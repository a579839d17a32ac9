"""Needs that are made of others: one of several, all of several, and what a condition opens."""

from collections.abc import Callable

from builder.fit.needs.sentences import ALL_OF_IT, NO_CONDITION, OPEN_CONDITION
from builder.fit.records import AllAsked, AnyAsked, ClassesAsked, IfAsked, Line, NeedAsked, Verdict
from builder.fit.sentences import BEST_OF_SEVERAL, fill
from builder.fit.verdicts import ASK, FITS, NOT_NEEDED, NOTED, RANK, SHORT, verdict

Judge = Callable[[NeedAsked | ClassesAsked], Verdict]
"""What gives the verdict on one need, or on amounts by class."""
Composed = AnyAsked | AllAsked | IfAsked


def composed(need: Composed, judge: Judge) -> Verdict:
    """The verdict on a need that is made of others."""
    if need["sort"] == "if":
        return on_condition(need, judge)
    if need["sort"] == "all":
        return all_of(need, judge)
    return any_of(need, judge)


def any_of(need: AnyAsked, judge: Judge) -> Verdict:
    """Alternatives: the best verdict of them is the verdict."""
    best = part_judged(need["any"][0], judge)
    for part in need["any"][1:]:
        answer = part_judged(part, judge)
        if RANK[answer["verdict"]] < RANK[best["verdict"]]:
            best = answer
    best["reason"] = reason_of(best)
    return in_place_of(best, need)


def part_judged(part: NeedAsked | AllAsked, judge: Judge) -> Verdict:
    """The verdict on one of several alternatives, which may be several needs together."""
    return all_of(part, judge) if part["sort"] == "all" else judge(part)


def all_of(need: AllAsked, judge: Judge) -> Verdict:
    """Several needs together: the gravest verdict of them is the verdict, and all are told."""
    parts = [judge(part) for part in need["all"]]
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
    holds = met["verdict"] in (FITS, NOTED)
    fails = met["verdict"] == SHORT
    if holds if need["unless"] else fails:
        return verdict(need, NOT_NEEDED, fill(NO_CONDITION, {"reason": reason_of(met)}))
    then = need["then"]
    if then["sort"] == "rule" or then["sort"] == "classes":
        answer = judge(then)
    else:
        answer = composed(then, judge)
    if not holds and not fails and answer["verdict"] in (ASK, SHORT):
        return condition_asked(need, met, answer)
    return in_place_of(answer, need)


def condition_asked(need: IfAsked, met: Verdict, answer: Verdict) -> Verdict:
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
