"""The counting sheet out and back."""

import csv
import io

import pytest

from builder.pack import Revision
from builder.reading.absent import Absent
from builder.reading.problems import Refused
from builder.reading.words import Count, Name
from builder.reading.written import Line, Loose
from builder.stock.changing import stockroom_of
from builder.stock.lines import Held, name_of
from builder.stock.sheet import COLUMNS, counted, sheet, sheet_to_print
from tests.stock.small import SOUND, TEXTS, room


def rows(text: str) -> list[dict[str, str]]:
    """The sheet's rows by column."""
    return list(csv.DictReader(io.StringIO(text)))


def filled(cells: dict[str, tuple[str, str]], text: str | None = None) -> str:
    """The sheet as somebody fills it in: counted, and counted working, by name."""
    written = io.StringIO()
    table = csv.DictWriter(written, COLUMNS)
    table.writeheader()
    for row in rows(text or sheet(room().lines)):
        whole, working = cells.get(row["name"], ("", ""))
        table.writerow({**row, "counted": whole, "counted working": working})
    return written.getvalue()


def problems(text: str) -> list[str]:
    """What a sheet is refused with."""
    with pytest.raises(Refused) as refused:
        counted(text, room().lines, room().texts)
    return [str(problem) for problem in refused.value.problems]


def test_every_counted_line_stands_on_the_sheet_once_with_what_should_be_there() -> None:
    found = rows(sheet(room().lines))
    assert [
        (row["list"], row["name"], row["count"], row["working"], row["condition"]) for row in found
    ] == [
        ("sound.stock", "Vellum 8", "14", "13", "limited"),
        ("sound.stock", "Vellum 7", "12", "", "in service"),
        ("sound.stock", "Vellum clip", "10", "", "in service"),
        ("sound.stock", "Vellum 5", "1", "", "in service"),
    ]


class Stand(Line):
    """A line that stands at a place."""

    name: Name
    count: Count
    place: Name | None = None


class Cased(Loose):
    """A line of loose stock."""

    name: Name
    count: Count


class Truss(Line):
    """A line that holds others."""

    name: Name


def held(*records: Line) -> list[Held]:
    """Lines of one list."""
    return [
        Held("sound.yml", ("stock", index), record, name_of(record))
        for index, record in enumerate(records)
    ]


def test_lines_that_say_where_they_are_come_first_place_by_place_and_in_order() -> None:
    lines = held(
        Stand(name="Stand", count=2, place="Trunk 10"),
        Stand(name="Cable", count=2),
        Cased(name="Wedge", count=2, kept="Trunk 2"),
        Cased(name="Box", count=2, kept="trunk 10"),
        Cased(name="Lost", count=2, kept=Absent.UNKNOWN),
    )
    places = [(row["place"], row["name"]) for row in rows(sheet(lines))]
    assert places == [
        ("Trunk 2", "Wedge"),
        ("Trunk 10", "Stand"),
        ("trunk 10", "Box"),
        ("", "Cable"),
        ("", "Lost"),
    ]


def test_what_is_part_of_another_line_stands_under_it() -> None:
    lines = [Held("rigging.yml", ("hangs", 0), Truss(name="Front truss"), "Front truss")]
    lines.append(
        Held("rigging.yml", ("hangs", 0, "loads", 0), Stand(name="Lamps", count=6), "Lamps")
    )
    lines.append(Held("sound.yml", ("hangs", 0, "loads", 0), Stand(name="Boxes", count=6), "Boxes"))
    assert [(row["place"], row["name"]) for row in rows(sheet(lines))] == [
        ("Front truss", "Lamps"),
        ("", "Boxes"),
    ]


