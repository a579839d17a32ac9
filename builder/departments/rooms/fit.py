"""What a show may ask of rooms: where one dresses, washes, works and eats."""

from functools import partial

from builder.rules import ANYTHING, AT_LEAST, IS, Rule

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
        key="lit mirrors",
        title="Places with a lit mirror in all dressing rooms",
        value="mirrors-in-all",
        combine="sum",
        day="sum",
        question="How many places in your dressing rooms have a mirror with light?",
        remedy="Bring or hire mirrors with lights.",
        who="the show, or hire",
    ),
    *(
        dressing(
            key=key,
            title=title,
            kind="yes",
            ways=(IS,),
            value=value,
            means_yes=means_yes,
            question=question,
            remedy=remedy,
            who="the show",
        )
        for key, title, value, means_yes, question, remedy in (
            (
                "lockable dressing room",
                "A dressing room that can be locked",
                "lock",
                (ANYTHING,),
                "Which dressing rooms can be locked, and who has the keys?",
                "Keep valuables with the production office.",
            ),
            (
                "heated dressing room",
                "A dressing room that can be heated",
                "heating",
                (),
                "Which dressing rooms can be heated?",
                "Bring heaters; the house says on which sockets.",
            ),
        )
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
        rooms(
            item="equipment",
            whole="equipment",
            key=f"{machine}s without coins",
            title=f"{machine.capitalize()}s that take no coins or tokens",
            value="working",
            otherwise=("count",),
            where=(("what", machine), ("coins", "no")),
            combine="sum",
            question=f"Does a {machine} take coins or tokens?",
            remedy="Bring the coins, or ask the house for tokens.",
            who="the show",
        )
        for machine in ("washing machine", "dryer")
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
                "irons",
                "Irons",
                "iron",
                "largest",
                "How many irons can a show use, with what boards?",
                "Bring an iron and a board.",
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
