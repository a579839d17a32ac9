"""
What a module declares: records, functions, constants, with their annotations read as kinds.
"""

import ast

from builder.compiling.kinds import (
    BOOL,
    FLOAT,
    INT,
    NONE,
    TEXT,
    Kind,
    joined,
    list_of,
    map_of,
    record_of,
    tuple_of,
)
from builder.compiling.modules import PRIMITIVES, Function, Module, Record
from builder.compiling.refusing import refuse

NAMED = {"bool": BOOL, "int": INT, "float": FLOAT, "str": TEXT, "None": NONE}
LISTS = ("list", "Sequence", "Iterable", "Collection")
MAPS = ("dict", "Mapping")
SETS = ("set", "frozenset")
WRAPPED = ("NotRequired", "Required", "Final", "ClassVar")
OUTSIDE_NAMES = ("cites",)
DECORATORS = ("cites", "dataclass")


class Declarations:
    """All modules of a program, and what their names stand for."""

    def __init__(self, modules: dict[str, Module]) -> None:
        self.modules = modules
        for module in modules.values():
            self.declare(module)
        for module in modules.values():
            self.describe(module)

    def declare(self, module: Module) -> None:
        """Note the names that a module gives, so that annotations can speak of them."""
        for node in module.tree.body:
            if isinstance(node, ast.ClassDef):
                module.records[node.name] = Record(f"{module.name}.{node.name}", {}, set(), {})
            elif isinstance(node, ast.Assign | ast.AnnAssign):
                self.note_assigned(module, node)
            elif not self.is_passed_over(node) and not isinstance(node, ast.FunctionDef):
                raise refuse(module.file, node, f"{type(node).__name__} stands at the top")

    def is_passed_over(self, node: ast.stmt) -> bool:
        """Whether a statement at the top says nothing to the browser."""
        if isinstance(node, ast.Import | ast.ImportFrom):
            return True
        return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)

    def note_assigned(self, module: Module, node: ast.Assign | ast.AnnAssign) -> None:
        """A constant, a tuple of constants, an alias of a type, or a record by call."""
        if node.value is None:
            raise refuse(module.file, node, "declares a name without a value")
        targets: list[ast.expr] = node.targets if isinstance(node, ast.Assign) else [node.target]
        for name, value in named_values(module, targets, node.value):
            if is_record_call(value):
                module.records[name] = Record(f"{module.name}.{name}", {}, set(), {})
            elif self.is_type(module, value) or is_alias(node):
                module.aliases[name] = value
            else:
                module.constants[name] = value

    def is_type(self, module: Module, node: ast.expr) -> bool:
        """Whether an expression names a type rather than a value."""
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.BitOr):
            return self.is_type(module, node.left) and self.is_type(module, node.right)
        if isinstance(node, ast.Constant) and node.value is None:
            return True
        base = node.value if isinstance(node, ast.Subscript) else node
        if not isinstance(base, ast.Name):
            return False
        if base.id in (*NAMED, *LISTS, *MAPS, *SETS, "tuple", "Literal", "Callable", "Union"):
            return True
        if module.imports.get(base.id, ("", ""))[0] in ("typing", "collections.abc"):
            return True
        return self.record_or_alias(module, base.id)

    def record_or_alias(self, module: Module, name: str) -> bool:
        """Whether a name stands for a record or an alias of a type."""
        home, own = self.home(module, name)
        return home is not None and (own in home.records or own in home.aliases)

    def home(self, module: Module, name: str) -> tuple[Module | None, str]:
        """The module that gives a name, and the name there."""
        while name in module.imports:
            origin, name = module.imports[name]
            if origin not in self.modules:
                return None, name
            module = self.modules[origin]
        return module, name

    def describe(self, module: Module) -> None:
        """Read the annotations of records, constants and functions."""
        for node in module.tree.body:
            if isinstance(node, ast.ClassDef):
                self.fill_class(module, node)
            elif isinstance(node, ast.FunctionDef):
                module.functions[node.name] = self.function(module, node)
            elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                if node.target.id in module.constants:
                    module.constant_kinds[node.target.id] = self.kind(module, node.annotation)
            elif isinstance(node, ast.Assign) and is_record_call(node.value):
                self.fill_call(module, node)

    def fill_class(self, module: Module, node: ast.ClassDef) -> None:
        """The fields of a record written as a class."""
        record = module.records[node.name]
        self.check_base(module, node)
        for base in node.bases:
            home, own = self.home(module, base.id) if isinstance(base, ast.Name) else (None, "")
            if home is not None and own in home.records:
                inherited = home.records[own]
                if not inherited.fields:
                    self.fill_class(home, class_named(home, own))
                record.fields |= inherited.fields
                record.optional |= inherited.optional
        lenient = any(word.arg == "total" for word in node.keywords)
        for line in node.body:
            if isinstance(line, ast.AnnAssign) and isinstance(line.target, ast.Name):
                record.fields[line.target.id] = self.kind(module, line.annotation)
                if lenient or is_not_required(line.annotation):
                    record.optional.add(line.target.id)
                if line.value is not None:
                    record.defaults[line.target.id] = line.value
            elif not self.is_passed_over(line):
                raise refuse(module.file, line, f"{node.name} holds more than fields")

    def check_base(self, module: Module, node: ast.ClassDef) -> None:
        """A class is a TypedDict, extends one, or is a frozen dataclass."""
        frozen = any(
            isinstance(mark, ast.Call)
            and isinstance(mark.func, ast.Name)
            and mark.func.id == "dataclass"
            for mark in node.decorator_list
        )
        typed = node.bases and all(
            isinstance(base, ast.Name)
            and (base.id == "TypedDict" or self.record_or_alias(module, base.id))
            for base in node.bases
        )
        if not frozen and not typed:
            raise refuse(module.file, node, f"{node.name} is a class; write a TypedDict")

    def fill_call(self, module: Module, node: ast.Assign) -> None:
        """The fields of a record written as ``TypedDict("Name", {...})``."""
        target, call = node.targets[0], node.value
        if not (isinstance(target, ast.Name) and isinstance(call, ast.Call)):
            raise refuse(module.file, node, "writes a TypedDict in a way that is not read")
        table = call.args[1]
        if not isinstance(table, ast.Dict):
            raise refuse(module.file, node, "writes a TypedDict in a way that is not read")
        record = module.records[target.id]
        lenient = any(word.arg == "total" for word in call.keywords)
        for key, annotation in zip(table.keys, table.values, strict=True):
            if not (isinstance(key, ast.Constant) and isinstance(key.value, str)):
                raise refuse(module.file, node, "has a field whose name is no text")
            record.fields[key.value] = self.kind(module, annotation)
            if lenient or is_not_required(annotation):
                record.optional.add(key.value)

    def function(self, module: Module, node: ast.FunctionDef) -> Function:
        """A function's signature."""
        for mark in node.decorator_list:
            name = mark.func if isinstance(mark, ast.Call) else mark
            if not (isinstance(name, ast.Name) and name.id in DECORATORS):
                raise refuse(module.file, mark, f"{node.name} has a decorator")
        if node.args.vararg or node.args.kwarg:
            raise refuse(module.file, node, f"{node.name} takes any number of arguments")
        listed = [*node.args.posonlyargs, *node.args.args]
        every = [*listed, *node.args.kwonlyargs]
        kinds = {}
        for parameter in every:
            if parameter.annotation is None:
                raise refuse(module.file, parameter, f"{parameter.arg} has no annotation")
            kinds[parameter.arg] = self.kind(module, parameter.annotation)
        given = node.args.defaults
        defaults = dict(
            zip([each.arg for each in listed[len(listed) - len(given) :]], given, strict=True)
        )
        for parameter, value in zip(node.args.kwonlyargs, node.args.kw_defaults, strict=True):
            if value is not None:
                defaults[parameter.arg] = value
        if node.returns is None:
            raise refuse(module.file, node, f"{node.name} does not say what it returns")
        returns = self.kind(module, node.returns)
        return Function(node.name, node, [each.arg for each in every], kinds, defaults, returns)

    def kind(self, module: Module, node: ast.expr) -> Kind:
        """
        An annotation as a kind.

        Raises
        ------
        NotTranslatable
            If it names what the browser's script has no kind for, such as ``Any``.
        """
        if isinstance(node, ast.Constant) and node.value is None:
            return NONE
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            return self.kind(module, ast.parse(node.value, mode="eval").body)
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.BitOr):
            return joined(self.kind(module, node.left), self.kind(module, node.right))
        if isinstance(node, ast.Name):
            return self.named_kind(module, node)
        if isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name):
            return self.built_kind(module, node, node.value.id)
        raise refuse(module.file, node, f"{ast.unparse(node)} is no type that is translated")

    def named_kind(self, module: Module, node: ast.Name) -> Kind:
        """The kind that a single name stands for."""
        if node.id in NAMED:
            return NAMED[node.id]
        home, own = self.home(module, node.id)
        if home is not None and own in home.records:
            return record_of(home.records[own].name)
        if home is not None and own in home.aliases:
            return self.kind(home, home.aliases[own])
        raise refuse(module.file, node, f"{node.id} is no type that is translated")

    def built_kind(self, module: Module, node: ast.Subscript, base: str) -> Kind:
        """A kind built of others, such as ``list[str]``."""
        inner = list(node.slice.elts) if isinstance(node.slice, ast.Tuple) else [node.slice]
        if base in WRAPPED:
            return self.kind(module, inner[0])
        if base == "Literal":
            return joined(*(literal_kind(part) for part in inner))
        if base == "Callable":
            return self.callable_kind(module, inner)
        if base == "Union":
            return joined(*(self.kind(module, part) for part in inner))
        if base == "tuple" and isinstance(inner[-1], ast.Constant) and inner[-1].value is ...:
            return list_of(self.kind(module, inner[0]))
        parts = [self.kind(module, part) for part in inner]
        if base in LISTS:
            return list_of(parts[0])
        if base in MAPS:
            return self.map_kind(module, node, parts)
        if base in SETS:
            return Kind("set", (parts[0],))
        if base == "tuple":
            return tuple_of(*parts)
        raise refuse(module.file, node, f"{ast.unparse(node)} is no type that is translated")

    def map_kind(self, module: Module, node: ast.expr, parts: list[Kind]) -> Kind:
        """A mapping; its keys compare by value in both languages only if they are plain."""
        if any(part.name not in ("int", "text") for part in parts[:1]):
            raise refuse(module.file, node, "has a mapping whose keys are neither text nor whole")
        return map_of(parts[0], parts[1])

    def callable_kind(self, module: Module, inner: list[ast.expr]) -> Kind:
        """A function as an argument."""
        taken = inner[0].elts if isinstance(inner[0], ast.List) else []
        kinds = [self.kind(module, part) for part in [*taken, inner[1]]]
        return Kind("function", tuple(kinds))

    def record(self, kind: Kind) -> Record:
        """The record of a kind."""
        home, _, name = kind.record.rpartition(".")
        return self.modules[home].records[name]

    def is_primitive(self, module: Module, name: str) -> bool:
        """Whether a name stands for a function of the runtime."""
        home, own = self.home(module, name)
        return home is not None and home.name == PRIMITIVES and own in home.functions


