"""
Load-in, set-up and checks against doors: the last act on checks first, so that its backline stays.
"""

from typing import Any

from builder.fit.clock.acts import day_of, doors_of, work_time
from builder.fit.clock.house import PRACTICE, READY, meals_of, quiet_of, said_by_house
from builder.fit.clock.laying_out import laid_out
from builder.fit.comparing import age_notes
from builder.fit.verdicts import ASK, FITS, SHORT, Record, fact_of, settled, verdict
from builder.fit.wording import clock as clock_words
from builder.fit.wording import lasting

NAMES = ("set up", "line check", "check", "check from", "clear after check", "doors")
COMMONLY = {
    "load in": "when is your first truck opened?",
    "set up": (
        "how long from load-in until your check can begin? Commonly 2 to 8 h, by the size of the"
        " show" + PRACTICE
    ),
    "set up behind": (
        "how long do you set up, from a free deck until your check can begin? Commonly 15 to 30 min"
        + PRACTICE
    ),
    "check": (
        "how long is your check, or 0 min for none? Commonly 60 to 90 min for who plays last, 30 to"
        " 45 min for others" + PRACTICE
    ),
    "clear after check": (
        "how long after your check until the next act can set up in front of you? Commonly 10 to"
        " 20 min" + PRACTICE
    ),
}


def plan_of(acts: list[Record], section: Any) -> Record:
    """
    Everything that decides whether the checks are done by doors: the pieces, what the house says,
    and what nobody has said.
    """
    doors, day = doors_of(acts), day_of(acts)
    ready = said_by_house(section, "identity", "checks_end_before_doors")
    quiet = quiet_of(section, day)
    plan: Record = {
        "pieces": [],
        "lacks": [*doors["asks"], *lacking(acts)],
        "doors_s": doors["s"],
        "ready": ready,
        "meals": meals_of(section),
        "quiet": quiet["hours"],
        "notes": quiet["notes"],
        "from": said_by_house(section, "identity", "load_in_from"),
        "kept": said_by_house(section, "identity", "doors_before_show"),
        "first_s": acts[0]["starts_s"],
    }
    if ready["standing"] == "ask":
        plan["lacks"].append(READY)
    if any(may_be_heard(act) for act in acts):
        plan["lacks"] = [*plan["lacks"], *quiet["asks"]]
    for index in range(len(acts) - 1, -1, -1):
        plan["pieces"] = [*plan["pieces"], *pieces_of(acts[index], index > 0)]
    load_ins = [act["clock"]["load in"] for act in acts if act["clock"]["load in"] is not None]
    plan["start_s"] = min(load_ins) if len(load_ins) == len(acts) else None
    return plan


def may_be_heard(act: Record) -> bool:
    """
    Whether an act has a check that quiet hours could stop: one of a stated or an unknown length.
    """
    return act["clock"]["check"] != 0 or (
        act["clock"]["line check"] is not None and act["clock"]["line check"] > 0
    )


def lacking(acts: list[Record]) -> list[str]:
    """What the acts leave open, as questions, who checks first before the others."""
    asks = []
    for index in range(len(acts) - 1, -1, -1):
        act, clock = acts[index]["act"], acts[index]["clock"]
        first = index == len(acts) - 1
        if clock["load in"] is None:
            asks.append(act + ": " + COMMONLY["load in"])
        if clock["set up"] is None and clock["check from"] is None:
            asks.append(act + ": " + COMMONLY["set up" if first else "set up behind"])
        if clock["check"] is None:
            asks.append(act + ": " + COMMONLY["check"])
        if clock["clear after check"] is None and index > 0:
            asks.append(act + ": " + COMMONLY["clear after check"])
    return asks


