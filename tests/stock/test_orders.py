"""
Orders on the small venue: which lines of which file change, what the log says, and that an order
and its undoing give the first bytes.
"""

from collections.abc import Callable
from datetime import date

import pytest

from builder.reading.problems import Refused
from builder.stock.adding import added, stamped
from builder.stock.changing import Asked, Changed, Stockroom, changed, difference_text, stockroom_of
from builder.stock.lines import found
from builder.stock.order import Order, written_line
from builder.stock.orders import count, move, remove
from builder.stock.service import back, out
from builder.stock.swapping import house_of, swap
from tests.stock.small import SOUND, TEXTS, room

ASKED = Asked("head of sound", "As found.", date(2026, 1, 2))
Make = Callable[[Stockroom], Order | list[Order]]


def ordered(kind: str, name: str, within: str = "", **given: object) -> Make:
    """An order on a line of the venue it is given."""

    def make(room: Stockroom) -> Order | list[Order]:
        line = found(room.lines, name, within)
        said = written_line(line, room.texts)
        match kind:
            case "out":
                return out(line, said, **given)  # type: ignore[arg-type]  # the tests give numbers
            case "back":
                return back(line, said, room.venue.log, **given)  # type: ignore[arg-type]  # as above
            case "count":
                return count(line, said, **given)  # type: ignore[arg-type]  # as above
            case "move":
                return move(line, said, **given)  # type: ignore[arg-type]  # as above
            case "swap":
                return swap(house_of(room), line, **{"also": {}, **given})  # type: ignore[arg-type]  # as above
            case _:
                return remove(line)

    return make


def after(room: Stockroom, *makes: Make) -> Stockroom:
    """The venue after orders, one after the other, as each command would leave it."""
    for make in makes:
        texts = {**room.texts, **{each.file: each.after for each in result(room, make).rewrites}}
        room = stockroom_of(texts, {})
    return room


def result(room: Stockroom, *makes: Make) -> Changed:
    """What orders given at once come to."""
    orders: list[Order] = []
    for make in makes:
        made = make(room)
        orders += made if isinstance(made, list) else [made]
    return changed(room, orders, ASKED)


def lines_changed(make: Make) -> list[str]:
    """The lines of the department's file that go and come."""
    text = difference_text(
        [each for each in result(room(), make).rewrites if each.file != "log.yml"]
    )
    return [
        line.replace("  - {", "{", 1)
        for line in text.splitlines()
        if line[0] in "+-" and line[:3] not in ("+++", "---")
    ]


def sentence(make: Make, **texts: str) -> str:
    """The one sentence that an order is refused with."""
    with pytest.raises(Refused) as refused:
        result(room(**texts), make)
    (problem,) = refused.value.problems
    return str(problem)


def test_a_whole_line_goes_out_and_its_note_stays_last() -> None:
    assert lines_changed(ordered("out", "Vellum 7")) == [
        "-{name: Vellum 7, kind: microphone, count: 12}",
        "+{name: Vellum 7, kind: microphone, count: 12, condition: out of service}",
    ]
    assert lines_changed(ordered("out", "Meridian")) == [
        "-    condition: 'in service'",
        "+    condition: 'out of service'",
    ]


def test_some_of_a_line_go_out() -> None:
    assert (
        lines_changed(ordered("out", "Vellum 7", count=2))[1]
        == "+{name: Vellum 7, kind: microphone, count: 12, working: 10, condition: limited}"
    )
    assert (
        "working: 12, condition: limited" in lines_changed(ordered("out", "Vellum 8", count=1))[1]
    )
    assert (
        "working: 0, condition: out of service"
        in lines_changed(ordered("out", "Vellum 5", count=1))[1]
    )


def test_one_numbered_unit_goes_out() -> None:
    assert (
        "dead: [11, 3], condition: limited"
        in lines_changed(ordered("out", "A", "sound.drop_boxes", unit=3))[1]
    )
    assert (
        lines_changed(ordered("out", "B", unit=3))[1]
        == "+{name: B, place: Stage left, ways: 12, dead: [3]}   # the long one"
    )


