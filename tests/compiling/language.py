"""
The part of Python that is translated, put to use: every function here runs in both languages.

Each takes nothing and returns what JSON can say.
"""

from collections.abc import Callable
from math import ceil, floor, fsum, inf, isfinite, sqrt
from typing import Literal, NotRequired, TypedDict

from builder.formulas.primitives import is_failing

Pair = tuple[int, str]
Change = Callable[[int], int]
LIMIT = 3
NAMES = ("one", "two", "three")
WORDS: dict[str, int] = {"b": 2, "a": 1}
FIRST, SECOND = "first", "second"


class Thing(TypedDict):
    """A thing with a name."""

    name: str
    weight_kg: float | None
    parts: list["Thing"]
    note: NotRequired[str]


class Red(TypedDict):
    """One of two."""

    sort: Literal["red"]
    depth: int


class Blue(TypedDict):
    """The other of two."""

    sort: Literal["blue"]
    names: dict[str, int]


Either = Red | Blue
Odd = TypedDict("Odd", {"load in": float, "class": str})


def thing(name: str, weight_kg: float | None = None, *, parts: list[Thing] | None = None) -> Thing:
    """A thing."""
    return {"name": name, "weight_kg": weight_kg, "parts": parts if parts is not None else []}


def arithmetic() -> list[float]:
    """Signs, division and remainders."""
    return [
        7 // 2,
        -7 // 2,
        7 % 3,
        -7 % 3,
        7 % -3,
        7.5 // 2,
        -7.5 % 2,
        7 / 2,
        -(3 - 3),
        0.1 + 0.2,
        sqrt(2.0),
        floor(-2.5),
        ceil(-2.5),
        abs(-3),
        int(-2.7),
        1e300 * 10,
        5.0 // 0.1,
    ]


def exact_sums() -> list[float]:
    """Sums whose last digit a naive loop gets wrong."""
    return [
        fsum([0.1] * 10),
        fsum([1e16, 1.0, -1e16]),
        fsum([1e-16, 1.0, 1e16]),
        fsum([]),
        sum([1, 2, 3]),
    ]


def texts() -> list[str]:
    """Texts, a character past the first plane among them."""
    wide = "a😀b"
    return [
        wide[1],
        wide[-1],
        wide[1:],
        wide[:-1],
        str(len(wide)),
        "  x ".strip(" "),
        "xxaxx".lstrip("x"),
        "xxaxx".rstrip("x"),
        ["a", "b", "", "c"][3],
        "-".join(["a", "b"]),
        "Größe".upper(),
        "abc".replace("b", ""),
        str("abcabc".find("c")),
        str("abcabc".rfind("b")),
        str("😀x".find("x")),
        "prefix-x".removeprefix("prefix-"),
        "x.py".removesuffix(".py"),
        f"{LIMIT} of {len(NAMES)}: {NAMES[0]}",
        "ab" * 3,
        "".join(character for character in "héé" if character != "h"),
    ]


def orders() -> list[list[str]]:
    """Sorting: by code point, stable, backwards, by several things."""
    names = ["b", "a", "😀", "\ufb01", "Z", "é"]
    pairs = [(2, "x"), (1, "y"), (2, "a"), (1, "b")]
    return [
        sorted(names),
        sorted(names, reverse=True),
        [text for _, text in sorted(pairs, key=lambda pair: pair[0])],
        [text for _, text in sorted(pairs, key=lambda pair: pair[0], reverse=True)],
        [text for _, text in sorted(pairs)],
        [text for _, text in sorted(pairs, key=lambda pair: (-pair[0], pair[1]))],
        [min(names), max(names), min(pairs, key=lambda pair: pair[0])[1]],
        [max(pairs, key=lambda pair: pair[0])[1], str(min([3, 1, 2])), str(max(1, 2))],
        sorted({"q", "p"}),
    ]


def lists() -> list[list[int]]:
    """Lists changed in place and copied."""
    numbers = [3, 1, 2]
    other = numbers
    other.append(4)
    copied = [*numbers, 9]
    numbers += [5]
    numbers.insert(1, 7)
    taken = numbers.pop()
    first = numbers.pop(0)
    numbers.sort()
    numbers[0] = 8
    numbers[-1] += 1
    gathered: list[int] = []
    for number in numbers:
        if number == 7:
            continue
        gathered.append(number)
    return [
        numbers,
        other,
        copied,
        [taken, first, numbers.index(2), numbers.count(2), len(numbers)],
        gathered,
        list(reversed(numbers)),
        numbers[1:],
        numbers[:-1],
        list(range(3)),
        list(range(5, 0, -2)),
        [0] * 3,
        [number * 2 for number in numbers if number > 2],
        [a + b for a in (1, 2) for b in (10, 20) if a != b],
    ]


