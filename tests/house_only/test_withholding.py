"""The pack without what is for the house only, and what stays because a show counts with it."""

from builder.fit.published import fit_record
from builder.house_only.sealing import HOUSE_ONLY, Sealed
from builder.house_only.withholding import (
    NO_WORKING,
    public_findings,
    shown,
    unlinked,
    without_hidden,
)
from builder.pack import (
    Field,
    Finding,
    Input,
    Item,
    Level,
    Outline,
    Pack,
    Section,
    Working,
)
from builder.pack_json import to_json
from builder.pipeline import document_of
from builder.render.markdown import render
from tests.house_only.rooms import POWER, own, published

SECRETS = (
    "Night keeper",
    "5550 190",
    "Cellar board",
    "Behind the safe",
    "Safe cooling",
    "safe maker",
)


def board(pack: Pack) -> Item:
    """The board of the small house."""
    section = pack.section("power")
    assert section is not None
    (found,) = section.of_kind("board")
    return found


def test_nothing_of_a_hidden_line_is_in_the_pack_and_all_of_it_is_in_the_house_s_own() -> None:
    text, mine = to_json(published()), to_json(own())
    assert [secret for secret in SECRETS if secret in text] == []
    assert [secret for secret in SECRETS if secret not in mine] == []


def test_a_hidden_contact_leaves_no_gap_in_the_numbers_of_others() -> None:
    section = published().section("house")
    assert section is not None
    assert [(item.key, item.name) for item in section.of_kind("contact")] == [
        ("house.contact.1", "Sound")
    ]


def test_a_hidden_load_draws_and_the_working_says_for_the_house_only() -> None:
    shown, mine = published(), own()
    for pack in (shown, mine):
        section = pack.section("power")
        assert section is not None
        switch = section.item("service", "Switch")
        assert switch is not None
        assert switch.number("free.L1") == 53.0
    figure = next(item for item in shown.items() if item.name == "Switch").figure("current.L1")
    assert figure is not None
    assert HOUSE_ONLY in [part.label for part in figure.working.inputs]


def test_a_hidden_board_stays_bare_between_public_outlets_and_their_service() -> None:
    found = board(published())
    assert (found.name, found.note, found.place, found.terms) == (
        HOUSE_ONLY,
        "",
        None,
        "not for visitors",
    )
    assert found.house_only
    assert found.number("free.L1") == 22.0
    assert found.text("fed_from") == "Switch"
    assert found.fact("breaker") is None
    assert found.fact("place") is None
    assert {figure.working for figure in found.figures} == {NO_WORKING}
    assert {fact.place for fact in found.facts} == {None}
    (outlet,) = [item for item in published().items() if item.kind == "outlet"]
    assert outlet.text("fed_from") == HOUSE_ONLY
    assert [item["name"] for item in fit_record(published())["sections"][2]["items"]].count(
        HOUSE_ONLY
    ) == 1


def test_a_hidden_board_above_a_hidden_board_stays_too() -> None:
    vault = "boards:\n  - {name: Vault board, fed_from: Switch, rating: 40 A, house_only: yes}\n"
    text = POWER.replace("boards:\n", vault)
    text = text.replace("Cellar board, fed_from: Switch", "Cellar board, fed_from: Vault board")
    section = published(power=text).section("power")
    assert section is not None
    boards = section.of_kind("board")
    assert [(each.name, each.text("fed_from")) for each in boards] == [
        (HOUSE_ONLY, "Switch"),
        (f"{HOUSE_ONLY} 2", HOUSE_ONLY),
    ]


def test_a_finding_without_a_place_goes_with_its_subject() -> None:
    gone = Finding(Level.NOTE, "a", "b", subject="power.board.x")
    kept = Finding(Level.NOTE, "a", "b", subject="power.board.y")
    assert list(public_findings([gone, kept], set(), {"power.board.x"})) == [kept]


def test_a_working_links_to_nothing_that_is_gone() -> None:
    inputs = (
        Input("Load", "1 kW", "power.load.2"),
        Input("Limit", "63 A", "power.service.s.rating"),
    )
    found = unlinked(Working("", inputs, ()), {"power.load.2"})
    assert [(part.label, part.key) for part in found.inputs] == [
        ("Load", ""),
        ("Limit", "power.service.s.rating"),
    ]


