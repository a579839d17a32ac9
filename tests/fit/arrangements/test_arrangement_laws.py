"""Laws of arrangements, over houses and shows of every kind."""

from copy import deepcopy

import pytest

from builder.fit.arrangements.views import configurations_of, narrowed, whole_view
from builder.fit.interpreter import fit
from builder.fit.net import hangs_in_net, power_in_net
from builder.fit.plots.sentences import NO_DECK
from builder.fit.requirements import ON_POWER, ON_STEEL, judged_in_net, sections_for
from tests.fit.pairs import a_pair
from tests.fit.sample import Record, a_list, item, value
from tests.laws import share

CASES = range(3000)
BOUND_SORTS = ("plot", "any", "all", "way", "if", "classes")
"""Requirements that look at decks, or may."""


def playing_in(riders: list[Record], configuration: str) -> list[Record]:
    """The riders of a day, all of them in one configuration."""
    return [{**rider, "configuration": configuration} for rider in riders]


def verdicts_in(pack: Record, riders: list[Record], configuration: str) -> list[Record]:
    """The verdicts where all acts name one configuration."""
    found: list[Record] = fit(pack, playing_in(riders, configuration))["verdicts"]
    return found


def with_configurations(seed: int) -> tuple[Record, list[Record], list[str]]:
    """A house with some configurations, a day of shows, and the configurations' names."""
    pack, riders = a_pair(seed)
    house = [section for section in pack["sections"] if section["key"] == "house"]
    for section in house:
        section["items"] += [
            item("configuration", "Standing", capacity=value("9", 9.0)),
            item("configuration", "Seated", capacity=value("5", 5.0)),
        ]
    return pack, riders, configurations_of(pack)


def plain_house(pack: Record, configuration: str) -> Record:
    """The house as if it never had any other configuration: only what stands in this one."""
    alone = deepcopy(pack)
    for section in alone["sections"]:
        kept = []
        for each in section["items"]:
            listed = each["values"].pop("configurations", None)
            stands = listed is None or configuration in listed["parts"]
            if stands and (each["kind"] != "configuration" or each["name"] == configuration):
                kept.append(each)
        section["items"] = kept
    return alone


def plainly(verdicts: list[Record]) -> list[Record]:
    """
    Verdicts in which a house that has not said does not say whether it has for another
    configuration: the one thing in which others show.
    """
    return [
        {**each, "reason": "The house has not said."}
        if each["reason"].startswith("The house has not said for the configuration ")
        or each["reason"] == NO_DECK
        else each
        for each in verdicts
    ]


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(CASES, law="one arrangement has it all", usually=20))
def test_a_show_is_judged_as_in_a_house_that_has_that_one_arrangement_only(seed: int) -> None:
    pack, riders, names = with_configurations(seed)
    result = fit(pack, playing_in(riders, ""))
    chosen = {act["arrangement"]["configuration"] for act in result["acts"]}
    assert len(chosen) == 1
    (configuration,) = chosen
    assert configuration in (names or [""])
    alone = fit(plain_house(pack, configuration), playing_in(riders, ""))
    assert plainly(result["verdicts"]) == plainly(alone["verdicts"])
    assert result["verdict"] == alone["verdict"]
    if names:
        assert result["verdicts"] == verdicts_in(pack, riders, configuration)


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(CASES, law="no other arrangement is better", usually=15))
def test_no_other_arrangement_is_better_than_the_one_told(seed: int) -> None:
    pack, riders, names = with_configurations(seed)
    told = fit(pack, playing_in(riders, ""))

    def fare(verdicts: list[Record]) -> tuple[int, int]:
        found = [(each["verdict"], each["strictness"]) for each in verdicts]
        return found.count(("short", "must")), sum(word == "ask" for word, _ in found)

    others = [fare(verdicts_in(pack, riders, name)) for name in names]
    assert fare(told["verdicts"]) == min(others, default=fare(told["verdicts"]))


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(CASES, law="one more configuration", usually=20))
def test_one_more_configuration_changes_no_verdict_in_any_other(seed: int) -> None:
    pack, riders, names = with_configurations(seed)
    more = deepcopy(pack)
    for section in more["sections"]:
        if section["key"] == "house":
            section["items"].insert(0, item("configuration", "New", capacity=value("7", 7.0)))
        if section["key"] == "stage":
            width = value("40 m", 40.0)
            new = item("deck", "New", usable_width=width, configurations=a_list("New"))
            section["items"].insert(0, new)
    for name in names:
        before = plainly(verdicts_in(pack, riders, name))
        assert plainly(verdicts_in(more, riders, name)) == before


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(CASES, law="configurations renamed", usually=20))
def test_what_configurations_are_called_changes_no_verdict(seed: int) -> None:
    pack, riders, names = with_configurations(seed)
    # Each name holds the one before it: only whole names may be compared.
    new = {name: ", ".join(["hall"] * (index + 1)) for index, name in enumerate(names)}
    other = deepcopy(pack)
    for section in other["sections"]:
        for each in section["items"]:
            if each["kind"] == "configuration":
                each["name"] = new[each["name"]]
            if "configurations" in each["values"]:
                listed = each["values"]["configurations"]
                listed["parts"] = [new[name] for name in listed["parts"]]
    renamed = [{**rider, "configuration": new.get(rider["configuration"], "")} for rider in riders]
    known = [
        {**rider, "configuration": rider["configuration"] if rider["configuration"] in new else ""}
        for rider in riders
    ]
    assert told(fit(other, renamed)) == told(fit(pack, known))


