"""Lines on one connector, and what lines state."""

import pytest

from builder.departments.lines.oddities import oddities, statements
from tests.departments.lined import described, line, lines


def odd(*each: str) -> list[str]:
    """What is odd about some lines."""
    return [finding.sentence for finding in oddities(described(lines(*each)))]


def at(name: str, to: str, more: str = "") -> str:
    """A line that ends at a panel of the mix position."""
    return line(name, more=more).replace("to: {place: Mix}", f"to: {{place: Mix, {to}}}")


TOLD = (
    "A and B both end on panel F1 at Mix. Is a label mistyped? If they share cores, say so under"
    " shared_with."
)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("panel: F1", "panel: F1"),
        ("panel: F1, connector: XLR male", "panel: F1, connector: xlr male"),
        ("panel: F1, connector: XLR male", "panel: F1"),
        ("panel: F1", "panel: F1, connector: unknown"),
    ],
)
def test_two_lines_on_one_connector_are_told(first: str, second: str) -> None:
    assert odd(at("A", first), at("B", second)) == [TOLD]


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("panel: F1", "panel: F2"),
        ("panel: F1, connector: XLR male", "panel: F1, connector: XLR female"),
        ("panel: unknown", "panel: unknown"),
        ("panel: none", "panel: none"),
    ],
)
def test_two_connectors_or_panels_that_nobody_knows_are_not_odd(first: str, second: str) -> None:
    assert odd(at("A", first), at("B", second)) == []


def test_a_panel_of_the_same_name_elsewhere_is_another() -> None:
    elsewhere = line("B", end="Dock").replace("to: {place: Dock}", "to: {place: Dock, panel: F1}")
    assert odd(at("A", "panel: F1"), elsewhere) == []


def test_lines_that_share_cores_may_share_the_panel() -> None:
    assert odd(at("A", "panel: F1"), at("B", "panel: F1", "shared_with: [A]")) == []
    assert odd(at("A", "panel: F1", "shared_with: [B]"), at("B", "panel: F1")) == []


def test_a_line_out_of_service_holds_no_panel() -> None:
    assert odd(at("A", "panel: F1", "condition: out of service"), at("B", "panel: F1")) == []


def test_a_path_is_stated_for_its_two_places_whichever_way_it_goes() -> None:
    both = described(
        lines(
            line("A", more="path: 60 m"),
            line("B", start="Mix", end="Stage", more="path: unknown"),
            line("C", start="Mix", end="Stage", more="path: 61 m"),
        )
    )
    assert [(each.fact, each.thing, each.text) for each in statements(both)] == [
        ("cable path between", "Mix and Stage", "60 m"),
        ("cable path between", "Mix and Stage", "61 m"),
    ]
