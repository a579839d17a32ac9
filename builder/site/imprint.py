"""What stands at the edge of every page: which house, which revision."""

import json
from dataclasses import dataclass

from builder.document import Document

PACK = "pack.json"


@dataclass(frozen=True, slots=True)
class Imprint:
    """The house's name and the pack's revision as the published pack tells them; ``on`` is a date such as ``2026-11-02``."""

    venue: str
    number: str
    on: str
    by: str
    fingerprint: str


def imprint_of(document: Document) -> Imprint:
    """
    The imprint, read from the pack that the document publishes, so that the pages and the pack cannot name two revisions.

    Raises
    ------
    ValueError
        If the document has no pack.
    """
    content = next((file.content for file in document.files if file.path == PACK), None)
    if content is None:
        raise ValueError(f"document must have the file {PACK}, got {', '.join(file.path for file in document.files) or 'no files'}")
    pack = json.loads(content)
    revision = pack["revision"]
    return Imprint(pack["venue"], revision["number"], revision["on"], revision["by"], revision["fingerprint"])
