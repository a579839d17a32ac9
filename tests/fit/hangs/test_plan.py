"""
Hang plans against a roof whose numbers are chosen by hand: every limit on both sides of its
boundary.

The roof: beam R with points at 0, 2, 4 and 6 m across, beam S 3 m upstage with the same. Points
carry 500 kg, the house hangs 100 kg on R-1. Left: 1,000 kg on each beam, 1,500 kg in the zone of
both, 2,000 kg on the roof. Two loaded points of a beam stand 1.2 m apart or more.
"""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from tests.fit.sample import Record, a_list, asks, item, pack, rider, value


def kg(number: float | None, standing: str = "stated") -> Record:
    """A mass, or the lack of one."""
    return (
        value("x", number)
        if number is not None
        else value(standing=standing if standing != "stated" else "unknown")
    )


def point(
    beam: str,
    number: int,
    depth_m: float,
    *,
    limit_kg: float | None = 500.0,
    carried_kg: float | None = 0.0,
    **state: str,
) -> Record:
    """A point."""
    at = {
        "at.across": value("x", number * 2.0 - 2.0),
        "at.depth": value("x", depth_m),
        "low-steel": value("x", 9.0),
    }
    kept = {**at, "limit": kg(limit_kg), "carried": value("x", carried_kg), "beam": value(beam)}
    return item("point", f"{beam}-{number}", **state, **kept)


def roof(**changes: Any) -> list[Record]:
    """The roof of this file, with some of its items changed; None takes one away."""
    items = {
        **{
            f"R-{number}": point("R", number, 0.0, carried_kg=100.0 if number == 1 else 0.0)
            for number in range(1, 5)
        },
        **{f"S-{number}": point("S", number, 3.0) for number in range(1, 5)},
        "R": item("beam", "R", left=kg(1000.0), limit=kg(1100.0), carried=kg(100.0)),
        "S": item("beam", "S", left=kg(1000.0), limit=kg(1000.0), carried=kg(0.0)),
        "zone": item(
            "zone",
            "Stage",
            left=kg(1500.0),
            limit=kg(1600.0),
            carried=kg(100.0),
            beams=a_list("R", "S"),
            points=a_list("X-1"),
        ),
        "roof": item(
            "roof",
            "Whole roof",
            left=kg(2000.0),
            limit=kg(2100.0),
            carried=kg(100.0),
            spacing_at_least=value("1.2 m", 1.2),
        ),
        **changes,
    }
    return [each for each in items.values() if each is not None]


def support(
    name: str = "",
    load_kg: float | None = None,
    at_m: float = 0.0,
    spot: tuple[float, float] | None = None,
    apex_m: float | None = None,
) -> Record:
    """A support at a point or a spot."""
    across_m, depth_m = spot or (None, None)
    return {
        "point": name,
        "across_m": across_m,
        "depth_m": depth_m,
        "apex_m": apex_m,
        "at_m": at_m,
        "load_kg": load_kg,
    }


def hang(
    *supports: Record,
    loads: list[Record] | None = None,
    hoists: str = "counted",
    hoist_kg: float = 0.0,
    **more: Any,
) -> Record:
    """A hang."""
    plan = {
        "supports": list(supports),
        "loads": loads or [],
        "hoists": hoists,
        "hoist_kg": hoist_kg,
        "held": None,
    }
    return {
        **asks("x"),
        "sort": "hang",
        "department": "rigging",
        "title": "Hang: H",
        "need": "n",
        **plan,
        **more,
    }


def verdicts(*hangs: Record, house: list[Record] | None = None) -> list[Record]:
    """The verdicts on some hangs of one rider."""
    found: list[Record] = fit(pack(rigging=roof() if house is None else house), [rider(*hangs)])[
        "verdicts"
    ]
    return found


def words(*hangs: Record, house: list[Record] | None = None) -> list[str]:
    """Their words alone."""
    return [each["verdict"] for each in verdicts(*hangs, house=house)]


