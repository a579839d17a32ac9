"""A rider's whole text to its tree, or to what is wrong with it."""

from typing import TypedDict

from builder.reading.syntax_words import (
    EMPTY_FILE,
    SECOND_DOCUMENT,
    TOP_ADVICE,
    UNEVEN_BLOCK,
)
from builder.reading.values.sentences import fill
from builder.rider.text.blocks import block_value, ends_well, refuse_tab
from builder.rider.text.characters import is_hidden, with_plain_line_ends
from builder.rider.text.cursor import (
    AHEAD,
    END,
    Cursor,
    char_here,
    cursor_over,
    go_back,
    is_document_mark,
    is_over,
    move_by,
    place_here,
    skip_gap,
)
from builder.rider.text.mistakes import note, note_hidden, stop_here
from builder.rider.text.nodes import stop_for_sign
from builder.rider.text.tree import Mistake, Node, group_node

LARGEST = 200_000
"""The most characters of a rider."""
MOST_SHOWN = 20
TOO_BIG = "is longer than {most} characters"
SHORTEN = "a rider is a few pages; keep plans and pictures in files of their own"
AT_TOP = "is {what} at the top level"


class Reading(TypedDict):
    """What a text holds: its top group, empty where there are mistakes."""

    tree: Node
    mistakes: list[Mistake]


def read_tree(text: str) -> Reading:
    """
    The tree that a rider's text holds, with every mistake that can be told at once.

    Codes: `yaml-syntax`, `duplicate-key`, `alias`, `tag`, `several-documents`, `not-a-mapping`,
    `empty-file`, `empty-value`, `number-lost`, `key-not-text`, `control-character`, `too-big`,
    `too-deep`, `too-many-nodes`.
    """
    plain = with_plain_line_ends(text)
    if len(plain) > LARGEST:
        return refused([whole_text(fill(TOO_BIG, {"most": "200,000"}), "too-big", SHORTEN)])
    cursor = cursor_over(plain)
    note_all_hidden(cursor)
    if len(cursor["mistakes"]) > 0:
        return refused(cursor["mistakes"])
    tree = document(cursor)
    if len(cursor["mistakes"]) > 0:
        return refused(cursor["mistakes"])
    return {"tree": tree, "mistakes": []}


def refused(mistakes: list[Mistake]) -> Reading:
    """No tree, but mistakes."""
    return {"tree": group_node([], 0, 0), "mistakes": mistakes}


def whole_text(reason: str, code: str, advice: str) -> Mistake:
    """A mistake of the text as a whole."""
    return {
        "line": 0,
        "column": 0,
        "part": "",
        "path": "",
        "value": "",
        "reason": reason,
        "code": code,
        "advice": advice,
    }


def note_all_hidden(cursor: Cursor) -> None:
    """Note the first characters that hide what is written."""
    last = len(cursor["chars"]) - AHEAD
    while cursor["at"] < last and len(cursor["mistakes"]) < MOST_SHOWN:
        char = char_here(cursor)
        if is_hidden(char):
            note_hidden(cursor, place_here(cursor), "", char)
        cursor["at"] += 1
        if char == "\n":
            cursor["line"] += 1
            cursor["line_start"] = cursor["at"]
    go_back(cursor, {"at": 0, "line": 0, "line_start": 0})


def document(cursor: Cursor) -> Node:
    """The only document of a text."""
    starts_line = skip_opening(cursor)
    if is_over(cursor):
        if not cursor["stopped"]:
            cursor["mistakes"].append(whole_text(EMPTY_FILE[0], "empty-file", EMPTY_FILE[1]))
        check_end(cursor)
        return group_node([], 0, 0)
    place = place_here(cursor)
    if starts_line:
        refuse_tab(cursor, cursor["line_start"])
    tree = block_value(cursor, -1, starts_line, "", 0)
    if not cursor["stopped"] and tree["kind"] != "group":
        what = "a list" if tree["kind"] == "list" else "one piece of text"
        reason = fill(AT_TOP, {"what": what})
        note(cursor, place, "", reason=reason, code="not-a-mapping", advice=TOP_ADVICE)
    if ends_well(cursor, UNEVEN_BLOCK):
        stop_here(cursor, UNEVEN_BLOCK)
    check_end(cursor)
    return tree


def skip_opening(cursor: Cursor) -> bool:
    """Over what may stand before the first key; whether that key begins its line."""
    skip_gap(cursor)
    if char_here(cursor) == "%":
        stop_for_sign(cursor)
    if char_here(cursor) == "-" and is_document_mark(cursor):
        move_by(cursor, 3)
        return skip_gap(cursor)
    return True


def check_end(cursor: Cursor) -> None:
    """Note a second document; `...` may end the first."""
    if cursor["stopped"] or not is_document_mark(cursor):
        return
    place = place_here(cursor)
    if char_here(cursor) == ".":
        move_by(cursor, 3)
        skip_gap(cursor)
        if char_here(cursor) == END:
            return
        place = place_here(cursor)
    cursor["stopped"] = True
    reason, advice = SECOND_DOCUMENT
    note(cursor, place, "", reason=reason, code="several-documents", advice=advice)
