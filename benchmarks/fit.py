"""
How long a crew waits for ``housepack --help`` and for a show day of two acts against a pack file, start-up included.

Run with ``python benchmarks/fit.py``. Peer: ``python -c 'import click'``, which no command line built on it can be faster than.
"""

import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parent.parent
ACTS = (str(ROOT / "tests" / "riders" / "theatre.yml"), str(ROOT / "tests" / "riders" / "club.yml"))
OURS = (sys.executable, "-m", "builder.cli")
RUNS = 5


def best_s(words: tuple[str, ...]) -> float:
    """The shortest of a few runs: noise only ever adds. A show that falls short exits with 1, so the status is not looked at."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        subprocess.run(words, cwd=ROOT, capture_output=True, check=False)
        times.append(time.perf_counter() - start)
    return min(times)


def main() -> None:
    """Print each time and its ratio to the peer."""
    peer_s = best_s((sys.executable, "-c", "import click"))
    print(f"python -c 'import click': {peer_s:.2f} s")
    with tempfile.TemporaryDirectory() as folder:
        pack = str(Path(folder) / "pack.json")
        subprocess.run((*OURS, "pack", "--venue", "venue", "--to", pack), cwd=ROOT, capture_output=True, check=True)
        cases = {
            "housepack --help": ("--help",),
            "housepack fit, two acts, pack file": ("fit", *ACTS, "--pack", pack),
            "housepack fit, two acts, venue's folder": ("fit", *ACTS, "--venue", "venue"),
        }
        for name, words in cases.items():
            taken_s = best_s((*OURS, *words))
            print(f"{name}: {taken_s:.2f} s, {taken_s / peer_s:.1f} times the peer")


if __name__ == "__main__":
    main()
