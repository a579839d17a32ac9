"""Hangs and subs from above. Reads the pack alone."""

from collections.abc import Iterator
from math import cos, inf, radians, sin

from builder.departments.sound.drawing.places import LETTERS, cut, mix_place
from builder.document import Picture
from builder.pack import Item, Pack, Section
from builder.render.plan import (
    CHAIN,
    DASHED,
    HAIR,
    HEAVY,
    PALE,
    Area,
    Element,
    Mark,
    Note,
    Plan,
    Track,
    plan_svg,
)


def hangs_from_above(section: Section, pack: Pack) -> Picture | None:
    """Hangs on the plan: centre rays, and the edges of the stated coverage."""
    hangs = [hang for hang in section.of_kind("hang") if hang.number("judged") is not None]
    areas = [outline for outline in section.outlines if outline.kind == "audience"]
    if not hangs or not areas:
        return None
    far_m = min(y for area in areas for _, y in area.corners)
    widest_m = max(abs(x) for area in areas for x, _ in area.corners) + 2.0
    stage, mix = pack.section("stage"), mix_place(section, pack)
    elements: list[Element] = [Area(area.corners, PALE, says=area.name) for area in areas]
    elements += [
        Area(cut(deck).corners, HEAVY, says=deck.name)
        for deck in (stage.outlines if stage else ())
        if deck.kind == "deck"
    ][:1]
    for hang in hangs:
        elements += rays(hang, far_m, widest_m)
    if mix:
        elements += [Mark((mix.across_m, mix.depth_m), "ring", size=7, says=mix.name)]
        elements.append(Note((mix.across_m, mix.depth_m), mix.name, LETTERS, shift=(0, 26)))
    told = "; ".join(
        f"{hang.name}: centre ray at {hang.text('centre_ray')}, holds the edge from"
        f" {hang.text('edge')}"
        for hang in hangs
    )
    says = f"Hangs from above. At the mix position's depth, {told}."
    plan = Plan("sound-pan", "Hangs from above", says, tuple(elements), margin_m=1.5)
    return Picture(
        "sound-pan",
        plan_svg(plan),
        says,
        "From above: centre rays (dash and dot) and the edges of the stated coverage (dashed).",
    )


def rays(hang: Item, far_m: float, widest_m: float) -> Iterator[Element]:
    """The centre ray of a hang and the edges of its coverage, as far as the audience reaches."""
    across, depth, coverage = (
        hang.number(key) or 0.0 for key in ("at.across", "at.depth", "judged")
    )
    turned = (hang.number("turned.by") or 0.0) * (
        1 if hang.text("turned.to") == "stage left" else -1
    )
    for beside, look in ((0.0, CHAIN), (-coverage / 2, DASHED), (coverage / 2, DASHED)):
        angle = radians(turned + beside)
        run_deep = (depth - far_m) / cos(angle) if cos(angle) > 0 else inf
        room_m = widest_m - across if sin(angle) > 0 else widest_m + across
        run_wide = room_m / abs(sin(angle)) if sin(angle) else inf
        run = max(0.0, min(run_deep, run_wide))
        yield Track(
            ((across, depth), (across + run * sin(angle), depth - run * cos(angle))),
            look,
            says=f"{hang.name}, {beside:+g} deg",
        )
    yield Mark((across, depth), "triangle", 1.0, 8.0, says=hang.name)
    yield Note((across, depth), hang.name, LETTERS, shift=(0, -14), strong=True)


def subs_picture(section: Section) -> Picture | None:
    """The sub line from above with each sub's delay, as wide as it stands."""
    subs = [item for item in section.of_kind("sub") if item.number("across") is not None]
    if not subs:
        return None
    most = max((item.number("delay") or 0.0) for item in subs) or 1.0
    places = [
        (item.number("across") or 0.0, -0.9 - 2.6 * (item.number("delay") or 0.0) / most)
        for item in subs
    ]
    elements: list[Element] = [Track(tuple((x, -y) for x, y in places), HAIR)]
    for item, (x, y) in zip(subs, places, strict=True):
        out = item.condition == "out of service"
        elements += [
            Area(
                ((x - 0.5, 0.3), (x + 0.5, 0.3), (x + 0.5, -0.3), (x - 0.5, -0.3)),
                DASHED if out else PALE,
                says=item.name,
            )
        ]
        if out:
            elements.append(Mark((x, 0.0), "cross", size=7, says=f"{item.name}, out of service"))
        elements += [
            Mark((x, -y), "circle", 0.0 if out else 1.0, 3.5),
            Note((x, -0.3), item.name.rsplit(" ", 1)[-1], LETTERS, shift=(0, 20)),
        ]
        elements.append(
            Note((x, -y), item.text("delay").removesuffix(" ms"), LETTERS, shift=(0, -8))
        )
    told = ", ".join(
        f"{item.name.rsplit(' ', 1)[-1]}:"
        f" {item.text('delay')}{' (out)' if item.condition == 'out of service' else ''}"
        for item in subs
    )
    says = f"Sub delays from stage right to stage left. {told}."
    plan = Plan(
        "sound-subs", "Sub line with delays", says, tuple(elements), margin_m=1.0, axes=False
    )
    return Picture(
        "sound-subs",
        plan_svg(plan),
        says,
        "The line from above, audience below. Dots rise with the delay in milliseconds; a cross is"
        " out of service.",
    )
