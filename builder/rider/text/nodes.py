"""What brackets and indented blocks share: counting, and what is refused wherever it stands."""

from builder.reading.syntax_words import (
    ALIAS_ADVICE,
    ANCHOR_ADVICE,
    COMMA_IN_BRACES,
    DIRECTIVE,
    MERGED,
    NO_KEY,
    NO_VALUE_HERE,
    NOT_A_KEY,
    NUMBER_LOST_ADVICE,
    QUOTE_IT,
    STRAY_MARK,
    TAG_ADVICE,
    TWICE_ADVICE,
)
from builder.reading.values.faults import EMPTY_ADVICE
from builder.reading.values.sentences import fill
from builder.rider.text.characters import hidden_character
from builder.rider.text.cursor import (
    Cursor,
    Place,
    char_after,
    char_here,
    column_here,
    column_of,
    is_blank,
    is_gap,
    line_of,
    move,
    place_here,
    skip_blanks,
    text_between,
)
from builder.rider.text.mistakes import note, note_hidden, stop_for, stop_here
from builder.rider.text.tree import Node, text_node

DEEPEST = 40
MOST_NODES = 20_000
WORD_SIGNS = "abcdefghijklmnopqrstuvwxyz_"
DEEP = "is nested deeper than {most} levels"
MANY = "holds more than {most} values"
LOST = "is followed by '{words}', which YAML takes for a comment and does not read"
ALIAS = "uses the alias `{words}`"
ANCHOR = "sets the anchor `{words}`"
TAG = "has the tag `{words}`"
ODD = "has a value that begins with {sign}"
TWICE = "is written twice; the first is on line {line}"
BARE = "write `{word}` without the braces"


def opened(cursor: Cursor, depth: int) -> bool:
    """Count a list or a group at a depth; whether it is within the bounds."""
    count_node(cursor, place_here(cursor))
    if depth >= DEEPEST:
        stop_for(
            cursor,
            place_here(cursor),
            reason=fill(DEEP, {"most": str(DEEPEST)}),
            code="too-deep",
            advice="check the brackets and the indentation",
        )
    return not cursor["stopped"]


def count_node(cursor: Cursor, place: Place) -> None:
    """Count a value or a key that began at a place; stop where there are too many."""
    cursor["nodes"] += 1
    if cursor["nodes"] > MOST_NODES:
        stop_for(
            cursor,
            place,
            reason=fill(MANY, {"most": "20,000"}),
            code="too-many-nodes",
            advice="a rider is a few pages; write what stands together once",
        )


def text_at(cursor: Cursor, place: Place, path: str, text: str) -> Node:
    """A text that began at a place, looked through for hidden characters."""
    count_node(cursor, place)
    hidden = hidden_character(text)
    if hidden != "":
        note_hidden(cursor, place, path, hidden)
    return text_node(text, line_of(place), column_of(place))


def empty_at(cursor: Cursor, place: Place, path: str, advice: str) -> Node:
    """What stands where a value should be and is not."""
    count_node(cursor, place)
    note(cursor, place, path, reason="has no value", code="empty-value", advice=advice)
    return text_node("", line_of(place), column_of(place))


def advice_in_braces(key: str) -> str:
    """
    What to do about a key without a value in braces: mostly it is no key at all, but what follows a
    comma.
    """
    if key == "none" or key == "?" or key == "unknown":
        return fill(BARE, {"word": key})
    return EMPTY_ADVICE if is_word(key) else COMMA_IN_BRACES


def is_word(key: str) -> bool:
    """Whether a key is one word in small letters."""
    return key != "" and key[0] != "_" and all(WORD_SIGNS.find(char) >= 0 for char in key)


def check_number_lost(cursor: Cursor, place: Place, path: str) -> None:
    """Note a `#2` behind a text without quotes: names are numbered so, and it would be lost."""
    start = cursor["at"]
    while is_blank(cursor["chars"][start]):
        start += 1
    digit = cursor["chars"][start + 1] if cursor["chars"][start] == "#" else ""
    if start == cursor["at"] or not "0" <= digit <= "9":
        return
    end = start
    while not is_gap(cursor["chars"][end]) and cursor["chars"][end] not in (",", "]", "}"):
        end += 1
    note(
        cursor,
        place,
        path,
        reason=fill(LOST, {"words": text_between(cursor, start, end)}),
        code="number-lost",
        advice=NUMBER_LOST_ADVICE,
    )


def check_key(
    cursor: Cursor, place: Place, key: str, path: str, within: str, is_bare: bool, first: int
) -> None:
    """Note a key that is none; ``first`` is the line that writes it already, or 0."""
    if key.strip(" \t\n") == "":
        note(cursor, place, within, reason=NO_KEY[0], code="key-not-text", advice=NO_KEY[1])
    elif key == "<<" and is_bare:
        note(cursor, place, path, reason=MERGED[0], code="alias", advice=MERGED[1])
    elif first > 0:
        reason = fill(TWICE, {"line": str(first)})
        note(cursor, place, path, reason=reason, code="duplicate-key", advice=TWICE_ADVICE)


def stop_for_key(cursor: Cursor, place: Place, path: str) -> None:
    """Stop where a list or a group is used as a key."""
    if not cursor["stopped"]:
        cursor["stopped"] = True
        note(cursor, place, path, reason=NOT_A_KEY[0], code="key-not-text", advice=NOT_A_KEY[1])


def skip_marks(cursor: Cursor, path: str) -> bool:
    """
    Over an anchor, an alias or a tag, each noted; whether it was an alias, which stands for a
    value.
    """
    while char_here(cursor) in ("&", "!", "*"):
        sign = char_here(cursor)
        place = place_here(cursor)
        words = mark_words(cursor)
        if sign == "*":
            reason = fill(ALIAS, {"words": words})
            note(cursor, place, path, reason=reason, code="alias", advice=ALIAS_ADVICE)
            return True
        if sign == "&":
            reason = fill(ANCHOR, {"words": words})
            note(cursor, place, path, reason=reason, code="alias", advice=ANCHOR_ADVICE)
        else:
            reason = fill(TAG, {"words": words})
            note(cursor, place, path, reason=reason, code="tag", advice=TAG_ADVICE)
        skip_blanks(cursor)
    return False


def mark_words(cursor: Cursor) -> str:
    """An anchor, an alias or a tag with its sign."""
    start = cursor["at"]
    while not is_gap(char_here(cursor)) and char_here(cursor) not in (",", "[", "]", "{", "}"):
        move(cursor)
    return text_between(cursor, start, cursor["at"])


def stop_for_sign(cursor: Cursor) -> None:
    """Stop at a sign that no value begins with, in the words that help most."""
    sign = char_here(cursor)
    if sign == "?" and is_gap(char_after(cursor, 1)):
        stop_here(cursor, STRAY_MARK)
    elif sign == "%" and column_here(cursor) == 0:
        stop_here(cursor, DIRECTIVE)
    elif sign in ("%", "@", "`"):
        stop_here(cursor, (fill(ODD, {"sign": sign}), QUOTE_IT))
    else:
        stop_here(cursor, NO_VALUE_HERE)
