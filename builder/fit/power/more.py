"""
What a load asks of its feed beyond current and voltage: where on the stage it is, a breaker of its
own, a transformer that isolates it, its wires, what its residual current device trips at.
"""

from typing import TypedDict

from builder.fit.areas import by_area, by_place
from builder.fit.power.dimmers import has_dimmers
from builder.fit.power.distance import is_called, spot_of
from builder.fit.power.first_look import FirstLook
from builder.fit.power.more_sentences import (
    ALSO_FEEDS,
    BREAKER_UNKNOWN,
    DIMMERS_SHARE,
    IS_SHARED,
    NO_DEVICE,
    NO_TRANSFORMER,
    NOT_THERE,
    OTHERS_ON_IT,
    OUTLETS_INSTEAD,
    SHARED_UNKNOWN,
    SOURCE_UNKNOWN,
    TOO_FEW_WIRES,
    TRANSFORMER_UNKNOWN,
    TRIPS_HIGHER,
    TRIPS_UNKNOWN,
    WHERE_UNKNOWN,
    WIRES_UNKNOWN,
)
from builder.fit.power.sentences import POWER
from builder.fit.power.tree import Tree, is_for_visitors, tree_of, way_up
from builder.fit.records import Item, PowerAsked, PowerMore, Section, Value, Verdict, Word
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import least_of, most_of, text_of, value_of
from builder.fit.verdicts import ASK, FITS, NOTED, SHORT, asked
from builder.fit.wording import digits

FEEDS = ("service", "board", "outlet", "load", "shore")
"""The kinds of what may hang on a service."""
ALL_PHASES = ("all", "L1 L2 L3", "L1, L2, L3")


class Told(TypedDict):
    """What speaks against a feed, and what is not known of it."""

    against: list[str]
    unknown: list[str]


def told_of_service(more: PowerMore, item: Item, section: Section, stage: Section | None) -> Told:
    """What a service makes of all that a load asks beyond its current."""
    told: Told = {"against": [], "unknown": []}
    add_place(told, more, item, stage)
    if more["apart"]:
        add_dimmers(told, item["name"], section)
    if more["isolated"]:
        add_transformer(told, item)
    add_wires(told, more, item)
    add_device(told, more, item)
    if more["own"]:
        add_breaker(told, item, section)
    return told


def word_of_outlet(more: PowerMore, item: Item, section: Section, stage: Section | None) -> Word:
    """
    Whether an outlet does for what a circuit asks beyond its current: it has a breaker of its own
    where the house states that of each one's way, and is isolated with what feeds it.
    """
    told: Told = {"against": [], "unknown": []}
    add_place(told, more, item, stage)
    if more["apart"]:
        add_dimmers(told, text_of(item, "fed_from"), section)
    if more["isolated"]:
        add_transformer(told, feeder_of(item, section))
    add_device(told, more, item)
    if more["own"] and least_of(value_of(item, "breaker")) is None:
        told["unknown"].append(BREAKER_UNKNOWN)
    if len(told["against"]) > 0:
        return SHORT
    return ASK if len(told["unknown"]) > 0 else FITS


def feeder_of(item: Item, section: Section) -> Item:
    """What feeds an outlet; itself where the house names nothing of that name."""
    for other in section["items"]:
        if other["name"] == text_of(item, "fed_from") and other["kind"] in ("service", "board"):
            return other
    return item


def add_place(told: Told, more: PowerMore, item: Item, stage: Section | None) -> None:
    """Add where something is, against the part of the stage where it is wanted."""
    if more["at"] == "":
        return
    word = where(more["at"], item, stage)
    parts = {"at": more["at"], "place": place_words(item)}
    if word == SHORT:
        told["against"].append(fill(NOT_THERE, parts))
    elif word == ASK:
        told["unknown"].append(fill(WHERE_UNKNOWN, parts))


def place_words(item: Item) -> str:
    """The place of something by the house's name for it, or its own name."""
    return item["name"] if text_of(item, "place") == "" else text_of(item, "place")


def where(wanted: str, item: Item, stage: Section | None) -> Word:
    """Whether something is in a part of the stage: by its own spot, else by its place."""
    spot = spot_of(item)
    place = place_named(text_of(item, "place"), stage)
    if spot is None and place is not None:
        spot = spot_of(place)
    if spot is not None:
        return by_place(wanted, spot[0], spot[1], stage)
    area = "" if place is None else text_of(place, "area")
    return ASK if area == "" else by_area(wanted, area)


def place_named(name: str, stage: Section | None) -> Item | None:
    """A place of the stage by its name."""
    for place in items_of(stage, "place"):
        if is_called(place, name):
            return place
    return None


def add_dimmers(told: Told, name: str, section: Section) -> None:
    """
    Add whether dimmers hang on the transformer behind something, by the name of what feeds it. Two
    sources may hang on one transformer in the street unless both say that theirs is their own.
    """
    tree = tree_of(section)
    own = transformer_of(name, tree)
    if own == "":
        told["unknown"].append(SOURCE_UNKNOWN)
        return
    for other in tree:
        if has_dimmers(tree[other]["item"]):
            theirs = transformer_of(other, tree)
            if theirs == own:
                told["against"].append(fill(DIMMERS_SHARE, {"node": own, "other": other}))
                return
            if not (has_its_own(own, tree) and has_its_own(theirs, tree)):
                told["unknown"].append(SOURCE_UNKNOWN)
                return


