"""A house of several stages, from its folders to its pages."""

import json
from math import sqrt
from pathlib import Path

import pytest

from builder.document import Document, Link, Page
from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pack import Pack, Section
from builder.pack_json import from_json, to_json
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.problems import Refused
from builder.render.markdown import render
from builder.site.finding import searched
from builder.spaces.scoping import keys_of
from tests.spaces.houses import ROOT, asked, edited, figures, in_space, number, pack, rooms, space

HOUSE, HALL, STUDIO = "house.yml", "spaces/hall/", "spaces/studio-b/"
FREE = "power.service.cellar-switch.free.L1"


@pytest.mark.source("Three-phase apparent power, S = √3·U·I; sizes added, by hand")
def test_what_every_space_draws_counts_on_what_feeds_all() -> None:
    # Ventilation, loudspeakers of the hall, dimmers of the studio: kW by their power factors.
    drawn_a = (12 / 0.85 + 6 / 0.9 + 9 / 1.0) / (sqrt(3) * 0.4)
    whole = pack()
    for name in ("Great hall", "Studio B", "Yard"):
        assert number(whole, name, FREE) == pytest.approx(0.8 * 125 - drawn_a, abs=0.05)


def test_a_load_in_one_space_leaves_less_in_another_and_not_on_its_own_board() -> None:
    more = edited(f"{STUDIO}power.yml", "draws: 9 kW", "draws: 12 kW")
    before, after = pack(), pack(more)
    assert number(after, "Great hall", FREE) == pytest.approx(
        number(before, "Great hall", FREE) - 3 / (sqrt(3) * 0.4), abs=0.05
    )
    own = "power.board.stage-board.free.L1"
    assert number(after, "Great hall", own) == number(before, "Great hall", own)
    assert number(after, "Studio B", own) < number(before, "Studio B", own)


def test_a_load_of_which_nobody_knows_the_size_leaves_at_most_so_much_elsewhere() -> None:
    whole = pack(edited(f"{STUDIO}power.yml", "draws: 9 kW", "draws: unknown"))
    found = next(each for each in figures(in_space(whole, "Great hall")) if each.key == FREE)
    assert found.value is not None
    assert found.value.number is None
    assert "at most" in found.value.text


def test_a_space_of_which_nobody_knows_what_stands_on_it_leaves_at_most_so_much_elsewhere() -> None:
    path = f"{STUDIO}power.yml"
    text = rooms().texts[path]
    head = text[: text.index("standing_loads:")]
    whole = pack({**rooms().texts, path: f"{head}standing_loads: unknown\n"})
    found = next(each for each in figures(in_space(whole, "Great hall")) if each.key == FREE)
    assert found.value is not None
    assert found.value.number is None
    assert "at most" in found.value.text


def test_two_rooms_may_each_have_a_point_of_one_name() -> None:
    keys = keys_of(pack().sections)
    assert {"hall/rigging.point.p1", "studio-b/rigging.point.p1"} <= keys


def test_a_line_of_one_space_stands_in_no_other() -> None:
    whole = pack()
    told = {name: names(in_space(whole, name)) for name in ("Great hall", "Studio B", "Yard")}
    assert "Standing" in told["Great hall"]
    assert "Standing" not in told["Studio B"]
    assert "The studio shares a wall with the hall." not in told["Great hall"]
    assert all("Audience protection" in each for each in told.values())
    shared = [section for section in whole.sections if not section.space]
    assert "Standing" not in {item.name for section in shared for item in section.items}


def names(whole: Pack) -> set[str]:
    """The names of all items."""
    return {item.name for item in whole.items()}


def test_a_pack_comes_back_from_json_and_is_judged_alike() -> None:
    whole = pack()
    back = from_json(to_json(whole))
    assert back == whole
    riders = asked("act: A\nneeds: [{what: stage width, at least: 10 m}]")
    assert fit(fit_record(back), riders) == fit(fit_record(whole), riders)


# What goes wrong with folders, each in its whole words.

