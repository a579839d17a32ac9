"""
Single-phase circuits: how many at once, on which outlets and phases, beside three-phase loads;
every way of sharing them as the oracle.
"""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.fit.interpreter import fit
from tests.fit.sample import Record, item, pack, rider, value
from tests.fit.test_deep import first, load

SYSTEM = "120/208 V three phase 60 Hz"


def feed(
    name: str, free_a: tuple[float, ...], above: str = "", kind: str = "board", **more: Record
) -> Record:
    """A board with free current on each phase."""
    values = {f"free__L{index}": value("x", free) for index, free in enumerate(free_a, 1)}
    return item(
        kind,
        name,
        **values,
        rating=value("x", max(free_a)),
        **more,
        **({"fed_from": value(above)} if above else {}),
    )


def outlet(
    count: int,
    *,
    phases: str = "in turn",
    rating_a: float = 16.0,
    fed: str = "Board",
    **more: Record,
) -> Record:
    """A line of outlets at stage left."""
    values = {
        "place": value("Stage left"),
        "count": value("x", float(count)),
        "phases": value(phases),
        "fed_from": value(fed),
    }
    return item("outlet", "IEC 60309 16 A", **{**values, "rating": value("x", rating_a), **more})


def circuits(count: int, current_a: float, **more: object) -> Record:
    """A line of circuits as a rider asks it."""
    return load(current_a, count=float(count), phases="single", **more)


def verdicts(*loads: Record, power: list[Record]) -> list[Record]:
    """What comes out when they are placed together."""
    return list(fit(pack(power=power), [rider(*loads)])["verdicts"])


def test_no_circuit_asked_for_is_not_needed() -> None:
    found = verdicts(circuits(0, 16.0), power=[feed("Board", (20.0, 20.0, 20.0)), outlet(9)])[0]
    assert (found["verdict"], found["reason"]) == ("not needed", "No circuit is asked for.")


def test_outlets_whose_number_nobody_knows_are_asked_about() -> None:
    many = outlet(9)
    many["values"]["count"] = value(standing="unknown")
    found = verdicts(circuits(1, 16.0), power=[feed("Board", (20.0, 20.0, 20.0)), many])[0]
    assert found["verdict"] == "ask"
    assert found["reason"] == (
        "The house has not said of some outlets how many they are, their rating or phases, or what"
        " is free behind them."
    )


def test_outlets_that_are_known_do_not_make_up_for_those_that_are_not() -> None:
    # One circuit more is asked than the known outlet has: the other line may have it.
    unknown = outlet(9)
    unknown["values"]["count"] = value(standing="unknown")
    power = [feed("Board", (60.0, 60.0, 60.0)), outlet(1), unknown]
    assert [each["verdict"] for each in verdicts(circuits(2, 16.0), power=power)] == ["ask"]


@pytest.mark.parametrize(("count", "verdict"), [(3, "fits"), (4, "short")])
def test_circuits_are_counted_as_loaded_not_as_sockets(count: int, verdict: str) -> None:
    # Nine sockets, and 20 A free on each phase: one circuit of 16 A on each phase, for two ask 32
    # A.
    found = verdicts(circuits(count, 16.0), power=[feed("Board", (20.0, 20.0, 20.0)), outlet(9)])[0]
    assert found["verdict"] == verdict
    if verdict == "short":
        assert (
            found["reason"]
            == "9 such outlets, and 3 can be loaded so at the same time beside what the house"
            " draws."
        )
        assert found["margin"][0] == "−1"


def test_the_phase_of_each_circuit_is_named_and_the_one_with_most_left_comes_first() -> None:
    found = verdicts(circuits(4, 10.0), power=[feed("Board", (50.0, 20.0, 34.0)), outlet(9)])[0]
    # 50, 40, then 34 on L3, then 30 on L1: three on L1 would leave 20, and L3 has 34.
    assert found["reason"].startswith(
        "At Stage left, IEC 60309 16 A: 3 on L1, 1 on L3; 20.0 A are left"
    )
    assert found["margin"][0] == "+20.0 A"