@pytest.mark.parametrize(
    ("first", "undo"),
    [
        (("out", "Vellum 7", {}), ("back", "Vellum 7", {})),
        (("out", "Vellum 8", {}), ("back", "Vellum 8", {})),
        (("out", "Meridian", {}), ("back", "Meridian", {})),
        (("out", "Pocket", {}), ("back", "Pocket", {})),
        (("out", "Vellum 7", {"count": 2}), ("back", "Vellum 7", {"count": 2})),
        (("out", "Vellum 8", {"count": 13}), ("back", "Vellum 8", {"count": 13})),
        (("out", "Vellum 5", {"count": 1}), ("back", "Vellum 5", {"count": 1})),
        (("out", "A", {"unit": 3}), ("back", "A", {"unit": 3})),
        (("out", "B", {"unit": 3}), ("back", "B", {"unit": 3})),
        (("count", "Vellum 7", {"number": 9}), ("count", "Vellum 7", {"number": 12})),
        (
            ("move", "Meridian", {"place": "Stage left", "also": {}}),
            ("move", "Meridian", {"place": "Mix position", "also": {}}),
        ),
        (
            ("move", "Vellum 7", {"place": "Trunk 1, top", "also": {}}),
            ("move", "Vellum 7", {"place": "nowhere", "also": {}}),
        ),
        (("swap", "Vellum 7", {"other": "Vellum 9"}), ("swap", "Vellum 9", {"other": "Vellum 7"})),
        (
            ("swap", "Stage left", {"other": "Left wing"}),
            ("swap", "Left wing", {"other": "Stage left"}),
        ),
    ],
)
def test_an_order_and_its_undoing_give_the_first_bytes(
    first: tuple[str, str, dict[str, object]], undo: tuple[str, str, dict[str, object]]
) -> None:
    there = after(room(), ordered(first[0], first[1], **first[2]))
    assert {name: text for name, text in there.texts.items() if name != "log.yml"} != TEXTS
    again = after(there, ordered(undo[0], undo[1], **undo[2]))
    assert {name: text for name, text in again.texts.items() if name != "log.yml"} == TEXTS


@pytest.mark.parametrize("name", ["Vellum 7", "Vellum 8"])
def test_orders_out_come_back_to_the_first_bytes_in_any_steps(name: str) -> None:
    def of(kind: str, number: int) -> Make:
        return ordered(kind, name, count=number)

    twice = after(room(), of("out", 1), of("out", 2))
    assert after(twice, of("back", 3)).texts["sound.yml"] == SOUND
    assert after(twice, of("back", 2), of("back", 1)).texts["sound.yml"] == SOUND
    assert after(twice, of("back", 1), of("back", 2)).texts["sound.yml"] == SOUND


def test_what_was_limited_by_hand_before_stays_limited() -> None:
    hand = SOUND.replace("count: 12}", "count: 12, condition: limited}")
    there = after(room(sound=hand), ordered("out", "Vellum 7"), ordered("back", "Vellum 7"))
    assert there.texts["sound.yml"] == hand


def test_what_was_changed_by_hand_since_is_not_overwritten_by_the_log() -> None:
    there = after(room(), ordered("out", "Vellum 7", count=2))
    hand = there.texts["sound.yml"].replace(
        "working: 10, condition: limited", "working: 9, condition: limited"
    )
    again = after(
        stockroom_of({**there.texts, "sound.yml": hand}, {}), ordered("back", "Vellum 7", count=3)
    )
    assert "{name: Vellum 7, kind: microphone, count: 12, working: 12}" in again.texts["sound.yml"]


def test_a_line_is_added_and_removed_again() -> None:
    more = after(
        room(),
        lambda room: added(room, "sound.stock", "Vellum 9", {"kind": "microphone", "count": "4"}),
    )
    assert more.texts["sound.yml"] == SOUND + "  - {name: Vellum 9, kind: microphone, count: 4}\n"
    assert after(more, ordered("remove", "Vellum 9")).texts["sound.yml"] == SOUND
    listed = after(room(), lambda room: added(room, "sound.tails", "Tail", {"count": "2"}))
    assert listed.texts["sound.yml"].endswith("\n\ntails:\n  - {name: Tail, count: 2}\n")
    assert after(listed, ordered("remove", "Tail")).texts["sound.yml"] == SOUND


def test_a_line_goes_with_its_own_comment() -> None:
    assert lines_changed(ordered("remove", "Vellum 5")) == [
        "-  # Only for broadcasts.",
        '-{name: "Vellum 5", kind: microphone, count: 1}',
    ]


def test_lines_taken_out_together_are_the_ones_that_were_named() -> None:
    changed = result(
        room(),
        ordered("remove", "Vellum 8"),
        ordered("remove", "Vellum clip"),
        ordered("out", "Vellum 7"),
    )
    text = next(each.after for each in changed.rewrites if each.file == "sound.yml")
    assert [line for line in text.splitlines() if "Vellum" in line] == [
        "  - {name: Vellum 7, kind: microphone, count: 12, condition: out of service}",
        '  - {name: "Vellum 5", kind: microphone, count: 1}',
    ]


