"""All departments, in the order of the site. Adding one is a folder under ``departments/`` and a line here."""

from typing import Any

from builder.department import Department
from builder.departments.house import HOUSE, House

DEPARTMENTS: tuple[Department[Any], ...] = (HOUSE,)

__all__ = ["DEPARTMENTS", "HOUSE", "House"]
