"""
How markup is written: from templates that are ours and parts that are markup already, so that no
text gets in but through those who escape it. A text that is given by itself is refused.
"""

from collections.abc import Iterable

from builder.document import Markup

Part = Markup | int | float


def markup(template: str, *parts: Part, **named: Part) -> Markup:
    """
    A template with its parts filled in, as :meth:`str.format` does. The template is written where
    it is used; a test holds that.

    Raises
    ------
    TypeError
        If a part is a text of which nobody said that it is markup.
    """
    for part in (*parts, *named.values()):
        refuse_text(part)
    return Markup(template.format(*parts, **named))


def joined(parts: Iterable[Markup], between: str = "") -> Markup:
    """
    Parts one after the other, with a blank, a line end or nothing between them.

    Raises
    ------
    TypeError
        As for :func:`markup`.
    """
    found = tuple(parts)
    for part in found:
        refuse_text(part)
    if between.strip():
        raise ValueError(f"between must be white space, got {between!r}")
    return Markup(between.join(found))


def refuse_text(part: object) -> None:
    """Refuse what is neither markup nor a number."""
    if isinstance(part, bool) or not isinstance(part, Markup | int | float):
        raise TypeError(f"part must be markup or a number, got {part!r}")
