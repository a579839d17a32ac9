"""Packs of spaces as one, and one of them as a house of one stage, of packs made by hand."""

from dataclasses import replace

from builder.pack import (
    Confirmed,
    Fact,
    Finding,
    Item,
    Level,
    Pack,
    Place,
    Revision,
    Section,
    Space,
    Standing,
    Value,
)
from builder.spaces.joining import house_of, joined_pack, pack_of_space, spaces_of
from builder.spaces.renaming import called_alike

HALL, STUDIO, YARD = Space("hall", "Hall"), Space("studio", "Studio"), Space("yard", "Yard")


def item(kind: str, name: str, says: str = "x") -> Item:
    """An item with a fact."""
    key = f"{kind}.{name}"
    return Item(key, kind, name, (Fact(f"{key}.f", "F", Standing.STATED, Value(says)),))


def section(key: str, *items: Item) -> Section:
    """A section of a department."""
    return Section(key, key, items)


def pack(*sections: Section, findings: tuple[Finding, ...] = (), **more: object) -> Pack:
    """A pack of some sections."""
    found = Pack("House", Revision("1", "2026-01-01", "tm", ""), sections, findings)
    return replace(found, **more)  # type: ignore[arg-type]  # the fields of a pack


def finding(sentence: str, file: str = "", subject: str = "") -> Finding:
    """A finding, in a file or in none."""
    return Finding(Level.NOTE, "c", sentence, subject, Place(file, 1) if file else None)


HOUSE = section("house", item("configuration", "A"))
POWER = section("power", item("supply", "Intake"))


def stage(name: str) -> Section:
    """A stage with a deck."""
    return section("stage", item("deck", name))


def whole() -> Pack:
    """A house of two spaces that share a supply."""
    packs = {each: pack(HOUSE, stage(each.name), POWER) for each in (HALL, STUDIO)}
    return joined_pack(pack(HOUSE), packs)


def keys(found: Pack) -> list[tuple[str, str]]:
    """The sections of a pack, each with its space."""
    return [(each.space, each.key) for each in found.sections]


def test_what_is_the_same_in_every_space_is_told_once_but_for_what_the_house_says() -> None:
    found = whole()
    assert keys(found) == [
        ("", "house"),
        ("", "power"),
        ("hall", "house"),
        ("hall", "stage"),
        ("studio", "house"),
        ("studio", "stage"),
    ]
    assert [each.items[0].key for each in found.sections] == [
        "configuration.A",
        "supply.Intake",
        "hall/configuration.A",
        "hall/deck.Hall",
        "studio/configuration.A",
        "studio/deck.Studio",
    ]
    assert found.sections[3].items[0].facts[0].key == "hall/deck.Hall.f"
    assert found.spaces == (HALL, STUDIO)


def test_what_one_of_three_spaces_says_otherwise_is_told_in_each() -> None:
    other = section("power", item("supply", "Intake", "y"))
    packs = {
        HALL: pack(POWER),
        STUDIO: pack(POWER),
        YARD: pack(other),
    }
    for order in ((HALL, STUDIO, YARD), (YARD, HALL, STUDIO), (HALL, YARD, STUDIO)):
        found = joined_pack(pack(HOUSE), {each: packs[each] for each in order})
        assert keys(found) == [("", "house"), *((each.key, "power") for each in order)]


def test_a_department_that_one_space_lacks_is_of_the_others() -> None:
    packs = {HALL: pack(POWER), STUDIO: pack()}
    assert keys(joined_pack(pack(HOUSE), packs)) == [("", "house"), ("hall", "power")]
    packs = {STUDIO: pack(), HALL: pack(POWER)}
    assert keys(joined_pack(pack(HOUSE), packs)) == [("", "house"), ("hall", "power")]


def test_a_space_of_the_whole_is_again_a_house_of_one_stage() -> None:
    for space, own in spaces_of(whole()).items():
        assert own == pack(HOUSE, stage(space.name), POWER)
    assert keys(house_of(whole())) == [("", "house"), ("", "power")]


def test_a_finding_is_told_once_where_all_say_it_and_else_of_its_space() -> None:
    old, alike = finding("Old.", "house.yml"), finding("Alike.", "power.yml")
    own = finding("Own.", "spaces/hall/stage.yml", "deck.Hall")
    bare = finding("Bare.", subject="deck.Studio")
    packs = {
        HALL: pack(findings=(old, alike, own, bare)),
        STUDIO: pack(findings=(alike, old, bare, own)),
        YARD: pack(findings=(alike, own, old)),
    }
    found = joined_pack(pack(findings=(old,)), packs).findings
    assert [(each.sentence, each.space, each.subject) for each in found] == [
        ("Old.", "", ""),
        ("Alike.", "", ""),
        ("Own.", "", "deck.Hall"),
        ("Bare.", "hall", "hall/deck.Studio"),
        ("Bare.", "studio", "studio/deck.Studio"),
    ]


def test_what_all_share_has_the_findings_of_no_space() -> None:
    own, old = finding("Own.", "spaces/hall/stage.yml"), finding("Old.", "house.yml")
    packs = {HALL: pack(findings=(own, old)), STUDIO: pack(findings=(old,))}
    found = joined_pack(pack(findings=(old,)), packs)
    assert len(found.findings) == 2
    assert house_of(found).findings == (old,)


