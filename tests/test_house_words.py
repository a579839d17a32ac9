"""
A house in other words is the same house: another name or text for anything, everywhere at once,
changes no verdict and no figure, nor do feet and pounds in the place of metres and kilograms.
"""

from collections import Counter

import pytest

from builder.fit.published import fit_record
from builder.pack import Pack
from tests.house_laws import (
    HOUSES,
    answers,
    answers_of,
    figure_ends,
    other,
    pack_of_files,
    unchanged_pack,
    usual_answers,
)
from tests.house_words import Renaming, converted, in_other_units, renamings, shows_as
from tests.laws import share
from tests.sweep import composed

RENAMINGS = tuple(renaming for house in HOUSES for renaming in renamings(house))
FILES = tuple((house, file) for house in HOUSES for file in composed(house))
DIGITS = 6


def numbers(pack: Pack) -> Counter[tuple[str, tuple[float, ...]]]:
    """Every figure's ends, by the kind of thing; keys and words hold names."""
    return Counter(
        (item.kind, tuple(round(end, DIGITS) for end in figure_ends(figure.value)))
        for section in pack.sections
        for item in section.items
        for figure in item.figures
    )


@pytest.mark.laws
@pytest.mark.parametrize("renaming", share(RENAMINGS, law="house: other names", usually=1), ids=str)
def test_a_new_name_everywhere_changes_no_verdict_and_no_figure(renaming: Renaming) -> None:
    house = renaming.house
    pack = pack_of_files(house, renaming.files)
    assert other(usual_answers(house), answers_of(fit_record(pack), renaming.shows)) == []
    assert numbers(pack) == numbers(unchanged_pack(house))


@pytest.mark.laws
@pytest.mark.parametrize(("house", "file"), share(FILES, law="house: other units", usually=1))
def test_the_other_units_change_no_verdict(house: str, file: str) -> None:
    pack = pack_of_files(house, {**composed(house), file: converted(house, file)})
    assert other(usual_answers(house), answers(fit_record(pack))) == []


@pytest.mark.laws
@pytest.mark.parametrize("house", share(HOUSES, law="riders: other units", usually=1))
def test_riders_in_the_other_units_are_told_the_same(house: str) -> None:
    record = fit_record(unchanged_pack(house))
    assert other(usual_answers(house), answers_of(record, shows_as(in_other_units))) == []


@pytest.mark.source("NIST SP 811 (2008), Appendix B.8: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg")
def test_units_are_converted() -> None:
    assert in_other_units("4.2 m SL") == "13.7795275591 ft SL"
    assert in_other_units("5 ft 6 in") == "1.6764000000 m"
    assert in_other_units("300 mA") == "300 mA"
    assert in_other_units("1,000 kg") == "2204.6226218488 lb"


def test_a_verdict_that_hangs_on_a_name_is_found() -> None:
    """The law can fail: an effect that is listed under another name is not answered."""
    data = composed("quarry")
    effects = [{"name": "flames", "allowed": "no"}]
    pack = pack_of_files("quarry", {**data, "house.yml": {**data["house.yml"], "effects": effects}})
    changed = other(usual_answers("quarry"), answers(fit_record(pack)))
    assert "Haze allowed" in " ".join(changed)