def pieces_of(act: Record, followed: bool) -> list[Record]:
    """An act's work before doors; clearing the deck only where another act sets up after it."""
    clock = act["clock"]
    agreed_s = work_time(act, "check from")
    blank = {
        "whose": act["act"],
        "not_before_s": None,
        "until_s": None,
        "at_s": None,
        "splits": True,
    }
    pieces = [
        {
            **blank,
            "what": "set-up",
            "length_s": clock["set up"],
            "not_before_s": clock["load in"],
            "until_s": agreed_s,
        }
    ]
    if clock["line check"] is not None:
        pieces.append(
            {
                **blank,
                "what": "line check",
                "length_s": clock["line check"],
                "at_s": agreed_s,
                "splits": False,
            }
        )
        agreed_s = None
    pieces.append(
        {**blank, "what": "check", "length_s": clock["check"], "at_s": agreed_s, "splits": False}
    )
    if followed:
        pieces.append(
            {**blank, "what": "clearing the deck", "length_s": clock["clear after check"]}
        )
    return pieces


def run(plan: Record) -> Record:
    """
    The plan laid out, with by how much doors are missed; nothing where load-in or doors are not
    known.
    """
    if plan["start_s"] is None or plan["doors_s"] is None:
        return {
            "rows": [],
            "late": [],
            "lacks": [*plan["lacks"], *plan["meals"]["asks"]],
            "now_s": None,
        }
    state = laid_out(plan["pieces"], plan["start_s"], plan["meals"], plan["quiet"])
    lacks = list(plan["lacks"])
    for piece in state["open"]:
        lacks.append(
            piece["whose"] + ": " + COMMONLY["set up"] + " A meal break is due before your check."
        )
    span_s = state["now_s"] - plan["start_s"]
    if len(plan["meals"]["asks"]) > 0 and (
        plan["meals"]["due_s"] is None or span_s > plan["meals"]["due_s"] or len(lacks) > 0
    ):
        lacks = [*lacks, *plan["meals"]["asks"]]
    before_s = plan["ready"]["s"] if plan["ready"]["s"] is not None else 0.0
    last = {
        "late_s": state["now_s"] + before_s - plan["doors_s"],
        "at_s": plan["doors_s"] - before_s,
        "what": "",
        "whose": "",
    }
    return {**state, "late": [*state["pins"], last], "lacks": lacks}


def before_doors(requirement: Record, plan: Record, laid: Record) -> Record:
    """The verdict on the plan."""
    found = verdict(requirement, ASK, "")
    if len(laid["late"]) > 0:
        found = against_doors(requirement, plan, laid)
    if found["verdict"] == ASK:
        found["reason"] = "Not all that decides is known."
    if len(laid["lacks"]) > 0:
        found["question"] = " ".join(laid["lacks"]) + " (" + requirement["title"] + ".)"
    if plan["ready"]["item"] is not None:
        found["fact"] = fact_of(plan["ready"]["value"], plan["ready"]["item"])
    return settled(found)


def against_doors(requirement: Record, plan: Record, laid: Record) -> Record:
    """
    Whether it closes, where it does not, and by how much.

    A length that nobody stated can only make it later.
    """
    worst = laid["late"][0]
    for other in laid["late"]:
        if other["late_s"] > worst["late_s"]:
            worst = other
    if worst["late_s"] <= 0 and len(laid["lacks"]) > 0:
        return verdict(requirement, ASK, "")
    words = lasting(worst["late_s"])
    if worst["late_s"] > 0:
        least = "at least " if len(laid["lacks"]) > 0 else ""
        found = verdict(
            requirement, SHORT, where(worst, plan) + " " + least + words + " late. " + sum_of(laid)
        )
        found["margin"] = ["−" + words, ""]
        return mended(
            found,
            plan,
            worst["late_s"],
            "As far as is known, any" if len(laid["lacks"]) > 0 else "Any",
        )
    found = verdict(requirement, FITS, spared(laid, plan) + " " + sum_of(laid))
    found["margin"] = ["+" + words if worst["late_s"] < 0 else words, ""]
    found["notes"] = [*plan["notes"], *plan["meals"]["notes"], *age_notes(plan["ready"]["value"])]
    return found


def where(late: Record, plan: Record) -> str:
    """What does not close."""
    if late["what"] != "":
        check = str(late["what"]) + " of " + str(late["whose"])
        return (
            "It does not close at the "
            + check
            + ", agreed for "
            + clock_words(late["at_s"])
            + ": it can begin"
        )
    if plan["ready"]["s"] is None or plan["ready"]["s"] == 0:
        return (
            "It does not close at doors, " + clock_words(plan["doors_s"]) + ": the last check ends"
        )
    kept: str = (
        ", " + lasting(plan["ready"]["s"]) + " before doors at " + clock_words(plan["doors_s"])
    )
    return "It does not close at " + clock_words(late["at_s"]) + kept + ": the last check ends"