@pytest.mark.parametrize(("load_kg", "verdict"), [(500.0, "fits"), (500.002, "short")])
def test_a_point_takes_what_it_may_and_not_a_gram_more(load_kg: float, verdict: str) -> None:
    assert words(hang(support("R-2", load_kg))) == [verdict]


@pytest.mark.parametrize(("load_kg", "verdict"), [(400.0, "fits"), (400.002, "short")])
def test_what_the_house_hangs_on_a_point_is_gone_from_it(load_kg: float, verdict: str) -> None:
    assert words(hang(support("R-1", load_kg))) == [verdict]


@pytest.mark.parametrize(("load_kg", "verdict"), [(500.0, "fits"), (500.0025, "short")])
def test_a_beam_takes_what_is_left_on_it(load_kg: float, verdict: str) -> None:
    # Two points may carry 1,000 kg together, and 1,000 kg are left on beam R.
    strong = {f"R-{number}": point("R", number, 0.0, limit_kg=600.0) for number in (2, 3)}
    assert words(hang(support("R-2", load_kg), support("R-3", load_kg)), house=roof(**strong)) == [
        verdict
    ]


@pytest.mark.parametrize(("load_kg", "verdict"), [(500.0, "fits"), (500.0025, "short")])
def test_a_zone_takes_what_is_left_in_it(load_kg: float, verdict: str) -> None:
    # 500 kg on beam R and 1,000 kg on beam S make the zone's 1,500 kg.
    strong = {f"S-{number}": point("S", number, 3.0, limit_kg=600.0) for number in (2, 3)}
    plan = hang(support("R-2", 500.0), support("S-2", 500.0), support("S-3", load_kg))
    assert words(plan, house=roof(**strong, S=item("beam", "S", left=kg(2000.0)))) == [verdict]


@pytest.mark.parametrize(("load_kg", "verdict"), [(1000.0, "fits"), (1000.0025, "short")])
def test_the_whole_roof_takes_what_is_left_on_it(load_kg: float, verdict: str) -> None:
    wide = {
        "zone": None,
        "S": item("beam", "S", left=kg(3000.0)),
        "S-1": point("S", 1, 3.0, limit_kg=2000.0),
        "S-3": point("S", 3, 3.0, limit_kg=2000.0),
    }
    assert words(hang(support("S-1", 1000.0), support("S-3", load_kg)), house=roof(**wide)) == [
        verdict
    ]


def test_hangs_of_one_show_add_up_on_a_point_and_the_later_one_is_short() -> None:
    assert words(
        hang(support("R-2", 300.0)), hang(support("r-2", 200.0)), hang(support("R-2", 0.01))
    ) == ["fits", "fits", "short"]


def test_a_short_says_which_limit_by_how_much_and_what_would_mend_it() -> None:
    found = verdicts(hang(support("R-1", 450.0)))[0]
    assert (
        found["reason"]
        == "400 kg left on point R-1, and the show's hangs so far bring 450 kg: 50.0 kg too much."
    )
    assert found["margin"] == ["−50.0 kg", "−110 lb"]
    assert found["fact"]["item"] == "R-1"
    assert (
        found["remedy"]
        == "Move the support to another point, spread it over two, or hang less there. Ask whether"
        " what the house itself hangs there can come down."
    )
    assert found["who"] == "the show's and the house's head riggers, with the house's engineer"


def test_a_fit_says_what_comes_on_each_point_and_the_tightest_limit() -> None:
    found = verdicts(hang(support("R-2", 300.0), support("S-3", 450.0)))[0]
    assert (
        found["reason"]
        == "At the most: R-2 300 kg, S-3 450 kg. Tightest: point S-3, 50.0 kg to spare beside all"
        " hangs so far."
    )
    assert found["margin"] == ["+50.0 kg", "+110 lb"]


def three(load_kg: float) -> Record:
    """
    An even load over 4 m on R-2, R-3 and R-4: level 3/16, 10/16 and 3/16 of it; with R-3 slack 1/2
    and 1/2, with an end slack all on R-3.
    """
    loads = [{"from_m": 0.0, "to_m": 4.0, "kg": load_kg}]
    return hang(
        support("R-2", at_m=0.0), support("R-3", at_m=2.0), support("R-4", at_m=4.0), loads=loads
    )


