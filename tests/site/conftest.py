"""One built sample site for all tests that look at it."""

from pathlib import Path

import pytest

from builder.site.build import build_document
from tests.site.sample import document


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample site's folder."""
    site = tmp_path_factory.mktemp("built") / "site"
    build_document(document(), site)
    return site
