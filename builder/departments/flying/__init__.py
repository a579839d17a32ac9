"""Flying: line sets, what they carry and leave, floors, spot lines."""

from builder.department import Department
from builder.departments.flying.description import Flying
from builder.departments.flying.fit import RULES
from builder.departments.flying.page import headline, pages
from builder.departments.flying.publish import publish

FLYING = Department(
    key="flying",
    title="Flying",
    description=Flying,
    publish=publish,
    pages=pages,
    headline=headline,
    rules=RULES,
)
