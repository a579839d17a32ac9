"""
Three invented acts, a club, a theatre and an arena act, against the demo and the quarry.

Each expected verdict is reasoned from the venue's and the rider's own text, which stand beside it.
1 ft = 0.3048 m, 1 lb = 0.45359237 kg.
"""

from functools import cache
from pathlib import Path

import pytest

from builder.cautions import STAGE
from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record

ROOT = Path(__file__).parents[2]
RIDERS = ROOT / "tests" / "riders"
QUARRY = ROOT / "tests" / "venues" / "quarry"


FOLDERS = {
    "demo": ROOT / "venue",
    "quarry": QUARRY,
    "civic": ROOT / "tests" / "transcribed" / "civic",
}


@cache
def house(name: str) -> Record:
    """A venue's part of the pack that the check reads."""
    folder = read_folder(FOLDERS[name])
    return fit_record(pack_of(venue_of(folder.texts, folder.photos)))


def checked(venue: str, *acts: str) -> Record:
    """The result of a show day."""
    riders = [
        rider_of((RIDERS / f"{act}.yml").read_text("utf-8"), file=f"{act}.yml", rules=RULES)
        for act in acts
    ]
    return fit(house(venue), riders)


def verdict_of(result: Record, title: str, act: str = "") -> str:
    """The verdict under a title."""
    found = [
        each for each in result["verdicts"] if each["title"] == title and act in ("", each["act"])
    ]
    assert found, (title, [each["title"] for each in result["verdicts"]])
    return str(found[0]["verdict"])


CLUB_IN_THE_DEMO = [
    ("Stage width, clear", "fits"),  # 20 ft = 6.10 m of 16.0 m
    ("Stage depth, clear", "fits"),  # 14 ft = 4.27 m of 9.6 m
    (
        "Height to the lowest thing above the deck",
        "fits, with a note",
    ),  # 10 ft = 3.05 m of 9.1 m, and the back truss at 7.6 m is told
    (
        "Input lines from the stage",
        "fits, with a note",
    ),  # 24 of the split's 56; way 11 of drop box A has a bent shell
    ("Ways of the split", "not needed"),  # the show carries it
    # 13 of 14, 4, 12, 3, 8, 4 and 2 are 46 that work, beside clip-ons that nobody has counted; 8
    # are asked.
    ("Microphones that work, all classes together", "fits, with a note"),
    (
        "Radio channels at once",
        "ask",
    ),  # how many are free at once is no matter of the house's own stock
    ("Stereo in-ear mixes", "not needed"),  # the show carries them
    ("From the datum to the mix position", "short"),  # 28.5 m against 60 ft = 18.29 m at most
    # No voltage is stated. Two of nine 16 A outlets, one each on L1 and L2; the intake has 376 A
    # even with the kitchen's 80 A breaker full.
    ("Power for backline", "fits, with a note"),
    (
        "Stage plot",
        "fits, with a note",
    ),  # one riser in the middle, 2.4 m high below the duct's 8.6 m; its weight is taken as spread
    (
        "Trucks and the largest case",
        "fits",
    ),  # 11 m of 16.5 m by Rope Street; the arch of Basin Lane does not matter there
    ("Load-in", "fits"),  # 16:00, from 07:00
    ("End of the show", "fits"),  # Friday 23:00, curfew 23:30
    ("Level of the show", "ask"),  # 100 dB says neither weighting, metric nor place
]

