"""
YAML text to plain data in which every value is still the author's text, with the place of each.
"""

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from builder.reading.problems import Problem, Refused, Where
from builder.reading.syntax import DEEPEST, syntax_problem, too_deep
from builder.reading.text import LARGEST_BYTES, UNFIT, decode, refuse_unfit, too_big, unfit
from builder.reading.values.faults import EMPTY_ADVICE

__all__ = ["Composed", "Path", "compose", "decode", "parsable", "spoken"]

Path = tuple[str | int, ...]
MOST_NODES = 200_000

# libyaml is four times faster where PyYAML was built with it; both parsers give the same events and
# marks.
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

# YAML reads a lone `?` as the start of a key, and here it is a value, the older word for `unknown`:
# `width: ?`, `- ?`, `[?, 3 m]`. It is swapped for one private character of the same width, so that
# places stay true, and swapped back in every scalar: text where the swap was not needed comes back
# unharmed.
_LONE_MARK = re.compile(
    r"((?:^|[:\-])[ \t]+|^|[\[,{:][ \t]*)\?(?=[ \t\r]*(?:$|[,\]}]|[ \t]#))", re.MULTILINE
)
_STAND_IN = "\ue000"
# Names are numbered like this, and YAML takes what follows for a comment. Someone who comments
# writes a word.
_NUMBER_LOST = re.compile(r"[ \t]+(#\d[^\s,\]}]*)")
_WORD = re.compile(r"[a-z][a-z_]*")


@dataclass(frozen=True, slots=True)
class Composed:
    """
    The data (`dict`, `list` and `str` only), the place of each value by its path, and the place of
    each key. The root's path is ().
    """

    data: dict[str, Any]
    places: dict[Path, Where]
    key_places: dict[Path, Where]


def compose(text: str, file: str) -> Composed:
    """
    Read one YAML document whose top level is `key: value`.

    Depth and number of nodes are counted while the parser runs, so a hostile text is cheap to
    refuse.

    Raises
    ------
    Refused
        With every problem found: `yaml-syntax`, `duplicate-key`, `alias`, `tag`,
        `several-documents`, `not-a-mapping`, `empty-file`, `empty-value`, `number-lost`,
        `key-not-text`, `control-character`, `too-big`, `too-deep`, `too-many-nodes`.
    """
    if len(text) > LARGEST_BYTES:
        raise Refused([too_big(file)])
    refuse_unfit(text, file)
    if len(text.encode()) > LARGEST_BYTES:
        raise Refused([too_big(file)])
    builder = _Builder(file, text.split("\n"))
    try:
        for event in yaml.parse(parsable(text), Loader=_LOADER):
            if not builder.take(event):
                break
    except yaml.YAMLError as wrong:
        builder.problems.append(syntax_problem(wrong, text, file))
    return builder.result()


def parsable(text: str) -> str:
    """
    The text as a YAML parser may read it, as long as the author's and with every character but a
    lone `?` in its place.
    """
    return _LONE_MARK.sub(rf"\1{_STAND_IN}", text)


def spoken(path: Path) -> str:
    """A path as the author would say it: `services[1].rating`, counting entries from 1."""
    said = "".join(f"[{step + 1}]" if isinstance(step, int) else f".{step}" for step in path)
    return said.removeprefix(".")


@dataclass(slots=True)
class _Open:
    """A list or mapping that is being filled."""

    into: dict[str, Any] | list[Any]
    path: Path
    key: str | None = None
    is_key: bool = False
    in_braces: bool = False

    def wants_key(self) -> bool:
        return isinstance(self.into, dict) and self.key is None

    def next_path(self) -> Path:
        if isinstance(self.into, list):
            return (*self.path, len(self.into))
        return self.path if self.key is None else (*self.path, self.key)

    def add(self, value: Any) -> None:
        if isinstance(self.into, list):
            self.into.append(value)
        elif self.key is not None:
            self.into[self.key] = value
            self.key = None


def empty_advice(within: _Open) -> str:
    """
    What to do about a key without a value; in braces it is mostly no key at all, but what follows a
    comma.
    """
    key = within.key or ""
    if not within.in_braces:
        return EMPTY_ADVICE
    if key in ("unknown", "none", "?"):
        return f"write `{key}` without the braces"
    if _WORD.fullmatch(key):
        return EMPTY_ADVICE
    return (
        "a comma in { } begins the next key; put quotes around a value that holds a comma, and"
        " write a decimal point as a point"
    )


