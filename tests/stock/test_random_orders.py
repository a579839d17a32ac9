"""
Random orders on the small venue, each then undone by its opposite, last first: comments stay all
the way, and the first bytes come back.
"""

import random

import pytest

from builder.pipeline import pack_of
from builder.reading.problems import Refused
from builder.registry import RULES
from builder.shows.booked import books_of
from builder.shows.judging import outlook, turned
from builder.stock.adding import added
from builder.stock.changing import Stockroom
from builder.stock.lines import found
from builder.stock.order import COUNTS
from tests.laws import share
from tests.stock.small import SOUND, TEXTS, room
from tests.stock.test_orders import Make, after, ordered

PLACES = ("Mix position", "Stage left")
SHOW = """
act: Act
plays: 2026-03-07
needs:
  - {what: stage width, at least: 8 m}
  - {what: clear height, at least: 7 m}
  - {what: monitor mixes, at least: 2}
  - {what: mix position distance, at most: 20 m}
"""
BOOKS = books_of({"shows/act.yml": SHOW}, RULES)
SEQUENCES = share(range(200), law="random orders", usually=4)


def comments(text: str) -> list[str]:
    """The comments of a text, which has no '#' within a value."""
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


def any_order(chance: random.Random, there: Stockroom) -> tuple[Make, Make]:
    """An order and its opposite."""
    # A swapped line bears another name until it is swapped back.
    name = chance.choice([line.name for line in there.lines if line.file == "sound.yml"])
    line = found(there.lines, name)
    record = line.record
    match chance.randrange(7):
        case 0:
            return ordered("out", name), ordered("back", name)
        case 1:
            number = chance.randint(1, 4)
            return ordered("out", name, count=number), ordered("back", name, count=number)
        case 2:
            unit = chance.randint(1, 12)
            return ordered("out", name, unit=unit), ordered("back", name, unit=unit)
        case 3:
            said = (getattr(record, key, None) for key in ("place", "kept"))
            here = next((place for place in said if isinstance(place, str)), "nowhere")
            return ordered("move", name, place=chance.choice(PLACES), also={}), ordered(
                "move", name, place=here, also={}
            )
        case 4:
            counted = next(
                (number for key in COUNTS if isinstance(number := getattr(record, key, None), int)),
                0,
            )
            return ordered("count", name, number=chance.randint(0, 30)), ordered(
                "count", name, number=counted
            )
        case 5:
            other = f"{name} {chance.randint(20, 9999)}"
            return ordered("swap", name, other=other), ordered("swap", other, other=name)
        case _:
            new = f"Vellum {chance.randint(20, 9999)}"
            return (
                lambda room: added(room, "sound.stock", new, {"kind": "microphone", "count": "2"})
            ), ordered("remove", new)


@pytest.mark.laws
@pytest.mark.parametrize("sequence", SEQUENCES)
def test_random_orders_and_their_opposites_give_the_first_bytes(sequence: int) -> None:
    chance = random.Random(sequence)
    there, opposites, tried = room(), [], 0
    while len(opposites) < 5 and tried < 40:
        tried += 1
        order, opposite = any_order(chance, there)
        try:
            there = after(there, order)
        except Refused:
            continue
        opposites.append(opposite)
        assert comments(there.texts["sound.yml"]) == comments(SOUND)
    assert opposites
    assert there.texts["log.yml"].count("  - on: ") == len(opposites)
    for opposite in reversed(opposites):
        there = after(there, opposite)
    assert there.texts["sound.yml"] == SOUND
    assert {name: text for name, text in there.texts.items() if name != "log.yml"} == TEXTS
    first, last = (
        outlook(BOOKS, pack_of(each.venue), BOOKS.shows[0].plays) for each in (room(), there)
    )
    assert len(first.coming[0].verdicts) == 4
    assert turned(first, last) == ()
