"""How sure a figure is: as sure as the least sure of what went in."""

from dataclasses import replace

from builder.pack import Figure, Item, Section, Verified, sureness
from builder.stating import Ageing

NOBODY_SAYS = Verified("", "", "", 0)


def with_checks(section: Section, ageing: Ageing) -> Section:
    """A section whose figures tell the weakest check of what went in, by its age."""
    return replace(section, items=tuple(checked(item, section, ageing) for item in section.items))


def checked(item: Item, section: Section, ageing: Ageing) -> Item:
    """An item whose figures tell the weakest check of what went in."""
    own = next((fact.verified for fact in item.facts if fact.verified), section.verified)
    figures = [
        replace(figure, verified=other_than(section, weakest(figure, own, ageing)))
        for figure in item.figures
    ]
    return replace(item, figures=tuple(figures))


def weakest(figure: Figure, own: Verified | None, ageing: Ageing) -> Verified:
    """The weaker of an item's own check and that of the other lines that a figure is made of."""
    checks = [own or NOBODY_SAYS]
    if figure.working.check:
        checks.append(ageing.aged(figure.working.check))
    return min(checks, key=sureness)


def other_than(section: Section, check: Verified) -> Verified | None:
    """A check that is not the section's; None where it is, for then nothing need be said."""
    return None if check == (section.verified or NOBODY_SAYS) else check
