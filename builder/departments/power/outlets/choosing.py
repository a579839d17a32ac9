"""
One place's part of the best choice of outlets at the same time, where something that decides the
choice is known in part: another choice may then be the best, with more here and fewer there.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from builder.formulas.free_circuits import FreeAtOnce
from builder.pack import Turning, Value, one_or_both

WithoutIt = Callable[[], FreeAtOnce]
"""The best choice without the place, worked out only where somebody asks."""


def counted_outlets(number: int, of: str = "") -> Value:
    """A count of outlets as a value."""
    return Value(f"{number:,}{of}", number=float(number))


@dataclass(frozen=True, slots=True)
class PartTurning(Turning):
    """
    What a place holds alone, what the house holds in all, and what it holds without the place.
    """

    alone: FreeAtOnce
    whole: FreeAtOnce
    without: WithoutIt

    def between(self, others: Sequence[Turning]) -> Value | None:
        """
        A best choice takes no more here than the place holds alone, and no fewer than the house
        would lose without it. Each of the three only grows with room, so their ends are at ends.
        """
        parts = [each for each in others if isinstance(each, PartTurning)]
        if len(parts) < len(others):
            return None
        in_all = min(part.whole.outlets for part in parts)
        elsewhere = max(part.without().at_most for part in parts)
        most = max(part.alone.at_most for part in parts)
        least = min(max(0, in_all - elsewhere), most)
        return one_or_both(counted_outlets(least), counted_outlets(most))


@dataclass(frozen=True, slots=True)
class InAllTurning(Turning):
    """What all places hold together, which only grows with room."""

    whole: FreeAtOnce
    of: str

    def between(self, others: Sequence[Turning]) -> Value | None:
        """From the fewest that were found to the most that may be."""
        parts = [each for each in others if isinstance(each, InAllTurning)]
        if len(parts) < len(others):
            return None
        least = min(part.whole.outlets for part in parts)
        most = max(part.whole.outlets for part in parts)
        return one_or_both(counted_outlets(least, self.of), counted_outlets(most, self.of))
