"""
Knowing nearly all stays useful: where one value is only known to 1 %, the figures that it moves are
still told, with two ends that hold what every value in between gives.
"""

import json
import re
from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass, replace

import pytest

from builder.both_ends.inputs import MOST_TOGETHER, Inexact, groups, inexact
from builder.both_ends.joining import left_open, moving, value_between
from builder.both_ends.one_way import (
    BETWEEN_PHASES,
    DROPS,
    OF_ANY_PART,
    ONE_WAY,
    PATTERNS,
    SHARES,
)
from builder.pack import Figure, Value
from builder.pipeline import pack_of, venue_of
from builder.reading.in_part import Between
from tests.knowing_less import (
    Less,
    figures_of,
    is_exact_number,
    pack_with,
    usual_figures,
    usual_pack,
)
from tests.laws import share
from tests.sweep import Path_, at, composed, folder, paths

NUMBER = re.compile(r"^([0-9][0-9,]*(?:\.[0-9]+)?)(?![0-9:,])(.*)$")
WITHIN = (0.9925, 0.995, 0.9975, 1.0, 1.0025, 1.005, 1.0075)
"""Where between its ends a value is tried, as a share of what is written."""
HAIR = 1e-6
BY_PARTS = BETWEEN_PHASES | OF_ANY_PART | DROPS
"""Figures that a value may turn and that know what they are made of, so that they are told."""
NOT_TOLD = BY_PARTS | SHARES | PATTERNS
"""Figures that a value may turn, so that its ends do not hold them: ``one_way.py`` says why."""


@dataclass(frozen=True, slots=True)
class Loosened:
    """A quantity of the demo, and what it is written as."""

    file: str
    path: Path_
    text: str

    def __str__(self) -> str:
        return f"{self.file} {'.'.join(map(str, self.path))} = {self.text}"

    @property
    def turned(self) -> Set[str]:
        """Figures that the value may turn, so that its ends do not hold them."""
        keys = ".".join(step for step in self.path if isinstance(step, str))
        return ONE_WAY[self.file.removesuffix(".yml")][keys]

    def times(self, factor: float) -> str:
        """The same quantity, so many times as much."""
        found = NUMBER.match(self.text)
        assert found is not None
        return f"{float(found[1].replace(',', '')) * factor:.10g}{found[2]}"

    def figures(self, text: str) -> Mapping[str, Figure]:
        """The figures of the demo with another text in its place."""
        return figures_of(pack_with(Less("demo", self.file, self.path, text)))


def every_loosened() -> Iterator[Loosened]:
    """Every quantity that moves figures one way. A count is no more or less by a hundredth."""
    for file, data in composed("demo").items():
        listed = ONE_WAY.get(file.removesuffix(".yml"), {})
        for path in paths(data):
            keys = ".".join(step for step in path if isinstance(step, str))
            if keys in listed and is_exact_number(file, path, at(data, path)):
                case = Loosened(file, path, str(at(data, path)))
                if NUMBER.match(case.text):
                    yield case


def moved(sweep: list[Mapping[str, Figure]]) -> dict[str, list[Value]]:
    """The values of each figure that another value moves, where all of them tell it."""
    found = {}
    for key, usual in usual_figures("demo").items():
        values = [figures[key].value for figures in sweep if key in figures]
        told = [value for value in (usual.value, *values) if value and value.far_end is not None]
        if len(told) == len(sweep) + 1 and len({value.far_end for value in told}) > 1:
            found[key] = told
    return found


def wrong(key: str, now: Figure | None, swept: list[Value]) -> str:
    """What is wrong with the ends of a figure; empty where nothing is."""
    if now is None or now.value is None:
        return f"{key} is not told"
    wrong_ends = [
        f"{key}: {now.value.ends} beside {extreme}"
        for end, ends, choose in zip(
            now.value.ends,
            zip(*(value.ends for value in swept), strict=True),
            (min, max),
            strict=True,
        )
        if None not in ends
        for extreme in [choose(each for each in ends if each is not None)]
        if end is None or abs(end - extreme) > HAIR * max(1.0, abs(extreme))
    ]
    return "; ".join(wrong_ends)


