"""
Sizes and coverage that are known in part, or unknown: what leans on them is missing and names them,
and nothing takes what an absent key means.
"""

from functools import cache

import pytest

from builder.departments.sound.areas.sources import unplaced_of
from builder.pack import Figure, Section
from tests.departments.sounding import FILL, FLOOR, HANGS, MIXING, MODELS, ROOM, SUBS, figure, sound
from tests.departments.sounding import published as publish

LESS = ("about {}", "at least {}", "up to {}", "unknown")
"""Ways of knowing less of an exact value."""
SIZES = "width: 4 m, depth: 3 m, ears:"
VERTICAL = "{band: 1 kHz, horizontal: 90 deg, vertical: %s}"
SMALL = """
  - {name: Small, kind: full range, level: 120 dB, lowest: 80 Hz, highest: 16 kHz, width: 300 mm, height: 500 mm,
     coverage: [{band: 500 Hz, horizontal: 90 deg, vertical: 80 deg}, {band: 1 kHz, horizontal: 90 deg, vertical: 60 deg}]}
"""  # noqa: E501
NEIGHBOUR = (
    "neighbours: [{name: Farm, at: {across: 0 m, depth: 300 m DS, height: 0 m}, above_ground: 4 m,"
    " ground: {stage: hard, middle: porous, receiver: mixed}, mix_level: 100 dB(A)}]\n"
)
WHOLE = (
    MODELS.rstrip("\n")
    + SMALL
    + MIXING.replace("width: none, depth: none, ears:", SIZES)
    + FLOOR
    + HANGS
    + SUBS % ""
    + (FILL % "").replace("model: Line", "model: Small")
    + NEIGHBOUR
)


@cache
def known(text: str) -> dict[str, Figure]:
    """Every figure of sound, by its key."""
    return figures_of(publish(text).section)


def figures_of(section: Section) -> dict[str, Figure]:
    """Every figure of a section, by its key."""
    return {each.key: each for item in section.items for each in item.figures}


def thing(key: str) -> str:
    """What a figure is of."""
    return key.rpartition(".")[0]


def check_untold(text: str, name: str) -> None:
    """
    No map; every figure is as it was, or is missing as one of the same thing says; the finding and
    those figures name what is not known.
    """
    before, now = known(WHOLE), known(text)
    untold = {key: each for key, each in now.items() if each.value is None and before[key].value}
    assert {each.missing for each in untold.values()} == {(name,)}
    gone = {thing(key) for key in before.keys() - now.keys()}
    assert gone <= {thing(key) for key in untold}
    assert all(now[key].value == before[key].value for key in now.keys() - untold.keys())
    assert publish(text).section.fields == ()
    told = [each.sentence for each in publish(text).findings if each.code == "no-map"]
    assert told == [f"There are no coverage maps: they need {name}."]


@pytest.mark.parametrize("form", LESS)
@pytest.mark.parametrize(("key", "size"), [("width", "4 m"), ("depth", "3 m")])
def test_levels_need_the_exact_sizes_of_the_mix_position(key: str, size: str, form: str) -> None:
    text = WHOLE.replace(f"{key}: {size}", f"{key}: {form.format(size)}")
    check_untold(text, f"the exact {key} of the mix position")


@pytest.mark.parametrize(("key", "size"), [("width", "4 m"), ("depth", "3 m")])
def test_levels_need_a_size_of_the_mix_position_that_nobody_states(key: str, size: str) -> None:
    check_untold(WHOLE.replace(f"{key}: {size}, ", ""), f"the exact {key} of the mix position")


@pytest.mark.parametrize("form", LESS)
def test_levels_need_every_exact_vertical_coverage(form: str) -> None:
    text = WHOLE.replace("vertical: 60 deg", f"vertical: {form.format('60 deg')}")
    check_untold(text, "the exact vertical coverage of Small at 1 kHz")


def test_all_that_leans_on_a_level_is_named_where_it_stands() -> None:
    now = known(WHOLE.replace("width: 4 m", "width: about 4 m"))
    for key in (
        "sound.mix.greatest_level",
        "sound.mix.average_level",
        "sound.area.floor.mean",
        "sound.fill.fills.1.meets",
        "sound.subs.subs.40hz.floor",
        "sound.subs.subs.ways.40hz.end_fire_mix",
        "sound.check.fast",
        "sound.neighbour.farm.level",
    ):
        assert now[key].missing == ("the exact width of the mix position",), key


