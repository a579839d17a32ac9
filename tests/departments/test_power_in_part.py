"""
What is known of power in part, or not at all: a figure then has ends that hold by hand, or names
what is missing. Never another exact number.
"""

import math

import pytest

from builder.pack import Value
from tests.departments.powered import INTAKE, SWITCH, figure, found, item, number

SHORT = "services: [{name: Switch, fed_from: Intake, system: 230/400 V three phase, rating: 125 A"
FEEDER = ", breaker: 125 A, feeder: {length: 46 m, conductor: 50 mm2}}]\nusual_power_factor: 0.95\n"
LOST = math.sqrt(3) * 125 * 0.046 * (0.45 * 0.95 + 0.08 * math.sqrt(1 - 0.95**2)) / 400
"""By hand, formula of IEC 60364-5-52 annex G: √3 I L (R cos φ + X sin φ) on 400 V."""
LIMIT = "voltage_drop_limits: {{to_the_load: {}}}\n"
MACHINE = (
    "generators: [{{name: Set, system: 230/400 V three phase, breaker: 400 A, {},"
    " altitude_derating: none, temperature_derating: none}}]\n"
)


def value(text: str, kind: str, name: str) -> Value:
    """The value of a figure that is told."""
    found = figure(text, kind, name).value
    assert found is not None
    return found


def ends(text: str, kind: str, name: str) -> tuple[float | None, float | None]:
    """What a figure is at least and at most."""
    return value(text, kind, name).ends


@pytest.mark.parametrize("rating", ["unknown", "about 125 A", "at least 125 A"])
def test_a_breaker_alone_promises_no_more_than_at_most(rating: str) -> None:
    text = INTAKE + SHORT.replace("125 A", rating) + ", breaker: 100 A}]\n"
    assert ends(text, "service", "continuous") == (None, 100)
    assert ends(text, "service", "free.L1") == (None, 100)
    low, high = ends(text, "service", "capacity")
    assert low is None
    assert high == pytest.approx(math.sqrt(3) * 400 * 100)
    assert figure(text, "service", "binding").missing == ("the rating of Switch",)


@pytest.mark.parametrize(
    "nameplate", ["prime: unknown, rated_power_factor: 0.8", "prime: about 200 kVA"]
)
def test_a_generator_of_unknown_rating_gives_no_more_than_its_breaker(nameplate: str) -> None:
    text = MACHINE.format(nameplate)
    assert ends(text, "generator", "free.L1") == (None, 400)
    assert ends(text, "generator", "continuous") == (None, 400)


def test_a_generator_at_an_unknown_height_gives_no_more_than_its_breaker() -> None:
    derated = "altitude_derating: {above: 1000 m, per: 500 m, loses: 3 %}"
    text = MACHINE.format("prime: 300 kVA, rated_power_factor: 0.8, works_at_altitude: unknown")
    text = text.replace("altitude_derating: none", derated)
    # At sea level 300 kVA are 433 A, so the breaker of 400 A binds; high up less is left.
    assert ends(text, "generator", "free.L1") == (None, 400)
    assert figure(text, "generator", "site-rating").value is None


def test_a_loss_at_an_unknown_share_is_at_most_that_of_the_full_rating() -> None:
    text = INTAKE + SHORT + FEEDER + LIMIT.format("5 %") + "continuous_share: unknown\n"
    assert ends(text, "service", "drop") == (None, pytest.approx(LOST, rel=1e-3))
    assert ends(text, "service", "drop-total") == (None, pytest.approx(LOST, rel=1e-3))
    assert ends(text, "service", "drop-left") == (pytest.approx(0.05 - LOST, rel=1e-3), None)


def test_a_limit_on_the_loss_known_in_part_leaves_from_its_lower_end_to_its_upper() -> None:
    text = INTAKE + SHORT + FEEDER + LIMIT.format("4 to 5 %")
    least, most = ends(text, "service", "drop-left")
    assert least == pytest.approx(0.04 - LOST, rel=1e-3)
    assert most == pytest.approx(0.05 - LOST, rel=1e-3)
    unlimited = INTAKE + SHORT + FEEDER + LIMIT.format("unknown")
    assert figure(unlimited, "service", "drop-left").missing == ("the house's limit to the load",)


