"""Whether a house tells that it is closed at times: who loads the rules of that asks here first."""

from builder.fit.closed.sentences import DATE
from builder.fit.records import FitPack, Item, Verdict
from builder.fit.sections import items_of, section_of
from builder.fit.values import text_of


def closures_of(pack: FitPack) -> list[Item]:
    """Every closure that the house tells."""
    return items_of(section_of(pack, "house"), "closure")


def regulars_of(pack: FitPack) -> list[Item]:
    """Everything that comes back and in which the house is not free."""
    return items_of(section_of(pack, "house"), "regular")


def works_of(pack: FitPack) -> list[Item]:
    """Everything that is being changed, so that figures are not final."""
    return items_of(section_of(pack, "house"), "works")


def hired_of(pack: FitPack) -> list[Item]:
    """Everything that is hired in and may come otherwise than told."""
    hired = items_of(section_of(pack, "house"), "hired")
    return [item for item in hired if text_of(item, "may_differ") != ""]


def are_unknown(pack: FitPack) -> bool:
    """Whether the house says that it does not know when it is closed."""
    return any(
        "closed" in item["values"] and item["values"]["closed"]["standing"] == "unknown"
        for item in items_of(section_of(pack, "house"), "identity")
    )


def may_be_closed(pack: FitPack) -> bool:
    """Whether the date of a show can decide anything in a house, or what it hires in does."""
    lists = [closures_of(pack), regulars_of(pack), works_of(pack), hired_of(pack)]
    return any(len(found) > 0 for found in lists) or are_unknown(pack)


def is_of_date(answer: Verdict) -> bool:
    """Whether a verdict is the one on the date of an act."""
    return answer["title"] == DATE
