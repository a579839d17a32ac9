"""
What must be complete: every code explained, every key in the guide, every formula cited and tested.
"""

import ast
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator
from pathlib import Path

import builder
import builder.formulas
from builder.formulas.cite import CITED, name_of
from builder.keys import keys_of, records_of
from builder.registry import DEPARTMENTS

ROOT = Path(__file__).parent.parent
CODE_ARGUMENT = {
    "Problem": 4,
    "Finding": 1,
    "Remark": 1,
    "Unreadable": 1,
    "PydanticCustomError": 0,
    "fault": 1,
    "odd": 0,
}
"""Where each kind of complaint carries its code."""


def trees() -> Iterator[ast.Module]:
    """The syntax trees of the whole package."""
    for path in sorted((ROOT / "builder").rglob("*.py")):
        yield ast.parse(path.read_text(encoding="utf-8"))


def raised_codes() -> set[str]:
    """Every code that a complaint in the program is made with."""
    found = set()
    for call in (node for tree in trees() for node in ast.walk(tree) if isinstance(node, ast.Call)):
        name = call.func.id if isinstance(call.func, ast.Name) else ""
        index = CODE_ARGUMENT.get(name)
        if index is None:
            continue
        given = (
            call.args[index]
            if len(call.args) > index
            else next((word.value for word in call.keywords if word.arg == "code"), None)
        )
        if isinstance(given, ast.Constant) and isinstance(given.value, str):
            found.add(given.value)
    return found


def explained_codes() -> list[str]:
    """The headings of the page that explains them."""
    text = (ROOT / "docs" / "problems.md").read_text(encoding="utf-8")
    return [
        line.removeprefix("## ").strip() for line in text.splitlines() if line.startswith("## ")
    ]


def constants() -> set[str]:
    """Every text constant of the program."""
    return {
        node.value
        for tree in trees()
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }


def test_every_code_that_is_raised_is_explained() -> None:
    assert sorted(raised_codes() - set(explained_codes())) == []


def test_every_code_that_is_explained_exists() -> None:
    assert sorted(set(explained_codes()) - constants()) == []


def test_codes_are_explained_once_and_in_alphabetical_order() -> None:
    assert explained_codes() == sorted(set(explained_codes()))


def test_every_key_has_an_explanation() -> None:
    kinds = [department.description for department in DEPARTMENTS]
    keys = [
        key for kind in kinds for record in (kind, *records_of(kind)) for key in keys_of(record)
    ]
    assert len(keys) > 1000
    assert [f"{key.record.__name__}.{key.name}" for key in keys if not key.meaning] == []


def test_every_department_is_in_the_demo_and_in_the_starting_venue() -> None:
    for folder in (ROOT / "venue", ROOT / "builder" / "starter"):
        assert {f"{department.key}.yml" for department in DEPARTMENTS} <= {
            path.name for path in folder.glob("*.yml")
        }


def test_every_department_is_named_where_a_crew_begins_to_read() -> None:
    begins = (ROOT / "docs" / "describe.md").read_text(encoding="utf-8")
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    for department in DEPARTMENTS:
        assert f"`{department.key}.yml`" in begins
        assert re.search(rf"Departments described so far: .*\b{department.key}\b", readme)


def test_the_readers_road_leads_along_what_is_there() -> None:
    road = inspect.getdoc(builder) or ""
    steps = re.split(r"^\d\. ", road, flags=re.MULTILINE)[1:]
    assert len(steps) == 7
    for step in steps:
        places = [ROOT / word for word in re.findall(r"``(venue/\S+?)``", step)]
        places += [ROOT / "builder" / word for word in re.findall(r"``(\w\S*?(?:\.py|/))``", step)]
        assert places, step
        text = "".join(part for place in places for part in texts_at(place))
        assert [name for name in re.findall(r"``(\w+)``", step) if name not in text] == []


def texts_at(place: Path) -> Iterator[str]:
    """The text of a file, or of all files of ours in a folder; it must be there."""
    assert place.exists(), place
    files = [place] if place.is_file() else sorted(place.rglob("*.py"))
    return (path.read_text(encoding="utf-8") for path in files)


def formulas() -> Iterator[object]:
    """Every public function of the formula modules."""
    for module in pkgutil.iter_modules(builder.formulas.__path__):
        loaded = importlib.import_module(f"builder.formulas.{module.name}")
        for name, found in inspect.getmembers(loaded, inspect.isfunction):
            if (
                not name.startswith("_")
                and found.__module__ == loaded.__name__
                and module.name != "cite"
            ):
                yield found


def test_every_cited_formula_is_named_in_a_test() -> None:
    list(formulas())
    text = "\n".join(
        path.read_text(encoding="utf-8")
        for path in sorted((ROOT / "tests" / "formulas").glob("test_*.py"))
    )
    assert [name for name in sorted(CITED) if name.rsplit(".", 1)[-1] not in text] == []


def test_every_formula_says_what_it_raises_or_returns() -> None:
    bare = [name_of(found) for found in formulas() if not inspect.getdoc(found)]  # type: ignore[arg-type]
    assert bare == []
