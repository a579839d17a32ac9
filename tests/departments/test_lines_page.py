"""
The page on lines: what a reader finds at a place, the drawing, absence, and the home page's
answers.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest

from builder.departments.lines import LINES
from builder.departments.lines.drawing import lines_plan, stroke_svg
from builder.departments.lines.naming import named, points_of, rows_of
from builder.departments.lines.strokes import Stroke, apart, bent
from builder.document import Block, Document, Folded, Heading, Link, Page, Picture, Table, Words
from builder.files import read_folder
from builder.pack import Figure, Item, Pack, Section, Value, Working, not_less, not_more
from builder.pipeline import pack_of, venue_of
from builder.render.markdown import render

ROOT = Path(__file__).parent.parent.parent


@pytest.fixture(scope="module")
def pack() -> Pack:
    """The demo's pack."""
    folder = read_folder(ROOT / "venue")
    return pack_of(venue_of(folder.texts, folder.photos))


@pytest.fixture
def section(pack: Pack) -> Section:
    """Its section of lines."""
    found = pack.section("lines")
    assert found is not None
    return found


@pytest.fixture
def page(section: Section, pack: Pack) -> Page:
    """Its page."""
    (found,) = LINES.pages(section, pack)
    return found


def plain(words: Words) -> str:
    """Words without their looks."""
    return (
        words
        if isinstance(words, str)
        else "".join(
            piece if isinstance(piece, str) else getattr(piece, "text", "") for piece in words
        )
    )


def below(page: Page, heading: str) -> Iterator[Block]:
    """The blocks under a heading, up to the next."""
    inside = False
    for block in page.blocks:
        if isinstance(block, Heading):
            inside = block.text == heading
        elif inside:
            yield block


def table(page: Page, heading: str) -> list[list[str]]:
    """The first table under a heading, as text."""
    found = next(block for block in below(page, heading) if isinstance(block, Table))
    return [[plain(cell) for cell in row.cells] for row in found.rows]


def test_a_tech_at_the_mix_position_finds_all_that_ends_there(page: Page, section: Section) -> None:
    rows = table(page, "Mix position")
    there = [
        line.name
        for line in section.of_kind("line")
        if "Mix position" in (line.text("from.place"), line.text("to.place"))
    ]
    assert len(rows) == len(there) > 5
    assert [
        "Analogue send panel F1; XLR male; analogue",
        "23 23 work of 24; dead: number 17",
        "Monitor position M1",
        "62 m203'-5\"",
    ] in rows


def test_the_other_end_shows_its_own_panel_and_connector(page: Page) -> None:
    assert [
        "Analogue send panel M1; XLR female; analogue",
        "23 23 work of 24; dead: number 17",
        "Mix position F1",
        "62 m203'-5\"",
    ] in table(page, "Monitor position")


def test_each_pair_of_places_has_the_number_of_its_stroke(page: Page, section: Section) -> None:
    rows = table(page, "From place to place")
    assert [row[0] for row in rows] == [
        f"{number} {pair.name}" for number, pair in enumerate(section.of_kind("pair"), 1)
    ]
    picture = next(block for block in page.blocks if isinstance(block, Picture))
    assert all(f">{number}</text>" in picture.svg for number in range(1, len(rows) + 1))
    assert (
        "1: Monitor position – Mix position, free: Analogue 35, Copper data 6, Fibre 4."
        in picture.alt
    )


def test_what_nobody_knows_yet_is_not_called_not_stated(page: Page) -> None:
    (row,) = [
        row
        for row in table(page, "From place to place")
        if row[0].endswith("Upstage left – Stage left")
    ]
    assert row[1:] == ["not known yet copper data", "not known yet copper data"]
    (there,) = [row for row in table(page, "Upstage left") if row[0].startswith("Data upstage")]
    assert there[1] == "not known yet 4 ways, working not known yet"


def test_the_hand_over_is_in_order(page: Page) -> None:
    rows = table(page, "Who is heard when")
    assert [row[0] for row in rows[:2]] == ["1 House console", "2 Opener's console"]
    assert rows[1][3] == "the switcher alone, input 1 to 3"


