"""Rules with the house's own names where they speak of a kind of place."""

from builder.fit.levels.wish import is_mix
from builder.fit.needs.choosing import BUT
from builder.fit.records import FitPack, Rule, Section
from builder.fit.sections import items_of, section_of
from builder.fit.values import text_of
from builder.rules import THE_MIX


def with_own_names(pack: FitPack) -> FitPack:
    """A pack whose rules leave out the place that the house itself calls its mix position."""
    return {**pack, "rules": [rule_with_own_names(rule, pack) for rule in pack["rules"]]}


def rule_with_own_names(rule: Rule, pack: FitPack) -> Rule:
    """A rule with every name that its items have for the mix position."""
    if all(condition[1] != THE_MIX for condition in rule["where"]):
        return rule
    section = section_of(pack, rule["section"])
    where: list[list[str]] = []
    for condition in rule["where"]:
        if condition[1] != THE_MIX:
            where.append(condition)
        else:
            names = names_of_mix(condition[0].removeprefix(BUT), section, rule["item"], pack)
            where = [*where, *[[condition[0], name] for name in names]]
    return {**rule, "where": where}


def names_of_mix(value: str, section: Section | None, kind: str, pack: FitPack) -> list[str]:
    """What items of a kind call the mix position, each once."""
    sound = section_of(pack, "sound")
    names: list[str] = []
    for item in items_of(section, kind):
        name = text_of(item, value)
        if name not in names and is_mix(name, sound):
            names.append(name)
    return names
