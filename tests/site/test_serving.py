"""While a crew edits: what is wrong stands where it looks, on the page and in the terminal."""

import logging
import os
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from mkdocs.commands.build import build as run
from mkdocs.config import load_config
from playwright.sync_api import Browser, Page

from builder.document import Document
from builder.reading.problems import Problem, Refused, Where
from builder.site import plugin as plugin_module
from builder.site.build import PLUGIN, telling
from builder.site.problems import problems_html, told
from tests.site.conftest import served
from tests.site.sample import document
from tests.site.visiting import DESK, PHONE
from tests.stock.small import TEXTS, written_to

CHECKOUT = Path(__file__).parents[2]
PROBLEM = Problem(
    Where("power.yml", 14, 12),
    "services[1].rating",
    "<b>400</b>",
    "needs a unit, such as '400 A'",
    "unit-missing",
)
PATIENCE_S = 120


def test_no_problems_are_no_frame() -> None:
    assert problems_html((), pages=True) == ""


def test_what_is_wrong_is_never_markup() -> None:
    frame = problems_html((str(PROBLEM),), pages=True)
    assert "1 problem in the description. The pages show the last state without problems." in frame
    assert "<b>" not in frame


def test_the_terminal_is_told_when_problems_change_and_when_none_is_left() -> None:
    assert told((), ("a", "b"), pages=True) == (
        "a",
        "b",
        "2 problems. The pages show the last state without problems.",
    )
    assert told(("a",), ("a",), pages=True) == ()
    assert told(("a",), (), pages=True) == ("No problems any more. The pages show what you wrote.",)
    assert told((), ("a",), pages=False)[-1] == (
        "1 problem. There are no pages as long as there is one."
    )


def test_what_the_generator_warns_of_is_told_and_what_it_chats_is_not() -> None:
    lines: list[str] = []
    with telling(lines.append):
        logging.getLogger(PLUGIN).info("power.yml:1:1 is odd")
        logging.getLogger("mkdocs.commands.build").info("Building documentation...")
        logging.getLogger("mkdocs.commands.build").warning("a link leads nowhere")
    logging.getLogger(PLUGIN).info("after")
    assert lines == ["power.yml:1:1 is odd", "a link leads nowhere"]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site as it is served while its description has a problem."""
    folder = tmp_path_factory.mktemp("served")
    (folder / "docs").mkdir()
    turns: list[Document | Refused] = [document(), Refused([PROBLEM] * 30)]

    def published(_: Path, __: object) -> Document:
        turn = turns.pop(0)
        if isinstance(turn, Refused):
            raise turn
        return turn

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(plugin_module, "published", published)
        for _ in range(2):
            config = load_config(
                config_file=str(CHECKOUT / "builder" / "site" / "mkdocs.yml"),
                site_dir=str(folder / "site"),
                docs_dir=str(folder / "docs"),
            )
            if len(turns) == 2:
                config.plugins.run_event("startup", command="serve", dirty=False)
            run(config)
    return folder / "site"


@pytest.fixture(scope="module")
def address(folder: Path) -> Iterator[str]:
    """The address of that site."""
    yield from served(folder)


IS_SEEN = """() => {
  const summary = document.querySelector(".problems > summary");
  const box = summary.getBoundingClientRect();
  const middle = document.elementFromPoint(box.left + 40, box.top + box.height / 2);
  return box.top >= 0 && box.bottom <= innerHeight && summary.contains(middle);
}"""
CLEAR_OF_IT = """() => {
  const foot = document.querySelector(".foot").getBoundingClientRect();
  return foot.bottom <= document.querySelector(".problems").getBoundingClientRect().top + 1;
}"""


@contextmanager
def looking(browser: Browser, window: dict[str, int]) -> Iterator[Page]:
    """A page in a window of a size."""
    context = browser.new_context(viewport={"width": window["width"], "height": window["height"]})
    yield context.new_page()
    context.close()


@pytest.mark.browser
@pytest.mark.parametrize("window", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("page", ["rigging.html", "rigging.html#points", "index.html"])
def test_what_is_wrong_is_in_sight_wherever_on_a_page_somebody_looks(
    browser: Browser, address: str, window: dict[str, int], page: str
) -> None:
    with looking(browser, window) as opened:
        opened.goto(f"{address}/{page}")
        for scrolled in ("0", "innerHeight", "document.body.scrollHeight"):
            opened.evaluate(f"scrollTo(0, {scrolled})")
            opened.wait_for_timeout(50)
            assert opened.evaluate(IS_SEEN), scrolled
        assert opened.evaluate(CLEAR_OF_IT), "the end of the page can be read above it"
        opened.click(".problems > summary")
        assert opened.locator(".problems li").first.is_hidden()


@pytest.mark.browser
def test_thirty_problems_leave_half_of_the_window_to_the_page(
    browser: Browser, address: str
) -> None:
    with looking(browser, PHONE) as opened:
        opened.goto(f"{address}/rigging.html")
        box = opened.locator(".problems").bounding_box()
        assert box is not None
        assert box["height"] <= PHONE["height"] / 2
        opened.locator(".problems li").last.scroll_into_view_if_needed()
        assert opened.evaluate(IS_SEEN)


class Watching:
    """Stands for the generator's server, and keeps what it is to watch."""

    def __init__(self) -> None:
        self.watched: list[str] = []

    def watch(self, path: str) -> None:
        """Keep a path."""
        self.watched.append(path)


