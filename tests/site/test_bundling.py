"""One request in place of many."""

from pathlib import Path

import pytest

from builder.compiling.packing import without_comments
from builder.site.bundling import Bundles

THEME = Path(__file__).parents[2] / "builder" / "site" / "theme"
PAGE = """<link rel="icon" href="assets/mark.svg">
<link rel="stylesheet" href="assets/a.css">
  <link rel="stylesheet" href="assets/b.css">
<script src="assets/first.js" data-base="."></script>
<p>Text</p>
<script src="assets/x.js"></script>
<script src="assets/y.js"></script>
"""


def made(tmp_path: Path) -> Path:
    """A site's folder with the files that the page asks for."""
    (tmp_path / "assets").mkdir()
    for name in ("a.css", "b.css", "x.js", "y.js"):
        (tmp_path / "assets" / name).write_text(f"/* {name} */\n\n", "utf-8")
    return tmp_path


def test_files_that_follow_each_other_become_one_in_their_order(tmp_path: Path) -> None:
    bundles = Bundles()
    page = bundles.page(PAGE)
    assert page.count('rel="stylesheet"') == 1
    assert page.count("<script") == 2
    bundles.write(made(tmp_path))
    assert sorted((tmp_path / name).read_text("utf-8") for name in bundles.found) == [
        "/* a.css */\n/* b.css */\n",
        "/* x.js */\n/* y.js */\n",
    ]


def test_pages_that_ask_for_the_same_share_one_file_at_any_depth() -> None:
    bundles = Bundles()
    bundles.page(PAGE)
    for up in ("../", "/"):
        page = bundles.page(PAGE.replace('"assets/', f'"{up}assets/'))
        assert all(f'"{up}{name}"' in page for name in bundles.found)
    assert len(bundles.found) == 2


def test_a_single_file_stays_as_it_is() -> None:
    assert (
        Bundles().page('<script src="assets/x.js"></script>')
        == '<script src="assets/x.js"></script>'
    )


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    bundles = Bundles()
    bundles.page(PAGE)
    with pytest.raises(FileNotFoundError):
        bundles.write(tmp_path)


def test_no_script_of_ours_has_a_text_of_several_lines_which_joining_would_change() -> None:
    scripts = sorted(THEME.rglob("*.js"))
    assert len(scripts) > 10
    assert [path.name for path in scripts if "`" in without_comments(path.read_text("utf-8"))] == []


def test_scripts_are_joined_without_comments_and_indentation(tmp_path: Path) -> None:
    bundles = Bundles()
    bundles.page('<script src="assets/a.js"></script><script src="assets/b.js"></script>')
    (tmp_path / "assets").mkdir()
    (tmp_path / "assets" / "a.js").write_text("// why\nif (one) {\n  two();\n}\n", "utf-8")
    (tmp_path / "assets" / "b.js").write_text("three();\n", "utf-8")
    bundles.write(tmp_path)
    (name,) = bundles.found
    assert (tmp_path / name).read_text("utf-8") == "if (one) {\ntwo();\n}\nthree();\n"