@pytest.mark.parametrize(
    ("load_kg", "verdict"), [(500.0, "fits"), (500.01, "ask"), (800.0, "ask"), (800.01, "short")]
)
def test_three_supports_fit_with_one_slack_are_short_when_level_is_too_much_and_are_asked_between(
    load_kg: float, verdict: str
) -> None:
    # The middle one: 500 of 500 kg with an end one slack; 10/16 of 800 = 500 kg level.
    assert words(three(load_kg)) == [verdict]


def test_a_worst_case_that_is_asked_names_both_cases_and_carries_its_question() -> None:
    found = verdicts(three(640.0))[0]
    assert (
        found["reason"]
        == "500 kg left on point R-3. Hung level, the show's hangs so far bring 400 kg; with a"
        " support slack or the heaviest hoists, up to 640 kg."
    )
    assert found["question"].startswith(
        "May point R-3 take up to 640 kg while a support is slack, or how is that kept from"
        " happening? (Act, rider line 3"
    )


@pytest.mark.parametrize(("load_kg", "verdict"), [(1000.0, "fits"), (1000.01, "short")])
def test_a_slack_support_moves_load_between_points_and_adds_none_to_their_beam(
    load_kg: float, verdict: str
) -> None:
    strong = {f"R-{number}": point("R", number, 0.0, limit_kg=2000.0) for number in (2, 3, 4)}
    assert words(three(load_kg), house=roof(**strong)) == [verdict]


def test_a_hang_that_would_tip_is_asked() -> None:
    # 100 kg at 3 m on supports at 0 and 2 m.
    tipping = hang(
        support("R-2", at_m=0.0),
        support("R-3", at_m=2.0),
        loads=[{"from_m": 3.0, "to_m": 3.0, "kg": 100.0}],
    )
    found = verdicts(tipping)[0]
    assert found["verdict"] == "ask"
    assert "it would tip or lift off one of them" in found["reason"]


@pytest.mark.parametrize(("load_kg", "verdict"), [(448.0, "fits"), (448.01, "short")])
def test_the_show_s_own_hoists_are_counted(load_kg: float, verdict: str) -> None:
    assert words(hang(support("R-2", load_kg), hoists="show", hoist_kg=52.0)) == [verdict]


HOISTS = {
    "light": item("hoist", "L", weight=kg(34.0), rating=kg(250.0), free=value("2", 2.0)),
    "heavy": item("hoist", "H", weight=kg(52.0), rating=kg(500.0), free=value("1", 1.0)),
}


@pytest.mark.parametrize(
    ("load_kg", "verdict"),
    [(448.0, "fits, with a note"), (448.01, "ask"), (466.0, "ask"), (466.01, "short")],
)
def test_the_house_s_hoists_are_counted_from_the_lightest_to_the_heaviest(
    load_kg: float, verdict: str
) -> None:
    assert words(hang(support("R-2", load_kg), hoists="house"), house=roof(**HOISTS)) == [verdict]


@pytest.mark.parametrize(
    ("load_kg", "verdict"),
    [(448.0, "fits, with a note"), (448.01, "ask"), (500.0, "ask"), (500.01, "short")],
)
def test_hoists_that_nobody_speaks_of_may_be_none_or_the_house_s_heaviest(
    load_kg: float, verdict: str
) -> None:
    assert words(hang(support("R-2", load_kg), hoists=""), house=roof(**HOISTS)) == [verdict]


@pytest.mark.parametrize(("load_kg", "verdict"), [(448.0, "fits, with a note"), (448.01, "ask")])
def test_a_single_hoist_of_the_house_counts_too(load_kg: float, verdict: str) -> None:
    # 448 + 52 = 500 kg, which is what the point takes.
    single = roof(heavy=HOISTS["heavy"])
    found = verdicts(hang(support("R-2", load_kg), hoists=""), house=single)[0]
    assert found["verdict"] == verdict
    if verdict != "ask":
        assert any("52.0 kg" in note for note in found["notes"])


