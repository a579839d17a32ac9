"""Read one file of a venue: text to a placed description, with every problem at once."""

from typing import TypeVar, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from builder.reading.absent import Absent
from builder.reading.fields import mark_of
from builder.reading.house_only import house_only_problems
from builder.reading.lists import AtLeastOne, empty_lists, long_lists
from builder.reading.nodes import Composed, compose
from builder.reading.outlines import no_outlines
from builder.reading.possible import impossible
from builder.reading.problems import Problem, Refused, Where
from builder.reading.references import records_within
from builder.reading.unknowns import can_be_left_out, without_unknowns
from builder.reading.values.faults import Fault
from builder.reading.values.in_part import parted
from builder.reading.values.shapes import (
    NO_VALUE,
    NOT_KNOWN,
    choice_fault,
    list_advice,
    missing_fault,
    no_group_fault,
    no_list_fault,
    no_text_fault,
    unknown_key_fault,
)
from builder.reading.written import DepartmentFile, Path, Written

EMPTY_LIST = "write [] where nothing can be listed yet"
MUST_BE_WRITTEN = "write it: this cannot be unknown"
EXACT_ADVICE = "this must be exact: write one value, and what else is known in `note:`"
Description = TypeVar("Description", bound=Written)


def read(text: str, *, file: str, kind: type[Description]) -> Description:
    """
    The description that a file's text holds.

    Raises
    ------
    Refused
        With every problem in the text, each with its line and what to write instead.
    """
    composed = compose(text, file)
    faults: list[Problem] = []

    def complain(error: ErrorDetails, path: Path) -> None:
        whole: ErrorDetails = {**error, "loc": (*path, *error["loc"])}
        faults.append(problem_of(whole, composed, kind))

    data, unknowns = without_unknowns(composed.data, kind, complain)
    try:
        description = kind.model_validate(data)
    except ValidationError as failure:
        faults += (problem_of(error, composed, kind) for error in failure.errors(include_url=False))
        raise Refused(faults) from None
    if faults:
        raise Refused(faults)
    description.placed(composed.places, ())
    unknowns.tell(description)
    wrong = [
        problem for record in records_within(description) for problem in record.contradictions()
    ]
    wrong += [*house_only_problems(description), *empty_lists(description)]
    if kind.bounded:
        wrong += [
            *impossible(description),
            *no_outlines(description),
            *long_lists(description),
        ]
    if wrong:
        raise Refused(wrong)
    return description


def problem_of(error: ErrorDetails, composed: Composed, kind: type[BaseModel]) -> Problem:
    """One validation error as a problem at its place in the text."""
    path: Path = tuple(error["loc"])
    code, reason, advice = explained(error, path, kind)
    shown = "" if code in ("missing-key", "unknown-key") else value_text(error["input"])
    return Problem(
        place_of(path, composed, at_key=code == "unknown-key"),
        said(path),
        shown,
        reason,
        code,
        advice,
    )


def explained(error: ErrorDetails, path: Path, kind: type[BaseModel]) -> tuple[str, str, str]:
    """Code, reason and advice for an error, in words for the author."""
    fault = fault_of(error, path, kind)
    if fault is not None:
        return fault["code"], fault["reason"], fault["advice"]
    advice = str(error.get("ctx", {}).get("advice", ""))
    return (
        error["type"].replace("_", "-"),
        error["msg"],
        absent_advice(value_text(error["input"]), kind, path)
        or exact_advice(value_text(error["input"]), kind, path)
        or advice,
    )


def fault_of(error: ErrorDetails, path: Path, kind: type[BaseModel]) -> Fault | None:
    """What is wrong where keys, lists and groups do not stand as they should; else None."""
    match error["type"]:
        case "extra_forbidden":
            return unknown_key_fault(str(path[-1]), keys_at(kind, path[:-1]))
        case "missing":
            return missing_key(kind, path)
        case "model_type" | "dict_type" | "model_attributes_type":
            return no_group_fault(keys_at(kind, path))
        case "tuple_type" | "list_type":
            return no_list(value_text(error["input"]), kind, path)
        case "string_type":
            return no_text_fault("")
        case "literal_error":
            return choice_fault(value_text(error["input"]), choices_in(error))
        case _:
            return None


def missing_key(kind: type[BaseModel], path: Path) -> Fault:
    """A key that must be there, with what it takes where nobody knows it."""
    fault = missing_fault()
    if may_be_absent(kind, path):
        return fault
    field = field_at(kind, path)
    if is_list(field):
        return {**fault, "advice": at_least_one(field).advice or EMPTY_LIST}
    keys = keys_at(kind, path)
    return {**fault, "advice": no_group_fault(keys)["advice"] if keys else MUST_BE_WRITTEN}


