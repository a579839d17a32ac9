"""Stock of which nobody knows how many there are, or what kind, is kept, asked and sorted out."""

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from builder.cli import main
from builder.departments.stage.description import Stage
from builder.departments.stage.publish import publish
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.departments.test_flying import AROUND
from tests.sweep import VENUES, folder

WEDGES = "monitors: [{name: Wedge, COUNT}]\n"
STOCK = "stock: [{name: Vocal, COUNT}, {name: Drum, kind: microphone, count: 4}]\n"


def house(written: str) -> FitPack:
    """The starting house with some stock."""
    there = folder("starter")
    text = f"verified: {{on: 2026-02-10, by: us, how: measured}}\n{written}"
    return fit_record(pack_of(venue_of({**there.texts, "sound.yml": text}, there.photos)))


def verdict(written: str, need: str) -> str:
    """The verdict on one need."""
    rider = rider_of(f"act: A\nneeds: [{{{need}}}]\n", file="a.yml", rules=RULES)
    (answer,) = fit(house(written), [rider])["verdicts"]
    return answer["verdict"]


@pytest.mark.parametrize(
    ("count", "answer"),
    [
        ("kind: wedge, count: 8", "fits"),
        ("kind: wedge, count: 8 to 12", "fits"),
        ("kind: wedge, count: 6 to 12", "ask"),
        ("kind: wedge, count: unknown", "ask"),
        ("kind: wedge", "ask"),
        ("kind: unknown, count: 8", "ask"),
        ("kind: wedge, count: 2 to 4", "short"),
        ("kind: side fill, count: 8", "ask"),
    ],
)
def test_wedges_are_promised_only_as_far_as_their_count_is_known(count: str, answer: str) -> None:
    assert verdict(WEDGES.replace("COUNT", count), "what: wedges, at least: 8") == answer


@pytest.mark.parametrize(
    ("count", "answer"),
    [
        ("kind: microphone, count: 2", "fits"),
        ("kind: microphone, count: unknown", "ask"),
        ("kind: unknown, count: 2", "ask"),
        ("kind: stand, count: 2", "short"),
    ],
)
def test_a_sum_counts_what_is_known(count: str, answer: str) -> None:
    written = STOCK.replace("COUNT", count)
    assert verdict(written, "what: microphones, at least: 6") == answer
    assert verdict(written, "what: microphones, at least: 4") == "fits"


def test_more_that_work_than_there_can_be_is_a_problem() -> None:
    with pytest.raises(Refused, match="has 9 working of 8"):
        house(WEDGES.replace("COUNT", "kind: wedge, count: 6 to 8, working: 9"))


@pytest.mark.parametrize(
    ("size", "ends"),
    [
        ("count: 2, width: 2 m, depth: 1 m", (4.0, 4.0)),
        ("count: 2 to 3, width: 2 m, depth: 1 m", (4.0, 6.0)),
        ("count: 2, width: at least 2 m, depth: 1 m", (4.0, None)),
        ("count: unknown, width: 2 m, depth: 1 m", (None, None)),
    ],
)
def test_risers_make_up_what_their_count_and_size_leave(
    size: str, ends: tuple[float | None, float | None]
) -> None:
    text = (VENUES["starter"] / "stage.yml").read_text("utf-8")
    data = f"{text.split('risers:')[0].rstrip()}\nrisers: [{{name: Riser, {size}}}]\n"
    item = publish(read(data, file="stage.yml", kind=Stage), AROUND).section.of_kind("riser")[-1]
    area = item.figure("area")
    assert area is not None
    assert (area.value.ends if area.value else (None, None)) == ends
    assert bool(area.missing) == (ends == (None, None))


def test_the_counting_sheet_and_the_orders_take_what_is_not_counted_yet(tmp_path: Path) -> None:
    venue = tmp_path / "venue"
    shutil.copytree(VENUES["starter"], venue)
    (venue / "rider.yaml").unlink()
    (venue / "sound.yml").write_text(
        "monitors: [{name: Wedge, kind: wedge, count: 6 to 8}, {name: Fill, count: unknown}]\n",
        encoding="utf-8",
    )

    def run(*words: str) -> str:
        return CliRunner().invoke(main, ["stock", *words, "--venue", str(venue)]).output

    who = ("--by", "us", "--why", "counted", "--yes")
    assert "Wedge,6 to 8," in run("sheet")
    assert "count-not-known" in run("out", "Wedge", "--count", "1", *who)
    run("count", "Fill", "4", *who)
    assert "count: 4" in (venue / "sound.yml").read_text("utf-8")
