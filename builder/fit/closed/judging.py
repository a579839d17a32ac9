"""
Verdicts on dates on which the house, or some of its departments, are closed.

A need of what is closed on the show's date is short. Where nobody can tell whether it is closed,
that is asked once for each act, and its needs keep their verdicts.
"""

from builder.fit.closed.dates import closed_on, closure_words, is_over, names_closed
from builder.fit.closed.regular import regular_on, regular_words
from builder.fit.closed.sentences import (
    ALL_FIGURES,
    ANOTHER_DATE,
    ARE_YOU_OPEN,
    CAN_WE_HAVE,
    CLOSURES_UNKNOWN,
    COMING,
    DATE,
    DATE_NOT_SAID,
    MAY_DIFFER,
    NO_DATE,
    NOT_FINAL,
    ONE_IS_CLOSED,
    PERHAPS_ON,
    RESTS_ON_HIRED,
    WHAT_COMES,
    WHEN_ARE_YOU_CLOSED,
    WHEN_DO_YOU_PLAY,
    WHO,
)
from builder.fit.closed.told import are_unknown, closures_of, hired_of, regulars_of, works_of
from builder.fit.needs.within import needs_in
from builder.fit.notes import once
from builder.fit.records import (
    Asker,
    FitPack,
    Item,
    Line,
    Mender,
    Requirement,
    RiderAsked,
    Verdict,
)
from builder.fit.sentences import fill
from builder.fit.values import key_beside, parts_of, text_of
from builder.fit.verdicts import (
    ASK,
    NOT_NEEDED,
    RANK,
    SHORT,
    asked,
    asked_for,
    fact_of,
    lack_words,
    of_the_act,
    settled,
    verdict,
    with_remedy,
)

MENDER: Mender = {"remedy": ANOTHER_DATE, "who": WHO}
BETWEEN = " "


def on_their_dates(
    riders: list[RiderAsked], verdicts: list[Verdict], pack: FitPack
) -> list[Verdict]:
    """
    The verdicts of a day as the dates of its shows leave them: on every requirement, in the riders'
    order, then on what the acts ask together; and after them one on the date of each act, if any.
    """
    answers: list[Verdict] = []
    for rider in riders:
        date = date_of(rider, riders)
        for need in rider["requirements"]:
            answer = verdicts[len(answers)]
            names = departments_of(need)
            told = under_works(on_date(answer, names, date, pack), names, pack)
            answers.append(with_hired(told, names, pack))
    date = date_of_day(riders)
    for answer in verdicts[len(answers) :]:
        names = [answer["department"]]
        told = under_works(on_date(answer, names, date, pack), names, pack)
        answers.append(with_hired(told, names, pack))
    for rider in riders:
        answers.extend(date_judged(rider, date_of(rider, riders), pack))
    return answers


def date_of(rider: RiderAsked, riders: list[RiderAsked]) -> str:
    """The date that an act plays on: an act that tells none plays with those that do."""
    return rider["plays"] if rider["plays"] != "" else date_of_day(riders)


def date_of_day(riders: list[RiderAsked]) -> str:
    """
    The date of a day, by the first act that tells it; empty where none does.

    Who calls the check refuses acts of different dates.
    """
    for rider in riders:
        if rider["plays"] != "":
            return rider["plays"]
    return ""


def departments_of(need: Requirement) -> list[str]:
    """The departments that a requirement asks: of alternatives, each one's."""
    needs = needs_in(need)
    return [one["department"] for one in needs] if len(needs) > 0 else [need["department"]]


def on_date(answer: Verdict, departments: list[str], date: str, pack: FitPack) -> Verdict:
    """A verdict as the date of the show leaves it."""
    if date == "" or answer["verdict"] == NOT_NEEDED:
        return answer
    for closure in closures_of(pack):
        if closed_on(closure, date) == "yes":
            if is_all_closed(closure, answer, departments):
                return without(answer, closure)
            if any(name in names_closed(closure) for name in told_by(answer, departments)):
                answer = with_less(answer, closure, date)
    return answer


