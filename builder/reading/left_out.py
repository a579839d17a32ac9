"""
Keys whose absence has a meaning: left out, they count as something, and knowing less is then not
the same as writing less. All others say nothing where they are left out.
"""

from collections.abc import Iterator

from builder.reading.absent import Absent
from builder.reading.unknowns import is_list
from builder.reading.written import Written


def counts_left_out(record: type[Written], name: str) -> bool:
    """
    Whether a field counts as something where its key is left out: it says something definite, or
    has a value of its own, such as one where no count stands. An empty list is such a value.
    """
    field = record.model_fields[name]
    if field.is_required():
        return False
    if (field.alias or name) in {*definite(record)}:
        return True
    return field.default is not None and field.default is not Absent.NOT_STATED


def definite(record: type[Written]) -> Iterator[str]:
    """The keys that a record, or one that it is derived from, says to count left out."""
    for kind in record.__mro__:
        if issubclass(kind, Written):
            yield from kind.definite_when_left_out
            yield from kind.counts_when_left_out


def is_listed(record: type[Written], name: str) -> bool:
    """Whether a field is a list: one that is not there adds nothing to a figure."""
    return is_list(record.model_fields[name].annotation)
