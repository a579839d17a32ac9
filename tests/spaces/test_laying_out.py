"""The pages of a house of several stages in their order, laid out by hand."""

from dataclasses import replace

from builder.document import Document, Entry, Link, Page, Paragraph
from builder.pack import Finding, Level, Pack
from builder.spaces.laying_out import LaidOut, pages_of_spaces
from tests.spaces.test_joining import whole

OVERVIEW = ("findings", "changes", "glossary", "workings")


def laid_out(pack: Pack) -> LaidOut:
    """A page for each section, two for the stage, and those that look over the whole pack."""
    told = [f"{section.key} {section.items[0].name}" for section in pack.sections]
    keys = [section.key for section in pack.sections]
    more = ["stage-plan"] if "stage" in keys else []
    pages = [Page("index", "Home", ())]
    pages += [
        Page(key, words, (Paragraph([Link("Power", "power"), Link("Found", "findings")]),))
        for key, words in zip(keys, told, strict=True)
    ]
    pages += [Page(key, key, ()) for key in (*more, *OVERVIEW)]
    return LaidOut(Document(pack.venue, pages), [Entry("Width", f"{len(keys)} m", anchor="stage")])


def test_what_all_share_stands_first_then_each_space_with_its_own_pages() -> None:
    findings = (Finding(Level.NOTE, "c", "Odd.", space="hall"), Finding(Level.NOTE, "c", "Old."))
    house = replace(whole(), findings=findings)
    pages = pages_of_spaces(house, laid_out).pages
    assert [page.key for page in pages] == [
        "index",
        "spaces",
        "house",
        "power",
        "hall",
        "hall-house",
        "hall-stage",
        "hall-stage-plan",
        "hall-workings",
        "studio",
        "studio-house",
        "studio-stage",
        "studio-stage-plan",
        "studio-workings",
        "findings",
        "workings",
        "glossary",
    ]
    by_key = {page.key: page for page in pages}
    assert by_key["hall-stage"].title == "stage Hall, Hall"
    assert by_key["studio-stage"].title == "stage Studio, Studio"
    (links,) = by_key["hall-stage"].blocks
    assert links == Paragraph([Link("Power", "power"), Link("Found", "findings")])
    assert "1 finding" in str(by_key["index"].blocks)
    assert "2 findings" not in str(by_key["index"].blocks)
    # The workings of all are those of the house's own document, not of any space.
    assert by_key["workings"] == Page("workings", "workings", ())
    assert by_key["hall"].title == "Hall"
    assert by_key["hall"].summary == "Hall of House."
