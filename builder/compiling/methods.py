"""
Methods of texts, lists, mappings and sets.
"""

import ast
from collections.abc import Callable

from builder.compiling.expressions import field_access, field_kind, literal_text
from builder.compiling.items import write_items, write_key, write_view
from builder.compiling.kinds import BOOL, INT, NEVER, NONE, TEXT, Kind, certain, joined, list_of
from builder.compiling.scope import Scope, Written, write

TEXT_METHODS = {
    "startswith": ("py.starts({0}, {1})", BOOL),
    "endswith": ("py.ends({0}, {1})", BOOL),
    "replace": ("{0}.replaceAll({1}, {2})", TEXT),
    "find": ("py.find({0}, {1})", INT),
    "rfind": ("py.rfind({0}, {1})", INT),
    "lower": ("{0}.toLowerCase()", TEXT),
    "upper": ("{0}.toUpperCase()", TEXT),
    "strip": ("py.strip({0}, {1}, true, true)", TEXT),
    "lstrip": ("py.strip({0}, {1}, true, false)", TEXT),
    "rstrip": ("py.strip({0}, {1}, false, true)", TEXT),
    "removeprefix": ("py.remove_prefix({0}, {1})", TEXT),
    "removesuffix": ("py.remove_suffix({0}, {1})", TEXT),
    "split": ("{0}.split({1})", list_of(TEXT)),
    "count": ("py.count_text({0}, {1})", INT),
}
"""Methods of a text: how each is written, and the kind of what it gives."""


def write_method(scope: Scope, node: ast.Call, method: ast.Attribute) -> Written:
    """A call of a method, by what it belongs to."""
    viewed = write_view(scope, method, node)
    if viewed is not None:
        return Written(viewed.text, list_of(viewed.kind))
    base = write(scope, method.value)
    kind = certain(base.kind)
    if kind == TEXT:
        return write_text_method(scope, node, method.attr, base)
    writer = BY_KIND.get(kind.name, {}).get(method.attr)
    if writer is None:
        raise scope.refuse(node, f"calls {method.attr} of {kind}, which is not translated")
    return writer(scope, node, base, method.value)


def write_text_method(scope: Scope, node: ast.Call, name: str, base: Written) -> Written:
    """A method of a text."""
    if name == "join":
        items = write_items(scope, node.args[0])
        if certain(items.kind) not in (TEXT, NEVER):
            raise scope.refuse(node, f"joins {items.kind}")
        return Written(f"{items.text}.join({base.text})", TEXT)
    template, kind = TEXT_METHODS.get(name, ("", NONE))
    if template == "" or node.keywords or len(node.args) != template.count("{") - 1:
        raise scope.refuse(node, f"calls {name} of a text in a way that is not translated")
    parts = [write(scope, part) for part in node.args]
    if any(certain(part.kind) != TEXT for part in parts):
        raise scope.refuse(node, f"calls {name} of a text with what is no single text")
    return Written(template.format(base.text, *(part.text for part in parts)), kind)


def learn_element(scope: Scope, holder: ast.expr, base: Kind, kind: Kind) -> None:
    """What is put into a list that was empty tells what it holds."""
    if isinstance(holder, ast.Name) and NEVER in base.parts and scope.is_local(holder.id):
        scope.local_kinds[holder.id] = Kind(
            base.name, (kind,) if len(base.parts) == 1 else base.parts
        )


