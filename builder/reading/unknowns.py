"""
`unknown` where a key could be left out, or in a group that then stands for no whole value.

What can be left out may be unknown: it counts as left out wherever figures read it, and the pages
say that it is unknown. A group whose needed part is unknown (a position with an unknown depth) is
no value to count with; it counts as unknown, and what is known of it is told.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import ValidationError, create_model
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from builder.reading.absent import Absent
from builder.reading.fields import mark_of
from builder.reading.maybe import OrAbsent, is_unknown_word
from builder.reading.references import records_within
from builder.reading.words import ReadBy
from builder.reading.written import Confirmation, DepartmentFile, KnownParts, Line, Path, Written

Complain = Callable[[ErrorDetails, Path], None]
"""Takes an error and the place of the group that it was found in."""


@dataclass(slots=True)
class Unknowns:
    """What is unknown in a file, by the place of its record and by key."""

    found: dict[Path, dict[str, KnownParts]] = field(default_factory=dict)

    def add(self, path: Path, key: str, parts: KnownParts) -> None:
        """Remember that a key is unknown, and what is known of it."""
        self.found.setdefault(path, {})[key] = parts

    def tell(self, description: Written) -> None:
        """Tell each record which of its keys are unknown."""
        for record in records_within(description):
            record.told_unknown(self.found.get(record.path_in_file, {}))


def without_unknowns(
    data: Mapping[str, Any], kind: type[Written], complain: Complain
) -> tuple[dict[str, Any], Unknowns]:
    """
    The data of a file as its description reads it, and what was unknown in it.

    What can be left out is left out where it is unknown; a group that lacks a needed part is
    `unknown` in its whole where its key allows that. What is wrong in such a group is complained
    of. Everything else stays as it is, and so does all of a file that is no department's: no page
    would tell what is unknown in it.
    """
    unknowns = Unknowns()
    if not issubclass(kind, DepartmentFile):
        return dict(data), unknowns
    return cleaned(data, kind, (), unknowns, complain), unknowns


def cleaned(
    data: Mapping[str, Any],
    kind: type[Written],
    path: Path,
    unknowns: Unknowns,
    complain: Complain,
) -> dict[str, Any]:
    """One group of a file without what is unknown in it."""
    fields = keyed(kind)
    kept: dict[str, Any] = {}
    for key, value in data.items():
        found = fields.get(key)
        if found is None:
            kept[key] = value
            continue
        leaves_out = can_be_left_out(kind, key)
        if leaves_out and is_unknown_word(value):
            unknowns.add(path, key, ())
            continue
        group = group_within(found.annotation)
        may_lack = leaves_out or mark_of(found, OrAbsent) is not None
        if group is not None and may_lack and lacks(value, group):
            check_parts(value, group, (*path, key), complain)
            unknowns.add(path, key, tuple(parts_of(value, ())))
            if mark_of(found, OrAbsent) is not None:
                kept[key] = Absent.UNKNOWN.value
            continue
        kept[key] = within(value, found, (*path, key), unknowns, complain)
    return kept


def within(value: Any, found: FieldInfo, path: Path, unknowns: Unknowns, complain: Complain) -> Any:
    """A value with the groups in it cleaned."""
    record = record_of(found.annotation)
    if record is None:
        return value
    if isinstance(value, Mapping):
        # One entry may stand for a list of one, and its record then has the place of the first.
        own = (*path, 0) if is_list(found.annotation) else path
        return cleaned(value, record, own, unknowns, complain)
    if isinstance(value, list):
        return [
            cleaned(entry, record, (*path, index), unknowns, complain)
            if isinstance(entry, Mapping)
            else entry
            for index, entry in enumerate(value)
        ]
    return value


def can_be_left_out(kind: type[Written], key: str) -> bool:
    """Whether an unknown key counts as left out: it then says nothing, and holds no words."""
    found = keyed(kind)[key]
    if key in kind.definite_when_left_out or found.is_required():
        return False
    if mark_of(found, OrAbsent) is not None or is_words(found):
        return False
    return found.default is None or found.default == ()


def may_be_unknown(kind: type[Written], key: str) -> bool:
    """
    Whether `unknown` may stand under a key for another reason than that its field says so: it can
    be left out, or its group is then unknown in its whole.
    """
    found = keyed(kind)[key]
    is_needed_part = group_within(kind) is not None and lacks_part(found, Absent.UNKNOWN.value)
    return is_needed_part or can_be_left_out(kind, key)


def is_words(found: FieldInfo) -> bool:
    """Whether a key holds a name or a text, in which `unknown` is a word like any other."""
    mark = mark_of(found, ReadBy)
    return mark is not None and mark.type is str and not is_list(found.annotation)


def lacks(value: Any, kind: type[Written]) -> bool:
    """Whether a group, or an entry of a list of groups, lacks a part that it needs."""
    if isinstance(value, list):
        return any(is_unknown_word(entry) or lacks(entry, kind) for entry in value)
    if not isinstance(value, Mapping):
        return False
    return any(lacks_part(found, value.get(key)) for key, found in keyed(kind).items())


def lacks_part(found: FieldInfo, value: Any) -> bool:
    """Whether a needed part of a group is unknown, or lacks a needed part itself."""
    if not found.is_required() or mark_of(found, OrAbsent) is not None or is_words(found):
        return False
    group = group_within(found.annotation)
    return is_unknown_word(value) or (group is not None and lacks(value, group))


def check_parts(value: Any, kind: type[Written], path: Path, complain: Complain) -> None:
    """Complain of what is wrong in a group that lacks something needed."""
    entries = enumerate(value) if isinstance(value, list) else [(None, value)]
    for index, entry in entries:
        if is_unknown_word(entry):
            continue
        try:
            lenient(kind).model_validate(entry)
        except ValidationError as wrong:
            for error in wrong.errors(include_url=False):
                complain(error, path if index is None else (*path, index))


def parts_of(value: Any, keys: Path) -> Iterator[tuple[Path, str]]:
    """Each text within a group, with the way to it."""
    if isinstance(value, Mapping):
        for key, part in value.items():
            yield from parts_of(part, (*keys, key))
    elif isinstance(value, list):
        for index, part in enumerate(value):
            yield from parts_of(part, (*keys, index))
    else:
        yield keys, str(value)


@cache
def lenient(kind: type[Written]) -> type[Written]:
    """A group like another, each needed part of which may be unknown."""
    parts: dict[str, Any] = {}
    for name, found in kind.model_fields.items():
        inner: Any = found.annotation
        if found.metadata:
            inner = Annotated[(inner, *found.metadata)]
        group = group_within(found.annotation)
        if group is not None and found.is_required():
            inner = like_in_part(group, found)
        may_be = Annotated[Union[inner, Absent], OrAbsent()]  # noqa: UP007
        default = ... if found.is_required() else found.default
        parts[found.alias or name] = (may_be, default)
    return create_model(f"{kind.__name__}InPart", __base__=Written, **parts)


def like_in_part(group: type[Written], found: FieldInfo) -> Any:
    """The type of a group within a lacking one: itself lacking, or a list of such."""
    inner: Any = lenient(group)
    return tuple[inner, ...] if is_list(found.annotation) else inner


@cache
def keyed(kind: type[Written]) -> Mapping[str, FieldInfo]:
    """The fields of a record by the key that an author writes."""
    return {found.alias or name: found for name, found in kind.model_fields.items()}


def record_of(annotation: Any) -> type[Written] | None:
    """The record within a type; None where it holds none."""
    if isinstance(annotation, type) and issubclass(annotation, Written):
        return annotation
    return next((found for part in get_args(annotation) if (found := record_of(part))), None)


def group_within(annotation: Any) -> type[Written] | None:
    """The record within a type that is a value of its own, and no line that others refer to."""
    found = record_of(annotation)
    is_value = found is not None and not found.defines
    if not is_value or issubclass(found or Line, Line | DepartmentFile | Confirmation):
        return None
    return found


def is_list(annotation: Any) -> bool:
    """Whether a type is a list, or may be."""
    return get_origin(annotation) is tuple or any(
        is_list(part) for part in get_args(annotation) if get_origin(annotation) is not Literal
    )
