"""Light Markdown: readable as it is, and nothing in a text becomes markup."""

import pytest
from markdown import markdown

from builder.document import Bullets, Heading, Link, Paragraph
from builder.render.light import light_markdown

PLAIN = [
    "8.7 m SL",
    "1:12",
    "27'-10 1/2\"",
    "−0.5 dB → +1.0 dB (+1.5 dB)",
    "Way 11 is bent (since May).",
]
HOSTILE = [
    "*a*",
    "_a_",
    "`a`",
    "[a](b)",
    "<b>",
    "&lt;",
    "# a",
    "> a",
    "| a |",
    "- a",
    "+ a",
    "1. a",
    "1) a",
    "http://a.example",
    "www.a.example",
    "a@b.example",
    "\\*",
    "~~a~~",
    "$a$",
    "===",
    "---",
]


@pytest.mark.parametrize("text", PLAIN)
def test_what_crews_write_is_left_as_it_is(text: str) -> None:
    assert light_markdown([Bullets([text])]) == f"* {text}\n"


@pytest.mark.parametrize("text", HOSTILE)
def test_nothing_becomes_markup(text: str) -> None:
    made = markdown(
        light_markdown([Heading(2, text), Paragraph(text), Bullets([text])]), extensions=["extra"]
    )
    assert [
        part.split(">")[0].split("<")[-1] for part in made.split("\n") if part.startswith("<")
    ] == ["h2", "p", "ul", "li", "/ul"]
    assert "<a" not in made
    assert "<em" not in made


def test_words_that_are_no_plain_text_are_our_mistake() -> None:
    with pytest.raises(ValueError, match="words must be plain text, got list"):
        light_markdown([Paragraph([Link("a", "b")])])
