"""Files in ``tests/golden/``: what was written once and read by somebody, to be held against."""

import os
from pathlib import Path

GOLDEN = Path(__file__).parent / "golden"


def held(name: str, text: str) -> None:
    """Hold a text against the file of its name, or write that where the environment asks for it."""
    golden = GOLDEN / name
    if os.environ.get("HOUSEPACK_GOLDEN") == "write":
        golden.write_text(text, encoding="utf-8")
    assert text == golden.read_text(encoding="utf-8")
