"""The words for what is not there, or known in part, explained."""

from collections.abc import Iterator

from builder.explaining.paragraph import Paragraph, spelt

ABSENCES = {
    "unknown": (
        "'unknown' stands for a value that nobody knows yet: a task for the house. It can stand"
        " under a key that says so. A show that asks for it gets a question, never a fit.",
        "A '?' for it, the word of language 1, is read where house.yml does not say 'language: 2'.",
        "clear_height: unknown",
    ),
    "none": (
        "'none' is an answer: there is none of it, or nothing that limits. It can stand under a"
        " key that says so. A show that asks for it is told that the house has none, or that"
        " nothing limits it.",
        "It is not 'unknown', which asks, and not a key left out, which says nothing.",
        "curfews: none",
    ),
    "about": (
        "'about' stands before a value that may be off by a tenth of it. It can stand where a key"
        " says 'known in part'. A show fits where it fits at both ends, is short where it is short"
        " at both, and is asked between.",
        "How far it may be off can be told: 40 ft +- 1 ft.",
        "depth: about 40 ft",
    ),
    "at least": (
        "'at least' stands before the least that a value is; nobody knows how much more. 'up to'"
        " stands before the most. They can stand where a key says 'known in part'.",
        "Between two ends it is written '12 to 15 m'.",
        "width: at least 15 m",
    ),
    "set": (
        "'set from 0.9 m to 1.4 m' and 'set to 4 ft or 5 ft' stand for a value that can be chosen."
        " They can stand where a key says 'known in part'.",
        "A value that nobody can choose, and nobody knows better, is '0.9 to 1.4 m'.",
        "height: set from 0.9 m to 1.4 m",
    ),
    "disputed": (
        "'disputed' stands for a value about which two sources do not agree: what each says, and"
        " who says it. It can stand where a key says 'known in part'. It counts as lying between"
        " the lowest and the highest.",
        "When somebody measures it, write the value alone.",
        "width: {disputed: [{says: 430 ft, by: drawing of 2009}, {says: 400 ft, by: web page}]}",
    ),
}


def absence_explained(word: str) -> Iterator[Paragraph]:
    """What a word for something absent means, where it is one."""
    if (asked := spelt(word)) in ABSENCES:
        first, second, example = ABSENCES[asked]
        yield Paragraph(f"{asked}: a word that stands where a value could.", indent=0)
        yield Paragraph(first)
        yield Paragraph(second)
        yield Paragraph(example, is_example=True)
