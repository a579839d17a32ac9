"""
Figures that a value can turn lie between two ends all the same: they hold what every value between
gives, and no more than a hair beside.
"""

import math
from collections.abc import Iterator, Mapping
from itertools import product

import pytest

from builder.departments.power.circuits.turning import Along, drop_ends, uneven_ends
from builder.formulas.phasor_regions import (
    around_arc,
    convex_hull,
    least_size,
    most_size,
    sum_region,
)
from builder.formulas.phasors import imbalance_percent
from builder.pack import Figure
from builder.pipeline import pack_of, venue_of
from tests.knowing_less import figures_of

HOUSE = """
name: Hall
town: Town
what: unknown
setting: indoors
language: 2
revision: {number: "1", on: 2026-06-01, by: crew}
"""
LINES = """
continuous_share: 100 %
USUAL
voltage_drop_limits: {to_the_load: 9 %}
supplies: [{name: Intake, system: 230/400 V three phase, rating: 400 A}]
services:
  - {name: Switch, fed_from: Intake, system: 230/400 V three phase, rating: 125 A, breaker: 125 A,
     neutral_rating: 125 A, feeder: {length: LONG, conductor: SIZE}}
boards:
  - {name: Board, fed_from: Switch, system: 230/400 V three phase, rating: 63 A,
     feeder: {length: 20 m, conductor: 16 mm2}}
standing_loads:
  - {what: One, on: Board, phases: L1, draws: FIRST, power_factor: ANGLE, third_harmonic: THIRD}
  - {what: Two, on: Board, phases: L2, draws: SECOND, power_factor: BENT}
  - {what: Three, on: Switch, phases: L3, draws: 8 A, power_factor: 0.85}
  - {what: All, on: Switch, phases: all, draws: 12 kW, power_factor: OTHER}
"""
USUAL = {
    "USUAL": "usual_power_factor: 0.9",
    "LONG": "46 m",
    "SIZE": "50 mm2",
    "FIRST": "3 kW",
    "ANGLE": "0.95",
    "THIRD": "10 %",
    "SECOND": "14 A",
    "BENT": "0.9",
    "OTHER": "0.95",
}
TURNED = (
    "neutral-current",
    "neutral-left",
    "neutral-binds",
    "imbalance",
    "drop",
    "drop-total",
    "drop-alone",
    "drop-left",
)


def figures(**written: str) -> Mapping[str, Figure]:
    """The figures of a small house with some values written otherwise."""
    text = LINES
    for name, words in {**USUAL, **written}.items():
        text = text.replace(name, words)
    return figures_of(pack_of(venue_of({"house.yml": HOUSE, "power.yml": text})))


def steps(least: float, most: float, count: int) -> list[float]:
    """Numbers from one end to the other."""
    return [least + (most - least) * step / (count - 1) for step in range(count)]


CASES: dict[str, dict[str, tuple[str, float, float]]] = {
    "a draw in kW": {"FIRST": ("{:.9g} kW", 1.0, 6.0)},
    "a draw in ampere that empties a neutral": {"SECOND": ("{:.9g} A", 2.0, 30.0)},
    "a power factor of a power": {"ANGLE": ("{:.9g}", 0.6, 1.0)},
    "a third harmonic": {"THIRD": ("{:.9g} %", 0.0, 33.0)},
    "the house's power factor": {"USUAL": ("usual_power_factor: {:.9g}", 0.5, 1.0)},
    "how long a feeder is, at a power factor that is open": {
        "LONG": ("{:.9g} m", 30.0, 60.0),
        "USUAL": ("usual_power_factor: {:.9g}", 0.7, 1.0),
    },
    "two draws": {"FIRST": ("{:.9g} kW", 1.0, 4.0), "SECOND": ("{:.9g} A", 5.0, 20.0)},
    "a draw and its power factor": {
        "FIRST": ("{:.9g} kW", 1.0, 4.0),
        "ANGLE": ("{:.9g}", 0.7, 1.0),
    },
    "a power factor of a current": {"BENT": ("{:.9g}", 0.5, 1.0)},
}
"""Values that are open, each with how it is written and both ends."""


def swept(case: str, count: int) -> Iterator[Mapping[str, Figure]]:
    """The figures at every value between, in steps."""
    values = CASES[case]
    for numbers in product(*(steps(low, high, count) for _, low, high in values.values())):
        pairs = zip(values.items(), numbers, strict=True)
        yield figures(**{name: form.format(number) for (name, (form, _, _)), number in pairs})


