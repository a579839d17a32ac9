"""What a show may ask of rooms: where one dresses, washes, works and eats."""

from functools import partial

from builder.rules import AT_LEAST, IS, Rule

rooms = partial(Rule, department="rooms", section="rooms", kind="count")
dressing = partial(rooms, item="dressing-room", whole="dressing_rooms")
other = partial(rooms, item="room", whole="rooms")
washing = partial(rooms, item="washroom", whole="washrooms", combine="sum")
ASK_EARLY = "Share rooms, or ask the house for others nearby."
HIRE = "Hire cabins or tents with what is needed."

RULES = (
    dressing(
        key="dressing rooms",
        title="Dressing rooms",
        value="rooms",
        combine="sum",
        day="sum",
        question="How many dressing rooms are there, of what size, and which have showers?",
        remedy=ASK_EARLY,
        who="the show",
    ),
    dressing(
        key="persons in dressing rooms",
        title="Persons in all dressing rooms",
        value="persons-in-all",
        combine="sum",
        day="sum",
        question="How many persons do your dressing rooms hold, room by room?",
        remedy=HIRE,
        who="the house, or hire",
    ),
    dressing(
        key="persons in one dressing room",
        title="Persons in one dressing room",
        value="persons",
        question="How many persons does your largest dressing room hold?",
        remedy=ASK_EARLY,
        who="the show",
    ),
    dressing(
        key="step-free dressing room",
        title="A dressing room that a wheelchair reaches",
        kind="yes",
        ways=(IS,),
        value="step_free",
        question="Which dressing room can be reached in a wheelchair, and the stage from it?",
        remedy="Dress at stage level, or bring a ramp.",
        who="the house",
    ),
    other(
        key="offices",
        title="Offices for production",
        value="rooms",
        where=(("use", "office"),),
        combine="sum",
        day="sum",
        question="How many offices can a production have, with what desks and network?",
        remedy="Use a dressing room as an office.",
        who="the house",
    ),
    other(
        key="places to eat",
        title="Places at table for catering",
        value="persons-in-all",
        where=(("use", "catering"),),
        combine="sum",
        question="How many can eat at one time, and where?",
        remedy="Eat in two sittings.",
        who="the show",
    ),
    washing(
        key="showers",
        title="Showers behind the stage",
        value="showers",
        also=(("dressing-room", "showers-in-all"),),
        question="How many showers are there for the show and its crew?",
        remedy=HIRE,
        who="the house, or hire",
    ),
    washing(
        key="toilets behind the stage",
        title="Toilets behind the stage",
        value="toilets",
        also=(("dressing-room", "toilets-in-all"),),
        question="How many toilets are there behind the stage?",
        remedy=HIRE,
        who="the house, or hire",
    ),
    *(
        Rule(
            department="rooms",
            section="rooms",
            item="equipment",
            whole="equipment",
            kind="count",
            ways=(AT_LEAST,),
            key=key,
            title=title,
            value="working",
            otherwise=("count",),
            where=(("what", what),),
            combine="sum",
            day=day,
            question=question,
            remedy=remedy,
            who="the house, or hire",
        )
        for key, title, what, day, question, remedy in (
            (
                "washing machines",
                "Washing machines",
                "washing machine",
                "largest",
                "How many washing machines can a show use, and where do they stand?",
                "A laundry in town.",
            ),
            (
                "dryers",
                "Dryers",
                "dryer",
                "largest",
                "How many dryers can a show use, and where do they stand?",
                "A laundry in town, or a line to dry on.",
            ),
            (
                "clothes rails",
                "Clothes rails",
                "clothes rail",
                "sum",
                "How many clothes rails are there?",
                "Bring rails, or hire them.",
            ),
            (
                "towels",
                "Towels",
                "towel",
                "sum",
                "How many towels can we have, of what size, and who washes them?",
                "Bring towels, or hire them.",
            ),
        )
    ),
)
