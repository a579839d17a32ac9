"""
Blocks as HTML. Markdown has no words for row anchors, scopes and sort values, so most of a page is
written this way.
"""

from collections.abc import Mapping, Sequence
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
    Markup,
    Paragraph,
    Photo,
    Picture,
    Small,
    Words,
)
from builder.document import Table as TableBlock
from builder.reading.addresses import address
from builder.render.escaping import escaped, plain_html, shown
from builder.render.inline import html_linker, said, tone, written
from builder.render.markup import joined, markup, refuse_text
from builder.render.references import Anchors, id_of
from builder.render.rows import table
from builder.render.sizes import Size, size_of
from builder.render.svg import aimed

DRAWINGS = "drawings"
LARGEST_ANSWER = 32
"""
Characters that an answer may have in large type; a longer one is a sentence and is set as such.
"""


@dataclass(slots=True)
class Scribe:
    """
    Writes the blocks of pages, one after the other, and collects the drawings beside them and the
    photos among ``paths`` that they show.
    """

    anchors: Anchors
    paths: Mapping[str, str | bytes] = field(default_factory=dict)
    files: dict[str, bytes] = field(default_factory=dict)
    photos: dict[str, str | bytes] = field(default_factory=dict)
    page: str = ""
    """The page that is being written."""

    def html(self, block: Block) -> Markup:
        """
        One block as HTML without a blank line in it, since a blank line ends raw HTML in most
        Markdown readers.
        """
        text = self._block(block)
        return Markup("\n".join(line for line in text.splitlines() if line.strip()))

    def words(self, words: Words) -> Markup:
        """Running text inside HTML."""
        return written(words, html_linker(self.anchors))

    def identified(self, anchor: str) -> Markup:
        """The id attribute for an anchor, or nothing."""
        return markup(' id="{}"', plain_html(self.id_of(anchor))) if anchor else Markup()

    def id_of(self, anchor: str) -> str:
        """The id of an anchor on the page that is being written."""
        on_page = self.anchors.get(self.page, {})
        found = id_of(anchor, on_page)
        if not found:
            raise ValueError(
                f"anchor must be one of page {self.page!r} ({', '.join(sorted(on_page.values()))}),"
                f" got {anchor!r}"
            )
        return found

    def _block(self, block: Block) -> Markup:
        match block:
            case Heading():
                return markup(
                    "<h{0}{1}>{2}</h{0}>",
                    level(block),
                    self.identified(block.anchor),
                    shown(block.text),
                )
            case Paragraph():
                return markup("<p>{}</p>", self.words(block.words))
            case Bullets():
                entries = (markup("<li>{}</li>", self.words(entry)) for entry in block.entries)
                return markup("<ul>{}</ul>", joined(entries))
            case TableBlock():
                return table(block, self.words, self.identified)
            case Facts():
                return listed("facts", [self._fact(entry) for entry in block.entries])
            case Headline():
                return listed("headline", [self._answer(entry) for entry in block.entries])
            case Caution():
                return self._caution(block)
            case Folded():
                return self._folded(block)
            case Picture():
                return self._drawing(block) if block.inline else self._pictured(block)
            case Photo():
                return self._photo(block)

    def _fact(self, entry: Entry) -> Markup:
        return markup(
            "<div{}><dt>{}</dt> <dd>{}{}</dd></div>",
            self.identified(entry.anchor),
            shown(entry.label),
            self.words(entry.words),
            self._below(entry.small),
        )

    def _answer(self, entry: Entry) -> Markup:
        page, _, anchor = entry.anchor.partition("#")
        label = self.words((Link(entry.label, page, anchor),)) if page else shown(entry.label)
        size = "answer answer-long" if len(said(large(entry.words))) > LARGEST_ANSWER else "answer"
        return markup(
            '<div><dt>{}</dt> <dd><span class="{}">{}</span>{}</dd></div>',
            label,
            plain_html(size),
            self.words(entry.words),
            self._below(entry.small),
        )

    def _below(self, words: Words) -> Markup:
        return markup(' <span class="below">{}</span>', self.words(words)) if words else Markup()

    def _caution(self, block: Caution) -> Markup:
        label = markup(' aria-label="{}"', escaped(block.title)) if block.title else Markup()
        return markup(
            '<div class="caution tone-{}" role="note"{}>\n{}\n</div>',
            tone(block.tone),
            label,
            self._titled(block),
        )

    def _titled(self, block: Caution) -> Markup:
        # A sentence that begins with its own title says it once.
        if block.title and isinstance(block.words, str) and block.words.startswith(block.title):
            return markup(
                '<p><strong class="caution-title">{}</strong>{}</p>',
                shown(block.title),
                self.words(block.words.removeprefix(block.title)),
            )
        body = markup("<p>{}</p>", self.words(block.words))
        if not block.title:
            return body
        return markup('<p class="caution-title">{}</p>\n{}', shown(block.title), body)

    def _folded(self, block: Folded) -> Markup:
        return markup(
            '<details class="folded"{}>\n<summary>{}</summary>\n'
            '<div class="unfolded">\n{}\n</div>\n</details>',
            self.identified(block.anchor),
            shown(block.title),
            joined((self.html(inner) for inner in block.blocks), "\n"),
        )

    def _drawing(self, block: Picture) -> Markup:
        refuse_text(block.svg)
        file = self._filed(block.name, aimed(block.svg, f"../{self.page}.html", self.id_of))
        # The label says what is drawn; the drawing's own labels would only repeat the tables in a
        # search or a screen reader.
        # What holds links is no picture to a screen reader, or its links could not be reached.
        role = markup("group") if "<a " in block.svg else markup("img")
        drawn = aimed(block.svg, "", self.id_of)
        svg = Markup(drawn.replace(' role="img"', markup(' role="{}"', role), 1))
        return markup(
            '<figure{}>\n<div class="drawing" role="{}" aria-label="{}">\n{}\n</div>\n'
            '<figcaption>{} <a class="file" href="{}">The drawing as a file</a></figcaption>\n'
            "</figure>",
            markup(' class="beside"') if block.beside else Markup(),
            role,
            escaped(block.alt),
            svg,
            shown(block.caption),
            plain_html(file),
        )

    def _pictured(self, block: Picture) -> Markup:
        light = self._filed(block.name, block.svg)
        size = size_of(block.svg.encode())
        if block.dark is None:
            return figure(image(light, block.alt, size=size), block.caption)
        dark = self._filed(f"{block.name}-dark", block.dark)
        both = (
            image(light, block.alt, "on-light", size),
            image(dark, block.alt, "on-dark", size_of(block.dark.encode())),
        )
        return figure(joined(both), block.caption)

    def _photo(self, block: Photo) -> Markup:
        if block.path not in self.paths:
            raise ValueError(f"path of a photo must be a file of the document, got {block.path!r}")
        content = self.photos[block.path] = self.paths[block.path]
        raw = content if isinstance(content, bytes) else content.encode()
        return figure(image(block.path, block.alt, "photo", size_of(raw)), block.caption)

    def _filed(self, name: str, svg: Markup) -> str:
        refuse_text(svg)
        path = f"{DRAWINGS}/{address(name)}.svg"
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


def listed(kind: str, entries: Sequence[Markup]) -> Markup:
    """A list of labels and values."""
    return markup('<dl class="{}">\n{}\n</dl>', plain_html(kind), joined(entries, "\n"))


def image(path: str, alt: str, kind: str = "", size: Size | None = None) -> Markup:
    """
    An image element, its place kept by its ``size``; a dark and a light one stand side by side and
    the style sheet shows one.
    """
    return markup(
        '<img{} src="{}" alt="{}"{} loading="lazy" decoding="async">',
        markup(' class="{}"', plain_html(kind)) if kind else Markup(),
        plain_html(path),
        escaped(alt),
        markup(' width="{}" height="{}"', *size) if size else Markup(),
    )


def figure(content: Markup, caption: str) -> Markup:
    """A figure with its caption."""
    below = markup("\n<figcaption>{}</figcaption>", shown(caption)) if caption else Markup()
    return markup("<figure>\n{}{}\n</figure>", content, below)