@pytest.mark.parametrize("case", CASES)
def test_a_turned_figure_holds_every_value_between_its_ends(case: str) -> None:
    values = CASES[case]
    words = {
        name: f"{form.format(low)} to {form.split(': ')[-1].format(high)}"
        for name, (form, low, high) in values.items()
    }
    now = figures(**words)
    sweep = list(swept(case, 41 if len(values) == 1 else 9))
    told = 0
    for key in now:
        if key.rpartition(".")[2] not in TURNED:
            continue
        numbers = [found[key].value.number for found in sweep if found[key].value]  # type: ignore[union-attr]
        exact = [number for number in numbers if number is not None]
        value = now[key].value
        if len(exact) < len(sweep) or max(exact) - min(exact) < 1e-9:
            continue
        assert value is not None, key
        least, most = value.ends
        assert least is not None, key
        assert most is not None, key
        hair = 1e-9 * max(1.0, abs(most))
        assert least <= min(exact) + hair, key
        assert most >= max(exact) - hair, key
        if len(values) == 1 and not key.endswith("binds"):
            # The sweep has steps and may miss the very end; an arc is held by the region around it.
            assert min(exact) - least <= 0.02 * max(exact), key
            assert most - max(exact) <= 0.02 * max(exact), key
        told += 1
    assert told > 0


def neutral(draws: str) -> tuple[float | None, float | None]:
    """The current of a neutral with 10 A on two lines and a third load on the other."""
    loads = [f"{{what: {line}, on: Intake, phases: {line}, draws: 10 A}}" for line in ("L1", "L2")]
    third = f"{{what: L3, on: Intake, phases: L3, draws: {draws}}}"
    text = (
        "continuous_share: 100 %\nusual_power_factor: 0.9\n"
        "supplies: [{name: Intake, system: 230/400 V three phase, rating: 63 A}]\n"
        f"standing_loads: [{', '.join(loads)}, {third}]"
    )
    pack = pack_of(venue_of({"house.yml": HOUSE, "power.yml": text}))
    value = figures_of(pack)["power.supply.intake.neutral-current"].value
    assert value is not None
    return value.ends


def test_a_load_that_empties_a_neutral_is_told_between_its_ends_by_hand() -> None:
    # Nilsson and Riedel, ch. 11: with 10 A on two lines and x on the third, all at one angle, the
    # neutral carries |x - 10 A|: 5 A at 5 A and at 15 A, nothing between at 10 A.
    assert neutral("5 to 15 A") == pytest.approx((0.0, 5.0), abs=1e-6)
    assert neutral("12 to 15 A") == pytest.approx((2.0, 5.0))
    assert neutral("2 to 4 A") == pytest.approx((6.0, 8.0))


def test_a_region_of_phasors_has_its_nearest_and_farthest_by_hand() -> None:
    square = [1 + 1j, 3 + 1j, 3 + 3j, 1 + 3j, 2 + 2j]
    assert len(convex_hull(square)) == 4
    assert least_size(convex_hull(square)) == pytest.approx(math.sqrt(2))
    assert most_size(convex_hull(square)) == pytest.approx(math.sqrt(18))
    assert least_size(convex_hull([-1 + 1j, 1 + 1j])) == pytest.approx(1.0)
    assert least_size(convex_hull([-1 - 1j, 1 - 1j, 1j])) == 0.0
    assert least_size([2 + 0j]) == 2.0
    both = sum_region([[1 + 0j, 2 + 0j], [1j, 2j]])
    assert least_size(both) == pytest.approx(math.sqrt(2))
    assert most_size(both) == pytest.approx(math.sqrt(8))


def test_points_around_an_arc_hold_it() -> None:
    ends = [10 + 0j, 10 * complex(math.cos(-0.9), math.sin(-0.9))]
    hull = convex_hull(around_arc(ends))
    for step in steps(-0.899, -0.001, 50):
        on_arc = 10 * complex(math.cos(step), math.sin(step))
        # A point is held where adding it changes no corner.
        assert {*convex_hull([*hull, on_arc])} == {*hull}
    assert most_size(hull) <= 10.02


def test_how_uneven_phases_are_between_two_sizes_each() -> None:
    sizes = [(4.0, 6.0), (8.0, 9.0), (2.0, 3.0)]
    grid = product(*(steps(low, high, 21) for low, high in sizes))
    exact = [imbalance_percent(each) for each in grid]
    least, most = uneven_ends(sizes)
    assert least == pytest.approx(min(exact), rel=0.01)
    assert least <= min(exact)
    assert most == pytest.approx(max(exact))
    assert uneven_ends([(4.0, 6.0), (5.0, 9.0), (2.0, 5.5)])[0] == 0.0
    assert uneven_ends([(4.0, 6.0), (8.0, 9.0)]) == pytest.approx((100 / 7, 500 / 13))


