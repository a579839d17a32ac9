"""What is wanted is known by its kind, whatever the house calls it, or answered by another fact."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from tests.fit.sample import Record, asks, item, pack, rider, value


def told(house: Record, what: str, low: float = 1.0, **more: Any) -> tuple[str, str]:
    """The verdict on one need, with its reason."""
    answer = fit(house, [rider(asks(what, low=low, **more))])["verdicts"][0]
    return answer["verdict"], answer["reason"]


@pytest.mark.parametrize("name", ["Crowd barrier", "The blue fence", "Pit wall"])
def test_a_barrier_is_known_by_its_kind(name: str) -> None:
    fence = item("furnishing", name, kind=value("barrier"), length=value("22 m", 22.0))
    assert told(pack(stage=[fence]), "barrier length", 20.0)[0] == "fits"
    assert told(pack(stage=[fence]), "barrier length", 24.0)[0] == "short"


def test_what_may_be_a_barrier_is_asked() -> None:
    fence = item("furnishing", "Crowd barrier", length=value("22 m", 22.0))
    carpet = item("furnishing", "Carpet", kind=value("carpet"))
    assert told(pack(stage=[carpet, fence]), "barrier length", 20.0) == (
        "ask",
        "The house has not said everything: Crowd barrier, kind.",
    )
    assert told(pack(stage=[carpet]), "barrier length", 20.0) == (
        "ask",
        "None that the house lists is meant, and it does not say that it has no other.",
    )
    assert told(pack(stage=[]), "barrier length", 20.0)[1] == "The house has not said."


def test_outlets_for_buses_are_known_by_their_kind() -> None:
    buses = item("shore", "A", kind=value("buses"), count=value("2", 2.0))
    other = item("shore", "B", kind=value("other"), count=value("9", 9.0))
    named = item("shore", "C", meant_for=value("buses"), count=value("4", 4.0))
    assert told(pack(power=[buses, other]), "shore outlets", 2.0)[0] == "fits"
    assert told(pack(power=[buses, other]), "shore outlets", 3.0)[0] == "short"
    assert told(pack(power=[buses, named]), "shore outlets", 3.0)[0] == "ask"


def test_inputs_of_a_house_without_a_split_are_its_lines_to_the_mix_position() -> None:
    lines = [item("stage-to-mix", "To the mix", analogue__free=value("30 of 40", 30.0))]
    without = [item("whole", "Sound", splits=value(standing="none"))]
    silent = [item("whole", "Sound", splits=value(standing="unknown"))]
    split = [item("split", "Split", ways=value("56", 56.0))]
    assert told(pack(sound=without, lines=lines), "inputs", 24.0)[0] == "fits"
    assert told(pack(sound=without, lines=lines), "inputs", 32.0)[0] == "short"
    assert told(pack(sound=silent, lines=lines), "inputs", 32.0) == (
        "ask",
        "By its lines alone: Short by 2. What else there is, the house has not said.",
    )
    assert told(pack(sound=split, lines=lines), "inputs", 48.0)[0] == "fits"
    no_lines = [item("whole", "Lines", lines=value(standing="none"))]
    assert told(pack(sound=without, lines=no_lines), "inputs", 8.0) == (
        "short",
        "The house has none.",
    )
    assert told(pack(sound=without), "inputs", 8.0) == (
        "ask",
        "The house has none of its own, and does not say what serves in place of one.",
    )
    nothing_else = pack(sound=without, lines=[item("whole", "Lines")])
    assert told(nothing_else, "inputs", 8.0)[0] == "ask"


def test_subs_and_in_ear_mixes_are_answered_from_what_is_described() -> None:
    subs = item("subs", "Floor subs", playing=value("9 of 10", 9.0))
    ears = item("radio", "Ears", kind=value("in-ear"), channels=value("4", 4.0))
    assert told(pack(sound=[subs, ears]), "subs", 9.0)[0] == "fits"
    assert told(pack(sound=[subs, ears]), "subs", 10.0)[0] == "short"
    assert told(pack(sound=[subs, ears]), "in-ear mixes", 4.0)[0] == "fits"
    assert told(pack(sound=[item("whole", "S", subs=value(standing="none"))]), "subs")[0] == "short"


def test_things_of_another_kind_alone_make_nothing_short_where_the_list_is_open() -> None:
    spare = item("boxes", "Spare subs", condition="out of service", subs=value("2", 2.0))
    silent = item("whole", "Sound", subs=value(standing="not stated"))
    none = item("whole", "Sound", subs=value(standing="none"))
    assert told(pack(sound=[spare, silent]), "subs", 2.0) == ("ask", "The house has not said.")
    assert told(pack(sound=[spare, none]), "subs", 2.0)[0] == "short"


@pytest.mark.source("NIST SP 811 (2008), Appendix B.8: 1 psf = 47.88026 Pa")
def test_a_limit_written_in_other_units_is_the_same_limit() -> None:
    deck = item("deck", "Deck", load=value("150 psf", 150 * 47.88025898033584))
    house = pack(stage=[deck])
    assert told(house, "deck load", 150 * 47.88025898033585 * (1 + 1e-12))[0] == "fits"
    assert told(house, "deck load", 150 * 47.88025898033585 * (1 + 1e-6))[0] == "short"
