"""
Comprehensions, as ``filter``, ``map`` and ``flatMap`` of arrays.
"""

import ast
from collections.abc import Mapping
from typing import Any, cast

from builder.compiling.items import write_items
from builder.compiling.kinds import Kind, certain, choices, list_of, map_of
from builder.compiling.scope import Scope, Writer, Written, write, write_test


def named_kinds(scope: Scope, target: ast.expr, kind: Kind) -> list[tuple[str, Kind]]:
    """The names that a loop sets from an item, with their kinds."""
    if isinstance(target, ast.Name):
        return [(target.id, kind)]
    if not isinstance(target, ast.Tuple):
        raise scope.refuse(target, "sets something other than names in a loop")
    item = certain(kind)
    parts = item.parts if item.name == "tuple" else item.parts * len(target.elts)
    if len(parts) != len(target.elts) or item.name not in ("tuple", "list"):
        raise scope.refuse(target, f"takes {len(target.elts)} parts of {kind}")
    pairs: list[tuple[str, Kind]] = []
    for inner, part in zip(target.elts, parts, strict=True):
        pairs += named_kinds(scope, inner, part)
    return pairs


def pattern(scope: Scope, target: ast.expr) -> str:
    """The names that a loop sets, as JavaScript takes an item apart."""
    if isinstance(target, ast.Tuple):
        return f"[{', '.join(pattern(scope, part) for part in target.elts)}]"
    return scope.local_name(target.id) if isinstance(target, ast.Name) else ""


def write_loops(
    scope: Scope,
    generators: list[ast.comprehension],
    element: ast.expr,
    wanted: Kind | None,
    *,
    any_order: bool,
) -> Written:
    """The elements of nested loops as one array; the kind told is that of one element."""
    first, rest = generators[0], generators[1:]
    items = write_items(scope, first.iter, any_order=any_order)
    inner = scope.within(named_kinds(scope, first.target, items.kind))
    taken = pattern(scope, first.target)
    text = items.text
    for condition in first.ifs:
        text += f".filter(({taken}) => {write_test(inner, condition)})"
    if rest:
        deeper = write_loops(inner, rest, element, wanted, any_order=any_order)
        return Written(f"{text}.flatMap(({taken}) => {deeper.text})", deeper.kind)
    body = write(inner, element, wanted)
    if isinstance(element, ast.Name) and taken == body.text:
        return Written(text, body.kind) if first.ifs else Written(f"[...{text}]", body.kind)
    return Written(f"{text}.map(({taken}) => {body.text})", body.kind)


def write_list_comprehension(
    scope: Scope, node: ast.ListComp | ast.GeneratorExp, wanted: Kind | None
) -> Written:
    """A list made by a loop."""
    inner = (
        next((kind.parts[0] for kind in choices(wanted) if kind.name == "list"), None)
        if wanted
        else None
    )
    elements = write_loops(scope, node.generators, node.elt, inner, any_order=False)
    return Written(elements.text, list_of(inner or elements.kind))


def write_set_comprehension(scope: Scope, node: ast.SetComp, wanted: Kind | None) -> Written:
    """A set made by a loop."""
    elements = write_loops(scope, node.generators, node.elt, None, any_order=True)
    return Written(f"new Set({elements.text})", Kind("set", (elements.kind,)))


def write_map_comprehension(scope: Scope, node: ast.DictComp, wanted: Kind | None) -> Written:
    """A mapping made by a loop; a later value of one key takes the earlier one's place."""
    pair = ast.copy_location(ast.Tuple([node.key, node.value], ast.Load()), node)
    want = next((kind for kind in choices(wanted) if kind.name == "map"), None) if wanted else None
    inner = Kind("tuple", want.parts) if want else None
    elements = write_loops(scope, node.generators, pair, inner, any_order=False)
    return Written(f"new Map({elements.text})", want or map_of(*elements.kind.parts))


COMPREHENSIONS: Mapping[type[ast.expr], Writer] = cast(
    Any,
    {
        ast.ListComp: write_list_comprehension,
        ast.GeneratorExp: write_list_comprehension,
        ast.SetComp: write_set_comprehension,
        ast.DictComp: write_map_comprehension,
    },
)
"""How each sort of comprehension is written."""
