"""
Which point of the house carries each support of a hang plan: the one named, or the nearest that may
be used.
"""

from builder.fit.hangs.by_rule import has_place, told_words
from builder.fit.hangs.issues import issue
from builder.fit.hangs.points import points_of, unusable
from builder.fit.hangs.records import Issue, Place
from builder.fit.hangs.sentences import (
    NAMED_GROUP,
    NEITHER_POINT_NOR_SPOT,
    NO_SUCH_POINT,
    PLACE_OPEN,
    WHERE_IS,
    WHICH_IS_MEANT,
    WHICH_OF_NAMED,
    WHICH_POINTS,
)
from builder.fit.hangs.spots import place_at_spot
from builder.fit.records import HangAsked, Item, Section, SupportAsked
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK


def places_of(hangs: list[HangAsked], section: Section, taken: list[str]) -> list[list[Place]]:
    """
    For each hang a place for each support: its point or None, how far that is from the spot, what
    stands against it, and no bridle's legs yet.

    Names go first, so that no spot takes a point that another hang names. A spot takes no point
    that the show has taken; ``taken`` grows.
    """
    places = [[named_place(support, section) for support in hang["supports"]] for hang in hangs]
    for its_places in places:
        for place in its_places:
            take(place, taken)
    for hang, its_places in zip(hangs, places, strict=True):
        for index, support in enumerate(hang["supports"]):
            if support["across_m"] is not None:
                its_places[index] = place_at_spot(support, section, taken)
                take(its_places[index], taken)
    return places


def take(place: Place, taken: list[str]) -> None:
    """Note the point of a place, where it has one, as taken."""
    if place["item"] is not None:
        taken.append(place["item"]["key"])


def named_place(support: SupportAsked, section: Section) -> Place:
    """A support at a point that the rider names; without a point where it names a spot."""
    name = support["point"]
    if name == "":
        return no_point([] if support["across_m"] is not None else [neither_point_nor_spot()])
    for point in points_of(section):
        if point["name"].lower() == name.lower():
            return at_point(point, [*unusable(point, section), *without_spot(point)])
    for group in items_of(section, "point-group"):
        if group["name"].lower() == name.lower():
            return no_point([one_of_group(group)])
    parts = {"point": name}
    question = fill(WHICH_IS_MEANT, parts)
    return no_point([issue(ASK, fill(NO_SUCH_POINT, parts), question=question)])


def without_spot(point: Item) -> list[Issue]:
    """That the house does not know where a point is: it may not be above what hangs there."""
    if has_place(point):
        return []
    names = {"names": point["name"]}
    question = fill(WHERE_IS, names)
    return [issue(ASK, fill(PLACE_OPEN, names), question=question, item=point)]


def one_of_group(group: Item) -> Issue:
    """A support at points that are told by a rule: which of them is asked."""
    parts = {"group": group["name"], "words": told_words(group)}
    question = fill(WHICH_OF_NAMED, parts)
    return issue(ASK, fill(NAMED_GROUP, parts), question=question, item=group)


def neither_point_nor_spot() -> Issue:
    """A support that says nothing of where it is."""
    return issue(ASK, NEITHER_POINT_NOR_SPOT, question=WHICH_POINTS)


def at_point(point: Item, issues: list[Issue]) -> Place:
    """A place at a point, exactly where it was wanted."""
    return {"item": point, "away_m": 0.0, "issues": issues, "legs": [], "apex_m": None}


def no_point(issues: list[Issue]) -> Place:
    """A place without a point."""
    return {"item": None, "away_m": 0.0, "issues": issues, "legs": [], "apex_m": None}


def points_under(place: Place) -> list[Item]:
    """The points that a place hangs from: one, the two of a bridle, or none."""
    if place["item"] is not None:
        return [place["item"]]
    return [leg["item"] for leg in place["legs"]]
