"""
Knowing less never promises more: where an exact value is written as known in part or as unknown,
every figure holds what it was or is not told, and every verdict stays or becomes a question.
"""

import pytest

from builder.pack import Pack, Value
from builder.reading.problems import Refused
from tests.knowing_less import (
    LEFT_OUT,
    LESS,
    Less,
    every_left_out,
    every_less,
    holds,
    pack_with,
    same_or_ask,
    usual_pack,
    wrong_figures,
    wrong_verdicts,
)
from tests.laws import share
from tests.sweep import HOUSES

KEPT = (
    "access.yml",
    "stage.yml",
    "rigging.yml",
    "flying.yml",
    "lines.yml",
    "house.yml",
    "power.yml",
    "sound.yml",
    "rooms.yml",
    "crew.yml",
)
"""The files for which the law holds."""
NOT_YET = dict.fromkeys(
    ("demo/power.yml outlets[8].rating", "demo/power.yml shore_power[1].rating"),
    "sockets on one board are named by their rating, so their turns go where nobody knows it",
)


NOT_READ = {"known-unclear", "impossible"}
"""The only reasons for which a value that is known in part may be refused."""


def kept() -> list[Less]:
    """The cases for which the law holds."""
    return [
        less
        for less in every_less()
        if less.file in KEPT and str(less).rpartition(" = ")[0] not in NOT_YET
    ]


@pytest.mark.laws
@pytest.mark.parametrize("less", share(kept(), law="knowing less", usually=5), ids=str)
def test_knowing_less_never_promises_more(less: Less) -> None:
    pack = read_pack(less)
    assert list(wrong_figures(less, pack)) == []
    assert list(wrong_verdicts(less, pack)) == []


@pytest.mark.laws
@pytest.mark.parametrize("less", share(every_left_out(), law="writing less", usually=5), ids=str)
def test_writing_less_never_promises_more(less: Less) -> None:
    try:
        pack = pack_with(less)
    except Refused:
        return  # Something else in the files needs the key: nothing is promised.
    assert list(wrong_figures(less, pack)) == []
    assert list(wrong_verdicts(less, pack)) == []


def read_pack(less: Less) -> Pack:
    """
    The pack that knows less; the usual one where the value cannot be written so: nothing is `about`
    a time of day.
    """
    try:
        return pack_with(less)
    except Refused as refused:
        assert {problem.code for problem in refused.problems} <= NOT_READ  # noqa: PT017
        return usual_pack(less.venue)


def test_the_law_takes_every_form_of_every_file() -> None:
    cases = kept()
    assert {less.form for less in cases} == set(LESS)
    assert {less.file for less in cases} == set(KEPT)
    assert len(cases) > 1_000


def test_the_law_can_fail() -> None:
    less = Less("demo", "rigging.yml", ("limits", "whole_roof"), "1 t")
    pack = pack_with(less)
    assert "rigging.roof.left" in " ".join(wrong_figures(less, pack))
    assert holds(Value("at most 3", most=3.0), Value("3", number=3.0))
    assert not holds(Value("4", number=4.0), Value("3", number=3.0))
    assert not holds(Value("at most 2", most=2.0), Value("3", number=3.0))
    assert not same_or_ask("ask", "fits")
    assert not same_or_ask("fits", "short")
    assert list(wrong_verdicts(less, usual_pack("demo"))) == []


def test_the_law_of_writing_less_takes_every_house_and_can_fail() -> None:
    cases = list(every_left_out())
    assert {less.venue for less in cases} == set(HOUSES)
    assert {less.file for less in cases if less.venue == "demo"} == set(KEPT)
    assert len(cases) > 1_500
    hoist = Less("demo", "rigging.yml", ("hangs", 0, "supports", 0, "hoist"), LEFT_OUT)
    assert hoist not in cases
    assert any("rigging.roof.left" in told for told in wrong_figures(hoist, pack_with(hoist)))
