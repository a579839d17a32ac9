"""Riders and packs from a seed, boundaries included, for the check and its twin."""

import random
from typing import Any

from tests.fit.clock_pairs import a_clock, crew, hours, quiet
from tests.fit.hang_pairs import a_hang, a_trim, rigging_items
from tests.fit.plot_pairs import a_plot, more_outlines, stage_parts
from tests.fit.sample import RULES, Record, a_list, item, value

PLACES = ("Stage left", "Stage right", "Dock", "Mix position")
STANDINGS = ("stated",) * 8 + ("unknown", "none", "not stated")
CONFIGURED = (("Standing",), ("Seated",), ("Standing", "Seated"), ("Standing, long thrust",))
NAMES = ("A", "B & C", "Ünder <b>", "__proto__", "constructor", "7", "A")
DAYS = ("", "monday", "tuesday", "friday", "saturday", "sunday")
SYSTEMS = ("230/400 V three phase 50 Hz", "120/208 V three phase 60 Hz", "230 V single phase", "")


class Dice:
    """All chance of one pair."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)

    def one(self, choices: Any) -> Any:
        """One of some choices."""
        return self.random.choice(list(choices))

    def number(self, scale: float) -> float:
        """
        A number near others of its kind, so that boundaries are met: whole, exact by half a unit,
        or a hair off.
        """
        base = self.random.randint(0, 20) * scale / 10
        return base + self.one(
            (0.0, 0.0, 0.025, -0.025, 0.0250001, scale / 1000, base * 0.005, 0.1 + 0.2, -base)
        )

    def yes(self, share: float = 0.5) -> bool:
        """True in this share of cases."""
        return self.random.random() < share


def aside(dice: Dice) -> Dice:
    """Chance beside that of a pair: what the pair draws after it stays as it was."""
    other = Dice(0)
    other.random.setstate(dice.random.getstate())
    other.random = random.Random(other.random.getrandbits(64))
    return other


def any_value(dice: Dice, rule: Record) -> Record:
    """A value that a rule may meet, in any standing."""
    standing = dice.one(STANDINGS)
    more = {
        "stale": dice.yes(0.1),
        "remembered": len(rule["key"]) % 7 == 0,
        "checked": dice.one(("2026-01-01 by crew", "2026-01-01 by crew", "")),
    }
    if standing != "stated":
        return value(standing=standing, **more)
    if rule["kind"] == "permission":
        return value(dice.one(("yes", "by arrangement", "no")), **more)
    if rule["kind"] == "yes":
        return value(dice.one(("yes", "no")), **more)
    if dice.yes(0.05):
        return value(dice.one(("no limit", "in words")), **more)
    found = (
        float(dice.random.randint(0, 9)) if rule["kind"] == "count" else dice.number(scale_of(rule))
    )
    if dice.yes(0.2):
        return value(f"about {found:.2f}", None, **more, **ends(dice, found))
    return value(f"{found:.2f}", found, **more)


def ends(dice: Dice, found: float) -> Record:
    """Two ends about a number, or one of them."""
    far = abs(dice.number(abs(found) + 1.0))
    both = {"least": found, "most": found + far}
    return dice.one((both, both, {**both, "least": None}, {**both, "most": None}))


def scale_of(rule: Record) -> float:
    """About how large numbers of a rule are."""
    return {
        "length": 10.0,
        "mass": 1000.0,
        "load": 5000.0,
        "area": 50.0,
        "current": 63.0,
        "duration": 14400.0,
        "share": 0.1,
        "temperature": 300.0,
        "data rate": 1e8,
    }.get(rule["kind"], 10.0)


def ruled_item(dice: Dice, rule: Record) -> Record:
    """An item that answers a rule, or nearly."""
    where = {
        name: value(text if dice.yes(0.9) else "other")
        for name, text in rule["where"]
        if name != "name"
    }
    name = next((text for name, text in rule["where"] if name == "name"), dice.one(NAMES))
    values = {**where, **({rule["value"]: any_value(dice, rule)} if rule["value"] else {})}
    if rule["otherwise"]:
        values = {
            **{name: each for name, each in values.items() if dice.yes()},
            **{name: any_value(dice, rule) for name in rule["otherwise"]},
        }
    if rule["item"] == "deck" and dice.yes():
        values["configurations"] = a_list(*dice.one(CONFIGURED))
    made = item(rule["item"], name, **state(dice), **values)
    return {**made, "words": {**made["words"], **borne(dice)}}


def borne(dice: Dice) -> dict[str, str]:
    """What is told, and asked, of that which bears an item."""
    told = {"bearers.told": "Beam 1, which it is on: limited."} if dice.yes(0.1) else {}
    asked = {"bearers.asked": "Board, which feeds it, is not for visitors"} if dice.yes(0.1) else {}
    return {**told, **asked}


def state(dice: Dice) -> dict[str, str]:
    """Condition, terms and note."""
    return {
        "condition": dice.one(("in service",) * 8 + ("limited", "out of service")),
        "state": dice.one(("",) * 8 + ("1 of 10 out of service, number 7",)),
        "terms": dice.one(("",) * 8 + ("extra charge", "by arrangement", "not for visitors")),
        "note": dice.one(("", "A note.")),
    }


def maybe(dice: Dice, **values: Record) -> dict[str, Record]:
    """Some of these values, some of them without a number."""
    kept = {name: each for name, each in values.items() if dice.yes(0.85)}
    return {
        name: each if dice.yes(0.9) else value(standing=dice.one(("unknown", "none")))
        for name, each in kept.items()
    }


def house_items(dice: Dice) -> list[Record]:
    """Curfews, limits and hours."""
    found = [
        item(
            "identity",
            "Hall",
            **maybe(
                dice,
                load_in_from=value("x", dice.random.randint(0, 24) * 1800.0),
                curfews=value(standing="none"),
                noise_limits=value(standing="none"),
            ),
            **hours(dice),
        ),
        *quiet(dice),
        *crew(dice),
    ]
    for _ in range(dice.random.randint(0, 2)):
        days = dice.one(
            (
                "Sunday to Thursday",
                "Friday and Saturday",
                "every day",
                "Saturday, Sunday",
                "school term",
            )
        )
        ends = value("x", dice.random.randint(40, 50) * 1800.0 % 86400)
        found.append(
            item(
                "curfew",
                days,
                **state(dice),
                music_ends=ends,
                strictness=value(dice.one(("hard", "soft", ""))),
            )
        )
    for _ in range(dice.random.randint(0, 2)):
        db = float(dice.random.randint(94, 104))
        over = {"over": value("x", dice.one((900.0, 3600.0)))} if dice.yes(0.8) else {}
        metric = dice.one(("equivalent level", "equivalent level", "peak level"))
        text = dice.one((f"{db:.0f} dB(A)", f"{db:.0f} dBA", f"{db:.0f} dB(C)", f"{db:.0f} dB"))
        found.append(
            item(
                "noise",
                dice.one(NAMES),
                level=value(text, db),
                metric=value(metric),
                measured_at=value(dice.one(("mix position", "Mix position", "gate"))),
                **over,
            )
        )
    return found


def access_items(dice: Dice) -> list[Record]:
    """Ways in."""
    found = []
    for name in ("Yard", "Lane")[: dice.random.randint(0, 2)]:
        sizes = maybe(
            dice,
            longest_truck=value("x", dice.number(16.0)),
            lowest_clearance=value("x", dice.number(4.0)),
            weight_limit=value("x", dice.number(40000.0)),
        )
        found.append(item("approach", f"{name} road", **state(dice), **sizes))
        found.append(
            item(
                "dock",
                name,
                **state(dice),
                **maybe(
                    dice,
                    approach=value(f"{name} road"),
                    trucks_at_once=value("x", float(dice.random.randint(0, 3))),
                ),
            )
        )
        for _ in range(dice.random.randint(0, 2)):
            tight = maybe(
                dice,
                tightest_width=value("x", dice.number(2.0)),
                tightest_height=value("no limit"),
                tightest_weight=value("x", dice.number(900.0)),
            )
            found.append(
                item(
                    "route",
                    "R",
                    **state(dice),
                    from_dock=value(name),
                    leads_to=value(dice.one(("deck", "audience floor"))),
                    **tight,
                )
            )
    return found


OTHER_WORDS = ("220/380 V", "240 V", "three phase", "3 phase 400 V")
"""Systems as riders write them that no house here does."""


def wiring(dice: Dice) -> Record:
    """What a node has of phases, wires and a transformer, as far as it is said."""
    found = {
        "wired": value(dice.one(("L1 L2 L3", "L1 L2 L3", "L1 L2 L3", "L1 L2", "L1"))),
        "wires": value("x", float(dice.random.randint(2, 5))),
    }
    if dice.yes(0.3):
        found["through"] = value("x", dice.one((0.5, 1.0, 1.7)))
        found["stands_on"] = value("x", dice.one((1.0, 2.0, 3.0)))
    return {key: each for key, each in found.items() if dice.yes(0.5)}


def power_items(dice: Dice) -> list[Record]:
    """Supplies, services and outlets, some in a loop."""
    found = []
    names = ["Intake", *(f"S{index}" for index in range(dice.random.randint(0, 5)))]
    for index, name in enumerate(names):
        free = {
            phase: value(f"{index}", dice.number(80.0))
            for phase in ("free.L1", "free.L2", "free.L3")
            if dice.yes(0.9)
        }
        for each in free.values():
            if dice.yes(0.1):
                most = each["number"]
                each |= {"number": None, "most": most, "least": dice.one((None, most / 2))}
        more = {
            "rating": value("x", 80.0),
            "dimmers": value(dice.one(("yes", "no"))),
            "connectors": a_list(
                *dice.one((("IEC 60309 125 A",), ("lugs", "Iec 60309 125 A"), ("lugs, M12",))),
                standing=dice.one(("stated", "stated", "none", "unknown")),
            ),
            "dedicated_to": value(dice.one(("sound", "lighting"))),
            "at.across": value("x", dice.number(9.0)),
            "at.depth": value("x", dice.number(9.0)),
        }
        kept = {key: each for key, each in more.items() if dice.yes(0.7)}
        fed = {"fed_from": value(dice.one(names))} if index and dice.yes(0.9) else {}
        words = dice.one(SYSTEMS)
        system = {"system": value(words)} if words else {}
        kept |= wiring(aside(dice))
        found.append(
            item(
                "supply" if index == 0 else "service",
                name,
                **state(dice),
                **free,
                **kept,
                **fed,
                **system,
            )
        )
    return [*found, *outlet_items(dice, names)]


def outlet_items(dice: Dice, names: list[str]) -> list[Record]:
    """
    Lines of outlets, some behind a breaker that is smaller than they are, some fed by nothing.
    """
    found = []
    for number in range(dice.random.randint(0, 4)):
        more = {
            "rating": value("x", dice.one((16.0, 32.0))),
            "breaker": value("x", dice.one((10.0, 16.0, 32.0))),
        }
        found.append(
            item(
                "outlet",
                dice.one(("IEC 60309 16 A", f"O{number}")),
                **state(dice),
                place=value(dice.one(PLACES)),
                count=value("x", float(dice.random.randint(0, 9))),
                phases=value(
                    dice.one(("in turn", "in turn", "in turn", "all", "L2", "L1 L3", "L1 L2"))
                ),
                fed_from=value(dice.one((*names, "nothing") if dice.yes(0.1) else names)),
                **{key: each for key, each in more.items() if dice.yes(0.8)},
            )
        )
        if aside(dice).yes(0.1):
            found[-1]["values"]["phases"] = value(standing="not stated")
        if aside(dice).yes(0.5):
            found[-1]["values"]["for-hours"] = value("12.8 A", 12.8)
    return found


def mix_items(dice: Dice) -> list[Record]:
    """A mix position, with an estimate of the house system or without."""
    level = value("100 dB(A)", 100.0) if dice.yes(0.8) else value(standing="unknown")
    error = (
        {"average_level_error": value("±5 dB", dice.one((5.0, 3.0, 1.0)))} if dice.yes(0.9) else {}
    )
    return (
        [
            item(
                "mix",
                dice.one(("Mix position", "Mix position", "Gate")),
                average_level=level,
                **error,
            )
        ]
        if dice.yes(0.8)
        else []
    )


def a_pack(dice: Dice) -> Record:
    """A pack in which any rule may find nothing, one item or several."""
    parts: dict[str, list[Record]] = {
        "house": house_items(dice),
        "access": access_items(dice),
        "stage": [],
        "power": power_items(dice),
        "sound": mix_items(dice),
    }
    parts["rigging"] = rigging_items(dice)
    for name in PLACES:
        parts["stage"].append(
            item(
                "place",
                name,
                **{
                    "at.across": value("x", dice.number(9.0)),
                    "at.depth": value("x", dice.number(9.0)),
                },
            )
        )
    # Rules have dice of their own: with another rule, all else falls as it did without.
    many = aside(dice)
    for rule in RULES:
        if rule["section"] in parts and many.yes(0.6) and rule["item"] not in ("dock", "mix"):
            parts[rule["section"]] += [
                ruled_item(many, rule) for _ in range(many.random.randint(0, 3))
            ]
    for name in NAMES[: dice.random.randint(0, 1)]:
        parts["sound"].append(
            item("dropbox", name, **state(dice), dead=value(dice.one(("", "11", "1, 2"))))
        )
    if dice.yes(0.2):
        parts["access"].append(
            item(
                "whole",
                "W",
                docks=value(standing="none"),
                vehicles=value(standing=dice.one(("none", "unknown"))),
            )
        )
    stage, outlines = stage_parts(dice, state)
    parts["stage"] += stage
    drawn = {"stage": [*outlines, *more_outlines(dice, parts["stage"], outlines)]}
    sections = [
        {
            "key": key,
            "title": key,
            "cautions": ["Take care."],
            "outlines": drawn.get(key, []),
            "items": items,
        }
        for key, items in parts.items()
        if dice.yes(0.93)
    ]
    return {
        "venue": "Hall",
        "revision": {"number": "1", "on": "2026-01-11"},
        "rules": RULES,
        "sections": sections,
        "spaces": [],
        "shared": [],
    }


def a_requirement(dice: Dice, act: str) -> Record:
    """One requirement of any sort."""
    many = ("rule",) * 6 + ("power",) * 3 + ("hang",) * 5 + ("plot",) * 3
    sort = dice.one((*many, "any", "trim", "trucks", "ends", "load in", "level", "question"))
    blank = {
        "act": act,
        "line": dice.random.randint(0, 40),
        "sort": sort,
        "department": dice.one(("stage", "power", "house")),
        "title": f"T {sort}",
        "need": "at least x",
    }
    blank |= {
        "strictness": dice.one(("must", "must", "should")),
        "carried": dice.one(("house", "house", "house", "show", "hire")),
    }
    if sort == "rule":
        return {**blank, **ruled(dice)}
    if sort == "any":
        parts = [
            {**blank, "sort": "rule", "title": f"P{index}", **ruled(dice)}
            for index in range(dice.random.randint(1, 3))
        ]
        return made_of(aside(dice), blank, parts)
    return {**blank, **deep(dice, sort)}


def worked(dice: Dice) -> Record:
    """Crew that is called, or something that the house sees to."""
    if dice.yes(0.3):
        return {"sort": "task"}
    long_s = dice.one((None, 3600.0, 4.0 * 3600, 9.0 * 3600, 20.0 * 3600))
    meals = float(dice.random.randint(0, 1))
    other = aside(dice)
    counts = {
        "count": float(other.random.randint(1, 12)),
        "beside": float(other.one((0, 0, 4))),
        "perhaps": float(other.one((0, 0, 6))),
    }
    who = other.one(("stagehands", "riggers", "wardrobe"))
    return {
        "sort": "call",
        "who": who,
        "able": other.one(("", "", "drive")),
        "long_s": long_s,
        "meals": meals,
        **counts,
    }


def made_of(dice: Dice, blank: Record, parts: list[Record]) -> Record:
    """A need that is made of others: one of them, all of them, or on a condition."""
    either = {**blank, "sort": "any", "any": parts}
    both = {**blank, "sort": "all", "all": parts, "turned": []}
    sort = dice.one(("any", "any", "all", "bundles", "if", "classes", "way", "turned"))
    if sort == "bundles":
        return {**either, "any": [both, parts[0]]}
    if sort == "turned":
        return {**both, "all": parts[:2], "turned": parts[:2][::-1]}
    if sort == "way":
        condition = {**blank, "carried": "house", "sort": "rule", "title": "C", **ruled(dice)}
        way = {"condition": condition, "unless": dice.yes(), "then": dice.one((parts[0], both))}
        return {**either, "any": [{**blank, "sort": "way", **way}, parts[-1]]}
    if sort == "if":
        condition = {**blank, "carried": "house", "sort": "rule", "title": "C", **ruled(dice)}
        then = dice.one((parts[0], both, either))
        more = {"condition": condition, "unless": dice.yes(), "then": then}
        return {**blank, "sort": "if", **more}
    if sort == "classes":
        rule = dice.one([rule for rule in RULES if rule["each"]])
        measure = next(one for one in RULES if one["key"] == rule["each"])
        classes = [
            {
                "count": float(dice.random.randint(1, 3)),
                "each": dice.number(scale_of(measure)),
                "words": f"class {index}",
            }
            for index in range(dice.random.randint(1, 3))
        ]
        return {**blank, "sort": "classes", "what": rule["key"], "classes": classes}
    return both if sort == "all" else either


def ruled(dice: Dice) -> Record:
    """What a rule is asked."""
    rule = dice.one(RULES)
    low = (
        float(dice.random.randint(0, 9)) if rule["kind"] == "count" else dice.number(scale_of(rule))
    )
    way = dice.one((*rule["ways"], "unknown" if dice.yes(0.1) else rule["ways"][0]))
    way = "tell" if aside(dice).yes(0.1) else way
    return {
        "what": rule["key"],
        "own": aside(dice).yes(0.3),
        "way": way,
        "low": low,
        "high": low + dice.number(scale_of(rule)) if way == "between" else low,
        "words": dice.one(("yes", "no")),
    }


def more_asked(dice: Dice) -> Record:
    """What a load asks of its feed beyond its current."""
    return {
        "at": dice.one(("", "", "stage left", "upstage", "upstage centre", "wing stage right")),
        "own": dice.yes(0.3),
        "apart": dice.yes(0.2),
        "isolated": dice.yes(0.2),
        "wires": dice.one((0.0, 0.0, 4.0, 5.0)),
        "trips_a": dice.one((None, None, 0.03, 0.3)),
    }


def deep(dice: Dice, sort: str) -> Record:
    """What the deep checks are asked."""
    if sort == "power":
        within = dice.number(10.0) if dice.yes(0.3) else None
        beside = aside(dice)
        other = {"current_a": 0.0} if beside.yes(0.1) else {}
        other |= {"system": beside.one(OTHER_WORDS)} if beside.yes(0.2) else {}
        drawn = {
            "use": dice.one(("sound", "Lighting", "video")),
            "current_a": dice.one((16.0, 32.0, dice.number(80.0))),
            "count": float(dice.random.randint(1, 7)),
            "phases": dice.one(("three", "three", "single", "single")),
            "system": dice.one((*SYSTEMS, "", "", "", "208 V single phase", "400 V", "208V")),
            "connector": dice.one(("", "", "lugs", "iec 60309", "iec 60309 125 A")),
            "within_m": within,
            "of": dice.one((*PLACES, "Nowhere")) if within is not None or dice.yes(0.3) else "",
            "apart": dice.yes(0.3),
            "more": more_asked(beside) if beside.yes(0.3) else None,
        }
        return {**drawn, **other}
    if sort == "hang":
        return a_hang(dice)
    if sort == "trim":
        return a_trim(dice)
    if sort == "plot":
        return a_plot(dice)
    if sort == "trucks":
        scales = {
            "length": 16.0,
            "height": 4.0,
            "weight": 40000.0,
            "case_width": 2.0,
            "case_height": 2.0,
            "case_weight": 900.0,
        }
        return {
            "count": float(dice.random.randint(1, 4)),
            "length_of": aside(dice).one(("whole truck", "whole truck", "trailer", "")),
            **{name: dice.number(scale) if dice.yes() else None for name, scale in scales.items()},
        }
    if sort in ("ends", "load in"):
        return {"time_s": dice.random.randint(0, 48) * 1800.0, "day": dice.one(DAYS)}
    if sort == "question" and aside(dice).yes(0.5):
        return worked(aside(dice))
    if sort == "level":
        terms = {
            "weighting": dice.one(("A", "A", "A", "C", "")),
            "metric": dice.one(("equivalent level",) * 3 + ("peak level", "")),
            "place": dice.one(("mix position", "FOH", "gate", "")),
        }
        return {
            "level_db": float(dice.random.randint(94, 104)),
            "over_s": dice.one((900.0, 900.0, 3600.0, None)),
            **terms,
        }
    return {"words": dice.one(("Who has the key?", "<img src=x>"))}


def a_pair(seed: int) -> tuple[Record, list[Record]]:
    """A pack and the riders of one day."""
    dice = Dice(seed)
    # Dates have dice of their own: those of all else fall as they did without.
    calendar = Dice(seed + 1_000_003)
    date = calendar.one(("", "2026-07-01", "2026-07-20", "2026-08-31", "2026-12-05"))
    riders = []
    for place, act in enumerate(("Opener", "Ünder & <b>", "The day")[: dice.one((1, 1, 2, 3))]):
        requirements = [a_requirement(dice, act) for _ in range(dice.random.randint(0, 9))]
        day = {"stays_m": dice.one((None, 0.0, dice.number(5.0))), "clock": a_clock(dice, place)}
        plays = {"configuration": dice.one(("", "", "", "Standing", "Seated", "In the round"))}
        riders.append(
            {
                "act": act,
                "revision": "",
                "plays": calendar.one((date, date, "")),
                "not_read": [],
                **plays,
                **day,
                "requirements": requirements,
            }
        )
    house = a_pack(dice)
    close_some(house, calendar)
    return house, riders


def close_some(house: Record, dice: Dice) -> None:
    """Close the house, or some departments of it, for a time; most houses for none."""
    items: list[Record] = next(
        (each["items"] for each in house["sections"] if each["key"] == "house"), []
    )
    for _ in range(dice.one((0, 0, 1, 2))):
        names = dice.one((("",), ("",), ("stage", "power"), ("rigging",)))
        own = {"departments": a_list(*names)} if names[0] else {}
        items.append(item("closure", "Closed", **a_time(dice), **own))


def a_time(dice: Dice) -> dict[str, Record]:
    """From when until when, and why, or not."""
    starts = ("2026-07-01", "2026-07-20", "2026-07", "2026", "2027-01-04", "")
    ends = ("2026-08-15", "2026-07-31", "2026-12", "2026", "further notice", "")
    why = {"why": value("works on the floor.")} if dice.one((True, False)) else {}
    return {
        "from": a_day(dice.one(starts)),
        "until": a_day(dice.one(ends)),
        **why,
    }


def a_day(text: str) -> Record:
    """A day as it is written; unknown where it is not."""
    return value(text, standing="stated" if text else "unknown")
