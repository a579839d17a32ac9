"""
Random sequences of edits on every file of the demo: what is not concerned keeps every byte,
comments stay, the model is the intended one, and undoing gives the first bytes.
"""

import random
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest

from builder.reading.nodes import compose
from builder.reading.problems import Refused
from builder.stock.edits import Append, Edit, Set, Unset, spliced
from builder.stock.splice import Splice
from tests.laws import share

DEMO = Path(__file__).parent.parent.parent / "venue"
FILES = {path.name: path.read_text(encoding="utf-8") for path in sorted(DEMO.glob("*.yml"))}
BATCHES = share(range(100), law="random edits", usually=2)
BATCH = 20
VALUES = (
    "12",
    "out of service",
    "it's: odd",
    "# no comment",
    "a, b",
    '"quoted"',
    "1:12",
    "?",
    "none",
    "[x]",
    "é → ü",
    "- dash",
    "* star",
    "yes",
    "8.7 m SL",
)


def comments(text: str) -> list[str]:
    """
    The comments of a text: those on lines of their own, and those behind a value.

    The demo has no '#' within a value.
    """
    return [
        line.partition("#")[2]
        for line in text.splitlines()
        if line.lstrip().startswith("#") or "  #" in line
    ]


def paths(data: Any, path: tuple[str | int, ...] = ()) -> list[tuple[tuple[str | int, ...], Any]]:
    """Every path of the data with what stands there, the top left out."""
    inner = (
        data.items()
        if isinstance(data, dict)
        else enumerate(data)
        if isinstance(data, list)
        else ()
    )
    here = [((*path, key), value) for key, value in inner]
    return [*here, *(deeper for at, value in here for deeper in paths(value, at))]


def any_edit(chance: random.Random, data: dict[str, Any]) -> Edit:
    """An edit of any kind at any place."""
    path, value = chance.choice(paths(data))
    match chance.randrange(5):
        case 0 | 1 if isinstance(value, str):
            return Set(path, chance.choice(VALUES))
        case 2 if isinstance(value, dict):
            return Set((*path, f"new_{chance.randrange(99)}"), chance.choice(VALUES))
        case 3 if isinstance(value, list):
            like = value[-1] if value else "x"
            return Append(
                path,
                (
                    {key: chance.choice(VALUES) for key in list(like)[:3]}
                    if isinstance(like, dict)
                    else chance.choice(VALUES)
                ),
            )
        case 4 if len(path) > 1:
            return Unset(path)
        case _:
            return any_edit(chance, data)


def model_after(data: dict[str, Any], edit: Edit) -> dict[str, Any]:
    """The same edit on the data, written a second time and as plainly as it can be."""
    made = deepcopy(data)
    path = list(edit.path)
    within: Any = made
    for step in path[:-1]:
        within = within[step]
    if isinstance(edit, Set):
        within[path[-1]] = edit.value
    elif isinstance(edit, Append):
        within[path[-1]].append(edit.value)
    else:
        while isinstance(within, list) and len(within) == 1 and len(path) > 1:
            path.pop()
            within = made
            for step in path[:-1]:
                within = within[step]
        del within[path[-1]]
    return made


def check_only_what_is_concerned(edit: Edit, splice: Splice, before: str, after: str) -> None:
    """
    Nothing is taken where something is added; nothing but the value where one is set; a comment
    only with its own line.
    """
    added = isinstance(edit, Set) and edit.path not in dict(paths(compose(before, "").data))
    if isinstance(edit, Append) or added:
        assert splice.old == ""
        assert comments(after) == comments(before)
    elif isinstance(edit, Set):
        assert "\n" not in splice.old.rstrip()
        assert comments(after) == comments(before)
    else:
        lost = [comment for comment in comments(before) if comment not in comments(after)]
        assert all(comment in splice.old for comment in lost)
        assert splice.new == ""


@pytest.mark.laws
@pytest.mark.parametrize("batch", BATCHES)
def test_random_sequences_change_only_what_they_mean_to(batch: int) -> None:
    chance = random.Random(batch)
    made = refused = 0
    for _ in range(BATCH):
        name = chance.choice(sorted(FILES))
        text, undo = FILES[name], []
        for _ in range(chance.randint(1, 6)):
            data = compose(text, name).data
            edit = any_edit(chance, data)
            try:
                splice = spliced(text, name, edit)
            except Refused as problem:
                assert [each.code for each in problem.problems] == ["edit-by-hand"]  # noqa: PT017
                refused += 1
                continue
            after = splice.applied(text)
            made += 1
            check_only_what_is_concerned(edit, splice, text, after)
            assert compose(after, name).data == model_after(data, edit)
            undo.append(splice.undone())
            text = after
        for splice in reversed(undo):
            text = splice.applied(text)
        assert text == FILES[name]
    assert made > 10 * refused
