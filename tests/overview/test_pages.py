"""The pages that look over a whole pack, of packs made by hand, line by line."""

from dataclasses import replace

import pytest

from builder.cautions import EVERYWHERE
from builder.document import Block, Entry
from builder.overview import overview_pages
from builder.overview.changes import changes_feed, changes_page, done, told_on
from builder.overview.closures import closed_alone, closures, sentence
from builder.overview.elevation import elevation
from builder.overview.findings import findings_page
from builder.overview.home import home_page, some
from builder.overview.log import space_of_file
from builder.overview.spaces import (
    SpaceOverview,
    comparison_page,
    home_of_spaces,
    named,
    space_page_blocks,
)
from builder.overview.workings import sources, workings_page
from builder.pack import (
    Altered,
    Change,
    Confirmed,
    Fact,
    Field,
    Figure,
    Finding,
    Item,
    Level,
    Pack,
    Place,
    Reference,
    Revision,
    Section,
    Space,
    Standing,
    Value,
    Verified,
    Working,
)
from tests.golden_files import held
from tests.test_golden import block_lines, page_lines


def item(kind: str, name: str, condition: str = "in service", **facts: str) -> Item:
    """An item with facts in words."""
    key = f"{kind}.{name}"
    told = tuple(
        Fact(f"{key}.{each}", each.capitalize(), Standing.STATED, Value(text))
        for each, text in facts.items()
    )
    return Item(key, kind, name, told, condition=condition)


def pack(*items: Item, **more: object) -> Pack:
    """A pack of a house with these items."""
    revision = Revision("7", "2026-05-10", "technical manager", "abc", "After the fire.")
    house = Section("house", "House", items)
    return replace(Pack("The Shed", revision, (house,), ()), **more)  # type: ignore[arg-type]


def lines(*blocks: Block) -> list[str]:
    """Blocks as lines of plain text."""
    return [line for block in blocks for line in block_lines(block)]


def finding(level: Level, sentence: str, **more: object) -> Finding:
    """A finding."""
    return replace(Finding(level, "code-x", sentence), **more)  # type: ignore[arg-type]


HEAD = [Entry("Width", "9 m")]
DANGER, CAUTION = finding(Level.DANGER, "It falls."), finding(Level.CAUTION, "It leaks.")


def test_the_first_page_of_a_house_that_says_little() -> None:
    assert list(page_lines(home_page(pack(), HEAD))) == [
        "The Shed",
        "Width: 9 m",
        f"[caution: Planning figures] {EVERYWHERE}",
        "",
        "## How fresh this is",
        "House: [not verified]",
        "Revision 7 of 2026-05-10, issued by technical manager. Description abc. After the fire.",
    ]


def test_the_first_page_says_what_and_where_the_house_is() -> None:
    told = list(page_lines(home_page(pack(item("identity", "X", what="A shed.", town="Rye")), [])))
    assert told[1] == "A shed. Rye."
    bare = list(
        page_lines(home_page(pack(item("other", "Y"), item("identity", "X", what="A hut.")), []))
    )
    assert bare[1] == "A hut."


@pytest.mark.parametrize(
    ("findings", "told"),
    [
        ((), None),
        ((finding(Level.NOTE, "Odd."),), None),
        (
            (CAUTION, DANGER, DANGER),
            "[danger: Danger] It falls. All findings: 2 dangers and 1 caution",
        ),
        (
            (CAUTION, CAUTION),
            "[caution: Open findings] 2 cautions on this revision. Read the findings",
        ),
    ],
)
def test_the_first_page_tells_the_first_danger_and_how_many_findings(
    findings: tuple[Finding, ...], told: str | None
) -> None:
    found = list(page_lines(home_page(pack(findings=findings), [])))
    assert (told in found) if told else not any("inding" in line for line in found)


