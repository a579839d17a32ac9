"""
Clocks and houses' hours from a seed, many of them near a day that just closes, for the check of the
day and its twin.
"""

from typing import TYPE_CHECKING, Any

from builder.fit.clock.acts import LENGTHS, TIMES
from tests.fit.sample import Record, item, value

if TYPE_CHECKING:
    from tests.fit.pairs import Dice

USUAL_H = {
    "load in": (5, 14),
    "check from": (11, 18),
    "doors": (17, 20),
    "on stage": (18, 25),
    "ends": (19, 26),
}
USUAL_MIN = {
    "set up": (0, 480),
    "line check": (0, 30),
    "check": (0, 120),
    "clear after check": (0, 30),
    "set": (20, 140),
    "changeover": (5, 45),
    "strike": (0, 15),
    "load out": (30, 300),
}
PARTS_MIN = {"roll on": (0, 10), "patch": (0, 8), "monitors": (0, 8), "spare": (0, 5)}


def clock(**told: Any) -> Record:
    """
    A clock with these times in hours and lengths in minutes, underscores for spaces; nothing else
    is said.
    """
    said = {name.replace("_", " "): given for name, given in told.items()}
    blank: Record = {"line": 4, "day": said.get("day", "tuesday"), "parts": said.get("parts")}
    times = {name: float(round(said[name] * 3600)) if name in said else None for name in TIMES}
    return {
        **blank,
        **times,
        **{name: said[name] * 60.0 if name in said else None for name in LENGTHS},
    }


def parts(**told: Any) -> Record:
    """Parts of a changeover in minutes; lines, lines a minute and before as they are."""
    said = {name.replace("_", " "): given for name, given in told.items()}
    lengths = {name: said[name] * 60.0 if name in said else None for name in PARTS_MIN}
    return {
        "line": 5,
        **lengths,
        "lines": said.get("lines"),
        "lines a minute": said.get("lines a minute"),
        "before": said.get("before", False),
    }


def a_clock(dice: "Dice", place: int) -> Record | None:
    """
    A rider's clock, more or less whole; the acts of a day mostly agree on doors, and mostly play
    one after another.
    """
    if dice.yes(0.1):
        return None
    share = dice.one((0.7, 0.95, 1.0, 1.0))
    times = {
        name: dice.random.randint(4 * low, 4 * high) * 900.0 % 86400 if dice.yes(share) else None
        for name, (low, high) in USUAL_H.items()
    }
    if dice.yes(0.8):
        times |= {
            "doors": dice.one((None, 68400.0)),
            "on stage": 70200.0 + place * dice.one((3600.0, 4500.0)),
            "ends": None,
        }
    length = {
        name: dice.random.randint(low, high) * dice.one((60.0, 60.0, 20.0))
        for name, (low, high) in USUAL_MIN.items()
    }
    lengths = {name: each if dice.yes(share) else None for name, each in length.items()}
    for name in ("check from", "ends", "changeover", "line check"):
        if dice.yes(0.6):
            times, lengths = (
                {key: None if key == name else each for key, each in one.items()}
                for one in (times, lengths)
            )
    day = dice.one(("", "monday", "tuesday", "friday", "saturday"))
    return {
        "line": dice.random.randint(0, 40),
        "day": day,
        "parts": some_parts(dice, share),
        **times,
        **lengths,
    }


def some_parts(dice: "Dice", share: float) -> Record | None:
    """The parts of a changeover, or none."""
    if dice.yes(0.4):
        return None
    lengths = {
        name: dice.random.randint(low, high) * 60.0 if dice.yes(share) else None
        for name, (low, high) in PARTS_MIN.items()
    }
    counts = {
        "lines": float(dice.random.randint(0, 60)),
        "lines a minute": float(dice.random.randint(1, 7)),
    }
    return {
        "line": 9,
        **lengths,
        **{name: each if dice.yes(share) else None for name, each in counts.items()},
        "before": dice.yes(0.2),
    }


def hours(dice: "Dice") -> dict[str, Record]:
    """What a house's identity says of the day."""
    found = {
        "load_out_until": value("x", dice.one((0.0, 3600.0, 7200.0, 84600.0))),
        "checks_end_before_doors": value("x", dice.one((0.0, 900.0, 1800.0))),
        "doors_before_show": value("x", dice.one((0.0, 2700.0, 3600.0))),
        "quiet_hours": value(standing=dice.one(("none", "unknown"))),
    }
    return {
        name: each if dice.yes(0.9) else value(standing=dice.one(("unknown", "none")))
        for name, each in found.items()
        if dice.yes(0.8)
    }


def quiet(dice: "Dice") -> list[Record]:
    """Quiet hours, some over midnight."""
    found = []
    for _ in range(dice.one((0, 0, 1, 1, 2))):
        first = dice.random.randint(20, 44) * 1800.0 % 86400
        last = (first + dice.random.randint(1, 6) * 1800.0) % 86400
        days = dice.one(("every day", "Monday to Friday", "Saturday and Sunday", "school term"))
        found.append(
            item(
                "quiet",
                days,
                **{"from": value("x", first), "until": value("x", last, stale=dice.yes(0.1))},
            )
        )
    return found


def crew(dice: "Dice") -> list[Record]:
    """How a house calls its crew, or nothing of it."""
    lengths_h = {
        "meal_after": (0, 6),
        "meal_break": (0, 1),
        "shortest_call": (2, 5),
        "longest_call": (8, 16),
    }
    told = {
        name: value("x", dice.random.randint(4 * low, 4 * high) * 900.0)
        for name, (low, high) in lengths_h.items()
        if dice.yes(0.9)
    }
    known = {
        name: each if dice.yes(0.9) else value(standing=dice.one(("unknown", "none")))
        for name, each in told.items()
    }
    return [item("crew", "Local crew", **known)] if dice.yes(0.8) else []
