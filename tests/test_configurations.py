"""
What stands in some configurations counts in those only: each is answered as a house would be that
has nothing else.
"""

import json
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass, replace
from functools import cache

import pytest

from builder import arranged
from builder.both_ends.states import lines_within
from builder.by_configuration.standing import lists_of, there_in
from builder.document import Table
from builder.fit.arrangements.views import view_of
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack, RiderAsked
from builder.pack import Figure, Pack
from builder.pipeline import Venue, document_of, pack_of, venue_of
from builder.reading.nodes import spoken
from builder.reading.reader import read
from builder.reading.written import DepartmentFile, Movable
from tests.laws import share
from tests.sweep import DESCRIPTIONS, Path_, at, composed, folder, remembered, riders

USUAL, OTHER = "Standing, end stage", "Standing, thrust"


@dataclass(frozen=True, slots=True)
class Moved:
    """A line of the demo that is there in some configurations only."""

    file: str
    path: Path_
    there: tuple[str, ...]

    def __str__(self) -> str:
        return f"{self.file} {spoken(self.path)} in {'; '.join(self.there)}"

    def venue(self) -> Venue:
        """The demo with the line so written."""
        data = deepcopy(composed("demo")[self.file])
        at(data, self.path)["configurations"] = list(self.there)
        there = folder("demo")
        texts = {**there.texts, self.file: json.dumps(data, ensure_ascii=False)}
        return venue_of(texts, there.photos)


def every_moved() -> Iterator[Moved]:
    """Each line that figures count with, there in the usual configuration only or in another."""
    for file, data in composed("demo").items():
        text = json.dumps(data, ensure_ascii=False)
        for path, line in lines_within(read(text, file=file, kind=DESCRIPTIONS[file]), ()):
            if isinstance(line, Movable) and not line.house_only:
                yield from (Moved(file, path, (name,)) for name in (USUAL, OTHER))


MOVED = tuple(every_moved())


def pack_in_memory(venue: Venue) -> Pack:
    """The pack of a venue; what is as in the demo is not worked out again."""
    with remembered("demo"):
        return pack_of(venue)


def alone(venue: Venue, name: str) -> Pack:
    """The pack of a house that has only what is there in a configuration, and has it always."""
    left = there_in(venue.descriptions, name)
    always = {key: file.model_copy(update=always_there(file)) for key, file in left.items()}
    return pack_in_memory(replace(venue, descriptions=always))


def always_there(file: DepartmentFile) -> dict[str, object]:
    """The lists of a file whose lines say no configuration any more."""
    return {
        key: tuple(
            line.model_copy(update={"configurations": ()}) if isinstance(line, Movable) else line
            for line in lines
        )
        for key, lines in lists_of(file)
    }


def in_words(record: FitPack, rider: RiderAsked, name: str) -> list[tuple[str, ...]]:
    """The verdicts on a show in a configuration."""
    result = fit(record, [{**rider, "configuration": name}])
    return [
        (answer["title"], answer["need"], answer["verdict"], answer["reason"])
        for answer in result["verdicts"]
    ]


@pytest.mark.laws
@pytest.mark.parametrize("moved", share(MOVED, law="moved", usually=3), ids=str)
def test_each_configuration_is_answered_as_a_house_that_has_no_other(moved: Moved) -> None:
    venue = moved.venue()
    whole = fit_record(pack_in_memory(venue))
    for name in (USUAL, OTHER):
        only = fit_record(alone(venue, name))
        for rider in riders():
            assert in_words(whole, rider, name) == in_words(only, rider, name)


@pytest.mark.laws
@pytest.mark.parametrize("moved", share(MOVED, law="moved figures", usually=3), ids=str)
def test_figures_are_those_of_a_house_that_has_no_other(moved: Moved) -> None:
    venue = moved.venue()
    pack = pack_in_memory(venue)
    for name in (USUAL, OTHER):
        assert told(figures_in(pack, name)) == told(figures_in(alone(venue, name), name))


def figures_in(pack: Pack, name: str) -> dict[str, Figure]:
    """The figures in a configuration: of the items that are there, with what differs."""
    found: dict[str, Figure] = {}
    for section in arranged.pack_in(pack, name).sections:
        found |= {figure.key: figure for item in section.items for figure in item.figures}
    return found


def told(figures: dict[str, Figure]) -> dict[str, object]:
    """What figures tell."""
    return {key: (figure.value, figure.missing) for key, figure in figures.items()}


@cache
def demo() -> Pack:
    """The pack of the demo as it stands."""
    there = folder("demo")
    return pack_of(venue_of(there.texts, there.photos))


