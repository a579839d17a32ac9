"""Lines of ``needs`` that are made of others: ``any of``, ``all of``, ``if`` and ``unless``."""

from builder.fit.records import (
    AllAsked,
    AnyAsked,
    ClassAsked,
    ClassesAsked,
    Line,
    NeedAsked,
    Requirement,
    Rule,
    Then,
    WayAsked,
)
from builder.reading.values.faults import fault
from builder.reading.values.sentences import fill, sentence_start, within_sentence
from builder.rider.asking.asked import asked_base, carried_by, strictness_of, with_note
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.needs import WAYS, amount_of, is_unknown, rule_named, ruled, unclear
from builder.rider.asking.values import (
    ReadValue,
    group_of,
    has,
    items_of,
    place_of,
    words_of,
    yes_of,
)

SEVERAL = ["what", "any of", "all of"]
"""What a line asks: one of these."""
CONDITIONS = ["if", "unless"]
NOTHING = "is missing here"
ADD_ONE = "write what is needed, or any of or all of with a list"
BESIDE = "stands beside {other}"
ONE_OF_THEM = "write one of: {ways}"
NO_CLASSES = "cannot be counted by class"
WITHOUT_CLASSES = "write at least, or by class with a list for what the guide to riders says can be"
NOT_TWO = "is for two amounts of one kind"
WRITE_TWO = "write two needs under all of, both at least or both at most, or leave it out"
OF_CLASS = "{count} of {each}"
WITH_CONDITION = "{need}; {word} {title}: {condition}"


def composed_asked(need: ReadValue, asking: Asking) -> Requirement | None:
    """A line of ``needs`` that is made of others; None where something is wrong with it."""
    then = without_condition(need, asking)
    return None if then is None else conditioned(need, then, asking)


def conditioned(need: ReadValue, then: Then, asking: Asking) -> Requirement | None:
    """
    What a line asks under the condition that it names, if it names one; None where something is
    wrong with that.
    """
    if has_two(need, CONDITIONS, asking):
        return None
    conditions = [word for word in CONDITIONS if word in need["keys"]]
    if len(conditions) == 0:
        return then
    line = group_of(need, conditions[0])
    condition = ruled(line, need, asking) if line is not None else None
    if condition is None:
        return None
    return {
        **asked_base(
            asking,
            need["line"],
            then["department"],
            then["title"],
            condition_words(then, conditions[0], condition),
            then["strictness"],
        ),
        "carried": then["carried"],
        "sort": "if",
        "condition": {**condition, "carried": "house"},
        "unless": conditions[0] == "unless",
        "then": then,
    }


def condition_words(then: Line, word: str, condition: NeedAsked) -> str:
    """What is asked, with its condition."""
    parts = {
        "need": then["need"],
        "word": word,
        "title": within_sentence(condition["title"]),
        "condition": condition["need"],
    }
    return fill(WITH_CONDITION, parts)


def has_two(group: ReadValue, keys: list[str], asking: Asking) -> bool:
    """Whether a line says two of some things of which one is enough; it is noted."""
    written = [key for key in keys if key in group["keys"] and not is_empty(group, key)]
    if len(written) < 2:
        return False
    reason = fill(BESIDE, {"other": written[0]})
    advice = fill(ONE_OF_THEM, {"ways": ", ".join(keys)})
    unclear(asking, place_of(group, written[1]), written[1], "", reason, advice)
    return True


def is_empty(group: ReadValue, key: str) -> bool:
    """Whether a key holds a list without entries."""
    return key in ("any of", "all of") and len(items_of(group, key)) == 0


def without_condition(
    need: ReadValue, asking: Asking
) -> NeedAsked | AnyAsked | AllAsked | ClassesAsked | None:
    """What a line asks, whatever its condition."""
    if has_two(need, SEVERAL, asking):
        return None
    if not is_empty(need, "any of") and "any of" in need["keys"]:
        return any_asked(need, asking)
    if not is_empty(need, "all of") and "all of" in need["keys"]:
        asked = all_asked(need, need, asking)
        if asked is not None:
            asked["need"] = with_note(asked["need"], need)
        return asked
    if not has(need, "what"):
        note_fault(asking, need, "what", "", fault(NOTHING, "missing-key", ADD_ONE))
        return None
    if "by class" in need["keys"]:
        return classes_asked(need, asking)
    one = ruled(need, need, asking)
    if one is not None:
        one["need"] = with_note(one["need"], need)
    return one


def any_asked(need: ReadValue, asking: Asking) -> AnyAsked | None:
    """A need that one of several alternatives meets."""
    lines = items_of(need, "any of")
    found = [alternative(line, need, asking) for line in lines]
    parts = [part for part in found if part is not None]
    if len(parts) < len(found):
        return None
    title = " or ".join(within_sentence(part["title"]) for part in parts)
    words = " or ".join(part["need"] for part in parts)
    base = asked_base(
        asking,
        need["line"],
        parts[0]["department"],
        sentence_start(title),
        with_note(words, need),
        strictness_of(need),
    )
    return {**base, "carried": carried_by(need), "sort": "any", "any": parts}


