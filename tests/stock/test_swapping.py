"""
Another truss, hoist or model in the place of one: nothing that was told of the old one stays, its
uses go with it, and the way back gives the first bytes.
"""

from builder.pipeline import pack_of
from builder.stock.changing import Stockroom, difference_text
from tests.stock.small import TEXTS, room
from tests.stock.test_orders import Make, after, ordered, result, sentence

RIGGING = """\
limits: {whole_roof: 9 t, each_point: 1000 kg}
beams:
  - {name: B1, runs: across, depth: 0 m, low_steel: [{across: 5 m SR, height: 8 m up}, {across: 5 m SL, height: 8 m up}]}
points:
  - {name: P1, beam: B1, across: 4 m SR}
  - {name: P2, beam: B1, across: 4 m SL}
trusses:
  - name: Cawdry T40
    in_all: 20 m
    height: 400 mm
    table:
      - {span: 4 m, uniform: 2400 kg}
      - {span: 8 m, uniform: 1280 kg}
    verified: {on: 2025-11-01, by: head rigger, how: maker's sheet}
    note: Blue marks.
  - {name: Cawdry T29, in_all: 12 m, height: 290 mm}
hoists:
  - {name: Hollin 500, count: 4, rating: 500 kg, weight: 34 kg, headroom: 520 mm, chain: 18 m}
  - {name: Hollin 1000, count: 4, rating: 1000 kg, weight: 52 kg, headroom: 600 mm}
hangs:
  - name: Bar
    truss: Cawdry T40
    first_end: {across: 4 m SR, depth: 0 m}
    last_end: {across: 4 m SL, depth: 0 m}
    weight: 11.4 kg/m   # with its pins
    supports:
      - {point: P1, hoist: Hollin 500}
      - {point: P2, hoist: Hollin 500}
"""  # noqa: E501
SYSTEM = """\
models:
  - {name: Alder 8, kind: full range, lowest: 60 Hz, highest: 18 kHz, width: 0.3 m, height: 0.5 m, weight: 20 kg}
  - {name: Birch 12, kind: full range, lowest: 50 Hz, highest: 18 kHz, width: 0.4 m, height: 0.6 m, weight: 31 kg}
hangs:
  - {name: Left, model: Alder 8, boxes: 1, at: {across: 3 m SR, depth: 0 m}, top: 5 m up, down: 10 deg, frame: 12 kg}
"""  # noqa: E501
ROOM = {"rigging": RIGGING, "sound": SYSTEM}


def changes(make: Make, there: Stockroom | None = None) -> list[str]:
    """The lines of the venue's files that go and come, the log's left out."""
    here = room(**ROOM) if there is None else there
    files = [each for each in result(here, make).rewrites if each.file != "log.yml"]
    return [line for line in difference_text(files).splitlines() if line[:2] in ("- ", "+ ")]


def back_again(first: Make, undo: Make) -> bool:
    """Whether an order and its opposite give the first bytes."""
    there = after(room(**ROOM), first, undo)
    texts = {name: text for name, text in there.texts.items() if name != "log.yml"}
    return texts == {**TEXTS, "rigging.yml": RIGGING, "sound.yml": SYSTEM}


def log_of(make: Make) -> str:
    """The log after an order."""
    return after(room(**ROOM), make).texts["log.yml"]


def test_a_new_truss_has_nothing_of_the_old_one_and_its_hangs_name_it() -> None:
    assert changes(ordered("swap", "Cawdry T40", other="Cawdry T52")) == [
        "-  - name: Cawdry T40",
        "+  - name: Cawdry T52",
        "-    height: 400 mm",
        "-    table:",
        "-      - {span: 4 m, uniform: 2400 kg}",
        "-      - {span: 8 m, uniform: 1280 kg}",
        "-    verified: {on: 2025-11-01, by: head rigger, how: maker's sheet}",
        "+    height: unknown",
        "+    table: unknown",
        "-    truss: Cawdry T40",
        "+    truss: Cawdry T52",
        "-    weight: 11.4 kg/m   # with its pins",
        "+    weight: unknown   # with its pins",
    ]


