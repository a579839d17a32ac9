"""Problems in sight on every page while someone edits."""

from collections.abc import Sequence

from builder.document import Bullets, Markup, Page, Paragraph
from builder.document import Document as Pages
from builder.render.blocks import Scribe
from builder.render.escaping import plain_html
from builder.render.frames import framed_problems
from builder.render.markdown import Rendered, render
from builder.site.imprint import Imprint


def problems_html(problems: Sequence[str], *, pages: bool) -> Markup:
    """
    The problems as HTML, for a frame at the foot of the window: in sight wherever on a page
    somebody is looking, and folded with a click. Nothing where there are none. ``pages`` says
    whether there are pages of an earlier state.
    """
    if not problems:
        return Markup()
    title = f"{counted(len(problems))} in the description. {state(pages=pages)}"
    listed = Scribe({}).html(Bullets(problems))
    return framed_problems(plain_html(title), listed)


def state(*, pages: bool) -> str:
    """What the pages show while there are problems."""
    if pages:
        return "The pages show the last state without problems."
    return "There are no pages as long as there is one."


def counted(number: int) -> str:
    """How many problems, in words."""
    return "1 problem" if number == 1 else f"{number} problems"


def told(before: Sequence[str], now: Sequence[str], *, pages: bool) -> tuple[str, ...]:
    """What to tell in the terminal where the problems are others than before."""
    if tuple(before) == tuple(now):
        return ()
    if not now:
        return ("No problems any more. The pages show what you wrote.",)
    return (*now, f"{counted(len(now))}. {state(pages=pages)}")


def nothing_yet() -> tuple[Pages, Rendered, Imprint]:
    """A site of one page for a venue that was never without problems since serving began."""
    page = Page(
        "index",
        "No pages yet",
        (Paragraph("The pages appear here as soon as the description has no problems."),),
    )
    document = Pages("No pages yet", (page,))
    return document, render(document), Imprint("No pages yet", "none", "1970-01-01", "", "")
