"""What several items make of a need: the best of them, or the worst where every one must do."""

from builder.fit.needs.amounts import Answer
from builder.fit.needs.one_item import by_item
from builder.fit.needs.sentences import (
    DEAD_WAYS,
    DEAD_WAYS_NOTE,
    NOT_FOR_VISITORS,
    OUT_OF_SERVICE,
    SOME_DO,
)
from builder.fit.notes import item_notes
from builder.fit.records import Item, NeedAmount, Rule, Section, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import text_of
from builder.fit.verdicts import ASK, FITS, NOTED, SHORT, settled

ORDER = {FITS: 0, NOTED: 1, ASK: 2, SHORT: 3}


def by_best(requirement: NeedAmount, rule: Rule, items: list[Item]) -> Verdict:
    """The verdict of the item that answers best; where only some do, it may say which."""
    answers = settled_answers(requirement, rule, items)
    best = answers[0]
    for answer in answers:
        if better(answer, best):
            best = answer
    good = [
        item["name"]
        for item, answer in zip(items, answers, strict=True)
        if answer["verdict"]["verdict"] in (FITS, NOTED)
    ]
    some_do = len(good) > 0 and len(good) < len(items)
    if some_do and rule["item"] in SOME_DO:
        note = fill(SOME_DO[rule["item"]], {"names": ", ".join(good)})
        best["verdict"]["notes"].append(note)
    return settled(best["verdict"])


def by_worst(requirement: NeedAmount, rule: Rule, items: list[Item]) -> Verdict:
    """The verdict of the item that answers worst, where every one of them must do."""
    answers = settled_answers(requirement, rule, items)
    worst = answers[0]
    for answer in answers:
        if better(worst, answer):
            worst = answer
    return worst["verdict"]


def settled_answers(requirement: NeedAmount, rule: Rule, items: list[Item]) -> list[Answer]:
    """Each item's answer, whole with its notes."""
    answers = [by_item(requirement, rule, item) for item in items]
    for answer in answers:
        settled(answer["verdict"])
    return answers


def better(one: Answer, other: Answer) -> bool:
    """Whether one answer is better than another: by its verdict's word, then by its margin."""
    first = ORDER[one["verdict"]["verdict"]]
    second = ORDER[other["verdict"]["verdict"]]
    return first < second or (first == second and one["slack"] > other["slack"])


def with_faults(answer: Verdict, rule: Rule, section: Section) -> Verdict:
    """
    A fit with the faults of what stands before it: boxes that are out or limited, and ways that do
    not work.
    """
    if rule["beside"] == "" or answer["verdict"] not in (FITS, NOTED):
        return answer
    for item in items_of(section, rule["beside"]):
        answer["notes"] = [*answer["notes"], *faults_of(item)]
    return settled(answer)


def faults_of(item: Item) -> list[str]:
    """What does not work of an item."""
    if item["condition"] == "out of service":
        return [fill(OUT_OF_SERVICE, {"item": item["name"]})]
    if item["terms"] == "not for visitors":
        return [fill(NOT_FOR_VISITORS, {"item": item["name"]})]
    ways = text_of(item, "dead")
    if ways == "":
        return item_notes(item)
    template = DEAD_WAYS if item["note"] == "" else DEAD_WAYS_NOTE
    return [fill(template, {"item": item["name"], "ways": ways, "note": item["note"]})]
