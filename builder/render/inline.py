"""Running text: strings, links, strong and small words, tags."""

from collections.abc import Callable, Iterator

from builder.document import Day, Inline, Link, Markup, Small, Strong, Tag, Words
from builder.render.escaping import escaped, shown
from builder.render.markup import joined, markup
from builder.render.references import Anchors, target

TONES = ("plain", "note", "caution", "danger")
Linker = Callable[[Link], Markup]


def written(words: Words, link: Linker) -> Markup:
    """Words as markup; ``link`` writes a link the way its surroundings need it."""
    return joined(spaced(piece, link) for piece in parted(words))


def said(words: Words) -> str:
    """Words without their marks, as plain text."""
    return "".join(
        piece if isinstance(piece, str) else piece.on if isinstance(piece, Day) else piece.text
        for piece in parted(words)
    )


def parted(words: Words) -> Iterator[Inline]:
    """
    The pieces of words, with a blank where two would run together.

    Small words and tags stand apart from what is before them, and so does a link, strong word or
    tag behind a tag. Strings bring their own blanks: a full stop must be able to follow a link.
    """
    pieces = (words,) if isinstance(words, str) else words
    before: Inline = " "
    for piece in pieces:
        if needs_blank(before, piece):
            yield " "
        yield piece
        before = piece


def needs_blank(before: Inline, piece: Inline) -> bool:
    """Whether two pieces that follow each other would run together."""
    if isinstance(before, str):
        return (
            isinstance(piece, Small | Tag)
            and bool(before)
            and not before[-1].isspace()
            and before[-1] not in "(“"
        )
    if isinstance(piece, str):
        return isinstance(before, Small | Tag) and piece[:1].isalnum()
    return True


def spaced(piece: Inline, link: Linker) -> Markup:
    """One piece, keeping one blank at each end of a string that has one there."""
    if not isinstance(piece, str):
        return marked(piece, link)
    if not piece.strip():
        return Markup(" " if piece else "")
    before, after = (Markup(" " if sign.isspace() else "") for sign in (piece[0], piece[-1]))
    return joined((before, shown(piece), after))


def marked(piece: Link | Strong | Small | Tag | Day, link: Linker) -> Markup:
    """A piece that is more than a string."""
    match piece:
        case Link():
            return link(piece)
        case Strong():
            return markup("<strong>{}</strong>", shown(piece.text))
        case Small():
            return markup("<small>{}</small>", shown(piece.text))
        case Tag():
            return markup('<span class="tag tag-{}">{}</span>', tone(piece.tone), shown(piece.text))
        case Day():
            return markup('<time datetime="{}">{}</time>', escaped(piece.on), shown(piece.on))


def tone(name: str) -> Markup:
    """
    A tone's name, checked, for it becomes part of a class.

    Raises
    ------
    ValueError
        If there is no such tone.
    """
    if name not in TONES:
        raise ValueError(f"tone must be one of {', '.join(TONES)}, got {name!r}")
    return escaped(name)


def markdown_linker(anchors: Anchors) -> Linker:
    """Links that the site generator follows and checks."""
    return lambda link: markup(
        "[{}]({})", shown(link.text), target(link.page, link.anchor, ending="md", anchors=anchors)
    )


def html_linker(anchors: Anchors) -> Linker:
    """Links inside raw HTML, which the generator leaves alone."""
    return lambda link: markup(
        '<a href="{}">{}</a>',
        target(link.page, link.anchor, ending="html", anchors=anchors),
        shown(link.text),
    )
