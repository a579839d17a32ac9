"""What a line set balances, and what it leaves for a show."""

from typing import Literal

from builder.formulas.cite import cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import HIBBELER

Purchase = Literal[1, 2]


@cites(
    HIBBELER,
    "ch. 11, virtual work: weights that balance over pulleys, from memory",
    equation="balanced = arbor / purchase",
)
def balanced_kg(*, arbor_kg: float, purchase: Purchase) -> float:
    """
    What the weights of an arbor balance on the pipe, the pipe itself included. [kg]

    Parameters
    ----------
    arbor_kg
        The weights in the arbor. [kg]
    purchase
        1 where the arbor moves as far as the pipe; 2 where it moves half as far, and so holds twice
        what hangs.

    Raises
    ------
    ValueError
        If a weight is negative or the purchase is neither.

    Notes
    -----
    Leaves out friction, the weight of the lines that runs over from one side to the other, and the
    arbor's own weight, which balances part of the pipe.
    """
    not_negative("arbor_kg", arbor_kg)
    if purchase not in (1, 2):
        raise ValueError(f"purchase must be 1 or 2, got {purchase}")
    return arbor_kg / purchase


@cites(
    HIBBELER,
    "ch. 3, equilibrium of a particle: sum of forces, from memory",
    equation="left = may hang − hangs",
)
def left_on_pipe_kg(*, may_hang_kg: float, hangs_kg: float) -> float:
    """
    What may still hang on a pipe; negative where too much hangs. [kg]

    Parameters
    ----------
    may_hang_kg
        What may hang. [kg]
    hangs_kg
        What hangs, the pipe included where ``may_hang_kg`` counts it. [kg]

    Raises
    ------
    ValueError
        If either is negative.

    Notes
    -----
    Leaves out where along the pipe it hangs: between two lines the pipe bends, and one line may
    carry more than its share.
    """
    not_negative("may_hang_kg", may_hang_kg)
    not_negative("hangs_kg", hangs_kg)
    return may_hang_kg - hangs_kg
