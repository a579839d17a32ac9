"""Days of the week, as rules and hours name them."""

from typing import Literal

Weekday = Literal[
    "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday", "every day"
]
