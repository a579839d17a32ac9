"""
The plugin inside the generator: plain commands work, problems stop a build and stand on the page
while serving.
"""

from pathlib import Path

import pytest
from mkdocs.commands.build import build as run
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, ConfigurationError

from builder.document import Document
from builder.reading.problems import Problem, Refused, Where
from builder.site import plugin as plugin_module
from builder.site.guides import guides_folder
from tests.site.sample import document

CHECKOUT = Path(__file__).parents[2]
PROBLEM = Problem(
    Where("power.yml", 14, 12),
    "services[1].rating",
    "<b>400</b>",
    "needs a unit, such as '400 A'",
    "unit-missing",
)


class Source:
    """What the description says, and may stop saying."""

    def __init__(self, *turns: Document | Exception) -> None:
        self.turns = list(turns)

    def __call__(self, _: Path, __: object) -> Document:
        turn = self.turns.pop(0)
        if isinstance(turn, Exception):
            raise turn
        return turn


def configured(tmp_path: Path, command: str = "build") -> MkDocsConfig:
    """The checkout's own configuration, as the generator's command would start with it."""
    config = reloaded(tmp_path)
    config.plugins.run_event("startup", command=command, dirty=False)
    return config


def reloaded(tmp_path: Path) -> MkDocsConfig:
    """The configuration read again, as it is for every rebuild while serving."""
    (tmp_path / "docs").mkdir(exist_ok=True)
    return load_config(
        config_file=str(CHECKOUT / "builder" / "site" / "mkdocs.yml"),
        site_dir=str(tmp_path / "site"),
        docs_dir=str(tmp_path / "docs"),
    )


def test_the_generators_own_command_builds_the_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(plugin_module, "published", Source(document()))
    run(configured(tmp_path))
    assert "Rigging points" in (tmp_path / "site" / "rigging.html").read_text("utf-8")


def test_guides_follow_the_pack_in_the_contents(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(plugin_module, "published", Source(document()))
    config = configured(tmp_path)
    (tmp_path / "docs" / "reading.md").write_text("# How to read this pack\n", "utf-8")
    run(config)
    text = (tmp_path / "site" / "index.html").read_text("utf-8")
    assert (
        text.index(">Local crew</a>")
        < text.index("Guides</span>")
        < text.index("How to read this pack</a>")
    )


def test_a_guides_table_stands_in_a_frame_of_its_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(plugin_module, "published", Source(document()))
    config = configured(tmp_path)
    (tmp_path / "docs" / "reading.md").write_text(
        "# How to read this pack\n\n| a | b |\n|---|---|\n| 1 | 2 |\n", "utf-8"
    )
    run(config)
    text = (tmp_path / "site" / "reading.html").read_text("utf-8")
    assert '<div class="table" role="region" tabindex="0" aria-label="Table 1"><table>' in text
    assert "</table></div>" in text


def test_a_pack_brings_the_guides_for_its_visitors_and_no_others() -> None:
    guides = {path.name for path in guides_folder().rglob("*.md")}
    assert guides == {"methods.md", "pack-format.md", "read-a-pack.md", "riders.md"}


def test_a_refused_description_ends_a_build_with_every_problem(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    monkeypatch.setattr(plugin_module, "published", Source(Refused([PROBLEM])))
    beside = CHECKOUT / "builder" / "site" / "venue"
    with pytest.raises((Abort, ConfigurationError)):
        run(configured(tmp_path))
    assert f"1 problem in {beside}:\n{PROBLEM}" in caplog.text
    assert "Traceback" not in caplog.text


def test_while_serving_the_last_good_pages_stay_under_the_problems(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        plugin_module, "published", Source(document(), Refused([PROBLEM]), document())
    )
    configured(tmp_path, "serve")
    for turn in ("good", "bad", "good again"):
        run(reloaded(tmp_path))
        text = (tmp_path / "site" / "rigging.html").read_text("utf-8")
        assert ("1 problem in the description" in text) == (turn == "bad"), turn
        assert "<b>400</b>" not in text
        assert "Rigging points" in text


def test_serving_begins_even_when_there_never_was_a_good_state(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(plugin_module, "published", Source(Refused([PROBLEM])))
    run(configured(tmp_path, "serve"))
    text = (tmp_path / "site" / "index.html").read_text("utf-8")
    assert "1 problem in the description. There are no pages as long as there is one." in text
    assert "The pages appear here as soon as the description has no problems" in text


def test_a_failure_of_the_program_is_said_on_the_page_while_serving(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        plugin_module, "published", Source(ValueError("rise_m must be above 0, got 0.0"))
    )
    run(configured(tmp_path, "serve"))
    assert "made the program fail" in (tmp_path / "site" / "index.html").read_text("utf-8")


def test_a_failure_of_the_program_is_not_swallowed_while_building(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        plugin_module, "published", Source(ValueError("rise_m must be above 0, got 0.0"))
    )
    with pytest.raises(ValueError, match=r"rise_m must be above 0, got 0\.0"):
        run(configured(tmp_path))
