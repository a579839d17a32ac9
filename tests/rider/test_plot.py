"""Reading a stage plot from a rider."""

import pytest

from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record


def read(*lines: str) -> Record:
    """The plot's requirement."""
    text = "act: A\nplot:\n" + "".join(f"  - {{{line}}}\n" for line in lines)
    found: Record = rider_of(text, file="rider.yml", rules=RULES)["requirements"][0]
    return found


def problems(*lines: str) -> list[str]:
    """What a plot is refused for."""
    with pytest.raises(Refused) as refused:
        read(*lines)
    return [str(problem) for problem in refused.value.problems]


def test_a_plot_is_one_requirement_with_its_rectangles_in_si() -> None:
    found = read(
        "name: Riser, width: 8 ft, depth: 8 ft, at: {across: 4 ft SR, depth: 2 m US}",
        "name: Desk, width: 2 m, depth: 1 m",
    )
    assert (found["sort"], found["title"], found["need"], found["line"]) == (
        "plot",
        "Stage plot",
        "2 rectangles",
        3,
    )
    riser, desk = found["rectangles"]
    assert (riser["width_m"], riser["across_m"], riser["upstage_m"], riser["line"]) == (
        2.4384,
        -1.2192,
        2.0,
        3,
    )
    assert (desk["across_m"], desk["turned_deg"], desk["on"], desk["stays"], desk["lane"]) == (
        None,
        0.0,
        "",
        "",
        False,
    )


def test_a_lane_says_what_it_is_around_and_that_must_be_one_other_rectangle() -> None:
    tower, ring = "name: Tower, width: 2 m, depth: 2 m", "name: Ring, width: 4 m, depth: 4 m"
    lane = f"{ring}, keep clear: yes"
    told = read(tower, f"{lane}, around: Tower")["rectangles"][1]
    assert (told["around"], told["lane"]) == ("Tower", True)
    assert told["need"].startswith("a lane to keep clear, around Tower, 4 m wide")
    for lines, words in (
        ((tower, f"{ring}, around: Tower"), "is said of what is no lane to keep clear"),
        ((tower, f"{lane}, around: Desk"), "is not the name of one other rectangle"),
        ((tower, tower, f"{lane}, around: Tower"), "is not the name of one other rectangle"),
        ((tower, f"{lane}, around: Ring"), "is not the name of one other rectangle"),
    ):
        (problem,) = problems(*lines)
        assert words in problem


def test_all_that_a_rectangle_says_is_told_in_the_rider_s_own_words() -> None:
    found = read(
        "name: Tower, width: 2 m, depth: 2 m, height: 3 m, weight: 1 t, point load: 300 kg, turned:"
        " -30 deg, on: stage left, at: {across: 10 m SL, depth: 1 m DS}, stays: yes, keep clear:"
        " no, strictness: should"
    )["rectangles"][0]
    assert (
        found["need"]
        == "2 m wide, 2 m deep, 3 m high, 1 t in all, 300 kg on one foot, turned -30 deg, on stage"
        " left, centre at 10 m SL, 1 m DS"
    )
    assert (
        found["turned_deg"],
        found["weight_kg"],
        found["foot_kg"],
        found["stays"],
        found["strictness"],
    ) == (-30.0, 1000.0, 300.0, "yes", "should")


def test_a_lane_says_so_first() -> None:
    assert read("name: Lane, width: 1 m, depth: 9 m, keep clear: yes")["rectangles"][0][
        "need"
    ].startswith("a lane to keep clear, 1 m wide")


@pytest.mark.parametrize(
    ("line", "problem"),
    [
        (
            "name: A, width: 0 m, depth: 1 m",
            "rider.yml:3:22 width: '0 m' is nothing; write how large it is [need-unclear]",
        ),
        (
            "name: A, width: 1 m, depth: 1 m, weight: -3 kg",
            (
                "rider.yml:3:47 plot[1].weight: '-3 kg' is below zero, and a mass cannot be; write"
                " it like 900 kg or 2000 lb [number-out-of-range]"
            ),
        ),
        (
            "name: A, width: 1 m, depth: 1 m, at: {across: 3 m, depth: 1 m US}",
            (
                "rider.yml:3:52 plot[1].at.across: '3 m' does not say which way; add SL (stage"
                " left) or SR (stage right), like 4.2 m SL or 9.5 m SR or centre"
                " [direction-missing]"
            ),
        ),
    ],
)
def test_what_is_no_rectangle_is_refused_with_its_line(line: str, problem: str) -> None:
    assert problems(line) == [problem]


def test_a_hundred_rectangles_are_laid_and_more_are_refused() -> None:
    line = "name: A, width: 1 m, depth: 1 m"
    assert len(read(*[line] * 100)["rectangles"]) == 100
    assert problems(*[line] * 101) == [
        "rider.yml:3:3 plot has 101 rectangles, and at most 100 are looked at; join what stands"
        " together into one rectangle [need-unclear]"
    ]
