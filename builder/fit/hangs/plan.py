"""
The hang plan: all hangs of all acts at the same time against points, beams, zones and roof, the
house's own hangs staying up.
"""

from typing import Any

from builder.fit.comparing import (
    LENGTH_TOLERANCE_M,
    age_notes,
    asked,
    item_notes,
    once,
    section_of,
    signed,
)
from builder.fit.hangs.bridles import with_bridles
from builder.fit.hangs.hoists import hoist_issues
from builder.fit.hangs.limits import REMEDY, limits_over, spacing_issues
from builder.fit.hangs.loads import loads_of, on
from builder.fit.hangs.points import BRIDLE, NEAR_M, issue, placed
from builder.fit.records import Advice
from builder.fit.values import known_number, number_of
from builder.fit.verdicts import (
    ASK,
    FITS,
    SHORT,
    Record,
    settled,
    verdict,
    with_question,
    with_remedy,
)
from builder.fit.wording import both

GRAM_KG = 0.001
"""What a sum of masses may lose in arithmetic; no tolerance on a limit."""
NEAR_ENOUGH_M = 0.025
HOUSE_DOWN = "Ask whether what the house itself hangs there can come down."
HANG: Advice = {
    "question": (
        "Which points can this hang have, what may each carry, and what hangs there already?"
    ),
    "remedy": "",
    "who": "the show's and the house's head riggers, with the house's engineer",
}
TRIM: Advice = {
    "question": "How high does this hang go under your steel, with hoists run up?",
    "remedy": "Fly lower, hang from a higher beam, or use shorter hoists, slings or truss.",
    "who": "the show's head rigger",
}


def hangs_for_all(requirements: list[Record], pack: Record) -> list[Record]:
    """
    A verdict for each hang and each trim, in order.

    Each hang is judged beside all hangs before it, whatever their verdicts.
    """
    section = section_of(pack, "rigging")
    if section is None:
        return [
            asked(
                each,
                HANG if each["sort"] == "hang" else TRIM,
                "The pack does not describe rigging.",
            )
            for each in requirements
        ]
    hangs = [each for each in requirements if each["sort"] == "hang"]
    taken: list[str] = []
    places = placed(hangs, section, taken)
    with_bridles(hangs, places, section, taken)
    sums: dict[str, Record] = {}
    loaded: list[str] = []
    found: list[Record] = []
    last: list[Record] = []
    for requirement in requirements:
        if requirement["sort"] == "hang":
            last = places.pop(0)
            found.append(hung(requirement, last, section, sums, loaded))
        else:
            found.append(trimmed(requirement, last))
    return found


def hung(
    hang: Record, places: list[Record], section: Record, sums: dict[str, Record], loaded: list[str]
) -> Record:
    """The verdict on one hang; its loads are added to the sums."""
    items = [item for place in places for item in items_of(place)]
    loaded += [item["key"] for item in items]
    brought = loads_of(hang, section)
    issues = [each for place in places for each in place["issues"]]
    for item in items:
        bridled = any(
            leg["item"]["key"] == item["key"] for place in places for leg in place["legs"]
        )
        issues = [
            *issues,
            *(
                another_bridle(each) if bridled else each
                for each in spacing_issues(item, loaded, section)
            ),
        ]
    issues = [
        *issues,
        *(
            each
            for index in range(len(places))
            for each in pull_issues(places[index], index, brought)
        ),
    ]
    looks = [looked(each, brought, sums) for each in limits_of(places, section)]
    issues = [
        *issues,
        *brought["issues"],
        *hoist_issues(hang, brought, sums, section),
        *(each["issue"] for each in looks if each["issue"] is not None),
    ]
    return told(hang, places, brought, issues, looks)


def items_of(place: Record) -> list[Record]:
    """The points that a place hangs from: one, the two of a bridle, or none."""
    return [leg["item"] for leg in place["legs"]] if place["item"] is None else [place["item"]]


def another_bridle(found: Record) -> Record:
    """What stands against this bridle does not stand against every other: it is asked."""
    if found["word"] != SHORT:
        return found
    return {
        **found,
        "word": ASK,
        "reason": "With this bridle: " + found["reason"],
        "question": BRIDLE,
        "remedy": "",
        "slack": 0.0,
    }


def pull_issues(place: Record, index: int, brought: Record) -> list[Record]:
    """Legs that pull more than their points may carry."""
    found = []
    for leg in place["legs"]:
        pull_kg = leg["pull"] * on(
            brought["high"], [[index, 1.0]], brought["hoist_high"], most=True
        )
        if pull_kg > known_number(leg["item"], "limit") + GRAM_KG:
            name = leg["item"]["name"]
            reason = (
                "The leg to "
                + name
                + " would pull "
                + kg(pull_kg)
                + ", and "
                + name
                + " may carry "
                + kg(known_number(leg["item"], "limit"))
                + "."
            )
            found.append(another_bridle(issue(SHORT, reason, item=leg["item"])))
    return found


