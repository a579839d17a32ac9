"""A time of day, on the 24-hour clock or with am and pm."""

from builder.reading.quantity import Quantity


class TimeOfDay(Quantity):
    """A time of day; ``si`` is seconds after midnight. 24:00 is the end of the day."""

    __slots__ = ()
    kind, examples, si_unit, way = "a time of day", ("22:30", "10:30 pm"), "s", "time"

    @property
    def minutes(self) -> float:
        """Minutes after midnight."""
        return self.si / 60
