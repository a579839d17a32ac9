"""Power for all departments and acts at the same time: each load on one service, no service and nothing that feeds it above what is free."""

from math import sqrt
from typing import Any

from builder.fit.comparing import age_notes, asked, item_notes, once, section_of, signed
from builder.fit.verdicts import FITS, NOT_NEEDED, SHORT, Record, fact_of, settled, verdict, with_question, with_remedy
from builder.fit.wording import both, digits

POWER = {
    "question": "Which service can we have, of what current on each phase, on which connector, and how far is it from where we need it?",
    "remedy": "Hire a generator, or share with another department and draw less.",
    "who": "the house electrician, or hire",
}
MOST_STEPS = 20000
PHASES = ("free.L1", "free.L2", "free.L3")
SINGLE = ("in turn", "L1", "L2", "L3")


def power_for_all(requirements: list[Record], pack: Record) -> list[Record]:
    """A verdict for each load, in order. A load that has no place beside those before it is short."""
    section, stage = section_of(pack, "power"), section_of(pack, "stage")
    answers = [first_look(requirement, section, stage) for requirement in requirements]
    nodes = tree(section)
    placed: list[Record] = []
    steps = {"left": MOST_STEPS}
    for answer in answers:
        if len(answer["choices"]) > 0:
            trial = [*placed, answer]
            if place(trial, 0, room_of(nodes), nodes, steps):
                placed = trial
            else:
                answer["placed"] = None
                # A failed trial leaves the places of earlier loads undone; they had one, so finding it again succeeds.
                place(placed, 0, room_of(nodes), nodes, {"left": MOST_STEPS})
    room = room_of(nodes)
    for answer in placed:
        take(answer, room, nodes)
    return [outcome(answer, nodes, room, finished=steps["left"] > 0) for answer in answers]


def take(answer: Record, room: dict[str, Any], nodes: dict[str, Record]) -> None:
    """Take a placed load from what is free on its service and on all that feeds it."""
    for name in above(answer["placed"]["item"]["name"], nodes):
        room[name] = None if room[name] is None else room[name] - answer["requirement"]["current_a"]


def tree(section: Any) -> dict[str, Record]:
    """What feeds what, by name: room on the fullest phase, and the name of what feeds it."""
    nodes: dict[str, Record] = {}
    for item in section["items"] if section is not None else []:
        if item["kind"] in ("supply", "generator", "service", "board"):
            above = item["values"]["fed_from"]["text"] if "fed_from" in item["values"] else ""
            shown = fullest(item)
            nodes[item["name"]] = {"free": free_of(item), "above": above, "bound": shown is not None and shown["bound"]}
    return nodes


def free_of(item: Record) -> Any:
    """Free current on the fullest phase, or None where the pack has no such figure."""
    least = None
    for phase in PHASES:
        if phase in item["values"] and item["values"][phase]["number"] is not None:
            number = item["values"][phase]["number"]
            least = number if least is None or number < least else least
    return least


def fullest(item: Record) -> Any:
    """The figure of the phase with least free, or the rating where the pack has no such figure."""
    for phase in PHASES:
        if phase in item["values"] and item["values"][phase]["number"] == free_of(item) and free_of(item) is not None:
            return item["values"][phase]
    return item["values"].get("rating")


def room_of(nodes: dict[str, Record]) -> dict[str, Any]:
    """What is free everywhere before anything is placed."""
    return {name: nodes[name]["free"] for name in nodes}


def place(loads: list[Record], index: int, room: dict[str, Any], nodes: dict[str, Record], steps: dict[str, int]) -> bool:
    """Find a place for every load from ``index`` on, trying each load's choices in order, within a bound of steps."""
    if index == len(loads):
        return True
    load = loads[index]
    for choice in load["choices"]:
        steps["left"] -= 1
        if steps["left"] < 0:
            return False
        path = above(choice["item"]["name"], nodes)
        if all(room[name] is None or room[name] >= load["requirement"]["current_a"] for name in path):
            for name in path:
                room[name] = None if room[name] is None else room[name] - load["requirement"]["current_a"]
            load["placed"] = choice
            if place(loads, index + 1, room, nodes, steps):
                return True
            for name in path:
                room[name] = None if room[name] is None else room[name] + load["requirement"]["current_a"]
    return False


def above(name: str, nodes: dict[str, Record]) -> list[str]:
    """A service and all that feeds it."""
    path: list[str] = []
    while name in nodes and name not in path:
        path.append(name)
        name = nodes[name]["above"]
    return path


def first_look(requirement: Record, section: Any, stage: Any) -> Record:
    """A load by itself: the services that could take it, or why none can."""
    answer: Record = {"requirement": requirement, "choices": [], "placed": None, "alone": None}
    if requirement["carried"] == "show":
        answer["alone"] = verdict(requirement, NOT_NEEDED, "The show brings it.")
    elif section is None:
        answer["alone"] = asked(requirement, POWER, "The pack does not describe power.")
    elif requirement["phases"] == "single":
        answer["alone"] = outlets(requirement, section)
    else:
        services(answer, section, stage)
    return answer