THEATRE_IN_THE_DEMO = [
    ("Stage width, clear", "fits"),  # 40 ft = 12.19 m of 16.0 m
    ("Stage depth, clear", "fits"),  # 30 ft = 9.14 m of 9.6 m
    (
        "Height of the deck above the audience floor",
        "fits",
    ),  # 1.35 m lies in 3 ft to 4.5 ft = 0.91 to 1.37 m
    (
        "Height of the low steel above the deck",
        "fits, with a note",
    ),  # 28 ft = 8.53 m under every beam but the hall beam, 8.10 m
    (
        "Dock height above the road or forklifts",
        "fits",
    ),  # the dock's 1.2 m is below 48 in = 1.219 m, but a forklift is there
    ("Parking for buses", "fits"),  # 2 of 2
    ("Outlets for buses", "fits, with a note"),  # 2 of 2, at extra charge
    ("Width of the mix position", "fits"),  # 12 ft = 3.66 m of 4.8 m
    ("From the datum to the mix position", "fits"),  # 28.5 m lies in 60 to 95 ft = 18.29 to 28.96 m
    ("Mix position under a balcony", "fits"),
    ("Input lines from the stage", "fits, with a note"),  # 48 of 56; way 11 of drop box A
    ("Haze allowed", "fits, with a note"),  # the house asks for notice and a watcher
    (
        "Power for lighting",
        "fits, with a note",
    ),  # 400 A at 80 % less the dimmers' 65 A leaves 255 A; straight-line distance noted
    (
        "Power for sound",
        "fits, with a note",
    ),  # 125 A at 80 % less 36.4 A on L2 leaves 63.6 A; the lighting switch's dimmers share the intake  # noqa: E501
    # 63 A at 80 % less 2.2 A leaves 48.2 A; all three loads ask 295 A of the intake's 376 A at
    # least. The act names its 32 A connector without the colour that tells the voltage, so whether
    # it is the house's red one is a note.
    ("Power for rigging", "fits, with a note"),
    # 1,000 lb = 453.6 kg, 1,500 lb = 680.4 kg, 300 lb = 136.1 kg. Left on points and beams: the
    # rigging page of the demo.
    (
        "Hang: Front truss",
        "fits, with a note",
    ),  # R3-4 has 1,000 less the front truss's 544 kg with a hoist slack left: 456 kg for 453.6 kg;
    # beam R3 1,761 kg for 1,361 kg. Counting the house's hangs at their worst is the note.
    ("Hang: Mid truss", "fits"),  # nothing hangs on R5-2, R5-4, R5-6
    # R6-4 has 1,000 less 371 kg left as planned, 629 kg, and 384 kg with a hoist slack: 453.6 kg
    ("Hang: Back truss", "ask"),
    ("Trim of Back truss", "fits"),  # steel at 9.6 m less 1.4 m is 8.2 m; 24 ft = 7.32 m
    (
        "Hang: Loudspeakers left",
        "short",
    ),  # R3-7 takes them, but beam R3 has 1,761 - 1,361 = 400 kg left for 680 kg
    ("Hang: Loudspeakers right", "short"),  # so it is on the other side
    # R7-1 and R7-3 carry 600 kg each and nothing; with all hangs before it a limit above them is
    # used to more than the 80 % from which the house asks its engineer, and that is the note.
    ("Hang: Banner", "fits, with a note"),
    ("Stage plot", "short"),  # a column stands where the dimmer racks should
    (
        "Trucks and the largest case",
        "ask",
    ),  # 53 ft of trailer alone; 16.5 m is for all
    ("End of the show", "fits"),  # Tuesday 22:30, curfew 22:30
    ("Level of the show", "short"),  # 102 dB(A) against 99 dB(A)
    ("A question", "ask"),
]

ARENA_IN_THE_QUARRY = [
    ("Stage width, clear", "short"),  # 40 ft of 60 ft
    ("Stage depth, clear", "short"),  # 30 ft of 40 ft
    ("Height of the deck above the audience floor", "fits"),  # 5 ft
    ("Uniform load the deck carries", "fits"),  # 150 psf, exactly
    ("Wings level with the deck", "short"),  # stage right is not
    ("Rigging points in service", "short"),  # a dozen of 74
    ("Forklifts", "ask"),  # a telehandler is no forklift; nobody says there is none
    ("Trucks unloading at once", "short"),  # 1 of 3
    ("Parking for buses", "short"),  # 4 of 6
    ("Crowd barrier", "ask"),  # not described
    ("Inputs of the house system's processor", "fits"),  # 8, 4 asked
    ("Input lines from the stage", "ask"),  # splits: ?
    ("Power for lighting", "short"),  # 400 A at 80 % less the work light's 20 A leaves 300 A
    (
        "Power for sound",
        "short",
    ),  # dimmers hang on the lighting panel, and the sound panel has at most 160 - 60 = 100 A
    # The roof's 18,000 lb less the front wash with its hoists, 868 lb times 1.2, leaves 16,958 lb;
    # the house multiplies by 1.2.
    ("Hang: Mains", "short"),  # 6 times 4,000 lb times 1.2 = 28,800 lb
    ("Hang: Sides left", "short"),  # the roof is full already
    ("Stage plot", "short"),  # a wall of 50 ft on a deck of 40 ft
    ("Trucks and the largest case", "short"),  # 70 ft against 34 ft
    ("Load-in", "ask"),
    ("End of the show", "fits"),  # 22:00, curfew 22:00
    ("Level of the show", "ask"),  # the limit is at the ranch gate
]


