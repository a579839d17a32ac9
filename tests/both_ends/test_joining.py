"""
A section between what it is at the ends, of figures made by hand: a rating of 10 to 20 A gives what
each test says it gives.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

import pytest

from builder.both_ends.inputs import Descriptions, groups, inexact
from builder.both_ends.joining import at_both_ends, exact_words, published_figures
from builder.departments.power.description import Power
from builder.pack import (
    Field,
    Figure,
    Item,
    Reference,
    Section,
    Turning,
    Value,
    Working,
    not_less,
    not_more,
    turned_by,
)
from builder.reading.absent import listed
from tests.both_ends.test_inputs import services
from tests.departments.powered import described

WORKING = Working("x = y", (), (Reference("s", "c"),), ("a step",))
Made = Callable[[float | None], Sequence[Figure]]
"""The figures of an item at a rating; at None without one."""


def number(amount: float, unit: str = "A") -> Value:
    """A number."""
    return Value(f"{amount:g} {unit}", number=amount, unit=unit)


def figure(value: Value | None, key: str = "i.f", note: str = "", *missing: str) -> Figure:
    """A figure of an item."""
    return Figure(key, "F", value, WORKING, note=note, missing=missing)


def lacking(*missing: str) -> Figure:
    """A figure that lacks something."""
    return figure(None, "i.f", "", *missing)


def made(*ratings: str) -> dict[str, Power]:
    """Services of these ratings."""
    return {"power": described(services(*ratings))}


def rating_a(files: Descriptions, place: int) -> float | None:
    """The rating of a service; None where it is known in part."""
    file = files["power"]
    assert isinstance(file, Power)
    found: float | None = getattr(listed(file.services)[place].rating, "si", None)
    return found


def sections(
    *figures: Figure, key: str = "power", fields: tuple[Field, ...] = ()
) -> dict[str, Section]:
    """A section of an item."""
    return {key: Section(key, key, (Item("i", "k", "I", figures=tuple(figures)),), fields=fields)}


def joined(make: Made, *, key: str = "power") -> tuple[Figure, ...]:
    """The figures of the item, of a service of 10 to 20 A."""

    def compute(files: Descriptions) -> Mapping[str, Section]:
        return sections(*make(rating_a(files, 0)), key=key)

    found = at_both_ends(sections(*make(None), key=key), made("10 to 20 A"), compute)
    return found[key].items[0].figures


def one(base: Figure | None, low: Figure, high: Figure, *, key: str = "power") -> Figure:
    """One figure as it is without the rating, at 10 A and at 20 A, joined."""
    at = {None: base, 10.0: low, 20.0: high}
    (found,) = joined(lambda amp: [each for each in [at[amp]] if each is not None], key=key)
    return found


def test_a_figure_lies_between_what_it_is_at_the_ends_with_the_working_of_the_most() -> None:
    high = replace(figure(number(8)), working=replace(WORKING, steps=("the most",)))
    for ends in ((figure(number(3)), high), (high, figure(number(3)))):
        found = one(lacking("rating"), *ends)
        assert found.value == Value("3 A to 8 A", number=None, unit="A", least=3.0, most=8.0)
        assert found.working.steps == (
            "the most",
            "at the ends of services rating, 10 to 20 A: 3 A to 8 A",
        )
        assert found.missing == ()


def test_a_figure_that_is_the_same_at_both_ends_is_that() -> None:
    assert one(lacking("rating"), figure(number(3)), figure(number(3))) == figure(number(3))


def test_a_figure_that_the_base_lacks_stands_where_it_stands_at_the_ends() -> None:
    def make(amp: float | None) -> list[Figure]:
        new = [] if amp is None else [figure(number(amp), "i.new")]
        return [figure(number(1), "i.a"), *new, figure(number(1), "i.z")]

    assert [each.key for each in joined(make)] == ["i.a", "i.new", "i.z"]


def test_figures_that_stand_at_all_ends_stand_in_the_order_of_these() -> None:
    def make(amp: float | None) -> list[Figure]:
        both = [figure(number(1), "i.a"), figure(number(2), "i.b")]
        return both if amp is None else [*both[::-1], figure(number(amp), "i.c")]

    assert [each.key for each in joined(make)] == ["i.b", "i.a", "i.c"]
    assert [each.key for each in joined(lambda amp: make(amp)[:2])] == ["i.b", "i.a"]


def test_a_figure_of_the_base_that_no_end_has_stands_nowhere() -> None:
    def make(amp: float | None) -> list[Figure]:
        return [figure(number(1), "i.a"), figure(number(2), "i.gone" if amp is None else "i.b")]

    assert [each.key for each in joined(make)] == ["i.a", "i.b"]


def test_a_figure_that_one_end_alone_has_stays_as_it_is_without_the_value() -> None:
    def make(amp: float | None) -> list[Figure]:
        own = [figure(number(1), "i.a"), figure(number(2), "i.one")]
        return [own[0]] if amp == 20.0 else own if amp is None else [*own, figure(number(3), "i.b")]

    assert joined(make) == (figure(number(1), "i.a"), figure(number(2), "i.one"))


def test_what_is_not_told_at_an_end_lacks_what_it_lacks_there_else_an_exact_value() -> None:
    assert one(None, figure(number(3)), lacking("length")).missing == ("length",)
    words = figure(Value("Left")), figure(Value("Right"))
    found = one(None, *words)
    assert found.value is None
    assert found.missing == ("one exact value of services rating, 10 to 20 A",)
    assert found.working.steps == ()
    own = lacking("rating")
    assert one(own, figure(number(3)), lacking("length")) == own


@pytest.mark.parametrize(
    ("own", "told"),
    [
        (number(5), number(5)),
        (Value("some"), Value("some")),
        (not_more(number(9)), "3 A to 8 A"),
        (not_more(number(8), 3.0), not_more(number(8), 3.0)),
        (not_more(number(7), 4.0), not_more(number(7), 4.0)),
        (not_more(number(8), 2.0), "3 A to 8 A"),
        (not_more(number(9), 3.0), "3 A to 8 A"),
        (not_less(number(3)), "3 A to 8 A"),
    ],
)
def test_a_figure_that_tells_as_much_without_the_value_stays(own: Value, told: Value | str) -> None:
    found = one(figure(own), figure(number(3)), figure(number(8))).value
    assert found is not None
    assert found.text == (told if isinstance(told, str) else told.text)
    assert isinstance(told, str) or found == told


def test_a_room_with_ends_of_its_own_is_left_as_it_is_where_it_tells_both() -> None:
    wide = not_more(number(90), 1.0)
    ends = figure(number(3)), figure(number(8))
    assert one(figure(wide), *ends, key="rigging").value == wide
    narrowed = one(figure(not_more(number(90))), *ends, key="rigging").value
    assert narrowed is not None
    assert narrowed.text == "3 A to 8 A"


@pytest.mark.parametrize(
    ("low", "high", "told"),
    [
        (not_more(number(3), 1.0), not_more(number(8), 2.0), ("at most 8 A", 1.0, 8.0)),
        (not_more(number(3)), not_more(number(8)), ("at most 8 A", None, 8.0)),
        (not_more(number(3), 1.0), not_more(number(8)), ("at most 8 A", None, 8.0)),
        (not_less(number(3)), not_less(number(8)), ("at least 3 A", 3.0, None)),
        (not_less(number(3)), not_more(number(8)), None),
        (not_less(number(9)), number(8), None),
        (Value("2 to 5 A", unit="A", least=2.0, most=5.0), number(8), ("8 A", 2.0, 8.0)),
        (number(1), Value("2 to 5 A", unit="A", least=2.0, most=5.0), None),
        (number(1), not_more(number(8), 2.0), ("at most 8 A", 1.0, 8.0)),
        (Value("Left"), number(8), None),
    ],
)
def test_ends_that_have_ends_themselves_are_told_as_far_as_they_hold(
    low: Value, high: Value, told: tuple[str, float | None, float | None] | None
) -> None:
    found = one(None, figure(low), figure(high)).value
    if told is None or "to" in low.text:
        assert found is None
    else:
        assert found is not None
        assert (found.text, found.least, found.most) == told


def test_words_that_only_change_their_note_take_that_of_the_ends() -> None:
    own = figure(Value("none"), note="Without the rating.")
    end = figure(Value("none"), note="For both.")
    assert one(own, end, end) == end
    assert one(own, end, replace(end, note="Other.")) == own
    assert one(own, own, own) == own
    counted = figure(number(3), note="Without the rating.")
    assert one(counted, replace(counted, note="x"), replace(counted, note="x")) == counted


class Counted(Turning):
    """What a turned figure is made of: told between the ends that it is given."""

    def __init__(self, amount: float) -> None:
        self.amount = amount

    def between(self, others: Sequence[Turning]) -> Value | None:
        amounts = [each.amount for each in others if isinstance(each, Counted)]
        return number(sum(amounts))


def test_a_figure_that_a_value_can_turn_is_told_between_its_own_ends_or_not_at_all() -> None:
    """A rating turns how many outlets hold at once: `at-once` in `one_way.py`."""
    low, high = figure(number(3), "i.at-once.x"), figure(number(8), "i.at-once.x")
    lacks = one(None, low, high)
    assert (lacks.value, lacks.missing) == (
        None,
        ("one exact value of services rating, 10 to 20 A",),
    )
    own = figure(number(5), "i.at-once.x")
    assert one(own, low, high) == own
    turned = one(None, turned_by(low, Counted(1.0)), turned_by(high, Counted(2.0)))
    assert turned.value == number(3)
    open_end = turned_by(figure(None, "i.at-once.x", "", "length"), Counted(1.0))
    known = replace(high, working=replace(WORKING, steps=("known",)))
    told = one(None, open_end, turned_by(known, Counted(2.0)))
    assert (told.value, told.working.steps[0]) == (number(3), "known")
    half = one(None, turned_by(low, Counted(1.0)), high)
    assert half.value is None


def test_what_a_figure_is_made_of_is_not_published() -> None:
    plain = sections(figure(number(3)))["power"]
    assert published_figures(plain) is plain
    turned = sections(turned_by(figure(number(3)), Counted(1.0)))["power"]
    (found,) = published_figures(turned).items[0].figures
    assert type(found) is Figure
    assert found == figure(number(3))


def test_only_the_values_that_move_a_figure_are_named() -> None:
    files = made("10 to 20 A", "1 to 2 A")

    def compute(there: Descriptions) -> Mapping[str, Section]:
        first, second = rating_a(there, 0), rating_a(there, 1)
        if first is None or second is None:
            return sections()
        return sections(
            figure(number(first), "i.first"),
            figure(number(second), "i.second"),
            figure(number(first + second), "i.both"),
            figure(number(7), "i.none"),
        )

    found = at_both_ends(sections(), files, compute)["power"].items[0].figures
    steps = [each.working.steps[1:] for each in found]
    assert steps == [
        ("at the ends of services rating, 10 to 20 A: 10 A to 20 A",),
        ("at the ends of services rating, 1 to 2 A: 1 A to 2 A",),
        ("at the ends of services rating, 10 to 20 A and services rating, 1 to 2 A: 11 A to 22 A",),
        (),
    ]
    (group,) = groups(tuple(inexact(files)))
    assert exact_words(group).startswith("one exact value of services rating, 10 to 20 A and")


def test_what_the_ends_do_not_reach_is_the_very_same() -> None:
    base = sections(figure(number(3)))
    found = at_both_ends(base, made("10 to 20 A"), lambda _: base)
    assert found["power"] is base["power"]
    again = at_both_ends(base, made("10 to 20 A"), lambda _: sections(figure(number(3))))
    assert again["power"] is base["power"]


def test_an_item_that_an_end_lacks_stays_as_it_is() -> None:
    base = sections(figure(number(3)))
    gone = {"power": replace(base["power"], items=())}
    found = at_both_ends(
        base,
        made("10 to 20 A"),
        lambda files: gone if rating_a(files, 0) == 10 else sections(figure(number(8))),
    )
    assert found["power"] is base["power"]


def field(level: int) -> Field:
    """A map."""
    return Field("f", "F", "mix", 1.0, ("A",), ((0.0, 0.0, 0.0),), ((level,),), WORKING)


def test_maps_that_there_are_at_every_end_are_those_of_the_middle_and_say_so() -> None:
    def compute(files: Descriptions) -> Mapping[str, Section]:
        return sections(figure(number(3)), fields=(field(int(rating_a(files, 0) or 0)),))

    base = sections(figure(number(3)))
    found = at_both_ends(base, made("10 to 20 A"), compute)["power"]
    assert found.fields == (field(15),)
    assert found.cautions == (
        "The maps are for the middle of what is known: services rating, 10 to 20 A.",
    )
    own = sections(figure(number(3)), fields=(field(1),))
    assert at_both_ends(own, made("10 to 20 A"), compute)["power"].fields == (field(1),)

    def two(files: Descriptions) -> Mapping[str, Section]:
        return {**compute(files), "sound": compute(files)["power"], "none": base["power"]}

    mixed = at_both_ends(
        {**own, "sound": base["power"], "none": base["power"]}, made("10 to 20 A"), two
    )
    assert [mixed[key].fields for key in ("power", "sound", "none")] == [
        (field(1),),
        (field(15),),
        (),
    ]
    assert [len(mixed[key].cautions) for key in ("power", "sound", "none")] == [0, 1, 0]

    def at_one_end(files: Descriptions) -> Mapping[str, Section]:
        return base if rating_a(files, 0) == 10 else compute(files)

    assert at_both_ends(base, made("10 to 20 A"), at_one_end)["power"].fields == ()
