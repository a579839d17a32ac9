"""
The base of every description: what a crew writes, frozen, with the place of every line.

A record that others refer to sets ``defines`` (what it is, such as ``point``) and has a ``name``; a
field that refers is ``Annotated[Name, RefersTo("point")]``. Both are checked once for the whole
venue in ``references.py``.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, ClassVar, Literal, Self, TypeVar, get_args

from pydantic import (
    BaseModel,
    ConfigDict,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    PrivateAttr,
)
from pydantic_core import core_schema

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.problems import Problem, Where
from builder.reading.quantities import Duration
from builder.reading.words import Day, DayOrSo, Name, Text, YesNo

Path = tuple[str | int, ...]
KnownParts = tuple[tuple[Path, str], ...]
"""What is known of an unknown value: each part by the way to it, as its author wrote it."""


@dataclass(frozen=True, slots=True)
class RefersTo:
    """Marks a field whose text is the name of something defined elsewhere in the venue."""

    kind: str


@dataclass(frozen=True, slots=True)
class NamesSome:
    """Marks a list of names of things of several kinds. A name that nothing bears is a finding."""

    kinds: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Plausible:
    """
    The range a field usually lies in, in SI. Outside it the house is asked whether it meant what it
    wrote; nothing is refused. For a time of day a ``low`` above ``high`` goes over midnight.
    """

    low: float
    high: float

    def holds(self, number: float) -> bool:
        """Whether a value is a usual one."""
        if self.low > self.high:
            return number >= self.low or number <= self.high
        return self.low <= number <= self.high


@dataclass(frozen=True, slots=True)
class Numbered:
    """
    Marks a list of the numbers of single units: 7 in it is number seven, and not seven of them.
    """


@dataclass(frozen=True, slots=True)
class OfModel:
    """
    Marks a field with what belongs to a model and not to the line: rating, weight, size, table.

    ``key`` is the key of the same record that names the model. Where another model comes in its
    place, the old one's value must not stay.
    """

    key: str = "name"


@dataclass(frozen=True, slots=True)
class Decisive:
    """
    Marks a field that shows stop on. Where it is not stated, the pack says so instead of leaving a
    gap.
    """


@dataclass(frozen=True, slots=True)
class Rated:
    """
    Marks a field with what something may carry at most: it stands on a plate, in a letter, on a
    maker's sheet, and nobody estimates it.
    """


@dataclass(frozen=True, slots=True)
class NotInWords:
    """
    Marks a field that no page tells in words, with the reason: an outline is drawn to scale.

    All other fields reach a page and the search; a test holds every key to that.
    """

    why: str


@dataclass(frozen=True, slots=True)
class Assumed:
    """
    Marks a field that counts with its default where nobody writes it. The pages then say that it
    is assumed, and ``why``.
    """

    why: str


class Written(BaseModel):
    """
    A mapping in the author's file. Unknown keys are refused; ``where`` tells the place of the
    record or of one key.
    """

    # A record is built when the first is read: most stand in another, which is built with them.
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    defines: ClassVar[str] = ""
    """
    What this record is to those who refer to it. Two of a kind need two names; empty for records
    that neither have a name of their own on a page nor are referred to.
    """

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset()
    """
    Keys that say something definite where they are left out, such as that nothing is dead. There
    `unknown` cannot count as left out, and is refused until every reader tells the two apart.
    """

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset()
    """
    Keys that count as something where they are left out, such as a support without a hoist, though
    `unknown` may stand there and is then another answer. With ``definite_when_left_out`` and lists,
    they are all whose absence has a meaning: `docs/pack/methods.md` lists them.
    """

    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {}
    """
    For a key that is left out, the keys of its file by which the house says the same for all lines,
    such as the usual arbor of a line set.
    """

    bounded: ClassVar[bool] = True
    """Whether the ranges of ``possible.py`` hold for a file of this kind."""

    _places: Mapping[Path, Where] = PrivateAttr(default_factory=dict)
    _path: Path = PrivateAttr(default=())
    _above: "Verification | None" = PrivateAttr(default=None)
    _unknown: Mapping[str, KnownParts] = PrivateAttr(default_factory=dict)
    _behind: int = PrivateAttr(default=0)

    def placed(
        self, places: Mapping[Path, Where], path: Path, above: "Verification | None" = None
    ) -> Self:
        """
        The same record, told where it was written and how what it stands in was checked; records
        within it are told too.
        """
        self._places = places
        self._path = path
        self._above = None if above is self else above
        for key, value in self.holding():
            tell(value, places, (*path, key), self.verification)
        return self

    def told_unknown(self, unknown: Mapping[str, KnownParts]) -> None:
        """Take note of the keys that could be left out and were written as unknown."""
        self._unknown = unknown

    @property
    def unknown(self) -> Mapping[str, KnownParts]:
        """The keys that could be left out and are unknown, each with what is known of it."""
        return self._unknown

    @property
    def verification(self) -> "Verification | None":
        """How it was checked: by its own word, else by that of what it stands in."""
        own = getattr(self, "verified", None)
        return own if isinstance(own, Verification) else self._above

    def where(self, *keys: str | int) -> Where:
        """
        The place of this record, or of what stands under ``keys``; the nearest place known above it
        where that was not written.
        """
        path = (*self._path, *keys)
        while path and path not in self._places:
            path = path[:-1]
        return self._places.get(path, Where(""))

    @property
    def places_in_file(self) -> Mapping[Path, Where]:
        """Every place of the file that this record stands in, by path from the file's top."""
        return self._places

    @property
    def path_in_file(self) -> Path:
        """Where this record stands in its file."""
        return self._path

    @property
    def number_in_list(self) -> int:
        """
        Which line of its list it is, from 1; 0 where it stands in none. Lines that all spaces share
        come before those of a space.
        """
        last = self._path[-1] if self._path else None
        return self._behind + last + 1 if isinstance(last, int) else 0

    def contradictions(self) -> Iterable[Problem]:
        """
        Problems that only show when keys of this record are read together.

        Asked once the record knows its place.
        """
        return ()

    def written(self) -> tuple[tuple[str, object], ...]:
        """The keys the author may write and their values, in the order of the description."""
        return tuple((key, getattr(self, name)) for name, key in spoken_names(type(self)))

    def holding(self) -> tuple[tuple[str, object], ...]:
        """The same of the keys that may hold records."""
        return tuple((key, getattr(self, name)) for name, key in names_of_holders(type(self)))


