"""
The first answers on rigging, for its own page and the home page.

Reads the pack; computes nothing.
"""

from collections.abc import Iterator, Sequence

from builder.document import Block, Entry, Facts, Heading, Tag
from builder.layout import (
    anchor_of,
    facts_block,
    qualifiers,
    shown_fact,
    shown_figure,
    state,
    under_name,
)
from builder.pack import Item, Pack, Section, Value, one_or_both

LETTER_KEYS = ("dated", "from_whom", "valid_for")
BRIDLE_KEYS = ("allowed", "beams", "widest_angle")


def first(section: Section) -> Iterator[Block]:
    """What a rigger on the dock asks first."""
    yield Heading(2, "In short", "in-short")
    yield Facts([*in_short(section)])
    if (house := section.item("house")) and house.facts:
        yield facts_block(house)


def in_short(section: Section) -> Iterator[Entry]:
    """The answers in the order they are asked."""
    roof = section.items[0]
    for name in ("limit", "carried", "left", "full-at-once"):
        if found := roof.figure(name):
            label = {
                "limit": "Whole roof",
                "carried": "In use",
                "left": "Left on the roof",
                "full-at-once": "Points full at once",
            }.get(name, found.label)
            small = f"stated as {roof.text('whole_roof')}" if name == "limit" else found.note
            yield Entry(label, shown_figure(found), small=small, anchor=anchor_of(found.key))
    if unweighed := roof.fact("unweighed"):
        yield Entry(unweighed.label, shown_fact(unweighed), small="what is left is at most so much")
    yield from qualifiers(roof)
    for item in section.of_kind("zone") or (roof,):
        yield low_steel(item)
    for name, label in (
        ("each_point", "Each point"),
        ("each_beam", "Each beam"),
        ("spacing_at_least", "Spacing at least"),
        ("directions", "Directions"),
        ("widest_lean", "Widest lean from straight down"),
        ("level_within", "Hoists of one truss level within"),
    ):
        if fact := roof.fact(name):
            yield Entry(
                label,
                shown_fact(fact),
                small=(
                    "exceptions below"
                    if section.of_kind("exception") and name in ("each_point", "each_beam")
                    else ""
                ),
            )
    yield bridle_answer(section)
    if letter := section.item("letter"):
        yield Entry(
            "Engineer's letter",
            f"{letter.text('dated')}, {letter.text('from_whom')}",
            small=[letter.text("valid_for"), *state(letter), *under_name(letter, LETTER_KEYS)],
        )


def low_steel(item: Item) -> Entry:
    """The low steel over a zone, or over all points, from its lowest to its highest."""
    low, high = item.figure("lowest-steel"), item.figure("highest-steel")
    label = "Low steel" if item.kind == "roof" else f"Low steel, {item.name}"
    if low is None or high is None or low.value == high.value:
        return Entry(label, shown_figure(low) if low else [Tag("not stated")])
    is_exact = all(each.value and each.value.number is not None for each in (low, high))
    between = " to " if is_exact else ", highest "
    note = ", ".join(dict.fromkeys((low.note, high.note)))
    return Entry(label, [*shown_figure(low), between, *shown_figure(high)], small=note)


def count_words(value: Value) -> str:
    """A count in words, from its ends."""
    least, most = (None if end is None else number(end) for end in value.ends)
    told = one_or_both(least, most)
    return told.text if told else value.text


def number(count: float) -> Value:
    """A whole number as a value."""
    return Value(f"{count:,.0f}", number=count)


def bridle_answer(section: Section) -> Entry:
    """Whether bridles are allowed, and where."""
    rule, house = section.item("bridles_allowed"), section.item("house")
    if rule is None:
        absence = house.fact("bridles_allowed") if house else None
        return Entry("Bridles", shown_fact(absence) if absence else [Tag("not stated")])
    beams, widest = rule.text("beams"), rule.text("widest_angle")
    said = rule.fact("allowed")
    if said is not None and said.value is None:
        return Entry("Bridles", shown_fact(said))
    words = f"{rule.text('allowed')}: {beams}" if beams else rule.text("allowed")
    angle = [f"legs at most {widest} apart"] if widest else []
    return Entry("Bridles", words, small=[*angle, *state(rule), *under_name(rule, BRIDLE_KEYS)])


def headline(section: Section, pack: Pack) -> Sequence[Entry]:
    """Low steel, what is left of the roof, and points."""
    del pack
    return tuple(answers(section))


def answers(section: Section) -> Iterator[Entry]:
    """The home page's answers on rigging."""
    roof = section.items[0]
    over_stage = next(iter(section.of_kind("zone")), roof)
    if over_stage.figure("lowest-steel"):
        steel = low_steel(over_stage)
        yield Entry(steel.label, steel.words, small=steel.small, anchor="rigging#in-short")
    if limit := roof.figure("limit"):
        left = roof.figure("left")
        said = f"{left.value.text} left. " if left and left.value else ""
        yield Entry(
            "Roof",
            shown_figure(limit),
            small=f"{said}Planning figures. A competent rigger decides.",
            anchor="rigging#limits",
        )
    points = section.of_kind("point")
    if points:
        full = roof.figure("full-at-once")
        small = (
            f"{count_words(full.value)} of them can be full at once" if full and full.value else ""
        )
        yield Entry("Points", f"{len(points)}", small=small, anchor="rigging#points")
