"""
The services that could take a feed on three phases: which do, which do not, and which nobody has
described well enough.
"""

from typing import TypedDict

from builder.fit.margins import signed
from builder.fit.notes import once
from builder.fit.power.findings import Findings, findings_on, is_other_system
from builder.fit.power.first_look import FirstLook, first_look
from builder.fit.power.more import or_sockets
from builder.fit.power.sentences import (
    FREE_UNKNOWN,
    KEPT_FOR,
    OTHER_SYSTEM,
    POWER,
    RATED_LESS,
    SERVICE,
    SERVICE_KNOWN,
    TOO_LITTLE,
    WIRES,
)
from builder.fit.power.systems import system_of
from builder.fit.power.tree import Tree, fed_notes, free_on, fullest, least_free, way_of, way_up
from builder.fit.records import Fact, Item, PowerAsked, Section, Verdict, Word
from builder.fit.sections import items_of
from builder.fit.sentences import NOT_SAID, fill
from builder.fit.values import most_of, number_of, text_of, value_of
from builder.fit.verdicts import ASK, FITS, SHORT, asked, fact_of, verdict, with_remedy
from builder.fit.wording import both, digits
from builder.formulas.phase_room import PHASES


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
    services = [
        look_at(requirement, item, section, stage, tree) for item in items_of(section, "service")
    ]
    good = [service for service in services if service["word"] == FITS]
    for service in sorted(good, key=lambda one: (one["order"], one["free_a"])):
        look["services"].append(
            {
                "item": service["item"],
                "way": way_of(way_up(service["item"]["name"], tree), [*PHASES], tree),
                "fact": service["fact"],
                "notes": service["notes"],
            }
        )
    if len(good) == 0:
        look["alone"] = no_service(requirement, services, section, stage)
    return look


def no_service(
    requirement: PowerAsked, looks: list[ServiceLook], section: Section, stage: Section | None
) -> Verdict:
    """The verdict where no service does: asked where one might, else by the nearest to it."""
    for look in sorted(looks, key=lambda one: one["order"]):
        if look["word"] == ASK:
            return asked(requirement, POWER, look["reason"])
    if len(looks) == 0:
        return asked(requirement, POWER, NOT_SAID)
    # What the house keeps for that use is named first where as much speaks against another.
    nearest = looks[0]
    for look in sorted(looks, key=lambda one: one["order"]):
        if is_nearer(look, nearest):
            nearest = look
    answer = verdict(requirement, SHORT, nearest["reason"])
    answer["fact"] = nearest["fact"]
    answer["margin"] = nearest["margin"]
    with_remedy(answer, OTHER_SYSTEM if nearest["other_system"] else POWER)
    return (
        answer if requirement["more"] is None else or_sockets(answer, requirement, section, stage)
    )


def is_nearer(look: ServiceLook, other: ServiceLook) -> bool:
    """Whether less speaks against a service, or as much and more is free on it."""
    if look["misses"] != other["misses"]:
        return look["misses"] < other["misses"]
    if look["order"] != other["order"]:
        return look["order"] < other["order"]
    return look["free_a"] > other["free_a"]


def look_at(
    requirement: PowerAsked, item: Item, section: Section, stage: Section | None, tree: Tree
) -> ServiceLook:
    """One service: does it do, how much is free, and what must be known."""
    findings = findings_on(requirement, item, section, stage, tree)
    free_a = least_free(free_on(item))
    # More than the rating is too much, whatever is free behind it.
    most_a = most_of(value_of(item, "rating")) if free_a is None else free_a
    slack_a = 0.0 if most_a is None else most_a - requirement["current_a"]
    words = both("current", abs(slack_a))
    if free_a is None:
        findings["unknown"].append(FREE_UNKNOWN)
    if slack_a < 0 and free_a is None:
        findings["against"].append(fill(RATED_LESS, {"amount": text_of(item, "rating")}))
    elif slack_a < 0:
        findings["against"].append(fill(TOO_LITTLE, {"amount": words[0]}))
    word = word_for(findings)
    use = text_of(item, "dedicated_to")
    is_kept = is_meant_for(requirement["use"], use)
    if use != "" and not is_kept:
        findings["notes"].append(fill(KEPT_FOR, {"use": use}))
    reasons = findings["against"] if len(findings["against"]) > 0 else findings["unknown"]
    has_margin = slack_a < 0 or (free_a is not None and word == FITS)
    shown = fullest(item)
    return {
        "word": word,
        "item": item,
        "free_a": 0.0 if free_a is None else free_a,
        "order": 0 if is_kept else 1,
        "misses": len(findings["against"]),
        "other_system": is_other_system(requirement["system"], system_of(item, section)),
        "reason": reason_words(item, word, reasons),
        "notes": once([*findings["notes"], *fed_notes(item)]),
        "fact": None if shown is None else fact_of(shown, item),
        "margin": signed(words, slack_a) if has_margin else ["", ""],
    }


def reason_words(item: Item, word: Word, reasons: list[str]) -> str:
    """What speaks against a service, or what is not known of it beside what is."""
    known = [text_of(item, name) for name in ("rating", "system", "connectors", "place")]
    wires = number_of(item, "wires")
    if wires is not None:
        known.append(fill(WIRES, {"count": digits(wires, 0)}))
    known = [words for words in known if words != ""]
    parts = {"service": item["name"], "reasons": ", ".join(reasons), "known": ", ".join(known)}
    return fill(SERVICE_KNOWN if word == ASK and len(known) > 0 else SERVICE, parts)


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
