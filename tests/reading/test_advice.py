"""What a person who never saw this language meets after a natural slip: what to write instead."""

from typing import Literal

import pytest

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.problems import Refused
from builder.reading.quantities import Length
from builder.reading.reader import read
from builder.reading.words import Choice, Count, Name
from builder.reading.written import Line, Written


class Letter(Line):
    dated: Name = "?"
    from_whom: Name


class Room(Written):
    letter: Letter | None = None
    letters: tuple[Letter, ...] = ()
    connectors: tuple[Name, ...] = ()
    height: Maybe[Length] = Absent.NOT_STATED
    count: Count = 0
    audience: Choice[Literal["standing", "seated"]] = "standing"


class Store(Written):
    shelves: tuple[Name, ...]
    letter: Letter


def advice_on(text: str) -> str:
    with pytest.raises(Refused) as refused:
        read(text, file="room.yml", kind=Room)
    assert len(refused.value.problems) == 1
    return refused.value.problems[0].advice


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        ("letter: by the landlord", "write keys such as from_whom, dated, terms, condition"),
        (
            "letters: by the landlord",
            "begin each entry with '- ', and give it keys such as from_whom, dated, terms",
        ),
        ("connectors: XLR 3-pin", "write [XLR 3-pin]"),
        ("letters: none", "leave the key out where there is nothing to list"),
        ("height: no", "write `none` if there is none"),
        ("height: TBC", "write `unknown` if nobody knows yet"),
        ("count: six", "write it like 12"),
        (
            "letter:\n  from_whom: Desk #2",
            "put quotes around the whole value, or begin a comment with a word",
        ),
        (
            "connectors:\n  - Case #4\n  - Case 5",
            "put quotes around the whole value, or begin a comment with a word",
        ),
        (
            "letters: [{from_whom: The advance, and this pack.}]",
            "a comma in { } begins the next key; put quotes around a value that holds a comma",
        ),
        ("letters: {none}", "write `none` without the braces"),
        ("letters: {unknown}", "write `unknown` without the braces"),
        ("letters: unknown", "leave the key out where there is nothing to list"),
    ],
)
def test_the_advice_says_what_to_write_instead(text: str, advice: str) -> None:
    assert advice_on(text).startswith(advice)


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        ("shelves: unknown\nletter: {from_whom: A}", "write [] where nothing can be listed yet"),
        ("letter: {from_whom: A}", "write [] where nothing can be listed yet"),
        ("shelves: []", "write keys such as from_whom, dated, terms, condition"),
        ("shelves: []\nletter: {dated: 2026}", "write it: this cannot be unknown"),
    ],
)
def test_what_must_be_there_is_never_told_to_be_left_out_or_unknown(text: str, advice: str) -> None:
    with pytest.raises(Refused) as refused:
        read(text, file="store.yml", kind=Store)
    assert [problem.advice for problem in refused.value.problems] == [advice]


def test_a_choice_that_only_looks_alike_is_not_offered() -> None:
    assert advice_on("audience: sitting") == "write one of: standing, seated"


def test_a_slip_of_the_finger_in_a_choice_is_still_offered() -> None:
    assert advice_on("audience: standng").startswith("did you mean 'standing'?")


def test_none_where_a_field_cannot_be_absent_is_not_advised() -> None:
    assert advice_on("count: no") == "write it like 12"


@pytest.mark.parametrize(
    "text",
    [
        'letter: {from_whom: "Desk #2"}',
        "letter: {from_whom: Desk#2}",
        "count: 3 # 2 in the store",
        "# 1\ncount: 3",
    ],
)
def test_a_hash_that_loses_no_number_is_no_problem(text: str) -> None:
    read(text, file="room.yml", kind=Room)
