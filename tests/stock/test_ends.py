"""Moves of values of which only an end is known."""

from builder.pack import Value, not_less, not_more
from builder.stock.amount import how_far, how_much


def ampere(number: float) -> Value:
    """A current."""
    return Value(f"{number:.0f} A", number=number, unit="A")


def test_two_upper_bounds_move_by_the_difference_of_their_ends() -> None:
    assert how_much(not_more(ampere(190)), not_more(ampere(150))) == "−40 A"
    assert how_far(not_more(ampere(200)), not_more(ampere(150))) == 0.25


def test_what_was_exact_and_is_now_a_bound_has_no_difference_to_tell() -> None:
    assert how_much(ampere(190), not_more(ampere(150))) == ""
    assert how_much(not_less(ampere(150)), not_more(ampere(190))) == ""
    assert how_far(ampere(200), not_more(ampere(150))) == 0.25
