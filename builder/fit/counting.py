"""How many verdicts of each word, in words."""

from collections.abc import Sequence

from builder.fit.sentences import COUNTED, fill


def count_words(verdicts: Sequence[str]) -> list[str]:
    """How many of each there are, the gravest first; nothing of what there is none of."""
    words: list[str] = []
    for word, template in COUNTED.items():
        number = len([one for one in verdicts if one == word])
        if number > 0:
            words.append(fill(template, {"number": str(number)}))
    return words
