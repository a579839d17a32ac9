"""Hoists and steels of which nobody knows, or only in part, how many there are."""

import pytest

from builder.departments.rigging.bridles.stock_legs import there
from builder.departments.rigging.description.bridles import Steel
from tests.departments.rigged import BEAM, LIMITS, hang, points, published

SIZE = "rating: 500 kg, weight: 30 kg, headroom: 500 mm"
HANG = hang(1, 2, loads="{what: Box, by: house, weight: 100 kg, at: 10 m}", hoist="H")


def free(count: str, *, hangs: str = HANG) -> tuple[tuple[float | None, float | None], list[str]]:
    """How many hoists are left, two of them in a hang, and the codes of what is found."""
    stock = f"hoists: [{{name: H, {SIZE}{count}}}]\n"
    found = published(LIMITS + BEAM + points(-5, 5) + hangs + stock)
    (hoist,) = found.section.of_kind("hoist")
    left = hoist.figure("free")
    assert left is not None
    assert left.caution
    codes = [each.code for each in found.findings if each.code == "hoists-short"]
    assert bool(left.missing) == (left.value is None)
    return (left.value.ends if left.value else (None, None)), codes


@pytest.mark.source("by hand: stock less two in a hang")
@pytest.mark.parametrize(
    ("count", "ends", "codes"),
    [
        (", count: 6", (4.0, 4.0), []),
        (", count: 4 to 6", (2.0, 4.0), []),
        (", count: at least 4", (2.0, None), []),
        (", count: up to 6", (None, 4.0), []),
        (", count: unknown", (None, None), []),
        ("", (None, None), []),
        (", working: 5", (3.0, 3.0), []),
        (", count: 1", (-1.0, -1.0), ["hoists-short"]),
        (", count: 0 to 1", (-2.0, -1.0), ["hoists-short"]),
        (", count: 1 to 3", (-1.0, 1.0), []),
        (", count: 6, working: 5", (3.0, 3.0), []),
    ],
)
def test_hoists_left_are_told_as_far_as_their_count_is_known(
    count: str, ends: tuple[float | None, float | None], codes: list[str]
) -> None:
    assert free(count) == (ends, codes)


@pytest.mark.parametrize(
    ("count", "least"),
    [("count: 4", 4), ("count: 2 to 4", 2), ("count: up to 4", 0), ("count: unknown", 0)],
)
def test_only_steels_that_are_there_for_certain_make_a_leg(count: str, least: int) -> None:
    steel = Steel.model_validate(
        {"name": "S", **dict([count.split(": ")]), "length": "1 m", "rating": "1 t"}
    )
    assert there(steel) == least