def test_sockets_in_turn_give_the_first_phases_one_more() -> None:
    # Four sockets in turn are two on L1 and one on each of the others.
    power = [feed("Board", (100.0, 100.0, 100.0)), outlet(4)]
    assert verdicts(circuits(4, 16.0), power=power)[0]["reason"].startswith(
        "At Stage left, IEC 60309 16 A: 2 on L1, 1 on L2, 1 on L3;"
    )


def test_a_socket_is_used_once_whoever_asks() -> None:
    power = [feed("Board", (100.0, 100.0, 100.0)), outlet(4)]
    found = verdicts(circuits(3, 10.0), circuits(2, 10.0), power=power)
    assert [each["verdict"] for each in found] == ["fits", "short"]
    assert (
        found[1]["reason"]
        == "Alone it would fit at the house's outlets, but beside the other loads, as they are"
        " placed here, 1 of 2 do."
    )


def test_circuits_and_three_phase_loads_share_what_feeds_them() -> None:
    power = [
        feed("Switch", (60.0, 60.0, 60.0), kind="service"),
        feed("Board", (40.0, 40.0, 40.0), "Switch"),
        outlet(9),
    ]
    assert [each["verdict"] for each in verdicts(load(44.0), circuits(3, 16.0), power=power)] == [
        "fits",
        "fits",
    ]
    assert [each["verdict"] for each in verdicts(load(44.1), circuits(3, 16.0), power=power)] == [
        "fits",
        "short",
    ]


def test_a_load_gives_way_to_circuits_that_have_less_choice() -> None:
    near = feed("Near", (50.0, 50.0, 50.0), kind="service")
    far = feed("Far", (60.0, 60.0, 60.0), kind="service")
    power = [near, far, outlet(3, fed="Near")]
    found = verdicts(load(45.0), circuits(3, 16.0), power=power)
    assert [each["verdict"] for each in found] == ["fits", "fits"]
    assert found[0]["reason"].startswith("On Far;")


@pytest.mark.parametrize(("breaker_a", "verdict"), [(16.0, "fits"), (15.0, "short")])
def test_a_socket_carries_no_more_than_its_own_breaker(breaker_a: float, verdict: str) -> None:
    power = [
        feed("Board", (60.0, 60.0, 60.0)),
        outlet(3, rating_a=32.0, breaker=value("x", breaker_a)),
    ]
    assert verdicts(circuits(1, 16.0), power=power)[0]["verdict"] == verdict


def test_what_is_free_only_as_an_upper_bound_or_not_known_is_asked() -> None:
    board = feed("Board", (60.0, 60.0, 60.0))
    free = {f"free.L{k}": value("at most 60 A", None, most=60.0) for k in (1, 2, 3)}
    bound = {**board, "values": {**board["values"], **free}}
    assert verdicts(circuits(1, 16.0), power=[bound, outlet(3)])[0]["verdict"] == "ask"
    assert verdicts(circuits(1, 16.0), power=[outlet(3)])[0]["verdict"] == "ask"


@pytest.mark.parametrize(
    ("phases", "system", "verdict"),
    [
        ("in turn", "120 V single phase", "fits"),
        ("in turn", "208 V single phase", "short"),
        ("L1 L2", "208 V", "fits"),
        ("L1 L2", "120 V", "short"),
    ],
)
def test_one_line_has_the_lower_voltage_and_two_lines_the_higher(
    phases: str, system: str, verdict: str
) -> None:
    power = [feed("Board", (60.0, 60.0, 60.0), system=value(SYSTEM)), outlet(3, phases=phases)]
    assert verdicts(circuits(1, 16.0, system=system), power=power)[0]["verdict"] == verdict


def test_circuits_between_two_lines_take_from_both() -> None:
    power = [
        feed("Board", (32.0, 32.0, 16.0), system=value(SYSTEM)),
        *(outlet(3, phases=pair) for pair in ("L1 L2", "L2 L3", "L1 L3")),
    ]
    # 80 A in all hold two circuits of 2 × 16 A with 16 A over: L1 L2 once and L1 L3 or L2 L3 once.
    assert verdicts(circuits(2, 16.0, system="208 V"), power=power)[0]["verdict"] == "fits"
    assert verdicts(circuits(3, 16.0, system="208 V"), power=power)[0]["verdict"] == "ask"


