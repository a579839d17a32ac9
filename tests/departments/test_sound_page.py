"""
Sound's drawings and pages: they read the pack, say it in words too, and are the same bytes every
time.
"""

import re
from collections.abc import Iterator, Sequence
from itertools import combinations
from math import dist

import pytest

from builder.departments.sound.drawing.areas import pattern_pictures, pictures
from builder.departments.sound.drawing.maps import INKS, Panel, Sheet, Spot, map_svg
from builder.departments.sound.drawing.places import area_fields, storeys
from builder.departments.sound.drawing.plan import subs_picture
from builder.departments.sound.drawing.section import section_picture
from builder.departments.sound.page import headline, pages
from builder.document import Block, Caution, Folded, Heading, Picture
from builder.pack import Pack, Revision, Section
from builder.pack_json import from_json, to_json
from tests.departments.sounding import FILL, FLOOR, HANGS, MIXING, MODELS, ROOM, SUBS, published

WHOLE = (
    ROOM
    + HANGS
    + SUBS % ", arc: 60 deg, out_of_service: [7]"
    + FILL % ", follows: [Left], aligned_at: 2 m"
)
ABOVE = (
    FLOOR.replace("audience:\n", "")
    .replace("name: Floor", "name: Balcony")
    .replace("1 m down", "3 m up")
    .replace("2 m DS", "8 m DS")
)


def packed(text: str) -> Pack:
    """A pack with nothing but sound."""
    section = published(text).section
    return Pack("Room", Revision("1", "2026-06-01", "us", "0"), (section,), ())


@pytest.fixture(scope="module")
def pack() -> Pack:
    """A whole small system, gone through JSON as a visitor would get it."""
    return from_json(to_json(packed(WHOLE)))


@pytest.fixture(scope="module")
def section(pack: Pack) -> Section:
    """Its sound."""
    return pack.sections[0]


def every(blocks: Sequence[Block]) -> Iterator[Block]:
    """Blocks and what is folded within them."""
    for block in blocks:
        yield block
        if isinstance(block, Folded):
            yield from every(block.blocks)


def test_a_map_is_the_same_bytes_when_drawn_again(section: Section, pack: Pack) -> None:
    first = [picture.svg for picture in pictures(section, pack)]
    map_svg.cache_clear()
    assert [picture.svg for picture in pictures(section, pack)] == first


def test_the_dark_map_differs_from_the_light_one_in_ink_alone(section: Section, pack: Pack) -> None:
    for picture in pictures(section, pack):
        assert picture.svg != picture.dark
        assert picture.svg.replace(INKS["light"], "") == picture.dark.replace(
            INKS["dark"], ""
        ).replace(INKS["light"], "")


def test_a_map_carries_no_date_and_no_long_numbers(section: Section, pack: Pack) -> None:
    for picture in pictures(section, pack):
        assert "dc:date" not in picture.svg
        assert not re.search(r' d="[^"]*\d\.\d\d', picture.svg)
        assert len(picture.svg) < 60_000


def test_a_map_says_its_numbers_in_words(section: Section, pack: Pack) -> None:
    area = section.item("area", "Floor")
    assert area is not None
    for picture in pictures(section, pack):
        assert area.text("mean") in picture.alt
        assert area.text("within_3") in picture.alt


def test_a_balcony_above_the_floor_has_a_map_of_its_own() -> None:
    fields = storeys(published(ROOM + ABOVE + HANGS).section)
    assert [[field.name for field in storey] for storey in fields] == [["Floor"], ["Balcony"]]


def test_areas_side_by_side_share_a_map() -> None:
    beside = FLOOR + ABOVE.replace("depth: 14 m DS", "depth: 20 m DS").replace(
        "depth: 8 m DS", "depth: 14 m DS"
    )
    assert len(storeys(published(MODELS + MIXING + beside + HANGS).section)) == 1


def test_a_sheet_without_maps_is_refused() -> None:
    with pytest.raises(ValueError, match=r"sheet\.panels must hold at least one map, got none"):
        map_svg(Sheet((), (), ()))


def test_a_band_that_was_not_computed_is_refused(section: Section) -> None:
    with pytest.raises(ValueError, match="band must be one of"):
        map_svg(Sheet((Panel("x", "11 Hz", area_fields(section)),), section.outlines, ()))


