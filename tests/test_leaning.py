"""
What was only remembered is told wherever it counts: in the figures that are made of it, and in
every verdict that leans on it.

A verdict leans on a value where it turns from a fit when that value is made worse. The line that
holds the value is then marked as remembered, and no such verdict may be a plain fit.
"""

import json
import re
from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any

import pytest

from builder.files import Folder
from builder.fit.bearers import as_sure_as_bearers
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack, Verdict
from builder.leaning import with_checks
from builder.pack import (
    Check,
    Fact,
    Figure,
    Item,
    Section,
    Standing,
    Value,
    Verified,
    Working,
    sureness,
)
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.reading.reader import model_at
from builder.reading.written import Line
from builder.stating import Ageing
from tests.laws import share
from tests.sweep import (
    DESCRIPTIONS,
    Case,
    Path_,
    at,
    composed,
    folder,
    remembered,
    riders,
    text_of,
    venue_cases,
)

MEMORY = {"on": "2026-01-01", "by": "crew", "how": "memory"}
NOT_YET = {
    ("altitude",): "what a generator gives does not tell the check of the house's height yet",
    ("lines", "kind"): "free fibres do not tell the checks of all lines that are added up yet",
}
"""Keys for which the law of memory does not hold yet, and why."""
NOTE = "From memory, neither measured nor read from a drawing: "
HOW = re.compile(r'"how": "(?:measured|drawing|nameplate|maker\'s sheet|memory)"')
WORSE = ("zero", "huge", "unknown", "left out")
GOOD = ("fits", "fits, with a note")
ABOUT_THE_LINE = {"verified", "confirmed", "photo", "note"}
AGEING = Ageing(date(2026, 6, 1), 365)

Key = tuple[str, int, str, str]


def verdicts_on(record: FitPack) -> dict[Key, Verdict]:
    """The verdicts on every need of every show, each show by itself."""
    return {
        (answer["act"], answer["line"], answer["title"], answer["need"]): answer
        for rider in riders()
        for answer in fit(record, [rider])["verdicts"]
    }


def record_of(texts: Mapping[str, str], there: Folder) -> FitPack:
    """What the check reads of a venue."""
    return fit_record(pack_of(venue_of(texts, there.photos)))


def changed_verdicts(venue: str, file: str, text: str) -> dict[Key, Verdict]:
    """The verdicts where one file of a venue has another text."""
    there = folder(venue)
    with remembered(venue):
        return verdicts_on(record_of({**there.texts, file: text}, there))


@cache
def usual(venue: str) -> dict[Key, Verdict]:
    """The verdicts on the venue as it stands."""
    there = folder(venue)
    return verdicts_on(record_of(there.texts, there))


def worsened() -> Iterator[Case]:
    """Every value of the demo and the quarry, made worse."""
    for case in venue_cases():
        is_worse = case.change in WORSE and not ABOUT_THE_LINE.intersection(case.path)
        if is_worse and case.venue != "starter":
            yield case


def line_of(case: Case) -> Path_:
    """The innermost line that a case is in; the top of the file where it is in none."""
    data, kind = composed(case.venue)[case.file], DESCRIPTIONS[case.file]
    for length in range(len(case.path) - 1, 0, -1):
        path = case.path[:length]
        model: Any = model_at(kind, tuple(step for step in path if isinstance(step, str)))
        if isinstance(at(data, path), dict) and model is not None and issubclass(model, Line):
            return path
    return ()


def marked(case: Case) -> str:
    """The text of the case's file, unchanged but for that its line is from memory."""
    data = deepcopy(composed(case.venue)[case.file])
    at(data, line_of(case))["verified"] = MEMORY
    return json.dumps(data, indent=1, ensure_ascii=False)


@pytest.mark.laws
@pytest.mark.parametrize("case", share(worsened(), law="memory", usually=6), ids=str)
def test_no_verdict_that_leans_on_a_remembered_line_is_a_plain_fit(case: Case) -> None:
    if why := NOT_YET.get(tuple(step for step in case.path if isinstance(step, str))):
        pytest.xfail(why)
    try:
        worse = changed_verdicts(
            case.venue, case.file, text_of(case, composed(case.venue)[case.file])
        )
    except Refused:
        return
    leaning = [
        key
        for key, answer in usual(case.venue).items()
        if answer["verdict"] in GOOD and key in worse and worse[key]["verdict"] not in GOOD
    ]
    if not leaning:
        return
    from_memory = changed_verdicts(case.venue, case.file, marked(case))
    assert not [key for key in leaning if is_plain(from_memory[key])]


def is_plain(answer: Verdict) -> bool:
    """Whether a fit tells of nothing that was only remembered."""
    told = [*answer["notes"], *(note for part in answer["parts"] for note in part["notes"])]
    return answer["verdict"] in GOOD and not any(note.startswith(NOTE) for note in told)


