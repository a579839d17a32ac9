"""A place of which a house knows one way alone: what hangs on that way is told, no more."""

import pytest

from builder.pack import Item
from builder.pipeline import pack_of, venue_of

HOUSE = (
    "name: Hall\ntown: Town\nwhat: unknown\nsetting: indoors\nlanguage: 2\n"
    'revision: {number: "1", on: 2026-06-01, by: crew}\n'
)
STAGE = (
    "datum: {centre_line: A stud., reference_line: The deck's edge.}\ndecks: unknown\n"
    "places: [{name: Desk, at: {across: %s, depth: %s, height: 0 m}}]\n"
)
SOUND = "mix_position: {place: Desk}\n"


def mix(across: str, depth: str) -> Item:
    """The mix position of a house that knows so much of its place."""
    texts = {"house.yml": HOUSE, "stage.yml": STAGE % (across, depth), "sound.yml": SOUND}
    pack = pack_of(venue_of(texts))
    found = next(section for section in pack.sections if section.key == "sound").item("mix")
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("across", "off_centre_m"), [("centre", 0.0), ("2 ft SR", 0.6096), ("1.5 m SL", 1.5)]
)
def test_a_mix_position_of_unknown_depth_still_tells_how_far_off_centre_it_is(
    across: str, off_centre_m: float
) -> None:
    found = mix(across, "unknown")
    assert found.number("off_centre") == pytest.approx(off_centre_m)
    assert found.figure("distance") is None


def test_a_mix_position_of_unknown_side_still_tells_how_far_away_it_is() -> None:
    found = mix("unknown", "22 m DS")
    assert found.number("distance") == pytest.approx(22.0)
    assert found.figure("off_centre") is None


@pytest.mark.parametrize("across", ["unknown", "about 2 m SL"])
def test_a_side_that_is_not_known_exactly_is_not_told_as_one(across: str) -> None:
    assert mix(across, "unknown").figure("off_centre") is None
