"""What a show may ask of people, by what they can do."""

from functools import partial

from builder.rules import Rule

HIRE = "Bring them with the show, or hire them; the house may know a firm."
people = partial(
    Rule,
    department="crew",
    section="crew",
    item="role",
    value="at-call",
    whole="people",
    kind="count",
    combine="sum",
    remedy=HIRE,
    who="the show, or hire",
)

RULES = (
    people(
        key="stagehands",
        title="Stagehands",
        where=(("skill", "stagehands"),),
        question="How many stagehands can be called, and what is the shortest call?",
    ),
    people(
        key="riggers",
        title="Riggers",
        where=(("skill", "riggers"),),
        question="How many riggers can be called, for up and for down?",
    ),
    people(
        key="loaders",
        title="Loaders",
        where=(("skill", "loaders"),),
        question="How many loaders can be called?",
    ),
    people(
        key="electricians",
        title="Electricians",
        where=(("skill", "electricians"),),
        question="Is an electrician there for tie-in and for the show?",
    ),
    people(
        key="flymen",
        title="Flymen",
        where=(("skill", "flymen"),),
        question="How many can be called who work the fly system?",
    ),
)
