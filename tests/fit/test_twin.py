"""The check in Python and in JavaScript, in a real browser: thousands of riders and packs, and not one byte of difference."""

import json
import os
from collections import Counter
from pathlib import Path

import pytest
from playwright.sync_api import Error as BrowserError
from playwright.sync_api import sync_playwright

from builder.fit.interpreter import fit
from builder.fit.verdicts import RANK
from tests.fit.pairs import a_pair

PAIRS = 2400
AT_ONCE = 300
SCRIPTS = Path(__file__).parents[2] / "builder" / "site" / "theme" / "assets" / "fit"
ORDER = ("wording", "verdicts", "comparing", "clock", "loudness", "way_in", "placing", "show_day", "interpreter")
CHROMIUM = Path("/usr/bin/chromium")
SORTED_JSON = """(pairs) => {
  const sorted = (value) => Array.isArray(value) ? value.map(sorted)
    : value !== null && typeof value === "object" ? Object.fromEntries(Object.keys(value).sort().map((key) => [key, sorted(value[key])])) : value;
  return JSON.parse(pairs).map(([pack, riders]) => JSON.stringify(sorted(housefit.check(pack, riders))));
}"""


def in_python(seed: int) -> str:
    """A pair's result as JSON."""
    return json.dumps(fit(*a_pair(seed)), sort_keys=True, ensure_ascii=False, separators=(",", ":"))


def in_the_browser() -> list[str]:
    """Every pair's result as JSON, from the scripts that the site serves."""
    with sync_playwright() as playwright:
        try:
            browser = playwright.chromium.launch(executable_path=CHROMIUM if CHROMIUM.exists() else None, args=["--no-sandbox", "--disable-gpu"])
        except BrowserError as failure:
            if os.environ.get("HOUSEPACK_BROWSER") == "required":
                pytest.fail(f"HOUSEPACK_BROWSER=required, but Chromium does not start: {failure.message.splitlines()[0]}")
            pytest.skip("Chromium is not installed; HOUSEPACK_BROWSER=required makes this a failure.")
        page = browser.new_page()
        for name in ORDER:
            page.add_script_tag(content=(SCRIPTS / f"{name}.js").read_text("utf-8"))
        found: list[str] = []
        for start in range(0, PAIRS, AT_ONCE):
            # The pairs travel as text: the browser's own reader of JSON makes the numbers, as it does with a published pack.
            found += page.evaluate(SORTED_JSON, json.dumps([a_pair(seed) for seed in range(start, start + AT_ONCE)]))
        browser.close()
    return found


@pytest.mark.browser
def test_python_and_javascript_agree_to_the_byte() -> None:
    expected = [in_python(seed) for seed in range(PAIRS)]
    different = [seed for seed, (ours, theirs) in enumerate(zip(expected, in_the_browser(), strict=True)) if ours != theirs]
    assert different == []


def test_the_pairs_reach_every_verdict_and_every_kind_of_requirement() -> None:
    words: Counter[str] = Counter()
    sorts: Counter[tuple[str, str]] = Counter()
    for seed in range(600):
        pack, riders = a_pair(seed)
        verdicts = fit(pack, riders)["verdicts"]
        words.update(found["verdict"] for found in verdicts)
        sorts.update((found["title"].split()[-1], found["verdict"]) for found in verdicts)
    assert set(words) == set(RANK)
    assert min(words.values()) > 100
    for sort in ("power", "trucks", "ends", "level"):
        assert {word for name, word in sorts if name == sort} >= {"ask", "short"}
        assert {word for name, word in sorts if name == sort} & {"fits", "fits, with a note"}
