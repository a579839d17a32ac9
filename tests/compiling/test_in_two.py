"""A program as two scripts, of which a page loads the second when it needs it."""

import re
from typing import Any

import pytest
from playwright.sync_api import Browser
from playwright.sync_api import Error as BrowserError

from builder.compiling.packing import without_comments, without_spaces
from builder.compiling.program import compiled_in_two
from builder.site.engine import source_of
from tests.compiling.script import RUNTIME

SOURCE = """
from builder.formulas.primitives import is_failing

STEP = 2
NAMES = ["one", "two"]

def doubled(number: int) -> int:
    return number * STEP

def rarely(number: int) -> int:
    return doubled(number) + only_there(number)

def only_there(number: int) -> int:
    return number + 100

def judged(number: int) -> int:
    if number > 10:
        return rarely(number)
    return doubled(number)

def netted(number: int) -> bool:
    return is_failing(lambda: nothing(rarely(number)))

def nothing(number: int) -> None:
    pass

def named(number: int) -> str:
    return NAMES[number - STEP]
"""
ROOM = "builder.sample"


def in_two(source: str = SOURCE, *, packed: bool = False) -> tuple[str, str]:
    """The sample as two scripts: what is rare comes with the second."""
    return compiled_in_two(
        {"judged": f"{ROOM}.judged", "netted": f"{ROOM}.netted"},
        {"named": f"{ROOM}.named", "doubled": f"{ROOM}.doubled"},
        held_back=[f"{ROOM}.rarely"],
        source_of=lambda name: source if name == ROOM else source_of(name),
        runtime=RUNTIME,
        global_name="engine",
        packed=packed,
    )


@pytest.mark.browser
@pytest.mark.parametrize("packed", [False, True])
def test_the_first_script_runs_alone_and_the_second_completes_it(
    browser: Browser, packed: bool
) -> None:
    first, second = in_two(packed=packed)
    page = browser.new_page()

    def given(call: str) -> Any:
        return page.evaluate(f"() => engine.{call}")

    page.add_script_tag(content=first)
    assert given("judged(3)") == 6
    with pytest.raises(BrowserError, match="calls what is not loaded yet"):
        given("judged(11)")
    with pytest.raises(BrowserError, match="calls what is not loaded yet"):
        given("netted(11)")
    page.add_script_tag(content=second)
    assert given("judged(11)") == 133
    assert given("netted(11)") is False
    assert given("judged(3)") == 6
    assert given("named(3)") == "two"
    assert given("doubled(4)") == 8
    page.close()


def test_no_function_stands_in_both() -> None:
    first, second = in_two()
    there = [set(re.findall(r"^(?:function|const) (\w+)", part, re.MULTILINE)) for part in in_two()]
    assert there[0] - {"py"} == {"STEP", "doubled", "judged", "netted", "nothing"}
    assert there[1] == {"NAMES", "rarely", "only_there", "named"}
    assert "function py" not in second
    assert "const py" in first


def test_a_constant_that_needs_what_is_held_back_is_refused() -> None:
    early = SOURCE.replace("STEP = 2", "STEP: int = rarely(1)")
    with pytest.raises(ValueError, match=r"builder\.sample\.STEP must not need what is held back"):
        in_two(early)


def test_spaces_go_and_texts_and_signs_stay() -> None:
    script = '  if (a  <  b) {\n    c = "x  =  \\" ( y";\n   return - -a + +b;\n  }\n'
    assert without_spaces(script) == 'if(a<b){c="x  =  \\" ( y";return - -a + +b;}\n'


def test_only_whole_lines_of_comment_go() -> None:
    script = '// why\nconst a = "// no";\n  // and here\nb(); // beside\n'
    assert without_comments(script) == 'const a = "// no";\nb(); // beside\n'
