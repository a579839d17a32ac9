"""Loads as what feeds their transformer sees them, and what is free behind one."""

import cmath
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.circuits import Node, standing
from builder.formulas.phasors import (
    PHASES,
    SPLIT_PHASE_ANGLES_DEG,
    THREE_PHASE_ANGLES_DEG,
    line_currents,
    summed_currents,
)
from builder.formulas.windings import Load, Winding, free_behind, seen_before

SPLIT = ("L1", "L2")
EVEN_208_BEHIND_480 = 208 / 480


def on(phases: tuple[str, ...], current_a: float, power_factor: float = 1.0, **more: bool) -> Load:
    """A load on a node of a three-phase or, by ``split``, a split-phase system."""
    angles = SPLIT_PHASE_ANGLES_DEG if more.get("split") else THREE_PHASE_ANGLES_DEG
    currents = line_currents(
        phases=phases, current_a=current_a, power_factor=power_factor, angles_deg=angles
    )
    return Load("a load", "T", currents, power_factor=power_factor)


def before_split(*loads: Load) -> tuple[float, ...]:
    """What the source of a 480 V to 120/240 V transformer carries on each line."""
    seen = [seen_before(load, winding="two lines", ratio=240 / 480, phases=SPLIT) for load in loads]
    return tuple(abs(current) for current in summed_currents([load.currents for load in seen]))


@pytest.mark.source(
    "OpenDSS 0.14.5 by opendssdirect.py 0.9.4: centre-tapped transformer of 480 V between L1 and L2"
    " to 120/240 V; 160 A on both lines at power factor 1; 160 A on one; 100 A at 0.8 and 60 A at 1"
)
@pytest.mark.parametrize(
    ("loads", "primary_a"),
    [
        ((("L1", 160, 1.0), ("L2", 160, 1.0)), 80.0),
        ((("L1", 160, 1.0),), 40.0),
        ((("L1", 100, 0.8), ("L2", 60, 1.0)), 38.079),
    ],
)
def test_a_split_phase_secondary_loads_both_lines_of_its_primary(
    loads: tuple[tuple[str, float, float], ...], primary_a: float
) -> None:
    found = before_split(*(on((line,), a, factor, split=True) for line, a, factor in loads))
    assert found == pytest.approx((primary_a, primary_a, 0.0), abs=0.0005)


@pytest.mark.source(
    "OpenDSS 0.14.5 by opendssdirect.py 0.9.4: delta of 480 V to star of 120/208 V, both ways round"
    " (Dyn1 and Dyn11): the larger of both on each line; for one line, before a star winding"
    " 43.33 A stay on it"
)
@pytest.mark.parametrize(
    ("phases", "current_a", "by_group_a"),
    [
        (("L1",), 100, ((25.018, 25.019, 0.0), (25.019, 0.0, 25.018))),
        (("L1", "L2"), 50, ((12.509, 25.018, 12.509), (25.018, 12.509, 12.509))),
        (PHASES, 100, ((43.333, 43.333, 43.333), (43.333, 43.333, 43.333))),
    ],
)
def test_a_delta_primary_is_never_told_smaller_than_either_group_makes_it(
    phases: tuple[str, ...], current_a: float, by_group_a: tuple[tuple[float, ...], ...]
) -> None:
    seen = seen_before(
        on(phases, current_a), winding="three lines", ratio=EVEN_208_BEHIND_480, phases=PHASES
    )
    star_a = [current_a * EVEN_208_BEHIND_480 if phase in phases else 0.0 for phase in PHASES]
    most = [max(values) for values in zip(star_a, *by_group_a, strict=True)]
    assert seen.sizes == pytest.approx(most, abs=0.002)


@pytest.mark.source("power-grid-model 1.12 (LF Energy), asymmetric power flow, clocks 1 to 11")
@pytest.mark.parametrize("clock", [1, 5, 7, 11])
def test_a_power_flow_library_finds_no_line_of_a_delta_larger(clock: int) -> None:
    pgm = pytest.importorskip("power_grid_model")
    amperes, power_factor = (100.0, 60.0, 10.0), 0.9
    found = primary_by_library(pgm, clock, amperes, power_factor)
    behind = [on((phase,), a, power_factor) for phase, a in zip(PHASES, amperes, strict=True)]
    nodes = [
        Node("S", None, 400),
        Node("T", "S", 400, parent_a_per_a=208 / 480, winding="three lines"),
    ]
    booked = standing(nodes, behind)["S"].booked_a
    assert all(there <= ours + 0.01 for there, ours in zip(found, booked, strict=True))
    # By hand: 100 A × 208 / 480 = 43.33 A; (100 + 60) and (100 + 10) A × 208 / 480 / √3.
    assert booked == pytest.approx((43.333, 40.03, 27.52), abs=0.01)


