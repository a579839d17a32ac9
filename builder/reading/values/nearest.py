"""
The known name that is spelt most like what somebody wrote.

Likeness is that of Ratcliff and Obershelp: the longest run of characters that both have, then the
same to its left and right, in all twice their number over the characters of both. It is what
Python's ``difflib`` works out, and the tests hold the two against each other.
"""

from collections.abc import Sequence

LONGEST = 200
"""Longer texts are like no name."""


def nearest(word: str, names: Sequence[str], least: float) -> str:
    """The name most like a word, of equals the last in order; empty where none is like enough."""
    best = ""
    best_likeness = -1.0
    if len(word) >= LONGEST:
        return best
    for name in names:
        likeness = likeness_of(list(name), list(word))
        better = likeness > best_likeness or (likeness == best_likeness and name > best)
        if likeness >= least and better:
            best = name
            best_likeness = likeness
    return best


def likeness_of(one: list[str], other: list[str]) -> float:
    """How alike two spellings are, from 0 to 1."""
    size = len(one) + len(other)
    if size == 0:
        return 1.0
    return 2.0 * shared(one, other) / size


def shared(one: list[str], other: list[str]) -> int:
    """How many characters stand in both, in runs that follow each other."""
    count = 0
    waiting = [(one, other)]
    while len(waiting) > 0:
        first, second = waiting.pop()
        start, place, size = longest_run(first, second)
        if size > 0:
            count += size
            waiting.append((first[:start], second[:place]))
            waiting.append((first[start + size :], second[place + size :]))
    return count


def longest_run(one: list[str], other: list[str]) -> tuple[int, int, int]:
    """Where the longest run that both have begins in each, and its size; of equals the first."""
    best = (0, 0, 0)
    before = [0] * (len(other) + 1)
    for start, char in enumerate(one):
        sizes = [0]
        for place, another in enumerate(other):
            size = before[place] + 1 if char == another else 0
            sizes.append(size)
            if size > best[2]:
                best = (start - size + 1, place - size + 1, size)
        before = sizes
    return best
