"""
Run every benchmark in turn: ``make bench``. Each prints ratios against a stated peer measured in
the same run.
"""

import importlib
import pkgutil

import benchmarks


def main() -> None:
    """Run each module of this folder that has a ``main``."""
    for module in pkgutil.iter_modules(benchmarks.__path__):
        if module.name != "__main__":
            print(f"\n== {module.name}")
            importlib.import_module(f"benchmarks.{module.name}").main()


if __name__ == "__main__":
    main()
