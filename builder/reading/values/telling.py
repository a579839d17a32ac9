"""A problem in one sentence: which value, what is wrong with it, how to go on."""

from builder.reading.values.sentences import fill
from builder.reading.values.spelling import folded

ADVISED = "{sentence}; {advice}"
LONGEST = 60
"""The most characters of a value that a sentence repeats."""


def problem_words(path: str, quoted: str, reason: str, advice: str) -> str:
    """The sentence of a problem; ``quoted`` is the value in quotes, or empty."""
    subject = ": ".join(part for part in (path, quoted) if part != "")
    sentence = " ".join(part for part in (subject, reason) if part != "")
    return fill(ADVISED, {"sentence": sentence, "advice": advice}) if advice != "" else sentence


def quoted_value(value: str) -> str:
    """A value in quotes on one line, cut where it is long; nothing for an empty one."""
    line = folded(value)
    if line == "":
        return ""
    return f"'{line[: LONGEST - 1]}…'" if len(line) > LONGEST else f"'{line}'"
