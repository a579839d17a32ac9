"""
The sentences that stand beside figures which can hurt someone, on every output.

Each says three things: that it is a planning figure, what decides in its place, and who.
"""

LOADS = (
    "Planning figures. They do not replace the structural engineer's letter, the makers' data or"
    " the local code. A competent rigger decides on site what hangs, where and how."
)
ELECTRICITY = (
    "Planning figures. The local wiring code and the makers' data decide. Only licensed"
    " electricians connect, after lock-out and a check that the supply is dead."
)
NOISE = (
    "Planning figures from a model, not a measurement. The local noise law and the house's meter"
    " decide. Loud sound damages hearing: follow the local rules on exposure."
)
TRAFFIC = (
    "Planning figures. Road signs, the local traffic code and the truck's and forklift's own plates"
    " decide. A banksman guides every reversing truck; only certified drivers use the forklift."
)
STAGE = (
    "Planning figures. The structural engineer's letter and the local code decide what the deck and"
    " the audience areas carry. A competent person checks each build."
)
WIND = (
    "Planning figures. The structure's own engineer sets the wind limits. The site's plan and its"
    " responsible person decide when to lower and clear."
)
EVERYWHERE = (
    "Every figure here is a planning figure, computed from what the house wrote. The local code,"
    " the makers' data and a licensed or competent person decide."
)
