"""
Amounts by class, such as four points of 250 kg and two of 500: of each class, and of all that are
as good or better, enough must be there.
"""

from builder.fit.needs.choosing import items_for, items_perhaps, value_for
from builder.fit.needs.comparing import by_nothing
from builder.fit.needs.sentences import ALL_CLASSES, CLASS_OPEN
from builder.fit.needs.sums import by_sum
from builder.fit.records import (
    ClassAsked,
    ClassesAsked,
    FitPack,
    Item,
    NeedAsked,
    Rule,
    Section,
    Verdict,
)
from builder.fit.sections import section_of
from builder.fit.sentences import BEST_OF_SEVERAL, NOT_DESCRIBED, SHOW_BRINGS_IT, fill
from builder.fit.values import least_of, most_of
from builder.fit.verdicts import FITS, NOT_NEEDED, NOTED, RANK, SHORT, asked, verdict


def by_class(need: ClassesAsked, rule: Rule, measure: Rule, pack: FitPack) -> Verdict:
    """
    The gravest verdict of the classes, with each of them told. ``measure`` is the rule that tells
    how good one of the things is.
    """
    if need["carried"] == "show":
        return verdict(need, NOT_NEEDED, SHOW_BRINGS_IT)
    section = section_of(pack, rule["section"])
    if section is None:
        return asked(need, rule, NOT_DESCRIBED)
    parts = [class_judged(need, one, rule, measure, section) for one in need["classes"]]
    gravest = parts[0]
    for part in parts:
        if RANK[part["verdict"]] > RANK[gravest["verdict"]]:
            gravest = part
    told = {"title": gravest["title"], "need": gravest["need"], "reason": gravest["reason"]}
    is_fit = gravest["verdict"] in (FITS, NOTED)
    reason = ALL_CLASSES if is_fit else fill(BEST_OF_SEVERAL, told)
    answer = verdict(need, gravest["verdict"], reason)
    answer["parts"] = parts
    answer["remedy"] = gravest["remedy"]
    answer["who"] = gravest["who"]
    return answer


def class_judged(
    need: ClassesAsked, one: ClassAsked, rule: Rule, measure: Rule, section: Section
) -> Verdict:
    """Whether enough is there of a class; what is better serves too, but only once."""
    requirement = of_class(need, one)
    every = items_perhaps(section, rule)
    if len(every) == 0:
        return by_nothing(requirement, rule, section)
    good = [item for item in items_for(section, rule) if is_surely(item, measure, one["each"])]
    answer = by_sum(requirement, rule, good)
    if answer["verdict"] in (FITS, NOTED):
        return answer
    perhaps = [item for item in every if may_be(item, measure, one["each"])]
    at_most = by_sum(requirement, rule, perhaps)
    if answer["verdict"] == SHORT and at_most["verdict"] != SHORT:
        return asked(requirement, rule, CLASS_OPEN)
    return answer


def of_class(need: ClassesAsked, one: ClassAsked) -> NeedAsked:
    """A class as a need by itself, with all that must be as good or better."""
    low = 0.0
    for other in need["classes"]:
        if other["each"] >= one["each"]:
            low += other["count"]
    return {
        "act": need["act"],
        "line": need["line"],
        "department": need["department"],
        "title": need["title"],
        "need": one["words"],
        "strictness": need["strictness"],
        "carried": need["carried"],
        "what": need["what"],
        "own": False,
        "way": "at least",
        "low": low,
        "high": low,
        "words": "",
        "sort": "rule",
    }


def is_surely(item: Item, measure: Rule, each: float) -> bool:
    """Whether one of a thing is known to be as good as a class asks."""
    least = least_of(value_for(item, measure))
    return least is not None and least >= each


def may_be(item: Item, measure: Rule, each: float) -> bool:
    """Whether one of a thing may be as good, for all that is known."""
    value = value_for(item, measure)
    if value is not None and value["standing"] == "none":
        return measure["none_means"] == "no limit"
    most = most_of(value)
    return most is None or most >= each
