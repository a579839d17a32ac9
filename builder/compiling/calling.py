"""
Calls: our own functions, the built-in ones, and the methods of texts, lists, mappings and sets.
"""

import ast
from collections.abc import Callable, Mapping
from typing import Any, cast

from builder.compiling.comprehending import named_kinds, pattern, write_loops
from builder.compiling.expressions import field_name
from builder.compiling.items import MADE, list_from, write_items, write_key
from builder.compiling.kinds import (
    BOOL,
    FLOAT,
    INT,
    NEVER,
    TEXT,
    Kind,
    certain,
    is_number,
    joined,
    map_of,
)
from builder.compiling.methods import write_method
from builder.compiling.modules import Function, Record
from builder.compiling.scope import Scope, Writer, Written, write, write_test

ROUNDED = {"floor": "Math.floor", "ceil": "Math.ceil"}
TESTED = {"isfinite": "Number.isFinite", "isnan": "Number.isNaN"}


def write_call(scope: Scope, node: ast.Call, wanted: Kind | None) -> Written:
    """A call of whatever may be called."""
    if isinstance(node.func, ast.Attribute):
        return write_method(scope, node, node.func)
    if not isinstance(node.func, ast.Name):
        raise scope.refuse(node, "calls what has no name")
    name = node.func.id
    if scope.is_local(name):
        return write_parameter_call(scope, node, name)
    function = scope.function(name)
    if function is not None:
        return write_own_call(scope, node, name, function)
    home, own = scope.declarations.home(scope.module, name)
    if home is not None and own in home.records:
        return write_record_call(scope, node, home.records[own])
    origin, outside = scope.module.imports.get(name, ("", name))
    if origin == "math":
        return write_mathematics(scope, node, outside)
    if name == "cast":
        return Written(
            write(scope, node.args[1]).text, scope.declarations.kind(scope.module, node.args[0])
        )
    return write_builtin(scope, node, name)


def write_parameter_call(scope: Scope, node: ast.Call, name: str) -> Written:
    """A call of a function that was given."""
    kind = certain(scope.local_kinds[name])
    if kind.name != "function" or node.keywords:
        raise scope.refuse(node, f"calls {name}, which is {kind}")
    parts = [
        write(scope, part, want).text for part, want in zip(node.args, kind.parts, strict=False)
    ]
    return Written(f"{scope.local_name(name)}({', '.join(parts)})", kind.parts[-1])


def write_own_call(scope: Scope, node: ast.Call, name: str, function: Function) -> Written:
    """A call of one of our functions, its arguments in the order of its parameters."""
    given = dict(zip(function.parameters, node.args, strict=False))
    for word in node.keywords:
        if word.arg is None:
            raise scope.refuse(node, "spreads a mapping into a call")
        given[word.arg] = word.value
    if any(isinstance(part, ast.Starred) for part in node.args):
        raise scope.refuse(node, "spreads a list into a call")
    texts = [
        write(scope, given[each], function.kinds[each]).text if each in given else "undefined"
        for each in function.parameters
    ]
    while texts and texts[-1] == "undefined":
        texts.pop()
    own = scope.declarations.home(scope.module, name)[1]
    primitive = scope.declarations.is_primitive(scope.module, name)
    called = f"py.{own}" if primitive else scope.global_name(name)
    return Written(f"{called}({', '.join(texts)})", function.returns)


def write_record_call(scope: Scope, node: ast.Call, record: Record) -> Written:
    """A record made by its name."""
    if len(node.args) == 1 and isinstance(node.args[0], ast.Dict | ast.Name):
        return write(scope, node.args[0], Kind("record", (), record.name))
    given = dict(zip(record.fields, node.args, strict=False))
    given |= {word.arg: word.value for word in node.keywords if word.arg is not None}
    missing = {name: value for name, value in record.defaults.items() if name not in given}
    parts = [
        f"{field_name(name)}: {write(scope, value, record.fields[name]).text}"
        for name, value in {**given, **missing}.items()
    ]
    return Written(f"({{{', '.join(parts)}}})", Kind("record", (), record.name))


