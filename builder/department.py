"""
A department as the rest of the program sees it: a description, what it offers to others, what it
publishes, and how that reads.
"""

from collections.abc import Callable, Sequence, Set
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from builder.document import Entry, Page
from builder.exchange import Offers
from builder.pack import Finding, Pack, Section
from builder.reading.measures import System
from builder.reading.written import DepartmentFile
from builder.rules import Rule
from builder.stating import Ageing, Stater

File = TypeVar("File", bound=DepartmentFile)


@dataclass(frozen=True, slots=True)
class Surroundings:
    """
    What a department knows beyond its own file: the offers of all, ages, and which unit system
    comes first. ``elsewhere`` are the files of the same department of other spaces under the same
    roof, with names that tell which space: what they draw from what all share counts here too.
    """

    exchange: Offers
    ageing: Ageing
    system: System
    elsewhere: tuple[DepartmentFile, ...] = ()

    def stater(self, file: DepartmentFile) -> Stater:
        """Turns the records of a file into facts."""
        return Stater.of_file(file, self.ageing)


@dataclass(frozen=True, slots=True)
class Published:
    """What a department publishes: its section of the pack, and what it found."""

    section: Section
    findings: tuple[Finding, ...] = ()


def offers_nothing(_: Any) -> Offers:
    """For a department that tells the others nothing."""
    return Offers()


def all_of(file: File) -> File:
    """For a department whose file counts as it is."""
    return file


def draws_no_maps(section: Section, pack: Pack, names: Sequence[str]) -> Sequence[Page]:
    """For a department without maps."""
    del section, pack, names
    return ()


@dataclass(frozen=True, slots=True)
class Department(Generic[File]):
    """
    One department. Its file is ``<key>.yml`` in the venue's folder.

    ``publish`` computes; ``pages`` and ``headline`` only read the pack. ``headline`` gives the few
    answers that the home page shows. ``maps_in`` makes pages of the maps that are others in some
    configurations of the house than in the usual one: of the section and the pack as they are
    there, and the names of those. ``reaching_out`` gives what of a space's file counts in the other
    spaces of the house. ``listens_to`` names the offers that it computes with: where these
    stay, so does what it publishes. ``rules`` say what a visiting show may ask of it.
    """

    key: str
    title: str
    description: type[File]
    publish: Callable[[File, Surroundings], Published]
    pages: Callable[[Section, Pack], Sequence[Page]]
    headline: Callable[[Section, Pack], Sequence[Entry]]
    offer: Callable[[File], Offers] = offers_nothing
    maps_in: Callable[[Section, Pack, Sequence[str]], Sequence[Page]] = draws_no_maps
    reaching_out: Callable[[File], File] = all_of
    listens_to: Set[str] = frozenset()
    rules: tuple[Rule, ...] = ()
    required: bool = False