def named_values(
    module: Module, targets: list[ast.expr], value: ast.expr
) -> list[tuple[str, ast.expr]]:
    """Each name of an assignment with its value."""
    if len(targets) == 1 and isinstance(targets[0], ast.Tuple) and isinstance(value, ast.Tuple):
        names = [part.id for part in targets[0].elts if isinstance(part, ast.Name)]
        return list(zip(names, value.elts, strict=True))
    pairs = [(target.id, value) for target in targets if isinstance(target, ast.Name)]
    if len(pairs) != len(targets):
        raise refuse(module.file, value, "assigns in a way that is not translated")
    return pairs


def is_record_call(node: ast.expr) -> bool:
    """Whether an expression makes a TypedDict by call."""
    return (
        isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id == "TypedDict"
    )


def is_alias(node: ast.stmt) -> bool:
    """Whether an assignment says itself that it is an alias."""
    if not isinstance(node, ast.AnnAssign):
        return False
    return isinstance(node.annotation, ast.Name) and node.annotation.id == "TypeAlias"


def is_not_required(node: ast.expr) -> bool:
    """Whether a field may be absent."""
    base = node.value if isinstance(node, ast.Subscript) else node
    return isinstance(base, ast.Name) and base.id == "NotRequired"


def class_named(module: Module, name: str) -> ast.ClassDef:
    """The class of a name."""
    for node in module.tree.body:
        if isinstance(node, ast.ClassDef) and node.name == name:
            return node
    raise refuse(module.file, module.tree, f"{name} is no class here")


def literal_kind(node: ast.expr) -> Kind:
    """The kind of a literal."""
    value = node.value if isinstance(node, ast.Constant) else None
    if isinstance(value, bool):
        return BOOL
    return INT if isinstance(value, int) else TEXT if isinstance(value, str) else NONE
