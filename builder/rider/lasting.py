"""Lengths of time in a show's day."""

from types import MappingProxyType

from builder.reading.quantities import Duration


class Lasting(Duration):
    """A length of time in a show's day: a bare number is most likely minutes."""

    __slots__ = ()
    units = MappingProxyType({"min": Duration.units["min"], **Duration.units})
