"""
What can be wrong with the signs of YAML, in plain words: a reason, and how to go on.

Descriptions of the house are read by a YAML parser and riders by a reader of our own; both say the
same of the same mistake.
"""

QUOTE_IT = "put quotes around the value"
QUOTE_SIGNS = (
    "put quotes around a value that holds a sign YAML uses, such as `: `, ` #`, `[` or `{`"
)
LINE_UP = "line the keys up with spaces; put quotes around the whole value or around none of it"
CHECK_BRACKETS = "check the brackets, commas and quotes"

Words = tuple[str, str]
"""A reason and an advice."""

STRAY_COLON: Words = (
    "has a colon where no key can stand",
    f"check the indentation, or {QUOTE_SIGNS}",
)
STRAY_MARK: Words = ("has a `?` before other words", QUOTE_IT)
OPEN_QUOTE: Words = ("opens a quote that is never closed", "add the closing quote")
OPEN_LIST: Words = ("has a list in `[ ]` that is not closed, or lacks a comma", CHECK_BRACKETS)
OPEN_GROUP: Words = ("has a group in `{ }` that is not closed, or lacks a comma", CHECK_BRACKETS)
UNEVEN_LIST: Words = (
    "does not line up with the list above",
    "begin each item with `- ` in the same column",
)
NO_COLON: Words = (
    "has a line without a colon",
    "write `key: value`, with a space after the colon",
)
BAD_ESCAPE: Words = ("has a backslash that YAML cannot read", "put the value in single quotes")
UNEVEN_KEYS: Words = (
    "does not line up with the keys above, or has words after a closing quote",
    LINE_UP,
)
UNEVEN_BLOCK: Words = (
    "does not line up with what is above, or has words after a closing quote",
    LINE_UP,
)
NO_VALUE_HERE: Words = (
    "has a bracket, a comma or a sign where a value should begin",
    QUOTE_SIGNS,
)
DIRECTIVE: Words = ("begins a line with `%`", QUOTE_IT)
WORDS_AFTER_SIGN: Words = (
    "has words after `|` or `>`",
    "begin the words on the next line, indented",
)
TAB: Words = ("is indented with a tab", "indent with spaces")
LIST_ON_KEY_LINE: Words = (
    "begins a list on the line of its key",
    "begin each item with `- ` on a line of its own, or write `[first, second]`",
)
NO_KEY: Words = ("has a value without a key", "write a word before the colon")
NOT_A_KEY: Words = (
    "has a list or a group as a key",
    "a key is one word or a few, before a colon",
)
MERGED: Words = ("merges keys with `<<`", "write the keys out")
NUMBER_LOST_ADVICE = "put quotes around the whole value, or begin a comment with a word"
ALIAS_ADVICE = "write the value out"
ANCHOR_ADVICE = "remove it, and write the value out wherever it is wanted"
TAG_ADVICE = "remove it; the field decides how its value is read"
TWICE_ADVICE = "keep one of them"
SECOND_DOCUMENT: Words = (
    "starts a second document",
    "keep one document a file; remove the `---` line",
)
TOP_ADVICE = "begin with `key: value` lines"
EMPTY_FILE: Words = ("is empty", "write `key: value` lines, or remove the file")
COMMA_IN_BRACES = (
    "a comma in { } begins the next key; put quotes around a value that holds a comma, and write a"
    " decimal point as a point"
)
HIDDEN_ADVICE = "delete it; an editor that shows hidden characters helps to find it"
