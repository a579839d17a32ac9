"""What an item of a section is by all that bears it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from builder.bearers.relations import RELATIONS, Relation
from builder.pack import MEMORY, Item, Section, Verified, sureness
from builder.reading.references import spelling
from builder.reading.standing_on import (
    CLOSED,
    CONDITIONS,
    OUT,
    UNKNOWN,
    hard_words,
    hardest,
    state_words,
)

HIDDEN = "Something for the house only"
"""What bears a thing where its own name is not told."""


@dataclass(frozen=True, slots=True)
class Borne:
    """
    An item by what bears it: its state and terms where that makes them harder, what to know in
    sentences, and what the house has to be asked, as a clause. ``hidden`` are the sentences of
    bearers that no page shows.
    """

    condition: str
    terms: str
    told: tuple[str, ...] = ()
    hidden: tuple[str, ...] = ()
    asks: str = ""


@dataclass(frozen=True, slots=True)
class View:
    """
    A section with its items by kind and name, and those that name what they bear by their kind,
    fact and each such name. ``checked`` for the check of a show, which follows some outages by
    itself and names the item in each sentence.
    """

    section: Section
    names: Mapping[tuple[str, str], Item]
    naming: Mapping[tuple[str, str, str], Sequence[Item]]
    checked: bool = False

    def words(self, relation: str, item: Item) -> str:
        """The words for a relation after a bearer's name."""
        return relation.replace("{it}", item.name if self.checked else "it")


@dataclass(frozen=True, slots=True)
class Link:
    """One bearer on the way down from an item, by the relation that it was found by."""

    bearer: Item
    relation: Relation


def view_of(section: Section, *, checked: bool = False) -> View:
    """A section as one looks for bearers in it."""
    names = {(item.kind, spelling(item.name)): item for item in section.items}
    return View(section, names, naming_in(section), checked)


def on_remembered(section: Section) -> dict[str, Verified]:
    """
    The items of a section that are borne by something which was only remembered, by their key, with
    the check of that: they are there no surer than it is.
    """
    view, found = view_of(section), {}
    for item in section.items:
        checks = [line_check(link.bearer, section) for link in links_of(item, view, (item.key,))]
        remembered = [check for check in checks if check and check.how == MEMORY]
        if remembered:
            found[item.key] = min(remembered, key=sureness)
    return found


def line_check(item: Item, section: Section) -> Verified | None:
    """How the line of an item was checked: its own check, or that of its file."""
    return next((fact.verified for fact in item.facts if fact.verified), section.verified)


def bearing(section: Section, *, checked: bool = False) -> dict[str, Borne]:
    """The items of a section that are borne by something not fully there, by their key."""
    view, found = view_of(section, checked=checked), {}
    for item in section.items:
        if (section.key, item.kind) in RELATIONS:
            borne = borne_of(item, view)
            if borne != Borne(item.condition, item.terms):
                found[item.key] = borne
    return found


def naming_in(section: Section) -> dict[tuple[str, str, str], list[Item]]:
    """What names the things that it bears, by its kind, its fact and each of those names."""
    wanted = {
        (kind, relation.fact)
        for (key, _), relations in RELATIONS.items()
        for relation in relations
        for kind in relation.kinds
        if key == section.key and relation.named_by_it
    }
    found: dict[tuple[str, str, str], list[Item]] = {}
    for bearer in section.items:
        for kind, fact in sorted(wanted):
            if bearer.kind == kind:
                for name in dict.fromkeys(map(spelling, named_in(bearer, fact))):
                    found.setdefault((kind, fact, name), []).append(bearer)
    return found


def borne_of(item: Item, view: View) -> Borne:
    """An item by all that bears it, nearest first."""
    relations = RELATIONS.get((view.section.key, item.kind), ())
    if any(relation.some_of for relation in relations):
        return spread(item, relations[0], view)
    found, spoken = Borne(item.condition, item.terms), item.terms
    for link in links_of(item, view, (item.key,)):
        found = beside(found, item, link, view, is_spoken=spoken != "")
        spoken = spoken or link.bearer.terms
    return found


