"""
How markup gets made: from templates that are the program's own, with no text in them that was not
escaped. Any text in any drawing, page or feed is read back as the text that it is.
"""

import ast
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.document import Markup
from builder.render.contours import Levels
from builder.render.elements import element, words
from builder.render.escaping import visible
from builder.render.feed import FeedEntry, feed
from builder.render.level_map import INK, Layer, Shape, Sheet, inked, level_map_svg
from builder.render.markup import joined, markup
from builder.render.plan import Area, Mark, Note, Plan, Track, plan_svg
from tests.render.hostile import HOSTILE

ROOT = Path(__file__).parents[2] / "builder"
LOOKS_LIKE_MARKUP = re.compile(r"(?<!\(\?P)<[a-zA-Z/!?]|\b[a-z-]+=\"")
ANY = st.one_of(st.text(st.characters(), min_size=1, max_size=40), st.sampled_from(HOSTILE))


def test_text_by_itself_is_no_part_of_markup() -> None:
    for wrong in ("<b>", "plain", None, True):
        with pytest.raises(TypeError, match="part must be markup or a number, got "):
            markup("<p>{}</p>", wrong)  # type: ignore[arg-type]  # the mistake
        with pytest.raises(TypeError, match="part must be markup or a number, got "):
            joined((wrong,))  # type: ignore[arg-type]  # the mistake
        with pytest.raises(TypeError, match="part must be markup or a number, got "):
            element("p", wrong)  # type: ignore[arg-type]  # the mistake
    with pytest.raises(ValueError, match="between must be white space, got '<br>'"):
        joined((Markup(),), "<br>")


def test_parts_stay_what_they_are() -> None:
    assert markup("<p>{}</p>", words("{0} & {x}")) == "<p>{0} &amp; {x}</p>"
    assert element("a", words("<"), href='"', x_y=1.25, left=None, class_="b") == (
        '<a href="&quot;" x-y="1.3" class="b">&lt;</a>'
    )


@pytest.mark.parametrize("name", ["a b", "a>", "", "1", "on click", 'x="', "é"])
def test_a_name_of_an_element_or_attribute_is_a_name(name: str) -> None:
    with pytest.raises(ValueError, match="name must be letters and underscores, got "):
        element(name)
    with pytest.raises(ValueError, match="name must be letters and underscores, got "):
        element("a", **{name: "x"})


def calls_of(tree: ast.AST, name: str) -> Iterator[ast.Call]:
    """Every call of a function."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == name:
            yield node


def test_markup_is_written_from_templates_alone() -> None:
    """
    No text that looks like markup is put together from parts, and each template stands where it is
    used, so that none can come from elsewhere.
    """
    pieced, foreign = [], []
    for path in sorted(ROOT.rglob("*.py")):
        tree = ast.parse(path.read_text("utf-8"))
        name = path.relative_to(ROOT).as_posix()
        for node in ast.walk(tree):
            if isinstance(node, ast.JoinedStr):
                fixed = [part.value for part in node.values if isinstance(part, ast.Constant)]
                if any(LOOKS_LIKE_MARKUP.search(str(part)) for part in fixed):
                    pieced.append(f"{name}: {ast.unparse(node)}")
        for call in calls_of(tree, "markup"):
            if not isinstance(call.args[0], ast.Constant):
                foreign.append(f"{name}: {ast.unparse(call)}")
    assert foreign == []
    assert pieced == []


def test_who_says_that_a_text_is_markup_is_known() -> None:
    """The few places that make markup of a text; each is read by a person when it is added."""
    makers: dict[str, int] = {}
    for path in sorted(ROOT.rglob("*.py")):
        count = sum(
            bool(call.args) for call in calls_of(ast.parse(path.read_text("utf-8")), "Markup")
        )
        if count:
            makers[path.relative_to(ROOT).as_posix()] = count
    assert makers == {
        "render/blocks.py": 2,
        "render/elements.py": 1,
        "render/escaping.py": 3,
        "render/inline.py": 2,
        "render/level_map.py": 1,
        "render/light.py": 3,
        "render/markdown.py": 3,
        "render/markup.py": 2,
        "render/paper.py": 1,
        "render/svg.py": 1,
    }


def plan_with(text: str) -> Markup:
    """A plan with a text wherever it has one."""
    elements = (
        Area(((0, 0), (1, 0), (1, 1)), says=text, anchor=text),
        Track(((0, 0), (1, 1)), says=text, anchor=text),
        Mark((0, 0), says=text, anchor=text),
        Note((0, 0), text),
    )
    return plan_svg(Plan(text, text, text, elements, across_m=(-1, 1)))


def map_with(text: str) -> Markup:
    """A map with a text wherever it has one."""
    grid = np.linspace(0.0, 9.0, 10)
    levels = Levels(grid, grid, np.add.outer(grid, grid))
    shape = Shape(((0, 0), (9, 0), (9, 9)), text, heavy=True)
    sheet = Sheet(
        ((text, (Layer(levels),)),), (shape,), ((text, (1, 1)),), (0, 9, 0, 9), (0, 3, 6), text
    )
    return inked(level_map_svg(sheet), "#123456")


def feed_with(text: str) -> Markup:
    """A feed with a text wherever it has one."""
    return feed(text, text, text, [FeedEntry(text, "2026-11-20", text, text, text, text)])


def shape_of(drawn: str) -> list[tuple[str, list[str]]]:
    """The elements of a text of XML with the names of their attributes, in order."""
    tree = ElementTree.fromstring(drawn)  # noqa: S314 - what we wrote ourselves
    return [(str(each.tag), sorted(each.attrib)) for each in tree.iter()]


@pytest.mark.law
@pytest.mark.parametrize("writer", [plan_with, map_with, feed_with])
@given(text=ANY)
def test_any_text_is_read_back_as_the_text_it_is(
    writer: Callable[[str], Markup], text: str
) -> None:
    drawn = writer(text)
    assert shape_of(drawn) == shape_of(writer("calm"))
    tree = ElementTree.fromstring(drawn)  # noqa: S314 - what we wrote ourselves
    assert visible(text) in ["".join(each.itertext()) for each in tree.iter()] or not visible(text)


def test_a_text_that_reads_like_the_stand_in_for_ink_is_not_inked() -> None:
    assert f">{INK}</text>" in map_with(INK)
