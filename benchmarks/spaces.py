"""
Ten spaces against one: the pack of a house of ten stages, and a show judged in each, as ratios to
the same house with one of them.
"""

from pathlib import Path
from time import process_time

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pipeline import document_of, pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of

ROOT = Path(__file__).parent.parent
QUARRY = ROOT / "tests" / "venues" / "quarry"
RIDER = ROOT / "tests" / "riders" / "theatre.yml"
HOUSE = "house.yml"
MANY = 10
REPEATS = 3


def house_of(count: int) -> dict[str, str]:
    """A house whose stages are so many copies of one."""
    texts = read_folder(QUARRY).texts
    names = [f"Field {number}" for number in range(1, count + 1)]
    spaces = "\n".join(f"  - {{name: {name}}}" for name in names)
    found = {HOUSE: f"{texts[HOUSE]}\nspaces:\n{spaces}\n"}
    for number in range(1, count + 1):
        found |= {
            f"spaces/field-{number}/{file}": text for file, text in texts.items() if file != HOUSE
        }
    return found


def seconds(texts: dict[str, str]) -> tuple[float, float, float]:
    """Processor time of the pack, of its pages, and of a show that names no space. [s]"""
    times = []
    for _ in range(REPEATS):
        start = process_time()
        pack = pack_of(venue_of(texts))
        made = process_time()
        document_of(pack)
        laid = process_time()
        rider = rider_of(RIDER.read_text("utf-8"), file=RIDER.name, rules=RULES)
        record = fit_record(pack)
        ready = process_time()
        fit(record, [rider])
        times.append((made - start, laid - made, process_time() - ready))
    first, second, third = zip(*times, strict=True)
    return min(first), min(second), min(third)


def main() -> None:
    """Print the three ratios."""
    one, many = seconds(house_of(1)), seconds(house_of(MANY))
    for what, small, large in zip(("pack", "pages", "show"), one, many, strict=True):
        print(
            f"{what}: {MANY} spaces {large:.2f} s, one {small:.2f} s: {large / small:.1f} times"
            f" (at most {MANY + 1})"
        )


if __name__ == "__main__":
    main()