def under_works(answer: Verdict, departments: list[str], pack: FitPack) -> Verdict:
    """A verdict with a note on each figure of its departments that is not final."""
    if answer["verdict"] == NOT_NEEDED:
        return answer
    notes: list[str] = []
    for works in works_of(pack):
        told = parts_of(works, "departments")
        named = [name for name in departments if len(told) == 0 or name in told]
        if len(named) > 0:
            figures = parts_of(works, "not_final")
            every = fill(ALL_FIGURES, {"department": ", ".join(named)})
            words = every if len(figures) == 0 else ", ".join(figures)
            notes.append(fill(NOT_FINAL, {"figures": words, "what": works["name"]}))
    if len(notes) == 0:
        return answer
    return settled({**answer, "notes": once([*answer["notes"], *notes])})


def with_hired(answer: Verdict, departments: list[str], pack: FitPack) -> Verdict:
    """A verdict that rests on figures of what is hired in and may come otherwise."""
    if answer["verdict"] in (NOT_NEEDED, ASK):
        return answer
    for hired in hired_of(pack):
        named = parts_of(hired, "departments")
        told = told_by(answer, departments)
        if len(named) == 0 or any(name in named for name in told):
            answer = as_it_may_come(answer, hired)
    return answer


def as_it_may_come(answer: Verdict, hired: Item) -> Verdict:
    """
    A verdict beside what may come otherwise: what fits is asked unless that can only be better,
    what is short unless it can only be worse.
    """
    parts = {"what": hired["name"], "how": text_of(hired, "may_differ"), "reason": answer["reason"]}
    way = text_of(hired, "differs_to")
    is_short = answer["verdict"] == SHORT
    if way == ("worse" if is_short else "better") or answer["verdict"] == ASK:
        note = fill(MAY_DIFFER, parts)
        return settled({**answer, "notes": once([*answer["notes"], note])})
    asker: Asker = {"question": fill(WHAT_COMES, parts)}
    words = lack_words(hired["name"], fill(COMING, parts))
    reason = fill(RESTS_ON_HIRED, parts)
    found = asked_for(answer, asker, reason, key_beside(hired, "may_differ"), words)
    return {**found, "fact": answer["fact"], "notes": answer["notes"], "parts": answer["parts"]}


def is_all_closed(closure: Item, answer: Verdict, departments: list[str]) -> bool:
    """Whether a closure takes in all that could meet a need."""
    names = names_closed(closure)
    if len(names) == 0 or all(name in names for name in departments):
        return True
    return len(departments) == 1 and any(name in names for name in told_by(answer, departments))


def told_by(answer: Verdict, departments: list[str]) -> list[str]:
    """The departments that a need asks, and that of the fact that answers it."""
    fact = answer["fact"]
    return departments if fact is None else [*departments, fact["key"].split(".")[0]]


def without(answer: Verdict, closure: Item) -> Verdict:
    """A verdict on what is closed; what is short without that keeps its own reason."""
    if answer["verdict"] == SHORT:
        return {**answer, "notes": [*answer["notes"], closure_words(closure)]}
    closed: Verdict = {
        **answer,
        "verdict": SHORT,
        "reason": closure_words(closure),
        "margin": ["", ""],
        "notes": [],
        "question": "",
        "act_question": "",
        "lacks": [],
        "parts": [],
    }
    return with_remedy(closed, MENDER)


def with_less(answer: Verdict, closure: Item, date: str) -> Verdict:
    """A verdict on a need of which one of several alternatives is closed: at best an ask."""
    if RANK[answer["verdict"]] >= RANK[ASK]:
        return {**answer, "notes": [*answer["notes"], closure_words(closure)]}
    parts = {"closed": closure_words(closure), "date": date}
    asker: Asker = {"question": fill(CAN_WE_HAVE, parts)}
    return {**asked(answer, asker, fill(ONE_IS_CLOSED, parts)), "fact": answer["fact"]}


