"""
Lines for the house only: which they are, and which cannot be.

A line is for the house only by its own word or by that of a line that it stands in.
"""

from collections.abc import Iterator

from builder.reading.nodes import spoken
from builder.reading.problems import Problem
from builder.reading.references import records_within
from builder.reading.written import Line, Written

KEY = "house_only"
NOT_FOR_VISITORS = "not for visitors"


def says_house_only(value: object) -> bool:
    """
    Whether a record, a line or an entry of the log, says by its own word that it is for the house
    only; what is no record does not.
    """
    if not isinstance(value, Written) or KEY not in type(value).model_fields:
        return False
    return getattr(value, KEY) is True


def hidden_within(description: object) -> Iterator[Written]:
    """Every record of a description that is for the house only, in the author's order."""
    within = 0
    for record in records_within(description):
        if within:
            within -= 1
            yield record
        elif says_house_only(record):
            within = len(list(records_within(record))) - 1
            yield record


def house_only_problems(description: Written) -> Iterator[Problem]:
    """Lines that cannot be for the house only, and those that offer to visitors what is hidden."""
    for record in records_within(description):
        if not isinstance(record, Line) or not record.house_only:
            continue
        path = spoken((*record.path_in_file, KEY))
        if record.public_because:
            yield Problem(
                record.where(KEY),
                path,
                "yes",
                f"cannot be: {record.public_because}",
                "house-only-public",
                f"leave {KEY} out; what only the house may know goes into a line of its own",
            )
        elif record.terms not in (None, NOT_FOR_VISITORS):
            yield Problem(
                record.where(KEY),
                path,
                "yes",
                f"does not go with terms: {record.terms}",
                "house-only-terms",
                f"leave terms out, or {KEY}: visitors cannot use what they are not told of",
            )
