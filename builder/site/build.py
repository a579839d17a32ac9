"""Build the whole site, or serve it while it is edited."""

import errno
import logging
import os
import socket
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import yaml

from builder.document import Document
from builder.files import published, refuse_no_folder, write_whole
from builder.site.guides import guides_folder
from builder.site.imprint import PACK, imprint_of
from builder.site.manifest import named, write_manifest
from builder.site.replacing import SiteFailed, refuse_to_lose
from builder.site.swap import swap_in
from builder.site.workshop import NEW, OLD, recover, workshop

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig

CONFIGURATION = Path(__file__).with_name("mkdocs.yml")
# Kept out of what the command prints: a notice about the generator's future, which is for its
# users, not for ours.
NOTICE_OFF = "NO_MKDOCS_2_WARNING"
PLUGIN = "mkdocs.plugins.housepack"
"""The log of our own plugin."""
FOLDER_MODE, FILE_MODE = 0o755, 0o644


def build(venue: Path, site: Path) -> None:
    """
    Build a venue's site into the folder ``site``, whole or not at all.

    Raises
    ------
    Refused
        If the description has problems.
    SiteFailed
        If ``site`` holds something that no build wrote, or the generator warns of anything, such
        as a dead link in a guide.
    """
    refuse_to_lose(site, venue)
    recover(site.resolve())
    build_document(published(venue), site, venue)


def build_document(document: Document, site: Path, venue: Path | None = None) -> None:
    """
    Build a document that is already made; errors as for :func:`build`.

    ``venue`` is the folder that it was read from, which no site may take the place of.
    """
    refuse_to_lose(site, venue)
    # The generator reads a relative path from the folder of its own configuration, not from where
    # the author stands.
    site = site.resolve()
    make_folders(site.parent)
    recover(site)
    with workshop(site) as folder:
        made = folder / NEW
        made.mkdir()
        generate(document, made)
        complete(made)
        write_manifest(made)
        open_to_readers(made)
        # Somebody may have put a file there since the first look.
        refuse_to_lose(site, venue)
        swap_in(made, site, folder / OLD)
    if folder.exists():
        raise SiteFailed(
            f"The new site stands in {site}. What appeared in the old one while it was built is"
            f" kept in {folder / OLD}: {named(folder / OLD)}."
        )


def make_folders(folder: Path) -> None:
    """Make the folders above a site, open to readers as the site is."""
    missing = [above for above in (folder, *folder.parents) if not above.exists()]
    for above in reversed(missing):
        above.mkdir(exist_ok=True)
        above.chmod(FOLDER_MODE)


def open_to_readers(made: Path) -> None:
    """Let a web server read a site, whatever the author's own files are closed to."""
    made.chmod(FOLDER_MODE)
    for path in made.rglob("*"):
        path.chmod(FOLDER_MODE if path.is_dir() else FILE_MODE)


def complete(made: Path) -> None:
    """
    Refuse to swap in a folder that lacks the first page or the pack: an old site is better than an
    empty one.
    """
    lacking = [name for name in ("index.html", PACK) if not (made / name).is_file()]
    if lacking:
        raise SiteFailed(
            f"The generator wrote no {' and no '.join(lacking)}. The old site is untouched."
        )


def generate(document: Document, site: Path) -> None:
    """
    Run the generator; anything it warns of ends the build, for a warning is a page that leads
    nowhere.
    """
    os.environ.setdefault(NOTICE_OFF, "1")
    from mkdocs.commands.build import build as run
    from mkdocs.exceptions import MkDocsException

    with complaints() as heard, dated(imprint_of(document).on):
        try:
            config = configured(site_dir=str(site))
            config.plugins.run_event("startup", command="build", dirty=False)
            hand_over(config, document)
            run(config)
            config.plugins.run_event("shutdown")
        except (MkDocsException, SystemExit) as failure:
            raise SiteFailed("\n".join(heard) or str(failure)) from None
    if heard:
        raise SiteFailed("\n".join(heard))


def configured(**settings: str) -> "MkDocsConfig":
    """The package's own configuration, with the guides wherever they are."""
    from mkdocs.config import load_config

    return load_config(config_file=str(CONFIGURATION), docs_dir=str(guides_folder()), **settings)


def hand_over(config: "MkDocsConfig", document: Document) -> None:
    """Give the plugin the document that was made already, so that nothing is computed twice."""
    from builder.site.plugin import PackPlugin

    plugin = config.plugins["housepack"]
    if not isinstance(plugin, PackPlugin):
        raise TypeError(f"plugin housepack must be a PackPlugin, got {type(plugin).__name__}")
    plugin.given = document


