"""
Several acts on one day: what adds up, and how much of the deck is free in front of what stays.
"""

from builder.fit.comparing import answered, asked, chosen, section_of, signed
from builder.fit.verdicts import FITS, SHORT, Record, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both

THE_DAY = "The day"
AISLE_M = 0.9
DEPTH = "stage depth"


def day_requirements(riders: list[Record], pack: Record) -> list[Record]:
    """One requirement more for each thing that several acts ask and that adds up over the day."""
    found = []
    for rule in pack["rules"]:
        if rule["day"] == "sum":
            asking = [
                each
                for rider in riders
                for each in rider["requirements"]
                if each["sort"] == "rule" and each["what"] == rule["key"] and counts_today(each)
            ]
            acts = sorted({each["act"] for each in asking})
            if len(acts) > 1:
                found.append(together(rule, asking))
    return found


def counts_today(requirement: Record) -> bool:
    """Whether a requirement adds to the day's sum."""
    return bool(requirement["way"] == "at least" and requirement["carried"] != "show")


def together(rule: Record, asking: list[Record]) -> Record:
    """The sum of what several acts ask."""
    total = 0.0
    for each in asking:
        total += each["low"]
    parts = " + ".join(both(rule["kind"], each["low"])[0] for each in asking)
    musts = [each for each in asking if each["strictness"] == "must"]
    return {
        **asking[0],
        "act": THE_DAY,
        "line": 0,
        "need": "at least " + both(rule["kind"], total)[0] + " together (" + parts + ")",
        "low": total,
        "strictness": "must" if len(musts) > 0 else "should",
        "configuration": "",
    }


def stays_on_deck(riders: list[Record], pack: Record) -> list[Record]:
    """
    For each act, whether its depth is free in front of what the others leave standing, an aisle of
    0.9 m between.
    """
    found: list[Record] = []
    if len(riders) < 2:
        return found
    rule = next((rule for rule in pack["rules"] if rule["key"] == DEPTH), None)
    for rider in riders:
        wish = next(
            (
                each
                for each in rider["requirements"]
                if each["sort"] == "rule" and each["what"] == DEPTH and each["way"] == "at least"
            ),
            None,
        )
        others = [
            other
            for other in riders
            if other["act"] != rider["act"] and (other["stays_m"] is None or other["stays_m"] > 0)
        ]
        if rule is not None and wish is not None and len(others) > 0:
            found.append(in_front(wish, others, rule, pack))
    return found


def in_front(wish: Record, others: list[Record], rule: Record, pack: Record) -> Record:
    """One act's depth in front of what the others leave."""
    requirement = {
        **wish,
        "act": THE_DAY,
        "title": "Deck depth for " + wish["act"] + " in front of what stays",
        "line": 0,
    }
    silent = [other["act"] for other in others if other["stays_m"] is None]
    if len(silent) > 0:
        found = asked(
            requirement,
            rule,
            "Nobody has said how deep what stays on deck is: " + ", ".join(silent) + ".",
        )
        found["question"] = (
            "How deep is what stays on deck while others play? (" + ", ".join(silent) + ")"
        )
        return found
    section = section_of(pack, rule["section"])
    items = chosen(section, rule, requirement) if section is not None else []
    depths = [
        item
        for item in items
        if rule["value"] in item["values"]
        and item["values"][rule["value"]]["number"] is not None
        and item["condition"] != "out of service"
    ]
    if len(depths) == 0:
        return asked(requirement, rule, "The house has not said.")
    deepest = depths[0]
    for item in depths:
        if item["values"][rule["value"]]["number"] > deepest["values"][rule["value"]]["number"]:
            deepest = item
    return with_depth(requirement, others, rule, deepest)


def with_depth(requirement: Record, others: list[Record], rule: Record, deck: Record) -> Record:
    """The depth that is left against the depth wanted."""
    value = deck["values"][rule["value"]]
    kept = 0.0
    for other in others:
        kept += other["stays_m"]
    slack = value["number"] - kept - AISLE_M - requirement["low"]
    words = both("length", abs(slack))
    sum_words = (
        both("length", value["number"])[0]
        + " less "
        + both("length", kept)[0]
        + " that stays and "
        + both("length", AISLE_M)[0]
        + " aisle: "
    )
    if slack >= 0:
        found = verdict(requirement, FITS, sum_words + words[0] + " to spare.")
        found["notes"] = answered(requirement, rule, deck)["notes"]
    else:
        found = with_remedy(
            verdict(requirement, SHORT, sum_words + "short by " + words[0] + "."), rule
        )
    found["fact"] = fact_of(value, deck)
    found["margin"] = signed(words, slack)
    return settled(found)
