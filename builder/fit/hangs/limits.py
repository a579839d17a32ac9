"""
The limits above a point: its own, its beam's, its zones', the whole roof's, each with what the
house's own hangs leave.
"""

from typing import Any

from builder.fit.comparing import once
from builder.fit.hangs.points import beam_of, issue, points_of
from builder.fit.values import listed, number_of, parts_of, text_of
from builder.fit.verdicts import ASK, SHORT, Record, fact_of
from builder.fit.wording import both

REMEDY = {
    "point": "Move the support to another point, spread it over two, or hang less there.",
    "beam": "Move the hang or a part of it to another beam, or hang less there.",
    "zone": "Move the hang or a part of it to another part of the roof, or hang less there.",
    "roof": "Fly less, or stand it on the floor.",
}
SPACING_ROUNDING_M = 0.000000001


def limits_over(item: Any, section: Record) -> list[Record]:
    """
    The limits that a support on a point hangs under, the nearest first.

    Without a point only the roof's is known.
    """
    found: list[Record] = []
    if item is not None:
        limit_kg, carried_kg = number_of(item, "limit"), number_of(item, "carried")
        if limit_kg is not None:
            left_kg = None if carried_kg is None else limit_kg - carried_kg
            found.append(
                {
                    **limit("point", "point " + item["name"], item, "limit", left_kg),
                    "hangs": hangs_on([item]),
                }
            )
        beam = beam_of(item, section)
        others = [
            other
            for other in points_of(section)
            if text_of(other, "beam").lower() == text_of(item, "beam").lower()
        ]
        found.append(
            {
                **limit(
                    "beam", "beam " + text_of(item, "beam"), beam, "left", number_of(beam, "left")
                ),
                "hangs": hangs_on(others),
            }
        )
        for zone in section["items"]:
            if zone["kind"] == "zone" and (
                listed(item["name"], parts_of(zone, "points"))
                or listed(text_of(item, "beam"), parts_of(zone, "beams"))
            ):
                found.append(
                    limit("zone", "the zone " + zone["name"], zone, "left", number_of(zone, "left"))
                )
    roof = roof_of(section)
    found.append(limit("roof", "the whole roof", roof, "left", number_of(roof, "left")))
    return [
        each
        for each in found
        if each["left_kg"] is not None or not without_limit(each["kind"], each["item"])
    ]


def roof_of(section: Record) -> Any:
    """The item of the whole roof, or None."""
    return next((item for item in section["items"] if item["kind"] == "roof"), None)


def limit(kind: str, words: str, item: Any, shown: str, left_kg: Any) -> Record:
    """
    A limit: what it is called, the fact that shows it, what is left (None where nobody says), and
    whether the house hangs something there.
    """
    carried_kg = number_of(item, "carried")
    value = item["values"].get(shown) if item is not None else None
    fact = fact_of(value, item) if value is not None else None
    house = carried_kg is not None and carried_kg > 0
    key = kind + " " + (item["key"] if item is not None else words)
    left = {"left_kg": left_kg, "house": house, "hangs": []}
    return {
        "key": key,
        "kind": kind,
        "words": words,
        "item": item,
        "value": value,
        "fact": fact,
        **left,
    }


def hangs_on(points: list[Record]) -> list[str]:
    """What the house hangs on some points, by name, each once."""
    return once([item["words"]["carried"] for item in points if "carried" in item["words"]])


def without_limit(kind: str, item: Any) -> bool:
    """Whether the house says that a beam, a zone or the roof has no limit of its own."""
    return (
        kind != "point"
        and item is not None
        and "limit" in item["values"]
        and item["values"]["limit"]["standing"] == "none"
    )


def spacing_issues(item: Record, loaded: list[str], section: Record) -> list[Record]:
    """
    Neighbours on the same beam, loaded by the house or the show, that are nearer than the house
    allows.
    """
    roof = roof_of(section)
    rule = roof["values"].get("spacing_at_least") if roof is not None else None
    if rule is None or rule["standing"] in ("none", "not stated"):
        return []
    found: list[Record] = []
    after = False
    for other in points_of(section):
        if other["key"] == item["key"]:
            after = True
        elif text_of(other, "beam").lower() == text_of(item, "beam").lower():
            carried_kg = number_of(other, "carried")
            known = other["key"] in loaded or carried_kg is not None
            if other["key"] in loaded or carried_kg is None or carried_kg > 0:
                found = [
                    *found,
                    *neighbour([item, other] if after else [other, item], rule, item, known=known),
                ]
    return found


def apart_of(pair: list[Record]) -> Any:
    """How far two points of one beam are apart along it, or None. [m]"""
    here_m = (number_of(pair[0], "at.across"), number_of(pair[0], "at.depth"))
    there_m = (number_of(pair[1], "at.across"), number_of(pair[1], "at.depth"))
    if here_m[0] is None or here_m[1] is None or there_m[0] is None or there_m[1] is None:
        return None
    aside_m, along_m = abs(here_m[0] - there_m[0]), abs(here_m[1] - there_m[1])
    return aside_m if aside_m > along_m else along_m


def neighbour(pair: list[Record], rule: Record, item: Record, *, known: bool) -> list[Record]:
    """A point and a loaded neighbour, in the pack's order, against the spacing rule."""
    names = pair[0]["name"] + " and " + pair[1]["name"]
    apart_m = apart_of(pair)
    question = "How near may two loaded points be to each other on one beam? (" + names + ")"
    if rule["number"] is None or apart_m is None:
        return [
            issue(
                ASK,
                "Nobody has said how near to each other " + names + " may both be loaded.",
                question=question,
                item=item,
            )
        ]
    if apart_m >= rule["number"] - SPACING_ROUNDING_M:
        return []
    reason = (
        names
        + " are "
        + both("length", apart_m)[0]
        + " apart on one beam; the house keeps "
        + both("length", rule["number"])[0]
    )
    if known:
        return [
            issue(
                SHORT,
                reason + " between loaded points.",
                remedy="Take a point that is farther from a loaded one.",
                item=item,
            )
        ]
    reason += " between loaded points, and it is not known whether both are."
    return [issue(ASK, reason, question=question, item=item)]
