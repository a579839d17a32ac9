"""One thing that is not as it was, and all that changed in one department."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Difference:
    """
    One thing that is not as it was. ``before`` is empty where it was added, ``after`` where it was
    taken out; ``by`` says how much a number moved.

    ``kind`` is fact, figure, line, condition, note, check, plan or map. ``caution`` is the figure's
    own. ``share`` is how much of itself a number moved by, from 0 to 1; 1 where it came or went.
    """

    kind: str
    item: str
    label: str
    before: str
    after: str
    by: str = ""
    caution: str = ""
    key: str = ""
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class Part:
    """What changed in one department."""

    key: str
    title: str
    differences: tuple[Difference, ...]