def test_sockets_behind_dimmers_do_not_serve_circuits_that_must_be_apart() -> None:
    power = [feed("Board", (60.0, 60.0, 60.0), dimmers=value("yes")), outlet(3)]
    assert verdicts(circuits(1, 16.0, apart=True), power=power)[0]["verdict"] == "short"
    assert verdicts(circuits(1, 16.0), power=power)[0]["verdict"] == "fits"


def test_sockets_that_may_be_behind_dimmers_are_asked_about_where_they_must_be_apart() -> None:
    unknown = value(standing="unknown")
    power = [feed("Board", (60.0, 60.0, 60.0), dimmers=unknown), outlet(3)]
    assert verdicts(circuits(1, 16.0, apart=True), power=power)[0]["verdict"] == "ask"
    assert verdicts(circuits(1, 16.0), power=power)[0]["verdict"] == "fits"


def test_circuits_apart_from_dimmers_are_told_what_they_share_with_them() -> None:
    supply = feed("Intake", (90.0, 90.0, 90.0), kind="supply")
    dimmers = feed("Lighting switch", (60.0, 60.0, 60.0), "Intake", "service", dimmers=value("yes"))
    power = [supply, dimmers, feed("Board", (60.0, 60.0, 60.0), "Intake"), outlet(3)]
    notes = verdicts(circuits(1, 16.0, apart=True), power=power)[0]["notes"]
    assert "It shares Intake with Lighting switch, which has dimmers on it." in notes
    assert not any(
        "dimmers" in note for note in verdicts(circuits(1, 16.0), power=power)[0]["notes"]
    )
    alone = verdicts(
        circuits(1, 16.0, apart=True), power=[feed("Board", (60.0, 60.0, 60.0)), outlet(3)]
    )[0]
    assert "Ask whether dimmers share its transformer." in alone["notes"]


def test_the_connector_asked_for_is_taken_first_and_another_is_a_note() -> None:
    other = {**outlet(3), "name": "CEE 7/3", "key": "x.other"}
    power = [feed("Board", (99.0, 99.0, 99.0)), outlet(1, phases="L1"), other]
    plug = "IEC 60309 16 A"
    assert verdicts(circuits(1, 16.0, connector=plug.lower()), power=power)[0]["verdict"] == "fits"
    found = verdicts(circuits(2, 16.0, connector=plug), power=power)[0]
    assert found["notes"] == [
        f"Connector: {plug} asked, the house has CEE 7/3. Whoever connects decides on an adapter."
    ]


@pytest.mark.parametrize("part", ["IEC 60309", "6 A", "IEC 60309 16 A, old"])
def test_an_outlet_is_not_taken_for_a_connector_whose_name_is_only_like_its_own(part: str) -> None:
    power = [feed("Board", (99.0, 99.0, 99.0)), outlet(1, phases="L1")]
    assert verdicts(circuits(1, 16.0, connector=part), power=power)[0]["notes"] == [
        f"Connector: {part} asked, the house has IEC 60309 16 A. Whoever connects"
        " decides on an adapter."
    ]


free_amperes = st.tuples(*[st.integers(0, 40).map(float)] * 3)


