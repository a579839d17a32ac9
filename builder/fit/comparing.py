# mypy: disable-error-code="typeddict-unknown-key"
"""One requirement against the facts that can answer it."""

from typing import Any

from builder.fit.verdicts import (
    ASK,
    FITS,
    NOT_NEEDED,
    SHORT,
    Record,
    fact_of,
    settled,
    verdict,
    with_question,
    with_remedy,
)
from builder.fit.wording import LESS, both, digits
from builder.rules import WHOLES

LENGTH_TOLERANCE_M = 0.025
SHARE_TOLERANCE = 0.005
ROUNDED_KINDS = ("mass", "load", "area")
WORDED = ("yes", "permission")
WANTED = {
    "count": "How many do you need?",
    "yes": "Do you need it?",
    "permission": "Do you need it?",
}
SOME_DO = {"deck": "Only in", "configuration": "Only in", "beam": "Only under"}


def tolerance(rule: Record, wanted: float) -> float:
    """
    What rounding may cost: 25 mm of a length, 0.5 % of a weight, load or area; nothing of a count,
    time, level or legal limit.
    """
    if rule["legal"]:
        return 0.0
    if rule["kind"] == "length":
        return LENGTH_TOLERANCE_M
    if rule["kind"] in ROUNDED_KINDS:
        return abs(wanted) * SHARE_TOLERANCE
    return 0.0


def compared(requirement: Record, rule: Record, pack: Record) -> Record:
    """The verdict on one requirement that a rule answers."""
    if requirement["carried"] == "show":
        return verdict(requirement, NOT_NEEDED, "The show brings it.")
    section = section_of(pack, rule["section"])
    if requirement["way"] == "unknown":
        return not_known_yet(requirement, rule, pack)
    if section is None:
        return asked(requirement, rule, "The pack does not describe this.")
    items = chosen(section, rule, requirement)
    if len(items) == 0 and len(chosen(section, rule, {**requirement, "configuration": ""})) > 0:
        return which_configuration(requirement, rule, pack)
    if len(items) == 0:
        return empty(requirement, rule, section)
    if rule["combine"] == "sum":
        return summed(requirement, rule, items)
    if rule["combine"] == "all":
        return worst(requirement, rule, items)
    return with_faults(best(requirement, rule, items), rule, section)


def not_known_yet(requirement: Record, rule: Record, pack: Record) -> Record:
    """
    A need without its amount: a question to the act where the house has said what it has, and to
    the house where it has not.
    """
    reason = "The rider does not know yet how much it needs."
    if section_of(pack, rule["section"]) is None:
        return asked(requirement, rule, reason)
    fact = compared(
        {**requirement, "way": rule["ways"][0], "low": 0.0, "high": 0.0, "words": "yes"}, rule, pack
    )["fact"]
    if fact is None or fact["standing"] != "stated" or fact["text"] == "":
        return asked(requirement, rule, reason)
    found = verdict(requirement, ASK, reason)
    line = ", rider line " + str(requirement["line"]) if requirement["line"] > 0 else ""
    wanted = WANTED.get(rule["kind"], "How much do you need?")
    has = " The house says " if rule["kind"] in WORDED else " The house has "
    found["question"] = (
        requirement["act"]
        + line
        + ": "
        + requirement["title"]
        + ". "
        + wanted
        + has
        + fact["text"]
        + "."
    )
    found["fact"] = fact
    return found


def section_of(pack: Record, key: str) -> Any:
    """A section of the pack, or None."""
    for section in pack["sections"]:
        if section["key"] == key:
            return section
    return None


def asked(requirement: Record, rule: Record, reason: str) -> Record:
    """An ask with the rule's question."""
    return with_question(verdict(requirement, ASK, reason), requirement, rule["question"])


def chosen(section: Record, rule: Record, requirement: Record) -> list[Record]:
    """The items that can answer, in the pack's order."""
    found = []
    for item in section["items"]:
        if (
            item["kind"] == rule["item"]
            and matches(item, rule)
            and in_configuration(item, requirement["configuration"])
        ):
            found.append(item)
    return found


def matches(item: Record, rule: Record) -> bool:
    """Whether an item is of the sort that a rule looks at."""
    for name, wanted in rule["where"]:
        but = name[:4] == "not "
        of = name[4:] if but else name
        text = (
            item["name"]
            if of == "name"
            else item["values"][of]["text"]
            if of in item["values"]
            else ""
        )
        if (text != wanted) != but:
            return False
    return True


