"""The counting sheet out and back."""

import csv
import io

import pytest

from builder.reading.problems import Refused
from builder.reading.words import Count, Name
from builder.reading.written import Line
from builder.stock.changing import stockroom_of
from builder.stock.lines import Held
from builder.stock.sheet import COLUMNS, counted, sheet
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
    assert [(row["list"], row["name"], row["count"], row["working"], row["condition"]) for row in found] == [
        ("sound.stock", "Vellum 8", "14", "13", "limited"),
        ("sound.stock", "Vellum 7", "12", "", "in service"),
        ("sound.stock", "Vellum clip", "10", "", "in service"),
        ("sound.stock", "Vellum 5", "1", "", "in service"),
    ]


class Cased(Line):
    """A line of stock that says where it is kept."""

    name: Name
    count: Count
    place: Name | None = None


def test_lines_that_have_a_place_come_first_and_place_by_place() -> None:
    kept = [("Stand", "Store"), ("Cable", None), ("Wedge", "Dock"), ("Box", "Store")]
    lines = [Held("sound.yml", ("stock", count), Cased(name=name, count=2, place=place), name) for count, (name, place) in enumerate(kept)]
    assert [(row["place"], row["name"]) for row in rows(sheet(lines))] == [("Dock", "Wedge"), ("Store", "Stand"), ("Store", "Box"), ("", "Cable")]


def test_a_sheet_that_comes_back_as_it_went_changes_nothing() -> None:
    assert counted(sheet(room().lines), room().lines, room().texts) == []
    assert counted(filled({"Vellum 8": ("14", "13"), "Vellum 7": ("12", "12")}), room().lines, room().texts) == []


def test_only_lines_whose_count_is_another_are_changed() -> None:
    orders = counted(filled({"Vellum 8": ("14", "12"), "Vellum 7": ("11", ""), "Vellum 5": ("1", "")}), room().lines, room().texts)
    assert [(order.name, [(edit.path[-1], edit.value) for _, edit in order.edits]) for order in orders] == [  # type: ignore[union-attr]  # all are Set
        ("Vellum 8", [("working", "12")]),
        ("Vellum 7", [("count", "11")]),
    ]


def test_a_sheet_with_semicolons_a_mark_at_its_head_and_blank_rows_is_read() -> None:
    text = "\ufefflist;name;counted\r\nsound.stock;Vellum 7;11\r\n;;\r\n"
    assert [order.name for order in counted(text, room().lines, room().texts)] == ["Vellum 7"]


def test_everything_wrong_on_a_sheet_is_told_at_once() -> None:
    text = "list,name,counted\nsound.stock,Vellum 7,-1\nsound.stock,Vellum 6,1\nsound.stock,Vellum 8,a dozen\nsound.stock,Vellum 8,3\n"
    assert problems(text) == [
        "sound.yml:24:5 'Vellum 8' cannot have 13 at work of 3; say how many work with --working [count-beyond]",
        "sound.yml:25:5 'Vellum 7' cannot be counted below zero; give 0 or more [count-below-zero]",
        "the sheet:4:1 'a dozen' is not a whole number; write how many there are, such as 12 [sheet-number]",
        "venue 'Vellum 6' is not the name of any line; did you mean 'Vellum 8' or 'Vellum 7' or 'Vellum 5'? [line-unknown]",
    ]


def test_a_file_that_is_no_sheet_is_told() -> None:
    assert problems("hello\n") == [
        "the sheet lacks the columns list, name, counted; count on the sheet that 'housepack stock sheet' writes [sheet-unreadable]"
    ]


def test_a_name_that_a_spreadsheet_would_run_is_guarded_and_comes_back() -> None:
    named = TEXTS | {"sound.yml": SOUND + "  - {name: \"=cmd|' /C calc'!A0\", kind: other, count: 3}\n"}
    there = stockroom_of(named, {})
    text = sheet(there.lines)
    assert [row["name"][:2] for row in rows(text)][-1] == "'="
    (order,) = counted(filled({"'=cmd|' /C calc'!A0": ("2", "")}, text), there.lines, there.texts)
    assert order.name == "=cmd|' /C calc'!A0"
