"""
Figures where nobody knows whether something works: with all of it in service, and with all of it
out.

A figure that is the same both ways is told. One that differs lies between the two. Where several
things are in doubt and a figure does not move one way with each of them, nothing is told of it.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from builder.both_ends.inputs import Descriptions, Path, put
from builder.both_ends.joining import Sections, not_told, told_between, value_of_ends
from builder.both_ends.one_way import BETWEEN_PHASES, PATTERNS
from builder.pack import Figure, Item, Section
from builder.reading.references import name_of
from builder.reading.standing_on import OUT, UNKNOWN
from builder.reading.written import Line, Written

IN_SERVICE = "in service"
SEVERAL_TURN = PATTERNS | BETWEEN_PHASES
"""Figures that several things together can turn to either side."""
HIDDEN = "something for the house only"
WHETHER = "whether {names} is in service"
BOTH_WAYS = "with this in service and out of service, {names}: {text}"
MAPS = "The maps are drawn as if this were in service, which nobody knows: {names}."


def in_doubt(descriptions: Descriptions) -> list[tuple[str, Path, Line]]:
    """Every line of which nobody knows whether it works: its file, the way to it, and itself."""
    return [
        (file, path, line)
        for file, description in descriptions.items()
        for path, line in lines_within(description, ())
        if line.condition == UNKNOWN
    ]


def lines_within(value: object, path: Path) -> Iterator[tuple[Path, Line]]:
    """Every line within a value, with the way to it."""
    if isinstance(value, Line):
        yield path, value
    if isinstance(value, Written):
        for name in type(value).model_fields:
            yield from lines_within(getattr(value, name), (*path, name))
    elif isinstance(value, tuple):
        for index, part in enumerate(value):
            yield from lines_within(part, (*path, index))


def in_either_state(
    base: Sections, descriptions: Descriptions, compute: Callable[[Descriptions], Sections]
) -> Sections:
    """
    The sections with figures that hold whether what is in doubt works or not; ``base`` where
    nothing is. ``compute`` gives the sections of other descriptions.
    """
    doubted = in_doubt(descriptions)
    if not doubted:
        return base
    names = ", ".join(dict.fromkeys(told_name(line) for _, _, line in doubted))
    working, out = (compute(with_all(descriptions, doubted, state)) for state in (IN_SERVICE, OUT))
    return {
        key: section_either_way(section, (working[key], out[key]), names, several=len(doubted) > 1)
        for key, section in base.items()
    }


def with_all(
    descriptions: Descriptions, doubted: Sequence[tuple[str, Path, Line]], state: str
) -> Descriptions:
    """The descriptions with everything in doubt in one state."""
    found = dict(descriptions)
    for file, path, _ in doubted:
        found[file] = put(found[file], (*path, "condition"), state)
    return found


def told_name(line: Line) -> str:
    """The name of a line that a reader may be told."""
    return HIDDEN if line.house_only else name_of(line) or "a line without a name"


def section_either_way(
    base: Section, ends: tuple[Section, Section], names: str, *, several: bool
) -> Section:
    """One section, with its maps as if all were in service."""
    by_key = [{item.key: item for item in end.items} for end in ends]
    working, out = ends
    known = {item.key for item in base.items}
    # What only works out where a thing is in service is not there in the base.
    every = (*base.items, *(item for item in working.items if item.key not in known))
    items = tuple(
        item_either_way(item, [items.get(item.key) for items in by_key], names, several=several)
        for item in every
    )
    if working.fields == out.fields:
        return replace(base, items=items, fields=working.fields)
    cautions = (*base.cautions, MAPS.format(names=names))
    return replace(base, items=items, fields=working.fields, cautions=cautions)


def item_either_way(base: Item, ends: Sequence[Item | None], names: str, *, several: bool) -> Item:
    """One item with each figure that it has in either state."""
    figures = [{} if end is None else {each.key: each for each in end.figures} for end in ends]
    keys = dict.fromkeys(key for each in figures for key in each)
    told = tuple(
        figure_either_way([each.get(key) for each in figures], names, several=several)
        for key in keys
    )
    return replace(base, figures=told)


def figure_either_way(ends: Sequence[Figure | None], names: str, *, several: bool) -> Figure:
    """A figure as it is in both states, between them, or without a value."""
    found = [end for end in ends if end is not None]
    if len(found) == len(ends) and found[0].value == found[1].value:
        return found[0]
    turns = several and not SEVERAL_TURN.isdisjoint(found[0].key.split("."))
    value = None if turns or len(found) < len(ends) else value_of_ends(found)
    if value is None:
        return not_told(found[0], WHETHER.format(names=names))
    return told_between(found, value, BOTH_WAYS.format(names=names, text=value.text))
