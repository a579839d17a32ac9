"""
Where an expression stands: its module, the names around it and what they hold.
"""

import ast
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace

from builder.compiling.declaring import Declarations
from builder.compiling.kinds import BOOL, NEVER, Kind, choices, joined
from builder.compiling.modules import Function, Module
from builder.compiling.refusing import NotTranslatable, refuse

RESERVED = frozenset(
    {
        "arguments",
        "await",
        "break",
        "case",
        "catch",
        "class",
        "const",
        "continue",
        "debugger",
        "default",
        "delete",
        "do",
        "else",
        "enum",
        "eval",
        "export",
        "extends",
        "false",
        "finally",
        "for",
        "function",
        "if",
        "implements",
        "import",
        "in",
        "instanceof",
        "interface",
        "let",
        "new",
        "null",
        "package",
        "private",
        "protected",
        "public",
        "return",
        "static",
        "super",
        "switch",
        "this",
        "throw",
        "true",
        "try",
        "typeof",
        "undefined",
        "var",
        "void",
        "while",
        "with",
        "yield",
        "py",
        "offered",
    }
)

LOCAL_LETTERS = "abcdefghijklmnopqrstuvwxyz"
GLOBAL_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
"""Short names of locals and of what the whole script shares are of different letters."""


@dataclass(frozen=True, slots=True)
class Written:
    """A piece of JavaScript and the kind of value that it gives."""

    text: str
    kind: Kind


@dataclass(slots=True)
class Scope:
    """The names that an expression sees."""

    declarations: Declarations
    script_names: dict[tuple[str, str], str]
    writers: Mapping[type[ast.expr], "Writer"]
    module: Module
    returns: Kind
    local_kinds: dict[str, Kind] = field(default_factory=dict)
    assigned: frozenset[str] = frozenset()
    short_names: dict[str, str] | None = None
    """Short names of locals, given as they come; None where the script keeps their own."""
    used: set[tuple[str, str]] = field(default_factory=set)
    """The functions and constants that were named, by module and name."""

    def refuse(self, node: ast.AST, reason: str) -> NotTranslatable:
        """The refusal of a node of this module."""
        return refuse(self.module.file, node, reason)

    def within(self, names: Iterable[tuple[str, Kind]]) -> "Scope":
        """A scope in which these names are new, as within a comprehension or a lambda."""
        fresh = dict(names)
        return replace(
            self,
            local_kinds={**self.local_kinds, **fresh},
            assigned=self.assigned | frozenset(fresh),
        )

    def is_local(self, name: str) -> bool:
        """Whether a name is of the function rather than of the module."""
        return name in self.assigned

    def learn(self, name: str, kind: Kind) -> None:
        """Note what a local name holds now; what it held before stays possible."""
        before = self.local_kinds.get(name)
        self.local_kinds[name] = kind if before is None or before == NEVER else joined(before, kind)

    def local_name(self, name: str) -> str:
        """A local name as the script writes it."""
        if self.short_names is None:
            return script_word(name)
        return self.short_names.setdefault(name, short_name(len(self.short_names), LOCAL_LETTERS))

    def function(self, name: str) -> Function | None:
        """The function that a name stands for, in whichever module."""
        home, own = self.declarations.home(self.module, name)
        return home.functions.get(own) if home is not None else None

    def global_name(self, name: str) -> str | None:
        """A function's or a constant's name in the script."""
        home, own = self.declarations.home(self.module, name)
        if home is None:
            return None
        self.used.add((home.name, own))
        return self.script_names.get((home.name, own))


Writer = Callable[[Scope, ast.expr, Kind | None], Written]


def write(scope: Scope, node: ast.expr, wanted: Kind | None = None) -> Written:
    """
    One expression as JavaScript.

    Raises
    ------
    NotTranslatable
        If it cannot be written with exactly the same meaning.
    """
    writer = scope.writers.get(type(node))
    if writer is None:
        raise scope.refuse(node, f"{type(node).__name__} is not translated")
    return writer(scope, node, wanted)


def write_test(scope: Scope, node: ast.expr) -> str:
    """A condition. What is no yes or no is refused, for its truth differs between languages."""
    written = write(scope, node, BOOL)
    if any(part != BOOL for part in choices(written.kind)):
        raise scope.refuse(node, f"takes the truth of {written.kind}; compare it")
    return written.text


def short_name(number: int, letters: str) -> str:
    """The so-many-th short name over some letters: a to z, then aa and on."""
    name = ""
    while number >= 0:
        name = letters[number % len(letters)] + name
        number = number // len(letters) - 1
    return script_word(name)


def script_word(name: str) -> str:
    """A name that JavaScript takes."""
    return f"{name}_" if name in RESERVED else name
