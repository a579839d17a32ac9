"""
What small drawings and one page with every kind of block look like, kept in ``tests/golden/``.

A stroke that moves, a word that loses its place or an attribute that goes shows in review. After a
change that is meant, run with ``HOUSEPACK_GOLDEN=write`` and look at the files: a browser opens the
drawings. What is drawn where is held by hand in the other tests of this folder.
"""

import numpy as np
import pytest

from builder.document import (
    Attachment,
    Bullets,
    Caution,
    Day,
    Document,
    Entry,
    Facts,
    Folded,
    Heading,
    Headline,
    Link,
    Markup,
    Page,
    Paragraph,
    Photo,
    Picture,
    Row,
    Small,
    Strong,
    Table,
    Tag,
)
from builder.render import plan as plans
from builder.render.contours import Levels
from builder.render.level_map import Layer, Shape, Sheet, inked, level_map_svg
from builder.render.markdown import render
from builder.render.plan import Area, Mark, Note, Plan, Track, plan_svg
from tests.golden_files import held

DECK = ((-5.0, 0.0), (5.0, 0.0), (5.0, 6.0), (-5.0, 6.0))


LOOKS = {
    "solid": plans.SOLID,
    "heavy": plans.HEAVY,
    "hair": plans.HAIR,
    "dashed": plans.DASHED,
    "dotted": plans.DOTTED,
    "chain": plans.CHAIN,
    "pale": plans.PALE,
    "tint": plans.TINT,
}
SIGNS = ("circle", "square", "triangle", "diamond", "cross", "ring")


def small_plan(**changed: object) -> Plan:
    """A deck with each look, each sign and a name."""
    tracks = [
        Track(((-4.0, number * 0.5), (4.0, number * 0.5)), look, says=name)
        for number, (name, look) in enumerate(LOOKS.items(), 1)
    ]
    marks = [
        Mark((number - 3.0, 5.0), sign, filled=0.4, says=f"A {sign}", anchor=sign)
        for number, sign in enumerate(SIGNS)
    ]
    notes = [Note((0.0, 5.6), "Deck", strong=True), Note((4.0, 5.6), "end", 9.0, "end", (3.0, 2.0))]
    elements = (Area(DECK, plans.PALE, "The deck"), *tracks, *marks, *notes)
    given = {"name": "Small plan", "title": "Small", "says": "A deck.", "elements": elements}
    return Plan(**{**given, **changed})  # type: ignore[arg-type]  # the fields of a plan


@pytest.mark.parametrize(
    ("name", "changed"),
    [
        ("plan", {}),
        ("plan-cut", {"across_m": (1.0, 6.0), "margin_m": 0.5, "lettering": 14.0}),
    ],
)
def test_a_plan_looks_as_it_did(name: str, changed: dict[str, object]) -> None:
    held(f"{name}.svg", plan_svg(small_plan(**changed)))


def sheet(columns: int) -> Sheet:
    """Maps of a level that falls by 1 dB a metre from a place at the front."""
    xs = np.arange(-13.0, 14.0)
    ys = np.arange(-25.0, 2.0)
    db = 6.0 - np.hypot(*np.meshgrid(xs, ys))
    area = ((-10.0, -22.0), (10.0, -22.0), (12.0, -2.0), (-12.0, -2.0))
    layer = Layer(Levels(xs, ys, db), area, ((3.0, -4.0), (5.0, -6.0)))
    return Sheet(
        panels=tuple((name, (layer,)) for name in ("63 Hz", "125 Hz", "1 kHz")[: columns + 1]),
        shapes=(Shape(area, "Floor"), Shape(((-6.0, -2.0), (6.0, -2.0), (6.0, 0.0)), "Deck", True)),
        spots=(("Desk", (0.0, -15.0)),),
        extent_m=(-12.5, 12.5, -24.0, 1.0),
        steps_db=(-12, -9, -6, -3, 0, 3),
        reference="the desk",
        columns=columns,
    )


