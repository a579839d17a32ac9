"""Numbers of a drawing."""

from math import ceil, floor


def number(value: float) -> str:
    """
    A number with at most one decimal, the same text on every machine.

    Halves go up, so that mirrored drawings stay mirrored to a tenth.
    """
    tenths = floor(value * 10 + 0.5) if value >= 0 else ceil(value * 10 - 0.5)
    whole, rest = divmod(abs(tenths), 10)
    return f"{'-' if tenths < 0 else ''}{whole}{f'.{rest}' if rest else ''}"
