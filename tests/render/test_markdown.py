"""The Markdown renderer: text stays text, structure stays structure."""

import re
from html.parser import HTMLParser

import markdown
import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from builder.document import (
    Attachment,
    Block,
    Caution,
    Document,
    Entry,
    Facts,
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
    Table,
    Tag,
)
from builder.reading.addresses import address
from builder.render.elements import element, words
from builder.render.escaping import escaped, shown, visible
from builder.render.inline import said
from builder.render.markdown import NavigationEntry, NavigationGroup, render
from builder.render.svg import circle, linked
from tests.render.hostile import HOSTILE, SVG, everywhere

EXTENSIONS = [
    "toc",
    "tables",
    "attr_list",
    "fenced_code",
    "md_in_html",
    "footnotes",
    "abbr",
    "def_list",
    "admonition",
    "sane_lists",
    "meta",
]


class Reader(HTMLParser):
    """What a browser would make of the page: its elements with attributes, and its text."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.said: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.said.append(data)

    @property
    def text(self) -> str:
        return " ".join("".join(self.said).split())

    def named(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.elements if name == tag]


def source(*blocks: Block, title: str = "Rigging", summary: str = "") -> str:
    found = render(
        Document(
            "House",
            (Page("rigging", title, blocks, summary=summary),),
            (Attachment("dock.jpg", b"x"),),
        )
    )
    text = found.pages["rigging.md"]
    assert isinstance(text, str)
    return text


def read(*blocks: Block, title: str = "Rigging") -> Reader:
    body = source(*blocks, title=title).split("---\n", 2)[2]
    return Reader(markdown.markdown(body, extensions=EXTENSIONS))


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_makes_no_element_and_no_attribute(text: str) -> None:
    tame, hostile = read(*everywhere("calm"), title="calm"), read(*everywhere(text), title=text)

    def shape(reader: Reader) -> list[tuple[str, list[str]]]:
        return [(tag, sorted(attributes)) for tag, attributes in reader.elements if tag != "bdi"]

    assert shape(hostile) == shape(tame)


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_shown_as_the_text_it_is(text: str) -> None:
    tame, hostile = read(*everywhere("calm"), title="calm"), read(*everywhere(text), title=text)
    assert unspaced(hostile.text) == unspaced(tame.text.replace("calm", visible(text)))
    assert {attributes["alt"] for attributes in hostile.named("img")} == {visible(text)}


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_titles_stay_values_of_the_front_matter(text: str) -> None:
    head = yaml.safe_load(
        source(title=text, summary=text).removeprefix("---\n").partition("\n---\n\n")[0]
    )
    assert set(head) == {"title", "description"}
    assert not re.search("[<>\"']", head["title"] + head["description"])
    assert Reader(f'<meta content="{head["description"]}">').named("meta") == [
        {"content": visible(text)}
    ]


@given(st.text(max_size=60))
def test_any_text_survives_as_a_paragraph(text: str) -> None:
    assert unspaced(read(Paragraph(("start", text, "end"))).text) == unspaced(
        f"Riggingstart{visible(text)}end"
    )


def unspaced(text: str) -> str:
    """The text without blanks, which a browser folds and places as it likes."""
    return "".join(text.split())


@given(st.text())
def test_escaped_text_holds_no_mark_that_markdown_or_html_acts_on(text: str) -> None:
    assert not re.search(r"[!-+\--/:-@\[-`{-~\n\t]", re.sub(r"&#\d+;", "", escaped(text)))


def test_invisible_and_turning_characters_are_shown_as_codes() -> None:
    assert visible("a\u202eb\u200b\x00") == "a⟨U+202E⟩b⟨U+200B⟩⟨U+0000⟩"


def test_right_to_left_letters_are_isolated() -> None:
    assert shown("שלום 5") == "<bdi>שלום 5</bdi>"
    assert shown("plain 5") == "plain 5"


@pytest.mark.parametrize("text", ["1,000 kg", "2 × 400 A", "12 %", "19.6 m²", "99 dB(A)"])
def test_a_value_keeps_its_unit_on_its_line(text: str) -> None:
    number, unit = text.rsplit(" ", 1)
    assert Reader(shown(text)).said == [f"{number}\u00a0{unit}"]
    assert Reader(escaped(text)).said == [text]


@pytest.mark.parametrize("text", ["12 Angels", "9 mixers", "2 trucks", "A 4", "2 h2o"])
def test_other_blanks_may_break(text: str) -> None:
    assert Reader(shown(text)).said == [text]


def test_a_narrow_blank_inside_a_number_is_kept() -> None:
    assert visible("1\u202f000 kg") == "1\u202f000 kg"


@pytest.mark.parametrize(
    ("text", "anchor"),
    [
        ("Point P07", "point-p07"),
        ("Décor & Bühne", "decor-buhne"),
        ("日本", "65e5-672c"),
        ("  a--b ", "a-b"),
    ],
)
def test_anchors_are_letters_digits_and_hyphens(text: str, anchor: str) -> None:
    assert address(text) == anchor


def test_a_table_says_its_scopes_row_anchors_numbers_and_sort_values() -> None:
    rows = (
        Row(("P01", "1,000 kg"), "P01", (None, 1000.0)),
        Row(("P02", "not stated"), "P02", (None, None)),
    )
    reader = read(Table(("Point", "Capacity"), rows, summary="Points", numeric=(1,), sortable=True))
    assert reader.named("th") == [
        {"scope": "col"},
        {"scope": "col", "class": "number"},
        {"scope": "row"},
        {"scope": "row"},
    ]
    assert reader.named("td") == [{"class": "number", "data-order": "1000"}, {"class": "number"}]
    assert [row.get("id") for row in reader.named("tr")] == [None, "p01", "p02"]
    assert reader.named("table") == [{"data-sortable": None}]
    assert reader.named("div")[0] == {
        "class": "table",
        "role": "region",
        "tabindex": "0",
        "aria-label": "Points",
    }


def test_a_table_to_compare_names_each_value_for_a_phone() -> None:
    rows = [Row(("Mix position", "122 dB", "123 dB"))] * 9
    compared = read(Table(("What", "End stage", "Thrust"), rows, to_compare=True))
    assert compared.named("div")[0]["class"] == "table few compared"
    assert compared.named("td")[:2] == [{"data-label": "End stage"}, {"data-label": "Thrust"}]
    assert read(Table(("What", "End stage", "Thrust"), rows)).named("div")[0]["class"] == "table"


def test_a_row_that_does_not_fill_its_columns_is_refused() -> None:
    with pytest.raises(
        ValueError,
        match=r"cells of a row must be 2 like the columns \('Point', 'Capacity'\), got 1",
    ):
        source(Table(("Point", "Capacity"), (Row(("P01",)),)))


def test_an_order_that_does_not_fill_its_columns_is_refused() -> None:
    with pytest.raises(ValueError, match="order of a row must be 1 values or none, got 2"):
        source(Table(("Point",), (Row(("P01",), order=(1.0, 2.0)),)))


def test_a_numeric_column_that_is_not_there_is_refused() -> None:
    with pytest.raises(ValueError, match=r"numeric must be columns 0 to 0, got \[1\]"):
        source(Table(("Point",), (), numeric=(1,)))


def test_links_go_to_pages_and_anchors_of_the_document() -> None:
    text = source(
        Heading(2, "Points", "points"),
        Paragraph(("See ", Link("the points", "rigging", "points"), ".")),
        Facts((Entry("A", (Link("b", "rigging"),)),)),
    )
    assert "See [the points](rigging.md#points)&#46;" in text
    assert '<a href="rigging.html">b</a>' in text


def test_a_link_to_a_missing_page_is_refused() -> None:
    with pytest.raises(ValueError, match="page must be one of rigging, got 'power'"):
        source(Paragraph((Link("Power", "power"),)))


def test_a_link_to_a_missing_anchor_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"anchor must be one of page 'rigging' \(points\), got 'beams'"
    ):
        source(Heading(2, "Points", "points"), Headline((Entry("a", "b", anchor="rigging#beams"),)))


def test_an_anchor_given_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="anchors on page 'rigging' must differ, got 'p07' twice"):
        source(Heading(2, "P07", "p07"), Table(("Point",), (Row(("P07",), "p07"),)))


def test_anchors_that_are_written_alike_lead_each_to_its_own_line() -> None:
    rows = [Row((name,), f"point.{name}") for name in ("P1 limit", "P1.limit", "P1, limit")]
    links = [Link(str(number), "rigging", row.anchor) for number, row in enumerate(rows)]
    reader = read(Table(("Point",), rows), Paragraph(links), Facts((Entry("x", links),)))
    ids = [str(row["id"]) for row in reader.named("tr") if "id" in row]
    assert ids == ["point-p1-limit", "point-p1-limit-2", "point-p1-limit-3"]
    assert [str(link["href"]).partition("#")[2] for link in reader.named("a")] == 2 * ids


def test_headings_without_an_anchor_get_one_of_their_own() -> None:
    reader = read(Heading(2, "Points"), Heading(2, "Points"), Heading(2, "Points", "points-2"))
    assert [heading["id"] for heading in reader.named("h2")] == ["points", "points-3", "points-2"]


@pytest.mark.parametrize(
    ("words", "text"),
    [
        (("1.2 m", Small("3'-11\"")), "1.2 m 3'-11\""),
        (("1.2 m ", Small("3'-11\"")), "1.2 m 3'-11\""),
        (("2 at once, 1.2 m", Small("3'-11\""), " high"), "2 at once, 1.2 m 3'-11\" high"),
        (
            ("Mast lift", Tag("limited"), Small("Not in the wing.")),
            "Mast lift limited Not in the wing.",
        ),
        ((Tag("checked"), "today"), "checked today"),
        (("See ", Link("the points", "rigging"), "."), "See the points."),
        (("(", Small("none"), ")"), "(none)"),
        ((Small("none"), ", nothing"), "none, nothing"),
        (("", Small("none")), "none"),
    ],
)
def test_pieces_do_not_run_together(words: tuple[str | Small | Tag | Link, ...], text: str) -> None:
    assert read(Paragraph(words)).text == f"Rigging {text}"
    assert said(words) == text


def test_an_answer_too_long_for_large_type_is_set_as_a_sentence() -> None:
    reader = read(
        Headline(
            (
                Entry("Power", "2 × 400 A"),
                Entry("Services", "125 A sound, 400 A lighting, 125 A video, 63 A motors"),
            )
        )
    )
    assert [span["class"] for span in reader.named("span")] == ["answer", "answer answer-long"]


def test_a_caution_that_begins_with_its_title_says_it_once() -> None:
    assert (
        "Planning figures. Ask the house." in read(Caution("Planning figures. Ask the house.")).text
    )
    assert read(Caution("Planning figures. Ask the house.")).text.count("Planning figures") == 1


def test_a_caution_is_a_note_whose_title_is_text() -> None:
    reader = read(Caution("Ask the house.", "Planning figures", "danger"))
    assert {
        "class": "caution tone-danger",
        "role": "note",
        "aria-label": "Planning figures",
    } in reader.named("div")
    assert "Planning figures Ask the house." in reader.text.replace("figuresAsk", "figures Ask")


def test_an_unknown_tone_is_refused() -> None:
    with pytest.raises(
        ValueError, match="tone must be one of plain, note, caution, danger, got 'loud'"
    ):
        source(Caution("x", tone="loud"))


def test_an_inline_drawing_stands_in_the_page_and_beside_it_as_a_file() -> None:
    found = render(
        Document(
            "House",
            (Page("plan", "Plan", (Picture("plan-stage", SVG, "The stage from above", "Plan"),)),),
        )
    )
    assert found.pages["drawings/plan-stage.svg"] == SVG.encode()
    assert '<div class="drawing" role="img" aria-label="The stage from above">' in str(
        found.pages["plan.md"]
    )
    assert "\n\n<path" not in str(found.pages["plan.md"])


def test_a_file_picture_has_a_light_and_a_dark_version() -> None:
    reader = read(Picture("field", drawn("light"), "Levels", inline=False, dark=drawn("dark")))
    assert [(image["src"], image["class"]) for image in reader.named("img")] == [
        ("drawings/field.svg", "on-light"),
        ("drawings/field-dark.svg", "on-dark"),
    ]


def test_two_different_pictures_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="names of pictures must differ, got 'plan' twice"):
        source(Picture("plan", drawn("1"), ""), Picture("plan", drawn("2"), ""))


def test_a_drawing_that_is_only_text_is_refused() -> None:
    for inline in (True, False):
        with pytest.raises(TypeError, match="part must be markup or a number, got '<svg/>'"):
            source(Picture("plan", "<svg/>", "", inline=inline))  # type: ignore[arg-type]  # the mistake


def drawn(text: str) -> Markup:
    """A drawing that holds a text."""
    return element("svg", element("title", words(text)))


@pytest.mark.parametrize(
    "path", ["../x", "/etc/x", "a/../b", "rigging.md", "a//b", ".htaccess", "x.html"]
)
def test_a_file_stays_inside_the_site_and_replaces_no_page(path: str) -> None:
    with pytest.raises(
        ValueError, match="path of a file must be relative, inside the site and no page"
    ):
        render(Document("House", (), (Attachment(path, b""),)))


def test_a_photo_must_be_a_file_of_the_document() -> None:
    with pytest.raises(
        ValueError,
        match=r"path of a photo must be a file of the document, got 'https://example\.org/x\.jpg'",
    ):
        source(Photo("https://example.org/x.jpg", "x"))


@pytest.mark.parametrize("key", ["../x", "A", "a b", "", "a.b"])
def test_a_page_key_is_a_plain_file_name(key: str) -> None:
    with pytest.raises(ValueError, match="key of a page must be small letters, digits and hyphens"):
        render(Document("House", (Page(key, "X", ()),)))


def test_pages_of_one_group_stand_together_where_the_group_comes_first() -> None:
    pages = (
        Page("index", "Home", ()),
        Page("rigging", "Rigging", (), group="Stage"),
        Page("sound", "Sound", ()),
        Page("decks", "Decks <b>", (), group="Stage"),
    )
    assert render(Document("House", pages)).navigation == (
        NavigationEntry("Home", "index.md"),
        NavigationGroup(
            "Stage",
            (
                NavigationEntry("Rigging", "rigging.md"),
                NavigationEntry("Decks &lt;b&gt;", "decks.md"),
            ),
        ),
        NavigationEntry("Sound", "sound.md"),
    )


def test_raw_html_holds_no_blank_line() -> None:
    text = source(*everywhere("calm"))
    for start, end in (
        ("<figure>", "</figure>"),
        ("<details", "</details>"),
        ("<div class", "</div>"),
        ("<dl", "</dl>"),
    ):
        for part in re.findall(f"{start}.*?{end}", text, re.S):
            assert "\n\n" not in part


def test_an_anchor_named_like_the_page_does_not_meet_the_titles() -> None:
    reader = read(Facts((Entry("Rigging", "x", anchor="rigging"),)))
    assert [attributes["id"] for _, attributes in reader.elements if "id" in attributes] == [
        "the_title",
        "rigging",
    ]


def test_a_drawing_with_links_is_a_group_whose_links_can_be_reached() -> None:
    picture = Picture(
        "plan",
        element("svg", linked("point.P 1", circle(0, 0, 1)), role="img"),
        "Points",
    )
    blocks = (Table(("Point",), (Row(("P 1",), "point.P 1"),)), picture)
    pages = render(Document("House", (Page("plan", "Plan", blocks),))).pages
    text = str(pages["plan.md"])
    assert '<a href="#point-p-1">' in text
    assert b'<a href="../plan.html#point-p-1">' in bytes(pages["drawings/plan.svg"])  # type: ignore[arg-type]  # files are bytes
    assert text.count('role="group"') == 2
    assert 'role="img"' not in text