def date_judged(rider: RiderAsked, date: str, pack: FitPack) -> list[Verdict]:
    """
    The verdict on the date of an act, where the house is closed on it or may be; none elsewhere,
    and none of a rider that asks nothing.
    """
    if date == "" and len(rider["requirements"]) == 0 and rider["clock"] is None:
        return []
    line = date_line(rider, date)
    regular = regular_judged(line, date, pack)
    if regular is not None:
        return [regular]
    met = [each for each in closures_of(pack) if concerns(each, rider)]
    for closure in met:
        if date != "" and closed_on(closure, date) == "yes" and len(names_closed(closure)) == 0:
            answer = with_remedy(verdict(line, SHORT, closure_words(closure)), MENDER)
            return [with_closure(answer, closure)]
    perhaps = [each for each in met if may_take_in(each, date, pack)]
    if len(perhaps) > 0:
        return [date_asked(line, perhaps, date)]
    return [closures_asked(line, date)] if are_unknown(pack) else []


def regular_judged(line: Line, date: str, pack: FitPack) -> Verdict | None:
    """
    The verdict on a date that something takes in each time, or may take in; None where nothing
    does. What takes in the whole day of the show for certain comes first.
    """
    if date == "":
        return None
    for word in ("yes", "perhaps"):
        for regular in regulars_of(pack):
            if regular_on(regular, date) == word:
                return regular_verdict(line, regular, date, certain=word == "yes")
    return None


def regular_verdict(line: Line, regular: Item, date: str, *, certain: bool) -> Verdict:
    """The verdict on a date that one thing that comes back takes in."""
    words = regular_words(regular)
    if certain:
        answer = with_remedy(verdict(line, SHORT, words), MENDER)
    else:
        parts = {"closed": words, "date": date}
        open_then: Asker = {"question": fill(ARE_YOU_OPEN, parts)}
        answer = asked(line, open_then, fill(PERHAPS_ON, parts))
    answer["fact"] = fact_of(regular["values"]["what"], regular)
    return answer


def concerns(closure: Item, rider: RiderAsked) -> bool:
    """Whether a closure takes in anything that a rider asks of the house."""
    names = names_closed(closure)
    return len(names) == 0 or any(
        name in names
        for need in rider["requirements"]
        if need["carried"] != "show"
        for name in departments_of(need)
    )


def may_take_in(closure: Item, date: str, pack: FitPack) -> bool:
    """
    Whether nobody can tell if a closure takes in a date. Of a show without a date only what is not
    over on the day of the pack's revision does.
    """
    if date == "":
        return is_over(closure, pack["revision"]["on"]) != "yes"
    return closed_on(closure, date) == "perhaps"


def date_asked(line: Line, closures: list[Item], date: str) -> Verdict:
    """The question whether a date lies within closures, or which date it is."""
    parts = {"closed": BETWEEN.join(closure_words(each) for each in closures), "date": date}
    if date == "":
        which: Asker = {"question": fill(WHEN_DO_YOU_PLAY, parts)}
        return with_closure(of_the_act(asked(line, which, fill(NO_DATE, parts))), closures[0])
    open_then: Asker = {"question": fill(ARE_YOU_OPEN, parts)}
    return with_closure(asked(line, open_then, fill(PERHAPS_ON, parts)), closures[0])


def closures_asked(line: Line, date: str) -> Verdict:
    """The question when the house is closed, where it does not know that yet."""
    question = fill(ARE_YOU_OPEN, {"date": date}) if date != "" else WHEN_ARE_YOU_CLOSED
    asker: Asker = {"question": question}
    return asked(line, asker, CLOSURES_UNKNOWN)


def date_line(rider: RiderAsked, date: str) -> Line:
    """The date of an act as what it asks."""
    return {
        "act": rider["act"],
        "line": 0,
        "department": "house",
        "title": DATE,
        "need": date if date != "" else DATE_NOT_SAID,
        "strictness": "must",
    }


def with_closure(answer: Verdict, closure: Item) -> Verdict:
    """A verdict that shows the closure it comes from."""
    values = closure["values"]
    key = "until" if values["until"]["standing"] == "stated" else "from"
    answer["fact"] = fact_of(values[key], closure)
    return answer
