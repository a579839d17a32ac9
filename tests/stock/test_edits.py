"""Edits: only the characters concerned change, whatever style the crew writes in."""

import pytest

from builder.reading.nodes import compose
from builder.reading.problems import Refused
from builder.stock.edits import Append, Edit, Set, Unset, edited, spliced

FILE = """\
# Head.
verified: {on: 2026-09-14, by: head of sound, how: measured}   # by hand

subs:
  - name: Floor subs       # ours
    count: 10
    out_of_service: [7]

    # The line in front of the skirt.
    note: 'Between the barrier and the deck'

  - name: Side subs
    count:   "2"
    note: >
      Folded over
      two lines.

stock:
  # Microphones
  - {name: Vellum 8, count: 14, condition: limited, note: "One has been dropped."}
  - {name: Vellum 7, count: 12}
  # Only for broadcasts.
  - {name: Vellum 5, count: 1}
# Foot.
"""


def after(*edits: Edit, text: str = FILE) -> list[str]:
    """The lines that an edit takes out (-) and puts in (+)."""
    old, new = text.splitlines(), edited(text, "sound.yml", edits).splitlines()
    return [f"-{line}" for line in old if line not in new] + [
        f"+{line}" for line in new if line not in old
    ]


def test_a_value_is_replaced_and_its_comment_stays() -> None:
    assert after(Set(("subs", 0, "count"), "9")) == ["-    count: 10", "+    count: 9"]
    assert after(Set(("verified", "on"), "2026-11-25")) == [
        "-verified: {on: 2026-09-14, by: head of sound, how: measured}   # by hand",
        "+verified: {on: 2026-11-25, by: head of sound, how: measured}   # by hand",
    ]


def test_quotes_and_the_space_before_a_value_are_kept() -> None:
    assert after(Set(("subs", 1, "count"), "3")) == ['-    count:   "2"', '+    count:   "3"']
    assert after(Set(("subs", 0, "note"), "Skirt's gone")) == [
        "-    note: 'Between the barrier and the deck'",
        "+    note: 'Skirt''s gone'",
    ]


def test_a_value_that_yaml_would_misread_gets_quotes() -> None:
    assert (
        after(Set(("stock", 1, "count"), "a, b: c # d"))[1]
        == '+  - {name: Vellum 7, count: "a, b: c # d"}'
    )


def test_a_folded_text_is_replaced_and_the_blank_line_after_it_stays() -> None:
    changed = edited(FILE, "sound.yml", [Set(("subs", 1, "note"), "Short")])
    assert "    note: Short\n\nstock:" in changed


def test_a_key_that_is_added_stands_before_the_note() -> None:
    assert after(Set(("stock", 0, "working"), "13"))[1].startswith(
        "+  - {name: Vellum 8, count: 14, condition: limited, working: 13, note:"
    )
    assert "    out_of_service: [7]\n    condition: limited\n\n    # The line" in edited(
        FILE, "f.yml", [Set(("subs", 0, "condition"), "limited")]
    )


def test_a_key_that_is_added_last_stands_in_its_neighbours_column() -> None:
    assert after(Set(("stock", 1, "condition"), "limited")) == [
        "-  - {name: Vellum 7, count: 12}",
        "+  - {name: Vellum 7, count: 12, condition: limited}",
    ]


def test_a_key_is_taken_out_and_the_comment_above_it_stays() -> None:
    assert after(Unset(("subs", 0, "note"))) == ["-    note: 'Between the barrier and the deck'"]
    assert (
        after(Unset(("stock", 0, "condition")))[1]
        == '+  - {name: Vellum 8, count: 14, note: "One has been dropped."}'
    )


def test_an_entry_is_appended_in_the_style_of_the_last() -> None:
    assert after(Append(("stock",), {"name": "Vellum 9", "count": "4"})) == [
        "+  - {name: Vellum 9, count: 4}"
    ]
    changed = edited(FILE, "sound.yml", [Append(("subs",), {"name": "Rear subs", "count": "4"})])
    assert "two lines.\n\n  - name: Rear subs\n    count: 4\n\nstock:" in changed


def test_an_entry_within_brackets_is_appended_and_taken_out() -> None:
    assert after(Append(("subs", 0, "out_of_service"), "8")) == [
        "-    out_of_service: [7]",
        "+    out_of_service: [7, 8]",
    ]
    assert after(Unset(("subs", 0, "out_of_service", 0))) == ["-    out_of_service: [7]"]


def test_a_list_that_is_not_there_is_begun() -> None:
    assert after(Append(("subs", 1, "dead"), "3")) == ["+    dead: [3]"]
    assert edited(FILE, "f.yml", [Append(("tails",), {"name": "Tail"})]).endswith(
        "count: 1}\n\ntails:\n  - {name: Tail}\n# Foot.\n"
    )


def test_an_entry_goes_with_its_own_comment_and_not_with_the_heading_of_the_run() -> None:
    assert after(Unset(("stock", 2))) == [
        "-  # Only for broadcasts.",
        "-  - {name: Vellum 5, count: 1}",
    ]
    assert after(Unset(("stock", 0))) == [
        '-  - {name: Vellum 8, count: 14, condition: limited, note: "One has been dropped."}'
    ]


def test_an_entry_goes_with_the_blank_line_that_divided_it() -> None:
    assert "skirt.\n    note: 'Between the barrier and the deck'\n\nstock:" in edited(
        FILE, "f.yml", [Unset(("subs", 1))]
    )
    assert "subs:\n  - name: Side subs\n" in edited(FILE, "f.yml", [Unset(("subs", 0))])


