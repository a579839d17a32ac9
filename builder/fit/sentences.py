"""
Sentences from templates.

What the check says stands in tables of templates with named parts, one table a subject, so that it
can be read, changed and one day translated. :func:`fill` puts the parts in.
"""


def fill(template: str, parts: dict[str, str]) -> str:
    """
    A template with its named parts filled in.

    What a crew wrote is put in as it stands, braces included: parts are never read as templates.
    """
    pieces = template.split("{")
    texts = [pieces[0]]
    for piece in pieces[1:]:
        end = piece.find("}")
        texts.append(parts[piece[:end]])
        texts.append(piece[end + 1 :])
    return "".join(texts)
