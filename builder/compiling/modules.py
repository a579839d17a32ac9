"""
A module as the compiler sees it: what it imports, its records, constants and functions.
"""

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from builder.compiling.kinds import Kind
from builder.compiling.refusing import refuse

OURS = "builder."
OUTSIDE = ("math", "typing", "collections.abc", "dataclasses")
NOT_TRANSLATED = ("builder.formulas.cite", "builder.formulas.sources")
"""Citations are data for the pages; the browser runs the formulas alone."""
PRIMITIVES = "builder.formulas.primitives"
"""What both languages have and write differently: its functions stand in ``runtime.js``."""


@dataclass(slots=True)
class Record:
    """A TypedDict or a frozen dataclass: its fields, and which of them may be absent."""

    name: str
    fields: dict[str, Kind]
    optional: set[str]
    defaults: dict[str, ast.expr]


@dataclass(slots=True)
class Function:
    """A function with its signature as kinds."""

    name: str
    node: ast.FunctionDef
    parameters: list[str]
    kinds: dict[str, Kind]
    defaults: dict[str, ast.expr]
    returns: Kind


@dataclass(slots=True)
class Module:
    """One source file."""

    name: str
    file: str
    tree: ast.Module
    imports: dict[str, tuple[str, str]] = field(default_factory=dict)
    """What a name stands for: module and name there."""
    functions: dict[str, Function] = field(default_factory=dict)
    records: dict[str, Record] = field(default_factory=dict)
    aliases: dict[str, ast.expr] = field(default_factory=dict)
    constants: dict[str, ast.expr] = field(default_factory=dict)
    constant_kinds: dict[str, Kind] = field(default_factory=dict)


def parsed(name: str, text: str) -> Module:
    """A module with its imports; what it declares is read later, when all modules are there."""
    file = f"{name.replace('.', '/')}.py"
    module = Module(name, file, ast.parse(text, file))
    for node in module.tree.body:
        if isinstance(node, ast.ImportFrom):
            take_imports(module, node)
        elif isinstance(node, ast.Import):
            raise refuse(file, node, "imports a whole module; write from ... import ...")
    return module


def take_imports(module: Module, node: ast.ImportFrom) -> None:
    """Note what each imported name stands for."""
    origin = node.module or ""
    # The bodies of primitives are not translated, so they may use what they like.
    is_known = origin.startswith(OURS) or origin in OUTSIDE or module.name == PRIMITIVES
    if node.level or not is_known:
        raise refuse(module.file, node, f"imports from {origin or 'here'}, which is not translated")
    for alias in node.names:
        module.imports[alias.asname or alias.name] = (origin, alias.name)


def reached(starts: tuple[str, ...], source_of: Callable[[str], str]) -> dict[str, Module]:
    """
    The modules that some modules need, these included, each after those that it imports.

    Raises
    ------
    NotTranslatable
        If a module imports what is not translated, or modules import each other in a circle.
    """
    found: dict[str, Module] = {}
    open_modules: list[str] = []

    def visit(name: str) -> None:
        if name in found or name in NOT_TRANSLATED:
            return
        module = parsed(name, source_of(name))
        if name in open_modules:
            raise refuse(module.file, module.tree, "imports itself by way of others")
        open_modules.append(name)
        if name != PRIMITIVES:
            for other in needed_by(module):
                visit(other)
        open_modules.pop()
        found[name] = module

    for start in starts:
        visit(start)
    return found


def needed_by(module: Module) -> Iterator[str]:
    """Our own modules that a module imports from."""
    for origin, _ in module.imports.values():
        if origin.startswith(OURS):
            yield origin
