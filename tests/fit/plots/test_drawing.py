"""What is drawn of a stage plot: shapes of the house, and the show's rectangles with verdicts."""

from builder.fit.interpreter import fit
from builder.fit.plots.drawing import plot_drawing
from tests.fit.plot_pairs import box
from tests.fit.sample import Record, item, rider, value
from tests.fit.stages import piece, plot, stage

WING = (item("wing", "Wing left"), box(8.0, 12.0, 0.0, 10.0))
COLUMN = (item("obstruction", "Column"), box(-1.0, 1.0, 8.0, 9.0))
PIPE = (item("obstruction", "Pipe", from_height=value("3 m", 3.0)), box(3.0, 4.0, 8.0, 9.0))


def drawn(house: Record, *pieces: Record) -> Record:
    """What is drawn of a plot."""
    asked = plot(*pieces)
    answer = fit(house, [rider(asked)])["verdicts"][0]
    found: Record = plot_drawing(house["sections"][0], asked, answer)
    return found


def names(house: Record) -> list[str]:
    """The shapes that are drawn around a plain riser."""
    return [shape["name"] for shape in drawn(house, piece())["shapes"]]


def test_the_deck_the_wings_and_what_is_in_the_way_are_drawn() -> None:
    assert names(stage(WING, COLUMN, PIPE)) == ["Deck", "Wing left", "Column", "Pipe"]


def test_what_is_in_the_way_from_a_height_only_hangs() -> None:
    shapes = drawn(stage(WING, COLUMN, PIPE), piece())["shapes"]
    assert {shape["name"]: shape["hangs"] for shape in shapes} == {
        "Deck": False,
        "Wing left": False,
        "Column": False,
        "Pipe": True,
    }


def test_another_deck_than_the_one_that_was_judged_is_not_drawn() -> None:
    other = (item("deck", "Thrust"), box(-3.0, 3.0, -4.0, 0.0))
    house = stage(other)
    found = drawn(house, piece())
    assert found["deck"] in ("Deck", "Thrust")
    assert [shape["name"] for shape in found["shapes"]] == [found["deck"]]


def test_a_zone_is_drawn_where_it_shares_more_than_an_edge_with_a_floor() -> None:
    lift = (item("zone", "Lift"), box(-2.0, 2.0, -1.0, 1.0))
    pit = (item("zone", "Pit"), box(-2.0, 2.0, -3.0, 0.0))
    assert names(stage(lift, pit)) == ["Deck", "Lift"]


def test_a_rectangle_has_its_own_verdict_and_its_corners() -> None:
    found = drawn(stage(COLUMN), piece("Riser"), piece("Wall", at=(0.0, 8.5)))
    assert [(each["name"], each["verdict"], each["words"]) for each in found["pieces"]] == [
        ("Riser", "fits", "fits"),
        ("Wall", "short", "short"),
    ]
    assert sorted(map(tuple, found["pieces"][0]["corners"])) == [
        (-1.0, 4.0),
        (-1.0, 6.0),
        (1.0, 4.0),
        (1.0, 6.0),
    ]


def test_a_rectangle_without_a_place_has_no_corners_and_is_told_so() -> None:
    found = drawn(stage(), piece("Riser"), piece("Chairs", at=None))["pieces"][1]
    assert found["corners"] == []
    assert (found["verdict"], found["words"]) == ("fits", "no place given")


def test_a_lane_is_drawn_as_one() -> None:
    pieces = drawn(stage(), piece("Riser"), piece("Lane", at=(5.0, 5.0), lane=True))["pieces"]
    assert [each["lane"] for each in pieces] == [False, True]


def test_without_a_deck_nothing_of_the_house_is_drawn() -> None:
    house = stage()
    house["sections"][0]["items"] = []
    found = drawn(house, piece())
    assert (found["deck"], found["shapes"]) == ("", [])
    assert len(found["pieces"]) == 1
