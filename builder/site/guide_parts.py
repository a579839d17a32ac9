"""The parts of a hand-written guide as the search knows them, read from its page."""

from html.parser import HTMLParser

from builder.site.finding import Found

HEADINGS = frozenset({"h1", "h2", "h3"})
LINK_TO_PART = "headerlink"


class Parts(HTMLParser):
    """Collects the text of a page under its headings."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[tuple[str, list[str], list[str]]] = [("", [], [])]
        self.heading = False
        self.silent = False

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        """Begin a part at a heading; leave the little link beside it out."""
        given = dict(attributes)
        if tag in HEADINGS:
            self.heading = True
            self.found.append((given.get("id") or "", [], []))
        self.silent = self.silent or (tag == "a" and given.get("class") == LINK_TO_PART)

    def handle_endtag(self, tag: str) -> None:
        """End a heading, or the little link."""
        self.heading = self.heading and tag not in HEADINGS
        self.silent = self.silent and tag != "a"
        if tag in {"td", "th", "li", "p", "pre"}:
            self.handle_data(" ")

    def handle_data(self, data: str) -> None:
        """Keep what a reader reads."""
        if not self.silent:
            _, name, text = self.found[-1]
            (name if self.heading else text).append(data)


def guide_lines(html: str, title: str) -> tuple[Found, ...]:
    """Each part of a guide's page as a line of the search."""
    reader = Parts()
    reader.feed(html)
    found = (
        Found(anchor, "".join(name).strip() or title, "", " ".join("".join(text).split()))
        for anchor, name, text in reader.found
    )
    return tuple(line for line in found if line.anchor or line.text)
