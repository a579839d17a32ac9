"""Values along a line that is straight between places."""

import numpy as np
import pytest

from builder.formulas.polyline import along_polyline

ROWS = ((-20.0, 8.0), (0.0, 10.0), (5.0, 10.0), (20.0, 7.0))


@pytest.mark.source("numpy.interp, an independent library")
@pytest.mark.parametrize("at", [-20.0, -7.3, 0.0, 2.5, 5.0, 11.0, 20.0])
def test_straight_between_rows(at: float) -> None:
    places, values = zip(*ROWS, strict=True)
    assert along_polyline(at, ROWS) == pytest.approx(float(np.interp(at, places, values)))


@pytest.mark.source("a single height holds where it was taken, by definition")
def test_one_row_is_its_value() -> None:
    assert along_polyline(3.0, [(3.0, 8.2)]) == 8.2
