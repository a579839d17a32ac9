"""What loads come to as a uniform load, against textbook beams and an independent library."""

import pytest
from anastruct import SystemElements
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.loads import Load, PointLoad, UniformLoad
from builder.formulas.spans import as_uniform


@pytest.mark.source(
    "beam diagrams, simple beam, load W over a length a in the middle: M = W (2 L - a) / 8; by hand"
    " from statics: 950 kg over 1 m of 8 m: 1,781.25 kg·m, and W L / 8 = M for 1,781.25 kg"
)
def test_a_short_spread_load_bends_nearly_as_a_point() -> None:
    found = as_uniform([UniformLoad(3.5, 4.5, 950.0)], from_m=0.0, to_m=8.0)
    assert found.moment_kgm == pytest.approx(1781.25)
    assert found.at_m == pytest.approx(4.0)
    assert found.shear_kg == pytest.approx(475.0)
    assert found.uniform_kg == pytest.approx(1781.25)


@pytest.mark.source("beam diagrams, simple beam under a uniform load: M = W L / 8, V = W / 2")
def test_a_uniform_load_is_itself() -> None:
    found = as_uniform([UniformLoad(2.0, 10.0, 100.0)], from_m=2.0, to_m=10.0)
    assert found.by_moment_kg == pytest.approx(800.0)
    assert found.by_shear_kg == pytest.approx(800.0)


@pytest.mark.source("beam diagrams, simple beam, a load at any place: M = P a b / L, V = P b / L")
@pytest.mark.parametrize(("at_m", "times"), [(4.0, 2.0), (2.0, 1.5), (1.0, 1.75), (7.0, 1.75)])
def test_a_point_load_by_moment_in_the_middle_and_by_shear_near_an_end(
    at_m: float, times: float
) -> None:
    found = as_uniform([PointLoad(at_m, 100.0)], from_m=0.0, to_m=8.0)
    assert found.uniform_kg == pytest.approx(100.0 * times)


@pytest.mark.source("statics by hand: what stands on a support or beyond it does not bend the span")
def test_what_is_not_on_the_span_counts_nothing() -> None:
    loads = [PointLoad(0.0, 900.0), PointLoad(9.0, 900.0), UniformLoad(7.0, 9.0, 100.0)]
    found = as_uniform(loads, from_m=0.0, to_m=8.0)
    assert found.shear_kg == pytest.approx(100 * 7.5 / 8)
    assert found.moment_kgm == as_uniform(loads[2:], from_m=0.0, to_m=8.0).moment_kgm


@pytest.mark.law
def test_a_span_without_length_is_refused() -> None:
    with pytest.raises(ValueError, match="to_m must be beyond from_m"):
        as_uniform([], from_m=2.0, to_m=2.0)


loads = st.lists(
    st.one_of(
        st.builds(PointLoad, st.floats(0.5, 7.5), st.floats(10, 900)),
        st.builds(
            lambda from_m, length_m, per_m: UniformLoad(from_m, min(from_m + length_m, 8.0), per_m),
            st.floats(0, 6),
            st.floats(0.5, 6),
            st.floats(10, 300),
        ),
    ),
    min_size=1,
    max_size=4,
)


@pytest.mark.source("anastruct 1.7.0, a beam on two supports in 80 elements, greatest moment")
@settings(max_examples=15, deadline=None)
@given(loads)
def test_moments_are_those_of_an_independent_library(drawn: list[Load]) -> None:
    beam = SystemElements(mesh=3)
    step_m = 0.1
    for index in range(80):
        beam.add_element([[index * step_m, 0], [(index + 1) * step_m, 0]])
    beam.add_support_hinged(1)
    beam.add_support_roll(81, direction=2)
    for node, kg in on_nodes(drawn, step_m).items():
        beam.point_load(node, Fy=-kg)
    beam.solve()
    moments = [abs(each["Mmin"]) for each in beam.get_element_results()]
    moments += [abs(each["Mmax"]) for each in beam.get_element_results()]
    found = as_uniform(drawn, from_m=0.0, to_m=8.0)
    total_kg = sum(load.total_kg for load in drawn)
    # Loads put on nodes 0.1 m apart keep their moments there and miss less than W × 0.1 m between.
    assert max(moments) == pytest.approx(found.moment_kgm, abs=total_kg * step_m)


def on_nodes(drawn: list[Load], step_m: float) -> dict[int, float]:
    """Loads cut into small parts, each on the two nodes beside it by the law of the lever."""
    found: dict[int, float] = {}
    for load in drawn:
        pieces = 200 if isinstance(load, UniformLoad) else 1
        for piece in range(pieces):
            at_m = load.centre_m
            if isinstance(load, UniformLoad):
                at_m = load.from_m + (load.to_m - load.from_m) * (piece + 0.5) / pieces
            node, share = int(at_m / step_m), at_m / step_m % 1
            kg = load.total_kg / pieces
            for number, part in ((node + 1, 1 - share), (node + 2, share)):
                found[number] = found.get(number, 0.0) + kg * part
    return {node: kg for node, kg in found.items() if kg > 0 and node <= 81}
