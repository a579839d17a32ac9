"""Templates with named parts, and the tables that hold them."""

import ast
import importlib
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import builder.fit
from builder.fit.sentences import fill

ROOM = Path(builder.fit.__file__).parent
PART = re.compile(r"\{([^{}]*)\}")


def test_named_parts_are_put_into_a_template() -> None:
    assert fill("{spare} to spare at {place}.", {"place": "Dock", "spare": "2 m"}) == (
        "2 m to spare at Dock."
    )


def test_what_a_crew_wrote_is_never_read_as_a_template() -> None:
    assert fill("{act}: {need}.", {"act": "{need} {x", "need": "} 8 m"}) == "{need} {x: } 8 m."


def test_a_template_without_parts_stays_as_it_is() -> None:
    assert fill("As asked.", {}) == "As asked."


def test_a_part_that_is_not_given_is_a_fault_of_the_program() -> None:
    with pytest.raises(KeyError, match="place"):
        fill("At {place}.", {})


def modules() -> Iterator[tuple[str, ast.Module]]:
    """Every module of the room, by its full name."""
    for file in sorted(ROOM.rglob("*.py")):
        name = ".".join(file.relative_to(ROOM.parents[1]).with_suffix("").parts)
        yield name.removesuffix(".__init__"), ast.parse(file.read_text("utf-8"))


def templates_in(value: object) -> Iterator[str]:
    """Every text of a constant."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for part in value.values():
            yield from templates_in(part)


def tables() -> Iterator[tuple[str, str]]:
    """Every text of every table of sentences, with where it stands."""
    for name, tree in modules():
        if name.endswith("sentences"):
            table = importlib.import_module(name)
            for node in tree.body:
                target = node.targets[0] if isinstance(node, ast.Assign) else None
                target = node.target if isinstance(node, ast.AnnAssign) else target
                if isinstance(target, ast.Name):
                    for text in templates_in(getattr(table, target.id)):
                        yield f"{name}.{target.id}", text


def filled_in_place() -> Iterator[tuple[str, str, set[str]]]:
    """Each call of ``fill`` with its parts written out: where, the template, the parts."""
    for name, tree in modules():
        namespace = vars(importlib.import_module(name))
        for node in ast.walk(tree):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id == "fill"
                and isinstance(node.args[0], ast.Name)
                and isinstance(namespace.get(node.args[0].id), str)
                and isinstance(node.args[1], ast.Dict)
            ):
                keys = [key.value for key in node.args[1].keys if isinstance(key, ast.Constant)]
                parts = {key for key in keys if isinstance(key, str)}
                yield f"{name}:{node.lineno}", namespace[node.args[0].id], parts


def test_every_template_has_whole_parts_with_plain_names() -> None:
    texts = list(tables())
    assert len(texts) > 200
    for where, text in texts:
        rest = PART.sub("", text)
        assert "{" not in rest, where
        assert "}" not in rest, where
        assert all(re.fullmatch("[a-z_0-9]+", part) for part in PART.findall(text)), where


def test_every_template_gets_the_parts_that_it_names() -> None:
    calls = list(filled_in_place())
    assert len(calls) > 100
    for where, template, parts in calls:
        assert set(PART.findall(template)) <= parts, where


def test_every_sentence_of_the_tables_is_said_somewhere() -> None:
    named = {
        node.id
        for _, tree in modules()
        for node in ast.walk(tree)
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load)
    }
    assert sorted(where for where, _ in tables() if where.rpartition(".")[2] not in named) == []