def test_a_drop_is_largest_where_the_load_lies_as_the_feeder_does() -> None:
    # R cos(phi) + X sin(phi) is at most the size of the impedance: 3, 4 and 5.
    assert drop_ends([Along(3.0, 4.0, 0.2), Along(3.0, 4.0, 1.0)])[1] == pytest.approx(5.0)
    assert drop_ends([Along(3.0, 4.0, 0.8), Along(3.0, 4.0, 1.0)]) == pytest.approx((3.0, 4.8))


EVEN = """
continuous_share: 100 %
supplies: [{name: Intake, system: 230/400 V three phase, rating: 400 A}]
services:
  - {name: Switch, fed_from: Intake, system: 230/400 V three phase, rating: 125 A, breaker: 125 A}
standing_loads:
  - {what: Fans, on: Switch, phases: all, draws: 10 to 20 kW, power_factor: 0.8 to 0.95}
  - {what: Pump, on: Switch, phases: all, draws: 20 to 40 A, power_factor: 0.9}
"""


@pytest.mark.source("by hand: loads that are the same on three lines stay so, whatever they draw")
def test_even_loads_of_unknown_size_are_even_together() -> None:
    pack = pack_of(venue_of({"house.yml": HOUSE, "power.yml": EVEN}))
    uneven = figures_of(pack)["power.service.switch.imbalance"].value
    assert uneven is not None
    assert uneven.ends == (0.0, 0.0)
    one = EVEN.replace("phases: all, draws: 20 to 40 A", "phases: L1, draws: 20 to 40 A")
    pack = pack_of(venue_of({"house.yml": HOUSE, "power.yml": one}))
    uneven = figures_of(pack)["power.service.switch.imbalance"].value
    assert uneven is not None
    # 10 kW at 0.95 are 15.2 A on each line; 40 A on one beside them is 93 % off the mean, and more
    # at another angle.
    assert (uneven.ends[1] or 0.0) >= 0.93


STAGE = """
datum: {centre_line: A stud., reference_line: The deck's edge.}
decks: unknown
places:
  - {name: Left, at: {across: 2 m SL, depth: 1 m US, height: 0 m}}
  - {name: Right, at: {across: 2 m SR, depth: 1 m US, height: 0 m}}
"""
PLACES = """
continuous_share: 100 %
supplies: [{name: Intake, system: 230/400 V three phase, rating: 400 A}]
services:
  - {name: Switch, fed_from: Intake, system: 230/400 V three phase, rating: 125 A, breaker: 125 A}
outlets:
  - {place: Left, connector: Sixteen, count: 9, rating: 16 A, phases: WHERE, fed_from: Switch}
  - {place: Right, connector: Sixteen, count: 9, rating: RATING, phases: L1, fed_from: Switch}
"""


def full_at_once(rating: str, phase: str = "L1") -> dict[str, tuple[float | None, float | None]]:
    """How many outlets can be loaded fully at the same time: left, right and in all."""
    text = PLACES.replace("RATING", rating).replace("WHERE", phase)
    pack = pack_of(venue_of({"house.yml": HOUSE, "stage.yml": STAGE, "power.yml": text}))
    return {
        key: figure.value.ends
        for key, figure in figures_of(pack).items()
        if key.endswith("at-once") and figure.value
    }


@pytest.mark.parametrize("phase", ["L1", "L2"])
def test_a_choice_of_outlets_that_a_rating_decides_is_told_between_its_ends(phase: str) -> None:
    told = full_at_once("about 16 A", phase)
    assert len(told) == 3
    for ampere in steps(14.4, 17.6, 5):
        exact = full_at_once(f"{ampere:.9g} A", phase)
        for key, (low, high) in told.items():
            number, _ = exact[key]
            assert number is not None
            assert low is None or low <= number, (key, ampere)
            assert high is None or number <= high, (key, ampere)


def test_a_place_on_a_phase_of_its_own_holds_nearly_what_it_holds_whatever_others_may() -> None:
    # By hand: 125 A hold seven of 16 A on L2; on L1 eight of 14.4 A or seven of 17.6 A, so that the
    # house holds fourteen at least and eight without the place.
    left, right, whole = full_at_once("about 16 A", "L2").values()
    assert left == (6, 7)
    assert right[1] == 8
    assert whole == (14, 15)