def change(**more: object) -> Change:
    """A change of the house."""
    return replace(Change("2026-05-01", "head of sound", "dropped"), **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("newest", "words"),
    [
        (
            change(line="Vellum", did="out", out=1, of=4, moved=("a",)),
            "Vellum, 1 of 4 out of service. Dropped. 1 figure moved with it. What changed",
        ),
        (
            change(line="Vellum", moved=("a", "b")),
            "Vellum. Dropped. 2 figures moved with it. What changed",
        ),
        (change(), "Dropped. What changed"),
    ],
)
def test_the_first_page_tells_the_last_change(newest: Change, words: str) -> None:
    older = change(on="2026-04-01", line="Old")
    told = list(page_lines(home_page(pack(log=(older, newest)), [])))
    assert f"Last change 2026-05-01: {words}" in told
    assert not any("Old" in line for line in told)


def test_trouble_spots_are_told_with_what_to_do() -> None:
    spots = (
        item("trouble", "1", what="The lift sticks", do="Ring first."),
        item("trouble", "2", what="Steep!", do="Chock."),
        item("trouble", "3", what="Low beam"),
    )
    told = list(page_lines(home_page(pack(item("other", "X"), *spots), [])))
    at = told.index("## Known trouble spots")
    assert told[at + 1 : at + 4] == [
        "- The lift sticks. Ring first.",
        "- Steep! Chock.",
        "- Low beam",
    ]


def test_what_is_out_stands_first_then_what_is_out_in_part_then_what_is_limited() -> None:
    limited = replace(item("a", "Limited", "limited"), note="Bent.")
    some_out = replace(item("a", "Some", "limited"), out=1, of=4, units=(3,))
    unit = replace(item("a", "Unit", "out of service"), unit_of=some_out.key)
    out = item("a", "Out", "out of service")
    fine = item("a", "Fine")
    told = list(page_lines(home_page(pack(limited, some_out, unit, fine, out), [])))
    at = told.index("## Not in full service today")
    assert told[at + 1 : at + 4] == [
        "- [out of service]  House: Out",
        "- [1 of 4 out of service, number 3]  House: Some",
        "- [limited]  House: Limited Bent.",
    ]
    assert not any("Unit" in line or "Fine" in line for line in told)


def test_what_the_house_does_not_know_yet_is_told_by_line() -> None:
    unknown = Item("a.X", "a", "X", (Fact("a.X.width", "Clear width", Standing.UNKNOWN),))
    none = Item("a.Y", "a", "Y", (Fact("a.Y.width", "Clear width", Standing.NONE),))
    told = list(page_lines(home_page(pack(unknown, none), [])))
    at = told.index("## Not known yet")
    assert told[at + 1] == "- House: X, clear width"
    assert not any(": Y" in line for line in told)


def test_a_long_list_is_folded_after_six_unless_two_are_left() -> None:
    assert lines(*some([str(number) for number in range(8)])) == [f"- {n}" for n in range(8)]
    assert lines(*some([str(number) for number in range(9)])) == [
        *(f"- {n}" for n in range(6)),
        "> 3 more",
        *(f"  - {n}" for n in range(6, 9)),
    ]


@pytest.mark.parametrize(("stale", "tag"), [(True, "[old check]  "), (False, "")])
def test_how_fresh_a_department_is(stale: bool, tag: str) -> None:
    check = Verified("2026-05-01", "electrician", "measured", 9, stale)
    section = Section("power", "Power", (), verified=check)
    told = list(page_lines(home_page(pack(sections=(section,)), [])))
    (line,) = [line for line in told if line.startswith("Power")]
    assert line.startswith(f"Power: {tag}2026-05-01 (by electrician, measured")


# Closures.


def closed(last: str = "2026-06-01", **more: str) -> Item:
    """A closure from May on."""
    return item("closure", last or "open", **{"from": "2026-05-01", "until": last, **more})


@pytest.mark.parametrize(
    ("until", "told"), [("2026-05-09", False), ("2026-05-10", True), ("2026-05", True), ("", True)]
)
def test_a_closure_is_told_until_its_last_day(until: str, told: bool) -> None:
    """The revision is of 10 May 2026: a closure that ends on that day is not over."""
    found = lines(*closures(pack(closed(until))))
    assert bool(found) is told


