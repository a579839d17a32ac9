"""
A stage that nobody drew: sizes of wings, lines and their distances, lifts, what is in the way
somewhere; and what is asked where the plan would have told it.
"""

import pytest

from builder.departments.lines.ways import is_on_stage
from builder.departments.stage.headroom import clear_under_rig
from builder.departments.stage.publish import offer
from builder.exchange import Offers, Overhang, Shape, Spot
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pack import Figure
from builder.pipeline import pack_of, venue_of
from builder.reading.quantities import Speed
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.departments.test_stage import HEAD, SQUARE, codes, problems, published, stage

UNDRAWN = HEAD + "decks: [{name: Deck, configurations: [Standing], clear_height: 9 m%s}]\n"
CHECKED = "verified: {on: 2026-01-01, by: us, how: measured}\n"
HOUSE = (
    "language: 2\nname: H\nwhat: a house\ntown: T\nsetting: indoors\ntime_zone: unknown\n"
    "revision: {number: 1, on: 2026-01-01, by: us}\n"
    "configurations: [{name: Standing, audience: standing}]\n"
)


def verdicts(text: str, asks: str) -> list[tuple[str, str]]:
    """What a house with this stage answers to needs and plot of a rider."""
    pack = pack_of(venue_of({"house.yml": HOUSE, "stage.yml": CHECKED + text}))
    rider = rider_of(f"act: A\n{asks}\n", file="a.yml", rules=RULES)
    return [
        (each["verdict"], each["reason"]) for each in fit(fit_record(pack), [rider])["verdicts"]
    ]


def verdict(text: str, what: str, amount: str) -> str:
    """The verdict on one need."""
    ((word, _),) = verdicts(text, f"needs: [{{what: {what}, {amount}}}]")
    return word


def figure(text: str, kind: str, name: str) -> Figure:
    """A figure of the first item of a kind."""
    item = published(text).section.item(kind)
    found = item.figure(name) if item else None
    assert found is not None
    return found


def test_a_deck_without_an_outline_has_no_area_and_says_what_it_lacks() -> None:
    area = figure(UNDRAWN % "", "deck", "area")
    assert (area.value, area.missing) == (None, ("outline",))
    assert published(UNDRAWN % "").section.outlines == ()
    assert offer(stage(UNDRAWN % "")).floors_drawn is False


@pytest.mark.parametrize("written", ["unknown", "none"])
def test_an_outline_may_be_unknown(written: str) -> None:
    assert codes(UNDRAWN % f", outline: {written}, usable_width: 12 m") == []


def test_what_hangs_anywhere_may_hang_over_a_deck_that_nobody_drew() -> None:
    over = Overhang("Truss", ((-3.0, 90.0), (3.0, 90.0)), (6.0, 6.0), (), comes_down=False)
    offers = Offers(overhead=(over,), overhead_told=True)
    deck = stage(UNDRAWN % "").decks[0]
    found = clear_under_rig("stage.deck.Deck", deck, offers, "metric")
    assert found.value is not None
    assert (found.value.least, found.value.most) == (6.0, 9.0)


def test_a_wing_counts_by_its_written_width_where_nobody_drew_it() -> None:
    text = UNDRAWN % "" + "wings: [{name: stage right, width: 15 ft, level_with_deck: yes}]\n"
    assert verdict(text, "wing width stage right", "at least: 15 ft") == "fits"
    assert verdict(text, "wing width stage right", "at least: 16 ft") == "short"
    assert verdict(text, "wing depth stage right", "at least: 1 m") == "ask"


def test_a_written_width_counts_before_that_of_the_outline() -> None:
    text = HEAD + f"decks: []\nwings: [{{name: stage left, outline: {SQUARE}, width: 2 m}}]\n"
    item = published(text).section.item("wing")
    assert item is not None
    assert (item.number("width"), item.number("depth")) == (2.0, 4.0)
    assert [each.key for each in item.figures] == ["stage.wing.stage-left.depth"]


def test_what_is_in_the_way_somewhere_makes_a_wing_at_most_so_wide() -> None:
    text = HEAD + f"decks: []\nwings: [{{name: stage left, outline: {SQUARE}}}]\n"
    text += "obstructions: [{name: Radiators, depth: 0.3 m, area: upstage}]\n"
    item = published(text).section.item("wing")
    assert item is not None
    assert item.text("width") == "at most 6.00 m"


