"""The page reads and writes a rider's text as the terminal does, character by character."""

import pytest
from playwright.sync_api import Browser

from builder.rider.text.document import read_tree
from builder.rider.text.writing import rider_text
from tests.laws import share
from tests.rider.compiled import in_the_browser
from tests.rider.text.test_mistakes import MISTAKES
from tests.rider.text.test_oracle import EXAMPLES
from tests.rider.text.trees import RIDERS, spoiled

pytestmark = pytest.mark.browser
NAMED = [*RIDERS, *EXAMPLES, *(text for text, _ in MISTAKES), "act: \ud800\n", 'act: "\\U00110000"']


@pytest.mark.laws
def test_the_page_reads_every_text_as_the_terminal_does(browser: Browser) -> None:
    parts = share(range(100), law="rider text in the browser", usually=3)
    texts = [*NAMED, *(text for part in parts for text in spoiled(300, seed=part))]
    found = in_the_browser(browser, "builder.rider.text.document.read_tree", ([t] for t in texts))
    for text, theirs in zip(texts, found, strict=True):
        assert theirs == read_tree(text), text


def test_the_page_writes_riders_as_the_terminal_does(browser: Browser) -> None:
    trees = [read_tree(text)["tree"] for text in (*RIDERS, *EXAMPLES)]
    found = in_the_browser(browser, "builder.rider.text.writing.rider_text", ([t] for t in trees))
    assert found == [rider_text(tree) for tree in trees]
