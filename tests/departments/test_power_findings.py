"""Findings on circuits, each at its boundary on both sides."""

import pytest

from builder.pack import Finding, Level
from tests.departments.powered import INTAKE, SWITCH, found, published

SHARE = "continuous_share: 80 %\n"


def load(*amperes: float) -> str:
    """
    Standing loads on the switch, one a phase where there are three of them, on all phases where
    there is one.
    """
    phases = ["all"] if len(amperes) == 1 else ["L1", "L2", "L3"]
    rows = [
        f"{{what: Load {n}, on: Switch, draws: {size} A, power_factor: 1, phases: {on}}}"
        for n, (size, on) in enumerate(zip(amperes, phases, strict=True))
    ]
    return f"standing_loads: [{', '.join(rows)}]\n"


def test_a_load_at_the_continuous_limit_is_no_finding_and_above_it_is_a_caution() -> None:
    text = SHARE + INTAKE + SWITCH
    assert found(text + load(100), "standing-load-over-continuous") == []
    (told,) = found(text + load(100.5), "standing-load-over-continuous")
    assert told.level is Level.CAUTION
    assert (
        told.sentence
        == "Switch carries 100.5 A of standing loads on L1. For hours on end it may carry 100 A, 80"
        " % of its rating."
    )
    assert told.subject == "power.service.switch"
    assert told.place is not None


def test_a_load_at_the_rating_is_no_danger_and_above_it_is_one() -> None:
    assert found(INTAKE + SWITCH + load(125), "standing-load-over-rating") == []
    (told,) = found(INTAKE + SWITCH + load(126), "standing-load-over-rating")
    assert told.level is Level.DANGER
    assert (
        told.sentence == "Switch carries 126.0 A of standing loads on L1, and its rating is 125 A."
    )


@pytest.mark.source(
    "by hand: 46, 40, 34 A have mean 40 and are 15 % off it; 46.2, 40, 33.8 are 15.5 % off"
)
def test_imbalance_at_the_limit_is_no_finding_and_above_it_is_a_caution() -> None:
    assert found(INTAKE + SWITCH + load(46, 40, 34), "phases-uneven") == []
    (told,) = found(INTAKE + SWITCH + load(46.2, 40, 33.8), "phases-uneven")
    uneven = "Switch is loaded unevenly, L1 46.2 A, L2 40.0 A, L3 33.8 A: 16 % off the mean, and"
    assert told.sentence == (
        f"{uneven} 15 % is assumed as the limit (common practice, no source), for the house writes"
        " none."
    )
    written = "imbalance_limit: 15 %\n" + INTAKE + SWITCH + load(46.2, 40, 33.8)
    assert [each.sentence for each in found(written, "phases-uneven")] == [
        f"{uneven} the house wants 15 % at most."
    ]


def test_one_lamp_on_an_empty_service_is_no_imbalance_worth_telling() -> None:
    assert found(INTAKE + SWITCH + load(12.4, 0, 0), "phases-uneven") == []
    assert len(found(INTAKE + SWITCH + load(12.6, 0, 0), "phases-uneven")) == 1


def test_imbalance_of_one_service_is_not_told_again_of_what_feeds_only_it() -> None:
    text = INTAKE.replace("630 A", "125 A") + SWITCH
    assert [told.subject for told in found(text + load(60, 40, 30), "phases-uneven")] == [
        "power.service.switch"
    ]
    on_intake = load(60, 40, 30).replace(
        "]", ", {what: Lift, on: Intake, draws: 1 A, power_factor: 1, phases: all}]"
    )
    assert [told.subject for told in found(text + on_intake, "phases-uneven")] == [
        "power.supply.intake",
        "power.service.switch",
    ]


def test_a_house_may_set_its_own_limit_of_imbalance() -> None:
    assert (
        found("imbalance_limit: 20 %\n" + INTAKE + SWITCH + load(46.2, 40, 33.8), "phases-uneven")
        == []
    )


