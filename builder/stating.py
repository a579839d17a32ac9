"""
From what was written to facts: every key of a record becomes a fact, by itself, so no department
types a label or a value twice.

A field may carry marks: :class:`Measured` tells from where it is measured, ``Decisive`` makes its
absence visible.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from pydantic.fields import FieldInfo

from builder.pack import Check, Fact, Item, Place, Standing, Value, in_a_row
from builder.pack import Verified as Checked
from builder.reading.absent import Absent
from builder.reading.addresses import distinct
from builder.reading.dated import Dated, age_days, dated
from builder.reading.fields import mark_of
from builder.reading.how_many import numbers
from builder.reading.in_part import Between, amount_of, ends_of, in_other_system, values_within
from builder.reading.in_service import not_working
from builder.reading.maybe import is_unknown_word
from builder.reading.measures import both
from builder.reading.problems import Where
from builder.reading.quantities import Quantity
from builder.reading.values.sentences import sentence_start
from builder.reading.written import (
    Assumed,
    Decisive,
    DepartmentFile,
    Line,
    Movable,
    Numbered,
    Rated,
    Verification,
    Written,
)

QUALIFIERS = frozenset(Line.model_fields) | {"name"}
"""Keys that qualify a line and stand beside its facts, not among them."""


@dataclass(frozen=True, slots=True)
class Measured:
    """Marks a field with what it is measured from, such as the deck."""

    datum: str


@dataclass(frozen=True, slots=True)
class Ageing:
    """As of which day ages count, and from how many days on a check is stale."""

    on: date
    stale_after_days: int

    def checked(self, verification: Verification | None) -> Checked | None:
        """A verification as the pack shows it."""
        if verification is None:
            return None
        return self.aged(Check(verification.on.text, verification.by, verification.how))

    def aged(self, check: Check) -> Checked:
        """A check with its age; one that nobody made has none."""
        if check.on == "":
            return Checked("", "", "", 0)
        on = dated(check.on)
        oldest_days = (self.on - on.first).days
        stale = oldest_days > self.stale_after_days
        return Checked(check.on, check.by, check.how, age_days(on, self.on), stale)


@dataclass(frozen=True, slots=True)
class Stater:
    """
    Turns the records of one file into facts; lines without a verification of their own inherit the
    file's.
    """

    ageing: Ageing
    inherited: Checked | None = None

    @classmethod
    def of_file(cls, file: DepartmentFile, ageing: Ageing) -> "Stater":
        """The stater for a department's file."""
        return cls(
            ageing,
            ageing.checked(file.verified) if isinstance(file.verified, Verification) else None,
        )

    def facts(
        self, record: Written, key: str, *, leave_out: tuple[str, ...] = ()
    ) -> tuple[Fact, ...]:
        """
        A fact for each key of a record, nested records included under ``outer.inner``; lists of
        records are the department's to place.
        """
        own = self.ageing.checked(record.verification)
        blank = Fact(
            key=key,
            label="",
            standing=Standing.STATED,
            terms=(record.terms or "") if isinstance(record, Line) else "",
            condition=record.condition if isinstance(record, Line) else "",
            note=(record.note or "") if isinstance(record, Line) else "",
            verified=own or self.inherited,
        )
        return tuple(self._facts_within(record, blank, leave_out))

    def item(
        self, record: Written, key: str, kind: str, name: str, *, leave_out: tuple[str, ...] = ()
    ) -> Item:
        """
        A record as an item of the pack, with a fact for each of its keys.

        Computed figures are added by the department.
        """
        line = record if isinstance(record, Line) else None
        lost = not_working(line) if line else None
        return Item(
            key=key,
            kind=kind,
            name=name,
            facts=self.facts(record, key, leave_out=leave_out),
            condition=line.condition if line else "",
            note=(line.note or "") if line else "",
            photo=(line.photo or "") if line else "",
            place=place(record.where()),
            out=lost.out if lost else 0,
            of=lost.of if lost else 0,
            units=lost.units if lost else (),
            counted=lost.counted if lost else "",
            terms=(line.terms or "") if line else "",
            verified=self.ageing.checked(line.verified) if line else None,
        )

    def named(
        self,
        records: Sequence[Written],
        section: str,
        kind: str,
        *,
        leave_out: tuple[str, ...] = (),
    ) -> tuple[Item, ...]:
        """Named records as items, under ``section.kind.name``."""
        names = [str(getattr(record, "name")) for record in records]  # noqa: B009
        return tuple(
            self.item(record, f"{section}.{kind}.{last}", kind, name, leave_out=leave_out)
            for record, name, last in zip(records, names, distinct(names), strict=True)
        )

    def counted(
        self, records: Sequence[Written], section: str, kind: str, *, name_key: str
    ) -> tuple[Item, ...]:
        """
        Records without a name of their own as items, under ``section.kind.1`` and on; what is not
        there in every configuration keeps its number in all. ``name_key`` is the key that says what
        each is.
        """
        return tuple(
            self.item(
                record,
                f"{section}.{kind}.{numbered(record) or count}",
                kind,
                str(getattr(record, name_key)),
            )
            for count, record in enumerate(records, 1)
        )

    def of_parts(self, records: Sequence[Written], key: str, label: str) -> Iterator[Fact]:
        """
        Facts of the parts of a line, such as the stretches of a way: ``key.1.length`` and on,
        labelled with the number of the part.
        """
        for count, record in enumerate(records, 1):
            for fact in self.facts(record, f"{key}.{count}"):
                yield replace(fact, label=f"{label} {count}: {fact.label.lower()}")

    def _facts_within(
        self, record: Written, blank: Fact, leave_out: tuple[str, ...]
    ) -> Iterator[Fact]:
        for name, field in type(record).model_fields.items():
            value = getattr(record, name)
            spoken = field.alias or name
            if spoken in record.unknown:
                yield from unknown_facts(record, spoken, labelled(blank, record, spoken))
                continue
            if (
                name in leave_out
                or (name in QUALIFIERS and isinstance(record, Line))
                or isinstance(value, Verification)
                or name == "confirmed"
            ):
                continue
            inner = labelled(blank, record, spoken)
            if isinstance(value, Written):
                own = self.ageing.checked(value.verification)
                within = replace(inner, verified=own or blank.verified)
                yield from self._facts_within(value, within, ())
            elif name in record.model_fields_set or isinstance(value, Absent):
                if fact := filled(inner, value, field):
                    yield fact
            elif fact := assumed(inner, value, field):
                yield fact


