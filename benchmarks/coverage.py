"""
How fast the sound field is: the shipped way, the plain numpy way and a plain C loop, in one run.

    python benchmarks/coverage.py [--points 20000 100000] [--repeat 2]

Rates are points × sources × lines each second. Wall clock depends on what else the machine is
doing; processor time much less. Read the ratios. The shipped way works in double precision on two
threads; 'single' is the same in single precision. The plain ways use one thread.
"""

import argparse
import ctypes
import math
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

START = time.perf_counter()

import numpy as np  # noqa: E402

from builder.formulas import field as sound  # noqa: E402
from builder.formulas.band_lines import Band, third_octaves  # noqa: E402
from builder.formulas.field_tables import REALS, Precision  # noqa: E402
from builder.formulas.loudspeakers import Loudspeaker  # noqa: E402

IMPORTED = time.perf_counter()
SOURCES = 58
Seconds = tuple[float, float]
NAIVE_EVERY = 6
"""The plain ways are timed on every sixth line; they cost the same on each."""

C_LOOP = r"""
#include <math.h>
#define MOST 64
/* Loops apart, so that the compiler calls its vectorised sine, cosine and exponential in each. */
void energy(long points, long sources, const double *r, const double *gain, double k, double loss, double *out) {
    double phase[MOST], size[MOST], cosine[MOST], sine[MOST];
    for (long p = 0; p < points; p++) {
        const double *d = r + p * sources, *g = gain + p * sources;
        double re = 0, im = 0;
        for (long s = 0; s < sources; s++) phase[s] = -k * d[s];
        for (long s = 0; s < sources; s++) size[s] = g[s] * exp(-loss * d[s]);
        for (long s = 0; s < sources; s++) cosine[s] = cos(phase[s]);
        for (long s = 0; s < sources; s++) sine[s] = sin(phase[s]);
        for (long s = 0; s < sources; s++) { re += size[s] * cosine[s]; im += size[s] * sine[s]; }
        out[p] += re * re + im * im;
    }
}
"""  # noqa: E501
C_OPTIONS = ("-O3", "-march=native", "-ffast-math", "-mprefer-vector-width=512", "-shared", "-fPIC")


def rig() -> list[Loudspeaker]:
    """Two arrays of fifteen boxes and a row of 28 points, all of which play every band."""
    coverage = ((250.0, 120.0), (1000.0, 100.0), (16_000.0, 80.0))
    boxes = []
    for side in (-8.0, 8.0):
        for i in range(15):
            boxes.append(
                Loudspeaker(
                    0,
                    side,
                    10 - 0.29 * i,
                    elevation_deg=-1 - 0.25 * i * i,
                    width_m=0.7,
                    height_m=0.28,
                    coverage_deg=coverage,
                )
            )
    row = [
        Loudspeaker(1, 0.6 * i - 8.1, 0.5, width_m=0.5, height_m=0.5, delay_ms=0.05 * abs(i - 13.5))
        for i in range(28)
    ]
    return boxes + row


