"""Line sets: what each leaves, what is usual, what does not add up, and what shows are told."""

import itertools
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from builder.department import Published, Surroundings
from builder.departments.flying.description import Flying
from builder.departments.flying.page import blocks
from builder.departments.flying.publish import publish
from builder.departments.flying.section_drawing import rows_of_names
from builder.document import Picture
from builder.exchange import Offers
from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record, rule_record, section_record
from builder.fit.wanted import wanted_of
from builder.pack import Item, Pack, Standing
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.registry import RULES
from builder.rider.asked import rider_of
from builder.stating import Ageing
from tests.fit.sample import pack

AROUND = Surroundings(Offers(), Ageing(date(2026, 6, 1), 365), "metric")
THEATRE = Path(__file__).parents[1] / "venues" / "counterweight"
USUAL = "usual: {{moved_by: counterweight, arbor: 450 kg, pipe_weight: 50 kg{}}}\n"
WHOLE = "carries: Cloth, hung_weight: 100 kg, use: free"


def published(text: str) -> Published:
    """What a text publishes."""
    return publish(read(text, file="flying.yml", kind=Flying), AROUND)


def one_set(own: str, usual: str = USUAL.format("")) -> Item:
    """The only line set of a house."""
    item = published(f'{usual}line_sets: [{{name: "1", {own}}}]\n').section.item("lineset")
    assert item is not None
    return item


def left(own: str, usual: str = USUAL.format("")) -> tuple[float | None, float | None]:
    """What is left on the only line set, at least and at most."""
    found = one_set(own, usual).figure("left")
    assert found is not None
    assert found.caution
    return found.value.ends if found.value else (None, None)


def test_the_arbor_balances_the_pipe_and_what_hangs_on_it() -> None:
    assert left(WHOLE) == (300.0, 300.0)
    assert left("carries: none, use: free") == (400.0, 400.0)
    assert left("moved_by: double purchase, carries: none") == (175.0, 175.0)


def test_what_a_house_allows_beside_the_pipe_is_not_lessened_by_the_pipe() -> None:
    assert left("load: 120 kg, arbor: none, carries: none") == (120.0, 120.0)
    assert left("load: 120 kg, carries: none") == (120.0, 120.0)


def test_of_two_limits_the_lower_counts_and_both_are_told() -> None:
    assert left("load: 600 kg, carries: none") == (400.0, 400.0)
    found = published(
        USUAL.format("") + 'line_sets: [{name: "1", load: 600 kg, carries: none}]\n'
    ).findings
    assert [each.code for each in found] == ["line-set-limits"]
    assert "600 kg and 400 kg" in found[0].sentence


@pytest.mark.parametrize(
    ("own", "usual"),
    [
        ("carries: none, pipe_weight: unknown", USUAL.format("")),
        ("carries: Cloth", USUAL.format("")),
        ("carries: Cloth, hung_weight: unknown", USUAL.format("")),
        ("carries: none, moved_by: unknown", USUAL.format("")),
        ("use: free", USUAL.format("")),
        ("carries: none", "usual: {moved_by: counterweight, arbor: 450 kg}\n"),
    ],
)
def test_what_is_not_known_never_leaves_more(own: str, usual: str) -> None:
    least, most = left(own, usual)
    assert least is None
    assert most is not None
    assert most >= 300.0


def test_a_set_without_a_limit_names_what_it_lacks() -> None:
    found = one_set("carries: none, moved_by: motor", "").figure("left")
    assert found is not None
    assert (found.value, found.missing) == (None, ("its limit",))


def test_a_weight_known_in_part_leaves_two_ends() -> None:
    assert left("carries: Cloth, hung_weight: 80 to 100 kg") == (300.0, 320.0)


def test_usual_values_stand_on_the_set_and_its_own_come_first() -> None:
    usual = USUAL.format(", high_trim: 9 m, low_trim: 1 m")
    item = one_set("high_trim: 7 m", usual)
    assert (item.text("high_trim"), item.text("low_trim")) == ("7 m", "1 m")
    unsaid = one_set("carries: none").fact("high_trim")
    assert unsaid is not None
    assert unsaid.standing is Standing.NOT_STATED
    assert len({fact.key for fact in item.facts}) == len(item.facts)


def test_more_than_the_arbor_balances_is_a_danger_and_perhaps_more_a_caution() -> None:
    sure = published(
        USUAL.format("") + 'line_sets: [{name: "1", carries: Wall, hung_weight: 500 kg}]\n'
    ).findings
    assert [(each.code, each.level.value) for each in sure] == [("line-set-over", "danger")]
    perhaps = published(
        USUAL.format("") + 'line_sets: [{name: "1", carries: Wall, hung_weight: 300 to 500 kg}]\n'
    ).findings
    assert [(each.code, each.level.value) for each in perhaps] == [("line-set-over", "caution")]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ('line_sets: [{name: "1", low_trim: 9 m, high_trim: 1 m}]', "trims-swapped"),
        ('grid: 10 m\nline_sets: [{name: "1", high_trim: 12 m}]', "trim-above-grid"),
        (
            'line_sets: [{name: "1", distance: 2 m}, {name: "2", distance: 200 cm}]',
            "line-sets-at-one",
        ),
    ],
)
def test_what_does_not_add_up_is_asked(text: str, code: str) -> None:
    assert [each.code for each in published(f"{text}\n").findings] == [code]


