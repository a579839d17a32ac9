"""
Expressions: each of Python's, written as JavaScript of the same meaning.

``wanted`` is the kind that the place asks for; it tells a record from a mapping where both are
written with braces.
"""

import ast
import json
import math
from collections.abc import Mapping
from typing import Any, cast

from builder.compiling.items import write_items
from builder.compiling.kinds import (
    BOOL,
    FLOAT,
    INT,
    NEVER,
    NONE,
    TEXT,
    Kind,
    certain,
    choices,
    is_number,
    is_plain,
    joined,
    list_of,
    map_of,
    tuple_of,
)
from builder.compiling.scope import Scope, Writer, Written, write, write_test

ORDERS: dict[type[ast.cmpop], str] = {ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">="}
MATH_CONSTANTS = {"inf": "Infinity", "pi": repr(math.pi), "nan": "NaN"}


def write_constant(scope: Scope, node: ast.Constant, wanted: Kind | None) -> Written:
    """A literal."""
    value = node.value
    if value is None:
        return Written("null", NONE)
    if isinstance(value, bool):
        return Written("true" if value else "false", BOOL)
    if isinstance(value, int) and abs(value) < 2**53:
        return Written(str(value), INT)
    if isinstance(value, float) and math.isfinite(value):
        return Written(repr(value), FLOAT)
    if isinstance(value, str):
        return Written(json.dumps(value, ensure_ascii=False), TEXT)
    raise scope.refuse(node, f"{value!r} is no literal that is translated")


def write_name(scope: Scope, node: ast.Name, wanted: Kind | None) -> Written:
    """A variable, a constant or a function."""
    name = node.id
    if scope.is_local(name):
        if name not in scope.local_kinds:
            raise scope.refuse(node, f"{name} is read before it is set")
        return Written(scope.local_name(name), scope.local_kinds[name])
    origin, own = scope.module.imports.get(name, ("", name))
    if origin == "math" and own in MATH_CONSTANTS:
        return Written(MATH_CONSTANTS[own], FLOAT)
    script_name = scope.global_name(name)
    home, own = scope.declarations.home(scope.module, name)
    if script_name is None or home is None:
        raise scope.refuse(node, f"{name} is not known here")
    if own in home.functions:
        function = home.functions[own]
        kinds = [function.kinds[each] for each in function.parameters]
        return Written(script_name, Kind("function", (*kinds, function.returns)))
    return Written(script_name, home.constant_kinds[own])


def write_operation(scope: Scope, node: ast.BinOp, wanted: Kind | None) -> Written:
    """Arithmetic, and ``+`` of texts and lists."""
    left, right = write(scope, node.left, wanted), write(scope, node.right, wanted)
    if isinstance(node.op, ast.Add) and not is_number(left.kind):
        return write_sum_of_sequences(scope, node, left, right)
    if isinstance(node.op, ast.Mult) and certain(left.kind) == TEXT and certain(right.kind) == INT:
        return Written(f"{left.text}.repeat({right.text})", TEXT)
    if isinstance(node.op, ast.Mult) and certain(left.kind).name == "list":
        return Written(f"py.repeated({left.text}, {right.text})", left.kind)
    if isinstance(node.op, ast.BitOr) and certain(left.kind).name in ("map", "record"):
        return write_union(left, right)
    if not (is_number(left.kind) and is_number(right.kind)):
        raise scope.refuse(node, f"calculates with {left.kind} and {right.kind}")
    return write_arithmetic(scope, node, left, right)


def write_union(left: Written, right: Written) -> Written:
    """Two mappings or records as one."""
    if certain(left.kind).name == "map":
        return Written(f"new Map([...{left.text}, ...{right.text}])", left.kind)
    return Written(f"({{...{left.text}, ...{right.text}}})", left.kind)


