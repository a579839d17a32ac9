"""
``stage.yml``: what positions are measured from, the deck in each configuration, wings, zones,
heights, risers, places.
"""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from builder.departments.stage.distances import Distance
from builder.departments.stage.ground import OpenGround
from builder.departments.stage.lifts import StageLift
from builder.departments.stage.stock import Furnishing, Riser
from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.outlines import Corner, Encloses
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Across, Depth, Height, Length, LoadPerArea, Mass, Slope
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import (
    Decisive,
    DepartmentFile,
    InConfigurations,
    Line,
    Movable,
    Plausible,
    Rated,
    RefersTo,
    Written,
)
from builder.stating import Measured

FLOOR = Measured("hall floor")
DECK = Measured("deck")


class Datum(Written):
    """What every position in the venue's files is measured from."""

    centre_line: Text
    """Where the centre line lies, and how to find it on the deck."""
    reference_line: Text
    """The line that depths are measured from: downstage of it is DS, upstage of it is US."""
    middle_of_the_house: Annotated[Across | None, Plausible(-5.0, 5.0)] = None
    """Where the middle of the auditorium lies, where that is not the centre line."""


class At(Written):
    """A position."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"height"})
    across: Annotated[Across, Plausible(-200.0, 200.0)]
    """Distance from the centre line, such as 9.5 m SR."""
    depth: Annotated[Depth, Plausible(-300.0, 200.0)]
    """Distance from the reference line, such as 2 m US."""
    height: Annotated[Height | None, Plausible(-20.0, 30.0)] = None
    """Height above the deck, such as 1.4 m up. Left out, it is as high as the deck."""


Outline = Annotated[tuple[Corner, ...], Encloses()]
MaybeOutline = Annotated[Maybe[tuple[Corner, ...]], Encloses()]
"""An outline where somebody drew one. Without it nothing is drawn, and no area is worked out."""


AreaOfStage = Literal[
    "downstage",
    "upstage",
    "downstage right",
    "downstage centre",
    "downstage left",
    "stage right",
    "centre stage",
    "stage left",
    "upstage right",
    "upstage centre",
    "upstage left",
    "wing stage right",
    "wing stage left",
    "pit",
    "audience",
    "balcony",
    "backstage",
    "outside",
]
"""Where something is, where nobody measured it: as a crew would point."""


class Deck(Line):
    """The deck as it stands in one configuration."""

    public_because: ClassVar[str] = "every show stands on it"
    defines: ClassVar[str] = "deck"
    name: Name
    """What this state of the deck is called."""
    configurations: Annotated[tuple[Name, ...], RefersTo("configuration")]
    """The configurations it belongs to, by their names in house.yml."""
    outline: MaybeOutline = Absent.NOT_STATED
    """The corners of the deck, in order around it."""
    usable_width: Annotated[
        Maybe[Annotated[Length, Plausible(2.0, 40.0)]], Plausible(2.0, 40.0), Decisive()
    ] = Absent.NOT_STATED
    """Clear width for a show, between what always stands there."""
    usable_depth: Annotated[Maybe[Length], Plausible(2.0, 40.0), Decisive()] = Absent.NOT_STATED
    """Clear depth for a show, from the deck edge to the last masking or the crossover."""
    depth_behind_curtain: Annotated[Maybe[Length], Plausible(2.0, 40.0)] = Absent.NOT_STATED
    """
    The same from the curtain line, or from the back of the proscenium where the house tells it from
    there. Left out, it is worked out from the clear depth where the stage has no proscenium, or
    tells how far its edge is from the curtain line.
    """
    height: Annotated[
        Maybe[Length], Possible(0.0, 20.0), Plausible(0.15, 2.2), Decisive(), FLOOR
    ] = Absent.NOT_STATED
    """Height of the deck above the audience floor."""
    height_usual: Annotated[Maybe[Length], Possible(0.0, 20.0), Plausible(0.15, 2.2), FLOOR] = (
        Absent.NOT_STATED
    )
    """The height that it is usually set to, where it can be set."""
    height_by_sheet: Annotated[Maybe[Length], Possible(0.0, 20.0), Plausible(0.15, 2.2), FLOOR] = (
        Absent.NOT_STATED
    )
    """The height that the maker's or hirer's sheet gives, where that is another."""
    ground_differs: Annotated[Maybe[Length], Possible(0.0, 10.0), Plausible(0.0, 1.5)] = (
        Absent.NOT_STATED
    )
    """How much the ground under it differs from corner to corner, the deck itself being level."""
    under_it: Maybe[Text] = Absent.NOT_STATED
    """What stands under it and cannot be moved, such as a line of subs."""
    adjustable: Maybe[Text] = Absent.NOT_STATED
    """Whether the height can be changed, in which steps, and what that needs."""
    clear_height: Annotated[Maybe[Length], Plausible(2.4, 60.0), Decisive(), DECK] = (
        Absent.NOT_STATED
    )
    """Height to the lowest thing above the deck that cannot be moved."""
    rake: Annotated[Maybe[Slope], Plausible(0.0, 0.2)] = Absent.NOT_STATED
    """The slope of the deck, or none."""
    load: Annotated[Maybe[LoadPerArea], Rated(), Plausible(1_000.0, 50_000.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """The uniform load the deck carries."""
    point_load: Annotated[Maybe[Mass], Rated(), Plausible(50.0, 20_000.0)] = Absent.NOT_STATED
    """The largest single load, and say on what footprint in the note."""
    wheel_load: Annotated[Maybe[Mass], Rated(), Plausible(50.0, 10_000.0)] = Absent.NOT_STATED
    """What one wheel may weigh on it."""
    load_from: Maybe[Text] = Absent.NOT_STATED
    """Where the load figures come from: whose letter or plate, and of when."""
    surface: Maybe[Text] = Absent.NOT_STATED
    """What the deck is made of, and its colour."""
    fixings: Maybe[Text] = Absent.NOT_STATED
    """Whether screws are allowed, and how deep."""
    sprung: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it gives under a dancer: no where it lies on concrete or steel without give."""
    screws_up_to: Annotated[Maybe[Length], Plausible(0.005, 0.1)] = Absent.NOT_STATED
    """The longest screw that may go into it; none where no screw may."""
    first_row: Annotated[Maybe[Length], Possible(0.0, 200.0), Plausible(0.8, 15.0)] = (
        Absent.NOT_STATED
    )
    """Distance from the deck edge to the barrier or first row."""