def mappings() -> list[str]:
    """Mappings keep their order, number-like keys too."""
    counted: dict[str, int] = {}
    for word in ["b", "10", "a", "b", "2"]:
        counted[word] = counted.get(word, 0) + 1
    groups: dict[str, list[int]] = {}
    for place, word in enumerate(["x", "y", "x"]):
        groups.setdefault(word, []).append(place)
    del counted["a"]
    merged = {**counted, "z": 5}
    merged.update({"z": 6})
    by_number = {number: str(number) for number in (3, 1)}
    return [
        ",".join(counted),
        ",".join(f"{key}={value}" for key, value in counted.items()),
        ",".join(str(value) for value in merged.values()),
        ",".join(str(each) for each in groups["x"]),
        "none" if counted.get("none") is None else "some",
        str(merged.pop("b")) + str(len(merged)),
        by_number[3],
        "yes" if "10" in counted and "a" not in counted else "no",
        ",".join(key for key, _ in sorted(WORDS.items())),
        str(max(WORDS.values())),
        sorted(WORDS, key=lambda word: WORDS[word])[0],
    ]


def records() -> list[str]:
    """Records: spread, optional fields, one of several."""
    whole = thing("truss", 12.5, parts=[thing("clamp")])
    changed: Thing = {**whole, "name": "beam", "note": "old"}
    one: Either = {"sort": "red", "depth": 3}
    other: Either = {"sort": "blue", "names": {"x": 1}}
    odd: Odd = {"load in": 2.0, "class": "b"}
    changed["weight_kg"] = None
    parts = changed["parts"]
    return [
        whole["name"] + changed["name"],
        changed.get("note", "none") + whole.get("note", "none"),
        "yes" if "note" in changed and "note" not in whole else "no",
        "none" if changed["weight_kg"] is None else "some",
        parts[0]["name"],
        described(one),
        described(other),
        odd["class"],
        "same" if whole == {**whole} else "other",
        "same" if thing("a") == thing("b") else "other",
    ]


def described(one: Either) -> str:
    """What one of two is."""
    if one["sort"] == "red":
        return "red " + str(one["depth"])
    return "blue " + ",".join(one["names"])


def loops() -> list[int]:
    """Loops that end early, and names that outlive them."""
    total, steps = 0, 0
    while True:
        steps += 1
        if steps > 5:
            break
        if steps % 2 == 0:
            continue
        total += steps
    last = 0
    for number in range(10):
        last = number
        if number >= LIMIT:
            break
    a, b = 1, 2
    a, b = b, a
    (c, d), e = (a, b), 3
    return [total, steps, last, number, a, b, c, d, e]


def questions() -> list[bool]:
    """Comparisons."""
    one, other = [1, [2, 3]], [1, [2, 3]]
    maybe: str | None = None
    return [
        one == other,
        one != other,
        (1, "a") < (1, "b"),
        "Z" < "a",
        1 < 2 <= 2,
        maybe is None,
        maybe == "x",
        any(number > 2 for number in (1, 2, 3)),
        all(number > 2 for number in (1, 2, 3)),
        any(a == b for a in (1, 2) for b in (2, 3)),
        not (1 in (1, 2) and 3 not in [1, 2]),
        isfinite(inf),
        (1, 2) in [(1, 2)],
        {"a": 1} == {"a": 1},
    ]


def nested(depth: int, *, step: int = 1) -> int:
    """A function that calls itself, with a keyword."""
    return 0 if depth <= 0 else 1 + nested(depth - step, step=step)


def calls() -> list[int]:
    """Calls by keyword and by default."""
    return [
        nested(3),
        nested(4, step=2),
        applied(lambda number: number + 1, 3),
        applied(doubled, 4),
    ]


def applied(change: Change, number: int) -> int:
    """A function given as an argument."""
    return change(number)


def doubled(number: int) -> int:
    """Twice a number."""
    return number * 2


def taking(houses: dict[str, Thing], number: int) -> list[str]:
    """What JSON gives, with a mapping in it."""
    return [name + houses[name]["name"] + str(number) for name in houses]


def nets() -> list[list[int]]:
    """What a net leaves of an action that fails half way, and of one that does not."""
    counted: list[int] = []
    is_first_failing = is_failing(lambda: counts_down(counted, -1))
    is_second_failing = is_failing(lambda: counts_down(counted, 2))
    return [counted, [1 if is_first_failing else 0, 1 if is_second_failing else 0]]


def counts_down(counted: list[int], number: int) -> None:
    """Counts, and fails below zero."""
    counted.append(number)
    if number < 0:
        raise ValueError("number must not be below zero")
    if number > 0:
        counts_down(counted, number - 1)
