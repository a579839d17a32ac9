"""
Orders that begin with a list or a file instead of a line: add a line, stamp a file as checked.
"""

import re
from collections.abc import Mapping
from datetime import date
from pathlib import PurePosixPath

from pydantic import BaseModel

from builder.overview.log import LOG, list_file
from builder.reading.nodes import Path, compose
from builder.reading.problems import Problem, Refused, Where
from builder.reading.reader import keys_at, model_within
from builder.reading.references import spelling
from builder.reading.written import Line
from builder.registry import DEPARTMENTS
from builder.stock.changing import Stockroom
from builder.stock.edits import reach
from builder.stock.lines import NAME_KEYS, found, list_unknown, near
from builder.stock.order import Order, data_of, written_line
from builder.stock.orders import add, verified
from builder.stock.wording import Data


def added(room: Stockroom, list_name: str, name: str, also: Mapping[str, str]) -> Order:
    """
    A line added to a list of the venue.

    Raises
    ------
    Refused
        `list-unknown`, or `name-taken` where the list has a line of that name.
    """
    file, path, kind = list_of(room, list_name)
    within = f"{PurePosixPath(file).stem}.{list_name.partition('.')[2]}"
    taken = next(
        (
            line
            for line in room.lines
            if line.within == within and spelling(line.name) == spelling(name)
        ),
        None,
    )
    if taken:
        raise Refused(
            [
                Problem(
                    taken.where,
                    "",
                    name,
                    "is in that list already",
                    "name-taken",
                    "change its count, or give the new line its own name",
                )
            ]
        )
    name_key = next(key for key in NAME_KEYS if key in kind.model_fields)
    said: dict[str, Data] = {name_key: name, **{key: data_of(value) for key, value in also.items()}}
    absent = is_there(room.texts[file], path) and isinstance(
        reach(compose(room.texts[file], file).data, path), str
    )
    return add(file, path, within, said, begun=not absent)


def list_of(room: Stockroom, list_name: str) -> tuple[str, Path, type[Line]]:
    """
    The file, the path and the kind of line of a list such as ``sound.stock`` or
    ``access.routes[1].passages``.
    """
    key, _, rest = list_name.partition(".")
    file = next((each for each in room.texts if list_file(each) == key), "")
    department = next((each for each in DEPARTMENTS if each.key == key.rpartition("/")[2]), None)
    path = path_of(rest)
    kind = department and rest and kind_at(department.description, path)
    if not file or not kind or not is_there(room.texts[file], path[:-1]):
        raise Refused([list_unknown(list_name, known_lists(room))])
    return file, path, kind


def path_of(text: str) -> Path:
    """``routes[1].passages`` as a path, entries counted from 0."""
    steps: list[str | int] = []
    for name, number in re.findall(r"([A-Za-z_]+)|\[(\d+)\]", text):
        steps.append(name or int(number) - 1)
    return tuple(steps)


def kind_at(description: type[BaseModel], path: Path) -> type[Line] | None:
    """The kind of line that a list holds, None where there is no such list of named lines."""
    kind: type[BaseModel] = description
    for step in path:
        if isinstance(step, str):
            field = next(
                (field for name, field in kind.model_fields.items() if step in (name, field.alias)),
                None,
            )
            inner = (
                model_within(field.annotation)
                if field and "tuple" in str(field.annotation)
                else None
            )
            if inner is None:
                return None
            kind = inner
    return (
        kind
        if issubclass(kind, Line) and any(key in kind.model_fields for key in NAME_KEYS)
        else None
    )


def is_there(text: str, path: Path) -> bool:
    """True where something is written at a path."""
    try:
        reach(compose(text, "").data, path)
    except (KeyError, IndexError, TypeError):
        return False
    return True


def known_lists(room: Stockroom) -> list[str]:
    """The lists that a line can be added to."""
    top = [
        f"{list_file(file)}.{key}"
        for file in files_of_lists(room)
        for each in DEPARTMENTS
        if list_file(file).rpartition("/")[2] == each.key
        for key in keys_at(each.description, ())
        if kind_at(each.description, (key,))
    ]
    return [*top, *dict.fromkeys(line.within for line in room.lines if line.within not in top)]


def files_of_lists(room: Stockroom) -> list[str]:
    """
    The files that lines can be added to: of a house of one stage, one for each department, written
    or not.
    """
    if room.venue.spaces:
        return [file for file in room.texts if file != LOG]
    return [f"{each.key}.yml" for each in DEPARTMENTS]


def stamped(room: Stockroom, what: str, within: str, *, on: date, by: str, how: str) -> Order:
    """
    A file, such as ``sound.yml`` or ``sound``, or a line stamped as checked.

    Raises
    ------
    Refused
        `line-unknown` where neither a file nor a line has the name.
    """
    called = what if what.endswith(".yml") else f"{what}.yml"
    file = next((each for each in room.texts if called in (each, f"{list_file(each)}.yml")), called)
    if file.removesuffix(".yml") in room.venue.files and not within:
        return verified(file, None, compose(room.texts[file], file).data, on=on, by=by, how=how)
    if what.endswith(".yml"):
        raise Refused(
            [
                Problem(
                    Where("venue"),
                    "",
                    what,
                    "is not a file of this venue",
                    "line-unknown",
                    near(what, sorted(room.texts)),
                )
            ]
        )
    line = found(room.lines, what, within)
    return verified(line.file, line, written_line(line, room.texts), on=on, by=by, how=how)
