"""The whole answer to a word, and what has a name like it."""

import difflib
from collections.abc import Iterator

from builder.explaining.absences import ABSENCES, absence_explained
from builder.explaining.asking import asking_explained
from builder.explaining.codes import code_explained, codes
from builder.explaining.examples import Examples
from builder.explaining.keys import file_explained, keys_explained
from builder.explaining.paragraph import Paragraph, spelt
from builder.explaining.places import files, places
from builder.registry import RULES


def explained(word: str, problems: str, examples: Examples) -> tuple[Paragraph, ...]:
    """
    What a word is: a code, a file, a key, something that a rider may ask for, or a word for what is
    not there; nothing where it is none of them.

    Parameters
    ----------
    word
        As a crew types it: ``unit-missing``, ``clear_height``, ``decks.name``, ``stage.yml``.
    problems
        The page that explains the codes.
    examples
        What files hold in which keys are written, by name, to take an example from.
    """
    return (
        *code_explained(word, problems),
        *file_explained(word),
        *keys_explained(word, examples),
        *asking_explained(word),
        *absence_explained(word),
    )


def near(word: str, problems: str, most: int = 5) -> tuple[str, ...]:
    """What has a name like a word's, the nearest first."""
    names = {spelt(name): name for name in every_name(problems)}
    wanted = spelt(word)
    if wanted not in names:
        wanted = wanted.split(".")[-1]
    alike = difflib.get_close_matches(wanted, names, n=most, cutoff=0.6)
    holding = [name for name in names if len(wanted) > 2 and wanted in name]
    found = dict.fromkeys((*alike, *holding))
    return tuple(names[name] for name in list(found)[:most])


def every_name(problems: str) -> Iterator[str]:
    """Everything that can be asked about."""
    yield from codes(problems)
    yield from files()
    yield from dict.fromkeys(place.key.name for place in places())
    yield from RULES
    yield from ABSENCES
