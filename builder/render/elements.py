"""Elements of XML, such as those of a drawing, from any text within and any attributes."""

import re

from builder.document import Markup
from builder.render.escaping import plain_html as words
from builder.render.markup import joined, markup
from builder.render.numbers import number

NAME = re.compile(r"[a-zA-Z]+")


def element(tag: str, *inner: Markup, **attributes: str | float | None) -> Markup:
    """
    An element with attributes and what it holds. What is None is left out; an underscore in the
    name of an attribute is a hyphen, and one behind it keeps it from being a word of Python.
    """
    given = joined(
        attribute(name, value) for name, value in attributes.items() if value is not None
    )
    if not inner:
        return markup("<{0}{1}/>", tagged(tag), given)
    return markup("<{0}{1}>{2}</{0}>", tagged(tag), given, joined(inner))


def attribute(name: str, value: str | float) -> Markup:
    """One attribute with a blank before it; a number has one decimal at most."""
    text = value if isinstance(value, str) else number(value)
    return markup(' {}="{}"', tagged(name.rstrip("_")), words(text))


def tagged(name: str) -> Markup:
    """
    The name of an element or an attribute.

    Raises
    ------
    ValueError
        If it is none.
    """
    parts = name.split("_")
    if not all(NAME.fullmatch(part) for part in parts):
        raise ValueError(f"name must be letters and underscores, got {name!r}")
    return Markup("-".join(parts))


__all__ = ["element", "words"]
