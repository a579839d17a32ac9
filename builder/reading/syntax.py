"""A YAML parser's complaint in plain words, at the place the author should look."""

from typing import Any

from builder.reading import syntax_words as words
from builder.reading.problems import Problem, Where

DEEPEST = 40

# What the two parsers say (libyaml's words or Python's), what it means, how to go on, and whether
# the mistake is where the parser began.
_PLAIN = (
    ("mapping values are not allowed", words.STRAY_COLON, False),
    ("mapping keys are not allowed", words.STRAY_MARK, False),
    ("unexpected end of stream", words.OPEN_QUOTE, True),
    ("',' or ']'", words.OPEN_LIST, True),
    ("',' or '}'", words.OPEN_GROUP, True),
    ("'-' indicator", words.UNEVEN_LIST, False),
    ("sequence entries are not allowed", words.LIST_ON_KEY_LINE, False),
    ("could not find expected ':'", words.NO_COLON, True),
    ("escape character", words.BAD_ESCAPE, False),
    ("expected key", words.UNEVEN_KEYS, False),
    ("<block end>", words.UNEVEN_BLOCK, False),
    ("node content", words.NO_VALUE_HERE, False),
    ("directive", words.DIRECTIVE, False),
    ("comment or line break", words.WORDS_AFTER_SIGN, False),
    ("chomping or indentation", words.WORDS_AFTER_SIGN, False),
    ("tab character that violates", words.TAB, False),
)


def syntax_problem(wrong: Exception, text: str, file: str) -> Problem:
    """The parser's complaint as a problem with a place and a plain sentence."""
    said = str(getattr(wrong, "problem", None) or "")
    for phrase, (reason, advice), at_start in _PLAIN:
        if phrase in said:
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
        "cannot be read as YAML",
        f"the parser says: {said}" if said else words.QUOTE_SIGNS,
        mark,
        text,
        file,
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
        return words.TAB
    return f"has a value that begins with {sign}", words.QUOTE_IT


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
