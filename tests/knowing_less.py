"""
A venue that knows less: one value that was exact is written as what is known of it in part, or as
unknown, or a key is left out. What that does to figures and verdicts is compared with the venue as
it stands.
"""

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from typing import Any

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack, Verdict
from builder.pack import Figure, Pack, Value
from builder.pipeline import pack_of, venue_of
from builder.reading.fields import mark_of
from builder.reading.left_out import counts_left_out, is_listed
from builder.reading.maybe import OrAbsent, is_numeric
from builder.reading.nodes import spoken
from builder.reading.reader import model_at
from builder.reading.written import Written
from tests.sweep import (
    DESCRIPTIONS,
    HOUSES,
    Data,
    Path_,
    at,
    composed,
    field_at,
    folder,
    paths,
    remembered,
    riders,
)

LESS = ("about {}", "at least {}", "up to {}", "unknown")
"""Ways of knowing less of an exact value."""
LEFT_OUT = "left out"
"""The way of writing less: the key does not stand there."""
IN_PART = re.compile(r"^(?:about|at least|at most|up to|set) | to |\+-")
"""How a value begins, or goes on, of which no more than a part is known."""
HAIR = 1e-9
GOOD = ("fits", "fits, with a note")
Need = tuple[str, int, str, str]


@dataclass(frozen=True, slots=True)
class Less:
    """One value of a venue, and how it is written instead."""

    venue: str
    file: str
    path: Path_
    form: str

    def __str__(self) -> str:
        return f"{self.venue}/{self.file} {spoken(self.path)} = {self.form}"

    @property
    def text(self) -> str:
        """The file's text with the value so written."""
        data = deepcopy(composed(self.venue)[self.file])
        holder, last = at(data, self.path[:-1]), self.path[-1]
        if self.form == LEFT_OUT:
            del holder[last]
            leave_out(data, stands_in_for(self))
        else:
            holder[last] = self.form.format(holder[last])
        return json.dumps(data, indent=1, ensure_ascii=False)


def every_less() -> Iterator[Less]:
    """Each exact value of the demo and the quarry that may be known in part, in each form."""
    for venue in ("demo", "quarry"):
        for file, data in composed(venue).items():
            for path in paths(data):
                if is_exact_number(file, path, at(data, path)):
                    yield from (Less(venue, file, path, form) for form in LESS)


def every_left_out() -> Iterator[Less]:
    """Each key of every house that may be left out, and whose absence has no meaning of its own."""
    for venue in HOUSES:
        for file, data in composed(venue).items():
            for path in paths(data):
                key = key_at(file, path)
                if key and may_be_left_out(*key) and not counts_left_out(*key):
                    yield Less(venue, file, path, LEFT_OUT)


def may_be_left_out(record: type[Written], name: str) -> bool:
    """Whether a key may be left out."""
    return not record.model_fields[name].is_required()


def stands_in_for(less: Less) -> list[Path_]:
    """By which keys the house says the same for all lines: these are left out too."""
    key = key_at(less.file, less.path)
    if key is None:
        return []
    record, name = key
    alias = record.model_fields[name].alias or name
    return [tuple(keys.split(".")) for keys in record.stands_in.get(alias, ())]


def leave_out(data: Data, keys: Iterable[Path_]) -> None:
    """Take keys out of a file's data, as far as they stand there."""
    for path in keys:
        holders: list[Any] = [data]
        for step in path[:-1]:
            found = [holder.get(step) for holder in holders if isinstance(holder, dict)]
            holders = [
                one for each in found for one in (each if isinstance(each, list) else [each])
            ]
        for holder in holders:
            if isinstance(holder, dict):
                holder.pop(path[-1], None)


def key_at(file: str, path: Path_) -> tuple[type[Written], str] | None:
    """The record that a key stands in and the name of its field; None where no key stands there."""
    if not isinstance(path[-1], str):
        return None
    record = model_at(DESCRIPTIONS[file], path[:-1])
    if record is None or not issubclass(record, Written):
        return None
    fields = record.model_fields.items()
    return next(
        ((record, name) for name, field in fields if path[-1] == (field.alias or name)), None
    )


def is_exact_number(file: str, path: Path_, value: object) -> bool:
    """Whether a value is one number, and could be known in part."""
    field = field_at(DESCRIPTIONS[file], path)
    if field is None or not isinstance(value, str) or value in ("unknown", "none", "?"):
        return False
    if IN_PART.search(value):
        return False
    return mark_of(field, OrAbsent) is not None and is_numeric(field.annotation)


def pack_with(less: Less) -> Pack:
    """The pack of the venue that knows less."""
    there = folder(less.venue)
    texts = {**there.texts, less.file: less.text}
    with remembered(less.venue):
        return pack_of(venue_of(texts, there.photos))


@cache
def usual_pack(venue: str) -> Pack:
    """The pack of the venue as it stands."""
    there = folder(venue)
    return pack_of(venue_of(there.texts, there.photos))


