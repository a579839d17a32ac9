"""One thing that a rider asks by itself."""

from pydantic import Field

from builder.reading.words import Name, YesNo
from builder.reading.written import Written


class OneNeed(Written):
    """One thing by itself: one of several that are asked together, or a condition."""

    what: Name
    """What is meant, by a name from the list below."""
    at_least: Name | None = Field(default=None, alias="at least")
    """The least that does, with its unit; unknown where the show does not know yet."""
    at_most: Name | None = Field(default=None, alias="at most")
    """The most that does, with its unit."""
    between: tuple[Name, Name] | None = None
    """The least and the most that do, as a list of two."""
    is_: Name | None = Field(default=None, alias="is")
    """Yes or no, for what is allowed, there, or so."""
    tell: YesNo = False
    """Whether you only want to know what the house has: told where it says so, asked otherwise."""
