"""
Which of many figures that moved a reader needs first: the largest relative move of each line,
department by department.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.stock.comparison import Comparison
from builder.stock.differences import Difference, Part

MOVED = ("figure", "map")
MOST = 5
"""
How many lines of a department are told before the rest is counted; and how many the log keeps.
"""


@dataclass(frozen=True, slots=True)
class Row:
    """The figure of one line that moved most, and how many more of that line moved."""

    part: Part
    lead: Difference
    more: int


def rows_of(part: Part) -> tuple[Row, ...]:
    """
    A department's lines with figures that moved, the largest relative move first; of equal ones the
    order of the pack.
    """
    groups: dict[str, list[Difference]] = {}
    for difference in part.differences:
        if difference.kind in MOVED:
            groups.setdefault(difference.item, []).append(difference)
    rows = [
        Row(part, max(group, key=lambda each: each.share), len(group) - 1)
        for group in groups.values()
    ]
    return tuple(sorted(rows, key=lambda row: -row.lead.share))


def largest(comparison: Comparison, most: int = MOST) -> tuple[Row, ...]:
    """The lines with the largest moves of all departments."""
    rows = [row for part in comparison.parts for row in rows_of(part)]
    return tuple(sorted(rows, key=lambda row: -row.lead.share)[:most])


def figures_in(rows: Sequence[Row]) -> int:
    """How many figures some rows stand for."""
    return sum(1 + row.more for row in rows)