class Zone(Line):
    """A part of the deck or of a wing that carries less, or more, than the rest."""

    public_because: ClassVar[str] = "a show has to keep to it"
    defines: ClassVar[str] = "zone"
    name: Name
    """The name of the zone."""
    outline: MaybeOutline
    """The corners of the zone, in order around it."""
    load: Annotated[Maybe[LoadPerArea], Rated(), Possible(0.0, 1e7), Plausible(500.0, 50_000.0)] = (
        Absent.NOT_STATED
    )
    """The uniform load it carries."""
    point_load: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e7), Plausible(20.0, 20_000.0)] = (
        Absent.NOT_STATED
    )
    """The largest single load."""


class Wing(InConfigurations):
    """The space beside the deck."""

    public_because: ClassVar[str] = "shows put their loads there"
    defines: ClassVar[str] = "wing"
    name: Literal["stage left", "stage right", "upstage"]
    """Stage left, stage right or upstage."""
    outline: MaybeOutline = Absent.NOT_STATED
    """The corners of the wing, in order around it."""
    width: Annotated[Maybe[Length], Plausible(0.3, 60.0), Decisive()] = Absent.NOT_STATED
    """
    Its clear width, off the deck or from the arch to the wall. Left out, it is that of the outline.
    """
    depth: Annotated[Maybe[Length], Plausible(0.3, 60.0), Decisive()] = Absent.NOT_STATED
    """Its clear depth, up and down stage. Left out, it is that of the outline."""
    level_with_deck: YesNo | None = None
    """Whether the wing floor is level with the deck."""
    below_deck: Annotated[Maybe[Length], Possible(-10.0, 10.0), Plausible(-1.0, 2.0)] = (
        Absent.NOT_STATED
    )
    """How far the wing floor is below the deck; with a minus, above it."""
    clear_height: Annotated[Maybe[Length], Plausible(1.9, 40.0), Decisive(), DECK] = (
        Absent.NOT_STATED
    )
    """Height to the lowest fixed thing above the wing."""
    load: Annotated[Maybe[LoadPerArea], Rated(), Plausible(1_000.0, 50_000.0)] = Absent.NOT_STATED
    """The uniform load the wing floor carries."""