@pytest.mark.parametrize(
    ("closure", "words"),
    [
        (closed(), "The whole house, from 2026-05-01 until 2026-06-01."),
        (closed(why="New floor"), "The whole house, from 2026-05-01 until 2026-06-01. New floor."),
        (closed(""), "The whole house, from 2026-05-01 until a day not known yet."),
        (closed(spaces="Hall"), "Hall, from 2026-05-01 until 2026-06-01."),
        (closed(departments="stage"), "Stage, from 2026-05-01 until 2026-06-01."),
        (
            closed(departments="stage", spaces="Hall"),
            "Stage in Hall, from 2026-05-01 until 2026-06-01.",
        ),
    ],
)
def test_a_closure_is_a_sentence(closure: Item, words: str) -> None:
    assert sentence(closure) == words


def test_only_what_is_of_a_space_is_closed_alone() -> None:
    own = closed(spaces="Hall")
    over = closed("2026-05-01", spaces="Hall")
    assert closed_alone(pack(closed("2026-07-01"), own, over)) == [own]


# Findings, workings, changes.


def test_findings_stand_by_level_with_their_place_and_space() -> None:
    there = finding(Level.CAUTION, "Leaks.", place=Place("stage.yml", 7), space="hall")
    house = finding(Level.CAUTION, "Old.", place=Place("stage.yml"))
    note = finding(Level.NOTE, "Odd.")
    whole = pack(findings=(note, there, house, DANGER), spaces=(Space("hall", "Great hall"),))
    assert list(page_lines(findings_page(whole)))[2:] == [
        f"[caution: Planning figures] {EVERYWHERE}",
        "",
        "## Dangers",
        "[danger: Danger] It falls.  (Code code-x.)",
        "",
        "## Cautions",
        "[caution: Caution, Great hall] Leaks.  (stage.yml, line 7. Code code-x.)",
        "[caution: Caution] Old.  (Code code-x.)",
        "",
        "## Notes",
        "[note: Note] Odd.  (Code code-x.)",
    ]
    assert list(page_lines(findings_page(pack())))[2:] == ["Nothing was found."]
    confirmed = (Confirmed(note, "technical manager", "2026-05-01"),)
    assert len(list(page_lines(findings_page(pack(confirmed=confirmed))))) > 3


def figure(*references: Reference, key: str = "a.X.f", caution: str = "") -> Figure:
    """A figure that cites some references."""
    return Figure(key, "Load", Value("5 kg"), Working("x = y", (), references), caution)


def test_workings_stand_by_department_with_each_source_once() -> None:
    one = Reference("EN 1", "3, from memory", "Loads")
    two = Reference("EN 1", "4", "Loads")
    other = Reference("Book", "5")
    with_two = Item(
        "a.X", "a", "X", figures=(figure(two, other, caution="Ask."), figure(one, caution="Ask."))
    )
    field = Field("f", "Floor", "mix", 1.0, ("A",), (), ((),), Working("L", (), (two,)))
    sections = (
        Section("power", "Power", (with_two, item("a", "Without"))),
        Section("sound", "Sound", (), fields=(field,)),
        Section("none", "None", ()),
    )
    whole = pack(sections=sections)
    assert sources(whole) == ["Book", "EN 1. Loads (from memory: 3)"]
    told = list(page_lines(workings_page(whole)))
    assert [line for line in told if line.startswith(("#", ">"))] == [
        "## Power",
        "> X: load, load",
        "## Sound",
        "> Floor",
        "## Sources",
    ]
    assert sum("Ask." in line for line in told) == 1
    assert any("nobody looked up" in line for line in told)
    plain = pack(
        sections=(Section("power", "Power", (Item("a.X", "a", "X", figures=(figure(two),)),)),)
    )
    assert not any("nobody looked up" in line for line in page_lines(workings_page(plain)))