def write_arithmetic(scope: Scope, node: ast.BinOp, left: Written, right: Written) -> Written:
    """An operation on two numbers."""
    whole = certain(left.kind) == INT and certain(right.kind) == INT
    kind = INT if whole else FLOAT
    for operation, sign in ((ast.Add, "+"), (ast.Sub, "-"), (ast.Mult, "*")):
        if isinstance(node.op, operation):
            return Written(f"({left.text} {sign} {right.text})", kind)
    if isinstance(node.op, ast.Div):
        if isinstance(node.right, ast.Constant) and node.right.value != 0:
            return Written(f"({left.text} / {right.text})", FLOAT)
        return Written(f"py.div({left.text}, {right.text})", FLOAT)
    if isinstance(node.op, ast.FloorDiv):
        return Written(f"py.floordiv({left.text}, {right.text})", kind)
    if isinstance(node.op, ast.Mod):
        return Written(f"py.mod({left.text}, {right.text})", kind)
    raise scope.refuse(node, f"{type(node.op).__name__} is not translated")


def write_sum_of_sequences(scope: Scope, node: ast.BinOp, left: Written, right: Written) -> Written:
    """Two texts or two lists, one after the other."""
    one, other = certain(left.kind), certain(right.kind)
    if one == TEXT and other == TEXT:
        return Written(f"({left.text} + {right.text})", TEXT)
    if one.name in ("list", "tuple") and other.name in ("list", "tuple"):
        if one.name == other.name == "tuple":
            kind = tuple_of(*one.parts, *other.parts)
        else:
            kind = list_of(joined(*one.parts, *other.parts))
        return Written(f"[...{left.text}, ...{right.text}]", kind)
    raise scope.refuse(node, f"adds {one} and {other}")


def write_sign(scope: Scope, node: ast.UnaryOp, wanted: Kind | None) -> Written:
    """``not`` and a sign. A whole number has no minus zero."""
    if isinstance(node.op, ast.Not):
        return Written(f"!({write_test(scope, node.operand)})", BOOL)
    written = write(scope, node.operand, wanted)
    if not is_number(written.kind) or not isinstance(node.op, ast.USub):
        raise scope.refuse(node, f"{type(node.op).__name__} of {written.kind} is not translated")
    if isinstance(node.operand, ast.Constant) and node.operand.value != 0:
        return Written(f"-{written.text}", written.kind)
    if certain(written.kind) == INT:
        return Written(f"(0 - {written.text})", INT)
    return Written(f"(-{written.text})", FLOAT)


def write_logic(scope: Scope, node: ast.BoolOp, wanted: Kind | None) -> Written:
    """``and`` and ``or``, of yes and no alone."""
    sign = " && " if isinstance(node.op, ast.And) else " || "
    return Written(f"({sign.join(write_test(scope, part) for part in node.values)})", BOOL)


def write_comparison(scope: Scope, node: ast.Compare, wanted: Kind | None) -> Written:
    """A comparison; a chain of them compares each neighbour, what stands between being plain."""
    terms = [node.left, *node.comparators]
    for middle in terms[1:-1]:
        if any(isinstance(part, ast.Call) for part in ast.walk(middle)):
            raise scope.refuse(node, "compares three things, the middle one by a call; name it")
    pairs = zip(terms, terms[1:], node.ops, strict=False)
    parts = [write_pair(scope, node, left, right, sign) for left, right, sign in pairs]
    return Written(parts[0] if len(parts) == 1 else f"({' && '.join(parts)})", BOOL)


def write_pair(
    scope: Scope, node: ast.Compare, left: ast.expr, right: ast.expr, sign: ast.cmpop
) -> str:
    """One comparison of two things."""
    if isinstance(sign, ast.In | ast.NotIn):
        held = write_membership(scope, left, right)
        return held if isinstance(sign, ast.In) else f"!{held}"
    one, other = write(scope, left), write(scope, right)
    if isinstance(sign, ast.Is | ast.IsNot):
        if other.kind != NONE:
            raise scope.refuse(node, "compares with 'is' what is not None")
        return f"({one.text} {'===' if isinstance(sign, ast.Is) else '!=='} null)"
    if isinstance(sign, ast.Eq | ast.NotEq):
        same = isinstance(sign, ast.Eq)
        if is_plain(one.kind) and is_plain(other.kind):
            return f"({one.text} {'===' if same else '!=='} {other.text})"
        return f"{'' if same else '!'}py.equal({one.text}, {other.text})"
    if is_number(one.kind) and is_number(other.kind):
        return f"({one.text} {ORDERS[type(sign)]} {other.text})"
    if certain(one.kind).name != certain(other.kind).name:
        raise scope.refuse(node, f"orders {one.kind} and {other.kind}")
    return f"(py.compare({one.text}, {other.text}) {ORDERS[type(sign)]} 0)"