def test_an_unknown_power_factor_of_the_house_loses_at_most_the_worst_there_is() -> None:
    text = INTAKE + SHORT + FEEDER.replace("0.95", "unknown")
    # The worst power factor turns R cos φ + X sin φ into √(R² + X²).
    worst = math.sqrt(3) * 125 * 0.046 * math.hypot(0.45, 0.08) / 400
    assert ends(text, "service", "drop") == (None, pytest.approx(worst, rel=1e-3))


MEASURED = "{what: Fans, on: Switch, draws: 30 A, power_factor: 1}"


def test_beside_an_unmeasured_load_currents_are_at_least_what_is_measured() -> None:
    kitchen = "{what: Kitchen, on: Switch, draws: about 10 A, power_factor: 1}"
    text = INTAKE + SWITCH + f"standing_loads: [{MEASURED}, {kitchen}]\n"
    assert ends(text, "service", "current.L1") == (pytest.approx(30), None)
    for name in ("imbalance", "neutral-current"):
        assert figure(text, "service", name).missing == ("what Kitchen draws",)
    alone = INTAKE + SWITCH + f"standing_loads: [{kitchen}]\n"
    assert figure(alone, "service", "current.L1").missing == ("what Kitchen draws",)


def test_an_unknown_power_factor_is_not_taken_to_be_the_house_s() -> None:
    fans = "{what: Fans, on: Switch, draws: 9.2 kW, power_factor: unknown, phases: L1}"
    text = INTAKE + SWITCH + f"usual_power_factor: 1\nstanding_loads: [{fans}]\n"
    # 9.2 kW on 230 V are 40 A at power factor 1, and up to the breaker's 125 A below it.
    assert ends(text, "service", "free.L1") == (0, 125)
    said = text.replace("power_factor: unknown, ", "")
    assert number(said, "service", "free.L1") == pytest.approx(85)


def test_third_harmonics_of_unknown_size_only_add_to_the_neutral() -> None:
    fans = "{what: Fans, on: Switch, draws: 30 A, power_factor: 1, phases: L1, third_harmonic: ?}"
    text = INTAKE + SWITCH + f"standing_loads: [{fans.replace('?', 'unknown')}]\n"
    assert ends(text, "service", "neutral-current") == (pytest.approx(30), None)
    assert ends(text, "service", "neutral-left") == (None, pytest.approx(95))
    assert "the third harmonic of Fans" in figure(text, "service", "neutral-binds").missing


def test_a_generator_carries_at_least_the_loads_that_are_measured() -> None:
    loads = (
        "standing_loads: [{what: Fans, on: Set, draws: 40 kW, power_factor: 1},"
        " {what: Kitchen, on: Set, draws: unknown}]\n"
    )
    text = MACHINE.format("prime: 200 kVA, rated_power_factor: 0.8") + loads
    # 40 kW of 200 kVA × 0.8.
    assert ends(text, "generator", "load-share") == (pytest.approx(0.25), None)


PLACES = "outlets: [{place: Left, connector: Sixteen, count: 9, rating: 16 A, phases: L1,%s"
TWO = PLACES + (
    " fed_from: Switch}, {place: Right, connector: Sixteen, count: 9, rating: %s, phases: L1,"
    " fed_from: Switch}]\n"
)


def test_outlets_of_unknown_rating_only_add_to_those_at_the_same_time() -> None:
    text = INTAKE + SWITCH + TWO % ("", "unknown")
    # 125 A hold seven of 16 A on L1.
    assert ends(text, "available-in-all", "at-once") == (7, None)
    left = item(text, "available", "Left: Sixteen").figure("at-once")
    assert left is not None
    assert left.value is not None
    assert left.value.ends == (0, 7)
    known = INTAKE + SWITCH + TWO % ("", "16 A")
    assert ends(known, "available-in-all", "at-once") == (7, 7)


def test_outlets_behind_a_breaker_that_nobody_knows_are_no_more_than_so_many() -> None:
    text = INTAKE + SWITCH + TWO % (" breaker: unknown,", "16 A")
    assert ends(text, "available-in-all", "at-once") == (None, 7)
    assert ends(text, "outlet", "for-hours") == (None, 16)
    assert ends(text, "next", "holds") == (None, 7)


def test_a_load_of_unknown_size_may_leave_room_for_fewer_outlets() -> None:
    kitchen = "standing_loads: [{what: Kitchen, on: Switch, draws: unknown}]\n"
    text = INTAKE + SWITCH + TWO % ("", "16 A") + kitchen
    assert ends(text, "available-in-all", "at-once") == (0, 7)
    assert ends(text, "available", "alone") == (0, 7)