@pytest.mark.laws
@pytest.mark.parametrize(
    "case", share(every_loosened(), law="knowing nearly all stays useful", usually=2), ids=str
)
def test_a_value_known_to_a_hundredth_still_tells_what_it_moves(case: Loosened) -> None:
    sweep = [case.figures(case.times(factor)) for factor in (0.99, *WITHIN, 1.01)]
    now = case.figures(f"{case.times(0.99)} to {case.times(1.01)}")
    faults = [
        fault
        for key, values in moved(sweep).items()
        if (fault := fault_of(case, key, now.get(key), values))
    ]
    assert faults == []


def fault_of(case: Loosened, key: str, now: Figure | None, swept: list[Value]) -> str:
    """What is wrong with a figure that a value moves; one that it turns holds what it gives."""
    parts = key.split(".")
    if NOT_TOLD.isdisjoint(parts):
        return wrong(key, now, swept)
    is_exact = all(value.number is not None for value in swept)
    is_told = is_exact and not (BY_PARTS & case.turned).isdisjoint(parts)
    return outside(key, now, swept) if is_told else ""


def outside(key: str, now: Figure | None, swept: list[Value]) -> str:
    """What of some exact values a figure does not hold between its ends; empty where it holds."""
    if now is None or now.value is None or None in now.value.ends:
        return f"{key} is not told at both ends"
    least, most = now.value.ends
    numbers = [value.number for value in swept if value.number is not None]
    hair = HAIR * max(1.0, *map(abs, numbers))
    is_held = least is not None and least <= min(numbers) + hair
    is_held = is_held and most is not None and most >= max(numbers) - hair
    return "" if is_held else f"{key}: {now.value.ends} beside {min(numbers)} to {max(numbers)}"


def written(line: int) -> Inexact:
    """A value known in part, on a line of a list."""
    return Inexact("power", ("outlets", line, "rating"), Between("30 to 34 A", 30, 34))


def test_values_of_many_lines_are_put_at_their_ends_line_by_line() -> None:
    few = [written(line) for line in range(MOST_TOGETHER)]
    assert groups([]) == []
    assert groups(few) == [tuple(few)]
    assert groups([*few, written(9)]) == [(each,) for each in (*few, written(9))]


def test_a_value_without_two_ends_or_that_may_turn_a_figure_is_not_put_at_ends() -> None:
    there = folder("demo")
    for form, count in (("about 40 min", 1), ("at least 40 min", 0), ("unknown", 0)):
        text = Less("demo", "access.yml", ("docks", 0, "truck_takes"), form).text
        venue = venue_of({**there.texts, "access.yml": text}, there.photos)
        assert len(list(inexact(venue.descriptions))) == count
    text = Less("demo", "stage.yml", ("decks", 0, "usable_width"), "about 14 m").text
    venue = venue_of({**there.texts, "stage.yml": text}, there.photos)
    assert list(inexact(venue.descriptions)) == []


@pytest.mark.parametrize(("form", "count"), [("up to {}", 1), ("at least {}", 0), ("unknown", 0)])
def test_a_load_has_nothing_as_its_lower_end_where_only_the_upper_is_known(
    form: str, count: int
) -> None:
    there = folder("demo")
    load = Less("demo", "power.yml", ("standing_loads", 0, "draws"), form)
    venue = venue_of({**there.texts, "power.yml": load.text}, there.photos)
    assert len(list(inexact(venue.descriptions))) == count


