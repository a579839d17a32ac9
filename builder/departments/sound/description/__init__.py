"""
``sound.yml``: the house system and what it covers, who may change it, mix and monitor positions,
lines, radio and stock.
"""

from collections.abc import Iterator, Sequence
from typing import Annotated, ClassVar

from builder.departments.sound.description.loudspeakers import (
    Amplifier,
    AudienceArea,
    Fill,
    Hang,
    Model,
    SubLine,
)
from builder.departments.sound.description.neighbours import Neighbour
from builder.departments.sound.description.positions import (
    ClaimedLevel,
    Console,
    DriveLine,
    DropBox,
    HousePolicy,
    MixPosition,
    MonitorPosition,
    MonitorStock,
    OtherMixPosition,
    OtherMonitorPosition,
    Processor,
    Room,
    Split,
    Tail,
)
from builder.departments.sound.description.stock import (
    Boxes,
    Feed,
    HearingHelp,
    Radio,
    Spectrum,
    Stock,
)
from builder.reading.absent import Absent, listed
from builder.reading.in_part import ends_of
from builder.reading.lists import AtMost, too_many
from builder.reading.maybe import Maybe
from builder.reading.nodes import spoken
from builder.reading.problems import Problem
from builder.reading.references import spelling
from builder.reading.written import Decisive, DepartmentFile, InConfigurations

MOST_BOXES = 1_000
"""Each box sounds at each ear, so this keeps the maps quick. Large festivals have some hundreds."""


class Sound(DepartmentFile):
    """Sound: the house system, positions, lines, radio and stock."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset(
        {"other_mix_positions", "other_monitor_positions"}
    )
    policy: HousePolicy | None = None
    """Whether visitors use the house system."""
    processor: Annotated[Maybe[Processor], Decisive()] = Absent.NOT_STATED
    """The processor, and who may change it."""
    drive_lines: Annotated[Maybe[tuple[DriveLine, ...]], Decisive()] = Absent.NOT_STATED
    """The inputs to the house system."""
    mix_position: Annotated[Maybe[MixPosition], Decisive()] = Absent.NOT_STATED
    """Where the visiting engineer mixes."""
    other_mix_positions: tuple[OtherMixPosition, ...] = ()
    """Where the visiting engineer mixes in other configurations of the house."""
    claimed_levels: tuple[ClaimedLevel, ...] = ()
    """The levels the house says its system reaches."""
    room: Room | None = None
    """How the room sounds."""
    models: Annotated[tuple[Model, ...], AtMost(200)] = ()
    """Loudspeaker models, with their makers' figures."""
    hangs: Annotated[Maybe[tuple[Hang, ...]], AtMost(100), Decisive()] = Absent.NOT_STATED
    """The flown loudspeakers."""
    subs: Annotated[Maybe[tuple[SubLine, ...]], AtMost(20), Decisive()] = Absent.NOT_STATED
    """The subs."""
    fills: Annotated[Maybe[tuple[Fill, ...]], AtMost(100), Decisive()] = Absent.NOT_STATED
    """Front, out, under-balcony and other fills, and delays."""
    boxes: Annotated[Maybe[tuple[Boxes, ...]], AtMost(100)] = Absent.NOT_STATED
    """Loudspeakers that are told as stock, without their places or figures, or none."""
    amplifiers: tuple[Amplifier, ...] = ()
    """The amplifiers of the house system."""
    audience: Annotated[tuple[AudienceArea, ...], AtMost(40)] = ()
    """The areas where people listen."""
    neighbours: Annotated[tuple[Neighbour, ...], AtMost(20)] = ()
    """Places outside where the level matters, for open-air houses."""
    monitor_position: Annotated[Maybe[MonitorPosition], Decisive()] = Absent.NOT_STATED
    """Where monitors are mixed."""
    other_monitor_positions: tuple[OtherMonitorPosition, ...] = ()
    """Where monitors are mixed in other configurations of the house."""
    monitors: tuple[MonitorStock, ...] = ()
    """Wedges, side fills and drum fills."""
    consoles: tuple[Console, ...] = ()
    """The house's desks."""
    hearing_help: Maybe[tuple[HearingHelp, ...]] = Absent.NOT_STATED
    """What helps people who hear less, or none."""
    feeds: Maybe[tuple[Feed, ...]] = Absent.NOT_STATED
    """Lines that leave a desk for others, such as for a recording, or none."""
    splits: Annotated[Maybe[tuple[Split, ...]], Decisive()] = Absent.NOT_STATED
    """Where stage inputs divide."""
    drop_boxes: tuple[DropBox, ...] = ()
    """Boxes on stage that inputs are plugged into."""
    tails: tuple[Tail, ...] = ()
    """Cables that end in single connectors."""
    radio: tuple[Radio, ...] = ()
    """Radio systems of the house."""
    spectrum: Spectrum | None = None
    """What a visiting radio coordinator must know."""
    stock: tuple[Stock, ...] = ()
    """Microphones, direct boxes, stands."""

    def contradictions(self) -> Iterator[Problem]:
        """More boxes than the maps can add up, and two positions in one configuration."""
        counts = [hang.boxes for hang in listed(self.hangs)]
        counts += [subs.count for subs in listed(self.subs)]
        boxes = sum(ends_of(count)[0] or 0 for count in counts)
        boxes += sum(len(fill.boxes) for fill in listed(self.fills))
        if boxes > MOST_BOXES:
            yield too_many(self, (), f"{boxes:,} loudspeakers in hangs, subs and fills", MOST_BOXES)
        yield from taken_twice(self.mix_position, self.other_mix_positions)
        yield from taken_twice(self.monitor_position, self.other_monitor_positions)


def taken_twice(
    usual: Maybe[InConfigurations], others: Sequence[InConfigurations]
) -> Iterator[Problem]:
    """
    The configurations that a position names which stands instead of the usual one, and that another
    names already.
    """
    taken: dict[str, str] = {}
    for line in others if isinstance(usual, Absent) else (usual, *others):
        own = spoken(line.path_in_file)
        for index, name in enumerate(line.configurations):
            if taken.setdefault(spelling(name), own) != own:
                yield Problem(
                    line.where("configurations", index),
                    spoken((*line.path_in_file, "configurations", index)),
                    name,
                    f"is taken already, by {taken[spelling(name)]}",
                    "configuration-taken",
                    "one position is there in each configuration",
                )
