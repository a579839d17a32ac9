"""Riders in one line, and riders made by chance."""

import random
import re
from pathlib import Path

from builder.fit.published import rule_record
from builder.registry import RULES
from builder.rider.entry import RiderRead, read_rider
from builder.rider.table import LANGUAGE
from builder.rider.units import UNITS
from tests.rider.text.trees import RIDERS, said

ROOT = Path(__file__).parents[2]
RULE_RECORDS = [rule_record(rule) for rule in RULES.values()]
KEYS = sorted({rule["key"] for keys in LANGUAGE["groups"].values() for rule in keys})
VALUES = [
    *("12 m", "40 ft", "-3 m", "0 m", "5 kg", "12", "unknown", "?", "none", "yes", "no", "22:30"),
    *("90 min", "90", "32 A", "105 dB(A)", "2026-12-05", "Monday", "must", "should", "show", "A"),
    *("[]", "{}", "[1 m, 2 m]", "haze", "2", "0", "-1", "3 m SL", "2 m US", "centre", "7 m up"),
    *("30 deg", "1 t", "8 kg/m", "counted", "single", "house", "x" * 81, "''", "1000 km"),
]


def read(text: str) -> RiderRead:
    """A rider as the terminal and the page read it."""
    return read_rider(text, LANGUAGE, RULE_RECORDS, UNITS)


def problems(text: str) -> list[str]:
    """What is wrong with a rider, as the terminal prints it."""
    return [said(mistake) for mistake in read(text)["mistakes"]]


def changed(draw: random.Random, text: str) -> str:
    """A rider with one to three values, keys, or lines of another kind."""
    lines = text.split("\n")
    for _ in range(draw.randint(1, 3)):
        place = draw.randrange(len(lines))
        lines[place] = changed_line(draw, lines[place])
    return "\n".join(lines)


def changed_line(draw: random.Random, line: str) -> str:
    """A line with another value or key, without one of its keys, or no line at all."""
    way = draw.random()
    values = list(re.finditer(r"(?<=: )[^,{}\[\]#]+", line))
    keys = list(re.finditer(r"[a-z][a-z ]*(?=: )", line))
    if way < 0.55 and values:
        found = draw.choice(values)
        return line[: found.start()] + draw.choice(VALUES) + line[found.end() :]
    if way < 0.75 and keys:
        found = draw.choice(keys)
        return line[: found.start()] + draw.choice([*KEYS, "widht"]) + line[found.end() :]
    if way < 0.9:
        return re.sub(r", [a-z ]+: [^,{}\[\]]+", "", line, count=1)
    return ""


def drawn(count: int, seed: int) -> list[str]:
    """So many riders, each near a whole one."""
    draw = random.Random(seed)
    return [changed(draw, draw.choice(RIDERS)) for _ in range(count)]
