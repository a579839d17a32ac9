"""What the search knows."""

import json

from builder.document import (
    Bullets,
    Caution,
    Document,
    Entry,
    Facts,
    Folded,
    Heading,
    Page,
    Paragraph,
    Row,
    Small,
    Table,
    Tag,
)
from builder.site.finding import Found, Searched, entries_script, page_lines, searched
from builder.site.guide_parts import guide_lines


def lines(*blocks: object) -> list[Found]:
    """The lines of a page of these blocks, without the page's own."""
    return list(page_lines(Page("access", "Access", blocks)))[1:]  # type: ignore[arg-type]  # blocks of any kind, for brevity


def test_each_line_with_an_anchor_is_an_entry_that_says_its_columns() -> None:
    row = Row(("P<07>", ("1,000 kg", Small("2,205 lb")), (Tag("over", "danger"),)), "P<07>")
    assert lines(Table(("Point", "Rated", "State"), (row,))) == [
        Found("p-07", "P<07>", "Access", "Rated: 1,000 kg 2,205 lb; State: over")
    ]


def test_a_line_without_an_anchor_leads_to_its_heading_and_empty_cells_are_left_out() -> None:
    table = Table(("Line", "Panel", "Path"), (Row(("Truck audio", "M7", "–")),))
    assert lines(Heading(2, "What ends here", "ends"), table)[1:] == [
        Found("ends", "Truck audio", "What ends here", "Panel: M7")
    ]


def test_a_line_says_the_heading_it_stands_under_and_its_name_leaves_the_small_print_out() -> None:
    row = Row((("Fire door", Tag("limited"), Small("Pinned back.")), "2.1 m"), "fire-door")
    found = lines(Heading(2, "Way in", "way"), Table(("Place", "Width"), (row,)))
    assert found[1] == Found(
        "fire-door", "Fire door", "Way in", "limited Pinned back.; Width: 2.1 m"
    )


def test_running_text_is_one_line_of_its_part_and_the_caution_on_every_figure_is_none() -> None:
    found = lines(
        Heading(2, "Rules", "rules"),
        Paragraph("Quiet hours."),
        Caution("Licensed people only."),
        Bullets(("No haze.",)),
    )
    assert found == [Found("rules", "Rules", "", "Quiet hours. No haze.")]


def test_of_what_is_folded_the_title_and_the_lines_with_a_place_are_known() -> None:
    facts = Facts((Entry("Chain", "24 m", "79 ft", "chain"), Entry("Formula", "F = m g")))
    assert lines(Heading(2, "Hangs", "hangs"), Folded("Mid truss: 2 t", (facts,), "mid")) == [
        Found("hangs", "Hangs", "", ""),
        Found("mid", "Mid truss", "Hangs", "2 t"),
        Found("chain", "Chain", "Mid truss", "24 m 79 ft", folded=True),
    ]


def test_pages_that_repeat_others_weigh_less() -> None:
    pages = (
        Page("power", "Power", ()),
        Page("index", "House", ()),
        Page("workings", "Workings", ()),
    )
    weights = [page.weight for page in searched(Document("House", pages))]
    assert weights == sorted(weights, reverse=True)
    assert weights[0] == 1


def test_no_text_can_end_the_script_early() -> None:
    script = entries_script(
        (Searched("a.html", "</script><b>", 1, (Found("x", "\u202e</script>", "", "\u2028"),)),)
    )
    assert "<" not in script
    assert "\u2028" not in script
    known = json.loads(
        script.removeprefix("Object.assign(window.housesearch, ").removesuffix(");\n")
    )
    assert known["lines"] == [[0, "x", "⟨U+202E⟩</script>", "", "", 0]]


def test_a_guide_is_known_by_its_parts() -> None:
    head = (
        '<h1 id="t">Keep it true<a class="headerlink" href="#t">#</a></h1><p>First &amp; last.</p>'
    )
    html = f'{head}<h2 id="out">Out</h2><table><td>a</td><td>b</td></table>'
    assert guide_lines(html, "Keep it true") == (
        Found("t", "Keep it true", "", "First & last."),
        Found("out", "Out", "", "a b"),
    )
