"""A wished level: limits first, then the estimate of the house system with its error."""

import pytest

from builder.fit.interpreter import fit
from builder.fit.levels.wish import weighting
from tests.fit.sample import Record, item, pack, rider, value

LIMIT = item(
    "noise",
    "Limit",
    level=value("110 dB(A)", 110.0),
    metric=value("equivalent level"),
    over=value("60 min", 3600.0),
    measured_at=value("mix position"),
)
MIX = item(
    "mix",
    "Mix position",
    average_level=value("100 dB(A)", 100.0),
    average_level_error=value("±5 dB", 5.0),
)


def wish(level_db: float, **more: object) -> Record:
    """A show's level."""
    blank = {
        "act": "Act",
        "line": 3,
        "sort": "level",
        "department": "house",
        "title": "Level",
        "need": "loud",
        "strictness": "must",
    }
    terms = {
        "weighting": "A",
        "metric": "equivalent level",
        "over_s": 3600.0,
        "place": "mix position",
        "carried": "house",
    }
    return {**blank, **terms, "level_db": level_db, **more}


def found(requirement: Record, *, limit: Record = LIMIT, mix: Record = MIX) -> Record:
    """The verdict where a house has a limit and a system."""
    result: Record = fit(pack(house=[limit], sound=[mix]), [rider(requirement)])["verdicts"][0]
    return result


@pytest.mark.parametrize(
    ("level_db", "verdict"),
    [
        (94.9, "fits"),
        (95.0, "fits, with a note"),
        (100.0, "fits, with a note"),
        (105.0, "fits, with a note"),
        (105.1, "short"),
        (110.0, "short"),
    ],
)
def test_within_the_error_it_fits_with_a_note_and_above_it_is_short(
    level_db: float, verdict: str
) -> None:
    # The estimate is 100 dB(A) ± 5 dB: 95 to 105 is within its error, by hand.
    assert found(wish(level_db))["verdict"] == verdict


def test_a_system_that_is_too_small_says_by_how_much_and_what_mends_it() -> None:
    verdict = found(wish(107.5))
    assert (
        verdict["reason"] == "Above the estimate of the house system, 100 dB(A) ±5 dB, by 7.5 dB."
    )
    assert verdict["margin"][0] == "−7.5 dB"
    assert verdict["remedy"].startswith("Bring or hire a larger system")
    assert "Limits: 2.5 dB below the limit of 110 dB(A)." in verdict["notes"]
    assert any("system of its own" in note for note in verdict["notes"])


def test_a_limit_comes_before_the_system() -> None:
    verdict = found(wish(112.0))
    assert verdict["verdict"] == "short"
    assert verdict["reason"] == "Above the limit of 110 dB(A) by 2.0 dB."


@pytest.mark.parametrize("terms", [{"weighting": "C"}, {"metric": "peak level"}])
def test_other_terms_are_asked(terms: dict[str, str]) -> None:
    other = item(
        "noise",
        "Limit",
        level=value("120 dB(C)" if "weighting" in terms else "120 dB(A)", 120.0),
        metric=value(terms.get("metric", "equivalent level")),
        over=value("60 min", 3600.0),
        measured_at=value("mix position"),
    )
    verdict = found(wish(100.0, **terms), limit=other)
    assert verdict["verdict"] == "ask"
    assert (
        verdict["reason"]
        == "It cannot be compared with the estimate of the house system, 100 dB(A) ±5 dB,"
        " equivalent level."
    )
    assert "Which level does the house system reach" in verdict["question"]


def test_a_level_elsewhere_is_no_matter_of_the_mix_position() -> None:
    street = item(
        "noise",
        "Town",
        level=value("130 dB(A)", 130.0),
        metric=value("equivalent level"),
        over=value("60 min", 3600.0),
        measured_at=value("Street"),
    )
    assert found(wish(120.0, place="street"), limit=street)["verdict"] == "fits"


@pytest.mark.parametrize("place", ["FOH", "front of house", "the mix position", "Booth"])
def test_the_mix_position_is_known_by_the_names_that_riders_give_it(place: str) -> None:
    # 106 dB(A) are 4 dB below the limit of 110 there, and 1 dB above the estimate of 100 dB(A) ± 5
    # dB.
    booth = item(
        "mix",
        "Booth",
        average_level=value("100 dB(A)", 100.0),
        average_level_error=value("±5 dB", 5.0),
    )
    assert found(wish(106.0, place=place), mix=booth)["verdict"] == "short"
    assert (
        "Limits: 4.0 dB below the limit of 110 dB(A)."
        in found(wish(106.0, place=place), mix=booth)["notes"]
    )
    assert found(wish(106.0, place="gate"), mix=booth)["verdict"] == "ask"


def test_a_system_whose_level_cannot_be_told_is_asked() -> None:
    nothing = item(
        "mix",
        "Mix position",
        average_level=value(standing="unknown"),
        average_level_error=value("±5 dB", 5.0),
    )
    answer = found(wish(109.0), mix=nothing)
    assert answer["verdict"] == "ask"
    assert "Which level does the house system reach" in answer["question"]
    assert "Limits: 1.0 dB below the limit of 110 dB(A)." in answer["notes"]
    assert found(wish(112.0), mix=nothing)["verdict"] == "short"


def test_without_a_system_the_limit_alone_decides() -> None:
    mix, none = item("mix", "Mix position"), value(standing="none")
    without = item("whole", "Sound", hangs=none, subs=none)
    legal = pack(house=[LIMIT], sound=[mix, without])
    assert fit(legal, [rider(wish(109.0))])["verdicts"][0]["verdict"] == "fits"
    hung = pack(house=[LIMIT], sound=[mix, item("whole", "Sound", subs=none)])
    answer = fit(hung, [rider(wish(109.0))])["verdicts"][0]
    assert (answer["verdict"], answer["reason"]) == (
        "ask",
        "The house does not say enough of its system to tell what level it reaches.",
    )
    assert "Limits: 1.0 dB below the limit of 110 dB(A)." in answer["notes"]


def test_a_limit_that_nobody_stated_does_not_hide_a_system_that_is_too_small() -> None:
    result = fit(pack(house=[], sound=[MIX]), [rider(wish(109.0))])["verdicts"][0]
    assert result["verdict"] == "short"
    assert "Limits: The house has not said." in result["notes"]


@pytest.mark.parametrize(
    ("text", "letter"),
    [
        ("dB(A)", "A"),
        ("dBC", "C"),
        ("98 dB(C)", "C"),
        ("98 dB A", "A"),
        ("102 dB(Z)", ""),
        ("98 dB", ""),
        ("", ""),
    ],
)
def test_the_weighting_is_read_from_the_words_of_a_level(text: str, letter: str) -> None:
    assert weighting(text) == letter
