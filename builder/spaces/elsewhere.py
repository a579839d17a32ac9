"""
What other spaces draw from what all share: a service that feeds two stages has less left for each.

Their circuits and loads count on the shared supply with the name of their space before their own.
Each is counted as it usually stands, in the first configuration of its space.
"""

from collections.abc import Mapping, Set
from dataclasses import replace
from typing import Any

from pydantic.fields import FieldInfo

from builder.by_configuration.standing import standings
from builder.exchange import Offers, PowerDraw
from builder.house_only.sealing import changed, in_each
from builder.reading.references import definition, records_within
from builder.reading.written import DepartmentFile, Line, Movable, RefersTo, Written
from builder.registry import DEPARTMENTS

Descriptions = Mapping[str, DepartmentFile]
SOURCE = "power source"
POWER = "power"
CALLED = "{space}: {name}"
Named = Set[tuple[str, str]]


def drawing(own: Descriptions, space: str, configurations: list[str]) -> Descriptions:
    """
    The files of a space that draw power, as another space counts them: by the key of the
    department, with the name of the space before it.
    """
    usual = standings(own, configurations)[0].descriptions
    drawn = {
        department.key: usual[department.key]
        for department in DEPARTMENTS
        if department.key in usual
        and (department.key == POWER or department.offer(usual[department.key]).draws)
    }
    named = {
        (bearer.kind, bearer.name)
        for record in records_within(drawn.get(POWER))
        if (bearer := definition(record)) and bearer.kind == SOURCE
    }
    return {f"{space}/{key}": called(file, space, named) for key, file in drawn.items()}


def called(file: DepartmentFile, space: str, named: Named) -> DepartmentFile:
    """A file whose power sources and loads bear the name of their space, in all configurations."""

    def new(record: Written, field: FieldInfo, value: Any, hidden: bool) -> Any:
        del hidden
        kinds = [mark.kind for mark in field.metadata if isinstance(mark, RefersTo)]
        is_what = isinstance(value, str) and field is type(record).model_fields.get("what")
        if is_what and isinstance(record, Line):
            return CALLED.format(space=space, name=value)
        if kinds:
            return in_each(value, lambda name: in_space(kinds[0], name))
        bearer = definition(record)
        if bearer and value == bearer.name and (bearer.kind, bearer.name) in named:
            return in_space(bearer.kind, bearer.name)
        if isinstance(record, Movable) and field is type(record).model_fields["configurations"]:
            return ()
        return value

    def in_space(kind: str, name: str) -> str:
        return CALLED.format(space=space, name=name) if (kind, name) in named else name

    return changed(file, new)


def draws_elsewhere(descriptions: Descriptions) -> Offers:
    """What other spaces draw, told by space."""
    by_key = {department.key: department for department in DEPARTMENTS}
    draws: list[PowerDraw] = []
    for path, file in descriptions.items():
        space, _, key = path.rpartition("/")
        if space and key in by_key:
            draws += [
                replace(draw, what=told(draw.what, space)) for draw in by_key[key].offer(file).draws
            ]
    return Offers(draws=tuple(draws))


def told(what: str, space: str) -> str:
    """What draws, with its space, once."""
    called_so = what.startswith(CALLED.format(space=space, name=""))
    return what if called_so else CALLED.format(space=space, name=what)


def files_elsewhere(descriptions: Descriptions, department: str) -> tuple[DepartmentFile, ...]:
    """The files of a department in other spaces, among those that draw power."""
    return tuple(
        file
        for path, file in descriptions.items()
        if "/" in path and path.rpartition("/")[2] == department
    )