def write_append(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """One more item at the end."""
    kind = certain(base.kind)
    wanted = kind.parts[0] if kind.parts[0] != NEVER else None
    item = write(scope, node.args[0], wanted)
    learn_element(scope, holder, kind, item.kind)
    return Written(f"{base.text}.push({item.text})", NONE)


def write_extend(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """More items at the end."""
    items = write_items(scope, node.args[0])
    learn_element(scope, holder, certain(base.kind), items.kind)
    return Written(f"py.extend({base.text}, {items.text})", NONE)


def write_insert(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """An item in between."""
    place = write(scope, node.args[0])
    item = write(scope, node.args[1], certain(base.kind).parts[0])
    return Written(f"py.insert({base.text}, {place.text}, {item.text})", NONE)


def write_pop(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """An item taken out."""
    place = write(scope, node.args[0]).text if node.args else "-1"
    return Written(f"py.pop({base.text}, {place})", certain(base.kind).parts[0])


def write_index(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """Where an item stands; a fault where it does not."""
    return Written(f"py.index({base.text}, {write(scope, node.args[0]).text})", INT)


def write_count(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """How often an item stands in a list."""
    return Written(f"py.count({base.text}, {write(scope, node.args[0]).text})", INT)


def write_sort(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A list put in order."""
    key, backwards = "null", "false"
    for word in node.keywords:
        if word.arg == "key":
            key = write_key(scope, word.value, certain(base.kind).parts[0])
        elif word.arg == "reverse":
            backwards = write(scope, word.value).text
    return Written(f"py.sort({base.text}, {key}, {backwards})", NONE)


def write_reverse(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A list turned round."""
    return Written(f"{base.text}.reverse()", NONE)


def write_list_copy(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A list of the same items."""
    return Written(f"[...{base.text}]", certain(base.kind))


def write_get(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A mapping's value, or what stands in for it."""
    key = write(scope, node.args[0])
    value = certain(base.kind).parts[1]
    default = write(scope, node.args[1], value) if len(node.args) > 1 else Written("null", NONE)
    kind = (
        value if value != NEVER and default.kind.parts == (NEVER,) else joined(value, default.kind)
    )
    return Written(f"py.get({base.text}, {key.text}, {default.text})", kind)


def write_setdefault(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A mapping's value, set first where there is none."""
    kind = certain(base.kind)
    key = write(scope, node.args[0])
    value = write(scope, node.args[1], kind.parts[1])
    return Written(f"py.setdefault({base.text}, {key.text}, {value.text})", kind.parts[1])


def write_map_pop(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A value taken out of a mapping."""
    key = write(scope, node.args[0])
    default = [write(scope, part).text for part in node.args[1:]]
    taken = ", ".join([base.text, key.text, *default])
    return Written(f"py.take({taken})", certain(base.kind).parts[1])


def write_update(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A mapping that takes over another's values."""
    other = write(scope, node.args[0], certain(base.kind))
    return Written(f"py.update({base.text}, {other.text})", NONE)


def write_map_copy(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A mapping of the same values."""
    return Written(f"new Map({base.text})", certain(base.kind))


def write_set_add(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """One more in a set."""
    item = write(scope, node.args[0])
    learn_element(scope, holder, certain(base.kind), item.kind)
    return Written(f"{base.text}.add({item.text})", NONE)


def write_set_discard(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """One less in a set."""
    return Written(f"{base.text}.delete({write(scope, node.args[0]).text})", NONE)


def write_record_get(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A field that may be absent."""
    name = literal_text(scope, node.args[0])
    kind = field_kind(scope, node, certain(base.kind), name)
    default = write(scope, node.args[1], kind) if len(node.args) > 1 else Written("null", NONE)
    text = f"({base.text}{field_access(name)} ?? {default.text})"
    if NONE in (kind, *kind.parts) and default.kind != NONE:
        raise scope.refuse(node, f"{name} may be None and may be absent; test for it with 'in'")
    return Written(text, joined(kind, default.kind))


def write_record_copy(scope: Scope, node: ast.Call, base: Written, holder: ast.expr) -> Written:
    """A record of the same fields."""
    return Written(f"({{...{base.text}}})", base.kind)


MethodWriter = Callable[[Scope, ast.Call, Written, ast.expr], Written]
LIST_METHODS: dict[str, MethodWriter] = {
    "append": write_append,
    "extend": write_extend,
    "insert": write_insert,
    "pop": write_pop,
    "index": write_index,
    "count": write_count,
    "sort": write_sort,
    "reverse": write_reverse,
    "copy": write_list_copy,
}
MAP_METHODS: dict[str, MethodWriter] = {
    "get": write_get,
    "setdefault": write_setdefault,
    "pop": write_map_pop,
    "update": write_update,
    "copy": write_map_copy,
}
BY_KIND: dict[str, dict[str, MethodWriter]] = {
    "list": LIST_METHODS,
    "tuple": {"index": write_index, "count": write_count},
    "map": MAP_METHODS,
    "set": {"add": write_set_add, "discard": write_set_discard},
    "record": {"get": write_record_get, "copy": write_record_copy},
}
"""Methods by the kind that has them."""
