"""
What tests call of the check, written down: the arguments before each call, the result after it.

A function is wrapped where a module of tests holds it, so what is written down are the outermost
calls, and the check itself stays as it is.
"""

import inspect
import json
import math
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, fields, is_dataclass
from functools import cache, wraps
from types import ModuleType
from typing import Any

from builder.compiling.declaring import Declarations
from builder.compiling.modules import reached
from builder.compiling.program import functions_of
from builder.site.engine import OFFERED, source_of

TESTS = "tests.fit."
FAULT = "a fault of the program"
"""What a call gives that raises: its words are for us and differ between languages."""
FAULTS = (ValueError, KeyError, IndexError, ZeroDivisionError)
MARK = "\u0001"
NO_JSON = {"inf": math.inf, "-inf": -math.inf, "nan": math.nan, "-0": -0.0}
"""Numbers that JSON has no word for, or that a browser writes as another."""

Given = int | tuple[tuple[str, int], ...]
"""An argument: the number of a text, or of a mapping each key with the number of a text."""
Call = tuple[str, tuple[Given, ...]]
"""A function by its full name, and its arguments."""


class NotPlainError(Exception):
    """A value that cannot travel to a browser as text."""


@dataclass(slots=True)
class Recorded:
    """The calls of one file of tests: what each gave, and what could not be written down."""

    results: dict[Call, str] = field(default_factory=dict)
    texts: dict[str, int] = field(default_factory=dict)
    """Every text of an argument with its number: the rules of a pack travel once."""
    left_out: dict[str, str] = field(default_factory=dict)
    """A function that took or gave what is not plain, and what that was."""

    def functions(self) -> set[str]:
        """The functions that were called, by full name."""
        return {called for called, _ in self.results}

    def kept(self, value: object) -> int:
        """The number of a value's text."""
        return self.texts.setdefault(argument_text(value), len(self.texts))

    def given(self, value: object) -> Given:
        """An argument, of a mapping each part by itself. Its keys stay in their order."""
        if isinstance(value, Mapping) and all(isinstance(key, str) for key in value):
            return tuple((key, self.kept(part)) for key, part in value.items())
        return self.kept(value)


def argument_text(value: object) -> str:
    """A value as the text that a browser reads. The order of keys stays, for a loop may use it."""
    try:
        return json.dumps(value, default=plain, allow_nan=False, separators=(",", ":"))
    except (TypeError, ValueError):
        # A number without end, or none: by the slower way, which has words for them, and says what
        # JSON has none for.
        return json.dumps(plain(value), separators=(",", ":"))


def result_text(value: object) -> str:
    """
    A value as one text in both languages: keys sorted, and a whole number as the float that a
    browser makes of it.
    """
    return json.dumps(plain(value), sort_keys=True, ensure_ascii=False, separators=(",", ":"))


def plain(value: object) -> object:
    """
    A value as JSON has it.

    Raises
    ------
    NotPlainError
        For a function, a set, and whatever else JSON has no word for.
    """
    if value is None or isinstance(value, bool | str):
        return value
    if isinstance(value, int | float):
        return plain_number(value)
    if isinstance(value, list | tuple):
        return [plain(part) for part in value]
    if isinstance(value, Mapping):
        return {plain_key(key): plain(part) for key, part in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        return {each.name: plain(getattr(value, each.name)) for each in fields(value)}
    raise NotPlainError(f"a {type(value).__name__}")


def plain_number(value: float) -> object:
    """A number as the float that a browser holds, or the name of one that JSON lacks."""
    number = float(value)
    if number != value and not math.isnan(number):
        raise NotPlainError("a whole number past what a float holds")
    names = [name for name, each in NO_JSON.items() if repr(each) == repr(number)]
    return MARK + names[0] if names else number


def plain_key(key: object) -> str:
    """A key as JSON has it."""
    if isinstance(key, bool) or not isinstance(key, str | int):
        raise NotPlainError(f"a key that is a {type(key).__name__}")
    return str(key)


def recording(function: Callable[..., Any], recorded: Recorded) -> Callable[..., Any]:
    """A function that does the same and writes down each call."""
    called = f"{function.__module__}.{function.__name__}"
    signature = inspect.signature(function)

    @wraps(function)
    def wrapped(*given: Any, **named: Any) -> Any:
        bound = signature.bind(*given, **named)
        bound.apply_defaults()
        try:
            call = (called, tuple(recorded.given(value) for value in bound.arguments.values()))
            result, text = outcome(function, given, named)
            recorded.results[call] = text
        except NotPlainError as reason:
            recorded.left_out[called] = str(reason)
            return function(*given, **named)
        if isinstance(result, Exception):
            raise result
        return result

    return wrapped


def outcome(
    function: Callable[..., Any], given: tuple[Any, ...], named: dict[str, Any]
) -> tuple[Any, str]:
    """What a call gives, and that as text; of a fault the fault itself."""
    try:
        result = function(*given, **named)
    except FAULTS as fault:
        return fault, result_text(FAULT)
    return result, result_text(result)


@cache
def compiled_functions() -> frozenset[str]:
    """Every function of the modules that the page's scripts are made of, by full name."""
    homes = dict.fromkeys(full_name.rpartition(".")[0] for full_name in OFFERED.values())
    modules = Declarations(reached(tuple(homes), source_of)).modules.values()
    return frozenset(f"{module.name}.{own}" for module in modules for own in functions_of(module))


def is_compiled(value: object) -> bool:
    """Whether a value is a function that the page's scripts hold too."""
    if not inspect.isfunction(value):
        return False
    return f"{value.__module__}.{value.__name__}" in compiled_functions()


@contextmanager
def recorded_calls() -> Iterator[Recorded]:
    """Write down what tests call, wherever a module of these tests holds a function."""
    recorded = Recorded()
    held = [
        (module, name, value) for module in loaded_tests() for name, value in functions_in(module)
    ]
    for module, name, value in held:
        setattr(module, name, recording(value, recorded))
    yield recorded
    for module, name, value in held:
        setattr(module, name, value)


def loaded_tests() -> list[ModuleType]:
    """The modules of these tests that are loaded."""
    return [module for name, module in sys.modules.items() if name.startswith(TESTS)]


def functions_in(module: ModuleType) -> list[tuple[str, Callable[..., Any]]]:
    """The check's functions that a module of tests holds, by the name that it has for them."""
    return [(name, value) for name, value in vars(module).items() if is_compiled(value)]
