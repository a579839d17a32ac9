"""
The values that move every figure one way, or not at all, as they grow between their ends; and the
figures of which that is not so.

``tests/test_both_ends.py`` holds both against values in between.
"""

from collections.abc import Mapping, Set

ALL: Set[str] = frozenset()
"""No figure is left out."""
BETWEEN_PHASES: Set[str] = frozenset({"neutral-current", "neutral-binds", "imbalance"})
"""
The current of a neutral is the length of a sum of arrows: longest where each of them is at an end,
but not shortest there. A load on the phase that carries least brings phases nearer to each other.
Current and imbalance tell what they are made of (``turning``), and are told between their own ends.
"""
OF_ANY_PART: Set[str] = frozenset({"neutral-left"})
"""
What a neutral may have to carry whichever loads are off only grows with what one of them draws, but
an angle may turn it.
"""
CHOICE: Set[str] = frozenset({"at-once"})
"""
How many outlets of each place the best choice for the whole house takes: with a little more room
another choice is the best. It tells what it is made of, and is told between its own ends.
"""
DROPS: Set[str] = frozenset({"drop", "drop-total", "drop-left", "drop-alone"})
"""
Of a power factor between its ends a drop may be larger: R·cos φ + X·sin φ has its top within. Drops
tell what they are made of, and are told between their own ends.
"""

SHARES: Set[str] = frozenset({"within_3", "within_6", "bare_within_3", "spread"})
"""How evenly an area is served: best somewhere, and worse on both sides of it."""
AT_THE_MIX: Set[str] = SHARES | {"end_fire_mix", "gradient_mix"}
PATTERNS: Set[str] = SHARES | {
    "alley",
    "costs",
    "end_fire_mix",
    "end_fire_stage",
    "fire_front",
    "fire_rear",
    "floor",
    "floor_straight",
    "gradient_front",
    "gradient_mix",
    "gradient_rear",
    "gradient_stage",
    "stack_nulls",
    "straight",
}
"""Sums of waves, which come and go with every way that a source moves."""

ONE_WAY: Mapping[str, Mapping[str, Set[str]]] = {
    "access": {
        "docks.truck_takes": ALL,
        "vehicles.capacity": ALL,
        "vehicles.load_centre": ALL,
        "vehicles.fork_length": ALL,
    },
    "rigging": {
        "trusses.height": ALL,
        "limits.each_point": ALL,
        "exceptions.each_point": ALL,
        "hangs.weight": ALL,
        "hangs.weight_in_all": ALL,
        "hangs.stiffness": ALL,
    },
    "sound": {
        "mix_position.width": AT_THE_MIX,
        "mix_position.depth": AT_THE_MIX,
        "models.level": SHARES,
        "models.level_crest": SHARES,
        "models.coverage.vertical": SHARES,
        "models.depth": PATTERNS,
        "models.weight": ALL,
        "hangs.frame": ALL,
    },
    "power": {
        "continuous_share": CHOICE,
        "usual_power_factor": CHOICE | BETWEEN_PHASES | OF_ANY_PART | DROPS,
        "supplies.rating": CHOICE,
        "supplies.breaker": CHOICE,
        "supplies.transformer": CHOICE,
        "services.rating": CHOICE,
        "services.breaker": CHOICE,
        "services.neutral_rating": CHOICE,
        "services.feeder.length": ALL,
        "services.feeder.conductor": ALL,
        "boards.rating": CHOICE,
        "boards.breaker": CHOICE,
        "boards.feeder.length": ALL,
        "boards.feeder.conductor": ALL,
        "outlets.rating": CHOICE,
        "outlets.breaker": CHOICE,
        "shore_power.rating": CHOICE,
        "shore_power.breaker": CHOICE,
        "standing_loads.draws": CHOICE | BETWEEN_PHASES,
        "standing_loads.power_factor": CHOICE | BETWEEN_PHASES | OF_ANY_PART,
        "standing_loads.third_harmonic": CHOICE | BETWEEN_PHASES,
    },
    "lines": {"lines.path": ALL},
}
"""
The keys of each file as they lead from its top, without the places in lists, and the parts of
the keys of figures that one of them can turn: these keep what is told without it, unless they tell
what they are made of.
"""

FROM_NOTHING: Mapping[str, Set[str]] = {"power": frozenset({"standing_loads.draws"})}
"""The keys of ``ONE_WAY`` that are never below nothing: `up to 3 kW` has two ends."""
