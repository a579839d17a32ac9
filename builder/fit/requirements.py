"""A verdict for each requirement of the riders of a day, each in the room of its subject."""

from builder.fit.clock.hours import ends_before_curfew, load_in_after
from builder.fit.levels.wanted_level import level_asked
from builder.fit.needs.comparing import compared
from builder.fit.net import hangs_in_net, not_judged, power_in_net
from builder.fit.plots.stage_plot import stage_plot
from builder.fit.records import (
    AnyAsked,
    FitPack,
    HangAsked,
    PowerAsked,
    Requirement,
    RiderAsked,
    Rule,
    TrimAsked,
    Verdict,
)
from builder.fit.sections import section_of
from builder.fit.sentences import BEST_OF_SEVERAL, HAVE_IT, RIDER_ASKS, fill
from builder.fit.verdicts import ASK, RANK, verdict
from builder.fit.way_in.trucks import trucks_get_in
from builder.formulas.primitives import is_failing


def by_requirement(riders: list[RiderAsked], pack: FitPack) -> list[Verdict]:
    """
    A verdict for each requirement, in the riders' order.

    Loads and hangs of all acts are judged together, for they share the house's power and steel.
    """
    requirements = [need for rider in riders for need in rider["requirements"]]
    loads: list[PowerAsked] = []
    hangs: list[HangAsked | TrimAsked] = []
    for need in requirements:
        if need["sort"] == "power":
            loads.append(need)
        elif need["sort"] == "hang" or need["sort"] == "trim":
            hangs.append(need)
    on_power = power_in_net(loads, pack)
    on_steel = hangs_in_net(hangs, pack) if len(hangs) > 0 else []
    verdicts: list[Verdict] = []
    for need in requirements:
        if need["sort"] == "power":
            verdicts.append(on_power.pop(0))
        elif need["sort"] == "hang" or need["sort"] == "trim":
            verdicts.append(on_steel.pop(0))
        else:
            verdicts.append(judged_in_net(need, pack))
    return verdicts


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
    if requirement["sort"] == "rule":
        return compared(requirement, rule_of(requirement["what"], pack), pack)
    if requirement["sort"] == "any":
        return any_of(requirement, pack)
    if requirement["sort"] == "question":
        answer = verdict(requirement, ASK, RIDER_ASKS)
        answer["question"] = requirement["words"]
        return answer
    if requirement["sort"] == "ends":
        return ends_before_curfew(requirement, section_of(pack, "house"))
    if requirement["sort"] == "load in":
        return load_in_after(requirement, section_of(pack, "house"))
    if requirement["sort"] == "level":
        return level_asked(requirement, section_of(pack, "house"), section_of(pack, "sound"))
    if requirement["sort"] == "plot":
        return stage_plot(requirement, pack)
    if requirement["sort"] == "trucks":
        return trucks_get_in(requirement, section_of(pack, "access"), section_of(pack, "sound"))
    raise ValueError(f"requirement must be judged by itself, got {requirement['sort']}")


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
        "otherwise": "",
        "beside": "",
        "where": [],
        "combine": "",
        "whole": "",
        "none_means": "",
        "day": "",
        "legal": False,
        "remedy": "",
        "who": "",
    }


def any_of(requirement: AnyAsked, pack: FitPack) -> Verdict:
    """Alternatives: the best verdict of them is the verdict."""
    answers = [judged(alternative, pack) for alternative in requirement["any"]]
    best = answers[0]
    for answer in answers:
        if RANK[answer["verdict"]] < RANK[best["verdict"]]:
            best = answer
    best["reason"] = fill(
        BEST_OF_SEVERAL,
        {"title": best["title"], "need": best["need"], "reason": best["reason"]},
    )
    best["act"] = requirement["act"]
    best["line"] = requirement["line"]
    best["title"] = requirement["title"]
    best["need"] = requirement["need"]
    best["strictness"] = requirement["strictness"]
    best["department"] = requirement["department"]
    return best
