"""
The services that could take a feed on three phases: which do, which do not, and which nobody has
described well enough.
"""

from typing import TypedDict

from builder.fit.margins import signed
from builder.fit.notes import age_notes, item_notes
from builder.fit.power.dimmers import dimmers_beside, has_dimmers
from builder.fit.power.distance import distance_to
from builder.fit.power.first_look import FirstLook, first_look
from builder.fit.power.sentences import (
    ADAPTER,
    CONNECTOR_NONE,
    CONNECTOR_UNKNOWN,
    DIMMERS,
    FED_BY_DEAD,
    FREE_UNKNOWN,
    KEPT_FOR,
    OTHER_SYSTEM,
    POWER,
    SERVICE,
    SYSTEM_OTHER,
    SYSTEM_UNKNOWN,
    TOO_LITTLE,
)
from builder.fit.power.systems import system_of, voltage_notes, volts
from builder.fit.power.tree import Tree, free_on, fullest, least_free, outage, way_up
from builder.fit.records import Fact, Item, PowerAsked, Section, Verdict, Word
from builder.fit.sections import items_of
from builder.fit.sentences import NOT_SAID, fill
from builder.fit.values import listed, parts_of, text_of
from builder.fit.verdicts import ASK, FITS, SHORT, asked, fact_of, verdict, with_remedy
from builder.fit.wording import both


class Findings(TypedDict):
    """What speaks against a service, what is not known of it, and what to note."""

    against: list[str]
    unknown: list[str]
    notes: list[str]


class ServiceLook(TypedDict):
    """
    A service against a feed: ``order`` is 0 where the house keeps it for that use, else 1;
    ``free_a`` what is free on the fullest phase.
    """

    word: Word
    item: Item
    free_a: float
    order: int
    misses: int
    other_system: bool
    reason: str
    notes: list[str]
    fact: Fact | None
    margin: list[str]


def look_at_services(
    requirement: PowerAsked, section: Section, stage: Section | None, tree: Tree
) -> FirstLook:
    """The services that could take a feed, those kept for its use first, or why none can."""
    look = first_look(requirement)
    looks = [
        look_at(requirement, item, section, stage, tree) for item in items_of(section, "service")
    ]
    good = [each for each in looks if each["word"] == FITS]
    for service in sorted(good, key=lambda each: (each["order"], each["free_a"])):
        look["services"].append(
            {
                "item": service["item"],
                "path": way_up(service["item"]["name"], tree),
                "fact": service["fact"],
                "notes": service["notes"],
            }
        )
    if len(good) == 0:
        look["alone"] = no_service(requirement, looks)
    return look


def no_service(requirement: PowerAsked, looks: list[ServiceLook]) -> Verdict:
    """The verdict where no service does: asked where one might, else by the nearest to it."""
    for look in looks:
        if look["word"] == ASK:
            return asked(requirement, POWER, look["reason"])
    if len(looks) == 0:
        return asked(requirement, POWER, NOT_SAID)
    nearest = looks[0]
    for look in looks:
        if is_nearer(look, nearest):
            nearest = look
    answer = verdict(requirement, SHORT, nearest["reason"])
    answer["fact"] = nearest["fact"]
    answer["margin"] = nearest["margin"]
    return with_remedy(answer, OTHER_SYSTEM if nearest["other_system"] else POWER)


def is_nearer(look: ServiceLook, other: ServiceLook) -> bool:
    """Whether less speaks against a service, or as much and more is free on it."""
    if look["misses"] != other["misses"]:
        return look["misses"] < other["misses"]
    return look["free_a"] > other["free_a"]