def primary_by_library(
    pgm: object, clock: int, amperes: tuple[float, ...], power_factor: float
) -> list[float]:
    """Currents that flow into the delta of a nearly ideal transformer. [A]"""
    make = pgm.initialize_array  # type: ignore[attr-defined]
    nodes = make("input", "node", 2)
    nodes["id"], nodes["u_rated"] = (0, 1), (480.0, 208.0)
    trafo = make("input", "transformer", 1)
    values = {
        "id": 2, "from_node": 0, "to_node": 1, "from_status": 1, "to_status": 1, "u1": 480.0,
        "u2": 208.0, "sn": 1e6, "uk": 1e-4, "pk": 1.0, "i0": 0.0, "p0": 0.0, "winding_from": 2,
        "winding_to": 1, "clock": clock, "tap_side": 0, "tap_pos": 0, "tap_min": 0, "tap_max": 0,
        "tap_size": 0.0,
    }  # fmt: skip
    for field, value in values.items():
        trafo[field] = value
    source = make("input", "source", 1)
    source["id"], source["node"], source["status"], source["u_ref"] = 3, 0, 1, 1.0
    source["sk"] = 1e12
    drawn = make("input", "asym_load", 1)
    drawn["id"], drawn["node"], drawn["status"], drawn["type"] = 4, 1, 1, 2
    volt_amperes = [a * 208 / math.sqrt(3) for a in amperes]
    drawn["p_specified"] = [[s * power_factor for s in volt_amperes]]
    drawn["q_specified"] = [[s * math.sqrt(1 - power_factor**2) for s in volt_amperes]]
    model = pgm.PowerGridModel(  # type: ignore[attr-defined]
        {"node": nodes, "transformer": trafo, "source": source, "asym_load": drawn}
    )
    result = model.calculate_power_flow(symmetric=False)
    return [float(a) for a in result["transformer"]["i_from"][0]]


windings = st.sampled_from(["line", "two lines", "three lines"])
angles = st.floats(0, 2 * math.pi)
sizes = st.floats(0, 100)


@pytest.mark.law
@given(st.lists(st.tuples(st.floats(0, 1), angles), min_size=3, max_size=3), st.floats(0.2, 2))
def test_what_is_free_behind_a_delta_holds_at_any_angles(
    shares: list[tuple[float, float]], ratio: float
) -> None:
    source_a = (40.0, 60.0, 90.0)
    free = [
        free_behind(source_a, k, winding="three lines", ratio=ratio, phases=PHASES)[0]
        for k in range(3)
    ]
    drawn = [cmath.rect(share * free[k], angle) for k, (share, angle) in enumerate(shares)]
    for turn in (1, -1):
        primary = [abs(drawn[k] - drawn[(k + turn) % 3]) * ratio / math.sqrt(3) for k in range(3)]
        assert all(a <= b + 1e-9 for a, b in zip(primary, source_a, strict=True))
    assert all(abs(i) * ratio <= a + 1e-9 for i, a in zip(drawn, source_a, strict=True))


@pytest.mark.law
@given(st.tuples(sizes, angles), st.tuples(sizes, angles), st.floats(0.2, 2))
def test_what_is_free_behind_a_winding_between_two_lines_holds_at_any_angles(
    one: tuple[float, float], other: tuple[float, float], ratio: float
) -> None:
    free_a, line = free_behind((40.0, 60.0, 0.0), 1, winding="two lines", ratio=ratio, phases=SPLIT)
    assert line == 0
    first = cmath.rect(min(one[0], free_a), one[1])
    second = cmath.rect(min(other[0], free_a), other[1])
    assert abs(first - second) / 2 * ratio <= 40.0 + 1e-9


@st.composite
def transformed(draw: st.DrawFn) -> tuple[list[Node], list[Load]]:
    """A supply, a transformer, a board below it and one beside it, with loads."""
    winding: Winding = draw(windings)
    wired = SPLIT if winding == "two lines" else PHASES
    nodes = [
        Node("S", None, draw(st.integers(20, 300)), neutral_a=draw(st.none() | st.floats(5, 300))),
        Node(
            "T",
            "S",
            draw(st.integers(20, 300)),
            phases=wired,
            parent_a_per_a=draw(st.floats(0.2, 2)),
            winding=winding,
            neutral_a=draw(st.none() | st.floats(5, 300)),
        ),
        Node("B", "T", draw(st.integers(10, 200)), phases=wired),
        Node("A", "S", draw(st.integers(10, 200)), active_a=draw(st.none() | st.floats(5, 200))),
    ]
    loads = [draw(loads_on(wired)) for _ in range(draw(st.integers(0, 6)))]
    return nodes, loads


@st.composite
def loads_on(draw: st.DrawFn, wired: tuple[str, ...]) -> Load:
    """A load on any node, on some of its lines."""
    node = draw(st.sampled_from(["S", "T", "B", "A"]))
    lines = wired if node in ("T", "B") else PHASES
    phases = tuple(draw(st.lists(st.sampled_from(lines), min_size=1, max_size=3, unique=True)))
    factor, third = draw(st.floats(0.1, 1)), draw(st.floats(0, 20))
    currents = line_currents(phases=phases, current_a=draw(st.floats(0, 60)), power_factor=factor)
    return Load("x", node, currents, (third, 0.0, 0.0), factor)


@pytest.mark.law
@given(transformed(), st.data())
def test_a_further_load_never_raises_what_is_free_behind_or_before_a_transformer(
    case: tuple[list[Node], list[Load]], data: st.DataObject
) -> None:
    nodes, loads = case
    extra = data.draw(loads_on(nodes[1].phases))
    before, after = standing(nodes, loads), standing(nodes, [*loads, extra])
    for name, here in before.items():
        assert all(a <= b + 1e-9 for a, b in zip(after[name].free_a, here.free_a, strict=True))


@pytest.mark.law
def test_a_ratio_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="ratio must be a number above 0, got 0"):
        seen_before(on(("L1",), 1), winding="line", ratio=0, phases=PHASES)
    with pytest.raises(ValueError, match="ratio must be a number above 0, got 0"):
        free_behind((1, 1, 1), 0, winding="line", ratio=0, phases=PHASES)
