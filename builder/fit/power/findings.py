"""What speaks for and against a service, whatever is free on it."""

from typing import TypedDict

from builder.fit.notes import item_notes
from builder.fit.power.dimmers import dimmers_beside, has_dimmers, may_have_dimmers
from builder.fit.power.distance import distance_to, place_notes
from builder.fit.power.more import told_of_service
from builder.fit.power.sentences import (
    ADAPTER,
    CONNECTOR_NONE,
    CONNECTOR_UNKNOWN,
    DIMMERS,
    DIMMERS_UNKNOWN,
    FED_BY_DEAD,
    FEW_PHASES,
    SYSTEM_OPEN,
    SYSTEM_OTHER,
    SYSTEM_UNKNOWN,
)
from builder.fit.power.systems import (
    class_of,
    is_open,
    may_be,
    system_of,
    voltage_notes,
    volts,
)
from builder.fit.power.tree import Tree, is_for_visitors, outage, phases_in, way_up
from builder.fit.records import Item, PowerAsked, Section
from builder.fit.sentences import fill
from builder.fit.values import asked_of_bearers, listed, parts_of, text_of
from builder.fit.verdicts import ASK, SHORT
from builder.formulas.phase_room import PHASES


class Findings(TypedDict):
    """What speaks against a service, what is not known of it, and what to note."""

    against: list[str]
    unknown: list[str]
    notes: list[str]


def findings_on(
    requirement: PowerAsked, item: Item, section: Section, stage: Section | None, tree: Tree
) -> Findings:
    """
    What speaks against a service whatever is free on it, what is not known of it, and what to note.
    """
    findings: Findings = {"against": [], "unknown": [], "notes": item_notes(item)}
    path = way_up(item["name"], tree)
    add_state(findings, item, outage(path[1:], tree))
    if asked_of_bearers(item) != "":
        findings["unknown"].append(asked_of_bearers(item))
    add_system(findings, requirement, system_of(item, section))
    add_connector(findings, requirement, item)
    if requirement["apart"] and has_dimmers(item):
        findings["against"].append(DIMMERS)
    elif requirement["apart"] and may_have_dimmers(item):
        findings["unknown"].append(DIMMERS_UNKNOWN)
    elif requirement["apart"]:
        findings["notes"].append(dimmers_beside(path, section, tree))
    more = requirement["more"]
    if more is not None:
        told = told_of_service(more, item, section, stage)
        findings["against"].extend(told["against"])
        findings["unknown"].extend(told["unknown"])
    findings["notes"] = [*findings["notes"], *place_notes(requirement, stage)]
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
    """Add that a service, or what feeds it, is not in use, or has fewer than three phases."""
    if item["condition"] == "out of service":
        findings["against"].append(item["condition"])
    elif not is_for_visitors(item):
        findings["against"].append(item["terms"])
    wired = text_of(item, "wired")
    if wired != "" and len(phases_in(wired)) < len(PHASES):
        findings["against"].append(fill(FEW_PHASES, {"phases": wired}))
    if dead != "":
        findings["against"].append(fill(FED_BY_DEAD, {"feeder": dead}))


def add_system(findings: Findings, requirement: PowerAsked, system: str) -> None:
    """Add what the voltages say. A service without a word has those of what feeds it."""
    if is_other_system(requirement["system"], system):
        findings["against"].append(fill(SYSTEM_OTHER, {"system": system}))
    elif is_open(system) and class_of(requirement["system"]) not in ("", class_of(system)):
        findings["unknown"].append(fill(SYSTEM_OPEN, {"system": system}))
    elif requirement["system"] != "" and system == "":
        findings["unknown"].append(SYSTEM_UNKNOWN)
    findings["notes"] = [*findings["notes"], *voltage_notes(requirement["system"], system, system)]


def is_other_system(asked_for: str, system: str) -> bool:
    """
    Whether the voltages are known not to be those asked for, nor of their class.

    Three-phase loads are often called by the voltage between lines alone: 400 V of 230/400 V.
    """
    if volts(asked_for) == "" or system == "":
        return False
    if is_open(system):
        return not may_be(asked_for, system)
    between_lines = volts(system).split("/")[-1]
    return class_of(asked_for) not in (class_of(system), class_of(between_lines))


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
