"""The list of sources, and what it says of places that nobody looked up."""

from dataclasses import replace
from pathlib import Path

import pytest

from builder.document import Paragraph
from builder.files import read_folder
from builder.overview.workings import MARK, MARKED, blocks, sources
from builder.pack import Pack, Reference
from builder.pipeline import pack_of, venue_of

DEMO = Path(__file__).parent.parent / "venue"


@pytest.fixture(scope="module")
def pack() -> Pack:
    """The demo venue's pack, cut down to one figure with two references."""
    folder = read_folder(DEMO)
    whole = pack_of(venue_of(folder.texts, folder.photos))
    section = next(
        section for section in whole.sections if any(item.figures for item in section.items)
    )
    item = next(item for item in section.items if item.figures)
    read, unread = (
        Reference("Book one", "ch. 2, a rule", "A title"),
        Reference("Book two", "ch. 3, a rule, from memory", ""),
    )
    figure = replace(
        item.figures[0], working=replace(item.figures[0].working, references=(read, unread))
    )
    return replace(
        whole, sections=(replace(section, items=(replace(item, figures=(figure,)),), fields=()),)
    )


def test_a_source_whose_place_is_from_memory_is_marked(pack: Pack) -> None:
    assert sources(pack) == ["Book one. A title", f"Book two{MARK}ch. 3, a rule)"]


def test_the_mark_is_explained_where_it_occurs(pack: Pack) -> None:
    assert Paragraph(MARKED) in list(blocks(pack))
