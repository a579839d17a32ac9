"""
Load-in, set-up and checks against doors: the last act on checks first, so that its backline stays.
"""

from builder.fit.clock.acts import day_of, doors_of, load_ins_of
from builder.fit.clock.house import house_says, meals_of, quiet_of
from builder.fit.clock.laying_out import lay_out
from builder.fit.clock.pieces import all_pieces, may_be_heard, questions_to
from builder.fit.clock.records import Act, Laid, Late, Plan, Run
from builder.fit.clock.sentences import ASK_READY, ASK_SET_UP_FOR_MEAL, NOT_ALL_KNOWN, QUESTIONS_OF
from builder.fit.clock.telling import closing_answer
from builder.fit.clock.times import or_none
from builder.fit.records import Line, Section, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, fact_of, settled, verdict


def plan_of(acts: list[Act], section: Section | None) -> Plan:
    """
    Everything that decides whether the checks are done by doors: the pieces, what the house says,
    and what nobody has said.
    """
    doors = doors_of(acts)
    ready = house_says(section, "identity", "checks_end_before_doors")
    quiet = quiet_of(section, day_of(acts))
    load_ins = load_ins_of(acts)
    plan: Plan = {
        "pieces": all_pieces(acts),
        "lacks": [*doors["asks"], *questions_to(acts)],
        "doors_s": doors["s"],
        "ready": ready,
        "meals": meals_of(section),
        "quiet": quiet["hours"],
        "notes": quiet["notes"],
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
        return {"rows": [], "late": [], "lacks": [*plan["lacks"], *plan["meals"]["asks"]]}
    laid = lay_out(plan["pieces"], start_s, plan["meals"], plan["quiet"])
    before_s = or_none(plan["ready"]["s"])
    last: Late = {
        "late_s": laid["now_s"] + before_s - doors_s,
        "at_s": doors_s - before_s,
        "what": "",
        "whose": "",
    }
    return {
        "rows": laid["rows"],
        "late": [*laid["pins"], last],
        "lacks": lacks_of(plan, laid, laid["now_s"] - start_s),
    }


def lacks_of(plan: Plan, laid: Laid, span_s: float) -> list[str]:
    """What is not known and decides, the meals of the house only where one may be due."""
    lacks = list(plan["lacks"])
    for piece in laid["open"]:
        lacks.append(fill(ASK_SET_UP_FOR_MEAL, {"act": piece["whose"]}))
    due_s = plan["meals"]["due_s"]
    if due_s is None or span_s > due_s or len(lacks) > 0:
        lacks.extend(plan["meals"]["asks"])
    return lacks


def before_doors(requirement: Line, plan: Plan, laid: Run) -> Verdict:
    """The verdict on the plan."""
    answer = verdict(requirement, ASK, "")
    if len(laid["late"]) > 0:
        answer = closing_answer(requirement, plan, laid)
    if answer["verdict"] == ASK:
        answer["reason"] = NOT_ALL_KNOWN
    if len(laid["lacks"]) > 0:
        parts = {"questions": " ".join(laid["lacks"]), "title": requirement["title"]}
        answer["question"] = fill(QUESTIONS_OF, parts)
    ready = plan["ready"]
    if ready["value"] is not None and ready["item"] is not None:
        answer["fact"] = fact_of(ready["value"], ready["item"])
    return settled(answer)