def limits_of(places: list[Record], section: Record) -> list[Record]:
    """
    Every limit that a hang hangs under, once, with the supports that are under it and how much of
    each; ``bridled`` where a bridle leads there.
    """
    found: list[Record] = []
    for index in range(len(places)):
        legs = places[index]["legs"]
        ends = (
            [[places[index]["item"], 1.0]]
            if len(legs) == 0
            else [[leg["item"], leg["share"]] for leg in legs]
        )
        for item, share in ends:
            for each in limits_over(item, section):
                bridled = len(legs) > 0 and each["kind"] != "roof"
                known = next((other for other in found if other["key"] == each["key"]), None)
                if known is None:
                    found.append({**each, "shares": [[index, share]], "bridled": bridled})
                else:
                    known["shares"].append([index, share])
                    known["bridled"] = known["bridled"] or bridled
    return found


def looked(each: Record, brought: Record, sums: dict[str, Record]) -> Record:
    """
    A limit with all that the show brings under it so far: its slack at the most, or what stands
    against it.
    """
    so_far = sums.get(each["key"], {"low": 0.0, "high": 0.0, "bridled": False})
    bridled = so_far["bridled"] or each["bridled"]
    low_kg = so_far["low"] + on(brought["low"], each["shares"], brought["hoist_low"], most=False)
    high_kg = so_far["high"] + on(brought["high"], each["shares"], brought["hoist_high"], most=True)
    sums[each["key"]] = {"low": low_kg, "high": high_kg, "bridled": bridled}
    left_kg = each["left_kg"]
    name = each["words"]
    found: Record = {"limit": each, "slack": None, "issue": None}
    if left_kg is None:
        question = "What may " + name + " carry, and what hangs there already?"
        found["issue"] = {
            **issue(ASK, "Nobody has said what is left on " + name + ".", question=question),
            "fact": each["fact"],
        }
    elif low_kg > left_kg + GRAM_KG:
        least = "" if high_kg <= low_kg + GRAM_KG else "at least "
        reason = (
            left_words(each)
            + ", and the show's hangs so far bring "
            + least
            + kg(low_kg)
            + ": "
            + kg(low_kg - left_kg)
            + " too much."
        )
        passed = issue(SHORT, reason, remedy=REMEDY[each["kind"]])
        found["issue"] = {
            **passed,
            "slack": left_kg - low_kg,
            "fact": each["fact"],
            "house": each["house"],
            "hangs": each["hangs"],
        }
    elif high_kg > left_kg + GRAM_KG:
        reason = left_words(each) + ". Hung level, the show's hangs so far bring " + kg(low_kg)
        reason += "; with a support slack or the heaviest hoists, up to " + kg(high_kg) + "."
        question = (
            "May "
            + name
            + " take up to "
            + kg(high_kg)
            + " while a support is slack, or how is that kept from happening?"
        )
        found["issue"] = {**issue(ASK, reason, question=question), "fact": each["fact"]}
    else:
        found["slack"] = left_kg - high_kg
    if found["issue"] is not None and bridled:
        found["issue"] = another_bridle(found["issue"])
    return found


def kg(mass_kg: float) -> str:
    """A mass in words."""
    return both("mass", mass_kg)[0]


def left_words(each: Record) -> str:
    """What is left under a limit, as the beginning of a sentence."""
    return (
        (kg(each["left_kg"]) if each["left_kg"] > 0 else "Nothing")
        + " left on "
        + str(each["words"])
    )


def told(
    hang: Record, places: list[Record], brought: Record, issues: list[Record], looks: list[Record]
) -> Record:
    """
    The verdict in words: what is short first, then what must be asked, else how much is to spare at
    the tightest limit.
    """
    word = (
        SHORT if any(each["word"] == SHORT for each in issues) else ASK if len(issues) > 0 else FITS
    )
    against = [each for each in issues if each["word"] == word]
    if word == FITS:
        return fitting(hang, places, brought, looks)
    found = verdict(hang, word, " ".join(once([each["reason"] for each in against])))
    worst = against[0]
    for each in against:
        if each["slack"] < worst["slack"]:
            worst = each
    found["fact"] = worst["fact"]
    if word == SHORT:
        with_remedy(
            found,
            {
                "who": HANG["who"],
                "remedy": " ".join(
                    [*once([each["remedy"] for each in against]), *taken_down(against)]
                ),
            },
        )
        found["margin"] = (
            signed(both("mass", -worst["slack"]), worst["slack"])
            if worst["slack"] < 0
            else ["", ""]
        )
        found["notes"] = once([each["reason"] for each in issues if each["word"] == ASK])
    else:
        with_question(found, hang, " ".join(once([each["question"] for each in against])))
        found["fact"] = next((each["fact"] for each in against if each["fact"] is not None), None)
        found["notes"] = once(brought["notes"])
    return found


def taken_down(against: list[Record]) -> list[str]:
    """What the house might take down to make room, by name where the pack tells names."""
    names = once([name for each in against for name in each["hangs"]])
    if len(names) > 0:
        return ["Ask whether the house can take down what hangs there: " + ", ".join(names) + "."]
    return [HOUSE_DOWN] if any(each["house"] for each in against) else []


