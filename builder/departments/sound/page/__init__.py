"""Sound's pages. They read the pack and compute nothing."""

from collections.abc import Iterator, Sequence

from builder.departments.sound.page.coverage import coverage_blocks, coverage_there
from builder.departments.sound.page.stage import stage_blocks
from builder.departments.sound.page.system import system_blocks
from builder.document import Entry, Page
from builder.layout import shown_fact, shown_figure
from builder.pack import Item, Pack, Section
from builder.reading.addresses import address

GROUP = "Sound"


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """Three pages: the house system, what it covers, and positions with stock."""
    group = GROUP
    return (
        Page(
            "sound",
            "House system",
            tuple(system_blocks(section, pack)),
            "Who may change it, drive lines, mix position, hangs, subs, fills.",
            group,
        ),
        Page(
            "sound-coverage",
            "Coverage",
            tuple(coverage_blocks(section, pack)),
            "Where the house system reaches, relative to the mix position.",
            group,
        ),
        Page(
            "sound-stage",
            "Stage sound and stock",
            tuple(stage_blocks(section)),
            "Monitors, desks, split, drop boxes, radio, microphones.",
            group,
        ),
    )


def maps_in(section: Section, pack: Pack, names: Sequence[str]) -> Sequence[Page]:
    """What the house system covers in other configurations of the house than the usual one."""
    told = "; ".join(names)
    key = address(f"sound-coverage-in-{told}")
    blocks = tuple(coverage_there(section, pack, told, key))
    says = f"Where the system reaches in {told}."
    return (Page(key, f"Coverage in {told}", blocks, says, GROUP),)


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """The house system, and the mix position's size and distance, for the home page."""
    return tuple(answers(section))


def answers(section: Section) -> Iterator[Entry]:
    """The home page's answers."""
    if policy := section.item("policy"):
        yield system_entry(section, policy)
    if mix := section.item("mix"):
        size = [*shown_fact(mix.fact("width")), " × ", *shown_fact(mix.fact("depth"))]
        distance = mix.figure("distance")
        small = ["from the reference line: ", *shown_figure(distance)] if distance else ""
        yield Entry("Mix position", size, small=small, anchor="sound#mix")


def system_entry(section: Section, policy: Item) -> Entry:
    """
    What flies, hang by hang, and whether visitors may use it; without hangs the permission alone.
    """
    hangs = section.of_kind("hang")
    permission = shown_fact(policy.fact("use"))
    if not hangs:
        return Entry("House sound system", permission, anchor="sound#policy")
    made = "; ".join(f"{hang.name}: {hang.text('boxes')} {hang.text('model')}" for hang in hangs)
    boxes = " + ".join(hang.text("boxes") or "?" for hang in hangs)
    return Entry(
        "House sound system",
        f"{boxes} boxes flown",
        small=[*permission, f"; {made}"],
        anchor="sound#policy",
    )