def numbered(record: Written) -> int:
    """The number of a line of which others may not be there; 0 of any other."""
    return record.number_in_list if isinstance(record, Movable) else 0


def labelled(blank: Fact, record: Written, spoken: str) -> Fact:
    """A fact of one key, without its value yet."""
    label = f"{blank.label}: {spaced(spoken).lower()}" if blank.label else spaced(spoken)
    return replace(
        blank, key=f"{blank.key}.{spoken}", label=label, place=place(record.where(spoken))
    )


def unknown_facts(record: Written, spoken: str, blank: Fact) -> Iterator[Fact]:
    """That a key is unknown, and each part that is known of it in its author's words."""
    yield replace(blank, standing=Standing.UNKNOWN)
    for keys, words in record.unknown[spoken]:
        steps = [str(step + 1) if isinstance(step, int) else step for step in keys]
        yield replace(
            blank,
            key=".".join((blank.key, *steps)),
            label=f"{blank.label}: {' '.join(map(lowered, steps))}",
            value=None if is_unknown_word(words) else Value(words),
            standing=Standing.UNKNOWN if is_unknown_word(words) else blank.standing,
            place=place(record.where(spoken, *keys)),
        )


def lowered(step: str) -> str:
    """A key within another as part of a label."""
    return spaced(step).lower()


def assumed(blank: Fact, value: object, field: FieldInfo) -> Fact | None:
    """
    The fact of a key that nobody wrote: its default as what is assumed, where it is marked so.

    Other defaults say nothing about the house, such as one thing where no count is written.
    """
    mark = mark_of(field, Assumed)
    shown = value_of(value) if mark else None
    if mark is None or shown is None:
        return filled(blank, None, field)
    return replace(blank, standing=Standing.ASSUMED, value=shown, note=mark.why, place=None)


def filled(blank: Fact, value: object, field: FieldInfo) -> Fact | None:
    """The fact with its value, or None where there is nothing to say."""
    blank = replace(
        blank, datum=next((mark.datum for mark in field.metadata if isinstance(mark, Measured)), "")
    )
    decisive = any(isinstance(mark, Decisive) for mark in field.metadata)
    if value is None or value is Absent.NOT_STATED or value == ():
        return replace(blank, standing=Standing.NOT_STATED, place=None) if decisive else None
    if isinstance(value, Between):
        in_part = value_in_part(value)
        if mark_of(field, Rated) is not None:
            # What may be carried is never chosen: no show fits by the higher end.
            in_part = replace(in_part, can_be_set=False, settings=())
        return replace(blank, value=in_part)
    if isinstance(value, Absent):
        return replace(
            blank, standing=Standing.UNKNOWN if value is Absent.UNKNOWN else Standing.NONE
        )
    shown = value_of(value)
    if shown and any(isinstance(mark, Numbered) for mark in field.metadata):
        shown = replace(shown, text=numbers(shown.parts))
    return replace(blank, value=shown) if shown else None


def value_of(value: object) -> Value | None:
    """A written value as the pack shows it; None for records and lists of records."""
    match value:
        case Quantity():
            text, also = both(value)
            return Value(text, also, value.si, type(value).si_unit)
        case bool():
            return Value("yes" if value else "no", number=float(value))
        case int() | float():
            return Value(f"{value:,}", number=float(value))
        case str():
            return Value(value)
        case date():
            return Value(value.isoformat())
        case Dated():
            return Value(value.text)
        case tuple():
            return list_of(value)
        case _:
            return None


def value_in_part(known: Between[Any]) -> Value:
    """A value that is known in part, as the pack shows it: its ends, and what it can be set to."""
    least, most = (None if end is None else amount_of(end) for end in ends_of(known))
    example = next(values_within(known))
    return Value(
        known.value,
        in_other_system(known),
        None,
        type(example).si_unit if isinstance(example, Quantity) else "",
        least=least,
        most=most,
        can_be_set=known.can_be_set,
        settings=tuple(amount_of(setting) for setting in known.settings),
    )


def list_of(values: tuple[object, ...]) -> Value | None:
    """A written list as the pack shows it: one text, and each entry by itself."""
    parts = []
    for value in values:
        part = value_of(value)
        if part is None:
            return None
        parts.append(part.text)
    return Value(in_a_row(parts), parts=tuple(parts)) if parts else None


def spaced(key: str) -> str:
    """A key as a label."""
    return sentence_start(key.replace("_", " "))


def place(where: Where) -> Place | None:
    """A place in the author's text as the pack tells it."""
    return Place(where.file, where.line, where.column) if where.file else None
