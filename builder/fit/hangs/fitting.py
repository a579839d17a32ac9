"""A hang that fits: how much is to spare at the tightest limit, and what to know."""

from builder.fit.hangs.loads import most_on_support_kg
from builder.fit.hangs.places import points_under
from builder.fit.hangs.points import NEAR_M
from builder.fit.hangs.records import Brought, Limit, Look, Place
from builder.fit.hangs.sentences import (
    AND,
    ASKED_ABOVE,
    AT_THE_MOST,
    AT_THE_MOST_WITH_HOISTS,
    BESIDE_WORST,
    BRIDLE_PULLS,
    NO_LIMITS,
    OFF_SPOT,
    ON_POINT,
    PULL_IN_LEG,
    WHOEVER_APPROVES,
    WITH,
)
from builder.fit.hangs.sums import kg
from builder.fit.margins import signed
from builder.fit.notes import age_notes, check_notes, item_notes, once
from builder.fit.records import Asker, HangAsked, Section, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import least_of, number_of, text_of
from builder.fit.verdicts import FITS, asked, settled, verdict
from builder.fit.wording import both, digits

SHARE_ROUNDING = 0.000001
NEAR_ENOUGH_M = 0.025
"""A point this near to its spot is at it."""
HANG: Asker = {
    "question": (
        "Which points can this hang have, what may each carry, and what hangs there already?"
    )
}


def fitting(
    hang: HangAsked, places: list[Place], brought: Brought, looks: list[Look], section: Section
) -> Verdict:
    """A hang that fits, with the tightest limit and what to know."""
    tightest = tightest_of(looks)
    if tightest is None:
        return asked(hang, HANG, NO_LIMITS)
    limit, slack_kg = tightest
    parts = {
        "carried": carried_words(places, brought),
        "limit": limit["words"],
        "spare": kg(slack_kg),
    }
    template = AT_THE_MOST_WITH_HOISTS if brought["hoist_high"] > 0 else AT_THE_MOST
    answer = verdict(hang, FITS, fill(template, parts))
    answer["fact"] = limit["fact"]
    answer["margin"] = signed(both("mass", slack_kg), slack_kg)
    notes = list(brought["notes"])
    for support in range(len(places)):
        notes += place_notes(places[support], support, brought)
    answer["notes"] = once(
        [*notes, *beside_worst(looks), *near_limits(looks, section), *limit_notes(looks)]
    )
    return settled(answer)


def beside_worst(looks: list[Look]) -> list[str]:
    """Which limits count the house's own hangs at their worst."""
    uneven = once([look["limit"]["words"] for look in looks if look["limit"]["uneven"]])
    return [fill(BESIDE_WORST, {"limits": ", ".join(uneven)})] if len(uneven) > 0 else []


def near_limits(looks: list[Look], section: Section) -> list[str]:
    """Limits that are used to more than the share above which the house asks somebody."""
    notes: list[str] = []
    for rule in items_of(section, "submission"):
        above = number_of(rule, "ask_above")
        if above is not None:
            notes += [asked_above(look, above, text_of(rule, "ask_whom")) for look in looks]
    return [note for note in once(notes) if note != ""]


def asked_above(look: Look, above: float, whom: str) -> str:
    """That a limit is used to more than a share, and who is asked then; empty where it is not."""
    slack_kg, item = look["slack"], look["limit"]["item"]
    limit_kg = None if item is None else least_of(item["values"].get("limit"))
    if slack_kg is None or limit_kg is None or limit_kg <= 0:
        return ""
    used = 1 - slack_kg / limit_kg
    if used <= above + SHARE_ROUNDING:
        return ""
    parts = {
        "limit": look["limit"]["words"],
        "used": digits(used * 100, 0),
        "above": digits(above * 100, 0),
        "whom": whom if whom != "" else WHOEVER_APPROVES,
    }
    return fill(ASKED_ABOVE, parts)


def limit_notes(looks: list[Look]) -> list[str]:
    """What to know of the checks of every limit that a hang stays below."""
    notes: list[str] = []
    for look in looks:
        item = look["limit"]["item"]
        if item is not None:
            notes += check_notes(item)
        notes += age_notes(look["limit"]["value"])
    return notes


def tightest_of(looks: list[Look]) -> tuple[Limit, float] | None:
    """The limit with the least to spare, and how much that is; None where none is known. [kg]"""
    tightest: tuple[Limit, float] | None = None
    for look in looks:
        slack_kg = look["slack"]
        if slack_kg is not None and (tightest is None or slack_kg < tightest[1]):
            tightest = (look["limit"], slack_kg)
    return tightest


def carried_words(places: list[Place], brought: Brought) -> str:
    """Every point, or the two of a bridle, with the most that this hang brings to it."""
    words: list[str] = []
    for support, place in enumerate(places):
        most_kg = most_on_support_kg(brought, support)
        if place["item"] is not None:
            words.append(on_point(place["item"]["name"], most_kg))
        else:
            legs = [on_point(leg["item"]["name"], most_kg * leg["pull"]) for leg in place["legs"]]
            words.append(WITH.join(legs))
    return ", ".join(words)


def on_point(name: str, load_kg: float) -> str:
    """A point with a load in words."""
    return fill(ON_POINT, {"point": name, "load": kg(load_kg)})


def place_notes(place: Place, support: int, brought: Brought) -> list[str]:
    """
    What to know about a point, how far it is from the spot, and what the legs of a bridle pull.
    """
    notes = [note for point in points_under(place) for note in item_notes(point)]
    if place["item"] is not None and place["away_m"] > NEAR_ENOUGH_M:
        parts = {
            "point": place["item"]["name"],
            "away": both("length", place["away_m"])[0],
            "near": both("length", NEAR_M)[0],
        }
        notes.append(fill(OFF_SPOT, parts))
    if place["apex_m"] is not None:
        notes.append(bridle_note(place, place["apex_m"], most_on_support_kg(brought, support)))
    return notes


def bridle_note(place: Place, apex_m: float, most_kg: float) -> str:
    """What the legs of a bridle pull at the most."""
    pulls = [
        fill(PULL_IN_LEG, {"pull": kg(most_kg * leg["pull"]), "point": leg["item"]["name"]})
        for leg in place["legs"]
    ]
    return fill(BRIDLE_PULLS, {"apex": both("length", apex_m)[0], "pulls": AND.join(pulls)})