def write_membership(scope: Scope, item: ast.expr, group: ast.expr) -> str:
    """Whether something is in a list, a mapping or a set. Text is searched with ``find``."""
    held, holder = write(scope, item), write(scope, group)
    kind = certain(holder.kind)
    if kind.name in ("map", "set"):
        return f"{holder.text}.has({held.text})"
    if kind.name in ("list", "tuple"):
        if is_plain(held.kind):
            return f"{holder.text}.includes({held.text})"
        return f"py.contains({holder.text}, {held.text})"
    if kind.name == "record" or all(part.name == "record" for part in choices(kind)):
        return f"Object.hasOwn({holder.text}, {held.text})"
    raise scope.refuse(item, f"looks for something in {kind}")


def write_choice(scope: Scope, node: ast.IfExp, wanted: Kind | None) -> Written:
    """One of two values."""
    test = write_test(scope, node.test)
    one, other = write(scope, node.body, wanted), write(scope, node.orelse, wanted)
    return Written(f"({test} ? {one.text} : {other.text})", joined(one.kind, other.kind))


def write_subscript(scope: Scope, node: ast.Subscript, wanted: Kind | None) -> Written:
    """A field of a record, a value of a mapping, a place of a list or text, or a part of them."""
    base = write(scope, node.value)
    kind = certain(base.kind)
    if isinstance(node.slice, ast.Slice):
        return write_part(scope, node.slice, base)
    if kind.name == "map":
        key = write(scope, node.slice)
        return Written(f"py.value({base.text}, {key.text})", kind.parts[1])
    if any(part.name == "record" for part in choices(kind)):
        key_text = literal_text(scope, node.slice)
        return Written(base.text + field_access(key_text), field_kind(scope, node, kind, key_text))
    place = write(scope, node.slice)
    if certain(place.kind) != INT:
        raise scope.refuse(node, f"takes a part of {kind} by {place.kind}")
    if kind == TEXT:
        return Written(f"py.character({base.text}, {place.text})", TEXT)
    if kind.name == "tuple":
        return write_place_of_tuple(scope, node, base, kind)
    if kind.name == "list":
        return Written(f"py.at({base.text}, {place.text})", kind.parts[0])
    raise scope.refuse(node, f"takes a part of {kind}")


def write_place_of_tuple(scope: Scope, node: ast.Subscript, base: Written, kind: Kind) -> Written:
    """One place of a tuple; by a variable only where all its places are of one kind."""
    place = constant_whole(node.slice)
    if place is None:
        element = joined(*kind.parts)
        return Written(f"py.at({base.text}, {write(scope, node.slice).text})", element)
    if not -len(kind.parts) <= place < len(kind.parts):
        raise scope.refuse(node, "takes a place that the tuple does not have")
    return Written(f"{base.text}[{place % len(kind.parts)}]", kind.parts[place])


def constant_whole(node: ast.expr) -> int | None:
    """A whole number that is written out."""
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        inner = constant_whole(node.operand)
        return None if inner is None else -inner
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, int) else None


def write_part(scope: Scope, part: ast.Slice, base: Written) -> Written:
    """A slice of a list or of text."""
    if part.step is not None:
        raise scope.refuse(part.step, "takes every so many of a list")
    ends = [
        write(scope, end).text if end is not None else "null" for end in (part.lower, part.upper)
    ]
    kind = certain(base.kind)
    if kind.name == "tuple":
        kind = list_of(joined(*kind.parts))
    return Written(f"py.slice({base.text}, {ends[0]}, {ends[1]})", kind)


def literal_text(scope: Scope, node: ast.expr) -> str:
    """The name of a field, which must be written out."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return node.value
    raise scope.refuse(node, "reads a field of a record by a name that is not written out")


def field_access(name: str) -> str:
    """A field's access: after a dot where JavaScript takes the name so."""
    return f".{name}" if name.isidentifier() and name.isascii() else f"[{json.dumps(name)}]"