@pytest.mark.parametrize(("count", "verdict"), [(3, "fits, with a note"), (4, "short")])
def test_the_house_s_hoists_are_enough_or_not(count: int, verdict: str) -> None:
    plans = [
        hang(support(name, 10.0), hoists="house") for name in ("R-2", "R-3", "R-4", "S-1")[:count]
    ]
    found = verdicts(*plans, house=roof(**HOISTS))[-1]
    assert found["verdict"] == verdict
    if verdict == "short":
        assert (
            found["reason"] == "The house has 3 hoists left, and the show's hangs so far ask for 4."
        )


@pytest.mark.parametrize(("rating_kg", "verdict"), [(300.0, "fits, with a note"), (299.9, "short")])
def test_the_strongest_hoist_lifts_the_heaviest_support(rating_kg: float, verdict: str) -> None:
    hoists = {
        "heavy": item("hoist", "H", weight=kg(52.0), rating=kg(rating_kg), free=value("4", 4.0))
    }
    assert words(hang(support("R-2", 300.0), hoists="house"), house=roof(**hoists)) == [verdict]


@pytest.mark.parametrize(("load_kg", "verdict"), [(2.0, "fits, with a note"), (2.5, "short")])
def test_a_hoist_that_lifts_next_to_nothing_is_rated_for_no_more(
    load_kg: float, verdict: str
) -> None:
    weak = item("hoist", "H", weight=kg(5.0), rating=kg(2.0), free=value("4", 4.0))
    assert words(hang(support("R-2", load_kg), hoists="house"), house=roof(hoist=weak)) == [verdict]


@pytest.mark.parametrize(("rating_kg", "verdict"), [(400.0, "ask"), (399.9, "short")])
def test_a_hoist_too_weak_for_the_worst_case_alone_is_asked_about(
    rating_kg: float, verdict: str
) -> None:
    # Of 640 kg over three supports the middle one has 10/16, 400 kg, level, and all if an end is
    # slack.
    strong = {f"R-{number}": point("R", number, 0.0, limit_kg=900.0) for number in (2, 3, 4)}
    hoist = item("hoist", "H", weight=kg(0.0), rating=kg(rating_kg), free=value("4", 4.0))
    plan = {**three(640.0), "hoists": "house"}
    assert words(plan, house=roof(**strong, hoist=hoist)) == [verdict]


def test_a_hoist_that_is_too_weak_lacks_no_mass_on_the_roof() -> None:
    weak = item("hoist", "H", weight=kg(52.0), rating=kg(299.9), free=value("4", 4.0))
    plan = hang(support("R-2", 300.0), hoists="house")
    found = verdicts(plan, house=roof(hoist=weak))[0]
    assert (found["verdict"], found["margin"]) == ("short", ["", ""])


def test_a_point_of_which_the_house_says_that_it_has_no_limit_is_asked_about() -> None:
    boundless = point("R", 2, 0.0, limit_kg=None)
    boundless["values"]["limit"] = value(standing="none")
    assert words(hang(support("R-2", 10.0)), house=roof(**{"R-2": boundless})) == ["ask"]


def test_a_short_asks_for_what_the_house_hangs_there_however_little_it_is() -> None:
    house = roof(**{"R-2": point("R", 2, 0.0, carried_kg=0.5)})
    found = verdicts(hang(support("R-2", 500.0)), house=house)[0]
    assert found["verdict"] == "short"
    assert "Ask whether what the house itself hangs there can come down." in found["remedy"]


@pytest.mark.parametrize("lacking", ["rating", "free", "weight"])
def test_a_house_that_does_not_tell_its_hoists_is_asked(lacking: str) -> None:
    told = {"weight": kg(52.0), "rating": kg(500.0), "free": value("4", 4.0)}
    hoist = item("hoist", "H", **{**told, lacking: kg(None)})
    assert words(hang(support("R-2", 10.0), hoists="house"), house=roof(hoist=hoist)) == ["ask"]