def test_several_that_are_not_known_are_all_named() -> None:
    text = WHOLE.replace("width: 4 m", "width: ?").replace("vertical: 80 deg", "vertical: ?")
    assert known(text)["sound.area.floor.mean"].missing == (
        "the exact width of the mix position",
        "the exact vertical coverage of Small at 500 Hz",
    )


def test_a_coverage_that_nobody_states_keeps_its_meaning() -> None:
    for text in (
        WHOLE.replace(", vertical: 60 deg", ""),
        WHOLE.replace("vertical: 60 deg", "vertical: none"),
    ):
        assert publish(text).section.fields
        assert known(text)["sound.area.floor.mean"].value


def test_a_coverage_that_nothing_leans_on_may_be_unknown() -> None:
    line = WHOLE.replace("{band: 1 kHz, horizontal: 90 deg},", VERTICAL % "about 10 deg" + ",")
    unused = WHOLE.replace("model: Small", "model: Line")
    for text, same in ((line, WHOLE), (unused.replace("vertical: 60 deg", "vertical: ?"), unused)):
        assert text != same
        assert known(text).keys() == known(same).keys()
        assert all(known(text)[key].value == each.value for key, each in known(same).items())


def deep(depth: str) -> str:
    """Two boxes that look straight downstage from 1 m DS, so deep."""
    straight = HANGS.replace("boxes: 3, splay: [2 deg, 4 deg]", "boxes: 2, splay: [0 deg]").replace(
        "down: 5 deg", "down: 0 deg"
    )
    return ROOM.replace("height: 250 mm", f"height: 250 mm\n    depth: {depth}") + straight


def test_boxes_about_so_deep_hang_between_two_ends() -> None:
    # Fronts at 1 m DS; the middle of a box lies half its depth behind: 180 mm to 220 mm. By hand.
    value = figure(deep("about 400 mm"), "hang", "centre_depth").value
    assert value is not None
    assert value.number is None
    assert value.ends == (pytest.approx(-0.82), pytest.approx(-0.78))
    assert value.text == "0.82 m DS to 0.78 m DS"


@pytest.mark.parametrize("depth", ["at least 400 mm", "up to 400 mm", "unknown"])
def test_where_boxes_of_a_depth_with_one_end_hang_is_missing_by_name(depth: str) -> None:
    found = figure(deep(depth), "hang", "centre_depth")
    assert (found.value, found.missing) == (None, ("the depth of a box",))
    written = "not known yet" if depth == "unknown" else depth
    assert written in [each.text for each in found.working.inputs]


@pytest.mark.parametrize(
    ("was", "becomes", "ends"),
    [
        # By hand: 3 boxes of 18 kg to 22 kg and a frame of 10 kg; of 20 kg and 9 kg to 11 kg; both.
        ("", "", (70.0, 70.0)),
        ("weight: 20 kg", "weight: about 20 kg", (64.0, 76.0)),
        ("frame: 10 kg", "frame: 9 to 11 kg", (69.0, 71.0)),
        ("frame: 10 kg", "frame: none", (60.0, 60.0)),
    ],
)
def test_a_hang_weighs_between_the_ends_of_its_parts(
    was: str, becomes: str, ends: tuple[float, float]
) -> None:
    text = (ROOM + HANGS).replace(was, becomes) if was else ROOM + HANGS
    found = figure(text, "hang", "weight")
    assert found.value is not None
    assert found.value.ends == ends
    assert (found.value.number is None) is (ends[0] != ends[1])
    assert "hang-weight-incomplete" not in [each.code for each in publish(text).findings]


@pytest.mark.parametrize("weight", ["at least 20 kg", "up to 20 kg", "unknown"])
def test_a_hang_of_boxes_with_one_end_cannot_be_weighed_and_says_so(weight: str) -> None:
    text = (ROOM + HANGS).replace("weight: 20 kg", f"weight: {weight}")
    found = figure(text, "hang", "weight")
    assert (found.value, found.missing) == (None, ("the weight of a box",))
    assert "hang-weight-incomplete" in [each.code for each in publish(text).findings]


@pytest.mark.parametrize("form", LESS)
def test_a_house_without_loudspeakers_is_asked_for_nothing(form: str) -> None:
    mix = MIXING.replace("width: none", f"width: {form.format('4 m')}")
    assert all(each.missing == () for each in known(mix + FLOOR).values())


@pytest.mark.parametrize("name", ["hangs", "subs", "fills"])
def test_where_nobody_knows_which_loudspeakers_there_are_levels_are_missing(name: str) -> None:
    others = "" if name == "hangs" else HANGS
    described = sound(f"{ROOM}{others}{name}: unknown\n")
    assert list(unplaced_of(described)) == [f"which {name} there are"]
