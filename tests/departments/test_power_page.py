"""The power page: what stands first, which cautions stand where, and what the drawings show."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import chain
from xml.etree import ElementTree as ET

import pytest

from builder.cautions import ELECTRICITY
from builder.departments.power.page import headline, pages
from builder.departments.power.page.one_line import free_words
from builder.departments.power.page.services import free_cell
from builder.document import (
    Block,
    Bullets,
    Caution,
    Folded,
    Heading,
    Page,
    Paragraph,
    Picture,
    Row,
    Table,
    Words,
)
from builder.formulas.circuits import Load, Node
from builder.formulas.free_circuits import FreeAtOnce, Outlet, free_at_once
from builder.pack import (
    Figure,
    Item,
    Outline,
    Pack,
    Revision,
    Section,
    Value,
    Working,
)
from builder.pack_json import to_json
from tests.departments.powered import INTAKE, SWITCH, problems, published

TEXT = (
    "continuous_share: 80 %\n"
    + INTAKE
    + """services:
  - {name: Sound switch, fed_from: Intake, system: 230/400 V three phase, rating: 125 A, connectors: [IEC 60309 125 A 5-pin red],
     place: Right, dedicated_to: sound, feeder: {length: 40 m, conductor: 35 mm2}, tie_in: {who: electrician, notice: 5 days},
     note: Ask for the transformer., at: {across: 9 m SR, depth: 2 m US}}
  - {name: Kitchen, fed_from: Intake, rating: '?', terms: not for visitors, connectors: none}
