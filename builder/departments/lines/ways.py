"""
Ways of lines, computed: how many work, how many a visitor finds free, and both from place to place
by kind.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from typing import get_args

from builder.departments.lines.cables import BOTH_ENDS, Kind, PermanentLine
from builder.departments.lines.description import Lines
from builder.exchange import Offers
from builder.formulas.polygons import Point, contains, distance_to_side_m, sides_of
from builder.formulas.tie_lines import ways_in_all, working_ways
from builder.pack import Fact, Figure, Input, Item, Standing, Value, not_less
from builder.reading.absent import Absent, is_unknown, listed, why_absent
from builder.reading.references import spelling
from builder.reading.standing_on import state_words
from builder.reading.values.sentences import sentence_start
from builder.working import figure, missing, worked

KINDS: tuple[str, ...] = get_args(Kind)
BESIDE_M = 0.5
LEFT_OUT = "What a show before you has left plugged in."


@dataclass(frozen=True, slots=True)
class Pair:
    """Two places and the lines between them."""

    places: tuple[str, str]
    lines: tuple[PermanentLine, ...]

    def of_kind(self, kind: str) -> tuple[PermanentLine, ...]:
        """The lines of one kind, and those of which nobody knows the kind."""
        return perhaps_of_kind(self.lines, kind)


def has_both_ends(line: PermanentLine) -> bool:
    """Whether both ends of a line are known."""
    return len(line.places) == BOTH_ENDS


def perhaps_of_kind(lines: Iterable[PermanentLine], kind: str) -> tuple[PermanentLine, ...]:
    """The lines of one kind, and those of which nobody knows the kind."""
    return tuple(line for line in lines if line.kind == kind or isinstance(line.kind, Absent))


def pairs_of(lines: Sequence[PermanentLine]) -> tuple[Pair, ...]:
    """
    Places that lines join, in the author's order; a line back counts with those out. A line of
    which an end is not known may join any two that are joined, as far as its other end is of them.
    """
    found: dict[frozenset[str], list[PermanentLine]] = {}
    for line in lines:
        if has_both_ends(line):
            found.setdefault(frozenset(line.places), []).append(line)
    unsure = [line for line in lines if not has_both_ends(line)]
    return tuple(
        Pair(
            (group[0].places[0], group[0].places[1]),
            (*group, *(line for line in unsure if places.issuperset(line.places))),
        )
        for places, group in found.items()
    )


def at_work(line: PermanentLine) -> int | None:
    """Ways that work; None where nobody says. A line out of service has none."""
    if line.condition == "out of service" or line.working is Absent.NONE:
        return 0
    if isinstance(line.working, int):
        return line.working
    counts = line.working is Absent.NOT_STATED and line.dead_ways
    return (
        working_ways(ways=line.ways, dead=line.dead_ways)
        if counts and isinstance(line.ways, int)
        else None
    )


def at_hand(line: PermanentLine) -> int | None:
    """
    Ways that a visitor finds free; None where nobody says.

    What does not work or is not for visitors is not free.
    """
    if (
        line.condition == "out of service"
        or line.terms == "not for visitors"
        or line.free is Absent.NONE
    ):
        return 0
    return line.free if isinstance(line.free, int) else None


def why_none(line: PermanentLine) -> str:
    """Why none of a line's ways count, where it is so by its condition or terms."""
    if line.condition == "out of service":
        return ", out of service"
    return ", not for visitors" if line.terms == "not for visitors" else ""