def test_a_place_that_gets_another_name_gets_it_wherever_it_is_meant() -> None:
    texts = after(room(), ordered("swap", "Stage left", other="Left wing")).texts
    assert "name: Left wing" in texts["stage.yml"]
    assert texts["sound.yml"].count("place: Left wing") == SOUND.count("place: Stage left") == 3


def test_a_file_and_a_line_are_stamped_as_checked() -> None:
    stamp = {"on": date(2026, 1, 2), "by": "house sound", "how": "measured"}
    text = after(room(), lambda room: stamped(room, "sound.yml", "", **stamp)).texts["sound.yml"]  # type: ignore[arg-type]  # as above
    assert "verified: {on: 2026-01-02, by: house sound, how: measured}   # walked it" in text
    text = after(room(), lambda room: stamped(room, "Pocket", "", **stamp)).texts["sound.yml"]  # type: ignore[arg-type]  # as above
    assert (
        "    inputs: 16\n    verified: {on: 2026-01-02, by: house sound, how: measured}\n" in text
    )
    text = after(room(), lambda room: stamped(room, "stage", "", **stamp)).texts["stage.yml"]  # type: ignore[arg-type]  # as above
    assert text.endswith("verified: {on: 2026-01-02, by: house sound, how: measured}\n")


def test_the_log_tells_who_when_why_and_what_was_before() -> None:
    text = after(room(), ordered("out", "Vellum 8", count=2)).texts["log.yml"]
    assert text.splitlines()[0] == "# yaml-language-server: $schema=../schemas/log.json"
    assert text.splitlines()[3:] == [
        "entries:",
        "  - on: 2026-01-02",
        "    by: head of sound",
        "    why: As found.",
        "    did: out",
        "    file: sound.yml",
        "    within: sound.stock",
        "    line: Vellum 8",
        "    out: 3",
        "    of: 14",
        "    changes:",
        "      - {key: working, was: 13, now: 11}",
    ]