@contextmanager
def dated(on: str) -> Iterator[None]:
    """
    Let the generator take the revision's date for the date of the build, so that the same revision
    gives the same bytes on any day.
    """
    before = os.environ.get("SOURCE_DATE_EPOCH")
    os.environ["SOURCE_DATE_EPOCH"] = str(
        int(datetime.fromisoformat(on).replace(tzinfo=UTC).timestamp())
    )
    try:
        yield
    finally:
        if before is None:
            del os.environ["SOURCE_DATE_EPOCH"]
        else:
            os.environ["SOURCE_DATE_EPOCH"] = before


class Listener(logging.Handler):
    """Collects the generator's warnings and errors."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.heard: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Keep one message."""
        self.heard.append(record.getMessage())


@contextmanager
def complaints() -> Iterator[list[str]]:
    """The generator's warnings while the block runs, and nothing of them on the terminal."""
    listener, log = Listener(), logging.getLogger("mkdocs")
    spoke = log.propagate
    log.addHandler(listener)
    log.propagate = False
    try:
        yield listener.heard
    finally:
        log.removeHandler(listener)
        log.propagate = spoke


def serve(
    venue: Path, host: str = "127.0.0.1", port: int = 8000, *, tell: Callable[[str], None]
) -> None:
    """
    Serve a venue's site and rebuild it as files change, until interrupted.

    Problems are shown on the pages, and told line by line with ``tell``.
    """
    os.environ.setdefault(NOTICE_OFF, "1")
    from mkdocs.commands.serve import serve as run

    with tempfile.TemporaryDirectory(prefix="housepack-") as folder, telling(tell):
        run(config_file=str(serving_configuration(venue, Path(folder))), dev_addr=f"{host}:{port}")


def ready_to_serve(venue: Path, host: str, port: int) -> None:
    """
    Look whether a venue can be served at an address.

    Raises
    ------
    SiteFailed
        If nobody can be served there.
    Refused
        If there is no venue.
    """
    refuse_no_folder(venue)
    refuse_address(host, port)


def refuse_address(host: str, port: int) -> None:
    """Refuse a port that is none or is taken, and an address that is not of this machine."""
    if not 0 < port < 65536:
        raise SiteFailed(f"{port} is no port. Give one from 1 to 65535 with --port, such as 8000.")
    try:
        found = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)
        family, kind, number, _, address = found[0]
        with socket.socket(family, kind, number) as tried:
            tried.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            tried.bind(address)
    except (OSError, UnicodeError) as failure:
        number_of = getattr(failure, "errno", None)
        if number_of == errno.EADDRINUSE:
            why, advice = "is taken, perhaps by another site that is served", "another with --port"
        elif number_of in (errno.EACCES, errno.EPERM):
            why, advice = "is closed to you", "one above 1023 with --port, such as 8000"
        else:
            why, advice = "is no address of this machine", "another with --host, such as 127.0.0.1"
        raise SiteFailed(f"{host}:{port} {why}. Give {advice}.") from None


class Teller(logging.Handler):
    """Tells what the plugin says, and what else the generator warns of."""

    def __init__(self, tell: Callable[[str], None]) -> None:
        super().__init__()
        self.tell = tell

    def emit(self, record: logging.LogRecord) -> None:
        """Tell one message."""
        if record.name == PLUGIN or record.levelno >= logging.WARNING:
            self.tell(record.getMessage())


@contextmanager
def telling(tell: Callable[[str], None]) -> Iterator[None]:
    """Tell what the generator says while the block runs."""
    teller, log, plugin = Teller(tell), logging.getLogger("mkdocs"), logging.getLogger(PLUGIN)
    spoke, level = log.propagate, plugin.level
    log.addHandler(teller)
    log.propagate = False
    plugin.setLevel(logging.INFO)
    try:
        yield
    finally:
        log.removeHandler(teller)
        log.propagate = spoke
        plugin.setLevel(level)


def serving_configuration(venue: Path, folder: Path) -> Path:
    """
    Write a configuration that serves this venue.

    The generator reads its configuration again for every rebuild, so what is particular to this
    venue must stand in a file.
    """
    path = folder / "mkdocs.yml"
    settings = {
        "INHERIT": str(CONFIGURATION),
        "docs_dir": str(guides_folder()),
        "theme": {"custom_dir": str(CONFIGURATION.with_name("theme"))},
        "plugins": {"housepack": {"venue": str(venue.resolve())}},
    }
    write_whole(path, yaml.safe_dump(settings, allow_unicode=True))
    return path
