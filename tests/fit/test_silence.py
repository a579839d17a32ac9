"""What a house has not said, does not know, has not, and knows in part are told apart."""

from datetime import date
from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.silence import silence
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import value
from tests.sweep import composed, folder, lines_of

DAY = date(2026, 6, 1)
NOT_SAID, NOT_KNOWN, NONE = (
    "The house has not said.",
    "The house does not know yet.",
    "The house has none.",
)


@pytest.mark.parametrize(
    ("standing", "words"),
    [
        ("not stated", NOT_SAID),
        ("unknown", NOT_KNOWN),
        ("none", NONE),
        ("stated", "It is 8 to 9, for not all is known."),
    ],
)
def test_each_kind_of_silence_has_its_words(standing: Any, words: str) -> None:
    assert silence(value("8 to 9" if standing == "stated" else "", standing=standing)) == words


def test_a_value_that_is_not_there_is_not_said() -> None:
    assert silence(None) == NOT_SAID


def asked(file: str, key: str, written: Any, needs: str) -> list[str]:
    """The reasons of all that a show is asked, where the quarry writes a key otherwise."""
    data = {**composed("quarry")[file]}
    data.pop(key, None)
    data.pop("routes" if key == "docks" else "", None)
    if written is not None:
        data[key] = written
    there = folder("quarry")
    venue = venue_of({**there.texts, file: "\n".join(lines_of(data))}, there.photos)
    rider = rider_of(f"act: A\n{needs}\n", file="a.yml", rules=RULES)
    found = fit(fit_record(pack_of(venue, on=DAY)), [rider])["verdicts"]
    return [answer["reason"] for answer in found if answer["verdict"] == "ask"]


@pytest.mark.parametrize(
    ("file", "key", "needs"),
    [
        (
            "house.yml",
            "noise_limits",
            "level: {at: 100 dB(A), metric: equivalent level, over: 15 min, place: mix position}",
        ),
        ("house.yml", "load_in_from", "clock: {load in: '09:00'}"),
        ("house.yml", "load_out_until", "clock: {on stage: '20:00', ends: '22:00', load out: 2 h}"),
        ("access.yml", "docks", "trucks: {count: 1, height: 4 m, length: 12 m}"),
    ],
)
@pytest.mark.parametrize(("written", "words"), [(None, NOT_SAID), ("unknown", NOT_KNOWN)])
def test_that_the_house_has_not_said_is_told_only_where_it_has_not(
    file: str, key: str, needs: str, written: Any, words: str
) -> None:
    other = NOT_KNOWN if words == NOT_SAID else NOT_SAID
    reasons = asked(file, key, written, needs)
    assert any(words in reason for reason in reasons)
    assert not any(other in reason for reason in reasons)