def test_hoists_that_cannot_be_counted_are_told() -> None:
    found = verdicts(hang(support("R-2", 100.0), hoists=""))[0]
    assert found["notes"] == [
        "Hoists are not counted: the rider does not say who brings them, or what they weigh."
    ]
    assert words(hang(support("R-2", 100.0), hoists="house")) == ["ask"]


@pytest.mark.parametrize(("load_kg", "verdict"), [(416.0, "fits, with a note"), (417.0, "short")])
def test_the_house_s_factor_multiplies_the_show_s_loads(load_kg: float, verdict: str) -> None:
    # 416 × 1.2 = 499.2 kg, 417 × 1.2 = 500.4 kg, of 500 kg.
    house = roof(factor=item("dynamic_factor", "F", factor=value("1.2", 1.2)))
    found = verdicts(hang(support("R-2", load_kg)), house=house)[0]
    assert found["verdict"] == verdict
    if verdict != "short":
        assert found["notes"] == [
            "All loads are counted times 1.20, the house's own factor for starting and stopping."
        ]


def test_the_factor_multiplies_hoists_too() -> None:
    # (365 + 52) × 1.2 = 500.4 kg.
    house = roof(factor=item("dynamic_factor", "F", factor=value("1.2", 1.2)))
    assert words(hang(support("R-2", 365.0), hoists="show", hoist_kg=52.0), house=house) == [
        "short"
    ]


@pytest.mark.parametrize(
    ("off_m", "verdict"),
    [(0.0, "fits"), (0.02, "fits"), (0.25, "fits, with a note"), (0.2501, "ask")],
)
def test_a_spot_takes_a_point_within_a_quarter_metre(off_m: float, verdict: str) -> None:
    house = roof(rule=item("bridles_allowed", "B", allowed=value("yes")))
    found = verdicts(hang(support(spot=(2.0 + off_m, 0.0), load_kg=100.0)), house=house)[0]
    assert found["verdict"] == verdict
    if verdict == "fits, with a note":
        assert found["notes"] == [
            "R-2 is 250 mm from the spot, within the 250 mm that this check allows; the truss moves"
            " or the pick leans by that."
        ]


@pytest.mark.parametrize(
    ("rule", "verdict", "says"),
    [
        (
            {"rule": item("bridles_allowed", "B", allowed=value("no"))},
            "short",
            "A bridle would be wanted, and the house allows none.",
        ),
        (
            {"rule": item("house", "Rigging", bridles_allowed=value(standing="none"))},
            "short",
            "and the house allows none.",
        ),
        (
            {"rule": item("bridles_allowed", "B", allowed=value("yes"))},
            "ask",
            "and the house allows them on any beam.",
        ),
        (
            {
                "rule": item(
                    "bridles_allowed",
                    "B",
                    allowed=value("between some beams"),
                    beams=a_list("R", "S"),
                )
            },
            "ask",
            "and the house allows them between beams R, S only.",
        ),
        ({}, "ask", "and the house has not said whether it allows them."),
    ],
)
def test_a_spot_without_a_point_wants_a_bridle(
    rule: dict[str, Record], verdict: str, says: str
) -> None:
    found = verdicts(hang(support(spot=(3.0, 1.5), load_kg=100.0)), house=roof(**rule))[0]
    assert found["verdict"] == verdict
    assert found["reason"].startswith(
        "No point is within 250 mm of the spot at 3.00 m SL, 1.50 m US; the nearest, "
    )
    assert found["reason"].endswith(says)


def test_two_spots_do_not_share_a_point_and_a_spot_leaves_alone_what_another_hang_names() -> None:
    near = support(spot=(2.1, 0.0), load_kg=10.0)
    assert words(hang(support(spot=(2.0, 0.0), load_kg=10.0)), hang(near)) == ["fits", "ask"]
    assert words(hang(near), hang(support("R-2", 10.0))) == ["ask", "fits"]