@cache
def usual_figures(venue: str) -> Mapping[str, Figure]:
    """The figures of the venue as it stands."""
    return figures_of(usual_pack(venue))


@cache
def usual_verdicts(venue: str) -> Mapping[Need, Verdict]:
    """The verdicts of all riders on the venue as it stands."""
    return verdicts_on(fit_record(usual_pack(venue)))


def figures_of(pack: Pack) -> dict[str, Figure]:
    """Every figure of a pack by its key."""
    return {
        figure.key: figure
        for section in pack.sections
        for item in section.items
        for figure in item.figures
    }


def names_of_things(pack: Pack) -> dict[str, str]:
    """The name of the thing that each figure is of."""
    return {
        figure.key: item.name
        for section in pack.sections
        for item in section.items
        for figure in item.figures
    }


def verdicts_on(record: FitPack) -> dict[Need, Verdict]:
    """The verdicts on every need of every show, each show by itself."""
    return by_need(answer for rider in riders() for answer in fit(record, [rider])["verdicts"])


def wrong_figures(less: Less, pack: Pack) -> Iterator[str]:
    """Figures that do not contain what they were when more was known."""
    now, is_left_out = figures_of(pack), less.form == LEFT_OUT
    if is_left_out and adds_to_figures(less):
        return
    named, was_named = names_of_things(pack), names_of_things(usual_pack(less.venue))
    for key, before in usual_figures(less.venue).items():
        if (is_left_out or adds_to_figures(less)) and named.get(key) != was_named[key]:
            continue  # Lines without a name are numbered: another has the number now.
        if key not in now:
            if before.value and not is_left_out and not says_what_it_lacks(key, now, less.venue):
                yield f"{key}: gone, was {words(before.value)}"
        elif not holds(now[key].value, before.value):
            yield f"{key}: {words(before.value)} -> {words(now[key].value)}"


def adds_to_figures(less: Less) -> bool:
    """Whether a key holds a list: one that is not there adds nothing to a figure."""
    key = key_at(less.file, less.path)
    return key is not None and is_listed(*key)


def says_what_it_lacks(key: str, now: Mapping[str, Figure], venue: str) -> bool:
    """
    Whether another figure of the same thing, or of what it is part of, stands there and names what
    is missing.
    """
    thing = key.rpartition(".")[0]
    whole = units_of(usual_pack(venue)).get(thing, thing)
    parts = whole.split(".")
    things = {thing, *(".".join(parts[:length]) for length in range(3, len(parts) + 1))}
    return any(
        figure.missing for other, figure in now.items() if other.rpartition(".")[0] in things
    )


def units_of(pack: Pack) -> dict[str, str]:
    """What each single unit is part of, by the keys of both."""
    return {
        item.key: item.unit_of
        for section in pack.sections
        for item in section.items
        if item.unit_of
    }


def holds(now: Value | None, before: Value | None) -> bool:
    """Whether a value is the same, wider, or not told."""
    if now is None or now == before:
        return True
    if before is None:
        return False
    low, high = now.ends
    was_low, was_high = before.ends
    if before.far_end is None or now.far_end is None:
        return now.text == before.text
    hair = HAIR * max(1.0, abs(before.far_end))
    low_holds = low is None or (was_low is not None and low <= was_low + hair)
    return low_holds and (high is None or (was_high is not None and high >= was_high - hair))


def words(value: Value | None) -> str:
    """A value for a message."""
    return "missing" if value is None else f"{value.text} {value.ends}"


def wrong_verdicts(less: Less, pack: Pack) -> Iterator[str]:
    """
    Verdicts that promise more, or refuse, where less is known: each beside the one in the same
    configuration of the house, for another may be the best now.
    """
    record = fit_record(pack)
    for number, rider in enumerate(riders()):
        result = fit(record, [rider])
        now = by_need(result["verdicts"])
        configuration = result["acts"][0]["arrangement"]["configuration"]
        for need, before in usual_in(less.venue, number, configuration).items():
            after = now[need]["verdict"] if need in now else "gone"
            if not same_or_ask(before["verdict"], after):
                yield f"{need}: {before['verdict']} -> {after}"


@cache
def usual_in(venue: str, number: int, configuration: str) -> Mapping[Need, Verdict]:
    """The verdicts on one rider in a configuration of the venue as it stands."""
    rider, record = riders()[number], fit_record(usual_pack(venue))
    result = fit(record, [rider])
    if result["acts"][0]["arrangement"]["configuration"] != configuration:
        result = fit(record, [{**rider, "configuration": configuration}])
    return by_need(result["verdicts"])


def by_need(verdicts: Iterable[Verdict]) -> dict[Need, Verdict]:
    """Verdicts by what they answer."""
    return {
        (answer["act"], answer["line"], answer["title"], answer["need"]): answer
        for answer in verdicts
    }


def same_or_ask(before: str, after: str) -> bool:
    """Whether a verdict is as it was, or a question."""
    return after in (before, "ask") or (before in GOOD and after in GOOD)
