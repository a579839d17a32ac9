"""
Every key explained: a page for each file, made from the descriptions themselves, so that the pages
cannot lag behind them.

``make guide`` writes ``docs/keys/``; tests keep them equal. All text here is our own, so it is
written as Markdown directly.
"""

import posixpath
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from itertools import groupby

from builder.explaining.addresses import (
    EVERY_LINE,
    FOLDER,
    INDEX,
    address_of,
    anchor,
    explained_on,
    homes,
    is_shared,
    keys_on_page,
    name_of,
    page_of,
)
from builder.explaining.examples import Examples
from builder.explaining.places import Place, files, places
from builder.explaining.snippets import snippet_of
from builder.guide import riders_page
from builder.keys import document, value_of
from builder.reading.fields import mark_of
from builder.reading.possible import COUNTED, POSSIBLE, range_words
from builder.reading.written import NotInWords, Written

INTRODUCTION = """# Every key explained

These pages are made from the descriptions that read your files, so they say what the program does.
`housepack explain` tells the same in the terminal, and each key's address here.

A value is one of these:

* a quantity with its unit, such as `18.3 m` or `60 ft`. Write both, `24 ft (7.32 m)`, and they are
compared;
* a position, such as `4.2 m SL`, `3 ft 6 in US`, `1.4 m up`;
* a text, a count, a day such as `2026-03-02`, or one of the choices listed;
* known in part, where the key says so: `about 40 ft`, `40 ft +- 1 ft`, `12 to 15 m`,
`at least 15 m`, `up to 2 t`; `set from 0.9 m to 1.4 m` or `set to 4 ft or 5 ft` where it can be
chosen; `disputed` where sources do not agree;
* `unknown` where nobody knows yet, `none` where there is none, where the key says so. Leave a key
out to say nothing. A `?` for `unknown`, the word of language 1, is read in a venue that
does not say `language: 2`, and in riders.

**Needed** keys must be there. **Decisive** keys are those that shows stop on: where one is left
out, the pack says "not stated".
"""
POSSIBLE_WORDS = """## What is possible

What lies outside is refused with its line. Where a key's own range differs, the key says so.
"""
LINES = f"""## On every line {{#{EVERY_LINE}}}

Each line of stock or of the building may also say these; what is put away while no show uses it,
where it is kept too. Every file, and any line that differs from it, says when it was checked. A
value that is odd and right can be confirmed, so that no check asks again: on its line, or at the
left margin of the file where it stands on no line.
"""


def key_pages(examples: Examples) -> Mapping[str, str]:
    """Each page by the name of its file, the one that leads to the others first."""
    pages = {INDEX: index_page(examples)}
    for file, kind in files().items():
        pages[page_of(file)] = file_page(file, kind, examples)
        for group in groups_of(file):
            pages[page_of(file, (group,))] = group_page(file, group, examples)
    return {f"{name}.md": f"{text.strip()}\n" for name, text in pages.items()}


def contents() -> Mapping[str, Mapping[str, str]]:
    """The pages by the file that they explain, each by what it is called there."""
    return {
        file: {
            "at the left margin": page_of(file),
            **{group: page_of(file, (group,)) for group in groups_of(file)},
        }
        for file in files()
    }


def groups_of(file: str) -> Sequence[str]:
    """The keys at the left margin of a file that hold groups with a page of their own."""
    found = (place for place in homes().values() if place.file == file and place.under)
    return tuple(dict.fromkeys(place.under[0] for place in found if not is_shared(place)))


def guide_pages(examples: Examples) -> Mapping[str, str]:
    """All that ``make guide`` writes, by its path in ``docs/``."""
    keys = {f"{FOLDER}/{name}": text for name, text in key_pages(examples).items()}
    return {**keys, "pack/riders.md": riders_page()}