class Obstruction(Movable):
    """Something that stands or hangs in the way and cannot be moved."""

    public_because: ClassVar[str] = "shows would plan through it"
    defines: ClassVar[str] = "obstruction"
    name: Name
    """What it is."""
    outline: MaybeOutline = Absent.NOT_STATED
    """The corners of what it takes of the floor, in order around it."""
    area: Maybe[AreaOfStage] = Absent.NOT_STATED
    """Which part of the stage it is in, where nobody drew it."""
    width: Annotated[Maybe[Length], Plausible(0.02, 40.0)] = Absent.NOT_STATED
    """How much it takes across the stage, where nobody drew it."""
    depth: Annotated[Maybe[Length], Plausible(0.02, 40.0)] = Absent.NOT_STATED
    """How much it takes up and down stage, where nobody drew it."""
    from_height: Annotated[Height | None, Plausible(-5.0, 30.0), DECK] = None
    """Its underside, where it hangs; left out where it stands on the floor."""


class Place(Line):
    """A named spot that lines, outlets and positions refer to."""

    defines: ClassVar[str] = "place"
    name: Name
    """The name of the place, such as mix position."""
    at: Maybe[At] = Absent.NOT_STATED
    """Where it is."""
    area: Maybe[AreaOfStage] = Absent.NOT_STATED
    """Which part of the stage or the house it is in, where nobody measured it."""
    row: Maybe[Name] = Absent.NOT_STATED
    """The row of seats that it takes or stands in."""
    on_stage: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it is on the deck or in a wing. Left out, the plan tells it where it can."""
    width: Annotated[Maybe[Length], Possible.above(0.0, 200.0), Plausible(0.3, 40.0)] = (
        Absent.NOT_STATED
    )
    """How wide it is."""
    depth: Annotated[Maybe[Length], Possible.above(0.0, 200.0), Plausible(0.3, 40.0)] = (
        Absent.NOT_STATED
    )
    """How deep it is."""


class AudienceFloor(Written):
    """The floor of the hall, cleared of seats."""

    length: Annotated[Maybe[Length], Plausible(3.0, 200.0)] = Absent.NOT_STATED
    """How long it is, from the stage to the rear."""
    width: Annotated[Maybe[Length], Plausible(3.0, 200.0)] = Absent.NOT_STATED
    """How wide it is."""
    load: Annotated[Maybe[LoadPerArea], Rated(), Possible(0.0, 1e7), Plausible(500.0, 50_000.0)] = (
        Absent.NOT_STATED
    )
    """The uniform load it carries."""
    surface: Maybe[Text] = Absent.NOT_STATED
    """What it is made of."""
    sprung: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it gives."""
    not_on_it: tuple[Name, ...] = ()
    """What may not go on it, such as steel wheels."""
    aisles: Annotated[Maybe[Length], Plausible(0.5, 5.0)] = Absent.NOT_STATED
    """How wide the ways are that always stay clear on it; none where nothing does."""
    aisles_at: Maybe[Text] = Absent.NOT_STATED
    """Where those are, such as down both sides."""


