"""Laws that hold for every stage plot and every stage."""

from hypothesis import given
from hypothesis import strategies as st

from tests.fit.plot_pairs import box
from tests.fit.sample import Record, item, value
from tests.fit.stages import piece, stage, word

halves = st.integers(-18, 18).map(lambda step: step / 2)
depths = st.integers(-2, 22).map(lambda step: step / 2)
pieces = st.builds(
    lambda x, y, w, d, t, h: piece(at=(x, y), size=(w, d), turned_deg=t, height_m=h),
    halves,
    depths,
    st.floats(0.2, 6),
    st.floats(0.2, 6),
    st.sampled_from([0.0, 90.0, 30.0, -45.0]),
    st.sampled_from([None, 2.0, 7.0]),
)
plots = st.lists(pieces, min_size=1, max_size=4).map(
    lambda found: [{**each, "name": f"R{index}"} for index, each in enumerate(found)]
)
columns = st.lists(st.tuples(halves, depths), max_size=2).map(
    lambda found: [
        (item("obstruction", f"Column {index}"), box(x, x + 0.4, y, y + 0.4))
        for index, (x, y) in enumerate(found)
    ]
)
WING = (
    item("wing", "stage left", level_with_deck=value("yes"), clear_height=value("4 m", 4.0)),
    box(8.0, 12.0, 0.0, 6.0),
)
Parts = list[tuple[Record, list[list[float]]]]


def fits(found: str) -> bool:
    """Whether a word is a fit."""
    return found.startswith("fits")


def smaller(each: Record, share: float) -> Record:
    """A rectangle about the same centre."""
    return {**each, "width_m": each["width_m"] * share, "depth_m": each["depth_m"] * share}


@given(plots, columns, st.floats(0.3, 1), st.data())
def test_a_smaller_rectangle_never_turns_a_fit_into_a_short(
    asked: list[Record], more: Parts, share: float, data: st.DataObject
) -> None:
    if fits(word(stage(*more, WING), *asked)):
        index = data.draw(st.integers(0, len(asked) - 1))
        less = [smaller(each, share) if at == index else each for at, each in enumerate(asked)]
        assert word(stage(*more, WING), *less) != "short"


@given(plots, columns, st.floats(0, 3), st.floats(0, 3))
def test_a_larger_deck_never_turns_a_fit_into_a_short(
    asked: list[Record], more: Parts, wider_m: float, deeper_m: float
) -> None:
    if fits(word(stage(*more, WING), *asked)):
        larger = box(-8.0 - wider_m, 8.0 + wider_m, -deeper_m, 10.0 + deeper_m)
        assert word(stage(*more, WING, deck=larger), *asked) != "short"


@given(plots, columns)
def test_less_in_the_way_and_fewer_rectangles_never_turn_a_fit_into_a_short(
    asked: list[Record], more: Parts
) -> None:
    if fits(word(stage(*more), *asked)):
        assert fits(word(stage(*more[1:]), *asked))
        assert len(asked) == 1 or fits(word(stage(*more), *asked[1:]))


@given(plots, columns)
def test_mirrored_stage_and_plot_are_judged_alike(asked: list[Record], more: Parts) -> None:
    other = [
        {**each, "across_m": -each["across_m"], "turned_deg": -each["turned_deg"]} for each in asked
    ]
    mirrored = [(each, [[-x, y] for x, y in corners]) for each, corners in more]
    assert word(stage(*more), *asked) == word(stage(*mirrored), *other)


@given(plots, st.sampled_from(["unknown", "not stated"]), st.floats(1, 9000))
def test_what_nobody_knows_of_the_floor_never_fits_and_alone_never_is_short(
    asked: list[Record], standing: str, weight_kg: float
) -> None:
    unknown = stage(load=value(standing=standing))
    heavy = [{**each, "weight_kg": weight_kg} for each in asked]
    light = word(stage(), *asked)
    assert not fits(word(unknown, *heavy))
    assert (word(unknown, *heavy) == "short") == (light == "short")


@given(plots)
def test_a_stage_that_nobody_drew_is_asked(asked: list[Record]) -> None:
    pack = stage()
    pack["sections"][0]["outlines"] = []
    assert word(pack, *asked) == "ask"


@given(plots, st.floats(1, 9000), st.floats(0, 1))
def test_a_lighter_rectangle_never_turns_a_fit_into_a_short(
    asked: list[Record], weight_kg: float, share: float
) -> None:
    if fits(word(stage(), *({**each, "weight_kg": weight_kg} for each in asked))):
        assert fits(word(stage(), *({**each, "weight_kg": weight_kg * share} for each in asked)))
