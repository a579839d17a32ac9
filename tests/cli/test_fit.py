"""``housepack fit`` and ``housepack new --rider`` as a user meets them."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.cli import main

ROOT = Path(__file__).parents[2]
RIDERS = ROOT / "tests" / "riders"
DEMO = ("--venue", str(ROOT / "venue"))


def run(*words: str) -> Result:
    """The command's result."""
    return CliRunner().invoke(main, list(words))


@pytest.mark.parametrize(("act", "status"), [("club", 0), ("theatre", 1)])
def test_the_status_tells_whether_a_show_falls_short(act: str, status: int) -> None:
    assert run("fit", str(RIDERS / f"{act}.yml"), *DEMO).exit_code == status


def test_text_has_verdict_margin_fact_and_questions_and_no_colour() -> None:
    said = run("fit", str(RIDERS / "theatre.yml"), *DEMO).output
    unfolded = " ".join(said.split())
    assert (
        "X short: Level of the show, 102 dB(A), equivalent level, over 15 min, at the mix position"
        " [−3.0 dB]" in unfolded
    )
    assert (
        "[stage.deck.end-stage.usable_width]; checked 2026-06-15 by stage manager, measured"
        in unfolded
    )
    assert "Questions to the house" in said
    assert "A competent rigger decides on site" in unfolded
    assert "\x1b" not in said


def test_text_says_in_which_configuration_a_show_is_judged_and_how_it_fares_in_the_others() -> None:
    said = run("fit", str(RIDERS / "arena.yml"), *DEMO).output.splitlines()
    # The thrust alone is at extra charge, and 150 psf = 7.18 kPa is a fit on all three decks.
    assert said[2:5] == [
        "Judged in the configuration Standing, end stage; of 3, none suits this show better.",
        "In Seated, end stage: the same verdicts.",
        "In Standing, thrust: 24 short, 2 to ask; worse there: Uniform load the deck carries.",
    ]
    named = run("fit", str(RIDERS / "theatre.yml"), *DEMO).output.splitlines()
    assert named[2:4] == ["Judged in the configuration Seated, end stage.", ""]


def test_a_house_with_one_configuration_says_nothing_of_it() -> None:
    quarry = ("--venue", str(ROOT / "tests" / "venues" / "quarry"))
    said = run("fit", str(RIDERS / "arena.yml"), *quarry).output
    assert said.splitlines()[2] == ""
    assert "onfiguration" not in said


def test_markdown_says_it_too() -> None:
    said = run("fit", str(RIDERS / "arena.yml"), *DEMO, "--format", "markdown").output
    assert "Judged in the configuration Standing, end stage; of 3" in said


def test_text_begins_with_how_many_and_what_is_short_stands_before_what_fits() -> None:
    lines = run("fit", str(RIDERS / "theatre.yml"), *DEMO).output.splitlines()
    marks = [
        line[2] for line in lines if line[:2] == "  " and line[2:3] in "X?~+" and line[3:4] == " "
    ]
    assert marks == sorted(marks, key="X?~+".index)
    assert (
        lines[1]
        == f"{marks.count('X')} short, {marks.count('?')} to ask, {marks.count('~')} with a note,"
        f" {marks.count('+')} fit."
    )
    assert max(len(line) for line in lines) <= 100