@pytest.mark.parametrize(
    ("system", "count"),
    [
        ("120 V three phase", 1),
        ("120 V three phase line to neutral", 0),
        ("120/208 V three phase", 0),
    ],
)
def test_three_phases_at_one_voltage_must_say_line_to_what(system: str, count: int) -> None:
    told = found(
        f"supplies: [{{name: Intake, system: {system}, rating: 500 A}}]\n", "voltage-basis-missing"
    )
    assert len(told) == count
    assert all("line to line, or line to neutral?" in each.sentence for each in told)


@pytest.mark.parametrize(
    ("system", "count"),
    [
        ("230/400 V three phase", 0),
        ("277/480 V three phase", 0),
        ("230/440 V three phase", 1),
        ("120/208 V split phase", 1),
    ],
)
def test_two_voltages_that_do_not_go_together_are_told(system: str, count: int) -> None:
    assert (
        len(
            found(
                f"supplies: [{{name: Intake, system: {system}, rating: 500 A}}]\n",
                "voltages-disagree",
            )
        )
        == count
    )


def test_a_service_rated_above_what_feeds_it_is_told() -> None:
    small = INTAKE.replace("630 A", "125 A")
    assert found(small + SWITCH, "rating-over-source") == []
    (told,) = found(INTAKE.replace("630 A", "124 A") + SWITCH, "rating-over-source")
    assert (
        told.sentence
        == "Switch is rated 125 A, but Intake, which feeds it, stops at 124 A (rating)."
    )


def test_services_rated_above_their_supply_together_are_a_note() -> None:
    services = (
        "services: [{name: A, fed_from: Intake, rating: 315 A}, {name: B, fed_from: Intake, rating:"
        " %s}]\n"
    )
    assert found(INTAKE + services % "315 A", "services-over-supply") == []
    (told,) = found(INTAKE + services % "400 A", "services-over-supply")
    assert told.level is Level.NOTE
    assert "rated 715 A together, and it carries 630 A" in told.sentence


def test_a_service_without_connector_system_and_tie_in_is_told_once_with_all_it_lacks() -> None:
    (told,) = found(
        INTAKE + "services: [{name: Switch, fed_from: Intake, rating: 125 A}]\n",
        "service-incomplete",
    )
    assert told.level is Level.NOTE
    assert (
        told.sentence
        == "Switch does not say which connector it has, which phases and voltages it has or who"
        " ties in and with what notice. Every visitor will ask."
    )


def test_a_service_that_says_none_or_not_known_has_said_so() -> None:
    said = SWITCH.replace("rating", "connectors: none, tie_in: {who: '?', notice: '?'}, rating")
    assert found(INTAKE + said, "service-incomplete") == []


def test_nobody_asks_who_ties_in_where_visitors_may_not() -> None:
    said = SWITCH.replace("rating", "connectors: none, terms: not for visitors, rating")
    assert found(INTAKE + said, "service-incomplete") == []


SOUND = (
    "services: [{{name: Sound, fed_from: {}, dedicated_to: sound, rating: 63 A{}}}, {{name: Light,"
    " fed_from: {}, rating: 63 A, dimmers: yes}}]\n"
)


def test_sound_beside_dimmers_on_one_supply_is_a_note_and_on_one_board_a_caution() -> None:
    (told,) = found(INTAKE + SOUND.format("Intake", "", "Intake"), "shared-with-dimmers")
    assert told.level is Level.NOTE
    board = "boards: [{name: Board, fed_from: Intake, rating: 125 A}]\n"
    (told,) = found(INTAKE + board + SOUND.format("Board", "", "Board"), "shared-with-dimmers")
    assert told.level is Level.CAUTION
    assert (
        told.sentence
        == "Sound (sound) shares Board with Light, which has dimmers on it, and no isolating"
        " transformer stands between. Expect noise on the neutral."
    )


def test_a_transformer_of_its_own_parts_sound_from_dimmers() -> None:
    assert (
        found(
            INTAKE + SOUND.format("Intake", ", transformer: 63 kVA", "Intake"),
            "shared-with-dimmers",
        )
        == []
    )