def has_its_own(name: str, tree: Tree) -> bool:
    """Whether the house states a transformer of something."""
    value = None if name == "" else value_of(tree[name]["item"], "transformer")
    return value is not None and value["standing"] == "stated"


def transformer_of(name: str, tree: Tree) -> str:
    """
    The nearest thing up the way that has a transformer, or the source at its end, which has one
    behind it; empty where the way does not lead to a source.
    """
    path = way_up(name, tree)
    for node in path:
        if has_its_own(node, tree):
            return node
    if len(path) == 0 or tree[path[-1]]["item"]["kind"] not in ("supply", "generator"):
        return ""
    return path[-1]


def add_transformer(told: Told, item: Item) -> None:
    """Add whether a transformer of its own isolates something."""
    value = value_of(item, "transformer")
    if value is not None and value["standing"] == "none":
        told["against"].append(NO_TRANSFORMER)
    elif value is None or value["standing"] != "stated":
        told["unknown"].append(TRANSFORMER_UNKNOWN)


def add_wires(told: Told, more: PowerMore, item: Item) -> None:
    """Add whether something has as many wires as a load needs."""
    if more["wires"] == 0:
        return
    value = value_of(item, "wires")
    least, most = least_of(value), most_of(value)
    if most is not None and most < more["wires"]:
        told["against"].append(fill(TOO_FEW_WIRES, {"count": digits(most, 0)}))
    elif least is None or least < more["wires"]:
        told["unknown"].append(WIRES_UNKNOWN)


def add_device(told: Told, more: PowerMore, item: Item) -> None:
    """Add whether a residual current device trips at as little as a load asks."""
    wanted_a = more["trips_a"]
    if wanted_a is None:
        return
    value = value_of(item, "residual_current_device")
    least_a, most_a = least_of(value), most_of(value)
    if value is not None and value["standing"] == "none":
        told["against"].append(NO_DEVICE)
    elif least_a is not None and least_a > wanted_a:
        told["against"].append(fill(TRIPS_HIGHER, {"amount": shown(value)}))
    elif most_a is None or most_a > wanted_a:
        told["unknown"].append(TRIPS_UNKNOWN)


def shown(value: Value | None) -> str:
    """A value as the house writes it."""
    return "" if value is None else value["text"]


def add_breaker(told: Told, item: Item, section: Section) -> None:
    """Add whether anything else hangs on the breaker of a service."""
    others = [
        other["name"]
        for other in section["items"]
        if other["kind"] in FEEDS and hangs_on(other) == item["name"]
    ]
    shared = value_of(item, "shared_with")
    if len(others) > 0:
        told["against"].append(fill(ALSO_FEEDS, {"others": ", ".join(others)}))
    elif shared is not None and shared["standing"] == "stated" and shared["text"] != "":
        told["against"].append(fill(IS_SHARED, {"others": shared["text"]}))
    elif shared is None or shared["standing"] != "none":
        told["unknown"].append(SHARED_UNKNOWN)
    if least_of(value_of(item, "breaker")) is None:
        told["unknown"].append(BREAKER_UNKNOWN)


def hangs_on(item: Item) -> str:
    """What feeds something, by name."""
    return text_of(item, "on") if item["kind"] == "load" else text_of(item, "fed_from")


def or_sockets(
    answer: Verdict, requirement: PowerAsked, section: Section, stage: Section | None
) -> Verdict:
    """
    A feed that no service gives, asked where sockets of three phases with a breaker each are at
    hand: whether one serves as a feed is the house's to say.
    """
    more = requirement["more"]
    if more is None or not more["own"]:
        return answer
    for item in items_of(section, "outlet"):
        rating_a = least_of(value_of(item, "rating"))
        is_enough = rating_a is not None and rating_a >= requirement["current_a"]
        is_whole = text_of(item, "phases") in ALL_PHASES
        does = word_of_outlet(more, item, section, stage) == FITS
        if does and is_enough and is_whole and is_for_visitors(item):
            parts = {
                "place": place_words(item),
                "connector": item["name"],
                "amount": text_of(item, "rating"),
            }
            return asked(requirement, POWER, fill(OUTLETS_INSTEAD, parts))
    return answer


def alone_on_breakers(
    answers: list[Verdict], looks: list[FirstLook], choices: list[list[int]]
) -> list[Verdict]:
    """
    The answers on all loads; a feed that wants a breaker of its own is asked where another load
    stands on the same service. ``choices`` are of each load.
    """
    services = [
        look["services"][chosen[0]]["item"]["name"]
        if len(look["services"]) > 0 and len(chosen) > 0
        else ""
        for look, chosen in zip(looks, choices, strict=True)
    ]
    told: list[Verdict] = []
    for index in range(len(answers)):
        requirement = looks[index]["requirement"]
        more, service = requirement["more"], services[index]
        others = [
            looks[other]["requirement"]["title"]
            for other in range(len(answers))
            if other != index and services[other] == service
        ]
        is_fit = answers[index]["verdict"] in (FITS, NOTED)
        if more is not None and more["own"] and service != "" and is_fit and len(others) > 0:
            parts = {"service": service, "others": ", ".join(others)}
            told.append(asked(requirement, POWER, fill(OTHERS_ON_IT, parts)))
        else:
            told.append(answers[index])
    return told