def spared(laid: Record, plan: Record) -> str:
    """How much is to spare, at each agreed time and at doors."""
    parts = []
    for late in laid["late"]:
        at = (
            "the " + late["what"] + " of " + late["whose"] + " at"
            if late["what"] != ""
            else "the checks must have ended at"
        )
        parts.append(
            (lasting(late["late_s"]) if late["late_s"] < 0 else "nothing")
            + " before "
            + at
            + " "
            + clock_words(late["at_s"])
        )
    said: str = ", ".join(parts)
    return "To spare: " + said + " (doors " + clock_words(plan["doors_s"]) + ")."


def sum_of(laid: Record) -> str:
    """The sum, piece by piece."""
    words, whose = "", ""
    for each in laid["rows"]:
        length = lasting(each["length_s"]) if each["length_s"] is not None else "not stated"
        before = (
            ", "
            if each["whose"] == whose
            else each["whose"] + ": "
            if words == ""
            else "; " + each["whose"] + ": "
        )
        words = words + before + each["what"] + " " + length
        whose = each["whose"]
    return str(words) + "."


def mended(found: Record, plan: Record, late_s: float, any_of: str) -> Record:
    """What would mend a day that does not close. Each is proven by laying the day out again."""
    ways = [*earlier(plan, late_s), *shorter(plan, late_s), *later(plan, late_s)]
    if len(ways) == 0:
        found["remedy"] = (
            "No single change closes it: load in the day before, or leave out a check."
        )
        found["who"] = "the show and the promoter"
        return found
    found["remedy"] = any_of + " of these closes it: " + "; ".join(words for words, _ in ways) + "."
    found["who"] = " or ".join(sorted({who for _, who in ways}))
    return found


def closes(plan: Record) -> bool:
    """Whether a plan closes."""
    return all(late["late_s"] <= 0 for late in run(plan)["late"])


def earlier(plan: Record, late_s: float) -> list[tuple[str, str]]:
    """Loading in earlier, where the house allows work at that hour."""
    start_s = plan["start_s"] - late_s
    if start_s < 0 or (plan["from"]["s"] is not None and start_s < plan["from"]["s"]):
        return []
    pieces = [
        {**piece, "not_before_s": start_s} if piece["not_before_s"] == plan["start_s"] else piece
        for piece in plan["pieces"]
    ]
    if not closes({**plan, "start_s": start_s, "pieces": pieces}):
        return []
    asks = " if the house allows it" if plan["from"]["standing"] == "ask" else ""
    return [("load in at " + clock_words(start_s) + asks, "the show")]


def shorter(plan: Record, late_s: float) -> list[tuple[str, str]]:
    """A shorter check; the one that comes last first, for it has the least to lose."""
    for index in range(len(plan["pieces"]) - 1, -1, -1):
        piece = plan["pieces"][index]
        if (
            piece["what"] == "check"
            and piece["length_s"] is not None
            and piece["length_s"] >= late_s
        ):
            left_s = piece["length_s"] - late_s
            if closes(
                {
                    **plan,
                    "pieces": [
                        {**each, "length_s": left_s} if each is piece else each
                        for each in plan["pieces"]
                    ],
                }
            ):
                words = (
                    "shorten the check of " + piece["whose"] + " to " + lasting(left_s)
                    if left_s > 0
                    else "leave out the check of " + piece["whose"]
                )
                return [(words, "the show")]
    return []


def later(plan: Record, late_s: float) -> list[tuple[str, str]]:
    """Later doors, where the first act leaves room for it."""
    doors_s = plan["doors_s"] + late_s
    kept_s = plan["kept"]["s"] if plan["kept"]["s"] is not None else 0.0
    if (
        plan["first_s"] is None
        or doors_s + kept_s > plan["first_s"]
        or not closes({**plan, "doors_s": doors_s})
    ):
        return []
    return [("open doors at " + clock_words(doors_s), "the promoter and the house")]
