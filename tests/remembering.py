"""
What was read of a text, and what a department published of it, is kept within one process of tests,
so that the demo is worked out once and not for each of a thousand tests.

Reading is a function of the text alone, and publishing of the file and of what the department hears
of its surroundings. ``HOUSEPACK_COLD=1`` keeps nothing: small faults are tried in this way, and so
is whoever doubts that they are such functions.
"""

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any
from unittest.mock import patch

COLD = "HOUSEPACK_COLD"
PIPELINE = "builder.pipeline"
KEPT = 12
"""How many answers of one kind are kept: the demo, some test venues, and the last few changes."""


@dataclass(slots=True)
class Kept:
    """The last answers of one kind with what each is an answer to, the last asked first."""

    answers: list[tuple[Any, Any]] = field(default_factory=list)

    def get(self, is_it: Callable[[Any], bool], asked: Any, answer: Callable[[], Any]) -> Any:
        """What is kept where ``is_it`` knows the question; else the new answer."""
        for index, (known, found) in enumerate(self.answers):
            if is_it(known):
                self.answers.insert(0, self.answers.pop(index))
                return found
        found = answer()
        self.answers.insert(0, (asked, found))
        del self.answers[KEPT:]
        return found


@dataclass(slots=True)
class Reading:
    """Reads as ``read`` does, once for the same text."""

    once: Any
    known: dict[tuple[str, Any], Kept] = field(default_factory=dict)

    def __call__(self, text: str, *, file: str, kind: Any) -> Any:
        kept = self.known.setdefault((file, kind), Kept())
        return kept.get(
            lambda known: bool(known == text), text, lambda: self.once(text, file=file, kind=kind)
        )


@dataclass(slots=True)
class Reviewing:
    """Reviews as ``review`` does, once for the same file of the same day."""

    once: Any
    known: dict[str, Kept] = field(default_factory=dict)

    def __call__(self, file: Any, **day: Any) -> Any:
        return self.known.setdefault(type(file).__name__, Kept()).get(
            lambda known: known[0] is file and known[1] == day,
            (file, day),
            lambda: self.once(file, **day),
        )


@dataclass(slots=True)
class Publishing:
    """Publishes as ``publish`` does, once for equal files in equal surroundings."""

    once: Any
    known: dict[str, Kept] = field(default_factory=dict)

    def __call__(self, department: Any, file: Any, around: Any) -> Any:
        def is_it(known: Any) -> bool:
            rule, one, other = known
            if rule is not department.publish:
                return False
            return (one is file or one == file) and bool(other == around)

        return self.known.setdefault(department.key, Kept()).get(
            is_it,
            (department.publish, file, around),
            lambda: self.once(department, file, around),
        )


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


@contextmanager
def forgetting() -> Iterator[None]:
    """What is read and published meanwhile is worked out as if nothing were kept."""
    pipeline: Any = sys.modules[PIPELINE]
    now = {name: getattr(pipeline, name) for name in KEEPERS}
    cold = {name: getattr(function, "once", function) for name, function in now.items()}
    with patch.multiple(pipeline, **cold):
        yield