def working_figure(key: str, line: PermanentLine) -> Iterator[Figure]:
    """How many ways work, where the house names the dead ones and leaves the count to us."""
    named = line.dead_ways
    if line.working is Absent.NOT_STATED and is_unknown(line.dead):
        unknown, lacking = worked(working_ways, inputs=()), ("which ways are dead",)
        yield missing(f"{key}.working-ways", "Working", unknown, lacking)
    elif line.working is Absent.NOT_STATED and named and line.condition != "out of service":
        if isinstance(line.ways, Absent):
            unknown, lacking = worked(working_ways, inputs=()), ("how many ways there are",)
            yield missing(f"{key}.working-ways", "Working", unknown, lacking)
            return
        count = working_ways(ways=line.ways, dead=named)
        inputs = (
            Input("ways", str(line.ways), f"{key}.ways"),
            Input("dead", ", ".join(map(str, named)), f"{key}.dead"),
        )
        steps = (f"working = {line.ways} − {len(set(named))} = {count}",)
        yield figure(
            f"{key}.working-ways",
            "Working",
            Value(str(count), number=count),
            worked(working_ways, inputs=inputs, steps=steps),
        )


def pair_item(pair: Pair, every: Sequence[PermanentLine]) -> Item:
    """Two places as an item: how many ways work and are free between them, by kind."""
    key = f"lines.pair.{spelling(pair.places[0])}--{spelling(pair.places[1])}"
    said = {"one": ("One end", pair.places[0]), "other": ("Other end", pair.places[1])}
    facts = tuple(
        Fact(f"{key}.{name}", label, Standing.STATED, Value(text))
        for name, (label, text) in said.items()
    )
    groups = [(kind, pair.of_kind(kind)) for kind in KINDS]
    figures = tuple(
        each for kind, lines in groups if lines for each in kind_figures(key, kind, lines, every)
    )
    return Item(key, "pair", f"{pair.places[0]} – {pair.places[1]}", facts, figures)


def stage_to_mix(
    lines: Sequence[PermanentLine], mix: str, offers: Offers, feeds: Mapping[str, str]
) -> Iterator[Item]:
    """
    Lines for visitors between the mix position and places on the deck or in a wing.

    Analogue lines are told by their direction. ``feeds`` tells what a line drives that stands, by
    the name of the line.
    """
    names = {place for line in lines for place in ends_at(line)} - {mix}
    maybe = {name for name in names if is_on_stage(name, offers) is None}
    there = maybe | {name for name in names if is_on_stage(name, offers)}
    open_ones = [line for line in lines if line.terms != "not for visitors"]
    to = [
        line
        for line in open_ones
        if line.to_place in (mix, None) and (line.from_place is None or line.from_place in there)
    ]
    back = [
        line
        for line in open_ones
        if line.from_place in (mix, None) and (line.to_place is None or line.to_place in there)
    ]
    either = list({line.name: line for line in (*to, *back)}.values())
    groups = [
        ("analogue", perhaps_of_kind(to, "analogue")),
        ("analogue back", perhaps_of_kind(back, "analogue")),
    ]
    groups += [(kind, perhaps_of_kind(either, kind)) for kind in KINDS if kind != "analogue"]
    key = "lines.stage-to-mix"
    figures = tuple(
        replace(
            unless_elsewhere(whole(each), found, maybe),
            note="; ".join(told_of(found, lines, feeds)),
        )
        for kind, found in groups
        if found
        for each in kind_figures(key, kind, found, lines)
    )
    begins = {line.name for line in (*to, *back)}
    # Of a kind that visitors may not have at all they find none; a hidden line is not told of.
    told = [line for line in lines if line in open_ones or not line.house_only]
    others = [line for line in told if mix in ends_at(line) and line.name not in begins]
    figures += tuple(none_from_stage(key, others, {kind for kind, found in groups if found}))
    if figures:
        yield Item(key, "stage-to-mix", f"between the stage and {mix}", figures=figures)


def ends_at(line: PermanentLine) -> tuple[str, ...]:
    """The places of both ends, as far as they are known."""
    return line.places


