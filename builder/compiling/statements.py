"""
Statements and functions.

Names are declared once at the top of a function, as Python sees them: a name that a loop sets is
still there after it.
"""

import ast
from collections.abc import Callable, Iterator

from builder.compiling.comprehending import named_kinds, pattern
from builder.compiling.expressions import field_access, literal_text
from builder.compiling.items import write_items
from builder.compiling.kinds import NEVER, Kind, certain
from builder.compiling.modules import Function
from builder.compiling.scope import Scope, Written, write, write_test

STEP = " "


def write_function(scope: Scope, function: Function, script_name: str) -> str:
    """A function of ours as one of JavaScript's."""
    node = function.node
    names = assigned_names(scope, node.body)
    scope.assigned = frozenset([*names, *function.parameters])
    scope.local_kinds = dict(function.kinds)
    scope.returns = function.returns
    taken = [write_parameter(scope, function, name) for name in function.parameters]
    body = write_block(scope, node.body, STEP)
    declared = [scope.local_name(name) for name in names if name not in function.parameters]
    head = [f"{STEP}let {', '.join(declared)};"] if declared else []
    return "\n".join([f"function {script_name}({', '.join(taken)}) {{", *head, *body, "}"])


def write_parameter(scope: Scope, function: Function, name: str) -> str:
    """A parameter with its default."""
    if name not in function.defaults:
        return scope.local_name(name)
    default = write(scope, function.defaults[name], function.kinds[name])
    return f"{scope.local_name(name)} = {default.text}"


def assigned_names(scope: Scope, body: list[ast.stmt]) -> list[str]:
    """The names that a function sets, in the order they come."""
    names: list[str] = []
    for statement in body:
        for node in ast.walk(statement):
            if isinstance(node, ast.FunctionDef | ast.ClassDef | ast.NamedExpr | ast.Global):
                raise scope.refuse(node, f"{type(node).__name__} within a function")
    for target in targets_within(body):
        for node in ast.walk(target):
            if (
                isinstance(node, ast.Name)
                and isinstance(node.ctx, ast.Store)
                and node.id not in names
            ):
                names.append(node.id)
    return names


def targets_within(body: list[ast.stmt]) -> Iterator[ast.expr]:
    """Everything that is assigned to, in all branches."""
    for statement in body:
        if isinstance(statement, ast.Assign):
            yield from statement.targets
        elif isinstance(statement, ast.AnnAssign | ast.AugAssign):
            yield statement.target
        elif isinstance(statement, ast.For):
            yield statement.target
            yield from targets_within(statement.body)
        elif isinstance(statement, ast.If):
            yield from targets_within([*statement.body, *statement.orelse])
        elif isinstance(statement, ast.While):
            yield from targets_within(statement.body)


def write_block(scope: Scope, body: list[ast.stmt], step: str) -> list[str]:
    """Statements, line by line."""
    lines: list[str] = []
    for statement in body:
        writer = STATEMENTS.get(type(statement))
        if writer is None:
            raise scope.refuse(statement, f"{type(statement).__name__} is not translated")
        lines += writer(scope, statement, step)
    return lines


def write_assignment(scope: Scope, node: ast.Assign, step: str) -> list[str]:
    """A name, field, place or several names set."""
    if len(node.targets) != 1:
        raise scope.refuse(node, "sets several things to one value")
    target = node.targets[0]
    if isinstance(target, ast.Tuple):
        return write_unpacking(scope, target, node.value, step)
    wanted = target_kind(scope, target)
    return [f"{step}{write_set(scope, target, write(scope, node.value, wanted))};"]


def write_unpacking(scope: Scope, target: ast.Tuple, value: ast.expr, step: str) -> list[str]:
    """Several names set at once, all values worked out first."""
    if isinstance(value, ast.Tuple):
        parts = [
            write(scope, part, target_kind(scope, each))
            for part, each in zip(value.elts, target.elts, strict=True)
        ]
        written = Written(
            f"[{', '.join(part.text for part in parts)}]",
            Kind("tuple", tuple(part.kind for part in parts)),
        )
    else:
        written = write(scope, value)
    for name, kind in named_kinds(scope, target, written.kind):
        scope.learn(name, kind)
    return [f"{step}{pattern(scope, target)} = {written.text};"]


def target_kind(scope: Scope, target: ast.expr) -> Kind | None:
    """The kind that a target holds already."""
    if isinstance(target, ast.Name):
        kind = scope.local_kinds.get(target.id)
        return None if kind == NEVER else kind
    if isinstance(target, ast.Subscript):
        return (
            write(scope, target).kind if is_field(scope, target) else holder_element(scope, target)
        )
    return None


def is_field(scope: Scope, target: ast.Subscript) -> bool:
    """Whether a target is a field of a record."""
    return certain(write(scope, target.value).kind).name in ("record", "either")


def holder_element(scope: Scope, target: ast.Subscript) -> Kind | None:
    """What a list or a mapping that is written into holds."""
    kind = certain(write(scope, target.value).kind)
    return kind.parts[-1] if kind.parts and kind.parts[-1] != NEVER else None


def write_set(scope: Scope, target: ast.expr, value: Written) -> str:
    """A value put where it belongs."""
    if isinstance(target, ast.Name):
        scope.learn(target.id, value.kind)
        return f"{scope.local_name(target.id)} = {value.text}"
    if not isinstance(target, ast.Subscript):
        raise scope.refuse(target, "sets what is neither a name nor a place")
    base = write(scope, target.value)
    if is_field(scope, target):
        return f"{base.text}{field_access(literal_text(scope, target.slice))} = {value.text}"
    place = write(scope, target.slice)
    if certain(base.kind).name == "map":
        if isinstance(target.value, ast.Name) and NEVER in certain(base.kind).parts:
            scope.local_kinds[target.value.id] = Kind("map", (place.kind, value.kind))
        return f"{base.text}.set({place.text}, {value.text})"
    if certain(base.kind).name == "list":
        return f"py.put({base.text}, {place.text}, {value.text})"
    raise scope.refuse(target, f"writes into {base.kind}")


