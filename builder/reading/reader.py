"""Read one file of a venue: text to a placed description, with every problem at once."""

import difflib
from typing import TypeVar, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from builder.reading.absent import Absent
from builder.reading.nodes import Composed, compose
from builder.reading.outlines import no_outlines
from builder.reading.possible import impossible
from builder.reading.problems import Problem, Refused, Where
from builder.reading.references import records_within
from builder.reading.written import Path, Written

# What people write for these two where they do not know our words for them.
NO_VALUE = ("no", "no.", "nil", "n/a", "na", "nothing", "null", "-")
NOT_KNOWN = ("tbc", "tbd", "tba", "not known", "??", "???")
ABSENT = ("unknown", "none", "?")

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
    try:
        description = kind.model_validate(composed.data)
    except ValidationError as failure:
        raise Refused(
            problem_of(error, composed, kind) for error in failure.errors(include_url=False)
        ) from None
    description.placed(composed.places, ())
    wrong = [
        problem for record in records_within(description) for problem in record.contradictions()
    ]
    if kind.bounded:
        wrong += [*impossible(description), *no_outlines(description)]
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
    near = keys_at(kind, path[:-1])
    match error["type"]:
        case "extra_forbidden":
            return "unknown-key", "is not a key here", near_name(str(path[-1]), near)
        case "missing":
            return (
                "missing-key",
                "is missing here",
                "write it, or write 'unknown' where the field allows not knowing",
            )
        case "model_type" | "dict_type" | "model_attributes_type":
            return (
                "wrong-shape",
                "should be a group of keys",
                f"write keys such as {', '.join(keys_at(kind, path)[:4])}",
            )
        case "tuple_type" | "list_type":
            return (
                "wrong-shape",
                "should be a list",
                list_advice(value_text(error["input"]), keys_at(kind, path)),
            )
        case "string_type":
            return "wrong-shape", "should be one text, not a group or a list", ""
        case "literal_error":
            return choice_unknown(error)
        case _:
            advice = str(error.get("ctx", {}).get("advice", ""))
            return (
                error["type"].replace("_", "-"),
                error["msg"],
                absent_advice(value_text(error["input"]), kind, path) or advice,
            )


def choice_unknown(error: ErrorDetails) -> tuple[str, str, str]:
    """The words for a value that is none of a list."""
    allowed = [
        part.strip().strip("'\"")
        for part in str(error.get("ctx", {}).get("expected", "")).replace(" or ", ", ").split(", ")
    ]
    meant = difflib.get_close_matches(str(error["input"]), allowed, n=1, cutoff=0.75)
    advice = f"did you mean '{meant[0]}'? " if meant else ""
    return (
        "choice-unknown",
        "is not one of the choices",
        f"{advice}write one of: {', '.join(allowed)}",
    )


def list_advice(text: str, keys: list[str]) -> str:
    """
    How to write a list where one value stands; with the keys that an entry has, if it has any.
    """
    if text.strip().casefold() in (*NO_VALUE, *NOT_KNOWN, *ABSENT):
        return "leave the key out where there is nothing to list"
    if keys:
        return f"begin each entry with '- ', and give it keys such as {', '.join(keys[:3])}"
    return (
        f"write [{text}]"
        if text and not set(text) & set("[]{},:#\"'")
        else "begin each entry with '- '"
    )


def absent_advice(text: str, kind: type[BaseModel], path: Path) -> str:
    """Advice where somebody wrote 'n/a' or 'TBC' in a field that may say so; empty otherwise."""
    word = text.strip().casefold()
    if word not in (*NO_VALUE, *NOT_KNOWN) or not may_be_absent(kind, path):
        return ""
    if word in NO_VALUE:
        return "write `none` if there is none"
    return "write `unknown` if nobody knows yet"


def may_be_absent(kind: type[BaseModel], path: Path) -> bool:
    """Whether `unknown` and `none` may stand at a path."""
    holder = model_at(kind, path[:-1])
    field = (
        next(
            (
                field
                for name, field in holder.model_fields.items()
                if path[-1] in (name, field.alias)
            ),
            None,
        )
        if holder
        else None
    )
    return field is not None and Absent in get_args(field.annotation)


def near_name(wrong: str, known: list[str]) -> str:
    """Advice that offers the nearest known name, or the list."""
    meant = difflib.get_close_matches(wrong, known, n=1, cutoff=0.6)
    if meant:
        return f"did you mean '{meant[0]}'?"
    return f"known here: {', '.join(known)}" if known else ""


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
