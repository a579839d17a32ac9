"""
Shows in houses whose points are told by a rule: anywhere on a beam, so many without a place, or
only beams and limits.
"""

from typing import Any

import pytest

from builder.departments.rigging.fit import RULES
from builder.fit.interpreter import fit
from builder.fit.published import rule_record, section_record
from builder.fit.wanted import wanted_of
from tests.departments.rigged import BEAM, LIMITS, points, published
from tests.fit.hangs.test_plan import hang, support
from tests.fit.sample import Record, asks, pack, rider

ALONG = "{name: Along, beams: [B1], anywhere: yes, spacing_at_least: 1.5 m, each_point: 1 t}"
ARCH = "{name: Arch, count: 6, place: downstage of the arch, each_point: 1 t, low_steel: 7 m up}"


def house(*groups: str, more: str = "", limits: str = LIMITS, beam: str = BEAM) -> Record:
    """What the check reads of a house whose beam B1 rises from 8 m to 10 m over 40 m."""
    told = "point_groups: [" + ", ".join(groups) + "]\n" if groups else ""
    section = published(limits + beam + told + more).section
    record = section_record(section, {}, wanted_of(RULES))
    return {**pack(), "rules": [rule_record(rule) for rule in RULES], "sections": [record]}


def need(key: str, low: float) -> Record:
    """Something that a rule of rigging answers."""
    amount = {"way": "at least", "low": low, "high": low}
    return {**asks(key), "sort": "rule", "what": key, "carried": "house", **amount}


def spot(across_m: float, load_kg: float = 800.0, depth_m: float = 0.0, **more: Any) -> Record:
    """A hang on one spot."""
    return hang(support(load_kg=load_kg, spot=(across_m, depth_m), **more))


def trim(trim_m: float, below_m: float = 0.5) -> Record:
    """How high the hang before goes."""
    asked = {"sort": "trim", "department": "rigging", "title": "Trim"}
    return {**asks("x"), **asked, "trim_m": trim_m, "below_m": below_m}


def verdicts(there: Record, *wanted: Record) -> list[Record]:
    """The verdicts on what one rider asks."""
    found: list[Record] = fit(there, [rider(*wanted)])["verdicts"]
    return found


def words(there: Record, *wanted: Record) -> list[str]:
    """Their words, notes left out."""
    return [each["verdict"].removesuffix(", with a note") for each in verdicts(there, *wanted)]


@pytest.mark.parametrize(
    ("key", "low", "word"),
    [
        # 40 m at 1.5 m: 27 points. Each carries 1 t; the beam 3 t, the roof 9 t, nothing hangs.
        ("points", 27.0, "fits"),
        ("points", 28.0, "short"),
        ("point rating", 1000.0, "fits"),
        ("point rating", 1001.0, "short"),
        ("point left", 1000.0, "fits"),
        ("point left", 1001.0, "short"),
        ("flown total", 9000.0, "fits"),
        ("flown total", 9001.0, "short"),
        ("low steel", 8.0, "fits"),
    ],
)
def test_points_anywhere_on_a_beam_answer_line_by_line(key: str, low: float, word: str) -> None:
    assert words(house(ALONG), need(key, low)) == [word]


@pytest.mark.parametrize(
    ("key", "low", "word"),
    [
        ("points", 6.0, "fits"),
        ("points", 7.0, "short"),
        ("point rating", 1000.0, "fits"),
        ("point rating", 1001.0, "short"),
        # Of which beam nobody says, so what the beam leaves is open.
        ("point left", 900.0, "ask"),
        ("point left", 1001.0, "short"),
        ("low steel", 7.0, "fits"),
        ("low steel", 7.5, "short"),
    ],
)
def test_points_without_a_place_answer_what_is_said_of_them(
    key: str, low: float, word: str
) -> None:
    assert words(house(ARCH, beam=""), need(key, low)) == [word]


def test_points_told_one_by_one_and_by_a_rule_add_up() -> None:
    there = house(ARCH, more=points(0, 10))
    assert words(there, need("points", 8.0), need("points", 9.0)) == ["fits", "short"]


