"""What a show may ask of the house itself: how many it holds, effects, crew calls."""

from builder.rules import AT_LEAST, AT_MOST, IS, NUMBERS, Rule

EFFECTS = (
    "haze",
    "smoke",
    "flames",
    "pyrotechnics",
    "carbon dioxide",
    "confetti",
    "lasers",
    "drones",
)


def effect(name: str) -> Rule:
    """Whether one kind of effect may be used."""
    return Rule(
        key=name,
        title=f"{name.capitalize()} allowed",
        department="house",
        kind="permission",
        ways=(IS,),
        section="house",
        item="effect",
        value="allowed",
        where=(("name", name),),
        legal=True,
        question=(
            f"May we use {name}, how long before do you need to know, and what do you then need"
            " from us?"
        ),
        remedy="Leave it out of this show, or ask whether the rule can be met another way.",
        who="the show",
    )


RULES = (
    Rule(
        key="capacity",
        title="Persons in the audience",
        department="house",
        kind="count",
        section="house",
        item="configuration",
        value="capacity",
        ways=(AT_LEAST, AT_MOST),
        legal=True,
        question="How many persons may you admit, in which configuration?",
        remedy="Sell fewer tickets, or choose another configuration.",
        who="the promoter",
    ),
    Rule(
        key="wheelchair places",
        title="Wheelchair places",
        department="house",
        kind="count",
        section="house",
        item="configuration",
        value="wheelchair_places",
        question="How many wheelchair places are there, in which configuration?",
        remedy="Ask the house which seats can be taken out.",
        who="the house",
    ),
    Rule(
        key="shortest crew call",
        title="Shortest paid crew call",
        department="house",
        kind="duration",
        ways=(AT_MOST,),
        section="house",
        item="crew",
        value="shortest_call",
        question="What is the shortest crew call that is paid?",
        remedy="Plan the crew's other work within the same call.",
        who="the show",
    ),
    Rule(
        key="outdoors",
        title="A stage outdoors",
        department="house",
        kind="yes",
        ways=(IS,),
        section="house",
        item="identity",
        value="setting",
        means_yes=("outdoors", "under a roof"),
        question="Is the stage outdoors, and what is above it?",
        remedy="Bring what the show needs for weather, or play where there is none.",
        who="the show",
    ),
    Rule(
        key="roof",
        title="A roof above the stage",
        department="house",
        kind="yes",
        ways=(IS,),
        section="house",
        item="identity",
        value="setting",
        means_yes=("indoors", "under a roof"),
        question="Is there a roof above the stage, and does it keep the deck dry?",
        remedy="Hire a roof with its engineer, or play where there is one.",
        who="the promoter, or hire",
    ),
    Rule(
        key="temperature",
        title="Usual temperature during a show",
        department="house",
        kind="temperature",
        ways=NUMBERS,
        section="house",
        item="identity",
        value="air.temperature",
        question="How warm is it on stage and behind it, from the first call to the end?",
        remedy="Ask for heating or cooling from the first call on.",
        who="the house",
    ),
    Rule(
        key="humidity",
        title="Usual relative humidity",
        department="house",
        kind="share",
        ways=NUMBERS,
        section="house",
        item="identity",
        value="air.humidity",
        question="How humid is it on stage and behind it, in the season of the show?",
        remedy="Ask for humidifiers, or keep instruments in a room that has them.",
        who="the house, or hire",
    ),
    *(effect(name) for name in EFFECTS),
)