def test_the_thrust_of_the_demo_has_maps_and_figures_of_its_own() -> None:
    section = demo().section("sound")
    assert section is not None
    other = next(each for each in section.elsewhere if each.configurations == (OTHER,))
    names = {field.name for field in other.fields}
    assert "Floor around the thrust" in names
    assert "sound.field.Floor" in other.without_maps
    page = next(
        page
        for page in document_of(demo()).pages
        if page.key.endswith("coverage-in-standing-thrust")
    )
    assert "Floor around the thrust" in str(page.blocks)


def test_the_page_of_its_maps_follows_the_page_of_the_usual_ones() -> None:
    keys = [page.key for page in document_of(demo()).pages]
    usual = keys.index("sound-coverage")
    assert keys[usual + 1] == "sound-coverage-in-standing-thrust"


def test_what_differs_is_compared_in_three_columns() -> None:
    page = next(page for page in document_of(demo()).pages if page.key == "sound")
    [table] = [
        block
        for block in page.blocks
        if isinstance(block, Table) and block.summary == f"What differs in {OTHER}"
    ]
    assert table.columns == ("What", USUAL, OTHER)
    assert table.to_compare


def test_a_show_in_the_thrust_finds_what_stands_there() -> None:
    record = fit_record(demo())
    found = {
        name: [
            item["name"]
            for section in view_of(record, name)["sections"]
            for item in section["items"]
            if item["kind"] == "subs"
        ]
        for name in (USUAL, OTHER)
    }
    assert found == {
        USUAL: ["Floor subs"],
        OTHER: ["Thrust subs, left", "Thrust subs, right"],
    }


def test_a_list_of_names_tells_what_is_there_in_any_configuration() -> None:
    section = demo().section("sound")
    assert section is not None
    feeds = [item.text("feeds") for item in section.of_kind("drive")]
    assert "Front fills, Thrust fills" in feeds


def test_a_house_where_nothing_moves_is_worked_out_once() -> None:
    there = folder("quarry")
    pack = pack_of(venue_of(there.texts, there.photos))
    assert [section.elsewhere for section in pack.sections] == [()] * len(pack.sections)


def test_a_point_carries_what_hangs_there_in_each_configuration() -> None:
    there = folder("demo")
    data = deepcopy(composed("demo")["rigging.yml"])
    by_name = {hang["name"]: hang for hang in data["hangs"]}
    back = by_name["Back truss"]
    bare = {key: value for key, value in back.items() if key != "loads"}
    data["hangs"] += [{**bare, "name": "Thrust truss", "configurations": [OTHER]}]
    back["configurations"] = [USUAL, "Seated, end stage"]
    texts = {**there.texts, "rigging.yml": json.dumps(data, ensure_ascii=False)}
    pack = pack_in_memory(venue_of(texts, there.photos))
    usual, thrust = (figures_in(pack, name) for name in (USUAL, OTHER))
    carried = "rigging.point.r6-4.carried"
    loaded, unloaded = usual[carried].value, thrust[carried].value
    assert loaded is not None
    assert unloaded is not None
    assert loaded.number is not None
    assert unloaded.number is not None
    assert loaded.number > unloaded.number > 0.0


OTHER_MIX = {
    "configurations": [OTHER],
    "place": "Mix position",
    "width": "3.1 m",
    "depth": "2.2 m",
    "ears": "1.4 m",
    "cover": "A tent roof.",
}


def with_another_mix() -> Pack:
    """The demo, whose mix position is narrower in the thrust."""
    there = folder("demo")
    data = {**composed("demo")["sound.yml"], "other_mix_positions": [OTHER_MIX]}
    texts = {**there.texts, "sound.yml": json.dumps(data, ensure_ascii=False)}
    return pack_of(venue_of(texts, there.photos))


@pytest.mark.parametrize(("name", "width"), [(USUAL, 4.8), (OTHER, 3.1)])
def test_a_show_finds_the_mix_position_of_its_configuration(name: str, width: float) -> None:
    view = view_of(fit_record(with_another_mix()), name)
    [mix] = [
        item for section in view["sections"] for item in section["items"] if item["kind"] == "mix"
    ]
    assert mix["values"]["width"]["number"] == width


def test_its_page_tells_both_and_levels_are_those_of_each() -> None:
    pack = with_another_mix()
    page = next(page for page in document_of(pack).pages if page.key == "sound")
    blocks = str(page.blocks)
    assert "3.1 m" in blocks
    assert "A tent roof." in blocks
    there = arranged.pack_in(pack, OTHER).section("sound")
    assert there is not None
    [mix] = there.of_kind("mix")
    assert mix.text("ears") == "1.4 m"
