"""Points that a house tells by a rule: how many, what each may carry and has left."""

import pytest

from tests.departments.rigged import BEAM, LIMITS, figure, found, item, number, points, problems

ALONG = "{name: Along, beams: [B1], anywhere: yes, spacing_at_least: 1.5 m, each_point: 750 kg}"


def house(*groups: str, more: str = "", limits: str = LIMITS) -> str:
    """Beam B1, 40 m long, with some groups of points."""
    return limits + BEAM + "point_groups: [" + ", ".join(groups) + "]\n" + more


def told(text: str, name: str = "Along", what: str = "points") -> str:
    """What a figure of a group says, empty where it says nothing."""
    value = figure(text, "point-group", name, what).value
    return "" if value is None else value.text


@pytest.mark.parametrize(
    ("keys", "count"),
    [
        # 40 m at 1.5 m: 26 gaps, 27 points.
        ("anywhere: yes, spacing_at_least: 1.5 m", "27"),
        ("anywhere: yes, spacing_at_least: 1.5 to 2 m", "21 to 27"),
        ("anywhere: yes, spacing_at_least: unknown", ""),
        ("anywhere: yes", ""),
        ("anywhere: yes, count: 4, spacing_at_least: 1.5 m", "4"),
        ("anywhere: yes, count: 40, spacing_at_least: 1.5 m", "27"),
        ("spacing_at_least: 1.5 m", "at most 27"),
        ("centres: 11 ft", "11 to 12"),
        ("count: 6", "6"),
        ("count: 6 to 8", "6 to 8"),
        ("count: at least 6", "at least 6"),
        ("count: unknown", ""),
        ("count: unknown, anywhere: yes, spacing_at_least: 1.5 m", "at most 27"),
        ("count: none", "0"),
    ],
)
def test_how_many_points_there_are_follows_from_what_is_said(keys: str, count: str) -> None:
    assert told(house(f"{{name: Along, beams: [B1], {keys}}}")) == count


@pytest.mark.parametrize(
    "more",
    [points(0), "exceptions: [{beams: [B1], each_beam: 1 t}]\n"],
    ids=["tagged points", "another limit"],
)
def test_points_that_share_a_beam_are_counted_at_most(more: str) -> None:
    shared = "points:" in more
    assert told(house(ALONG, more=more)) == ("at most 27" if shared else "27")


def test_two_rules_on_one_beam_are_each_told_at_most() -> None:
    assert told(house(ALONG, "{name: Arch, beams: [B1], count: 6}")) == "at most 27"


def test_a_beam_out_of_service_has_no_room() -> None:
    text = house(ALONG).replace("runs: across", "runs: across, condition: out of service")
    assert told(text) == "0"
    assert told(text, what="left") == "0 kg"


@pytest.mark.parametrize(
    ("own", "exceptions", "limit_kg"),
    [
        ("each_point: 750 kg", "", 750.0),
        ("anywhere: yes", "", 1000.0),
        ("anywhere: yes", "exceptions: [{beams: [B1], each_point: 400 kg}]\n", 400.0),
    ],
)
def test_each_point_has_its_own_limit_or_the_lowest_rule_of_its_beams(
    own: str, exceptions: str, limit_kg: float
) -> None:
    text = house(f"{{name: Along, beams: [B1], {own}}}", more=exceptions)
    assert number(text, "point-group", "Along", "limit") == limit_kg


def test_where_nobody_says_on_which_beam_the_lowest_rule_of_any_beam_counts() -> None:
    more = "exceptions: [{beams: [B1], each_point: 400 kg}]\n"
    assert number(house("{name: Arch, count: 6}", more=more), "point-group", "Arch", "limit") == 400


@pytest.mark.parametrize(
    ("limits", "left"),
    [
        (LIMITS, "750 kg"),
        (LIMITS.replace("each_beam: 3 t", "each_beam: 500 kg"), "500 kg"),
        (LIMITS.replace("whole_roof: 9 t", "whole_roof: 600 kg"), "600 kg"),
        (LIMITS.replace("each_beam: 3 t", "each_beam: unknown"), "at most 750 kg"),
    ],
)
def test_one_point_has_left_what_the_least_limit_above_it_leaves(limits: str, left: str) -> None:
    assert told(house(ALONG, limits=limits), what="left") == left


def test_what_hangs_unknown_leaves_at_most() -> None:
    assert told(house(ALONG, more="hangs: unknown\n"), what="left") == "at most 750 kg"


def test_a_beam_without_points_tells_what_each_may_carry_and_its_room() -> None:
    text = LIMITS.replace("each_point", "spacing_at_least: 2 m, each_point") + BEAM
    assert number(text, "beam", "B1", "each-point") == 1000.0
    assert number(text, "beam", "B1", "point-left") == 1000.0
    room = figure(text, "beam", "B1", "room").value
    assert room is not None
    assert (room.text, room.most) == ("at most 21", 21.0)


def test_a_beam_whose_points_are_told_one_by_one_tells_none_of_it() -> None:
    beam = item(LIMITS + BEAM + points(0), "beam", "B1")
    assert [beam.figure(name) for name in ("each-point", "point-left", "room")] == [None] * 3


def test_a_rule_for_a_beam_that_is_not_there_is_a_problem() -> None:
    text = house("{name: Along, beams: [B9], anywhere: yes}")
    # References are found for the whole venue; here the group has no beam, and so no count.
    assert told(text) == ""


def test_anywhere_beside_equal_centres_is_asked_back() -> None:
    (problem,) = problems(house("{name: Along, beams: [B1], anywhere: yes, centres: 11 ft}"))
    assert "Along.centres" in problem
    assert "cannot stand beside 'anywhere: yes'" in problem


def test_more_than_find_room_are_told_to_the_house() -> None:
    (told_so,) = found(house(ALONG.replace("anywhere", "count: 40, anywhere")), "points-no-room")
    assert told_so.sentence == (
        "Along is told with 40 points, and 27 find room on its beams at the distance that is told."
        " 27 are counted."
    )
    assert found(house(ALONG), "points-no-room") == []
