"""The line ends of a file given back to its text, once the text was changed."""

import re
from collections import Counter
from difflib import SequenceMatcher

from builder.reading.text import one_line_end

LINE = re.compile(r"([^\r\n]*)(\r\n|\r|\n|\Z)")


def ended_as(old: str, new: str) -> str:
    """
    The text ``new``, whose lines end in line feeds, with the line ends of ``old``.

    A line that was there keeps its own; a new one ends as most do.
    """
    ends = [end for _, end in LINE.findall(old) if end]
    usual = Counter(ends).most_common(1)[0][0] if ends else "\n"
    if len(set(ends)) <= 1:
        return new.replace("\n", usual)
    return each_ended_as(old, new, usual)


def each_ended_as(old: str, new: str, usual: str) -> str:
    """The same for a file whose lines end in several ways."""
    before, after = lines_of(old), lines_of(new)
    ends = [usual if end else "" for _, end in after]
    matcher = SequenceMatcher(
        None, [words for words, _ in before], [words for words, _ in after], autojunk=False
    )
    for first, start, count in matcher.get_matching_blocks():
        for step in range(count):
            if ends[start + step]:
                ends[start + step] = before[first + step][1] or usual
    text = "".join(words + end for (words, _), end in zip(after, ends, strict=True))
    # An end of one sign before an empty line can run together with that line's own.
    return text if one_line_end(text) == new else new.replace("\n", usual)


def lines_of(text: str) -> list[tuple[str, str]]:
    """The lines of a text, each with its end; the last has none."""
    return LINE.findall(text)
