"""Two needs of one act that cannot both be met, whatever the house has."""

from builder.fit.needs.sentences import ALSO_ASKS, WHICH_HOLDS
from builder.fit.records import NeedAsked, Requirement, RiderAsked, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import NOT_NEEDED, asker_words, rider_line_words, settled

HAIR = 1e-9
"""Two amounts closer than this share of them are one, written in two units."""


def with_contradictions(rider: RiderAsked, verdicts: list[Verdict]) -> list[Verdict]:
    """
    The verdicts on all that a rider asks, in its order, each with a note where an earlier need of
    the same rider contradicts it, and a question to the act.
    """
    needs = rider["requirements"]
    answers: list[Verdict] = []
    for index in range(len(needs)):
        answer = verdicts[index]
        for earlier in needs[:index]:
            if answer["verdict"] != NOT_NEEDED and contradict(needs[index], earlier):
                answer = with_both(answer, earlier)
        answers.append(answer)
    return answers


def with_both(answer: Verdict, other: Requirement) -> Verdict:
    """A verdict that tells of another need which cannot be met as well."""
    parts = {"need": other["need"], "line": rider_line_words(other["line"])}
    question = fill(WHICH_HOLDS, {"one": asker_words(answer), "other": asker_words(other)})
    noted: Verdict = {
        **answer,
        "notes": [*answer["notes"], fill(ALSO_ASKS, parts)],
        "act_question": question if answer["act_question"] == "" else answer["act_question"],
    }
    return settled(noted)


def contradict(one: Requirement, other: Requirement) -> bool:
    """Whether nothing meets two needs at once."""
    if one["sort"] != "rule" or other["sort"] != "rule" or one["what"] != other["what"]:
        return False
    if one["carried"] == "show" or other["carried"] == "show":
        return False
    if one["way"] == "is" or other["way"] == "is":
        return one["way"] == other["way"] and one["words"] != other["words"]
    return is_above(one, other) or is_above(other, one)


def is_above(one: NeedAsked, other: NeedAsked) -> bool:
    """Whether the least that one need wants is more than the most that another does."""
    if one["way"] not in ("at least", "between") or other["way"] not in ("at most", "between"):
        return False
    return one["low"] > other["high"] + HAIR * abs(other["high"])
