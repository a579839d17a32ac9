"""
The age of a check is told as of the day the page is read, by a script that a page can do without.
"""

from datetime import UTC, datetime

import pytest
from playwright.sync_api import Browser

from tests.site.visiting import visit

pytestmark = pytest.mark.browser


@pytest.mark.parametrize(
    ("today", "told"),
    [
        ("2026-02-11", "2026-02-11"),
        ("2026-02-12", "2026-02-11 (1 day ago today)"),
        ("2026-03-11", "2026-02-11 (4 weeks ago today)"),
        ("2026-08-11", "2026-02-11 (6 months ago today)"),
        ("2029-02-11", "2026-02-11 (3 years ago today)"),
    ],
)
def test_a_page_tells_how_old_a_check_is_on_the_day_it_is_read(
    browser: Browser, over_file: str, today: str, told: str
) -> None:
    with visit(browser, over_file) as page:
        page.clock.set_fixed_time(datetime.fromisoformat(today).replace(hour=12, tzinfo=UTC))
        page.goto(f"{over_file}/access.html")
        assert page.locator("article time").first.inner_text() == told
