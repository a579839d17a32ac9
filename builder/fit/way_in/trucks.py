"""
Trucks and the largest case against one way in, taken whole: approach, dock and route must all do,
and do for the same dock.
"""

from builder.fit.notes import age_notes, item_notes, once
from builder.fit.records import Fact, Item, Section, TrucksAsked, Verdict
from builder.fit.sentences import fill
from builder.fit.silence import silence_on
from builder.fit.verdicts import (
    ASK,
    FITS,
    RANK,
    SHORT,
    asked,
    rider_line_words,
    settled,
    verdict,
    with_remedy,
)
from builder.fit.way_in.sentences import (
    ASK_LENGTH,
    ASK_TRAILER,
    BY_DOCK,
    LEADS_NOT_SAID,
    NO_SIZE,
    NOT_IN_USE,
    TRUCK_LENGTH,
    WAITING,
    WAY_IN,
)
from builder.fit.way_in.sizes import (
    TRAILER_LIMIT,
    Passage,
    case_sizes,
    lengths,
    passage,
    truck_sizes,
)
from builder.fit.way_in.ways import Way, described_parts, is_usable, leads_to_deck, ways_in
from builder.fit.wording import both


def trucks_get_in(requirement: TrucksAsked, access: Section | None) -> Verdict:
    """The verdict of the way in that answers best, the first among equals."""
    ways = [] if access is None else ways_in(access)
    if len(ways) == 0:
        return asked(requirement, WAY_IN, silence_on(access, "whole", "docks"))
    if len(truck_sizes(requirement)) == 0 and len(case_sizes(requirement)) == 0:
        return asked(requirement, WAY_IN, NO_SIZE)
    answers = [settled(by_way(requirement, way)) for way in ways]
    best = answers[0]
    for answer in answers:
        if RANK[answer["verdict"]] < RANK[best["verdict"]]:
            best = answer
    return best


def by_way(requirement: TrucksAsked, way: Way) -> Verdict:
    """
    One way in: the first thing that is too small, else the first that nobody has said, else it
    fits.
    """
    passages = [*on_the_road(requirement, way), *to_the_deck(requirement, way)]
    answer = summary(requirement, way, passages)
    answer["fact"] = fact_shown(passages)
    set_for_it = [one["fact"] for one in passages if one["is_set"]]
    answer["leans_on"] = [fact["key"] for fact in set_for_it if fact is not None]
    asks = [one for one in passages if one["word"] == ASK]
    if answer["verdict"] == ASK and all(one["of_act"] for one in asks):
        return length_asked(requirement, answer, asks[0]["fact"])
    return answer


def on_the_road(requirement: TrucksAsked, way: Way) -> list[Passage]:
    """How the trucks pass the approach."""
    passages: list[Passage] = []
    for size in truck_sizes(requirement):
        if size["title"] == TRUCK_LENGTH:
            passages.extend(lengths(size, requirement, way["approach"]))
        else:
            passages.append(passage(size, way["approach"]))
    return passages


def to_the_deck(requirement: TrucksAsked, way: Way) -> list[Passage]:
    """How the largest case passes the route; only asked where nobody says where that leads."""
    route = way["route"]
    passages = [passage(size, route) for size in case_sizes(requirement)]
    if route is None or leads_to_deck(route) or len(passages) == 0:
        return passages
    words = fill(LEADS_NOT_SAID, {"route": route["name"]})
    return [
        {"word": ASK, "words": words, "fact": None, "notes": [], "of_act": False, "is_set": False}
    ]


def length_asked(requirement: TrucksAsked, answer: Verdict, fact: Fact | None) -> Verdict:
    """The question to the act how long its trucks are in all, or their trailers."""
    of_trailer = fact is not None and fact["key"].endswith(TRAILER_LIMIT)
    answer["act_question"] = fill(
        ASK_TRAILER if of_trailer else ASK_LENGTH,
        {
            "act": requirement["act"],
            "line": rider_line_words(requirement["line"]),
            "limit": "" if fact is None else fact["text"],
        },
    )
    return answer


def fact_shown(passages: list[Passage]) -> Fact | None:
    """The fact of the last limit that is too small, else of the first that is known."""
    shown: Fact | None = None
    for one in passages:
        if one["word"] == SHORT or shown is None:
            shown = one["fact"]
    return shown


def summary(requirement: TrucksAsked, way: Way, passages: list[Passage]) -> Verdict:
    """A way's verdict in words."""
    shorts = [one["words"] for one in passages if one["word"] == SHORT]
    asks = [one["words"] for one in passages if one["word"] == ASK]
    if not is_usable(way):
        return with_remedy(verdict(requirement, SHORT, by_dock(way, [NOT_IN_USE])), WAY_IN)
    if len(shorts) > 0:
        return with_remedy(verdict(requirement, SHORT, by_dock(way, shorts)), WAY_IN)
    if len(asks) > 0:
        return asked(requirement, WAY_IN, by_dock(way, asks))
    answer = verdict(requirement, FITS, by_dock(way, [one["words"] for one in passages]))
    notes = [
        *[note for part in described_parts(way) for note in item_notes(part)],
        *unloading_notes(requirement, way["dock"]),
        *[note for one in passages for note in one["notes"]],
    ]
    answer["notes"] = once(notes)
    return answer


def by_dock(way: Way, reasons: list[str]) -> str:
    """What is said of a way, by the name of its dock."""
    return fill(BY_DOCK, {"dock": way["dock"]["name"], "reasons": "; ".join(reasons)})


def unloading_notes(requirement: TrucksAsked, dock: Item) -> list[str]:
    """A note where more trucks come than unload at once, and the age of what the dock says."""
    at_once = dock["values"].get("trucks_at_once")
    notes = age_notes(at_once)
    if at_once is None or at_once["number"] is None:
        return notes
    others = requirement["count"] - at_once["number"]
    if others <= 0:
        return notes
    parts = {"count": both("count", at_once["number"])[0], "others": both("count", others)[0]}
    return [fill(WAITING, parts), *notes]
