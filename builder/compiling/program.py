"""
A whole program: modules in, one script out.

Start at :func:`compiled`.
"""

import json
from collections.abc import Callable, Iterable, Mapping

from builder.compiling.calling import CALLS
from builder.compiling.comprehending import COMPREHENSIONS
from builder.compiling.declaring import Declarations
from builder.compiling.expressions import EXPRESSIONS
from builder.compiling.kinds import NONE, Kind
from builder.compiling.modules import PRIMITIVES, Module, reached
from builder.compiling.reviving import Reviver
from builder.compiling.scope import GLOBAL_LETTERS, Scope, script_word, short_name, write
from builder.compiling.statements import write_function

WRITERS = {**EXPRESSIONS, **COMPREHENSIONS, **CALLS}
Own = tuple[str, str]
"""A function or a constant, by its module and its name there."""


def compiled(
    offers: Mapping[str, str],
    *,
    source_of: Callable[[str], str],
    runtime: str,
    global_name: str,
    packed: bool = False,
) -> str:
    """
    The functions named, with all that they need, as a script for the browser.

    Parameters
    ----------
    offers
        What the script offers, by the name that a page calls: functions by full name, such as
        ``builder.fit.interpreter.fit``. They take and give what JSON can say.
    source_of
        Gives a module's source text by its name.
    runtime
        The script of what both languages have and write differently.
    global_name
        The name under which a page finds the functions.
    packed
        Whether names are short: a third less to load.

    Returns
    -------
    str
        A script without imports and without requests; the same sources give the same bytes.

    Raises
    ------
    NotTranslatable
        With file and line of the first place that cannot be translated exactly.
    """
    homes = dict.fromkeys(full_name.rpartition(".")[0] for full_name in offers.values())
    modules = reached(tuple(homes), source_of)
    declarations = Declarations(modules)
    program = Program(declarations, script_names(modules, packed=packed), packed=packed)
    for module in modules.values():
        program.write_module(module)
    reviver = Reviver(declarations)
    offered = [offer(program, reviver, called, full_name) for called, full_name in offers.items()]
    parts = program.reached_from(offers.values())
    body = "\n".join([runtime.rstrip(), *parts, *reviver.functions, *offered])
    offered_to = f"window.{global_name} = window.{global_name} || {{}}"
    return f'(function (offered) {{\n"use strict";\n{body}\n}})({offered_to});\n'


class Program:
    """What all modules say, as pieces of the script, and which piece needs which."""

    def __init__(self, declarations: Declarations, names: dict[Own, str], *, packed: bool) -> None:
        self.declarations = declarations
        self.names = names
        self.packed = packed
        self.pieces: dict[Own, str] = {}
        self.needs: dict[Own, set[Own]] = {}

    def write_module(self, module: Module) -> None:
        """A module's constants, which first tell what they hold, then its functions."""
        if module.name == PRIMITIVES:
            return
        for own, value in module.constants.items():
            scope = self.scope(module)
            written = write(scope, value, module.constant_kinds.get(own))
            module.constant_kinds.setdefault(own, written.kind)
            self.keep(module, own, f"const {self.names[module.name, own]} = {written.text};", scope)
        for own, function in module.functions.items():
            scope = self.scope(module)
            text = write_function(scope, function, self.names[module.name, own])
            self.keep(module, own, text, scope)

    def scope(self, module: Module) -> Scope:
        """An empty scope in a module."""
        scope = Scope(self.declarations, self.names, WRITERS, module, NONE)
        scope.short_names = {} if self.packed else None
        return scope

    def keep(self, module: Module, own: str, text: str, scope: Scope) -> None:
        """Keep one piece with what it needs."""
        self.pieces[module.name, own] = text
        self.needs[module.name, own] = scope.used

    def reached_from(self, full_names: Iterable[str]) -> list[str]:
        """The pieces that some functions need, in the order of their modules."""
        waiting = [(home, own) for home, _, own in (name.rpartition(".") for name in full_names)]
        needed: set[Own] = set()
        while waiting:
            piece = waiting.pop()
            if piece not in needed:
                needed.add(piece)
                waiting += self.needs.get(piece, ())
        return [text for piece, text in self.pieces.items() if piece in needed]


def script_names(modules: dict[str, Module], *, packed: bool) -> dict[Own, str]:
    """A name of its own for each function and constant: two modules may use one name."""
    names: dict[Own, str] = {}
    taken: set[str] = set()
    for module in modules.values():
        short = module.name.rpartition(".")[2]
        for own in [*functions_of(module), *module.constants]:
            name = short_name(len(names), GLOBAL_LETTERS) if packed else script_word(own)
            count = 1
            while name in taken:
                name = f"{own}_{short}" if count == 1 else f"{own}_{short}_{count}"
                count += 1
            taken.add(name)
            names[module.name, own] = name
    return names


def functions_of(module: Module) -> list[str]:
    """The functions of a module that stand in the script themselves."""
    return [] if module.name == PRIMITIVES else list(module.functions)


def offer(program: Program, reviver: Reviver, called: str, full_name: str) -> str:
    """One function as a page calls it: plain data in, plain data out."""
    home, _, own = full_name.rpartition(".")
    function = program.declarations.modules[home].functions[own]
    kinds: list[Kind] = [function.kinds[name] for name in function.parameters]
    taken = [f"value{place}" for place in range(len(kinds))]
    arguments = [revived(reviver, kind, name) for kind, name in zip(kinds, taken, strict=True)]
    call = f"{program.names[home, own]}({', '.join(arguments)})"
    return f"offered[{json.dumps(called)}] = ({', '.join(taken)}) => py.plain({call});"


def revived(reviver: Reviver, kind: Kind, name: str) -> str:
    """An argument as the rules take it; a copy, so that what a page holds is never changed."""
    made = reviver.name(kind)
    copy = f"structuredClone({name})"
    return f"{made}({copy})" if made else copy