STAGE = rooms().texts[f"{STUDIO}stage.yml"]
WRONG = [
    (
        {f"{STUDIO}house.yml": "name: X"},
        "spaces/studio-b/house.yml is shared by all spaces, and stands beside house.yml; move what"
        " is of this space there, with 'spaces:' on the line [space-file]",
    ),
    (
        {f"{STUDIO}lighting.yml": "a: 1"},
        "spaces/studio-b/lighting.yml is not a file of any department; known: access.yml,"
        " stage.yml, rigging.yml, flying.yml, sound.yml, power.yml, lines.yml, rooms.yml, crew.yml"
        " [file-unknown]",
    ),
    (
        {"spaces/attic/stage.yml": STAGE},
        "spaces/attic is the folder of no space that house.yml names; known folders: hall,"
        " studio-b, yard [space-unknown]",
    ),
    (
        {"stage.yml": STAGE},
        "stage.yml is of one space, and this house has several; move it into the folder of its"
        " space, such as spaces/studio/stage.yml [space-file]",
    ),
]


@pytest.mark.parametrize(("more", "told"), WRONG)
def test_a_file_in_the_wrong_place_is_told_with_where_it_belongs(
    more: dict[str, str], told: str
) -> None:
    assert told in refused({**rooms().texts, **more})


def refused(texts: dict[str, str]) -> list[str]:
    """What is wrong with a venue, line by line."""
    with pytest.raises(Refused) as caught:
        venue_of(texts)
    return [str(problem) for problem in caught.value.problems]


def test_a_space_without_a_stage_is_refused() -> None:
    texts = dict(rooms().texts)
    del texts["spaces/yard/stage.yml"]
    assert refused(texts) == [
        "house.yml:18:12 spaces.name: 'Yard' is a space without a stage: spaces/yard/stage.yml is"
        " missing; write spaces/yard/stage.yml, or take the space out here [space-without-stage]"
    ]


def test_two_spaces_of_one_name_are_refused() -> None:
    texts = edited(HOUSE, "name: Yard, what", "name: Studio B, what")
    assert any("folder" in line and "space-folder" in line for line in refused(texts))


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("folder: sound", "would be the folder spaces/sound, and sound is a department"),
        ("folder: Hall One", "is no name for a folder of a space"),
        ("folder: studio-b", "has the folder spaces/studio-b, which is of"),
    ],
)
def test_a_folder_that_cannot_be_one_is_refused(name: str, told: str) -> None:
    found = refused(edited(HOUSE, "folder: hall", name))
    assert any(told in line and "space-folder" in line for line in found)


def test_a_configuration_of_another_space_is_no_configuration_here() -> None:
    texts = edited(f"{STUDIO}stage.yml", "[Black room]", "[Standing]")
    assert refused(texts) == [
        "spaces/studio-b/stage.yml:6:22 configurations[1]: 'Standing' is not the name of any"
        " configuration; described are: Black room [reference-unknown]"
    ]


def test_a_name_of_another_space_is_told_with_the_space_that_has_it() -> None:
    texts = edited(f"{STUDIO}power.yml", "place: Stage left}", "place: Mix position}")
    found = refused(texts)
    assert len(found) == 1
    assert "Great hall has one of that name" in found[0]


def test_phases_that_a_shared_supply_has_not_are_refused_with_their_line() -> None:
    texts = edited("power.yml", "phases: all, rating: 125 A", "phases: L1, rating: 125 A")
    path = f"{STUDIO}power.yml"
    on_one = texts[path].replace("Cellar switch, phases: all", "Cellar switch, phases: L2")
    found = refused({**texts, path: on_one})
    assert len(found) == 1
    assert found[0].startswith(path)
    assert "asks for L2, and Cellar switch has L1 alone" in found[0]
    assert "[phase-not-there]" in found[0]


def test_a_link_out_of_the_folder_is_not_followed(tmp_path: Path) -> None:
    for path, text in rooms().texts.items():
        (tmp_path / "venue" / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "venue" / path).write_text(text, encoding="utf-8")
    (tmp_path / "outside").mkdir()
    (tmp_path / "outside" / "stage.yml").write_text(STAGE, encoding="utf-8")
    (tmp_path / "venue" / "spaces" / "cellar").symlink_to(tmp_path / "outside")
    with pytest.raises(Refused, match="leads out of the venue's folder"):
        read_folder(tmp_path / "venue")