def none_from_stage(key: str, others: Sequence[PermanentLine], told: Set[str]) -> Iterator[Figure]:
    """
    No free way of a kind whose lines to the mix position all begin off the stage, or are not for
    visitors.
    """
    for kind in KINDS:
        lines = [line for line in others if line.kind == kind]
        if not lines or kind in told:
            continue
        slug, label = kind.lower().replace(" ", "-"), sentence_start(kind)
        inputs = [Input(line.name, " to ".join(ends_at(line))) for line in lines]
        working = worked(ways_in_all, inputs=inputs, steps=("none from the stage = 0",))
        note = "; ".join(no_use(line) for line in lines)
        value = Value("0", number=0)
        yield figure(f"{key}.{slug}.free", f"{label}, free", value, working, note=note)


def no_use(line: PermanentLine) -> str:
    """Why a line to the mix position is none from the stage for visitors."""
    kept = why_none(line)
    return f"{line.name}{kept}" if kept else f"{line.name} runs from {' to '.join(ends_at(line))}"


def unless_elsewhere(figure: Figure, lines: Sequence[PermanentLine], maybe: Set[str]) -> Figure:
    """A figure without its value where some lines end at a place that may be off the stage."""
    ends = {place for line in lines for place in ends_at(line)}
    lacks = tuple(f"whether {place} is on the stage" for place in sorted(ends & maybe))
    return replace(figure, value=None, missing=(*figure.missing, *lacks)) if lacks else figure


def is_on_stage(name: str, offers: Offers) -> bool | None:
    """
    Whether a place lies on a deck or in a wing, by its own word, else by the plan; None where
    neither tells.
    """
    if name in offers.said_on_stage:
        return offers.said_on_stage[name]
    spot = offers.spot("place", name)
    if spot is None:
        return None
    lies = lies_on_floor((spot.across_m, spot.depth_m), offers)
    return lies if lies or offers.floors_drawn else None


def lies_on_floor(point: Point, offers: Offers) -> bool:
    """
    Whether a spot lies on a deck or in a wing that is drawn. A panel on the wall beside one belongs
    to it: 0.5 m (common practice, no source).
    """
    return any(
        contains(shape.corners, point)
        or min(distance_to_side_m(point, side) for side in sides_of(shape.corners)) <= BESIDE_M
        for shape in offers.shapes
        if shape.department == "stage" and shape.kind in ("deck", "wing")
    )


def told_of(
    lines: Sequence[PermanentLine], every: Sequence[PermanentLine], feeds: Mapping[str, str]
) -> Iterator[str]:
    """What a show should know of lines before it counts on them."""
    for line in counted_once(lines):
        state = "" if line.condition == "in service" else state_words(line.condition)
        asks = line.terms if line.terms in ("extra charge", "by arrangement") else ""
        words: list[str] = [part for part in (state, asks) if part]
        if line.name in feeds:
            words.append(f"the house drives {feeds[line.name]} by it")
        if names := shared_names(line, every):
            words.append(f"same cores as {', '.join(names)}")
        if words:
            yield f"{line.name}: {', '.join(words)}"


def fed_by(described: Lines, mix: str) -> dict[str, str]:
    """
    What stands and is driven by a line, by the name of the line: switchers, and consoles elsewhere
    than at the mix position, where a visitor's own stands.
    """
    found: dict[str, str] = {}
    for console in listed(described.consoles):
        for name in listed(console.by) if console.place != mix else ():
            found.setdefault(name, console.name)
    for switcher in described.switchers:
        if isinstance(switcher.goes_on_by, str):
            found.setdefault(switcher.goes_on_by, switcher.name)
    return found


def whole(figure: Figure) -> Figure:
    """
    A figure without its value where some line does not say: a show is held against what is there,
    not against the least that is.
    """
    if figure.value is None or figure.value.number is not None:
        return figure
    return replace(figure, value=None, missing=("what each line has",))


def shared_names(line: PermanentLine, every: Sequence[PermanentLine]) -> tuple[str, ...]:
    """The lines on the same cores, whichever of them says so."""
    return tuple(
        other.name
        for other in every
        if other is not line and (other.name in line.shared_with or line.name in other.shared_with)
    )


