"""
A `pack.json` from anywhere, whole or not: `housepack fit` ends in verdicts or in a sentence that
names the file, never in a traceback.
"""

import json
import random
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from builder.cli import main
from builder.pack_json import to_json
from builder.pipeline import pack_of, venue_of
from tests.laws import share
from tests.sweep import VENUES, folder

ROOT = Path(__file__).parents[2]
RIDERS = [str(path) for path in sorted((ROOT / "tests" / "riders").glob("*.yml"))]
MOST_CHANGES = 4
STRANGE: tuple[Any, ...] = (
    *(None, True, "", "x", "at most 3", 0, -1, -1e300, 1e300, 10**400, float("nan")),
    *(float("inf"), [], {}, [[]], [{}], {"key": []}),
)


@cache
def published(venue: str) -> str:
    """A venue's pack."""
    there = folder(venue)
    return to_json(pack_of(venue_of(there.texts, there.photos)))


def spoiled(seed: int) -> str:
    """A pack with a few things in it changed, as a seed draws them."""
    dice = random.Random(seed)
    data = json.loads(published(dice.choice([*VENUES])))
    for _ in range(dice.randint(1, MOST_CHANGES)):
        spoil(data, dice)
    return json.dumps(data)


def spoil(data: Any, dice: random.Random) -> None:
    """Change one thing somewhere in a pack."""
    holder = data
    while True:
        step = dice.choice([*holder] if isinstance(holder, dict) else range(len(holder)))
        inner = holder[step]
        if not isinstance(inner, dict | list) or not inner or dice.random() < 0.1:
            break
        holder = inner
    change = dice.choice((left_out, replaced, twice, shortened, like_another))
    change(holder, step, dice)


def left_out(holder: Any, step: Any, _: random.Random) -> None:
    """Take it out; of a row of numbers, one of them."""
    del holder[step]


def replaced(holder: Any, step: Any, dice: random.Random) -> None:
    """Put something strange there."""
    holder[step] = dice.choice(STRANGE)


def twice(holder: Any, step: Any, _: random.Random) -> None:
    """Say it twice, so that two things have one name."""
    if isinstance(holder, list):
        holder.append(holder[step])
    else:
        holder[step] = [holder[step], holder[step]]


def shortened(holder: Any, step: Any, dice: random.Random) -> None:
    """Keep the first half of a text or a list; a number is turned round."""
    inner = holder[step]
    if isinstance(inner, str | list):
        holder[step] = inner[: len(inner) // 2]
    elif isinstance(inner, int | float):
        holder[step] = -inner
    else:
        replaced(holder, step, dice)


def like_another(holder: Any, step: Any, dice: random.Random) -> None:
    """Say here what stands beside it."""
    other = dice.choice([*holder] if isinstance(holder, dict) else range(len(holder)))
    holder[step] = holder[other]


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(range(3000), law="hostile packs", usually=8))
def test_a_spoiled_pack_ends_in_verdicts_or_in_a_sentence(seed: int, tmp_path: Path) -> None:
    file = tmp_path / "foreign.json"
    file.write_text(spoiled(seed), "utf-8")
    rider = RIDERS[seed % len(RIDERS)]
    result = CliRunner().invoke(main, ["fit", rider, "--pack", str(file)])
    assert result.exception is None or isinstance(result.exception, SystemExit)
    assert result.exit_code in (0, 1)
    assert "Traceback" not in result.output
    assert result.output.strip()
    assert "[program-failed]" not in result.output or "foreign.json" in result.output


@pytest.mark.parametrize("key", ["format", "rules"])
def test_a_pack_without_a_format_or_rules_is_told_and_the_rider_not_blamed(
    key: str, tmp_path: Path
) -> None:
    whole = json.loads(published("starter"))
    (tmp_path / "pack.json").write_text(json.dumps({**whole, key: whole[key]}), encoding="utf-8")
    arguments = ["fit", "--pack", str(tmp_path / "pack.json"), RIDERS[0]]
    assert "[pack-unreadable]" not in CliRunner().invoke(main, arguments).output
    del whole[key]
    (tmp_path / "pack.json").write_text(json.dumps(whole), encoding="utf-8")
    result = CliRunner().invoke(main, arguments)
    assert result.exit_code == 1
    assert result.output.splitlines()[0].endswith(
        "pack.json does not say of which format it is, or what may be asked of it; give the"
        " pack.json as it was published: something was taken out of this one [pack-unreadable]"
    )
