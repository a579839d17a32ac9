"""How many verdicts of each word, in words."""

from builder.fit.counting import count_words
from builder.fit.sentences import COUNTED
from builder.fit.verdicts import RANK


def test_each_word_is_counted_the_gravest_first() -> None:
    found = count_words(["fits", "ask", "short", "fits", "fits, with a note", "not needed"])
    assert found == ["1 short", "1 to ask", "1 with a note", "2 fit", "1 not needed"]


def test_nothing_is_said_of_what_there_is_none_of() -> None:
    assert count_words([]) == []
    assert count_words(["fits", "fits"]) == ["2 fit"]


def test_every_word_of_a_verdict_has_its_place_in_the_order_of_gravity() -> None:
    assert list(COUNTED) == sorted(RANK, key=lambda word: -RANK[word])
