"""
A whole program: modules in, one script out.

Start at :func:`compiled`.
"""

import json
from collections.abc import Callable, Iterable, Mapping, Sequence

from builder.compiling.calling import CALLS
from builder.compiling.comprehending import COMPREHENSIONS
from builder.compiling.declaring import Declarations
from builder.compiling.expressions import EXPRESSIONS
from builder.compiling.kinds import NONE, Kind
from builder.compiling.modules import PRIMITIVES, Module, reached
from builder.compiling.packing import without_spaces
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
    program = Program.of(offers.values(), source_of, packed=packed)
    pieces = program.reached_from(offers.values())
    body = [program.packing(runtime.rstrip()), *program.texts(pieces), *offering(program, offers)]
    return within(f"window.{global_name} = window.{global_name} || {{}}", body)


def compiled_in_two(
    offers: Mapping[str, str],
    later: Mapping[str, str],
    *,
    held_back: Sequence[str],
    source_of: Callable[[str], str],
    runtime: str,
    global_name: str,
    packed: bool = False,
) -> tuple[str, str]:
    """
    The functions named as two scripts: one for at once, and one that a page loads when it needs it.

    No function stands in both: the second takes from the first what both need.

    Parameters
    ----------
    offers, later
        What the first and what the second script offers, as for :func:`compiled`.
    held_back
        Functions that the first script calls and that come with the second, with all that only they
        need. A call before that is a fault.

    Returns
    -------
    tuple[str, str]
        The two scripts. The second runs after the first, on the same page.

    Raises
    ------
    NotTranslatable
        With file and line of the first place that cannot be translated exactly.
    ValueError
        If a constant of the first script would need the second.
    """
    program = Program.of([*offers.values(), *later.values()], source_of, packed=packed)
    first = program.reached_from(offers.values(), held_back)
    second = program.reached_from([*later.values(), *held_back]) - first
    program.refuse_early_use(first, second)
    lent = ["py", *(program.names[own] for own in program.lent(first, second, later.values()))]
    awaited = [program.names[split_name(full_name)] for full_name in held_back]
    body = [
        program.packing(runtime.rstrip()),
        f"let {', '.join(f'{name} = py.absent' for name in awaited)};",
        *program.texts(first),
        *offering(program, offers),
        f"offered.lend = () => [[{', '.join(lent)}], (given) => {{ [{', '.join(awaited)}] ="
        " given; }];",
    ]
    rest = [
        f"const [[{', '.join(lent)}], join] = offered.lend();",
        *program.texts(second),
        f"join([{', '.join(awaited)}]);",
        *offering(program, later),
    ]
    made = within(f"window.{global_name} = window.{global_name} || {{}}", body)
    return made, within(f"window.{global_name}", rest)


def within(offered_to: str, body: Iterable[str]) -> str:
    """Pieces as a script whose names are its own."""
    text = "\n".join(body)
    return f'(function (offered) {{\n"use strict";\n{text}\n}})({offered_to});\n'


def offering(program: "Program", offers: Mapping[str, str]) -> list[str]:
    """What a page calls, and before it what makes its arguments from JSON."""
    reviver = Reviver(program.declarations)
    offered = [offer(program, reviver, called, full_name) for called, full_name in offers.items()]
    return [*reviver.functions, *offered]


class Program:
    """What all modules say, as pieces of the script, and which piece needs which."""

    def __init__(self, declarations: Declarations, names: dict[Own, str], *, packed: bool) -> None:
        self.declarations = declarations
        self.names = names
        self.packed = packed
        self.pieces: dict[Own, str] = {}
        self.needs: dict[Own, set[Own]] = {}

    @classmethod
    def of(
        cls, full_names: Iterable[str], source_of: Callable[[str], str], *, packed: bool
    ) -> "Program":
        """The program of some functions, by full name: their modules with all that these need."""
        homes = dict.fromkeys(full_name.rpartition(".")[0] for full_name in full_names)
        modules = reached(tuple(homes), source_of)
        program = cls(Declarations(modules), script_names(modules, packed=packed), packed=packed)
        for module in modules.values():
            program.write_module(module)
        return program

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

    def reached_from(self, full_names: Iterable[str], held_back: Iterable[str] = ()) -> set[Own]:
        """The pieces that some functions need, but for those held back and what only they need."""
        waiting = [split_name(full_name) for full_name in full_names]
        passed_over = {split_name(full_name) for full_name in held_back}
        needed: set[Own] = set()
        while waiting:
            piece = waiting.pop()
            if piece not in needed and piece not in passed_over:
                needed.add(piece)
                waiting += self.needs.get(piece, ())
        return needed

    def texts(self, pieces: set[Own]) -> list[str]:
        """Pieces as they stand in the script, in the order of their modules."""
        return [self.packing(text) for piece, text in self.pieces.items() if piece in pieces]

    def packing(self, text: str) -> str:
        """A part of the script as the page loads it."""
        return without_spaces(text) if self.packed else text

    def lent(self, first: set[Own], second: set[Own], later: Iterable[str]) -> list[Own]:
        """What a second script takes from the first."""
        wanted = {split_name(full_name) for full_name in later}
        wanted.update(need for piece in second for need in self.needs[piece])
        return [piece for piece in self.pieces if piece in first and piece in wanted]

    def refuse_early_use(self, first: set[Own], second: set[Own]) -> None:
        """Refuse a constant of a first script that takes its value from the second."""
        for home, own in first:
            is_constant = own in self.declarations.modules[home].constants
            if is_constant and not second.isdisjoint(self.needs.get((home, own), ())):
                raise ValueError(f"{home}.{own} must not need what is held back")


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


def split_name(full_name: str) -> Own:
    """A full name as module and name there."""
    home, _, own = full_name.rpartition(".")
    return home, own


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
