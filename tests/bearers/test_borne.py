"""
What a thing is by what bears it, of sections as small as the question.

That nothing is better than what it hangs from, stands on or is fed from is common practice, no
source; which terms speak first is the design of `builder/bearers/relations.py`, in words.
"""

import pytest

from builder.bearers.borne import HIDDEN, Borne, bearing, on_remembered
from builder.bearers.telling import section_as_told
from builder.pack import Fact, Item, Section, Standing, Value, Verified
from builder.reading.standing_on import CLOSED, OUT, UNKNOWN


def item(
    kind: str,
    name: str,
    condition: str = "in service",
    terms: str = "",
    note: str = "",
    house_only: bool = False,
    **facts: str | tuple[str, ...],
) -> Item:
    """An item with facts: a text, or a list of names."""
    key = f"{kind}.{name}"
    told = tuple(Fact(f"{key}.{each}", each, Standing.STATED, value(facts[each])) for each in facts)
    return Item(
        key,
        kind,
        name,
        told,
        condition=condition,
        terms=terms,
        note=note,
        house_only=house_only,
    )


def value(names: str | tuple[str, ...]) -> Value:
    """A value as a line tells it."""
    return Value(names) if isinstance(names, str) else Value(", ".join(names), parts=names)


def borne(section: str, *items: Item, checked: bool = False) -> dict[str, Borne]:
    """What is borne by something not fully there, by the item's name."""
    found = bearing(Section(section, section, items), checked=checked)
    return {each.name: found[each.key] for each in items if each.key in found}


POINT = item("point", "P1", beam="Beam")
OUTLET = item("outlet", "Blue", fed_from="Board")
BOARD = item("board", "Board", fed_from="Main")
MAIN = item("service", "Main")


def test_what_is_all_there_makes_nothing_harder() -> None:
    assert borne("rigging", item("beam", "Beam"), POINT) == {}
    assert borne("power", MAIN, BOARD, OUTLET, checked=True) == {}


@pytest.mark.parametrize("checked", [True, False])
def test_a_point_of_a_beam_that_is_out_is_out(checked: bool) -> None:
    beam = item("beam", "BEAM", OUT, note="Bent.")
    words = "BEAM, which P1 is on: out of service. Bent."
    told = words if checked else "BEAM, which it is on: out of service."
    assert borne("rigging", beam, POINT, checked=checked) == {"P1": Borne(OUT, "", (told,))}


def test_why_is_told_only_where_the_state_is_and_not_beside_terms_alone() -> None:
    beam = item("beam", "Beam", terms=CLOSED, note="Bent.")
    assert borne("rigging", beam, POINT, checked=True) == {
        "P1": Borne("in service", CLOSED, ("Beam, which P1 is on: not for visitors.",))
    }


def test_a_state_that_nobody_knows_goes_on_to_what_hangs_there_and_never_makes_it_better() -> None:
    beam = item("beam", "Beam", UNKNOWN)
    told = ("Beam, which it is on: perhaps out of service.",)
    assert borne("rigging", beam, POINT) == {"P1": Borne(UNKNOWN, "", told)}
    gone = item("point", "P2", OUT, beam="Beam")
    assert borne("rigging", beam, gone) == {"P2": Borne(OUT, "", told)}


def test_limited_is_told_and_changes_no_state() -> None:
    told = ("Beam, which it is on: limited.",)
    assert borne("rigging", item("beam", "Beam", "limited"), POINT) == {
        "P1": Borne("in service", "", told)
    }


def test_a_page_says_out_of_what_a_switch_feeds_and_the_check_follows_that_itself() -> None:
    main = item("service", "Main", OUT, terms="extra charge")
    page = borne("power", main, BOARD, OUTLET)
    told = ("Main, which feeds it: out of service, extra charge.",)
    assert page == {"Board": Borne(OUT, "", told), "Blue": Borne(OUT, "", told)}
    check = borne("power", main, BOARD, OUTLET, checked=True)
    assert check["Blue"] == Borne("in service", "", ("Main, which feeds Blue: extra charge.",))


