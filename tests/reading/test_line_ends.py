"""Line ends given back to a changed text: what a crew wrote keeps its own."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reading.line_ends import ended_as
from builder.reading.text import one_line_end

WORDS = st.text("ab c", max_size=3)
ENDED = st.lists(st.tuples(WORDS, st.sampled_from(("\n", "\r\n", "\r"))), max_size=8)


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_a_file_of_one_kind_of_line_end_keeps_it_for_new_lines_too(end: str) -> None:
    assert ended_as(f"a{end}b{end}", "a\nnew\nb\n") == f"a{end}new{end}b{end}"


def test_a_new_file_ends_its_lines_with_a_line_feed() -> None:
    assert ended_as("", "a\nb\n") == "a\nb\n"


def test_in_a_file_of_several_kinds_each_line_keeps_its_own_and_a_new_one_ends_as_most_do() -> None:
    old = "one\r\ntwo\nthree\r\nfour\r"
    assert ended_as(old, "one\ntwo\nnew\nthree\nfour\n") == ("one\r\ntwo\nnew\r\nthree\r\nfour\r")
    assert ended_as(old, "one\nthree\nfour\n") == "one\r\nthree\r\nfour\r"
    assert ended_as(old, "one\n2\nthree\nfour\n") == "one\r\n2\r\nthree\r\nfour\r"


@pytest.mark.law
@given(ENDED, WORDS)
def test_a_text_that_did_not_change_comes_back_to_the_byte(
    lines: list[tuple[str, str]], last: str
) -> None:
    old = "".join(words + end for words, end in lines) + last
    assert ended_as(old, one_line_end(old)) == old


@pytest.mark.law
@given(ENDED, st.text("ab \n", max_size=12))
def test_only_line_ends_differ_from_the_text_that_was_meant(
    lines: list[tuple[str, str]], new: str
) -> None:
    old = "".join(words + end for words, end in lines)
    given_back = ended_as(old, new)
    assert one_line_end(given_back) == new
    ends = re.compile(r"\r\n|\r|\n")
    assert set(ends.findall(given_back)) <= {*ends.findall(old), "\n"}


def test_lines_never_run_together_where_their_ends_would() -> None:
    assert ended_as("a\rb\n\nc\r", "a\n\nc\n") == "a\r\rc\r"