def test_the_sheet_to_print_has_every_line_once_under_its_place_and_runs_nothing() -> None:
    lines = held(
        Cased(
            name="<b>Vellum</b>",
            count=3,
            kept='Trunk "1"',
            note="<script>alert(1)</script>",
            condition="limited",
        ),
        Cased(name="Box", count=4),
    )
    text = sheet_to_print(lines, "The <Shed>", Revision("3", "2026-01-02", "us", "abc"))
    assert text.count("<tr>") == 1 + 2 + 2
    assert (
        text.index("Trunk &quot;1&quot;")
        < text.index("&lt;b&gt;Vellum")
        < text.index("Nobody has said where")
        < text.index("Box")
    )
    assert "limited; &lt;script&gt;alert(1)&lt;/script&gt;" in text
    assert "The &lt;Shed&gt;: counting sheet" in text
    assert "As revision 3 of 2026-01-02 has it, description abc." in text
    assert not any(mark in text for mark in ("<script", "<b>", "<Shed", "http", "src="))


def test_two_lines_of_one_name_in_one_place_tell_their_lists() -> None:
    lines = held(
        Cased(name="Box", count=1, kept="Here"),
        Cased(name="Box", count=2, kept="Here"),
        Cased(name="Box", count=2, kept="There"),
    )
    assert (
        sheet_to_print(lines, "Shed", Revision("3", "2026-01-02", "us", "abc")).count(
            "<small>sound.stock</small>"
        )
        == 2
    )


def test_a_sheet_that_comes_back_as_it_went_changes_nothing() -> None:
    assert counted(sheet(room().lines), room().lines, room().texts) == []
    assert (
        counted(
            filled({"Vellum 8": ("14", "13"), "Vellum 7": ("12", "12")}), room().lines, room().texts
        )
        == []
    )


def test_only_lines_whose_count_is_another_are_changed() -> None:
    orders = counted(
        filled({"Vellum 8": ("14", "12"), "Vellum 7": ("11", ""), "Vellum 5": ("1", "")}),
        room().lines,
        room().texts,
    )
    assert [
        (order.name, [(edit.path[-1], edit.value) for _, edit in order.edits]) for order in orders
    ] == [  # type: ignore[union-attr]  # all are Set
        ("Vellum 8", [("working", "12")]),
        ("Vellum 7", [("count", "11")]),
    ]


def test_a_sheet_with_semicolons_a_mark_at_its_head_and_blank_rows_is_read() -> None:
    text = "\ufefflist;name;counted\r\nsound.stock;Vellum 7;11\r\n;;\r\n"
    assert [order.name for order in counted(text, room().lines, room().texts)] == ["Vellum 7"]


def test_everything_wrong_on_a_sheet_is_told_at_once() -> None:
    text = (
        "list,name,counted\nsound.stock,Vellum 7,-1\nsound.stock,Vellum 6,1\nsound.stock,Vellum 8,a"
        " dozen\nsound.stock,Vellum 8,3\n"
    )
    assert problems(text) == [
        (
            "sound.yml:24:5 'Vellum 8' cannot have 13 at work of 3; say how many work with"
            " --working [count-beyond]"
        ),
        (
            "sound.yml:25:5 'Vellum 7' cannot be counted below zero; write how many there are"
            " [count-below-zero]"
        ),
        (
            "the sheet:4:1 'a dozen' is not a whole number; write how many there are, such as 12"
            " [sheet-number]"
        ),
        (
            "venue 'Vellum 6' is not the name of any line; did you mean 'Vellum 8' or 'Vellum 7' or"
            " 'Vellum 5'? [line-unknown]"
        ),
    ]


def test_a_file_that_is_no_sheet_is_told() -> None:
    assert problems("hello\n") == [
        "the sheet lacks the columns list, name, counted; count on the sheet that 'housepack stock"
        " sheet' writes [sheet-unreadable]"
    ]


def test_a_name_that_a_spreadsheet_would_run_is_guarded_and_comes_back() -> None:
    named = TEXTS | {
        "sound.yml": SOUND + "  - {name: \"=cmd|' /C calc'!A0\", kind: other, count: 3}\n"
    }
    there = stockroom_of(named, {})
    text = sheet(there.lines)
    assert [row["name"][:2] for row in rows(text)][-1] == "'="
    (order,) = counted(filled({"'=cmd|' /C calc'!A0": ("2", "")}, text), there.lines, there.texts)
    assert order.name == "=cmd|' /C calc'!A0"
