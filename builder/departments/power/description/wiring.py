"""``power.yml`` as a whole, as it is written, before anybody asks whether its feeds make a tree."""

from typing import Annotated

from builder.departments.power.description.bounds import PowerFactor, Share
from builder.departments.power.description.nodes import (
    Adaptor,
    Board,
    Fed,
    Outlet,
    Service,
    ShoreOutlet,
    StandingLoad,
    UntracedOutlet,
)
from builder.departments.power.description.supplies import Generator, Supply
from builder.reading.absent import Absent, listed
from builder.reading.maybe import Maybe
from builder.reading.quantities import (
    Percent,
)
from builder.reading.words import Text
from builder.reading.written import Assumed, Decisive, DepartmentFile, Plausible, Written

USUAL_IMBALANCE = Percent(0.15, "15 %")


class DropLimits(Written):
    """How much voltage the house allows to be lost, and by which rule."""

    feeder: Annotated[Maybe[Percent], Plausible(0.005, 0.1)] = Absent.NOT_STATED
    """From the supply to a service or board."""
    to_the_load: Annotated[Maybe[Percent], Plausible(0.01, 0.15)] = Absent.NOT_STATED
    """From the supply to the last plug, visitors' cables included."""
    by: Maybe[Text] = Absent.NOT_STATED
    """The rule it follows."""


class Wiring(DepartmentFile):
    """Supplies, services, boards, outlets, standing loads and shore power, as written."""

    continuous_share: Annotated[Maybe[Share], Plausible(0.5, 1.0), Decisive()] = Absent.NOT_STATED
    """
    Share of every rating that may be used for hours on end, by the house's rule or the code; none
    where all of it may. Where nobody says it, what is free is told as "at most".
    """
    usual_power_factor: Annotated[Maybe[PowerFactor], Plausible(0.5, 1.0)] = Absent.NOT_STATED
    """Power factor where a load does not say its own, and for voltage drop."""
    imbalance_limit: Annotated[
        Maybe[Percent], Plausible(0.02, 0.5), Assumed("common practice, no source")
    ] = USUAL_IMBALANCE
    """From which imbalance of the phases on the house wants to know."""
    voltage_drop_limits: Annotated[Maybe[DropLimits], Decisive()] = Absent.NOT_STATED
    """How much voltage may be lost."""
    neutral_and_earth: Maybe[Text] = Absent.NOT_STATED
    """How neutral and earth are run in this house, for whoever hunts a hum."""
    backup: Maybe[Text] = Absent.NOT_STATED
    """What runs on when the supply fails: uninterruptible supplies, standby generators."""
    visiting_generators: Maybe[Text] = Absent.NOT_STATED
    """Whether a show may bring a generator, where it stands and who connects it."""
    order_of_connection: Maybe[Text] = Absent.NOT_STATED
    """House rule on the order of connecting single-pole sets and on lock-out."""
    supplies: tuple[Supply, ...] = ()
    """The intakes and house transformers."""
    generators: Maybe[tuple[Generator, ...]] = ()
    """Generators of the house or of the site."""
    services: tuple[Service, ...] = ()
    """Where power is handed over."""
    boards: tuple[Board, ...] = ()
    """Distribution boards that feed outlets or house loads."""
    outlets: tuple[Outlet, ...] = ()
    """What a plug goes into, by place."""
    untraced_outlets: tuple[UntracedOutlet, ...] = ()
    """Outlets that nobody has counted, or nobody knows what feeds."""
    adaptors: Maybe[tuple[Adaptor, ...]] = Absent.NOT_STATED
    """Adaptors from one connector to another, or none."""
    standing_loads: Maybe[tuple[StandingLoad, ...]] = ()
    """
    What the house draws anyway. Where it is unknown, nothing is said to be free for certain.
    """
    shore_power: Annotated[Maybe[tuple[ShoreOutlet, ...]], Decisive()] = Absent.NOT_STATED
    """Outlets for buses and trucks, or none."""

    @property
    def house_loads(self) -> tuple[StandingLoad, ...]:
        """The standing loads that are described."""
        return listed(self.standing_loads)

    @property
    def shore_outlets(self) -> tuple[ShoreOutlet, ...]:
        """Shore outlets; none where there are none, or nobody has said."""
        return () if isinstance(self.shore_power, Absent) else self.shore_power

    @property
    def roots(self) -> tuple[Supply | Generator, ...]:
        """What nothing of the house feeds."""
        return (*self.supplies, *listed(self.generators))

    @property
    def fed(self) -> tuple[Fed, ...]:
        """What something of the house feeds."""
        return (*self.services, *self.boards)
