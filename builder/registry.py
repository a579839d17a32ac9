"""
All departments, in the order of the site.

Adding one is a folder under ``departments/`` and a line here.
"""

from typing import Any

from builder.department import Department
from builder.departments.access import ACCESS
from builder.departments.crew import CREW
from builder.departments.flying import FLYING
from builder.departments.house import HOUSE, House
from builder.departments.lines import LINES
from builder.departments.power import POWER
from builder.departments.rigging import RIGGING
from builder.departments.rooms import ROOMS
from builder.departments.sound import SOUND
from builder.departments.stage import STAGE
from builder.rider.undescribed import UNDESCRIBED
from builder.rules import Rule

DEPARTMENTS: tuple[Department[Any], ...] = (
    HOUSE,
    ACCESS,
    STAGE,
    RIGGING,
    FLYING,
    SOUND,
    POWER,
    LINES,
    ROOMS,
    CREW,
)

_DESCRIBED = tuple(rule for department in DEPARTMENTS for rule in department.rules)
_BEYOND = tuple(
    rule for rule in UNDESCRIBED if rule.key not in {described.key for described in _DESCRIBED}
)
RULES: dict[str, Rule] = {rule.key: rule for rule in (*_DESCRIBED, *_BEYOND)}
"""
All that a visiting show may ask, by what its rider writes. A described rule replaces one that
nobody describes yet.
"""

__all__ = ["DEPARTMENTS", "HOUSE", "RULES", "House"]
