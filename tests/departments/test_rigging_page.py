"""How rigging reads: what stands first, what drawings say, what is left open."""

import re
from collections.abc import Sequence
from html import unescape

import pytest

from builder.cautions import LOADS
from builder.departments.rigging.page import pages
from builder.departments.rigging.page.summary import headline
from builder.document import Block, Caution, Facts, Folded, Picture, Table
from builder.exchange import HungLoad
from builder.pack import Pack, Revision
from tests.departments.rigged import BEAM, LIMITS, figure, hang, item, number, points, published

DEMO = (
    LIMITS
    + "hoists: [{name: Hollin 500, count: 3, rating: 500 kg, weight: 30 kg, headroom: 500 mm}]\n"
    + BEAM
    + points(0, 10, 20)
)
SHOWN = DEMO + hang(
    1, 2, 3, loads="{what: Lights, by: lighting, weight: 1600 kg}", hoist="Hollin 500"
)
TRUSS_LINE = "Truss – P2 over the limit: 1,600 kg on P1 300 kg, P2 1,000 kg, P3 300 kg"
WIND = (
    "wind: [{name: alert, at: 10 m/s, do: Crew to posts.}, {name: lower, at: 20 m/s, do: Hangs"
    " down.}]\nwind_areas: [{name: Back cloth, area: 20 m2, coefficient: 1.2}]\n"
)


def pack_of(text: str, *loads: HungLoad) -> Pack:
    """A pack that holds rigging alone."""
    made = published(text, *loads)
    return Pack(
        "The Layhouse",
        Revision("1", "2026-06-01", "technical manager", "0"),
        (made.section,),
        made.findings,
    )


def drawings_of(blocks: Sequence[Block]) -> list[Picture]:
    """All drawings of a page, those in folds too."""
    inner = [block.blocks if isinstance(block, Folded) else (block,) for block in blocks]
    return [block for part in inner for block in part if isinstance(block, Picture)]


def page(text: str) -> list[Block]:
    """The blocks of the page."""
    pack = pack_of(text)
    (only,) = pages(pack.sections[0], pack)
    return list(only.blocks)


def test_the_caution_and_the_dangers_stand_before_any_figure() -> None:
    blocks = page(SHOWN)
    first_facts = next(index for index, block in enumerate(blocks) if isinstance(block, Facts))
    cautions = [block for block in blocks[:first_facts] if isinstance(block, Caution)]
    assert [block.tone for block in cautions] == ["caution", "danger", "danger"]
    assert "P2 carries 1,030 kg of 1,000 kg" in str(cautions[1].words)


def test_the_first_answers_are_the_roof_what_is_left_and_low_steel() -> None:
    facts = next(block for block in page(SHOWN) if isinstance(block, Facts))
    assert [entry.label for entry in facts.entries][:5] == [
        "Whole roof",
        "In use",
        "Left on the roof",
        "Points full at once",
        "Low steel",
    ]


def test_the_plan_says_who_is_over_and_every_drawing_carries_the_caution() -> None:
    drawings = drawings_of(page(SHOWN))
    assert len(drawings) == 3
    assert drawings[0].alt.startswith(
        "2 points. Over its limit: P2 carries 1,030 kg of 1,000 kg, -630 kg to -30 kg left."
    )
    assert all("Planning figures." in drawing.caption for drawing in drawings)


def test_the_side_view_tells_shares_and_loads() -> None:
    drawings = drawings_of(page(SHOWN))
    assert "P2 at 10.00 m carries 1,000 kg" in drawings[2].alt
    assert "Lights, 1,600.0 kg from 0 to 20.00 m" in drawings[2].alt


def test_a_name_that_is_markup_stays_text_in_the_drawings() -> None:
    text = (
        SHOWN.replace("name: P1", "name: '<b>P1'")
        .replace("point: P1", "point: '<b>P1'")
        .replace("name: Truss", "name: '<script>'")
    )
    drawings = [block.svg for block in drawings_of(page(text))]
    assert all("<b>" not in svg and "<script>" not in svg for svg in drawings)
    assert any("&lt;b&gt;P1" in svg for svg in drawings)


def test_the_point_table_can_be_sorted_by_what_is_left() -> None:
    (table,) = [block for block in page(SHOWN) if isinstance(block, Table) and block.sortable]
    assert [row.order[1] for row in table.rows] == [670.0, -30.0, 670.0]


