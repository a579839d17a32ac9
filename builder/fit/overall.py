"""What verdicts come to: the worst of them, and the cautions that belong beside them."""

from builder.fit.records import FitPack, RiderAsked, Section, Verdict, Word
from builder.fit.sentences import NOT_READ, fill
from builder.fit.verdicts import ASK, NOT_NEEDED, NOTED, RANK, SHORT


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


def as_far_as_read(word: Word, riders: list[RiderAsked]) -> Word:
    """A verdict on riders: at best an ask where something in them cannot be read."""
    is_whole = all(len(rider["not_read"]) == 0 for rider in riders)
    return word if is_whole or RANK[word] > RANK[ASK] else ASK


def not_read_of(riders: list[RiderAsked]) -> list[str]:
    """What cannot be read of riders, in words, with whose it is."""
    told: list[str] = []
    for rider in riders:
        for words in rider["not_read"]:
            told.append(fill(NOT_READ, {"act": rider["act"], "words": words}))
    return told


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