def write_mathematics(scope: Scope, node: ast.Call, name: str) -> Written:
    """What both languages calculate to the same last digit."""
    if name == "fsum":
        return Written(f"py.fsum({write_items(scope, node.args[0], any_order=True).text})", FLOAT)
    arguments = [write(scope, part) for part in node.args]
    texts = ", ".join(part.text for part in arguments)
    if name in ROUNDED:
        return Written(f"({ROUNDED[name]}({texts}) + 0)", INT)
    if name in TESTED:
        return Written(f"{TESTED[name]}({texts})", BOOL)
    if name == "sqrt":
        return Written(f"py.sqrt({texts})", FLOAT)
    raise scope.refuse(node, f"{name} gives other last digits in another language")


def write_builtin(scope: Scope, node: ast.Call, name: str) -> Written:
    """A function that Python brings."""
    if name in MADE:
        return list_from(MADE[name](scope, node))
    writer = BUILT_IN.get(name)
    if writer is None:
        raise scope.refuse(node, f"calls {name}, which is not translated")
    return writer(scope, node)


def write_length(scope: Scope, node: ast.Call) -> Written:
    """How many there are; of a text, how many characters."""
    held = write(scope, node.args[0])
    kind = certain(held.kind)
    if kind == TEXT:
        return Written(f"py.length({held.text})", INT)
    if kind.name in ("map", "set"):
        return Written(f"{held.text}.size", INT)
    if kind.name in ("list", "tuple"):
        return Written(f"{held.text}.length", INT)
    raise scope.refuse(node, f"counts {kind}")


def write_extreme(scope: Scope, node: ast.Call) -> Written:
    """The least or the most, the first of equals."""
    name = node.func.id if isinstance(node.func, ast.Name) else ""
    if len(node.args) > 1:
        parts = [write(scope, part) for part in node.args]
        items = Written(
            f"[{', '.join(part.text for part in parts)}]", joined(*(part.kind for part in parts))
        )
    else:
        items = write_loop_or_items(scope, node.args[0])
    key, otherwise, kind = "null", "", items.kind
    for word in node.keywords:
        if word.arg == "key":
            key = write_key(scope, word.value, items.kind)
        elif word.arg == "default":
            default = write(scope, word.value)
            otherwise, kind = f", {default.text}", joined(kind, default.kind)
    return Written(f"py.{name}({items.text}, {key}{otherwise})", kind)


def write_loop_or_items(scope: Scope, node: ast.expr) -> Written:
    """Items in whatever order, for what does not depend on it."""
    if isinstance(node, ast.GeneratorExp):
        return write_loops(scope, node.generators, node.elt, None, any_order=True)
    return write_items(scope, node, any_order=True)


def write_total(scope: Scope, node: ast.Call) -> Written:
    """A sum of whole numbers; floats are summed by ``fsum``, alike in every version."""
    items = write_loop_or_items(scope, node.args[0])
    if certain(items.kind) not in (INT, NEVER):
        raise scope.refuse(node, f"sums {items.kind}; write fsum")
    start = write(scope, node.args[1]).text if len(node.args) > 1 else "0"
    return Written(f"{items.text}.reduce((total, part) => total + part, {start})", INT)


def write_quantifier(scope: Scope, node: ast.Call) -> Written:
    """``any`` and ``all``: what decides ends the search."""
    name = "some" if isinstance(node.func, ast.Name) and node.func.id == "any" else "every"
    argument = node.args[0]
    if isinstance(argument, ast.GeneratorExp):
        return Written(write_search(scope, argument.generators, argument.elt, name), BOOL)
    items = write_items(scope, argument, any_order=True)
    if items.kind != BOOL:
        raise scope.refuse(node, f"takes the truth of {items.kind}; compare it")
    return Written(f"{items.text}.{name}((item) => item)", BOOL)


