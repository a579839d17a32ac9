"""The table that riders are read by says what their description says."""

from builder.rider.description import Rider
from builder.rider.table import LANGUAGE
from builder.rider.units import KINDS, NAMES, UNITS


def test_every_key_of_the_description_is_in_the_table_and_no_other() -> None:
    schema = Rider.model_json_schema(by_alias=True)
    groups = {"Rider": schema, **schema["$defs"]}
    assert {name: [rule["key"] for rule in keys] for name, keys in LANGUAGE["groups"].items()} == {
        name: list(group["properties"]) for name, group in groups.items()
    }
    for name, keys in LANGUAGE["groups"].items():
        needed = {rule["key"] for rule in keys if rule["needed"]}
        assert needed == set(groups[name].get("required", []))


def test_each_sort_of_key_is_told_by_its_type() -> None:
    keys = {
        (name, rule["key"]): rule for name, rules in LANGUAGE["groups"].items() for rule in rules
    }
    assert keys["Rider", "act"]["sort"] == "words"
    assert (keys["Rider", "act"]["longest"], keys["Rider", "note"]["longest"]) == (80, 2000)
    assert (keys["Rider", "needs"]["many"], keys["Rider", "needs"]["of"]) == ("list", "Need")
    assert keys["Need", "between"]["many"] == "two"
    assert keys["Clock", "set"]["of"] == "lasting"
    assert keys["Support", "across"]["of"] == "across"
    assert keys["Load", "count"]["otherwise"] == "1"
    assert keys["Rider", "booking"]["otherwise"] == "confirmed"
    assert keys["Load", "phases"]["choices"] == ["three", "single"]
    assert keys["PlotRectangle", "keep clear"]["sort"] == "yes"
    assert keys["Rider", "plays"]["sort"] == "day"


def test_every_kind_of_quantity_has_a_name_and_a_bare_number_in_a_clock_is_minutes() -> None:
    assert set(NAMES.values()) == set(KINDS) == set(UNITS["kinds"])
    assert UNITS["kinds"]["lasting"]["offered"] == ["min"]
    assert UNITS["kinds"]["duration"]["offered"] == ["s"]
