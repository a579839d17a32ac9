"""
The rigging at its lightest and at its heaviest: what nobody knows better is taken at the end that
leaves the most, and at the end that leaves the least.

What is left falls with every weight and rises with every limit, so these two readings hold all that
lies between. A weight without an upper end stays unknown at the heaviest, and nothing is then said
to be left at least.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Literal

from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.hangs import Hang, HungThing
from builder.departments.rigging.description.steel import Beam, DynamicFactor, Hoist
from builder.departments.rigging.steel.geometry import length_of
from builder.exchange import HungLoad
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.in_part import Between, ends_of
from builder.reading.quantities import Mass

Reading = Literal["lightest", "heaviest"]
READINGS: tuple[Reading, ...] = ("lightest", "heaviest")
NOTHING = Mass(0.0, "0 kg")
WAYS = ("weight", "weight_in_all")


def is_inexact(rigging: Rigging, offered: Iterable[HungLoad]) -> bool:
    """Whether any weight or limit is known in part or not at all."""
    limits = (rigging.general, *rigging.told_exceptions, *rigging.told_zones)
    limits = (*limits, *rigging.points, *rigging.point_groups)
    return (
        is_factor_open(rigging)
        or any(weight_open(hang) for hang in rigging.hung)
        or any(loads_open(hang) for hang in rigging.hung)
        or any(not isinstance(hoist.weight, Mass) for hoist in listed(rigging.hoists))
        or any(not isinstance(bridle.load, Mass) for bridle in rigging.standing_bridles)
        or any(
            not isinstance(each.weight, Mass) for beam in rigging.beams for each in beam.for_good
        )
        or any(is_unknown(beam.standing) for beam in rigging.beams)
        or any(load.more_kg != 0 for load in offered)
        or any(
            is_unknown(getattr(record, key, None)) for record in limits for key in LIMITS_OF_A_LINE
        )
    )


LIMITS_OF_A_LINE = ("whole_roof", "each_beam", "each_point", "limit", "rating")


def is_factor_open(rigging: Rigging) -> bool:
    """Whether nobody knows the house's factor for starting and stopping to the full."""
    told = rigging.dynamic_factor
    return is_unknown(told.factor if isinstance(told, DynamicFactor) else told)


def factor_at(
    told: DynamicFactor | Absent | None, reading: Reading
) -> DynamicFactor | Absent | None:
    """The house's factor at one end: none at the lightest, unknown at the heaviest without one."""
    if not isinstance(told, DynamicFactor):
        return None if reading == "lightest" else Absent.UNKNOWN
    least, most = ends_of(told.factor)
    end = least if reading == "lightest" else most
    if end is None:
        return None if reading == "lightest" else Absent.UNKNOWN
    return told.model_copy(update={"factor": end})


def hangs_are_told(rigging: Rigging) -> bool:
    """Whether the house says what hangs in it, or that nothing does."""
    return rigging.hangs is Absent.NONE or not isinstance(rigging.hangs, Absent)


def weight_open(hang: Hang) -> bool:
    """
    Whether the own weight of a hang is not known to the full. A single point has none; what hangs
    there is told by its loads.
    """
    ways = [getattr(hang, way) for way in WAYS]
    if by_unknown_length(hang):
        return True
    if any(not isinstance(way, Absent) or way is Absent.NONE for way in ways):
        return False
    length_m = length_of(hang)
    return any(is_unknown(way) for way in ways) or length_m is None or length_m > 0


def by_unknown_length(hang: Hang) -> bool:
    """Whether a hang tells its own weight by length, and nobody knows how long it is."""
    is_by_length = not isinstance(hang.weight, Absent) or isinstance(hang.weight, Between)
    return is_by_length and length_of(hang) is None


def loads_open(hang: Hang) -> bool:
    """Whether what hangs on a hang is not known to the full."""
    return is_unknown(hang.loads) or any(thing_open(thing) for thing in hang.things)


def thing_open(thing: HungThing) -> bool:
    """Whether what a load weighs in all is not known to the full."""
    return isinstance(thing.count, Absent) or isinstance(thing.weight, Absent)


