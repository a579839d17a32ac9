"""What one item of the house makes of a need: its value's standing, its state, its terms."""

from builder.fit.needs.amounts import Answer, against_number, against_value
from builder.fit.needs.choosing import value_for
from builder.fit.needs.sentences import (
    ARRANGE,
    AS_ASKED,
    BORNE_ASKED,
    BOUNDED_WHY,
    CHOSEN,
    NO_NUMBER,
    NOT_FOR_VISITORS,
    NOT_USABLE,
    NOTHING_LIMITS,
    OTHERWISE,
    SET_TO,
    TOLD_BESIDE,
)
from builder.fit.notes import age_notes, item_notes, once
from builder.fit.records import Item, Lack, NeedAmount, Rule, Value, Verdict
from builder.fit.sentences import (
    BOUNDED,
    CAN_YOU_TELL,
    HAS_NONE,
    LIMIT_BY_RULE,
    NOT_KNOWN_YET,
    NOT_SAID,
    fill,
)
from builder.fit.values import (
    BEARERS,
    OPEN,
    asked_of_bearers,
    is_set,
    key_beside,
    lacking_of,
    least_of,
    most_of,
    rule_lacking,
    text_of,
    told_of,
)
from builder.fit.verdicts import (
    ASK,
    FITS,
    SHORT,
    asked,
    fact_of,
    lack_words,
    verdict,
    with_remedy,
)
from builder.fit.wording import both
from builder.rules import ANYTHING


def by_item(requirement: NeedAmount, rule: Rule, item: Item) -> Answer:
    """One item's answer."""
    name = {"item": item["name"]}
    if item["condition"] == "out of service":
        return refused(requirement, rule, with_bearers(fill(NOT_USABLE, name), item))
    if item["terms"] == "not for visitors":
        return refused(requirement, rule, with_bearers(fill(NOT_FOR_VISITORS, name), item))
    value = value_for(item, rule)
    answer = by_standing(requirement, rule, value, item)
    whole = answer["verdict"]
    if value is not None:
        whole["fact"] = fact_of(value, item)
    if whole["verdict"] == ASK:
        whole["lacks"] = [lack_of_item(rule, value, item)]
    why = asked_of_bearers(item)
    if why != "" and whole["verdict"] == FITS:
        reason = fill(BORNE_ASKED, {"item": item["name"], "why": why})
        answer["verdict"] = {**asked(requirement, rule, reason), "fact": whole["fact"]}
        return answer
    is_unwanted = rule["kind"] == "permission" and requirement["words"] == "no"
    if whole["verdict"] in (FITS, SHORT) and not is_unwanted:
        whole["notes"] = [*whole["notes"], *told_notes(rule, item)]
    if whole["verdict"] == FITS:
        whole["notes"] = [
            *whole["notes"],
            *setting_notes(rule, value),
            *once([*item_notes(item), *age_notes(value)]),
        ]
    return answer


def lack_of_item(rule: Rule, value: Value | None, item: Item) -> Lack:
    """
    What an ask about an item hangs on: a fact by its key; a figure lacks something of the whole
    item, whichever of its figures is asked for, or a rule of the house for all of its kind.
    """
    name, lacking, for_all = item["name"], lacking_of(item, rule["value"]), rule_lacking(item)
    unweighed = text_of(item, OPEN)
    if unweighed != "" and rule["value"] == "left":
        question = fill(CAN_YOU_TELL, {"what": unweighed})
        return {"key": OPEN, "words": unweighed, "question": question}
    if value is None:
        key, words = key_beside(item, rule["value"]), lack_words(name, rule["title"])
    elif lacking == "":
        key, words = value["key"], lack_words(name, value["label"])
    elif for_all == "":
        key, words = item["key"], lack_words(name, lacking)
    else:
        key, words = for_all, fill(LIMIT_BY_RULE, {"rule": for_all})
    return {"key": key, "words": words, "question": rule["question"]}


