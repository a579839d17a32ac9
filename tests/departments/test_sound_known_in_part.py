"""
Sizes and coverage that are known in part, or unknown: what leans on them is missing and names them,
and nothing takes what an absent key means.
"""

import pytest

from builder.pack import Figure, Section
from tests.departments.sounding import FILL, FLOOR, HANGS, MIXING, MODELS, ROOM, SUBS, figure
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
    + MIXING.replace("ears:", SIZES)
    + FLOOR
    + HANGS
    + SUBS % ""
    + (FILL % "").replace("model: Line", "model: Small")
    + NEIGHBOUR
)


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


def test_a_size_or_a_coverage_that_nobody_states_keeps_its_meaning() -> None:
    for text in (
        WHOLE.replace("width: 4 m, ", ""),
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


@pytest.mark.parametrize("form", LESS)
def test_where_boxes_of_inexact_depth_hang_is_missing_by_name(form: str) -> None:
    deep = ROOM.replace("height: 250 mm", f"height: 250 mm\n    depth: {form.format('400 mm')}")
    found = figure(deep + HANGS, "hang", "centre_depth")
    assert (found.value, found.missing) == (None, ("the exact depth of a box",))
    written = "not known yet" if form == "unknown" else form.format("400 mm")
    assert written in [each.text for each in found.working.inputs]


@pytest.mark.parametrize("form", LESS)
def test_a_house_without_loudspeakers_is_asked_for_nothing(form: str) -> None:
    mix = MIXING.replace("ears:", f"width: {form.format('4 m')}, ears:")
    assert all(each.missing == () for each in known(mix + FLOOR).values())
