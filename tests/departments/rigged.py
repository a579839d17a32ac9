"""Short venues for the rigging tests, and what they publish."""

from datetime import date

from builder.department import Published, Surroundings
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.publish import publish
from builder.exchange import HungLoad, Offers
from builder.pack import Figure, Finding, Item
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.stating import Ageing

AGEING = Ageing(date(2026, 6, 1), 365)
LIMITS = "limits: {whole_roof: 9 t, each_beam: 3 t, each_point: 1000 kg}\n"
BEAM = (
    "beams: [{name: B1, runs: across, depth: 0 m, low_steel: [{across: 20 m SR, height: 8 m up},"
    " {across: 20 m SL, height: 10 m up}]}]\n"
)


def points(*across_m: float, more: str = "") -> str:
    """Points on beam B1, named P1 and on; ``more`` is written on the first."""
    sides = [f"{abs(at)} m {'SL' if at > 0 else 'SR'}" if at else "0 m" for at in across_m]
    rows = [
        f"  - {{name: P{n}, beam: B1, across: {side}{more if n == 1 else ''}}}\n"
        for n, side in enumerate(sides, 1)
    ]
    return "points:\n" + "".join(rows)


def hang(
    *supports: int,
    loads: str,
    first_m: float = 0.0,
    last_m: float = 20.0,
    more: str = "",
    hoist: str = "",
) -> str:
    """
    A weightless hang called Truss along B1, with its supports by number and its loads as YAML.
    """
    listed = ", ".join(f"{{point: P{n}{f', hoist: {hoist}' if hoist else ''}}}" for n in supports)
    ends = ", ".join(
        f"{name}_end: {{across: {abs(at)} m {'SL' if at >= 0 else 'SR'}, depth: 0 m}}"
        for name, at in (("first", first_m), ("last", last_m))
    )
    own = "" if "weight" in more else ", weight: none"
    keys = f"{ends}, supports: [{listed}], loads: [{loads}]{own}{more}"
    return f"hangs:\n  - {{name: Truss, {keys}}}\n"


def described(text: str) -> Rigging:
    """The description that a text makes; nothing hangs where it tells no hangs."""
    text = text if "hangs:" in text else f"{text}hangs: none\n"
    return read(text, file="rigging.yml", kind=Rigging)


def published(text: str, *loads: HungLoad) -> Published:
    """What a text publishes beside the loads of other departments."""
    return publish(described(text), Surroundings(Offers(loads=loads), AGEING, "metric"))


def item(text: str, kind: str, name: str = "", *loads: HungLoad) -> Item:
    """One item of what a text publishes."""
    found = published(text, *loads).section.item(kind, name)
    assert found is not None, f"no {kind} {name}"
    return found


def figure(text: str, kind: str, of: str, name: str, *loads: HungLoad) -> Figure:
    """One figure of an item."""
    found = item(text, kind, of, *loads).figure(name)
    assert found is not None, f"no figure {name}"
    return found


def number(text: str, kind: str, of: str, name: str, *loads: HungLoad) -> float:
    """The SI number of a figure."""
    found = figure(text, kind, of, name, *loads).value
    assert found is not None
    assert found.number is not None
    return found.number


def found(text: str, code: str, *loads: HungLoad) -> list[Finding]:
    """The findings with a code."""
    return [finding for finding in published(text, *loads).findings if finding.code == code]


def problems(text: str) -> list[str]:
    """The problems of a text, as its author reads them."""
    try:
        described(text)
    except Refused as refused:
        return [str(problem) for problem in refused.problems]
    return []
