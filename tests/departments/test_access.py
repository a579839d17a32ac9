"""Access: the tightest opening, unloading, forklifts, slopes stated twice."""

from datetime import date

import pytest

from builder.department import Published, Surroundings
from builder.departments.access.description import Access
from builder.departments.access.page import answers, blocks
from builder.departments.access.publish import publish
from builder.document import Heading, Small, Tag
from builder.exchange import Offers
from builder.pack import Figure, Item, Standing
from builder.reading.reader import read
from builder.stating import Ageing

AROUND = Surroundings(Offers(), Ageing(date(2026, 6, 1), 365), "metric")
ROUTE = (
    "docks: [{{name: Dock, door_width: none, door_height: none}}]\n"
    "routes: [{{name: In, from_dock: Dock, to_place: Deck, passages: [{}]}}]\n"
)


def published(text: str) -> Published:
    """What a text publishes."""
    return publish(read(text, file="access.yml", kind=Access), AROUND)


def figure(text: str, kind: str, name: str) -> Figure:
    """One figure of the first item of a kind."""
    item = published(text).section.item(kind)
    assert isinstance(item, Item)
    found = item.figure(name)
    assert found is not None
    return found


def test_the_narrowest_passage_is_named_wherever_it_stands() -> None:
    """Four published doors in series: the tightest, 7 ft by 9 ft 10 in, was the third of them."""
    doors = (
        "{name: A, width: 9 ft}, {name: B, width: 8 ft}, {name: C, width: 7 ft}, {name: D, width:"
        " 12 ft}"
    )
    found = figure(ROUTE.format(doors), "route", "tightest_width")
    assert (found.value and found.value.number, found.note) == (pytest.approx(2.1336), "C")


def test_a_passage_that_states_no_width_is_named_beside_the_least() -> None:
    found = figure(
        ROUTE.format("{name: A, width: 2 m}, {name: B}, {name: C, width: ?}"),
        "route",
        "tightest_width",
    )
    assert found.note == "A; not stated for B, C"


def test_none_is_no_limit_and_unknown_is_missing() -> None:
    assert (
        figure(ROUTE.format("{name: A, height: none}"), "route", "tightest_height").value
        is not None
    )
    unknown = figure(ROUTE.format("{name: A, height: ?}"), "route", "tightest_height")
    assert (unknown.value, unknown.missing) == (None, ("height",))


def test_a_third_truck_waits_for_a_second_round_at_two_docks() -> None:
    text = "docks: [{name: Dock, trucks_at_once: 2, truck_takes: 40 min}]\n"
    assert [figure(text, "dock", f"unload_{trucks}").value.number for trucks in (1, 2, 4)] == [
        2400,
        2400,
        4800,
    ]  # type: ignore[union-attr]


def test_only_what_the_house_left_out_is_asked_for() -> None:
    assert figure("docks: [{name: Dock, trucks_at_once: 2}]\n", "dock", "unload_1").missing == (
        "time a truck takes",
    )
    forklift = "vehicles: [{name: F, kind: forklift, count: 1, capacity: 2 t, load_centre: ?}]\n"
    assert figure(forklift, "vehicle", "capacity_at_fork_end").missing == (
        "load centre",
        "fork length",
    )


def test_a_house_without_a_described_way_in_says_so_on_its_page_and_on_the_first() -> None:
    section = published("docks: [{name: Kerb, trucks_at_once: 1, height: none}]\n").section
    assert any(isinstance(block, Heading) and block.anchor == "way-in" for block in blocks(section))
    dock, opening = answers(section)
    assert "".join(str(part) for part in dock.words) == "1 at once, unloading from the ground"
    assert (opening.words, opening.anchor) == ([Tag("not stated", "plain")], "access#way-in")


def test_the_tightest_opening_on_the_first_page_is_in_both_systems() -> None:
    section = published(ROUTE.format("{name: A, width: 2.1 m, height: 2.6 m}")).section
    assert Small("6'-10 1/2\"") in answers(section)[1].words


def test_a_dock_that_states_no_time_has_no_unloading_time() -> None:
    assert figure("docks: [{name: Dock, trucks_at_once: 2}]\n", "dock", "unload_1").value is None


def test_a_forklift_lifts_less_further_out() -> None:
    """OSHA's field calculation: 5,000 lb at 24 in is 4,000 lb at 30 in."""
    text = (
        "vehicles: [{name: F, kind: forklift, count: 1, capacity: 5000 lb, load_centre: 24 in,"
        " fork_length: 30 in}]\n"
    )
    assert figure(text, "vehicle", "capacity_at_fork_end").value.number == pytest.approx(
        4000 * 0.45359237, abs=0.01
    )  # type: ignore[union-attr]


