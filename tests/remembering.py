"""
What was read of a text, and what a department published of it, is kept within one process of tests,
so that the demo is worked out once and not for each of a thousand tests.

Reading is a function of the text alone, and publishing of the file and its surroundings.
``HOUSEPACK_COLD=1`` keeps nothing: small faults are tried in this way, and so is whoever doubts
that they are such functions.
"""

import os
import sys
from collections import deque
from dataclasses import dataclass, field
from typing import Any

COLD = "HOUSEPACK_COLD"
PIPELINE = "builder.pipeline"
KEPT = 6
"""How many states of one file are kept: the demo, a test venue, and some changes."""


@dataclass(slots=True)
class Reading:
    """Reads as ``read`` does, once for the same text."""

    read: Any
    known: dict[tuple[str, Any], deque[tuple[str, Any]]] = field(default_factory=dict)

    def __call__(self, text: str, *, file: str, kind: Any) -> Any:
        kept = self.known.setdefault((file, kind), deque(maxlen=KEPT))
        for other, description in kept:
            if other == text:
                return description
        description = self.read(text, file=file, kind=kind)
        kept.append((text, description))
        return description


@dataclass(slots=True)
class Reviewing:
    """Reviews as ``review`` does, once for the same file of the same day."""

    review: Any
    known: deque[tuple[Any, Any, Any]] = field(default_factory=lambda: deque(maxlen=KEPT * 8))

    def __call__(self, file: Any, **day: Any) -> Any:
        for other, on, remarks in self.known:
            if other is file and on == day:
                return remarks
        remarks = self.review(file, **day)
        self.known.append((file, day, remarks))
        return remarks


@dataclass(slots=True)
class Publishing:
    """Publishes as ``publish`` does, once for equal files in equal surroundings."""

    publish: Any
    known: dict[str, deque[tuple[Any, Any, Any, Any]]] = field(default_factory=dict)

    def __call__(self, department: Any, file: Any, around: Any) -> Any:
        kept = self.known.setdefault(department.key, deque(maxlen=KEPT))
        for rule, one, other, published in kept:
            if rule is department.publish and (one is file or one == file) and other == around:
                return published
        published = self.publish(department, file, around)
        kept.append((department.publish, file, around, published))
        return published


KEEPERS: dict[str, Any] = {"read": Reading, "review": Reviewing, "published_by": Publishing}
"""What is kept, by the name that the pipeline has for the function."""


def remember() -> None:
    """
    From now on keep what is read and published, if the pipeline is there: no test has to pay for
    its import that does not need it.
    """
    pipeline: Any = sys.modules.get(PIPELINE)
    if pipeline is None or os.environ.get(COLD) == "1":
        return
    for name, keeper in KEEPERS.items():
        if not isinstance(getattr(pipeline, name), keeper):
            setattr(pipeline, name, keeper(getattr(pipeline, name)))
