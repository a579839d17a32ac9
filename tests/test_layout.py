"""How a check that is old or only remembered stands beside values: at each, or once for many."""

from builder.document import Entry, Small
from builder.layout import checked_words, facts_block, figures_block, item_table
from builder.pack import Fact, Figure, Item, Standing, Value, Verified, Working

REMEMBERED = Verified(on="2026-03-02", by="bar manager", how="memory", age_days=90)
MEASURED = Verified(on="2026-03-02", by="bar manager", how="measured", age_days=90)
OLD = Verified(on="2019-03-02", by="rigger", how="measured", age_days=2600, stale=True)
WORDS = "Checked on 2026-03-02 by bar manager, from memory, 3 months before this revision"


def fact(name: str, verified: Verified | None) -> Fact:
    """A fact of a dock."""
    key = f"access.dock.1.{name}"
    return Fact(key, name.title(), Standing.STATED, Value("3 m"), verified=verified)


def dock(*facts: Fact, name: str = "Rope Street", verified: Verified | None = None) -> Item:
    """A dock with facts, and its line's own check."""
    return Item(key=f"access.dock.{name}", kind="dock", name=name, facts=facts, verified=verified)


def lines(entries: list[Entry]) -> list[tuple[str, str]]:
    """The labels of entries, each with its small print."""
    return [(entry.label, str(entry.small)) for entry in entries]


def test_a_check_that_a_list_shares_stands_once_below_it() -> None:
    facts = [fact(name, REMEMBERED) for name in ("width", "height", "length")]
    *told, shared = facts_block(dock(*facts)).entries
    assert lines(told) == [("Width", ""), ("Height", ""), ("Length", "")]
    assert shared.label == "Check"
    assert "from memory" in str(shared.words)
    assert shared.small == ""


def test_a_check_that_some_of_a_list_share_names_those() -> None:
    facts = [fact(name, REMEMBERED) for name in ("width", "height", "length")]
    *told, shared = facts_block(dock(*facts, fact("slope", MEASURED))).entries
    assert [entry.label for entry in told] == ["Width", "Height", "Length", "Slope"]
    assert shared.small == "for width, height, length"


def test_a_check_that_two_share_stands_at_each() -> None:
    facts = (fact("width", REMEMBERED), fact("height", REMEMBERED), fact("slope", MEASURED))
    assert lines(list(facts_block(dock(*facts)).entries)) == [
        ("Width", WORDS),
        ("Height", WORDS),
        ("Slope", ""),
    ]


def test_two_checks_of_a_list_are_told_apart() -> None:
    names = ("width", "height", "length", "slope", "load", "bays")
    facts = [fact(name, OLD if index % 2 else REMEMBERED) for index, name in enumerate(names)]
    *_, first, second = facts_block(dock(*facts)).entries
    assert (first.small, second.small) == ("for width, length, load", "for height, slope, bays")
    assert "old check" in str(second.words)
    assert "old check" not in str(first.words)


def test_a_line_with_a_check_of_its_own_tells_that_one() -> None:
    facts = [fact(name, REMEMBERED) for name in ("width", "height", "length")]
    checks = [
        entry for entry in facts_block(dock(*facts, verified=OLD)).entries if entry.label == "Check"
    ]
    assert len(checks) == 1
    assert "rigger" in str(checks[0].words)


def test_figures_that_share_a_check_tell_it_once() -> None:
    figures = [
        Figure(
            f"stage.deck.area-{n}", f"Area {n}", Value("9 m²"), Working("A", (), ()), verified=OLD
        )
        for n in range(3)
    ]
    *told, shared = figures_block(figures).entries
    assert [entry.small for entry in told] == ["", "", ""]
    assert shared.label == "Check"


def test_rows_that_share_a_check_tell_it_over_the_table() -> None:
    docks = [dock(name=name, verified=REMEMBERED) for name in "ABC"]
    table = item_table(docks, ("width",), summary="Docks")
    assert table.summary == f"Docks. {WORDS}."
    assert [row.cells[0] for row in table.rows] == [["A"], ["B"], ["C"]]


def test_rows_of_which_some_share_a_check_name_those() -> None:
    docks = [dock(name=name, verified=REMEMBERED) for name in "ABC"]
    other = dock(name="D", verified=OLD)
    table = item_table([*docks, other], ("width",), summary="Docks")
    assert table.summary == f"Docks. A, B, C: {WORDS[0].lower()}{WORDS[1:]}."
    assert table.rows[3].cells[0] == ["D", Small(f"{checked_words(OLD)}.")]


def test_rows_of_which_two_share_a_check_tell_it_at_each() -> None:
    docks = [dock(name=name, verified=REMEMBERED) for name in "AB"]
    table = item_table(docks, ("width",), summary="Docks")
    assert table.summary == "Docks"
    assert [row.cells[0] for row in table.rows] == [[name, Small(f"{WORDS}.")] for name in "AB"]
