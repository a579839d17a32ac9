"""Which modules of the tree import a room, themselves or through others, and which stand apart."""

import ast
from collections.abc import Iterator
from pathlib import Path


def modules_apart(tree: Path, paths: list[str]) -> list[str]:
    """The modules below `builder/` that no change of these files can reach by an import."""
    files = {name_of(file, tree): file for file in (tree / "builder").rglob("*.py")}
    imported = {name: imports_of(file) | {*packages_of(name)} for name, file in files.items()}
    reached = {name_of(tree / path, tree) for path in paths}
    while more := {name for name in imported if name not in reached and imported[name] & reached}:
        reached |= more
    return sorted(set(imported) - reached)


def name_of(file: Path, tree: Path) -> str:
    """The name that a file is imported by."""
    return ".".join(file.relative_to(tree).with_suffix("").parts).removesuffix(".__init__")


def imports_of(file: Path) -> set[str]:
    """All names that a file imports, wherever in it, with the packages around them."""
    return {
        around
        for node in ast.walk(ast.parse(file.read_text("utf-8")))
        for name in imported_names(node)
        for around in packages_of(name)
    }


def imported_names(node: ast.AST) -> Iterator[str]:
    """What one statement imports; a name taken from a module may be a module too."""
    if isinstance(node, ast.Import):
        yield from (part.name for part in node.names)
    if isinstance(node, ast.ImportFrom) and node.module:
        yield from (f"{node.module}.{part.name}" for part in node.names)


def packages_of(name: str) -> Iterator[str]:
    """A dotted name and each package around it: an import runs them all."""
    parts = name.split(".")
    yield from (".".join(parts[:count]) for count in range(1, len(parts) + 1))
