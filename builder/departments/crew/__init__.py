"""Crew: who works here, the least crew, who operates what, rates, and a usual day worked out."""

from builder.department import Department
from builder.departments.crew.description import Crew
from builder.departments.crew.fit import RULES
from builder.departments.crew.page import headline, pages
from builder.departments.crew.publish import publish

CREW = Department(
    key="crew",
    title="Crew",
    description=Crew,
    publish=publish,
    listens_to=frozenset({"calls"}),
    pages=pages,
    headline=headline,
    rules=RULES,
)
