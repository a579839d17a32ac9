"""
What a show may ask of rigging line by line.

A hang plan as a whole is checked by ``builder/fit/hangs/plan.py``; the head rigger approves it.
"""

from functools import partial

from builder.rules import NUMBERS, Rule

rigging = partial(
    Rule,
    department="rigging",
    section="rigging",
    legal=True,
    who="the head rigger and the house's engineer",
)

RULES = (
    rigging(
        key="points",
        title="Rigging points in service",
        kind="count",
        each="point left",
        item="point",
        also=(("point-group", "points"), ("beam", "room")),
        combine="sum",
        day="sum",
        question="How many points are there, of what rating, and where?",
        remedy=(
            "Hang fewer trusses, use bridles where the house allows them, or stand it on the floor."
        ),
    ),
    rigging(
        key="point rating",
        title="What one point may carry",
        kind="mass",
        item="point",
        value="limit",
        also=(("point-group", "limit"), ("beam", "each-point")),
        question="What does the strongest point carry?",
        remedy="Spread the load over more points.",
    ),
    rigging(
        key="point left",
        title="What is left on one point, the house's rig in place",
        kind="mass",
        item="point",
        value="left",
        also=(("point-group", "left"), ("beam", "point-left")),
        question="What is left on the strongest point, with the house's own rig in place?",
        remedy="Spread the load over more points, or ask what the house can take down.",
    ),
    rigging(
        key="flown total",
        title="What may still hang in all, the house's rig in place",
        kind="mass",
        item="roof",
        value="left",
        day="sum",
        question="What may hang in all, with the house's own rig in place?",
        remedy="Fly less, stand it on the floor, or ask what the house can take down.",
    ),
    rigging(
        key="house hoists",
        title="Hoists of the house that hang nowhere",
        kind="count",
        item="hoist",
        value="free",
        whole="hoists",
        combine="sum",
        day="sum",
        question="How many of the house's hoists are free, of what rating and chain length?",
        remedy="Bring or hire hoists.",
    ),
    rigging(
        key="house truss",
        title="Truss of one model of the house that hangs nowhere",
        kind="length",
        item="truss",
        value="free",
        day="sum",
        legal=False,
        question="How much truss of one model is free, in which sections?",
        remedy="Bring or hire truss.",
    ),
    rigging(
        key="low steel",
        title="Height of the low steel above the deck",
        kind="length",
        ways=NUMBERS,
        item="beam",
        value="lowest-steel",
        also=(("point-group", "low_steel"),),
        legal=False,
        question="How high is the lowest steel above the deck?",
        remedy="Fly lower, or hang from another beam.",
    ),
)