def write_search(
    scope: Scope, generators: list[ast.comprehension], element: ast.expr, name: str
) -> str:
    """Nested loops that end at the first that decides."""
    first, rest = generators[0], generators[1:]
    items = write_items(scope, first.iter, any_order=True)
    inner = scope.within(named_kinds(scope, first.target, items.kind))
    taken = pattern(scope, first.target)
    text = items.text
    for condition in first.ifs:
        text += f".filter(({taken}) => {write_test(inner, condition)})"
    body = write_search(inner, rest, element, name) if rest else write_test(inner, element)
    return f"{text}.{name}(({taken}) => {body})"


def write_size(scope: Scope, node: ast.Call) -> Written:
    """A number without its sign."""
    number = write(scope, node.args[0])
    if not is_number(number.kind):
        raise scope.refuse(node, f"takes the size of {number.kind}")
    return Written(f"Math.abs({number.text})", certain(number.kind))


def write_as_text(scope: Scope, node: ast.Call) -> Written:
    """A whole number as text; a float is printed by our own rules."""
    value = write(scope, node.args[0])
    kind = certain(value.kind)
    if kind == TEXT:
        return value
    if kind != INT:
        raise scope.refuse(node, f"prints {kind} as Python does; other languages do not")
    return Written(f"String({value.text})", TEXT)


def write_whole(scope: Scope, node: ast.Call) -> Written:
    """A number cut to a whole one, or digits read as one."""
    value = write(scope, node.args[0])
    kind = certain(value.kind)
    if kind == TEXT:
        return Written(f"py.whole({value.text})", INT)
    if not is_number(kind):
        raise scope.refuse(node, f"makes a whole number of {kind}")
    return Written(f"(Math.trunc({value.text}) + 0)", INT)


def write_float(scope: Scope, node: ast.Call) -> Written:
    """A whole number as a float."""
    value = write(scope, node.args[0])
    if not is_number(value.kind):
        raise scope.refuse(node, f"makes a float of {value.kind}")
    return Written(value.text, FLOAT)


def write_set_of(scope: Scope, node: ast.Call) -> Written:
    """A set of items."""
    if not node.args:
        return Written("new Set()", Kind("set", (NEVER,)))
    items = write_loop_or_items(scope, node.args[0])
    return Written(f"new Set({items.text})", Kind("set", (items.kind,)))


def write_map_of(scope: Scope, node: ast.Call) -> Written:
    """A copy of a mapping, or one made of pairs."""
    if node.keywords:
        raise scope.refuse(node, "makes a mapping of keywords; write braces")
    if not node.args:
        return Written("new Map()", map_of(NEVER, NEVER))
    held = write(scope, node.args[0]) if not is_made(node.args[0]) else None
    if held is not None and certain(held.kind).name == "map":
        return Written(f"new Map({held.text})", certain(held.kind))
    if held is not None and certain(held.kind).name == "record":
        return Written(f"({{...{held.text}}})", certain(held.kind))
    pairs = write_items(scope, node.args[0])
    if certain(pairs.kind).name != "tuple":
        raise scope.refuse(node, f"makes a mapping of {pairs.kind}")
    return Written(f"new Map({pairs.text})", map_of(*certain(pairs.kind).parts))


def is_made(node: ast.expr) -> bool:
    """Whether an expression makes items of its own, such as ``zip``."""
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in MADE


def write_truth(scope: Scope, node: ast.Call) -> Written:
    """``bool`` of what is a yes or no already, written for mypy."""
    return Written(write_test(scope, node.args[0]), BOOL)


BUILT_IN: dict[str, Callable[[Scope, ast.Call], Written]] = {
    "len": write_length,
    "min": write_extreme,
    "max": write_extreme,
    "sum": write_total,
    "any": write_quantifier,
    "all": write_quantifier,
    "abs": write_size,
    "str": write_as_text,
    "int": write_whole,
    "float": write_float,
    "set": write_set_of,
    "frozenset": write_set_of,
    "dict": write_map_of,
    "bool": write_truth,
}
CALLS: Mapping[type[ast.expr], Writer] = cast(Any, {ast.Call: write_call})
"""How a call is written."""
