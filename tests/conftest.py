"""The rule of the formula tests: an expected value says where it comes from, or the test does not run."""

import pytest


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Refuse a formula test that names neither a source nor a law."""
    bare = [item.nodeid for item in items if "tests/formulas/" in item.nodeid and not names_its_ground(item)]
    if bare:
        listed = "\n  ".join(sorted(bare)[:20])
        raise pytest.UsageError(
            f"{len(bare)} formula tests name no source: mark each with @pytest.mark.source('where the value is from') "
            f"or @pytest.mark.law.\n  {listed}"
        )


def names_its_ground(item: pytest.Item) -> bool:
    """True where a test has a source with text, or is a law for all inputs."""
    source = item.get_closest_marker("source")
    return item.get_closest_marker("law") is not None or (source is not None and bool(source.args) and bool(str(source.args[0]).strip()))