@pytest.mark.parametrize(("title", "verdict"), CLUB_IN_THE_DEMO)
def test_the_club_act_in_the_demo(title: str, verdict: str) -> None:
    assert verdict_of(checked("demo", "club"), title) == verdict


@pytest.mark.parametrize(("title", "verdict"), THEATRE_IN_THE_DEMO)
def test_the_theatre_act_in_the_demo(title: str, verdict: str) -> None:
    assert verdict_of(checked("demo", "theatre"), title) == verdict


@pytest.mark.parametrize(("title", "verdict"), ARENA_IN_THE_QUARRY)
def test_the_arena_act_in_the_quarry(title: str, verdict: str) -> None:
    assert verdict_of(checked("quarry", "arena"), title) == verdict


def test_each_act_as_a_whole() -> None:
    assert [checked("demo", act)["verdict"] for act in ("club", "theatre", "arena")] == [
        "ask",
        "short",
        "short",
    ]
    assert [checked("quarry", act)["verdict"] for act in ("theatre", "arena")] == ["short", "short"]


def test_what_the_theatre_act_s_loudspeakers_lack_is_told_to_the_kilogram() -> None:
    # Beam R3: 3,000 kg less the house's 1,239.2 kg leave 1,760.8 kg. Three times 453.6 and once
    # 680.4 kg are 2,041.2 kg.
    found = next(
        each
        for each in checked("demo", "theatre")["verdicts"]
        if each["title"] == "Hang: Loudspeakers left"
    )
    assert (
        found["reason"]
        == "1,761 kg left on beam R3, and the show's hangs so far bring 2,041 kg: 280 kg too much."
    )
    assert found["margin"] == ["−280 kg", "−618 lb"]
    assert found["remedy"].endswith(
        "Ask whether the house can take down what hangs there: Main right, Front truss, Main left."
    )


WANTED_OF_THE_DEMO = [
    ("inputs", 56, "fits, with a note", "56"),  # exactly the split's ways
    ("inputs", 57, "short", "56"),
    ("split ways", 56, "fits, with a note", "56"),
    ("split legs", 3, "fits", "3"),  # legs: 3
    ("split legs", 4, "short", "3"),
    ("wedges", 13, "fits, with a note", "13"),  # 13 of 14 work; the line is limited
    ("wedges", 14, "short", "13"),
    ("radio microphones", 7, "fits, with a note", "7"),  # 7 of 8 work; the line is limited
    ("radio microphones", 8, "short", "7"),
    (
        "microphones",
        46,
        "fits, with a note",
        "46",
    ),  # 13 + 4 + 12 + 3 + 8 + 4 + 2, and the clip-ons' working: ?
    ("microphones", 47, "ask", "46"),
    ("direct boxes", 20, "fits", "20"),  # 10 + 8 + 2
    ("direct boxes", 21, "short", "20"),
    ("microphone stands", 54, "fits", "54"),  # 24 + 12 + 6 + 4 + 8
    ("microphone stands", 55, "short", "54"),
]


@pytest.mark.parametrize(("what", "count", "verdict", "has"), WANTED_OF_THE_DEMO)
def test_what_the_demo_has_in_its_store_is_counted_by_what_works(
    what: str, count: int, verdict: str, has: str
) -> None:
    asking = rider_of(
        f"act: Act\nneeds: [{{what: {what}, at least: {count}}}]\n", file="act.yml", rules=RULES
    )
    found = fit(house("demo"), [asking])["verdicts"][0]
    assert (found["verdict"], found["fact"]["text"]) == (verdict, has)


def test_the_theatre_act_s_spots_find_no_points_in_the_quarry_which_allows_no_bridles() -> None:
    found = [
        each
        for each in checked("quarry", "theatre")["verdicts"]
        if each["title"].startswith("Hang: ")
    ]
    assert [each["verdict"] for each in found] == ["short"] * 6
    assert all("the house allows none" in each["reason"] for each in found)


