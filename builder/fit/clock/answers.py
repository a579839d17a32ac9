"""Answers on lengths of time, and asks with their questions in one line."""

from builder.fit.clock.records import HouseSays, Run
from builder.fit.clock.sentences import QUESTIONS_OF, SHORT_LENGTH, SPARE_LENGTH
from builder.fit.records import Line, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, FITS, SHORT, fact_of, verdict
from builder.fit.wording import lasting


def length_answer(requirement: Line, slack_s: float, intro: str) -> Verdict:
    """A fit with what is to spare, or a short with by how much."""
    words = lasting(slack_s)
    parts = {"intro": intro, "amount": words}
    if slack_s >= 0:
        answer = verdict(requirement, FITS, fill(SPARE_LENGTH, parts))
    else:
        answer = verdict(requirement, SHORT, fill(SHORT_LENGTH, parts))
    answer["margin"] = [f"{sign_of(slack_s)}{words}", ""]
    return answer


def sign_of(slack_s: float) -> str:
    """The sign of a margin."""
    if slack_s < 0:
        return "−"
    return "+" if slack_s > 0 else ""


def asked_together(requirement: Line, questions: list[str], reason: str) -> Verdict:
    """An ask with its questions in one line."""
    answer = verdict(requirement, ASK, reason)
    answer["question"] = questions_of(requirement, questions)
    return answer


def acts_asked(requirement: Line, questions: list[str], reason: str) -> Verdict:
    """An ask with its questions to the acts in one line."""
    answer = verdict(requirement, ASK, reason)
    answer["act_question"] = questions_of(requirement, questions)
    return answer


def is_open(laid: Run) -> bool:
    """Whether something that decides a plan is known neither by the house nor by the acts."""
    return len(laid["lacks"]) > 0 or len(laid["act_lacks"]) > 0


def questions_of(requirement: Line, questions: list[str]) -> str:
    """Questions in one line, with what they belong to; empty where there are none."""
    if len(questions) == 0:
        return ""
    parts = {"questions": " ".join(questions), "title": requirement["title"]}
    return fill(QUESTIONS_OF, parts)


def with_fact(answer: Verdict, says: HouseSays) -> Verdict:
    """An answer with what the house says, where it says something."""
    if says["value"] is not None and says["item"] is not None:
        answer["fact"] = fact_of(says["value"], says["item"])
    return answer


def with_mender(answer: Verdict, remedy: str, who: str) -> Verdict:
    """A short answer with what would mend it, and who could; another one as it is."""
    if answer["verdict"] == SHORT:
        answer["remedy"] = remedy
        answer["who"] = who
    return answer
