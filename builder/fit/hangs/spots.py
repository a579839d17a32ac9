"""The nearest point to a spot that may be used, or what was found instead."""

from builder.fit.hangs.bridle_rules import FORBIDDEN, bridle_rule
from builder.fit.hangs.by_rule import (
    ACROSS,
    OnBeam,
    group_words,
    groups_without_place,
    is_by_rule,
    is_unplaced,
    nearest_beam,
    spot_words,
    without_place,
)
from builder.fit.hangs.issues import issue
from builder.fit.hangs.points import NEAR_M, away_m, points_of, unusable
from builder.fit.hangs.records import Issue, NearPoint, Place
from builder.fit.hangs.sentences import (
    BRIDLE_AT,
    BRIDLE_WANTED,
    BRIDLE_WANTED_NONE,
    BRIDLE_WANTED_UNKNOWN,
    GROUPS_UNPLACED,
    MOVE_SPOT,
    PLACE_UNKNOWN,
    PLACES_UNKNOWN,
    TAKEN,
    TOO_FAR,
    TOO_FAR_FROM_BEAM,
    UNPLACED,
    WHERE_ALONG,
    WHERE_ARE_POINTS,
    WHERE_IS,
    WHICH_OF_GROUP,
    WHICH_OTHER,
)
from builder.fit.records import Item, Section, SupportAsked
from builder.fit.sentences import fill
from builder.fit.values import number_of, text_of
from builder.fit.verdicts import ASK, SHORT
from builder.fit.wording import both

ROUNDING_M = 0.000001


def place_at_spot(support: SupportAsked, section: Section, taken: list[str]) -> Place:
    """
    The nearest point to a spot that may be used, has a known rating and is not taken; otherwise
    what was found instead.
    """
    near = points_by_distance(support, section)
    within = [one for one in near if one["away_m"] <= NEAR_M + ROUNDING_M]
    place: Place = {"item": None, "away_m": 0.0, "issues": [], "legs": [], "apex_m": None}
    for one in within:
        if one["item"]["key"] not in taken and len(unusable(one["item"], section)) == 0:
            asks = along_unknown(one["item"])
            return {**place, "item": one["item"], "away_m": one["away_m"], "issues": asks}
    if len(within) > 0:
        return {**place, "issues": why_not(support, within[0], section, taken)}
    return {**place, "issues": [nothing_near(support, near, section)]}


def nothing_near(support: SupportAsked, near: list[NearPoint], section: Section) -> Issue:
    """
    No point is near a spot: it is too far from all, or where the house's points are is not known.
    """
    unplaced = groups_without_place(section)
    if len(unplaced) > 0:
        groups = ", ".join([group_words(group) for group in unplaced])
        question = fill(WHICH_OF_GROUP, {"spot": spot_words(support), "groups": groups})
        reason = fill(GROUPS_UNPLACED, {"groups": groups})
        return issue(ASK, reason, question=question, item=unplaced[0])
    nowhere = [item for item in without_place(section) if may_pass(item, support)]
    if len(nowhere) > 0:
        names = ", ".join([item["name"] for item in nowhere])
        question = fill(WHERE_IS, {"names": names})
        reason = fill(PLACE_UNKNOWN, {"names": names})
        return issue(ASK, reason, question=question, item=nowhere[0])
    beam = nearest_beam(support, section)
    with_place = [one for one in near if not is_by_rule(one["item"])]
    if len(with_place) > 0:
        nearest = with_place[0]
        if beam is None or nearest["away_m"] <= beam["away_m"]:
            return too_far(support, nearest, section)
    if beam is not None:
        return too_far_from_beam(support, beam, section)
    return issue(ASK, PLACES_UNKNOWN, question=WHERE_ARE_POINTS)


