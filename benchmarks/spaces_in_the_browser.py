"""
A show against 64 arrangements in a real browser: the time from a key to its verdicts on 'Check your
show', in a house of sixteen spaces with four configurations each, beside the same house with one
space of one configuration. The aim is 100 ms.

Needs Chromium. Run with ``python -m benchmarks.spaces_in_the_browser``.
"""

import shutil
import tempfile
from pathlib import Path
from statistics import median

from playwright.sync_api import Page, sync_playwright

from builder.files import published, read_folder
from builder.site.build import build_document

ROOT = Path(__file__).parent.parent
QUARRY = ROOT / "tests" / "venues" / "quarry"
RIDERS = (None, ROOT / "tests" / "riders" / "club.yml", ROOT / "tests" / "riders" / "theatre.yml")
SPACES, CONFIGURATIONS = 16, 4
AIM_MS = 100
KEYS = 15
TIMED = """(node) => {
  const times = [];
  for (let number = 0; number < %d; number += 1) {
    node.value = `${20 + number} ft`;
    const start = performance.now();
    node.dispatchEvent(new Event("input", { bubbles: true }));
    times.push(performance.now() - start);
  }
  return times;
}"""


def house_of(spaces: int, configurations: int) -> dict[str, str]:
    """A house whose stages are so many copies of one, each with so many configurations."""
    texts = dict(read_folder(QUARRY).texts)
    house = texts.pop("house.yml")
    names = [f"Lawn {number}" for number in range(1, configurations + 1)]
    more = "".join(
        f"  - {{name: {name}, audience: standing, capacity: {3000 + 10 * number}}}\n"
        for number, name in enumerate(names)
    )
    house = house.replace("configurations:\n", f"configurations:\n{more}", 1)
    house = f"{house}\nspaces:\n" + "".join(
        f"  - {{name: Field {number}}}\n" for number in range(1, spaces + 1)
    )
    found = {"house.yml": house}
    for number in range(1, spaces + 1):
        for file, text in texts.items():
            stands = ", ".join(["Lawn open", *names])
            found[f"spaces/field-{number}/{file}"] = text.replace(
                "configurations: [Lawn open]", f"configurations: [{stands}]"
            )
    return found


def site_of(texts: dict[str, str], folder: Path) -> None:
    """The site of a house, in a folder."""
    venue = folder / "venue"
    for path, text in texts.items():
        (venue / path).parent.mkdir(parents=True, exist_ok=True)
        (venue / path).write_text(text, "utf-8")
    build_document(published(venue), folder / "site")


def times_ms(page: Page, site: Path, rider: Path | None) -> float:
    """The median time from a key to all verdicts, with a rider in the form. [ms]"""
    page.goto(f"{site.as_uri()}/check.html")
    if rider:
        page.set_input_files(".check-file", rider)
        page.locator("#check-state .tag").wait_for()
    field = page.get_by_label("Stage width, clear", exact=True)
    page.locator("summary", has_text="Stage").first.evaluate(
        "(node) => { node.parentElement.open = true; }"
    )
    field.fill("40 ft")
    page.locator("#check-state .tag").wait_for()
    return median(field.evaluate(TIMED % KEYS))


def main() -> None:
    """Print the times and what each is beside the house of one space."""
    with (
        sync_playwright() as play,
        tempfile.TemporaryDirectory() as one,
        tempfile.TemporaryDirectory() as many,
    ):
        browser = play.chromium.launch(executable_path=shutil.which("chromium"))
        site_of(house_of(1, 0), Path(one))
        site_of(house_of(SPACES, CONFIGURATIONS - 1), Path(many))
        page = browser.new_page()
        for rider in RIDERS:
            small = times_ms(page, Path(one) / "site", rider)
            large = times_ms(page, Path(many) / "site", rider)
            print(
                f"{rider.name if rider else 'one need'}: {SPACES * CONFIGURATIONS} arrangements"
                f" {large:.0f} ms, one {small:.1f} ms: {large / small:.0f} times"
                f" (the aim is {AIM_MS} ms)"
            )
        browser.close()


if __name__ == "__main__":
    main()
