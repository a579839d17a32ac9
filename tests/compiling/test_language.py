"""The part of Python that is translated means the same in the browser."""

import json
import random
from math import copysign, fsum
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.compiling import language
from tests.compiling.script import results, script

SOURCE = (Path(__file__).parent / "language.py").read_text("utf-8")
PLAIN = [
    "arithmetic",
    "exact_sums",
    "texts",
    "orders",
    "lists",
    "mappings",
    "records",
    "loops",
    "questions",
    "calls",
    "nets",
]


@pytest.mark.browser
def test_every_function_of_the_language_gives_the_same_in_both(browser: Browser) -> None:
    found = results(browser, script(SOURCE, *PLAIN), [(name, []) for name in PLAIN])
    expected = [json.loads(json.dumps(getattr(language, name)())) for name in PLAIN]
    assert dict(zip(PLAIN, found, strict=True)) == dict(zip(PLAIN, expected, strict=True))


@pytest.mark.browser
def test_a_mapping_in_what_json_gives_keeps_names_that_look_like_numbers(browser: Browser) -> None:
    houses: dict[str, Any] = {
        "b": {"name": "x", "weight_kg": None, "parts": []},
        "__proto__x": {"name": "y", "weight_kg": 1.5, "parts": []},
    }
    found = results(browser, script(SOURCE, "taking"), [("taking", [houses, 3])])
    assert found == [["bx3", "__proto__xy3"]]


NUMBERS = """
from math import fsum

def summed(numbers: list[float]) -> float:
    return fsum(numbers)

def rest(one: float, other: float) -> float:
    return one % other

def quotient(one: float, other: float) -> float:
    return one // other

def whole_rest(one: int, other: int) -> list[int]:
    return [one % other, one // other]

def ordered(names: list[str]) -> list[str]:
    return sorted(names)

def part(text: str, start: int, end: int) -> str:
    return text[start:end]
"""


@pytest.mark.browser
def test_numbers_and_texts_drawn_at_random_give_the_same_in_both(browser: Browser) -> None:
    draw = random.Random(20261130)
    namespace: dict[str, Any] = {}
    exec(NUMBERS, namespace)  # noqa: S102 - our own text above
    calls = [random_call(draw) for _ in range(3000)]
    found = results(
        browser,
        script(NUMBERS, "summed", "rest", "quotient", "whole_rest", "ordered", "part"),
        calls,
    )
    expected = [namespace[name](*given) for name, given in calls]
    different = [
        (call, ours, theirs)
        for call, ours, theirs in zip(calls, expected, found, strict=True)
        if ours != theirs
    ]
    assert different == []


@pytest.mark.browser
def test_a_sum_of_what_is_nothing_has_no_sign_in_either(browser: Browser) -> None:
    page = browser.new_page()
    page.add_script_tag(content=script(NUMBERS, "summed"))
    theirs = page.evaluate("() => Object.is(engine.summed([-0, -0]), 0)")
    page.close()
    assert (copysign(1.0, fsum([-0.0, -0.0])) == 1.0, theirs) == (True, True)


def random_call(draw: random.Random) -> tuple[str, list[Any]]:
    """A function with arguments, hard ones among them."""
    name = draw.choice(["summed", "rest", "quotient", "whole_rest", "ordered", "part"])
    if name == "summed":
        return name, [[random_float(draw) for _ in range(draw.randrange(12))]]
    if name in ("rest", "quotient"):
        return name, [random_float(draw), random_float(draw) or 1.0]
    if name == "whole_rest":
        return name, [draw.randrange(-(10**9), 10**9), draw.choice([-7, -1, 1, 3, 10**6])]
    if name == "ordered":
        return name, [[random_text(draw) for _ in range(8)]]
    return name, [random_text(draw), draw.randrange(-4, 8), draw.randrange(-4, 8)]


def random_float(draw: random.Random) -> float:
    """A float over many decades."""
    return draw.choice([-1, 1]) * draw.random() * 10 ** draw.randrange(-12, 13)


def random_text(draw: random.Random) -> str:
    """Letters from all over the code points, none of them half a pair."""
    points = [97, 98, 122, 233, 0x3B1, 0xFB01, 0xFFFD, 0x1F600, 0x10FFFF]
    return "".join(chr(draw.choice(points)) for _ in range(draw.randrange(6)))