# Pages.


def document() -> Document:
    """The pages of the test venue."""
    return document_of(pack())


def test_every_page_of_a_space_says_so_and_leads_to_no_other_space() -> None:
    folders = [each.key for each in pack().spaces]
    for page in document().pages:
        own = next((each for each in folders if is_of(page.key, each)), None)
        if own is None:
            continue
        assert space_name(own) in page.title
        for link in links_of(page):
            other = next((each for each in folders if is_of(link.page, each)), own)
            assert other == own, (page.key, link)


def is_of(page: str, folder: str) -> bool:
    """Whether a page is one of a space's."""
    return page == folder or page.startswith(f"{folder}-")


def space_name(folder: str) -> str:
    """The name of a space by its folder."""
    return next(each.name for each in pack().spaces if each.key == folder)


def links_of(value: object) -> list[Link]:
    """Every link within a page."""
    if isinstance(value, Link):
        return [value]
    if isinstance(value, list | tuple):
        return [link for part in value for link in links_of(part)]
    if isinstance(value, str) or not hasattr(value, "__dataclass_fields__"):
        return []
    return [link for name in value.__dataclass_fields__ for link in links_of(getattr(value, name))]


def test_no_page_of_a_space_tells_what_stands_in_another_alone() -> None:
    rendered = render(document())
    for path, text in rendered.pages.items():
        if is_of(path.removesuffix(".md"), "studio-b"):
            assert "Hall deck" not in text, path
            assert "Seated" not in text, path
        if is_of(path.removesuffix(".md"), "hall"):
            assert "Studio floor" not in text, path
            assert "Black room" not in text, path


def test_the_spaces_stand_side_by_side_with_their_state() -> None:
    page = next(each for each in document().pages if each.key == "spaces")
    text = render(Document("", (page, *others(page)))).pages["spaces.md"]
    assert "out of service" in text
    assert "Great hall" in text


def others(page: Page) -> list[Page]:
    """The other pages of the document, to which it links."""
    return [each for each in document().pages if each.key != page.key]


def test_findings_say_of_which_space_they_are() -> None:
    own = [each for each in pack().findings if each.space]
    assert {each.space for each in own} <= {space(pack(), "Great hall").key, "studio-b", "yard"}
    places = [each.place.file for each in own if each.place]
    assert all(
        file.startswith(f"spaces/{each.space}/") or "/" not in file
        for each, file in zip([e for e in own if e.place], places, strict=True)
    )


def test_a_line_for_the_house_only_in_one_space_is_named_on_no_page() -> None:
    texts = edited(
        f"{STUDIO}power.yml", "what: Studio dimmers,", "what: Quern vault cooler, house_only: yes,"
    )
    whole = pack(texts)
    assert number(whole, "Great hall", FREE) == number(pack(), "Great hall", FREE)
    assert "Quern" not in to_json(whole)
    assert "Quern" not in json.dumps([str(page) for page in document_of(whole).pages])


# A house that is split, and a house of one stage.


def test_two_stages_that_share_nothing_are_described_as_two_houses() -> None:
    quarry = read_folder(ROOT / "tests" / "venues" / "quarry")
    own = {file: text for file, text in quarry.texts.items() if file != HOUSE}
    house = quarry.texts[HOUSE]
    both = f"{house}\nspaces:\n  - {{name: North}}\n  - {{name: South}}\n"
    texts = {HOUSE: both}
    texts |= {f"spaces/north/{file}": text for file, text in own.items()}
    texts |= {f"spaces/south/{file}": text for file, text in own.items()}
    whole, alone = pack_of(venue_of(texts)), pack_of(venue_of(quarry.texts))
    for name in ("North", "South"):
        for section in in_space(whole, name).sections:
            if section.key != "house":
                assert told(section) == told(alone.section(section.key))
    rider = (ROOT / "tests" / "riders" / "theatre.yml").read_text(encoding="utf-8")
    apart = fit(fit_record(alone), asked(rider))["verdicts"]
    together = fit(fit_record(whole), asked(rider))["verdicts"]
    assert [each["reason"] for each in together] == [each["reason"] for each in apart]
    assert [each["verdict"] for each in together] == [each["verdict"] for each in apart]


