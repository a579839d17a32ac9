"""Overhead and in the loudspeakers: what is hidden weighs, and is known by no name."""

from builder.house_only.sealing import HOUSE_ONLY
from builder.pack import Item, Pack
from builder.pack_json import to_json
from tests.departments.rigged import BEAM, LIMITS, hang, points
from tests.house_only.rooms import own, published

BELL = "{what: Tocsin, by: house, weight: 100 kg, at: 10 m, house_only: yes}"
LAMPS = "{what: Lamps, by: lighting, weight: 50 kg, at: 5 m}"
POINTS = LIMITS + BEAM + points(0, 10, 20)
RIGGING = POINTS + hang(1, 3, loads=f"{BELL}, {LAMPS}")
MODEL = (
    "models: [{name: Secretline, kind: line box, lowest: 70 Hz, highest: 18 kHz, width: 600 mm,"
    " height: 250 mm, weight: 20 kg}, {name: Sub, kind: sub, lowest: 28 Hz, highest: 70 Hz,"
    " width: 1 m, height: 600 mm}]\n"
)
LEFT = (
    "hangs: [{name: Left, model: Secretline, boxes: 3, splay: [2 deg, 4 deg], down: 0 deg,"
    " at: {across: 10 m SL, depth: 1 m DS}, top: 6 m up, carried_by: Truss, frame: 24 kg,"
    " house_only: yes}]\n"
)


def items(pack: Pack, department: str, kind: str) -> tuple[Item, ...]:
    """The items of a kind."""
    section = pack.section(department)
    assert section is not None
    return section.of_kind(kind)


def carried(pack: Pack) -> list[float | None]:
    """What each point carries, wherever it stands in its list."""
    found = sorted(items(pack, "rigging", "point"), key=lambda item: item.number("at.across") or 0)
    return [item.number("carried") for item in found]


def test_a_hidden_load_hangs_and_is_in_no_list_of_loads() -> None:
    shown, mine = published(rigging=RIGGING), own(rigging=RIGGING)
    assert carried(shown) == carried(mine)
    assert (carried(shown)[0] or 0) > 80.0
    assert [item.name for item in items(shown, "rigging", "load")] == ["Lamps"]
    assert "Tocsin" not in to_json(shown)
    assert HOUSE_ONLY in to_json(shown)


def test_a_hidden_point_that_carries_something_stays_bare() -> None:
    hidden = RIGGING.replace("{name: P1, ", "{name: P1, house_only: yes, ")
    bare = [
        item for item in items(published(rigging=hidden), "rigging", "point") if item.house_only
    ]
    assert [(item.name, item.number("carried")) for item in bare] == [
        (HOUSE_ONLY, carried(own(rigging=RIGGING))[0])
    ]


def test_a_hidden_point_under_a_hidden_hang_stays_for_what_is_too_near() -> None:
    heavy = hang(1, 3, loads=f"{BELL}, {LAMPS}", more=", weight: 5 kg/m")
    told = POINTS + heavy
    hidden = told.replace("{name: P1, ", "{name: P1, house_only: yes, ")
    hidden = hidden.replace("{name: Truss, ", "{name: Truss, house_only: yes, ")
    shown = published(rigging=hidden)
    assert len([item for item in items(shown, "rigging", "point") if item.house_only]) == 1
    assert items(shown, "rigging", "hang") == ()
    assert items(shown, "rigging", "load") == ()
    assert items(shown, "rigging", "support") == ()
    assert "Own weight" in [item.name for item in items(own(rigging=told), "rigging", "load")]
    assert carried(shown) == carried(own(rigging=told))


def test_a_hidden_point_that_carries_nothing_is_gone() -> None:
    hidden = RIGGING.replace("{name: P2, ", "{name: P2, house_only: yes, ")
    assert len(items(published(rigging=hidden), "rigging", "point")) == 2


def test_hidden_loudspeakers_weigh_without_their_name_their_number_and_their_model() -> None:
    shown = published(rigging=RIGGING, sound=MODEL + LEFT)
    mine = own(rigging=RIGGING, sound=MODEL + LEFT)
    assert carried(shown) == carried(mine)
    assert sum(each or 0 for each in carried(shown)) > 230.0
    assert [item.name for item in items(shown, "rigging", "load")] == ["Lamps"]
    assert items(shown, "sound", "hang") == ()
    section = shown.section("rigging")
    assert section is not None
    words = repr(section)
    assert "Secretline" not in words
    assert "Frame of" not in words
    assert "Left" in [item.name for item in items(mine, "rigging", "load")]


def test_the_single_units_of_a_hidden_line_are_hidden_with_it() -> None:
    subs = (
        "subs: [{name: Row, model: Sub, count: 4, out_of_service: [2], spacing: 2 m,"
        " at: {across: 0 m, depth: 1 m DS, height: 0 m}%s}]\n"
    )
    air = {
        "house.yml": ("verified: {on", "air: {temperature: 20 C, humidity: 50 %}\nverified: {on")
    }
    told = published(air, sound=MODEL + subs % "")
    assert len(items(told, "sound", "sub")) == 4
    shown = published(air, sound=MODEL + subs % ", house_only: yes")
    section = shown.section("sound")
    assert section is not None
    assert {item.kind for item in section.items} & {"sub", "subline", "sub-line"} == set()
    assert HOUSE_ONLY not in repr([item.name for item in section.items])
