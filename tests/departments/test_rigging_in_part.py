"""
Weights and limits that are known in part or not at all: what is left is then left at most.

Shares are by hand statics: a uniform load on two supports at its ends puts half on each.
"""

import pytest

from builder.department import Surroundings
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.publish import publish
from builder.exchange import HungLoad, Offers
from builder.pack import Section, Value
from builder.reading.reader import read
from tests.departments.rigged import AGEING, BEAM, LIMITS, figure, found, hang, points

PAIR = BEAM + points(0, 20)
LIGHTS = "{what: Lights, by: lighting, weight: 400 kg}"


def truss(own: str, loads: str = LIGHTS, limits: str = LIMITS) -> str:
    """Two points at 0 m and 20 m with a truss of 20 m between them."""
    return limits + PAIR + hang(1, 2, loads=loads, more=f", weight: {own}")


def told(text: str, kind: str, name: str, key: str, *loads: HungLoad) -> Value:
    """The value of a figure."""
    value = figure(text, kind, name, key, *loads).value
    assert value is not None
    return value


@pytest.mark.source("by hand: 400 kg and 10 kg/m x 20 m on two points is 300 kg on each")
def test_an_exact_weight_gives_one_number() -> None:
    text = truss("10 kg/m")
    assert told(text, "point", "P1", "carried").number == pytest.approx(300.0)
    assert told(text, "point", "P1", "left").number == pytest.approx(700.0)


@pytest.mark.source("by hand: 200 to 400 kg of truss and 400 kg of lights: 300 to 400 kg on each")
def test_a_weight_between_two_ends_gives_both() -> None:
    text = truss("10 to 20 kg/m")
    assert told(text, "point", "P1", "carried").ends == pytest.approx((300.0, 400.0))
    assert told(text, "point", "P1", "left").ends == pytest.approx((600.0, 700.0))
    assert told(text, "point", "P1", "left").text == "600 kg to 700 kg"
    assert told(text, "beam", "B1", "carried").ends == pytest.approx((600.0, 800.0))
    assert told(text, "beam", "B1", "left").ends == pytest.approx((2200.0, 2400.0))
    assert told(text, "roof", "", "left").ends == pytest.approx((8200.0, 8400.0))
    assert told(text, "by", "house", "weight").ends == pytest.approx((200.0, 400.0))


@pytest.mark.source("by hand: 400 kg of lights alone put 200 kg on each of two points")
@pytest.mark.parametrize("own", ["unknown", "at least 0.001 kg/m"])
def test_a_weight_that_nobody_knows_counts_as_the_rest_at_least(own: str) -> None:
    text = truss(own)
    carried, left = (told(text, "point", "P1", key) for key in ("carried", "left"))
    assert carried.ends == (pytest.approx(200.0, abs=0.02), None)
    assert left.ends == (None, pytest.approx(800.0, abs=0.02))
    assert left.text == "at most 800 kg"
    assert told(text, "beam", "B1", "left").ends == (None, pytest.approx(2600.0, abs=0.03))


def test_a_truss_whose_weight_nobody_states_weighs_something() -> None:
    stated = truss("none")
    silent = stated.replace(", weight: none", "")
    assert told(stated, "point", "P1", "left").number == pytest.approx(800.0)
    assert told(silent, "point", "P1", "left").ends == (None, pytest.approx(800.0))


def test_an_unknown_weight_leaves_its_neighbours_less_than_their_limits() -> None:
    text = LIMITS + BEAM + points(0, 20, 10) + hang(1, 2, loads="", more=", weight: unknown")
    assert told(text, "point", "P3", "left").ends == (None, 1000.0)
    assert told(text, "point", "P3", "left").text == "at most 1,000 kg"
    assert figure(text, "point", "P1", "left").missing == ("what it carries",)


def test_a_box_of_unknown_weight_counts_as_at_least_nothing() -> None:
    box = HungLoad("sound", "4 boxes", "Truss", 0.0, more_kg=None, at_m=10.0)
    assert told(truss("none"), "point", "P1", "left", box).ends == (None, pytest.approx(800.0))
    known = HungLoad("sound", "4 boxes", "Truss", 100.0, more_kg=50.0, at_m=10.0)
    assert told(truss("none"), "point", "P1", "left", known).ends == pytest.approx((725.0, 750.0))


def test_what_hangs_nobody_knows_where_leaves_nothing_for_certain() -> None:
    adrift = HungLoad("sound", "4 boxes", "", 100.0)
    text = truss("none")
    assert told(text, "point", "P1", "left", adrift).ends == (None, pytest.approx(800.0))
    assert told(text, "roof", "", "left", adrift).ends == (None, pytest.approx(8600.0))


def test_a_load_at_an_unknown_place_along_a_hang_leaves_its_shares_open() -> None:
    box = HungLoad("sound", "4 boxes", "Truss", 100.0, at_m=10.0, placed=False)
    deep = truss("none").replace("20.0 m SL, depth: 0 m", "20.0 m SL, depth: 1 m US")
    share = figure(deep, "point", "P1", "carried", box)
    assert share.value is None
    assert share.missing == ("where along it 4 boxes hangs",)