@pytest.mark.parametrize("edited", [True, False])
def test_what_was_saved_before_the_watch_began_is_not_missed(tmp_path: Path, edited: bool) -> None:
    venue, server, built = written_to(tmp_path / "venue"), Watching(), []
    plugin = plugin_module.PackPlugin()
    plugin.load_config({"venue": str(venue)})
    plugin.on_startup(command="serve", dirty=False)
    config = load_config(
        config_file=str(CHECKOUT / "builder" / "site" / "mkdocs.yml"), docs_dir=str(tmp_path)
    )
    plugin.on_config(config)
    if edited:
        (venue / "stage.yml").write_text(TEXTS["stage.yml"] + "# Measured.\n", "utf-8")
    plugin.on_serve(server, config=config, builder=lambda: built.append("again"))  # type: ignore[arg-type]
    assert server.watched == [str(venue)]
    assert built == (["again"] if edited else [])


@pytest.fixture
def serving(tmp_path: Path) -> Iterator[tuple[Path, Callable[[], str]]]:
    """
    The small venue while the command serves it, and what the terminal shows so far. Output goes to
    files, so that no pipe fills up.
    """
    venue, shown = written_to(tmp_path / "venue"), tmp_path / "terminal.txt"
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = str(free.getsockname()[1])
    words = [sys.executable, "-m", "builder.cli", "serve", "--venue", str(venue), "--port", port]
    with shown.open("w", encoding="utf-8") as terminal:
        running = subprocess.Popen(
            words, cwd=CHECKOUT, stdout=terminal, stderr=terminal, env={**os.environ}
        )
    try:
        until(lambda: answers(port), "it serves")
        yield venue, lambda: shown.read_text(encoding="utf-8")
    finally:
        running.terminate()  # a shell's background job ignores the interrupt key
        running.wait(PATIENCE_S)


def answers(port: str) -> bool:
    """Whether somebody listens at a port."""
    with socket.socket() as asking:
        return asking.connect_ex(("127.0.0.1", int(port))) == 0


def until(done: Callable[[], bool], what: str) -> None:
    """Wait for something as long as a slow machine may take."""
    end = time.monotonic() + PATIENCE_S
    while not done():
        assert time.monotonic() < end, what
        time.sleep(0.2)


def test_the_terminal_tells_a_mistake_as_it_is_saved_and_that_it_is_mended(
    serving: tuple[Path, Callable[[], str]],
) -> None:
    venue, shown = serving
    stage = venue / "stage.yml"
    stage.write_text(TEXTS["stage.yml"].replace("clear_height: 6 m", "clear_height: 6"), "utf-8")
    until(lambda: "1 problem." in shown(), "the mistake is told")
    assert "stage.yml:13:19 decks[1].clear_height: '6' needs a unit" in shown()
    stage.write_text(TEXTS["stage.yml"], "utf-8")
    until(lambda: "No problems any more." in shown(), "the mending is told")
    assert "Traceback" not in shown()
