"""A file of the venue's folder with the text it had and the text it is to have."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Rewrite:
    """
    One file to be written: ``before`` is the text that was read, None where there was no such file.
    """

    file: str
    before: str | None
    after: str
