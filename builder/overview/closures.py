"""When the house, or some departments of it, are closed: told on the first page."""

from collections.abc import Iterator
from datetime import date

from builder.document import Block, Caution, Inline, Link, Words
from builder.pack import Item, Pack, Section
from builder.reading.dated import until
from builder.reading.values.sentences import ended, sentence_start

NOT_KNOWN = "a day not known yet"


def closures(pack: Pack) -> Iterator[Block]:
    """What is closed on the day of the revision or after it; nothing where nothing is."""
    on = date.fromisoformat(pack.revision.on)
    for section in pack.sections:
        ahead = [item for item in section.of_kind("closure") if not is_over(item, on)]
        if ahead:
            yield Caution(words(section, ahead), title="Closed", tone="caution")


def closed_alone(pack: Pack) -> list[Item]:
    """What of a space is closed on the day of the revision or after it, and not the whole house."""
    on = date.fromisoformat(pack.revision.on)
    ahead = [item for section in pack.sections for item in section.of_kind("closure")]
    return [item for item in ahead if item.text("spaces") and not is_over(item, on)]


def is_over(closure: Item, on: date) -> bool:
    """Whether a closure has surely ended before a day."""
    last = closure.text("until")
    return last != "" and until(last).last < on


def words(section: Section, closed: list[Item]) -> Words:
    """Each closure in a sentence, and the way to the page that tells them."""
    told: list[Inline] = [f"{sentence(item)} " for item in closed]
    return [*told, Link(f"{section.title}: closed", section.key, "closure")]


def sentence(closure: Item) -> str:
    """A closure in a sentence, with its reason."""
    what = closed_part(closure)
    first, last = (closure.text(key) or NOT_KNOWN for key in ("from", "until"))
    why = f" {ended(closure.text('why'))}" if closure.text("why") else ""
    return f"{sentence_start(what)}, from {first} until {last}.{why}"


def closed_part(closure: Item) -> str:
    """What is closed: the house, some of its spaces, or some departments there."""
    departments, spaces = closure.text("departments"), closure.text("spaces")
    if departments and spaces:
        return f"{departments} in {spaces}"
    return departments or spaces or "the whole house"
