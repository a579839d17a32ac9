"""A formula that no page, check or other formula calls is no part of the product."""

import ast
from pathlib import Path

ROOT = Path(__file__).parent.parent
BUILDER = ROOT / "builder"


def texts() -> dict[Path, str]:
    """The text of every module of the product."""
    return {path: path.read_text("utf-8") for path in sorted(BUILDER.rglob("*.py"))}


def public_definitions(text: str) -> list[str]:
    """Functions and classes of a module that other modules may name."""
    return [
        node.name
        for node in ast.parse(text).body
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_")
    ]


def names_used(text: str) -> set[str]:
    """Every name that the code of a module reads."""
    found = set()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Name):
            found.add(node.id)
        if isinstance(node, ast.Attribute):
            found.add(node.attr)
    return found


def test_every_public_formula_is_called_by_the_product() -> None:
    every = texts()
    used = set().union(*(names_used(text) for text in every.values()))
    unused = [
        f"{path.name}: {name}"
        for path, text in every.items()
        if path.parent == BUILDER / "formulas"
        for name in public_definitions(text)
        if name not in used
    ]
    assert unused == []
