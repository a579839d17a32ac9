"""A YAML parser's complaint in plain words, at the place the author should look."""

from typing import Any

from builder.reading.problems import Problem, Where

DEEPEST = 40

_QUOTES = "put quotes around a value that holds a sign YAML uses, such as `: `, ` #`, `[` or `{`"
_LINE_UP = "line the keys up with spaces; put quotes around the whole value or around none of it"

# What the two parsers say (libyaml's words or Python's), what it means, how to go on, and whether
# the mistake is where the parser began.
_PLAIN = (
    (
        "mapping values are not allowed",
        "has a colon where no key can stand",
        f"check the indentation, or {_QUOTES}",
        False,
    ),
    (
        "mapping keys are not allowed",
        "has a `?` before other words",
        "put quotes around the value",
        False,
    ),
    (
        "unexpected end of stream",
        "opens a quote that is never closed",
        "add the closing quote",
        True,
    ),
    (
        "',' or ']'",
        "has a list in `[ ]` that is not closed, or lacks a comma",
        "check the brackets, commas and quotes",
        True,
    ),
    (
        "',' or '}'",
        "has a group in `{ }` that is not closed, or lacks a comma",
        "check the brackets, commas and quotes",
        True,
    ),
    (
        "'-' indicator",
        "does not line up with the list above",
        "begin each item with `- ` in the same column",
        False,
    ),
    (
        "could not find expected ':'",
        "has a line without a colon",
        "write `key: value`, with a space after the colon",
        True,
    ),
    (
        "escape character",
        "has a backslash that YAML cannot read",
        "put the value in single quotes",
        False,
    ),
    (
        "expected key",
        "does not line up with the keys above, or has words after a closing quote",
        _LINE_UP,
        False,
    ),
    (
        "<block end>",
        "does not line up with what is above, or has words after a closing quote",
        _LINE_UP,
        False,
    ),
    ("node content", "has a bracket, a comma or a sign where a value should begin", _QUOTES, False),
    ("directive", "begins a line with `%`", "put quotes around the value", False),
    (
        "comment or line break",
        "has words after `|` or `>`",
        "begin the words on the next line, indented",
        False,
    ),
    (
        "chomping or indentation",
        "has words after `|` or `>`",
        "begin the words on the next line, indented",
        False,
    ),
)


def syntax_problem(wrong: Exception, text: str, file: str) -> Problem:
    """The parser's complaint as a problem with a place and a plain sentence."""
    said = str(getattr(wrong, "problem", None) or "")
    for words, reason, advice, at_start in _PLAIN:
        if words in said:
            mark = getattr(wrong, "context_mark", None) if at_start else None
            return _problem(
                reason, advice, mark or getattr(wrong, "problem_mark", None), text, file
            )
    mark = getattr(wrong, "problem_mark", None)
    if "nesting depth" in said:
        # libyaml looks ahead along a line and can meet its own limit before our count does.
        return too_deep(Where(file, mark.line + 1, mark.column + 1) if mark else Where(file))
    if "cannot start any token" in said:
        return _problem(
            *_odd_start(_line(text, mark)[mark.column : mark.column + 1] if mark else ""),
            mark,
            text,
            file,
        )
    return _problem(
        "cannot be read as YAML", f"the parser says: {said}" if said else _QUOTES, mark, text, file
    )


def too_deep(where: Where) -> Problem:
    """A text nested beyond the limit."""
    return Problem(
        where,
        "",
        "",
        f"is nested deeper than {DEEPEST} levels",
        "too-deep",
        "check the brackets and the indentation",
    )


def _odd_start(sign: str) -> tuple[str, str]:
    if sign == "\t":
        return "is indented with a tab", "indent with spaces"
    return f"has a value that begins with {sign}", "put quotes around the value"


def _line(text: str, mark: Any) -> str:
    lines = text.split("\n")
    return lines[mark.line] if mark.line < len(lines) else ""


def _problem(reason: str, advice: str, mark: Any, text: str, file: str) -> Problem:
    if mark is None:
        return Problem(Where(file), "", "", reason, "yaml-syntax", advice)
    return Problem(
        Where(file, mark.line + 1, mark.column + 1),
        "",
        _line(text, mark).strip(),
        reason,
        "yaml-syntax",
        advice,
    )
