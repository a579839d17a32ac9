"""A verdict on each requirement of the riders of a day, in the room of its subject."""

from collections.abc import Callable

from builder.fit.arrangements.records import View
from builder.fit.arrangements.views import narrowed
from builder.fit.clock.hours import ends_before_curfew, load_in_after
from builder.fit.levels.wanted_level import level_asked
from builder.fit.needs.by_class import by_class
from builder.fit.needs.comparing import compared
from builder.fit.needs.composed import composed
from builder.fit.needs.within import needs_in
from builder.fit.net import hangs_in_net, not_judged, power_in_net
from builder.fit.plots.stage_plot import stage_plot
from builder.fit.records import (
    ClassesAsked,
    FitPack,
    HangAsked,
    NeedAsked,
    PowerAsked,
    Requirement,
    Rule,
    TrimAsked,
    Verdict,
)
from builder.fit.risers.judging import risers_built
from builder.fit.sections import section_of
from builder.fit.sentences import HAVE_IT, RIDER_ASKS, fill
from builder.fit.verdicts import ASK, verdict
from builder.fit.way_in.trucks import trucks_get_in
from builder.fit.work.calls import crew_called, task_seen_to
from builder.formulas.primitives import is_failing

Known = dict[str, list[Verdict]]
"""Verdicts that are known already, by what was asked and which lines of the house stood for it."""

ON_POWER = ["power", "stage"]
ON_STEEL = ["rigging"]


def power_once(loads: list[PowerAsked], name: str, view: View, known: Known) -> list[Verdict]:
    """The verdicts on loads that share the house's power; ``name`` tells which these are."""
    return once_on(f"power{name}", ON_POWER, view, known, lambda part: power_in_net(loads, part))


def steel_once(
    hangs: list[HangAsked | TrimAsked], name: str, view: View, known: Known
) -> list[Verdict]:
    """The verdicts on hangs that share the house's steel; ``name`` tells which these are."""
    if len(hangs) == 0:
        return []
    return once_on(f"steel{name}", ON_STEEL, view, known, lambda part: hangs_in_net(hangs, part))


def alone_once(need: Requirement, name: str, view: View, known: Known) -> list[Verdict]:
    """The verdict on a requirement by itself, in a list."""
    keys = sections_for(need, view)
    return once_on(name, keys, view, known, lambda part: [judged_in_net(need, part)])


def once_on(
    name: str,
    keys: list[str],
    view: View,
    known: Known,
    judge: Callable[[View], list[Verdict]],
) -> list[Verdict]:
    """What a judge makes of some sections, which are all that it is given; known where it was."""
    standing = [view["standing"].get(key, "") for key in keys]
    asked = " ".join([name, *standing])
    if asked not in known:
        known[asked] = judge(narrowed(view, keys))
    return known[asked]


def sections_for(need: Requirement, view: View) -> list[str]:
    """The sections that a requirement by itself is judged by."""
    if need["sort"] == "classes":
        return sections_of_rule(rule_of(need["what"], view))
    if need["sort"] == "if":
        condition = rule_of(need["condition"]["what"], view)
        return [*sections_of_rule(condition), *sections_for(need["then"], view)]
    keys: list[str] = []
    for one in needs_in(need):
        keys.extend(sections_of_rule(rule_of(one["what"], view)))
    return keys if len(keys) > 0 else SECTIONS.get(need["sort"], [])


def sections_of_rule(rule: Rule) -> list[str]:
    """The section that answers a rule, and the one that does where the first tells nothing."""
    return [rule["section"], *rule["elsewhere"][:1]]


SECTIONS: dict[str, list[str]] = {
    "plot": ["stage", "rigging"],
    "risers": ["stage"],
    "trucks": ["access"],
    "level": ["house", "sound"],
    "ends": ["house"],
    "call": ["house", "crew"],
    "load in": ["house"],
}
"""The sections that a sort of requirement is judged by; none where it is not among them."""


def judged_in_net(requirement: Requirement, pack: FitPack) -> Verdict:
    """The verdict on one requirement, or that the program fails on it."""
    answers: list[Verdict] = []
    if is_failing(lambda: add_judged(answers, requirement, pack)):
        return not_judged(requirement)
    return answers[0]


def add_judged(answers: list[Verdict], requirement: Requirement, pack: FitPack) -> None:
    """Add the verdict on one requirement."""
    answers.append(judged(requirement, pack))


def judged(requirement: Requirement, pack: FitPack) -> Verdict:
    """
    The verdict on one requirement by itself.

    Raises
    ------
    ValueError
        For a load or a hang, which are judged beside all others.
    """
    if requirement["sort"] == "rule" or requirement["sort"] == "classes":
        return by_its_rule(requirement, pack)
    if requirement["sort"] == "any" or requirement["sort"] == "all" or requirement["sort"] == "if":
        return composed(requirement, lambda need: judged(need, pack))
    if requirement["sort"] == "question":
        answer = verdict(requirement, ASK, RIDER_ASKS)
        answer["question"] = requirement["words"]
        return answer
    if requirement["sort"] == "call":
        return crew_called(requirement, pack)
    if requirement["sort"] == "task":
        return task_seen_to(requirement)
    if requirement["sort"] == "ends":
        return ends_before_curfew(requirement, section_of(pack, "house"))
    if requirement["sort"] == "load in":
        return load_in_after(requirement, section_of(pack, "house"))
    if requirement["sort"] == "level":
        return level_asked(requirement, section_of(pack, "house"), section_of(pack, "sound"))
    if requirement["sort"] == "plot":
        return stage_plot(requirement, pack)
    if requirement["sort"] == "risers":
        return risers_built(requirement, section_of(pack, "stage"))
    if requirement["sort"] == "trucks":
        return trucks_get_in(requirement, section_of(pack, "access"))
    raise ValueError(f"requirement must be judged by itself, got {requirement['sort']}")


def by_its_rule(need: NeedAsked | ClassesAsked, pack: FitPack) -> Verdict:
    """The verdict on a need that a rule answers, by one amount or by class."""
    rule = rule_of(need["what"], pack)
    if need["sort"] == "classes":
        return by_class(need, rule, rule_of(rule["each"], pack), pack)
    return compared(need, rule, pack)


def rule_of(key: str, pack: FitPack) -> Rule:
    """
    The rule that a requirement names.

    The rider's reader knows the same rules, so it is there; a pack of another edition may lack it.
    """
    for rule in pack["rules"]:
        if rule["key"] == key:
            return rule
    return {
        "key": key,
        "title": "",
        "department": "",
        "kind": "",
        "question": fill(HAVE_IT, {"what": key}),
        "ways": [],
        "section": "",
        "item": "",
        "value": "",
        "otherwise": [],
        "beside": "",
        "also": [],
        "elsewhere": [],
        "where": [],
        "combine": "",
        "whole": "",
        "none_means": "",
        "means_yes": [],
        "each": "",
        "day": "",
        "legal": False,
        "remedy": "",
        "who": "",
    }