def told(result: Record) -> list[Record]:
    """What every verdict comes to, but for names."""
    return [
        {
            "verdict": each["verdict"],
            "margin": each["margin"],
            "fact": each["fact"]["key"] if each["fact"] else "",
            "parts": [part["verdict"] for part in each["parts"]],
        }
        for each in result["verdicts"]
    ]


def bound_kinds(pack: Record) -> set[tuple[str, str]]:
    """The kinds of lines of which one stands in some configurations only."""
    return {("house", "configuration")} | {
        (section["key"], each["kind"])
        for section in pack["sections"]
        for each in section["items"]
        if "configurations" in each["values"]
    }


def closed_names(pack: Record) -> set[str]:
    """The configurations that no show may have: such a one answers every need by itself."""
    return {
        each["name"]
        for section in pack["sections"]
        for each in section["items"]
        if each["kind"] == "configuration" and is_closed(each)
    }


def is_closed(line: Record) -> bool:
    """Whether a line is out of service or not for visitors."""
    return line["condition"] == "out of service" or line["terms"] == "not for visitors"


def looks_at(requirement: Record, rules: list[Record]) -> set[tuple[str, str]]:
    """What kinds of lines a need of one rule looks at."""
    rule = next(rule for rule in rules if rule["key"] == requirement["what"])
    wholes = ("identity", "whole", "house")
    return {(rule["section"], kind) for kind in (rule["item"], rule["beside"], *wholes)}


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(CASES, law="needs of no configuration", usually=20))
def test_a_need_that_looks_at_no_line_of_a_configuration_is_answered_alike_in_all(
    seed: int,
) -> None:
    pack, riders, names = with_configurations(seed)
    bound = bound_kinds(pack)
    asked = [need for rider in riders for need in rider["requirements"]]
    open_ones = [name for name in names if name not in closed_names(pack)]
    answers = [verdicts_in(pack, riders, name)[: len(asked)] for name in open_ones]
    for index, need in enumerate(asked):
        free = need["sort"] not in BOUND_SORTS
        if need["sort"] == "rule":
            free = not looks_at(need, pack["rules"]) & bound
        if free:
            assert len({repr(each[index]) for each in answers}) <= 1


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(CASES, law="sections that a need is given", usually=20))
def test_a_need_looks_at_no_section_but_those_that_it_is_given(seed: int) -> None:
    pack, riders = a_pair(seed)
    view = whole_view(pack)
    asked = [need for rider in riders for need in rider["requirements"]]
    loads = [need for need in asked if need["sort"] == "power"]
    hangs = [need for need in asked if need["sort"] in ("hang", "trim")]
    assert power_in_net(loads, narrowed(view, ON_POWER)) == power_in_net(loads, view)
    assert hangs_in_net(hangs, narrowed(view, ON_STEEL)) == hangs_in_net(hangs, view)
    for need in asked:
        if need["sort"] not in ("power", "hang", "trim"):
            given = narrowed(view, sections_for(need, view))
            assert judged_in_net(need, given) == judged_in_net(need, view)