def may_pass(item: Item, support: SupportAsked) -> bool:
    """
    Whether something whose place is not known may be near a spot. Of a beam whose line is known,
    and only its ends are not, that line has to pass there.
    """
    runs = text_of(item, "runs")
    lies_m = number_of(item, "depth" if runs == ACROSS else ACROSS)
    wanted_m = support["depth_m"] if runs == ACROSS else support["across_m"]
    if item["kind"] != "beam" or runs == "" or lies_m is None or wanted_m is None:
        return True
    return abs(lies_m - wanted_m) <= NEAR_M + ROUNDING_M


def along_unknown(point: Item) -> list[Issue]:
    """What must be asked of a point that a rule makes where nobody says that points may be."""
    if not is_unplaced(point):
        return []
    parts = {"beam": text_of(point, "beam"), "place": point["name"]}
    question = fill(WHERE_ALONG, parts)
    return [issue(ASK, fill(UNPLACED, parts), question=question, item=point)]


def points_by_distance(support: SupportAsked, section: Section) -> list[NearPoint]:
    """The points whose places are known, the nearest to a spot first."""
    near: list[NearPoint] = []
    for point in points_of(section):
        its_away_m = away_m(support, point)
        if its_away_m is not None:
            near.append({"item": point, "away_m": its_away_m})
    return sorted(near, key=lambda one: one["away_m"])


def why_not(
    support: SupportAsked, nearest: NearPoint, section: Section, taken: list[str]
) -> list[Issue]:
    """Why the nearest of the points near a spot cannot carry it."""
    point = nearest["item"]
    if point["key"] in taken:
        reason = fill(TAKEN, {"point": point["name"]})
        return [issue(ASK, reason, question=WHICH_OTHER, item=point)]
    return [or_a_bridle(support, one, section) for one in unusable(point, section)]


def or_a_bridle(support: SupportAsked, found: Issue, section: Section) -> Issue:
    """The only point near a spot may not be used: short, unless the house may make a bridle."""
    if found["word"] != SHORT or bridle_rule(section) == FORBIDDEN:
        return found
    reason = bridle_wanted(found["reason"], section)
    return {**found, "word": ASK, "reason": reason, "question": bridle_at(support), "remedy": ""}


def bridle_wanted(reason: str, section: Section) -> str:
    """A reason for which a bridle is wanted, with whether the house allows it."""
    rule = bridle_rule(section)
    if rule == FORBIDDEN:
        return fill(BRIDLE_WANTED_NONE, {"reason": reason})
    if rule == "":
        return fill(BRIDLE_WANTED_UNKNOWN, {"reason": reason})
    return fill(BRIDLE_WANTED, {"reason": reason, "rule": rule})


def too_far(support: SupportAsked, nearest: NearPoint, section: Section) -> Issue:
    """
    No point is near enough: a bridle is wanted, which the house allows, forbids, or says nothing
    about.
    """
    point = nearest["item"]
    parts = {
        "near": both("length", NEAR_M)[0],
        "spot": spot_words(support),
        "point": point["name"],
        "away": both("length", nearest["away_m"])[0],
    }
    reason = bridle_wanted(fill(TOO_FAR, parts), section)
    if bridle_rule(section) == FORBIDDEN:
        return issue(SHORT, reason, remedy=MOVE_SPOT, item=point)
    return issue(ASK, reason, question=bridle_at(support), item=point)


def too_far_from_beam(support: SupportAsked, near: OnBeam, section: Section) -> Issue:
    """No beam is near enough, and points hang from beams."""
    parts = {
        "near": both("length", NEAR_M)[0],
        "spot": spot_words(support),
        "beam": near["beam"]["name"],
        "away": both("length", near["away_m"])[0],
    }
    reason = bridle_wanted(fill(TOO_FAR_FROM_BEAM, parts), section)
    if bridle_rule(section) == FORBIDDEN:
        return issue(SHORT, reason, remedy=MOVE_SPOT, item=near["beam"])
    return issue(ASK, reason, question=bridle_at(support), item=near["beam"])


def bridle_at(support: SupportAsked) -> str:
    """What to ask of a house about a bridle: it knows the spot only from the question."""
    return fill(BRIDLE_AT, {"spot": spot_words(support)})
