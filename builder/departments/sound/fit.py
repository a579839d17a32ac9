"""
What a show may ask of sound: the mix and monitor positions, the drive lines, the split, and what is
in the store.
"""

from functools import partial

from builder.rules import IS, NUMBERS, Rule

sound = partial(Rule, department="sound", section="sound")
mix = partial(sound, item="mix")
monitors = partial(sound, item="monitor-position")
split = partial(sound, item="split", kind="count", who="the show, or hire")
stocked = partial(
    sound, kind="count", value="working", combine="sum", day="shared", who="the show, or hire"
)

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
    sound(
        key="console inputs",
        title="Inputs of a house console",
        kind="count",
        item="console",
        value="inputs",
        question="Which consoles does the house have, and how many inputs has each?",
        remedy="Bring or hire a console.",
        who="the show, or hire",
    ),
    split(
        key="inputs",
        title="Input lines from the stage",
        value="ways",
        beside="dropbox",
        whole="splits",
        elsewhere=("lines", "stage-to-mix", "analogue.free"),
        question=(
            "How many input lines are there from the stage to the mix position, and where are the"
            " drop boxes?"
        ),
        remedy=(
            "Bring your own multicore and stage boxes for the rest, or share lines with an act that"
            " is patched again."
        ),
    ),
    split(
        key="split ways",
        title="Ways of the split",
        value="ways",
        beside="dropbox",
        whole="splits",
        question="How many ways does your split have?",
        remedy="Bring a split of your own, or hire one.",
    ),
    split(
        key="split legs",
        title="Legs of the split, the direct one included",
        value="legs",
        whole="splits",
        day="sum",
        question="How many legs does your split have, and which are isolated?",
        remedy="Bring a split of your own, or take both desks from one stage box.",
    ),
    sound(
        key="subs",
        title="Subs",
        kind="count",
        item="subs",
        value="playing",
        also=(("boxes", "subs"),),
        combine="sum",
        whole="subs",
        question="How many subs are there, how low do they go, and can they be fed apart?",
        remedy="Hire subs, or plan with those that there are.",
        who="the show, or hire",
    ),
    stocked(
        key="in-ear mixes",
        title="Stereo in-ear mixes",
        item="radio",
        where=(("kind", "in-ear"),),
        otherwise="channels",
        question="How many stereo in-ear systems do you have, and in which band?",
        remedy="Bring or hire in-ear systems, and send their frequencies to whoever coordinates.",
    ),
    stocked(
        key="wedges",
        title="Matched wedges that work",
        item="monitor",
        where=(("kind", "wedge"),),
        otherwise="count",
        combine="best",
        question="How many matched wedges do you have, on how many mixes?",
        remedy="Hire wedges of one model, or mix models on mixes of their own.",
    ),
    stocked(
        key="radio microphones",
        title="Channels of the house's radio microphones that work",
        item="radio",
        where=(("kind", "microphone"),),
        otherwise="channels",
        day="sum",
        question="How many radio microphones do you have, and over which band do they tune?",
        remedy=(
            "Bring or hire radio microphones, and send their frequencies to whoever coordinates."
        ),
    ),
    stocked(
        key="microphones",
        title="Microphones that work, all classes together",
        item="stock",
        where=(("kind", "microphone"),),
        otherwise="count",
        question="Which microphones and stands do you have, by class?",
        remedy="Bring or hire the rest. Compare the list by class.",
    ),
    stocked(
        key="direct boxes",
        title="Direct boxes that work, active and passive together",
        item="stock",
        where=(("kind", "direct box"),),
        otherwise="count",
        question="How many direct boxes do you have, active and passive?",
        remedy="Bring or hire the rest.",
    ),
    stocked(
        key="microphone stands",
        title="Microphone stands that work, clamps included",
        item="stock",
        where=(("kind", "stand"),),
        otherwise="count",
        question="How many microphone stands do you have, by kind?",
        remedy="Bring or hire the rest.",
    ),
)
