"""What cannot be read is told with its line, and how to go on."""

import pytest

from builder.rider.text.document import read_tree
from tests.rider.text.trees import said, spoiled

LINE_UP = (
    "line the keys up with spaces; put quotes around the whole value or around none of it"
    " [yaml-syntax]"
)
QUOTES = "put quotes around a value that holds a sign YAML uses, such as `: `, ` #`, `[` or `{`"
NEITHER = "does not line up with the keys above, or has words after a closing quote"
MISTAKES = [
    (
        "act:\n",
        "1:5 act has no value; write a value, `unknown` if nobody knows it yet, `none`, or leave"
        " the key out [empty-value]",
    ),
    (
        "act: A\nneeds:\n  -\n  - {what: x}\n",
        "3:4 needs[1] has no value; write a value, `unknown` if nobody knows it yet, `none`, or"
        " leave the key out [empty-value]",
    ),
    (
        "act: 'A\n",
        "1:6 'act: 'A' opens a quote that is never closed; add the closing quote [yaml-syntax]",
    ),
    ("\tact: A\n", "1:1 'act: A' is indented with a tab; indent with spaces [yaml-syntax]"),
    (
        "needs:\n\t- A\n",
        "2:1 '- A' is indented with a tab; indent with spaces [yaml-syntax]",
    ),
    (
        "act: @A\n",
        "1:6 'act: @A' has a value that begins with @; put quotes around the value [yaml-syntax]",
    ),
    (
        "needs: [a, b\n",
        "1:8 'needs: [a, b' has a list in `[ ]` that is not closed, or lacks a comma; check the"
        " brackets, commas and quotes [yaml-syntax]",
    ),
    (
        "clock: {day: Friday\nact: A\n",
        "1:8 'clock: {day: Friday' has a group in `{ }` that is not closed, or lacks a comma; check"
        " the brackets, commas and quotes [yaml-syntax]",
    ),
    (
        "act: A: B\n",
        f"1:7 'act: A: B' has a colon where no key can stand; check the indentation, or {QUOTES}"
        " [yaml-syntax]",
    ),
    (
        "act: A\n  needs: B\n",
        f"2:8 'needs: B' has a colon where no key can stand; check the indentation, or {QUOTES}"
        " [yaml-syntax]",
    ),
    (
        "act: A\nneeds\n",
        "2:1 'needs' has a line without a colon; write `key: value`, with a space after the colon"
        " [yaml-syntax]",
    ),
    (
        'act: "\\q"\n',
        "1:7 'act: \"\\q\"' has a backslash that YAML cannot read; put the value in single quotes"
        " [yaml-syntax]",
    ),
    (
        'act: "\\ud800"\n',
        "1:7 'act: \"\\ud800\"' has a backslash that YAML cannot read; put the value in single"
        " quotes [yaml-syntax]",
    ),
    (
        "act: |A\n",
        "1:7 'act: |A' has words after `|` or `>`; begin the words on the next line, indented"
        " [yaml-syntax]",
    ),
    ("%A\n", "1:1 '%A' begins a line with `%`; put quotes around the value [yaml-syntax]"),
    (
        "act: ]\n",
        "1:6 'act: ]' has a bracket, a comma or a sign where a value should begin;"
        f" {QUOTES} [yaml-syntax]",
    ),
    ('act: "A" B\n', f"1:10 'act: \"A\" B' {NEITHER}; {LINE_UP}"),
    ("act: A\n needs: B\n", "2:7 'needs: B' has a colon where no key can stand;"),
    ("clock:\n    day: Friday\n  set: 1 h\n", f"3:3 'set: 1 h' {NEITHER}; {LINE_UP}"),
    (
        "needs:\n  - a\n   - b\n  - 'c'\n    - d\n",
        "5:5 '- d' does not line up with the list above; begin each item with `- ` in the same"
        " column [yaml-syntax]",
    ),
    (
        "needs: - a\n",
        "1:8 'needs: - a' begins a list on the line of its key; begin each item with `- ` on a line"
        " of its own, or write `[first, second]` [yaml-syntax]",
    ),
    (
        "act: ? A\n",
        "1:6 'act: ? A' has a `?` before other words; put quotes around the value [yaml-syntax]",
    ),
    (
        "act: A\nplays: x\nact: B\n",
        "3:1 act is written twice; the first is on line 1; keep one of them [duplicate-key]",
    ),
    ("act: *a\n", "1:6 act uses the alias `*a`; write the value out [alias]"),
    (
        "act: &a A\n",
        "1:6 act sets the anchor `&a`; remove it, and write the value out wherever it is wanted"
        " [alias]",
    ),
    ("<<: {a: 1}\n", "1:1 << merges keys with `<<`; write the keys out [alias]"),
    (
        "act: !x A\n",
        "1:6 act has the tag `!x`; remove it; the field decides how its value is read [tag]",
    ),
    (
        "act: A\n---\nact: B\n",
        "2:1 starts a second document; keep one document a file; remove the `---` line"
        " [several-documents]",
    ),
    (
        "act: A\n...\nact: B\n",
        "3:1 starts a second document; keep one document a file; remove the `---` line"
        " [several-documents]",
    ),
    ("- A\n", "1:1 is a list at the top level; begin with `key: value` lines [not-a-mapping]"),
    (
        "A\n",
        "1:1 is one piece of text at the top level; begin with `key: value` lines [not-a-mapping]",
    ),
    ("# A\n", " is empty; write `key: value` lines, or remove the file [empty-file]"),
    ("", " is empty; write `key: value` lines, or remove the file [empty-file]"),
    (
        "act: A\n[b]: c\n",
        "2:1 has a list or a group as a key; a key is one word or a few, before a colon"
        " [key-not-text]",
    ),
    (
        "'': A\n",
        "1:1 has a value without a key; write a word before the colon [key-not-text]",
    ),
    (
        'act: "\\u202e"\n',
        "1:6 act has the control character U+202E; delete it; an editor that shows hidden"
        " characters helps to find it [control-character]",
    ),
    (
        "act: A\x1b\n",
        "1:7 has the control character U+001B; delete it; an editor that shows hidden characters"
        " helps to find it [control-character]",
    ),
    (
        "act: Act #2\n",
        "1:6 act is followed by '#2', which YAML takes for a comment and does not read; put quotes"
        " around the whole value, or begin a comment with a word [number-lost]",
    ),
    (
        "needs: [{what: x, note: wide, very}]\n",
        "1:35 needs[1].very has no value; write a value, `unknown` if nobody knows it yet,"
        " `none`, or leave the key out [empty-value]",
    ),
    (
        "needs: [{what: x, at least: 1,5 m}]\n",
        "1:34 needs[1].5 m has no value; a comma in { } begins the next key; put quotes around a"
        " value that holds a comma, and write a decimal point as a point [empty-value]",
    ),
    (
        "clock: {?}\n",
        "1:10 clock.? has no value; write `?` without the braces [empty-value]",
    ),
]


