"""Access: approaches, docks, routes, forklifts, parking, storage."""

from builder.department import Department
from builder.departments.access.description import Access
from builder.departments.access.fit import RULES
from builder.departments.access.page import headline, pages
from builder.departments.access.publish import publish

ACCESS = Department(
    key="access",
    title="Access",
    description=Access,
    publish=publish,
    pages=pages,
    headline=headline,
    rules=RULES,
)