def look_at(
    requirement: PowerAsked, item: Item, section: Section, stage: Section | None, tree: Tree
) -> ServiceLook:
    """One service: does it do, how much is free, and what must be known."""
    findings = findings_on(requirement, item, section, stage, tree)
    free_a = least_free(free_on(item))
    slack_a = 0.0 if free_a is None else free_a - requirement["current_a"]
    words = both("current", abs(slack_a))
    if free_a is None:
        findings["unknown"].append(FREE_UNKNOWN)
    elif slack_a < 0:
        findings["against"].append(fill(TOO_LITTLE, {"amount": words[0]}))
    word = word_for(findings)
    use = text_of(item, "dedicated_to")
    is_kept = is_meant_for(requirement["use"], use)
    if use != "" and not is_kept:
        findings["notes"].append(fill(KEPT_FOR, {"use": use}))
    reasons = findings["against"] if len(findings["against"]) > 0 else findings["unknown"]
    has_margin = free_a is not None and (slack_a < 0 or word == FITS)
    shown = fullest(item)
    return {
        "word": word,
        "item": item,
        "free_a": 0.0 if free_a is None else free_a,
        "order": 0 if is_kept else 1,
        "misses": len(findings["against"]),
        "other_system": is_other_system(requirement["system"], system_of(item, section)),
        "reason": fill(SERVICE, {"service": item["name"], "reasons": ", ".join(reasons)}),
        "notes": [*findings["notes"], *age_notes(item["values"].get("rating"))],
        "fact": None if shown is None else fact_of(shown, item),
        "margin": signed(words, slack_a) if has_margin else ["", ""],
    }


def word_for(findings: Findings) -> Word:
    """What speaks against a service comes first, then what is not known of it."""
    if len(findings["against"]) > 0:
        return SHORT
    return ASK if len(findings["unknown"]) > 0 else FITS


def is_meant_for(use: str, meant: str) -> bool:
    """
    Whether a service is kept for a use: by the whole words for it, or by one of several.

    One that is kept for "sound and lighting control" is for sound, not for lighting.
    """
    uses = [words.strip(" ") for words in meant.lower().replace(" and ", ",").split(",")]
    return use.lower() == meant.lower() or use.lower() in uses


def findings_on(
    requirement: PowerAsked, item: Item, section: Section, stage: Section | None, tree: Tree
) -> Findings:
    """
    What speaks against a service whatever is free on it, what is not known of it, and what to note.
    """
    findings: Findings = {"against": [], "unknown": [], "notes": item_notes(item)}
    path = way_up(item["name"], tree)
    add_state(findings, item, outage(path[1:], tree))
    add_system(findings, requirement, system_of(item, section))
    add_connector(findings, requirement, item)
    if requirement["apart"] and has_dimmers(item):
        findings["against"].append(DIMMERS)
    elif requirement["apart"]:
        findings["notes"].append(dimmers_beside(path, section, tree))
    distance = distance_to(requirement, item, stage)
    if distance["words"] != "":
        if distance["word"] == SHORT:
            findings["against"].append(distance["words"])
        elif distance["word"] == ASK:
            findings["unknown"].append(distance["words"])
        else:
            findings["notes"].append(distance["words"])
    return findings


def add_state(findings: Findings, item: Item, dead: str) -> None:
    """Add that a service, or what feeds it, is not in use."""
    if item["condition"] == "out of service":
        findings["against"].append(item["condition"])
    elif item["terms"] == "not for visitors":
        findings["against"].append(item["terms"])
    if dead != "":
        findings["against"].append(fill(FED_BY_DEAD, {"feeder": dead}))


def add_system(findings: Findings, requirement: PowerAsked, system: str) -> None:
    """Add what the voltages say. A service without a word has those of what feeds it."""
    if is_other_system(requirement["system"], system):
        findings["against"].append(fill(SYSTEM_OTHER, {"system": system}))
    elif requirement["system"] != "" and system == "":
        findings["unknown"].append(SYSTEM_UNKNOWN)
    findings["notes"] = [*findings["notes"], *voltage_notes(requirement["system"], system)]


def is_other_system(asked_for: str, system: str) -> bool:
    """
    Whether the voltages are known not to be those asked for.

    Three-phase loads are often called by the voltage between lines alone: 400 V of 230/400 V.
    """
    if asked_for == "" or system == "":
        return False
    between_lines = volts(system).split("/")[-1]
    return volts(asked_for) not in (volts(system), between_lines)


def add_connector(findings: Findings, requirement: PowerAsked, item: Item) -> None:
    """Add what the connectors say: none, not stated, or that an adapter is needed."""
    connectors = item["values"].get("connectors")
    wanted = requirement["connector"]
    if connectors is not None and connectors["standing"] == "none":
        findings["against"].append(CONNECTOR_NONE)
    elif wanted != "" and (connectors is None or connectors["standing"] != "stated"):
        findings["unknown"].append(CONNECTOR_UNKNOWN)
    elif wanted != "" and not listed(wanted, parts_of(item, "connectors")):
        parts = {"asked": wanted, "there": text_of(item, "connectors")}
        findings["notes"].append(fill(ADAPTER, parts))