@cache
def spoken_names(kind: type[Written]) -> tuple[tuple[str, str], ...]:
    """The fields of a kind of record, each with the key that the author writes."""
    return tuple((name, field.alias or name) for name, field in kind.model_fields.items())


@cache
def names_of_holders(kind: type[Written]) -> tuple[tuple[str, str], ...]:
    """The same of the fields that may hold records, so that nobody looks for one in a number."""
    return tuple(
        (name, key)
        for name, key in spoken_names(kind)
        if may_hold_records(kind.model_fields[name].annotation)
    )


def may_hold_records(annotation: object) -> bool:
    """Whether a value of a type may be a record or hold one: a type nobody knows may."""
    if annotation in (Any, object) or isinstance(annotation, TypeVar):
        return True
    if isinstance(annotation, type) and issubclass(annotation, Written):
        return True
    return any(may_hold_records(part) for part in get_args(annotation))


def tell(
    value: object, places: Mapping[Path, Where], path: Path, above: "Verification | None"
) -> None:
    """Tell every record within a value where it was written, and how that was checked."""
    if isinstance(value, Written):
        value.placed(places, path, above)
    elif isinstance(value, tuple | list):
        for index, entry in enumerate(value):
            tell(entry, places, (*path, index), above)
    elif isinstance(value, Mapping):
        for key, entry in value.items():
            tell(entry, places, (*path, key), above)


class Verification(Written):
    """When a value was checked, by whom and how."""

    on: DayOrSo
    """
    The day it was checked, such as 2026-03-02; or the month or the year, 2026-03 or 2026, where
    nobody knows better. The check is then as old as the last day of it at least, and counts as old
    as the first.
    """
    by: Name
    """Who checked it, by role, such as head rigger."""
    how: Literal["measured", "drawing", "nameplate", "maker's sheet", "memory", "seen"]
    """How it was checked; seen where somebody looked at it on the spot and measured nothing."""


