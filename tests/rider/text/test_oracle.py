"""
What a parser of YAML reads, our reader reads the same, with every place, or refuses with a line.
"""

from collections import Counter
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from builder.rider.text.document import read_tree
from tests.laws import share
from tests.rider.text.trees import RIDERS, by_our_reader, by_the_parser, data_of, spoiled

EXAMPLES = [
    "act: one\n  two\n  three\n",
    "act: one\n\n\n  two\n",
    "act: 'one\n  two'\n",
    'act: "one\n\n  two\\\n   three"\n',
    "act: |\n  one\n   two\n\n  three\n\n",
    "act: >\n  one\n  two\n\n   three\n  four\n",
    "act: >-\n  one\n\n\n",
    "act: |+\n  one\n\n\n",
    "act: |2-\n    one\n  two\n",
    "act: |-2\n    one\n",
    "act: | # told below\n  one\n",
    'act: "\\x41\\u00e9\\U0001F600\\t\\"\\\\\\/\\_\\ "\n',
    "\"act\": A\n'needs': []\n",
    "\ufeffact: A\n",
    "act: A\r\nneeds:\r\n  - {what: haze, is: yes}\r\n",
    "act: A\rquestions:\r- one\r",
    "needs:\n  - {what: x,\n     at least: 3 m,\n    }\n",
    "questions: [one,\n  two\n  three, 'four\n five']\n",
    "questions:\n- - one\n  - two\n- three\n",
    "questions:\n- - one: a\n    two: b\n",
    "---\nact: A\n...\n# the end\n",
    "# first\n\nact: A # told\n# last\n",
    "needs: [a: 1, {b: 2}, 'c': 3]\n",
    "act: {a: ?, b: [?, ?], c: '?' }\nneeds:\n- ?\n- a: ?\n",
    "act: http://a.b/c:d#e\n",
    "a b : 1\n",
    "act:   \n   A\n",
    "act: A\n  # not told\n",
    "act: -1\nneeds: [-1, -x, - ]\n",
    "act: a, b] c}\n",
]


@pytest.mark.parametrize("text", EXAMPLES)
def test_each_way_to_write_a_value_is_read_as_a_parser_of_yaml_reads_it(text: str) -> None:
    theirs = by_the_parser(text)
    assert by_our_reader(text) == theirs


@pytest.mark.parametrize("text", RIDERS)
def test_whole_riders_are_read_as_a_parser_of_yaml_reads_them(text: str) -> None:
    assert by_our_reader(text) == by_the_parser(text) is not None


def check_against_the_parser(texts: list[str]) -> Counter[str]:
    """Where both read a text they agree; how many each reads."""
    counted: Counter[str] = Counter()
    for text in texts:
        ours, theirs = by_our_reader(text), by_the_parser(text)
        counted["ours"] += ours is not None
        counted["theirs"] += theirs is not None
        if ours is not None and theirs is not None:
            counted["both"] += 1
            assert ours == theirs, text
        elif ours is not None:
            # A tab that indents nothing but blanks, which a parser refuses, says nothing here.
            assert "\t" in text, text
    return counted


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(range(400), law="rider text as YAML", usually=4))
def test_texts_made_by_chance_are_read_alike_wherever_both_read_them(seed: int) -> None:
    counted = check_against_the_parser(spoiled(1000, seed))
    assert counted["both"] > 100
    assert counted["both"] > 0.95 * counted["theirs"]


WORD = st.text(st.characters(codec="utf-8", exclude_categories=("C", "Z")), min_size=1, max_size=12)
TREE = st.recursive(
    WORD,
    lambda inside: st.lists(inside, max_size=4) | st.dictionaries(WORD, inside, max_size=4),
    max_leaves=20,
)


@given(
    st.dictionaries(WORD.filter(lambda word: word != "<<"), TREE, min_size=1, max_size=5),
    st.sampled_from([True, False, None]),
    st.sampled_from([None, "'", '"']),
    st.integers(10, 80),
)
def test_what_a_writer_of_yaml_writes_is_read_back(
    data: dict[str, Any], flow: bool | None, style: str | None, width: int
) -> None:
    class Plain(yaml.SafeDumper):
        def ignore_aliases(self, data: Any) -> bool:
            del data
            return True

    text = yaml.dump(
        data,
        Dumper=Plain,
        allow_unicode=True,
        default_flow_style=flow,
        default_style=style,
        width=width,
    )
    if by_the_parser(text.replace("!!str ", "")) is not None:
        assert data_of(read_tree(text.replace("!!str ", ""))["tree"]) == data
