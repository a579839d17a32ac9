"""One need against the facts that can answer it."""

from builder.fit.needs.choosing import (
    answered_elsewhere,
    items_for,
    items_perhaps,
    unsaid,
)
from builder.fit.needs.sentences import (
    ALL_OF_A_SORT,
    AMOUNT_NOT_KNOWN,
    HOUSE_HAS,
    HOUSE_SAYS,
    HOW_MANY,
    HOW_MUCH,
    LISTS_OTHERS,
    MAY_HAVE_MORE,
    NONE_OF_ITS_OWN,
    PERHAPS,
    TOLD,
    UNLIMITED_UNKNOWN,
    WHETHER,
)
from builder.fit.needs.several_items import by_best, by_worst, with_faults
from builder.fit.needs.sums import by_sum
from builder.fit.records import Fact, FitPack, Item, NeedAmount, Rule, Section, Verdict
from builder.fit.sections import section_of
from builder.fit.sentences import HAS_NONE, NOT_DESCRIBED, NOT_SAID, SHOW_BRINGS_IT, fill
from builder.fit.silence import silence
from builder.fit.values import key_beside
from builder.fit.verdicts import (
    ASK,
    FITS,
    NOT_NEEDED,
    NOTED,
    SHORT,
    asked,
    asked_for,
    fact_of,
    lack_words,
    rider_line_words,
    settled,
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
    if requirement["way"] == "tell":
        return told_what_it_is(requirement, rule, pack)
    section = section_of(pack, rule["section"])
    if section is None or len(items_perhaps(section, rule)) == 0:
        other = by_another(requirement, rule, section, pack)
        if other is not None:
            return other
    if section is None:
        return asked(requirement, rule, NOT_DESCRIBED)
    answer = by_all(requirement, rule, section, items_for(section, rule))
    if answer["verdict"] == SHORT and is_open_elsewhere(rule, section, pack):
        return asked(requirement, rule, NONE_OF_ITS_OWN)
    if answer["verdict"] == SHORT and is_own_list_open(rule, section):
        return asked_for_all(requirement, rule, silence_of(rule, section), section)
    perhaps = [item for item in items_perhaps(section, rule) if unsaid(item, rule) != ""]
    if len(perhaps) == 0:
        return answer
    with_them = by_all(requirement, rule, section, items_perhaps(section, rule))
    if len(items_for(section, rule)) > 0 and is_alike(answer, with_them):
        return answer
    item, what = perhaps[0], unsaid(perhaps[0], rule)
    reason = fill(PERHAPS, {"item": item["name"], "what": what})
    key, words = key_beside(item, what), lack_words(item["name"], what)
    return asked_for(requirement, rule, reason, key, words)


def by_all(requirement: NeedAmount, rule: Rule, section: Section, items: list[Item]) -> Verdict:
    """What some items make of it, or that there are none."""
    if len(items) > 0:
        return by_items(requirement, rule, section, items)
    return by_nothing(requirement, rule, section)


def by_another(
    requirement: NeedAmount, rule: Rule, own: Section | None, pack: FitPack
) -> Verdict | None:
    """
    The answer of the section that can answer in place of the rule's own, or None where it tells
    nothing either. Unless the house says that it has nothing of the rule's own sort, a shortage is
    a question.
    """
    if len(rule["elsewhere"]) == 0:
        return None
    there = answered_elsewhere(rule)
    section = section_of(pack, there["section"])
    items = [] if section is None else items_for(section, there)
    if section is None or len(items) == 0:
        return None
    answer = by_items(requirement, there, section, items)
    has_none = own is not None and whole_standing(rule, own) == "none"
    if answer["verdict"] == SHORT and not has_none:
        reason = fill(MAY_HAVE_MORE, {"reason": answer["reason"]})
        return (
            asked(requirement, rule, reason)
            if own is None
            else (asked_for_all(requirement, rule, reason, own))
        )
    return answer


def is_open_elsewhere(rule: Rule, own: Section, pack: FitPack) -> bool:
    """
    Whether nothing of a rule's own sort is there, and the section that can answer in its place
    neither tells anything nor says that there is nothing.
    """
    if len(rule["elsewhere"]) == 0 or len(items_perhaps(own, rule)) > 0:
        return False
    there = answered_elsewhere(rule)
    section = section_of(pack, there["section"])
    if section is None:
        return True
    alike = [
        other
        for other in pack["rules"]
        if other["section"] == there["section"] and other["item"] == there["item"]
    ]
    return all(whole_standing(other, section) != "none" for other in alike)


def is_own_list_open(rule: Rule, section: Section) -> bool:
    """
    Whether only things of other kinds answer a rule, and the house leaves open whether it has any
    of the rule's own.
    """
    if any(item["kind"] == rule["item"] for item in section["items"]):
        return False
    return whole_standing(rule, section) in ("unknown", "not stated")


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
    answer["act_question"] = fill(
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


def told_what_it_is(requirement: NeedAmount, rule: Rule, pack: FitPack) -> Verdict:
    """A need that only wants to know what the house has: told where it says so, else asked."""
    way = "is" if rule["kind"] in WORDED else "at least"
    found = compared({**requirement, "way": way}, rule, pack)
    if found["verdict"] == ASK:
        return found
    answer = verdict(requirement, FITS, TOLD if found["fact"] is not None else found["reason"])
    answer["fact"] = found["fact"]
    answer["notes"] = found["notes"]
    answer["leans_on"] = found["leans_on"]
    return settled(answer)


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
    for item in wholes_of(rule, section):
        value = item["values"][rule["whole"]]
        if value["standing"] == "none" and rule["none_means"] == "no limit":
            return asked(requirement, rule, UNLIMITED_UNKNOWN)
        if value["standing"] == "none":
            answer = verdict(requirement, SHORT, HAS_NONE)
            answer["fact"] = fact_of(value, item)
            return with_remedy(answer, rule)
    if any(item["kind"] == rule["item"] for item in section["items"]):
        return asked(requirement, rule, LISTS_OTHERS)
    return asked_for_all(requirement, rule, silence_of(rule, section), section)


def silence_of(rule: Rule, section: Section) -> str:
    """What the house leaves open where it lists nothing of the sort."""
    for item in wholes_of(rule, section):
        return silence(item["values"][rule["whole"]])
    return NOT_SAID


def asked_for_all(requirement: NeedAmount, rule: Rule, reason: str, section: Section) -> Verdict:
    """An ask for all that a section has of a rule's sort, of which it lists nothing."""
    for item in wholes_of(rule, section):
        value = item["values"][rule["whole"]]
        words = lack_words(section["title"], value["label"])
        return asked_for(requirement, rule, reason, value["key"], words)
    sort = fill(ALL_OF_A_SORT, {"item": rule["item"].replace("-", " ")})
    words = lack_words(section["title"], sort)
    return asked_for(requirement, rule, reason, f"{section['key']}.{rule['item']}", words)


def wholes_of(rule: Rule, section: Section) -> list[Item]:
    """The items that can say that the house has nothing of the sort at all."""
    if rule["whole"] == "":
        return []
    return [
        item
        for item in section["items"]
        if item["kind"] in WHOLES and rule["whole"] in item["values"]
    ]


def whole_standing(rule: Rule, section: Section) -> str:
    """Whether the house says that it has none of the sort: the standing of that, or nothing."""
    for item in wholes_of(rule, section):
        return item["values"][rule["whole"]]["standing"]
    return ""