def test_a_spot_passes_over_a_point_out_of_service_for_another_that_is_near_enough() -> None:
    close = {**point("R", 2, 0.0), "key": "x.point.near", "name": "near"}
    close["numbers"] = {**close["numbers"], "at.across": 2.2}
    house = roof(**{"R-2": point("R", 2, 0.0, condition="out of service"), "near": close})
    assert (
        "near 100 kg"
        in verdicts(hang(support(spot=(2.0, 0.0), load_kg=100.0)), house=house)[0]["reason"]
    )


@pytest.mark.parametrize(
    ("state", "says"),
    [
        ({"condition": "out of service", "note": "Cracked."}, "R-2 is out of service: Cracked."),
        ({"terms": "not for visitors"}, "R-2 is not for visitors."),
    ],
)
def test_a_point_that_may_not_be_used_is_short_with_its_reason(
    state: dict[str, str], says: str
) -> None:
    found = verdicts(
        hang(support("R-2", 10.0)), house=roof(**{"R-2": point("R", 2, 0.0, **state)})
    )[0]
    assert (found["verdict"], found["reason"]) == ("short", says)


def test_a_beam_out_of_service_takes_nothing() -> None:
    assert words(
        hang(support("R-2", 10.0)),
        house=roof(R=item("beam", "R", condition="out of service", left=kg(1000.0))),
    ) == ["short"]


@pytest.mark.parametrize(
    "changes",
    [
        {"R-2": point("R", 2, 0.0, limit_kg=None)},
        {"R-2": point("R", 2, 0.0, carried_kg=None)},
        {"R": item("beam", "R", left=kg(None))},
        {"R": None},
        {"zone": item("zone", "Stage", beams=a_list("R"), limit=kg(None))},
        {"roof": item("roof", "Whole roof", limit=kg(None))},
        {"roof": None},
    ],
)
def test_what_nobody_has_said_is_asked(changes: dict[str, Any]) -> None:
    found = verdicts(hang(support("R-2", 10.0)), house=roof(**changes))[0]
    assert found["verdict"] == "ask"
    assert found["question"]


@pytest.mark.parametrize("kind", ["beam", "zone", "roof"])
def test_a_limit_that_the_house_says_does_not_exist_limits_nothing(kind: str) -> None:
    changes = {"beam": ("R", "R"), "zone": ("zone", "Stage"), "roof": ("roof", "Whole roof")}[kind]
    free = item(
        kind,
        changes[1],
        limit=value(standing="none"),
        left=kg(None),
        beams=a_list("R"),
        spacing_at_least=value(standing="none"),
    )
    assert words(hang(support("R-2", 10.0)), house=roof(**{changes[0]: free})) == ["fits"]


def test_a_point_that_the_house_does_not_name_is_asked() -> None:
    assert verdicts(hang(support("Q-9", 10.0)))[0]["reason"] == "The house names no point Q-9."


def test_a_support_without_a_place_is_asked_unless_the_roof_is_already_short() -> None:
    assert words(hang(support("", 2000.0)), hang(support("", 0.1))) == ["ask", "short"]


@pytest.mark.parametrize(("rule", "verdict"), [(2.0, "fits"), (2.001, "short")])
def test_loaded_points_keep_the_house_s_distance(rule: float, verdict: str) -> None:
    house = roof(
        roof=item("roof", "Whole roof", left=kg(2000.0), spacing_at_least=value("x", rule))
    )
    assert words(hang(support("R-3", 10.0), support("R-4", 10.0)), house=house) == [verdict]


def test_the_distance_counts_to_what_the_house_hangs_and_not_to_other_beams() -> None:
    house = roof(
        roof=item("roof", "Whole roof", left=kg(2000.0), spacing_at_least=value("3 m", 3.0))
    )
    # R-2 is 2 m from R-1, where the house hangs 100 kg; R-4 is 4 m from R-2, the next that is
    # loaded.
    assert words(
        hang(support("R-2", 10.0)),
        hang(support("R-4", 10.0)),
        hang(support("S-1", 10.0)),
        house=house,
    ) == ["short", "fits", "fits"]


