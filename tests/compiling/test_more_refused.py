"""
More of what the compiler refuses, each with its reason; and the script of the whole language as it
was when a browser gave the same as Python (`test_language.py` holds that it still does).
"""

import pytest

from builder.compiling.refusing import NotTranslatable
from tests.compiling.script import RUNTIME, script
from tests.compiling.test_language import PLAIN, SOURCE
from tests.compiling.test_refusing import HEAD
from tests.golden_files import held

IN_A_FUNCTION = {
    "a call of what has no name": ("return (lambda: 1)()", "calls what has no name"),
    "a call of a value": ("return name(1)", "calls name, which is text"),
    "a mapping spread into a call": ("return other(**{'a': 1})", "spreads a mapping into a call"),
    "a list spread into a call": ("return other(*[1])", "spreads a list into a call"),
    "a count of a number": ("return len(2)", "counts int"),
    "any of texts": ("return 1 if any(items) else 2", "takes the truth of text; compare it"),
    "the size of a text": ("return abs(name)", "takes the size of text"),
    "a whole number of a text": ("return int(items)", "makes a whole number of list[text]"),
    "a float of a list": ("return int(float(items))", "makes a float of list[text]"),
    "a mapping of keywords": ("return len(dict(a=1))", "makes a mapping of keywords; write braces"),
    "a mapping of texts": ("return len(dict(items))", "makes a mapping of text"),
    "parts that there are not": (
        "for a, b in items:\n        pass\n    return 1",
        "takes 2 parts of text",
    ),
    "a place in a loop": (
        "for items[0] in items:\n        pass\n    return 1",
        "sets something other than names in a loop",
    ),
    "an endless number": ("return int(1e999)", "inf is no literal that is translated"),
    "a whole number too large": (
        "return 9007199254740992",
        "9007199254740992 is no literal that is translated",
    ),
    "bytes": ("return len(b'a')", "b'a' is no literal that is translated"),
    "what is set later": ("return later\n    later = 1", "later is read before it is set"),
    "what nobody knows": ("return unknown", "unknown is not known here"),
    "a text less a number": ("return len(name - 2)", "calculates with text and int"),
    "a shift": ("return 1 << 2", "LShift is not translated"),
    "a list and a text": ("return len(items + name)", "adds list[text] and text"),
    "a text and a number": ("return len(name + 1)", "adds text and int"),
    "a minus before a text": ("return len(-name)", "USub of text is not translated"),
    "the order of two kinds": ("return 1 if name < 2 else 2", "orders text and int"),
    "a place by a text": ("return len(items[name])", "takes a part of list[text] by text"),
    "a part of a number": ("return (1)[0]", "takes a part of int"),
    "a place of a tuple": ("return (1, 2)[2]", "takes a place that the tuple does not have"),
    "a place before a tuple": ("return (1, 2)[-3]", "takes a place that the tuple does not have"),
    "a list in a text": ('return len(f"{items}")', "puts list[text] into a text"),
    "a float in a text": ('return len(f"{1.5}")', "puts float into a text"),
    "a lambda alone": (
        "key = lambda one: one\n    return 1",
        "is a lambda of which the place does not tell what it takes",
    ),
    "keys of a list": (
        "return len([each for each in items.keys()])",
        "asks list[text] for its keys",
    ),
    "a method of a list": (
        "items.clear()\n    return 1",
        "calls clear of list[text], which is not translated",
    ),
    "a join of numbers": ('return len(",".join([1]))', "joins int"),
    "a split at a number": (
        "return len(name.split(1))",
        "calls split of a text with what is no single text",
    ),
    "two at once": ("a = b = 1\n    return a", "sets several things to one value"),
    "a write into a text": ('name[0] = "a"\n    return 1', "writes into text"),
    "a value of what is no name": (
        "thing.name: str = name\n    return 1",
        "annotates what is no name",
    ),
    "an else after while": (
        "while name == '':\n        pass\n    else:\n        pass\n    return 1",
        "has an else after a loop",
    ),
    "an else after for": (
        "for each in items:\n        pass\n    else:\n        pass\n    return 1",
        "has an else after a loop",
    ),
    "another exception": ("raise KeyError(name)", "raises what is no ValueError"),
    "a name deleted": ("del name\n    return 1", "deletes what is no value of a mapping"),
    "a place deleted": ("del items[0]\n    return 1", "deletes a part of list[text]"),
    "a value alone": ("name\n    return 1", "is an expression without effect"),
    "a with": ("with name:\n        return 1", "With is not translated"),
    "the truth of a number": ("return 2 if 1 else 3", "takes the truth of int; compare it"),
    "a yield": ("yield 1", "is an expression without effect"),
}
AT_THE_TOP = {
    "a loop": ("for each in ():\n    pass", "For stands at the top"),
    "a name alone": ("NAME: int", "declares a name without a value"),
    "two names": ("ONE, TWO = 1", "assigns in a way that is not translated"),
    "a decorator": (
        "from functools import wraps\n\n\n@wraps\ndef other() -> int:\n    return 1",
        "imports from functools, which is not translated",
    ),
    "a decorator of ours": ("@unknown\ndef other() -> int:\n    return 1", "other has a decorator"),
    "any number of arguments": (
        "def other(*all: int) -> int:\n    return 1",
        "other takes any number of arguments",
    ),
    "no result": ("def other(one: int):\n    return 1", "other does not say what it returns"),
    "a whole module": ("import math", "imports a whole module; write from ... import ..."),
    "a method": (
        "class Other(TypedDict):\n    def two(self) -> int:\n        return 2",
        "Other holds more than fields",
    ),
    "a type of ours that is none": (
        "def other(one: Unknown) -> int:\n    return 1",
        "Unknown is no type that is translated",
    ),
    "a mapping by truth": (
        "def other(one: dict[bool, int]) -> int:\n    return 1",
        "has a mapping whose keys are neither text nor whole",
    ),
    "a record by a call without its fields": (
        "Other = TypedDict('Other', FIELDS)",
        "writes a TypedDict in a way that is not read",
    ),
    "a field that is no text": (
        "Other = TypedDict('Other', {1: int})",
        "has a field whose name is no text",
    ),
}


def refused(text: str) -> str:
    """Why a source is refused."""
    with pytest.raises(NotTranslatable) as refusal:
        script(text, "asked")
    return refusal.value.reason


@pytest.mark.parametrize("case", IN_A_FUNCTION)
def test_what_a_function_holds_is_refused_with_its_reason(case: str) -> None:
    body, reason = IN_A_FUNCTION[case]
    other = "def other(a: int) -> int:\n    return a\n\n\n"
    head = f"{HEAD}{other}def asked(name: str, items: list[str], thing: Thing) -> int:\n    "
    assert refused(f"{head}{body}\n") == reason


@pytest.mark.parametrize("case", AT_THE_TOP)
def test_what_stands_at_the_top_is_refused_with_its_reason(case: str) -> None:
    top, reason = AT_THE_TOP[case]
    assert refused(f"{HEAD}{top}\n\n\ndef asked() -> int:\n    return 1\n") == reason


def test_the_script_of_the_whole_language_is_as_it_was() -> None:
    _, found, own = script(SOURCE, *PLAIN, "taking").partition(RUNTIME.strip()[-60:])
    assert found
    held("language.txt", own.strip() + "\n")
