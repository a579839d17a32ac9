"""Recorded calls of the check, made again by the compiled code in a real browser."""

import json
from collections.abc import Iterator, Mapping
from functools import cache

from playwright.sync_api import Browser

from builder.compiling.program import compiled
from builder.site.engine import runtime, source_of
from tests.fit.recording import FAULT, Call, Recorded, compiled_functions, result_text

OFFERED_AS = "replayed"
MOST_AT_ONCE = 4_000_000
"""How many characters travel to the browser at once."""
KEEP = """(texts) => {
  const numbers = { inf: Infinity, "-inf": -Infinity, nan: NaN, "-0": -0 };
  const read = (_, value) => (typeof value === "string" && value[0] === "\\u0001" ? numbers[value.slice(1)] : value);
  window.kept = window.kept || [];
  for (const text of texts) kept.push(JSON.parse(text, text.includes("\\\\u0001") ? read : undefined));
}"""  # noqa: E501
REPLAY = """([calls, fault]) => {
  const numbers = { inf: Infinity, "-inf": -Infinity, nan: NaN, "-0": -0 };
  const name = (value) => "\\u0001" + Object.keys(numbers).find((each) => Object.is(numbers[each], value));
  const write = (_, value) => (typeof value === "number" && (!Number.isFinite(value) || Object.is(value, -0)) ? name(value) : value);
  const given = (part) => (typeof part === "number" ? kept[part] : Object.fromEntries(part.map(([key, at]) => [key, kept[at]])));
  return calls.map(([called, parts]) => {
    try {
      return JSON.stringify(replayed[called](...parts.map(given)), write);
    } catch (failure) {
      return failure.constructor === Error ? JSON.stringify(fault) : called + ": " + failure;
    }
  });
}"""  # noqa: E501


@cache
def replay_script() -> str:
    """The page's scripts as one, with every function of their modules under its full name."""
    offers = {name: name for name in sorted(compiled_functions())}
    return compiled(
        offers, source_of=source_of, runtime=runtime(), global_name=OFFERED_AS, packed=True
    )


def differences(browser: Browser, script: str, recorded: Recorded) -> list[str]:
    """The calls that do not give the same in the browser, each with both results."""
    theirs = replayed(browser, script, recorded)
    return [
        f"{called_words(call, recorded.texts)}: {ours[:300]} in Python, {there[:300]} in a browser"
        for (call, ours), there in zip(recorded.results.items(), theirs, strict=True)
        if sorted_text(there) != ours
    ]


def replayed(browser: Browser, script: str, recorded: Recorded) -> list[str]:
    """What each recorded call gives in a browser, as text."""
    page = browser.new_page()
    page.add_script_tag(content=script)
    for texts in in_parts(list(recorded.texts)):
        page.evaluate(KEEP, texts)
    # As text: what is made of many small lists would travel value by value.
    found: list[str] = page.evaluate(
        f"(calls) => ({REPLAY})(JSON.parse(calls))", json.dumps([list(recorded.results), FAULT])
    )
    page.close()
    return found


def in_parts(texts: list[str]) -> Iterator[list[str]]:
    """The texts in parts that travel to the browser in one piece."""
    part: list[str] = []
    size = 0
    for text in texts:
        if size + len(text) > MOST_AT_ONCE:
            yield part
            part, size = [], 0
        part.append(text)
        size += len(text)
    yield part


def sorted_text(theirs: str) -> str:
    """The browser's text with sorted keys and numbers as floats; what is no JSON stays."""
    try:
        return result_text(json.loads(theirs, parse_int=float))
    except json.JSONDecodeError:
        return theirs


def called_words(call: Call, texts: Mapping[str, int]) -> str:
    """A call as it is told: the function and the beginning of each argument."""
    by_number = list(texts)
    called, given = call
    words = [
        by_number[part][:200]
        if isinstance(part, int)
        else ", ".join(f"{key}: {by_number[at][:200]}" for key, at in part)
        for part in given
    ]
    return f"{called}({'; '.join(words)})"
