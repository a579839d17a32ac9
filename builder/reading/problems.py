"""What is wrong with a text: where, which value, why, and how to go on."""

from collections.abc import Iterable
from dataclasses import dataclass

from builder.reading.values.telling import LONGEST, problem_words


@dataclass(frozen=True, slots=True, order=True)
class Where:
    """A place in the author's text. Lines and columns count from 1; 0 means the file as a whole."""

    file: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """
    One mistake in a text, in words its author can act on.

    ``path`` is the key as the author would say it, such as ``services[1].rating``; ``reason`` is
    what is wrong with the value, ``advice`` how to go on, and ``code`` a heading of the problems
    page.
    """

    where: Where
    path: str
    value: str
    reason: str
    code: str
    advice: str = ""

    def __str__(self) -> str:
        words = problem_words(self.path, shortened(self.value), self.reason, self.advice)
        return f"{self.where} {words} [{self.code}]"


class Refused(Exception):
    """The text cannot be read as a venue. Carries every problem found, sorted by place."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(sorted(set(problems)))
        super().__init__("\n".join(str(problem) for problem in self.problems))


def shortened(value: str, longest: int = LONGEST) -> str:
    """The value in quotes, on one line, with what a terminal must not obey shown as an escape."""
    if not value:
        return ""
    shown = "".join(
        char if char.isprintable() else char.encode("unicode_escape").decode("ascii")
        for char in value
    )
    return f"'{shown[: longest - 1]}…'" if len(shown) > longest else f"'{shown}'"
