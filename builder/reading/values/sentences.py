"""
How a sentence is made: a template with named parts, filled once, and words that begin a sentence or
stand within one.
"""

from collections.abc import Mapping

from builder.reading.values.spelling import is_digit

ENDS = (".", "!", "?")


def fill(template: str, parts: Mapping[str, str]) -> str:
    """
    A template with each `{name}` replaced by its part. What a part holds is not looked at again, so
    that braces in the words of a crew stay braces.
    """
    pieces = template.split("{")
    words = [pieces[0]]
    for piece in pieces[1:]:
        end = piece.find("}")
        words.append(parts[piece[:end]])
        words.append(piece[end + 1 :])
    return "".join(words)


def sentence_start(words: str) -> str:
    """Words as they begin a sentence: only the first letter is raised, for names keep theirs."""
    return words[:1].upper() + words[1:]


def within_sentence(words: str) -> str:
    """
    Words as they stand within a sentence: only their first letter is small, and not that of a sign
    such as DMX or L1.
    """
    first = words.split(" ")[0]
    is_sign = first[1:] != first[1:].lower() or any(is_digit(char) for char in first)
    return words if is_sign else words[:1].lower() + words[1:]


def ended(text: str) -> str:
    """A text that ends as a sentence does."""
    is_ended = text == "" or any(text.endswith(sign) for sign in ENDS)
    return text if is_ended else f"{text}."