def audience(count: int) -> np.ndarray:
    """A grid of ears over 80 m by 60 m."""
    across = round(math.sqrt(count * 0.75))
    x, y = np.meshgrid(
        np.linspace(5, 85, -(-count // across)), np.linspace(-30, 30, across), indexing="ij"
    )
    return np.column_stack([x.ravel(), y.ravel(), np.full(x.size, 1.5)])[:count]


def timed(work: Callable[[], object]) -> Seconds:
    """Wall clock and processor time of one run. [s]"""
    wall, cpu = time.perf_counter(), time.process_time()
    work()
    return time.perf_counter() - wall, time.process_time() - cpu


def shipped(
    points: np.ndarray, bands: tuple[Band, ...], precision: Precision = "double"
) -> Seconds:
    """Seconds for the whole field by the shipped way, tables and directions included."""
    return timed(lambda: sound.field(rig(), points, bands=bands, precision=precision))


def numpy_lines(points: np.ndarray, lines_hz: np.ndarray, speed: float) -> Seconds:
    """
    Seconds for lines as one complex exponential for every point and source; directivity given.
    """
    distance, gain = _distances(points)
    energy = np.zeros(len(points))

    def lines() -> None:
        for frequency in lines_hz:
            energy[:] += (
                np.abs(
                    (gain * np.exp(-(0.001 + 2j * np.pi * frequency / speed) * distance)).sum(
                        axis=1
                    )
                )
                ** 2
            )

    return timed(lines)


def c_lines(points: np.ndarray, lines_hz: np.ndarray, speed: float) -> Seconds | None:
    """Seconds for the same in C on one core, or None without a compiler."""
    compiler = shutil.which("gcc")
    if compiler is None:
        return None
    distance, gain = _distances(points)
    energy = np.zeros(len(points))
    with tempfile.TemporaryDirectory() as folder:
        source, library = Path(folder) / "loop.c", Path(folder) / "loop.so"
        source.write_text(C_LOOP, encoding="utf-8")
        subprocess.run([compiler, *C_OPTIONS, str(source), "-o", str(library), "-lm"], check=True)
        loop = ctypes.CDLL(str(library)).energy
        address, real = ctypes.c_void_p, ctypes.c_double

        def lines() -> None:
            for frequency in lines_hz:
                k = math.tau * float(frequency) / speed
                pointers = (address(a.ctypes.data) for a in (distance, gain))
                loop(
                    ctypes.c_long(len(points)),
                    ctypes.c_long(SOURCES),
                    *pointers,
                    real(k),
                    real(0.001),
                    address(energy.ctypes.data),
                )

        return timed(lines)


def best(work: Callable[[], object], repeat: int) -> float:
    """Least wall clock of several runs. [s]"""
    times = []
    for _ in range(repeat):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def _distances(points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    places = np.array([[s.x_m, s.y_m, s.z_m] for s in rig()])
    distance = np.sqrt(((points[:, None, :] - places[None]) ** 2).sum(axis=2))
    return distance, 1 / distance


def report(points: np.ndarray, bands: tuple[Band, ...], repeat: int) -> None:
    """Time all ways on one set of lines, in turns, and print the best of each."""
    lines_hz = np.concatenate([band.lines_hz for band in bands])
    some, speed = lines_hz[::NAIVE_EVERY], sound.ROOM_AIR.speed_m_s
    ways: dict[str, tuple[Callable[[], Seconds | None], int]] = {
        "shipped": (lambda: shipped(points, bands), len(lines_hz)),
        "single": (lambda: shipped(points, bands, "single"), len(lines_hz)),
        "numpy": (lambda: numpy_lines(points, some, speed), len(some)),
        "C": (lambda: c_lines(points, some, speed), len(some)),
    }
    runs = [{way: work() for way, (work, _) in ways.items()} for _ in range(repeat)]
    print(f"\n{len(points)} points × {SOURCES} sources × {len(lines_hz)} lines")
    rates: dict[str, Seconds] = {}
    for way, (_, count) in ways.items():
        found = [run[way] for run in runs]
        if found[0] is None:
            print(f"  {way}: no gcc on this machine")
            continue
        wall, cpu = (min(seconds[kind] for seconds in found if seconds) for kind in (0, 1))
        work = len(points) * SOURCES * count
        rates[way] = work / wall, work / cpu
        print(
            f"  {way:8s} {wall:6.2f} s for {count} lines, {work / wall / 1e6:7.1f} million a second"
        )
    for way in ("shipped", "single"):
        over = {
            peer: [rates[way][kind] / rates[peer][kind] for kind in (0, 1)]
            for peer in ("numpy", "C")
            if peer in rates
        }
        told = "; ".join(
            f"{clock:.1f} × {peer} by the clock, {cpu:.1f} × by processor time"
            for peer, (clock, cpu) in over.items()
        )
        print(f"  {way} is {told}")


def cold(points: int, precision: Precision) -> None:
    """One field in this process from a cold start; print seconds and memory."""
    took, _ = shipped(audience(points), third_octaves(), precision)
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(
        f"cold, {points} points, {precision}: import {IMPORTED - START:.2f} s, field of 366 lines"
        f" {took:.2f} s, peak memory {peak_mb:.0f} MB"
    )


def main() -> None:
    """Run everything."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--points", type=int, nargs="*", default=[20_000, 100_000])
    parser.add_argument("--repeat", type=int, default=2)
    parser.add_argument("--cold", choices=REALS, help="only one field from a cold start")
    chosen = parser.parse_args()
    for count in chosen.points:
        if chosen.cold:
            cold(count, chosen.cold)
            continue
        for precision in REALS:
            subprocess.run(
                [sys.executable, __file__, "--cold", precision, "--points", str(count)], check=True
            )
        points = audience(count)
        for bands in (third_octaves(intervals=4), third_octaves()):
            report(points, bands, chosen.repeat)
    if not chosen.cold:
        two_thousand = audience(2000)
        print(
            "\n2,000 points × 30 sources × 366 lines:"
            f" {best(lambda: sound.field(rig()[:30], two_thousand), 5):.3f} s"
        )


if __name__ == "__main__":
    main()