def in_configuration(item: Record, configuration: str) -> bool:
    """
    Whether an item belongs to the configuration asked for.

    Items that name none belong to all.
    """
    if configuration == "":
        return True
    if item["kind"] == "configuration":
        return bool(item["name"] == configuration)
    if "configurations" in item["values"]:
        return configuration in item["values"]["configurations"]["parts"]
    return True


def which_configuration(requirement: Record, rule: Record, pack: Record) -> Record:
    """
    The house has what is asked, but not for the configuration that the rider names: it names no
    such one, or has not said for it.
    """
    house = section_of(pack, "house")
    names = (
        [item["name"] for item in house["items"] if item["kind"] == "configuration"]
        if house is not None
        else []
    )
    written = requirement["configuration"]
    if len(names) == 0 or written in names:
        return asked(
            requirement, rule, "The house has not said for the configuration " + written + "."
        )
    found = verdict(
        requirement,
        ASK,
        "The house names no configuration " + written + "; it names: " + "; ".join(names) + ".",
    )
    found["question"] = (
        requirement["act"]
        + ": which configuration is meant by "
        + written
        + "? The house names: "
        + "; ".join(names)
        + "."
    )
    return found


def empty(requirement: Record, rule: Record, section: Record) -> Record:
    """No item answers: the house says there is none, or nobody has said."""
    for item in section["items"]:
        if item["kind"] in WHOLES and rule["whole"] != "" and rule["whole"] in item["values"]:
            value = item["values"][rule["whole"]]
            if value["standing"] == "none":
                if rule["none_means"] == "no limit":
                    return asked(
                        requirement,
                        rule,
                        "The house has none of these, so nothing says what limits it.",
                    )
                found = verdict(requirement, SHORT, "The house has none.")
                found["fact"] = fact_of(value, item)
                return with_remedy(found, rule)
    return asked(requirement, rule, "The house has not said.")


def best(requirement: Record, rule: Record, items: list[Record]) -> Record:
    """
    The verdict of the item that answers best; where only some configurations do, it says which.
    """
    found = [settled(answered(requirement, rule, item)) for item in items]
    chosen_one = found[0]
    for other in found:
        if better(other, chosen_one):
            chosen_one = other
    good = [
        item["name"]
        for item, each in zip(items, found, strict=True)
        if each["verdict"] in (FITS, "fits, with a note")
    ]
    if 0 < len(good) < len(items) and rule["item"] in SOME_DO:
        chosen_one["notes"].append(SOME_DO[rule["item"]] + ": " + ", ".join(good) + ".")
    return settled(without_slack(chosen_one))


def with_faults(found: Record, rule: Record, section: Record) -> Record:
    """
    A fit with the faults of what stands before it: boxes that are out or limited, and ways that do
    not work.
    """
    if rule["beside"] == "" or found["verdict"] not in (FITS, "fits, with a note"):
        return found
    for item in section["items"]:
        if item["kind"] == rule["beside"]:
            found["notes"] = [*found["notes"], *faults_of(item)]
    return settled(found)


def faults_of(item: Record) -> list[str]:
    """What does not work of an item."""
    if item["condition"] == "out of service":
        return [item["name"] + " is out of service."]
    dead = item["values"].get("dead")
    if dead is not None and dead["text"] != "":
        return [
            item["name"]
            + ", ways that do not work: "
            + dead["text"]
            + (". " + item["note"] if item["note"] != "" else ".")
        ]
    return item_notes(item)


def worst(requirement: Record, rule: Record, items: list[Record]) -> Record:
    """The verdict of the item that answers worst, where every one of them must do."""
    found = [settled(answered(requirement, rule, item)) for item in items]
    chosen_one = found[0]
    for other in found:
        if better(chosen_one, other):
            chosen_one = other
    return without_slack(chosen_one)


def better(one: Record, other: Record) -> bool:
    """Whether one verdict is better than another: by its word, then by its margin."""
    order = [FITS, "fits, with a note", ASK, SHORT]
    first, second = order.index(one["verdict"]), order.index(other["verdict"])
    return first < second or (first == second and one["slack"] > other["slack"])


def without_slack(found: Record) -> Record:
    """The verdict without the bare number that only served to choose it."""
    del found["slack"]
    return found