def field_kind(scope: Scope, node: ast.AST, kind: Kind, name: str) -> Kind:
    """The kind of a field in whichever of the records that have it."""
    records = [scope.declarations.record(part) for part in choices(kind) if part.name == "record"]
    kinds = [record.fields[name] for record in records if name in record.fields]
    if not kinds:
        raise scope.refuse(node, f"{kind} has no field {name}")
    return joined(*kinds)


def write_attribute(scope: Scope, node: ast.Attribute, wanted: Kind | None) -> Written:
    """A field of a frozen dataclass."""
    base = write(scope, node.value)
    kind = field_kind(scope, node, certain(base.kind), node.attr)
    return Written(base.text + field_access(node.attr), kind)


def write_list(scope: Scope, node: ast.List, wanted: Kind | None) -> Written:
    """A list written out."""
    inner = element_wanted(wanted, "list")
    parts = [write_element(scope, part, inner) for part in node.elts]
    return Written(
        f"[{', '.join(part.text for part in parts)}]", list_of(inner or elements_kind(parts))
    )


def elements_kind(parts: list[Written]) -> Kind:
    """The kind of what is in a list; of an empty one nobody knows yet."""
    return joined(*(part.kind for part in parts)) if parts else NEVER


def write_element(scope: Scope, node: ast.expr, wanted: Kind | None) -> Written:
    """An element of a list, or all those of another list."""
    if not isinstance(node, ast.Starred):
        return write(scope, node, wanted)
    items = write_items(scope, node.value)
    return Written(f"...{items.text}", items.kind)


def write_tuple(scope: Scope, node: ast.Tuple, wanted: Kind | None) -> Written:
    """A tuple written out; a list where a tuple of any length is asked for."""
    if any(isinstance(part, ast.Starred) for part in node.elts) or element_wanted(wanted, "list"):
        inner = element_wanted(wanted, "list")
        parts = [write_element(scope, part, inner) for part in node.elts]
        return Written(
            f"[{', '.join(part.text for part in parts)}]",
            list_of(inner or elements_kind(parts)),
        )
    places = next((kind.parts for kind in choices(wanted or NONE) if kind.name == "tuple"), ())
    wants = places if len(places) == len(node.elts) else (None,) * len(node.elts)
    parts = [write(scope, part, want) for part, want in zip(node.elts, wants, strict=True)]
    kinds = [want or part.kind for part, want in zip(parts, wants, strict=True)]
    return Written(f"[{', '.join(part.text for part in parts)}]", tuple_of(*kinds))


def write_set(scope: Scope, node: ast.Set, wanted: Kind | None) -> Written:
    """A set written out."""
    parts = [write(scope, part) for part in node.elts]
    kind = Kind("set", (joined(*(part.kind for part in parts)),))
    return Written(f"new Set([{', '.join(part.text for part in parts)}])", kind)


def element_wanted(wanted: Kind | None, name: str) -> Kind | None:
    """The kind of element that a place asks for, where it asks for a list."""
    for kind in choices(wanted or NONE):
        if kind.name == name:
            return kind.parts[-1]
    return None


def write_braces(scope: Scope, node: ast.Dict, wanted: Kind | None) -> Written:
    """Braces: a record where the place asks for one or one is spread in, else a mapping."""
    spread = [
        write(scope, value)
        for key, value in zip(node.keys, node.values, strict=True)
        if key is None
    ]
    records = [kind for kind in choices(wanted or NONE) if kind.name == "record"]
    records += [
        part for each in spread for part in choices(certain(each.kind)) if part.name == "record"
    ]
    maps = [kind for kind in choices(wanted or NONE) if kind.name == "map"]
    if records and maps:
        raise scope.refuse(node, "may be a record or a mapping here; annotate it")
    return write_record(scope, node, records) if records else write_map(scope, node, maps)


