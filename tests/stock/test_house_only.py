"""Orders on lines for the house only: shown to the house, and told by no published log."""

from datetime import date

from builder.pipeline import packs_of, venue_of
from builder.stock.adding import added
from builder.stock.changing import Asked, Changed, changed, stockroom_of
from builder.stock.lines import found
from builder.stock.order import written_line
from builder.stock.orders import count, move, remove
from builder.stock.service import out
from builder.stock.swapping import house_of, swap
from tests.house_only.rooms import TEXTS
from tests.stock.small import SOUND
from tests.stock.small import TEXTS as SMALL

ASKED = Asked("head of sound", "As found.", date(2026, 1, 2))
HIDDEN = "{name: Vellum 8, house_only: yes, "
ROOM = stockroom_of({**SMALL, "sound.yml": SOUND.replace("{name: Vellum 8, ", HIDDEN)}, {})
LINE = found(ROOM.lines, "Vellum 8", "")
SAID = written_line(LINE, ROOM.texts)


def log_of(result: Changed) -> str:
    """The log that a change writes."""
    return next(each.after for each in result.rewrites if each.file == "log.yml")


def published_log(result: Changed) -> list[str]:
    """The lines that the published log tells of."""
    return [change.line for change in result.after.log]


def test_an_order_on_a_hidden_line_writes_an_entry_for_the_house_only() -> None:
    for order in (out(LINE, SAID, count=1), count(LINE, SAID, 9, working=8, also={}), remove(LINE)):
        result = changed(ROOM, [order], ASKED)
        assert "house_only: yes" in log_of(result), order.did
        assert published_log(result) == []


def test_an_order_on_a_public_line_writes_none() -> None:
    line = found(ROOM.lines, "Vellum 7", "")
    result = changed(ROOM, [out(line, written_line(line, ROOM.texts))], ASKED)
    assert "house_only" not in log_of(result)
    assert published_log(result) == ["Vellum 7"]


def test_a_hidden_line_that_is_added_is_not_told() -> None:
    keys = {"kind": "microphone", "count": "1", "house_only": "yes"}
    result = changed(ROOM, [added(ROOM, "sound.stock", "Vellum 99", keys)], ASKED)
    assert "house_only: yes" in log_of(result).split("changes:")[0]
    assert published_log(result) == []


def test_a_hidden_line_under_another_name_is_not_told() -> None:
    result = changed(ROOM, swap(house_of(ROOM), LINE, "Vellum 88", {}), ASKED)
    assert "house_only: yes" in log_of(result)
    assert published_log(result) == []


def test_a_public_line_that_goes_to_a_hidden_place_is_not_told() -> None:
    stage = SMALL["stage.yml"].replace(
        "{name: Stage left, ", "{name: Stage left, house_only: yes, "
    )
    room = stockroom_of({**SMALL, "stage.yml": stage}, {})
    line = found(room.lines, "Meridian", "")
    result = changed(room, [move(line, written_line(line, room.texts), "Stage left", {})], ASKED)
    assert "house_only: yes" in log_of(result)
    assert published_log(result) == []


def test_the_house_sees_all_that_moves_and_the_log_tells_what_is_published() -> None:
    room = stockroom_of(TEXTS, {})
    line = found(room.lines, "Lamps", "")
    result = changed(room, [remove(line)], ASKED)
    seen = {difference.item for _, difference in result.comparison.moved}
    assert {"Cellar board", "Switch"} <= seen
    assert "Switch" in log_of(result)
    assert "Cellar board" not in log_of(result).split("moved:")[1]


def test_a_line_that_becomes_public_keeps_its_old_entries_hidden() -> None:
    result = changed(ROOM, [out(LINE, SAID, count=1)], ASKED)
    texts = {**ROOM.texts, **{each.file: each.after for each in result.rewrites}}
    texts["sound.yml"] = texts["sound.yml"].replace("house_only: yes, ", "")
    assert packs_of(venue_of(texts)).published.log == ()