def test_a_count_that_is_not_known_is_asked_and_never_short() -> None:
    there = house(ARCH.replace("count: 6, ", ""))
    (found,) = verdicts(there, need("points", 50.0))
    assert found["verdict"] == "ask"
    assert "0 such" not in found["reason"]


def test_room_on_a_beam_without_points_bounds_how_many_there_can_be() -> None:
    there = house(limits=LIMITS.replace("each_point", "spacing_at_least: 2 m, each_point"))
    found = verdicts(there, need("points", 6.0), need("points", 22.0))
    assert [each["verdict"] for each in found] == ["ask", "short"]
    assert found[0]["reason"] == (
        "The house has not said all of it: 0 are known, and it is 21 at the most."
    )


def test_a_house_of_beams_and_limits_answers_what_one_point_carries() -> None:
    asked = [need("point rating", 1000.0), need("point rating", 1001.0), need("point left", 1000.0)]
    assert words(house(), *asked) == ["fits", "short", "fits"]


@pytest.mark.parametrize(("load_kg", "word"), [(1000.0, "fits"), (1000.01, "short")])
def test_a_spot_anywhere_on_a_beam_takes_what_each_point_may(load_kg: float, word: str) -> None:
    assert words(house(ALONG), spot(2.0, load_kg)) == [word]


def test_a_hang_on_a_beam_says_where_and_the_tightest_limit() -> None:
    (found,) = verdicts(house(ALONG), spot(2.0, 800.0))
    assert found["reason"] == (
        "At the most: B1 at 2.00 m SL 800 kg. Tightest: point B1 at 2.00 m SL, 200 kg to spare"
        " beside all hangs so far."
    )


def test_spots_on_one_beam_add_up_under_its_limit() -> None:
    # 3 t on the beam.
    spots = [spot(4.0 * index, 1000.0) for index in range(4)]
    assert words(house(ALONG), *spots) == ["fits", "fits", "fits", "short"]


@pytest.mark.parametrize(("across_m", "word"), [(3.5, "fits"), (3.49, "short"), (2.0, "short")])
def test_two_spots_keep_the_distance_of_their_rule(across_m: float, word: str) -> None:
    assert words(house(ALONG), spot(2.0), spot(across_m)) == ["fits", word]


def test_a_spot_keeps_the_distance_from_a_loaded_point_of_the_beam() -> None:
    loaded = points(0, 10) + (
        "hangs: [{name: Cloth, first_end: {across: 0 m, depth: 0 m}, last_end: {across: 0 m,"
        " depth: 0 m}, supports: [{point: P1}], loads: [{what: Cloth, by: house, weight: 50 kg}]}]"
    )
    assert words(house(ALONG, more=loaded), spot(1.0)) == ["short"]
    assert words(house(ALONG, more=loaded), spot(4.0)) == ["fits"]


def test_where_no_distance_is_told_a_second_spot_is_asked() -> None:
    there = house(ALONG.replace("spacing_at_least: 1.5 m, ", ""))
    assert words(there, spot(2.0), spot(12.0)) == ["fits", "ask"]


@pytest.mark.parametrize(
    ("count", "last"), [("2", "short"), ("3", "fits"), ("2 to 4", "ask"), ("unknown", "ask")]
)
def test_no_more_spots_than_the_rule_has_points(count: str, last: str) -> None:
    there = house(ALONG.replace("anywhere", f"count: {count}, anywhere"))
    assert words(there, spot(0.0), spot(4.0), spot(8.0))[-1] == last


@pytest.mark.parametrize(
    ("trim_m", "word"), [(8.6, "fits"), (8.62, "fits"), (8.63, "short"), (9.5, "short")]
)
def test_a_trim_hangs_under_the_steel_at_the_spot(trim_m: float, word: str) -> None:
    # At 2 m SL: 22 of 40 m along, 8 m + 2 m × 22/40 = 9.1 m, less 0.5 m; 25 mm are tolerated.
    assert words(house(ALONG), spot(2.0), trim(trim_m))[1] == word


