"""
Power for all departments and acts at the same time: each load in its place, no phase of a service
or of what feeds it above what is free.
"""

from math import sqrt
from typing import Any

from builder.fit.circuits import (
    OTHER_SYSTEM,
    circuits,
    dimmers_beside,
    filled,
    is_nested,
    left_on,
    most_of,
    placed_circuits,
    with_one,
)
from builder.fit.comparing import age_notes, asked, item_notes, section_of, signed
from builder.fit.feeds import (
    PHASES,
    ROUNDING_A,
    above,
    free_of,
    fullest,
    least_free,
    least_of_all,
    least_room,
    less,
    not_sure,
    outage,
    room_of,
    system_of,
    tree,
    volts,
)
from builder.fit.records import Advice
from builder.fit.values import listed
from builder.fit.verdicts import (
    ASK,
    FITS,
    NOT_NEEDED,
    SHORT,
    Record,
    fact_of,
    settled,
    verdict,
    with_question,
    with_remedy,
)
from builder.fit.wording import both, digits

POWER: Advice = {
    "question": (
        "Which service can we have, of what current on each phase, on which connector, and how far"
        " is it from where we need it?"
    ),
    "remedy": "Hire a generator, or share with another department and draw less.",
    "who": "the house electrician, or hire",
}
MOST_STEPS = 20000
THREE = [*PHASES]


def power_for_all(requirements: list[Record], pack: Record) -> list[Record]:
    """
    A verdict for each load, in order. A load that has no place beside those before it is short.

    First every load is placed on what is surely free. Where that does not hold them all, they are
    placed on what is free at most, and what then stands on more than is surely free is a question.
    """
    section, stage = section_of(pack, "power"), section_of(pack, "stage")
    nodes = tree(section)
    answers = [first_look(requirement, section, stage, nodes) for requirement in requirements]
    end = placed_on(least_of_all(nodes), answers, nodes, sure=True)
    if any(len(answer["choices"]) > 0 and answer["placed"] is None for answer in answers):
        end = placed_on(room_of(nodes), answers, nodes, sure=False)
    return [outcome(answer, nodes, end) for answer in answers]


def placed_on(
    room: dict[str, Record], answers: list[Record], nodes: dict[str, Record], *, sure: bool
) -> Record:
    """
    Place one load after another, each beside all that have a place.

    The room that is left then.
    """
    placed: list[Record] = []
    steps = {"left": MOST_STEPS}
    start: Record = {"room": room, "used": {}}
    end = start
    for answer in answers:
        answer["placed"] = None
    for answer in answers:
        if len(answer["choices"]) > 0:
            trial = [*placed, answer]
            answer["proven"] = too_much(trial, nodes)
            found = None if answer["proven"] else place(trial, 0, start, nodes, steps)
            answer["proven"] = answer["proven"] or steps["left"] > 0
            if found is not None:
                placed = trial
                end = found
    return {**end, "sure": sure}


def place(
    loads: list[Record], index: int, state: Record, nodes: dict[str, Record], steps: dict[str, int]
) -> Any:
    """
    Find a place for every load from ``index`` on, trying each load's choices in order, within a
    bound of steps.

    The state then, or None.
    """
    if index == len(loads):
        return state
    load = loads[index]
    if load["requirement"]["phases"] == "single":
        return place_circuits(loads, index, state, nodes, steps)
    for choice in load["choices"]:
        steps["left"] -= 1
        if steps["left"] < 0:
            return None
        path = above(choice["item"]["name"], nodes)
        room = least_room(path, THREE, state["room"])
        if room is None or room >= load["requirement"]["current_a"]:
            after = {
                "room": less(state["room"], path, THREE, load["requirement"]["current_a"]),
                "used": state["used"],
            }
            end = place(loads, index + 1, after, nodes, steps)
            if end is not None:
                load["placed"] = choice
                return end
    return None


def place_circuits(
    loads: list[Record], index: int, state: Record, nodes: dict[str, Record], steps: dict[str, int]
) -> Any:
    """
    The same for a line of circuits: spread evenly first, then every other way to share them among
    the rows.
    """
    even = filled(loads[index], state, steps)
    if even is None:
        # Two lines of one circuit share limits crosswise, so there another order might still fit
        # them all.
        return (
            None
            if is_nested(loads[index]["choices"])
            else share(loads, index, [], 0, state, nodes, steps)
        )
    end = place(loads, index + 1, even["state"], nodes, steps)
    if end is not None:
        loads[index]["placed"] = even["rows"]
        return end
    return share(loads, index, [], 0, state, nodes, steps)


