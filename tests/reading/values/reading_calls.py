"""Many readings in one call, to be compiled for the browser."""

from builder.reading.values.kinds import KindBook
from builder.reading.values.quantities import Quantity, read_quantity


def read_all(texts: list[str], names: list[str], book: KindBook) -> list[Quantity]:
    """Each text as a quantity of the kind of the same place."""
    return [read_quantity(text, names[place], book) for place, text in enumerate(texts)]