LOG = (
    change(file="sound.yml", line="Vellum", did="out", out=1, of=4, moved=("a: +1 m", "b: −2 kg")),
    change(line="By hand"),
    change(on="2026-04-01", file="spaces/hall/power.yml", line="Board", did="rewired"),
    change(
        on="2026-03-01",
        why="Painted",
        file="spaces/hall/power.yml",
        altered=(Altered("a", "", "1"),),
    ),
)


def spaced() -> Pack:
    """A pack with sections of a space, and a log."""
    sections = (Section("sound", "Sound", ()), Section("hall/power", "Power", ()))
    own = Section("power", "Power", (), space="hall")
    return pack(sections=(*sections[:1], own), spaces=(Space("hall", "Hall"),), log=LOG)


def test_what_changed_is_a_row_a_change_newest_first() -> None:
    told = list(page_lines(changes_page(spaced())))
    at = told.index("Day | What | Why, and by whom")
    assert told[at + 1 : at + 5] == [
        "2026-05-01 | By hand | Dropped. Head of sound.",
        "2026-05-01 | Sound: Vellum. 1 of 4 out of service. What moved with it"
        " | Dropped. Head of sound.",
        "2026-04-01 | Power, Hall: Board. Rewired. | Dropped. Head of sound.",
        "2026-03-01 | Power, Hall. A 1. | Painted. Head of sound.",
    ]
    assert "## Figures that moved" in told
    fold = told.index("> 2026-05-01, Vellum")
    assert told[fold + 1 : fold + 3] == ["  - a: +1 m", "  - b: −2 kg"]
    still = list(page_lines(changes_page(pack(log=LOG[1:2]))))
    assert not any("Figures that moved" in line for line in still)


def test_a_change_of_a_file_that_is_not_published_links_to_no_page() -> None:
    assert told_on(change(file="lines.yml"), spaced()) == ("", "")
    assert told_on(change(file="power.yml"), spaced()) == ("", "")
    assert told_on(change(file="sound.yml"), spaced()) == ("Sound", "sound")
    assert told_on(change(file="spaces/hall/power.yml"), spaced()) == ("Power, Hall", "hall-power")


@pytest.mark.parametrize(
    ("out", "of", "words"),
    [
        (0, 2, "Back in service, all 2."),
        (1, 3, "Back in service, 1 of 3 out of service still."),
        (0, 1, "Back in service."),
    ],
)
def test_what_came_back_tells_how_many_are_out_still(out: int, of: int, words: str) -> None:
    assert done(change(did="back", out=out, of=of)) == words
    assert done(change(did="out", out=1)) == "Out of service."


def test_a_file_of_a_space_is_called_with_its_folder() -> None:
    assert space_of_file("spaces/hall/power.yml") == "hall"
    assert space_of_file("power.yml") == ""


def test_the_feed_tells_what_moved_with_the_caution() -> None:
    feed = changes_feed(spaced())
    assert feed.count("<entry>") == 4
    assert "Vellum: 1 of 4 out of service." in feed
    assert "Dropped. Moved: a: +1 m; b: −2 kg." in feed
    assert "Dropped.<" in feed


def test_the_page_of_changes_is_there_where_a_log_is() -> None:
    assert [page.key for page in overview_pages(pack(), [])] == [
        "index",
        "findings",
        "workings",
        "glossary",
    ]
    assert "changes" in [page.key for page in overview_pages(spaced(), [])]


# A house of several stages.

HALL, STUDIO = Space("hall", "Hall"), Space("studio", "Studio")


def of_spaces() -> tuple[Pack, list[SpaceOverview]]:
    """A house of two spaces, one of them closed, limited and with findings."""
    hall = replace(item("space", "Hall", "limited", what="A great hall."), note="Its door sticks.")
    sections = (
        Section("house", "House", (item("deck", "Hall"), hall, item("space", "Studio"))),
        Section("power", "Power", (), space="hall"),
    )
    whole = pack(sections=sections, spaces=(HALL, STUDIO))
    answers = [
        Entry(f"Q{number}", f"{number} m", "small" if number == 1 else "") for number in range(8)
    ]
    return whole, [
        SpaceOverview(HALL, answers, 2, (closed(spaces="Hall"),)),
        SpaceOverview(STUDIO, [Entry("Q0", ["7 m"], ["a", "b"])], 0),
    ]


