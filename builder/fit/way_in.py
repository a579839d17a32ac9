"""
Trucks and the largest case against one way in, taken whole: approach, dock and route must all do,
and do for the same dock.
"""

from typing import Any

from builder.fit.comparing import LENGTH_TOLERANCE_M, SHARE_TOLERANCE, age_notes, asked, item_notes
from builder.fit.records import Advice
from builder.fit.verdicts import ASK, FITS, SHORT, Record, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both

WAY_IN: Advice = {
    "question": (
        "How do trucks come, how long and high may they be, and how wide and high is the tightest"
        " opening from the dock to the deck?"
    ),
    "remedy": "Load into smaller trucks, or split the largest case.",
    "who": "the show",
}
APPROACH = (
    ("truck length", "length", "longest_truck", "length"),
    ("truck height", "height", "lowest_clearance", "length"),
    ("truck weight", "weight", "weight_limit", "mass"),
)
ROUTE = (
    ("case width", "case_width", "tightest_width", "length"),
    ("case height", "case_height", "tightest_height", "length"),
    ("case weight", "case_weight", "tightest_weight", "mass"),
)
NO_SIZE = "The rider gives no size of a truck or a case, so no way in can be judged."
MIX_POSITION = "Mix position"


def trucks_get_in(requirement: Record, section: Any) -> Record:
    """The verdict of the dock that answers best."""
    docks = (
        [item for item in section["items"] if item["kind"] == "dock"] if section is not None else []
    )
    if len(docks) == 0:
        return asked(requirement, WAY_IN, "The house has not said.")
    if all(requirement[wish] is None for _, wish, _, _ in (*APPROACH, *ROUTE)):
        return asked(requirement, WAY_IN, NO_SIZE)
    ways = [way for dock in docks for way in ways_by(section, dock)]
    found = [by_way(requirement, way) for way in ways]
    chosen = found[0]
    for other in found:
        if rank(other) < rank(chosen):
            chosen = other
    return settled(chosen)


def rank(found: Record) -> int:
    """Fits come first, notes after those without, then asks."""
    return {FITS: 0, ASK: 2, SHORT: 3}[found["verdict"]] + (
        1 if found["verdict"] == FITS and len(found["notes"]) > 0 else 0
    )


def ways_by(section: Record, dock: Record) -> list[Record]:
    """
    Each whole way through a dock: its approach, or None, and each of its routes that does not end
    at the mix position, or None.
    """
    name = text_of(dock, "approach")
    approach = named(section, "approach", name)
    routes = [
        item
        for item in section["items"]
        if item["kind"] == "route"
        and text_of(item, "from_dock") == dock["name"]
        and text_of(item, "to_place") != MIX_POSITION
    ]
    if len(routes) == 0:
        return [{"dock": dock, "approach": approach, "route": None}]
    return [{"dock": dock, "approach": approach, "route": route} for route in routes]


def text_of(item: Record, name: str) -> str:
    """The text of a value of an item, or an empty one."""
    return str(item["values"][name]["text"]) if name in item["values"] else ""


def named(section: Record, kind: str, name: str) -> Any:
    """The item of a kind with a name, or None."""
    for item in section["items"]:
        if item["kind"] == kind and item["name"] == name:
            return item
    return None


def by_way(requirement: Record, way: Record) -> Record:
    """
    One way in: the first thing that is too small, else the first that nobody has said, else it
    fits.
    """
    asks: list[str] = []
    shorts: list[str] = []
    spare: list[str] = []
    fact = None
    for holder, tests in ((way["approach"], APPROACH), (way["route"], ROUTE)):
        for title, wish, value, kind in tests:
            if requirement[wish] is not None:
                outcome = passes(requirement[wish], holder, value, kind)
                {"fits": spare, "ask": asks, "short": shorts}[outcome["word"]].append(
                    title + " " + outcome["words"]
                )
                if fact is None and outcome["fact"] is not None:
                    fact = outcome["fact"]
                if outcome["word"] == "short":
                    fact = outcome["fact"]
    found = summary(requirement, way, asks, shorts, spare)
    found["fact"] = fact
    return found


def passes(wanted: float, holder: Any, value_name: str, kind: str) -> Record:
    """One size against one limit on the way."""
    value = (
        holder["values"][value_name]
        if holder is not None and value_name in holder["values"]
        else None
    )
    if value is None or value["standing"] in ("unknown", "not stated"):
        return {"word": "ask", "words": "not stated", "fact": None}
    fact = fact_of(value, holder)
    if value["standing"] == "none" or value["text"] == "no limit":
        return {"word": "fits", "words": "not limited", "fact": fact}
    if value["number"] is None:
        return {"word": "ask", "words": "not stated", "fact": fact}
    slack = value["number"] - wanted
    allowed = LENGTH_TOLERANCE_M if kind == "length" else wanted * SHARE_TOLERANCE
    words = both(kind, abs(slack))[0]
    if slack >= -allowed:
        return {
            "word": "fits",
            "words": words + " to spare" if slack >= 0 else words + " short, within the tolerance",
            "fact": fact,
        }
    return {"word": "short", "words": "short by " + words, "fact": fact}


def summary(
    requirement: Record, way: Record, asks: list[str], shorts: list[str], spare: list[str]
) -> Record:
    """A way's verdict in words."""
    by = "By " + way["dock"]["name"] + ": "
    if not usable(way):
        return with_remedy(verdict(requirement, SHORT, by + "not in use."), WAY_IN)
    if len(shorts) > 0:
        return with_remedy(verdict(requirement, SHORT, by + "; ".join(shorts) + "."), WAY_IN)
    if len(asks) > 0:
        return asked(requirement, WAY_IN, by + "; ".join(asks) + ".")
    found = verdict(requirement, FITS, by + "; ".join(spare) + ".")
    for holder in (way["approach"], way["dock"], way["route"]):
        if holder is not None:
            found["notes"] = [*found["notes"], *item_notes(holder)]
    found["notes"] = [*found["notes"], *waiting(requirement, way["dock"]), *within(spare)]
    return found


def usable(way: Record) -> bool:
    """Whether no part of the way is out of service."""
    for holder in (way["approach"], way["dock"], way["route"]):
        if holder is not None and (
            holder["condition"] == "out of service" or holder["terms"] == "not for visitors"
        ):
            return False
    return True


def waiting(requirement: Record, dock: Record) -> list[str]:
    """A note where more trucks come than unload at once, and the age of what the dock says."""
    value = dock["values"].get("trucks_at_once")
    notes = age_notes(value)
    if value is not None and value["number"] is not None and requirement["count"] > value["number"]:
        notes = [
            both("count", value["number"])[0]
            + " unload at once, "
            + both("count", requirement["count"] - value["number"])[0]
            + " wait.",
            *notes,
        ]
    return notes


def within(spare: list[str]) -> list[str]:
    """A note where a size only just passes."""
    return [words + "." for words in spare if words[-20:] == "within the tolerance"]