@settings(max_examples=40)
@given(
    free_amperes,
    free_amperes,
    free_amperes,
    st.tuples(st.integers(0, 4), st.integers(0, 4)),
    st.integers(1, 20),
)
def test_the_most_circuits_are_those_of_every_way_tried(
    whole: tuple[float, ...],
    one: tuple[float, ...],
    two: tuple[float, ...],
    counts: tuple[int, int],
    current_a: int,
) -> None:
    power = [
        feed("Intake", whole, kind="supply"),
        feed("One", one, "Intake"),
        feed("Two", two, "Intake"),
    ]
    power += [
        outlet(counts[0], rating_a=32.0, fed="One"),
        {**outlet(counts[1], rating_a=32.0, fed="Two"), "key": "x.two"},
    ]
    slots = [[count // 3 + (index < count % 3) for index in range(3)] for count in counts]
    best = 0
    for way in product(*(range(slot + 1) for row in slots for slot in row)):
        first, second = way[:3], way[3:]
        here = all(a * current_a <= free for a, free in zip(first, one, strict=True))
        there = all(b * current_a <= free for b, free in zip(second, two, strict=True))
        if (
            here
            and there
            and all(
                (a + b) * current_a <= free for a, b, free in zip(first, second, whole, strict=True)
            )
        ):
            best = max(best, sum(way))
    if best:
        assert verdicts(circuits(best, float(current_a)), power=power)[0]["verdict"] == "fits"
    assert verdicts(circuits(best + 1, float(current_a)), power=power)[0]["verdict"] == "short"


@settings(max_examples=40)
@given(
    free_amperes,
    st.lists(st.tuples(st.integers(1, 4), st.integers(1, 20)), min_size=1, max_size=3),
    st.data(),
)
def test_lines_that_all_fit_still_fit_when_one_asks_less(
    free_a: tuple[float, ...], lines: list[tuple[int, int]], data: st.DataObject
) -> None:
    power = [feed("Board", free_a), outlet(9)]

    def whole(wants: list[tuple[int, int]]) -> str:
        return str(
            fit(
                pack(power=power),
                [rider(*(circuits(count, float(current)) for count, current in wants))],
            )["verdict"]
        )

    if whole(lines) == "fits":
        index = data.draw(st.integers(0, len(lines) - 1))
        assert (
            whole(
                [
                    (count, max(1, current // 2)) if each == index else (count, current)
                    for each, (count, current) in enumerate(lines)
                ]
            )
            == "fits"
        )


def test_asking_a_question_is_not_needed_of_circuits_the_show_brings() -> None:
    assert verdicts(circuits(9, 16.0, carried="show"), power=[])[0]["verdict"] == "not needed"


def test_outlets_below_something_out_of_service_are_none_and_it_is_named() -> None:
    main = feed("Main", (60.0, 60.0, 60.0), kind="service")
    power = [main, feed("Board", (60.0, 60.0, 60.0), "Main"), outlet(2)]
    assert first(circuits(2, 16), power=power)["verdict"].startswith("fits")
    found = first(circuits(2, 16), power=[{**main, "condition": "out of service"}, *power[1:]])
    assert (found["verdict"], found["margin"][0]) == ("short", "−2")
    assert (
        found["reason"]
        == "0 such outlets of 2. Main is out of service, and so are the outlets that it feeds."
    )


def test_what_feeds_itself_ends_the_search_for_an_outage() -> None:
    power = [
        feed("Board", (60.0, 60.0, 60.0), "Other"),
        feed("Other", (60.0, 60.0, 60.0), "Board"),
        outlet(2),
    ]
    assert first(circuits(1, 16), power=power)["verdict"].startswith("fits")


def test_outlets_at_a_place_that_the_house_does_not_name_are_asked_not_short() -> None:
    power = [feed("Board", (63.0, 63.0, 63.0)), outlet(9)]
    found = verdicts(circuits(2, 16.0, of="Stage middle"), power=power)[0]
    assert (found["verdict"], found["reason"]) == (
        "ask",
        "The house names no place Stage middle. Its places with outlets: Stage left.",
    )
    assert verdicts(circuits(2, 16.0, of="stage left"), power=power)[0]["verdict"] == "fits"


def test_circuits_without_a_voltage_are_told_the_house_s() -> None:
    power = [
        feed("Board", (63.0, 63.0, 63.0), system=value("230/400 V three phase 50 Hz")),
        outlet(9),
    ]
    assert verdicts(circuits(2, 16.0), power=power)[0]["notes"] == [
        "The rider states no voltage; this is 230 V."
    ]
    assert verdicts(circuits(2, 16.0, system="230 V single phase"), power=power)[0]["notes"] == []


def test_outlets_of_another_voltage_are_told_and_drawing_less_is_no_remedy() -> None:
    power = [
        feed("Board", (63.0, 63.0, 63.0), system=value("230/400 V three phase 50 Hz")),
        outlet(9),
    ]
    found = verdicts(circuits(2, 16.0, system="120 V single phase"), power=power)[0]
    assert (found["verdict"], found["reason"]) == (
        "short",
        "0 such outlets of 2. The outlets there are of 230 V.",
    )
    assert found["remedy"].startswith(
        "Hire a transformer, where the frequency suits, or a generator of the system asked for."
    )