@pytest.mark.parametrize("columns", [1, 2])
def test_a_map_of_levels_looks_as_it_did(columns: int) -> None:
    held(f"level-map-{columns}.svg", inked(level_map_svg(sheet(columns)), "#123456"))


DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20" role="img">%s</svg>'
PIXEL = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x03\0\0\0\x02\x08\x02\0\0\0"


def every_block() -> Page:
    """A page with each kind of block, each in its ways."""
    words = [
        "See ",
        Link("power", "power", "p1"),
        " ",
        Strong("now"),
        Small("3 ft"),
        Tag("out", "danger"),
    ]
    rows = [Row(["A", "1"], "a", (None, 1.5)), Row([["B ", Tag("new")], "2"], "b")]
    wide = Table(("Name", "W", "D", "H", "Kg"), [Row(["A", "1", "2", "3", "4"])], "Wide", (4,))
    return Page(
        "all",
        "Every <block>",
        (
            Heading(2, "Tables", "tables"),
            Table(("Name", "Number"), rows, "Tables", (1,), sortable=True),
            Table(("Name", "Number"), [Row(["A", "1"])], to_compare=True),
            wide,
            Heading(3, "Tables"),
            Paragraph(words),
            Bullets([words, "plain"]),
            Facts([Entry("Width", "9 m", Small("30 ft").text, "width"), Entry("Depth", words)]),
            Headline(
                [
                    Entry("Short", "x" * 32, anchor="power#p1"),
                    Entry("Long", "x" * 33),
                    Entry("With small", ["x" * 32, Small("y")], ["below"]),
                ]
            ),
            Caution("Planning figures. Ask."),
            Caution("Ask.", "Note", "note"),
            Caution(["Ask ", Strong("first")], "", "danger"),
            Folded("More", [Paragraph("Within.")], "more"),
            Picture("One", Markup(DRAWING % "<path/>"), "A line", "Caption", beside=True),
            Picture("Two", Markup(DRAWING % '<a href="#more"><path/></a>'), "A link"),
            Picture("Three", Markup(DRAWING % ""), "Light", "Both", False, Markup(DRAWING % "x")),
            Picture("Four", Markup(DRAWING % ""), "One alone", "", False),
            Photo("photos/a.png", "A photo", "Caption"),
            Paragraph([" On ", Day("2026-05-01"), "."]),
        ),
        summary="All of them.",
    )


def test_a_page_with_every_kind_of_block_is_written_as_it_was() -> None:
    power = Page("power", "Power", (Facts([Entry("P1", "1 A", anchor="p1")]),))
    document = Document("House", (every_block(), power), (Attachment("photos/a.png", PIXEL),))
    rendered = render(document)
    text = rendered.pages["all.md"]
    assert isinstance(text, str)
    held("every-block.md", text)
    assert sorted(rendered.pages) == [
        "all.md",
        "drawings/four.svg",
        "drawings/one.svg",
        "drawings/three-dark.svg",
        "drawings/three.svg",
        "drawings/two.svg",
        "photos/a.png",
        "power.md",
    ]


def test_a_place_of_a_plan_stands_where_its_metres_say_and_the_bar_is_as_long() -> None:
    """By hand: 832 units for 8.32 m are 100 a metre, 34 of margin left and above."""
    marks = (Mark((0.0, 0.0)), Mark((2.0, 3.0)))
    drawn = plan_svg(Plan("P", "P", "P", marks, across_m=(-4.16, 4.16), margin_m=1.0))
    assert '<circle cx="450" cy="434"' in drawn
    assert '<circle cx="650" cy="134"' in drawn
    # Two metres are 200 units, five feet 152.4.
    assert "m0 -4h200m0 -4v8" in drawn
    assert "m0 -4h152.4m0 -4v8" in drawn
    assert 'viewBox="0 0 900 594"' in drawn