def answered(requirement: Record, rule: Record, item: Record) -> Record:
    """One item's answer."""
    value = value_for(item, rule)
    found = standing(requirement, rule, value)
    if value is not None:
        found["fact"] = fact_of(value, item)
    if item["condition"] == "out of service":
        found = refused(requirement, rule, item, "It is out of service.")
    elif item["terms"] == "not for visitors":
        found = refused(requirement, rule, item, "It is not for visitors.")
    elif found["verdict"] == FITS:
        found["notes"] = [*found["notes"], *item_notes(item), *age_notes(value)]
    return found


def refused(requirement: Record, rule: Record, item: Record, reason: str) -> Record:
    """An item that the house has and a visitor cannot use."""
    found = with_remedy(verdict(requirement, SHORT, item["name"] + ": " + reason), rule)
    found["slack"] = 0.0
    return found


def item_notes(item: Record) -> list[str]:
    """What to know about the item itself."""
    notes = []
    if item["condition"] == "limited":
        notes.append(
            item["name"] + " is limited" + (": " + item["note"] if item["note"] != "" else ".")
        )
    if item["terms"] in ("extra charge", "by arrangement"):
        notes.append(item["name"] + ": " + item["terms"] + ".")
    return notes


def age_notes(value: Any) -> list[str]:
    """Old or missing checks."""
    if value is None or value["standing"] != "stated":
        return []
    if value["checked"] == "":
        return ["The house does not say when this was checked."]
    return ["Old check: " + value["checked"] + "."] if value["stale"] else []


def standing(requirement: Record, rule: Record, value: Any) -> Record:
    """What a fact's standing makes of the requirement."""
    if value is None or value["standing"] == "not stated":
        found = asked(requirement, rule, "The house has not said.")
    elif value["standing"] == "unknown":
        found = asked(requirement, rule, "The house does not know yet.")
    elif value["standing"] == "none":
        return none_said(requirement, rule)
    else:
        return stated(requirement, rule, value)
    found["slack"] = 0.0
    return found


def none_said(requirement: Record, rule: Record) -> Record:
    """The house says none: nothing there, nothing that limits, or zero."""
    if rule["none_means"] == "zero" and requirement["way"] != "is":
        return numbered(requirement, rule, 0.0)
    if rule["none_means"] == "no limit":
        found = verdict(requirement, FITS, "Nothing limits it.")
    else:
        found = with_remedy(verdict(requirement, SHORT, "The house has none."), rule)
    found["slack"] = 0.0
    return found


def stated(requirement: Record, rule: Record, value: Record) -> Record:
    """A stated value against the requirement."""
    if rule["kind"] == "permission":
        return permitted(requirement, rule, value)
    if rule["kind"] == "yes":
        return said(requirement, rule, value["text"] == requirement["words"])
    if value["bound"] and requirement["way"] != "at most":
        return bounded(requirement, rule, value)
    if value["number"] is None:
        if value["text"] == "no limit":
            found = verdict(requirement, FITS, "Nothing limits it.")
        else:
            found = asked(requirement, rule, "The house gives no number.")
        found["slack"] = 0.0
        return found
    return numbered(requirement, rule, value["number"])


def bounded(requirement: Record, rule: Record, value: Record) -> Record:
    """
    A figure that can only be less, as not all of its inputs are known: it can show a shortage,
    never a fit.
    """
    found = numbered(requirement, rule, value["number"])
    if found["verdict"] == SHORT:
        return found
    found = asked(requirement, rule, "It is " + value["text"] + ", for not all is known.")
    found["slack"] = 0.0
    return found


def permitted(requirement: Record, rule: Record, value: Record) -> Record:
    """A permission against a wish to use something."""
    found = said(requirement, rule, value["text"] != "no" or requirement["words"] == "no")
    if (
        found["verdict"] == FITS
        and value["text"] == "by arrangement"
        and requirement["words"] == "yes"
    ):
        found["notes"].append("By arrangement: ask in time.")
    return found


def said(requirement: Record, rule: Record, agrees: bool) -> Record:
    """A yes or no that agrees with the wish, or does not."""
    found = (
        verdict(requirement, FITS, "As asked.")
        if agrees
        else with_remedy(verdict(requirement, SHORT, "The house says otherwise."), rule)
    )
    found["slack"] = 0.0
    return found


