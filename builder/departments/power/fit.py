"""
What a show may ask of power by count.

Loads on services are asked under ``power:``, and are placed at the same time.
"""

from builder.rules import Rule

RULES = (
    Rule(
        key="shore outlets",
        title="Outlets for buses",
        department="power",
        kind="count",
        section="power",
        item="shore",
        value="count",
        whole="shore_power",
        where=(("kind", "buses"),),
        combine="sum",
        day="sum",
        question=(
            "How many outlets for buses are there, of what rating, and how far from where the buses"
            " stand?"
        ),
        remedy=(
            "Buses run their own generators where that is allowed, or hire a distribution board."
        ),
        who="the house, or hire",
    ),
    Rule(
        key="shore distance",
        title="From where buses stand to their outlets",
        department="power",
        kind="length",
        ways=("at most",),
        section="power",
        item="shore",
        value="distance",
        whole="shore_power",
        where=(("kind", "buses"),),
        question="How far is it from where the buses stand to their outlets?",
        remedy="Bring or hire a longer cable of the right size.",
        who="the show, or hire",
    ),
    Rule(
        key="shore current",
        title="Rating of an outlet for buses",
        department="power",
        kind="current",
        section="power",
        item="shore",
        value="rating",
        whole="shore_power",
        where=(("kind", "buses"),),
        question="What is the rating of the outlets for buses, and on which connector?",
        remedy="Hire a larger feed with its distribution, or run on less.",
        who="the house, or hire",
    ),
)
