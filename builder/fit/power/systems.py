"""The voltages of a service or outlet, its own or those of what feeds it."""

from builder.fit.power.sentences import ONE_CLASS, VOLTAGE
from builder.fit.records import Item, Section
from builder.fit.sentences import fill
from builder.fit.values import text_of
from builder.reading.values.spelling import is_digit

SEVERAL = ("three phase", "3 phase", "split phase")
"""How a system of several lines is written."""
PAIRS = (("230", "400"), ("120", "208"), ("120", "240"), ("277", "480"))
"""Usual voltages to neutral and between lines."""


def system_of(item: Item, section: Section) -> str:
    """The system of an item, or of what feeds it; empty where nobody says."""
    seen: list[str] = []
    here: Item | None = item
    while here is not None and here["name"] not in seen:
        if "system" in here["values"]:
            return here["values"]["system"]["text"]
        seen.append(here["name"])
        here = feeder_of(here, section)
    return ""


def feeder_of(item: Item, section: Section) -> Item | None:
    """What feeds an item, or None."""
    name = text_of(item, "fed_from")
    for other in section["items"]:
        if other["name"] == name and other["kind"] not in ("load", "outlet"):
            return other
    return None


def volts(text: str) -> str:
    """The voltages of a system's words: 230/400 of "3 phase 230/400 V"; empty where none stand."""
    before = text.upper().replace(" /", "/").replace("/ ", "/").split("V")[0].strip(" ")
    last = before.split(" ")[-1]
    return last if is_digit(last[:1]) else ""


def class_of(text: str) -> str:
    """
    The class of nominal voltages that a system's words name: 230/400 of "220/380 V".

    Voltages that one supply serves after IEC 60038, clause 4, from memory: 230 V ± 10 % came of 220
    and 240 V, and 400 V of 380 and 415 V.
    """
    named = [nominal_of(one) for one in volts(text).split("/")]
    return "/".join(named)


def nominal_of(voltage: str) -> str:
    """The nominal voltage of today that a voltage is served by, or itself."""
    if voltage in ("220", "240"):
        return "230"
    return "400" if voltage in ("380", "415") else voltage


def is_open(system: str) -> bool:
    """
    Whether a system of several lines names one voltage, and not whether it is between lines or to
    neutral.
    """
    words = system.lower().replace("-", " ")
    several = any(words.find(kind) >= 0 for kind in SEVERAL)
    return several and volts(system).find("/") < 0 and words.find("line to") < 0


def may_be(asked_for: str, system: str) -> bool:
    """Whether the one voltage of an open system may belong to the voltages asked for."""
    one = class_of(system)
    parts = class_of(asked_for).split("/")
    if one in parts:
        return True
    return any(one in pair and any(part in pair for part in parts) for pair in PAIRS)


def voltages_of(item: Item, section: Section) -> list[str]:
    """The voltages of an item from the lower, of one line and neutral, to that between lines."""
    return volts(system_of(item, section)).split("/")


def voltage_notes(asked_system: str, there: str, whole: str) -> list[str]:
    """
    What the voltage is, where the rider states none and the house does, or where they only belong
    to one class: ``there`` in what it is asked as, ``whole`` as the house has it.
    """
    asked_v = volts(asked_system)
    if there == "":
        return []
    if asked_v == "":
        return [fill(VOLTAGE, {"system": there})]
    if asked_v == volts(there) or asked_v == volts(there).split("/")[-1]:
        return []
    if class_of(asked_system) not in (class_of(there), class_of(volts(there).split("/")[-1])):
        return []
    return [fill(ONE_CLASS, {"asked": asked_system, "system": whole})]