def test_transformer_none_parts_nothing() -> None:
    assert (
        len(
            found(
                INTAKE + SOUND.format("Intake", ", transformer: none", "Intake"),
                "shared-with-dimmers",
            )
        )
        == 1
    )


def test_a_word_that_only_holds_sound_or_dimmer_is_neither() -> None:
    room = SOUND.replace("to: sound", "to: soundproof room")
    assert found(INTAKE + room.format("Intake", "", "Intake"), "shared-with-dimmers") == []
    shared = ", transformer: 63 kVA, shared_with: [Trimmers, dimmerless rack]"
    assert found(INTAKE + SOUND.format("Intake", shared, "Intake"), "shared-with-dimmers") == []


def test_sound_that_says_it_is_shared_with_dimmers_is_a_caution() -> None:
    (told,) = found(
        INTAKE + SOUND.format("Intake", ", shared_with: [balcony dimmers]", "Intake"),
        "shared-with-dimmers",
    )
    assert told.level is Level.CAUTION


OUTLET = (
    "outlets: [{{place: Stage left, connector: {}, count: {}, rating: {}, fed_from: Switch, phases:"
    " {}{}}}]\n"
)


def test_an_outlet_behind_a_smaller_breaker_is_told_and_at_the_breaker_is_not() -> None:
    assert (
        found(
            INTAKE + SWITCH + OUTLET.format("IEC 60309 125 A 5-pin red", 1, "125 A", "all", ""),
            "outlet-over-breaker",
        )
        == []
    )
    small = SWITCH.replace("125 A", "63 A")
    (told,) = found(
        INTAKE + small + OUTLET.format("IEC 60309 125 A 5-pin red", 1, "125 A", "all", ""),
        "outlet-over-breaker",
    )
    assert (
        told.sentence
        == "The 125 A outlets IEC 60309 125 A 5-pin red at Stage left are fed from Switch, which"
        " stops at 63 A (rating), so none gives its full rating."
    )


def test_an_outlet_behind_its_own_larger_breaker_is_told() -> None:
    def told(breaker: str) -> list[Finding]:
        outlet = OUTLET.format(
            "IEC 60309 16 A 3-pin blue", 1, "16 A", "L1", f", breaker: {breaker}"
        )
        return found(INTAKE + SWITCH + outlet, "breaker-over-outlet")

    assert told("16 A") == []
    assert len(told("20 A")) == 1


def test_an_outlet_rated_above_its_connector_is_told() -> None:
    assert (
        found(
            INTAKE + SWITCH + OUTLET.format("IEC 60309 32 A 5-pin red", 1, "32 A", "all", ""),
            "rating-over-connector",
        )
        == []
    )
    (told,) = found(
        INTAKE + SWITCH + OUTLET.format("IEC 60309 32 A 5-pin red", 1, "63 A", "all", ""),
        "rating-over-connector",
    )
    assert "which the standard makes for 32 A" in told.sentence


def test_outlets_that_ask_more_than_their_service_together_are_a_note() -> None:
    assert (
        found(
            INTAKE + SWITCH + OUTLET.format("IEC 60309 63 A 5-pin red", 1, "63 A", "all", ""),
            "outlets-over-service",
        )
        == []
    )
    (told,) = found(
        INTAKE + SWITCH + OUTLET.format("IEC 60309 63 A 5-pin red", 2, "63 A", "all", ""),
        "outlets-over-service",
    )
    assert told.sentence.startswith(
        "The 2 outlets on Switch ask 126 A on L1 when all are loaded fully, and it may carry 125 A."
    )


def test_outlets_out_of_service_ask_nothing() -> None:
    text = (
        INTAKE
        + SWITCH
        + OUTLET.format("IEC 60309 63 A 5-pin red", 2, "63 A", "all", ", condition: out of service")
    )
    assert found(text, "outlets-over-service") == []


def test_a_careful_house_has_no_findings() -> None:
    said = SWITCH.replace(
        "rating",
        "connectors: [IEC 60309 125 A 5-pin red], tie_in: {who: house electrician, notice: 5 days},"
        " rating",
    )
    assert published(SHARE + INTAKE + said + load(40)).findings == ()
