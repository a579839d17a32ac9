"""
How the first page puts what the house wrote: a check dated later, a trouble spot and what to do.
"""

from builder.layout import checked_words
from builder.overview.home import trouble_words
from builder.pack import Fact, Item, Standing, Value, Verified


def spot(what: str, do: str) -> Item:
    """One trouble spot."""
    facts = tuple(
        Fact(f"house.trouble.1.{key}", key, Standing.STATED, Value(text))
        for key, text in (("what", what), ("do", do))
    )
    return Item(key="house.trouble.1", kind="trouble", name=what, facts=facts)


def test_a_check_dated_after_the_revision_is_told_as_after_and_never_as_minus() -> None:
    later = Verified(on="2026-03-02", by="bar manager", how="measured", age_days=-27, stale=False)
    assert checked_words(later).endswith("3 weeks after this revision")
    assert "-" not in checked_words(later).removeprefix("Checked on 2026-03-02")


def test_a_trouble_spot_and_what_to_do_about_it_are_two_sentences() -> None:
    assert (
        "".join(map(str, trouble_words(spot("The stairs are steep", "Bring two people"))))
        == "The stairs are steep. Bring two people"
    )
    assert (
        "".join(map(str, trouble_words(spot("The stairs are steep.", "Bring two people."))))
        == "The stairs are steep. Bring two people."
    )