@pytest.mark.parametrize("form", ["about {}", "up to {}"])
def test_a_load_that_counts_at_both_ends_is_nowhere_told_to_be_left_out(form: str) -> None:
    pack = pack_with(Less("demo", "power.yml", ("standing_loads", 0, "draws"), form))
    before, now = usual_figures("demo"), figures_of(pack)
    assert set(now) == set(before)
    changed = {key for key in now if now[key].note != before[key].note}
    beside_others = "power.supply.intake."  # the demo does not know what its kitchen draws
    assert all(key.startswith(beside_others) for key in changed)
    counts = [
        [f.code for f in each.findings].count("load-left-out")
        for each in (pack, usual_pack("demo"))
    ]
    assert counts[0] == counts[1]


def test_a_power_factor_known_in_part_is_not_told_to_leave_a_load_out() -> None:
    load = Less("demo", "power.yml", ("standing_loads", 0, "power_factor"), "about {}")
    counts = [
        [each.code for each in pack.findings].count("load-left-out")
        for pack in (pack_with(load), usual_pack("demo"))
    ]
    assert counts[0] == counts[1]


def test_what_is_told_to_move_a_figure_is_what_moves_it() -> None:
    group = (written(0), written(1))
    figure = usual_figures("demo")["access.dock.rope-street-dock.unload_1"]
    ends = [replace(figure, value=Value(text)) for text in ("3", "4", "3", "4")]
    assert moving(ends, group) == (written(1),)
    assert moving([figure] * 4, group) == group
    assert left_open([replace(figure, missing=("the share",))] * 4, group).missing == ("the share",)


def test_a_load_known_in_part_without_a_power_factor_is_told_to_be_left_out() -> None:
    load = Less("demo", "power.yml", ("standing_loads", 0, "draws"), "up to {}")
    data = json.loads(load.text)
    data["standing_loads"][0]["power_factor"] = "unknown"
    there = folder("demo")
    pack = pack_of(venue_of({**there.texts, "power.yml": json.dumps(data)}, there.photos))
    counts = [
        [f.code for f in each.findings].count("load-left-out")
        for each in (pack, usual_pack("demo"))
    ]
    assert counts[0] == counts[1] + 1


def test_ends_in_words_hold_whatever_the_corners_say() -> None:
    exact = [Value("3 m", number=3.0, unit="m"), Value("4 m", number=4.0, unit="m")]
    assert value_between(exact) == Value("3 m to 4 m", unit="m", least=3.0, most=4.0)
    at_most = [Value("at most 3", most=3.0, least=1.0), Value("at most 4", most=4.0, least=2.0)]
    assert value_between(at_most) == Value("at most 4", most=4.0, least=1.0)
    at_least = [Value("at least 4", least=4.0), Value("at least 3", least=3.0)]
    assert value_between(at_least) == Value("at least 3", least=3.0)
    assert value_between([Value("L1"), Value("L2")]) is None


def test_a_mix_position_known_in_part_keeps_the_maps_and_says_for_which_width() -> None:
    pack = pack_with(Less("demo", "sound.yml", ("mix_position", "width"), "4.7 to 4.9 m"))
    sound = next(section for section in pack.sections if section.key == "sound")
    words = "The maps are for the middle of what is known: mix position width, 4.7 to 4.9 m."
    assert sound.fields
    assert words in sound.cautions


def test_the_law_of_ends_can_fail() -> None:
    swept = [Value("3", number=3.0), Value("4", number=4.0)]
    figure = usual_figures("demo")["access.dock.rope-street-dock.unload_1"]
    narrow = replace(figure, value=Value("3 to 3.5", least=3.0, most=3.5))
    wide = replace(figure, value=Value("3 to 9", least=3.0, most=9.0))
    right = replace(figure, value=Value("3 to 4", least=3.0, most=4.0))
    assert wrong("a", None, swept)
    assert wrong("a", narrow, swept)
    assert wrong("a", wide, swept)
    assert not wrong("a", right, swept)
    assert outside("a", None, swept)
    assert outside("a", narrow, swept)
    assert not outside("a", wide, swept)
