"""A tree read by the language of riders: every key and value, and all that is wrong with them."""

from builder.reading.syntax_words import HIDDEN_ADVICE
from builder.reading.values.days import read_day
from builder.reading.values.faults import Fault, advised, fault
from builder.reading.values.quantities import read_quantity
from builder.reading.values.sentences import fill
from builder.reading.values.shapes import (
    choice_fault,
    missing_fault,
    no_group_fault,
    no_list_fault,
    no_pair_fault,
    no_text_fault,
    unknown_key_fault,
)
from builder.reading.values.words import read_count, read_words, read_yes_no
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.language import KeyRule, keys_in_order, rule_of
from builder.rider.asking.ranges import CHECK, CHECK_COUNT, below_zero_fault, range_fault
from builder.rider.asking.values import ReadValue, blank_value
from builder.rider.text.characters import hidden_character, hidden_reason
from builder.rider.text.tree import Node, item_path, key_path, part_of, text_node

LIKE = "write it like {like}"


def read_group(node: Node, name: str, path: str, asking: Asking) -> ReadValue:
    """A group by its name in the language. It is whole where nothing in it is wrong."""
    keys = asking["language"]["groups"][name]
    group = blank_value(node, path, True)
    if node["kind"] != "group":
        note(asking, group, node["text"], no_group_fault(keys_in_order(keys)))
        return blank_value(node, path, False)
    before = len(asking["mistakes"])
    for entry in node["entries"]:
        own_path = key_path(path, entry["key"])
        asking["part"] = part_of(own_path)
        rule = rule_of(keys, entry["key"])
        if rule is None:
            place = blank_value(text_node("", entry["line"], entry["column"]), own_path, False)
            note(asking, place, "", unknown_key_fault(entry["key"], keys_in_order(keys)))
        else:
            group["keys"][entry["key"]] = read_key(entry["value"], rule, own_path, asking)
    for rule in keys:
        if rule["key"] not in group["keys"]:
            read_absent(node, rule, group, asking)
    group["whole"] = len(asking["mistakes"]) == before
    return group


def read_absent(node: Node, rule: KeyRule, group: ReadValue, asking: Asking) -> None:
    """A key that is not written: missing, or what is read in its place."""
    path = key_path(group["path"], rule["key"])
    if rule["needed"]:
        asking["part"] = part_of(path)
        place = blank_value(node, path, False)
        note(asking, place, "", missing_fault())
    elif rule["otherwise"] != "":
        instead = text_node(rule["otherwise"], node["line"], node["column"])
        group["keys"][rule["key"]] = read_one(instead, rule, path, asking)


def read_key(node: Node, rule: KeyRule, path: str, asking: Asking) -> ReadValue:
    """The value of a key: one, or a list of them."""
    if rule["many"] == "one":
        return read_one(node, rule, path, asking)
    value = blank_value(node, path, True)
    wrong: Fault | None = None
    if node["kind"] != "list":
        wrong = no_list_fault(node["text"], group_keys(rule, asking))
    elif rule["many"] == "two" and len(node["items"]) != 2:
        wrong = no_pair_fault(len(node["items"]))
    if wrong is not None:
        note(asking, value, node["text"], wrong)
        return blank_value(node, path, False)
    before = len(asking["mistakes"])
    for index, item in enumerate(node["items"]):
        own_path = item_path(path, index)
        asking["part"] = part_of(own_path)
        value["items"].append(read_one(item, rule, own_path, asking))
    value["whole"] = len(asking["mistakes"]) == before
    return value


def group_keys(rule: KeyRule, asking: Asking) -> list[str]:
    """The keys that an entry of a list has; none where its entries are no groups."""
    if rule["sort"] != "group":
        return []
    return keys_in_order(asking["language"]["groups"][rule["of"]])


def read_one(node: Node, rule: KeyRule, path: str, asking: Asking) -> ReadValue:
    """One value."""
    if rule["sort"] == "group":
        return read_group(node, rule["of"], path, asking)
    value = blank_value(node, path, True)
    if node["kind"] != "text":
        wrong = no_text_fault(rule["like"])
        if rule["sort"] == "choice":
            wrong = choice_fault("", rule["choices"])
        note(asking, value, "", wrong)
        return blank_value(node, path, False)
    found = hidden_fault(node["text"])
    if found is None:
        found = read_text(value, node["text"], rule, asking)
    if found is not None:
        note(asking, value, node["text"], advised(found, fill(LIKE, {"like": rule["like"]})))
        return blank_value(node, path, False)
    return value


def hidden_fault(text: str) -> Fault | None:
    """What is wrong with a text that hides what is written; a form may hold one."""
    hidden = hidden_character(text)
    if hidden == "":
        return None
    return fault(hidden_reason(hidden), "control-character", HIDDEN_ADVICE)


def read_text(value: ReadValue, text: str, rule: KeyRule, asking: Asking) -> Fault | None:
    """Read a text into a value; what is wrong with it, or None."""
    sort = rule["sort"]
    if sort == "count":
        count = read_count(text)
        value["count"] = count["number"]
        outside = range_fault(count["number"], rule["range"], CHECK_COUNT)
        return first_fault(count["fault"], outside)
    if sort == "yes":
        answer = read_yes_no(text)
        value["yes"] = answer["yes"]
        return answer["fault"]
    if sort == "day":
        day = read_day(text)
        value["text"] = day["text"]
        value["weekday"] = day["weekday"]
        return day["fault"]
    if sort == "choice":
        value["text"] = text
        return None if text in rule["choices"] else choice_fault(text, rule["choices"])
    if sort == "quantity":
        return read_amount_of(value, text, rule, asking)
    words = read_words(text, rule["longest"])
    value["text"] = words["text"]
    return words["fault"]


def read_amount_of(value: ReadValue, text: str, rule: KeyRule, asking: Asking) -> Fault | None:
    """Read a quantity into a value. Most kinds cannot be below zero in a rider."""
    quantity = read_quantity(text, rule["of"], asking["units"])
    value["text"] = quantity["text"]
    value["si"] = quantity["si"]
    value["symbol"] = quantity["symbol"]
    outside = first_fault(
        below_zero_fault(quantity["si"], rule["of"]),
        range_fault(quantity["si"], rule["range"], CHECK),
    )
    return first_fault(quantity["fault"], outside)


def first_fault(one: Fault | None, other: Fault | None) -> Fault | None:
    """The first of two faults that there is."""
    return one if one is not None else other


def note(asking: Asking, value: ReadValue, text: str, wrong: Fault) -> None:
    """Note what is wrong with a value at its own place."""
    note_fault(asking, value, value["path"], text, wrong)
