"""
The hang plan: all hangs of all acts at the same time against points, beams, zones and roof, the
house's own hangs staying up.
"""

from builder.fit.hangs.answers import answer_of
from builder.fit.hangs.bridles import with_bridles
from builder.fit.hangs.by_rule import too_many, with_spots
from builder.fit.hangs.fitting import HANG
from builder.fit.hangs.hoists import hoist_issues
from builder.fit.hangs.issues import issue, with_this_bridle
from builder.fit.hangs.leaning import rule_notes
from builder.fit.hangs.loads import is_open, loads_of
from builder.fit.hangs.places import places_of, points_under
from builder.fit.hangs.records import Issue, Look, Place, SoFar
from builder.fit.hangs.sentences import BESIDE_OPEN, HOW_HEAVY, NOT_DESCRIBED
from builder.fit.hangs.spacing import spacing_issues
from builder.fit.hangs.sums import limits_of, look_at
from builder.fit.hangs.trims import TRIM, trim_answer
from builder.fit.hangs.unknown_rules import rules_unknown
from builder.fit.records import FitPack, HangAsked, Section, TrimAsked, Verdict
from builder.fit.sections import section_of
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, asked, question_of


def hangs_for_all(requirements: list[HangAsked | TrimAsked], pack: FitPack) -> list[Verdict]:
    """
    A verdict for each hang and each trim, in order.

    Each hang is judged beside all hangs before it, whatever their verdicts.
    """
    told = section_of(pack, "rigging")
    if told is None:
        return [not_described(requirement) for requirement in requirements]
    hangs = hangs_among(requirements)
    section = with_spots(hangs, told)
    places = all_places(hangs, section)
    so_far: SoFar = {"sums": {}, "loaded": [], "hoists": 0, "open": []}
    verdicts: list[Verdict] = []
    last: list[Place] = []
    for requirement in requirements:
        if requirement["sort"] == "hang":
            last = places.pop(0)
            verdicts.append(hang_answer(requirement, last, section, so_far))
        else:
            verdicts.append(trim_answer(requirement, last))
    return verdicts


def not_described(requirement: HangAsked | TrimAsked) -> Verdict:
    """A hang or a trim where the pack says nothing of rigging."""
    if requirement["sort"] == "hang":
        return asked(requirement, HANG, NOT_DESCRIBED)
    return asked(requirement, TRIM, NOT_DESCRIBED)


def hangs_among(requirements: list[HangAsked | TrimAsked]) -> list[HangAsked]:
    """The hangs, without the trims."""
    hangs: list[HangAsked] = []
    for requirement in requirements:
        if requirement["sort"] == "hang":
            hangs.append(requirement)
    return hangs


def all_places(hangs: list[HangAsked], section: Section) -> list[list[Place]]:
    """What carries each support of each hang, bridles included."""
    taken: list[str] = []
    places = places_of(hangs, section, taken)
    with_bridles(hangs, places, section, taken)
    return places


def hang_answer(hang: HangAsked, places: list[Place], section: Section, so_far: SoFar) -> Verdict:
    """The verdict on one hang; its loads are added to those so far."""
    so_far["loaded"] += [point["key"] for place in places for point in points_under(place)]
    brought = loads_of(hang, section)
    looks = [look_at(limit, brought, so_far) for limit in limits_of(places, section)]
    issues = [
        *[one for place in places for one in place["issues"]],
        *near_issues(places, so_far["loaded"], section),
        *brought["issues"],
        *hoist_issues(hang, brought, so_far, section),
        *limit_issues(looks),
        *open_issues(so_far),
        *rules_unknown(section),
    ]
    brought["notes"] = [*brought["notes"], *rule_notes(hang, places, so_far["loaded"], section)]
    answer = answer_of(hang, places, brought, issues, looks, section)
    if is_open(hang):
        so_far["open"].append(hang["title"])
        answer["act_question"] = question_of(hang, HOW_HEAVY)
    return answer


def open_issues(so_far: SoFar) -> list[Issue]:
    """Beside hangs of which nobody knows what they weigh, nobody knows what is left."""
    if len(so_far["open"]) == 0:
        return []
    return [issue(ASK, fill(BESIDE_OPEN, {"hangs": ", ".join(so_far["open"])}))]


def near_issues(places: list[Place], loaded: list[str], section: Section) -> list[Issue]:
    """Points of a hang that are too near to other loaded ones; those of bridles are asked."""
    bridled = [leg["item"]["key"] for place in places for leg in place["legs"]]
    issues: list[Issue] = []
    for place in places:
        for point in points_under(place):
            for one in [*spacing_issues(point, loaded, section), *too_many(point, loaded, section)]:
                issues.append(with_this_bridle(one) if point["key"] in bridled else one)
    return issues


def limit_issues(looks: list[Look]) -> list[Issue]:
    """What stands against a hang at its limits."""
    issues: list[Issue] = []
    for look in looks:
        if look["issue"] is not None:
            issues.append(look["issue"])
    return issues
