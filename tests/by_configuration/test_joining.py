"""One section of what a department tells in each configuration, of sections made by hand."""

import pytest

from builder.by_configuration.joining import findings_of_all, section_of_all
from builder.pack import (
    Fact,
    Field,
    Figure,
    Finding,
    InConfiguration,
    Item,
    Level,
    Outline,
    Place,
    Reference,
    Section,
    Standing,
    Value,
    Working,
)

WORKING = Working("x = y", (), (Reference("s", "c"),))
USUAL, OTHER = ("End stage",), ("Thrust", "In the round")


def item(
    name: str, line: int = 0, kind: str = "fill", note: str = "", m: str = "", kg: str = ""
) -> Item:
    """An item with a fact in metres and a figure in kilograms, where they are given."""
    key = f"{kind}.{name}"
    return Item(
        key,
        kind,
        name,
        (Fact(f"{key}.width", "Width", Standing.STATED, Value(m)),) if m else (),
        (Figure(f"{key}.load", "Load", Value(kg), WORKING),) if kg else (),
        note=note,
        place=Place("sound.yml", line) if line else None,
    )


def section(*items: Item, fields: tuple[Field, ...] = (), drawn: str = "") -> Section:
    """A section of some items."""
    outlines = tuple(Outline(name, "fill", name, ((0.0, 0.0), (1.0, 0.0))) for name in drawn)
    return Section("sound", "Sound", items, outlines, fields)


def joined(usual: Section, *others: Section) -> Section:
    """The section of all configurations, the other ones each by a name."""
    names = (OTHER, ("Flat floor",))
    told = zip(names, others, strict=False)
    return section_of_all([(USUAL, usual), *told])


def names(found: Section) -> list[str]:
    """The names of the items in their order."""
    return [each.name for each in found.items]


def test_what_is_the_same_everywhere_is_told_once() -> None:
    whole = section(item("A", 1, m="1 m", kg="5 kg"), drawn="A")
    assert joined(whole, whole, whole) == whole


def test_what_is_there_elsewhere_only_stands_behind_its_like_above_it_in_the_file() -> None:
    usual = section(item("A", 1), item("C", 3), item("D", 4, kind="hang"))
    other = section(item("B", 2), item("C", 3), item("D", 4, kind="hang"), item("E", 5))
    assert names(joined(usual, other)) == ["A", "B", "C", "E", "D"]


def test_of_a_kind_that_the_usual_lacks_it_stands_behind_what_stands_before_it_there() -> None:
    usual = section(item("A", 1), item("B", 2))
    other = section(item("A", 1), item("X", 9, kind="hang"), item("Y", 1, kind="tier"))
    assert names(joined(usual, other)) == ["A", "X", "Y", "B"]
    first = section(item("X", 9, kind="hang"), item("A", 1))
    assert names(joined(usual, first)) == ["X", "A", "B"]


def test_what_has_no_line_stands_behind_its_like() -> None:
    usual = section(item("A", 7), item("B"), item("Z", 1, kind="hang"))
    assert names(joined(usual, section(item("N")))) == ["A", "B", "N", "Z"]
    assert names(joined(usual, section(item("N", 2)))) == ["A", "B", "N", "Z"]


def test_what_of_the_usual_is_not_there_is_named() -> None:
    (told,) = joined(section(item("A", 1), item("B", 2)), section(item("B", 2))).elsewhere
    assert told == InConfiguration(OTHER, without=("fill.A",))
    (usual,) = joined(section(item("B", 2)), section(item("A", 1), item("B", 2))).elsewhere
    assert usual == InConfiguration(USUAL, without=("fill.A",))


@pytest.mark.parametrize(
    "other",
    [
        item("A", 1, m="2 m", kg="5 kg"),
        item("A", 1, m="1 m", kg="6 kg"),
        item("A", 1, m="1 m"),
        item("A", 1, note="Low", m="1 m", kg="5 kg"),
    ],
)
def test_what_tells_something_else_is_told_whole(other: Item) -> None:
    found = joined(section(item("A", 1, m="1 m", kg="5 kg")), section(other))
    assert found.items == (item("A", 1, m="1 m", kg="5 kg"),)
    assert found.elsewhere == (InConfiguration(OTHER, (other,)),)


def test_a_figure_worked_out_otherwise_to_the_same_is_no_difference() -> None:
    one = item("A", 1, kg="5 kg")
    key = "fill.A"
    other = Working("x = z", (), (Reference("t", "d"),))
    figure = Figure(f"{key}.load", "Load", Value("5 kg"), other)
    same = Item(key, "fill", "A", figures=(figure,), place=Place("sound.yml", 1))
    assert joined(section(one), section(same)).elsewhere == ()


def field(name: str, level: int) -> Field:
    """A map of one place."""
    return Field(name, name, "mix", 1.0, ("A",), ((0.0, 0.0, 0.0),), ((level,),), WORKING)


def test_maps_that_differ_and_those_that_are_not_there() -> None:
    found = joined(
        section(fields=(field("F", 90), field("G", 80))), section(fields=(field("G", 81),))
    )
    assert found.fields == (field("F", 90), field("G", 80))
    assert found.elsewhere == (
        InConfiguration(OTHER, fields=(field("G", 81),), without_maps=("F",)),
    )


def test_outlines_that_only_others_have() -> None:
    (told,) = joined(section(drawn="AB"), section(drawn="BC")).elsewhere
    assert [each.name for each in told.outlines] == ["C"]


def feeds(*parts: str) -> Item:
    """A drive line with the names of what it feeds."""
    value = Value(", ".join(parts), parts=parts) if parts else None
    standing = Standing.STATED if parts else Standing.NONE
    return Item("d.L", "d", "L", (Fact("d.L.feeds", "Feeds", standing, value),))


def fed(found: Section) -> Value | None:
    """What a drive line feeds in a section."""
    return found.items[0].facts[0].value


def test_a_list_of_names_tells_what_is_there_in_any_and_that_is_no_difference() -> None:
    found = joined(section(feeds("A", "B")), section(feeds("B", "C")), section(feeds("A", "D, E")))
    assert fed(found) == Value("A; B; C; D, E", parts=("A", "B", "C", "D, E"))
    assert found.elsewhere == ()
    fewer = joined(section(feeds("A", "B")), section(feeds("B")))
    assert fed(fewer) == Value("A, B", parts=("A", "B"))


def test_a_list_that_is_empty_in_the_usual_configuration_tells_the_others() -> None:
    found = joined(section(feeds()), section(feeds("B")))
    assert fed(found) == Value("B", parts=("B",))
    kept = joined(section(feeds("B")), section(feeds()))
    assert fed(kept) == Value("B", parts=("B",))


def finding(code: str, sentence: str) -> Finding:
    """A finding."""
    return Finding(Level.NOTE, code, sentence)


def test_findings_that_only_others_have_say_in_which() -> None:
    both, other = finding("a", "Both."), finding("b", "Low.")
    found = findings_of_all(
        [
            (USUAL, [both]),
            (OTHER, [both, other, finding("a", "Low.")]),
            (("Fair, flat",), [finding("a", "Both."), finding("b", "Both.")]),
        ]
    )
    assert [(each.code, each.sentence) for each in found] == [
        ("a", "Both."),
        ("b", "In Thrust, In the round: Low."),
        ("a", "In Thrust, In the round: Low."),
        ("b", "In Fair, flat: Both."),
    ]
