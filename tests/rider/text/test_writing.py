"""What the page writes is read as it was."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from builder.rider.text.document import read_tree
from builder.rider.text.tree import Node, group_node, list_node, text_node
from builder.rider.text.writing import rider_text
from tests.rider.text.trees import RIDERS, by_the_parser, data_of

WORDS = [
    "plain", "it's", 'say "yes"', "a: b", "# no", "- x", "[a]", "{b}", "no", "?", "27'-10 1/2\"",
    "back\\slash", "ünder", "x, y", "@", "%", "&", "*", "!", "|", ">", "two\nlines", " blank ", "",
    "a ", "-1", "1.5 m", "tab\there", "😀", "\x85",
]  # fmt: skip


def tree_of(data: Any) -> Node:
    """Plain data as a tree without places."""
    if isinstance(data, str):
        return text_node(data, 0, 0)
    if isinstance(data, list):
        return list_node([tree_of(item) for item in data], 0, 0)
    entries = [
        {"key": key, "line": 0, "column": 0, "value": tree_of(value)} for key, value in data.items()
    ]
    return group_node(entries, 0, 0)  # type: ignore[arg-type]


def test_a_rider_stands_on_few_lines_and_only_what_needs_quotes_has_them() -> None:
    data = {"act": "Five Wet Dogs", "clock": {"set": "90 min"}, "needs": [{"what": "a: b"}, "c"]}
    assert rider_text(tree_of(data)) == (
        'act: Five Wet Dogs\nclock: {set: 90 min}\nneeds:\n  - {what: "a: b"}\n  - c\n'
    )


def test_every_text_is_read_back_by_our_reader_and_by_a_parser_of_yaml() -> None:
    data = {"act": "A: B", "questions": [word for word in WORDS if word != "\x85"]}
    text = rider_text(tree_of(data))
    parsed = by_the_parser(text)
    assert data_of(read_tree(text)["tree"]) == data
    assert parsed is not None
    assert parsed[0] == data


def test_whole_riders_are_written_and_read_back() -> None:
    for text in RIDERS:
        data = data_of(read_tree(text)["tree"])
        assert data_of(read_tree(rider_text(tree_of(data)))["tree"]) == data


TEXT = st.one_of(
    st.sampled_from(WORDS), st.text(st.characters(exclude_categories=("C",)), max_size=9)
).filter(lambda text: "\x85" not in text)
KEY = TEXT.filter(lambda key: key.strip() != "")


@given(
    st.dictionaries(
        KEY,
        st.recursive(
            TEXT,
            lambda inside: st.lists(inside, max_size=3) | st.dictionaries(KEY, inside, max_size=3),
            max_leaves=8,
        ),
        min_size=1,
        max_size=4,
    )
)
def test_whatever_a_form_holds_is_read_back(data: dict[str, Any]) -> None:
    assert data_of(read_tree(rider_text(tree_of(data)))["tree"]) == data
