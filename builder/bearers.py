"""
What a thing of a pack stands on, hangs from, is fed from or passes, and what that makes of its
state and its terms: it is no better than what bears it.

The facts themselves stay as their lines tell them. The check of a show and the pages read this
beside them.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from builder.pack import Item, Pack, Section
from builder.reading.references import spelling
from builder.reading.standing_on import CLOSED, OUT, hard_words

HIDDEN = "Something for the house only"
"""What bears a thing where its own name is not told."""


@dataclass(frozen=True, slots=True)
class Relation:
    """
    How one kind of item is borne: the kinds of its bearers, the fact that names them, and the words
    for it after a bearer's name, with ``{it}`` for the item.

    ``named_by_it`` where the bearer's fact names what it bears. ``some_of`` where only some of a
    line's things are on each bearer. ``may_speak`` where terms of its own count before those of
    what bears it: a visitor meets the outlet, never the board behind it. ``traced`` where the check
    follows outages along it by itself. ``told`` is false where the line tells of the bearer
    already.
    """

    kinds: tuple[str, ...]
    fact: str
    words: str
    named_by_it: bool = False
    some_of: bool = False
    may_speak: bool = False
    traced: bool = False
    told: bool = True


FEEDERS = ("supply", "generator", "service", "board")
FED = Relation(FEEDERS, "fed_from", "which feeds {it}", may_speak=True, traced=True)
RELATIONS: Mapping[tuple[str, str], tuple[Relation, ...]] = {
    ("rigging", "beam"): (Relation(("zone",), "beams", "which {it} is in", named_by_it=True),),
    ("rigging", "point"): (
        Relation(("beam",), "beam", "which {it} is on"),
        Relation(("zone",), "points", "which {it} is in", named_by_it=True),
    ),
    ("rigging", "point-group"): (
        Relation(("beam",), "beams", "which points of {it} are on", some_of=True),
    ),
    ("flying", "lineset"): (Relation(("lineset",), "moves_with", "which moves with {it}"),),
    ("access", "dock"): (Relation(("approach",), "approach", "by which trucks come to {it}"),),
    ("access", "route"): (Relation(("dock",), "from_dock", "where {it} begins", told=False),),
    **{("power", kind): (FED,) for kind in ("service", "board", "outlet")},
    ("power", "shore"): (replace(FED, traced=False),),
}
"""How items are borne, by section and kind."""


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
    A section with its items by kind and name. ``checked`` for the check of a show, which follows
    some outages by itself and names the item in each sentence.
    """

    section: Section
    names: Mapping[tuple[str, str], Item]
    checked: bool = False

    def words(self, relation: str, item: Item) -> str:
        """The words for a relation after a bearer's name."""
        return relation.replace("{it}", item.name if self.checked else "it")


@dataclass(frozen=True, slots=True)
class Link:
    """One bearer on the way down from an item, by the relation that it was found by."""

    bearer: Item
    relation: Relation


def bearing(section: Section, *, checked: bool = False) -> dict[str, Borne]:
    """The items of a section that are borne by something not fully there, by their key."""
    names = {(item.kind, spelling(item.name)): item for item in section.items}
    view, found = View(section, names, checked), {}
    for item in section.items:
        if (section.key, item.kind) in RELATIONS:
            borne = borne_of(item, view)
            if borne != Borne(item.condition, item.terms):
                found[item.key] = borne
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
        return [
            bearer
            for kind in relation.kinds
            for bearer in view.section.of_kind(kind)
            if spelling(item.name) in map(spelling, named_in(bearer, relation.fact))
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
    why = bearer.note if view.checked and bearer.condition in words else ""
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


def as_pages_tell(pack: Pack) -> Pack:
    """
    A pack whose items say what bears them where that is limited, closed or out of service: beside
    their note, and as their state where they cannot work without it.
    """
    return replace(pack, sections=tuple(section_as_told(section) for section in pack.sections))


def section_as_told(section: Section) -> Section:
    """A section whose items say what bears them."""
    found = bearing(section)
    items = [
        as_told(item, found[item.key]) if item.key in found else item for item in section.items
    ]
    return replace(section, items=tuple(items))


def as_told(item: Item, borne: Borne) -> Item:
    """An item with what a page says of its bearers."""
    note = " ".join(part for part in (item.note, *borne.told) if part)
    return replace(item, condition=borne.condition, note=note)
