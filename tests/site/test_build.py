"""Building: whole or not at all, the same bytes every time, nothing lost by a slip."""

import os
import re
from datetime import date
from pathlib import Path

import pytest
from mkdocs.config import load_config

from builder.document import Document, Page, Paragraph
from builder.reading.problems import Problem, Refused, Where
from builder.site import build as building
from builder.site.build import build, build_document, serving_configuration
from builder.site.guides import guide_navigation, guides_folder
from builder.site.imprint import imprint_of
from builder.site.replacing import SiteFailed
from builder.site.swap import swap_in
from tests.site.sample import VENUE, document

PROBLEM = Problem(
    Where("power.yml", 14, 12),
    "services[1].rating",
    "400",
    "needs a unit, such as '400 A'",
    "unit-missing",
)


def contents(site: Path) -> dict[str, bytes]:
    return {
        str(path.relative_to(site)): path.read_bytes()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


def refusing(_: Path) -> Document:
    raise Refused([PROBLEM])


def test_two_builds_are_the_same_bytes(built: Path, tmp_path: Path) -> None:
    build_document(document(), tmp_path / "site")
    assert contents(tmp_path / "site") == contents(built)


def test_a_relative_folder_counts_from_where_the_author_stands(
    built: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    beside_the_package = {path.name for path in Path(building.__file__).parent.iterdir()}
    build_document(document(), Path("site"))
    assert contents(tmp_path / "site") == contents(built)
    assert {path.name for path in Path(building.__file__).parent.iterdir()} == beside_the_package


def test_a_site_without_its_first_page_is_never_swapped_in(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    build_document(document(), tmp_path / "site")
    before = contents(tmp_path / "site")
    monkeypatch.setattr(building, "generate", lambda *_: None)
    with pytest.raises(
        SiteFailed, match=r"wrote no index\.html and no .*The old site is untouched"
    ):
        build_document(document(), tmp_path / "site")
    assert contents(tmp_path / "site") == before


def test_no_page_names_this_machine_or_today(built: Path) -> None:
    for name, content in contents(built).items():
        if name.endswith((".html", ".json", ".xml")):
            assert str(built.parent).encode() not in content, name
            assert date.today().isoformat().encode() not in content, name  # noqa: DTZ011


def test_every_page_says_house_revision_and_that_figures_are_planning_figures(built: Path) -> None:
    for page in built.glob("*.html"):
        text = page.read_text("utf-8")
        assert VENUE in text
        assert "revision 7" in text
        assert "2026-11-02" in text
        assert "planning figures" in text


def test_every_page_forbids_scripts_and_sources_from_elsewhere(built: Path) -> None:
    for page in built.glob("*.html"):
        text = page.read_text("utf-8")
        policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]+)"', text)
        assert policy
        assert "default-src 'none'; script-src 'self'; style-src 'self';" in policy[1]
        assert not re.search(r"<script(?![^>]*(src=|application/json))", text)
        assert not re.search(r'(src|href)="(https?:)?//', text)


def test_the_theme_brings_no_file_that_no_page_asks_for(built: Path) -> None:
    assert not [
        name
        for name in contents(built)
        if "javascripts" in name
        or "stylesheets" in name
        or name.endswith(".map")
        or "partials" in name
    ]


def test_a_refused_description_leaves_the_old_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site = tmp_path / "site"
    build_document(document(), site)
    before = contents(site)
    monkeypatch.setattr(building, "published", refusing)
    with pytest.raises(Refused):
        build(tmp_path, site)
    assert contents(site) == before
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_a_failure_in_the_generator_leaves_the_old_site_and_no_rest(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site = tmp_path / "site"
    build_document(document(), site)
    before = contents(site)
    guides = tmp_path / "guides"
    guides.mkdir()
    (guides / "guide.md").write_text("# A guide\n\n[gone](nowhere.md)\n", "utf-8")
    monkeypatch.setattr(building, "guides_folder", lambda: guides)
    with pytest.raises(SiteFailed, match=r"guide\.md' contains a link 'nowhere\.md'"):
        build_document(document(), site)
    assert contents(site) == before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["guides", "site"]


def test_a_guide_that_would_hide_a_page_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    guides = tmp_path / "guides"
    guides.mkdir()
    (guides / "power.md").write_text("# Power\n", "utf-8")
    monkeypatch.setattr(building, "guides_folder", lambda: guides)
    with pytest.raises(SiteFailed, match=r"docs/power\.md would hide the page of that name"):
        build_document(document(), tmp_path / "site")


def test_a_new_site_takes_the_old_ones_place_and_nothing_of_the_old_stays(tmp_path: Path) -> None:
    site = tmp_path / "site"
    build_document(document((Page("extra", "Extra", (Paragraph("More."),)),)), site)
    assert (site / "extra.html").exists()
    build_document(document(), site)
    assert not (site / "extra.html").exists()
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_two_folders_change_places_where_the_system_has_no_single_step(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("builder.site.swap.exchanged", lambda *_: False)
    for name in ("new", "old"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "which").write_text(name, "utf-8")
    swap_in(tmp_path / "new", tmp_path / "old", tmp_path / "aside")
    assert (tmp_path / "old" / "which").read_text("utf-8") == "new"
    assert (tmp_path / "aside" / "which").read_text("utf-8") == "old"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["aside", "old"]


def test_building_leaves_the_process_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "12345")
    build_document(document(), tmp_path / "site")
    assert os.environ["SOURCE_DATE_EPOCH"] == "12345"


def test_the_configuration_for_serving_can_be_read_again_for_every_rebuild(tmp_path: Path) -> None:
    path = serving_configuration(tmp_path / "venue", tmp_path)
    for _ in range(3):
        config = load_config(config_file=str(path))
        assert config.plugins["housepack"].config.venue == str(tmp_path / "venue")
        assert config.docs_dir == str(building.guides_folder())


def test_the_imprint_is_read_from_the_published_pack() -> None:
    assert imprint_of(document()).number == "7"
    with pytest.raises(ValueError, match=r"document must have the file pack\.json, got no files"):
        imprint_of(Document("House", ()))


def test_guides_are_found_or_missed_loudly(tmp_path: Path) -> None:
    assert guides_folder().is_dir()
    with pytest.raises(FileNotFoundError, match="no guides in"):
        guides_folder((tmp_path / "none",))


def test_guides_stand_by_name_and_those_in_folders_below() -> None:
    assert guide_navigation(["b.md", "decisions/0001-x.md", "a.md"]) == [
        "a.md",
        "b.md",
        {"Decisions": ["decisions/0001-x.md"]},
    ]
