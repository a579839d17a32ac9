"""Rooms: dressing rooms, offices, catering, washrooms, laundry, and who may have which."""

from builder.department import Department
from builder.departments.rooms.description import Rooms
from builder.departments.rooms.fit import RULES
from builder.departments.rooms.page import headline, pages
from builder.departments.rooms.publish import publish

ROOMS = Department(
    key="rooms",
    title="Rooms",
    description=Rooms,
    publish=publish,
    pages=pages,
    headline=headline,
    rules=RULES,
)
