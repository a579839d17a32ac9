"""How a mistake in a rider's text is noted: where it stands, and whether reading can go on."""

from builder.reading.syntax_words import HIDDEN_ADVICE, Words
from builder.rider.text.characters import hidden_reason
from builder.rider.text.cursor import Cursor, Place, column_of, line_of, line_words, place_here
from builder.rider.text.tree import part_of


def note(cursor: Cursor, place: Place, path: str, *, reason: str, code: str, advice: str) -> None:
    """Note a mistake that leaves the rest readable."""
    cursor["mistakes"].append(
        {
            "line": line_of(place),
            "column": column_of(place),
            "part": part_of(path),
            "path": path,
            "value": "",
            "reason": reason,
            "code": code,
            "advice": advice,
        }
    )


def stop_here(cursor: Cursor, words: Words) -> None:
    """Stop at the cursor: what stands here cannot be read as YAML."""
    stop_at(cursor, place_here(cursor), words)


def stop_at(cursor: Cursor, place: Place, words: Words) -> None:
    """Stop, and tell a place with the words of its line. Only the first stop is told."""
    if cursor["stopped"]:
        return
    cursor["stopped"] = True
    cursor["mistakes"].append(
        {
            "line": line_of(place),
            "column": column_of(place),
            "part": "",
            "path": "",
            "value": line_words(cursor, place["line_start"]),
            "reason": words[0],
            "code": "yaml-syntax",
            "advice": words[1],
        }
    )


def stop_for(cursor: Cursor, place: Place, *, reason: str, code: str, advice: str) -> None:
    """Stop for what is beyond a bound, at a place whose words do not matter."""
    if not cursor["stopped"]:
        cursor["stopped"] = True
        note(cursor, place, "", reason=reason, code=code, advice=advice)


def note_hidden(cursor: Cursor, place: Place, path: str, char: str) -> None:
    """Note a character that hides what is written."""
    reason = hidden_reason(char)
    note(cursor, place, path, reason=reason, code="control-character", advice=HIDDEN_ADVICE)
