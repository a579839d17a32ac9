"""
What a visiting show may ask, as data: a rule names the fact or figure that answers it.

The pack publishes the rules beside the facts.
"""

from dataclasses import dataclass
from typing import Literal

Way = Literal["at least", "at most", "between", "is"]
"""How a rider may ask."""
Kind = Literal[
    "length",
    "mass",
    "load",
    "area",
    "count",
    "current",
    "duration",
    "share",
    "temperature",
    "data rate",
    "yes",
    "permission",
]
"""What the answer is. A pack with a rule of another kind is no pack that this version reads."""

AT_LEAST: Way = "at least"
AT_MOST: Way = "at most"
BETWEEN: Way = "between"
IS: Way = "is"
NUMBERS: tuple[Way, ...] = (AT_LEAST, AT_MOST, BETWEEN)
ANYTHING = "*"
"""Stands in ``means_yes`` for whatever the house states."""
WHOLES = ("whole", "rules")
"""The kinds of item in which a section says that the house has none of something."""


@dataclass(frozen=True, slots=True)
class Rule:
    """
    One thing that can be asked.

    ``key`` is what a rider writes. ``section``, ``item`` and ``value`` say where the answer stands;
    without a section no department describes it yet, and the answer is a question. ``where`` keeps
    only items whose fact (or ``name``) has that text, or one of several between ``|``; of those
    that do not say, shows are asked. ``combine`` tells what several items make: ``best`` (one must
    do), ``all`` or ``sum``. ``whole`` is the fact that says there is none of the kind.
    ``none_means`` is what the house's "none" says: ``lacking``, ``zero`` or ``no limit``.
    ``means_yes`` are the texts of the value that mean yes, where it is not written as yes or no;
    ``*`` is any. ``each`` is the key of the rule that tells how good one of the things is, where a
    rider may count them by class. ``day`` tells what several acts on one day ask together:
    ``largest``, ``sum``, or ``shared`` where it is the largest but for what an act does not share.
    ``otherwise`` are the values that answer, one after the other, where the first is not written:
    all of a line work unless it says how many do. ``beside`` is another kind of item whose faults
    are told with the answer. ``also`` are other kinds of item, each with the value by which it
    answers beside the rule's own, where it has that value. ``elsewhere`` names a section, a kind of
    item and a value of it, which answer where the rule's own section describes nothing of the kind.
    ``legal`` is what no rounding may pass: headroom, doors, weights.
    """

    key: str
    title: str
    department: str
    kind: Kind
    question: str
    ways: tuple[Way, ...] = (AT_LEAST,)
    section: str = ""
    item: str = ""
    value: str = ""
    otherwise: tuple[str, ...] = ()
    beside: str = ""
    also: tuple[tuple[str, str], ...] = ()
    elsewhere: tuple[str, ...] = ()
    where: tuple[tuple[str, str], ...] = ()
    combine: str = "best"
    whole: str = ""
    none_means: str = "lacking"
    means_yes: tuple[str, ...] = ()
    each: str = ""
    day: str = "largest"
    legal: bool = False
    remedy: str = ""
    who: str = ""
