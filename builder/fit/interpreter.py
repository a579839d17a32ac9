"""
Riders and a pack in, verdicts and questions out.

This is the whole of the check; the page in the browser runs it too.
"""

from builder.fit.all_needs import by_requirement
from builder.fit.arrangements.as_set import pack_at
from builder.fit.arrangements.evenings import evenings_of
from builder.fit.arrangements.in_place import judged_in_place
from builder.fit.arrangements.records import Evening, Judged
from builder.fit.arrangements.settings import settings_compared
from builder.fit.arrangements.telling import (
    judged_in_words,
    others_of,
    place_of_best,
    settings_leaned_on,
    with_settings_told,
)
from builder.fit.arrangements.views import configurations_of, has_choices
from builder.fit.clock.records import DayAnswer
from builder.fit.closed.judging import on_their_dates
from builder.fit.closed.told import may_be_closed
from builder.fit.needs.contradictions import with_contradictions
from builder.fit.needs.twice import asks_twice
from builder.fit.net import day_not_judged
from builder.fit.overall import as_far_as_read, cautions, not_read_of, overall
from builder.fit.questions import act_questions, questions
from builder.fit.records import ActAnswer, FitPack, Result, RiderAsked, Setting, Verdict
from builder.fit.requirements import Known
from builder.fit.spaces.judging import fit_in_spaces
from builder.fit.turns import turns_of
from builder.fit.whole_day import add_day, has_spaces
from builder.formulas.primitives import is_failing


def fit(pack: FitPack, riders: list[RiderAsked]) -> Result:
    """
    The verdicts on every requirement of every rider, and on the day, in the one arrangement of the
    house in which the show fares best; in a house of several stages, in the space of each act.

    ``pack`` is what :func:`builder.fit.published.fit_record` makes, a rider what
    :func:`builder.rider.asked.rider_of` makes.
    """
    if has_spaces(pack):
        return fit_in_spaces(pack, riders, fit_in_one)
    return fit_in_one(pack, riders)


def fit_in_one(pack: FitPack, riders: list[RiderAsked]) -> Result:
    """The same for a house of one stage, or for one space of a house."""
    names = configurations_of(pack)
    known: Known = {}
    evenings = evenings_of(riders, names)
    judged = [
        at_best_settings(riders, evening, settings, pack, known)
        for evening, settings in zip(evenings, all_settings(riders, evenings, pack), strict=True)
    ]
    best = judged[place_of_best(judged)]
    others = others_of(best, judged)
    verdicts = best["verdicts"]
    return {
        "venue": pack["venue"],
        "revision": pack["revision"],
        "acts": act_answers(riders, best),
        "verdict": as_far_as_read(overall(verdicts, ""), riders),
        "verdicts": verdicts,
        "not_read": not_read_of(riders),
        "judged_in": with_settings_told(judged_in_words(riders, best, others, names), best),
        "others": others,
        "day": best["rows"],
        "questions": questions(verdicts),
        "act_questions": act_questions(verdicts),
        "cautions": cautions(verdicts, pack),
    }


def all_settings(
    riders: list[RiderAsked], evenings: list[Evening], pack: FitPack
) -> list[list[list[Setting]]]:
    """For each evening the settings to compare, at least one; none is set where nothing can be."""
    if not has_choices(pack):
        return [[[]] for _ in evenings]
    return settings_compared(riders, evenings, pack)


def at_best_settings(
    riders: list[RiderAsked],
    evening: Evening,
    compared: list[list[Setting]],
    pack: FitPack,
    known: Known,
) -> Judged:
    """What an evening comes to at the settings at which the show fares best."""
    judged = [on_evening(riders, evening, settings, pack, known) for settings in compared]
    return judged[place_of_best(judged)]


def on_evening(
    riders: list[RiderAsked],
    evening: Evening,
    settings: list[Setting],
    pack: FitPack,
    known: Known,
) -> Judged:
    """All verdicts where every act plays in its place of an evening, the house set like this."""
    pack = pack_at(pack, settings) if len(settings) > 0 else pack
    day: DayAnswer = {"verdicts": [], "rows": []}
    if is_failing(lambda: add_day(day, riders, evening, pack)):
        day = {"verdicts": [day_not_judged()], "rows": []}
    verdicts = [*in_own_places(riders, evening, pack, known), *day["verdicts"]]
    if may_be_closed(pack):
        verdicts = on_their_dates(riders, verdicts, pack)
    return {
        "evening": evening,
        "settings": settings,
        "verdicts": verdicts,
        "rows": day["rows"],
    }


def in_own_places(
    riders: list[RiderAsked], evening: Evening, pack: FitPack, known: Known
) -> list[Verdict]:
    """
    A verdict for each requirement, in the riders' order, each act's in its own place.

    In every place all acts are judged together, for they share the house's power and steel, and who
    plays last is served first.
    """
    turns = turns_of(riders)
    in_turn = [riders[index] for index in turns]
    runs = [
        judged_in_place(place, pack, lambda view: by_requirement(in_turn, view, known))
        for place in evening["places"]
    ]
    answers: list[list[Verdict]] = [[] for _ in riders]
    start = 0
    for index in turns:
        end = start + len(riders[index]["requirements"])
        own = runs[evening["own"][index]][start:end]
        answers[index] = (
            with_contradictions(riders[index], own) if asks_twice(riders[index]) else own
        )
        start = end
    return [answer for each in answers for answer in each]


def act_answers(riders: list[RiderAsked], best: Judged) -> list[ActAnswer]:
    """The worst verdict of each act."""
    answers: list[ActAnswer] = []
    for rider, own in zip(riders, best["evening"]["own"], strict=True):
        place = best["evening"]["places"][own]
        answers.append(
            {
                "act": rider["act"],
                "revision": rider["revision"],
                "arrangement": {
                    "space": "",
                    "configuration": "" if place["is_open"] else place["configuration"],
                    "settings": settings_leaned_on(best),
                },
                "verdict": as_far_as_read(overall(best["verdicts"], rider["act"]), [rider]),
            }
        )
    return answers