def told(section: Section | None) -> object:
    """What a section tells, wherever each was written."""
    return [
        (
            item.key,
            item.name,
            tuple((fact.key, fact.standing, fact.value) for fact in item.facts),
            tuple((each.key, each.value, each.missing) for each in item.figures),
        )
        for item in (section.items if section else ())
    ]


# What only a house of several stages writes stands on a page and in the search.

LINES_OF_ONE = """
closed:
  - {from: 2026-08, until: 2026-09, why: Quartz floor laid., spaces: [Studio B]}
quiet_hours:
  - {days: Monday, from: "13:00", until: "14:00", why: Quoits practice., spaces: [Studio B]}
"""


def told_on(texts: dict[str, str]) -> tuple[str, str]:
    """What the pages of a venue say, and what the search finds."""
    made = document_of(pack(texts))
    pages = "\n".join(text for text in render(made).pages.values() if isinstance(text, str))
    lines = [
        f"{page.title}: {line.name} {line.text}" for page in searched(made) for line in page.lines
    ]
    return pages, "\n".join(lines)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("what: A black room", "what: A quince room", "A quince room"),
        ("name: Studio B, what", "name: Quartz room, folder: studio-b, what", "Quartz room"),
        ("note: Its door opens", "note: Its quoin opens", "Its quoin opens"),
        ("condition: out of service", "condition: limited", "limited"),
        ("note: Its door", "terms: by arrangement, note: Its door", "by arrangement"),
    ],
)
def test_every_key_of_a_space_is_told(old: str, new: str, told: str) -> None:
    texts = edited(HOUSE, old, new)
    if "Quartz room" in new:
        texts[HOUSE] = texts[HOUSE].replace("[Studio B]", "[Quartz room]")
    pages, search = told_on(texts)
    assert told in pages
    assert told in search


def test_the_spaces_that_a_line_is_of_are_told_where_it_stands() -> None:
    more = (
        rooms()
        .texts[HOUSE]
        .replace("measured_at: mix position}", "measured_at: mix position, spaces: [Studio B]}")
    )
    _, search = told_on({**rooms().texts, HOUSE: more + LINES_OF_ONE})
    for line in ("Black room", "22:00", "Quoits practice", "shares a wall"):
        assert any(line in each and "Spaces" in each for each in search.split("\n")), line
    assert (
        "House, Studio B: Studio B From: 2026-08; Until: 2026-09; Why: Quartz floor laid." in search
    )
    assert "Closed. Studio B, from 2026-08 until 2026-09. Quartz floor laid." in search
    assert any("Audience protection" in e and "Spaces: Studio B" in e for e in search.split("\n"))


@pytest.mark.source("Three-phase apparent power, S = √3·U·I; sizes added, by hand")
def test_a_shared_service_called_as_another_space_s_board_takes_nothing_away() -> None:
    # 12 kW at 0.85, 6 kW at 0.9 and 9 kW at 1.0 stand on the switch, whatever else has which name.
    drawn_a = (12 / 0.85 + 6 / 0.9 + 9 / 1.0) / (sqrt(3) * 0.4)
    like = (
        'services:\n  - {name: "Studio B: Stage board", fed_from: Intake, system: 230/400 V three'
        " phase 50 Hz, phases: all, rating: 63 A, breaker: 63 A}"
    )
    whole = pack(edited("power.yml", "services:", like))
    for name in ("Great hall", "Studio B", "Yard"):
        assert number(whole, name, FREE) == pytest.approx(0.8 * 125 - drawn_a, abs=0.05)
        alike = "power.service.studio-b-stage-board.free.L1"
        assert number(whole, name, alike) == pytest.approx(0.8 * 63, abs=0.05)
