"""Many riders in one call, to be compiled for the browser."""

from builder.fit.records import Rule
from builder.reading.values.kinds import KindBook
from builder.rider.asking.language import Language
from builder.rider.entry import RiderRead, read_rider


def read_all(
    texts: list[str], language: Language, rules: list[Rule], units: KindBook
) -> list[RiderRead]:
    """Each text as a rider."""
    return [read_rider(text, language, rules, units) for text in texts]