@pytest.mark.parametrize("limit", ["unknown", ""])
def test_a_limit_that_nobody_tells_leaves_at_most(limit: str) -> None:
    each_beam = f"each_beam: {limit}, " if limit else ""
    text = truss("none", limits=f"limits: {{whole_roof: 9 t, {each_beam}each_point: 1000 kg}}\n")
    assert told(text, "point", "P1", "left").ends == (None, pytest.approx(800.0))
    without = text.replace(each_beam, "").replace("whole_roof", "each_beam: none, whole_roof")
    assert told(without, "point", "P1", "left").number == pytest.approx(800.0)


@pytest.mark.source("by hand: 500 to 600 kg of limit less 400 kg is 100 to 200 kg")
def test_a_limit_between_two_ends_gives_both() -> None:
    limits = "limits: {whole_roof: 9 t, each_beam: 500 to 600 kg, each_point: 1000 kg}\n"
    text = truss("none", limits=limits)
    assert told(text, "beam", "B1", "limit").ends == (500.0, 600.0)
    assert told(text, "beam", "B1", "left").ends == pytest.approx((100.0, 200.0))
    assert told(text, "point", "P1", "left").ends == pytest.approx((100.0, 200.0))


def test_the_working_tells_both_ends() -> None:
    steps = figure(truss("10 to 20 kg/m"), "point", "P1", "carried").working.steps
    assert steps[0] == "At the lightest:"
    assert "At the heaviest:" in steps


def test_hoists_that_do_not_work_are_not_left() -> None:
    stock = (
        "hoists: [{name: Hollin 500, count: 4, rating: 500 kg, weight: 30 kg, headroom: 0.5 m%s}]\n"
    )
    text = truss("none").replace("{point: P1}", "{point: P1, hoist: Hollin 500}")
    assert told(text + stock % "", "hoist", "Hollin 500", "free").number == 3.0
    out = stock % ", condition: out of service, note: At the inspector's."
    assert told(text + out, "hoist", "Hollin 500", "free").number == 0.0


@pytest.mark.source(
    "by hand: 400 to 1,000 kg of truss and 1,400 kg of lights: 900 to 1,200 kg each"
)
def test_what_may_pass_a_limit_is_told_at_the_heaviest() -> None:
    lights = "{what: Lights, by: lighting, weight: 1400 kg}"
    passed = found(truss("20 to 50 kg/m", lights), "limit-passed")
    assert [finding.sentence[:40] for finding in passed] == [
        "At the heaviest: P1 carries 1,200 kg of ",
        "At the heaviest: P2 carries 1,200 kg of ",
    ]
    near = found(truss("20 to 50 kg/m", lights), "limit-near")
    assert near == []


@pytest.mark.source(
    "by hand: half of 2,200 kg of lights alone is 1,100 kg of 1,000 kg on each point"
)
def test_what_passes_a_limit_without_the_unknown_is_told_too() -> None:
    lights = "{what: Lights, by: lighting, weight: 2200 kg}"
    passed = found(truss("unknown", lights), "limit-passed")
    assert passed[0].sentence.startswith("At the lightest: P1 carries 1,100 kg of 1,000 kg")
    between = found(truss("5 to 6 kg/m", lights), "limit-passed")
    assert between[0].sentence.startswith("P1 carries 1,160 kg of 1,000 kg")


@pytest.mark.parametrize("hangs", ["", "hangs: unknown\n"])
def test_where_nobody_says_what_hangs_nothing_is_left_for_certain(hangs: str) -> None:
    stock = "hoists: [{name: H, count: 4, rating: 1 t, weight: 50 kg, headroom: 0.6 m}]\n"
    venue = LIMITS + PAIR + stock
    bare = section_of(f"{venue}hangs: none\n")
    open_ = section_of(venue + hangs)
    assert value_in(bare, "point", "P1", "carried") == (0.0, 0.0)
    assert value_in(bare, "point", "P1", "left") == (1000.0, 1000.0)
    assert value_in(bare, "roof", "", "left") == (9000.0, 9000.0)
    assert value_in(bare, "hoist", "H", "free") == (4.0, 4.0)
    assert value_in(open_, "point", "P1", "left") == (None, 1000.0)
    assert value_in(open_, "beam", "B1", "left") == (None, 3000.0)
    assert value_in(open_, "roof", "", "left") == (None, 9000.0)
    assert value_in(open_, "hoist", "H", "free") == (None, 4.0)
    for kind in ("point", "beam", "roof"):
        carried = open_.item(kind).figure("carried")  # type: ignore[union-attr]  # it is there
        assert carried is not None
        assert carried.missing == ("what hangs in the house",)


def section_of(text: str) -> Section:
    """The section that a text publishes, as it is written."""
    around = Surroundings(Offers(), AGEING, "metric")
    return publish(read(text, file="rigging.yml", kind=Rigging), around).section


def value_in(section: Section, kind: str, name: str, key: str) -> tuple[float | None, float | None]:
    """The ends of a figure of a section."""
    item = section.item(kind, name)
    assert item is not None
    figure_ = item.figure(key)
    assert figure_ is not None
    assert figure_.value is not None
    return figure_.value.ends
