"""What is computed of line sets: what is left on each, how many are free, weights on hand."""

from collections.abc import Iterator, Sequence

from builder.cautions import LOADS
from builder.departments.flying.description import Flying, LineSet, Weights
from builder.departments.flying.sets import (
    FREE,
    OUT,
    Carrying,
    Ends,
    carrying,
    is_kept,
    kg_of,
    may_be_had,
    moving_with,
    range_kg,
    sets_of,
    told,
)
from builder.formulas.flying import balanced_kg, left_on_pipe_kg
from builder.formulas.loads import total_load_kg
from builder.pack import Figure, Input, Value, one_or_both
from builder.reading.absent import Absent, listed
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System
from builder.reading.quantities import Depth, Length
from builder.working import by_hand, figure, length_value, mass_value, missing, worked

LEAVES_OUT = (
    "Where along the pipe it hangs, the lift lines and their fittings, friction, and what the"
    " locking rail can hold while weights are moved."
)


def set_figures(line_set: LineSet, flying: Flying, key: str, system: System) -> Iterator[Figure]:
    """What may still hang on a set, and where it hangs on the stage."""
    yield free_figure(line_set, flying, f"{key}.free")
    found = carrying(line_set, flying)
    yield left_figure(found, line_set, flying, key, system)
    if place := place_figure(line_set, flying, key, system):
        yield place


def free_figure(line_set: LineSet, flying: Flying, key: str) -> Figure:
    """Whether a show may have it, with all that move with it."""
    moving = (line_set, *moving_with(line_set, flying))
    work = by_hand(
        "free where it and all that move with it are free and in service",
        "common practice, no source",
        inputs=[Input(f"Line set {one.name}", state_of(one)) for one in moving],
        lines=moving[1:],
    )
    label, answer = "Free for a show", may_be_had(line_set, flying)
    if answer is None:
        return missing(key, label, work, [open_use(one) for one in moving if one.use != FREE])
    kept = [one.name for one in moving[1:] if is_kept(one)]
    note = f"moves with {', '.join(kept)}, which is not free" if kept else ""
    return figure(key, label, Value("yes" if answer else "no"), work, note=note)


def open_use(line_set: LineSet) -> str:
    """What is open of a line set that is not said to be free."""
    if isinstance(line_set.use, Absent):
        return f"the use of line set {line_set.name}"
    return f"whether line set {line_set.name} is cleared"


def state_of(line_set: LineSet) -> str:
    """What the house says of the use of a line set, and that it is out of service where it is."""
    use = "not said" if isinstance(line_set.use, Absent) else line_set.use
    return f"{use}, {OUT}" if line_set.condition == OUT else use


def left_figure(
    found: Carrying, line_set: LineSet, flying: Flying, key: str, system: System
) -> Figure:
    """What may still hang on the pipe; at most, where something that takes from it is unknown."""
    lines = [told(line_set, flying, name).by for name in ("load", "arbor", "pipe_weight")]
    work = worked(
        balanced_kg,
        left_on_pipe_kg,
        inputs=(
            Input("May hang beside the pipe", range_kg(found.may)),
            Input("Hangs now", range_kg(found.hangs)),
        ),
        steps=(*found.steps, f"{range_kg(found.may)} − {range_kg(found.hangs)}"),
        leaves_out=LEAVES_OUT,
        lines=[line for line in lines if line is not line_set],
    )
    label, name = "What may still hang", f"{key}.left"
    if line_set.condition == OUT:
        return missing(name, label, work, ["a line set in service"], caution=LOADS)
    value = between(found.left, system)
    if value is None:
        return missing(name, label, work, found.lacks, caution=LOADS)
    note = f"not known: {', '.join(found.lacks)}" if found.lacks else ""
    return figure(name, label, value, work, caution=LOADS, note=note)


def between(ends: Ends, system: System) -> Value | None:
    """A mass from its two ends; None where neither is known."""
    least, most = (None if kg is None else mass_value(kg, system) for kg in ends)
    return one_or_both(least, most)


def place_figure(line_set: LineSet, flying: Flying, key: str, system: System) -> Figure | None:
    """
    How far upstage of the reference line of the stage a set hangs, from its two ends; None where
    the house does not tell both, missing where it tells that it does not know.
    """
    written = {"the reference": flying.reference_at, "its distance": line_set.distance}
    if any(value in (Absent.NOT_STATED, Absent.NONE) for value in written.values()):
        return None
    leasts, mosts = zip(*(metres_of(value) for value in written.values()), strict=True)
    work = by_hand(
        "depth = reference + distance",
        "plane geometry",
        inputs=[Input(name.capitalize(), as_written(value)) for name, value in written.items()],
    )
    label, name = "Upstage of the stage's reference line", f"{key}.depth"
    value = one_or_both(*(sum_value(ends, system) for ends in (leasts, mosts)))
    if value is None:
        lacks = [word for word, each in written.items() if None in metres_of(each)]
        return missing(name, label, work, lacks)
    return figure(name, label, value, work)


def metres_of(value: object) -> Ends:
    """A length or a depth at least and at most. [m]"""
    if isinstance(value, Absent | Length | Depth):
        least, most = ends_of(value)
        return (
            least.m if isinstance(least, Length | Depth) else None,
            most.m if isinstance(most, Length | Depth) else None,
        )
    return None, None


def sum_value(ends: Sequence[float | None], system: System) -> Value | None:
    """The sum of some lengths; None where one is not known. [m]"""
    known = [metres for metres in ends if metres is not None]
    return length_value(sum(known), system) if len(known) == len(ends) else None


def whole_figures(flying: Flying, key: str, system: System) -> Iterator[Figure]:
    """How many sets there are, how many a show may have, and the weights on hand."""
    sets = sets_of(flying)
    if sets or flying.line_sets is Absent.NONE:
        yield counted(f"{key}.sets", "Line sets", len(sets), len(sets), sets)
        answers = [may_be_had(one, flying) for one in sets]
        least, most = answers.count(True), len(answers) - answers.count(False)
        yield counted(f"{key}.free", "Line sets free for a show", least, most, sets)
    if weights := listed(flying.weights):
        yield weights_figure(weights, f"{key}.weights", system)


def counted(key: str, label: str, least: int, most: int, sets: Sequence[LineSet]) -> Figure:
    """A number of line sets, at least and at most."""
    work = by_hand(
        "counted; what is out of service, or moves with what is not free, is not free",
        "a count",
        inputs=(Input("Line sets described", str(len(sets))),),
        lines=sets,
    )
    both = Value(f"{least}", number=float(least)), Value(f"{most}", number=float(most))
    return figure(key, label, one_or_both(*both) or both[0], work)


def weights_figure(weights: Sequence[Weights], key: str, system: System) -> Figure:
    """The counterweights on hand in all."""
    ends = [kg_of(each.in_all) for each in weights]
    least = sum(kg for kg, _ in ends if kg is not None) if any(kg for kg, _ in ends) else None
    mosts = [kg for _, kg in ends]
    most = None if any(kg is None for kg in mosts) else sum(kg for kg in mosts if kg is not None)
    work = worked(
        total_load_kg,
        inputs=[Input(each.name, range_kg(kg_of(each.in_all))) for each in weights],
        equation="sum of the weights on hand",
    )
    value = between((least, most), system)
    if value is None:
        lacks = [f"the weight of all {each.name}" for each in weights]
        return missing(key, "Counterweights on hand", work, lacks, caution=LOADS)
    return figure(key, "Counterweights on hand", value, work, caution=LOADS)