boards: [{name: Board, fed_from: Sound switch, rating: 63 A}]
outlets: [{place: Left, connector: IEC 60309 16 A 3-pin blue, count: 6, rating: 16 A, phases: in turn, fed_from: Board}]
standing_loads: [{what: Racks, on: Sound switch, draws: 20 A, power_factor: 1}]
"""  # noqa: E501
)
DECK = Outline(
    "stage.deck.deck", "deck", "Deck", ((-8.0, 0.0), (8.0, 0.0), (8.0, 10.0), (-8.0, 10.0))
)


def pack_of(text: str, *others: Section) -> tuple[Section, Pack]:
    """The power section of a text and a pack that holds it."""
    part = published(text)
    return part.section, Pack(
        "House", Revision("1", "2026-06-01", "house", "0"), (part.section, *others), part.findings
    )


def page_of(text: str, *others: Section) -> Page:
    """The page of a text."""
    (page,) = pages(*pack_of(text, *others))
    return page


def every(blocks: Sequence[Block]) -> Iterator[Block]:
    """Blocks and those folded within them."""
    for block in blocks:
        yield block
        if isinstance(block, Folded):
            yield from every(block.blocks)


def plain(words: Words) -> str:
    """Words without their dress."""
    return (
        words
        if isinstance(words, str)
        else "".join(piece if isinstance(piece, str) else piece.text for piece in words)
    )


def table(page: Page, summary: str) -> Table:
    """The table with a summary."""
    return next(
        block
        for block in every(page.blocks)
        if isinstance(block, Table) and block.summary == summary
    )


def row(page: Page, summary: str, name: str) -> list[str]:
    """A row of a table, as plain text."""
    found: Row = next(
        each for each in table(page, summary).rows if plain(each.cells[0]).startswith(name)
    )
    return [plain(cell) for cell in found.cells]


def test_the_caution_stands_before_any_figure_and_the_services_come_first() -> None:
    page = page_of(TEXT)
    assert page.blocks[0] == Caution(ELECTRICITY)
    headings = [block.text for block in page.blocks if isinstance(block, Heading)]
    assert headings[:3] == ["Services", "Outlets at the same time", "The next single-phase loads"]
    assert headings[-1] == "Workings"


def test_a_service_tells_what_is_free_connector_place_and_tie_in() -> None:
    assert row(page_of(TEXT), "Services", "Sound switch") == [
        "Sound switch 125 A, 230/400 V three phase; IEC 60309 125 A 5-pin red; Right",
        "80.0 A",
        "80.0 A",
        "80.0 A",
        "electrician notice 5 days",
        # 100 A less nothing in the neutral over three times the 80 A that are free.
        "itself or its neutral, above 41.7 % third harmonic of an even load",
        "sound",
    ]


def test_unknown_none_and_not_stated_are_three_words_in_the_table() -> None:
    found = row(page_of(TEXT), "Services", "Kitchen")
    assert (
        found[0]
        == "Kitchen not for visitors rating not known yet, system not stated; connectors none;"
        " place not stated"
    )
    assert found[1] == "needs the rating of Kitchen"
    assert found[6] == "not stated"


def test_what_is_free_at_most_says_so_under_the_number() -> None:
    unmeasured = "standing_loads: [{what: Oven, on: Sound switch, draws: '?'}]\n"
    text = TEXT[: TEXT.index("standing_loads")] + unmeasured
    assert row(page_of(text), "Services", "Sound switch")[1] == "100 A at most"


def test_the_next_single_phase_loads_are_told_by_board_in_their_order() -> None:
    # Board: 50.4 A for hours on each phase, sockets of 16 A at 80 % are 12.8 A: three on each phase
    # would hold, and each phase has two sockets.
    assert row(page_of(TEXT), "Where the next single-phase loads go", "Board") == [
        "Board: L1 L2 L3, 2 times 6 × IEC 60309 16 A 3-pin blue, 12.8 A each: Left",
        *("6", "2", "2", "2"),
    ]


def test_notes_of_services_are_told_once_below_the_table() -> None:
    page = page_of(TEXT)
    assert [
        plain(entry)
        for block in page.blocks
        if isinstance(block, Bullets)
        for entry in block.entries
    ] == ["Sound switch: Ask for the transformer."]
    fold = next(
        block
        for block in page.blocks
        if isinstance(block, Folded) and block.title.startswith("Sound switch")
    )
    assert str(fold).count("Ask for the transformer.") == 1


def test_outlets_tell_how_many_are_there_alone_and_all_at_once() -> None:
    assert row(page_of(TEXT), "How many can be loaded fully", "Left") == [
        "Left IEC 60309 16 A 3-pin blue, on Board",
        *("6", "6", "6"),
    ]


def test_every_drawing_carries_the_caution_in_its_caption() -> None:
    drawings = [block for block in every(page_of(TEXT).blocks) if isinstance(block, Picture)]
    assert [drawing.name for drawing in drawings] == ["power-one-line", "power-plan"]
    assert all(ELECTRICITY in drawing.caption for drawing in drawings)


def test_every_fold_of_workings_carries_the_caution() -> None:
    folds = [
        block
        for block in page_of(TEXT).blocks
        if isinstance(block, Folded) and block.title.startswith("Workings:")
    ]
    assert folds
    assert all(Caution(ELECTRICITY) in fold.blocks for fold in folds)


def parsed(svg: str) -> ET.Element:
    """A drawing as a tree."""
    return ET.fromstring(svg)  # noqa: S314


def drawing(text: str, name: str, *others: Section) -> Picture:
    """One drawing of a page."""
    return next(
        block
        for block in every(page_of(text, *others).blocks)
        if isinstance(block, Picture) and block.name == name
    )


def test_the_one_line_fills_each_bar_by_what_stands() -> None:
    """
    20 A of 100 A stand on each phase of the switch: a fifth of the bar is filled; the intake
    carries 20 A of 504 A.
    """
    root = parsed(drawing(TEXT, "power-one-line").svg)
    rects = [
        node for node in root.iter("{http://www.w3.org/2000/svg}rect") if node.get("height") == "12"
    ]
    outlines = [float(node.get("width", "0")) for node in rects if node.get("fill") is None]
    filled = [float(node.get("width", "0")) for node in rects if node.get("fill") == "currentColor"]
    shares = [round(part / whole, 2) for part, whole in zip(filled, outlines, strict=True)]
    assert shares == [0.04] * 3 + [0.2] * 3 + [0.0] * 3


def test_the_one_line_tells_its_numbers_to_those_who_cannot_see_it() -> None:
    alt = drawing(TEXT, "power-one-line").alt
    assert (
        "Sound switch from Intake: 125 A, 100 A for hours, free L1 80.0 A, L2 80.0 A, L3 80.0 A."
        in alt
    )
    assert "Kitchen from Intake: rating not known, free not known." in alt


def test_the_one_line_is_read_on_a_phone_without_zoom() -> None:
    svg = drawing(TEXT, "power-one-line").svg
    match = re.search(r'viewBox="0 0 ([\d.]+) ', svg)
    assert match is not None
    # A phone of 390 px leaves 342 px within the page's and the drawing's margins: letters are shown
    # no smaller than they are drawn.
    assert float(match[1]) <= 342
    assert min(float(size) for size in re.findall(r'font-size="([\d.]+)"', svg)) >= 12


def test_words_on_the_plan_are_twelve_pixels_high_on_a_phone() -> None:
    svg = drawing(TEXT, "power-plan").svg
    match = re.search(r'viewBox="0 0 ([\d.]+) ', svg)
    assert match is not None
    sizes = [float(size) for size in re.findall(r'<text[^>]*font-size="([\d.]+)"', svg)]
    assert min(sizes) * 342 / float(match[1]) >= 11.7


def test_the_plan_lies_over_the_deck_where_the_stage_is_described() -> None:
    stage = Section("stage", "Stage", (), outlines=(DECK,))
    assert "<polygon" not in drawing(TEXT, "power-plan").svg.split("<title>Sound switch")[0]
    assert "<title>Deck</title><polygon" in drawing(TEXT, "power-plan", stage).svg


def test_the_key_of_the_plan_names_what_lies_off_it() -> None:
    rows = [
        [plain(cell) for cell in each.cells]
        for each in table(page_of(TEXT), "Key to the plan").rows
    ]
    assert rows == [
        ["1", "Sound switch 125 A"],
        ["off the plan", "Intake 630 A"],
        ["off the plan", "Kitchen rating not known"],
        ["off the plan", "Outlets, Left 6 × IEC 60309 16 A 3-pin blue"],
    ]


def test_a_name_cannot_become_markup_in_a_drawing() -> None:
    svg = drawing(TEXT.replace("Sound switch", "<script>x</script>"), "power-one-line").svg
    assert "<script>" not in svg
    assert parsed(svg).tag.endswith("svg")


def test_a_service_out_of_service_is_not_offered_on_the_home_page() -> None:
    assert all(
        entry.label != "Power services"
        for entry in headline(*pack_of(TEXT.replace("place: Right", "condition: out of service")))
    )


def test_the_home_page_hears_of_services_for_visitors_and_of_what_is_free() -> None:
    entries = headline(*pack_of(TEXT))
    assert [(entry.label, plain(entry.words)) for entry in entries] == [
        ("Power services", "1, up to 125 A"),
        ("Free power, Intake", "334 kVA"),  # 3 × (504 − 20) A × 230 V
    ]


def test_drops_name_their_base() -> None:
    found = row(
        page_of(TEXT),
        "At the full continuous load of each, nothing else on; in all is from the supply",
        "Sound switch",
    )
    assert found[1].endswith("line to line, at 100 A")
    assert found[0] == "Sound switch 40 m (131'-3\") one way of 35 mm2"


def test_a_page_without_services_still_stands() -> None:
    page = page_of("note: Nothing here.\n")
    assert page.blocks[0] == Caution(ELECTRICITY)


def test_the_same_text_gives_the_same_bytes() -> None:
    assert to_json(pack_of(TEXT)[1]) == to_json(pack_of(TEXT)[1])
    assert page_of(TEXT) == page_of(TEXT)


def test_keys_of_items_facts_and_figures_are_unique() -> None:
    section, _ = pack_of(TEXT + "shore_power: none\n")
    keys = [each.key for item in section.items for each in chain([item], item.facts, item.figures)]
    assert len(keys) == len(set(keys))
    assert all(isinstance(item, Item) for item in section.items)


def test_phases_in_turn_are_for_outlets() -> None:
    assert problems(INTAKE + SWITCH.replace("rating", "phases: in turn, rating")) == [
        "power.yml:2:84 services[1].phases: 'in turn' is for outlets alone; "
        "write all, or the phases it hangs on; only a row of outlets takes turns [phase-unknown]"
    ]


def test_the_one_line_as_a_file_carries_the_caution_too() -> None:
    svg = drawing(TEXT, "power-one-line").svg
    lines = re.findall(
        r'font-size="12" text-anchor="start" fill="currentColor" stroke="none">([^<]+)</text>',
        svg.rsplit("</g>", 1)[1],
    )
    assert " ".join(lines).replace("&#x27;", "'") == ELECTRICITY


def test_a_count_that_is_not_proven_says_what_was_not_ruled_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def unfinished(
        nodes: Sequence[Node], loads: Sequence[Load], outlets: Sequence[Outlet]
    ) -> FreeAtOnce:
        return replace(free_at_once(nodes, loads, outlets), outlets=4, at_most=6, proven=False)

    # The working cites the formula, so the stand-in is cited under its name too.
    unfinished.__module__, unfinished.__qualname__ = (
        free_at_once.__module__,
        free_at_once.__qualname__,
    )
    monkeypatch.setattr("builder.departments.power.outlets.at_once.free_at_once", unfinished)
    said = [plain(block.words) for block in page_of(TEXT).blocks if isinstance(block, Paragraph)]
    assert (
        "All places together: 4 of 6 can be loaded fully, house loads running. "
        "So many were found to hold at once; the search ended before it could rule out 6." in said
    )


@pytest.mark.parametrize(
    ("least", "words"),
    [(45.6, "45.6 A to 50.4 A"), (0.0, "50.4 A at most"), (None, "50.4 A at most")],
)
def test_both_ends_of_what_is_free_stand_in_the_table(least: float | None, words: str) -> None:
    value = Value("in part", unit="A", least=least, most=50.4)
    cell = free_cell(Figure("free.L1", "Free L1", value, Working("", (), ())))
    assert (
        "".join(each if isinstance(each, str) else getattr(each, "text", "") for each in cell)
        == words
    )


def test_the_one_line_counts_on_the_lower_end_of_what_is_free() -> None:
    assert free_words(Value("", least=45.6, most=50.4), 50.4) == ("≥ 45.6 A", 45.6)
    assert free_words(Value("", least=0.0, most=50.4), 50.4) == ("≤ 50.4 A", 50.4)
    assert free_words(Value("", number=50.4), 50.4) == ("50.4 A", 50.4)
