"""Short files for the tests of lines, and what they publish."""

from datetime import date

from builder.department import Published, Surroundings
from builder.departments.lines.description import Lines
from builder.departments.lines.publish import publish
from builder.exchange import Offers, Shape, Spot
from builder.pack import Figure, Finding, Item
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.stating import Ageing

STAGE, MIX, DOCK = (
    Spot("stage", "place", "Stage", 9.0, 2.0),
    Spot("stage", "place", "Mix", 0.0, -28.0, -1.2),
    Spot("stage", "place", "Dock", 9.0, 14.0),
)
DECK = Shape("stage", "deck", "Deck", ((-10.0, 0.0), (10.0, 0.0), (10.0, 9.0), (-10.0, 9.0)))
AROUND = Surroundings(
    Offers(spots=(STAGE, MIX, DOCK), shapes=(DECK,)), Ageing(date(2026, 6, 1), 365), "metric"
)


def line(
    name: str = "Send",
    kind: str = "analogue",
    more: str = "",
    *,
    start: str = "Stage",
    end: str = "Mix",
    ways: int = 24,
) -> str:
    """One line of a list, with more keys."""
    return (
        f"  - {{name: {name}, kind: {kind}, from: {{place: {start}}}, to: {{place: {end}}}, ways:"
        f" {ways}{', ' if more else ''}{more}}}\n"
    )


def lines(*each: str) -> str:
    """A file of lines."""
    return "lines:\n" + "".join(each)


def described(text: str) -> Lines:
    """The description that a text makes."""
    return read(text, file="lines.yml", kind=Lines)


def published(text: str, around: Surroundings = AROUND) -> Published:
    """What a text publishes, with a stage, a mix position and a dock."""
    return publish(described(text), around)


def item(text: str, kind: str, name: str = "") -> Item:
    """One item of what a text publishes."""
    found = published(text).section.item(kind, name)
    assert found is not None, f"no {kind} {name}"
    return found


def figure(text: str, kind: str, name: str, *, of: str = "") -> Figure:
    """One figure of the first item of a kind, or of the item named."""
    found = item(text, kind, of).figure(name)
    assert found is not None, f"no figure {name}"
    return found


def findings(text: str) -> list[Finding]:
    """The findings on a text."""
    return list(published(text).findings)


def codes(text: str) -> list[str]:
    """Their codes."""
    return [finding.code for finding in findings(text)]


def problems(text: str) -> list[str]:
    """The problems of a text, as its author reads them."""
    try:
        described(text)
    except Refused as refused:
        return [str(problem) for problem in refused.problems]
    return []