def test_the_least_that_a_load_draws_counts_and_the_rest_may_take_all_that_is_left() -> None:
    kitchen = "{what: Kitchen, on: Switch, draws: at least 40 A, power_factor: 1, phases: L1}"
    text = INTAKE + SWITCH + f"standing_loads: [{kitchen}]\n"
    # 125 A less the 40 A that are certain; the rest of it may take all that is left.
    assert ends(text, "service", "free.L1") == (0, 85)
    (told,) = found(text, "load-left-out")
    assert told.sentence == (
        "Kitchen on Switch counts with 40 A, the least it draws. What it draws beyond that is in no"
        " figure, and what is free is less by it."
    )


def test_of_a_load_whose_power_factor_nobody_knows_the_least_counts_for_nothing() -> None:
    kitchen = "{what: Kitchen, on: Switch, draws: at least 9.2 kW, power_factor: unknown}"
    text = INTAKE + SWITCH + f"standing_loads: [{kitchen}]\n"
    assert ends(text, "service", "free.L1") == (0, 125)


def test_the_order_of_the_next_loads_is_told_only_where_all_that_decides_it_is_known() -> None:
    kitchen = "standing_loads: [{what: Kitchen, on: Switch, draws: about 20 A, power_factor: 1}]\n"
    told = INTAKE + SWITCH + TWO % ("", "16 A")
    assert value(told, "next", "order").text == "L1, 7 times"
    assert figure(told + kitchen, "next", "order").missing == ("what Kitchen draws",)
    behind = INTAKE + SWITCH + TWO % (" breaker: unknown,", "16 A")
    assert figure(behind, "next", "order").missing == ("the breaker of each",)


def test_where_nobody_knows_what_the_house_draws_all_that_is_free_is_at_most() -> None:
    text = INTAKE + SWITCH + "standing_loads: unknown\n"
    assert value(text, "service", "free.L1").text == "at most 125 A"
    assert value(text, "supply", "free.L1").text == "at most 630 A"
    assert value(INTAKE + SWITCH, "service", "free.L1").text == "125 A"
    imbalance = figure(text, "service", "imbalance")
    assert imbalance.value is None
    (finding,) = found(text, "load-left-out")
    assert finding.sentence.startswith("Nobody knows what the house draws anyway.")


@pytest.mark.parametrize(
    ("key", "lacks"),
    [
        ("in_parallel", "how many conductors share a line of the feeder"),
        ("cable", "whether the feeder is fixed or flexible"),
        ("metal", "whether the feeder is of copper or aluminium"),
    ],
)
def test_what_nobody_knows_of_a_feeder_is_what_its_loss_and_its_table_lack(
    key: str, lacks: str
) -> None:
    text = INTAKE + SHORT + FEEDER.replace("mm2}", f"mm2, {key}: unknown}}")
    assert lacks in figure(text, "service", "drop").missing
    assert figure(text, "service", "feeder-carries").missing == (lacks,)


def test_limits_on_the_loss_that_nobody_knows_are_what_is_missing() -> None:
    text = INTAKE + SHORT + FEEDER + "voltage_drop_limits: unknown\n"
    assert figure(text, "service", "drop-left").missing == ("the house's limit to the load",)


UNEVEN = INTAKE + SWITCH + "standing_loads: [{what: Heater, on: Switch, draws: 60 A, phases: L1}]\n"
UNEVEN += "usual_power_factor: 1.0\n"


@pytest.mark.parametrize(
    ("limit", "told"),
    [("unknown", "is assumed as the limit"), ("none", ""), ("10 %", "the house wants 10 %")],
)
def test_an_imbalance_limit_that_nobody_knows_is_the_usual_one_and_says_so(
    limit: str, told: str
) -> None:
    findings = found(UNEVEN + f"imbalance_limit: {limit}\n", "phases-uneven")
    assert [told in finding.sentence for finding in findings] == ([True] if told else [])


@pytest.mark.parametrize(("dimmers", "told"), [("yes", 1), ("unknown", 0)])
def test_dimmers_that_nobody_knows_of_make_no_finding(dimmers: str, told: int) -> None:
    system = "system: 230/400 V three phase, rating: 125 A, breaker: 125 A"
    text = INTAKE + (
        f"services:\n  - {{name: Sound, fed_from: Intake, {system}, dedicated_to: sound}}\n"
        f"  - {{name: Lights, fed_from: Intake, {system}, dimmers: {dimmers}}}\n"
    )
    assert len(found(text, "shared-with-dimmers")) == told
