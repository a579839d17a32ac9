"""
How long a crew waits for ``housepack --help`` and for a show day of two acts against a pack file,
start-up included.

And what a stage plot of a hundred turned rectangles, each over its neighbours, adds to that: a
rider may come from anybody.

Run with ``python benchmarks/fit.py``. Peer: ``python -c 'import click'``, which no command line
built on it can be faster than.
"""

import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parent.parent
ACTS = (str(ROOT / "tests" / "riders" / "theatre.yml"), str(ROOT / "tests" / "riders" / "club.yml"))
CROWD = 100
OURS = (sys.executable, "-m", "builder.cli")
RUNS = 5


def best_s(words: tuple[str, ...]) -> float:
    """
    The shortest of a few runs: noise only ever adds.

    A show that falls short exits with 1, so the status is not looked at.
    """
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        subprocess.run(words, cwd=ROOT, capture_output=True, check=False)
        times.append(time.perf_counter() - start)
    return min(times)


def crowded() -> str:
    """
    A rider with a stage plot of rectangles of 1.8 m by 1.6 m, ten by ten at 1.5 m and 0.95 m, each
    turned by 7 degrees more than the last.
    """
    lines = ["act: Crowd", "plot:"]
    for index in range(CROWD):
        across_m, depth_m = (index % 10) * 1.5 - 7, index // 10 * 0.95 + 0.7
        spot = (
            f"{{across: {abs(across_m):.2f} m {'SL' if across_m > 0 else 'SR'}, depth:"
            f" {depth_m:.2f} m US}}"
        )
        lines.append(
            f"  - {{name: R{index}, width: 1.8 m, depth: 1.6 m, turned: {7 * index % 360} deg, at:"
            f" {spot}}}"
        )
    return "\n".join(lines) + "\n"


def main() -> None:
    """Print each time and its ratio to the peer."""
    peer_s = best_s((sys.executable, "-c", "import click"))
    print(f"python -c 'import click': {peer_s:.2f} s")
    with tempfile.TemporaryDirectory() as folder:
        pack = str(Path(folder) / "pack.json")
        subprocess.run(
            (*OURS, "pack", "--venue", "venue", "--to", pack),
            cwd=ROOT,
            capture_output=True,
            check=True,
        )
        crowd = Path(folder) / "crowd.yml"
        crowd.write_text(crowded(), "utf-8")
        cases = {
            "housepack --help": ("--help",),
            "housepack fit, two acts, pack file": ("fit", *ACTS, "--pack", pack),
            "housepack fit, two acts, venue's folder": ("fit", *ACTS, "--venue", "venue"),
            f"housepack fit, a plot of {CROWD} rectangles, pack file": (
                "fit",
                str(crowd),
                "--pack",
                pack,
            ),
        }
        for name, words in cases.items():
            taken_s = best_s((*OURS, *words))
            print(f"{name}: {taken_s:.2f} s, {taken_s / peer_s:.1f} times the peer")


if __name__ == "__main__":
    main()
