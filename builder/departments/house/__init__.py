"""The house: identity, capacities, contacts and limits."""

from builder.department import Department
from builder.departments.house.description import House
from builder.departments.house.fit import RULES
from builder.departments.house.page import headline, pages
from builder.departments.house.publish import offer, publish

HOUSE = Department(
    key="house",
    title="House",
    description=House,
    publish=publish,
    pages=pages,
    headline=headline,
    offer=offer,
    rules=RULES,
    required=True,
)

__all__ = ["HOUSE", "House"]
