"""Problems on top of the pages while someone edits."""

from collections.abc import Sequence

from builder.document import Bullets, Caution, Page, Paragraph
from builder.document import Document as Pages
from builder.render.blocks import Scribe
from builder.render.markdown import Rendered, render
from builder.site.imprint import Imprint


def problems_html(problems: Sequence[str]) -> str:
    """The problems in a frame, as HTML for the top of a page."""
    scribe = Scribe({})
    first = "What you see below is the last state without problems." if problems else ""
    blocks = (
        Caution(first, title=f"Problems in the description: {len(problems)}", tone="danger"),
        Bullets(problems),
    )
    return f'<div class="problems">\n{"".join(scribe.html(block) for block in blocks)}\n</div>\n'


def nothing_yet() -> tuple[Pages, Rendered, Imprint]:
    """A site of one page for a venue that was never without problems since serving began."""
    page = Page(
        "index",
        "No pages yet",
        (Paragraph("The pages appear here as soon as the description has no problems."),),
    )
    document = Pages("No pages yet", (page,))
    return document, render(document), Imprint("No pages yet", "none", "1970-01-01", "", "")
