"""
The whole build against the site generator alone, and growth with the size of the venue.

Peer: plain ``mkdocs build`` of the same pages, written to a folder with the same theme and
settings. The ratio is what our own part costs.
"""

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Mapping
from copy import deepcopy
from dataclasses import replace
from pathlib import Path

import yaml
from mkdocs.commands.build import build
from mkdocs.config import load_config

from builder.document import Attachment
from builder.files import published, read_folder
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.nodes import compose
from builder.render.markdown import render
from builder.site.build import serving_configuration

ROOT = Path(__file__).parent.parent
VENUE = ROOT / "venue"
RUNS = 3


def best(action: Callable[[], object]) -> float:
    """The shortest of a few runs, in seconds: noise only ever adds."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        action()
        times.append(time.perf_counter() - start)
    return min(times)


def whole_build(folder: Path) -> None:
    """A cold ``housepack build``, as a user runs it."""
    subprocess.run(
        [
            sys.executable,
            "-m",
            "builder.cli",
            "build",
            "--venue",
            str(VENUE),
            "--to",
            str(folder / "ours"),
        ],
        check=True,
        capture_output=True,
    )


def write_plain(folder: Path) -> None:
    """The same pages as a plain site: files in a folder and a settings file without our plugin."""
    docs = folder / "docs"
    for path, content in render(published(VENUE)).pages.items():
        target = docs / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content.encode() if isinstance(content, str) else content)
    for guide in (ROOT / "docs" / "pack").glob("*.md"):
        shutil.copy(guide, docs / guide.name)
    settings = {
        "site_name": "plain",
        "docs_dir": "docs",
        "use_directory_urls": False,
        "theme": {"name": "material", "font": False},
        "plugins": ["search"],
        "markdown_extensions": ["attr_list", "md_in_html", "tables", "toc"],
    }
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(settings), encoding="utf-8")


def plain_build(folder: Path) -> None:
    """A cold build by the site generator alone."""
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    command = [
        sys.executable,
        "-m",
        "mkdocs",
        "build",
        "-q",
        "-f",
        str(folder / "mkdocs.yml"),
        "-d",
        str(folder / "plain"),
    ]
    subprocess.run(command, check=True, capture_output=True, env=environment)


def larger(texts: dict[str, str], times: int) -> dict[str, str]:
    """The venue with its named lists repeated, each copy under other names."""
    grown = {}
    for name, text in texts.items():
        data = compose(text, name).data
        grown[name] = yaml.safe_dump(multiplied(data, times), sort_keys=False, allow_unicode=True)
    return grown


def multiplied(data: dict[str, object], times: int) -> dict[str, object]:
    """
    Lists of places, furnishings, contacts, docks and the like, ``times`` over.

    References keep pointing at the first copy.
    """
    grown = dict(data)
    for key in (
        "places",
        "furnishings",
        "contacts",
        "docks",
        "storage",
        "points",
        "outlets",
        "services",
        "microphones",
        "stock",
    ):
        if isinstance(entries := data.get(key), list):
            grown[key] = [renamed(entry, copy) for copy in range(times) for entry in entries]
    return grown


def renamed(entry: object, copy: int) -> object:
    """
    A copy of an entry under another name.

    Each is a thing of its own, so that none is written as an alias of another.
    """
    own = deepcopy(entry)
    return (
        {**own, "name": f"{own['name']} {'abcdefghij'[copy % 10]}{copy}"}
        if isinstance(own, dict) and "name" in own and copy
        else own
    )


def our_part(texts: dict[str, str], photos: Mapping[str, bytes]) -> float:
    """Text to rendered pages, in seconds, without the site generator."""
    document = document_of(pack_of(venue_of(texts, photos)))
    photo_files = tuple(Attachment(f"photos/{name}", content) for name, content in photos.items())
    return best(
        lambda: render(
            replace(
                document_of(pack_of(venue_of(texts, photos))), files=(*document.files, *photo_files)
            )
        )
    )


def seconds(action: Callable[[], object]) -> float:
    """How long one run takes: of builds that remember, each is another."""
    start = time.perf_counter()
    action()
    return time.perf_counter() - start


def edits(folder: Path) -> tuple[float, dict[str, float]]:
    """
    The first build while serving, and one after each edit of one line of one file: its check is
    told by somebody else.
    """
    venue = Path(shutil.copytree(VENUE, folder / "edited"))
    settings = {
        "config_file": str(serving_configuration(venue, folder)),
        "site_dir": str(folder / "served"),
    }
    load_config(**settings).plugins.run_event("startup", command="serve", dirty=False)
    first = seconds(lambda: build(load_config(**settings)))
    found = {}
    for file in ("lines.yml", "access.yml", "power.yml", "stage.yml", "rigging.yml", "sound.yml"):
        text = (venue / file).read_text(encoding="utf-8")
        (venue / file).write_text(text.replace("by: ", "by: deputy ", 1), encoding="utf-8")
        found[file] = seconds(lambda: build(load_config(**settings)))
    return first, found


def main() -> None:
    """
    Print the ratio to the plain build, growth with ten times the stock, and what an edit takes
    while serving.
    """
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write_plain(folder)
        ours, plain = best(lambda: whole_build(folder)), best(lambda: plain_build(folder))
    print(
        f"housepack build {ours:.2f} s, plain mkdocs build of the same pages {plain:.2f} s: ratio"
        f" {ours / plain:.2f}"
    )
    os.environ["NO_MKDOCS_2_WARNING"] = "1"
    with tempfile.TemporaryDirectory() as name:
        first, after = edits(Path(name))
    shares = ", ".join(f"{file} {time_s / first:.2f}" for file, time_s in after.items())
    print(f"while serving: first build {first:.2f} s; after an edit, as a share of it: {shares}")
    found = read_folder(VENUE)
    texts = dict(found.texts)
    once, tenfold = our_part(texts, found.photos), our_part(larger(texts, 10), found.photos)
    print(
        f"our part {once:.3f} s, with ten times the stock {tenfold:.3f} s: {tenfold / once:.1f}"
        " times"
    )


if __name__ == "__main__":
    main()
