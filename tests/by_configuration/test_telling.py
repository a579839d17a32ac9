"""What a page tells of other configurations, of items made by hand."""

from dataclasses import replace

from builder.by_configuration.telling import beside_the_usual, configuration_blocks
from builder.document import Caution, Facts, Folded, Heading, Page, Paragraph, Table
from builder.pack import InConfiguration, Item, Section
from tests.by_configuration.test_joining import OTHER, feeds, item

NAMES = "Thrust; In the round"


def told(usual: Item, *other: Item, caution: str = "Ask.") -> list[object]:
    """The blocks about other configurations."""
    elsewhere = (InConfiguration(OTHER, other),)
    section = Section("sound", "Sound", (usual,), cautions=(caution,), elsewhere=elsewhere)
    return list(configuration_blocks(section, "End stage"))


def rows(blocks: list[object]) -> list[list[object]]:
    """The rows of the one table."""
    (table,) = (block for block in blocks if isinstance(block, Table))
    assert table.columns == ("What", "End stage", NAMES)
    return [[cell_text(cell) for cell in row.cells] for row in table.rows]


def cell_text(cell: object) -> str:
    """The words of a cell."""
    if isinstance(cell, str):
        return cell
    if isinstance(cell, list):
        return "".join(cell_text(part) for part in cell)
    return str(getattr(cell, "text", cell))


def test_only_what_differs_is_compared_with_the_caution_above() -> None:
    usual = item("A", m="1 m", kg="5 kg")
    blocks = told(usual, item("A", m="1 m", kg="6 kg"))
    assert isinstance(blocks[0], Heading)
    assert blocks[0].level == 2
    assert isinstance(blocks[1], Paragraph)
    assert blocks[2] == Caution("Ask.")
    assert isinstance(blocks[3], Heading)
    assert (blocks[3].level, blocks[3].text) == (3, NAMES)
    assert rows(blocks) == [["A Load", "5 kg", "6 kg"]]
    assert isinstance(blocks[-1], Folded)
    assert not any(isinstance(block, Facts) for block in blocks)


def test_a_fact_that_differs_is_compared_and_the_thing_described_as_it_is_there() -> None:
    blocks = told(item("A", m="1 m", kg="5 kg"), item("A", m="2 m", kg="5 kg"))
    assert rows(blocks) == [["A Width", "1 m", "2 m"]]
    (facts,) = (block for block in blocks if isinstance(block, Facts))
    assert facts.entries[0].label == "What is there"
    assert [each.anchor for each in facts.entries] == ["", "in-thrust-in-the-round.A.width"]
    assert not any(isinstance(block, Folded) for block in blocks)


def test_a_note_that_differs_is_told_without_a_table() -> None:
    blocks = told(item("A", m="1 m"), item("A", m="1 m", note="Low"))
    assert not any(isinstance(block, Table) for block in blocks)
    assert any(isinstance(block, Facts) for block in blocks)


def test_a_figure_that_only_another_configuration_has_stands_beside_a_dash() -> None:
    assert rows(told(item("A", m="1 m"), item("A", m="1 m", kg="6 kg"))) == [
        ["A Load", "–", "6 kg"]
    ]


def test_a_list_of_names_is_no_row() -> None:
    blocks = told(feeds("A"), replace(feeds("B"), note="x"))
    assert not any(isinstance(block, Table) for block in blocks)


def test_where_nothing_that_is_told_differs_there_is_no_heading_for_it() -> None:
    blocks = told(item("A", m="1 m"), item("A", m="1 m"))
    assert [block.level for block in blocks if isinstance(block, Heading)] == [2]
    assert told(item("A")) == []


def page(key: str) -> Page:
    """A page of no blocks."""
    return Page(key, key, ())


def test_a_page_of_another_configuration_follows_its_own_and_others_stand_last() -> None:
    pages = [page("sound"), page("sound-coverage"), page("power")]
    others = [page("rigging-in-thrust"), page("sound-coverage-in-thrust"), page("sound-in-thrust")]
    assert [each.key for each in beside_the_usual(pages, others)] == [
        "sound",
        "sound-in-thrust",
        "sound-coverage",
        "sound-coverage-in-thrust",
        "power",
        "rigging-in-thrust",
    ]
