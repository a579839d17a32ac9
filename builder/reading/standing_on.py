"""
States and terms in order of hardness: what stands on something, is fed from it or passes it is no
better than that.
"""

from collections.abc import Sequence

OUT = "out of service"
CLOSED = "not for visitors"
UNKNOWN = "unknown"
"""The state of what nobody knows to work."""
PERHAPS_OUT = "perhaps out of service"
CONDITIONS = ("in service", "limited", UNKNOWN, OUT)
TERMS = ("included", "extra charge", "by arrangement", CLOSED)


def hardest(words: Sequence[str], order: Sequence[str]) -> str:
    """The one of some words that stands last in an order; what stands nowhere counts least."""
    return max(words, key=lambda word: order.index(word) if word in order else -1)


def hard_words(condition: str, terms: str) -> list[str]:
    """What a reader must know of a state and of terms: neither in service nor included."""
    hard = (*CONDITIONS[1:], *TERMS[1:])
    return [state_words(word) for word in (condition, terms) if word in hard]


def state_words(condition: str) -> str:
    """A state as a reader is told of it."""
    return PERHAPS_OUT if condition == UNKNOWN else condition