def fitting(hang: Record, places: list[Record], brought: Record, looks: list[Record]) -> Record:
    """A hang that fits, with the tightest limit and what to know."""
    known = [each for each in looks if each["slack"] is not None]
    if len(known) == 0:
        return asked(hang, HANG, "The house has not said what any limit is.")
    tightest = known[0]
    for each in known:
        if each["slack"] < tightest["slack"]:
            tightest = each
    carried = ", ".join(on_point(places[index], index, brought) for index in range(len(places)))
    limit = tightest["limit"]
    hoists = ", hoists counted: " if brought["hoist_high"] > 0 else ": "
    reason = (
        "At the most"
        + hoists
        + carried
        + ". Tightest: "
        + limit["words"]
        + ", "
        + kg(tightest["slack"])
        + " to spare beside all hangs so far."
    )
    found = verdict(hang, FITS, reason)
    found["fact"] = limit["fact"]
    found["margin"] = signed(both("mass", tightest["slack"]), tightest["slack"])
    notes = [
        *brought["notes"],
        *(
            note
            for index in range(len(places))
            for note in place_notes(places[index], index, brought)
        ),
        *age_notes(limit["value"]),
    ]
    found["notes"] = once(notes)
    return settled(found)


def on_point(place: Record, index: int, brought: Record) -> str:
    """A point, or the two of a bridle, with the most that this hang brings to it."""
    most_kg = on(brought["high"], [[index, 1.0]], brought["hoist_high"], most=True)
    if place["item"] is not None:
        return str(place["item"]["name"]) + " " + kg(most_kg)
    return " with ".join(
        str(leg["item"]["name"]) + " " + kg(most_kg * leg["share"]) for leg in place["legs"]
    )


def place_notes(place: Record, index: int, brought: Record) -> list[str]:
    """
    What to know about a point, how far it is from the spot, and what the legs of a bridle pull.
    """
    notes = [note for item in items_of(place) for note in item_notes(item)]
    if place["away_m"] > NEAR_ENOUGH_M:
        words = (
            both("length", place["away_m"])[0]
            + " from the spot, within the "
            + both("length", NEAR_M)[0]
            + " that this check allows"
        )
        notes.append(
            str(place["item"]["name"])
            + " is "
            + words
            + "; the truss moves or the pick leans by that."
        )
    if len(place["legs"]) > 0:
        most_kg = on(brought["high"], [[index, 1.0]], brought["hoist_high"], most=True)
        pulls = " and ".join(
            kg(most_kg * leg["pull"]) + " in the leg to " + str(leg["item"]["name"])
            for leg in place["legs"]
        )
        notes.append(
            "A bridle that meets at "
            + both("length", place["apex_m"])[0]
            + ": at the most "
            + pulls
            + ". The house's rigger decides on it."
        )
    return notes


def top_m(place: Record) -> Any:
    """
    How high what carries a place is: the steel at its point, or where its bridle meets; None where
    that is not known. [m]
    """
    return place["apex_m"] if len(place["legs"]) > 0 else number_of(place["item"], "low-steel")


def trimmed(requirement: Record, places: list[Record]) -> Record:
    """
    Whether a hang goes as high as wanted: the lowest steel over its points, less what is between
    steel and the hang's underside.
    """
    lowest: Any = None
    for place in places:
        height_m = top_m(place)
        if height_m is None:
            return asked(requirement, TRIM, "The low steel over all of its points is not known.")
        if lowest is None or height_m < top_m(lowest):
            lowest = place
    if lowest is None:
        return asked(requirement, TRIM, "The hang has no points yet.")
    item = items_of(lowest)[0]
    under = (
        "the steel at " + item["name"]
        if len(lowest["legs"]) == 0
        else "the bridle to " + item["name"]
    )
    room_m = top_m(lowest) - requirement["trim_m"]
    below_m = requirement["below_m"]
    slack_m = room_m if below_m is None else room_m - below_m
    words = both("length", abs(slack_m))
    if slack_m < -LENGTH_TOLERANCE_M:
        found = with_remedy(
            verdict(requirement, SHORT, "Too high under " + under + " by " + words[0] + "."), TRIM
        )
    elif below_m is None:
        reason = words[0] + " between " + under + " and the trim."
        reason += " The rider does not say what hoists, slings and truss take of that."
        found = asked(requirement, TRIM, reason)
    else:
        found = verdict(requirement, FITS, words[0] + " to spare under " + under + ".")
        if slack_m < 0:
            found["reason"] = "Within the tolerance."
            found["notes"] = ["Short by " + words[0] + ", within the tolerance for rounding."]
    found["margin"] = signed(words, slack_m) if found["verdict"] != ASK else ["", ""]
    found["fact"] = steel_fact(item)
    return settled(found)


def steel_fact(item: Record) -> Record:
    """The low steel of a point as a verdict shows it."""
    words = both("length", known_number(item, "low-steel"))
    fact = {
        "key": item["key"] + ".low-steel",
        "item": item["name"],
        "label": "Low steel",
        "text": words[0],
        "standing": "stated",
        "also": words[1],
    }
    return {**fact, "page": item["page"], "checked": item["checked"]}