def test_the_section_shows_where_the_first_and_last_box_look(section: Section, pack: Pack) -> None:
    picture = section_picture(section, pack)
    hang = section.item("hang")
    assert picture is not None
    assert hang is not None
    assert hang.text("first_aim") in picture.alt
    assert hang.text("last_aim") in picture.alt


def test_the_sub_drawing_tells_every_delay_and_which_sub_is_out(section: Section) -> None:
    picture = subs_picture(section)
    assert picture is not None
    assert picture.alt.count(" ms") == 8
    assert "7: " in picture.alt
    assert picture.alt.count("(out)") == 1


def test_the_pattern_of_the_subs_compares_delays_with_none_and_with_two_stacks(
    section: Section, pack: Pack
) -> None:
    picture, *pairs = pattern_pictures(section, pack)
    assert [each.caption.split(":")[0] for each in pairs] == [
        "Subs, end-fire pairs",
        "Subs, gradient pairs",
    ]
    for words in ("40 Hz", "63 Hz, no delays", "63 Hz, two stacks"):
        assert words in picture.alt


def test_two_stacks_cancel_where_a_bent_line_does_not(section: Section) -> None:
    field, *_ = [field for field in section.fields if field.key.startswith("sound.pattern.")]
    bent, stacks = (
        field.levels[field.bands.index(band)] for band in ("63 Hz", "63 Hz, two stacks")
    )
    ahead = [index for index, (_, y, _) in enumerate(field.points) if y < -6]
    assert min(stacks[index] for index in ahead) < min(bent[index] for index in ahead)


def test_every_page_with_levels_carries_the_caution_on_noise(section: Section, pack: Pack) -> None:
    system, coverage, _ = pages(section, pack)
    for page in (system, coverage):
        cautions = [block.words for block in every(page.blocks) if isinstance(block, Caution)]
        assert any("hearing" in str(words) for words in cautions)


def test_weights_on_the_page_carry_the_caution_on_loads(section: Section, pack: Pack) -> None:
    system = pages(section, pack)[0]
    assert any(
        isinstance(block, Caution) and "rigger" in str(block.words)
        for block in every(system.blocks)
    )


def test_without_a_map_the_coverage_page_says_so_and_shows_none() -> None:
    without = packed(ROOM + HANGS.replace("[2 deg, 4 deg]", "?"))
    coverage = pages(without.sections[0], without)[1]
    assert not [block for block in every(coverage.blocks) if isinstance(block, Picture)]
    assert "There are no maps" in str(coverage.blocks)


def test_the_home_page_is_told_the_mix_position(section: Section, pack: Pack) -> None:
    assert [entry.label for entry in headline(section, pack)] == ["Mix position"]
    told = packed(WHOLE + "policy: {use: may be used}\n")
    assert [entry.label for entry in headline(told.sections[0], told)] == [
        "House sound system",
        "Mix position",
    ]


def test_a_name_on_a_map_can_only_be_words(section: Section) -> None:
    name = '$\\frac$ <script>alert(1)</script> & "'
    drawn, _ = map_svg(
        Sheet((Panel(name, "A", area_fields(section)),), section.outlines, (Spot(name, 0.0, -5.0),))
    )
    assert "<script" not in drawn
    assert "$\\frac$" in drawn


def test_numbers_on_a_map_keep_clear_of_each_other(section: Section) -> None:
    drawn, _ = map_svg(Sheet((Panel("", "63 Hz", area_fields(section)),), section.outlines, ()))
    chips = [
        (float(x), float(y))
        for x, y in re.findall(r'<text x="([\d.]+)" y="([\d.]+)"[^>]*>[−+]?\d+</text>', drawn)
    ]
    on_the_scale = 9
    assert len(chips) > on_the_scale
    assert all(dist(one, other) > 20 for one, other in combinations(chips, 2))


def test_a_system_without_fills_compares_no_maps_with_and_without_them() -> None:
    without = packed(ROOM + HANGS)
    headings = [
        block.text
        for block in pages(without.sections[0], without)[1].blocks
        if isinstance(block, Heading)
    ]
    assert "Octave by octave" in headings
    assert "With and without fills" not in headings
