"""What the search finds besides headings."""

from builder.document import Document, Entry, Facts, Folded, Page, Row, Small, Table, Tag
from builder.site.finding import line_entries


def test_each_line_with_an_anchor_is_an_entry_that_says_its_columns() -> None:
    table = Table(
        ("Point", "Rated", "State"), (Row(("P<07>", ("1,000 kg", Small("2,205 lb")), (Tag("over", "danger"),)), "P<07>"), Row(("P08", "a", "b")))
    )
    facts = Facts((Entry("Chain", "24 m", "79 ft", "chain"), Entry("Control", "16 channels")))
    page = Page("rigging", "Rigging", (table, Folded("Working", (facts,))))
    assert list(line_entries(Document("House", (page,)))) == [
        {"location": "rigging.html#p-07", "title": "P&lt;07&gt;", "text": "Rated: 1,000 kg 2,205 lb; State: over"},
        {"location": "rigging.html#chain", "title": "Chain", "text": "24 m 79 ft"},
    ]
