"""Sound: the house system and what it covers, positions, lines on stage, radio and stock."""

from builder.department import Department
from builder.departments.sound.description import Sound
from builder.departments.sound.fit import RULES
from builder.departments.sound.page import headline, maps_in, pages
from builder.departments.sound.publish import offer, publish

SOUND = Department(
    key="sound",
    title="Sound",
    description=Sound,
    publish=publish,
    listens_to=frozenset({"air", "half_spots", "hang_states", "limits", "spots"}),
    pages=pages,
    headline=headline,
    offer=offer,
    maps_in=maps_in,
    rules=RULES,
)
