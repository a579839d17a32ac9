"""What ``house.yml`` says of an open-air or seasonal house: when it plays, and in what weather."""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Duration, Length, TimeOfDay
from builder.reading.weekdays import Weekday
from builder.reading.words import Count, Name, Text
from builder.reading.written import Line, Plausible


class Season(Line):
    """When there are shows, where that is not all year."""

    public_because: ClassVar[str] = "no show can play outside it"
    days: tuple[Weekday, ...] = ()
    """The days of the week with shows, in order."""
    weeks: Text | None = None
    """Which weeks or months of the year, such as the second week of July."""
    shows: Annotated[Maybe[Count], Plausible(1, 400)] = Absent.NOT_STATED
    """How many days or evenings with shows there are in a season."""


class Weather(Line):
    """What is done in what weather, and who says so. The steps of wind stand in rigging.yml."""

    public_because: ClassVar[str] = "a show has to keep to it"
    rain: Maybe[Literal["the show goes on", "the show stops", "decided on the day"]] = (
        Absent.NOT_STATED
    )
    """In rain the show goes on, stops, or it is decided on the day."""
    lightning_within: Annotated[
        Maybe[Length], Possible.above(0.0, 100_000.0), Plausible(3_000.0, 30_000.0)
    ] = Absent.NOT_STATED
    """How near lightning must be for the deck to be cleared."""
    lightning_wait: Annotated[
        Maybe[Duration], Possible.above(0.0, 86_400.0), Plausible(600.0, 7_200.0)
    ] = Absent.NOT_STATED
    """How long after the last lightning nobody goes back."""
    judged_by: tuple[Name, ...] = ()
    """Who judges wind and weather, by role, the first first."""
    forecasts: tuple[TimeOfDay, ...] = ()
    """When a forecast is read out."""
    told_on: Name | None = None
    """Where it is told, such as on which radio channel."""