def test_a_working_of_which_all_inputs_are_gone_links_to_nothing() -> None:
    alone = Working("", (Input("Load", "1 kW", "power.load.2"),), ())
    (only,) = unlinked(alone, {"power.load.2"}).inputs
    assert only.key == ""
    assert unlinked(alone, {"power.load.3"}) is alone


def test_a_shape_of_a_hidden_line_is_not_drawn() -> None:
    shapes = [Outline(f"x.{name}", "x", name, ((0.0, 0.0),)) for name in (HOUSE_ONLY, "Deck")]
    maps = [
        Field(f"x.{name}", name, "", 1.0, (), (), (), NO_WORKING) for name in (HOUSE_ONLY, "Floor")
    ]
    section = Section("x", "X", (), tuple(shapes), tuple(maps))
    found = without_hidden(section, Sealed({}, frozenset({HOUSE_ONLY}), frozenset()), set())
    assert [each.name for each in (*found.outlines, *found.fields)] == ["Deck", "Floor"]


def test_a_hidden_board_that_nothing_public_hangs_on_is_gone() -> None:
    alone = POWER.replace("on: Cellar board, draws: 2 A", "on: Switch, draws: 2 A")
    alone = alone.replace("in turn, fed_from: Cellar board", "in turn, fed_from: Switch")
    section = published(power=alone).section("power")
    assert section is not None
    assert section.of_kind("board") == ()
    switch = section.item("service", "Switch")
    assert switch is not None
    assert switch.number("free.L1") == 53.0


def test_what_a_pack_only_counts_with_is_on_no_page() -> None:
    pages = render(document_of(published())).pages
    text = "\n".join(str(page) for page in pages.values())
    assert "board-for-the-house-only" not in text
    assert "on for the house only" in text


def test_what_is_shown_holds_nothing_that_is_only_counted_with() -> None:
    whole = published()
    assert board(whole).house_only
    seen = shown(whole)
    assert not any(item.house_only for item in seen.items())
    assert len(list(seen.items())) == len(list(whole.items())) - 1
    assert shown(seen) is seen


def test_a_finding_of_a_hidden_line_is_the_house_s_alone() -> None:
    old = {"power.yml": ("2025-12-01, by: safe maker", "2024-01-01, by: safe maker")}
    public = [finding for finding in published(old).findings if finding.code == "stale"]
    mine = [finding for finding in own(old).findings if finding.code == "stale"]
    assert (len(public), len(mine)) == (0, 1)


def test_a_fact_told_otherwise_by_a_hidden_line_is_told_to_the_house_alone() -> None:
    place = "places:\n"
    other = {
        "stage.yml": (
            place,
            f"{place}  - {{name: Mix, at: {{across: 0 m, depth: 20 m DS}}, width: 4 m,"
            " house_only: yes}\n",
        )
    }
    sound = "mix_position: {place: Mix, ears: 1.65 m, width: 3 m}\n"
    mine = [each for each in own(other, sound=sound).findings if each.code == "told-differently"]
    shown = [
        each for each in published(other, sound=sound).findings if each.code == "told-differently"
    ]
    assert (len(mine), len(shown)) == (1, 0)


def test_a_public_line_at_a_hidden_place_stays_without_the_name() -> None:
    hidden = {"stage.yml": ("{name: Deck left,", "{house_only: yes, name: Deck left,")}
    (outlet,) = [item for item in published(hidden).items() if item.kind == "outlet"]
    assert outlet.text("place") == HOUSE_ONLY
    assert not any(item.kind == "place" for item in published(hidden).items())
    assert "Deck left" not in to_json(published(hidden))


def test_a_name_that_a_public_line_bears_too_stays_there() -> None:
    shared = {"house.yml": ("role: Night keeper", "role: Sound")}
    section = published(shared).section("house")
    assert section is not None
    assert [item.name for item in section.of_kind("contact")] == ["Sound"]