def test_what_stands_in_the_files_of_another_space_is_told_there_alone() -> None:
    own = finding("Own.", "spaces/hall/stage.yml", "deck.Hall")
    for order in ((HALL, STUDIO), (STUDIO, HALL)):
        packs = {each: pack(findings=(own,)) for each in order} | {YARD: pack()}
        found = joined_pack(pack(), packs)
        assert [(each.space, each.subject) for each in found.findings] == [
            ("hall", "hall/deck.Hall")
        ]
        assert pack_of_space(found, HALL).findings == (own,)
        assert pack_of_space(found, STUDIO).findings == ()


def test_what_is_confirmed_is_told_once_and_in_no_other_space() -> None:
    all_say = Confirmed(finding("Alike.", "power.yml"), "tm", "2026-01-01")
    own = Confirmed(finding("Own.", "spaces/hall/stage.yml", "deck.Hall"), "tm", "2026-01-01")
    packs = {each: pack(confirmed=(all_say, own)) for each in (STUDIO, HALL)}
    found = joined_pack(pack(), packs)
    told = [each.finding.sentence for each in found.confirmed]
    assert told == ["Alike.", "Own."]
    assert pack_of_space(found, HALL).confirmed[1].finding.subject == "deck.Hall"
    assert [each.finding.sentence for each in pack_of_space(found, STUDIO).confirmed] == ["Alike."]


def test_what_all_share_keeps_its_key_in_what_a_space_has_alone() -> None:
    links = replace(item("deck", "Hall"), unit_of="supply.Intake")
    packs = {
        HALL: pack(section("stage", links), POWER),
        STUDIO: pack(stage("B"), POWER),
    }
    found = joined_pack(pack(HOUSE), packs).sections[2].items[0]
    assert (found.key, found.unit_of) == ("hall/deck.Hall", "supply.Intake")


# Two states whose spaces are called otherwise.


def test_a_space_of_the_same_name_in_another_folder_is_the_same_space() -> None:
    old = Space("big", "Hall")
    packs = {old: pack(HOUSE, stage("Deck")), STUDIO: pack(HOUSE, stage("B"))}
    was = finding("Own.", "spaces/big/stage.yml", "deck.Deck")
    packs[old] = replace(packs[old], findings=(was,))
    before = joined_pack(pack(HOUSE), packs)
    now = joined_pack(
        pack(HOUSE), {HALL: pack(HOUSE, stage("Deck")), STUDIO: pack(HOUSE, stage("B"))}
    )
    found, other = called_alike(before, now)
    assert other is now
    assert found.sections == now.sections
    assert [(each.space, each.subject) for each in found.findings] == [("hall", "hall/deck.Deck")]
    assert found.spaces == (HALL, STUDIO)
    assert called_alike(now, now) == (now, now)


def test_a_name_that_changed_places_with_another_folder_is_not_followed() -> None:
    swapped = {Space("studio", "Hall"): pack(stage("A")), Space("hall", "Studio"): pack(stage("B"))}
    there = {HALL: pack(stage("A")), STUDIO: pack(stage("B"))}
    before, after = joined_pack(pack(), swapped), joined_pack(pack(), there)
    assert called_alike(before, after) == (before, after)
    gone = joined_pack(
        pack(), {Space("attic", "Attic"): pack(stage("A")), STUDIO: pack(stage("B"))}
    )
    assert called_alike(gone, after)[0] == gone


def one_stage() -> Pack:
    """A house of one stage, before it became one of several."""
    findings = (
        finding("F.", "stage.yml", "deck.Hall"),
        finding("P.", "power.yml", "supply.Intake"),
    )
    house = section("house", item("configuration", "A"), item("configuration", "Of the hall"))
    return pack(house, stage("Hall"), POWER, findings=findings)


def several() -> Pack:
    """The same with a second stage; one configuration is the hall's alone."""
    own = section("house", item("configuration", "A"), item("configuration", "Of the hall"))
    packs = {STUDIO: pack(HOUSE, stage("B"), POWER), HALL: pack(own, stage("Hall"), POWER)}
    return joined_pack(pack(HOUSE), packs)


def test_a_house_of_one_stage_is_the_space_that_has_its_stage() -> None:
    alone, now = one_stage(), several()
    for found, other in (called_alike(alone, now), called_alike(now, alone)[::-1]):
        assert other is now
        assert found.spaces == (HALL,)
        assert ("hall", "stage") in keys(found)
        assert ("", "power") in keys(found)
        assert [(each.space, each.subject) for each in found.findings] == [
            ("hall", "hall/deck.Hall"),
            ("", "supply.Intake"),
        ]


def test_what_the_house_says_of_one_space_alone_is_left_to_that_space() -> None:
    found, now = called_alike(one_stage(), several())
    house = {each.space: each for each in found.sections if each.key == "house"}
    assert [each.name for each in house[""].items] == ["A"]
    assert [each.name for each in house["hall"].items] == ["A", "Of the hall"]
    assert {each.space for each in now.sections if each.key == "house"} == {"", "studio", "hall"}


def test_two_houses_of_one_stage_are_told_apart_as_they_are() -> None:
    alone = one_stage()
    assert called_alike(alone, alone) == (alone, alone)
