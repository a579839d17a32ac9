"""The whole way from text to document, on the demo venue."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from builder.files import read_folder
from builder.pack import Level, Pack, Standing
from builder.pack_json import from_json, to_json
from builder.pipeline import document_of, pack_of, venue_of

DEMO = Path(__file__).parent.parent / "venue"


@pytest.fixture(scope="module")
def pack() -> Pack:
    """The demo venue's pack."""
    folder = read_folder(DEMO)
    return pack_of(venue_of(folder.texts, folder.photos))


def test_a_pack_turns_into_json_and_back_without_loss(pack: Pack) -> None:
    assert from_json(to_json(pack)) == pack


def test_a_pack_is_the_same_bytes_in_another_process_with_other_hashing(pack: Pack) -> None:
    code = (
        "import sys; from pathlib import Path; from builder.files import read_folder; from"
        " builder.pack_json import to_json; from builder.pipeline import pack_of, venue_of; found ="
        " read_folder(Path(sys.argv[1]));sys.stdout.write(to_json(pack_of(venue_of(found.texts,"
        " found.photos))))"
    )
    environment = {**os.environ, "PYTHONHASHSEED": "4711"}
    found = subprocess.run(
        [sys.executable, "-c", code, str(DEMO)], capture_output=True, check=True, env=environment
    )
    assert found.stdout.decode() == to_json(pack)


def test_no_path_of_the_machine_is_in_a_pack(pack: Pack) -> None:
    assert str(DEMO.parent) not in to_json(pack)


def test_unknown_none_and_not_stated_stay_three_things(pack: Pack) -> None:
    standings = {fact.standing for item in pack.items() for fact in item.facts}
    assert {Standing.STATED, Standing.UNKNOWN, Standing.NONE} <= standings


def test_keys_of_items_facts_and_figures_are_unique(pack: Pack) -> None:
    keys = [entry.key for item in pack.items() for entry in (item, *item.facts, *item.figures)]
    assert len(keys) == len(set(keys))


def test_every_figure_has_a_source_and_its_inputs(pack: Pack) -> None:
    figures = [figure for item in pack.items() for figure in item.figures]
    assert figures
    bare = [
        figure.key
        for figure in figures
        if not (figure.working.references and figure.working.equation and figure.working.inputs)
    ]
    assert bare == []


def test_a_figure_without_a_value_says_what_is_missing(pack: Pack) -> None:
    absent = [figure for item in pack.items() for figure in item.figures if figure.value is None]
    assert all(figure.missing for figure in absent)


def test_figures_that_can_hurt_carry_their_caution(pack: Pack) -> None:
    hurting = [
        figure
        for section in pack.sections
        if section.key in ("rigging", "power")
        for item in section.items
        for figure in item.figures
    ]
    assert hurting
    assert [figure.key for figure in hurting if "Planning figures." not in figure.caution] == []


def test_findings_stand_in_order_of_weight(pack: Pack) -> None:
    levels = [list(Level).index(finding.level) for finding in pack.findings]
    assert levels == sorted(levels)


def test_the_word_that_promises_too_much_stands_nowhere(pack: Pack) -> None:
    assert " safe" not in to_json(pack).lower()


def test_the_document_begins_with_the_home_page_and_holds_every_department(pack: Pack) -> None:
    pages = [page.key for page in document_of(pack).pages]
    assert pages[0] == "index"
    assert {
        "house",
        "access",
        "stage",
        "rigging",
        "sound",
        "power",
        "findings",
        "workings",
        "glossary",
    } <= set(pages)
