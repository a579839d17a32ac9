"""
Sentences from templates, and those that several subjects share.

What the check says stands in tables of templates with named parts, one table a subject, so that it
can be read, changed and one day translated. :func:`fill` puts the parts in.
"""

QUESTION = "{question} ({asker}.)"
ASKER = "{act}{line}: {title}, {need}"
RIDER_LINE = ", rider line {line}"

NOT_SAID = "The house has not said."
NOT_DESCRIBED = "The pack does not describe this."
HAS_NONE = "The house has none."
SHOW_BRINGS_IT = "The show brings it."

LIMITED = "{item} is limited."
LIMITED_WHY = "{item} is limited: {note}"
TERMS = "{item}: {terms}."
NO_CHECK = "The house does not say when this was checked."
OLD_CHECK = "Old check: {check}."

NOT_FOR_CONFIGURATION = "The house has not said for the configuration {configuration}."
NO_SUCH_CONFIGURATION = "The house names no configuration {configuration}; it names: {names}."
WHICH_CONFIGURATION = (
    "{act}: which configuration is meant by {configuration}? The house names: {names}."
)


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