def share(
    loads: list[Record],
    index: int,
    chosen: list[Record],
    first: int,
    state: Record,
    nodes: dict[str, Record],
    steps: dict[str, int],
) -> Any:
    """
    Every way to share the circuits among the rows, rows in order, so that no way is tried twice.
    """
    load = loads[index]
    if len(chosen) == load["requirement"]["count"]:
        end = place(loads, index + 1, state, nodes, steps)
        if end is not None:
            load["placed"] = chosen
        return end
    for number in range(first, len(load["choices"])):
        steps["left"] -= 1
        if steps["left"] < 0:
            return None
        row = load["choices"][number]
        if left_on(row, load["requirement"]["current_a"], state) is not None:
            after = with_one(row, load["requirement"]["current_a"], state)
            end = share(loads, index, [*chosen, row], number, after, nodes, steps)
            if end is not None:
                return end
    return None


def too_much(loads: list[Record], nodes: dict[str, Record]) -> bool:
    """
    A short proof that loads cannot stand together: on something that all of a load's choices hang
    on, they ask more than all its phases have.
    """
    for name in nodes:
        free = nodes[name]["free"]
        has = sum(free[phase] for phase in PHASES if free[phase] is not None)
        known = len([phase for phase in PHASES if free[phase] is not None])
        wanted = 0.0
        for load in loads:
            if all(name in path_of(choice, nodes) for choice in load["choices"]):
                wanted += asked_there(load, known)
        if known > 0 and wanted > has + ROUNDING_A:
            return True
    return False


def path_of(choice: Record, nodes: dict[str, Record]) -> list[str]:
    """The way up from a choice, a service or a row of outlets."""
    return choice["path"] if "path" in choice else above(choice["item"]["name"], nodes)


def asked_there(load: Record, phases: int) -> float:
    """What a load asks of all phases together, of which so many have a figure."""
    requirement = load["requirement"]
    if requirement["phases"] == "single":
        return (
            float(requirement["count"] * requirement["current_a"])
            if is_nested(load["choices"]) and phases == len(PHASES)
            else 0.0
        )
    return float(requirement["current_a"] * phases)


def first_look(requirement: Record, section: Any, stage: Any, nodes: dict[str, Record]) -> Record:
    """A load by itself: the services that could take it, or why none can."""
    answer: Record = {
        "requirement": requirement,
        "choices": [],
        "placed": None,
        "alone": None,
        "proven": False,
    }
    if requirement["carried"] == "show":
        answer["alone"] = verdict(requirement, NOT_NEEDED, "The show brings it.")
    elif section is None:
        answer["alone"] = asked(requirement, POWER, "The pack does not describe power.")
    elif requirement["phases"] == "single":
        circuits(answer, section, stage, nodes)
    else:
        services(answer, section, stage, nodes)
    return answer


def services(answer: Record, section: Record, stage: Any, nodes: dict[str, Record]) -> None:
    """
    Sort the services into those that do, those that do not, and those nobody has described well
    enough.
    """
    requirement = answer["requirement"]
    looks = [
        look(requirement, item, section, stage, nodes)
        for item in section["items"]
        if item["kind"] == "service"
    ]
    good = [each for each in looks if each["word"] == "fits"]
    good.sort(key=lambda each: (each["order"], each["free"]))
    answer["choices"] = good
    if len(good) > 0:
        return
    unknown = [each for each in looks if each["word"] == "ask"]
    if len(unknown) > 0 or len(looks) == 0:
        answer["alone"] = asked(
            requirement,
            POWER,
            unknown[0]["reason"] if len(unknown) > 0 else "The house has not said.",
        )
        return
    nearest = looks[0]
    for each in looks:
        if each["misses"] < nearest["misses"] or (
            each["misses"] == nearest["misses"] and each["free"] > nearest["free"]
        ):
            nearest = each
    found = with_remedy(
        verdict(requirement, SHORT, nearest["reason"]),
        OTHER_SYSTEM if nearest["other_system"] else POWER,
    )
    found["fact"] = nearest["fact"]
    found["margin"] = nearest["margin"]
    answer["alone"] = found


