"""Power: supplies, services, boards, outlets, standing loads, shore power."""

from builder.department import Department
from builder.departments.power.description import Power
from builder.departments.power.elsewhere import on_shared
from builder.departments.power.fit import RULES
from builder.departments.power.page import headline, pages
from builder.departments.power.publish import publish

POWER = Department(
    key="power",
    title="Power",
    description=Power,
    publish=publish,
    listens_to=frozenset({"altitude"}),
    pages=pages,
    headline=headline,
    reaching_out=on_shared,
    rules=RULES,
)
