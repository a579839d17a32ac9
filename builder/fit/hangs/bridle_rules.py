"""What the house says of bridles: whether and where, how wide, how far a pull may lean."""

from builder.fit.hangs.sentences import BETWEEN_BEAMS, ON_ANY_BEAM
from builder.fit.records import Item, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import listed, number_of, parts_of, text_of

FLATTEST = -0.5
"""The cosine of 120 degrees: beyond it, each of two equal legs carries more than the load."""
STEEPEST_LEAN = 0.5
"""The cosine of 60 degrees, half of that."""
FORBIDDEN = "no"


def bridle_rule(section: Section) -> str:
    """
    Whether bridles are allowed, in words that fit into a sentence: ``no``, empty where nobody says.
    """
    for item in section["items"]:
        if item["kind"] == "house" and "bridles_allowed" in item["values"]:
            if item["values"]["bridles_allowed"]["standing"] == "none":
                return FORBIDDEN
        elif item["kind"] == "bridles_allowed":
            return rule_words(item)
    return ""


def rule_words(rule: Item) -> str:
    """The house's rule on bridles in words."""
    allowed = text_of(rule, "allowed")
    if allowed == "between some beams":
        return fill(BETWEEN_BEAMS, {"beams": text_of(rule, "beams")})
    if allowed == "yes":
        return ON_ANY_BEAM
    return FORBIDDEN if allowed == "no" else ""


def may_take_a_leg(point: Item, section: Section) -> bool:
    """Whether the house says that a leg may go to this point's beam."""
    rules = items_of(section, "bridles_allowed")
    if len(rules) == 0:
        return False
    allowed = text_of(rules[0], "allowed")
    if allowed == "between some beams":
        return listed(text_of(point, "beam"), parts_of(rules[0], "beams"))
    return allowed == "yes"


def widest_cosine(section: Section) -> float:
    """The cosine of the widest angle between two legs: the house's own, at most 120 degrees."""
    for rule in items_of(section, "bridles_allowed"):
        cosine = number_of(rule, "widest_angle")
        if cosine is not None:
            return max(cosine, FLATTEST)
    return FLATTEST


def lean_cosine(point: Item, section: Section) -> float | None:
    """
    The cosine of the widest lean of a pull on a point, at most 60 degrees.

    None where pulls must be straight down, or nobody says.
    """
    for rule in lean_rules(point, section):
        if "directions" in rule["words"]:
            lean = number_of(rule, "widest_lean")
            if lean is None or text_of(rule, "directions") != "at an angle":
                return None
            return max(lean, STEEPEST_LEAN)
    return None


def lean_rules(point: Item, section: Section) -> list[Item]:
    """Where a lean may be said: the point's own line, then exceptions, then the rule for all."""
    exceptions = items_of(section, "exception")
    by_point = [rule for rule in exceptions if listed(point["name"], parts_of(rule, "points"))]
    beam = text_of(point, "beam")
    by_beam = [rule for rule in exceptions if listed(beam, parts_of(rule, "beams"))]
    return [point, *by_point, *by_beam, *items_of(section, "roof")]
