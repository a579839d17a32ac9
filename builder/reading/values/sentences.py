"""How a sentence is made: a template with named parts, filled once."""

from collections.abc import Mapping


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
