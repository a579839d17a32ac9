"""Public words that name a line for the house only: told to the house, and to nobody else."""

from builder.pack import Finding
from tests.house_only.rooms import own, published

NOTE = ("name: Switch, fed_from: Intake,", "name: Switch, fed_from: Intake, note: '{}',")


def told(note: str, hidden: tuple[str, str] | None = None) -> list[Finding]:
    """What the house is told of a note on a public line."""
    changes = {"power.yml": (NOTE[0], NOTE[1].format(note))}
    if hidden:
        changes["house.yml"] = hidden
    assert not [each for each in published(changes).findings if each.code == "house-only-told"]
    return [each for each in own(changes).findings if each.code == "house-only-told"]


def test_a_note_that_names_a_hidden_line_is_told_with_its_place() -> None:
    (finding,) = told("Off at night by the Cellar Board.")
    assert finding.sentence == (
        "'Cellar board' is of a line for the house only, and words that are published tell it, at"
        " power.yml:6:44. Can they be said in other words?"
    )
    assert finding.place
    assert (finding.place.file, finding.place.line) == ("power.yml", 8)
    assert finding.confirm_on == "boards[1] (Cellar board)"


def test_a_telephone_of_a_hidden_contact_is_told_too() -> None:
    (finding,) = told("Ring +00 5550 190 at night.")
    assert "'+00 5550 190' is of a line for the house only" in finding.sentence


def test_a_longer_word_is_another_word() -> None:
    assert told("Near the cellar boards.") == []


def test_a_name_that_a_public_line_bears_too_is_asked_about_nowhere() -> None:
    assert told("Ask Sound.", ("role: Night keeper", "role: Sound")) == []


def test_a_word_that_means_something_else_is_confirmed_on_the_hidden_line() -> None:
    confirmed = (
        "confirmed: {what: house-only-told, value: Cellar board, by: technical manager,"
        " on: 2026-01-01}"
    )
    changes = {"power.yml": ("note: Behind the safe.,", f"{confirmed}, note: Behind the safe.,")}
    stage = "datum: {centre_line: The cellar board's middle., reference_line: deck edge}\n"
    stage += "decks: [{name: D, configurations: [], outline: [{across: 5 m SR, depth: 0 m}, "
    stage += "{across: 5 m SL, depth: 0 m}, {across: 0 m, depth: 6 m US}]}]\n"
    stage += "places: [{name: Deck left, at: {across: 1 m SL, depth: 1 m US}}]\n"
    codes = [finding.code for finding in own(changes, stage=stage).findings]
    assert not {"house-only-told", "confirmation-idle", "confirmation-lapsed"} & set(codes)


def test_an_entry_of_the_log_is_read_unless_it_is_for_the_house_only_itself() -> None:
    log = "entries:\n  - {on: 2026-01-01, by: crew, why: The Cellar board hums.%s}\n"
    codes = [finding.code for finding in own(log=log % "").findings]
    assert codes.count("house-only-told") == 1
    codes = [finding.code for finding in own(log=log % ", house_only: yes").findings]
    assert codes.count("house-only-told") == 0


def test_a_name_of_three_letters_stands_in_words_of_any_kind() -> None:
    assert told("The bar opens at six.", ("role: Night keeper", "role: Bar")) == []
    (finding,) = told("The bars open at six.", ("role: Night keeper", "role: Bars"))
    assert "'Bars' is of a line for the house only" in finding.sentence


def test_who_says_what_is_disputed_is_read_too() -> None:
    sides = "{disputed: [{says: 63 A, by: plate}, {says: 60 A, by: the Night keeper}]}"
    found = own({"power.yml": ("three phase, rating: 63 A", f"three phase, rating: {sides}")})
    assert [each.code for each in found.findings].count("house-only-told") == 1
