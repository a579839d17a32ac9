"""``risers`` and ``furnishings`` of ``stage.yml``: what belongs to the deck and is put away."""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Area, Duration, Frequency, Length
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import Loose, OfModel, Plausible, RefersTo

Kind = Literal[
    "steps",
    "stairs",
    "barrier",
    "carpet",
    "drape",
    "leg",
    "border",
    "masking panel",
    "tab",
    "traveller",
    "cyclorama",
    "scrim",
    "backdrop",
    "house curtain",
    "piano",
    "grand piano",
    "dance floor",
    "orchestra shell",
    "music stand",
    "stand light",
    "chair",
    "stool",
    "table",
    "lectern",
    "rostrum",
    "ramp",
    "rail",
    "toe rail",
    "fence",
    "other",
]


class Riser(Loose):
    """Risers or decks in stock."""

    defines: ClassVar[str] = "riser"
    name: Name
    """What they are called here."""
    kind: Maybe[Literal["riser", "modular deck", "bridging piece"]] = Absent.NOT_STATED
    """Riser, modular deck, or bridging piece between decks."""
    one_make: Annotated[YesNo | None, OfModel()] = None
    """Whether they fit only others of the same make."""
    count: Annotated[Maybe[Count], Plausible(0, 400)] = Absent.NOT_STATED
    """How many there are."""
    width: Annotated[Maybe[Length], Plausible(0.3, 6.0), OfModel()] = Absent.NOT_STATED
    """The width of one."""
    depth: Annotated[Maybe[Length], Plausible(0.3, 6.0), OfModel()] = Absent.NOT_STATED
    """The depth of one."""
    heights: Annotated[tuple[Length, ...], Plausible(0.05, 2.0), OfModel()] = ()
    """The heights they can be set to."""
    rolling: Annotated[YesNo | None, OfModel()] = None
    """Whether they roll."""
    makes_up: Annotated[Area | None, Plausible(0.5, 2_000.0), OfModel()] = None
    """The area they make up together. It is compared with count, width and depth."""


class Furnishing(Loose):
    """Other things that belong to the deck: steps, barrier, carpets, drapes, pianos."""

    defines: ClassVar[str] = "furnishing"
    name: Name
    """What it is."""
    kind: Maybe[Kind] = Absent.NOT_STATED
    """
    What kind of thing it is: steps that stand loose, stairs that are built in, a barrier, a carpet,
    masking by its kind, a piano or grand piano, a dance floor, an orchestra shell, music stands and
    their lights, chairs, stools, tables, a lectern, a conductor's rostrum, a ramp, a rail, a toe
    rail, a fence or other. A show that asks for a crowd barrier is answered by what is of that
    kind, whatever it is called.
    """
    count: Annotated[Maybe[Annotated[Count, Plausible(0, 500)]], Plausible(0, 500)] = (
        Absent.NOT_STATED
    )
    """How many there are."""
    each_side: Annotated[Maybe[Count], Plausible(0, 40)] = Absent.NOT_STATED
    """How many of them go on each side of the stage."""
    away: Annotated[Maybe[Count], Plausible(0, 500)] = Absent.NOT_STATED
    """How many of them are not in the house, such as lent. They are no part of the count."""
    away_at: Maybe[Name] = Absent.NOT_STATED
    """Where those are."""
    goes: Maybe[Text] = Absent.NOT_STATED
    """Where it stands or hangs in use, such as either side of the stage."""
    hangs_on: Annotated[Maybe[Name], RefersTo("line set")] = Absent.NOT_STATED
    """The line set of flying.yml that it hangs on."""
    moves: Maybe[Literal["draws", "flies", "draws and flies", "rolls up", "does not move"]] = (
        Absent.NOT_STATED
    )
    """How a curtain opens: it draws to the sides, flies out, does either, rolls up, or stays."""
    moved_by: Maybe[Literal["motor", "by hand"]] = Absent.NOT_STATED
    """What moves it."""
    opens_in: Annotated[Maybe[Duration], Possible.above(0.0, 3_600.0), Plausible(1.0, 120.0)] = (
        Absent.NOT_STATED
    )
    """How long it takes to open or close."""
    lit: Maybe[YesNo] = Absent.NOT_STATED
    """Whether steps or stairs are lit."""
    pitch: Annotated[Maybe[Frequency], Plausible(415.0, 466.0)] = Absent.NOT_STATED
    """What a piano is tuned to, such as 440 Hz."""
    tuning: Maybe[Literal["included", "extra charge", "by arrangement", "not for visitors"]] = (
        Absent.NOT_STATED
    )
    """On what terms a piano is tuned for a show."""
    tuning_notice: Annotated[Duration | None, Plausible(3_600.0, 60 * 86_400.0)] = None
    """How long before to ask for it to be tuned."""
    tuned_in_place: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it is tuned only where it stands in the show."""
    size: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """Its size, in words."""
    each_length: Annotated[Maybe[Length], Plausible(0.3, 60.0), OfModel()] = Absent.NOT_STATED
    """The length of one, such as of a roll, a panel or a piano."""
    each_width: Annotated[Maybe[Length], Plausible(0.1, 60.0), OfModel()] = Absent.NOT_STATED
    """The width of one."""
    each_height: Annotated[Maybe[Length], Plausible(0.1, 40.0), OfModel()] = Absent.NOT_STATED
    """The height of one."""
    colours: Annotated[tuple[Name, ...], OfModel()] = ()
    """Its colours, one for each side where there are two."""
    length: Annotated[Maybe[Length], Plausible(0.3, 2_000.0)] = Absent.NOT_STATED
    """How much there is of it in all, where it is measured by length."""
