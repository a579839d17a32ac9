"""Templates with named parts."""

import pytest

from builder.fit.sentences import fill


def test_named_parts_are_put_into_a_template() -> None:
    assert fill("{spare} to spare at {place}.", {"place": "Dock", "spare": "2 m"}) == (
        "2 m to spare at Dock."
    )


def test_what_a_crew_wrote_is_never_read_as_a_template() -> None:
    assert fill("{act}: {need}.", {"act": "{need} {x", "need": "} 8 m"}) == "{need} {x: } 8 m."


def test_a_template_without_parts_stays_as_it_is() -> None:
    assert fill("As asked.", {}) == "As asked."


def test_a_part_that_is_not_given_is_a_fault_of_the_program() -> None:
    with pytest.raises(KeyError, match="place"):
        fill("At {place}.", {})
