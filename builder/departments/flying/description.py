"""``flying.yml``: the line sets of a house, one a line, and what holds for all of them."""

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Depth, Duration, Height, Length, Mass, Speed
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import (
    Condition,
    Decisive,
    DepartmentFile,
    Line,
    Loose,
    Plausible,
    Rated,
    RefersTo,
    Written,
)
from builder.stating import Measured

DECK = Measured("deck")
Moved = Literal["counterweight", "double purchase", "motor", "winch", "by hand", "dead hung"]
Use = Literal["free", "may be cleared", "stays"]


class SetValues(Written):
    """What is told of line sets alike: once as usual, and on each line that differs."""

    moved_by: Maybe[Moved] = Absent.NOT_STATED
    """
    How it moves: counterweight (single purchase), double purchase, motor, winch, by hand, or dead
    hung, which does not move.
    """
    arbor: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e6), Plausible(50.0, 2_000.0)] = (
        Absent.NOT_STATED
    )
    """The weights that the arbor may hold, on a set with counterweights."""
    load: Annotated[
        Maybe[Mass], Rated(), Possible(0.0, 1e6), Plausible(20.0, 2_000.0), Decisive()
    ] = Absent.NOT_STATED
    """
    What may hang on the pipe, beside the pipe itself. Left out on a set with counterweights, it is
    what the arbor can balance.
    """
    load_with_pipe: Annotated[
        Maybe[Mass], Rated(), Possible(0.0, 1e6), Plausible(20.0, 2_500.0)
    ] = Absent.NOT_STATED
    """What may hang on its lines, the pipe counted, where the house tells it so."""
    point_load: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e6), Plausible(5.0, 1_000.0)] = (
        Absent.NOT_STATED
    )
    """The most that may hang at one spot of the pipe; more only by asking."""
    pipe: Maybe[Text] = Absent.NOT_STATED
    """The pipe or truss, such as 48 mm tube, double."""
    pipe_length: Annotated[Maybe[Length], Plausible(2.0, 40.0), Decisive()] = Absent.NOT_STATED
    """How long the pipe is."""
    pipe_weight: Annotated[Maybe[Mass], Possible(0.0, 1e6), Plausible(5.0, 500.0)] = (
        Absent.NOT_STATED
    )
    """What the bare pipe weighs with its fittings: the arbor balances it too."""
    lift_lines: Annotated[Maybe[Count], Plausible(2, 12)] = Absent.NOT_STATED
    """How many lines it hangs on."""
    low_trim: Annotated[Maybe[Height], Plausible(-2.0, 15.0), DECK] = Absent.NOT_STATED
    """How low the pipe comes."""
    high_trim: Annotated[Maybe[Height], Plausible(2.0, 40.0), Decisive(), DECK] = Absent.NOT_STATED
    """How high the pipe goes."""
    speed: Annotated[Maybe[Speed], Plausible(0.005, 3.0)] = Absent.NOT_STATED
    """How fast it moves."""
    fixed_speed: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it has one speed only."""
    travel_time: Annotated[Maybe[Duration], Possible.above(0.0, 3_600.0), Plausible(2.0, 600.0)] = (
        Absent.NOT_STATED
    )
    """How long it takes from in to out."""
    travel: Maybe[Text] = Absent.NOT_STATED
    """What else there is to say of how it moves."""
    operated_from: Maybe[Text] = Absent.NOT_STATED
    """Where it is operated from."""
    operated_by: Maybe[Text] = Absent.NOT_STATED
    """Who may operate it."""


class Usual(SetValues):
    """What holds for every line set that does not say otherwise."""


class LineSet(SetValues, Line):
    """One line set, where it hangs, what hangs on it, and whether a show may have it."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"moves_with"})
    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = dict.fromkeys(
        SetValues.model_fields, ("usual",)
    )
    defines: ClassVar[str] = "line set"
    name: Name
    """Its number or name, as at the rail."""
    distance: Annotated[Maybe[Length], Possible(-100.0, 100.0), Plausible(-10.0, 40.0)] = (
        Absent.NOT_STATED
    )
    """How far upstage of the reference it hangs; with a minus downstage of it."""
    carries: Maybe[Text] = Absent.NOT_STATED
    """What hangs on it now; none where nothing does."""
    hung_weight: Annotated[Maybe[Mass], Possible(0.0, 1e6), Plausible(1.0, 2_000.0)] = (
        Absent.NOT_STATED
    )
    """What weighs on it now, without the pipe."""
    hung_condition: Maybe[Condition] = Absent.NOT_STATED
    """The state of what hangs on it, where the set itself works: say why in the note."""
    comes_in: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it comes in far enough to be loaded from the deck."""
    retrim: Maybe[YesNo] = Absent.NOT_STATED
    """Whether its trim may be changed."""
    use: Annotated[Maybe[Use], Decisive()] = Absent.NOT_STATED
    """Whether a show may have it: free, may be cleared, or stays as it is."""
    moves_with: Annotated[tuple[Name, ...], RefersTo("line set")] = ()
    """The line sets that are tied to it and always move with it."""

    def contradictions(self) -> Iterator[Problem]:
        """A set is not tied to itself, and what carries nothing weighs nothing."""
        if self.name in self.moves_with:
            yield Problem(
                self.where("moves_with"),
                f"{self.name}.moves_with",
                self.name,
                "is the line set itself",
                "line-set-with-itself",
                "name the others that move with it",
            )
        weight = self.hung_weight
        if self.carries is Absent.NONE and isinstance(weight, Mass) and weight.kg > 0:
            yield Problem(
                self.where("hung_weight"),
                f"{self.name}.hung_weight",
                weight.text,
                "is the weight of nothing: carries says none",
                "line-set-empty",
                "say under carries what hangs there, or leave the weight out",
            )


class SetsAlike(SetValues, Line):
    """So many line sets alike, where nobody says which of the schedule they are."""

    defines: ClassVar[str] = "line sets alike"
    name: Name
    """What they are, such as hand-hauled lines."""
    count: Annotated[Maybe[Count], Plausible(1, 120)] = Absent.NOT_STATED
    """How many there are, those of the schedule that are of this kind counted in."""


class Floor(Line):
    """A floor above the deck from which line sets are worked or loaded."""

    name: Name
    """What it is called, such as fly floor or loading floor."""
    height: Annotated[Maybe[Height], Plausible(2.0, 40.0), DECK] = Absent.NOT_STATED
    """How high it lies."""
    side: Maybe[Text] = Absent.NOT_STATED
    """On which side of the stage it lies."""
    clear_below: Annotated[Maybe[Length], Plausible(2.0, 40.0)] = Absent.NOT_STATED
    """The clear height beneath it."""
    access: Maybe[Text] = Absent.NOT_STATED
    """How one gets there."""


class Weights(Loose):
    """Counterweights beside those that hang already."""

    name: Name
    """Which they are, such as bricks of 12 kg."""
    each: Annotated[Maybe[Mass], Plausible(1.0, 50.0)] = Absent.NOT_STATED
    """What one weighs."""
    sizes: Annotated[tuple[Mass, ...], Plausible(1.0, 50.0)] = ()
    """What one weighs of each size, where they come in several."""
    in_all: Annotated[Maybe[Mass], Plausible(10.0, 50_000.0)] = Absent.NOT_STATED
    """What all of them weigh that are not in an arbor."""


class SpotLines(Line):
    """Single lines that can be dropped where a show wants them."""

    name: Name
    """What they are, such as hemp spot lines."""
    count: Annotated[Maybe[Count], Plausible(1, 60)] = Absent.NOT_STATED
    """How many at a time."""
    load: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e6), Plausible(10.0, 1_000.0)] = (
        Absent.NOT_STATED
    )
    """What one may carry."""
    where_they_go: Maybe[Text] = Absent.NOT_STATED
    """Where they can be dropped."""


class Flying(DepartmentFile):
    """Line sets, the floors they are worked from, and what belongs to them."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"rules"})
    reference: Maybe[Text] = Absent.NOT_STATED
    """The line that distances are measured from, such as the plaster line."""
    reference_at: Annotated[Maybe[Depth], Plausible(-20.0, 20.0)] = Absent.NOT_STATED
    """Where that line lies from the reference line of stage.yml."""
    grid: Annotated[Maybe[Height], Plausible(3.0, 45.0), DECK] = Absent.NOT_STATED
    """The height of the grid."""
    grid_access: Maybe[Text] = Absent.NOT_STATED
    """How one gets onto the grid, and who may."""
    centres: Annotated[Maybe[Length], Plausible(0.1, 2.0)] = Absent.NOT_STATED
    """The usual distance from one line set to the next."""
    blocks: Maybe[Text] = Absent.NOT_STATED
    """Head and loft blocks."""
    show_may_operate: Maybe[YesNo] = Absent.NOT_STATED
    """Whether a visiting crew may work the rail."""
    rules: tuple[Text, ...] = ()
    """What whoever hangs something has to keep to, a sentence each."""
    usual: Usual | None = None
    """What holds for every line set that does not say otherwise."""
    line_sets: Annotated[Maybe[tuple[LineSet, ...]], Decisive()] = Absent.NOT_STATED
    """The line sets, from downstage to upstage, or none."""
    sets_alike: Maybe[tuple[SetsAlike, ...]] = Absent.NOT_STATED
    """
    The line sets by kind, so many of each, where the schedule does not say of every set how it
    moves or what it carries. No set may hang more than the strongest kind allows.
    """
    floors: tuple[Floor, ...] = ()
    """Fly floor, loading floor, bridges."""
    weights: Maybe[tuple[Weights, ...]] = Absent.NOT_STATED
    """Counterweights on hand."""
    spot_lines: Maybe[tuple[SpotLines, ...]] = Absent.NOT_STATED
    """Single lines that can be dropped anywhere."""
