"""
What other spaces draw from what all share: a service that feeds two stages has less left for each.

Their circuits and loads count on the shared supply with the name of their space before their own.
Each is counted as it usually stands, in the first configuration of its space.
"""

from collections.abc import Iterator, Mapping, Set
from itertools import count
from typing import Any

from pydantic.fields import FieldInfo

from builder.by_configuration.standing import standings
from builder.house_only.sealing import changed, in_each
from builder.reading.references import definition, records_within, references
from builder.reading.written import DepartmentFile, Line, Movable, RefersTo, Written
from builder.registry import DEPARTMENTS

Descriptions = Mapping[str, DepartmentFile]
SOURCE = "power source"
POWER = "power"
CALLED = "{space}: {name}"


def drawing(
    own: Descriptions, space: str, configurations: list[str], taken: Set[str]
) -> Descriptions:
    """
    The power file of a space as another space counts it, by the name of the space and the key of
    the department; nothing where it hangs on nothing that is shared. Its power sources get names
    that are not ``taken`` by any of another file.
    """
    usual = standings(own, configurations)[0].descriptions.get(POWER)
    if usual is None:
        return {}
    counted = next(each for each in DEPARTMENTS if each.key == POWER).reaching_out(usual)
    if not any(loads_in(counted)):
        return {}
    new_names = {name: free_name(name, space, taken) for name in sources_in(usual)}
    return {f"{space}/{POWER}": called(counted, space, new_names)}


def free_name(name: str, space: str, taken: Set[str]) -> str:
    """A power source with its space before it, unlike the name of any that a file writes so."""
    wanted = CALLED.format(space=space, name=name)
    numbered = (wanted if number == 1 else f"{wanted} ({number})" for number in count(1))
    return next(each for each in numbered if each not in taken)


def sources_in(power: DepartmentFile) -> set[str]:
    """The names of the power sources of a file."""
    return {
        bearer.name
        for record in records_within(power)
        if (bearer := definition(record)) and bearer.kind == SOURCE
    }


def loads_in(power: DepartmentFile) -> Iterator[str]:
    """The power sources that the lines of a file name."""
    for record in records_within(power):
        yield from (each.name for each in references(record) if each.kind == SOURCE)


def called(file: DepartmentFile, space: str, new_names: Mapping[str, str]) -> DepartmentFile:
    """A file whose power sources and loads bear the name of their space, in all configurations."""

    def new(record: Written, field: FieldInfo, value: Any, hidden: bool) -> Any:
        del hidden
        kinds = [mark.kind for mark in field.metadata if isinstance(mark, RefersTo)]
        is_what = isinstance(value, str) and field is type(record).model_fields.get("what")
        if is_what and isinstance(record, Line):
            return CALLED.format(space=space, name=value)
        if SOURCE in kinds:
            return in_each(value, lambda name: new_names.get(name, name))
        bearer = definition(record)
        if bearer and value == bearer.name and bearer.kind == SOURCE:
            return new_names[value]
        if isinstance(record, Movable) and field is type(record).model_fields["configurations"]:
            return ()
        return value

    return changed(file, new)


def files_elsewhere(descriptions: Descriptions, department: str) -> tuple[DepartmentFile, ...]:
    """The files of a department in other spaces, among those that draw power."""
    return tuple(
        file
        for path, file in descriptions.items()
        if "/" in path and path.rpartition("/")[2] == department
    )
