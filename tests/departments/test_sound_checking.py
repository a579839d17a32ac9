"""How far the maps can be trusted is measured and told."""

from builder.departments.sound.page import pages
from builder.departments.sound.page.coverage import deck_words
from builder.document import Table
from builder.pack import Outline, Pack, Revision, Section
from tests.departments.sounding import FILL, HANGS, ROOM, SUBS, item, published

TEXT = ROOM + HANGS + SUBS % ", arc: 60 deg" + FILL % ""


def packed(*decks: str) -> Pack:
    """A pack with sound and decks."""
    square = ((-4.0, 0.0), (4.0, 0.0), (4.0, 6.0), (-4.0, 6.0))
    stage = Section(
        "stage",
        "Stage",
        (),
        outlines=tuple(Outline(f"stage.{deck}", "deck", deck, square) for deck in decks),
    )
    return Pack(
        "Room", Revision("1", "2026-06-01", "us", "0"), (published(TEXT).section, stage), ()
    )


def test_the_fast_sum_is_within_a_tenth_of_a_decibel_and_is_not_the_direct_one() -> None:
    error_db = item(TEXT, "check").number("fast")
    assert error_db is not None
    assert 0 < error_db < 0.1


def test_patterns_once_a_band_cost_more_than_the_fast_sum() -> None:
    check = item(TEXT, "check")
    fast, patterns = check.number("fast"), check.number("patterns")
    assert fast is not None
    assert patterns is not None
    assert fast < patterns < 3.0


def test_the_lines_of_the_bands_are_counted() -> None:
    # 25 to 50 Hz: 3 lines each; 63 to 125 Hz: 5; 160 to 400 Hz: 9; 500 Hz to 20 kHz: 17. 4 x 3 + 4
    # x 5 + 5 x 9 + 17 x 17 = 366, by hand.
    assert item(TEXT, "check").number("lines") == 366


def test_without_a_map_nothing_is_checked_and_what_it_lacks_is_named() -> None:
    check = item(ROOM + HANGS.replace("[2 deg, 4 deg]", "?"), "check")
    assert [(each.key, each.value, each.missing) for each in check.figures] == [
        ("sound.check.fast", None, ("the splay of Left",))
    ]
    assert published(ROOM).section.item("check") is None


def test_the_page_names_the_deck_of_the_maps_and_those_without_one() -> None:
    assert deck_words(packed(), ()) == ""
    assert deck_words(packed("End stage"), ()).endswith("with the deck End stage.")
    assert "there is no map for it" in deck_words(packed("End stage", "Thrust"), ())
    assert "Thrust" in deck_words(packed("End stage", "Thrust"), ())


def test_the_page_says_what_is_left_out_and_where_no_source_was_found() -> None:
    pack = packed("End stage")
    coverage = pages(pack.sections[0], pack)[1]
    (table,) = [
        block
        for block in coverage.blocks
        if isinstance(block, Table) and "Left out" in block.columns
    ]
    assert "no source found" in str(table.rows)
    assert "ISO 9613-1:1993" in str(table.rows)


def test_an_area_tells_its_working_in_full_once() -> None:
    area = item(TEXT, "area")
    full = [figure for figure in area.figures if len(figure.working.inputs) > 1]
    assert [figure.key for figure in full] == [f"{area.key}.mean"]
    assert all(
        figure.working.inputs[0].key == f"{area.key}.mean"
        for figure in area.figures
        if figure not in full
    )
