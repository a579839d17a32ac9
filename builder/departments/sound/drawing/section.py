"""The hall from the side, with the aim lines of hangs. Reads the pack alone."""

from collections.abc import Iterator, Sequence
from math import cos, radians, sin

from builder.departments.sound.drawing.places import LETTERS, SEEN_DECK_M, area_fields, mix_place
from builder.document import Picture
from builder.pack import Item, Pack, Section
from builder.render.plan import CHAIN, DASHED, HEAVY, Element, Mark, Note, Plan, Track, plan_svg


def section_picture(section: Section, pack: Pack) -> Picture | None:
    """
    The hall from the side: hangs with the aim of their first and last box, ears of each area, deck
    and mix position.
    """
    hangs = [hang for hang in section.of_kind("hang") if hang.number("bottom") is not None]
    if not hangs or not area_fields(section):
        return None
    elements = [
        *slopes(section),
        *deck_line(pack),
        *(
            element
            for count, hang in enumerate(one_a_side(hangs))
            for element in from_the_side(hang, count)
        ),
        *mix_mark(section, pack),
    ]
    says = " ".join(
        f"{hang.name}: first box looks at {hang.text('first_aim')}, last box at"
        f" {hang.text('last_aim')}."
        for hang in hangs
    )
    plan = Plan(
        "sound-section",
        "Section through the audience",
        says,
        tuple(elements),
        margin_m=1.2,
        axes=False,
    )
    return Picture(
        "sound-section",
        plan_svg(plan),
        says,
        "From the side, stage on the left: where the first and the last box of each hang look. Ears"
        " are dashed.",
    )


def one_a_side(hangs: Sequence[Item]) -> list[Item]:
    """Hangs that look alike from the side are drawn once."""
    seen: dict[tuple[float | None, ...], Item] = {}
    for hang in hangs:
        seen.setdefault(
            tuple(hang.number(key) for key in ("at.depth", "top", "bottom", "down", "last_down")),
            hang,
        )
    return list(seen.values())


def slopes(section: Section) -> Iterator[Element]:
    """The ears of each area from the side, as its points near the centre line lie."""
    for field in area_fields(section):
        depths = sorted({(y, z) for _, y, z in field.points})
        (near, near_z), (far, far_z) = depths[-1], depths[0]
        half = field.step_m / 2
        tilt = (far_z - near_z) / (far - near) if far != near else 0.0
        ends = ((-(near + half), near_z + tilt * half), (-(far - half), far_z - tilt * half))
        yield Track(ends, DASHED, says=f"Ears of {field.name}")
        yield Note((-(near + far) / 2, (near_z + far_z) / 2), field.name, LETTERS, shift=(0, 20))


def deck_line(pack: Pack) -> Iterator[Element]:
    """The deck from the side."""
    stage = pack.section("stage")
    deck = (
        next((outline for outline in stage.outlines if outline.kind == "deck"), None)
        if stage
        else None
    )
    if deck:
        ys = [y for _, y in deck.corners]
        back = -min(max(ys), SEEN_DECK_M)
        yield Track(((back, 0.0), (-min(ys), 0.0)), HEAVY, says=deck.name)
        yield Note((back, 0.0), "deck", LETTERS, side="start", shift=(0, 20))


def from_the_side(hang: Item, count: int) -> Iterator[Element]:
    """
    One hang with the aim lines of its first and last box.

    Names of hangs at nearly the same place stand above each other.
    """
    depth, top, bottom, first, last = (
        hang.number(key) or 0.0 for key in ("at.depth", "top", "bottom", "down", "last_down")
    )
    yield Track(((-depth, top), (-depth, bottom)), HEAVY, says=hang.name)
    yield Note(
        (-depth, top), hang.name, LETTERS, side="start", shift=(-20, -8 - 20 * count), strong=True
    )
    for down, height, key in ((first, top, "first_aim"), (last, bottom, "last_aim")):
        run = hang.number(key) or 12.0
        angle = radians(down)
        yield Track(
            ((-depth, height), (-depth + run, height - run * sin(angle) / cos(angle))),
            CHAIN,
            says=f"{key.split('_')[0]} box, {down:g} deg down",
        )
        yield Note(
            (-depth + run * 0.45, height - run * 0.45 * sin(angle) / cos(angle)),
            f"{down:g}°",
            LETTERS,
            shift=(0, -4),
        )


def mix_mark(section: Section, pack: Pack) -> Iterator[Element]:
    """The mix position from the side, at the ears of the area it lies in."""
    mix = mix_place(section, pack)
    if mix is None:
        return
    points = [
        (abs(y - mix.depth_m) + abs(x - mix.across_m), z)
        for field in area_fields(section)
        for x, y, z in field.points
    ]
    at = (-mix.depth_m, min(points)[1])
    yield Mark(at, "ring", size=6, says=mix.name)
    yield Note(at, mix.name, LETTERS, shift=(0, -12))
