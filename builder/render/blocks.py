"""
Blocks as HTML. Markdown has no words for row anchors, scopes and sort values, so most of a page is
written this way.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from builder.document import (
    Block,
    Bullets,
    Caution,
    Entry,
    Facts,
    Folded,
    Heading,
    Headline,
    Link,
    Paragraph,
    Photo,
    Picture,
    Small,
    Words,
)
from builder.document import Table as TableBlock
from builder.render.escaping import escaped, shown
from builder.render.inline import html_linker, said, tone, written
from builder.render.references import Anchors, given
from builder.render.rows import table
from builder.render.sizes import Size, size_of

NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
DRAWINGS = "drawings"
LARGEST_ANSWER = 32
"""
Characters that an answer may have in large type; a longer one is a sentence and is set as such.
"""


@dataclass(slots=True)
class Scribe:
    """Writes the blocks of one page and collects the files that go beside it."""

    anchors: Anchors
    paths: Mapping[str, str | bytes] = field(default_factory=dict)
    files: dict[str, bytes] = field(default_factory=dict)

    def html(self, block: Block) -> str:
        """
        One block as HTML without a blank line in it, since a blank line ends raw HTML in most
        Markdown readers.
        """
        text = self._block(block)
        return "\n".join(line for line in text.splitlines() if line.strip())

    def words(self, words: Words) -> str:
        """Running text inside HTML."""
        return written(words, html_linker(self.anchors))

    def _block(self, block: Block) -> str:
        match block:
            case Heading():
                return f"<h{level(block)}{identified(block.anchor)}>{shown(block.text)}</h{level(block)}>"  # noqa: E501
            case Paragraph():
                return f"<p>{self.words(block.words)}</p>"
            case Bullets():
                return f"<ul>{''.join(f'<li>{self.words(entry)}</li>' for entry in block.entries)}</ul>"  # noqa: E501
            case TableBlock():
                return table(block, self.words)
            case Facts():
                return listed("facts", block.entries, self._fact)
            case Headline():
                return listed("headline", block.entries, self._answer)
            case Caution():
                return self._caution(block)
            case Folded():
                return self._folded(block)
            case Picture():
                return self._drawing(block) if block.inline else self._pictured(block)
            case Photo():
                return self._photo(block)

    def _fact(self, entry: Entry) -> str:
        return (
            f"<div{identified(entry.anchor)}><dt>{shown(entry.label)}</dt>"
            f" <dd>{self.words(entry.words)}{self._below(entry.small)}</dd></div>"
        )

    def _answer(self, entry: Entry) -> str:
        page, _, anchor = entry.anchor.partition("#")
        label = self.words((Link(entry.label, page, anchor),)) if page else shown(entry.label)
        size = "answer answer-long" if len(said(large(entry.words))) > LARGEST_ANSWER else "answer"
        return (
            f"<div><dt>{label}</dt> <dd><span"
            f' class="{size}">{self.words(entry.words)}</span>{self._below(entry.small)}</dd></div>'
        )

    def _below(self, words: Words) -> str:
        return f' <span class="below">{self.words(words)}</span>' if words else ""

    def _caution(self, block: Caution) -> str:
        label = f' aria-label="{escaped(block.title)}"' if block.title else ""
        return (
            f'<div class="caution tone-{tone(block.tone)}"'
            f' role="note"{label}>\n{self._titled(block)}\n</div>'
        )

    def _titled(self, block: Caution) -> str:
        # A sentence that begins with its own title says it once.
        if block.title and isinstance(block.words, str) and block.words.startswith(block.title):
            rest = self.words(block.words.removeprefix(block.title))
            return f'<p><strong class="caution-title">{shown(block.title)}</strong>{rest}</p>'
        title = f'<p class="caution-title">{shown(block.title)}</p>\n' if block.title else ""
        return f"{title}<p>{self.words(block.words)}</p>"

    def _folded(self, block: Folded) -> str:
        inner = "\n".join(self.html(inner) for inner in block.blocks)
        head = (
            "<details"
            f' class="folded"{identified(block.anchor)}>\n<summary>{shown(block.title)}</summary>'
        )
        return f'{head}\n<div class="unfolded">\n{inner}\n</div>\n</details>'

    def _drawing(self, block: Picture) -> str:
        path = self._filed(block.name, block.svg)
        # The label says what is drawn; the drawing's own labels would only repeat the tables in a
        # search or a screen reader.
        # What holds links is no picture to a screen reader, or its links could not be reached.
        role = "group" if "<a " in block.svg else "img"
        svg = block.svg.replace(' role="img"', f' role="{role}"', 1)
        drawing = (
            f'<div class="drawing" role="{role}" aria-label="{escaped(block.alt)}">\n{svg}\n</div>'
        )
        file = f'<a class="file" href="{path}">The drawing as a file</a>'
        beside = ' class="beside"' if block.beside else ""
        return (
            f"<figure{beside}>\n{drawing}\n<figcaption>{shown(block.caption)}"
            f" {file}</figcaption>\n</figure>"
        )

    def _pictured(self, block: Picture) -> str:
        path = self._filed(block.name, block.svg)
        if not block.dark:
            return figure(image(path, block.alt, size=size_of(block.svg.encode())), block.caption)
        dark = self._filed(f"{block.name}-dark", block.dark)
        return figure(
            image(path, block.alt, "on-light", size_of(block.svg.encode()))
            + image(dark, block.alt, "on-dark", size_of(block.dark.encode())),
            block.caption,
        )

    def _photo(self, block: Photo) -> str:
        if block.path not in self.paths:
            raise ValueError(f"path of a photo must be a file of the document, got {block.path!r}")
        content = self.paths[block.path]
        return figure(
            image(
                block.path,
                block.alt,
                "photo",
                size_of(content if isinstance(content, bytes) else content.encode()),
            ),
            block.caption,
        )

    def _filed(self, name: str, svg: str) -> str:
        if not NAME.fullmatch(name):
            raise ValueError(
                f"name of a picture must be small letters, digits and hyphens, got {name!r}"
            )
        path = f"{DRAWINGS}/{name}.svg"
        if self.files.get(path, svg.encode()) != svg.encode() or path in self.paths:
            raise ValueError(f"names of pictures must differ, got {name!r} twice")
        self.files[path] = svg.encode()
        return path


def large(words: Words) -> Words:
    """What of an answer is set large: all but the small print."""
    return (
        words
        if isinstance(words, str)
        else [piece for piece in words if not isinstance(piece, Small)]
    )


def level(heading: Heading) -> int:
    """The heading's level, checked."""
    if not 2 <= heading.level <= 6:
        raise ValueError(f"level must be 2 to 6, got {heading.level}")
    return heading.level


def identified(anchor: str) -> str:
    """The id attribute for an anchor, or nothing."""
    return "".join(f' id="{name}"' for name in given(anchor))


def listed(kind: str, entries: Sequence[Entry], each: Callable[[Entry], str]) -> str:
    """A list of labels and values."""
    lines = "\n".join(each(entry) for entry in entries)
    return f'<dl class="{kind}">\n{lines}\n</dl>'


def image(path: str, alt: str, kind: str = "", size: Size | None = None) -> str:
    """
    An image element, its place kept by its ``size``; a dark and a light one stand side by side and
    the style sheet shows one.
    """
    marked = f' class="{kind}"' if kind else ""
    kept = f' width="{size[0]}" height="{size[1]}"' if size else ""
    return f'<img{marked} src="{path}" alt="{escaped(alt)}"{kept} loading="lazy" decoding="async">'


def figure(content: str, caption: str) -> str:
    """A figure with its caption."""
    below = f"\n<figcaption>{shown(caption)}</figcaption>" if caption else ""
    return f"<figure>\n{content}{below}\n</figure>"
