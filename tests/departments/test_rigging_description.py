"""What the rigging file refuses, as its author reads it."""

import pytest

from tests.departments.rigged import BEAM, LIMITS, hang, points, problems


def one(text: str) -> str:
    """The one problem of a text."""
    (problem,) = problems(text)
    return problem


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            LIMITS
            + "beams: [{name: B1, runs: across, low_steel: [{across: 0 m, height: 8 m up}]}]\n",
            "runs across and needs 'depth'",
        ),
        (
            LIMITS
            + "beams: [{name: B1, runs: across, depth: 0 m, low_steel: [{depth: 0 m, height: 8 m"
            " up}]}]\n",
            "needs 'across'",
        ),
        (
            LIMITS + BEAM + "points: [{name: P1, beam: B1, depth: 2 m US}]\n",
            "needs 'across' to say where it is along beam B1",
        ),
        (LIMITS + BEAM + points(0) + hang(loads=""), "hangs from nothing"),
        (
            LIMITS
            + BEAM
            + points(0)
            + hang(1, loads="", more=", weight: 10 kg/m, weight_in_all: 100 kg"),
            "tells its own weight twice",
        ),
        (
            LIMITS
            + BEAM
            + points(0)
            + hang(1, loads="{what: A, by: video, weight: 9 kg, at: 1 m, to: 2 m}"),
            "needs either 'at'",
        ),
        (
            LIMITS
            + BEAM
            + points(0)
            + hang(1, loads="{what: A, by: video, weight: 9 kg, from: 2 m, to: 2 m}"),
            "is not beyond its beginning",
        ),
        (
            LIMITS + "dynamic_factor: {factor: 0.9, source: the letter}\n",
            "from 1 to 10 is possible",
        ),
        (LIMITS + BEAM + points(0, 5) + hang(1, 1, loads=""), "already carries Truss"),
        ("limits: {whole_roof: 9}\n", "needs a unit"),
        ("limits: {whole_roof: 9 ton}\n", "ton"),
    ],
)
def test_a_text_that_cannot_be_meant_is_refused_with_the_reason(text: str, said: str) -> None:
    assert said in one(text)


def test_a_load_over_the_whole_length_at_a_place_or_between_two_is_read() -> None:
    loads = (
        "{what: A, by: video, weight: 9 kg}, {what: B, by: drape, weight: 9 kg, at: 1 m}, {what: C,"
        " by: house, weight: 9 kg, from: 1 m, to: 2 m}"
    )
    assert problems(LIMITS + BEAM + points(0, 20) + hang(1, 2, loads=loads)) == []


ON_ONE_POINT = """\
hangs:
  - name: Usual truss
    first_end: {{across: 0 m, depth: 0 m}}
    last_end: {{across: 0 m, depth: 0 m}}
    supports: [{{point: P1}}]
    configurations: [{usual}]
  - name: Thrust truss
    first_end: {{across: 0 m, depth: 0 m}}
    last_end: {{across: 0 m, depth: 0 m}}
    supports: [{{point: P1}}]
    configurations: [{thrust}]
"""


def on_one_point(usual: str, thrust: str) -> list[str]:
    """The problems with two hangs on one point, each in its configurations."""
    return problems(LIMITS + BEAM + points(0) + ON_ONE_POINT.format(usual=usual, thrust=thrust))


def test_a_point_carries_a_hang_in_each_configuration() -> None:
    assert on_one_point("Standing, Seated", "Thrust") == []


@pytest.mark.parametrize(
    ("usual", "thrust"), [("Standing", "Seated, standing"), ("Standing", ""), ("", "Thrust")]
)
def test_a_point_carries_no_two_hangs_in_one_configuration(usual: str, thrust: str) -> None:
    assert on_one_point(usual, thrust) == [
        "rigging.yml:14:24 Thrust truss.supports[1].point: 'P1' already carries Usual truss; a"
        " point carries one hang in each configuration [point-used-twice]"
    ]