@dataclass(slots=True)
class _Builder:
    """
    Takes the parser's events one by one and keeps its own stack, so that no text can exhaust
    Python's.
    """

    file: str
    lines: list[str] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    places: dict[Path, Where] = field(default_factory=dict)
    key_places: dict[Path, Where] = field(default_factory=dict)
    stack: list[_Open] = field(default_factory=list)
    root: Any = None
    nodes: int = 0
    documents: int = 0

    def take(self, event: Any) -> bool:
        """Use one event; False to stop reading."""
        where = Where(self.file, event.start_mark.line + 1, event.start_mark.column + 1)
        if isinstance(event, yaml.DocumentStartEvent):
            return self._document(where)
        if isinstance(event, yaml.NodeEvent):
            return self._node(event, where)
        if isinstance(event, yaml.CollectionEndEvent):
            self._close()
        return True

    def result(self) -> Composed:
        if not self.problems and not self.places:
            self._report(
                Where(self.file),
                (),
                "is empty",
                "empty-file",
                "write `key: value` lines, or remove the file",
            )
        if self.problems:
            raise Refused(self.problems)
        return Composed(self.root, self.places, self.key_places)

    def _report(self, where: Where, path: Path, reason: str, code: str, advice: str) -> None:
        self.problems.append(Problem(where, spoken(path), "", reason, code, advice))

    def _document(self, where: Where) -> bool:
        self.documents += 1
        if self.documents > 1:
            self._report(
                where,
                (),
                "starts a second document",
                "several-documents",
                "keep one document a file; remove the `---` line",
            )
        return self.documents == 1

    def _node(self, event: Any, where: Where) -> bool:
        self.nodes += 1
        if self.nodes > MOST_NODES:
            self._report(
                where,
                (),
                f"holds more than {MOST_NODES:,} values",
                "too-many-nodes",
                "split it into files, one a department",
            )
            return False
        self._refuse_marks(event, where)
        if isinstance(event, yaml.CollectionStartEvent):
            return self._open(event, where)
        self._scalar(event, where)
        return True

    def _refuse_marks(self, event: Any, where: Where) -> None:
        path = self._path()
        if isinstance(event, yaml.AliasEvent):
            self._report(
                where, path, f"uses the alias `*{event.anchor}`", "alias", "write the value out"
            )
        elif event.anchor:
            self._report(
                where,
                path,
                f"sets the anchor `&{event.anchor}`",
                "alias",
                "remove it, and write the value out wherever it is wanted",
            )
        if getattr(event, "tag", None):
            self._report(
                where,
                path,
                f"has the tag `{event.tag}`",
                "tag",
                "remove it; the field decides how its value is read",
            )

    def _path(self) -> Path:
        return self.stack[-1].next_path() if self.stack else ()

    def _open(self, event: Any, where: Where) -> bool:
        if len(self.stack) >= DEEPEST:
            self.problems.append(too_deep(where))
            return False
        into: dict[str, Any] | list[Any] = {} if isinstance(event, yaml.MappingStartEvent) else []
        opened = _Open(
            into,
            self._path(),
            is_key=bool(self.stack) and self.stack[-1].wants_key(),
            in_braces=bool(event.flow_style),
        )
        if opened.is_key:
            self._report(
                where,
                opened.path,
                "has a list or a group as a key",
                "key-not-text",
                "a key is one word or a few, before a colon",
            )
        else:
            self._place(into, where)
        self.stack.append(opened)
        return True

    def _close(self) -> None:
        closed = self.stack.pop()
        if closed.is_key:
            self.stack[-1].key = ""

    def _scalar(self, event: Any, where: Where) -> None:
        value = getattr(event, "value", "").replace(_STAND_IN, "?")
        if found := UNFIT.search(value):
            self.problems.append(unfit(found[0], where, spoken(self._path())))
        bare = not getattr(event, "style", None)
        if self.stack and self.stack[-1].wants_key():
            self._key(value, where, bare=bare)
            return
        if not value and bare and isinstance(event, yaml.ScalarEvent) and self.stack:
            self._report(
                where, self._path(), "has no value", "empty-value", empty_advice(self.stack[-1])
            )
        if value and bare:
            self._refuse_lost_number(event, where)
        self._place(value, where)

    def _refuse_lost_number(self, event: Any, where: Where) -> None:
        mark = event.end_mark
        found = (
            _NUMBER_LOST.match(self.lines[mark.line], mark.column)
            if mark.line < len(self.lines)
            else None
        )
        if found:
            reason = (
                f"is followed by '{found[1]}', which YAML takes for a comment and does not read"
            )
            self._report(
                where,
                self._path(),
                reason,
                "number-lost",
                "put quotes around the whole value, or begin a comment with a word",
            )

    def _key(self, key: str, where: Where, *, bare: bool) -> None:
        within = self.stack[-1]
        path = (*within.path, key)
        if not key.strip():
            self._report(
                where,
                within.path,
                "has a value without a key",
                "key-not-text",
                "write a word before the colon",
            )
        elif key == "<<" and bare:
            self._report(where, path, "merges keys with `<<`", "alias", "write the keys out")
        elif path in self.key_places:
            first = self.key_places[path].line
            self._report(
                where,
                path,
                f"is written twice; the first is on line {first}",
                "duplicate-key",
                "keep one of them",
            )
        self.key_places.setdefault(path, where)
        within.key = key

    def _place(self, value: Any, where: Where) -> None:
        path = self._path()
        self.places.setdefault(path, where)
        if self.stack:
            self.stack[-1].add(value)
            return
        self.root = value
        if not isinstance(value, dict):
            self._bad_root(value, where)

    def _bad_root(self, value: Any, where: Where) -> None:
        if value == "":
            self._report(
                Where(self.file),
                (),
                "is empty",
                "empty-file",
                "write `key: value` lines, or remove the file",
            )
            return
        is_what = "a list" if isinstance(value, list) else "one piece of text"
        self._report(
            where,
            (),
            f"is {is_what} at the top level",
            "not-a-mapping",
            "begin with `key: value` lines",
        )
