"""
Processes that stand ready in a copy of the tree, with all imported that no small fault changes, so
that each run of tests starts in a tenth of a second and sees nothing of the one before.
"""

import compileall
import gc
import os
import resource
import shutil
import signal
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from importlib import import_module
from multiprocessing import get_context
from multiprocessing.connection import Connection
from pathlib import Path
from queue import Queue
from typing import Any, TypeVar

from importing import modules_apart, name_of
from mutating import files_of

Answer = TypeVar("Answer")
SPAWNING = get_context("spawn")
COPIED = ("builder", "tests", "docs", "venue", "schemas", "pyproject.toml", "CHANGELOG.md")
WARM = (
    "_hypothesis_pytestplugin",
    "click",
    "contourpy",
    "jsonschema",
    "mkdocs.commands.build",
    "numpy",
    "playwright.sync_api",
    "pydantic",
    "scipy.optimize",
    "shapely",
    "xdist.plugin",
    "xdist.scheduler",
    "yaml",
)
"""What others wrote, imported once for all mutants."""
SLOWEST = 20
"""How many times as long a process may take by the clock on a busy machine."""
SEED = "1"
"""The seed of the laws, so that a mutant meets the cases that were recorded."""


def copy_of_the_tree(root: Path, folder: Path) -> Path:
    """A copy in which files may be broken."""
    folder.mkdir()
    for source in (root / name for name in COPIED):
        if source.is_dir():
            ignored = shutil.ignore_patterns("__pycache__")
            shutil.copytree(source, folder / source.name, ignore=ignored)
        elif source.exists():
            shutil.copy2(source, folder / source.name)
    for name in ("builder", "tests"):
        compileall.compile_dir(folder / name, quiet=2)
    return folder


class Worker:
    """A copy of the tree and a process that stands ready in it: see `serve`."""

    def __init__(self, tree: Path, paths: list[str]) -> None:
        self.tree = tree
        self.connection, theirs = SPAWNING.Pipe()
        apart = modules_apart(tree, paths)
        room = [name_of(tree / path, tree) for path in paths]
        self.process = SPAWNING.Process(target=serve, args=(str(tree), apart, room, theirs))
        self.process.start()
        theirs.close()

    def status_of(self, action: Callable[..., None], *arguments: object, seconds: int) -> object:
        """The exit status of an action in a process of its own; None where it had to be ended."""
        self.connection.send((action, arguments, seconds))
        return self.connection.recv()

    def end(self) -> None:
        """Let the process end."""
        self.connection.send(None)
        self.process.join()


@contextmanager
def workers_in(folder: Path, root: Path, room: str, count: int) -> Iterator[list[Worker]]:
    """So many workers, each in a tree of its own, with all imported that the room cannot reach."""
    trees = [copy_of_the_tree(root, folder / str(number)) for number in range(count)]
    workers = [Worker(tree, files_of(root, room)) for tree in trees]
    try:
        yield workers
    finally:
        for worker in workers:
            worker.end()


def each_by_a_worker(
    action: Callable[[Worker, Any], Answer], cases: Iterable[Any], workers: list[Worker]
) -> list[Answer]:
    """What the workers answer, each at one case at a time, in the order of the cases."""
    free: Queue[Worker] = Queue()
    for worker in workers:
        free.put(worker)

    def by_a_free_one(case: object) -> Answer:
        worker = free.get()
        try:
            return action(worker, case)
        finally:
            free.put(worker)

    with ThreadPoolExecutor(len(workers)) as pool:
        return list(pool.map(by_a_free_one, cases))


def serve(tree: str, apart: list[str], room: list[str], connection: Connection) -> None:
    """
    Stand ready in a copy of the tree, with all imported that no mutant changes, and carry out one
    action after another, each in a fork, so that none sees what another one left behind.

    Raises
    ------
    ValueError
        If a module of the room is imported already, for then no mutant of it would be run.
    """
    begin(Path(tree))
    for name in (*WARM, *apart):
        import_module(name)
    if early := sorted(set(room) & set(sys.modules)):
        raise ValueError(f"modules of the room are imported too early: {early}")
    gc.freeze()
    while (asked := connection.recv()) is not None:
        action, arguments, seconds = asked
        child = os.fork()
        if child == 0:
            os.setsid()
            resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds + 1))
            status = 70
            try:
                status = action(*arguments)
            finally:
                os._exit(status)
        connection.send(status_within(child, seconds))


def status_within(child: int, seconds: int) -> int | None:
    """
    The exit status of a process; None where it was ended, with all that it started: it took more
    than these seconds of a processor, or too many times as long by the clock, asleep.
    """
    last = time.monotonic() + SLOWEST * seconds
    while time.monotonic() < last:
        ended, status = os.waitpid(child, os.WNOHANG)
        if ended:
            code = os.waitstatus_to_exitcode(status)
            return None if code in (-signal.SIGXCPU, -signal.SIGKILL) else code
        time.sleep(0.01)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return None


def begin(tree: Path) -> None:
    """Make this process one of the tree's own, silent, with the laws' seed."""
    nothing = os.open(os.devnull, os.O_RDWR)
    for stream in (0, 1, 2):
        os.dup2(nothing, stream)
    root = str(Path(__file__).parents[2])
    sys.path[:] = [str(tree), *(place for place in sys.path if place not in (root, ""))]
    os.chdir(tree)
    os.environ["HOUSEPACK_SEED"] = SEED
    os.environ["HOUSEPACK_COLD"] = "1"
