"""
Rules for what no department describes yet.

They can be asked all the same; the answer is a question to the house, never a guess.
"""

from functools import partial

from builder.rules import IS, Rule

lines = partial(Rule, department="lines", kind="count")
sound = partial(Rule, department="sound", kind="count")
lighting = partial(Rule, department="lighting", kind="count")


UNDESCRIBED = (
    lines(
        key="fibres to the mix position",
        title="Fibre or data lines to the mix position",
        question="How many fibre and data lines run to the mix position?",
        day="sum",
    ),
    sound(
        key="radio channels",
        title="Radio channels at once",
        question="Who coordinates radio, which bands are free, and when is the list due?",
        day="sum",
    ),
    lighting(
        key="followspots",
        title="Followspots",
        question="How many followspots are there, of what throw, and who runs them?",
    ),
    lighting(
        key="moving lights",
        title="Moving lights",
        question="Which moving lights hang, and in which positions?",
    ),
    lighting(
        key="universes",
        title="Control universes",
        question="How many universes run to the mix position, by which protocol?",
    ),
    Rule(
        key="video lines",
        title="Video lines to the mix position",
        department="video",
        kind="count",
        question="How many video lines run to the mix position, of which signal and length?",
        day="sum",
    ),
    Rule(
        key="projector or wall",
        title="A projector or a wall",
        department="video",
        kind="yes",
        ways=(IS,),
        question="Is there a projector or a wall, of what size and brightness?",
    ),
    Rule(
        key="intercom stations",
        title="Intercom stations",
        department="communication",
        kind="count",
        question="How many intercom stations and channels are there, and on which connector?",
    ),
    Rule(
        key="dressing rooms",
        title="Dressing rooms",
        department="rooms",
        kind="count",
        question="How many dressing rooms are there, of what size, and which have showers?",
        day="sum",
    ),
    Rule(
        key="internet",
        title="Internet by cable",
        department="rooms",
        kind="yes",
        ways=(IS,),
        question="Is there internet by cable for production, and how fast?",
    ),
)