def rigging_at(rigging: Rigging, reading: Reading) -> Rigging:
    """The same house with every weight and limit at one end."""
    changes: dict[str, Any] = {}
    if not isinstance(rigging.hangs, Absent):
        changes["hangs"] = tuple(hang_at(hang, reading) for hang in rigging.hangs)
    if not isinstance(rigging.bridles, Absent):
        changes["bridles"] = tuple(
            bridle.model_copy(update={"load": mass_at(bridle.load, reading)})
            for bridle in rigging.bridles
        )
    changes["hoists"] = tuple(hoist_at(hoist, reading) for hoist in listed(rigging.hoists))
    if any(beam.may_carry_for_good for beam in rigging.beams):
        changes["beams"] = tuple(beam_at(beam, reading) for beam in rigging.beams)
    if is_factor_open(rigging):
        changes["dynamic_factor"] = factor_at(rigging.dynamic_factor, reading)
    changes["limits"] = limits_at(rigging.general, reading)
    for key in ("exceptions", "zones", "points", "point_groups"):
        lines = getattr(rigging, key)
        if not isinstance(lines, Absent):
            changes[key] = tuple(limits_at(record, reading) for record in lines)
    return rigging.model_copy(update=changes)


def beam_at(beam: Beam, reading: Reading) -> Beam:
    """A beam with what hangs on it for good at one end; nothing at its lightest if unknown."""
    if is_unknown(beam.standing):
        return beam.model_copy(update={"standing": ()}) if reading == "lightest" else beam
    standing = []
    for each in beam.for_good:
        standing.append(each.model_copy(update={"weight": mass_at(each.weight, reading)}))
    return beam.model_copy(update={"standing": tuple(standing)})


def mass_at(weight: Mass | Absent, reading: Reading) -> Mass | Absent:
    """A weight at one end; nothing at the lightest, and unknown at the heaviest, without one."""
    least, most = ends_of(weight)
    end = least if reading == "lightest" else most
    lost = NOTHING if reading == "lightest" else Absent.UNKNOWN
    return lost if end is None else end


def hoist_at(hoist: Hoist, reading: Reading) -> Hoist:
    """A hoist with its weight at one end."""
    return hoist.model_copy(update={"weight": mass_at(hoist.weight, reading)})


def thing_at(thing: HungThing, reading: Reading) -> HungThing:
    """A load with its count and its weight at one end."""
    least, most = ends_of(thing.count)
    end = least if reading == "lightest" else most
    lost = 0 if reading == "lightest" else Absent.UNKNOWN
    count = lost if end is None else end
    return thing.model_copy(update={"count": count, "weight": mass_at(thing.weight, reading)})


def hang_at(hang: Hang, reading: Reading) -> Hang:
    """A hang with its own weight and its loads at one end; nothing at its lightest if unknown."""
    if is_unknown(hang.loads) and reading == "lightest":
        hang = hang.model_copy(update={"loads": ()})
    elif loads_open(hang) and not is_unknown(hang.loads):
        loads = tuple(thing_at(thing, reading) for thing in hang.things)
        hang = hang.model_copy(update={"loads": loads})
    if not weight_open(hang):
        return hang
    known = [way for way in WAYS if isinstance(getattr(hang, way), Between)]
    if known and not by_unknown_length(hang):
        least, most = ends_of(getattr(hang, known[0]))
        end = least if reading == "lightest" else most
        if end is not None:
            return hang.model_copy(update={known[0]: end})
    absent = Absent.NONE if reading == "lightest" else Absent.UNKNOWN
    return hang.model_copy(update={"weight": absent, "weight_in_all": absent})


def limits_at(record: Any, reading: Reading) -> Any:
    """A record that states limits, each at one end; unknown stays so."""
    changes = {}
    for key in LIMITS_OF_A_LINE:
        stated = getattr(record, key, None)
        if isinstance(stated, Between):
            least, most = ends_of(stated)
            end = most if reading == "lightest" else least
            changes[key] = Absent.UNKNOWN if end is None else end
    return record.model_copy(update=changes) if changes else record


def loads_at(offered: Iterable[HungLoad], reading: Reading) -> tuple[HungLoad, ...]:
    """The loads of other departments at one end; without an upper end they stay open."""
    if reading == "lightest":
        return tuple(replace(load, more_kg=0.0) for load in offered)
    return tuple(
        load
        if load.more_kg is None
        else replace(load, load_kg=load.load_kg + load.more_kg, more_kg=0.0)
        for load in offered
    )
