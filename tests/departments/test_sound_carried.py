"""Loudspeakers are out of service with the hang that carries them."""

import re
from pathlib import Path

import pytest

from builder.files import read_folder
from builder.pack import Item, Pack
from builder.pipeline import pack_of, venue_of

DEMO = Path(__file__).parents[2] / "venue"
CARRIER = re.compile(r"(  - name: Main left\n)")


def demo(condition: str, name: str = "") -> Pack:
    """The demo with the hang of Main left in a state, and all named otherwise if wanted."""
    there = read_folder(DEMO)
    texts = dict(there.texts)
    assert len(CARRIER.findall(texts["rigging.yml"])) == 1
    texts["rigging.yml"] = CARRIER.sub(rf"\1    condition: {condition}\n", texts["rigging.yml"])
    if name:
        texts = {file: text.replace("Main left", name) for file, text in texts.items()}
    return pack_of(venue_of(texts, there.photos))


def sound_of(pack: Pack) -> list[Item]:
    """The items of sound."""
    section = pack.section("sound")
    assert section is not None
    return list(section.items)


def carried(pack: Pack, name: str = "Main left") -> list[Item]:
    """The loudspeakers that name the hang as their carrier."""
    return [item for item in sound_of(pack) if item.text("carried_by") == name]


def levels(pack: Pack) -> dict[str, str]:
    """The figures of the audience areas in words."""
    return {
        figure.key: figure.value.text
        for item in sound_of(pack)
        if item.kind == "area"
        for figure in item.figures
        if figure.value is not None
    }


@pytest.mark.parametrize("name", ["", "Rot 7"])
def test_loudspeakers_go_out_with_their_hang_and_say_why(name: str) -> None:
    called = name or "Main left"
    [item] = carried(demo("out of service", name), called)
    assert item.condition == "out of service"
    assert f"{called}, which carries it, is out of service." in item.note


def test_levels_are_those_without_them() -> None:
    before, after = levels(demo("in service")), levels(demo("out of service"))
    assert before
    assert before != after


def test_a_hang_that_is_only_limited_still_carries_them() -> None:
    [item] = carried(demo("limited"))
    assert item.condition == "in service"


def test_in_doubt_with_their_hang() -> None:
    [item] = carried(demo("unknown"))
    assert item.condition == "unknown"
    assert "perhaps out of service" in item.note