def no_list(text: str, kind: type[BaseModel], path: Path) -> Fault:
    """Something else where a list should be; a list that must be there cannot be left out."""
    fault = no_list_fault(text, keys_at(kind, path))
    field = field_at(kind, path)
    is_empty = fault["advice"] == list_advice("unknown", [])
    if not is_empty or field is None or not field.is_required():
        return fault
    mark = at_least_one(field)
    return {
        **fault,
        "code": mark.code or fault["code"],
        "advice": mark.advice or EMPTY_LIST,
    }


def at_least_one(field: FieldInfo | None) -> AtLeastOne:
    """What is told where a list names none and has to; empty where it need not name any."""
    mark = mark_of(field, AtLeastOne) if field is not None else None
    return mark or AtLeastOne("", "")


def is_list(field: FieldInfo | None) -> bool:
    """Whether a key holds a list."""
    return field is not None and get_origin(field.annotation) is tuple


def choices_in(error: ErrorDetails) -> list[str]:
    """The choices that an error says were expected."""
    expected = str(error.get("ctx", {}).get("expected", "")).replace(" or ", ", ")
    return [part.strip().strip("'\"") for part in expected.split(", ")]


def absent_advice(text: str, kind: type[BaseModel], path: Path) -> str:
    """Advice where somebody wrote 'n/a' or 'TBC' in a field that may say so; empty otherwise."""
    word = text.strip().casefold()
    if word not in (*NO_VALUE, *NOT_KNOWN) or not may_be_absent(kind, path):
        return ""
    if word in NO_VALUE:
        return "write `none` if there is none"
    return "write `unknown` if nobody knows yet"


def exact_advice(text: str, kind: type[BaseModel], path: Path) -> str:
    """Advice where somebody wrote what is known in part and the field needs one value."""
    if parted(text)["manner"] == "exact" or may_be_absent(kind, path):
        return ""
    return EXACT_ADVICE


def may_be_absent(kind: type[BaseModel], path: Path) -> bool:
    """Whether `unknown` and `none` may stand at a path."""
    holder, field = model_at(kind, path[:-1]), field_at(kind, path)
    if holder is None or field is None:
        return False
    if Absent in get_args(field.annotation):
        return True
    if not (issubclass(kind, DepartmentFile) and issubclass(holder, Written)):
        return False
    return can_be_left_out(holder, str(path[-1]))


def field_at(kind: type[BaseModel], path: Path) -> FieldInfo | None:
    """The field that the key at the end of a path fills; None where the group has no such key."""
    holder, key = model_at(kind, path[:-1]), str(path[-1])
    fields = {} if holder is None else holder.model_fields
    return next((field for name, field in fields.items() if key == (field.alias or name)), None)


def keys_at(kind: type[BaseModel], path: Path) -> list[str]:
    """
    The keys the description allows at a path, what must be there first and what every line may say
    last; empty where it holds no keys there.
    """
    found = model_at(kind, path)
    if found is None:
        return []
    own = [
        (name, field) for name, field in found.model_fields.items() if name in found.__annotations__
    ]
    every = [
        (name, field)
        for name, field in found.model_fields.items()
        if name not in found.__annotations__
    ]
    return [
        field.alias or name
        for name, field in [*sorted(own, key=lambda each: not each[1].is_required()), *every]
    ]


def model_at(kind: type[BaseModel], path: Path) -> type[BaseModel] | None:
    """The description class at a path, None where no keys stand there."""
    found: type[BaseModel] | None = kind
    for step in path:
        if isinstance(step, int) or found is None:
            continue
        field = next(
            (field for name, field in found.model_fields.items() if step in (name, field.alias)),
            None,
        )
        found = model_within(field.annotation) if field else None
    return found


def model_within(annotation: object) -> type[BaseModel] | None:
    """
    The description class inside an annotation such as ``tuple[Service, ...]`` or ``Maybe[At]``.
    """
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    inner = get_args(annotation) or getattr(annotation, "__args__", ())
    return next((found for part in inner if (found := model_within(part))), None)


def place_of(path: Path, composed: Composed, *, at_key: bool) -> Where:
    """The nearest place known at or above a path."""
    if at_key and path in composed.key_places:
        return composed.key_places[path]
    while path and path not in composed.places:
        path = path[:-1]
    return composed.places[path]


def said(path: Path) -> str:
    """A path as the author would say it: ``services[1].rating``, counting entries from 1."""
    words = ""
    for step in path:
        words += f"[{step + 1}]" if isinstance(step, int) else f".{step}" if words else step
    return words


def value_text(value: object) -> str:
    """The refused value where it was one text; groups and lists are not repeated."""
    return value if isinstance(value, str) else ""
