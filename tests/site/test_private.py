"""
What is private stays so: no byte of the demo's site or pack tells of a show on its books, or of a
line for the house only.
"""

import gzip
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
HOUSE_ONLY = (
    b"night keeper",
    b"5550 190",
    b"strong store",
    b"takings",
    b"alarm, cameras",
    b"cylinder",
)
MARKS = (b"sallow kestrel", b"half lantern", b"brass weather", b"pale ferrymen", b"2026-12-18")


def unpacked(path: Path) -> bytes:
    """A file's bytes, unpacked where it is packed."""
    return gzip.decompress(path.read_bytes()) if path.suffix == ".gz" else path.read_bytes()


def test_nothing_of_a_show_is_in_any_byte_that_is_published(demo: Path) -> None:
    shows = {
        path.name.encode(): path.read_bytes().lower()
        for path in (ROOT / "venue" / "shows").iterdir()
    }
    assert all(any(mark in text for text in shows.values()) for mark in MARKS)
    files = [path for path in demo.rglob("*") if path.is_file()]
    assert {"pack.json", "index.html", "changes.xml"} <= {path.name for path in files}
    told = {
        path.name: [mark for mark in (*MARKS, *shows) if mark in unpacked(path).lower()]
        for path in files
    }
    assert {name: found for name, found in told.items() if found} == {}


def test_nothing_of_a_line_for_the_house_only_is_in_any_byte_that_is_published(demo: Path) -> None:
    texts = b"".join(path.read_bytes().lower() for path in (ROOT / "venue").glob("*.yml"))
    assert all(mark in texts for mark in HOUSE_ONLY)
    told = {
        path.name: [mark for mark in HOUSE_ONLY if mark in unpacked(path).lower()]
        for path in demo.rglob("*")
        if path.is_file()
    }
    assert {name: found for name, found in told.items() if found} == {}
    assert any(b"for the house only" in unpacked(path) for path in demo.rglob("*.html"))
