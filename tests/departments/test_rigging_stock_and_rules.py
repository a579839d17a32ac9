"""Hoists that are away, limits written twice, and when the house asks though a limit is kept."""

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.pipeline import pack_of, venue_of
from tests.departments.rigged import BEAM, figure, found, hang, number, points
from tests.fit.sample import Record, asks, rider
from tests.sweep import folder

HOUSE = "limits: {whole_roof: 9 t, each_beam: 3 t, each_point: 1000 kg}\n" + BEAM + points(0, 10)
LOAD = "{what: Lights, by: lighting, weight: 100 kg}"


def hoists(more: str) -> str:
    """A house with six hoists, two of them in a hang."""
    stock = (
        "hoists: [{name: Hollin 500, count: 6, rating: 500 kg, weight: 30 kg, headroom: 500 mm"
        f"{more}}}]\n"
    )
    return HOUSE + stock + hang(1, 2, loads=LOAD, hoist="Hollin 500", last_m=10.0)


@pytest.mark.parametrize(
    ("more", "free"),
    [
        ("", "4"),
        (", working: 5", "3"),
        (", condition: out of service", "0"),
        (", condition: limited, note: Two are at the inspector's.", "at most 4"),
        (", condition: limited, working: 4", "2"),
        (", working: unknown", "at most 4"),
    ],
)
def test_hoists_that_are_away_are_not_left(more: str, free: str) -> None:
    value = figure(hoists(more), "hoist", "Hollin 500", "free").value
    assert value is not None
    assert value.text == free


def two(first: str, second: str) -> str:
    """A house that writes two limits for one beam."""
    return HOUSE + f"exceptions:\n  - {{beams: [B1], {first}}}\n  - {{beams: [B1], {second}}}\n"


@pytest.mark.parametrize("turned", [False, True])
def test_of_two_limits_for_one_beam_the_lower_counts_and_both_are_told(turned: bool) -> None:
    lines = ["each_beam: 2 t", "each_beam: 1.2 t"]
    text = two(*(lines[::-1] if turned else lines))
    assert number(text, "beam", "B1", "limit") == 1200.0
    (told,) = found(text, "limits-differ")
    assert "1.2 t is counted, the one that promises least." in told.sentence
    assert "2 t" in told.sentence


def test_a_second_limit_that_nobody_knows_leaves_the_beam_unknown() -> None:
    text = two("each_beam: 2 t", "each_beam: unknown")
    assert figure(text, "beam", "B1", "limit").value is None


def test_of_two_limits_for_each_point_of_a_beam_the_lower_counts() -> None:
    assert number(two("each_point: 700 kg", "each_point: 400 kg"), "point", "P1", "limit") == 400.0


def test_the_same_limit_written_twice_is_no_finding() -> None:
    assert found(two("each_beam: 2 t", "each_beam: 2 t"), "limits-differ") == []


def test_a_beam_without_points_tells_its_low_steel_by_its_own_heights() -> None:
    text = "limits: {whole_roof: 9 t, each_point: 1 t}\n" + BEAM
    assert number(text, "beam", "B1", "lowest-steel") == 8.0
    assert number(text, "beam", "B1", "highest-steel") == 10.0
    assert figure(text, "beam", "B1", "lowest-steel").note == "at 20 m SR"


def demo() -> FitPack:
    """The demo as the check reads it."""
    there = folder("demo")
    return fit_record(pack_of(venue_of(there.texts, there.photos)))


def plan(load_kg: float, *, hoists: str = "none", supports: int = 1) -> Record:
    """Loads at points of beam R5 of the demo, on which nothing hangs."""
    names = ("R5-2", "R5-3", "R5-4", "R5-5", "R5-6")
    return {
        **asks("hang"),
        "sort": "hang",
        "department": "rigging",
        "supports": [
            {
                "point": name,
                "across_m": None,
                "depth_m": None,
                "apex_m": None,
                "at_m": index * 3.2,
                "load_kg": load_kg,
            }
            for index, name in enumerate(names[:supports])
        ],
        "loads": [],
        "hoists": hoists,
        "hoist_kg": 0.0,
        "held": None,
    }


@pytest.mark.parametrize(("load_kg", "told"), [(800.0, False), (801.0, True), (980.0, True)])
def test_a_show_above_the_share_that_the_house_names_is_told_whom_to_ask(
    load_kg: float, told: bool
) -> None:
    (found,) = fit(demo(), [rider(plan(load_kg))])["verdicts"]
    note = (
        f"point R5-2 is used to {load_kg / 10:.0f} % at the most; above 80 % of a limit the house"
        " asks the consulting structural engineer."
    )
    assert found["verdict"].startswith("fits")
    assert (note in found["notes"]) == told


def test_the_frame_of_a_loudspeaker_hang_acts_where_its_boxes_hang() -> None:
    there = folder("demo")
    section = pack_of(venue_of(there.texts, there.photos)).section("rigging")
    assert section is not None
    loads = [each for each in section.of_kind("load") if each.key.startswith("rigging.hang.main-l")]
    boxes = next(each for each in loads if each.name.startswith("9 "))
    frame = next(each for each in loads if each.name.startswith("Frame"))
    assert frame.number("from") == boxes.number("from")