def write_annotated(scope: Scope, node: ast.AnnAssign, step: str) -> list[str]:
    """A name set with its kind said."""
    if not isinstance(node.target, ast.Name):
        raise scope.refuse(node, "annotates what is no name")
    kind = scope.declarations.kind(scope.module, node.annotation)
    scope.local_kinds[node.target.id] = kind
    if node.value is None:
        return []
    return [f"{step}{scope.local_name(node.target.id)} = {write(scope, node.value, kind).text};"]


def write_augmented(scope: Scope, node: ast.AugAssign, step: str) -> list[str]:
    """``+=`` and its like; a list is lengthened in place, as Python does."""
    target = node.target
    if any(isinstance(part, ast.Call) for part in ast.walk(target)):
        raise scope.refuse(node, "changes a place that a call finds; name it first")
    load = ast.copy_location(reading(target), target)
    held = write(scope, load)
    if certain(held.kind).name == "list" and isinstance(node.op, ast.Add):
        items = write_items(scope, node.value)
        if isinstance(target, ast.Name) and NEVER in certain(held.kind).parts:
            scope.local_kinds[target.id] = Kind("list", (items.kind,))
        return [f"{step}py.extend({held.text}, {items.text});"]
    whole = ast.copy_location(ast.BinOp(load, node.op, node.value), node)
    return [f"{step}{write_set(scope, target, write(scope, whole))};"]


def reading(target: ast.expr) -> ast.expr:
    """A target as an expression that reads it."""
    if isinstance(target, ast.Name):
        return ast.Name(target.id, ast.Load())
    if isinstance(target, ast.Subscript):
        return ast.copy_location(ast.Subscript(target.value, target.slice, ast.Load()), target)
    return target


def write_if(scope: Scope, node: ast.If, step: str) -> list[str]:
    """A branch."""
    lines = [f"{step}if ({write_test(scope, node.test)}) {{"]
    lines += write_block(scope, node.body, step + STEP)
    if node.orelse:
        lines += [f"{step}}} else {{", *write_block(scope, node.orelse, step + STEP)]
    return [*lines, f"{step}}}"]


def write_for(scope: Scope, node: ast.For, step: str) -> list[str]:
    """A loop; what it goes through is taken as it is when the loop begins."""
    if node.orelse:
        raise scope.refuse(node, "has an else after a loop")
    items = write_items(scope, node.iter)
    for name, kind in named_kinds(scope, node.target, items.kind):
        scope.learn(name, kind)
    head = f"{step}for ({pattern(scope, node.target)} of {items.text}) {{"
    return [head, *write_block(scope, node.body, step + STEP), f"{step}}}"]


def write_while(scope: Scope, node: ast.While, step: str) -> list[str]:
    """A loop on a condition."""
    if node.orelse:
        raise scope.refuse(node, "has an else after a loop")
    head = f"{step}while ({write_test(scope, node.test)}) {{"
    return [head, *write_block(scope, node.body, step + STEP), f"{step}}}"]


def write_return(scope: Scope, node: ast.Return, step: str) -> list[str]:
    """What a function gives back."""
    if node.value is None:
        return [f"{step}return null;"]
    return [f"{step}return {write(scope, node.value, scope.returns).text};"]


def write_raise(scope: Scope, node: ast.Raise, step: str) -> list[str]:
    """A fault of the program; its words are for us and name the place."""
    called = node.exc.func if isinstance(node.exc, ast.Call) else node.exc
    if not (isinstance(called, ast.Name) and called.id == "ValueError"):
        raise scope.refuse(node, "raises what is no ValueError")
    place = f"{scope.module.file}:{node.lineno}"
    return [f'{step}throw new Error("a value that cannot be, {place}");']


def write_deletion(scope: Scope, node: ast.Delete, step: str) -> list[str]:
    """A value taken out of a mapping."""
    lines = []
    for target in node.targets:
        if not isinstance(target, ast.Subscript):
            raise scope.refuse(node, "deletes what is no value of a mapping")
        base = write(scope, target.value)
        if certain(base.kind).name != "map":
            raise scope.refuse(node, f"deletes a part of {base.kind}")
        lines.append(f"{step}py.take({base.text}, {write(scope, target.slice).text});")
    return lines


def write_statement(scope: Scope, node: ast.Expr, step: str) -> list[str]:
    """A call for what it does; a docstring says nothing to the browser."""
    if isinstance(node.value, ast.Constant):
        return []
    if not isinstance(node.value, ast.Call):
        raise scope.refuse(node, "is an expression without effect")
    return [f"{step}{write(scope, node.value).text};"]


def write_jump(scope: Scope, node: ast.stmt, step: str) -> list[str]:
    """``break``, ``continue``, and nothing for ``pass``."""
    words = {ast.Break: "break", ast.Continue: "continue"}.get(type(node))
    return [f"{step}{words};"] if words else []


StatementWriter = Callable[..., list[str]]
STATEMENTS: dict[type[ast.stmt], StatementWriter] = {
    ast.Assign: write_assignment,
    ast.AnnAssign: write_annotated,
    ast.AugAssign: write_augmented,
    ast.If: write_if,
    ast.For: write_for,
    ast.While: write_while,
    ast.Return: write_return,
    ast.Raise: write_raise,
    ast.Delete: write_deletion,
    ast.Expr: write_statement,
    ast.Pass: write_jump,
    ast.Break: write_jump,
    ast.Continue: write_jump,
}
"""How each sort of statement is written."""
