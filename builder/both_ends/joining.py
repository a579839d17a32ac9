"""
A section whose figures lie between what they are at the ends of values that are known in part.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from builder.both_ends.inputs import Descriptions, Group, corners, groups, inexact, keys_of, middle
from builder.both_ends.one_way import ONE_WAY
from builder.pack import (
    Figure,
    Item,
    Section,
    TurnedFigure,
    Value,
    as_published,
    one_or_both,
    tells_the_most,
)

Sections = Mapping[str, Section]
Compute = Callable[[Descriptions], Sections]
OWN_ENDS = frozenset({"rigging"})
"""Rooms that work with ends by themselves, and count what lifts a support as nothing."""
FOR_THE_MIDDLE = "The maps are for the middle of what is known: {inputs}."
ENDS = "at the ends of {inputs}: {text}"


def at_both_ends(base: Sections, descriptions: Descriptions, compute: Compute) -> Sections:
    """
    The sections with figures told between two ends where values have two and ``base``, which goes
    without them, tells no two. ``compute`` gives the sections of other descriptions.
    """
    found = base
    for group in groups(tuple(inexact(descriptions))):
        ends = [compute(corner) for corner in corners(descriptions, group)]
        found = {
            key: section_between(section, [each[key] for each in ends], group)
            for key, section in found.items()
        }
        if lack_maps(found, ends):
            found = with_maps(found, compute(middle(descriptions, group)), group)
    return found


def lack_maps(sections: Sections, ends: Sequence[Sections]) -> bool:
    """Whether any section has no map where it has some at every end."""
    return any(
        not section.fields and all(end[key].fields for end in ends)
        for key, section in sections.items()
    )


def with_maps(sections: Sections, middle_ones: Sections, group: Group) -> Sections:
    """The sections with the maps of the middle where they have none, and with words that say so."""
    words = FOR_THE_MIDDLE.format(inputs=inputs_in_words(group))
    return {
        key: section
        if section.fields or not middle_ones[key].fields
        else replace(section, fields=middle_ones[key].fields, cautions=(*section.cautions, words))
        for key, section in sections.items()
    }


def section_between(base: Section, ends: Sequence[Section], group: Group) -> Section:
    """One section; its own where the ends do not reach it."""
    if all(end is base for end in ends):
        return base
    by_key = [{item.key: item for item in end.items} for end in ends]
    items = tuple(
        item_between(item, [items[item.key] for items in by_key], base.key, group)
        if all(item.key in items for items in by_key)
        else item
        for item in base.items
    )
    return base if items == base.items else replace(base, items=items)


def item_between(base: Item, ends: Sequence[Item], section: str, group: Group) -> Item:
    """
    One item; figures that ``base`` lacks stand where they stand at the ends, and those that no end
    has, which tell of what is not known, stand nowhere.
    """
    if all(end.figures == base.figures for end in ends):
        return base
    own = {figure.key: figure for figure in base.figures}
    by_key = [{figure.key: figure for figure in end.figures} for end in ends]
    order = [key for key in by_key[0] if all(key in figures for figures in by_key)]
    between = {
        key: figure_between(own.get(key), [figures[key] for figures in by_key], section, group)
        for key in order
    }
    told = {
        key: figure or own.get(key) or left_open([figures[key] for figures in by_key], group)
        for key, figure in between.items()
    }
    stays = [key for key in own if any(key in figures for figures in by_key)]
    keys = order if set(stays) <= set(order) else [*stays, *(k for k in order if k not in stays)]
    figures = tuple(told.get(key) or own[key] for key in keys)
    return replace(base, figures=figures)


def exact_words(group: Group) -> str:
    """What a figure lacks that would be there if its inputs were exact."""
    return f"one exact value of {inputs_in_words(group)}"


def left_open(ends: Sequence[Figure], group: Group) -> Figure:
    """What a figure lacks at an end, where it lacks something there; else one exact value."""
    lacks = dict.fromkeys(name for end in ends for name in end.missing)
    return not_told(ends[0], *(lacks or [exact_words(moving(ends, group))]))


def not_told(figure: Figure, *lacks: str) -> Figure:
    """A figure that would be there if more were known, and what it lacks."""
    working = replace(figure.working, inputs=(), steps=())
    return replace(figure, value=None, working=working, missing=lacks)


def is_one_way(key: str, group: Group) -> bool:
    """Whether a figure moves one way with each of the values that are put at their ends."""
    parts = key.split(".")
    turned = (ONE_WAY[value.department][keys_of(value.path)] for value in group)
    return all(names.isdisjoint(parts) for names in turned)


def figure_between(
    own: Figure | None, ends: Sequence[Figure], section: str, group: Group
) -> Figure | None:
    """
    A figure between what it is at the ends, with the working of the end where it is most; None
    where it is told as well already, or not told at an end.
    """
    is_even = is_one_way(ends[0].key, group)
    value = value_of_ends(ends) if is_even else value_of_turning(ends)
    if value is None:
        return None
    if own is not None and is_as_well(own.value, value, section):
        return ends[-1] if is_said_alike(own, ends) else None
    inputs = inputs_in_words(moving(ends, group))
    return told_between(ends, value, ENDS.format(inputs=inputs, text=value.text))


def moving(ends: Sequence[Figure], group: Group) -> Group:
    """
    Those values of a group that move a figure: between two corners that differ in it alone, the
    figure differs. All of them where none does. ``ends`` are in the order of ``corners``.
    """
    found = tuple(
        value
        for index, value in enumerate(group)
        for step in [1 << (len(group) - 1 - index)]
        if any(
            end.value != ends[corner | step].value
            for corner, end in enumerate(ends)
            if not corner & step
        )
    )
    return found or group


def is_said_alike(own: Figure, ends: Sequence[Figure]) -> bool:
    """
    Whether a figure is in the same words at every end, and differs from what it is without the
    values in its note alone: that a value is left out is then no longer true of it.
    """
    if own.value is None or own.value.number is not None or own.value.far_end is not None:
        return False
    notes = {end.note for end in ends}
    return len(notes) == 1 and own.note not in notes and all(e.value == own.value for e in ends)


def value_of_ends(ends: Sequence[Figure]) -> Value | None:
    """The value of a figure from what it is at the ends; None where no value is certain."""
    values = [end.value for end in ends if end.value is not None]
    if len(values) < len(ends):
        return None
    return values[0] if all(value == values[0] for value in values) else value_between(values)


def told_between(ends: Sequence[Figure], value: Value, step: str) -> Figure:
    """A figure between its ends, with the working of the end where it is most, and a last step."""
    if value == ends[0].value:
        return ends[0]
    most = max(ends, key=lambda end: -math.inf if end.value is None else end.value.far_end or 0.0)
    working = replace(most.working, steps=(*most.working.steps, step))
    return replace(most, value=value, working=working)


def value_of_turning(ends: Sequence[Figure]) -> Value | None:
    """
    The value of a figure that the values can turn, between the ends that its own room knows from
    what it is made of; None where its room knows none.
    """
    turning = [end.turning for end in ends if isinstance(end, TurnedFigure)]
    return turning[0].between(turning) if len(turning) == len(ends) else None


def published_figures(section: Section) -> Section:
    """A section whose figures no longer tell what they are made of."""
    items = tuple(
        replace(item, figures=tuple(as_published(figure) for figure in item.figures))
        if any(isinstance(figure, TurnedFigure) for figure in item.figures)
        else item
        for item in section.items
    )
    return section if items == section.items else replace(section, items=items)


def value_between(values: Sequence[Value]) -> Value | None:
    """
    A value from the least to the most of several; None where they are words, or ends of which no
    one tells the whole.
    """
    lowest, highest = (
        choose(values, key=lambda value: value.far_end or 0.0) for choose in (min, max)
    )
    if any(value.far_end is None for value in values):
        return None
    if all(value.number is not None for value in values):
        return one_or_both(lowest, highest)
    leasts, mosts = zip(*(value.ends for value in values), strict=True)
    if all(most is None for most in mosts):
        return lowest
    least = None if None in leasts else min(leasts)
    if None in mosts or not (least is None or tells_the_most(highest)):
        return None
    return replace(highest, least=least)


def is_as_well(own: Value | None, other: Value, section: str) -> bool:
    """
    Whether a value tells as much as another: it is exact or in words, or no end of it is further
    away. A room that works with ends by itself is left as it is where it tells both.
    """
    if own is None:
        return False
    if own.number is not None or own.far_end is None:
        return True
    if section in OWN_ENDS and None not in own.ends:
        return True
    (least, most), (low, high) = own.ends, other.ends
    is_low = low is None or (least is not None and least >= low)
    return is_low and (high is None or (most is not None and most <= high))


def inputs_in_words(group: Group) -> str:
    """The values of a group, each with the keys it stands under."""
    told = (
        f"{keys_of(value.path).replace('_', ' ').replace('.', ' ')}, {value.known.value}"
        for value in group
    )
    return " and ".join(dict.fromkeys(told))
