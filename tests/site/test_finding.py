"""What the search finds besides headings."""

from builder.document import Document, Entry, Facts, Folded, Heading, Page, Row, Small, Table, Tag
from builder.site.finding import line_entries


def test_each_line_with_an_anchor_is_an_entry_that_says_its_columns() -> None:
    table = Table(
        ("Point", "Rated", "State"), (Row(("P<07>", ("1,000 kg", Small("2,205 lb")), (Tag("over", "danger"),)), "P<07>"), Row(("P08", "a", "b")))
    )
    facts = Facts((Entry("Chain", "24 m", "79 ft", "chain"), Entry("Control", "16 channels")))
    page = Page("rigging", "Rigging", (table, Folded("Working", (facts,))))
    assert list(line_entries(Document("House", (page,)))) == [
        {"location": "rigging.html#p-07", "title": "P&lt;07&gt;", "text": "Rated: 1,000 kg 2,205 lb; State: over"},
        {"location": "rigging.html#chain", "title": "Chain", "text": "Working. 24 m 79 ft"},
    ]


def test_a_line_says_the_heading_it_stands_under_and_its_name_leaves_the_small_print_out() -> None:
    row = Row((("Fire door", Tag("limited"), Small("Pinned back.")), "2.1 m"), "fire-door")
    page = Page("access", "Access", (Heading(2, "Way in"), Table(("Place", "Width"), (row,))))
    assert list(line_entries(Document("House", (page,)))) == [
        {"location": "access.html#fire-door", "title": "Fire door", "text": "Way in. limited Pinned back.; Width: 2.1 m"}
    ]