FREE = "carries: none, use: free"


@pytest.mark.parametrize(
    ("second", "third", "answers", "free"),
    [
        ("use: free", "use: free", ["yes", "yes", "yes"], (3, 3)),
        ("use: free", "use: stays", ["no", "no", "no"], (0, 0)),
        ("use: may be cleared", "use: free", ["", "", ""], (0, 3)),
        ("use: free, condition: out of service", "use: free", ["no", "no", "no"], (0, 0)),
        ("use: free", "use: unknown", ["", "", ""], (0, 3)),
        ("use: free, comes_in: no", "use: free", ["", "", ""], (0, 3)),
        ("use: free", "use: free, retrim: no", ["", "", ""], (0, 3)),
        ("use: free, comes_in: yes", "use: free, retrim: yes", ["yes", "yes", "yes"], (3, 3)),
        ("use: unknown", "use: stays", ["no", "no", "no"], (0, 0)),
        ("use: free, condition: limited", "use: free", ["yes", "yes", "yes"], (3, 3)),
    ],
)
def test_a_set_is_free_only_with_all_that_move_with_it(
    second: str, third: str, answers: list[str], free: tuple[int, int]
) -> None:
    sets = (
        f'{{name: "1", {FREE}, moves_with: ["2"]}}, {{name: "2", {second}}},'
        f' {{name: "3", {third}, moves_with: ["2"]}}'
    )
    section = published(f"line_sets: [{sets}]\n").section
    assert [item.text("free") for item in section.of_kind("lineset")] == answers
    whole = section.item("whole")
    assert whole is not None
    counted = whole.figure("free")
    assert counted is not None
    assert counted.value is not None
    assert counted.value.ends == free


def test_a_set_called_free_that_moves_with_one_that_is_not_is_told() -> None:
    sets = f'{{name: "1", {FREE}}}, {{name: "2", carries: Wall, use: stays, moves_with: ["1"]}}'
    found = published(f"line_sets: [{sets}]\n")
    assert [each.code for each in found.findings] == ["line-set-tied"]
    first, _ = found.section.of_kind("lineset")
    told = first.figure("free")
    assert told is not None
    assert told.note == "moves with 2, which is not free"


def test_nothing_is_left_on_a_set_out_of_service() -> None:
    found = one_set(f"{FREE}, condition: out of service").figure("left")
    assert found is not None
    assert (found.value, found.missing) == (None, ("a line set in service",))
    assert found.caution


@pytest.mark.parametrize(
    ("use", "verdict"),
    [("free", "fits"), ("stays", "ask"), ("may be cleared", "ask"), ("unknown", "ask")],
)
def test_a_show_is_promised_no_set_that_moves_with_one_it_may_not_have(
    use: str, verdict: str
) -> None:
    folder = read_folder(THEATRE)
    text = (
        "usual: {moved_by: motor, load: 300 kg}\n"
        f'line_sets: [{{name: "1", {FREE}, moves_with: [X]}}, {{name: X, use: {use}}}]\n'
    )
    pack = pack_of(venue_of({**folder.texts, "flying.yml": text}, folder.photos))
    assert answer(pack, "{what: line sets, at least: 1}").startswith(verdict)
    assert answer(pack, "{what: line set load, at least: 200 kg}").startswith(verdict)


@pytest.mark.parametrize(
    ("own", "code"),
    [
        ('moves_with: ["1"]', "line-set-with-itself"),
        ("carries: none, hung_weight: 20 kg", "line-set-empty"),
    ],
)
def test_a_set_that_cannot_be_is_a_problem(own: str, code: str) -> None:
    with pytest.raises(Refused) as refused:
        one_set(own, "")
    assert [problem.code for problem in refused.value.problems] == [code]


def test_the_place_on_the_stage_is_from_its_own_reference_line() -> None:
    sets = '{name: "1", distance: 2 m}, {name: "2", distance: -1 m}'
    found = published(f"reference_at: 0.5 m US\nline_sets: [{sets}]\n").section.of_kind("lineset")
    assert [item.number("depth") for item in found] == [2.5, -0.5]
    assert one_set("distance: 2 m", "").figure("depth") is None


@pytest.fixture(scope="module")
def theatre() -> Pack:
    """The pack of a theatre whose schedule of line sets is written as such houses write it."""
    folder = read_folder(THEATRE)
    return pack_of(venue_of(folder.texts, folder.photos))


def answer(theatre: Pack, need: str) -> str:
    """The verdict on one need of a show."""
    rider = rider_of(f"act: Dancers\nneeds: [{need}]\n", file="rider.yml", rules=RULES)
    return str(fit(fit_record(theatre), [rider])["verdicts"][0]["verdict"])


