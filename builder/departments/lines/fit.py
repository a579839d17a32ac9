"""What a show may ask of permanent lines: how many are free from the stage to the mix position."""

from functools import partial

from builder.rules import Rule

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

RULES = (
    to_mix(
        key="fibres to the mix position",
        title="Free fibres from the stage to the mix position, a pair counting two",
        value="fibre.free",
        question="How many fibres run from the stage to the mix position, of which class, and how many are free?",
        remedy="Bring your own fibre, or go by the copper data lines.",
    ),
    to_mix(
        key="data lines to the mix position",
        title="Free copper data lines from the stage to the mix position",
        value="copper-data.free",
        question="How many copper data lines run from the stage to the mix position, of which category and length, and how many are free?",
        remedy="Bring your own, within 100 m, or go by fibre.",
    ),
    to_mix(
        key="analogue lines to the mix position",
        title="Free analogue lines from the stage to the mix position",
        value="analogue.free",
        question="How many analogue lines run from the stage to the mix position, and how many are free?",
        remedy="Bring your own multicore: the cable path is told with the mix position.",
    ),
    to_mix(
        key="video lines",
        title="Free coax lines from the stage to the mix position",
        value="coax.free",
        question="How many video lines run to the mix position, of which signal and length?",
        remedy="Bring your own cable or converters to fibre.",
    ),
)