def test_a_plot_is_asked_where_what_is_in_the_way_is_not_drawn() -> None:
    drawn = HEAD + f"decks: [{{name: Deck, configurations: [Standing], outline: {SQUARE}}}]\n"
    plot = "plot: [{name: Drums, width: 1 m, depth: 1 m, at: {across: centre, depth: 1 m US}}]"
    assert [word for word, _ in verdicts(drawn, plot)] == ["fits"]
    text = drawn + "obstructions: [{name: Radiators, depth: 0.3 m, area: upstage}]\n"
    ((word, reason),) = verdicts(text, plot)
    assert word == "ask"
    assert "1 to be asked" in reason or "ask" in reason


def test_whether_a_place_is_on_the_stage_is_its_own_word_then_the_plan_s() -> None:
    square = ((-3.0, 0.0), (3.0, 0.0), (3.0, 4.0), (-3.0, 4.0))
    spots = (Spot("stage", "place", "In", 0.0, 1.0), Spot("stage", "place", "Off", 0.0, -9.0))
    shapes = (Shape("stage", "deck", "Deck", square),)
    offers = Offers(spots=spots, shapes=shapes, said_on_stage={"Dock": False, "Box": True})
    names = ("In", "Off", "Dock", "Box", "Nowhere")
    assert [is_on_stage(name, offers) for name in names] == [True, False, False, True, None]
    part = Offers(spots=spots, shapes=shapes, floors_drawn=False)
    assert [is_on_stage(name, part) for name in ("In", "Off")] == [True, None]


def test_distances_that_do_not_add_up_are_told_and_those_that_may_are_not() -> None:
    # Published by a theatre: 24'-6" and 3'-10" beside 27'-6" (what-houses-publish, row 12).
    lines = (
        "distances:\n  - {from: curtain line, to: back wall, length: 24'-6\"}\n"
        "  - {from: edge of stage, to: curtain line, length: 3'-10\"}\n"
        "  - {from: edge of stage, to: back wall, length: %s}\n"
    )
    text = HEAD + "decks: []\n" + lines
    assert codes(text % "27'-6\"") == ["chain-open"]
    for whole in ("28'-4\"", "28'-5\"", "about 27'-6\"", "unknown", "at least 27 ft"):
        assert codes(text % whole) == []
    turned = text.replace(
        "from: edge of stage, to: back wall", "from: back wall, to: edge of stage"
    )
    assert codes(turned % "27'-6\"") == ["chain-open"]


def test_a_distance_from_a_line_to_itself_is_refused() -> None:
    text = HEAD + "decks: []\ndistances: [{from: back wall, to: back wall, length: 1 m}]\n"
    (told,) = problems(text)
    assert "[distance-from-itself]" in told


@pytest.mark.parametrize("stops", ["[pit]", "[pit, stage, pit]"])
def test_a_lift_has_two_levels_at_least_each_told_once(stops: str) -> None:
    (told,) = problems(HEAD + f"decks: []\nlifts: [{{name: Pit, stops: {stops}}}]\n")
    assert "[lift-levels]" in told


def test_a_lift_and_an_opening_answer_shows() -> None:
    text = UNDRAWN % "" + (
        "opening_width: 41'-10\"\nopening_height: 25 ft\nopening_as_set: 20'-6\"\ntraps: none\n"
        "lifts: [{name: Pit lift, load_moving: 45 psf, load_locked: 110 psf}]\n"
    )
    assert verdict(text, "proscenium width", "at least: 12 m") == "fits"
    assert verdict(text, "proscenium width", "at least: 13 m") == "short"
    assert verdict(text, "proscenium height", "at least: 6 m") == "fits"
    assert verdict(text, "proscenium height", "at least: 7 m") == "short"
    assert verdict(text, "traps", "at least: 1") == "short"
    assert verdict(text, "stage lift load", "at least: 5 kPa") == "fits"
    assert verdict(text, "stage lift load", "at least: 6 kPa") == "short"
    assert verdict(UNDRAWN % "", "proscenium height", "at least: 6 m") == "ask"
    assert verdict(UNDRAWN % "" + "lifts: none\n", "stage lift load", "at least: 1 kPa") == "short"


def test_a_house_without_a_proscenium_limits_no_opening() -> None:
    text = UNDRAWN % "" + "opening_width: none\nopening_as_set: none\n"
    assert verdict(text, "proscenium width", "at least: 40 m") == "fits"
    assert verdict(text, "proscenium height", "at least: 40 m") == "fits"


def test_slow_speeds_are_read_as_a_plate_gives_them() -> None:
    # Exact by definition: 1 ft = 0.3048 m, 1 min = 60 s.
    assert Speed.read("5 ft/min").si == pytest.approx(0.0254)
    assert Speed.read("20 ft a minute").si == pytest.approx(0.1016)
    assert Speed.read("6 m/min").si == pytest.approx(0.1)
    assert Speed.read("10 ft/s").si == pytest.approx(3.048)