def test_the_check_does_not_follow_what_a_bus_is_fed_from_so_it_is_out() -> None:
    shore = item("shore", "Bus", fed_from="Board")
    found = borne("power", item("service", "Main", OUT), BOARD, shore, checked=True)
    assert found["Bus"] == Borne(OUT, "", ("Main, which feeds Bus: out of service.",))


def test_a_switch_that_nobody_knows_to_work_is_told_and_its_outlet_keeps_its_state() -> None:
    found = borne("power", item("service", "Main", UNKNOWN), BOARD, OUTLET)
    told = ("Main, which feeds it: perhaps out of service.",)
    assert found["Blue"] == Borne("in service", "", told)


def test_a_closed_board_is_asked_about_the_nearest_first() -> None:
    main, board = (
        item("service", "Main", terms=CLOSED),
        item("board", "Board", terms=CLOSED, fed_from="Main"),
    )
    found = borne("power", main, board, OUTLET)["Blue"]
    assert (found.terms, found.asks) == ("", "Board, which feeds it, is not for visitors")
    assert len(found.told) == 2


def test_terms_that_are_nearer_speak_before_those_of_a_closed_board() -> None:
    main = item("service", "Main", terms=CLOSED)
    open_board = item("board", "Board", terms="included", fed_from="Main")
    assert borne("power", main, open_board, OUTLET)["Blue"].asks == ""
    own = item("outlet", "Red", terms="included", fed_from="Main")
    assert borne("power", main, own)["Red"].asks == ""
    silent = item("outlet", "Grey", fed_from="Main")
    assert borne("power", main, silent)["Grey"].asks == "Main, which feeds it, is not for visitors"


def test_a_bearer_for_the_house_only_is_told_without_its_name() -> None:
    main = item("service", "Main", OUT, terms=CLOSED, house_only=True)
    found = borne("power", main, item("outlet", "Grey", fed_from="Main"))["Grey"]
    sentence = f"{HIDDEN}, which feeds it: out of service, not for visitors."
    assert (found.told, found.hidden) == ((), (sentence,))
    assert found.asks == f"{HIDDEN}, which feeds it, is not for visitors"


def test_a_zone_bears_the_beams_and_points_that_it_names_and_no_other() -> None:
    zone = item("zone", "Zone", OUT, beams=("beam", "Beam"), points=("P3",))
    items = (
        zone,
        item("beam", "Beam"),
        item("beam", "P3"),
        item("beam", "Other"),
        POINT,
        item("point", "P3"),
        item("point", "Other"),
    )
    found = bearing(Section("rigging", "", items))
    told = ("Zone, which it is in: out of service.",)
    assert found == {
        "beam.Beam": Borne(OUT, "", told),
        "point.P1": Borne(OUT, "", told),
        "point.P3": Borne(OUT, "", told),
    }


def test_what_bears_a_thing_by_two_ways_is_told_once() -> None:
    zone = item("zone", "Zone", "limited", beams=("Beam",), points=("P1",))
    found = borne("rigging", zone, item("beam", "Beam", "limited"), POINT)
    assert found["P1"].told == (
        "Beam, which it is on: limited.",
        "Zone, which it is in: limited.",
    )


def test_two_sets_that_move_with_each_other_come_to_an_end() -> None:
    one = item("lineset", "1", moves_with="2")
    other = item("lineset", "2", OUT, moves_with="1")
    assert borne("flying", one, other) == {
        "1": Borne(OUT, "", ("2, which moves with it: out of service.",))
    }


def test_a_route_is_as_its_dock_and_leaves_the_words_to_its_own_line() -> None:
    dock = item("dock", "East", OUT, approach="Yard")
    yard = item("approach", "Yard", "limited")
    route = item("route", "East door", from_dock="East")
    assert borne("access", yard, dock, route) == {
        "East": Borne(OUT, "", ("Yard, by which trucks come to it: limited.",)),
        "East door": Borne(OUT, "", ("Yard, by which trucks come to it: limited.",)),
    }