def test_a_pallet_truck_has_no_load_centre_figure() -> None:
    item = published("vehicles: [{name: P, kind: pallet truck, count: 1}]\n").section.item(
        "vehicle"
    )
    assert item is not None
    assert item.figures == ()


@pytest.mark.parametrize(("also", "codes"), [("18.4 deg", []), ("17.3 deg", ["slope-differs"])])
def test_a_slope_stated_twice_is_compared(also: str, codes: list[str]) -> None:
    """A published ramp said 1:3 (17.3 degrees); 1:3 is 18.4 degrees."""
    found = published(ROUTE.format(f"{{name: Ramp, slope: '1:3', slope_also: {also}}}")).findings
    assert [finding.code for finding in found] == codes


def test_no_docks_at_all_is_said_and_differs_from_saying_nothing() -> None:
    def standing(text: str) -> str:
        whole = published(text).section.item("whole")
        fact = whole.fact("docks") if whole else None
        return fact.standing.value if fact else ""

    assert [standing(text) for text in ("docks: none\n", "docks: ?\n", "note: x\n")] == [
        "none",
        "unknown",
        "not stated",
    ]


def test_where_nobody_knows_what_one_passes_the_door_is_the_most() -> None:
    text = ROUTE.format("").replace("passages: []", "passages: unknown")
    width = figure(text, "route", "tightest_width")
    height = figure(text, "route", "tightest_height")
    weight = figure(text, "route", "tightest_weight")
    assert (width.value, width.missing) == (None, ("width",))
    assert (weight.value, weight.missing) == (None, ("weight limit",))
    wide = text.replace("door_width: none", "door_width: 3 m")
    width, height = (figure(wide, "route", f"tightest_{key}") for key in ("width", "height"))
    assert width.value is not None
    assert width.value.ends == (None, 3.0)
    assert width.note == "Dock: door; not stated for what one passes on In"
    assert height.value is None


def test_how_many_steps_a_passage_has_may_be_unknown() -> None:
    (passage,) = published(ROUTE.format("{name: Stairs, steps: ?}")).section.of_kind("passage")
    steps = passage.fact("steps")
    assert steps is not None
    assert steps.standing is Standing.UNKNOWN


@pytest.mark.parametrize(
    ("passages", "steps", "lifts"),
    [
        ("{name: Door}", "0", "0"),
        (
            "{name: Stairs, steps: 3}, {name: Flight, steps: 11}, {name: Hoist, lift: yes}",
            "14",
            "1",
        ),
        ("{name: Stairs, steps: at least 3}, {name: Shaft, lift: unknown}", "at least 3", "0 to 1"),
        ("{name: Stairs, steps: 3 to 5}, {name: Flight, steps: 2}", "5 to 7", "0"),
    ],
)
def test_a_route_tells_its_steps_and_lifts(passages: str, steps: str, lifts: str) -> None:
    text = ROUTE.format(passages)
    found = [figure(text, "route", name).value for name in ("steps", "lifts")]
    assert [value.text for value in found if value is not None] == [steps, lifts]


def test_a_route_of_which_nobody_knows_the_passages_has_no_count_of_steps() -> None:
    text = ROUTE.format("").replace("passages: []", "passages: unknown")
    found = figure(text, "route", "steps")
    assert (found.value, found.missing) == (None, ("passages",))


@pytest.mark.parametrize(
    ("height", "answer"),
    [("0.9 m", "yes"), ("1.4 m", "yes"), ("0.8 m", "no"), ("1.5 m", "no"), ("none", "no")],
)
def test_a_dock_is_at_the_height_of_a_bed_between_two_heights(height: str, answer: str) -> None:
    """From 0.9 to 1.4 m: common practice, no source."""
    found = figure(f"docks: [{{name: Dock, height: {height}}}]\n", "dock", "truck-high")
    assert found.value is not None
    assert found.value.text == answer
    assert found.caution


@pytest.mark.parametrize("height", ["unknown", "0.8 m to 1.2 m"])
def test_a_dock_of_which_too_little_is_known_is_not_said_to_be_truck_high(height: str) -> None:
    found = figure(f"docks: [{{name: Dock, height: {height}}}]\n", "dock", "truck-high")
    assert found.value is None