def test_windows_line_ends_are_kept() -> None:
    text = FILE.replace("\n", "\r\n")
    changed = edited(
        text,
        "f.yml",
        [
            Set(("subs", 0, "condition"), "limited"),
            Append(("stock",), {"name": "Vellum 9", "count": "4"}),
            Unset(("subs", 1)),
        ],
    )
    assert changed.count("\n") == changed.count("\r\n")


def test_a_file_without_a_last_line_end_can_be_added_to() -> None:
    assert (
        edited("a: 1\nb:\n  - c", "f.yml", [Append(("b",), "d"), Set(("e",), "2")])
        == "a: 1\nb:\n  - c\n  - d\ne: 2"
    )


@pytest.mark.parametrize(
    "edit",
    [
        Set(("subs", 0, "count"), "9"),
        Set(("subs", 0, "condition"), "limited"),
        Set(("stock", 1, "condition"), "out of service"),
        Append(("stock",), {"name": "Vellum 9"}),
        Append(("subs",), {"name": "Rear", "count": "4"}),
        Append(("subs", 0, "out_of_service"), "8"),
        Append(("tails",), {"name": "Tail"}),
        Unset(("subs", 1)),
        Unset(("stock", 0)),
        Unset(("stock", 2)),
    ],
)
def test_every_edit_can_be_undone_to_the_byte(edit: Edit) -> None:
    splice = spliced(FILE, "sound.yml", edit)
    assert splice.undone().applied(splice.applied(FILE)) == FILE


@pytest.mark.parametrize(
    ("edit", "inverse"),
    [
        (Set(("subs", 0, "condition"), "limited"), Unset(("subs", 0, "condition"))),
        (Set(("stock", 1, "condition"), "limited"), Unset(("stock", 1, "condition"))),
        (Append(("stock",), {"name": "Vellum 9"}), Unset(("stock", 3))),
        (Append(("subs",), {"name": "Rear", "count": "4"}), Unset(("subs", 2))),
        (Append(("subs", 0, "out_of_service"), "8"), Unset(("subs", 0, "out_of_service", 1))),
        (Append(("subs", 1, "out_of_service"), "8"), Unset(("subs", 1, "out_of_service", 0))),
        (Append(("tails",), {"name": "Tail"}), Unset(("tails", 0))),
    ],
)
def test_adding_and_taking_out_again_gives_the_first_bytes(edit: Edit, inverse: Edit) -> None:
    assert edited(FILE, "sound.yml", [edit, inverse]) == FILE
    crlf = FILE.replace("\n", "\r\n")
    assert edited(crlf, "sound.yml", [edit, inverse]) == crlf


def test_a_place_that_an_edit_would_disturb_is_refused_with_a_sentence() -> None:
    text = "a:\n  - note: |+\n      kept\n\n\n  - b: 1\n"
    assert compose(text, "f.yml")
    with pytest.raises(Refused) as refused:
        edited(text, "f.yml", [Set(("a", 0, "condition"), "limited")])
    assert (
        str(refused.value.problems[0])
        == "f.yml:2:5 a[1].condition is written in a way that cannot be changed without disturbing"
        " what stands around it; change it in an editor; nothing was changed [edit-by-hand]"
    )


OVER_LINES = """\
stock:
  - {name: A,   # why A
     count: 2,
     # how many work
     working: 1,   # one is bent
     note: x}
  - {name: B, tags: [1,   # one
       2, 3   # three
     ]}
"""


@pytest.mark.parametrize(
    "edit",
    [
        Set(("stock", 0, "condition"), "limited"),
        Set(("stock", 0, "count"), "3"),
        Append(("stock", 1, "tags"), "4"),
        Append(("stock",), {"name": "C"}),
        Unset(("stock", 0, "count")),
        Unset(("stock", 0, "note")),
        Unset(("stock", 0, "name")),
        Unset(("stock", 1, "tags", 1)),
        Unset(("stock", 1, "tags", 2)),
    ],
)
def test_brackets_that_run_over_lines_keep_their_comments(edit: Edit) -> None:
    before = OVER_LINES
    after = edited(before, "f.yml", [edit])
    assert [line.partition("#")[2] for line in before.splitlines() if "#" in line] == [
        line.partition("#")[2] for line in after.splitlines() if "#" in line
    ]


@pytest.mark.parametrize(
    "text",
    [
        "a: 1\n",
        "a: {b: {}}\n",
        "a: []\n",
        "# only this\na: '?'\n",
        "a:\n- b\n- c\n",
        "a:\n  -\n    b: 1\n    c: 2\n",
        "a:\n  - - x\n    - y\n",
    ],
)
def test_odd_but_right_yaml_is_edited_or_refused_and_never_spoiled(text: str) -> None:
    data = compose(text, "f.yml").data
    for edit in (
        Set(("a",), "2"),
        Set(("z",), "2"),
        Append(("z",), "2"),
        Unset(("a",)),
        Append(("z",), {"name": "x"}),
    ):
        try:
            after = compose(edited(text, "f.yml", [edit]), "f.yml").data
        except Refused as refused:
            assert [problem.code for problem in refused.problems] == ["edit-by-hand"]  # noqa: PT017
            continue
        rest = {key: value for key, value in data.items() if key not in edit.path}
        assert {key: value for key, value in after.items() if key not in edit.path} == rest
