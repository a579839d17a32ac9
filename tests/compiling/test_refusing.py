"""What the compiler cannot translate exactly it refuses, with file and line."""

import pytest

from builder.compiling.refusing import NotTranslatable
from tests.compiling.script import script

HEAD = "from typing import Any, TypedDict\n\n\nclass Thing(TypedDict):\n    name: str\n\n\n"
REFUSED = {
    "the truth of a list": (
        "if items:\n        return 1",
        "takes the truth of list[text]; compare it",
    ),
    "the truth of a text": ("return 1 if name else 2", "takes the truth of text; compare it"),
    "a part of a text by in": ('return 1 if "a" in name else 2', "looks for something in text"),
    "a bare strip": (
        "return len(name.strip())",
        "calls strip of a text in a way that is not translated",
    ),
    "a fold of case": (
        "return len(name.casefold())",
        "calls casefold of a text in a way that is not translated",
    ),
    "a float as text": (
        "return len(str(1.5))",
        "prints float as Python does; other languages do not",
    ),
    "a power": ("return 2**3", "Pow is not translated"),
    "a sum of floats": ("return int(sum([0.5]))", "sums float; write fsum"),
    "a set in its own order": (
        "return [len(each) for each in {name}][0]",
        "goes through set[text], which has no order that both languages share",
    ),
    "a try": (
        "try:\n        return 1\n    except ValueError:\n        return 2",
        "Try is not translated",
    ),
    "a function within": (
        "def inner() -> int:\n        return 1\n    return inner()",
        "FunctionDef within a function",
    ),
    "a step through a list": ("return len(items[::2])", "takes every so many of a list"),
    "a field by a variable": (
        "return len(thing[name])",
        "reads a field of a record by a name that is not written out",
    ),
    "a field that is not there": (
        'return len(thing["size"])',
        "builder.sample.Thing has no field size",
    ),
    "braces of unknown record": (
        'other: Thing = {"title": name}\n    return len(other["name"])',
        "has fields title, which no record here has",
    ),
    "a call of what is not known": ("return hash(name)", "calls hash, which is not translated"),
    "an assert": ("assert name\n    return 1", "Assert is not translated"),
    "a chain over a call": (
        "return 1 if 0 < len(items) < 3 else 2",
        "compares three things, the middle one by a call; name it",
    ),
    "a format": ('return len(f"{1:03}")', "formats a value within a text"),
    "is with a value": ("return 1 if name is 'x' else 2", "compares with 'is' what is not None"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_it_is_refused_with_its_line(case: str) -> None:
    body, reason = REFUSED[case]
    text = f"{HEAD}def asked(name: str, items: list[str], thing: Thing) -> int:\n    {body}\n"
    with pytest.raises(NotTranslatable) as refusal:
        script(text, "asked")
    assert refusal.value.reason == reason
    assert refusal.value.file == "builder/sample.py"
    assert refusal.value.line >= 9


def test_a_type_of_anything_is_refused() -> None:
    with pytest.raises(NotTranslatable, match=r"sample.py:8: Any is no type that is translated"):
        script(f"{HEAD}def asked(name: Any) -> int:\n    return 1\n", "asked")


def test_a_parameter_without_a_type_is_refused() -> None:
    with pytest.raises(NotTranslatable, match=r"sample.py:8: name has no annotation"):
        script(f"{HEAD}def asked(name) -> int:\n    return 1\n", "asked")


def test_a_class_with_methods_is_refused() -> None:
    text = "class Board:\n    def put(self) -> int:\n        return 1\n"
    with pytest.raises(NotTranslatable, match=r"sample.py:1: Board is a class; write a TypedDict"):
        script(f"{text}\n\ndef asked() -> int:\n    return 1\n", "asked")


def test_a_module_from_outside_is_refused() -> None:
    with pytest.raises(
        NotTranslatable, match=r"sample.py:1: imports from re, which is not translated"
    ):
        script("from re import match\n\n\ndef asked() -> int:\n    return 1\n", "asked")


def test_a_sine_is_refused_for_its_last_digit() -> None:
    text = "from math import sin\n\n\ndef asked() -> float:\n    return sin(1.0)\n"
    with pytest.raises(NotTranslatable, match="sin gives other last digits in another language"):
        script(text, "asked")


def test_the_same_sources_give_the_same_script() -> None:
    text = "def asked(name: str) -> str:\n    return name + '!'\n"
    assert script(text, "asked") == script(text, "asked")