def services(answer: Record, section: Record, stage: Any) -> None:
    """Sort the services into those that do, those that do not, and those nobody has described well enough."""
    requirement = answer["requirement"]
    looks = [look(requirement, item, section, stage) for item in section["items"] if item["kind"] == "service"]
    good = [each for each in looks if each["word"] == "fits"]
    good.sort(key=lambda each: (each["order"], each["free"]))
    answer["choices"] = good
    if len(good) > 0:
        return
    unknown = [each for each in looks if each["word"] == "ask"]
    if len(unknown) > 0 or len(looks) == 0:
        answer["alone"] = asked(requirement, POWER, unknown[0]["reason"] if len(unknown) > 0 else "The house has not said.")
        return
    nearest = looks[0]
    for each in looks:
        if each["misses"] < nearest["misses"] or (each["misses"] == nearest["misses"] and each["free"] > nearest["free"]):
            nearest = each
    found = with_remedy(verdict(requirement, SHORT, nearest["reason"]), POWER)
    found["fact"] = nearest["fact"]
    found["margin"] = nearest["margin"]
    answer["alone"] = found


def look(requirement: Record, item: Record, section: Record, stage: Any) -> Record:
    """One service: does it do, how much is free, and what must be known."""
    free = free_of(item)
    shown = fullest(item)
    slack = 0.0 if free is None else free - requirement["current_a"]
    reasons: list[str] = []
    unknown: list[str] = []
    notes = item_notes(item)
    if item["condition"] == "out of service" or item["terms"] == "not for visitors":
        reasons.append(item["condition"] if item["condition"] == "out of service" else item["terms"])
    system = system_says(requirement, item, section)
    (reasons if system[:5] == "other" else unknown if system != "" else []).append(system)
    connector = connector_says(requirement, item)
    if connector == "none":
        reasons.append("no connector for visitors")
    elif connector == "unknown":
        unknown.append("its connectors are not stated")
    elif connector != "":
        notes.append(connector)
    if requirement["apart"] and "dimmers" in item["values"] and item["values"]["dimmers"]["text"] == "yes":
        reasons.append("dimmers hang on it")
    elif requirement["apart"]:
        notes.append("Ask whether dimmers share its transformer.")
    distance = distance_says(requirement, item, stage)
    if distance["word"] == "short":
        reasons.append(distance["words"])
    elif distance["word"] == "ask":
        unknown.append(distance["words"])
    elif distance["words"] != "":
        notes.append(distance["words"])
    if free is None:
        unknown.append("what is free is not known")
    elif shown is not None and shown["bound"] and slack >= 0:
        unknown.append("at most " + both("current", free)[0] + " are free, for the house has not measured all that it draws")
    elif slack < 0:
        reasons.append(both("current", -slack)[0] + " too little on the fullest phase")
    word = "short" if len(reasons) > 0 else "ask" if len(unknown) > 0 else "fits"
    meant = item["values"]["dedicated_to"]["text"] if "dedicated_to" in item["values"] else ""
    return {
        "word": word,
        "item": item,
        "free": 0.0 if free is None else free,
        "order": 0 if requirement["for"].lower() in meant.lower() else 1,
        "misses": len(reasons),
        "reason": item["name"] + ": " + ", ".join(reasons if len(reasons) > 0 else unknown) + ".",
        "notes": [*notes, *age_notes(item["values"].get("rating"))],
        "fact": fact_of(shown, item) if shown is not None else None,
        "margin": signed(both("current", abs(slack)), slack) if free is not None and (slack < 0 or word == "fits") else ["", ""],
    }


def system_says(requirement: Record, item: Record, section: Record) -> str:
    """Empty where the voltages are those asked for; otherwise why not. A service without a word takes that of what feeds it."""
    if requirement["system"] == "":
        return ""
    text = system_of(item, section)
    if text == "":
        return "its system is not stated"
    if volts(text) != volts(requirement["system"]):
        return "other system, " + text
    return ""


def system_of(item: Record, section: Record) -> str:
    """The system of an item, or of what feeds it."""
    seen: list[str] = []
    here: Any = item
    while here is not None and here["name"] not in seen:
        seen.append(here["name"])
        if "system" in here["values"]:
            return str(here["values"]["system"]["text"])
        above_name = str(here["values"]["fed_from"]["text"]) if "fed_from" in here["values"] else ""
        here = next((other for other in section["items"] if other["name"] == above_name and other["kind"] != "load"), None)
    return ""


def volts(text: str) -> str:
    """The voltages of a system's words: 230/400 of "230/400 V three phase"."""
    return str(text).split("V")[0].replace(" ", "")


def connector_says(requirement: Record, item: Record) -> str:
    """Empty where the connector is there; ``none``, ``unknown``, or a note that an adapter is needed."""
    value = item["values"].get("connectors")
    if value is not None and value["standing"] == "none":
        return "none"
    if requirement["connector"] == "":
        return ""
    if value is None or value["standing"] != "stated":
        return "unknown"
    if requirement["connector"].lower() in value["text"].lower():
        return ""
    return "Connector: " + str(requirement["connector"]) + " asked, the house has " + str(value["text"]) + ". Whoever connects decides on an adapter."


