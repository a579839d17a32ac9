"""
While a venue is served, an edit makes the site that a build from nothing makes, byte for byte; what
it does not reach is neither computed nor written again.
"""

import hashlib
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from mkdocs.commands.build import build as run
from mkdocs.config import load_config

from builder import pipeline
from builder.render import markdown
from builder.site.build import serving_configuration

QUARRY = Path(__file__).parents[1] / "venues" / "quarry"
EDITS = {
    "lines.yml": ("by: ", "by: deputy "),
    "house.yml": ("name: ", "name: New "),
    "stage.yml": ("by: ", "by: deputy "),
}
"""What is edited in which file, one after the other."""


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """A venue that is edited while it is served."""
    return Path(shutil.copytree(QUARRY, tmp_path / "venue"))


def serving(venue: Path, folder: Path) -> Callable[[], dict[str, str]]:
    """Builds the site again and again as while serving, and tells each file's mark."""
    settings = {"config_file": str(serving_configuration(venue, folder))}
    site = folder / "site"
    first = load_config(**settings, site_dir=str(site))
    first.plugins.run_event("startup", command="serve", dirty=False)

    def build() -> dict[str, str]:
        run(load_config(**settings, site_dir=str(site)))
        return {
            str(path.relative_to(site)): hashlib.sha256(path.read_bytes()).hexdigest()
            for path in sorted(site.rglob("*"))
            if path.is_file()
        }

    return build


def edit(venue: Path, file: str) -> None:
    """Write the edit of a file."""
    before, after = EDITS[file]
    text = (venue / file).read_text("utf-8")
    assert before in text
    (venue / file).write_text(text.replace(before, after, 1), "utf-8")


def test_after_edits_the_site_is_that_of_a_build_from_nothing(venue: Path, tmp_path: Path) -> None:
    build = serving(venue, tmp_path)
    first = build()
    for file in EDITS:
        edit(venue, file)
        after = build()
        assert after != first
    shutil.rmtree(tmp_path / "site")
    assert serving(venue, tmp_path)() == after


def test_what_an_edit_does_not_reach_is_neither_computed_nor_written_again(
    venue: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    computed, written = [], []
    publish, page_text = pipeline.published_by, markdown.page_text

    def counting(department, *others):  # type: ignore[no-untyped-def]
        computed.append(department.key)
        return publish(department, *others)

    def writing(page, scribe):  # type: ignore[no-untyped-def]
        written.append(page.key)
        return page_text(page, scribe)

    build = serving(venue, tmp_path)
    build()
    monkeypatch.setattr(pipeline, "published_by", counting)
    monkeypatch.setattr(markdown, "page_text", writing)
    edit(venue, "lines.yml")
    build()
    assert computed == ["lines"]
    assert "lines" in written
    assert not {"power", "sound", "stage"} & {*written}
    computed.clear()
    written.clear()
    build()
    assert computed == written == []
