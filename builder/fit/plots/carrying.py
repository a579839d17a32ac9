"""What the floor carries under a rectangle of a stage plot. A limit on loads has no tolerance."""

from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.notes import item_notes
from builder.fit.plots.floors import outline_of, says_unknown
from builder.fit.plots.hits import asked_hit, noted_hit, of_word, plain_hit, short_hit
from builder.fit.plots.records import Floor, Hit, Zone
from builder.fit.plots.sentences import (
    ASK_LOAD,
    ASK_WHERE_IS,
    ASK_ZONES,
    CARRIES,
    FOOT_ON,
    LARGEST_SINGLE,
    LOAD_NOT_SAID,
    OUT_OF_SERVICE,
    SPREAD_ON,
    UNIFORM,
    WHERE_UNKNOWN,
    ZONES_UNKNOWN,
)
from builder.fit.records import Item, RectangleAsked, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import least_of, most_of, value_of
from builder.fit.verdicts import FITS, SHORT, fact_of
from builder.fit.wording import both
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.formulas.polygons import Point, box_around
from builder.formulas.rectangles import Rectangle, lies_within, meets

FLOAT_SHARE = 0.000000001
"""What the arithmetic itself may cost."""


def carrying_hits(
    wish: RectangleAsked, rect: Rectangle, floor: Floor, section: Section
) -> list[Hit]:
    """
    What weight and feet make of every floor under a rectangle.

    The floor's own limit does not bind where a zone lies under all of it.
    """
    zones: list[Zone] = []
    undrawn: list[Item] = []
    covered = False
    for item in items_of(section, "zone"):
        corners = outline_of(section, "zone", item["name"])
        if len(corners) == 0:
            undrawn.append(item)
        elif meets(rect, corners, LENGTH_TOLERANCE_M):
            zones.append({"item": item, "corners": corners})
            covered = covered or lies_within(rect, corners, LENGTH_TOLERANCE_M)
    hits: list[Hit] = []
    for zone in zones:
        hits.extend(zone_hits(zone))
    if not covered:
        hits.extend(load_hits(wish, floor["item"], floor["corners"]))
    for zone in zones:
        hits.extend(load_hits(wish, zone["item"], zone["corners"]))
    found = with_undrawn(hits, wish, undrawn)
    if len(load_hits(wish, floor["item"], [])) > 0 and says_unknown(section, "zones"):
        asked = asked_hit("load", ZONES_UNKNOWN, ASK_ZONES)
        return [*[hit for hit in found if hit["word"] != SHORT], asked]
    return found


def with_undrawn(hits: list[Hit], wish: RectangleAsked, zones: list[Item]) -> list[Hit]:
    """
    The hits, with zones that nobody drew, which may lie under a rectangle or not: what one of them
    would change is asked.
    """
    changing: list[Hit] = []
    for item in zones:
        own = load_hits(wish, item, [])
        fits = len(own) > 0 and len(of_word(own, FITS)) == len(own)
        short = len(of_word(hits, SHORT)) > 0
        if item["condition"] == "out of service" or (short if fits else len(own) > 0):
            name = {"name": item["name"]}
            words, question = fill(WHERE_UNKNOWN, name), fill(ASK_WHERE_IS, name)
            changing.append(asked_hit("load", words, question))
    if len(changing) == 0:
        return hits
    return [*[hit for hit in hits if hit["word"] != SHORT], *changing]


def zone_hits(zone: Zone) -> list[Hit]:
    """A zone that is out of service takes nothing; one that is limited is told."""
    item = zone["item"]
    if item["condition"] == "out of service":
        words = fill(OUT_OF_SERVICE, {"name": item["name"]})
        return [short_hit("use", words, 0.0, None, box=box_around(zone["corners"]))]
    return [noted_hit("state", words) for words in item_notes(item)]


def load_hits(wish: RectangleAsked, item: Item, corners: list[Point]) -> list[Hit]:
    """A rectangle's loads against what one floor carries."""
    hits: list[Hit] = []
    if wish["weight_kg"] is not None:
        pressure_pa = (
            wish["weight_kg"] * STANDARD_GRAVITY_M_S2 / (wish["width_m"] * wish["depth_m"])
        )
        hits.append(load_hit(pressure_pa, "load", item, corners))
    if wish["foot_kg"] is not None:
        hits.append(load_hit(wish["foot_kg"], "mass", item, corners))
    return hits


def load_hit(load: float, kind: str, item: Item, corners: list[Point]) -> Hit:
    """One load against one limit, without a tolerance."""
    is_spread = kind == "load"
    value = value_of(item, "load" if is_spread else "point_load")
    parts = {"amount": both(kind, load)[0], "name": item["name"]}
    words = fill(SPREAD_ON if is_spread else FOOT_ON, parts)
    fact = fact_of(value, item) if value is not None else None
    most, least = most_of(value), least_of(value)
    if most is not None and load - most > abs(most) * FLOAT_SHARE:
        carries = fill(CARRIES, {"words": words, "limit": both(kind, most)[0]})
        box = box_around(corners) if item["kind"] == "zone" else None
        return short_hit(kind, carries, load - most, fact, box=box, measure=kind, limit=most)
    if least is not None and load - least <= abs(least) * FLOAT_SHARE:
        carries = fill(CARRIES, {"words": words, "limit": both(kind, least)[0]})
        return plain_hit(FITS, kind, carries, fact)
    what = {"what": UNIFORM if is_spread else LARGEST_SINGLE, "name": item["name"]}
    return asked_hit(kind, fill(LOAD_NOT_SAID, {"words": words}), fill(ASK_LOAD, what), fact)
