"""Rigging: the steel overhead, what it carries, and what hangs from it."""

from builder.department import Department
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.fit import RULES
from builder.departments.rigging.page import pages
from builder.departments.rigging.page.summary import headline
from builder.departments.rigging.publish import offer, publish

RIGGING = Department(
    key="rigging",
    title="Rigging",
    description=Rigging,
    publish=publish,
    listens_to=frozenset({"loads"}),
    pages=pages,
    headline=headline,
    offer=offer,
    rules=RULES,
)
