"""What stands at the edge of every page: which house, which revision."""

import json
from dataclasses import dataclass

from builder.document import Document
from builder.render.escaping import visible

PACK = "pack.json"


@dataclass(frozen=True, slots=True)
class Imprint:
    """
    The house's name and the pack's revision as the published pack tells them; ``on`` is a date such
    as ``2026-11-02``.
    """

    venue: str
    number: str
    on: str
    by: str
    fingerprint: str


def imprint_of(document: Document) -> Imprint:
    """
    The imprint, read from the pack that the document publishes, so that the pages and the pack
    cannot name two revisions.

    Raises
    ------
    ValueError
        If the document has no pack.
    """
    content = next((file.content for file in document.files if file.path == PACK), None)
    if content is None:
        raise ValueError(
            f"document must have the file {PACK}, got"
            f" {', '.join(file.path for file in document.files) or 'no files'}"
        )
    pack = json.loads(content)
    revision = pack["revision"]
    return Imprint(
        pack["venue"], revision["number"], revision["on"], revision["by"], revision["fingerprint"]
    )


def edition_css(imprint: Imprint) -> str:
    """The style sheet that puts the house and the revision at the head of every printed sheet."""
    head = css_string(f"{imprint.venue}. Tech pack, revision {imprint.number}, {imprint.on}")
    return (
        f"@media print {{ @page {{ @top-left {{ content: {head}; font: 7.5pt sans-serif; color:"
        " #444; } } }\n"
    )


def css_string(text: str) -> str:
    """
    Any text as a string of a style sheet: all but ASCII letters, digits and blanks by number, so
    that nothing can end the string.
    """
    # The blank after a number belongs to the number.
    plain = visible(text)
    return (
        '"'
        + "".join(
            char if char == " " or (char.isascii() and char.isalnum()) else f"\\{ord(char):x} "
            for char in plain
        )
        + '"'
    )
