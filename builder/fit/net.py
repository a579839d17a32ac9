"""
The net below each need of a rider, and below what a day's acts ask together: where the program
fails on one of them, it is told as not judged and the others are judged all the same.
"""

from builder.fit.hangs.plan import hangs_for_all
from builder.fit.power.placing import power_for_all
from builder.fit.records import (
    FitPack,
    HangAsked,
    Line,
    PowerAsked,
    TrimAsked,
    Verdict,
)
from builder.fit.sentences import BY_HAND, NOT_JUDGED, THE_DAY_NOT_JUDGED
from builder.fit.show_day import THE_DAY
from builder.fit.verdicts import ASK, verdict, with_question
from builder.formulas.primitives import is_failing


def not_judged(line: Line) -> Verdict:
    """A need on which the program fails, with the question that a person has to settle."""
    return with_question(verdict(line, ASK, NOT_JUDGED), line, BY_HAND)


def day_not_judged() -> Verdict:
    """The same for what the acts of a day ask together."""
    return not_judged(
        {
            "act": THE_DAY,
            "line": 0,
            "department": "house",
            "title": THE_DAY,
            "need": THE_DAY_NOT_JUDGED,
            "strictness": "must",
        }
    )


def power_in_net(loads: list[PowerAsked], pack: FitPack) -> list[Verdict]:
    """
    A verdict for each load. Where the program fails on all together, those on which it fails are
    left out, and the others share the house's power without them.
    """
    answers: list[Verdict] = []
    if not is_failing(lambda: put_power(answers, loads, pack)):
        return answers
    good: list[PowerAsked] = []
    is_good: list[bool] = []
    for load in loads:
        more = [*good, load]
        is_good.append(not is_failing(lambda: put_power([], more, pack)))  # noqa: B023
        if is_good[-1]:
            good = more
    answers = power_for_all(good, pack)
    return [
        answers.pop(0) if good_one else not_judged(load)
        for load, good_one in zip(loads, is_good, strict=True)
    ]


def put_power(answers: list[Verdict], loads: list[PowerAsked], pack: FitPack) -> None:
    """Add the verdicts on some loads."""
    answers.extend(power_for_all(loads, pack))


def hangs_in_net(hangs: list[HangAsked | TrimAsked], pack: FitPack) -> list[Verdict]:
    """
    The same for hangs, which share the house's steel. The trims of a hang that is left out are left
    out with it.
    """
    answers: list[Verdict] = []
    if not is_failing(lambda: put_hangs(answers, hangs, pack)):
        return answers
    good: list[HangAsked | TrimAsked] = []
    is_good: list[bool] = []
    hangs_there = False
    for hang in hangs:
        more = [*good, hang]
        goes = (hang["sort"] == "hang" or hangs_there) and not is_failing(
            lambda: put_hangs([], more, pack)  # noqa: B023
        )
        if hang["sort"] == "hang":
            hangs_there = goes
        is_good.append(goes)
        if goes:
            good = more
    answers = hangs_for_all(good, pack)
    return [
        answers.pop(0) if good_one else not_judged(hang)
        for hang, good_one in zip(hangs, is_good, strict=True)
    ]


def put_hangs(answers: list[Verdict], hangs: list[HangAsked | TrimAsked], pack: FitPack) -> None:
    """Add the verdicts on some hangs."""
    answers.extend(hangs_for_all(hangs, pack))
