"""What a show may ask of sound: the mix and monitor positions, and the drive lines."""

from functools import partial

from builder.rules import IS, NUMBERS, Rule

sound = partial(Rule, department="sound", section="sound")
mix = partial(sound, item="mix")
monitors = partial(sound, item="monitor-position")

RULES = (
    mix(
        key="mix position width",
        title="Width of the mix position",
        kind="length",
        value="width",
        day="sum",
        question="How wide is the mix position, with your own desk still there?",
        remedy="Move the house desk, or take out more seats.",
        who="the house",
    ),
    mix(
        key="mix position depth",
        title="Depth of the mix position",
        kind="length",
        value="depth",
        question="How deep is the mix position?",
        remedy="Set the desks one behind the other, or take out more seats.",
        who="the house",
    ),
    mix(
        key="mix position distance",
        title="From the datum to the mix position",
        kind="length",
        ways=NUMBERS,
        value="distance",
        question="How far from the deck edge is the mix position?",
        remedy="Ask whether the mix position can be moved, and what it costs in seats.",
        who="the house",
    ),
    mix(
        key="mix position off centre",
        title="Mix position off the centre line",
        kind="length",
        ways=("at most",),
        value="off_centre",
        question="How far off the centre line is the mix position?",
        remedy="Ask whether the mix position can be moved.",
        who="the house",
    ),
    mix(
        key="mix position under a balcony",
        title="Mix position under a balcony",
        kind="yes",
        ways=(IS,),
        value="under_balcony",
        question="Is the mix position under a balcony?",
        remedy="Ask whether the mix position can be moved.",
        who="the house",
    ),
    mix(
        key="cable path to the mix position",
        title="Cable path from the stage to the mix position",
        kind="length",
        ways=("at most",),
        value="cable_path",
        question="How long is the cable path from the stage to the mix position?",
        remedy="Use the house's lines, or bring a longer cable.",
        who="the show",
    ),
    monitors(
        key="monitor position width",
        title="Width of the monitor position",
        kind="length",
        value="width",
        day="sum",
        question="How wide is the monitor position?",
        remedy="Use the other wing, or mix monitors from the mix position.",
        who="the show",
    ),
    monitors(
        key="monitor position depth",
        title="Depth of the monitor position",
        kind="length",
        value="depth",
        question="How deep is the monitor position?",
        remedy="Use the other wing, or mix monitors from the mix position.",
        who="the show",
    ),
    monitors(
        key="monitor mixes",
        title="Mixes from the monitor position",
        kind="count",
        value="mixes",
        question="How many mixes does the monitor position have?",
        remedy="Bring your own desk and amplifiers for the rest.",
        who="the show",
    ),
    sound(
        key="drive lines",
        title="Inputs of the house system's processor",
        kind="count",
        item="processor",
        value="inputs",
        question="How many inputs does the house system's processor have, of which signals?",
        remedy="Feed fewer zones by themselves, or matrix in the visiting desk.",
        who="the show",
    ),
)