def position_of(item: Any) -> Any:
    """Across and depth of an item, or None."""
    if item is None or "at.across" not in item["values"] or "at.depth" not in item["values"]:
        return None
    return [item["values"]["at.across"]["number"], item["values"]["at.depth"]["number"]]


def place_named(stage: Any, name: str) -> Any:
    """A place of the stage by its name, or None."""
    for item in stage["items"] if stage is not None else []:
        if item["kind"] == "place" and item["name"].lower() == name.lower():
            return item
    return None


def distance_says(requirement: Record, item: Record, stage: Any) -> Record:
    """Whether a service is near enough, by the straight line; a cable is always longer."""
    if requirement["within_m"] is None:
        return {"word": "fits", "words": ""}
    named = place_named(stage, item["values"]["place"]["text"]) if "place" in item["values"] else None
    here = position_of(item) if position_of(item) is not None else position_of(named)
    there = position_of(place_named(stage, requirement["of"]))
    if there is None:
        return {"word": "ask", "words": "the house names no place " + requirement["of"]}
    if here is None:
        return {"word": "ask", "words": "where it is, is not stated"}
    across_m, depth_m = here[0] - there[0], here[1] - there[1]
    distance_m = sqrt(across_m * across_m + depth_m * depth_m)
    if distance_m > requirement["within_m"]:
        return {"word": "short", "words": both("length", distance_m)[0] + " from " + requirement["of"] + " in a straight line"}
    return {"word": "fits", "words": both("length", distance_m)[0] + " from " + requirement["of"] + " in a straight line; the cable path is longer."}


def outlets(requirement: Record, section: Record) -> Record:
    """Single-phase circuits, by counting outlets of at least that rating at the place asked for."""
    total, unknown, last = 0.0, 0, None
    notes: list[str] = []
    for item in section["items"]:
        if item["kind"] == "outlet" and serves(requirement, item, section):
            rating, count = item["values"].get("rating"), item["values"]["count"]
            if rating is None or rating["number"] is None:
                unknown += 1
            elif rating["number"] >= requirement["current_a"]:
                total += count["number"]
                notes = [*notes, *item_notes(item), *age_notes(rating)]
                last = fact_of(rating, item)
    slack = total - requirement["count"]
    if slack < 0 and unknown > 0:
        return asked(requirement, POWER, "The house has not said what some outlets are rated for.")
    if slack < 0:
        found = with_remedy(verdict(requirement, SHORT, digits(total, 0) + " such outlets of " + digits(requirement["count"], 0) + "."), POWER)
    else:
        found = verdict(requirement, FITS, digits(total, 0) + " such outlets, " + digits(requirement["count"], 0) + " asked.")
        found["notes"] = [*once(notes), "Counted, not loaded: the power page says how many can be loaded at the same time."]
    found["fact"] = last
    found["margin"] = signed(both("count", abs(slack)), slack)
    return settled(found)


def serves(requirement: Record, item: Record, section: Record) -> bool:
    """Whether an outlet is single-phase, may be used, and stands where it is asked for on the voltage asked for."""
    if item["condition"] == "out of service" or item["terms"] == "not for visitors":
        return False
    phases = item["values"]["phases"]["text"] if "phases" in item["values"] else ""
    if phases not in SINGLE:
        return False
    if requirement["of"] != "" and item["values"]["place"]["text"].lower() != requirement["of"].lower():
        return False
    return requirement["system"] == "" or volts(requirement["system"]) in volts(system_of(item, section)).split("/")


def outcome(answer: Record, nodes: dict[str, Record], room: dict[str, Any], *, finished: bool) -> Record:
    """A load's verdict once all have been placed."""
    requirement = answer["requirement"]
    if answer["alone"] is not None:
        return settled(answer["alone"])
    if answer["placed"] is None:
        if not finished:
            return with_question(
                verdict(requirement, "ask", "No place was found beside the other loads within the bound of the search."),
                requirement,
                POWER["question"],
            )
        alone = answer["choices"][0]
        found = with_remedy(
            verdict(requirement, SHORT, "Alone it would fit on " + alone["item"]["name"] + ", but not at the same time as the other loads."), POWER
        )
        found["fact"] = alone["fact"]
        return found
    choice = answer["placed"]
    path = above(choice["item"]["name"], nodes)
    left_a = min(room[name] for name in path if room[name] is not None)
    words = both("current", left_a)
    found = verdict(requirement, FITS, "On " + choice["item"]["name"] + "; " + words[0] + " are left there beside all loads that have a place.")
    found["fact"] = choice["fact"]
    found["margin"] = signed(words, left_a)
    found["notes"] = [*choice["notes"], *uncertain(path, nodes)]
    return settled(found)


def uncertain(path: list[str], nodes: dict[str, Record]) -> list[str]:
    """A note for each thing above a service whose own free current is only known to be no more than a figure."""
    return [
        name
        + " feeds it and has at most "
        + both("current", nodes[name]["free"])[0]
        + " free, for the house has not measured all that it draws. Ask."
        for name in path[1:]
        if nodes[name]["bound"]
    ]
