"""A tree back to text: what the page's form holds, as a rider file that anybody can read."""

from builder.formulas.primitives import code_of
from builder.rider.text.characters import hex_number, is_hidden
from builder.rider.text.tree import Node

LETTERS = "abcdefghijklmnopqrstuvwxyz0123456789"
HARMLESS = LETTERS + " ./()-"
"""A text of these, beginning with a letter or a digit, is read as it stands wherever it stands."""
ESCAPED = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t"}


def rider_text(tree: Node) -> str:
    """The text of a group: a line for each key, and for each item of a list below its key."""
    lines: list[str] = []
    for entry in tree["entries"]:
        key = quoted_where_needed(entry["key"])
        value = entry["value"]
        if value["kind"] == "list" and len(value["items"]) > 0:
            lines.append(f"{key}:")
            for item in value["items"]:
                lines.append(f"  - {on_one_line(item)}")
        else:
            lines.append(f"{key}: {on_one_line(value)}")
    lines.append("")
    return "\n".join(lines)


def on_one_line(node: Node) -> str:
    """A value on one line, lists in `[ ]` and groups in `{ }`."""
    if node["kind"] == "list":
        return "[" + ", ".join(on_one_line(item) for item in node["items"]) + "]"
    if node["kind"] == "group":
        entries = [
            f"{quoted_where_needed(entry['key'])}: {on_one_line(entry['value'])}"
            for entry in node["entries"]
        ]
        return "{" + ", ".join(entries) + "}"
    return quoted_where_needed(node["text"])


def quoted_where_needed(text: str) -> str:
    """A text as it is, or in double quotes where YAML could read it another way."""
    small = text.lower()
    plain = small != "" and all(HARMLESS.find(char) >= 0 for char in small)
    if plain and LETTERS.find(small[0]) >= 0 and small[-1] != " ":
        return text
    return '"' + "".join(escaped(char) for char in text) + '"'


def escaped(char: str) -> str:
    """A character within double quotes."""
    if char in ESCAPED:
        return ESCAPED[char]
    if is_hidden(char) and code_of(char) <= 0xFFFF:
        return f"\\u{hex_number(code_of(char))}"
    return char
