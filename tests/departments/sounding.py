"""A small room for the tests of sound: two hangs, a sub line, a fill, one flat floor."""

from collections.abc import Sequence
from datetime import date

from builder.department import Published, Surroundings
from builder.departments.sound.description import Sound
from builder.departments.sound.publish import publish
from builder.exchange import Air, Offers, Spot
from builder.pack import Figure, Item
from builder.reading.reader import read
from builder.stating import Ageing

AIR = Air(20.0, 50.0, 101.325)
MIX = Spot("stage", "place", "Mix position", 0.0, -10.0, -1.0)
MODELS = """
models:
  - name: Line
    kind: line box
    level: 130 dB
    lowest: 70 Hz
    highest: 18 kHz
    coverage: [{band: 500 Hz, horizontal: 100 deg}, {band: 1 kHz, horizontal: 90 deg},
      {band: 2 kHz, horizontal: 90 deg}, {band: 4 kHz, horizontal: 90 deg}, {band: 8 kHz, horizontal: 80 deg}]
    width: 600 mm
    height: 250 mm
    weight: 20 kg
  - {name: Sub, kind: sub, level: 135 dB, lowest: 28 Hz, highest: 70 Hz, width: 1 m, height: 600 mm, weight: 80 kg}
"""  # noqa: E501
MIXING = "mix_position: {place: Mix position, width: none, depth: none, ears: 1.65 m}\n"
FLOOR = """
audience:
  - name: Floor
    kind: floor
    ears: 1.65 m
    corners: [{across: 6 m SR, depth: 2 m DS, height: 1 m down}, {across: 6 m SL, depth: 2 m DS, height: 1 m down},
      {across: 6 m SL, depth: 14 m DS, height: 1 m down}, {across: 6 m SR, depth: 14 m DS, height: 1 m down}]
"""  # noqa: E501
HANG = (
    "name: Left, model: Line, boxes: 3, splay: [2 deg, 4 deg], at: {across: 4 m SL, depth: 1 m DS},"
    " top: 5 m up, down: 5 deg, carried_by: L, frame: 10 kg"
)
HANGS = f"hangs: [{{{HANG}}}]\n"
ROOM = MODELS + MIXING + FLOOR
SUBS = (
    "subs: [{name: Subs, model: Sub, count: 8, spacing: 1.2 m, at: {across: 0 m, depth: 1 m DS,"
    " height: 1 m down}%s}]\n"
)
FILL = (
    "fills: [{name: Fills, kind: front fill, model: Line%s, boxes: [{at: {across: 0 m, depth: 0 m,"
    " height: 0 m}}]}]\n"
)


def sound(text: str) -> Sound:
    """The description that a text holds."""
    return read(text, file="sound.yml", kind=Sound)


def published(text: str, *, air: Air | None = AIR, spots: Sequence[Spot] = (MIX,)) -> Published:
    """What a text publishes."""
    return publish(
        sound(text),
        Surroundings(Offers(spots=tuple(spots), air=air), Ageing(date(2026, 6, 1), 365), "metric"),
    )


def codes(text: str, *, air: Air | None = AIR, spots: Sequence[Spot] = (MIX,)) -> list[str]:
    """The codes of the findings on a text."""
    return [finding.code for finding in published(text, air=air, spots=spots).findings]


def item(text: str, kind: str, name: str = "") -> Item:
    """One item of what a text publishes."""
    found = published(text).section.item(kind, name)
    assert found is not None
    return found


def figure(text: str, kind: str, key: str, name: str = "") -> Figure:
    """One figure of what a text publishes."""
    found = item(text, kind, name).figure(key)
    assert found is not None
    return found
