"""A value of which only ends are known: it fits where both do, is short where neither can."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.fit.interpreter import fit
from builder.fit.needs.amounts import against_number, against_value
from tests.fit.sample import RULES, Record, asks, item, pack, rider, value

EVEN = st.integers(0, 40).map(lambda eighths: eighths / 4)


def width(least: float | None, most: float | None) -> Record:
    """A stage width of which the ends are known, in metres."""
    return value(f"{least} to {most} m", None, least=least, most=most)


def word(wish: Record, least: float | None, most: float | None) -> str:
    """The verdict on one wish for a stage of such a width."""
    deck = item("deck", "Deck", usable_width=width(least, most))
    return str(fit(pack(stage=[deck]), [rider(wish)])["verdicts"][0]["verdict"])


@pytest.mark.parametrize(
    ("least", "most", "verdict"),
    [
        (12.0, 15.0, "fits"),
        (11.0, 15.0, "ask"),
        (9.0, 11.0, "short"),
        (12.0, None, "fits"),
        (11.0, None, "ask"),
        (None, 11.0, "short"),
        (None, 15.0, "ask"),
    ],
)
def test_at_least_so_much_is_judged_by_the_far_end(
    least: float | None, most: float | None, verdict: str
) -> None:
    assert word(asks("stage width", low=12.0), least, most) == verdict


@pytest.mark.parametrize(
    ("least", "most", "verdict"),
    [(9.0, 12.0, "fits"), (9.0, 15.0, "ask"), (13.0, 15.0, "short"), (None, 12.0, "fits")],
)
def test_at_most_so_much_is_judged_by_the_other_end(
    least: float | None, most: float | None, verdict: str
) -> None:
    assert word(asks("stage width", "at most", high=12.0), least, most) == verdict


@pytest.mark.parametrize(
    ("least", "most", "verdict"),
    [
        (10.0, 12.0, "fits"),
        (9.0, 11.0, "ask"),
        (11.0, 13.0, "ask"),
        (8.0, 14.0, "ask"),
        (6.0, 9.0, "short"),
        (13.0, 15.0, "short"),
        (10.0, None, "ask"),
    ],
)
def test_ends_that_fail_on_opposite_sides_are_asked(
    least: float | None, most: float | None, verdict: str
) -> None:
    assert word(asks("stage width", "between", low=10.0, high=12.0), least, most) == verdict


@given(st.sampled_from(["at least", "at most", "between"]), EVEN, EVEN, EVEN, st.integers(0, 40))
def test_a_verdict_by_ends_is_that_of_every_number_between_them(
    way: str, low: float, wide: float, least: float, quarters: int
) -> None:
    rule = next(each for each in RULES if each["key"] == "stage width")
    wish = asks("stage width", way, low=low, high=low + wide)
    swept = {
        against_number(wish, rule, least + step / 4)["verdict"]["verdict"]
        for step in range(quarters + 1)
    }
    swept = {"fits" if each.startswith("fits") else each for each in swept}
    answer = against_value(wish, rule, width(least, least + quarters / 4))
    found = answer["verdict"]["verdict"] if answer else "ask"
    one_sided = way != "between" or quarters / 4 <= wide
    if swept == {"fits"} or (swept == {"short"} and one_sided):
        assert {found} == swept
    assert found in swept or found == "ask"


@pytest.mark.parametrize(("wanted", "verdict", "margin"), [(5, "ask", ""), (6, "short", "−1")])
def test_a_sum_is_short_by_what_lacks_at_the_most_of_it(
    wanted: int, verdict: str, margin: str
) -> None:
    hoists = item("hoist", "Half ton", free=value("3 to 5", least=3.0, most=5.0))
    needs = rider(asks("house hoists", low=float(wanted)))
    answer = fit(pack(rigging=[hoists]), [needs])["verdicts"][0]
    assert (answer["verdict"], answer["margin"][0]) == (verdict, margin)


@pytest.mark.parametrize(
    ("ends", "verdict"), [((200.0, 300.0), "fits"), ((200.0, None), "fits"), ((None, 300.0), "ask")]
)
def test_a_point_counts_where_it_is_known_what_it_carries_at_least(
    ends: tuple[float | None, float | None], verdict: str
) -> None:
    point = item("point", "P1", limit=value("in part", least=ends[0], most=ends[1]))
    needs = rider(asks("points", low=1.0))
    assert fit(pack(rigging=[point]), [needs])["verdicts"][0]["verdict"] == verdict
