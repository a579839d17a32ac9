"""One need against the facts that can answer it."""

from builder.fit.needs.choosing import items_for, items_perhaps, unsaid
from builder.fit.needs.sentences import (
    AMOUNT_NOT_KNOWN,
    HOUSE_HAS,
    HOUSE_SAYS,
    HOW_MANY,
    HOW_MUCH,
    PERHAPS,
    UNLIMITED_UNKNOWN,
    WHETHER,
)
from builder.fit.needs.several_items import by_best, by_worst, with_faults
from builder.fit.needs.sums import by_sum
from builder.fit.records import Fact, FitPack, Item, NeedAmount, Rule, Section, Verdict
from builder.fit.sections import section_of
from builder.fit.sentences import HAS_NONE, NOT_DESCRIBED, NOT_SAID, SHOW_BRINGS_IT, fill
from builder.fit.verdicts import (
    ASK,
    FITS,
    NOT_NEEDED,
    NOTED,
    SHORT,
    asked,
    fact_of,
    rider_line_words,
    verdict,
    with_remedy,
)
from builder.rules import WHOLES

WORDED = ("yes", "permission")
WANTED = {"count": HOW_MANY, "yes": WHETHER, "permission": WHETHER}


def compared(requirement: NeedAmount, rule: Rule, pack: FitPack) -> Verdict:
    """The verdict on one requirement that a rule answers."""
    if requirement["carried"] == "show":
        return verdict(requirement, NOT_NEEDED, SHOW_BRINGS_IT)
    if requirement["way"] == "unknown":
        return amount_open(requirement, rule, pack)
    section = section_of(pack, rule["section"])
    if section is None:
        return asked(requirement, rule, NOT_DESCRIBED)
    answer = by_all(requirement, rule, section, items_for(section, rule))
    perhaps = [item for item in items_perhaps(section, rule) if unsaid(item, rule) != ""]
    if len(perhaps) == 0:
        return answer
    with_them = by_all(requirement, rule, section, items_perhaps(section, rule))
    if len(items_for(section, rule)) > 0 and is_alike(answer, with_them):
        return answer
    item = perhaps[0]
    parts = {"item": item["name"], "what": unsaid(item, rule)}
    return asked(requirement, rule, fill(PERHAPS, parts))


def by_all(requirement: NeedAmount, rule: Rule, section: Section, items: list[Item]) -> Verdict:
    """What some items make of it, or that there are none."""
    if len(items) > 0:
        return by_items(requirement, rule, section, items)
    return by_nothing(requirement, rule, section)


def is_alike(one: Verdict, other: Verdict) -> bool:
    """Whether two verdicts come to the same, with notes or without."""
    words = (one["verdict"], other["verdict"])
    return words[0] == words[1] or all(word in (FITS, NOTED) for word in words)


def by_items(requirement: NeedAmount, rule: Rule, section: Section, items: list[Item]) -> Verdict:
    """What the items that can answer make of it, as the rule combines them."""
    if rule["combine"] == "sum":
        return by_sum(requirement, rule, items)
    if rule["combine"] == "all":
        return by_worst(requirement, rule, items)
    return with_faults(by_best(requirement, rule, items), rule, section)


def amount_open(requirement: NeedAmount, rule: Rule, pack: FitPack) -> Verdict:
    """
    A need without its amount: a question to the act where the house has said what it has, and to
    the house where it has not.
    """
    fact = fact_for(requirement, rule, pack)
    if fact is None or fact["standing"] != "stated" or fact["text"] == "":
        return asked(requirement, rule, AMOUNT_NOT_KNOWN)
    answer = verdict(requirement, ASK, AMOUNT_NOT_KNOWN)
    answer["question"] = fill(
        HOUSE_SAYS if rule["kind"] in WORDED else HOUSE_HAS,
        {
            "act": requirement["act"],
            "line": rider_line_words(requirement["line"]),
            "title": requirement["title"],
            "wanted": WANTED.get(rule["kind"], HOW_MUCH),
            "fact": fact["text"],
        },
    )
    answer["fact"] = fact
    return answer


def fact_for(requirement: NeedAmount, rule: Rule, pack: FitPack) -> Fact | None:
    """The fact that would answer a need whose amount is not known yet."""
    if section_of(pack, rule["section"]) is None:
        return None
    least: NeedAmount = {
        **requirement,
        "way": rule["ways"][0],
        "low": 0.0,
        "high": 0.0,
        "words": "yes",
    }
    return compared(least, rule, pack)["fact"]


def by_nothing(requirement: NeedAmount, rule: Rule, section: Section) -> Verdict:
    """No item answers: the house says there is none, or nobody has said."""
    for item in section["items"]:
        if item["kind"] in WHOLES and rule["whole"] != "" and rule["whole"] in item["values"]:
            value = item["values"][rule["whole"]]
            if value["standing"] == "none" and rule["none_means"] == "no limit":
                return asked(requirement, rule, UNLIMITED_UNKNOWN)
            if value["standing"] == "none":
                answer = verdict(requirement, SHORT, HAS_NONE)
                answer["fact"] = fact_of(value, item)
                return with_remedy(answer, rule)
    return asked(requirement, rule, NOT_SAID)