def index_page(examples: Examples) -> str:
    """How values are written, what is possible, the files, and what every line may say."""
    rows = [
        f"| [{title_of(file)}]({page_of(file)}.md) | {document(kind)} |"
        for file, kind in files().items()
    ]
    listed = "\n".join(["| file | what it says |", "|---|---|", *rows])
    parts = [INTRODUCTION, "## The files", listed, POSSIBLE_WORDS, possible_table(), LINES]
    return joined((*parts, *keys_told(list(explained_on(INDEX)), examples)))


def file_page(file: str, kind: type[Written], examples: Examples) -> str:
    """The page of what stands at a file's left margin."""
    found = list(explained_on(page_of(file)))
    return joined((f"# {title_of(file)}", document(kind), *keys_told(found, examples)))


def group_page(file: str, group: str, examples: Examples) -> str:
    """The page of one group of keys, then of the groups within it, outer first."""
    page = page_of(file, (group,))
    found = {
        under: list(places)
        for under, places in groupby(explained_on(page), lambda place: place.under)
    }
    parts = [f"# {title_of(file)}: {group}"]
    for under in outer_first(list(found)):
        parts += [*heading(file, under, found[under][0]), *keys_told(found[under], examples)]
    return joined(parts)


def title_of(file: str) -> str:
    """A file's name as a title."""
    return file if "." in file else file.capitalize()


def outer_first(groups: Sequence[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    """Groups of keys so that what a group holds follows it."""

    def of(under: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
        yield under
        for inner in groups:
            if inner and inner != under and inner[:-1] == under:
                yield from of(inner)

    known = set(groups)
    for under in groups:
        if not under or under[:-1] not in known:
            yield from of(under)


def heading(file: str, under: tuple[str, ...], place: Place) -> Iterator[str]:
    """What a group is, under a heading where it stands in another, and where it stands besides."""
    if len(under) > 1:
        yield f"## Keys of {'.'.join(under)} {{#{anchor(name_of(file), *under, 'keys')}}}"
    yield document(place.key.record)
    others = dict.fromkeys(
        ".".join(each.under)
        for each in places()
        if each.key.record is place.key.record and (each.file, each.under) != (file, under)
    )
    if others:
        yield f"The same keys stand in {', '.join(f'`{other}`' for other in others)}."


def keys_told(found: Sequence[Place], examples: Examples) -> Iterator[str]:
    """Each key under a heading of its own: what it says, what may be written, an example."""
    for place in found:
        key, address = place.key, address_of(place)
        need = " **Needed.**" if key.is_needed else " **Decisive.**" if key.is_decisive else ""
        yield f"### {'.'.join(keys_on_page(place))} {{#{address.anchor}}}"
        yield f"{key.meaning}{need}"
        yield f"Value: {value_of(key.field, partial(see_record, page=address.page))}."
        if silent := mark_of(key.field, NotInWords):
            yield f"No page tells it in words: {silent.why}."
        yield f"```yaml\n{snippet_of(place, examples)}\n```"


def see_record(record: type[Written], page: str) -> str:
    """A record as a value on a page: a link to the first of its own keys."""
    known = [place for (kind, _), place in homes().items() if kind is record]
    first = next((place for place in known if not is_shared(place)), known[0])
    address = address_of(first)
    other = "" if address.page == page else link(page, address.page)
    return f"keys, see [{'.'.join(first.under)}]({other}#{address.anchor})"


def link(page: str, other: str) -> str:
    """The way from one page to another."""
    return posixpath.relpath(f"{other}.md", posixpath.dirname(page) or ".")


def possible_table() -> str:
    """What is possible of each kind of quantity."""
    rows = [
        f"| {kind.kind} | {range_words(possible, kind)} |" for kind, possible in POSSIBLE.items()
    ]
    count = f"| a count | {range_words(COUNTED, None)} |"
    return "\n".join(["| value | possible |", "|---|---|", *rows, count])


def joined(parts: Sequence[str] | Iterator[str]) -> str:
    """Parts with a line between them."""
    return "\n\n".join(part.strip() for part in parts)
