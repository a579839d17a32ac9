"""
What terminal and page call: a rider's text, or what a form holds, to a rider as the check takes it,
with everything that is wrong.

Plain data in, plain data out. The language, the units and the rules come with the pack.
"""

from typing import TypedDict

from builder.fit.records import RiderAsked, Rule
from builder.reading.values.kinds import KindBook
from builder.reading.values.sentences import fill
from builder.reading.values.telling import problem_words, quoted_value
from builder.rider.asking.asking import Asking
from builder.rider.asking.language import Language
from builder.rider.asking.reading import read_group
from builder.rider.asking.rider import rider_asked
from builder.rider.asking.values import words_of
from builder.rider.text.document import read_tree
from builder.rider.text.tree import Mistake, Node
from builder.rider.text.writing import rider_text

ON_LINE = "line {line}: {words}"


class RiderRead(TypedDict):
    """
    A rider that was read.

    ``rider`` holds all that could be read, and tells what could not.
    ``parts`` tells for each requirement the part of the rider that it came from, such as
    ``needs[2]``, as ``part`` of a mistake does. ``plays`` is the date, year first, or empty;
    ``booking`` how firm it is. ``tree`` is the text as it was written, with its places: what a form
    shows and changes.
    """

    rider: RiderAsked
    parts: list[str]
    plays: str
    booking: str
    tree: Node
    mistakes: list[Mistake]


def read_rider(text: str, language: Language, rules: list[Rule], units: KindBook) -> RiderRead:
    """A rider from its text. What cannot be read as YAML leaves nothing but mistakes."""
    reading = read_tree(text)
    if len(reading["mistakes"]) > 0:
        return nothing_read(reading["tree"], reading["mistakes"])
    return read_form(reading["tree"], language, rules, units)


def read_form(tree: Node, language: Language, rules: list[Rule], units: KindBook) -> RiderRead:
    """A rider from a tree, such as a form makes; lines that a form does not know are 0."""
    asking: Asking = {
        "language": language,
        "units": units,
        "rules": {rule["key"]: rule for rule in rules},
        "mistakes": [],
        "part": "",
        "act": "",
    }
    written = read_group(tree, language["top"], "", asking)
    rider, parts = rider_asked(written, asking)
    mistakes = in_order(asking["mistakes"])
    rider["not_read"] = [placed_words(mistake) for mistake in mistakes]
    return {
        "rider": rider,
        "parts": parts,
        "plays": words_of(written, "plays"),
        "booking": words_of(written, "booking"),
        "tree": tree,
        "mistakes": mistakes,
    }


def mistake_words(mistake: Mistake) -> str:
    """A mistake in one sentence, without its place."""
    quoted = quoted_value(mistake["value"])
    return problem_words(mistake["path"], quoted, mistake["reason"], mistake["advice"])


def placed_words(mistake: Mistake) -> str:
    """A mistake in one sentence with its line, where it came from a text."""
    words = mistake_words(mistake)
    if mistake["line"] == 0:
        return words
    return fill(ON_LINE, {"line": str(mistake["line"]), "words": words})


def write_rider(tree: Node) -> str:
    """A tree as a rider file."""
    return rider_text(tree)


def nothing_read(tree: Node, mistakes: list[Mistake]) -> RiderRead:
    """What is left of a text that is no YAML."""
    return {
        "rider": {
            "act": "",
            "revision": "",
            "plays": "",
            "space": "",
            "configuration": "",
            "stays_m": None,
            "clock": None,
            "requirements": [],
            "not_read": [],
        },
        "parts": [],
        "plays": "",
        "booking": "",
        "tree": tree,
        "mistakes": in_order(mistakes),
    }


def in_order(mistakes: list[Mistake]) -> list[Mistake]:
    """Mistakes in the order of the text, each once."""
    found: list[Mistake] = []
    for mistake in sorted(mistakes, key=lambda each: (each["line"], each["column"], each["path"])):
        if mistake not in found:
            found.append(mistake)
    return found
