"""
What a load that lifts, a hoist that is slack, and the sideways part of a leg leave: on points,
beams, zones and the roof.
"""

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pack import Figure
from builder.pipeline import pack_of, venue_of
from tests.departments.rigged import BEAM, figure, hang, item, number, points
from tests.fit.sample import asks, rider
from tests.sweep import folder

LEVEL = BEAM.replace("height: 10 m up", "height: 8 m up")
HOUSE = "limits: {whole_roof: 9 t, each_beam: 3 t, each_point: 1000 kg}\n" + LEVEL
MIDDLE = "{what: Wall, by: video, weight: 400 kg, at: 5 m}"
BEYOND = "{what: Bell, by: scenery, weight: 100 kg, at: 14 m}"
STATICS = (
    "statics by hand: supports at 0 and 10 m; 400 kg at 5 m bring 200 and 200 kg, 100 kg at 14 m"
    " bring -40 and 140 kg"
)


def ends(text: str, kind: str, of: str, name: str) -> tuple[float | None, float | None]:
    """What a figure is at least and at most."""
    value = figure(text, kind, of, name).value
    assert value is not None
    return value.ends


@pytest.mark.source(STATICS)
def test_what_relieves_a_point_leaves_nothing_more_there_and_is_still_carried() -> None:
    text = HOUSE + points(0, 10) + hang(1, 2, loads=f"{MIDDLE}, {BEYOND}", last_m=14.0)
    assert number(text, "point", "P1", "carried") == pytest.approx(160.0)
    assert number(text, "point", "P1", "left") == pytest.approx(800.0)
    assert number(text, "point", "P1", "alone") == pytest.approx(800.0)
    assert figure(text, "point", "P1", "alone").working.steps == (
        "Truss: 200.0 kg on this support, what relieves it counted as nothing",
        "Point: 1,000 kg − 200.0 kg = 800.0 kg",
    )
    assert number(text, "point", "P2", "left") == pytest.approx(660.0)
    assert item(text, "point", "P2").figure("alone") is None
    # The beam feels what hangs, whichever point it comes on: 3,000 − 500 kg.
    assert number(text, "beam", "B1", "left") == pytest.approx(2500.0)


@pytest.mark.source(STATICS)
def test_a_load_beyond_an_end_leaves_the_other_point_as_it_was() -> None:
    without = HOUSE + points(0, 10) + hang(1, 2, loads=MIDDLE, last_m=14.0)
    text = HOUSE + points(0, 10) + hang(1, 2, loads=f"{MIDDLE}, {BEYOND}", last_m=14.0)
    assert ends(text, "point", "P1", "left") == ends(without, "point", "P1", "left")


CROSSED = (
    "limits: {whole_roof: 9 t, each_beam: 1 t, each_point: 800 kg}\n"
    "beams:\n"
    + "".join(
        f"  - {{name: B{n}, runs: across, depth: {n * 5} m US,"
        " low_steel: [{across: 9 m SR, height: 9 m up}, {across: 9 m SL, height: 9 m up}]}\n"
        for n in range(3)
    )
    + "points:\n"
    + "".join(f"  - {{name: C{n}, beam: B{n}, across: 0 m}}\n" for n in range(3))
    + "zones: [{name: Back, beams: [B1, B2], limit: 2 t}]\n"
    + "hangs:\n  - {name: Spine, first_end: {across: 0 m, depth: 0 m}, last_end: {across: 0 m,"
    " depth: 10 m US}, weight: none, supports: [{point: C0}, {point: C1}, {point: C2}], loads:"
    " [{what: Lights, by: lighting, weight: 400 kg}]}\n"
)


@pytest.mark.source(
    "Hicks, Table 2.1: two spans under an even load, 3/16, 10/16, 3/16 of the whole; with the"
    " middle slack half each, with an end slack all on the middle (statics by hand)"
)
def test_a_hang_across_beams_leaves_each_what_one_hoist_slack_leaves() -> None:
    assert ends(CROSSED, "point", "C0", "left") == pytest.approx((600.0, 725.0))
    assert ends(CROSSED, "point", "C1", "left") == pytest.approx((400.0, 550.0))
    assert ends(CROSSED, "beam", "B1", "left") == pytest.approx((600.0, 750.0))
    assert ends(CROSSED, "beam", "B0", "left") == pytest.approx((800.0, 925.0))
    assert figure(CROSSED, "beam", "B1", "left").note == "the lower with one hoist slack"
    # Two of three supports: 325 kg as planned, all of it with the first slack.
    assert ends(CROSSED, "zone", "Back", "left") == pytest.approx((1600.0, 1675.0))
    # All supports are under the roof: nothing that hoists do changes what it carries.
    assert ends(CROSSED, "roof", "", "left") == pytest.approx((8600.0, 8600.0))
    assert item(CROSSED, "roof").figure("worst") is None


@pytest.mark.source(
    "by hand: 400 kg, apex 2 m from each of two points and 2 m below: each leg at 45 deg, 200 kg"
    " straight down, 200 × √2 = 282.8 kg of pull"
)
def test_a_point_loses_all_of_a_leg_s_pull_and_its_beam_the_part_straight_down() -> None:
    spot = "{across: 2 m SL, depth: 0 m, height: 6 m up}"
    bridle = f"bridles: [{{name: Spot, legs: [P1, P2], apex: {spot}, load: 400 kg}}]\n"
    text = HOUSE + points(0, 4) + bridle
    assert number(text, "point", "P1", "carried") == pytest.approx(282.84, abs=0.01)
    assert number(text, "point", "P1", "left") == pytest.approx(717.16, abs=0.01)
    assert number(text, "beam", "B1", "left") == pytest.approx(2600.0)


def left_in_demo(point: str) -> Figure:
    """What a point of the demo has left."""
    there = folder("demo")
    section = pack_of(venue_of(there.texts, there.photos)).section("rigging")
    found = section.item("point", point) if section else None
    left = found.figure("left") if found else None
    assert left is not None
    return left


def test_the_check_asks_between_what_hangs_as_planned_and_at_its_worst() -> None:
    there = folder("demo")
    pack = fit_record(pack_of(venue_of(there.texts, there.photos)))
    value = left_in_demo("R6-4").value
    assert value is not None
    least_kg, most_kg = value.ends
    assert least_kg is not None
    assert most_kg is not None
    words = [judged(pack, kg) for kg in (least_kg - 1, (least_kg + most_kg) / 2, most_kg + 1)]
    assert [word.split(",")[0] for word, _ in words] == ["fits", "ask", "short"]
    assert "while the house's own hangs hang as planned" in words[1][1]
    assert f"{least_kg:,.0f} kg" in words[1][1]
    assert f"{most_kg:,.0f} kg" in words[1][1]


def judged(pack: object, load_kg: float) -> tuple[str, str]:
    """The verdict on a chandelier at R6-4 of the demo, and its reason."""
    support = {
        "point": "R6-4",
        "across_m": None,
        "depth_m": None,
        "apex_m": None,
        "at_m": 0.0,
        "load_kg": load_kg,
    }
    asked = {
        **asks("hang"),
        "sort": "hang",
        "department": "rigging",
        "supports": [support],
        "loads": [],
        "hoists": "none",
        "hoist_kg": 0.0,
        "held": None,
    }
    (found,) = fit(pack, [rider(asked)])["verdicts"]  # type: ignore[arg-type]
    return found["verdict"], found["reason"]
