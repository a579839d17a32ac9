"""The words for what is not there, explained: three different answers."""

from collections.abc import Iterator

from builder.explaining.paragraph import Paragraph, spelt

ABSENCES = {
    "unknown": (
        "'unknown' stands for a value that nobody knows yet: a task for the house. It can stand"
        " under a key that says so. A show that asks for it gets a question, never a fit.",
        "A '?' for it, the word before, is still read.",
        "clear_height: unknown",
    ),
    "none": (
        "'none' is an answer: there is none of it, or nothing that limits. It can stand under a"
        " key that says so. A show that asks for it is told that the house has none, or that"
        " nothing limits it.",
        "It is not 'unknown', which asks, and not a key left out, which says nothing.",
        "curfews: none",
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
