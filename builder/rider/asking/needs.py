"""``needs``: lines that a rule of the house answers."""

from typing import TypedDict

from builder.fit.records import NeedAsked, Rule
from builder.reading.values.faults import Fault, fault
from builder.reading.values.nearest import nearest
from builder.reading.values.quantities import read_quantity
from builder.reading.values.sentences import fill
from builder.reading.values.words import read_count, read_yes_no
from builder.rider.asking.asked import asked_base, carried_by, strictness_of, with_note
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.ranges import CHECK, CHECK_COUNT, below_zero_fault, range_fault
from builder.rider.asking.values import ReadValue, has, items_of, place_of, words_of, yes_of

WAYS = ("at least", "at most", "between", "is")
WORDED = ("permission", "yes")
"""The kinds of rule that are answered by yes or no."""
UNKNOWN = ("unknown", "?")
ANSWERS = ("yes", "no", "true", "false")
NEAR_RULE = 0.6
MEANT = "did you mean '{name}'?"
ELSEWHERE = "the guide to riders lists what can be asked; put anything else under questions"
SEVERAL_WAYS = "says {ways}"
WRITE_ONE = "write one of: {ways}"
AMOUNT = "{way} {words}"
TELL_US = "tell us"


class Amount(TypedDict):
    """The amount of a need: a number in SI, or yes or no in words; what is wrong with it."""

    number: float
    words: str
    fault: Fault | None


def need_asked(need: ReadValue, asking: Asking) -> NeedAsked | None:
    """A line of ``needs`` that asks one thing; None where something is wrong with it."""
    if not has(need, "what"):
        advice = "write what is needed, or any of or all of with a list"
        note_fault(asking, need, "what", "", fault("is missing here", "missing-key", advice))
        return None
    asked = ruled(need, need, asking)
    if asked is not None:
        asked["need"] = with_note(asked["need"], need)
    return asked


def ruled(line: ReadValue, need: ReadValue, asking: Asking) -> NeedAsked | None:
    """
    A need that a rule answers; None where there is no rule, or the line does not say how much.
    Strictness and who brings it stand in the whole need.
    """
    rule = rule_named(line, asking)
    if rule is None:
        return None
    what = words_of(line, "what")
    ways = [way for way in WAYS if has(line, way)]
    if yes_of(line, "tell"):
        ways.append("tell")
    if len(ways) > 1:
        reason = fill(SEVERAL_WAYS, {"ways": " and ".join(ways)})
        unclear(asking, place_of(line, "what"), "what", what, reason, one_way(rule))
        return None
    if ways == ["tell"]:
        return told(line, need, rule, asking)
    if len(ways) == 0 or ways[0] not in rule["ways"]:
        advice = fill(WRITE_ONE, {"ways": ", ".join(rule["ways"])})
        reason = "does not say how much"
        unclear(asking, place_of(line, "what"), "what", what, reason, advice)
        return None
    return with_amount(line, need, rule, ways[0], asking)


def rule_named(line: ReadValue, asking: Asking) -> Rule | None:
    """The rule that a line names; None where there is none, which is noted."""
    what = words_of(line, "what")
    key = what.lower()
    if key in asking["rules"]:
        return asking["rules"][key]
    for name, rule in asking["rules"].items():
        if name.lower() == key:
            return rule
    near = nearest(key, list(asking["rules"]), NEAR_RULE)
    advice = fill(MEANT, {"name": near}) if near != "" else ELSEWHERE
    wrong = fault("is nothing that can be checked", "need-unknown", advice)
    note_fault(asking, place_of(line, "what"), "what", what, wrong)
    return None


def one_way(rule: Rule) -> str:
    """How to go on where a line says how much in several ways."""
    if "between" in rule["ways"]:
        return "write between for the least and the most"
    return fill(WRITE_ONE, {"ways": ", ".join(rule["ways"])})


def with_amount(
    line: ReadValue, need: ReadValue, rule: Rule, way: str, asking: Asking
) -> NeedAsked | None:
    """The need with its amount in SI; None where the amount cannot be read."""
    texts = [words_of(line, way)]
    if way == "between":
        texts = [item["text"] for item in items_of(line, way)]
    amounts = [amount_of(text, rule, asking) for text in texts]
    readable = True
    for place, amount in enumerate(amounts):
        if amount["fault"] is not None:
            note_fault(asking, place_of(line, way), way, texts[place], amount["fault"])
            readable = False
    if not readable:
        return None
    unknown = any(is_unknown(text) for text in texts)
    low = amounts[0]
    high = amounts[-1]
    if low["number"] > high["number"] and not unknown:
        advice = "write the least first"
        reason = "is more than the second"
        unclear(asking, place_of(line, way), way, texts[0], reason, advice)
        return None
    asked = told(line, need, rule, asking)
    asked["need"] = need_words(way, texts)
    asked["way"] = "unknown" if unknown else way
    asked["low"] = low["number"]
    asked["high"] = high["number"]
    asked["words"] = low["words"]
    return asked


def told(line: ReadValue, need: ReadValue, rule: Rule, asking: Asking) -> NeedAsked:
    """A need of which the show only wants to know what the house has."""
    base = asked_base(
        asking, line["line"], rule["department"], rule["title"], TELL_US, strictness_of(need)
    )
    return {
        **base,
        "carried": carried_by(need),
        "what": rule["key"],
        "own": yes_of(need, "not shared"),
        "way": "tell",
        "low": 0.0,
        "high": 0.0,
        "words": "yes",
        "sort": "rule",
    }


def need_words(way: str, texts: list[str]) -> str:
    """What a need says."""
    if way == "between":
        return " to ".join(texts)
    if way == "is" and texts[0].lower() in ANSWERS:
        return "yes" if texts[0].lower() in ("yes", "true") else "no"
    return fill(AMOUNT, {"way": way, "words": texts[0]})


def is_unknown(text: str) -> bool:
    """Whether an amount says that nobody knows it yet; ``?`` was the word before."""
    return text.lower() in UNKNOWN


def amount_of(text: str, rule: Rule, asking: Asking) -> Amount:
    """An amount of the kind that a rule asks for."""
    if is_unknown(text):
        return {"number": 0.0, "words": "", "fault": None}
    if rule["kind"] in WORDED:
        answer = read_yes_no(text)
        return {"number": 0.0, "words": "yes" if answer["yes"] else "no", "fault": answer["fault"]}
    if rule["kind"] == "count":
        count = read_count(text)
        return within_range(float(count["number"]), count["fault"], rule["kind"], asking)
    quantity = read_quantity(text, rule["kind"], asking["units"])
    wrong = quantity["fault"]
    if wrong is None:
        wrong = below_zero_fault(quantity["si"], rule["kind"])
    return within_range(quantity["si"], wrong, rule["kind"], asking)


def within_range(number: float, wrong: Fault | None, kind: str, asking: Asking) -> Amount:
    """An amount that was read, held to what its kind can be."""
    outside = wrong
    if outside is None and kind in asking["language"]["amounts"]:
        advice = CHECK_COUNT if kind == "count" else CHECK
        outside = range_fault(number, asking["language"]["amounts"][kind], advice)
    return {"number": number, "words": "", "fault": outside}


def unclear(
    asking: Asking, place: ReadValue, path: str, value: str, reason: str, advice: str
) -> None:
    """Note a line that can be read and does not say what is meant."""
    note_fault(asking, place, path, value, fault(reason, "need-unclear", advice))