@pytest.mark.parametrize(
    ("bridles", "word"),
    [
        ("", "ask"),
        ("bridles_allowed: {allowed: no}\n", "short"),
        ("bridles_allowed: none\n", "short"),
        ("bridles_allowed: {allowed: yes}\n", "ask"),
    ],
)
@pytest.mark.parametrize("groups", [(ALONG,), ()], ids=["anywhere", "beams alone"])
def test_a_spot_off_all_beams_needs_a_bridle(
    bridles: str, word: str, groups: tuple[str, ...]
) -> None:
    (found,) = verdicts(house(*groups, more=bridles), spot(2.0, depth_m=3.0))
    assert found["verdict"] == word
    assert found["reason"].startswith(
        "No beam is within 250 mm of the spot at 2.00 m SL, 3.00 m US; the nearest, B1, is 3.00 m"
        " away."
    )


def test_a_spot_beyond_the_end_of_a_beam_is_off_it() -> None:
    assert words(house(ALONG), spot(20.2), spot(20.5)) == ["fits", "ask"]


def test_a_beam_of_which_nobody_says_where_its_points_are_is_asked_with_what_holds_there() -> None:
    found = verdicts(house(), spot(2.0), trim(8.6), spot(9.0, 1001.0))
    assert [each["verdict"].removesuffix(", with a note") for each in found] == [
        "ask",
        "fits",
        "short",
    ]
    assert found[0]["reason"] == (
        "The house has not said where along beam B1 its points are; what holds all along it is"
        " judged."
    )
    assert found[0]["question"].startswith("May a show hang from B1 at 2.00 m SL?")


@pytest.mark.parametrize("asked", [spot(2.0), hang(support("arch", 800.0))], ids=["spot", "name"])
def test_points_without_a_place_are_asked_with_what_is_said_of_them(asked: Record) -> None:
    (found,) = verdicts(house(ARCH, beam=""), asked)
    assert found["verdict"] == "ask"
    assert "6, downstage of the arch, each may carry 1,000 kg" in found["reason"]


def test_a_rule_out_of_service_offers_no_point() -> None:
    there = house(ALONG.replace("anywhere", "condition: out of service, anywhere"))
    assert words(there, spot(2.0), need("points", 1.0)) == ["ask", "short"]


def test_a_beam_out_of_service_carries_no_spot() -> None:
    beam = BEAM.replace("runs: across", "runs: across, condition: out of service")
    assert words(house(ALONG, beam=beam, more="bridles_allowed: none\n"), spot(2.0)) == ["short"]


ASKED = (
    *(need("points", low) for low in (1.0, 6.0, 27.0, 28.0)),
    *(need("point rating", low) for low in (500.0, 1000.0, 1001.0)),
    *(need("point left", low) for low in (500.0, 1000.0, 1001.0)),
    need("low steel", 8.0),
    spot(2.0, 1000.0),
    trim(8.6),
    spot(3.5, 900.0),
    spot(-9.0, 1000.0),
    spot(0.0, depth_m=3.0),
)


@pytest.mark.parametrize("known", [ALONG, ALONG.replace("anywhere", "count: 6, anywhere"), ARCH])
@pytest.mark.parametrize(
    ("key", "less"),
    [
        ("spacing_at_least: 1.5 m", "spacing_at_least: unknown"),
        ("spacing_at_least: 1.5 m", "spacing_at_least: 1 to 2 m"),
        ("spacing_at_least: 1.5 m, ", ""),
        ("each_point: 1 t", "each_point: unknown"),
        ("each_point: 1 t", "each_point: 0.8 to 1 t"),
        ("anywhere: yes, ", ""),
        ("beams: [B1], ", ""),
        ("count: 6", "count: unknown"),
        ("count: 6", "count: 4 to 8"),
        ("low_steel: 7 m up", "low_steel: unknown"),
    ],
)
def test_less_said_of_a_rule_never_promises_more(known: str, key: str, less: str) -> None:
    told = words(house(known), *ASKED)
    vague = words(house(known.replace(key, less)), *ASKED)
    promised = [
        (asked["title"], before)
        for asked, before, now in zip(ASKED, told, vague, strict=True)
        if now == "fits" and before != "fits"
    ]
    assert promised == []