def test_on_one_day_the_club_act_lacks_depth_in_front_of_the_theatre_act() -> None:
    # 9.6 m less 5 m that stays, less 0.9 m aisle, is 3.7 m; 14 ft = 4.27 m are asked.
    day = checked("demo", "club", "theatre")
    assert verdict_of(day, "Deck depth for Five Wet Dogs in front of what stays") == "short"
    radio = next(
        each
        for each in day["verdicts"]
        if each["act"] == "The day" and each["title"] == "Radio channels at once"
    )
    assert radio["need"] == "at least 20 together (6 + 14)"
    # What no act asks alone stands on no line of a rider.
    assert {each["line"] for each in day["verdicts"] if each["act"] == "The day"} == {0}


def parts_of(venue: str, act: str) -> dict[str, Record]:
    """The parts of an act's stage plot, by rectangle."""
    found = next(each for each in checked(venue, act)["verdicts"] if each["title"] == "Stage plot")
    return {part["title"]: part for part in found["parts"]}


def test_the_theatre_act_s_plot_in_the_demo() -> None:
    # The racks take 8.84 to 11.28 m SR and 3.66 to 4.88 m US; the column stands at 10.4 to 10.8 m
    # SR and 4.0 to 4.4 m US. Past it upstage are 4.4 - 3.66 = 0.74 m, downstage 4.88 - 4.0 = 0.88
    # m. 907.2 kg on 2.97 m² are 2.99 kPa of the cellar's 3.5.
    parts = parts_of("demo", "theatre")
    # What stands under the mid and the back truss says no height, so the trusses are told.
    assert list(parts) == ["Band risers", "Grand piano", "Dimmer racks"]
    assert parts["Band risers"]["verdict"] == "fits, with a note"
    assert parts["Dimmer racks"]["remedy"] == "Move it 742 mm (2'-5\") upstage."
    assert parts["Dimmer racks"]["fact"]["key"] == "stage.obstruction.wing-column"


def test_the_arena_act_s_plot_in_the_quarry() -> None:
    # 104 psf of 150 under the riser. The wall is 25 ft to each side of the centre, the deck 20 ft.
    # Monitor world ends at 36 ft SL, its wing at 32 ft. The wing stage right has a step. Nobody
    # says what one foot may press with on the deck.
    parts = parts_of("quarry", "arena")
    verdicts = {name: (part["verdict"], part["margin"][1]) for name, part in parts.items()}
    assert verdicts == {
        "Video wall": ("short", "−5'-0\""),
        "Monitor world": ("short", "−4'-0\""),
        "Guitar world": ("fits, with a note", ""),
        "Side tower": ("ask", ""),
    }


def test_on_one_day_the_club_act_s_riser_stands_in_the_theatre_act_s_backline() -> None:
    # The riser takes 8 to 16 ft US, the backline 15 to 21 ft: 1 ft = 305 mm.
    found = next(
        each
        for each in checked("demo", "club", "theatre")["verdicts"]
        if each["title"] == "Stage plot of Five Wet Dogs beside what stays"
    )
    assert (found["verdict"], found["reason"]) == (
        "short",
        "Drum riser overlaps Backline of Pale Ferrymen by 305 mm, which stays.",
    )


def test_the_caution_of_the_stage_stands_beside_every_plot() -> None:
    for venue, act in (("demo", "club"), ("demo", "theatre"), ("quarry", "arena")):
        assert STAGE in checked(venue, act)["cautions"]


def test_every_verdict_but_not_needed_says_why_and_every_ask_has_its_question() -> None:
    for venue in ("demo", "quarry"):
        for found in checked(venue, "club", "theatre", "arena")["verdicts"]:
            assert found["reason"]
            assert bool(found["question"] or found["act_question"]) == (found["verdict"] == "ask")
            assert bool(found["remedy"]) == (found["verdict"] == "short")


def test_every_described_rule_finds_its_place_in_a_house() -> None:
    """
    The demo describes nearly all; the quarry and a civic hall what it has not, such as lifts or a
    pit.
    """
    lacking = [
        rule["key"]
        for rule in house("demo")["rules"]
        if rule["section"] and not any(is_found(rule, house(venue)) for venue in FOLDERS)
    ]
    assert lacking == []


def is_found(rule: Record, told: Record) -> bool:
    """Whether a house tells the value that answers a rule."""
    sections = {section["key"]: section for section in told["sections"]}
    there = sections.get(rule["section"], {"items": []})
    items = [item for item in there["items"] if item["kind"] == rule["item"]]
    return any(rule["value"] == "" or rule["value"] in item["values"] for item in items)
