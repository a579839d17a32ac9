"""The project's documentation: every page is reached, and nothing is asked of another host."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LOADED = re.compile(
    r"<(?:script|img|iframe|source|video|audio)\b[^>]*\bsrc=\"(https?:)?//[^\"]*\""
    r"|<link\b(?=[^>]*rel=\"(?:stylesheet|icon|preload|preconnect|dns-prefetch)\")"
    r"[^>]*href=\"(https?:)?//"
)


@pytest.fixture(scope="module")
def documentation(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the documentation, built as ``make docs`` builds it, warnings being errors."""
    folder = tmp_path_factory.mktemp("documentation") / "made"
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict", "-d", str(folder)]
    ran = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    return folder


def test_no_page_of_the_documentation_loads_from_another_host(documentation: Path) -> None:
    pages = list(documentation.rglob("*.html"))
    loading = [page.name for page in pages if LOADED.search(page.read_text("utf-8"))]
    assert pages
    assert loading == []


def test_every_guide_is_a_page_of_the_documentation(documentation: Path) -> None:
    docs = ROOT / "docs"
    expected = {path.relative_to(docs).with_suffix(".html") for path in docs.rglob("*.md")}
    expected = {path.with_name(path.name.replace("README", "index")) for path in expected}
    assert expected <= {path.relative_to(documentation) for path in documentation.rglob("*.html")}


def test_the_changelog_is_a_page_with_its_first_release(documentation: Path) -> None:
    assert "0.1.0, first release" in (documentation / "changelog.html").read_text("utf-8")


def test_every_decision_is_in_the_list_of_decisions() -> None:
    folder = ROOT / "docs" / "decisions"
    listed = set(
        re.findall(r"\]\((\d{3}-[a-z0-9-]+\.md)\)", (folder / "README.md").read_text("utf-8"))
    )
    assert listed == {path.name for path in folder.glob("[0-9]*.md")}