def test_a_terminal_shows_verdicts_in_colour_unless_it_asks_for_none(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    arguments = ["fit", str(RIDERS / "club.yml"), *DEMO]
    assert "\x1b[35m\x1b[1m? ask\x1b[0m: " in CliRunner().invoke(main, arguments, color=True).output
    monkeypatch.setenv("NO_COLOR", "1")
    assert "\x1b" not in CliRunner().invoke(main, arguments, color=True).output


LONG_DAY = """act: "{act}"
clock: {{day: Tuesday, load in: "08:30", set up: 5 h, check: 90 min, doors: "18:00", on stage: "23:00", set: 90 min, load out: 2 h}}
"""  # noqa: E501


def test_the_day_is_a_table_in_every_form_and_says_where_it_does_not_close(tmp_path: Path) -> None:
    rider = tmp_path / "rider.yml"
    rider.write_text(
        LONG_DAY.format(
            act="A | <b>very</b> long name of an act that nobody would fit into a column"
        ),
        "utf-8",
    )
    text, markdown, data = (
        run("fit", str(rider), *DEMO, "--format", form).output
        for form in ("text", "markdown", "json")
    )
    # 08:30 and 5 h is 13:30; the check waits for 15:30, the end of the quiet hours, and ends at
    # 17:00; 23:00 and 90 min is 00:30.
    assert "  15:30               17:00               90 min  check" in text
    assert "  00:30 the next day  02:30 the next day  2 h     load-out" in text
    assert "short by 30 min." in " ".join(text.split())
    assert max(len(line) for line in text.splitlines()) <= 100
    assert "| 15:30 | 17:00 | 90 min | check | A &#124; &#60;b&#62;very" in markdown
    assert [row["start"] for row in json.loads(data)["day"]][:3] == ["08:30", "13:30", "15:30"]


HUNG = (
    "act: A\nhangs:\n  - {name: Wall, supports: [{point: R4-3, load: 450 kg}], hoists: counted}\n"
)


@pytest.mark.parametrize("form", ["text", "markdown", "json"])
def test_a_hang_plan_carries_rigging_s_caution_in_every_form(tmp_path: Path, form: str) -> None:
    rider = tmp_path / "rider.yml"
    rider.write_text(HUNG, "utf-8")
    result = run("fit", str(rider), *DEMO, "--format", form)
    unfolded = " ".join(result.output.split())
    assert result.exit_code == 1
    assert (
        "Nothing left on point R4-3, and the show's hangs so far bring 450 kg: 496 kg too much."
        in unfolded
    )
    assert "A competent rigger decides on site what hangs, where and how." in unfolded
    assert "rigging.point.r4-3.limit" in unfolded


@pytest.mark.parametrize(
    ("hang", "says"),
    [
        (
            "{name: W, supports: []}",
            "W has 0 supports; write 1 to 12; split a longer hang [need-unclear]",
        ),
        (
            "{name: W, supports: [{across: 1 m SL, load: 1 kg}]}",
            "support needs both across and depth, or a point",
        ),
        (
            "{name: W, supports: [{point: A, load: 1 kg}], hoists: show}",
            "W needs the weight of the show's hoists",
        ),
        ("{name: W, supports: [{point: A, load: -1 kg}]}", "is below zero"),
    ],
)
def test_a_hang_that_cannot_be_judged_is_refused_with_its_line_and_what_to_write(
    tmp_path: Path, hang: str, says: str
) -> None:
    rider = tmp_path / "rider.yml"
    rider.write_text(f"act: A\nhangs:\n  - {hang}\n", "utf-8")
    result = run("fit", str(rider), *DEMO)
    assert result.exit_code == 1
    assert "rider.yml:3:" in result.output
    assert says in result.output


def test_json_is_for_programs_and_the_same_twice() -> None:
    once, again = (
        run("fit", str(RIDERS / "club.yml"), *DEMO, "--format", "json").output for _ in range(2)
    )
    assert once == again
    assert json.loads(once)["acts"] == [
        {
            "act": "Five Wet Dogs",
            "revision": "7 of 2026-05-03",
            "arrangement": {
                "space": "",
                "configuration": "Standing, end stage",
                "settings": [],
            },
            "verdict": "ask",
        }
    ]


def test_a_hostile_rider_cannot_leave_its_cell_in_markdown(tmp_path: Path) -> None:
    rider = tmp_path / "rider.yml"
    rider.write_text(
        'act: "A | [x](http://e) <b>"\nneeds:\n  - {what: stage width, at least: 1 m}\nquestions:'
        ' ["<script>alert(1)</script> | `x`"]\n',
        "utf-8",
    )
    said = run("fit", str(rider), *DEMO, "--format", "markdown").output
    for wrong in ("<script", "<b>", "[x](", "`x`"):
        assert wrong not in said
    rows = [line for line in said.splitlines() if line.startswith("| fits")]
    assert len(rows) == 1
    assert rows[0].count("|") == 5


def test_a_pack_file_answers_like_the_venue_it_came_from(tmp_path: Path) -> None:
    pack = tmp_path / "pack.json"
    assert run("pack", *DEMO, "--to", str(pack)).exit_code == 0
    by_pack = run("fit", str(RIDERS / "club.yml"), "--pack", str(pack)).output
    assert by_pack == run("fit", str(RIDERS / "club.yml"), *DEMO).output


def test_problems_of_all_riders_are_told_with_their_lines(tmp_path: Path) -> None:
    for name in ("a", "b"):
        (tmp_path / f"{name}.yml").write_text("act: A\nneeds:\n  - {what: moon}\n", "utf-8")
    result = run("fit", str(tmp_path / "a.yml"), str(tmp_path / "b.yml"), *DEMO)
    assert result.exit_code == 1
    assert "a.yml:3:12 what: 'moon' is nothing that can be checked" in result.output
    assert "2 problems. Nothing was checked." in result.output


def test_a_file_that_is_not_there_is_a_sentence(tmp_path: Path) -> None:
    result = run("fit", str(tmp_path / "no.yml"), *DEMO)
    assert result.exit_code == 1
    assert (
        "no.yml cannot be read: no such file or directory; check its name and its folder"
        in result.output
    )


def test_a_new_rider_can_be_checked_as_it_is_and_is_never_overwritten(tmp_path: Path) -> None:
    file = tmp_path / "rider.yml"
    assert run("new", "--rider", str(file)).exit_code == 0
    assert run("fit", str(file), *DEMO).exit_code in (0, 1)
    assert "Questions to the house" in run("fit", str(file), *DEMO).output
    assert run("new", "--rider", str(file)).exit_code == 2
    assert run("new").exit_code == 2
