"""
YAML without its traps: text stays text, every value has its place, and what is refused is refused
in plain words.
"""

import contextlib
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from builder.reading import nodes
from builder.reading.nodes import MOST_NODES, compose, spoken
from builder.reading.problems import Refused, Where
from tests.steps import calls_made


def refusal(text: str) -> str:
    with pytest.raises(Refused) as refused:
        compose(text, "power.yml")
    return str(refused.value)


def test_every_scalar_stays_the_text_the_author_wrote() -> None:
    text = (
        "a: no\nb: on\nc: 12:30\nd: 1e3\ne: 0o17\nf: ~\ng: null\nh: 2026-03-02\ni: .nan\nj: 27'-10"
        ' 1/2"\nk: 1_000\n'
    )
    assert list(compose(text, "f").data.values()) == [
        "no",
        "on",
        "12:30",
        "1e3",
        "0o17",
        "~",
        "null",
        "2026-03-02",
        ".nan",
        "27'-10 1/2\"",
        "1_000",
    ]


def test_a_lone_question_mark_is_a_value_wherever_a_value_can_stand() -> None:
    text = (
        "a: ?\nb: {w: ?, h: ? }\nc:\n- ?\n- [?, 3 m,?]\nd: what?\ne: '?'\nf: \"a: ?\"\ng:\n  ?\nh:"
        " ?  # to measure\ni: |\n  - ?\nj: ?\r\n"
    )
    assert compose(text, "f").data == {
        "a": "?", "b": {"w": "?", "h": "?"}, "c": ["?", ["?", "3 m", "?"]], "d": "what?", "e": "?", "f": "a: ?",  # noqa: E501
        "g": "?", "h": "?", "i": "- ?\n", "j": "?",
    }  # fmt: skip


def test_a_question_mark_before_a_key_is_no_value() -> None:
    assert (
        refusal("a: ? b\n")
        == "power.yml:1:4 'a: ? b' has a `?` before other words; put quotes around the value"
        " [yaml-syntax]"
    )


def test_every_value_and_key_has_its_place() -> None:
    read = compose(
        "name: Intake\nservices:\n  - rating: 400 A\n    at: {across: 2 m SL}\n", "power.yml"
    )
    places = {spoken(path): (where.line, where.column) for path, where in read.places.items()}
    assert places == {
        "": (1, 1), "name": (1, 7), "services": (3, 3), "services[1]": (3, 5), "services[1].rating": (3, 13), "services[1].at": (4, 9),  # noqa: E501
        "services[1].at.across": (4, 18),
    }  # fmt: skip
    assert read.key_places["services", 0, "at", "across"] == Where("power.yml", 4, 10)


def test_places_count_characters_not_bytes_and_survive_a_lone_question_mark() -> None:
    assert compose("é: {ü: ?, ö: ?}", "f").places["é", "ö"] == Where("f", 1, 14)


