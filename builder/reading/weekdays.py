"""Days of the week, as rules, hours and shows name them."""

from typing import Literal

DayOfWeek = Literal["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]
Weekday = Literal[DayOfWeek, "every day"]
