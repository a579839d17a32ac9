"""A show's level where what the house system's level leans on is known in part."""

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import LevelAsked
from builder.pack import Pack
from tests.knowing_less import Less, pack_with, usual_pack
from tests.sweep import Path_, riders


def level_verdict(pack: Pack, level_db: float) -> tuple[str, str]:
    """The verdict on a level that is below every limit of the house, and its question."""
    (asked,) = (rider for rider in riders() if rider["act"] == "Pale Ferrymen")
    (wish,) = (each for each in asked["requirements"] if each["sort"] == "level")
    quiet: LevelAsked = {**wish, "level_db": level_db}
    asked = {**asked, "requirements": [quiet]}
    (verdict,) = fit(fit_record(pack), [asked])["verdicts"]
    return verdict["verdict"], verdict["question"]


LEANS_ON = [("mix_position", "width"), ("models", 3, "coverage", 1, "vertical")]


@pytest.mark.parametrize("path", LEANS_ON)
def test_a_level_is_asked_where_the_estimate_lacks_something(path: Path_) -> None:
    less = Less("demo", "sound.yml", path, "unknown")
    assert level_verdict(usual_pack("demo"), 90.0) == ("fits, with a note", "")
    verdict, question = level_verdict(pack_with(less), 90.0)
    assert verdict == "ask"
    assert "level" in question


@pytest.mark.parametrize("path", LEANS_ON)
def test_a_level_that_both_ends_of_the_estimate_reach_fits(path: Path_) -> None:
    less = Less("demo", "sound.yml", path, "about {}")
    assert level_verdict(pack_with(less), 90.0) == ("fits, with a note", "")
