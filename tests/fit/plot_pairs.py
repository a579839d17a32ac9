"""
Stages and stage plots from a seed, with corners, edges and loads that meet exactly, by the
tolerance, or by a hair.
"""

from typing import Any

from tests.fit.sample import Record, a_list, item, value

WINGS = ("stage left", "stage right", "upstage")
TURNS = (0.0,) * 6 + (90.0, -90.0, 180.0, 45.0, 30.0, -7.5, 12.0, 721.3)
HAIR_M = (0.0,) * 6 + (0.025, -0.025, 0.0251, -0.0251, 0.05, 1e-10)


def box(left: float, right: float, front: float, back: float) -> list[list[float]]:
    """Four corners, anticlockwise."""
    return [[left, front], [right, front], [right, back], [left, back]]


def deck_outline(dice: Any) -> list[list[float]]:
    """A deck: a rectangle, one with a thrust, one with a corner cut off, one that is none."""
    half, depth = dice.one((4.0, 6.0, 8.0)), dice.one((6.0, 8.0, 10.0))
    plain = box(-half, half, 0.0, depth)
    thrust = [[-half, 0.0], [-2.0, 0.0], [-2.0, -3.0], [2.0, -3.0], [2.0, 0.0], *plain[1:]]
    aslant = [[-half, 2.0], [-half + 2.0, 0.0], *plain[1:]]
    found = dice.one(
        (
            plain,
            plain,
            plain,
            thrust,
            aslant,
            [[0.0, 0.0], [1.0, 1.0]],
            [plain[0], *plain],
            [*plain[:2], plain[3], plain[2]],
        )
    )
    return found if dice.yes(0.8) else list(reversed(found))


def number_of(dice: Any, *choices: float) -> Record:
    """A value with one of some numbers, or without one."""
    if dice.yes(0.85):
        number = dice.one(choices)
        if dice.yes(0.15):
            ends = ({"least": number}, {"most": number}, {"least": number, "most": number + 1.0})
            return value("x", **dice.one(ends))
        return value("x", number)
    return value(
        standing=dice.one(("unknown", "none", "not stated")), text=dice.one(("", "no limit"))
    )


def some(dice: Any, **values: Record) -> dict[str, Record]:
    """Some of these values."""
    return {name: each for name, each in values.items() if dice.yes(0.8)}


def loads(dice: Any) -> dict[str, Record]:
    """What a floor carries."""
    return some(
        dice,
        load=number_of(dice, 2500.0, 5000.0, 9806.65),
        point_load=number_of(dice, 100.0, 250.0, 900.0),
    )


def stage_parts(dice: Any, state: Any) -> tuple[list[Record], list[Record]]:
    """Items and outlines of a stage. Some items are not drawn, some drawings have no item."""
    items: list[Record] = []
    outlines: list[Record] = []

    def add(kind: str, name: str, corners: list[list[float]], values: dict[str, Record]) -> None:
        if dice.yes(0.95):
            items.append(item(kind, name, **(state(dice) if dice.yes(0.3) else {}), **values))
        if dice.yes(0.93):
            outlines.append({"kind": kind, "name": name, "corners": corners})

    for name in ("End stage", "Thrust", "Ünder <b>")[: dice.one((1, 1, 1, 2, 3, 0))]:
        usable = some(
            dice,
            usable_width=number_of(dice, 8.0, 16.0),
            usable_depth=number_of(dice, 6.0, 9.6),
            clear_height=number_of(dice, 3.0, 6.0),
        )
        in_some = (
            {"configurations": a_list(dice.one(("Standing", "Seated")))} if dice.yes(0.3) else {}
        )
        add("deck", name, deck_outline(dice), {**usable, **loads(dice), **in_some})
    edge = dice.one((4.0, 6.0, 8.0))
    for name, corners in zip(
        WINGS,
        (box(edge, edge + 4, 0, 6), box(-edge - 4, -edge, 0, 6), box(-4, 4, 8, 12)),
        strict=True,
    ):
        if dice.yes(0.6):
            level = some(
                dice,
                level_with_deck=value(dice.one(("yes", "yes", "no", ""))),
                clear_height=number_of(dice, 2.0, 5.0),
            )
            add(
                "wing", name, corners, {**level, **some(dice, load=number_of(dice, 2500.0, 5000.0))}
            )
    for name in ("Pit cover", "Lift")[: dice.random.randint(0, 2)]:
        left, front = float(dice.random.randint(-5, 4)), float(dice.random.randint(0, 5))
        add("zone", name, box(left, left + 3, front, front + 2), loads(dice))
    for name in ("Column", "Beam")[: dice.random.randint(0, 2)]:
        left, front = float(dice.random.randint(-5, 4)), float(dice.random.randint(0, 5))
        add(
            "obstruction",
            name,
            box(left, left + 0.5, front, front + 0.5),
            some(dice, from_height=number_of(dice, 2.0, 3.0)) if dice.yes() else {},
        )
    return items, outlines


