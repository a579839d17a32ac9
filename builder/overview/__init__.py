"""
The pages that look over the whole pack: home, findings, what changed, workings and sources,
glossary.
"""

from collections.abc import Sequence

from builder.document import Entry, Page
from builder.overview.changes import changes_page
from builder.overview.findings import findings_page
from builder.overview.glossary import glossary_page
from builder.overview.home import home_page
from builder.overview.workings import workings_page
from builder.pack import Pack


def overview_pages(pack: Pack, headlines: Sequence[Entry]) -> tuple[Page, ...]:
    """The home page first, then the pages that stand after the departments."""
    changed = (changes_page(pack),) if pack.log else ()
    return (
        home_page(pack, headlines),
        findings_page(pack),
        *changed,
        workings_page(pack),
        glossary_page(),
    )
