"""What the check reads of a pack."""

from dataclasses import replace

import pytest

from builder.fit.published import NO_LIMIT, checked, fit_record, value_record
from builder.pack import (
    Fact,
    Figure,
    Item,
    Pack,
    Revision,
    Section,
    Standing,
    Value,
    Verified,
    Working,
)
from builder.pack_json import from_json, to_json
from builder.stating import value_of


def pack_of(configurations: Value | None) -> Pack:
    """A pack of one deck that names its configurations."""
    key = "stage.deck.deck"
    fact = Fact(f"{key}.configurations", "Configurations", Standing.STATED, configurations)
    deck = Item(key, "deck", "Deck", facts=(fact,))
    revision = Revision("1", "2026-01-11", "crew", "0")
    return Pack("Hall", revision, (Section("stage", "Stage", (deck,)),), ())


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (-27, "3 weeks after"),
        (-1, "1 day after"),
        (0, "0 days before"),
        (13, "13 days before"),
        (14, "2 weeks before"),
        (119, "3 months before"),
        (800, "2 years before"),
    ],
)
def test_the_age_of_a_check_is_told_in_words_and_one_after_the_revision_is_told_as_such(
    days: int, words: str
) -> None:
    assert (
        checked(Verified("2026-03-02", "bar manager", "measured", days))
        == f"2026-03-02 by bar manager, measured, {words} this revision"
    )


def test_a_list_of_names_travels_as_a_list_whatever_commas_are_in_the_names() -> None:
    names = ("Standing, end stage", "Seated")
    pack = from_json(to_json(pack_of(value_of(names))))
    (section,) = fit_record(pack)["sections"]
    told = section["items"][0]["values"]["configurations"]
    assert (told["text"], told["parts"]) == ("Standing, end stage; Seated", [*names])


def test_a_value_that_is_no_list_has_no_parts() -> None:
    (section,) = fit_record(pack_of(value_of("Standing, end stage")))["sections"]
    assert section["items"][0]["values"]["configurations"]["parts"] == []


def test_a_check_that_nobody_tells_is_no_words() -> None:
    assert checked(None) == ""


@pytest.mark.parametrize(
    ("section", "kind", "standing"),
    [
        ("rigging", "beam", "none"),
        ("rigging", "roof", "none"),
        ("rigging", "point", "unknown"),
        ("power", "beam", "unknown"),
    ],
)
def test_what_is_left_of_a_roof_limit_that_the_house_says_does_not_exist_is_none(
    section: str, kind: str, standing: str
) -> None:
    working = Working("left", (), ())
    left = Figure(f"{section}.{kind}.r.left", "Left", None, working, missing=(NO_LIMIT,))
    assert value_record(left, kind, Section(section, "x", ()), "")["standing"] == standing


def test_what_the_house_can_set_travels_with_its_settings() -> None:
    feet = Value("4 ft or 5 ft", "", None, "m", (), 1.2192, 1.524, True, (1.2192, 1.524))
    for told, settings in ((feet, [1.2192, 1.524]), (replace(feet, settings=()), [])):
        fact = Fact("stage.deck.deck.height", "Height", Standing.STATED, told)
        record = value_record(fact, "deck", Section("stage", "Stage", ()), "stage.html")
        assert (record["can_be_set"], record["settings"]) == (True, settings)
        assert (record["number"], record["least"], record["most"]) == (None, 1.2192, 1.524)


def test_what_nobody_knows_exactly_is_not_told_as_a_choice() -> None:
    fact = Fact("x", "Height", Standing.STATED, Value("1 to 2 m", least=1.0, most=2.0))
    record = value_record(fact, "deck", Section("stage", "Stage", ()), "stage.html")
    assert (record["can_be_set"], record["settings"]) == (False, [])