def more_outlines(dice: Any, items: list[Record], outlines: list[Record]) -> list[Record]:
    """
    Outlines for the decks that have none, most of the time: a deck that nobody drew is asked about,
    and better than one that is short.
    """
    drawn = [each["name"] for each in outlines if each["kind"] == "deck"]
    decks = [
        each["name"]
        for each in items
        if each["kind"] == "deck" and each["name"] not in drawn and dice.yes(0.93)
    ]
    return [
        {"kind": "deck", "name": name, "corners": deck_outline(dice)}
        for name in dict.fromkeys(decks)
    ]


def a_rectangle(dice: Any, index: int, calm: bool) -> Record:
    """
    One rectangle: on a grid of half a metre, or off it by a hair.

    A calm one asks little and stands in the middle of most decks.
    """
    placed = calm or dice.yes(0.8)
    across = (
        dice.random.randint(-5, 5) + dice.one((0.0, 0.0, 0.02, -0.02))
        if calm
        else dice.random.randint(-12, 12) / 2 + dice.one(HAIR_M)
    )
    upstage = (
        dice.random.randint(2, 5) if calm else dice.random.randint(-1, 14) / 2 + dice.one(HAIR_M)
    )
    more = {
        "turned_deg": dice.one(TURNS),
        "on": dice.one(("",) * 6 + ("deck", *WINGS)),
        "height_m": dice.one((None, None, 2.0, 2.025, 2.0251, 4.0, 9.0)),
        "weight_kg": dice.one((None, None, 500.0, 1000.0, 2039.4324, 4000.0)),
        "foot_kg": dice.one((None, None, None, 100.0, 250.0, 250.1)),
        "lane": dice.yes(0.1),
        "around": dice.one(("", "", "R0 <b>", "R1 <b>")),
    }
    none = {
        "turned_deg": 0.0,
        "on": "",
        "height_m": None,
        "weight_kg": dice.one((None, 200.0)),
        "foot_kg": None,
        "lane": False,
        "around": "",
    }
    wall = {"width_m": 0.5, "depth_m": 7.0, "across_m": 0.0, "upstage_m": 3.0, **none}
    return {
        "name": f"R{index} <b>",
        "line": dice.random.randint(0, 40),
        "need": "x wide",
        "strictness": dice.one(("must", "must", "must", "should")),
        "width_m": (
            dice.one((1.0, 2.0)) if calm else dice.one((1.0, 2.0, 2.4384, 12.0, 16.025, 0.04))
        ),
        "depth_m": dice.one((1.0, 2.0)) if calm else dice.one((1.0, 2.0, 2.4384, 0.5, 0.04)),
        "across_m": float(across) if placed else None,
        "upstage_m": float(upstage) if placed else None,
        "stays": dice.one(("", "yes", "no", "no")),
        **(wall if dice.yes(0.06) else none if calm else more),
    }


def a_plot(dice: Any) -> Record:
    """A whole plot."""
    calm = dice.yes(0.35)
    return {
        "rectangles": [
            a_rectangle(dice, index, calm)
            for index in range(dice.one((1, 2) if calm else (1, 1, 2, 3, 5)))
        ]
    }