def links_of(item: Item, view: View, seen: tuple[str, ...]) -> Iterator[Link]:
    """All that bears an item, what bears that included; each once."""
    for relation in RELATIONS.get((view.section.key, item.kind), ()):
        for bearer in bearers_of(item, relation, view):
            if bearer.key not in seen:
                seen = (*seen, bearer.key)
                yield Link(bearer, relation)
                for link in links_of(bearer, view, seen):
                    seen = (*seen, link.bearer.key)
                    traced = relation.traced and link.relation.traced
                    yield Link(link.bearer, replace(link.relation, traced=traced))


def bearers_of(item: Item, relation: Relation, view: View) -> list[Item]:
    """What bears an item by one relation."""
    if relation.named_by_it:
        own = spelling(item.name)
        return [
            bearer
            for kind in relation.kinds
            for bearer in view.naming.get((kind, relation.fact, own), ())
        ]
    wanted = [
        (kind, spelling(name)) for name in named_in(item, relation.fact) for kind in relation.kinds
    ]
    return [view.names[name] for name in wanted if name in view.names]


def named_in(item: Item, fact: str) -> Sequence[str]:
    """The names that a fact of an item tells: each of a list, or the one."""
    found = item.fact(fact)
    if found is None or found.value is None:
        return ()
    return found.value.parts or (found.value.text,)


def beside(found: Borne, item: Item, link: Link, view: View, *, is_spoken: bool) -> Borne:
    """What is found of an item, with one more bearer; whether what is nearer tells its terms."""
    bearer, relation = link.bearer, link.relation
    is_followed = bearer.condition == OUT and relation.traced and view.checked
    told = view.words(relation.words, item)
    if bearer.condition == OUT and not is_followed:
        found = replace(found, condition=OUT)
    elif bearer.condition == UNKNOWN and not relation.traced:
        found = replace(found, condition=hardest([found.condition, UNKNOWN], CONDITIONS))
    if bearer.terms == CLOSED and not relation.may_speak:
        found = replace(found, terms=CLOSED)
    elif bearer.terms == CLOSED and not is_spoken and found.asks == "":
        found = replace(found, asks=f"{name_of(bearer)}, {told}, is {CLOSED}")
    words = hard_words("" if is_followed else bearer.condition, bearer.terms)
    return with_words(found, bearer, told, words, view) if words and relation.told else found


def with_words(found: Borne, bearer: Item, told: str, words: Sequence[str], view: View) -> Borne:
    """
    What is found of an item, with a sentence on a bearer. Why is told by the check; on a page the
    bearer's own line tells it.
    """
    why = bearer.note if view.checked and state_words(bearer.condition) in words else ""
    sentence = f"{name_of(bearer)}, {told}: {', '.join(words)}."
    if why:
        sentence = f"{sentence} {why}"
    if bearer.house_only:
        return replace(found, hidden=(*found.hidden, sentence))
    return replace(found, told=(*found.told, sentence))


def name_of(bearer: Item) -> str:
    """A bearer's name, or that it is not told."""
    return HIDDEN if bearer.house_only else bearer.name


def spread(item: Item, relation: Relation, view: View) -> Borne:
    """
    A line whose things are on several bearers: as hard as all of them are.

    Where only some are out of service or closed, nobody knows how many of a number that is written
    are on those, so it is asked. What is counted by the room on beams leaves those out already
    that are out of service.
    """
    bearers = bearers_of(item, relation, view)
    each = [borne_of(bearer, view) for bearer in bearers]
    told, found = view.words(relation.words, item), Borne(item.condition, item.terms)
    for bearer, borne in zip(bearers, each, strict=True):
        if words := hard_words(borne.condition, borne.terms):
            found = with_words(found, bearer, told, words, view)
    if any(borne.condition == UNKNOWN for borne in each):
        found = replace(found, condition=hardest([found.condition, UNKNOWN], CONDITIONS))
    gone = [borne for borne in each if borne.condition == OUT or borne.terms == CLOSED]
    if gone and len(gone) == len(each):
        all_out = all(borne.condition == OUT for borne in each)
        return replace(found, condition=OUT) if all_out else replace(found, terms=CLOSED)
    count = item.fact("count")
    is_counted = count is not None and count.value is not None
    for bearer, borne in zip(bearers, each, strict=True):
        if borne.terms == CLOSED or (borne.condition == OUT and is_counted):
            state = OUT if borne.condition == OUT else CLOSED
            return replace(found, asks=f"{name_of(bearer)}, {told}, is {state}")
    return found
