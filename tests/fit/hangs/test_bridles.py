"""
A spot that no point is near to, hung from two: statics of a rigging primer, the house's own
figures, and every rule on both sides.
"""

from math import cos, radians
from pathlib import Path
from typing import Any

import pytest

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pack import Item
from builder.pipeline import pack_of, venue_of
from tests.fit.hangs.test_plan import hang, kg, point, support, trim
from tests.fit.sample import Record, a_list, item, pack, rider, value

ROOT = Path(__file__).parents[3]


def house(**changes: Any) -> list[Record]:
    """
    Two beams 4 m apart with a point each at 0 m across, steel at 9 m, 500 kg a point; pulls may
    lean 60 degrees, legs open 120.
    """
    leaning = {"directions": value("at an angle"), "widest_lean": value("60 deg", cos(radians(60)))}
    items = {
        "R-1": point("R", 1, 0.0),
        "S-1": point("S", 1, 4.0),
        "R": item("beam", "R", left=kg(1000.0)),
        "S": item("beam", "S", left=kg(1000.0)),
        "roof": item("roof", "Whole roof", left=kg(2000.0), **leaning),
        "rule": item(
            "bridles_allowed",
            "B",
            allowed=value("yes"),
            widest_angle=value("120 deg", cos(radians(120))),
        ),
        **changes,
    }
    return [each for each in items.values() if each is not None]


def spot(
    load_kg: float = 400.0, apex_m: float | None = 7.0, at: tuple[float, float] = (0.0, 2.0)
) -> Record:
    """A load halfway between the two points."""
    return hang(support(spot=at, apex_m=apex_m, load_kg=load_kg))


def judged(*requirements: Record, section: list[Record] | None = None) -> list[Record]:
    """The verdicts."""
    found: list[Record] = fit(pack(rigging=section or house()), [rider(*requirements)])["verdicts"]
    return found


def test_a_bridle_fits_with_a_note_that_tells_its_pulls() -> None:
    # Runs of 2 m, rises of 2 m: each leg 45 degrees, 200 kg straight down, 200 × √2 = 283 kg of
    # pull.
    found = judged(spot())[0]
    assert found["verdict"] == "fits, with a note"
    assert found["reason"].startswith(
        "At the most: R-1 283 kg with S-1 283 kg. Tightest: point R-1, 217 kg to spare"
    )
    assert found["notes"] == [
        "A bridle that meets at 7.00 m: at the most 283 kg in the leg to R-1 and 283 kg in the leg"
        " to S-1. The house's rigger decides on it."
    ]


@pytest.mark.parametrize(("load_kg", "verdict"), [(707.1, "fits, with a note"), (707.2, "ask")])
def test_a_leg_may_not_pull_more_than_its_point_may_carry(load_kg: float, verdict: str) -> None:
    # 500 kg × √2 = 707.107 kg: straight down each point has 354 of 500 kg.
    assert judged(spot(load_kg))[0]["verdict"] == verdict


@pytest.mark.parametrize(
    ("apex_m", "verdict"),
    [
        (7.85, "fits, with a note"),
        (7.84, "fits, with a note"),
        (7.8, "fits, with a note"),
        (7.86, "ask"),
    ],
)
def test_legs_may_not_open_wider_than_120_degrees(apex_m: float, verdict: str) -> None:
    # 120 degrees at a rise of 2 / √3 = 1.155 m: the apex at 7.845 m is the highest.
    assert judged(spot(10.0, apex_m))[0]["verdict"] == ("ask" if apex_m > 7.8453 else verdict)


@pytest.mark.parametrize(("angle_deg", "verdict"), [(90.0, "fits, with a note"), (89.9, "ask")])
def test_the_house_s_widest_angle_holds(angle_deg: float, verdict: str) -> None:
    rule = item(
        "bridles_allowed",
        "B",
        allowed=value("yes"),
        widest_angle=value("x", cos(radians(angle_deg))),
    )
    assert judged(spot(), section=house(rule=rule))[0]["verdict"] == verdict


@pytest.mark.parametrize(("lean_deg", "verdict"), [(45.0, "fits, with a note"), (44.9, "ask")])
def test_a_pull_may_not_lean_more_than_the_house_says(lean_deg: float, verdict: str) -> None:
    roof = item(
        "roof",
        "Whole roof",
        left=kg(2000.0),
        directions=value("at an angle"),
        widest_lean=value("x", cos(radians(lean_deg))),
    )
    assert judged(spot(), section=house(roof=roof))[0]["verdict"] == verdict


@pytest.mark.parametrize(
    "directions", [value("straight down only"), value(standing="unknown"), None]
)
def test_points_that_may_not_lean_or_of_which_nobody_says_so_make_no_bridle(
    directions: Record | None,
) -> None:
    roof = item(
        "roof", "Whole roof", left=kg(2000.0), **({"directions": directions} if directions else {})
    )
    assert judged(spot(), section=house(roof=roof))[0]["verdict"] == "ask"


