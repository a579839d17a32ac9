"""Names between spaces: each is scoped to its own, so what another space has is told as such."""

from collections.abc import Mapping
from dataclasses import replace

from builder.reading.problems import Problem
from builder.reading.references import definition, records_within
from builder.reading.written import DepartmentFile

UNKNOWN = "reference-unknown"
OF_ANOTHER = "; {space} has one of that name, and what is of one space is named there alone"


def told_where(problem: Problem, own: Mapping[str, Mapping[str, DepartmentFile]]) -> Problem:
    """A problem with a name that nothing bears, with the space that has one of that name."""
    if problem.code != UNKNOWN:
        return problem
    having = [
        space
        for space, files in own.items()
        if any(
            bearer.name == problem.value
            for file in files.values()
            for record in records_within(file)
            if (bearer := definition(record))
        )
    ]
    if not having:
        return problem
    return replace(problem, advice=problem.advice + OF_ANOTHER.format(space=", ".join(having)))
