"""Roofs and hang plans by chance, limits met to the gram, for the check and its twin."""

from typing import TYPE_CHECKING, Any

from tests.fit.sample import Record, a_list, item, value

if TYPE_CHECKING:
    from tests.fit.pairs import Dice

BEAMS = ("R1", "r2", "Bäm & 3")
STANDINGS = ("stated",) * 60 + ("unknown", "none", "not stated")


def kilos(dice: "Dice", most: int) -> float:
    """A mass that meets others: whole hundreds, or off by a gram or a hair."""
    return float(dice.random.randint(0, most) * 100) + dice.one(
        (0.0, 0.0, 0.0, 0.001, -0.0009, 0.0011, 33.3)
    )


def some(dice: "Dice", number: float) -> Record:
    """A mass, or not."""
    standing = dice.one(STANDINGS)
    stated = standing == "stated"
    return value(
        "x" if stated else "",
        number if stated else None,
        standing,
        stale=dice.yes(0.1),
        checked=dice.one(("2026-01-01 by crew", "")),
    )


def bare(text: str, number: float | None) -> Record:
    """A value that is only counted with."""
    return {"standing": "stated", "text": text, "number": number}


def rigging_items(dice: "Dice") -> list[Record]:
    """A roof of a few beams, with points, zones and rules."""
    found: list[Record] = []
    for index, beam in enumerate(BEAMS[: dice.one((1, 2, 2, 2, 3))]):
        kept = {
            "left": some(dice, 500.0 + kilos(dice, 30)),
            "limit": some(dice, 3000.0),
            "carried": bare("x", kilos(dice, 2)),
        }
        found.append(
            item(
                "beam",
                beam,
                condition=dice.one(("in service",) * 12 + ("out of service",)),
                **chosen(dice, kept, 0.99),
            )
        )
        for number in range(dice.random.randint(3, 5)):
            at = {
                "at.across": bare("x", number * 2.0),
                "at.depth": bare("x", index * 3.0),
                "low-steel": bare("x", dice.one((9.0, 9.0, 8.5, 8.5, None))),
            }
            kept = {
                **at,
                "limit": some(dice, 300.0 + kilos(dice, 20)),
                "carried": {
                    "number": dice.one((0.0,) * 20 + (None, kilos(dice, 3))),
                    **dice.one(({}, {}, {"hangs": "Front truss"}, {"hangs": "Bar, mirror"})),
                },
            }
            states = {
                "condition": dice.one(("in service",) * 40 + ("limited", "out of service")),
                "terms": dice.one(("",) * 40 + ("not for visitors",)),
            }
            point = item(
                "point",
                f"{beam}-{number}",
                **states,
                note=dice.one(("", "Cracked.")),
                **chosen(dice, kept, 0.99),
            )
            found.append(
                {
                    **point,
                    "words": {
                        **point["words"],
                        "beam": beam.upper() if dice.yes(0.1) else beam,
                    },
                }
            )
    return [*found, *rules_of(dice)]


def chosen(dice: "Dice", values: dict[str, Record], share: float) -> dict[str, Record]:
    """Most of some values."""
    return {name: each for name, each in values.items() if dice.yes(share)}


