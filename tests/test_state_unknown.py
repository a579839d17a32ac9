"""
Of a line whose state nobody knows, nothing is promised that would not hold if it were out, and
nothing is refused that would be there if it worked.
"""

import json
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass

import pytest

from builder.both_ends.states import lines_within
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import Verdict
from builder.pack import Pack
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.nodes import spoken
from builder.reading.reader import read
from tests.knowing_less import wrong_figures, wrong_verdicts
from tests.laws import share
from tests.sweep import DESCRIPTIONS, Path_, at, composed, folder, remembered, riders


@dataclass(frozen=True, slots=True)
class Doubted:
    """A line of a venue, written with a state of its own."""

    venue: str
    file: str
    path: Path_
    state: str = "unknown"
    form: str = "unknown"

    def __str__(self) -> str:
        return f"{self.venue}/{self.file} {spoken(self.path)}"

    @property
    def text(self) -> str:
        """The file's text with the line so written."""
        data = deepcopy(composed(self.venue)[self.file])
        at(data, self.path)["condition"] = self.state
        return json.dumps(data, indent=1, ensure_ascii=False)

    def pack(self) -> Pack:
        """The pack of the venue with the line so written."""
        there = folder(self.venue)
        with remembered(self.venue):
            return pack_of(venue_of({**there.texts, self.file: self.text}, there.photos))


def every_line() -> Iterator[Doubted]:
    """Each line of the demo and the quarry that says nothing of its state."""
    for venue in ("demo", "quarry"):
        for file, data in composed(venue).items():
            text = json.dumps(data, ensure_ascii=False)
            for path, _ in lines_within(read(text, file=file, kind=DESCRIPTIONS[file]), ()):
                held = at(data, path) if path else data
                if isinstance(held, dict) and "condition" not in held and path:
                    yield Doubted(venue, file, path)


LINES = tuple(every_line())
HOUSE = Doubted("demo", "access.yml", ("docks", 0))
NAME = composed("demo")["access.yml"]["docks"][0]["name"]


@pytest.mark.laws
@pytest.mark.parametrize("line", share(LINES, law="state unknown", usually=8), ids=str)
def test_a_state_that_nobody_knows_promises_no_more_and_refuses_nothing(line: Doubted) -> None:
    pack = line.pack()
    assert list(wrong_figures(line, pack)) == []
    assert list(wrong_verdicts(line, pack)) == []


@pytest.mark.laws
@pytest.mark.parametrize("line", share(LINES, law="out or unknown", usually=4), ids=str)
def test_what_is_short_without_a_thing_is_not_promised_with_it_in_doubt(line: Doubted) -> None:
    out = fit_record(Doubted(line.venue, line.file, line.path, "out of service").pack())
    doubted = fit_record(line.pack())
    for rider in riders():
        for gone, asked in zip(
            fit(out, [rider])["verdicts"], fit(doubted, [rider])["verdicts"], strict=True
        ):
            if gone["verdict"] == "short":
                assert asked["verdict"] in ("short", "ask"), (asked["title"], gone["reason"])


def test_a_dock_in_doubt_is_asked_by_its_name_and_its_row_says_so() -> None:
    pack = HOUSE.pack()
    asked = [answer for answer in verdicts_of(pack) if answer["reason"].startswith("Nobody knows")]
    assert asked
    assert all(NAME in answer["question"] and answer["verdict"] == "ask" for answer in asked)
    words = "\n".join(str(page) for page in document_of(pack).pages)
    assert "perhaps out of service" in words


def verdicts_of(pack: Pack) -> list[Verdict]:
    """The verdicts of all riders."""
    return [each for rider in riders() for each in fit(fit_record(pack), [rider])["verdicts"]]
