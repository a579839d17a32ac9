"""All departments, in the order of the site. Adding one is a folder under ``departments/`` and a line here."""

from typing import Any

from builder.department import Department
from builder.departments.access import ACCESS
from builder.departments.house import HOUSE, House
from builder.departments.power import POWER
from builder.departments.rigging import RIGGING
from builder.departments.sound import SOUND
from builder.departments.stage import STAGE

DEPARTMENTS: tuple[Department[Any], ...] = (
    HOUSE,
    ACCESS,
    STAGE,
    RIGGING,
    SOUND,
    POWER,
)

__all__ = ["DEPARTMENTS", "HOUSE", "House"]