def test_what_a_hang_on_an_unknown_truss_weighs_is_in_no_figure() -> None:
    there = after(room(**ROOM), ordered("swap", "Cawdry T40", other="Cawdry T52"))
    section = pack_of(there.venue).section("rigging")
    assert section is not None
    point, hang, house = (
        section.item("point", "P1"),
        section.item("hang", "Bar"),
        section.item("by", "house"),
    )
    for item, name in ((point, "carried"), (point, "left"), (hang, "total"), (house, "weight")):
        assert item is not None
        figure = item.figure(name)
        assert figure is not None
        assert figure.value is None, name
    findings = [each.sentence for each in pack_of(there.venue).findings]
    assert "What the points of Bar carry cannot be worked out: it needs its own weight." in findings


def test_what_is_known_of_the_new_one_is_given_with_the_order() -> None:
    also = {"height": "520 mm", "weight": "14 kg/m"}
    lines = changes(ordered("swap", "Cawdry T40", other="Cawdry T52", also=also))
    assert "+    height: 520 mm" in lines
    assert "+    table: unknown" in lines
    assert "+    weight: 14 kg/m   # with its pins" in lines


def test_the_log_tells_what_stood_on_the_line_and_on_its_uses() -> None:
    text = log_of(ordered("swap", "Cawdry T40", other="Cawdry T52"))
    assert "      - {key: name, was: Cawdry T40, now: Cawdry T52}\n" in text
    assert "      - {key: height, was: 400 mm, now: unknown}\n" in text
    table = '"[{span: 4 m, uniform: 2400 kg}, {span: 8 m, uniform: 1280 kg}]"'
    assert f"      - {{key: table, was: {table}, now: unknown}}\n" in text
    assert "    within: rigging.hangs\n    line: Bar\n" in text
    assert "      - {key: weight, was: 11.4 kg/m, now: unknown}\n" in text


def test_a_truss_and_its_way_back_give_the_first_bytes() -> None:
    assert back_again(
        ordered("swap", "Cawdry T40", other="Cawdry T52"),
        ordered("swap", "Cawdry T52", other="Cawdry T40"),
    )
    also = {"height": "520 mm", "table": "[{span: 2 m, uniform: 900 kg}]"}
    assert back_again(
        ordered("swap", "Cawdry T40", other="Cawdry T52", also=also),
        ordered("swap", "Cawdry T52", other="Cawdry T40"),
    )


def test_a_value_changed_by_hand_since_is_not_overwritten_by_the_log() -> None:
    there = after(room(**ROOM), ordered("swap", "Cawdry T40", other="Cawdry T52"))
    hand = there.texts["rigging.yml"].replace("height: unknown", "height: 500 mm")
    texts = {key.removesuffix(".yml"): text for key, text in there.texts.items()}
    again = changes(
        ordered("swap", "Cawdry T52", other="Cawdry T40"), room(**{**texts, "rigging": hand})
    )
    assert "-    height: 500 mm" in again
    assert "+    height: unknown" in again


def test_a_truss_that_is_in_stock_already_takes_the_uses_and_both_lines_stay() -> None:
    there = ordered("swap", "Cawdry T40", other="cawdry t29")
    assert changes(there) == [
        "-    truss: Cawdry T40",
        "+    truss: Cawdry T29",
        "-    weight: 11.4 kg/m   # with its pins",
        "+    weight: unknown   # with its pins",
    ]
    assert back_again(there, ordered("swap", "Cawdry T29", other="Cawdry T40"))


def test_a_hang_takes_another_truss_by_itself() -> None:
    lines = changes(ordered("swap", "Bar", other="Cawdry T29", also={"weight": "9 kg/m"}))
    assert lines == [
        "-    truss: Cawdry T40",
        "+    truss: Cawdry T29",
        "-    weight: 11.4 kg/m   # with its pins",
        "+    weight: 9 kg/m   # with its pins",
    ]
    assert changes(ordered("swap", "Bar", other="Front bar")) == [
        "-  - name: Bar",
        "+  - name: Front bar",
    ]


