"""
What a reader meets first: the largest relative moves, one a line, the rest counted and never lost.
"""

import pytest

from builder.pack import Revision, Value
from builder.stock.amount import how_far, of_level
from builder.stock.changing import moved_words
from builder.stock.comparison import Comparison
from builder.stock.differences import Difference, Part
from builder.stock.ranking import MOST, figures_in, largest, rows_of
from builder.stock.telling import as_markdown, as_text, knock_ons


def figure(item: str, share: float, label: str = "Free L1", kind: str = "figure") -> Difference:
    """A figure that moved by a share of itself."""
    return Difference(kind, item, label, "1 A", "2 A", "+1 A", "Take care.", f"x.{item}", share)


def comparison(**parts: list[Difference]) -> Comparison:
    """A comparison with these departments."""
    revision = Revision("1", "2026-01-02", "us", "abc")
    found = tuple(
        Part(key, key.capitalize(), tuple(differences)) for key, differences in parts.items()
    )
    return Comparison(("Shed", "Shed"), (revision, revision), found, (), ())


@pytest.mark.parametrize(
    ("before", "after", "share"),
    [
        (Value("70 A", number=70.0, unit="A"), Value("35 A", number=35.0, unit="A"), 0.5),
        (Value("35 A", number=35.0, unit="A"), Value("70 A", number=70.0, unit="A"), 0.5),
        (Value("0 A", number=0.0, unit="A"), Value("3 A", number=3.0, unit="A"), 1.0),
        (Value("0 A", number=0.0, unit="A"), Value("0 A", number=0.0, unit="A"), 0.0),
        (Value("−1 m", number=-1.0, unit="m"), Value("1 m", number=1.0, unit="m"), 1.0),
        (Value("70 A", number=70.0, unit="A"), None, 1.0),
        (None, Value("70 A", number=70.0, unit="A"), 1.0),
        (Value("itself"), None, 0.0),
        (Value("itself"), Value("Intake"), 0.0),
        (Value("1 m", number=1.0, unit="m"), Value("1 kg", number=1.0, unit="kg"), 1.0),
    ],
)
def test_a_move_is_a_share_of_the_larger_of_the_two(
    before: Value | None, after: Value | None, share: float
) -> None:
    assert how_far(before, after) == share


@pytest.mark.parametrize("level_db", [0.5, 100.0])
def test_decibels_count_alike_at_every_level(level_db: float) -> None:
    # By hand: 20 lg 2 = 6.02 dB, so a move of that size is half of the pressure.
    louder = Value("x", number=level_db + 6.0206, unit="dB")
    assert how_far(Value("x", number=level_db, unit="dB"), louder) == pytest.approx(0.5, abs=1e-4)
    assert of_level(0.0) == 0.0


def test_lines_stand_by_their_largest_move_and_tell_how_many_more_moved() -> None:
    moved = [
        figure("Small", 0.1),
        figure("Large", 0.2),
        figure("Large", 0.9, "Free L2"),
        figure("Small", 0.3, "Free L3"),
    ]
    rows = rows_of(comparison(power=moved).parts[0])
    assert [(row.lead.item, row.lead.label, row.more) for row in rows] == [
        ("Large", "Free L2", 1),
        ("Small", "Free L3", 1),
    ]
    assert figures_in(rows) == 4


def test_equal_moves_keep_the_order_of_the_pack() -> None:
    rows = rows_of(comparison(power=[figure("B", 1.0), figure("A", 1.0)]).parts[0])
    assert [row.lead.item for row in rows] == ["B", "A"]


def test_what_is_not_shown_is_counted_and_all_shows_it() -> None:
    many = comparison(
        power=[figure(f"Line {number}", number / 10) for number in range(8)],
        sound=[figure("Floor", 0.1, "Level", "map")],
    )
    short, whole = knock_ons(many), knock_ons(many, every=True)
    assert "9 figures move, the largest moves first:" in short
    assert "    and 3 more; --all shows each\n" in short
    assert [name for name in range(8) if f"Line {name}," in short] == [3, 4, 5, 6, 7]
    assert all(f"Line {number}," in whole for number in range(8))
    assert "more" not in whole
    for told in (short, whole, as_text(many), as_text(many, every=True)):
        assert "Take care." in told
        assert max(len(line) for line in told.splitlines()) < 80
    assert "and 3 more figures" in as_markdown(many)
    assert "Line 0" in as_markdown(many, every=True)


def test_the_log_keeps_the_largest_of_all_departments_and_counts_the_rest() -> None:
    many = comparison(
        power=[figure(f"Line {number}", number / 10) for number in range(8)],
        sound=[figure("Floor", 0.95, "Level")],
    )
    words = moved_words(many)
    assert len(words) == MOST + 1
    assert words[0] == "Floor, level: 1 A → 2 A (+1 A)"
    assert words[-1] == "and 4 more"
    assert [row.lead.item for row in largest(many, 2)] == ["Floor", "Line 7"]
    assert moved_words(comparison(power=[figure("One", 0.5)])) == ["One, free L1: 1 A → 2 A (+1 A)"]


def test_facts_are_told_whole_and_are_no_figures() -> None:
    facts = comparison(sound=[figure(f"Mic {number}", 0.0, "Count", "fact") for number in range(9)])
    assert all(f"  Mic {number}, count" in as_text(facts) for number in range(9))
    assert "Figures" not in as_text(facts)
    assert "No figure moves and no finding appears or vanishes." in knock_ons(facts)


def test_shows_stand_between_findings_and_figures_with_their_cautions_once() -> None:
    told = knock_ons(
        comparison(power=[figure("One", 0.5)]),
        ["Shows on the books: x"],
        ["Take care.", "And look."],
    )
    assert (
        told.index("Shows on the books")
        < told.index("1 figure moves")
        < told.index("Take care.")
        < told.index("And look.")
    )
    assert told.count("Take care.") == 1
