"""The stage: datum, deck, wings, heights, loads, risers, places."""

from builder.department import Department
from builder.departments.stage.description import Stage
from builder.departments.stage.fit import RULES
from builder.departments.stage.page import headline, pages
from builder.departments.stage.publish import offer, publish

STAGE = Department(
    key="stage",
    title="Stage",
    description=Stage,
    publish=publish,
    listens_to=frozenset({"loads", "overhead", "overhead_told", "steel"}),
    pages=pages,
    headline=headline,
    offer=offer,
    rules=RULES,
)