def write_record(scope: Scope, node: ast.Dict, records: list[Kind]) -> Written:
    """A record; of several it may be, the one that has all these fields."""
    names = [literal_text(scope, key) for key in node.keys if key is not None]
    fitting = [kind for kind in records if fits_record(scope, kind, names, node)]
    if not fitting:
        raise scope.refuse(node, f"has fields {', '.join(names)}, which no record here has")
    parts = []
    for key, value in zip(node.keys, node.values, strict=True):
        if key is None:
            parts.append(f"...{write(scope, value).text}")
        else:
            name = literal_text(scope, key)
            inner = write(
                scope,
                value,
                joined(*(scope.declarations.record(each).fields[name] for each in fitting)),
            )
            parts.append(f"{field_name(name)}: {inner.text}")
    return Written(f"({{{', '.join(parts)}}})", joined(*fitting))


def fits_record(scope: Scope, kind: Kind, names: list[str], node: ast.Dict) -> bool:
    """Whether a record has all the fields that are written, and all it needs are written."""
    record = scope.declarations.record(kind)
    needed = set(record.fields) - record.optional
    is_whole = None in node.keys or needed <= set(names)
    return set(names) <= set(record.fields) and is_whole


def field_name(name: str) -> str:
    """A field's name as JavaScript writes it in braces."""
    return name if name.isidentifier() and name.isascii() else json.dumps(name)


def write_map(scope: Scope, node: ast.Dict, maps: list[Kind]) -> Written:
    """A mapping, in the order it is written."""
    inner = maps[0].parts[1] if maps else None
    parts, kinds, key_kinds = [], [], []
    for key, value in zip(node.keys, node.values, strict=True):
        if key is None:
            other = write(scope, value)
            parts.append(f"...{other.text}")
            key_kinds.append(certain(other.kind).parts[0])
            kinds.append(certain(other.kind).parts[1])
        else:
            pair = write(scope, key), write(scope, value, inner)
            parts.append(f"[{pair[0].text}, {pair[1].text}]")
            key_kinds.append(pair[0].kind)
            kinds.append(pair[1].kind)
    if maps:
        kind = maps[0]
    elif kinds:
        kind = map_of(joined(*key_kinds), joined(*kinds))
    else:
        kind = map_of(NEVER, NEVER)
    return Written(f"new Map([{', '.join(parts)}])", kind)


def write_text(scope: Scope, node: ast.JoinedStr, wanted: Kind | None) -> Written:
    """Text with values in it: texts and whole numbers, without a format."""
    parts = []
    for part in node.values:
        if isinstance(part, ast.FormattedValue):
            if part.format_spec is not None or part.conversion != -1:
                raise scope.refuse(node, "formats a value within a text")
            written = write(scope, part.value)
            if certain(written.kind) not in (TEXT, INT):
                raise scope.refuse(node, f"puts {written.kind} into a text")
            parts.append(written.text)
        else:
            parts.append(write(scope, part).text)
    return Written(f'("" + {" + ".join(parts)})' if parts else '""', TEXT)


def write_lambda(scope: Scope, node: ast.Lambda, wanted: Kind | None) -> Written:
    """A function without a name, where the place tells what it takes."""
    names = [parameter.arg for parameter in node.args.args]
    asked = next((kind for kind in choices(wanted or NONE) if kind.name == "function"), None)
    if asked is None or len(asked.parts) != len(names) + 1:
        raise scope.refuse(node, "is a lambda of which the place does not tell what it takes")
    inner = scope.within(zip(names, asked.parts, strict=False))
    body = write(inner, node.body, asked.parts[-1] if asked.parts[-1] != NEVER else None)
    taken = ", ".join(inner.local_name(name) for name in names)
    return Written(f"(({taken}) => {body.text})", Kind("function", (*asked.parts[:-1], body.kind)))


EXPRESSIONS: Mapping[type[ast.expr], Writer] = cast(
    Any,
    {
        ast.Constant: write_constant,
        ast.Name: write_name,
        ast.BinOp: write_operation,
        ast.UnaryOp: write_sign,
        ast.BoolOp: write_logic,
        ast.Compare: write_comparison,
        ast.IfExp: write_choice,
        ast.Subscript: write_subscript,
        ast.Attribute: write_attribute,
        ast.List: write_list,
        ast.Tuple: write_tuple,
        ast.Set: write_set,
        ast.Dict: write_braces,
        ast.JoinedStr: write_text,
        ast.Lambda: write_lambda,
    },
)
"""How each sort of expression is written; each writer takes its own sort of node."""
