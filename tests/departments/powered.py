"""Short venues for the power tests, and what they publish."""

from datetime import date

from builder.department import Published, Surroundings
from builder.departments.power.description import Power
from builder.departments.power.publish import publish
from builder.exchange import Offers
from builder.pack import Figure, Finding, Item
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.stating import Ageing

AGEING = Ageing(date(2026, 6, 1), 365)
INTAKE = "supplies: [{name: Intake, system: 230/400 V three phase, rating: 630 A}]\n"
SWITCH = (
    "services: [{name: Switch, fed_from: Intake, system: 230/400 V three phase, rating: 125 A,"
    " breaker: 125 A}]\n"
)


def described(text: str) -> Power:
    """The description that a text makes; all of each rating is continuous unless it says else."""
    said = "" if "continuous_share" in text else "\ncontinuous_share: 100 %\n"
    return read(text + said, file="power.yml", kind=Power)


def published(text: str) -> Published:
    """What a text publishes."""
    return publish(described(text), Surroundings(Offers(), AGEING, "metric"))


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


def number(text: str, kind: str, name: str, *, of: str = "") -> float:
    """The SI number of a figure."""
    found = figure(text, kind, name, of=of).value
    assert found is not None
    assert found.number is not None
    return found.number


def found(text: str, code: str) -> list[Finding]:
    """The findings with a code."""
    return [finding for finding in published(text).findings if finding.code == code]


def problems(text: str) -> list[str]:
    """The problems of a text, as its author reads them."""
    try:
        described(text)
    except Refused as refused:
        return [str(problem) for problem in refused.problems]
    return []
