"""A problem, a finding or a key in words, for every one that there is."""

from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner

from builder.cli import main
from builder.explaining.addresses import address_of
from builder.explaining.answer import every_name, explained, near
from builder.explaining.codes import codes
from builder.explaining.examples import example_of, examples_in
from builder.explaining.paragraph import Paragraph, plain, spelt
from builder.explaining.places import Place, by_meaning, files, places
from builder.files import example_files
from builder.keys import keys_of, records_of
from builder.reading.nodes import compose
from builder.registry import RULES

PROBLEMS = (Path(__file__).parent.parent / "docs" / "problems.md").read_text(encoding="utf-8")
EXAMPLES = examples_in(example_files())
PLACES = list(places())


def told(word: str) -> list[str]:
    """The paragraphs about a word, set in as they are printed."""
    return [f"{' ' * part.indent}{part.text}" for part in explained(word, PROBLEMS, EXAMPLES)]


def run(*words: str) -> str:
    """What the command prints; it must be well."""
    result = CliRunner().invoke(main, ["explain", *words])
    assert result.exit_code == 0, result.output
    return result.output


def test_a_problem_is_told_as_such() -> None:
    assert told("unit-missing") == [
        "unit-missing: a problem",
        "  A number where a quantity belongs. Write its unit.",
    ]


def test_a_finding_is_told_as_such_without_the_marks_of_its_page() -> None:
    first, *others = told("implausible")
    assert first == "implausible: a finding"
    assert "If it is right, confirm it: the finding asks, it does not refuse." in others[0]
    assert not set("*`[]") & set("".join(others))


def test_a_key_is_told_with_file_meaning_value_and_example() -> None:
    assert told("decks.clear_height") == [
        "clear_height: a key of stage.yml, decks",
        "  Height to the lowest thing above the deck that cannot be moved.",
        "  Value: a length, such as 18.3 m, exact or known in part; or unknown, or none.",
        '  Shows stop on it: where it is left out, the pack says "not stated".',
        "  In the documentation: keys/stage/decks.html#stage-decks-clear-height.",
        "  For example:",
        "    clear_height: 9.1 m",
    ]


@pytest.mark.parametrize(
    "word", ["decks.clear_height", "stage.decks.clear_height", "stage.yml.decks.Clear Height"]
)
def test_a_key_is_found_however_its_place_is_written(word: str) -> None:
    assert told(word)[0] == "clear_height: a key of stage.yml, decks"


def test_a_key_of_many_lines_is_told_in_a_line_for_each_meaning() -> None:
    first, *others, last = told("name")
    assert first == f"name: a key with {len(others)} meanings"
    assert "  stage.yml, decks: What this state of the deck is called." in others
    assert told(last.rpartition(" ")[2])[0].startswith("name: a key of ")


def test_what_a_rider_may_ask_is_told_with_its_answer() -> None:
    assert told("stage width") == [
        "stage width: a rider may ask for it",
        "  Stage width, clear. Value: a length.",
        "  The answer: the best of the house's.",
        "  For example:",
        "    needs: [{what: stage width, at least: unknown}]",
    ]


def test_a_file_is_told_with_its_keys() -> None:
    first, _, keys = told("stage.yml")
    assert first == "stage.yml"
    assert "decks, wings, zones" in keys
    assert told("rider")[0] == "a rider"


def test_every_code_is_explained() -> None:
    assert len(codes(PROBLEMS)) > 200
    for code in codes(PROBLEMS):
        first, second, *_ = told(code)
        assert first in (f"{code}: a problem", f"{code}: a finding")
        assert len(second.split()) > 3, code


def test_every_key_of_every_record_has_a_place() -> None:
    found = {(place.file, place.key.record, place.key.name) for place in PLACES}
    assert found >= {
        (file, record, key.name)
        for file, kind in files().items()
        for record in (kind, *records_of(kind))
        for key in keys_of(record)
    }


def test_every_key_is_told_by_its_dotted_place() -> None:
    for alike in by_meaning(PLACES):
        first, *others = told(alike[0].dotted)
        name = alike[0].key.name
        assert first.startswith((f"{name}: a key of ", f"{name}: a key with "))
        assert any(plain(alike[0].key.meaning) in line for line in others), alike[0].dotted
        if first.startswith(f"{name}: a key of "):
            assert f"  In the documentation: {address_of(alike[0])}." in others


def test_every_name_is_told_and_is_near_itself() -> None:
    for name in RULES:
        assert f"{name}: a rider may ask for it" in told(name)
    for name in every_name(PROBLEMS):
        assert spelt(name) in [spelt(other) for other in near(name, PROBLEMS)]


def groups() -> Iterator[tuple[list[Place], str]]:
    """Every meaning of every key, with its example."""
    for alike in by_meaning(PLACES):
        yield alike, example_of(alike, EXAMPLES)


def test_an_example_is_a_line_that_an_author_could_write() -> None:
    for alike, example in groups():
        if example:
            data = compose(example, "example").data
            assert list(data) == [alike[0].key.name], example
            assert list(yaml.load(example, Loader=yaml.BaseLoader)) == [alike[0].key.name]  # noqa: S506
            assert "\n" not in example


def test_nearly_every_key_has_an_example() -> None:
    examples = [example for _, example in groups()]
    assert sum(example != "" for example in examples) > 0.93 * len(examples)


@pytest.mark.parametrize(
    ("word", "name"),
    [("clearheight", "clear height"), ("unit-mising", "unit-missing"), ("hieght", "height")],
)
def test_a_near_name_is_offered(word: str, name: str) -> None:
    result = CliRunner().invoke(main, ["explain", word])
    assert result.exit_code == 2
    assert f"Nothing here is called '{word}'. Near it: " in result.output
    assert name in result.output.partition("Near it: ")[2]


def test_a_word_like_nothing_is_told_without_an_offer() -> None:
    result = CliRunner().invoke(main, ["explain", "qqqq"])
    assert result.output.endswith("Error: Nothing here is called 'qqqq'.\n")


def test_a_code_may_be_copied_with_its_brackets_and_words_without_quotes() -> None:
    assert run("[unit-missing]") == run("unit-missing")
    assert run("stage", "width").startswith("stage width: a rider may ask for it\n  Stage width")


def test_an_example_stays_on_its_line() -> None:
    long = Paragraph("x: " + "word " * 30, indent=4, is_example=True)
    assert long.is_example
    lines = run("outline").splitlines()
    assert "    outline: [{across: 8.4 m SR, depth: 0 m}]" in lines
    assert max(len(line) for line in lines) <= 94


@pytest.mark.parametrize("word", ["unknown", "none", "None"])
def test_a_word_for_what_is_not_there_is_told_with_an_example(word: str) -> None:
    first, *_, example = run(word).splitlines()
    assert first == f"{word.lower()}: a word that stands where a value could."
    assert example.endswith(f": {word.lower()}")
