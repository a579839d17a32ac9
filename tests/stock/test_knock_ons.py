"""What an order does to the demo's figures, told before anything is written."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from builder.files import read_folder
from builder.stock.changing import Asked, Stockroom, changed, stockroom_of
from builder.stock.comparison import Comparison
from builder.stock.lines import found
from builder.stock.order import Order, written_line
from builder.stock.orders import count
from builder.stock.service import out
from builder.stock.telling import knock_ons

DEMO = Path(__file__).parent.parent.parent / "venue"


@pytest.fixture(scope="module")
def room() -> Stockroom:
    """The demo's stock."""
    folder = read_folder(DEMO)
    return stockroom_of(folder.texts, folder.photos)


def moved(room: Stockroom, order: Callable[[Stockroom], Order]) -> Comparison:
    """What an order changes."""
    return changed(
        room, [order(room)], Asked("head of sound", "To see.", date(2026, 10, 12))
    ).comparison


def departments(comparison: Comparison) -> set[str]:
    """The departments whose figures move."""
    return {part.key for part, _ in comparison.moved}


def flat(comparison: Comparison) -> str:
    """The knock-ons, however their lines are broken."""
    return " ".join(knock_ons(comparison).split())


def test_one_sub_out_of_the_line_moves_the_arc_the_level_and_the_maps(room: Stockroom) -> None:
    line = found(room.lines, "Floor subs")
    comparison = moved(room, lambda room: out(line, written_line(line, room.texts), unit=3))
    labels = {difference.label for _, difference in comparison.moved}
    assert any(label.startswith("Covers to −6 dB") for label in labels)
    assert "Level over the area" in labels
    assert departments(comparison) == {"sound"}
    assert "The local noise law and the house's meter decide." in flat(comparison)


def test_a_hang_one_box_shorter_moves_the_points_that_carry_it_and_the_level_at_the_mix(
    room: Stockroom,
) -> None:
    line = found(room.lines, "Main left", "sound.hangs")
    angles = written_line(line, room.texts)["splay"][:-1]
    comparison = moved(
        room,
        lambda room: count(
            line, written_line(line, room.texts), 8, also={"splay": f"[{', '.join(angles)}]"}
        ),
    )
    assert departments(comparison) == {"rigging", "sound"}
    by = {
        (part.key, difference.item, difference.label): difference.by
        for part, difference in comparison.moved
    }
    assert by["sound", "Main left", "Weight of boxes and frame"] == "−31 kg"
    assert by["rigging", "Whole roof", "Carried"] == "−31 kg"
    assert "A competent rigger decides on site" in flat(comparison)


def test_a_service_out_moves_what_is_free_and_how_many_outlets_work(room: Stockroom) -> None:
    line = found(room.lines, "SR sound switch")
    comparison = moved(room, lambda room: out(line, written_line(line, room.texts)))
    assert departments(comparison) == {"power"}
    assert ("All outlets", "Outlets at the same time") in {
        (difference.item, difference.label) for _, difference in comparison.moved
    }
    assert "Only licensed electricians connect" in flat(comparison)
