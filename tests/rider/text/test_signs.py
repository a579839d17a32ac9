"""Signs of YAML one by one, each with what a reader of YAML 1.2 makes of it, by hand."""

import pytest

from builder.rider.text.characters import hidden_character, hidden_reason
from builder.rider.text.document import read_tree
from builder.rider.text.tree import part_of
from tests.rider.text.trees import data_of, said

READ = [
    ("a:\n ?\n", {"a": "?"}),
    ("a: ?\nb: c\n", {"a": "?", "b": "c"}),
    ("a: ? # nobody knows\n", {"a": "?"}),
    ("a: [?, 3 m]\n", {"a": ["?", "3 m"]}),
    ("a:\n- ?\n- b\n", {"a": ["?", "b"]}),
    ("a: {b: ?}\n", {"a": {"b": "?"}}),
    ("a: ?b\n", {"a": "?b"}),
    ("a: -b\n", {"a": "-b"}),
    ("a: b-c: d\n", None),
    ("a: 22:30\n", {"a": "22:30"}),
    ("a: b#c\n", {"a": "b#c"}),
    ("a: b # c\n", {"a": "b"}),
    ("a: [b:c, d]\n", {"a": ["b:c", "d"]}),
    ('a: "b\\u00e9\\x41\\U0001F600"\n', {"a": "béA😀"}),
    ('a: "b\\n\\"c\\""\n', {"a": 'b\n"c"'}),
    ('a: "b\\u00g9"\n', None),
    ('a: "b\\x4"\n', None),
    ('a: "b\\ud800"\n', None),
    ('a: "b\\U00110000"\n', None),
    ("a: 'b''c'\n", {"a": "b'c"}),
    ("a: 'b\n\n  c\n  d'\n", {"a": "b\nc d"}),
    ('a: "b\\\n  c"\n', {"a": "bc"}),
    ("a: b\n  c\n\n  d\n", {"a": "b c\nd"}),
    ("a: |\n  b\n   c\n\n  d\n", {"a": "b\n c\n\nd\n"}),
    ("a: |-\n  b\n", {"a": "b"}),
    ("a: |+\n  b\n\n", {"a": "b\n\n"}),
    ("a: |2\n   b\n", {"a": " b\n"}),
    ("a: >\n  b\n  c\n\n  d\n", {"a": "b c\nd\n"}),
    ("a: >-\n  b\n   c\n  d\n", {"a": "b\n c\nd"}),
    ("a: |\n\tb\n", None),
    ("a: |\n  b\n\tc\n", None),
    ("'a b': c\n", {"a b": "c"}),
    ("a: [b\nc, d]\n", {"a": ["b c", "d"]}),
    ("a: {b: c, d: e}\n", {"a": {"b": "c", "d": "e"}}),
    ("a: {b: c, b: e}\n", None),
    ("a: b\na: c\n", None),
    ('"a": {b: [c, {d: e}]}\n', {"a": {"b": ["c", {"d": "e"}]}}),
]


@pytest.mark.parametrize(("text", "data"), READ)
def test_a_text_is_read_as_yaml_reads_it_or_refused(text: str, data: object) -> None:
    found = read_tree(text)
    if data is None:
        assert found["mistakes"] != []
    else:
        assert [said(mistake) for mistake in found["mistakes"]] == []
        assert data_of(found["tree"]) == data


@pytest.mark.parametrize("text", ["a: |\n\tb\n", "a: |\n  b\n\tc\n", "a: |2\n\tb\n"])
def test_a_text_over_lines_that_is_indented_with_a_tab_says_so(text: str) -> None:
    (mistake,) = read_tree(text)["mistakes"]
    assert "is indented with a tab; indent with spaces" in said(mistake)


HIDDEN = (0x00, 0x08, 0x0B, 0x0C, 0x1F, 0x7F, 0x80, 0x9F, 0x2028, 0x2029, 0x202A, 0x202E)
MORE_HIDDEN = (0x2066, 0x2069, 0xD800, 0xDFFF, 0xE000, 0xFEFF, 0xFFFE, 0xFFFF)
SHOWN = (0x09, 0x0A, 0x20, 0x7E, 0xA0, 0xE9, 0x2027, 0x202F, 0x2065, 0x206A, 0xE001, 0xFFFD)


@pytest.mark.parametrize("code", [*HIDDEN, *MORE_HIDDEN])
def test_what_an_editor_would_hide_or_obey_is_found(code: int) -> None:
    assert hidden_character(f"a{chr(code)}b") == chr(code)


@pytest.mark.parametrize("code", [*SHOWN, 0xD7FF, 0xFEFE, 0xFF00, 0x1F600])
def test_what_a_reader_sees_is_let_stand(code: int) -> None:
    assert hidden_character(f"a{chr(code)}b") == ""


@pytest.mark.parametrize(
    ("char", "number"), [("\x07", "0007"), ("\x1b", "001B"), ("\u202e", "202E"), ("\x9f", "009F")]
)
def test_a_hidden_character_is_told_by_its_number(char: str, number: str) -> None:
    assert hidden_reason(char) == f"has the control character U+{number}"


@pytest.mark.parametrize(
    ("path", "part"),
    [("act", "act"), ("needs[2].at least", "needs[2]"), ("clock.day", "clock"), ("", "")],
)
def test_a_path_begins_with_its_part(path: str, part: str) -> None:
    assert part_of(path) == part