def test_a_near_point_of_which_nobody_knows_whether_it_is_loaded_is_asked_about() -> None:
    # are 2 m apart. What the house hangs on R-4 is not known; where the show loads it
    # too, nothing is left to ask.
    house = roof(
        **{"R-4": point("R", 4, 0.0, carried_kg=None)},
        roof=item("roof", "Whole roof", left=kg(2000.0), spacing_at_least=value("3 m", 3.0)),
    )
    alone = verdicts(hang(support("R-3", 10.0)), house=house)[0]
    assert alone["verdict"] == "ask"
    assert "R-3 and R-4" in alone["reason"]
    both_loaded = verdicts(hang(support("R-3", 10.0), support("R-4", 10.0)), house=house)[0]
    assert both_loaded["verdict"] == "short"


def trim(trim_m: float, below_m: float | None) -> Record:
    """How high a hang should go."""
    return {
        **asks("x"),
        "sort": "trim",
        "department": "rigging",
        "title": "Trim of H",
        "trim_m": trim_m,
        "below_m": below_m,
    }


@pytest.mark.parametrize(
    ("trim_m", "below_m", "verdict"),
    [
        (8.0, 1.0, "fits"),
        (8.02, 1.0, "fits, with a note"),
        (8.03, 1.0, "short"),
        (8.0, None, "ask"),
        (9.02, None, "ask"),
        (9.03, None, "short"),
    ],
)
def test_a_trim_needs_room_under_the_steel_and_is_asked_where_nobody_says_what_takes_it(
    trim_m: float, below_m: float | None, verdict: str
) -> None:
    assert words(hang(support("R-2", 10.0)), trim(trim_m, below_m))[1] == verdict


def test_a_trim_that_rounding_lets_pass_says_by_how_much_in_metres() -> None:
    found = verdicts(hang(support("R-2", 10.0)), trim(8.02, 1.0))[1]
    assert [note for note in found["notes"] if "20 mm" in note] != []


def test_the_lowest_steel_over_a_hang_decides_its_trim() -> None:
    low = point("R", 3, 0.0)
    low["numbers"]["low-steel"] = 7.0
    found = verdicts(
        hang(support("R-2", 10.0), support("R-3", 10.0)), trim(6.5, 1.0), house=roof(**{"R-3": low})
    )[1]
    assert found["reason"] == "Too high under the steel at R-3 by 500 mm."


def test_hangs_of_all_acts_of_a_day_add_up() -> None:
    acts = [
        rider(hang(support("R-2", 300.0)), act="First"),
        rider(hang(support("R-2", 300.0)), act="Second"),
    ]
    found = fit(pack(rigging=roof()), acts)["verdicts"]
    assert [(each["act"], each["verdict"]) for each in found] == [
        ("First", "fits"),
        ("Second", "short"),
    ]


def test_rigging_s_caution_stands_beside_what_is_only_asked() -> None:
    house = pack(rigging=roof())
    house["sections"][0]["cautions"] = ["Planning figures."]
    assert fit(house, [rider(hang(support("Q-9", 10.0)))])["cautions"] == ["Planning figures."]


def test_a_house_that_does_not_describe_rigging_is_asked() -> None:
    assert [
        each["verdict"]
        for each in fit(pack(stage=[]), [rider(hang(support("R-2", 10.0)), trim(8.0, 1.0))])[
            "verdicts"
        ]
    ] == ["ask", "ask"]


def between(least: float | None, most: float | None) -> Record:
    """A mass that is known in part."""
    return value("x", None, least=least, most=most)


