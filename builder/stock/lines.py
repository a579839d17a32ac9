"""
Lines of the venue's lists, found by the names that the crew calls them by, with near names where
there is none.
"""

import difflib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.overview.log import list_file, space_of_file
from builder.reading.nodes import Path, spoken
from builder.reading.problems import Problem, Refused, Where
from builder.reading.references import NAME_KEYS as NAME_KEYS
from builder.reading.references import name_of as name_of
from builder.reading.references import references, spelling
from builder.reading.written import DepartmentFile, Line, Written


@dataclass(frozen=True, slots=True)
class Held:
    """A line of a list: its file, the path to it, and what it says."""

    file: str
    path: Path
    record: Line
    name: str

    @property
    def within(self) -> str:
        """The list it stands in, such as ``sound.stock``."""
        return f"{list_file(self.file)}.{spoken(self.path[:-1])}"

    @property
    def space(self) -> str:
        """The folder of the space that it is of; empty for what stands beside ``house.yml``."""
        return space_of_file(self.file)

    @property
    def where(self) -> Where:
        """Its place in the file."""
        return self.record.where()

    def has(self, *keys: str) -> str | None:
        """The first of these keys that such a line may have."""
        return next((key for key in keys if key in type(self.record).model_fields), None)


def not_done(line: Held, reason: str, code: str, advice: str, *, key: str = "") -> Refused:
    """That an order on a line cannot be done, with the one problem that says why."""
    return Refused([Problem(line.where, key, line.name, reason, code, advice)])


def lines_of(descriptions: Mapping[str, DepartmentFile]) -> tuple[Held, ...]:
    """Every line of every list that bears a name, in the order of the site and of the files."""
    return tuple(
        Held(f"{key}.yml", path, record, name)
        for key, description in descriptions.items()
        for path, record in placed(description, ())
        if isinstance(record, Line)
        and path
        and isinstance(path[-1], int)
        and (name := name_of(record))
    )


def placed(value: object, path: Path) -> Iterator[tuple[Path, Written]]:
    """Every record within a value with the path to it."""
    if isinstance(value, Written):
        yield path, value
        for key, part in value.written():
            yield from placed(part, (*path, key))
    elif isinstance(value, tuple | list):
        for index, part in enumerate(value):
            yield from placed(part, (*path, index))
    elif isinstance(value, Mapping):
        for key, part in value.items():
            yield from placed(part, (*path, key))


def found(lines: Sequence[Held], name: str, within: str = "") -> Held:
    """
    The line of a name. ``within`` is the beginning of its list, such as ``sound`` or
    ``sound.stock``.

    Raises
    ------
    Refused
        `line-unknown` with near names, or `line-ambiguous` with the lists to choose from.
    """
    here = [line for line in lines if not within or inside(line.within, within)]
    if within and not here:
        raise Refused([list_unknown(within, sorted({line.within for line in lines}))])
    same = [line for line in here if line.name == name] or [
        line for line in here if spelling(line.name) == spelling(name)
    ]
    if not same:
        raise Refused(
            [
                Problem(
                    Where("venue"),
                    "",
                    name,
                    "is not the name of any line",
                    "line-unknown",
                    near(name, [line.name for line in here]),
                )
            ]
        )
    if len(same) > 1:
        lists = ", ".join(f"--in {shell_word(line.within)}" for line in same)
        raise Refused(
            [
                Problem(
                    Where("venue"),
                    "",
                    name,
                    f"is the name of {len(same)} lines",
                    "line-ambiguous",
                    f"say which: {lists}",
                )
            ]
        )
    return same[0]


def inside(whole: str, beginning: str) -> bool:
    """
    True where a list is the one named, or stands within it.

    Numbers of entries may be left out, and the space before the file.
    """
    plain = "".join(part.split("]")[-1] for part in whole.split("["))
    names = [whole, plain, *(each.rpartition("/")[2] for each in (whole, plain))]
    return any(
        each == beginning or each.startswith((f"{beginning}.", f"{beginning}[", f"{beginning}/"))
        for each in names
    )


def shell_word(text: str) -> str:
    """A list's name as it must be typed."""
    return f"'{text}'" if "[" in text else text


def list_unknown(name: str, known: Sequence[str]) -> Problem:
    """The problem with a list that is not there."""
    return Problem(
        Where("venue"), "", name, "is not a list of this venue", "list-unknown", near(name, known)
    )


def near(name: str, known: Sequence[str]) -> str:
    """Up to three near names, or where to look."""
    spelled = {each.casefold(): each for each in known}
    close = difflib.get_close_matches(name.casefold(), spelled, n=3, cutoff=0.5)
    holding = [each for each in dict.fromkeys(known) if name.casefold() in each.casefold()][:3]
    offered = list(dict.fromkeys([*holding, *(spelled[each] for each in close)]))
    return (
        f"did you mean {' or '.join(repr(each) for each in offered[:3])}?"
        if offered
        else "'housepack stock sheet' lists every line"
    )


def referring(
    files: Mapping[str, DepartmentFile], kind: str, name: str
) -> tuple[tuple[str, Path], ...]:
    """Each place that refers to something by name: its file and the path of the value."""
    uses = uses_of(files, kind, name)
    return tuple((file, (*path, *steps(key))) for file, path, _, key in uses)


def within_reach(files: Mapping[str, DepartmentFile], line: Held) -> dict[str, DepartmentFile]:
    """
    The files in which a line may be named: those of its space; all, where it stands beside
    ``house.yml``.
    """
    return {path: file for path, file in files.items() if line.space in ("", space_of_file(path))}


def uses_of(
    descriptions: Mapping[str, DepartmentFile], kind: str, name: str
) -> Iterator[tuple[str, Path, Written, str]]:
    """
    Each record that refers to something by name: its file, its path, itself, and the key that
    refers, such as ``feeds[2]``.
    """
    for file, description in descriptions.items():
        for path, record in placed(description, ()):
            for reference in references(record):
                if (reference.kind, reference.name) == (kind, name):
                    yield f"{file}.yml", path, record, reference.key


def steps(key: str) -> Path:
    """``feeds[2]`` as the steps to it: the key, and the entry counted from 0."""
    name, _, rest = key.partition("[")
    return (name, int(rest.rstrip("]")) - 1) if rest else (name,)