def look(
    requirement: Record, item: Record, section: Record, stage: Any, nodes: dict[str, Record]
) -> Record:
    """One service: does it do, how much is free, and what must be known."""
    free = free_of(item)
    shown = fullest(item)
    slack = 0.0 if free is None else free - requirement["current_a"]
    said = found_out(requirement, item, section, stage, nodes)
    if free is None:
        said["unknown"].append("what is free is not known")
    elif slack < 0:
        said["against"].append(both("current", -slack)[0] + " too little on the fullest phase")
    word = "short" if len(said["against"]) > 0 else "ask" if len(said["unknown"]) > 0 else "fits"
    meant = item["values"]["dedicated_to"]["text"] if "dedicated_to" in item["values"] else ""
    order = 0 if meant_for(requirement["use"], meant) else 1
    if order == 1 and meant != "":
        said["notes"].append("The house keeps it for " + meant + ".")
    return {
        "word": word,
        "item": item,
        "free": 0.0 if free is None else free,
        "order": order,
        "misses": len(said["against"]),
        "other_system": system_says(requirement, item, section)[:5] == "other",
        "reason": (
            item["name"]
            + ": "
            + ", ".join(said["against"] if len(said["against"]) > 0 else said["unknown"])
            + "."
        ),
        "notes": [*said["notes"], *age_notes(item["values"].get("rating"))],
        "fact": fact_of(shown, item) if shown is not None else None,
        "margin": (
            signed(both("current", abs(slack)), slack)
            if free is not None and (slack < 0 or word == "fits")
            else ["", ""]
        ),
    }


def meant_for(use: str, meant: str) -> bool:
    """
    Whether a service is kept for a use: by the whole words for it, or by one of several.

    One that is kept for "sound and lighting control" is for sound, not for lighting.
    """
    uses = meant.lower().replace(" and ", ",").split(",")
    return use.lower() == meant.lower() or use.lower() in [each.strip() for each in uses]


def found_out(
    requirement: Record, item: Record, section: Record, stage: Any, nodes: dict[str, Record]
) -> Record:
    """
    What speaks against a service whatever is free on it, what is not known of it, and what to note.
    """
    said: Record = {"against": [], "unknown": [], "notes": item_notes(item)}
    off = outage(above(item["name"], nodes)[1:], nodes)
    if item["condition"] == "out of service" or item["terms"] == "not for visitors":
        said["against"].append(
            item["condition"] if item["condition"] == "out of service" else item["terms"]
        )
    if off != "":
        said["against"].append(off + ", which feeds it, is out of service")
    sort_system(said, requirement, item, section)
    sort_connector(said, connector_says(requirement, item))
    if (
        requirement["apart"]
        and "dimmers" in item["values"]
        and item["values"]["dimmers"]["text"] == "yes"
    ):
        said["against"].append("dimmers hang on it")
    elif requirement["apart"]:
        said["notes"].append(dimmers_beside(above(item["name"], nodes), section, nodes))
    distance = distance_says(requirement, item, stage)
    if distance["words"] != "":
        said[{"short": "against", "ask": "unknown", "fits": "notes"}[distance["word"]]].append(
            distance["words"]
        )
    return said


def sort_system(said: Record, requirement: Record, item: Record, section: Record) -> None:
    """Put what the voltages say where it belongs."""
    system = system_says(requirement, item, section)
    if system != "":
        said["against" if system[:5] == "other" else "unknown"].append(system)
    if requirement["system"] == "" and system_of(item, section) != "":
        said["notes"].append(
            "The rider states no voltage; this is " + system_of(item, section) + "."
        )


def sort_connector(said: Record, connector: str) -> None:
    """Put what the connectors say where it belongs."""
    if connector == "none":
        said["against"].append("no connector for visitors")
    elif connector == "unknown":
        said["unknown"].append("its connectors are not stated")
    elif connector != "":
        said["notes"].append(connector)


def system_says(requirement: Record, item: Record, section: Record) -> str:
    """
    Empty where the voltages are those asked for; otherwise why not.

    A service without a word takes that of what feeds it.
    """
    if requirement["system"] == "":
        return ""
    text = system_of(item, section)
    if text == "":
        return "its system is not stated"
    # Three-phase loads are often called by the voltage between lines alone: 400 V of 230/400 V.
    if volts(requirement["system"]) not in (volts(text), volts(text).split("/")[-1]):
        return "other system, " + text
    return ""