MESSAGES = [
    (
        "a:\n",
        (
            "power.yml:1:3 a has no value; write a value, `unknown` if nobody knows it yet, `none`,"
            " or leave the key out [empty-value]"
        ),
    ),
    (
        "a: 'x\n",
        (
            "power.yml:1:4 'a: 'x' opens a quote that is never closed; add the closing quote"
            " [yaml-syntax]"
        ),
    ),
    (
        "a:\n\tb: 1\n",
        "power.yml:2:1 'b: 1' is indented with a tab; indent with spaces [yaml-syntax]",
    ),
    (
        "a: @x\n",
        (
            "power.yml:1:4 'a: @x' has a value that begins with @; put quotes around the value"
            " [yaml-syntax]"
        ),
    ),
    (
        "a: [1, 2\n",
        (
            "power.yml:1:4 'a: [1, 2' has a list in `[ ]` that is not closed, or lacks a comma;"
            " check the brackets, commas and quotes [yaml-syntax]"
        ),
    ),
    (
        "a: {b: 1\n",
        (
            "power.yml:1:4 'a: {b: 1' has a group in `{ }` that is not closed, or lacks a comma;"
            " check the brackets, commas and quotes [yaml-syntax]"
        ),
    ),
    (
        "a: b: c\n",
        (
            "power.yml:1:5 'a: b: c' has a colon where no key can stand; check the indentation, or"
            " put quotes around a value that holds a sign YAML uses, such as `: `, ` #`, `[` or `{`"
            " [yaml-syntax]"
        ),
    ),
    (
        "a: 1\nb\n",
        (
            "power.yml:2:1 'b' has a line without a colon; write `key: value`, with a space after"
            " the colon [yaml-syntax]"
        ),
    ),
    (
        'a: "\\q"\n',
        (
            "power.yml:1:5 'a: \"\\q\"' has a backslash that YAML cannot read; put the value in"
            " single quotes [yaml-syntax]"
        ),
    ),
    (
        "a: |x\n y\n",
        (
            "power.yml:1:5 'a: |x' has words after `|` or `>`; begin the words on the next line,"
            " indented [yaml-syntax]"
        ),
    ),
    (
        "%x\n",
        "power.yml:1:3 '%x' begins a line with `%`; put quotes around the value [yaml-syntax]",
    ),
    (
        "a: }\n",
        (
            "power.yml:1:4 'a: }' has a bracket, a comma or a sign where a value should begin; put"
            " quotes around a value that holds a sign YAML uses, such as `: `, ` #`, `[` or `{`"
            " [yaml-syntax]"
        ),
    ),
    (
        'a: "b" c\n',
        (
            "power.yml:1:8 'a: \"b\" c' does not line up with the keys above, or has words after a"
            " closing quote; line the keys up with spaces; put quotes around the whole value or"
            " around none of it [yaml-syntax]"
        ),
    ),
    (
        "a: 1\nb: 2\na: 3\n",
        (
            "power.yml:3:1 a is written twice; the first is on line 1; keep one of them"
            " [duplicate-key]"
        ),
    ),
    ("a: *x\n", "power.yml:1:4 a uses the alias `*x`; write the value out [alias]"),
    (
        "a: &x 1\n",
        (
            "power.yml:1:4 a sets the anchor `&x`; remove it, and write the value out wherever it"
            " is wanted [alias]"
        ),
    ),
    ("<<: {c: 1}\n", "power.yml:1:1 << merges keys with `<<`; write the keys out [alias]"),
    (
        "a: !x y\n",
        (
            "power.yml:1:4 a has the tag `!x`; remove it; the field decides how its value is read"
            " [tag]"
        ),
    ),
    (
        "a: 1\n---\nb: 2\n",
        (
            "power.yml:2:1 starts a second document; keep one document a file; remove the `---`"
            " line [several-documents]"
        ),
    ),
    (
        "- a\n",
        "power.yml:1:1 is a list at the top level; begin with `key: value` lines [not-a-mapping]",
    ),
    (
        "hello\n",
        (
            "power.yml:1:1 is one piece of text at the top level; begin with `key: value` lines"
            " [not-a-mapping]"
        ),
    ),
    (
        "# a comment\n",
        "power.yml is empty; write `key: value` lines, or remove the file [empty-file]",
    ),
    ("", "power.yml is empty; write `key: value` lines, or remove the file [empty-file]"),
    (
        "? [a]\n: b\n",
        (
            "power.yml:1:3 has a list or a group as a key; a key is one word or a few, before a"
            " colon [key-not-text]"
        ),
    ),
    (
        "'': b\n",
        "power.yml:1:1 has a value without a key; write a word before the colon [key-not-text]",
    ),
    (
        'a: "\\u202e"\n',
        (
            "power.yml:1:4 a has the control character U+202E; delete it; an editor that shows"
            " hidden characters helps to find it [control-character]"
        ),
    ),
    (
        "a: b\x1b\n",
        (
            "power.yml:1:5 has the control character U+001B; delete it; an editor that shows hidden"
            " characters helps to find it [control-character]"
        ),
    ),
]


@pytest.mark.parametrize(("text", "message"), MESSAGES)
def test_what_is_refused_is_said_in_plain_words(text: str, message: str) -> None:
    assert refusal(text) == message


def test_all_problems_are_found_in_one_reading() -> None:
    said = refusal("a: &x 1\nb: *x\na: 2\nc:\nd: !t 3\ne: [1\n")
    assert [line.rsplit(" ", 1)[1] for line in said.splitlines()] == [
        "[alias]",
        "[alias]",
        "[duplicate-key]",
        "[empty-value]",
        "[tag]",
        "[yaml-syntax]",
    ]