@pytest.mark.parametrize(
    ("left", "load_kg", "verdict"),
    [
        ((300.0, 400.0), 300.0, "fits"),
        ((300.0, 400.0), 300.002, "ask"),
        ((300.0, 400.0), 400.0, "ask"),
        ((300.0, 400.0), 400.002, "short"),
        ((None, 400.0), 1.0, "ask"),
        ((None, 400.0), 400.002, "short"),
        ((300.0, None), 300.0, "fits"),
        ((300.0, None), 499.0, "ask"),
        ((None, None), 1.0, "ask"),
    ],
)
def test_what_is_left_at_least_promises_and_what_is_left_at_most_refuses(
    left: tuple[float | None, float | None], load_kg: float, verdict: str
) -> None:
    beam = item("beam", "R", left=between(*left), limit=kg(1100.0), carried=kg(100.0))
    assert words(hang(support("R-2", load_kg)), house=roof(R=beam)) == [verdict]


@pytest.mark.parametrize(
    ("limit", "carried", "load_kg", "verdict"),
    [
        # 450 to 500 kg may hang there, 100 to 150 kg do: 300 to 400 kg are left.
        ((450.0, 500.0), (100.0, 150.0), 300.0, "fits"),
        ((450.0, 500.0), (100.0, 150.0), 300.002, "ask"),
        ((450.0, 500.0), (100.0, 150.0), 400.002, "short"),
        ((500.0, 500.0), (100.0, None), 1.0, "ask"),
        ((500.0, 500.0), (100.0, None), 400.002, "short"),
    ],
)
def test_the_ends_of_a_point_s_limit_and_load_count(
    limit: tuple[float, float],
    carried: tuple[float, float | None],
    load_kg: float,
    verdict: str,
) -> None:
    ends = {"carried.least": carried[0], "carried.most": carried[1]}
    there = point("R", 2, 0.0)
    there["values"]["limit"] = between(*limit)
    del there["numbers"]["carried"]
    there["numbers"] |= {name: number for name, number in ends.items() if number is not None}
    assert words(hang(support("R-2", load_kg)), house=roof(**{"R-2": there})) == [verdict]


def test_what_is_left_at_most_is_told_with_what_the_show_brings() -> None:
    beam = item("beam", "R", left=between(None, 400.0), limit=kg(1100.0), carried=kg(100.0))
    (answer,) = verdicts(hang(support("R-2", 300.0)), house=roof(R=beam))
    assert answer["reason"] == (
        "At most 400 kg left on beam R: not all that it carries, or may carry, is known. The"
        " show's hangs so far bring 300 kg."
    )
    beam = item("beam", "R", left=between(200.0, 400.0), limit=kg(1100.0), carried=kg(100.0))
    (answer,) = verdicts(hang(support("R-2", 300.0)), house=roof(R=beam))
    assert answer["reason"] == (
        "At least 200 kg left on beam R, and the show's hangs so far bring 300 kg."
    )


@pytest.mark.parametrize(
    ("held", "verdict"),
    [(None, "ask"), (0.1, "fits, with a note"), (0.25, "fits, with a note"), (0.26, "ask")],
)
def test_load_cells_hold_a_support_near_its_level_load(held: float | None, verdict: str) -> None:
    """
    A bar of 640 kg on three supports: 5/8 of it, 400 kg, on the middle one while level, and all of
    it there with an end slack. The middle point has 500 kg left.

    The share of the middle is that of a beam over two equal spans under a uniform load, AISC Steel
    Construction Manual, Table 3-23, from memory.
    """
    supports = [support("R-1", at_m=0.0), support("R-2", at_m=5.0), support("R-3", at_m=10.0)]
    bar = {"from_m": 0.0, "to_m": 10.0, "kg": 640.0}
    (found,) = verdicts(hang(*supports, loads=[bar], held=held))
    assert found["verdict"] == verdict
    is_told = any("load cell on every support" in note for note in found["notes"])
    assert is_told == (held is not None)


def test_load_cells_change_nothing_where_one_or_two_supports_carry() -> None:
    bar = {"from_m": 0.0, "to_m": 10.0, "kg": 900.0}
    supports = [support("R-1", at_m=0.0), support("R-2", at_m=10.0)]
    with_cells, without = (
        verdicts(hang(*supports, loads=[bar], held=held))[0] for held in (0.1, None)
    )
    assert with_cells == without