def numbered(requirement: Record, rule: Record, number: float) -> Record:
    """A number against the requirement, with its margin."""
    slack = slack_of(requirement, number)
    allowed = tolerance(
        rule, requirement["high"] if requirement["way"] == "at most" else requirement["low"]
    )
    words = both(rule["kind"], abs(slack))
    if slack >= -allowed:
        found = verdict(
            requirement,
            FITS,
            (
                words[0] + " to spare."
                if slack > 0
                else "Exactly enough."
                if slack == 0
                else "Within the tolerance."
            ),
        )
        if slack < 0:
            found["notes"].append("Short by " + words[0] + ", within the tolerance for rounding.")
    else:
        found = with_remedy(
            verdict(requirement, SHORT, direction(requirement, number) + " by " + words[0] + "."),
            rule,
        )
    found["margin"] = signed(words, slack)
    found["slack"] = slack
    return found


def slack_of(requirement: Record, number: float) -> float:
    """How much is left; below zero where it is short."""
    if requirement["way"] == "at least":
        return float(number - requirement["low"])
    if requirement["way"] == "at most":
        return float(requirement["high"] - number)
    below, above = float(number - requirement["low"]), float(requirement["high"] - number)
    return below if below < above else above


def direction(requirement: Record, number: float) -> str:
    """Whether the house has too little or too much."""
    return "Over" if requirement["way"] != "at least" and number > requirement["high"] else "Short"


def signed(words: list[str], slack: float) -> list[str]:
    """A margin with its sign, in both systems."""
    return [with_sign(word, slack) if word != "" else "" for word in words]


def with_sign(word: str, slack: float) -> str:
    """One margin with its sign. What is too small to show says to which side it lies."""
    if word[: len(LESS)] == LESS:
        return word + (" short" if slack < 0 else " to spare")
    return ("−" if slack < 0 else "+" if slack > 0 else "") + word


def value_for(item: Record, rule: Record) -> Any:
    """The value of an item that answers a rule, or None."""
    value = item["values"].get(rule["value"])
    unsaid = value is None or value["standing"] == "not stated"
    return item["values"].get(rule["otherwise"]) if unsaid and rule["otherwise"] != "" else value


def summed(requirement: Record, rule: Record, items: list[Record]) -> Record:
    """
    What all items make together.

    What is not known can only add, so it turns a shortage into a question.
    """
    total, unknown, last = 0.0, 0, None
    used = 0
    notes: list[str] = []
    left_out: list[str] = []
    for item in items:
        value = value_for(item, rule)
        if rule["value"] == "":
            value = itself(item) if is_rated(item) else None
        if item["condition"] == "out of service" or item["terms"] == "not for visitors":
            left_out.append(
                item["name"]
                + " is left out: "
                + (item["condition"] if item["condition"] == "out of service" else item["terms"])
                + "."
            )
        elif value is None or (value["standing"] != "none" and value["number"] is None):
            unknown += 1
        elif value["number"] is not None:
            total += value["number"]
            notes = [*notes, *item_notes(item), *age_notes(value)]
            last = fact_of(value, item)
            used += 1
    found = numbered(requirement, rule, total)
    # What counts by being there adds at most one each; what else is unknown may add any amount.
    open_ended = unknown > 0 and (
        rule["value"] != "" or numbered(requirement, rule, total + unknown)["verdict"] != SHORT
    )
    if found["verdict"] == SHORT and open_ended:
        found = asked(
            requirement,
            rule,
            "The house has not said all of it: " + both(rule["kind"], total)[0] + " are known.",
        )
        found["slack"] = 0.0
    if last is not None and (used > 1 or rule["value"] == ""):
        words = both(rule["kind"], total)
        last = {
            **last,
            "item": digits(used, 0) + " together",
            "label": rule["title"],
            "text": words[0],
            "also": words[1],
        }
    found["fact"] = last
    if found["verdict"] == FITS or len(left_out) > 0:
        found["notes"] = [*found["notes"], *left_out, *once(notes)]
    return settled(without_slack(found))


def is_rated(item: Record) -> bool:
    """Whether a point of rigging has a known limit; what is no point has none to know."""
    return item["kind"] != "point" or (
        "limit" in item["values"] and item["values"]["limit"]["number"] is not None
    )


def itself(item: Record) -> Record:
    """An item that counts as one by being there."""
    blank = {
        "key": item["key"],
        "label": item["name"],
        "standing": "stated",
        "text": item["name"],
        "also": "",
        "number": 1.0,
    }
    return {
        **blank,
        "parts": [],
        "bound": False,
        "page": item["page"],
        "checked": item["checked"],
        "stale": item["stale"],
    }


def once(notes: list[str]) -> list[str]:
    """Each note once, in order."""
    kept: list[str] = []
    for note in notes:
        if note not in kept:
            kept.append(note)
    return kept
