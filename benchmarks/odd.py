"""
Odd and large venues: seconds of processor and peak memory of each, against the demo as it is.

Peer: the demo, checked, packed, laid out, rendered and held against every show of the tests, in a
process of its own in the same run. No case may take more than 5 s or 500 MB. Cases: a part of those
of ``tests/sweep.py`` that make a number large, drawn with a seed; a mix of 4800 m x 3000 m;
ten times the stock; ten times the listening areas. ``python -m benchmarks.odd 400 7`` takes 400
cases with seed 7.
"""

import os
import random
import resource
import sys
import time
from collections.abc import Callable, Mapping
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path
from types import ModuleType
from typing import Any

import yaml

from benchmarks.site import larger
from builder.reading.nodes import compose

ROOT = Path(__file__).parent.parent


def module_at(path: Path) -> ModuleType:
    """A module of the tests, which are no installed package."""
    spec = spec_from_file_location(path.stem, path)
    if spec is None or spec.loader is None:
        raise ImportError(f"no module at {path}")
    module = module_from_spec(spec)
    sys.modules[path.stem] = module
    spec.loader.exec_module(module)
    return module


sweep = module_at(ROOT / "tests" / "sweep.py")

MOST_S = 5.0
MOST_MB = 500.0
ENLARGING = ("large", "huge", "beyond")
Data = dict[str, Any]
Measured = tuple[float, float]


def measured(action: Callable[[], object]) -> Measured:
    """Seconds of processor and peak megabytes of an action in a process of its own."""
    read_end, write_end = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(read_end)
        start = time.process_time()
        action()
        peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        os.write(write_end, f"{time.process_time() - start} {peak_mb}".encode())
        os._exit(0)
    os.close(write_end)
    with os.fdopen(read_end) as answer:
        words = answer.read().split()
    os.waitpid(child, 0)
    if len(words) != 2:
        raise RuntimeError("a case ended without an answer")
    return float(words[0]), float(words[1])


def made(venue: str, texts: Mapping[str, str]) -> Callable[[], object]:
    """The making of a venue's texts, nothing remembered."""
    return lambda: sweep.made_of(texts, sweep.folder(venue))


def of_case(case: object) -> Callable[[], object]:
    """The making of one odd venue."""
    return lambda: sweep.outcome(case, remembering=False)


def with_sound(texts: Mapping[str, str], change: Callable[[Data], None]) -> dict[str, str]:
    """A venue's texts with its sound changed."""
    data = compose(texts["sound.yml"], "sound.yml").data
    change(data)
    return {**texts, "sound.yml": yaml.safe_dump(data, sort_keys=False, allow_unicode=True)}


def enlarge_mix(sound: Data) -> None:
    """A mix position of 4800 m x 3000 m."""
    sound["mix_position"].update(width="4800 m", depth="3000 m")


def repeat_areas(sound: Data) -> None:
    """Ten times the areas of the audience, each under a name of its own."""
    sound["audience"] = [
        {**area, "name": f"{area['name']} {copy}"} if copy else area
        for copy in range(10)
        for area in sound["audience"]
    ]


def cases(count: int, seed: int) -> list[tuple[str, Callable[[], object]]]:
    """What is measured, by name."""
    demo = sweep.folder("demo").texts
    built = [
        ("a mix position of 4800 m x 3000 m", with_sound(demo, enlarge_mix)),
        ("ten times the stock", larger(dict(demo), 10)),
        ("ten times the listening areas", with_sound(demo, repeat_areas)),
    ]
    every = [case for case in sweep.venue_cases() if case.change in ENLARGING]
    drawn = random.Random(seed).sample(every, min(count, len(every)))
    return [
        *((name, made("demo", texts)) for name, texts in built),
        *((str(case), of_case(case)) for case in drawn),
    ]


def main(count: int = 200, seed: int = 1) -> None:
    """Print the peer, the heaviest cases, and every case beyond the bounds."""
    sweep.riders()
    peer_s, peer_mb = measured(made("demo", sweep.folder("demo").texts))
    print(f"the demo as it is: {peer_s:.2f} s of processor, {peer_mb:.0f} MB")
    found = [(*measured(action), name) for name, action in cases(count, seed)]
    for seconds, peak_mb, name in sorted(found, reverse=True)[:8]:
        print(f"{seconds / peer_s:5.2f} times the demo, {seconds:.2f} s, {peak_mb:.0f} MB: {name}")
    beyond = [name for seconds, peak_mb, name in found if seconds > MOST_S or peak_mb > MOST_MB]
    print(f"{len(found)} cases, {len(beyond)} beyond {MOST_S:.0f} s or {MOST_MB:.0f} MB")
    for name in beyond:
        print(f"beyond: {name}")


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:3]))
