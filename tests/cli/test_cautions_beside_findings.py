"""Findings tell figures that can hurt: what decides in their place stands beside them."""

import json
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner

from builder.cautions import EVERYWHERE
from builder.cli import main
from builder.cli.printing import print_findings
from builder.document import Caution
from builder.overview.findings import findings_page
from builder.pack import Pack
from builder.pipeline import pack_of
from tests.sweep import VENUES, baseline


@pytest.fixture(scope="module")
def pack() -> Pack:
    """The demo's pack."""
    return pack_of(baseline("demo").venue)


def test_check_tells_what_decides_after_the_findings(
    pack: Pack, capsys: pytest.CaptureFixture[str]
) -> None:
    print_findings(pack, Path("venue"))
    lines = capsys.readouterr().out.splitlines()
    assert lines[-2] == EVERYWHERE
    print_findings(replace(pack, findings=()), Path("venue"))
    assert EVERYWHERE not in capsys.readouterr().out


def test_check_for_programs_tells_it_too() -> None:
    result = CliRunner().invoke(
        main, ["check", "--venue", str(VENUES["quarry"]), "--format", "json"]
    )
    found = json.loads(result.stdout)
    assert found["findings"]
    assert found["caution"] == EVERYWHERE


def test_the_page_of_findings_begins_with_it(pack: Pack) -> None:
    _, second, *_ = findings_page(pack).blocks
    assert second == Caution(EVERYWHERE)
    assert Caution(EVERYWHERE) not in findings_page(replace(pack, findings=())).blocks