def alternative(
    line: ReadValue, need: ReadValue, asking: Asking
) -> NeedAsked | AllAsked | WayAsked | None:
    """One of several alternatives: a need, or several together, on a condition or without."""
    then = plain_alternative(line, need, asking)
    if then is None or has_two(line, CONDITIONS, asking):
        return None
    then["need"] = with_note(then["need"], line)
    words = [word for word in CONDITIONS if word in line["keys"]]
    if len(words) == 0:
        return then
    group = group_of(line, words[0])
    condition = ruled(group, need, asking) if group is not None else None
    if condition is None:
        return None
    base = asked_base(
        asking,
        line["line"],
        then["department"],
        then["title"],
        condition_words(then, words[0], condition),
        then["strictness"],
    )
    return {
        **base,
        "carried": then["carried"],
        "sort": "way",
        "condition": {**condition, "carried": "house"},
        "unless": words[0] == "unless",
        "then": then,
    }


def plain_alternative(
    line: ReadValue, need: ReadValue, asking: Asking
) -> NeedAsked | AllAsked | None:
    """One of several alternatives, whatever its condition."""
    if has_two(line, ["what", "all of"], asking):
        return None
    if not is_empty(line, "all of") and "all of" in line["keys"]:
        return all_asked(line, need, asking)
    if not has(line, "what"):
        advice = "write what is needed, or all of with a list"
        note_fault(asking, line, "what", "", fault(NOTHING, "missing-key", advice))
        return None
    return ruled(line, need, asking)


def all_asked(line: ReadValue, need: ReadValue, asking: Asking) -> AllAsked | None:
    """Several needs that are asked together."""
    lines = items_of(line, "all of")
    found = [ruled(each, need, asking) for each in lines]
    parts = [part for part in found if part is not None]
    if len(parts) < len(found):
        return None
    title = " and ".join(within_sentence(part["title"]) for part in parts)
    base = asked_base(
        asking,
        line["line"],
        parts[0]["department"],
        sentence_start(title),
        " and ".join(part["need"] for part in parts),
        strictness_of(need),
    )
    turned = turned_round(line, parts, asking)
    return {**base, "carried": carried_by(need), "sort": "all", "all": parts, "turned": turned}


def turned_round(line: ReadValue, parts: list[NeedAsked], asking: Asking) -> list[NeedAsked]:
    """
    Two needs with their amounts changed over, where a line leaves open which is which; else none.
    """
    if not yes_of(line, "order open"):
        return []
    kinds = [asking["rules"][part["what"]]["kind"] for part in parts]
    if len(parts) != 2 or kinds[0] != kinds[1] or parts[0]["way"] != parts[1]["way"]:
        place = place_of(line, "order open")
        unclear(asking, place, "order open", "yes", NOT_TWO, WRITE_TWO)
        return []
    first, second = parts
    return [with_amount_of(first, second), with_amount_of(second, first)]


def with_amount_of(one: NeedAsked, other: NeedAsked) -> NeedAsked:
    """A need with the amount of another."""
    return {**one, "need": other["need"], "low": other["low"], "high": other["high"]}


def classes_asked(need: ReadValue, asking: Asking) -> ClassesAsked | None:
    """Amounts of one thing by class."""
    rule = rule_named(need, asking)
    if rule is None:
        return None
    lines = items_of(need, "by class")
    place = place_of(need, "by class")
    beside = [way for way in WAYS if has(need, way)]
    if rule["each"] == "" or len(beside) > 0 or len(lines) == 0:
        reason = NO_CLASSES if len(beside) == 0 else fill(BESIDE, {"other": beside[0]})
        unclear(asking, place, "by class", words_of(need, "what"), reason, WITHOUT_CLASSES)
        return None
    found = [class_asked(line, asking["rules"][rule["each"]], asking) for line in lines]
    classes = [one for one in found if one is not None]
    if len(classes) < len(found):
        return None
    base = asked_base(
        asking,
        need["line"],
        rule["department"],
        rule["title"],
        with_note(", ".join(one["words"] for one in classes), need),
        strictness_of(need),
    )
    return {
        **base,
        "carried": carried_by(need),
        "sort": "classes",
        "what": rule["key"],
        "classes": classes,
    }


def class_asked(line: ReadValue, measure: Rule, asking: Asking) -> ClassAsked | None:
    """So many of one class; None where the class cannot be read."""
    text = words_of(line, "each")
    amount = amount_of(text, measure, asking)
    wrong = amount["fault"]
    if wrong is None and is_unknown(text):
        wrong = fault("is no class", "need-unclear", "write what each must be")
    if wrong is not None:
        note_fault(asking, place_of(line, "each"), "each", text, wrong)
        return None
    count = line["keys"]["count"]["count"] if "count" in line["keys"] else 1
    words = fill(OF_CLASS, {"count": str(count), "each": text})
    return {"count": float(count), "each": amount["number"], "words": words}