class Chain(Written):
    """Distances in a row that together make up a stated whole."""

    name: Name
    """What is measured, such as deck edge to back wall."""
    parts: Annotated[tuple[Length, ...], Possible(0.0, 10_000.0)]
    """The distances, one after the other."""
    whole: Length
    """The whole as stated. The parts must make it up."""

    def contradictions(self) -> Iterator[Problem]:
        """A chain has at least one part."""
        if not self.parts:
            advice = "write the distances, one after the other, or take the chain out"
            reason = "has no parts that could make up the whole"
            yield Problem(self.where("parts"), self.name, "", reason, "chain-empty", advice)


class Stage(DepartmentFile):
    """The stage: datum, deck, wings, heights, loads, risers, places."""

    datum: Maybe[Datum]
    """What positions are measured from."""
    decks: Maybe[tuple[Deck, ...]]
    """The deck in each of its states."""
    wings: tuple[Wing, ...] = ()
    """The spaces beside the deck."""
    zones: Maybe[tuple[Zone, ...]] = ()
    """Parts that carry less or more than the rest."""
    obstructions: Maybe[tuple[Obstruction, ...]] = ()
    """What is in the way."""
    places: tuple[Place, ...] = ()
    """Named spots that other files refer to."""
    crossover: Maybe[Text] = Absent.NOT_STATED
    """How performers get from one side to the other behind the set."""
    crossover_lit: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it is lit in a show, such as in blue."""
    crossover_width: Annotated[Maybe[Length], Plausible(0.2, 20.0)] = Absent.NOT_STATED
    """Its clear width; none where there is none."""
    ground: OpenGround | None = None
    """The open ground that the stage stands on."""
    proscenium: Maybe[Text] = Absent.NOT_STATED
    """What there is to say of the proscenium opening, or none."""
    opening_width: Annotated[Maybe[Length], Plausible(2.0, 40.0)] = Absent.NOT_STATED
    """The width of the proscenium opening; none where there is no proscenium."""
    opening_height: Annotated[Maybe[Length], Plausible(2.0, 30.0)] = Absent.NOT_STATED
    """Its height, to the arch."""
    opening_as_set: Annotated[Maybe[Length], Plausible(1.5, 30.0)] = Absent.NOT_STATED
    """The height that the teaser or the first border usually leaves."""
    apron_width: Annotated[Maybe[Length], Plausible(2.0, 60.0)] = Absent.NOT_STATED
    """How wide the stage is in front of the curtain, at its widest."""
    apron_curved: Maybe[YesNo] = Absent.NOT_STATED
    """Whether its edge is curved."""
    traps: Annotated[Maybe[Count], Plausible(0, 60)] = Absent.NOT_STATED
    """How many traps can be opened in the floor, or none."""
    lifts: Maybe[tuple[StageLift, ...]] = Absent.NOT_STATED
    """Parts of the floor that go up and down, or none."""
    pit_players: Annotated[Maybe[Count], Plausible(1, 150)] = Absent.NOT_STATED
    """How many players sit in the pit well; none where there is no pit."""
    pit_players_most: Annotated[Maybe[Count], Plausible(1, 150)] = Absent.NOT_STATED
    """How many have been seated in it at the most, where that is more than sit well."""
    audience_floor: AudienceFloor | None = None
    """The floor that the audience stands or sits on, cleared of seats."""
    distances: tuple[Distance, ...] = ()
    """How far it is from one line of the stage to another. What does not add up is told."""
    risers: tuple[Riser, ...] = ()
    """Risers and decks in stock."""
    furnishings: tuple[Furnishing, ...] = ()
    """Steps, barrier, carpets, drapes, pianos."""
    chains: tuple[Chain, ...] = ()
    """Chains of distances to be compared with their stated whole."""
