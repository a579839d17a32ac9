"""
A line set as it counts: its own values, and the usual ones where it says nothing, each with the
line of the file that tells it.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from builder.departments.flying.description import Flying, LineSet, SetsAlike, SetValues
from builder.formulas.flying import Purchase, balanced_kg, left_on_pipe_kg
from builder.reading.absent import Absent, listed
from builder.reading.in_part import ends_of
from builder.reading.quantities import Mass
from builder.reading.references import spelling

SHARED = (
    "moved_by",
    "arbor",
    "load",
    "load_with_pipe",
    "point_load",
    "pipe_length",
    "low_trim",
    "high_trim",
    "fixed_speed",
)
"""
The usual values that are told again on each line set, for shows are judged by them. The others
stand once, under what is usual.
"""
PURCHASES: dict[str, Purchase] = {"counterweight": 1, "double purchase": 2}
Ends = tuple[float | None, float | None]
"""The least and the most of a weight, None for an end that nobody knows. [kg]"""


@dataclass(frozen=True, slots=True)
class Told:
    """A value of a line set, and the record that tells it."""

    value: Any
    by: SetValues


@dataclass(frozen=True, slots=True)
class Limit:
    """
    What may hang beside the pipe at least and at most, how that was worked out, and what is not
    known for it. [kg]
    """

    may: Ends
    step: str
    lacks: str = ""


@dataclass(frozen=True, slots=True)
class Carrying:
    """
    What a line set may carry beside its pipe, what hangs on it, and what is left, each at least and
    at most; what nobody tells, by name; and how it was worked out. [kg]
    """

    may: Ends
    hangs: Ends
    left: Ends
    lacks: tuple[str, ...]
    steps: tuple[str, ...]


def told(line_set: LineSet, flying: Flying, key: str) -> Told:
    """A value of a line set: its own, else the usual one."""
    own = getattr(line_set, key)
    if own is Absent.NOT_STATED and flying.usual is not None:
        usual = getattr(flying.usual, key)
        if usual is not Absent.NOT_STATED:
            return Told(usual, flying.usual)
    return Told(own, line_set)


def sets_of(flying: Flying) -> tuple[LineSet, ...]:
    """The line sets, none where nobody describes them."""
    return listed(flying.line_sets)


OUT, FREE, STAYS = "out of service", "free", "stays"


def moving_with(line_set: LineSet, flying: Flying) -> tuple[LineSet, ...]:
    """
    The other line sets that move with it, in the order of the rail: tied to it, whichever of the
    two says so, and those tied to these.
    """
    sets = sets_of(flying)
    ties = [{spelling(one.name), *map(spelling, one.moves_with)} for one in sets if one.moves_with]
    moving = {spelling(line_set.name)}
    while more := {name for tie in ties if tie & moving for name in tie} - moving:
        moving |= more
    return tuple(one for one in sets if one is not line_set and spelling(one.name) in moving)


def may_be_had(line_set: LineSet, flying: Flying) -> bool | None:
    """
    Whether a show may have a line set: it and all that move with it are free and in service. None
    where the house does not say it of one of them, or one is only free once it is cleared, does not
    come in or keeps its trim, and none of the others is kept.
    """
    moving = (line_set, *moving_with(line_set, flying))
    if any(is_kept(one) for one in moving):
        return False
    return None if any(one.use != FREE or is_bound(one) for one in moving) else True


def is_bound(line_set: LineSet) -> bool:
    """Whether a free set does not come in to be loaded, or keeps its trim: ask whether it helps."""
    return line_set.comes_in is False or line_set.retrim is False


def is_kept(line_set: LineSet) -> bool:
    """Whether a line set is out of service, or what hangs there stays."""
    said = not isinstance(line_set.use, Absent)
    return line_set.condition == OUT or (said and line_set.use == STAYS)


def kg_of(value: object) -> Ends:
    """A weight at least and at most; nothing weighs nothing. [kg]"""
    if value is Absent.NONE:
        return 0.0, 0.0
    least, most = ends_of(value) if not isinstance(value, bool) else (None, None)
    return (
        least.kg if isinstance(least, Mass) else None,
        most.kg if isinstance(most, Mass) else None,
    )


def carrying(line_set: LineSet, flying: Flying) -> Carrying:
    """
    What a line set may carry, what hangs on it, and what that leaves. Of two limits the lower
    counts; one that lacks something only bounds what there is at most.
    """
    limits = list(limits_of(line_set, flying))
    whole = [limit.may[0] for limit in limits if not limit.lacks]
    mosts = [limit.may[1] for limit in limits if limit.may[1] is not None]
    may = (
        min((kg for kg in whole if kg is not None), default=None),
        min(mosts, default=None),
    )
    hangs = hung_of(line_set)
    lacks = [] if limits else ["its limit"]
    if may[0] is None:
        lacks += [limit.lacks for limit in limits if limit.lacks]
    if hangs[1] is None:
        lacks.append("what weighs on it now")
    left = (difference(may[0], hangs[1]), difference(may[1], hangs[0] or 0.0))
    return Carrying(may, hangs, left, tuple(lacks), tuple(limit.step for limit in limits))


def difference(may_kg: float | None, hangs_kg: float | None) -> float | None:
    """What is left, None where either is not known. [kg]"""
    if may_kg is None or hangs_kg is None:
        return None
    return left_on_pipe_kg(may_hang_kg=max(0.0, may_kg), hangs_kg=hangs_kg + max(0.0, -may_kg))


def hung_of(line_set: LineSet) -> Ends:
    """
    What weighs on a set now. Where the house says that nothing hangs there, that is nothing; where
    it says nothing of it, nobody knows. [kg]
    """
    weight = line_set.hung_weight
    if weight is Absent.NOT_STATED:
        return (0.0, 0.0) if line_set.carries is Absent.NONE else (None, None)
    return kg_of(weight)


def limits_of(line_set: LineSet, flying: Flying) -> Iterator[Limit]:
    """
    Each limit on what may hang beside the pipe: the load that the house states, and what the arbor
    can balance.
    """
    load = kg_of(told(line_set, flying, "load").value)
    if load != (None, None):
        yield Limit(load, f"The house allows {range_kg(load)} beside the pipe.")
    whole = kg_of(told(line_set, flying, "load_with_pipe").value)
    if whole != (None, None):
        yield with_pipe(whole, kg_of(told(line_set, flying, "pipe_weight").value))
    if told(line_set, flying, "load").value is Absent.NOT_STATED and whole == (None, None):
        yield from strongest_kind(line_set, flying)
    weights = told(line_set, flying, "arbor").value
    arbor = (None, None) if weights is Absent.NONE else kg_of(weights)
    if arbor == (None, None):
        return
    purchase = PURCHASES.get(str(told(line_set, flying, "moved_by").value))
    if purchase is None:
        step = f"The arbor holds {range_kg(arbor)}."
        yield Limit((None, arbor[1]), step, "how it moves")
        return
    pipe = kg_of(told(line_set, flying, "pipe_weight").value)
    least, most = (
        None if kg is None else balanced_kg(arbor_kg=kg, purchase=purchase) for kg in arbor
    )
    may = (
        None if least is None or pipe[1] is None else least - pipe[1],
        None if most is None else most - (pipe[0] or 0.0),
    )
    share = "" if purchase == 1 else f" / {purchase}"
    step = f"The arbor: {range_kg(arbor)}{share} − the pipe, {range_kg(pipe)} = {range_kg(may)}"
    yield Limit(may, step, "" if pipe[1] is not None else "the weight of its pipe")


def with_pipe(whole: Ends, pipe: Ends) -> Limit:
    """What may hang beside the pipe where the house tells its limit with the pipe counted."""
    least, most = whole
    may = (
        None if least is None or pipe[1] is None else least - pipe[1],
        None if most is None else most - (pipe[0] or 0.0),
    )
    step = f"The house allows {range_kg(whole)}, the pipe counted; the pipe, {range_kg(pipe)}."
    return Limit(may, step, "" if pipe[1] is not None else "the weight of its pipe")


def strongest_kind(line_set: LineSet, flying: Flying) -> Iterator[Limit]:
    """
    What the strongest of the kinds allows at most, where nobody says what this set carries: of the
    kinds that move as it does, where that is told. Kinds without a limit bound nothing.
    """
    moves = told(line_set, flying, "moved_by").value
    kinds = [
        kind
        for kind in listed(flying.sets_alike)
        if isinstance(moves, Absent) or isinstance(kind.moved_by, Absent) or kind.moved_by == moves
    ]
    tops = [min(tops_of(kind), default=None) for kind in kinds]
    known = [top for top in tops if top is not None]
    if kinds and len(known) == len(tops):
        step = f"The strongest kind that it may be of carries {range_kg((None, max(known)))}."
        yield Limit((None, max(known)), step, "its limit")


def tops_of(kind: SetsAlike) -> list[float]:
    """The most that sets of a kind may carry, by each limit that is told. [kg]"""
    ends = [kg_of(kind.load), kg_of(kind.load_with_pipe)]
    return [most for _, most in ends if most is not None]


def range_kg(ends: Ends) -> str:
    """A weight in words. [kg]"""
    least, most = ends
    if least is None and most is None:
        return "a weight that is not known"
    if least is None:
        return f"at most {most:,.0f} kg"
    if most is None:
        return f"at least {least:,.0f} kg"
    return f"{least:,.0f} kg" if least == most else f"{least:,.0f} to {most:,.0f} kg"
