"""
The one place where text becomes Markdown and HTML.

What a venue writes leaves here as text and as nothing else.
"""

import html
import re
import string
import unicodedata

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


def escaped(text: str) -> str:
    """
    The text on one line, every mark that Markdown or HTML could act on written as its number.

    Fit for attributes too.
    """
    return visible(text).translate(ENTITIES)


def shown(text: str) -> str:
    """
    Escaped text for running text: a value keeps its unit on its line, right-to-left letters do not
    turn what stands beside them.
    """
    turned = any(unicodedata.bidirectional(char) in RIGHT_TO_LEFT for char in text)
    kept = BEFORE_UNIT.sub("\u00a0", visible(text)).translate(ENTITIES)
    return f"<bdi>{kept}</bdi>" if turned else kept


def plain_html(text: str) -> str:
    """
    The text for places that print values raw, such as front matter: HTML escaped, still readable in
    the source.
    """
    return html.escape(visible(text), quote=True)


def visible(text: str) -> str:
    """
    The text with white space folded and every invisible or direction-turning character shown as its
    code.
    """
    return "".join(coded(char) for char in BLANK.sub(" ", text).strip(" "))


def coded(char: str) -> str:
    """The character, or its code where a reader could not see it."""
    return f"⟨U+{ord(char):04X}⟩" if is_hidden(char) else char


def is_hidden(char: str) -> bool:
    """Whether a reader could not see a character, or a machine would take it for an order."""
    return unicodedata.category(char) in HIDDEN_CATEGORIES or ord(char) & 0xFFFE == 0xFFFE


def slug(text: str) -> str:
    """
    An anchor: small ASCII letters, digits and hyphens; other letters by their number, so that no
    name is left without one.

    Raises
    ------
    ValueError
        If the text holds no letter and no digit.
    """
    letters = (
        char
        for char in unicodedata.normalize("NFKD", text).lower()
        if not unicodedata.combining(char)
    )
    joined = "".join(anchored(char) for char in letters)
    found = re.sub("-+", "-", joined).strip("-")
    if not found:
        raise ValueError(f"text must hold a letter or a digit to make an anchor, got {text!r}")
    return found


def anchored(char: str) -> str:
    """One character of an anchor."""
    if not char.isalnum():
        return "-"
    return char if char.isascii() else f"-{ord(char):x}-"
