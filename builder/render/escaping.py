"""
The one place where text becomes Markdown and HTML.

What a venue writes leaves here as text and as nothing else.
"""

import re
import string
import unicodedata
from html import escape

from builder.document import Markup
from builder.render.markup import markup

BLANK = re.compile(r"[ \t\n\r\f\v\x1c-\x1f\x85\u2028\u2029]+")
# The comma means nothing to Markdown or HTML, so it stays and the source stays readable.
ENTITIES = {ord(mark): f"&#{ord(mark)};" for mark in string.punctuation if mark != ","}
# The blank inside 1,000 kg or 12 %, where a line must not break.
BEFORE_UNIT = re.compile(
    r"(?<=\d)"
    r" (?=(?:mm|cm|m|m²|mm²|ft|in|kg|t|lb|A|V|W|kW|kVA|VA|Hz|kHz|MHz|dB|Pa|kPa|N|kN|kN·m|min|ms|s|h|°C|%)(?![\w²]))"  # noqa: E501
)
HIDDEN_CATEGORIES = frozenset({"Cc", "Cf", "Cs", "Zl", "Zp"})
RIGHT_TO_LEFT = frozenset({"R", "AL"})


def escaped(text: str) -> Markup:
    """
    The text on one line, every mark that Markdown or HTML could act on written as its number.

    Fit for attributes too.
    """
    return Markup(visible(text).translate(ENTITIES))


def shown(text: str) -> Markup:
    """
    Escaped text for running text: a value keeps its unit on its line, right-to-left letters do not
    turn what stands beside them.
    """
    turned = not text.isascii() and any(
        unicodedata.bidirectional(char) in RIGHT_TO_LEFT for char in text
    )
    kept = Markup(BEFORE_UNIT.sub("\u00a0", visible(text)).translate(ENTITIES))
    return markup("<bdi>{}</bdi>", kept) if turned else kept


def plain_html(text: str) -> Markup:
    """
    The text for places that print values raw, such as front matter, and for XML: escaped, still
    readable in the source.
    """
    return Markup(escape(visible(text), quote=True))


def visible(text: str) -> str:
    """
    The text with white space folded and every invisible or direction-turning character shown as its
    code.
    """
    folded = BLANK.sub(" ", text).strip(" ")
    return folded if folded.isprintable() else "".join(map(coded, folded))


def coded(char: str) -> str:
    """The character, or its code where a reader could not see it."""
    return f"⟨U+{ord(char):04X}⟩" if is_hidden(char) else char


def is_hidden(char: str) -> bool:
    """Whether a reader could not see a character, or a machine would take it for an order."""
    return unicodedata.category(char) in HIDDEN_CATEGORIES or ord(char) & 0xFFFE == 0xFFFE
