"""
The day from load-in to the last truck: every place where it can fail to close, and the day as a
table.
"""

from builder.fit.clock.acts import (
    acts_of,
    doors_of,
    in_order,
    load_ins_of,
    says_before_doors,
    says_evening,
    says_load_out,
    says_set,
)
from builder.fit.clock.answers import acts_asked
from builder.fit.clock.before_doors import before_doors, plan_of, run
from builder.fit.clock.changeover import changeover_answer
from builder.fit.clock.evening import after_doors, crew_day, load_out, set_closes
from builder.fit.clock.records import Act, DayAnswer, Row
from builder.fit.clock.sentences import (
    ASK_BEGINS,
    ASK_ON_STAGE,
    ASK_SET,
    ASK_WHO_FIRST,
    BEGIN_NOT_SAID,
    CHANGEOVER_TO,
    END_OF,
    FIRST_NOTE,
    LOAD_OUT_OF,
    NOT_STATED,
    ONE_NOT_ON_STAGE,
    SET_NOT_SAID,
    SET_OF,
    SOME_NOT_ON_STAGE,
    SPAN,
    TWO_AT_ONCE,
)
from builder.fit.clock.table import day_table
from builder.fit.records import FitPack, Line, RiderAsked, Section, Verdict
from builder.fit.sections import section_of
from builder.fit.sentences import fill
from builder.fit.wording import clock as clock_words

THE_DAY = "The day"


def the_day(riders: list[RiderAsked], pack: FitPack) -> DayAnswer:
    """
    Verdicts on the day's clock and its rows; both empty where no rider says more than when it loads
    in and ends.
    """
    acts, section = acts_of(riders), section_of(pack, "house")
    known = in_order(acts)
    early = any(says_before_doors(act) for act in acts)
    late = len(acts) > 1 and any(says_evening(act) for act in acts)
    if len(known) == 0 and (early or late):
        return {"verdicts": [order_asked(acts)], "rows": []}
    verdicts: list[Verdict] = []
    before: list[Row] = []
    if early:
        plan = plan_of(known, section)
        laid = run(plan)
        before = laid["rows"]
        words = span_words(known, plan["doors_s"])
        line = day_line(known, "Load-in and checks before doors", words)
        verdicts.append(before_doors(line, plan, laid))
    verdicts.extend(evening(known, section, late))
    shown = early or late or any(says_set(act) or says_load_out(act) for act in acts)
    has_table = shown and len(known) > 0
    return {
        "verdicts": verdicts,
        "rows": day_table(known, before, section) if has_table else [],
    }


def day_line(acts: list[Act], title: str, need: str) -> Line:
    """A requirement of the day: of the act where there is one, else of the day."""
    alone = len(acts) == 1
    return {
        "act": acts[0]["act"] if alone else THE_DAY,
        "line": acts[0]["clock"]["line"] if alone else 0,
        "department": "clock",
        "title": title,
        "need": need,
        "strictness": "must",
    }


def span_words(acts: list[Act], doors_s: float | None) -> str:
    """From when until when, in words."""
    load_ins = load_ins_of(acts)
    parts = {
        "load_in": clock_words(min(load_ins)) if len(load_ins) == len(acts) else NOT_STATED,
        "doors": clock_words(doors_s) if doors_s is not None else NOT_STATED,
    }
    return fill(SPAN, parts)


def order_asked(acts: list[Act]) -> Verdict:
    """The order of the acts where it is not known."""
    silent = [act["act"] for act in acts if act["starts_s"] is None]
    line = day_line(acts, "Order of the acts", "who plays after whom")
    if len(silent) == 0:
        return acts_asked(line, [ASK_WHO_FIRST], TWO_AT_ONCE)
    questions = [fill(ASK_ON_STAGE, {"act": name}) for name in silent]
    template = ONE_NOT_ON_STAGE if len(silent) == 1 else SOME_NOT_ON_STAGE
    return acts_asked(line, questions, fill(template, {"acts": ", ".join(silent)}))


def evening(acts: list[Act], section: Section | None, several: bool) -> list[Verdict]:
    """What is judged from doors on."""
    verdicts = first_act(acts, section)
    for index in range(len(acts)):
        verdicts.extend(set_answers(acts, acts[index]))
        if several and index > 0:
            title = fill(CHANGEOVER_TO, {"act": acts[index]["act"]})
            line = day_line(acts, title, "in time")
            verdicts.append(changeover_answer(line, acts[index - 1], acts[index]))
    verdicts.extend(after_the_show(acts, section))
    return verdicts


def first_act(acts: list[Act], section: Section | None) -> list[Verdict]:
    """The first act after doors, where both are known."""
    if len(acts) == 0:
        return []
    doors_s, starts_s = doors_of(acts)["s"], acts[0]["starts_s"]
    if doors_s is None or starts_s is None:
        return []
    need = fill(FIRST_NOTE, {"time": clock_words(starts_s)})
    line = day_line(acts, "From doors to the first act", need)
    return [after_doors(line, acts[0], doors_s, section)]


def set_answers(acts: list[Act], act: Act) -> list[Verdict]:
    """Whether a set ends when it says, or what to ask of one that says half of it."""
    clock = act["clock"]
    line = day_line(acts, fill(SET_OF, {"act": act["act"]}), "as long as stated")
    line["act"] = act["act"]
    line["line"] = clock["line"]
    if clock["on stage"] is not None and clock["set"] is not None and clock["ends"] is not None:
        return [set_closes(line, act)]
    if act["ends_s"] is None and says_set(act):
        line["title"] = fill(END_OF, {"act": act["act"]})
        return [end_asked(line, act)]
    return []


def end_asked(line: Line, act: Act) -> Verdict:
    """The end of an act that says only half of it."""
    name = {"act": act["act"]}
    if act["clock"]["set"] is None:
        return acts_asked(line, [fill(ASK_SET, name)], SET_NOT_SAID)
    return acts_asked(line, [fill(ASK_BEGINS, name)], BEGIN_NOT_SAID)


def after_the_show(acts: list[Act], section: Section | None) -> list[Verdict]:
    """The load-out of the last act and the crew's day, where the rider speaks of a load-out."""
    if not any(says_load_out(act) for act in acts):
        return []
    last = acts[-1]
    if last["ends_s"] is None:
        return []
    title = fill(LOAD_OUT_OF, {"act": last["act"]})
    verdicts = [load_out(day_line(acts, title, "after the last note"), last, section)]
    starts = load_ins_of(acts)
    if len(starts) == len(acts) and last["clock"]["load out"] is not None:
        line = day_line(acts, "The crew's day", "from the first truck to the last")
        line["strictness"] = "should"
        verdicts.append(crew_day(line, min(starts), last, section))
    return verdicts
