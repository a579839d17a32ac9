"""Files and keys: where a key stands, what it means, what may be written, an example."""

from collections.abc import Iterator

from builder.explaining.addresses import address_of
from builder.explaining.examples import Examples, example_of
from builder.explaining.paragraph import Paragraph, plain, spelt
from builder.explaining.places import Place, by_meaning, files, places_meant
from builder.keys import document, keys_of, value_of, within

IN_FULL = 4
"""More meanings than these of one key are told in a line each."""
MOST_PLACES = 4


def file_explained(word: str) -> Iterator[Paragraph]:
    """A file of a venue, or a rider: what it is, and its keys."""
    names = {spelt(name): name for name in files()}
    short = {spelt(name.removesuffix(".yml").removeprefix("a ")): name for name in names.values()}
    name = {**short, **names}.get(spelt(word))
    if name is not None:
        kind = files()[name]
        yield Paragraph(name, indent=0)
        yield Paragraph(document(kind))
        yield Paragraph(f"Keys: {', '.join(key.name for key in keys_of(kind))}.")


def keys_explained(word: str, examples: Examples) -> Iterator[Paragraph]:
    """A key in each of its meanings; where these are many, in a line each."""
    meanings = list(by_meaning(places_meant(word)))
    if len(meanings) <= IN_FULL:
        for alike in meanings:
            yield from key_in_full(alike, examples)
        return
    yield Paragraph(f"{meanings[0][0].key.name}: a key with {len(meanings)} meanings", indent=0)
    for alike in meanings:
        yield Paragraph(f"{where_words(alike, most=1)}: {plain(alike[0].key.meaning)}")
    last = meanings[-1][0].dotted
    yield Paragraph(f"One of them in full: housepack explain {last}", indent=0)


def key_in_full(alike: list[Place], examples: Examples) -> Iterator[Paragraph]:
    """A key: where it stands, what it means, what may be written, an example."""
    key = alike[0].key
    yield Paragraph(f"{key.name}: a key of {where_words(alike, most=MOST_PLACES)}", indent=0)
    yield Paragraph(plain(key.meaning))
    yield Paragraph(f"Value: {plain(value_of(key.field))}.")
    if key.is_needed:
        yield Paragraph("It must be there.")
    if key.is_decisive:
        yield Paragraph('Shows stop on it: where it is left out, the pack says "not stated".')
    for record in dict.fromkeys(within(key.field.annotation)):
        yield Paragraph(f"Keys: {', '.join(inner.name for inner in keys_of(record))}.")
    yield Paragraph(f"In the documentation: {address_of(alike[0])}.")
    if example := example_of(alike, examples):
        yield Paragraph("For example:")
        yield Paragraph(example, indent=4, is_example=True)


def where_words(alike: list[Place], *, most: int) -> str:
    """Where a key stands: some of the places, and how many more there are."""
    words = list(dict.fromkeys(place.words for place in alike))
    more = len(words) - most
    others = f"; and {more} more place{'' if more == 1 else 's'}" if more > 0 else ""
    return "; ".join(words[:most]) + others