def rules_of(dice: "Dice") -> list[Record]:
    """Zones, the roof, bridles, the factor, hoists."""
    found = []
    if dice.yes():
        found.append(
            item(
                "zone",
                "Stage",
                beams=a_list("R1", "R2"),
                points=a_list("Bäm & 3-1"),
                left=some(dice, 1000.0 + kilos(dice, 40)),
                limit=some(dice, 4000.0),
            )
        )
    leaning = {
        "directions": bare(dice.one(("at an angle",) * 9 + ("straight down only",)), None),
        "widest_lean": bare("x", dice.one((0.5, 0.2, 0.2, 0.8))),
    }
    if dice.yes():
        found.append(
            item(
                "exception",
                "E",
                beams=a_list(*dice.one((("R1", "R2"), ("r1",)))),
                points=a_list("Bäm & 3-1"),
                **chosen(dice, leaning, 0.95),
            )
        )
    if dice.yes(0.95):
        spacing = value(
            "x", dice.one((1.2, 1.2, 2.0, 2.5)), standing=dice.one(("stated", "none", "not stated"))
        )
        if dice.yes(0.1):
            spacing = value(standing="unknown")
        found.append(
            item(
                "roof",
                "Whole roof",
                left=some(dice, 2000.0 + kilos(dice, 60)),
                limit=some(dice, 6000.0),
                spacing_at_least=spacing,
                **chosen(dice, leaning, 0.95),
            )
        )
    if dice.yes(0.85):
        angle = chosen(
            dice, {"widest_angle": bare("x", dice.one((0.0, 0.0, 0.5, -0.5, -0.7)))}, 0.7
        )
        found.append(
            item(
                "bridles_allowed",
                "Bridles",
                allowed=value(dice.one(("yes", "yes", "yes", "no", "between some beams"))),
                beams=a_list("R1", "r2"),
                **angle,
            )
        )
    elif dice.yes():
        found.append(
            item("house", "Rigging", bridles_allowed=value(standing=dice.one(("none", "unknown"))))
        )
    if dice.yes(0.3):
        found.append(
            item("dynamic_factor", "Factor", factor=value("x", dice.one((1.0, 1.2, 1.25))))
        )
    for name in ("H1", "H2")[: dice.random.randint(0, 2)]:
        kept = {
            "weight": value("x", dice.one((34.0, 52.0))),
            "free": value("x", float(dice.random.randint(0, 9))),
            "rating": value("x", dice.one((250.0, 500.0, 2000.0))),
        }
        found.append(
            item(
                "hoist",
                name,
                condition=dice.one(("in service", "in service", "limited", "out of service")),
                **chosen(dice, kept, 0.9),
            )
        )
    return found


def a_hang(dice: "Dice") -> Record:
    """
    A hang with 1 to 9 supports: loads stated, or to be worked out, sometimes such that a support
    would push.
    """
    count = dice.one((1, 1, 1, 1, 2, 2, 3, 3, 4, 5, 9))
    stated = dice.yes(0.4)
    supports = [a_support(dice, index, stated) for index in range(count)]
    loads = [] if stated else [a_load(dice, count) for _ in range(dice.random.randint(1, 4))]
    hoists = dice.one(("", "show", "house", "counted", "none"))
    return {
        "supports": supports,
        "loads": loads,
        "hoists": hoists,
        "hoist_kg": 52.0 if hoists == "show" else 0.0,
        "held": dice.one((None, None, 0.1)),
    }


def a_support(dice: "Dice", index: int, stated: bool) -> Record:
    """A support at a point, at a spot near one, or nowhere."""
    way = dice.one(("point",) * 8 + ("spot",) * 6 + ("bridle",) * 8 + ("none",))
    off_m = dice.one((0.0, 0.0, 0.02, 0.1, 0.25, 0.25, 0.2500001, 0.3, -0.25))
    spot: dict[str, Any] = {
        "across_m": dice.random.randint(0, 3) * 2.0 + off_m,
        "depth_m": dice.one((0.0,) * 5 + (3.0, 1.5)),
    }
    if way == "bridle":
        between = {
            "across_m": dice.random.randint(0, 2) * 2.0 + dice.one((0.0, 0.0, 0.0, 0.3)),
            "depth_m": 1.5,
            "apex_m": dice.one((6.0, 6.0, 7.5, 8.2)),
        }
        return {
            "point": "",
            **between,
            "at_m": index * 2.0,
            "load_kg": abs(kilos(dice, 4)) if stated else None,
        }
    name = f"{dice.one((*BEAMS[:1] * 9, *BEAMS))}-{dice.random.randint(0, 3)}"
    at = {
        "at_m": index * dice.one((2.0, 2.0, 2.1, 0.5)) + index * 0.01,
        "load_kg": abs(kilos(dice, 6)) if stated else None,
    }
    if way == "spot":
        return {"point": "", **spot, "apex_m": dice.one((None, 6.0, 7.5, 8.2, 8.8)), **at}
    return {
        "point": dice.one((name, name, name.upper())) if way == "point" else "",
        "across_m": None,
        "depth_m": None,
        "apex_m": None,
        **at,
    }


def a_load(dice: "Dice", count: int) -> Record:
    """A load at a place, or spread."""
    from_m = dice.random.randint(-2, count * 4) / 2.0
    to_m = from_m if dice.yes(0.4) else from_m + dice.random.randint(1, 9) / 2.0
    return {"from_m": from_m, "to_m": to_m, "kg": abs(kilos(dice, 5))}


def a_trim(dice: "Dice") -> Record:
    """How high a hang should go."""
    return {
        "trim_m": dice.one((6.0, 7.5, 8.5, 8.525, 8.5251, 9.0)),
        "below_m": dice.one((None, 0.0, 1.0, 1.02)),
    }
