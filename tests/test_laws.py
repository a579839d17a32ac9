"""The ground that laws stand on: which cases a run takes, and how they are drawn again."""

import pytest

from tests.laws import HOW_MUCH, SEED, repeating, share

CASES = range(1000)


def drawn(monkeypatch: pytest.MonkeyPatch, how_much: str, seed: str, law: str = "a law") -> list:
    monkeypatch.setenv(HOW_MUCH, how_much)
    monkeypatch.setenv(SEED, seed)
    return share(CASES, law=law, usually=7)


def test_all_takes_every_case_in_its_order(monkeypatch: pytest.MonkeyPatch) -> None:
    assert drawn(monkeypatch, "all", "1") == list(CASES)


def test_nothing_said_takes_what_is_usual(monkeypatch: pytest.MonkeyPatch) -> None:
    assert len(drawn(monkeypatch, "", "1")) == 7
    assert share(range(3), law="few", usually=7) == [0, 1, 2]


def test_a_part_takes_that_part_and_at_least_one(monkeypatch: pytest.MonkeyPatch) -> None:
    assert len(drawn(monkeypatch, "0.05", "1")) == 50
    assert len(share(range(3), law="few", usually=7)) == 1
    assert share([], law="none", usually=7) == []


def test_the_same_seed_draws_the_same_cases_and_another_draws_others(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    first = drawn(monkeypatch, "", "1234")
    assert drawn(monkeypatch, "", "1234") == first
    assert drawn(monkeypatch, "", "1235") != first


def test_each_law_has_a_draw_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    assert drawn(monkeypatch, "", "1", "one law") != drawn(monkeypatch, "", "1", "another law")


@pytest.mark.parametrize("how_much", ["some", "0", "-0.1", "1.5", "nan"])
def test_another_word_is_refused(monkeypatch: pytest.MonkeyPatch, how_much: str) -> None:
    with pytest.raises(ValueError, match=f"must be 'all' or a part such as 0.05, got '{how_much}'"):
        drawn(monkeypatch, how_much, "1")


def test_a_seed_that_is_no_number_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(ValueError, match="must be a whole number, 0 or more, got 'x'"):
        drawn(monkeypatch, "", "x")


def test_the_terminal_says_how_to_draw_again(monkeypatch: pytest.MonkeyPatch) -> None:
    drawn(monkeypatch, "", "12")
    assert repeating() == "laws: a small share, drawn again with HOUSEPACK_SEED=12"
    drawn(monkeypatch, "0.05", "12")
    assert (
        repeating()
        == "laws: 5.00% of the cases, drawn again with HOUSEPACK_LAWS=0.05 HOUSEPACK_SEED=12"
    )
    drawn(monkeypatch, "all", "12")
    assert repeating() == "laws: every case"
