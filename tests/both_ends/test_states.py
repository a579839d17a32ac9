"""Figures where nobody knows whether something works, of figures made by hand."""

from collections.abc import Mapping, Sequence

import pytest

from builder.both_ends.inputs import Descriptions
from builder.both_ends.states import in_doubt, in_either_state
from builder.departments.power.description import Power
from builder.pack import Figure, Item, Section
from builder.reading.absent import listed
from tests.both_ends.test_inputs import services
from tests.both_ends.test_joining import field, figure, lacking, number, sections
from tests.departments.powered import described


def doubted(count: int = 1, more: str = "") -> dict[str, Power]:
    """Services, the first ones in doubt."""
    text = services("10 A", "20 A")
    for name in ["S1", "S2"][:count]:
        text = text.replace(f"name: {name},", f"name: {name}, condition: unknown{more},")
    return {"power": described(text)}


def works(files: Descriptions) -> bool:
    """Whether the first service works."""
    file = files["power"]
    assert isinstance(file, Power)
    return listed(file.services)[0].condition == "in service"


def either(working: Sequence[Figure], out: Sequence[Figure], count: int = 1) -> Section:
    """A section with all in service and with all out."""
    base = sections(*working)

    def compute(files: Descriptions) -> Mapping[str, Section]:
        return sections(*(working if works(files) else out))

    return in_either_state(base, doubted(count), compute)["power"]


def test_what_nobody_knows_to_work_is_found_wherever_it_stands() -> None:
    assert [(file, path) for file, path, _ in in_doubt(doubted())] == [("power", ("services", 0))]
    assert len(in_doubt(doubted(2))) == 2
    assert in_doubt(doubted(0)) == []


def test_where_nothing_is_in_doubt_nothing_is_computed() -> None:
    base = sections(figure(number(3)))
    assert in_either_state(base, doubted(0), lambda _: {}) is base


def test_a_figure_that_is_the_same_both_ways_is_told() -> None:
    assert either([figure(number(3))], [figure(number(3))]).items[0].figures == (figure(number(3)),)


def test_a_figure_that_differs_lies_between() -> None:
    (found,) = either([figure(number(8))], [figure(number(3))]).items[0].figures
    assert found.value is not None
    assert (found.value.text, found.value.least, found.value.most) == ("3 A to 8 A", 3.0, 8.0)
    assert found.working.steps[-1] == ("with this in service and out of service, S1: 3 A to 8 A")


@pytest.mark.parametrize("out", [[], [lacking("length")]])
def test_a_figure_that_is_there_one_way_alone_waits(out: list[Figure]) -> None:
    (found,) = either([figure(number(8))], out).items[0].figures
    assert (found.value, found.missing) == (None, ("whether S1 is in service",))
    assert found.working.steps == ()


def test_a_figure_that_is_there_only_with_all_out_waits_too() -> None:
    (found,) = either([], [figure(number(8))]).items[0].figures
    assert found.missing == ("whether S1 is in service",)


def test_of_several_in_doubt_nothing_is_told_of_what_they_can_turn_to_either_side() -> None:
    ends = [figure(number(8), "i.imbalance")], [figure(number(3), "i.imbalance")]
    (one,) = either(*ends).items[0].figures
    assert one.value is not None
    (several,) = either(*ends, count=2).items[0].figures
    assert several.missing == ("whether S1, S2 is in service",)
    (steady,) = either([figure(number(8))], [figure(number(3))], count=2).items[0].figures
    assert steady.value is not None
    (same,) = either(ends[0], ends[0], count=2).items[0].figures
    assert same.value == number(8)


def test_a_line_for_the_house_only_is_not_named() -> None:
    files = doubted(more=", house_only: yes")
    found = in_either_state(
        sections(figure(number(8))),
        files,
        lambda there: sections(*([figure(number(8))] if works(there) else [])),
    )
    (told,) = found["power"].items[0].figures
    assert told.missing == ("whether something for the house only is in service",)


def test_what_is_there_only_where_a_thing_works_is_told_without_what_it_gives() -> None:
    base = sections()
    more = Item("j", "k", "J", figures=(figure(number(8), "j.f"),))

    def compute(files: Descriptions) -> Mapping[str, Section]:
        section = sections()["power"]
        items = (*section.items, more) if works(files) else section.items
        return {"power": Section("power", "power", items)}

    found = in_either_state(base, doubted(), compute)["power"]
    assert [item.key for item in found.items] == ["i", "j"]
    assert found.items[1].figures[0].missing == ("whether S1 is in service",)


def test_maps_are_those_of_all_in_service_and_say_so_where_that_matters() -> None:
    def compute(files: Descriptions) -> Mapping[str, Section]:
        return sections(fields=(field(90 if works(files) else 80),))

    found = in_either_state(sections(), doubted(), compute)["power"]
    assert found.fields == (field(90),)
    assert found.cautions == (
        "The maps are drawn as if this were in service, which nobody knows: S1.",
    )
    same = in_either_state(sections(), doubted(), lambda _: sections(fields=(field(90),)))["power"]
    assert (same.fields, same.cautions) == ((field(90),), ())
