"""What a show may ask of line sets."""

from functools import partial

from builder.rules import Rule

flying = partial(
    Rule, department="flying", section="flying", who="the head flyman or the head rigger"
)
free = partial(flying, item="lineset", where=(("free", "yes"),), whole="line_sets")

RULES = (
    free(
        key="line sets",
        title="Line sets free for a show",
        kind="count",
        each="line set load",
        combine="sum",
        day="sum",
        question="How many line sets are free, where do they hang, and what do they carry?",
        remedy="Hang it from trusses or hoists, or ask which sets can be cleared.",
    ),
    free(
        key="line set load",
        title="What may hang on one free line set",
        kind="mass",
        value="left",
        legal=True,
        question="What may hang on a free line set, beside its pipe?",
        remedy="Share it over two sets, or hang it from hoists.",
    ),
    free(
        key="line set point load",
        title="What may hang at one spot of a free line set",
        kind="mass",
        value="point_load",
        legal=True,
        question="What may hang at one spot of a pipe, without asking?",
        remedy="Spread it along the pipe, or ask the head flyman.",
    ),
    flying(
        key="variable-speed line sets",
        title="Free line sets whose speed can be set",
        kind="count",
        item="lineset",
        where=(("free", "yes"), ("fixed_speed", "no")),
        whole="line_sets",
        combine="sum",
        day="sum",
        question="Which free line sets have a speed that can be set?",
        remedy="Move it at the speed that the set has, or by flymen.",
    ),
    free(
        key="pipe length",
        title="Length of the pipe of a free line set",
        kind="length",
        value="pipe_length",
        question="How long are the pipes?",
        remedy="Extend the pipe, where the head flyman allows it, or hang a narrower piece.",
    ),
    free(
        key="high trim",
        title="How high a free line set goes",
        kind="length",
        value="high_trim",
        legal=True,
        question="How high does a pipe go above the deck?",
        remedy="Trip or fold the cloth, or leave part of it in sight.",
    ),
    free(
        key="low trim",
        title="How low a free line set comes",
        kind="length",
        ways=("at most",),
        value="low_trim",
        question="How low does a pipe come above the deck?",
        remedy="Hang it on longer lines below the pipe.",
    ),
    flying(
        key="spot lines",
        title="Spot lines",
        kind="count",
        item="spotline",
        value="count",
        whole="spot_lines",
        combine="sum",
        day="sum",
        question="How many spot lines can be dropped, where, and what does each carry?",
        remedy="Hang it on a line set, or from hoists.",
    ),
    flying(
        key="spot line load",
        title="What one spot line may carry",
        kind="mass",
        item="spotline",
        value="load",
        whole="spot_lines",
        legal=True,
        question="What may one spot line carry?",
        remedy="Share it over several lines.",
    ),
    flying(
        key="weights on hand",
        title="Weights on hand, those in arbors not counted",
        kind="mass",
        item="whole",
        value="weights",
        day="sum",
        question="How much weight is there to hold scenery, beside what hangs in arbors?",
        remedy="Bring or hire stage weights.",
    ),
    flying(
        key="grid height",
        title="Height of the grid",
        kind="length",
        item="whole",
        value="grid",
        question="How high is the grid above the deck?",
        remedy="Bring a lower piece.",
    ),
)