def test_a_log_that_is_there_is_added_to_in_its_own_style() -> None:
    log = "# Ours.\nentries:\n  - {on: 2026-01-01, by: us, why: New desk.}   # at last\n"
    text = after(room(log=log), ordered("out", "Vellum 7")).texts["log.yml"]
    assert text.startswith(log)
    assert text.splitlines()[3].startswith(
        "  - {on: 2026-01-02, by: head of sound, why: As found., did: out,"
    )


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            ordered("out", "Velum 8"),
            (
                "venue 'Velum 8' is not the name of any line; did you mean 'Vellum 8' or 'Vellum 7'"
                " or 'Vellum 5'? [line-unknown]"
            ),
        ),
        (
            ordered("out", "Vellum 8", "lights"),
            (
                "venue 'lights' is not a list of this venue; 'housepack stock sheet' lists every"
                " line [list-unknown]"
            ),
        ),
        (
            ordered("out", "Vellum 8", count=14),
            (
                "sound.yml:24:5 'Vellum 8' has 13 that work, so 14 cannot go out; give a number"
                " from 1 to that [count-beyond]"
            ),
        ),
        (
            ordered("out", "Vellum 8", count=-1),
            (
                "sound.yml:24:5 'Vellum 8' has 13 that work, so -1 cannot go out; give a number"
                " from 1 to that [count-beyond]"
            ),
        ),
        (
            ordered("out", "Vellum clip", count=1),
            (
                "sound.yml:26:5 working: 'Vellum clip' is not known yet; count first: housepack"
                " stock count 'Vellum clip' NUMBER [count-not-known]"
            ),
        ),
        (
            ordered("out", "A", unit=17),
            "sound.yml:5:5 'A' has no unit 17; they are numbered 1 to 16 [count-beyond]",
        ),
        (
            ordered("out", "A", unit=11),
            (
                "sound.yml:5:5 'A' has unit 11 out of service already; nothing was changed"
                " [out-already]"
            ),
        ),
        (
            ordered("out", "Vellum 7", unit=1),
            (
                "sound.yml:25:5 'Vellum 7' has no numbered units; leave --unit out, or give --count"
                " [key-not-here]"
            ),
        ),
        (
            ordered("out", "Meridian", count=1),
            (
                "sound.yml:9:5 'Meridian' does not tell how many work; give the order for the whole"
                " line [key-not-here]"
            ),
        ),
        (
            ordered("back", "Vellum 7"),
            "sound.yml:25:5 'Vellum 7' is in service already; nothing was changed [in-already]",
        ),
        (
            ordered("back", "Vellum 7", count=1),
            (
                "sound.yml:25:5 'Vellum 7' has all 12 at work already; nothing was changed"
                " [in-already]"
            ),
        ),
        (
            ordered("back", "Vellum 8", count=2),
            (
                "sound.yml:24:5 'Vellum 8' has 1 out, so 2 cannot come back; give a number from 1"
                " to that [count-beyond]"
            ),
        ),
        (
            ordered("back", "A", unit=2),
            (
                "sound.yml:5:5 'A' does not have unit 2 out of service; nothing was changed"
                " [in-already]"
            ),
        ),
        (
            ordered("count", "Vellum 7", number=-1),
            (
                "sound.yml:25:5 'Vellum 7' cannot be counted below zero; write how many there are"
                " [count-below-zero]"
            ),
        ),
        (
            ordered("count", "Vellum 8", number=9),
            (
                "sound.yml:24:5 'Vellum 8' cannot have 13 at work of 9; say how many work with"
                " --working [count-beyond]"
            ),
        ),
        (
            ordered("count", "Vellum 7", number=12),
            "sound.yml:25:5 'Vellum 7' has that count already; nothing was changed [count-same]",
        ),
        (
            ordered("count", "Meridian", number=1),
            (
                "sound.yml:9:5 'Meridian' is not counted; give the order for the whole line"
                " [key-not-here]"
            ),
        ),
        (
            ordered("move", "Deck", place="Mix position", also={}),
            (
                "stage.yml:4:5 'Deck' has no place; give its position, such as across='4 m SL'"
                " [key-not-here]"
            ),
        ),
        (
            ordered("move", "Vellum 7", place="nowhere", also={}),
            "sound.yml 'Vellum 7' says all of that already; nothing was changed [changes-nothing]",
        ),
        (
            ordered("move", "Pocket", place="Cellar", also={}),
            (
                "sound.yml:18:12 place: 'Cellar' is not the name of any place; described are: Mix"
                " position, Stage left [reference-unknown]"
            ),
        ),
        (
            ordered("remove", "Mix position"),
            (
                "sound.yml:10:12 place: 'Mix position' is not the name of any place; described are:"
                " Stage left [reference-unknown]"
            ),
        ),
        (
            lambda room: added(room, "sound.stock", "vellum 7", {}),
            (
                "sound.yml:25:5 'vellum 7' is in that list already; change its count, or give the"
                " new line its own name [name-taken]"
            ),
        ),
        (
            lambda room: added(room, "sound.stok", "X", {}),
            (
                "venue 'sound.stok' is not a list of this venue; did you mean 'sound.stock' or"
                " 'sound.splits' or 'sound.subs'? [list-unknown]"
            ),
        ),
    ],
)
def test_an_order_that_cannot_be_is_a_sentence(make: Make, words: str) -> None:
    assert sentence(make) == words


def test_a_name_of_two_lines_asks_which() -> None:
    assert (
        sentence(ordered("out", "A"), sound=SOUND + "  - {name: A, kind: other, count: 1}\n")
        == "venue 'A' is the name of 2 lines; say which: --in sound.drop_boxes, --in sound.stock"
        " [line-ambiguous]"
    )


def test_a_list_that_is_none_or_not_known_is_begun() -> None:
    text = SOUND.replace("consoles:", "splits: none\n\nconsoles:")
    there = after(
        room(sound=text),
        lambda room: added(
            room, "sound.splits", "Split", {"kind": "transformer", "ways": "8", "legs": "2"}
        ),
    )
    assert (
        "splits: [{name: Split, kind: transformer, ways: 8, legs: 2}]\n" in there.texts["sound.yml"]
    )
    assert (
        '{key: line, now: "{name: Split, kind: transformer, ways: 8, legs: 2}"}'
        in there.texts["log.yml"]
    )


def test_an_order_that_changes_nothing_is_told_and_not_logged() -> None:
    assert (
        sentence(ordered("swap", "Vellum 7", other="Vellum 7"))
        == "sound.yml 'Vellum 7' says all of that already; nothing was changed [changes-nothing]"
    )


def test_a_key_within_a_group_that_is_not_there_is_told() -> None:
    assert (
        "says nothing under 'verified'; write the whole of it, such as 'verified={on: ...}'"
        in sentence(ordered("count", "Vellum 7", number=1, also={"verified.on": "2026-01-01"}))
    )
