"""The log as it is published: nothing that was done to what is for the house only."""

from builder.house_only.sealing import HOUSE_ONLY
from builder.pack import Change
from builder.pack_json import to_json
from builder.pipeline import document_of
from tests.house_only.rooms import own, published

HEAD = "entries:\n"
WHO = "on: 2026-01-01, by: crew"


def shown(*entries: str) -> tuple[Change, ...]:
    """The entries of a log that are published."""
    return published(log=HEAD + "".join(f"  - {{{WHO}, {entry}}}\n" for entry in entries)).log


def test_an_entry_that_says_so_is_published_nowhere() -> None:
    log = f"{HEAD}  - {{{WHO}, why: New lock on the vault., house_only: yes}}\n"
    assert published(log=log).log == ()
    assert [change.why for change in own(log=log).log] == ["New lock on the vault."]
    assert "vault" not in to_json(published(log=log))
    assert not any(b"vault" in file.content for file in document_of(published(log=log)).files)


def test_an_entry_on_a_line_that_is_hidden_today_is_published_no_more() -> None:
    line = "did: verified, file: power.yml, within: power.boards, line: Cellar board"
    assert shown(f"why: Looked., {line}") == ()
    assert len(shown(f"why: Looked., {line.replace('Cellar board', 'Other board')}")) == 1


def test_an_entry_that_names_no_list_is_hidden_where_no_public_line_has_the_name() -> None:
    assert shown("why: Looked., line: Cellar board") == ()
    assert len(shown("why: Looked., line: Switch")) == 1


def test_an_entry_that_says_so_is_hidden_though_its_line_is_public() -> None:
    line = "file: power.yml, within: power.services, line: Switch"
    assert len(shown(f"why: Looked., {line}")) == 1
    assert shown(f"why: Looked., house_only: yes, {line}") == ()


def test_an_entry_that_names_a_file_and_no_list_is_hidden_by_its_name_alone() -> None:
    assert shown("why: Looked., file: power.yml, line: Cellar board") == ()
    assert shown("why: Looked., within: power.boards, line: Cellar board") == ()
    assert len(shown("why: Looked., file: power.yml, line: Switch")) == 1


def test_an_entry_of_a_nested_list_is_known_whatever_its_number() -> None:
    line = "file: house.yml, within: 'house.contacts[7]', line: Night keeper"
    assert shown(f"why: Rang., {line}") == ()


def test_what_a_public_line_referred_to_loses_the_hidden_name() -> None:
    line = "file: power.yml, within: power.outlets, line: Socket"
    changes = "changes: [{key: fed_from, was: Switch, now: Cellar board},"
    (change,) = shown(
        f"why: Moved., {line}, {changes} {{key: both, now: '[Switch, Cellar board]'}}]"
    )
    assert [(part.was, part.now) for part in change.altered] == [
        ("Switch", HOUSE_ONLY),
        ("", f"[Switch, {HOUSE_ONLY}]"),
    ]


def test_figures_of_a_hidden_line_that_moved_are_left_out() -> None:
    moved = "moved: ['Cellar board, free on L1: 22 A → 20 A', 'Switch, free on L1: 53 A → 51 A']"
    (change,) = shown(f"why: A lamp., {moved}")
    assert change.moved == ("Switch, free on L1: 53 A → 51 A",)
