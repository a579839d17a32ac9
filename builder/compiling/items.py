"""
What can be gone through: a list, the keys or pairs of a mapping, numbers in a row, as a JavaScript
array with the kind of its items.
"""

import ast

from builder.compiling.kinds import (
    INT,
    TEXT,
    Kind,
    certain,
    joined,
    list_of,
    tuple_of,
)
from builder.compiling.scope import Scope, Written, write

ORDERLESS = ("sorted", "any", "all", "len", "sum", "min", "max", "set", "fsum")
"""What may go through a set, whose order differs between languages."""


def write_items(scope: Scope, node: ast.expr, *, any_order: bool = False) -> Written:
    """
    An expression's items as an array; the kind told is that of one item.

    Raises
    ------
    NotTranslatable
        If a set would be gone through in its own order.
    """
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
        made = MADE.get(node.func.id)
        if made is not None and not scope.is_local(node.func.id):
            return made(scope, node)
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
        viewed = write_view(scope, node.func, node)
        if viewed is not None:
            return viewed
    return write_held(scope, node, any_order=any_order)


def write_held(scope: Scope, node: ast.expr, *, any_order: bool) -> Written:
    """The items that a value holds."""
    held = write(scope, node)
    kind = certain(held.kind)
    if kind.name == "list":
        return Written(held.text, kind.parts[0])
    if kind.name == "tuple":
        return Written(held.text, joined(*kind.parts))
    if kind.name == "map":
        return Written(f"[...{held.text}.keys()]", kind.parts[0])
    if kind == TEXT:
        return Written(f"[...{held.text}]", TEXT)
    if kind.name == "set" and any_order:
        return Written(f"[...{held.text}]", kind.parts[0])
    raise scope.refuse(node, f"goes through {kind}, which has no order that both languages share")


def write_view(scope: Scope, method: ast.Attribute, node: ast.Call) -> Written | None:
    """The keys, values or pairs of a mapping."""
    if method.attr not in ("keys", "values", "items") or node.args:
        return None
    base = write(scope, method.value)
    kind = certain(base.kind)
    if kind.name != "map":
        raise scope.refuse(node, f"asks {kind} for its {method.attr}")
    if method.attr == "items":
        return Written(f"[...{base.text}]", tuple_of(*kind.parts))
    place = 0 if method.attr == "keys" else 1
    return Written(f"[...{base.text}.{method.attr}()]", kind.parts[place])


def write_range(scope: Scope, node: ast.Call) -> Written:
    """Whole numbers in a row."""
    parts = [write(scope, part) for part in node.args]
    if any(certain(part.kind) != INT for part in parts):
        raise scope.refuse(node, "counts through what is not whole")
    return Written(f"py.range({', '.join(part.text for part in parts)})", INT)


def write_enumerated(scope: Scope, node: ast.Call) -> Written:
    """Items with their numbers."""
    items = write_items(scope, node.args[0])
    starts = [*node.args[1:], *(word.value for word in node.keywords)]
    start = write(scope, starts[0]).text if starts else "0"
    return Written(f"py.enumerated({items.text}, {start})", tuple_of(INT, items.kind))


def write_zipped(scope: Scope, node: ast.Call) -> Written:
    """Several lists side by side; where they must be as long as each other, that is checked."""
    lists = [write_items(scope, part) for part in node.args]
    strict = any(
        word.arg == "strict" and isinstance(word.value, ast.Constant) and word.value.value
        for word in node.keywords
    )
    texts = ", ".join(part.text for part in lists)
    name = "py.zipped" if strict else "py.zipped_to_shortest"
    return Written(f"{name}([{texts}])", tuple_of(*(part.kind for part in lists)))


def write_reversed(scope: Scope, node: ast.Call) -> Written:
    """Items from the last to the first."""
    items = write_items(scope, node.args[0])
    return Written(f"[...{items.text}].reverse()", items.kind)


def write_sorted(scope: Scope, node: ast.Call) -> Written:
    """Items in order, texts by code point, equals as they stood."""
    items = write_items(scope, node.args[0], any_order=True)
    key, backwards = "null", "false"
    for word in node.keywords:
        if word.arg == "key":
            key = write_key(scope, word.value, items.kind)
        elif word.arg == "reverse":
            backwards = write(scope, word.value).text
    return Written(f"py.sorted({items.text}, {key}, {backwards})", items.kind)


def write_key(scope: Scope, node: ast.expr, item: Kind) -> str:
    """The function by which items are ordered."""
    if isinstance(node, ast.Attribute):
        return write_method_key(scope, node)
    return write(scope, node, Kind("function", (item, Kind("never")))).text


def write_method_key(scope: Scope, node: ast.Attribute) -> str:
    """A mapping's ``get`` or a list's ``index`` as the key."""
    base = write(scope, node.value)
    kind = certain(base.kind)
    if node.attr == "get" and kind.name == "map":
        return f"((key) => py.get({base.text}, key, null))"
    if node.attr == "index" and kind.name in ("list", "tuple"):
        return f"((item) => py.index({base.text}, item))"
    raise scope.refuse(node, "orders by a method that is not translated")


def write_array(scope: Scope, node: ast.Call) -> Written:
    """A list made of what can be gone through."""
    if not node.args:
        return Written("[]", Kind("never"))
    items = write_items(scope, node.args[0])
    return Written(f"[...{items.text}]", items.kind)


MADE = {
    "range": write_range,
    "enumerate": write_enumerated,
    "zip": write_zipped,
    "reversed": write_reversed,
    "sorted": write_sorted,
    "list": write_array,
    "tuple": write_array,
}


def list_from(items: Written) -> Written:
    """Items as a value of its own."""
    return Written(items.text, list_of(items.kind))