@pytest.mark.parametrize("venue", ["demo", "quarry"])
@pytest.mark.parametrize(
    "file", ["stage.yml", "access.yml", "rigging.yml", "power.yml", "sound.yml"]
)
def test_a_whole_file_from_memory_leaves_no_plain_fit_that_needs_it(venue: str, file: str) -> None:
    there = folder(venue)
    text, count = HOW.subn('"how": "memory"', there.texts[file])
    assert count > 0
    record = record_of({**there.texts, file: text}, there)
    key = file.removesuffix(".yml")
    others = [section for section in record["sections"] if section["key"] != key]
    without = verdicts_on({**record, "sections": others})
    told = verdicts_on(record)
    needing = [name for name in told if name in without and without[name]["verdict"] not in GOOD]
    # The quarry's roof is hired and may come worse than told, so nothing on it fits for certain.
    if (venue, file) != ("quarry", "rigging.yml"):
        assert any(told[name]["verdict"] in GOOD for name in needing)
    assert not [name for name in needing if is_plain(told[name])]


def test_the_least_sure_check_is_memory_then_none_then_the_oldest() -> None:
    old, new = Check("2024-01-01", "crew", "measured"), Check("2026-01-01", "crew", "measured")
    nobody, memory = Check("", "", ""), Check("2026-05-01", "crew", "memory")
    assert sorted((new, old, nobody, memory), key=sureness) == [memory, nobody, old, new]


SECTION = Section("x", "X", (), verified=Verified("2026-05-01", "crew", "measured", 31))


def checked_as(check: Check | None, own: Verified | None = None) -> Verified | None:
    """How sure a figure is that is made of a line with a check, on an item with its own."""
    fact = Fact("x.a.b", "B", Standing.STATED, verified=own)
    figure = Figure("x.a.c", "C", None, Working("", (), (), check=check))
    item = Item("x.a", "a", "A", (fact,), (figure,))
    section = Section("x", "X", (item,), verified=SECTION.verified)
    return with_checks(section, AGEING).items[0].figures[0].verified


def test_a_figure_of_nothing_else_is_as_sure_as_its_section() -> None:
    assert checked_as(None) is None


def test_a_figure_is_as_sure_as_its_own_line() -> None:
    own = Verified("2026-04-01", "rigger", "memory", 61)
    assert checked_as(None, own) == own


def test_a_figure_made_of_a_remembered_line_is_remembered() -> None:
    found = checked_as(Check("2026-03-01", "rigger", "memory"))
    assert found == Verified("2026-03-01", "rigger", "memory", 92)


def test_a_figure_made_of_an_old_line_is_old() -> None:
    found = checked_as(Check("2024-03-01", "rigger", "measured"))
    assert found is not None
    assert found.stale


def test_a_figure_made_of_what_nobody_checked_says_so() -> None:
    assert checked_as(Check("", "", "")) == Verified("", "", "", 0)


def test_a_line_within_a_line_is_as_sure_as_that() -> None:
    there = folder("demo")
    data = deepcopy(composed("demo")["rigging.yml"])
    data["hangs"][0]["verified"] = MEMORY
    texts = {**there.texts, "rigging.yml": json.dumps(data, ensure_ascii=False)}
    section = pack_of(venue_of(texts, there.photos)).section("rigging")
    assert section is not None
    support = next(item for item in section.items if item.kind == "support")
    assert support.facts[0].verified is not None
    assert support.facts[0].verified.how == "memory"
    point = section.item("point", support.name)
    assert point is not None
    carried = point.figure("carried")
    assert carried is not None
    assert carried.verified is not None
    assert carried.verified.how == "memory"


def borne_by(how: str) -> Section:
    """A dock that trucks come to by a lane, which was checked in some way."""
    told = Verified("2026-05-01", "crew", "measured", 31)
    lane = Fact("x.lane.width", "Width", Standing.STATED, verified=replace(told, how=how))
    facts = tuple(
        Fact(f"x.dock.{name}", name, Standing.STATED, Value(text), verified=told)
        for name, text in (("approach", "The lane"), ("trucks", "2"))
    )
    items = (Item("x.lane", "approach", "The lane", (lane,)), Item("x.dock", "dock", "Dock", facts))
    return Section("access", "Access", items, verified=told)


@pytest.mark.parametrize("how", ["memory", "measured"])
def test_what_is_borne_by_something_remembered_is_no_surer_than_that(how: str) -> None:
    dock = as_sure_as_bearers(borne_by(how)).items[1]
    assert {fact.verified.how for fact in dock.facts if fact.verified} == {how}