def test_a_whole_schedule_has_a_home_and_counts(theatre: Pack) -> None:
    section = theatre.section("flying")
    assert section is not None
    sets = section.of_kind("lineset")
    assert len(sets) == 22
    assert {item.text("high_trim") for item in sets} >= {"56 ft 6 in", "51 ft", "42 ft"}
    whole = section.item("whole")
    assert whole is not None
    counted = whole.figure("free")
    assert counted is not None
    assert counted.value is not None
    assert counted.value.ends == (8, 17)
    pictures = [block for block in blocks(section, theatre) if isinstance(block, Picture)]
    assert [block.name for block in pictures] == ["flying-section"]


@pytest.mark.parametrize(
    ("need", "verdict"),
    [
        ("{what: line sets, at least: 6}", "fits, with a note"),
        ("{what: line sets, at least: 9}", "ask"),
        ("{what: line sets, at least: 23}", "short"),
        ("{what: high trim, at least: 50 ft}", "fits"),
        ("{what: high trim, at least: 60 ft}", "short"),
        ("{what: line set load, at least: 300 lb}", "ask"),
        ("{what: line set load, at least: 1200 lb}", "ask"),
        ("{what: line set load, at least: 3000 lb}", "short"),
        ("{what: grid height, at least: 60 ft}", "fits"),
        ("{what: grid height, at least: 63 ft}", "ask"),
        ("{what: pipe length, at least: 48 ft}", "fits"),
    ],
)
def test_shows_are_told_what_the_schedule_tells(theatre: Pack, need: str, verdict: str) -> None:
    assert answer(theatre, need) == verdict


@pytest.mark.law
@pytest.mark.parametrize("apart", [0.05, 0.2, 0.4, 3.0])
def test_no_two_names_of_the_section_touch_in_a_row(apart: float) -> None:
    xs = [number * apart for number in range(24)][::-1]
    wide = [0.6] * 24
    rows = rows_of_names(xs, wide, 0.1)
    for row in set(rows):
        there = sorted(x for x, own in zip(xs, rows, strict=True) if own == row)
        assert all(b - a > 0.6 for a, b in itertools.pairwise(there))
    assert max(rows) <= 0.8 / apart


@pytest.mark.parametrize(
    ("line", "verdict"),
    [
        ("terms: included", "fits"),
        ("condition: limited", "fits, with a note"),
        ("terms: by arrangement", "fits, with a note"),
        ("terms: not for visitors", "short"),
    ],
)
def test_a_set_that_moves_with_another_is_no_better_than_it(line: str, verdict: str) -> None:
    """Two pipes that are tied move together or not at all (common practice, no source)."""
    text = (
        "verified: {on: 2026-05-02, by: head flyman, how: measured}\n"
        "line_sets:\n"
        '  - {name: "1", pipe_length: 12 m, carries: none, use: free, moves_with: ["2"]}\n'
        f'  - {{name: "2", pipe_length: 5 m, carries: none, use: free, {line}}}\n'
    )
    section = section_record(published(text).section, {}, wanted_of(RULES.values()))
    rider = rider_of(
        "act: A\nneeds: [{what: pipe length, at least: 10 m}]\n", file="a.yml", rules=RULES
    )
    record: Any = {**pack(), "sections": [section]}
    record["rules"] = [rule_record(rule) for rule in RULES.values()]
    (found,) = fit(record, [rider])["verdicts"]
    assert found["verdict"] == verdict, found
    assert line == "terms: included" or "2, which moves with 1: " in " ".join(
        (found["reason"], *found["notes"])
    )


def test_a_limit_that_counts_the_pipe_leaves_less_by_the_pipe() -> None:
    # 120 kg with the pipe, which weighs 30 kg: 90 kg; 120 kg at the most where nobody weighed it.
    own = "carries: none, use: free, load_with_pipe: 120 kg, pipe_weight: 30 kg"
    assert left(own, "") == (90.0, 90.0)
    assert left("carries: none, use: free, load_with_pipe: 120 kg", "") == (None, 120.0)


def test_a_set_of_unknown_kind_hangs_no_more_than_the_strongest_kind_allows() -> None:
    kinds = (
        "sets_alike: [{name: Motors, count: 14, moved_by: motor, load: 350 kg},"
        " {name: Hemp, count: 18, moved_by: by hand, load_with_pipe: 120 kg}]\n"
    )
    free = "carries: none, use: free"
    assert left(free, kinds) == (None, 350.0)
    assert left(f"{free}, moved_by: by hand", kinds) == (None, 120.0)
    assert left(f"{free}, load: 500 kg", kinds) == (500.0, 500.0)
    open_kind = kinds.replace(", load: 350 kg", "")
    assert left(free, open_kind) == (None, None)


def test_the_page_tells_line_sets_by_kind() -> None:
    text = "sets_alike: [{name: Hemp, count: 18, moved_by: by hand, load_with_pipe: 120 kg}]\n"
    pack_of_it = published(text)
    (item,) = pack_of_it.section.of_kind("alike")
    assert item.text("count") == "18"
    assert item.text("load_with_pipe").startswith("120 kg")
