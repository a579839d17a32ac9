"""
Load-in, set-up and checks against doors: the last act on checks first, so that its backline stays.
"""

from builder.fit.clock.acts import day_of, doors_of, load_ins_of
from builder.fit.clock.answers import questions_of
from builder.fit.clock.house import house_says, meals_of, quiet_of
from builder.fit.clock.laying_out import lay_out
from builder.fit.clock.pieces import all_pieces, may_be_heard, questions_to
from builder.fit.clock.records import Act, Laid, Late, Plan, Run, WorkedDoors
from builder.fit.clock.sentences import (
    ASK_READY,
    ASK_SET_UP_FOR_MEAL,
    NOT_ALL_KNOWN,
    WORKED_BACK,
)
from builder.fit.clock.telling import closing_answer
from builder.fit.clock.times import or_none
from builder.fit.notes import age_notes
from builder.fit.records import Line, Section, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, fact_of, settled, verdict
from builder.fit.wording import clock as clock_words
from builder.fit.wording import lasting


def plan_of(acts: list[Act], section: Section | None) -> Plan:
    """
    Everything that decides whether the checks are done by doors: the pieces, what the house says,
    and what nobody has said.
    """
    doors = doors_at(acts, section)
    ready = house_says(section, "identity", "checks_end_before_doors")
    quiet = quiet_of(section, day_of(acts))
    load_ins = load_ins_of(acts)
    plan: Plan = {
        "pieces": all_pieces(acts),
        "lacks": [],
        "act_lacks": [*doors["asks"], *questions_to(acts)],
        "doors_s": doors["s"],
        "ready": ready,
        "meals": meals_of(section),
        "quiet": quiet["hours"],
        "quiet_perhaps": quiet["perhaps"],
        "day_asks": quiet["day_asks"],
        "notes": [*quiet["notes"], *doors["notes"]],
        "load_in_from": house_says(section, "identity", "load_in_from"),
        "kept": house_says(section, "identity", "doors_before_show"),
        "first_s": acts[0]["starts_s"],
        "start_s": min(load_ins) if len(load_ins) == len(acts) else None,
    }
    if ready["standing"] == "ask":
        plan["lacks"].append(ASK_READY)
    if any(may_be_heard(act) for act in acts):
        plan["lacks"].extend(quiet["asks"])
    return plan


def run(plan: Plan) -> Run:
    """
    The plan laid out, with by how much doors are missed; nothing where load-in or doors are not
    known.
    """
    start_s, doors_s = plan["start_s"], plan["doors_s"]
    if start_s is None or doors_s is None:
        return {
            "rows": [],
            "late": [],
            "lacks": [*plan["lacks"], *plan["meals"]["asks"]],
            "act_lacks": plan["act_lacks"],
        }
    laid = lay_out(plan["pieces"], start_s, plan["meals"], plan["quiet"])
    before_s = or_none(plan["ready"]["s"])
    last: Late = {
        "late_s": laid["now_s"] + before_s - doors_s,
        "at_s": doors_s - before_s,
        "what": "",
        "whose": "",
    }
    of_acts = [*plan["act_lacks"], *meal_lacks(laid)]
    return {
        "rows": laid["rows"],
        "late": [*laid["pins"], last],
        "lacks": lacks_of(plan, of_acts, laid["now_s"] - start_s),
        "act_lacks": [*of_acts, *day_lacks(plan, laid, start_s)],
    }


def day_lacks(plan: Plan, laid: Laid, start_s: float) -> list[str]:
    """The question for the weekday, where hours that hold on some days alone change the plan."""
    if len(plan["day_asks"]) == 0:
        return []
    other = lay_out(plan["pieces"], start_s, plan["meals"], plan["quiet_perhaps"])
    if laid["sure"] and other["sure"] and other["rows"] == laid["rows"]:
        return []
    return plan["day_asks"]


def doors_at(acts: list[Act], section: Section | None) -> WorkedDoors:
    """
    When doors are: as a rider says, else as long before the first note as the house keeps, told in
    a note; or what to ask.
    """
    doors = doors_of(acts)
    kept = house_says(section, "identity", "doors_before_show")
    first_s = acts[0]["starts_s"] if len(acts) > 0 else None
    is_told = any(act["clock"]["doors"] is not None for act in acts)
    if is_told or first_s is None or kept["s"] is None:
        return {"s": doors["s"], "asks": doors["asks"], "notes": []}
    doors_s = first_s - kept["s"]
    parts = {
        "doors": clock_words(doors_s),
        "length": lasting(kept["s"]),
        "first": clock_words(first_s),
    }
    notes = [fill(WORKED_BACK, parts), *age_notes(kept["value"])]
    return {"s": doors_s, "asks": [], "notes": notes}


def meal_lacks(laid: Laid) -> list[str]:
    """What acts must say because a meal may be due before their check."""
    return [fill(ASK_SET_UP_FOR_MEAL, {"act": piece["whose"]}) for piece in laid["open"]]


def lacks_of(plan: Plan, of_acts: list[str], span_s: float) -> list[str]:
    """What the house has not said and decides, its meals only where one may be due."""
    lacks = list(plan["lacks"])
    due_s = plan["meals"]["due_s"]
    if due_s is None or span_s > due_s or len(lacks) > 0 or len(of_acts) > 0:
        lacks.extend(plan["meals"]["asks"])
    return lacks


def before_doors(requirement: Line, plan: Plan, laid: Run) -> Verdict:
    """The verdict on the plan."""
    answer = verdict(requirement, ASK, "")
    if len(laid["late"]) > 0:
        answer = closing_answer(requirement, plan, laid)
    if answer["verdict"] == ASK:
        answer["reason"] = NOT_ALL_KNOWN
    answer["question"] = questions_of(requirement, laid["lacks"])
    answer["act_question"] = questions_of(requirement, laid["act_lacks"])
    ready = plan["ready"]
    if ready["value"] is not None and ready["item"] is not None:
        answer["fact"] = fact_of(ready["value"], ready["item"])
    return settled(answer)