def test_every_hang_has_its_working_with_the_numbers() -> None:
    folds = [block for block in page(SHOWN) if isinstance(block, Folded)]
    assert [fold.title for fold in folds] == [
        "Low steel along each beam",
        TRUSS_LINE,
        "Workings: Whole roof",
        "Workings: Truss",
    ]
    share = figure(SHOWN, "support", "P2", "share").working
    assert any("300.0 + 1000.0 + 300.0 = 1600.0 kg" in step for step in share.steps)
    assert any("533.3 kg each" in step for step in share.steps)


def test_a_house_that_has_said_nothing_yet_has_a_page_that_says_so() -> None:
    text = "limits: {whole_roof: ?}\n"
    assert [entry.label for entry in headline(pack_of(text).sections[0], pack_of(text))] == ["Roof"]
    assert "not known yet" in repr(page(text))
    assert "not stated" in repr(page(text))
    assert drawings_of(page(text)) == []


@pytest.mark.source(
    "EN 1991-1-4:2005, 4.5 (1), by hand: 0.5 x 1.25 x 10^2 = 62.5 Pa, x 1.2 x 20 m2 = 1500 N; at 20"
    " m/s four times that"
)
def test_the_wind_push_at_each_step_is_half_rho_v_squared_c_a() -> None:
    assert number(LIMITS + WIND, "wind-area", "Back cloth", "alert") == 1500.0
    assert number(LIMITS + WIND, "wind-area", "Back cloth", "lower") == 6000.0


def test_wind_carries_its_own_caution_and_no_step_is_invented() -> None:
    assert all(
        "set the wind limits" in each.caution or "sets the wind limits" in each.caution
        for each in item(LIMITS + WIND, "wind-area").figures
    )
    assert len(item(LIMITS + WIND, "wind-area").figures) == 2
    assert item(LIMITS + WIND[WIND.index("wind_areas") :], "wind-area").figures == ()


def test_every_drawing_carries_the_caution_as_a_file_too() -> None:
    drawings = [block.svg for block in drawings_of(page(SHOWN))]
    spoken = [
        " ".join(unescape(part) for part in re.findall(r">([^<]+)</text>", svg)) for svg in drawings
    ]
    assert len(spoken) == 3
    assert all(LOADS in words for words in spoken)


def test_the_home_page_hears_of_low_steel_over_the_first_zone_the_roof_and_the_points() -> None:
    text = SHOWN + "zones: [{name: Stage zone, beams: [B1], limit: 5 t}]\n"
    pack = pack_of(text)
    entries = headline(pack.sections[0], pack)
    assert [entry.label for entry in entries] == ["Low steel, Stage zone", "Roof", "Points"]
    assert "Planning figures." in str(entries[1].small)
    # By hand: the beam has 3000 - 1690 = 1310 kg left, and each free end takes 670 kg to be full:
    # one goes, two would need 1340 kg.
    assert entries[2].small == "1 of them can be full at once"


@pytest.mark.parametrize(("last_m", "count"), [(10, 1), (12, 2), (30, 3)])
def test_a_wide_stage_is_drawn_in_parts_that_show_every_point(last_m: int, count: int) -> None:
    drawings = drawings_of(page(LIMITS + BEAM + points(*range(0, last_m + 1, 2))))
    assert len(drawings) == count
    assert all(
        any(f">P{n}<" in drawing.svg for drawing in drawings) for n in range(1, last_m // 2 + 2)
    )


def test_names_and_loads_are_twelve_pixels_high_on_a_narrow_phone() -> None:
    for drawing in drawings_of(page(SHOWN)):
        width = float(re.search(r'viewBox="0 0 (\S+)', drawing.svg).group(1))  # type: ignore[union-attr]  # a drawing without a size fails here
        sizes = [
            float(size)
            for size, words in re.findall(
                r'font-size="([\d.]+)"[^>]*>(P\d|[−\d,]+(?: kg)?)<', drawing.svg
            )
            if words != "0"
        ]
        assert sizes
        assert min(sizes) * 340 / width >= 11.7


def test_what_is_nothing_in_one_system_is_nothing_in_the_other() -> None:
    slack = DEMO + hang(1, 2, 3, loads="{what: A, by: video, weight: 100 kg, at: 0.1 m}")
    texts = repr(published(slack).section)
    assert "0.00 lb" not in texts
    assert "-0 kg" not in texts


def test_a_part_of_a_plan_is_cut_at_its_edge_on_a_wide_screen_too() -> None:
    plans = [
        drawing.svg
        for drawing in drawings_of(page(SHOWN))
        if drawing.name.startswith("rigging-plan")
    ]
    assert len(plans) == 2
    for svg in plans:
        (cut,) = re.findall(r'<clipPath id="(\S+)">', svg)
        assert f'clip-path="url(#{cut})"' in svg
