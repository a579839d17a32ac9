"""The voltages of a service or outlet, its own or those of what feeds it."""

from builder.fit.power.sentences import VOLTAGE
from builder.fit.records import Item, Section
from builder.fit.sentences import fill
from builder.fit.values import text_of


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
    """The voltages of a system's words: 230/400 of "230/400 V three phase"."""
    return text.split("V")[0].replace(" ", "")


def voltages_of(item: Item, section: Section) -> list[str]:
    """The voltages of an item from the lower, of one line and neutral, to that between lines."""
    return volts(system_of(item, section)).split("/")


def voltage_notes(asked_system: str, there: str) -> list[str]:
    """What the voltage is, where the rider states none and the house does."""
    if asked_system != "" or there == "":
        return []
    return [fill(VOLTAGE, {"system": there})]
