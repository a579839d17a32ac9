"""What feeds the house, as it is written: supplies and generators."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from builder.departments.power.description.bounds import Degrees, PowerFactor, Share
from builder.departments.power.description.systems import WrittenSystem
from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import (
    Across,
    ApparentPower,
    Current,
    Depth,
    Duration,
    Height,
    Length,
    Percent,
    Temperature,
    TimeOfDay,
    Volume,
)
from builder.reading.words import Name, Text, YesNo
from builder.reading.written import Decisive, Line, OfModel, Plausible, Rated, Written
from builder.stating import Measured

FEED = "power source"
"""What supplies, generators, services and boards are to those who refer to them."""


class Spot(Written):
    """A position in the house."""

    across: Across
    """Distance from the centre line, such as 9.5 m SR."""
    depth: Depth
    """Distance from the reference line, such as 2 m US."""
    height: Annotated[Height | None, Measured("deck")] = None
    """Height above the deck, such as 1.4 m up."""


class Supply(Line):
    """What feeds services: the intake, or a transformer of the house."""

    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {"continuous_share": ("continuous_share",)}
    defines: ClassVar[str] = FEED
    name: Name
    """The name of the supply. Services refer to it."""
    system: Annotated[Maybe[WrittenSystem], Decisive()] = Absent.NOT_STATED
    """The system with its voltages and phases, such as 230/400 V three phase 50 Hz."""
    rating: Annotated[Maybe[Current], Rated(), Plausible(10.0, 6000.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """What it may carry on each phase."""
    breaker: Annotated[Maybe[Current], Rated(), Plausible(10.0, 6000.0)] = Absent.NOT_STATED
    """The setting of its main breaker, on each phase."""
    neutral_rating: Annotated[Maybe[Current], Rated(), Plausible(5.0, 6000.0)] = Absent.NOT_STATED
    """
    What its neutral may carry; none where it has no neutral. Left out, it is counted like one of
    the lines.
    """
    transformer: Annotated[Maybe[ApparentPower], Plausible(1.0e3, 5.0e6)] = Absent.NOT_STATED
    """Rating of the transformer in front of it."""
    continuous_share: Annotated[Maybe[Share], Plausible(0.5, 1.0)] = Absent.NOT_STATED
    """Share of the rating that may be used for hours, where it differs from the house's."""
    earthing: Maybe[Text] = Absent.NOT_STATED
    """The earthing system, such as TN-S, or one bond at the intake."""
    at: Spot | None = None
    """Where it is."""
    private: YesNo | None = None
    """
    Whether it is the house's own transformer or generator, and not the public network at low
    voltage.
    """


class AltitudeDerating(Written):
    """The maker's sentence on height, such as 3 % for each 500 m above 1000 m."""

    above: Annotated[Length, Possible(-500.0, 9000.0)]
    """The height above which the machine loses power."""
    per: Length
    """The step in height."""
    loses: Percent
    """What it loses in each step."""


class TemperatureDerating(Written):
    """The maker's sentence on air temperature, such as 3 % for each 5 C above 40 C."""

    above: Temperature
    """The air temperature above which the machine loses power."""
    per: Degrees
    """
    The step in temperature, written like a temperature: 5 C. In Fahrenheit it is read as a
    difference too.
    """
    loses: Percent
    """What it loses in each step."""


class Burn(Written):
    """Fuel in an hour at one share of the prime rating, from the maker's sheet."""

    load: Percent
    """Share of the prime rating."""
    in_one_hour: Volume
    """Fuel in one hour at that load."""


class Generator(Line):
    """A generator that feeds services."""

    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {"continuous_share": ("continuous_share",)}
    defines: ClassVar[str] = FEED
    name: Name
    """The name of the generator. Services refer to it."""
    system: Annotated[Maybe[WrittenSystem], Decisive()] = Absent.NOT_STATED
    """The system with its voltages and phases."""
    prime: Annotated[
        Maybe[ApparentPower], Rated(), Plausible(2.0e3, 5.0e6), Decisive(), OfModel()
    ] = Absent.NOT_STATED
    """Prime rating, from the nameplate."""
    rated_power_factor: Annotated[Maybe[PowerFactor], Plausible(0.5, 1.0), OfModel()] = (
        Absent.NOT_STATED
    )
    """Power factor that the rating holds for, from the nameplate."""
    breaker: Annotated[Maybe[Current], Rated(), Plausible(10.0, 6000.0), OfModel()] = (
        Absent.NOT_STATED
    )
    """The setting of its breaker, on each phase."""
    continuous_share: Annotated[Maybe[Share], Plausible(0.5, 1.0)] = Absent.NOT_STATED
    """Share of the rating that may be used for hours, where it differs from the house's."""
    works_at_altitude: Annotated[
        Maybe[Length], Possible(-500.0, 9000.0), Plausible(-430.0, 5000.0)
    ] = Absent.NOT_STATED
    """
    Height above sea level where it runs, where that is not the house's own altitude from house.yml.
    """
    works_in_air_of: Annotated[Maybe[Temperature], Plausible(233.15, 333.15)] = Absent.NOT_STATED
    """The hottest air it must run in."""
    altitude_derating: Annotated[Maybe[AltitudeDerating], OfModel()] = Absent.NOT_STATED
    """
    What the maker's sheet says about height; none where nothing is taken off here. Left out, what
    is free above 111 m is told as "at most".
    """
    temperature_derating: Annotated[Maybe[TemperatureDerating], OfModel()] = Absent.NOT_STATED
    """
    What the maker's sheet says about air temperature; none where nothing is taken off here. Left
    out, what is free in air above 25 °C is told as "at most".
    """
    burns: Annotated[tuple[Burn, ...], OfModel()] = ()
    """The maker's consumption at two or more loads."""
    tank: Annotated[Maybe[Volume], Plausible(0.01, 20.0), OfModel()] = Absent.NOT_STATED
    """How much fuel the tank holds."""
    earthing: Maybe[Text] = Absent.NOT_STATED
    """How its neutral is earthed and who does it."""
    at: Spot | None = None
    """Where it stands."""
    distance: Annotated[Maybe[Length], Possible(0.0, 10_000.0), Plausible(1.0, 500.0)] = (
        Absent.NOT_STATED
    )
    """How far from the stage it stands."""
    sound_damped: YesNo | None = None
    """Whether it stands in a sound-damped box."""
    fuel_kind: Annotated[
        Maybe[Literal["diesel", "petrol", "gas", "hydrogen", "battery"]], OfModel()
    ] = Absent.NOT_STATED
    """Diesel, petrol, gas, hydrogen or battery."""
    fuel_on_site: Maybe[Volume] = Absent.NOT_STATED
    """How much fuel is on site beside its tank."""
    runs_from: TimeOfDay | None = None
    """From when it runs on a show day."""
    runs_until: TimeOfDay | None = None
    """Until when it runs."""
    runs_after_curfew: Annotated[Duration | None, Plausible(0.0, 21_600.0)] = None
    """How long it runs after the curfew, where that says until when."""
    arrives_within: Annotated[Maybe[Duration], Plausible(600.0, 172_800.0)] = Absent.NOT_STATED
    """How long it takes to come, where it is on call and not on site."""