class Confirmation(Written):
    """
    That a value is as odd as it looks. It holds while the value is what it quotes, and counts for
    nothing that could hurt someone.
    """

    what: Name
    """The code of the finding, as `housepack check` prints it in square brackets."""
    value: Text | None = None
    """
    The value as `housepack check` quotes it beneath the finding. When the value changes, the
    confirmation lapses.
    """
    by: Name
    """Who confirms it, by role: whoever may, such as head rigger."""
    on: Day
    """The day it was confirmed, such as 2026-03-02."""


@dataclass(frozen=True, slots=True)
class OneOrMore:
    """Lets one entry stand where a list of them may stand: `{...}` for `[{...}]`."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.no_info_before_validator_function(_listed, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        listed = handler(schema)
        return {"anyOf": [listed["items"], listed]}


def _listed(value: Any) -> Any:
    return (value,) if isinstance(value, dict | Written) else value


Confirmations = Annotated[tuple[Confirmation, ...], OneOrMore()]

Terms = Literal["included", "extra charge", "by arrangement", "not for visitors"]
Condition = Literal["in service", "limited", "out of service", "unknown"]


class Line(Written):
    """A line of stock or of the building: what every one of them may also say."""

    public_because: ClassVar[str] = ""
    """
    Why a line of this kind is never for the house only, as the end of a sentence; empty where it
    may be.
    """
    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"terms", "house_only"})

    terms: Terms | None = None
    """
    On what terms visitors may use it: included, extra charge, by arrangement or not for visitors.
    """
    condition: Condition = "in service"
    """
    In service, limited, out of service, or unknown where nobody knows whether it works. Say why in
    the note.
    """
    note: Text | None = None
    """What a reader should know about this line, in a sentence."""
    photo: Annotated[Name | None, NotInWords("the picture itself is shown")] = None
    """A picture of it, by its file name in the venue's photos folder, such as dock.jpg."""
    house_only: Annotated[YesNo | None, NotInWords("it keeps the line off every page")] = None
    """
    Yes where this line, and all that stands in it, is for the house only. It is published nowhere;
    what it weighs, draws and uses up counts all the same, without its name.
    """
    verified: Verification | None = None
    """When this line was checked, where that differs from the rest of the file."""
    confirmed: Confirmations = ()
    """
    That something on this line is right, odd as it looks: what, the value, by whom and when. One,
    or a list.
    """


class InConfigurations(Line):
    """A line of the building that may stand in some configurations of the house only."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"configurations"})
    configurations: Annotated[tuple[Name, ...], RefersTo("configuration")] = ()
    """
    The configurations it belongs to, by their names in house.yml. Left out, it is there in all of
    them.
    """


class InSpaces(Line):
    """A line that may be of some spaces of a house only."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"spaces"})
    spaces: Annotated[tuple[Name, ...], RefersTo("space")] = ()
    """
    The spaces it is of, by their names in house.yml. Left out, it is of the whole house.
    """


class Movable(InConfigurations):
    """
    A line of the building that figures count with: they are worked out for each configuration, with
    the lines that are there.
    """

    instead_of: ClassVar[str] = ""
    """The key of the file whose line it takes the place of where it is there; empty for none."""


class Loose(Line):
    """A line of loose stock: what is put away while no show uses it."""

    kept: Maybe[Name] = Absent.NOT_STATED
    """
    Where it is kept: the room, the case, such as Sound cage, trunk 2. It is published, and the
    counting sheet goes by it.
    """
    owner: Name | None = None
    """Whose it is, where it is not the house's, such as a hire firm or the school next door."""
    notice: Annotated[Duration | None, Plausible(3_600.0, 120 * 86_400.0)] = None
    """How long before the day to ask for it."""


class DepartmentFile(Written):
    """The top of a department's file."""

    verified: Maybe[Verification] = Absent.NOT_STATED
    """
    When what this file says was last checked, by whom and how. Lines that differ carry their own.
    """
    note: Text | None = None
    """What a reader should know about the whole department."""
    confirmed: Confirmations = ()
    """That a value of the file's own, on no line, is right, odd as it looks. One, or a list."""

    def contradictions_when_joined(self) -> Iterable[Problem]:
        """
        Problems that only show when a space's file is read together with what all spaces share.
        """
        return ()