@pytest.mark.parametrize(("text", "message"), MISTAKES)
def test_a_mistake_is_told_with_its_line_and_how_to_go_on(text: str, message: str) -> None:
    told = [said(mistake) for mistake in read_tree(text)["mistakes"]]
    assert len(told) == 1
    assert told[0].removeprefix("rider.yml").removeprefix(":").startswith(message.removeprefix(":"))


def test_what_does_not_hide_the_rest_is_told_together() -> None:
    text = "act: &x 1\nb: *x\nact: 2\nc:\nd: !t 3\ne: [1\n"
    codes = [mistake["code"] for mistake in read_tree(text)["mistakes"]]
    assert codes == ["alias", "alias", "duplicate-key", "empty-value", "tag", "yaml-syntax"]


def nested(levels: int) -> str:
    """So many lists and groups within each other."""
    return "a: " + "[" * (levels - 1) + "]" * (levels - 1)


def test_forty_levels_are_read_and_one_more_is_not() -> None:
    assert read_tree(nested(40))["mistakes"] == []
    assert [said(mistake) for mistake in read_tree(nested(41))["mistakes"]] == [
        "rider.yml:1:43 is nested deeper than 40 levels; check the brackets and the indentation"
        " [too-deep]"
    ]


def test_twenty_thousand_values_are_read_and_one_more_is_not() -> None:
    # The top group, its key and the list are three of them.
    assert read_tree("a: [" + "1," * 19_997 + "]")["mistakes"] == []
    mistakes = read_tree("a: [" + "1," * 19_998 + "]")["mistakes"]
    assert [said(mistake) for mistake in mistakes] == [
        "rider.yml:1:39999 holds more than 20,000 values; a rider is a few pages; write what stands"
        " together once [too-many-nodes]"
    ]


def test_two_hundred_thousand_characters_are_read_and_one_more_is_not() -> None:
    assert read_tree("a: " + "x" * 199_997)["mistakes"] == []
    assert [said(mistake) for mistake in read_tree("a: " + "x" * 199_998)["mistakes"]] == [
        "rider.yml is longer than 200,000 characters; a rider is a few pages; keep plans and"
        " pictures in files of their own [too-big]"
    ]


def test_only_the_first_twenty_hidden_characters_are_told() -> None:
    assert len(read_tree("a: " + "\x07" * 30)["mistakes"]) == 20


HOSTILE = {
    "lists in lists": "[" * 199_000,
    "groups in groups": "{" * 199_000,
    "dashes": "- " * 90_000,
    "keys of keys": "? " * 90_000,
    "anchors": "&a " * 60_000,
    "quotes": '"a\\' * 60_000,
    "empty lines": "a: b\n" + " \n" * 90_000 + " c",
    "marks": "a: " + "?," * 90_000 + "\n- [",
    "comments": "a: [" + "b #x\n" * 30_000,
    "long text": "a: >\n" + " x\n" * 60_000 + "\t",
}


@pytest.mark.parametrize("text", HOSTILE.values(), ids=list(HOSTILE))
def test_a_hostile_text_is_refused_in_steps_that_grow_with_its_length(text: str) -> None:
    from builder.rider.text import cursor

    steps = 0

    def counted(place: cursor.Cursor) -> str:
        nonlocal steps
        steps += 1
        return place["chars"][place["at"]]

    with pytest.MonkeyPatch.context() as patched:
        for module in ("blocks", "brackets", "cursor", "long_text", "nodes", "plain", "quoted"):
            patched.setattr(f"builder.rider.text.{module}.char_here", counted)
        read_tree(text)
    assert steps < 30 * len(text)


def test_no_text_raises_and_every_refusal_has_words() -> None:
    for text in spoiled(3000, seed=7):
        for mistake in read_tree(text)["mistakes"]:
            assert mistake["line"] > 0 or mistake["code"] == "empty-file", text
            assert mistake["reason"] != "" != mistake["advice"], text