def test_a_hoist_must_be_told_what_it_lifts_and_weighs() -> None:
    assert (
        sentence(ordered("swap", "Hollin 500", other="Hollin 250"), **ROOM)
        == "rigging.yml:18:5 'Hollin 500' tells rating, weight and headroom of Hollin 500, which"
        " say nothing of Hollin 250; give those of Hollin 250 after its name: rating=... weight=..."
        " headroom=... [model-needs]"
    )
    also = {"rating": "250 kg", "weight": "20 kg", "headroom": "400 mm"}
    assert changes(ordered("swap", "Hollin 500", other="Hollin 250", also=also)) == [
        "-  - {name: Hollin 500, count: 4, rating: 500 kg, weight: 34 kg, headroom: 520 mm, chain:"
        " 18 m}",
        "+  - {name: Hollin 250, count: 4, rating: 250 kg, weight: 20 kg, headroom: 400 mm, chain:"
        " unknown}",
        "-      - {point: P1, hoist: Hollin 500}",
        "-      - {point: P2, hoist: Hollin 500}",
        "+      - {point: P1, hoist: Hollin 250}",
        "+      - {point: P2, hoist: Hollin 250}",
    ]
    assert back_again(
        ordered("swap", "Hollin 500", other="Hollin 250", also=also),
        ordered("swap", "Hollin 250", other="Hollin 500"),
    )


def test_a_hoist_in_stock_takes_the_uses_and_needs_nothing() -> None:
    assert changes(ordered("swap", "Hollin 500", other="Hollin 1000")) == [
        "-      - {point: P1, hoist: Hollin 500}",
        "-      - {point: P2, hoist: Hollin 500}",
        "+      - {point: P1, hoist: Hollin 1000}",
        "+      - {point: P2, hoist: Hollin 1000}",
    ]
    nothing_else = {"rigging": RIGGING}
    there = after(room(**nothing_else), ordered("swap", "Hollin 500", other="Hollin 1000"))
    section = pack_of(there.venue).section("rigging")
    assert section is not None
    support = section.of_kind("support")[0]
    # Half of 11.4 kg/m × 8 m, and the new hoist's 52 kg: 45.6 + 52 = 97.6 kg.
    assert support.number("with-hoist") == 97.6


def test_two_models_of_which_the_first_is_used_nowhere_leave_all_as_it_is() -> None:
    assert (
        sentence(ordered("swap", "Cawdry T29", other="Cawdry T40"), **ROOM)
        == "rigging.yml:16:5 'Cawdry T29' is named by no other line, and Cawdry T40 has a line of"
        " its own at rigging.yml:8:5; nothing was changed [swap-nothing]"
    )


def test_another_model_in_a_hang_of_loudspeakers_leaves_no_weight_of_the_old_frame() -> None:
    assert changes(ordered("swap", "Left", other="Birch 12")) == [
        "-  - {name: Left, model: Alder 8, boxes: 1, at: {across: 3 m SR, depth: 0 m}, top: 5 m up,"
        " down: 10 deg, frame: 12 kg}",
        "+  - {name: Left, model: Birch 12, boxes: 1, at: {across: 3 m SR, depth: 0 m}, top: 5 m"
        " up, down: 10 deg, frame: unknown}",
    ]
    assert back_again(
        ordered("swap", "Left", other="Birch 12"), ordered("swap", "Left", other="Alder 8")
    )


def test_a_loudspeaker_model_takes_the_hangs_along_and_needs_all_that_figures_stand_on() -> None:
    assert "tells kind, lowest, highest, width and height of Alder 8" in sentence(
        ordered("swap", "Alder 8", other="Cedar 10"), **ROOM
    )
    assert changes(ordered("swap", "Alder 8", other="Birch 12")) == [
        "-  - {name: Left, model: Alder 8, boxes: 1, at: {across: 3 m SR, depth: 0 m}, top: 5 m up,"
        " down: 10 deg, frame: 12 kg}",
        "+  - {name: Left, model: Birch 12, boxes: 1, at: {across: 3 m SR, depth: 0 m}, top: 5 m"
        " up, down: 10 deg, frame: unknown}",
    ]


def test_the_same_name_spelled_otherwise_keeps_what_it_tells() -> None:
    assert changes(ordered("swap", "Cawdry T40", other="Cawdry T-40")) == [
        "-  - name: Cawdry T40",
        "+  - name: Cawdry T-40",
        "-    truss: Cawdry T40",
        "+    truss: Cawdry T-40",
    ]


def test_a_table_with_a_comment_among_its_lines_is_left_to_a_person() -> None:
    comment = RIGGING.replace("2400 kg}", "2400 kg}   # not at the ends")
    assert sentence(
        ordered("swap", "Cawdry T40", other="Cawdry T52"), **{**ROOM, "rigging": comment}
    ).endswith("change it in an editor; nothing was changed [edit-by-hand]")
