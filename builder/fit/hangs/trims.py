"""Whether a hang goes as high as wanted."""

from builder.fit.hangs.places import points_under
from builder.fit.hangs.records import Place
from builder.fit.hangs.sentences import (
    BELOW_UNKNOWN,
    BRIDLE_TO,
    LOW_STEEL,
    NO_POINTS,
    STEEL_AT,
    STEEL_UNKNOWN,
    TO_SPARE_UNDER,
    TOO_HIGH,
)
from builder.fit.margins import LENGTH_TOLERANCE_M, signed
from builder.fit.needs.sentences import TOLERATED, TOLERATED_NOTE
from builder.fit.notes import check_notes, once
from builder.fit.records import Advice, Fact, Item, TrimAsked, Verdict
from builder.fit.sentences import fill
from builder.fit.values import known_number, number_of
from builder.fit.verdicts import FITS, SHORT, asked, settled, verdict, with_remedy
from builder.fit.wording import both

TRIM: Advice = {
    "question": "How high does this hang go under your steel, with hoists run up?",
    "remedy": "Fly lower, hang from a higher beam, or use shorter hoists, slings or truss.",
    "who": "the show's head rigger",
}


def trim_answer(trim: TrimAsked, places: list[Place]) -> Verdict:
    """
    Whether a hang goes as high as wanted: the lowest steel over its points, less what is between
    steel and the hang's underside.
    """
    heights_m = [top_m(place) for place in places]
    known_m = [height_m for height_m in heights_m if height_m is not None]
    if len(known_m) < len(heights_m):
        return asked(trim, TRIM, STEEL_UNKNOWN)
    if len(places) == 0:
        return asked(trim, TRIM, NO_POINTS)
    lowest_m = min(known_m)
    answer = under_steel(trim, places[known_m.index(lowest_m)], lowest_m)
    points = [point for place in places for point in points_under(place)]
    answer["notes"] = once([*answer["notes"], *[n for one in points for n in check_notes(one)]])
    return settled(answer)


def top_m(place: Place) -> float | None:
    """
    How high what carries a place is: the steel at its point, or where its bridle meets; None where
    that is not known. [m]
    """
    if place["apex_m"] is not None:
        return place["apex_m"]
    return number_of(place["item"], "low-steel")


def under_steel(trim: TrimAsked, place: Place, steel_m: float) -> Verdict:
    """A trim under the lowest steel of its hang. [m]"""
    room_m = steel_m - trim["trim_m"]
    slack_m = room_m if trim["below_m"] is None else room_m - trim["below_m"]
    words = both("length", abs(slack_m))
    point = points_under(place)[0]
    parts = {"what": what_above(place, point), "amount": words[0]}
    if slack_m < -LENGTH_TOLERANCE_M:
        answer = with_remedy(verdict(trim, SHORT, fill(TOO_HIGH, parts)), TRIM)
        answer["margin"] = signed(words, slack_m)
    elif trim["below_m"] is None:
        answer = asked(trim, TRIM, fill(BELOW_UNKNOWN, parts))
    elif slack_m < 0:
        answer = verdict(trim, FITS, TOLERATED)
        answer["notes"] = [fill(TOLERATED_NOTE, {"amount": words[0]})]
        answer["margin"] = signed(words, slack_m)
    else:
        answer = verdict(trim, FITS, fill(TO_SPARE_UNDER, parts))
        answer["margin"] = signed(words, slack_m)
    answer["fact"] = steel_fact(point)
    return answer


def what_above(place: Place, point: Item) -> str:
    """What a hang goes up to."""
    return fill(STEEL_AT if len(place["legs"]) == 0 else BRIDLE_TO, {"point": point["name"]})


def steel_fact(point: Item) -> Fact:
    """The low steel of a point as a verdict shows it."""
    words = both("length", known_number(point, "low-steel"))
    key = point["key"]
    return {
        "key": f"{key}.low-steel",
        "item": point["name"],
        "label": LOW_STEEL,
        "text": words[0],
        "standing": "stated",
        "also": words[1],
        "page": point["page"],
        "checked": point["checked"],
    }