def with_bearers(reason: str, item: Item) -> str:
    """A reason with what is told of that which bears an item."""
    told = told_of(item, BEARERS)
    return reason if told == "" else f"{reason} {told}"


def setting_notes(rule: Rule, value: Value | None) -> list[str]:
    """What the house has to set a value to, where it chooses it."""
    if value is None or value["number"] is None or not is_set(value):
        return []
    return [fill(SET_TO, {"amount": both(rule["kind"], value["number"])[0]})]


def told_notes(rule: Rule, item: Item) -> list[str]:
    """What is told beside the value that answers a rule."""
    words = told_of(item, rule["value"])
    return [] if words == "" else [fill(TOLD_BESIDE, {"words": words})]


def plain(answer: Verdict) -> Answer:
    """An answer without a number."""
    return {"verdict": answer, "slack": 0.0}


def refused(requirement: NeedAmount, rule: Rule, reason: str) -> Answer:
    """Something that the house has and the show cannot use, or will not have."""
    return plain(with_remedy(verdict(requirement, SHORT, reason), rule))


def by_standing(requirement: NeedAmount, rule: Rule, value: Value | None, item: Item) -> Answer:
    """What a fact's standing makes of the requirement."""
    if value is None or value["standing"] == "not stated":
        return plain(asked(requirement, rule, NOT_SAID))
    if value["standing"] == "unknown":
        return plain(asked(requirement, rule, NOT_KNOWN_YET))
    if value["standing"] == "none":
        return by_none(requirement, rule)
    return by_value(requirement, rule, value, item)


def by_none(requirement: NeedAmount, rule: Rule) -> Answer:
    """The house says none: nothing there, nothing that limits, or zero."""
    if rule["none_means"] == "zero" and requirement["way"] != "is":
        return against_number(requirement, rule, 0.0)
    if rule["none_means"] == "no limit":
        return plain(verdict(requirement, FITS, NOTHING_LIMITS))
    if requirement["way"] == "is" and requirement["words"] == "no":
        return plain(verdict(requirement, FITS, AS_ASKED))
    return refused(requirement, rule, HAS_NONE)


def by_value(requirement: NeedAmount, rule: Rule, value: Value, item: Item) -> Answer:
    """A stated value against the requirement."""
    if rule["kind"] == "permission":
        return by_permission(requirement, rule, value["text"])
    if rule["kind"] == "yes":
        return by_agreement(requirement, rule, yes_or_no(rule, value) == requirement["words"])
    if least_of(value) is None and most_of(value) is None:
        if value["text"] == "no limit":
            return plain(verdict(requirement, FITS, NOTHING_LIMITS))
        return plain(asked(requirement, rule, NO_NUMBER))
    answer = against_value(requirement, rule, value)
    if answer is None:
        template = CHOSEN if value["can_be_set"] else BOUNDED
        words = told_of(item, rule["value"])
        if words != "":
            template = BOUNDED_WHY
        reason = fill(template, {"text": value["text"], "why": words})
        return plain(asked(requirement, rule, reason))
    return answer


def yes_or_no(rule: Rule, value: Value) -> str:
    """What a value says where yes or no is asked."""
    if len(rule["means_yes"]) == 0:
        return value["text"]
    if value["text"] in rule["means_yes"] or ANYTHING in rule["means_yes"]:
        return "yes"
    return "no"


def by_permission(requirement: NeedAmount, rule: Rule, permission: str) -> Answer:
    """A permission against a wish to use something."""
    wanted = requirement["words"]
    answer = by_agreement(requirement, rule, permission != "no" or wanted == "no")
    if permission == "by arrangement" and wanted == "yes":
        answer["verdict"]["notes"].append(ARRANGE)
    return answer


def by_agreement(requirement: NeedAmount, rule: Rule, agrees: bool) -> Answer:
    """A yes or no that agrees with the wish, or does not."""
    if agrees:
        return plain(verdict(requirement, FITS, AS_ASKED))
    return refused(requirement, rule, OTHERWISE)