def test_every_anchor_on_the_page_is_there_once(page: Page, section: Section) -> None:
    def rows(blocks: object) -> Iterator[str]:
        for block in blocks:  # type: ignore[attr-defined]  # blocks hold blocks
            if isinstance(block, Table):
                yield from (row.anchor for row in block.rows if row.anchor)
            elif isinstance(block, Folded):
                yield from rows(block.blocks)

    anchors = list(rows(page.blocks))
    assert len(anchors) == len(set(anchors))
    assert {f"line.{line.key.split('.')[-1]}" for line in section.of_kind("line")} <= set(anchors)


def test_the_home_page_tells_what_is_free_from_stage_to_mix_and_the_internet(
    section: Section, pack: Pack
) -> None:
    first, second = LINES.headline(section, pack)
    assert first.label == "Free lines, stage to mix"
    assert plain(first.words) == "31 analogue, 4 analogue back, 6 copper data, 4 fibre, 3 coax"
    assert plain(second.words) == "500 Mbit/s down, 200 Mbit/s up"


def test_no_lines_at_all_is_said_as_none_and_as_not_known() -> None:
    texts = {
        name: text
        for name, text in read_folder(ROOT / "tests" / "venues" / "quarry").texts.items()
        if name in ("house.yml", "stage.yml")
    }
    for written, said in (("none", "none"), ("unknown", "not known yet")):
        made = pack_of(venue_of({**texts, "lines.yml": f"lines: {written}\n"}))
        section = made.section("lines")
        assert section is not None
        (page,) = LINES.pages(section, made)
        assert lines_plan(section, made) is None
        assert said in str(render(Document("Quarry", (page,))))


def test_a_hostile_name_stays_text() -> None:
    folder = read_folder(ROOT / "venue")
    texts = {
        name: text.replace("Amplifier room", "<b onload=x>") for name, text in folder.texts.items()
    }
    made = pack_of(venue_of(texts, folder.photos))
    section = made.section("lines")
    assert section is not None
    drawn = lines_plan(section, made)
    assert drawn is not None
    assert "<b " not in drawn[0]
    assert "&lt;b" in drawn[0]


def test_a_stroke_bends_round_a_spot_in_its_way() -> None:
    straight = bent((0, 0), (200, 0), [(100, 80)], [])
    assert straight.at(0.5) == (100, 0)
    round_it = bent((0, 0), (200, 0), [(100, 0)], [])
    assert min(apart(point, (100, 0)) for point in round_it.middle_part) > 10


def test_a_name_stands_where_no_stroke_runs() -> None:
    spots = {"Mix position": (100.0, 100.0)}
    up = bent((100, 100), (100, 0), [], [])
    found = named(spots, [up], width=300)["Mix position"]
    assert rows_of("Mix position") == ("Mix", "position")
    assert (
        min(apart(point, up.at(share / 20)) for point in points_of(found) for share in range(21))
        > 8
    )


def test_links_to_the_sound_system_stand_only_where_it_is_described(page: Page) -> None:
    reaches = (
        next(block for block in below(page, "Drive plan") if isinstance(block, Table))
        .rows[0]
        .cells[-1]
    )
    assert isinstance(reaches[0], Link)


@pytest.mark.parametrize(
    ("free", "is_whole"),
    [
        (Value("2", number=2), True),
        (Value("0", number=0), False),
        (not_less(Value("2", number=2)), True),
        (not_more(Value("2", number=2)), False),
    ],
)
def test_a_stroke_is_whole_where_some_way_is_known_to_be_free(free: Value, is_whole: bool) -> None:
    pair = Item("p", "pair", "p", figures=(Figure("p.a.free", "free", free, Working("", (), ())),))
    drawn = str(stroke_svg(pair, Stroke((0.0, 0.0), (1.0, 1.0), (2.0, 0.0))))
    assert ("dasharray" not in drawn) == is_whole