def test_a_relation_of_one_department_says_nothing_in_another() -> None:
    assert borne("flying", item("beam", "Beam", OUT), POINT) == {}


def test_a_name_that_nothing_bears_bears_nothing() -> None:
    assert borne("rigging", item("beam", "Beam", OUT), item("point", "P", beam="None")) == {}
    unknown = Item("point.P", "point", "P", (Fact("point.P.beam", "beam", Standing.UNKNOWN),))
    assert borne("rigging", item("beam", "Beam", OUT), unknown) == {}


def group(**facts: str) -> Item:
    """Points on two beams."""
    return item("point-group", "Clamps", beams=("A", "B"), **facts)


def test_points_on_two_beams_are_out_only_where_both_are() -> None:
    out = [item("beam", name, OUT) for name in "AB"]
    told = (
        "A, which points of it are on: out of service.",
        "B, which points of it are on: out of service.",
    )
    assert borne("rigging", *out, group()) == {"Clamps": Borne(OUT, "", told)}
    closed = item("beam", "B", terms=CLOSED)
    assert borne("rigging", out[0], closed, group())["Clamps"].terms == CLOSED
    assert borne("rigging", out[0], closed, group())["Clamps"].condition == "in service"


def test_of_points_on_two_beams_of_which_one_is_out_a_written_number_is_asked() -> None:
    beams = item("beam", "A"), item("beam", "B", OUT)
    asks = "B, which points of it are on, is out of service"
    assert borne("rigging", *beams, group(count="6"))["Clamps"].asks == asks
    assert borne("rigging", *beams, group())["Clamps"].asks == ""


def test_of_points_on_two_beams_of_which_one_is_closed_all_is_asked() -> None:
    beams = item("beam", "A"), item("beam", "B", terms=CLOSED)
    found = borne("rigging", *beams, group())["Clamps"]
    assert found.asks == "B, which points of it are on, is not for visitors"
    assert (found.condition, found.terms) == ("in service", "")


def test_points_on_a_beam_that_nobody_knows_to_hold_are_unknown_themselves() -> None:
    found = borne("rigging", item("beam", "A"), item("beam", "B", UNKNOWN), group())["Clamps"]
    told = ("B, which points of it are on: perhaps out of service.",)
    assert found == Borne(UNKNOWN, "", told)


def test_points_on_beams_that_are_not_described_stay_as_their_line_says() -> None:
    assert borne("rigging", item("beam", "C", OUT), group(count="6")) == {}


def test_the_zone_of_a_beam_counts_for_points_on_several_beams() -> None:
    zone = item("zone", "Zone", OUT, beams=("A", "B"))
    found = borne("rigging", zone, item("beam", "A"), item("beam", "B"), group())["Clamps"]
    assert found.condition == OUT


def test_a_page_puts_what_bears_a_thing_behind_its_own_note() -> None:
    point = item("point", "P1", note="Painted.", beam="Beam")
    section = Section("rigging", "Rigging", (item("beam", "Beam", OUT), point))
    _, told = section_as_told(section).items
    assert told.condition == OUT
    assert told.note == "Painted. Beam, which it is on: out of service."


MEASURED = Verified("2026-05-01", "rigger", "measured", 9)
REMEMBERED = Verified("2026-05-01", "rigger", "memory", 9)


@pytest.mark.parametrize(
    ("check", "told"), [(REMEMBERED, {"point.P1": REMEMBERED}), (MEASURED, {}), (None, {})]
)
def test_what_hangs_on_something_only_remembered_is_no_surer(
    check: Verified | None, told: dict[str, Verified]
) -> None:
    fact = Fact("beam.Beam.load", "load", Standing.STATED, Value("1 t"), verified=check)
    beam = Item("beam.Beam", "beam", "Beam", (fact,))
    assert on_remembered(Section("rigging", "", (beam, POINT))) == told
    whole = Section("rigging", "", (item("beam", "Beam"), POINT), verified=check)
    assert on_remembered(whole) == told
