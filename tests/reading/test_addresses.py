"""Any text becomes an address: small ASCII letters, digits and hyphens, and never none."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reading.addresses import LONGEST, address, distinct, file_address

ANY = st.text(st.characters(), max_size=60)
PLAIN = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Point P07", "point-p07"),
        ("End stage", "end-stage"),
        ("Main & thrust", "main-thrust"),
        ('"><script>', "script"),
        ("../../etc/passwd", "etc-passwd"),
        ("Décor & Bühne", "decor-buhne"),
        ("Straße", "strasse"),
        ("日本", "65e5-672c"),
        ("???", "3f-3f-3f"),
        ("🎛️", "1f39b-fe0f"),
        ("\u0301", "301"),
        ("𝓐 wing", "a-wing"),
        ("  a--b ", "a-b"),
        ("", "none"),
    ],
)
def test_a_text_has_an_address(text: str, found: str) -> None:
    assert address(text) == found


def test_a_long_text_has_a_short_address_of_its_own() -> None:
    one, other = address("deck " * 60 + "a"), address("deck " * 60 + "b")
    assert one != other
    assert one.startswith("deck-deck-")
    assert max(len(one), len(other)) <= LONGEST


@pytest.mark.law
@given(ANY)
def test_any_text_has_an_address_that_is_its_own_address(text: str) -> None:
    found = address(text)
    assert PLAIN.fullmatch(found)
    assert len(found) <= LONGEST
    assert address(found) == found


@pytest.mark.law
@given(st.lists(st.one_of(ANY, st.sampled_from(("A", "a", "A!", "a-2", "Ä"))), max_size=8))
def test_texts_have_addresses_no_two_of_which_are_the_same(texts: list[str]) -> None:
    found = distinct(texts)
    assert len(set(found)) == len(texts)
    assert all(PLAIN.fullmatch(each) for each in found)


@pytest.mark.parametrize("name", ["dock.png", "Dock_2.JPG", "stage-left.webp"])
def test_a_plain_name_of_a_file_stays(name: str) -> None:
    assert file_address(name) == name


@pytest.mark.law
@given(st.text(st.characters(exclude_characters="/\0"), min_size=1, max_size=60))
def test_any_other_name_of_a_file_becomes_a_plain_one_of_its_own(stem: str) -> None:
    found = file_address(f"{stem}.png")
    assert re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9_-]*\.png", found)
    assert file_address(f"{stem}.png") == found != file_address(f"{stem}!.png")
