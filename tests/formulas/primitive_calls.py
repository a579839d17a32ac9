"""Calls of the primitives, to be compiled for the browser."""

from builder.formulas.primitives import Ratio, ratio_float, ratio_product, ratio_sum


def worked(one: Ratio, other: Ratio) -> list[float]:
    """The float of a fraction, and those of the sum and the product of two."""
    return [
        ratio_float(one),
        ratio_float(ratio_sum(one, other)),
        ratio_float(ratio_product(one, other)),
    ]