def test_an_exception_for_the_beams_goes_before_the_rule_for_all() -> None:
    roof = item("roof", "Whole roof", left=kg(2000.0), directions=value("straight down only"))
    exception = item(
        "exception",
        "E",
        beams=a_list("R", "S"),
        directions=value("at an angle"),
        widest_lean=value("x", cos(radians(60))),
    )
    assert (
        judged(spot(), section=house(roof=roof, exception=exception))[0]["verdict"]
        == "fits, with a note"
    )
    own = item("exception", "P", points=a_list("R-1"), directions=value("straight down only"))
    assert (
        judged(spot(), section=house(roof=roof, exception=exception, own=own))[0]["verdict"]
        == "ask"
    )


@pytest.mark.parametrize(
    "changes",
    [
        {
            "rule": item(
                "bridles_allowed", "B", allowed=value("between some beams"), beams=a_list("R", "T")
            )
        },
        {
            "rule": item(
                "bridles_allowed",
                "B",
                allowed=value("between some beams"),
                # One beam whose name holds a comma is not the two that the comma seems to part.
                beams=a_list("R, S", "T"),
            )
        },
        {"rule": None},
        {"S-1": point("S", 1, 4.0, carried_kg=1.0)},
        {"S-1": point("S", 1, 4.0, carried_kg=None)},
        {"S-1": point("S", 1, 4.0, limit_kg=None)},
        {"S-1": point("S", 1, 4.0, condition="out of service")},
    ],
)
def test_only_free_points_on_beams_that_the_house_allows_make_a_bridle(
    changes: dict[str, Any],
) -> None:
    assert judged(spot(), section=house(**changes))[0]["verdict"] == "ask"


def test_a_house_that_allows_no_bridles_is_short() -> None:
    assert (
        judged(spot(), section=house(rule=item("bridles_allowed", "B", allowed=value("no"))))[0][
            "verdict"
        ]
        == "short"
    )


@pytest.mark.parametrize(("across_m", "verdict"), [(0.3, "fits, with a note"), (0.33, "ask")])
def test_the_spot_is_on_the_line_between_the_points(across_m: float, verdict: str) -> None:
    # Two runs of √(2² + x²) less 4 m: 44.8 mm at 0.3 m, 54.1 mm at 0.33 m.
    assert judged(spot(10.0, at=(across_m, 2.0)))[0]["verdict"] == verdict


def test_without_an_apex_a_bridle_is_asked() -> None:
    assert judged(spot(apex_m=None))[0]["question"].startswith("Can you make a bridle at ")


def test_a_bridle_leaves_alone_the_points_that_hangs_name() -> None:
    assert [each["verdict"] for each in judged(spot(), hang(support("R-1", 10.0)))] == [
        "ask",
        "fits",
    ]


@pytest.mark.parametrize(("load_kg", "verdict"), [(100.0, "fits"), (100.1, "ask")])
def test_what_a_bridle_brings_to_a_beam_counts_and_is_asked_where_another_bridle_may_do(
    load_kg: float, verdict: str
) -> None:
    # 300 kg are left on beam R, of which the bridle takes 200.
    changes = {"R": item("beam", "R", left=kg(300.0)), "R-2": point("R", 2, 0.0)}
    found = judged(spot(), hang(support("R-2", load_kg)), section=house(**changes))
    assert [each["verdict"] for each in found] == ["fits, with a note", verdict]
    if verdict == "ask":
        assert found[1]["reason"].startswith("With this bridle: 300 kg left on beam R")


def test_the_trim_of_a_bridled_hang_counts_from_where_the_legs_meet() -> None:
    assert [each["verdict"] for each in judged(spot(), trim(6.0, 1.0), trim(6.0, 1.1))][1:] == [
        "fits",
        "short",
    ]


def demo() -> tuple[Record, dict[str, Item]]:
    """What the demo publishes for the check, and its rigging items by key."""
    folder = read_folder(ROOT / "venue")
    whole = pack_of(venue_of(folder.texts, folder.photos))
    section = next(each for each in whole.sections if each.key == "rigging")
    return fit_record(whole), {each.key: each for each in section.items}


def test_the_demo_s_chandelier_takes_the_points_and_pulls_that_the_house_s_own_page_tells() -> None:
    record, items = demo()
    found = fit(record, [rider(hang(support(spot=(3.2, 6.2), apex_m=7.9, load_kg=120.0)))])[
        "verdicts"
    ][0]
    figures = {
        figure.key.rsplit(".", 1)[1]: figure.value
        for figure in items["rigging.wanted-spot.chandelier"].figures
    }
    first, second = figures["tension-r5-5"], figures["tension-r6-5"]
    assert first is not None
    assert second is not None
    assert (first.text, second.text) == ("79 kg", "71 kg")
    assert "79.4 kg in the leg to R5-5 and 70.5 kg in the leg to R6-5" in found["notes"][0]
