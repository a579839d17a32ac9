"""
Which supports of a hung body are let go, so that none pushes and none is passed through.

The idea: lift all supports alike until none pushes, and lower that lift step by step to nothing. At
each step one support is let go, or taken up again, the first that would otherwise push or be passed
through; ties are broken so that no choice comes twice, so it ends. What is carried is the same for
every way to end, for the body's energy has one least value. It stops with nothing found where
rounding hides which support is first, which takes supports 10 mm apart beside spans of many metres.

Pure arithmetic in + - * /, so that the check in a browser finds the same to the last digit.
"""

from builder.formulas.cite import cites
from builder.formulas.sources import COTTLE_PANG_STONE

SMALLEST = 0.00000000001
"""What is smaller in a table of equations is nothing."""
TIE = 0.0000000000001
"""Ratios this close are one."""
MOST_STEPS = 1000
"""More than any body with a hundred supports took; then nothing was found."""

Matrix = list[list[float]]


@cites(
    COTTLE_PANG_STONE,
    "ch. 4, Lemke's method with lexicographic ratios, from memory",
    equation=(
        "w = q + M z; w >= 0; z >= 0; w_i z_i = 0, found by lifting all supports alike and lowering"
        " that lift to 0"
    ),
)
def released_supports(pull: list[float], stiffness: Matrix) -> list[int] | None:
    """
    Which supports to release so that none pushes and none is passed through.

    Parameters
    ----------
    pull
        Reactions if supports could push, the largest of them about 1. [-]
    stiffness
        Symmetric, positive semidefinite: change of reaction i for rise above support j. [-]

    Returns
    -------
    list of int, or None
        The released supports in rising order, counted from 0; what is left can carry the load.
        None where none was found. [-]

    Notes
    -----
    A common extra pull on all supports is taken away bit by bit; at every step one support is
    released or taken up again. Lexicographic ratios keep it from going round in circles, so it ends
    for every semidefinite stiffness.
    """
    count = len(pull)
    if min(pull) >= 0:
        return []
    common = 2 * count
    table = equations(pull, stiffness)
    basis = list(range(count))
    entering = common
    row = hardest_pusher(pull)
    for _ in range(MOST_STEPS):
        exchange(table, row, entering)
        leaving = basis[row]
        basis[row] = entering
        if leaving == common:
            return sorted([index - count for index in basis if index >= count])
        entering = leaving + count if leaving < count else leaving - count
        row = first_to_fall(table, entering, basis)
        if row < 0:
            return None
    return None


def equations(pull: list[float], stiffness: Matrix) -> Matrix:
    """
    A row for each support: its reaction less what the rises change and less the common extra pull
    is its pull.
    """
    count = len(pull)
    table: Matrix = []
    for row in range(count):
        reaction = [1.0 if column == row else 0.0 for column in range(count)]
        rises = [-value for value in stiffness[row]]
        table.append([*reaction, *rises, -1.0, pull[row]])
    return table


def hardest_pusher(pull: list[float]) -> int:
    """The support that pushes most; the last of equals."""
    hardest = 0
    for row in range(len(pull)):
        if pull[row] <= pull[hardest]:
            hardest = row
    return hardest


def exchange(table: Matrix, row: int, entering: int) -> None:
    """Solve one row for a quantity and put it into all others."""
    pivot = table[row][entering]
    table[row] = [value / pivot for value in table[row]]
    solved = table[row]
    for other in range(len(table)):
        if other != row:
            factor = table[other][entering]
            table[other] = [
                value - factor * part for value, part in zip(table[other], solved, strict=True)
            ]


def first_to_fall(table: Matrix, entering: int, basis: list[int]) -> int:
    """
    The row that first falls to 0, ties broken so that no basis comes twice; the common pull leaves
    as soon as it can. Below 0 where none falls.
    """
    count = len(basis)
    falling = [row for row in range(count) if table[row][entering] > SMALLEST]
    if len(falling) == 0:
        return -1
    least = min([table[row][-1] / table[row][entering] for row in falling])
    tied = [row for row in falling if table[row][-1] / table[row][entering] <= least + TIE]
    first = tied[0]
    for row in tied:
        if basis[row] == 2 * count:
            return row
        if is_before(table, row, first, entering):
            first = row
    return first


def is_before(table: Matrix, row: int, other: int, entering: int) -> bool:
    """Whether a row falls before another by its earlier quantities, place by place."""
    for column in range(len(table)):
        one = table[row][column] / table[row][entering]
        two = table[other][column] / table[other][entering]
        if one != two:
            return one < two
    return False
