"""What verdicts come to: the worst of them, and the cautions that belong beside them."""

from builder.fit.records import FitPack, Section, Verdict, Word
from builder.fit.verdicts import NOT_NEEDED, NOTED, RANK, SHORT


def overall(verdicts: list[Verdict], act: str) -> Word:
    """The worst verdict of an act, or of all. What only should be so does not make a show short."""
    worst: Word = NOT_NEEDED
    for answer in verdicts:
        word = answer["verdict"]
        if word == SHORT and answer["strictness"] == "should":
            word = NOTED
        if act in ("", answer["act"]) and RANK[word] > RANK[worst]:
            worst = word
    return worst


def cautions(verdicts: list[Verdict], pack: FitPack) -> list[str]:
    """
    The cautions of the departments that answered or are asked, in the pack's order, each once.
    """
    kept: list[str] = []
    for section in pack["sections"]:
        if any(answers(section, answer) for answer in verdicts):
            for words in section["cautions"]:
                if words not in kept:
                    kept.append(words)
    return kept


def answers(section: Section, answer: Verdict) -> bool:
    """
    Whether a verdict shows a fact of a section, or is of its department: what is only asked has
    figures in its reason too.
    """
    if answer["department"] == section["key"]:
        return True
    fact = answer["fact"]
    return fact is not None and fact["key"].split(".")[0] == section["key"]
