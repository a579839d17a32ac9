"""
A whole program: modules in, one script out.

Start at :func:`compiled`.
"""

import json
from collections.abc import Callable, Mapping

from builder.compiling.calling import CALLS
from builder.compiling.comprehending import COMPREHENSIONS
from builder.compiling.declaring import Declarations
from builder.compiling.expressions import EXPRESSIONS
from builder.compiling.kinds import NONE, Kind
from builder.compiling.modules import PRIMITIVES, Module, reached
from builder.compiling.reviving import Reviver
from builder.compiling.scope import Scope, script_word, write
from builder.compiling.statements import write_function

WRITERS = {**EXPRESSIONS, **COMPREHENSIONS, **CALLS}


def compiled(
    offers: Mapping[str, str],
    *,
    source_of: Callable[[str], str],
    runtime: str,
    global_name: str,
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
    names = script_names(modules)
    parts = [runtime.rstrip()]
    for module in modules.values():
        if module.name != PRIMITIVES:
            parts += written_module(declarations, names, module)
    reviver = Reviver(declarations)
    offered = [
        offer(declarations, names, reviver, called, full_name)
        for called, full_name in offers.items()
    ]
    body = "\n".join([*parts, *reviver.functions, *offered])
    offered_to = f"window.{global_name} = window.{global_name} || {{}}"
    return f'(function (offered) {{\n"use strict";\n{body}\n}})({offered_to});\n'


def script_names(modules: dict[str, Module]) -> dict[tuple[str, str], str]:
    """A name of its own for each function and constant: two modules may use one name."""
    names: dict[tuple[str, str], str] = {}
    taken: set[str] = set()
    for module in modules.values():
        short = module.name.rpartition(".")[2]
        for own in [*functions_of(module), *module.constants]:
            name = script_word(own)
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


def written_module(
    declarations: Declarations, names: dict[tuple[str, str], str], module: Module
) -> list[str]:
    """A module's constants and functions; the constants first told what they hold."""
    constants = []
    for own, value in module.constants.items():
        scope = Scope(declarations, names, WRITERS, module, NONE)
        written = write(scope, value, module.constant_kinds.get(own))
        module.constant_kinds.setdefault(own, written.kind)
        constants.append(f"const {names[module.name, own]} = {written.text};")
    functions = [
        write_function(
            Scope(declarations, names, WRITERS, module, NONE), function, names[module.name, own]
        )
        for own, function in module.functions.items()
    ]
    return [*constants, *functions]


def offer(
    declarations: Declarations,
    names: dict[tuple[str, str], str],
    reviver: Reviver,
    called: str,
    full_name: str,
) -> str:
    """One function as a page calls it: plain data in, plain data out."""
    home, _, own = full_name.rpartition(".")
    function = declarations.modules[home].functions[own]
    kinds: list[Kind] = [function.kinds[name] for name in function.parameters]
    taken = [f"value{place}" for place in range(len(kinds))]
    arguments = [revived(reviver, kind, name) for kind, name in zip(kinds, taken, strict=True)]
    call = f"{names[home, own]}({', '.join(arguments)})"
    return f"offered[{json.dumps(called)}] = ({', '.join(taken)}) => py.plain({call});"


def revived(reviver: Reviver, kind: Kind, name: str) -> str:
    """An argument as the rules take it; a copy, so that what a page holds is never changed."""
    made = reviver.name(kind)
    copy = f"structuredClone({name})"
    return f"{made}({copy})" if made else copy
