"""Where the name of a spot in a drawing stands, so that strokes run past it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.departments.lines.strokes import At, Stroke, apart

LETTER, LEAD, OFF = 6.4, 14.0, 9.0
"""Width of a letter, height of a row, and how far a name keeps from its spot. [drawing units]"""
LONGEST = 9
"""Letters of a row that a further word may still join."""


@dataclass(frozen=True, slots=True)
class Named:
    """A name in rows, the middle of each row, and where it is anchored."""

    rows: tuple[str, ...]
    middles: tuple[At, ...]


def rows_of(name: str) -> tuple[str, ...]:
    """A name in short rows."""
    rows: list[str] = []
    for word in name.split():
        if rows and len(rows[-1]) + len(word) < LONGEST:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    return tuple(rows)


def half_width(row: str) -> float:
    """Half the width of a row of text. [drawing units]"""
    return len(row) * LETTER / 2


def choices(rows: tuple[str, ...], at: At) -> Iterator[Named]:
    """The name above its spot, below, on the right and on the left."""
    x, y = at
    high, wide = len(rows) * LEAD, max(half_width(row) for row in rows)
    for middle_x, top in (
        (x, y - OFF - high),
        (x, y + OFF),
        (x + OFF + wide, y - high / 2),
        (x - OFF - wide, y - high / 2),
    ):
        yield Named(
            rows, tuple((middle_x, top + (index + 0.5) * LEAD) for index in range(len(rows)))
        )


def named(spots: Mapping[str, At], strokes: Sequence[Stroke], *, width: float) -> dict[str, Named]:
    """
    A name for each spot on the side that strokes, other spots and names leave freest; above where
    that is free enough.
    """
    found: dict[str, Named] = {}
    on_strokes = [stroke.at(share / 40) for stroke in strokes for share in range(41)]
    for name, at in spots.items():
        taken = [other for other in spots.values() if other != at]
        taken += [point for one in found.values() for point in points_of(one)]
        taken += on_strokes
        inside = [choice for choice in choices(rows_of(name), at) if fits(choice, width)] or [
            next(choices(rows_of(name), at))
        ]
        found[name] = max(inside, key=lambda choice: round(room(choice, taken), 3))
    return found


def fits(choice: Named, width: float) -> bool:
    """True where a name stays on the drawing."""
    return all(
        half_width(row) < x < width - half_width(row) and y > LEAD / 2
        for row, (x, y) in zip(choice.rows, choice.middles, strict=True)
    )


def points_of(name: Named) -> list[At]:
    """Points over a name's rows, close enough that nothing slips between."""
    return [
        (x + part * half_width(row), y)
        for row, (x, y) in zip(name.rows, name.middles, strict=True)
        for part in (-1, -0.66, -0.33, 0, 0.33, 0.66, 1)
    ]


def room(choice: Named, taken: Sequence[At]) -> float:
    """
    The least distance from a name to what is taken, up to what is free enough: what lies beyond
    that is not looked at.
    """
    points = points_of(choice)
    near = list(within(points, LEAD, taken))
    least = min((apart(point, other) for point in points for other in near), default=LEAD)
    return min(least, LEAD)


def within(points: Sequence[At], margin: float, others: Sequence[At]) -> Iterator[At]:
    """Those of some points that lie in the box around others, with a margin."""
    left, right = min(x for x, _ in points) - margin, max(x for x, _ in points) + margin
    low, high = min(y for _, y in points) - margin, max(y for _, y in points) + margin
    for x, y in others:
        if left <= x <= right and low <= y <= high:
            yield x, y
