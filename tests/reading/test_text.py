"""From bytes to text: UTF-8 or a plain refusal that says where."""

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reading.problems import Refused
from builder.reading.text import decode


def test_utf_8_is_read_with_and_without_a_byte_order_mark() -> None:
    assert (
        decode("é: 1\r\n\t".encode(), "f")
        == "é: 1\n\t"
        == decode(b"\xef\xbb\xbf" + "é: 1\r\n\t".encode(), "f")
    )


@pytest.mark.parametrize(
    ("raw", "message"),
    [
        (
            "é\nb: ".encode() + b"\xe9\n",
            (
                "f:2:4 is not text: byte 6 does not belong to UTF-8; save it as plain text in UTF-8"
                " [not-text]"
            ),
        ),
        (
            b"\xef\xbb\xbfa: \xe9",
            (
                "f:1:4 is not text: byte 6 does not belong to UTF-8; save it as plain text in UTF-8"
                " [not-text]"
            ),
        ),
        (
            b"\xff\xfea\x00",
            "f:1:4 is not text: byte 3 is zero; save it as plain text in UTF-8 [not-text]",
        ),
        (
            b"\x7fELF\x02\x00",
            "f:1:6 is not text: byte 5 is zero; save it as plain text in UTF-8 [not-text]",
        ),
        (
            b"a: \x1b[31m",
            (
                "f:1:4 has the control character U+001B; delete it; an editor that shows hidden"
                " characters helps to find it [control-character]"
            ),
        ),
        (
            b"a: 1\rb: \r\nc: \xe9",
            (
                "f:3:4 is not text: byte 13 does not belong to UTF-8; save it as plain text in"
                " UTF-8 [not-text]"
            ),
        ),
        (
            b"x" * (10 << 20),
            (
                "f is larger than 2 MiB; a description is a few pages; keep pictures and drawings"
                " in files of their own [too-big]"
            ),
        ),
    ],
)
def test_what_is_not_fit_to_read_is_refused_with_its_place(raw: bytes, message: str) -> None:
    with pytest.raises(Refused) as refused:
        decode(raw, "f")
    assert str(refused.value) == message


@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_line_ends_and_a_byte_order_mark_do_not_change_what_is_read(
    end: bytes, mark: bytes
) -> None:
    assert decode(mark + end.join((b"a: 1", b"b: |", b"  two", b"", b"  lines", b"")), "f") == (
        "a: 1\nb: |\n  two\n\n  lines\n"
    )


def test_a_text_of_exactly_two_mebibytes_is_read() -> None:
    assert len(decode(b"x" * (2 << 20), "f")) == 2 << 20


def test_one_byte_more_is_not() -> None:
    with pytest.raises(Refused, match="is larger than 2 MiB"):
        decode(b"x" * ((2 << 20) + 1), "f")


def test_only_the_first_twenty_hidden_characters_are_listed() -> None:
    with pytest.raises(Refused) as refused:
        decode(b"\x01" * 1000, "f")
    assert len(refused.value.problems) == 20


@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused_and_nothing_else(raw: bytes) -> None:
    with contextlib.suppress(Refused):
        read = decode(raw, "f").encode()
        assert read == raw.removeprefix(b"\xef\xbb\xbf").replace(b"\r\n", b"\n").replace(
            b"\r", b"\n"
        )