def connector_says(requirement: Record, item: Record) -> str:
    """
    Empty where the connector is there; ``none``, ``unknown``, or a note that an adapter is needed.
    """
    value = item["values"].get("connectors")
    if value is not None and value["standing"] == "none":
        return "none"
    if requirement["connector"] == "":
        return ""
    if value is None or value["standing"] != "stated":
        return "unknown"
    if listed(requirement["connector"], value["parts"]):
        return ""
    return (
        "Connector: "
        + str(requirement["connector"])
        + " asked, the house has "
        + str(value["text"])
        + ". Whoever connects decides on an adapter."
    )


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
    if requirement["within_m"] is None and requirement["of"] == "":
        return {"word": "fits", "words": ""}
    named = (
        place_named(stage, item["values"]["place"]["text"]) if "place" in item["values"] else None
    )
    here = position_of(item) if position_of(item) is not None else position_of(named)
    there = position_of(place_named(stage, requirement["of"]))
    if there is None:
        return {"word": "ask", "words": "the house names no place " + requirement["of"]}
    if here is None and requirement["within_m"] is None:
        return {
            "word": "fits",
            "words": "How far it is from " + requirement["of"] + " is not stated.",
        }
    if here is None:
        return {"word": "ask", "words": "where it is, is not stated"}
    across_m, depth_m = here[0] - there[0], here[1] - there[1]
    distance_m = sqrt(across_m * across_m + depth_m * depth_m)
    if requirement["within_m"] is not None and distance_m > requirement["within_m"]:
        return {
            "word": "short",
            "words": (
                both("length", distance_m)[0] + " from " + requirement["of"] + " in a straight line"
            ),
        }
    return {
        "word": "fits",
        "words": (
            both("length", distance_m)[0]
            + " from "
            + requirement["of"]
            + " in a straight line; the cable path is longer."
        ),
    }


def outcome(answer: Record, nodes: dict[str, Record], end: Record) -> Record:
    """A load's verdict once all have been placed."""
    requirement = answer["requirement"]
    if answer["alone"] is not None:
        return settled(answer["alone"])
    if answer["placed"] is None:
        return not_placed(answer, end)
    if requirement["phases"] == "single":
        unsure = [
            name
            for row in answer["placed"]
            for name in unsure_of(row["path"], row["phases"], end, nodes)
        ]
        return open_or(
            placed_circuits(answer, end["room"], answer["notes"]), unsure, requirement, nodes
        )
    choice = answer["placed"]
    path = above(choice["item"]["name"], nodes)
    left_a = least_room(path, THREE, end["room"])
    words = both("current", left_a)
    found = verdict(
        requirement,
        FITS,
        "On "
        + choice["item"]["name"]
        + "; "
        + words[0]
        + " are left there beside all loads that have a place.",
    )
    found["fact"] = choice["fact"]
    found["margin"] = signed(words, left_a)
    found["notes"] = choice["notes"]
    return open_or(settled(found), unsure_of(path, THREE, end, nodes), requirement, nodes)


def unsure_of(
    path: list[str], phases: list[str], end: Record, nodes: dict[str, Record]
) -> list[str]:
    """What holds the loads only if that which nobody has measured draws little."""
    name = None if end["sure"] else not_sure(path, phases, end["room"], nodes)
    return [] if name is None else [name]


def open_or(
    found: Record, unsure: list[str], requirement: Record, nodes: dict[str, Record]
) -> Record:
    """The verdict, or a question where something that feeds the load may have too little left."""
    if len(unsure) == 0:
        return found
    node = nodes[unsure[0]]
    least, most = (
        both("current", least_free(node["least"]))[0],
        both("current", free_of(node["item"]))[0],
    )
    known = " has at least " + least + " and at most " + most + " free before the show's loads"
    reason = unsure[0] + known + ", for the house has not measured all that it draws."
    open_end = with_question(verdict(requirement, ASK, reason), requirement, POWER["question"])
    open_end["fact"] = found["fact"]
    return open_end


def not_placed(answer: Record, end: Record) -> Record:
    """The verdict on a load that would have a place alone."""
    requirement, alone = answer["requirement"], answer["choices"][0]
    if not answer["proven"]:
        open_end = verdict(
            requirement,
            ASK,
            "No place was found beside the other loads within the bound of the search.",
        )
        return with_question(open_end, requirement, POWER["question"])
    if requirement["phases"] == "single":
        beside = (
            digits(float(most_of(answer["choices"], requirement, end)), 0)
            + " of "
            + digits(requirement["count"], 0)
        )
        reason = (
            "Alone it would fit at the house's outlets, but beside the other loads, as they are"
            " placed here, " + beside + " do."
        )
    else:
        reason = (
            "Alone it would fit on "
            + alone["item"]["name"]
            + ", but not at the same time as the other loads."
        )
    found = with_remedy(verdict(requirement, SHORT, reason), POWER)
    found["fact"] = answer["fact"] if requirement["phases"] == "single" else alone["fact"]
    return found
