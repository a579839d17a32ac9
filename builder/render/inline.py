"""Running text: strings, links, strong and small words, tags."""

from collections.abc import Callable

from builder.document import Inline, Link, Small, Strong, Tag, Words
from builder.render.escaping import shown
from builder.render.references import Anchors, target

TONES = ("plain", "note", "caution", "danger")
Linker = Callable[[Link], str]


def written(words: Words, link: Linker) -> str:
    """Words as markup; ``link`` writes a link the way its surroundings need it."""
    pieces = (words,) if isinstance(words, str) else words
    return "".join(spaced(piece, link) for piece in pieces)


def spaced(piece: Inline, link: Linker) -> str:
    """One piece, keeping one blank at each end of a string that has one there, so that pieces do not run together."""
    if not isinstance(piece, str):
        return marked(piece, link)
    if not piece.strip():
        return " " if piece else ""
    return f"{' ' * piece[0].isspace()}{shown(piece)}{' ' * piece[-1].isspace()}"


def marked(piece: Link | Strong | Small | Tag, link: Linker) -> str:
    """A piece that is more than a string."""
    match piece:
        case Link():
            return link(piece)
        case Strong():
            return f"<strong>{shown(piece.text)}</strong>"
        case Small():
            return f"<small>{shown(piece.text)}</small>"
        case Tag():
            return f'<span class="tag tag-{tone(piece.tone)}">{shown(piece.text)}</span>'


def tone(name: str) -> str:
    """
    A tone's name, checked, for it becomes part of a class.

    Raises
    ------
    ValueError
        If there is no such tone.
    """
    if name not in TONES:
        raise ValueError(f"tone must be one of {', '.join(TONES)}, got {name!r}")
    return name


def markdown_linker(anchors: Anchors) -> Linker:
    """Links that the site generator follows and checks."""
    return lambda link: f"[{shown(link.text)}]({target(link.page, link.anchor, ending='md', anchors=anchors)})"


def html_linker(anchors: Anchors) -> Linker:
    """Links inside raw HTML, which the generator leaves alone."""
    return lambda link: f'<a href="{target(link.page, link.anchor, ending="html", anchors=anchors)}">{shown(link.text)}</a>'
