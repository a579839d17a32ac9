"""The guide for the crew names every order there is, and no other."""

import re
from pathlib import Path

from builder.cli.stock import stock

GUIDE = Path(__file__).parent.parent.parent / "docs" / "keep-it-true.md"


def test_the_guide_names_every_order_and_no_other() -> None:
    rows = re.findall(r"^\| `(\w+)", GUIDE.read_text(encoding="utf-8"), re.MULTILINE)
    assert set(rows) == set(stock.commands)


def test_every_option_that_the_guide_gives_exists() -> None:
    options = {
        option
        for command in stock.commands.values()
        for parameter in command.params
        for option in parameter.opts
    }
    named = set(re.findall(r"(?<![-\w])--[a-z][a-z-]+", GUIDE.read_text(encoding="utf-8")))
    assert named - options <= {"--format"}