def test_an_empty_text_in_quotes_is_left_to_the_field() -> None:
    assert compose("a: ''", "f").data == {"a": ""}


def nested(levels: int) -> str:
    return "a: " + "[" * (levels - 1) + "]" * (levels - 1)


def test_forty_levels_are_read_and_one_more_is_not() -> None:
    compose(nested(40), "f")
    assert (
        refusal(nested(41))
        == "power.yml:1:43 is nested deeper than 40 levels; check the brackets and the indentation"
        " [too-deep]"
    )


def test_two_hundred_thousand_values_are_read_and_one_more_is_not() -> None:
    # The top mapping, its key and the list are three of them.
    compose("a: [" + "1," * 199_997 + "]", "f")
    with pytest.raises(Refused, match="holds more than 200,000 values"):
        compose("a: [" + "1," * 199_998 + "]", "f")


ALIAS_BOMB = "a: &a [x,x,x,x,x,x,x,x,x]\n" + "".join(
    f"{chr(98 + i)}: &{chr(98 + i)} [{','.join(['*' + chr(97 + i)] * 9)}]\n" for i in range(20)
)
HOSTILE = {
    "200 deep": ("a: " + "[" * 200, "too-deep"),
    "a million deep": ("a: " + "[" * 1_000_000, "too-deep"),
    "groups a million deep": ("{" * 1_000_000, "too-deep"),
    "keys in keys": ("? " * 500_000, "too-deep"),
    "alias bomb": (ALIAS_BOMB, "alias"),
    "too many values": ("a: [" + "1," * 300_000, "too-many-nodes"),
    "10 MiB": ("a: " + "x" * (10 << 20), "too-big"),
    "2 MiB in wide characters": ("a: " + "€" * 900_000, "too-big"),
    "question marks": ("a: " + "?," * 900_000 + "\n- [", "yaml-syntax"),
}


MOST_CALLS = 40 * MOST_NODES
"""A reader that went over a text again for each part of it would need the square of its length."""


@pytest.mark.parametrize(("text", "code"), HOSTILE.values(), ids=list(HOSTILE))
def test_a_hostile_text_is_refused_in_bounded_steps(text: str, code: str) -> None:
    codes: set[str] = set()

    def refuse() -> None:
        with pytest.raises(Refused) as refused:
            compose(text, "f")
        codes.update(problem.code for problem in refused.value.problems)

    assert calls_made(refuse) < MOST_CALLS
    assert code in codes


def test_the_slower_parser_gives_the_same_reading(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "é: ?\nb:\n  - {w: ?, h: '2 m'}\n  - [?, \"x\"]\nc: |\n  two\n  lines\n"
    quick = compose(text, "f")
    monkeypatch.setattr(nodes, "_LOADER", yaml.SafeLoader)
    assert compose(text, "f") == quick


@pytest.mark.parametrize(
    ("text", "message"), [each for each in MESSAGES if "`[` or `{`" not in each[1]]
)
def test_the_slower_parser_refuses_with_the_same_code(
    text: str, message: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(nodes, "_LOADER", yaml.SafeLoader)
    assert refusal(text).rsplit(" ", 1)[1] == message.rsplit(" ", 1)[1]


WORD = st.text(st.characters(codec="utf-8", exclude_categories=("C", "Z")), min_size=1, max_size=12)
TREE = st.recursive(
    WORD,
    lambda inside: st.lists(inside, max_size=4) | st.dictionaries(WORD, inside, max_size=4),
    max_leaves=20,
)


@given(st.dictionaries(WORD.filter(lambda word: word != "<<"), TREE, min_size=1, max_size=5))
def test_what_a_yaml_writer_writes_is_read_back(data: dict[str, Any]) -> None:
    class Plain(yaml.SafeDumper):
        def ignore_aliases(self, data: Any) -> bool:
            del data
            return True

    assert compose(yaml.dump(data, Dumper=Plain, allow_unicode=True), "f").data == data


@given(st.text(st.sampled_from("ab?:-[]{},#'\"&*!|>% \n\t"), max_size=40))
def test_any_text_is_read_or_refused_and_nothing_else(text: str) -> None:
    with contextlib.suppress(Refused):
        read = compose(text, "f")
        assert set(read.places) >= {(key,) for key in read.data}