def test_the_first_page_tells_each_space_with_its_state_findings_and_answers() -> None:
    whole, spaces = of_spaces()
    told = list(page_lines(home_of_spaces(whole, whole, spaces)))
    hall, studio = told.index("## Hall"), told.index("## Studio")
    assert told[hall + 1 : hall + 3] == [
        "[limited]  A great hall. All of Hall; 2 findings.",
        "[caution: Closed] Hall, from 2026-05-01 until 2026-06-01.",
    ]
    assert told[hall + 3 : studio - 1] == [
        "Q0: 0 m",
        "Q1: 1 m (small)",
        "Q2: 2 m",
        "Q3: 3 m",
        "Q4: 4 m",
        "Q5: 5 m",
    ]
    assert told[studio + 1 : studio + 3] == ["All of Studio.", "Q0: 7 m (ab)"]
    assert "House: [not verified]" in told
    assert "Power, Hall: [not verified]" in told
    assert "## How fresh this is" in told


def test_the_spaces_are_compared_question_by_question() -> None:
    whole, spaces = of_spaces()
    told = list(page_lines(comparison_page(whole, spaces)))
    at = told.index("What | Hall | Studio")
    assert told[at + 1 : at + 5] == [
        "State | [limited] | in service",
        "Closed | Hall, from 2026-05-01 until 2026-06-01. | no",
        "Q0 | 0 m | 7 m (ab)",
        "Q1 | 1 m (small) | not described",
    ]
    assert told[-2:] == ["All of Hall", "All of Studio"]
    open_ones = [replace(each, closed=()) for each in spaces]
    fine = pack(item("space", "Hall"), item("space", "Studio"), spaces=(HALL, STUDIO))
    told = list(page_lines(comparison_page(fine, open_ones)))
    assert not any(line.startswith(("State", "Closed")) for line in told)


def test_the_first_page_of_a_space_says_what_the_house_says_of_it() -> None:
    whole, _ = of_spaces()
    told = lines(*space_page_blocks(whole, HALL, HEAD))
    assert told[:3] == ["[limited]  A great hall.", "Its door sticks.", "Width: 9 m"]
    assert told[-1] == "Power: [not verified]"
    assert "## How fresh this is" in told
    assert lines(*space_page_blocks(whole, STUDIO, HEAD))[:2] == [
        "One of the spaces of The Shed.",
        "Width: 9 m",
    ]
    assert named(whole.sections[1], whole) == "Power, Hall"
    assert named(whole.sections[0], whole) == "House"


def deck(**more: float) -> Pack:
    """A stage 10 m wide."""
    numbers = {"usable_width": 10.0, "height": 1.2, "clear_height": 6.0, **more}
    facts = tuple(
        Fact(f"deck.D.{key}", key, Standing.STATED, Value(f"{number} m", number=number, unit="m"))
        for key, number in numbers.items()
        if number >= 0
    )
    return pack(item("other", "X"), Item("deck.D", "deck", "D", facts))


def test_the_stage_from_the_house_looks_as_it_did() -> None:
    picture = elevation(deck())
    assert picture is not None
    held("elevation.svg", picture.svg)
    assert picture.alt == (
        "The stage seen from the house: 10.0 m wide, 1.2 m up, clear height above it 6.0 m."
    )
    wide = elevation(deck(usable_width=4.0, height=0.0, clear_height=-1))
    assert wide is not None
    assert wide.alt == "The stage seen from the house: 4.0 m wide, 0.0 m up."
    held("elevation-low.svg", wide.svg)


@pytest.mark.parametrize("lacks", [{"usable_width": -1.0}, {"height": -1.0}])
def test_a_house_that_does_not_say_how_wide_or_high_has_no_drawing(lacks: dict[str, float]) -> None:
    assert elevation(deck(**lacks)) is None
    assert elevation(pack()) is None
