"""The verdict on a hang in words."""

from builder.fit.hangs.fitting import fitting
from builder.fit.hangs.records import Brought, Issue, Look, Place
from builder.fit.hangs.sentences import HOUSE_DOWN, TAKE_DOWN
from builder.fit.margins import signed
from builder.fit.notes import once
from builder.fit.records import Fact, HangAsked, Lack, Section, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, SHORT, verdict, with_questions, with_remedy
from builder.fit.wording import both

RIGGERS = "the show's and the house's head riggers, with the house's engineer"


def answer_of(
    hang: HangAsked,
    places: list[Place],
    brought: Brought,
    issues: list[Issue],
    looks: list[Look],
    section: Section,
) -> Verdict:
    """
    The verdict in words: what is short first, then what must be asked, else how much is to spare at
    the tightest limit.
    """
    shorts = [one for one in issues if one["word"] == SHORT]
    if len(shorts) > 0:
        return short_answer(hang, issues, shorts)
    if len(issues) > 0:
        return ask_answer(hang, brought, issues)
    return fitting(hang, places, brought, looks, section)


def short_answer(hang: HangAsked, issues: list[Issue], shorts: list[Issue]) -> Verdict:
    """A hang that is short, by the limit that is passed most."""
    worst = min(shorts, key=lambda one: one["slack"])
    answer = verdict(hang, SHORT, joined([one["reason"] for one in shorts]))
    remedies = [*once([one["remedy"] for one in shorts]), *taken_down(shorts)]
    with_remedy(answer, {"remedy": " ".join(remedies), "who": RIGGERS})
    answer["fact"] = worst["fact"]
    if worst["slack"] < 0:
        answer["margin"] = signed(both("mass", -worst["slack"]), worst["slack"])
    answer["notes"] = once([one["reason"] for one in issues if one["word"] == ASK])
    return answer


def ask_answer(hang: HangAsked, brought: Brought, asks: list[Issue]) -> Verdict:
    """A hang of which something must be asked."""
    answer = verdict(hang, ASK, joined([one["reason"] for one in asks]))
    lacks = [lack_of(one) for one in asks if one["question"] != ""]
    if len(lacks) > 0:
        with_questions(answer, hang, lacks)
    answer["fact"] = first_fact(asks)
    answer["notes"] = once(brought["notes"])
    return answer


def lack_of(one: Issue) -> Lack:
    """What an issue has to be decided by."""
    key = one["question"] if one["about"] == "" else one["about"]
    return {"key": key, "words": one["words"], "question": one["question"]}


def joined(sentences: list[str]) -> str:
    """Sentences one after the other, each once."""
    return " ".join(once(sentences))


def first_fact(issues: list[Issue]) -> Fact | None:
    """The house's fact of the first issue that has one."""
    for one in issues:
        if one["fact"] is not None:
            return one["fact"]
    return None


def taken_down(shorts: list[Issue]) -> list[str]:
    """What the house might take down to make room, by name where the pack tells names."""
    names = once([name for one in shorts for name in one["hangs"]])
    if len(names) > 0:
        return [fill(TAKE_DOWN, {"names": ", ".join(names)})]
    return [HOUSE_DOWN] if any(one["house"] for one in shorts) else []
