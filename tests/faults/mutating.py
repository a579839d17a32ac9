"""
The small faults of `make mutants`: where code can be changed, and into what.

One mutant is one change at one place: a comparison into its neighbour or opposite, a sum into a
difference, a product into a quotient, `and` into `or`, a condition into its opposite, a minus left
out, a number into another.
"""

import ast
import random
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

WITHOUT_MEANING = (
    "what is told at a fault of the program (raise ValueError)",
    "a docstring",
    "an annotation",
    "a decorator, such as the clause of a source or the size of a cache",
)
"""What is never changed, for no test should notice."""
SWAPPED: dict[type[ast.AST], type[ast.AST]] = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.And: ast.Or,
    ast.Or: ast.And,
}
"""Operators, each with the one that takes its place."""


@dataclass(frozen=True, slots=True)
class Mutant:
    """
    One change at one place of one file: `path` below `builder/`, the line of the change and that of
    the statement around it, the text before and after, and the whole file as changed.
    """

    path: str
    line: int
    statement: int
    was: str
    now: str
    text: str


def places(tree: ast.Module) -> Iterator[ast.AST]:
    """Every node that can be changed with meaning."""
    passed_over: set[int] = set()
    for node in ast.walk(tree):
        for part in without_meaning(node):
            passed_over.update(id(each) for each in ast.walk(part))
    for node in ast.walk(tree):
        if id(node) not in passed_over and is_changeable(node):
            yield node


def without_meaning(node: ast.AST) -> Iterator[ast.AST]:
    """The parts of a node whose change no test should notice."""
    if isinstance(node, ast.Raise):
        yield node
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        yield node
    if isinstance(node, ast.FunctionDef):
        yield from node.decorator_list
        arguments = [*node.args.args, *node.args.kwonlyargs]
        yield from (part.annotation for part in arguments if part.annotation is not None)
        yield from [] if node.returns is None else [node.returns]
    if isinstance(node, ast.AnnAssign):
        yield node.annotation
    if isinstance(node, ast.ClassDef):
        yield from node.decorator_list


def is_changeable(node: ast.AST) -> bool:
    """Whether an operator knows a change for this node."""
    if isinstance(node, ast.Compare):
        return len(node.ops) == 1
    if isinstance(node, ast.BinOp):
        return type(node.op) in SWAPPED
    if isinstance(node, ast.Constant):
        return type(node.value) in (int, float)
    return isinstance(node, ast.BoolOp | ast.If | ast.IfExp) or (
        isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not | ast.USub)
    )


def change(node: ast.AST, draw: random.Random) -> None:
    """Change a node in place."""
    if isinstance(node, ast.Compare):
        node.ops = [SWAPPED[type(node.ops[0])]()]  # type: ignore[list-item]
    elif isinstance(node, ast.BinOp | ast.BoolOp):
        node.op = SWAPPED[type(node.op)]()  # type: ignore[assignment]
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        node.value = draw.choice([node.value + 1, node.value - 1, node.value * 2 + 3])
    elif isinstance(node, ast.If | ast.IfExp):
        node.test = ast.UnaryOp(ast.Not(), node.test)
    elif isinstance(node, ast.UnaryOp):
        node.op = ast.UAdd() if isinstance(node.op, ast.USub) else ast.Not()
        if isinstance(node.op, ast.Not):
            node.operand = ast.UnaryOp(ast.Not(), node.operand)


def mutants(tree: Path, room: str, count: int, seed: int) -> list[Mutant]:
    """So many mutants of a room or file below `builder/`, drawn from all its places alike."""
    draw = random.Random(seed)
    every = [
        (path, number)
        for path in files_of(tree, room)
        for number, _ in enumerate(places(ast.parse((tree / path).read_text("utf-8"))))
    ]
    drawn = draw.sample(every, min(count, len(every)))
    return [mutant(tree, path, number, draw) for path, number in drawn]


def files_of(tree: Path, room: str) -> list[str]:
    """The files of a room, as paths from the tree's root."""
    place = tree / "builder" / room
    files = sorted(place.rglob("*.py")) if place.is_dir() else [place.with_suffix(".py")]
    return [str(file.relative_to(tree)) for file in files]


def mutant(tree: Path, path: str, number: int, draw: random.Random) -> Mutant:
    """The mutant of one place."""
    module = ast.parse((tree / path).read_text("utf-8"))
    node = list(places(module))[number]
    line, statement = getattr(node, "lineno", 0), statement_of(module, node)
    was = ast.unparse(node).splitlines()[0]
    change(node, draw)
    now = ast.unparse(node).splitlines()[0]
    return Mutant(path, line, statement, was, now, ast.unparse(ast.fix_missing_locations(module)))


def statement_of(module: ast.Module, node: ast.AST) -> int:
    """The line of the innermost statement around a node: `ast.walk` goes from the outside in."""
    around = [
        part
        for part in ast.walk(module)
        if isinstance(part, ast.stmt) and any(inner is node for inner in ast.walk(part))
    ]
    return around[-1].lineno
