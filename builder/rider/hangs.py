"""A rider's hangs as plain records in SI, for the check."""

from typing import Any

from builder.fit.wording import both
from builder.rider.hanging import Hang, Hanging

Record = dict[str, Any]
HOISTS = {"counted": "hoists in that", "none": "dead hung"}


def hang_record(hang: Hang) -> Record:
    """What the check takes of a hang: supports, loads by place, hoists. [m], [kg]"""
    return {
        "supports": [
            {
                "point": support.point or "",
                "across_m": support.across.m if support.across else None,
                "depth_m": support.depth.m if support.depth else None,
                "apex_m": support.apex.m if support.apex else None,
                "at_m": support.at.m if support.at else 0.0,
                "load_kg": support.load.kg if support.load else None,
            }
            for support in hang.supports
        ],
        "loads": loads_of(hang),
        "hoists": hang.hoists or "",
        "hoist_kg": hang.hoist_weight.kg if hang.hoist_weight else 0.0,
    }


def loads_of(hang: Hang) -> list[Record]:
    """
    Its own weight and each load, at a place or spread; at its beginning where it has no length.
    [m], [kg]
    """
    length_m = hang.length.m if hang.length else 0.0
    found = []
    if hang.weight:
        found.append(load(0.0, length_m, hang.weight.kg_per_m * length_m))
    if hang.weight_in_all:
        found.append(load(0.0, length_m, hang.weight_in_all.kg))
    return [*found, *(hung(each, length_m) for each in hang.loads)]


def hung(each: Hanging, length_m: float) -> Record:
    """One load."""
    kg = each.count * each.weight.kg
    if each.at is not None:
        return load(each.at.m, each.at.m, kg)
    if each.from_ is not None and each.to is not None:
        return load(each.from_.m, each.to.m, kg)
    return load(0.0, length_m, kg)


def load(from_m: float, to_m: float, kg: float) -> Record:
    """A load between two places, or at one. [m], [kg]"""
    return {"from_m": from_m, "to_m": to_m, "kg": kg}


def said(hang: Hang, record: Record) -> str:
    """What a hang asks, in a few words."""
    total_kg = 0.0
    for each in [
        *(support["load_kg"] or 0.0 for support in record["supports"]),
        *(each["kg"] for each in record["loads"]),
    ]:
        total_kg += each
    words = both("mass", total_kg)
    count = len(hang.supports)
    return (
        f"{count} support{'' if count == 1 else 's'}, {words[0]} ({words[1]}) in all,"
        f" {HOISTS.get(hang.hoists or '', 'hoists apart')}"
    )
