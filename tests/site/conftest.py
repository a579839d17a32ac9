"""One built sample site for all tests that look at it."""

import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest

from builder.files import published
from builder.site import build as building
from builder.site.build import build_document
from tests.site.sample import document
from tests.site.visiting import own_guides

ROOT = Path(__file__).parents[2]
GUIDE = """# How to read a pack

Figures are planning figures. See [the points](rigging.md#p07).

| word | means | and what it means when the cell is long enough to need a second line on a phone |
|---|---|---|
| trim | the height of what hangs | 0123456789012345678901234567890123456789 |

```text
housepack check --venue a-folder-with-a-name-that-is-longer-than-any-phone-is-wide-in-this-type
```
"""


@pytest.fixture(scope="session", autouse=True)
def guides(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """
    Guides of the sample's own, so that these tests do not depend on what the project's guides say
    today.
    """
    folder = tmp_path_factory.mktemp("guides")
    (folder / "read-a-pack.md").write_text(GUIDE, "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(building, "guides_folder", lambda: folder)
        yield folder


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample site's folder."""
    site = tmp_path_factory.mktemp("built") / "site"
    build_document(document(), site)
    return site


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """
    The demo's whole site with the project's own guides, built once for all tests that look at it.
    """
    site = tmp_path_factory.mktemp("whole-demo") / "site"
    with own_guides():
        build_document(published(ROOT / "venue"), site)
    return site


@pytest.fixture(scope="session")
def demo_over_http(demo: Path) -> Iterator[str]:
    """The demo's address on a server."""
    yield from served(demo)


@pytest.fixture(params=["http", "file"])
def where(request: pytest.FixtureRequest, demo: Path, demo_over_http: str) -> str:
    """The demo's address, once on a server and once in a folder."""
    return demo_over_http if request.param == "http" else demo.as_uri()


class Silent(SimpleHTTPRequestHandler):
    """
    Serves files without a word, and so that a browser keeps none: times of files are told to the
    second, and a site that is built twice within one would look unchanged.
    """

    def end_headers(self) -> None:
        """Say that nothing is to be kept."""
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def log_message(self, *_: object) -> None:
        """Say nothing."""


def served(folder: Path) -> Iterator[str]:
    """A folder over http, at the address given."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Silent, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_address[1]}"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def over_http(built: Path) -> Iterator[str]:
    """The sample site's address on a server."""
    yield from served(built)


@pytest.fixture(scope="session")
def over_file(built: Path) -> str:
    """The sample site's address in a folder."""
    return built.as_uri()


@pytest.fixture(scope="session", params=["http", "file"])
def address(request: pytest.FixtureRequest) -> str:
    """The sample site's address, once on a server and once in a folder."""
    return str(request.getfixturevalue(f"over_{request.param}"))
