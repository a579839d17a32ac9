"""
The guide to methods: its worked numbers come out, and its constants and its demo's figures are
those of the code.
"""

import ast
import math
import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

import pytest

from builder.departments.rigging.stock_and_wind import AIR_KG_M3
from builder.departments.sound.areas.ears import MOST_POINTS, STEP_M
from builder.files import published
from builder.fit.hangs.points import NEAR_M
from builder.formulas.air import REFERENCE_TEMPERATURE_K, speed_of_sound_m_s
from builder.formulas.conductors import IEC_LAMBDA_OHM_PER_KM
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.pack import Pack
from builder.pack_json import from_json

ROOT = Path(__file__).parents[1]
GUIDE = (ROOT / "docs" / "pack" / "methods.md").read_text("utf-8")
UNITS = (
    r"(?:kN·m²|kN m²|kg·m²|kg/m³|kg·m|kg"
    r" m|kg/m|m/s²|m/s|Ω/km|N/m²|m²|mm²|km|mm|ms|m|kg|kN|N|kVA|kW|VA|A|V|W|%|Hz|dB|°C|deg|min|h|t)"
)
RESULT = re.compile(rf"\s*(?:\*\*)?(−?\d[\d,]*(?:\.\d+)?)\s?({UNITS})?(?![\w.]*\d?\s*[×/+(])")
SCALE = {"ms": 1000, "%": 100}
"""What a result is told in, where the sum's own numbers are plain."""
ALLOWED = (
    ast.Expression,
    ast.BinOp,
    ast.UnaryOp,
    ast.Constant,
    ast.Call,
    ast.Name,
    ast.Load,
    ast.operator,
    ast.unaryop,
)


def sums() -> Iterator[tuple[str, str, str]]:
    """
    Each sum of numbers in the guide that names its result: the sum as it is written, the result,
    and its unit.
    """
    for line in GUIDE.splitlines():
        parts = line.split("=")
        for left, right in pairwise(parts):
            result = RESULT.match(right)
            written = re.split(r"[:;|,.]\s|\s{3,}|\bis\b|\b[A-Z]\w*\s(?=\d)|[=~≈]", left)[-1]
            if result and computed(written) is not None:
                yield written.strip(), result[1], result[2] or ""


def computed(written: str) -> float | None:
    """The value of a sum of numbers, None where it is none or is no sum."""
    written = re.sub(r"(\d+) ms", r"(\1 / 1000)", written)
    text = (
        re.sub(rf"(?<=[\d)])\s?{UNITS}(?![\w²])", "", written.strip().strip("*"))
        .replace("²", "**2")
        .replace("³", "**3")
    )
    text = (
        re.sub(r"(?<=\d),(?=\d{3})", "", text).replace("×", "*").replace("−", "-").replace("·", "*")
    )
    text = re.sub(r"√(\d[\d.]*)", r"sqrt(\1)", text).replace("√", "sqrt")
    text = re.sub(r"(sin|cos|tan) ([\d.]+)°", r"\1(\2)", text)
    try:
        tree = ast.parse(text, mode="eval")
    except SyntaxError:
        return None
    if not all(isinstance(node, ALLOWED) for node in ast.walk(tree)) or not any(
        isinstance(node, ast.BinOp) for node in ast.walk(tree)
    ):
        return None
    known = {
        "sqrt": math.sqrt,
        "ceil": math.ceil,
        "sin": of_degrees(math.sin),
        "cos": of_degrees(math.cos),
        "tan": of_degrees(math.tan),
    }
    if not {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)} <= set(known):
        return None
    return float(eval(compile(tree, "guide", "eval"), {"__builtins__": {}}, known))  # noqa: S307


def of_degrees(known: Callable[[float], float]) -> Callable[[float], float]:
    """A function of an angle in degrees."""
    return lambda angle_deg: known(math.radians(angle_deg))


def test_every_sum_in_the_guide_comes_out() -> None:
    """
    By hand, as a reader would: within two of the last digit, or a tenth of a percent, for the
    guide's own numbers are rounded.
    """
    wrong = []
    count = 0
    for written, result, unit in sums():
        count += 1
        told = float(result.replace(",", "").replace("−", "-"))
        value = (computed(written) or 0) * (SCALE.get(unit, 1) if "100 ×" not in written else 1)
        last = 10.0 ** -len(result.partition(".")[2])
        if abs(value - told) > max(2 * last, abs(told) * 0.001):
            wrong.append(f"{written} = {result}, but {value}")
    assert wrong == []
    assert count >= 30


@pytest.mark.parametrize(
    "words",
    [
        f"g = {STANDARD_GRAVITY_M_S2} m/s²",
        f"nearest point in service with a known rating within {NEAR_M:g} m",
        f"a grid of {STEP_M:g} m, coarser where more than {MOST_POINTS:,} would be needed",
        (
            f"c = {speed_of_sound_m_s(REFERENCE_TEMPERATURE_K - 273.15):.1f} √(T /"
            f" {REFERENCE_TEMPERATURE_K:g}) m/s"
        ),
        f"| air density | {AIR_KG_M3:g} kg/m³",
        f"X = {IEC_LAMBDA_OHM_PER_KM:g} Ω/km",
    ],
)
def test_the_guides_constants_are_the_codes(words: str) -> None:
    assert words in GUIDE


@pytest.fixture(scope="module")
def demo() -> Pack:
    """The demo's pack."""
    content = next(
        file.content for file in published(ROOT / "venue").files if file.path == "pack.json"
    )
    return from_json(content.decode())


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("access.route.rope-street-dock-to-deck.tightest_width", "The least is {0}"),
        ("stage.deck.end-stage.area", "= {1:.1f} m²"),
        ("stage.deck.thrust.area", "{1:.1f} m², shown as {0}"),
        ("rigging.point.r3-4.left", "left is **{0}**"),
        ("rigging.point.r4-3.left", "What is left is **{0}**"),
        ("rigging.roof.left", "roof 14,000 − 5,068.0 = {1:,.0f} kg"),
    ],
)
def test_the_guides_examples_are_the_demos_figures(demo: Pack, key: str, words: str) -> None:
    found = next(figure for item in demo.items() for figure in item.figures if figure.key == key)
    assert found.value
    number = found.value.number or 0
    said = found.value.text.replace("2.10 m", "2.1 m")
    assert words.format(said, number, abs(number)) in GUIDE
