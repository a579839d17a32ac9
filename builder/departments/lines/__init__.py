"""Lines: permanent lines from place to place, the drive plan, talkback, networks."""

from builder.department import Department
from builder.departments.lines.description import Lines
from builder.departments.lines.fit import RULES
from builder.departments.lines.page import headline, pages
from builder.departments.lines.publish import offer, publish

LINES = Department(
    key="lines",
    title="Lines",
    description=Lines,
    publish=publish,
    listens_to=frozenset({"drives", "floors_drawn", "said_on_stage", "shapes", "spots"}),
    pages=pages,
    headline=headline,
    offer=offer,
    rules=RULES,
)
