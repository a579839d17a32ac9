"""Frames around what others wrote: the tables of a guide, and the problems above a page."""

import re
from itertools import count

from builder.document import Markup
from builder.render.markup import markup


def framed_problems(title: Markup, inner: Markup) -> Markup:
    """Problems in their frame, which a click folds."""
    return markup(
        '<details class="problems" role="alert" open>\n<summary>{}</summary>\n{}\n</details>\n',
        title,
        inner,
    )


def framed_tables(html: str) -> str:
    """
    The tables of a guide, which the generator wrote, in the frame that ours have, so that a wide
    one scrolls and the page does not; each with a name of its own.
    """
    number = count(1)

    def opened(_: re.Match[str]) -> str:
        return markup(
            '<div class="table" role="region" tabindex="0" aria-label="Table {}"><table>',
            next(number),
        )

    return re.sub("<table>", opened, html).replace("</table>", "</table></div>")
