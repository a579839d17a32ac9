"""Text for a terminal: folded between words, and nothing in it that a terminal would obey."""

import json
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.render.terminal import json_for_a_terminal, obeyed_by_no_terminal
from tests.render.hostile import HOSTILE

ANY = st.text(st.characters(), max_size=40)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("\x1b[31mred\x1b[0m", "⟨U+001B⟩[31mred⟨U+001B⟩[0m"),
        ("\x9b2J", "⟨U+009B⟩2J"),
        ("up\rover", "up⟨U+000D⟩over"),
        ("a\u202egnp.exe", "a⟨U+202E⟩gnp.exe"),
        ("bell\x07 back\x08", "bell⟨U+0007⟩ back⟨U+0008⟩"),
        ("half \ud800", "half ⟨U+D800⟩"),
        ("two\nlines\tand a column\r\n", "two\nlines\tand a column\r\n"),
        ("27'-10 1/2\", 99 dB(A), Bühne, 東", "27'-10 1/2\", 99 dB(A), Bühne, 東"),
    ],
)
def test_what_a_terminal_would_obey_is_shown_as_its_code(text: str, shown: str) -> None:
    assert obeyed_by_no_terminal(text) == shown


@pytest.mark.law
@given(ANY)
def test_no_text_brings_a_sign_that_a_terminal_obeys(text: str) -> None:
    shown = obeyed_by_no_terminal(text).replace("\r\n", "").replace("\n", "").replace("\t", "")
    assert [char for char in shown if unicodedata.category(char) in ("Cc", "Cf", "Cs")] == []
    assert shown.encode().decode() == shown


@pytest.mark.law
@given(st.recursive(ANY, lambda part: st.lists(part) | st.dictionaries(ANY, part), max_leaves=5))
def test_json_says_the_same_without_such_signs(value: object) -> None:
    shown = json_for_a_terminal(json.dumps(value, ensure_ascii=False, indent=1))
    assert json.loads(shown) == value
    hidden = [char for char in shown if unicodedata.category(char) in ("Cc", "Cf", "Cs")]
    assert set(hidden) <= {"\n"}


@pytest.mark.parametrize("text", HOSTILE)
def test_every_hostile_text_stays_on_the_terminal_s_side(text: str) -> None:
    assert "\x1b" not in obeyed_by_no_terminal(text)
