"""
What a show may ask of lines: how many are free from the stage to the mix position, talkback,
networks.
"""

from functools import partial

from builder.rules import IS, Rule

to_mix = partial(
    Rule,
    department="lines",
    kind="count",
    section="lines",
    item="stage-to-mix",
    whole="lines",
    day="sum",
    who="the show",
)

reaching = partial(Rule, department="lines", section="lines", item="reaching")

RULES = (
    to_mix(
        key="fibres to the mix position",
        title="Free fibres from the stage to the mix position, a pair counting two",
        value="fibre.free",
        question=(
            "How many fibres run from the stage to the mix position, of which class, and how many"
            " are free?"
        ),
        remedy="Bring your own fibre, or go by the copper data lines.",
    ),
    to_mix(
        key="data lines to the mix position",
        title="Free copper data lines from the stage to the mix position",
        value="copper-data.free",
        question=(
            "How many copper data lines run from the stage to the mix position, of which category"
            " and length, and how many are free?"
        ),
        remedy="Bring your own, within 100 m, or go by fibre.",
    ),
    to_mix(
        key="analogue lines to the mix position",
        title="Free analogue lines from the stage to the mix position",
        value="analogue.free",
        question=(
            "How many analogue lines run from the stage to the mix position, and how many are free?"
        ),
        remedy="Bring your own multicore: the cable path is told with the mix position.",
    ),
    to_mix(
        key="returns from the mix position",
        title="Free analogue lines from the mix position to the stage",
        value="analogue-back.free",
        question="How many analogue lines run back from the mix position, and how many are free?",
        remedy="Bring your own multicore, or send what comes back by data lines.",
    ),
    to_mix(
        key="video lines",
        title="Free coax lines from the stage to the mix position",
        value="coax.free",
        question="How many video lines run to the mix position, of which signal and length?",
        remedy="Bring your own cable or converters to fibre.",
    ),
    to_mix(
        key="lighting control lines",
        title="Free DMX lines from the stage to the mix position",
        value="dmx.free",
        question="How many lighting control lines run to the mix position, and how many are free?",
        remedy="Bring your own cable, or go by the lighting network.",
    ),
    reaching(
        key="intercom stations",
        title="Intercom stations that work",
        kind="count",
        value="stations",
        whole="talkback_channels",
        day="largest",
        question="How many intercom stations work, of which kind, where, and on which connector?",
        remedy="Bring belt packs of your own, or hire a wireless set.",
        who="the show, or hire",
    ),
    reaching(
        key="intercom channels",
        title="Intercom channels",
        kind="count",
        value="channels",
        whole="talkback_channels",
        day="largest",
        question="How many intercom channels are there, and who is on which?",
        remedy="Share a channel, or bring a set of your own for the show's own people.",
        who="the show",
    ),
    reaching(
        key="internet",
        title="Internet by cable",
        kind="yes",
        ways=(IS,),
        value="internet",
        question=(
            "Is there internet by cable for production, how fast both ways, and at which places?"
        ),
        remedy="Bring a mobile link, and try it on site.",
        who="the show",
    ),
    Rule(
        key="internet rate",
        title="Rate of internet by cable, down",
        department="lines",
        kind="data rate",
        section="lines",
        item="network",
        value="internet_down",
        whole="networks",
        question="How fast is the internet by cable, both ways, and who else is on it?",
        remedy="Ask for a line of its own in time, or bring a mobile link.",
        who="the house, or the show",
    ),
    Rule(
        key="internet rate up",
        title="Rate of internet by cable, up",
        department="lines",
        kind="data rate",
        section="lines",
        item="network",
        value="internet_up",
        whole="networks",
        question="How fast is the internet by cable, both ways, and who else is on it?",
        remedy="Ask for a line of its own in time, or bring a mobile link.",
        who="the house, or the show",
    ),
    Rule(
        key="stage relay everywhere",
        title="Sound of the stage, and calls, in all rooms backstage",
        department="lines",
        kind="yes",
        ways=(IS,),
        section="lines",
        item="relay",
        value="everywhere",
        where=(("kind", "audio"),),
        whole="relays",
        question="In which dressing rooms are the stage and its calls heard?",
        remedy="Send a runner, or use the rooms that hear the stage.",
        who="the show",
    ),
    Rule(
        key="cue lights",
        title="Cue lights",
        department="lines",
        kind="count",
        section="lines",
        item="cue-lights",
        value="count",
        whole="cue_lights",
        combine="sum",
        day="shared",
        question="How many cue lights are there, and from where are they worked?",
        remedy="Bring cue lights with their cable, or call by headset.",
        who="the show, or hire",
    ),
    reaching(
        key="network at the mix position",
        title="A network of the house at the mix position",
        kind="yes",
        ways=(IS,),
        value="at_mix",
        question=(
            "Which network has sockets at the mix position, and whom do we ask before we plug in?"
        ),
        remedy="Run a cable from the nearest socket, within 100 m.",
        who="the show",
    ),
)
