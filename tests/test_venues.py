"""
Three venues are read, computed and built: the demo, a stage in a quarry, and what ``housepack new``
writes.
"""

from pathlib import Path

import pytest

from builder.files import read_folder
from builder.pack import Level, Pack
from builder.pipeline import pack_of, venue_of
from builder.registry import DEPARTMENTS
from builder.site import build as building
from builder.site.build import build
from builder.site.guides import guides_folder
from builder.starter import write_starter

ROOT = Path(__file__).parent.parent
QUARRY = ROOT / "tests" / "venues" / "quarry"


@pytest.fixture
def starter(tmp_path: Path) -> Path:
    """The venue that ``housepack new`` writes."""
    write_starter(tmp_path / "myvenue")
    return tmp_path / "myvenue"


def pack(venue: Path) -> Pack:
    """A venue's pack."""
    folder = read_folder(venue)
    return pack_of(venue_of(folder.texts, folder.photos))


def test_the_starting_venue_has_every_department_and_nothing_to_mend(starter: Path) -> None:
    made = pack(starter)
    assert {section.key for section in made.sections} == {
        department.key for department in DEPARTMENTS
    }
    told = {finding.code for finding in made.findings if finding.level is not Level.NOTE}
    assert told == {"starting-venue"}


def test_the_quarry_has_every_department_in_feet_first() -> None:
    made = pack(QUARRY)
    assert {section.key for section in made.sections} == {
        department.key for department in DEPARTMENTS
    }
    stage = made.section("stage")
    deck = stage.item("deck") if stage else None
    assert deck is not None
    assert deck.text("area") == "1,280 sq ft"


def test_the_demo_shows_its_one_danger_and_what_is_old() -> None:
    made = pack(ROOT / "venue")
    assert [finding.code for finding in made.findings if finding.level is Level.DANGER] == [
        "limit-passed"
    ]
    assert [finding.code for finding in made.findings if finding.level is Level.CAUTION] == [
        "stale"
    ]


def test_each_venue_becomes_a_site(
    starter: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        building, "guides_folder", guides_folder
    )  # the project's own guides, whatever other tests stand in their place
    for venue in (starter, QUARRY):
        site = tmp_path / f"site-of-{venue.name}"
        build(venue, site)
        assert {f"{department.key}.html" for department in DEPARTMENTS} <= {
            page.name for page in site.glob("*.html")
        }