def counted_once(lines: Sequence[PermanentLine]) -> tuple[PermanentLine, ...]:
    """Lines without those on the cores of an earlier one."""
    kept: list[PermanentLine] = []
    for line in lines:
        if not any(
            other.name in line.shared_with or line.name in other.shared_with for other in kept
        ):
            kept.append(line)
    return tuple(kept)


def kind_figures(
    key: str, kind: str, lines: Sequence[PermanentLine], every: Sequence[PermanentLine]
) -> Iterator[Figure]:
    """Working and free ways of one kind between two places."""
    slug, label = kind.lower().replace(" ", "-"), sentence_start(kind)
    once = counted_once(lines)
    counted = [line.ways for line in once if isinstance(line.ways, int) and counts_here(line)]
    of = f" of {ways_in_all(counted)}" if len(counted) == len(once) else ""
    yield summed(
        f"{key}.{slug}.working",
        f"{label}, working",
        [told_for_kind(line, at_work(line), line.working) for line in once],
        of=of,
    )
    free = summed(
        f"{key}.{slug}.free",
        f"{label}, free",
        [told_for_kind(line, at_hand(line), line.free) for line in once],
    )
    yield replace(
        free, note="; ".join(part for part in (free.note, *notes_of(once, every)) if part)
    )


def has_kind(line: PermanentLine) -> bool:
    """Whether the kind of a line is known."""
    return not isinstance(line.kind, Absent)


def counts_here(line: PermanentLine) -> bool:
    """Whether a line is of a kind and between two places for certain."""
    return has_kind(line) and has_both_ends(line)


def told_for_kind(
    line: PermanentLine, count: int | None, stated: object
) -> tuple[PermanentLine, int | None, str]:
    """
    What a line gives to a sum of one kind, and why it gives no count: one of unknown kind may be of
    this kind or not, and one of unknown ends between these places or not, unless it gives none at
    all.
    """
    if counts_here(line) or count == 0:
        return line, count, silence(stated)
    return line, None, "of a kind not known yet" if has_both_ends(line) else "with an end not known"


def notes_of(lines: Sequence[PermanentLine], every: Sequence[PermanentLine]) -> Iterator[str]:
    """What each line gives where there are several, and which ones can be used only once."""
    if len(lines) > 1:
        yield ", ".join(
            f"{line.name} {silence(line.free) if at_hand(line) is None else at_hand(line)}"
            for line in lines
        )
    for line in lines:
        if names := shared_names(line, every):
            yield f"same cores as {', '.join(names)}"


def silence(stated: object) -> str:
    """Why a line gives no count, as the pages say it."""
    if isinstance(stated, Absent) and is_unknown(stated):
        return why_absent(stated)
    return "not stated"


def summed(
    key: str, label: str, told: Sequence[tuple[PermanentLine, int | None, str]], *, of: str = ""
) -> Figure:
    """
    A sum of ways. Where some lines do not say, it is at least what the others make; where none
    does, there is no value.
    """
    known = [count for _, count, _ in told if count is not None]
    silent = {
        why: [line.name for line, count, word in told if count is None and word == why]
        for _, count, why in told
        if count is None
    }
    inputs = [
        Input(line.name, (why if count is None else str(count)) + why_none(line))
        for line, count, why in told
    ]
    lines = [line for line, _, _ in told]
    if not known:
        return missing(
            key,
            label,
            worked(ways_in_all, inputs=inputs, leaves_out=LEFT_OUT, lines=lines),
            [f"a count that is {' or '.join(silent)}"],
        )
    total = ways_in_all(known)
    steps = (f"{' + '.join(map(str, known))} = {total}",)
    working = worked(ways_in_all, inputs=inputs, steps=steps, leaves_out=LEFT_OUT, lines=lines)
    value = Value(f"{total}{of}", number=total)
    note = "; ".join(f"{why} for {', '.join(names)}" for why, names in silent.items())
    return figure(key, label, not_less(value) if silent else value, working, note=note)
