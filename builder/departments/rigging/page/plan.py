"""Plans of the steel, the points and what hangs. They read the pack alone."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from builder.departments.rigging.page.shown import At, Spot, foot, hang_ends, number_text, spots_of
from builder.document import Markup
from builder.layout import anchor_of
from builder.pack import Item, Pack, Section
from builder.render.plan import Area, Element, Look, Mark, Note, Plan, Track, plan_svg

BEAM = Look(width=1.0, dash="10 5", opacity=0.75)
BODY = Look(width=2.2, fill=0.10)
GROUND = Look(width=0.8, fill=0.035, opacity=0.45)
APART_M = 6.0
"""
Points farther apart than this up and down stage are drawn on plans of their own, so that each stays
large.
"""
BEYOND_M = 1.6
WIDEST_M = 17.0
"""
A plan wider than this is cut into parts, so that its names are read on a phone at arm's length.
"""
SIDE_M, OVERLAP_M = 3.2, 1.6
BODY_SHARE = 0.018
"""
Half the width of a hung body on the plan, as a share of the plan's width, so that its name fits at
any scale.
"""
NAME_SIZE, LEFT_SIZE, HANG_SIZE = 34.0, 32.0, 24.0
SIGN_SIZE, FOOT_SIZE, LETTERING = 15.0, 23.0, 23.0
HANGING_M = 4.0
"""Obstructions wider than this hang above the stage and are left out here."""
DRAWN_ACROSS = 832.0
"""Drawing units that the metres of a plan take."""


@dataclass(frozen=True, slots=True)
class Part:
    """
    A stretch across the stage with its points. ``title`` says which, empty where one plan shows
    all. [m]
    """

    name: str
    title: str
    spots: tuple[Spot, ...]
    left_m: float
    right_m: float

    @property
    def width_m(self) -> float:
        """How much of the stage it shows. [m]"""
        return self.right_m - self.left_m


@dataclass(frozen=True, slots=True)
class Sheet:
    """A plan as the page takes it."""

    name: str
    heading: str
    title: str
    svg: Markup
    says: str


def plans(section: Section, pack: Pack) -> Iterator[Sheet]:
    """
    Each plan in parts that a phone shows large: the largest group of points first, each group from
    stage right.
    """
    groups = grouped(list(spots_of(section)))
    for number, spots in enumerate(groups, 1):
        name = "rigging-plan" if number == 1 else f"rigging-plan-{number}"
        alone = len(groups) > 1 and len({spot.beam for spot in spots}) == 1
        heading = f"Plan: beam {spots[0].beam}" if alone else "Plan"
        for part in parts(name, spots):
            yield sheet(section, pack, part, heading)


def sheet(section: Section, pack: Pack, part: Part, heading: str) -> Sheet:
    """One part, drawn."""
    spots = part.spots
    elements = (
        *ground(spots, pack),
        *beams(section, part),
        *bodies(section, part),
        *marks(spots),
        *cautioned(section, part),
    )
    says, title = in_words(spots), f"{heading}, {part.title}" if part.title else heading
    plan = Plan(
        part.name,
        title,
        says,
        elements,
        margin_m=1.3,
        across_m=(part.left_m, part.right_m),
        lettering=LETTERING,
    )
    return Sheet(part.name, heading, part.title, plan_svg(plan), says)


def parts(name: str, spots: Sequence[Spot]) -> Iterator[Part]:
    """
    Points by stretches across the stage that overlap a little: one where all are near, else two or
    more of the same width.
    """
    low, high = (
        min(spot.at[0] for spot in spots) - SIDE_M,
        max(spot.at[0] for spot in spots) + SIDE_M,
    )
    count = ceil((high - low) / WIDEST_M)
    if count == 1:
        yield Part(name, "", tuple(spots), low, high)
        return
    step = (high - low) / count
    for number in range(count):
        left = low + number * step - (OVERLAP_M if number else 0.0)
        right = low + (number + 1) * step + (OVERLAP_M if number + 1 < count else 0.0)
        title = (
            f"stage {('right', 'left')[number]} half"
            if count == 2
            else f"part {number + 1} of {count}, from stage right"
        )
        inside = tuple(spot for spot in spots if left + 0.8 <= spot.at[0] <= right - 0.8)
        if inside:
            yield Part(
                name if number == 0 else f"{name}-part-{number + 1}", title, inside, left, right
            )


def grouped(spots: Sequence[Spot]) -> list[list[Spot]]:
    """
    Points from upstage to downstage, split where there is a long way between two.

    The largest group comes first.
    """
    groups: list[list[Spot]] = []
    for spot in sorted(spots, key=lambda spot: (-spot.at[1], spot.at[0])):
        if not groups or groups[-1][-1].at[1] - spot.at[1] > APART_M:
            groups.append([])
        groups[-1].append(spot)
    return sorted(groups, key=len, reverse=True)


def reach(spots: Sequence[Spot]) -> tuple[float, float]:
    """The nearest and the farthest depth of some points, with a little beyond."""
    depths = [spot.at[1] for spot in spots]
    return min(depths) - BEYOND_M, max(depths) + BEYOND_M


def ground(spots: Sequence[Spot], pack: Pack) -> Iterator[Element]:
    """The deck and the wings below, where these points are above them."""
    stage = pack.section("stage")
    near_m, far_m = reach(spots)
    every = stage.outlines if stage else ()
    decks = [outline for outline in every if outline.kind == "deck"][:1]
    for outline in (
        *decks,
        *(outline for outline in every if outline.kind in ("wing", "obstruction")),
    ):
        inside = any(near_m <= y <= far_m for _, y in outline.corners)
        if inside and (outline.kind != "obstruction" or outline.across_m <= HANGING_M):
            yield Area(
                outline.corners,
                GROUND if outline.kind != "obstruction" else Look(width=0.8, fill=0.35),
                says=outline.name,
            )


def beams(section: Section, part: Part) -> Iterator[Element]:
    """The beams that carry these points, each with its name at the ends that this part shows."""
    near_m, far_m = reach(part.spots)
    for beam in section.of_kind("beam"):
        stations = [item for item in section.of_kind("low-steel") if item.name == beam.name]
        across = beam.text("runs") == "across"
        lies = beam.number("depth" if across else "across")
        places = [
            at
            for item in stations
            if (at := item.number("across" if across else "depth")) is not None
        ]
        if lies is None or not places or (across and not near_m <= lies <= far_m):
            continue
        low, high = (
            (min(places), max(places))
            if across
            else (max(min(places), near_m), min(max(places), far_m))
        )
        if low >= high:
            continue
        ends = ((low, lies), (high, lies)) if across else ((lies, low), (lies, high))
        yield Track(ends, BEAM, says=beam_says(beam), anchor=anchor_of(beam.key))
        yield from (
            note
            for note in beam_names(beam.name, ends, across=across)
            if part.left_m <= note.at[0] <= part.right_m
        )


def beam_names(
    name: str, ends: tuple[tuple[float, float], tuple[float, float]], *, across: bool
) -> Iterator[Note]:
    """
    The name of a beam: at both ends of one that lies across, at the near end of one that runs up
    and down stage.
    """
    if not across:
        yield Note(ends[0], name, NAME_SIZE, shift=(0, 36), strong=True)
        return
    yield Note(ends[0], name, NAME_SIZE, side="end", shift=(-10, 11), strong=True)
    yield Note(ends[1], name, NAME_SIZE, side="start", shift=(10, 11), strong=True)


def beam_says(beam: Item) -> str:
    """A beam in a sentence."""
    return (
        f"Beam {beam.name}: carries {number_text(beam, 'carried')} of {number_text(beam, 'limit')}"
    )


def bodies(section: Section, part: Part) -> Iterator[Element]:
    """Trusses and bars as bodies, with their names where there is room between points."""
    near_m, far_m = reach(part.spots)
    half_m = BODY_SHARE * part.width_m
    for hang in section.of_kind("hang"):
        ends = hang_ends(hang)
        if (
            ends is None
            or not near_m <= (ends[0][1] + ends[1][1]) / 2 <= far_m
            or beside(ends, part)
        ):
            continue
        says = f"{hang.name}: {number_text(hang, 'total')}"
        if ends[0] != ends[1]:
            yield Area(strip(*ends, half_m), BODY, says=says, anchor=anchor_of(hang.key))
        yield hang_name(hang.name, shown_ends(ends, part), part.spots)


def beside(ends: tuple[At, At], part: Part) -> bool:
    """True where a hang is outside a part."""
    return (
        max(ends[0][0], ends[1][0]) < part.left_m + 0.5
        or min(ends[0][0], ends[1][0]) > part.right_m - 0.5
    )


def shown_ends(ends: tuple[At, At], part: Part) -> tuple[At, At]:
    """The ends of what a part shows of a hang, so that its name stands within."""
    (x1, y1), (x2, y2) = ends
    return (min(max(x1, part.left_m), part.right_m), y1), (
        min(max(x2, part.left_m), part.right_m),
        y2,
    )


def strip(
    first: tuple[float, float], last: tuple[float, float], half_m: float
) -> tuple[tuple[float, float], ...]:
    """A body as a strip along its line."""
    length_m = ((last[0] - first[0]) ** 2 + (last[1] - first[1]) ** 2) ** 0.5
    nx, ny = -(last[1] - first[1]) / length_m * half_m, (last[0] - first[0]) / length_m * half_m
    return (
        (first[0] + nx, first[1] + ny),
        (last[0] + nx, last[1] + ny),
        (last[0] - nx, last[1] - ny),
        (first[0] - nx, first[1] - ny),
    )


def hang_name(
    name: str, ends: tuple[tuple[float, float], tuple[float, float]], spots: Sequence[Spot]
) -> Element:
    """
    The name of a hang: on it, in the widest gap between points, for one that lies across; beside or
    below its middle for the others.
    """
    (x1, y1), (x2, y2) = ends
    middle = ((x1 + x2) / 2, (y1 + y2) / 2)
    if ends[0] == ends[1]:
        return Note(middle, name, HANG_SIZE, shift=(0, 64))
    if abs(x2 - x1) <= abs(y2 - y1):
        outer = "start" if middle[0] < 0 else "end"
        return Note(middle, name, HANG_SIZE, side=outer, shift=(24 if outer == "start" else -24, 8))
    stops = sorted(
        {
            min(x1, x2),
            max(x1, x2),
            *(
                spot.at[0]
                for spot in spots
                if abs(spot.at[1] - y1) < 0.6 and min(x1, x2) < spot.at[0] < max(x1, x2)
            ),
        }
    )
    gaps = [
        (round(second - first, 3), -index, (first + second) / 2)
        for index, (first, second) in enumerate(pairwise(stops))
    ]
    return Note((max(gaps)[2], middle[1]), name, HANG_SIZE, shift=(0, 8))


def marks(spots: Sequence[Spot]) -> Iterator[Element]:
    """Points: filled as far as they are loaded, their names above, what is left below."""
    for spot in spots:
        sign = {"over": "square", "out": "cross", "unknown": "triangle"}.get(spot.state, "circle")
        yield Mark(
            spot.at,
            sign,
            filled=0.0 if spot.state in ("out", "unknown") else spot.share,
            size=SIGN_SIZE,
            says=spot.says,
            anchor=spot.anchor,
        )
        strong = spot.state == "over"
        for text, size, (side, shift) in zip(
            (spot.name, spot.left), (NAME_SIZE, LEFT_SIZE), labels(spot, spots), strict=True
        ):
            yield Note(spot.at, text, size, side=side, shift=shift, strong=strong)


def cautioned(section: Section, part: Part) -> Iterator[Element]:
    """The caution at the foot of the plan."""
    line_m, near_m = FOOT_SIZE * 1.2 * part.width_m / DRAWN_ACROSS, reach(part.spots)[0]
    for number, line in enumerate(foot(section, 68)):
        yield Note(
            ((part.left_m + part.right_m) / 2, near_m - 1.5 - number * line_m), line, FOOT_SIZE
        )


def labels(
    spot: Spot, spots: Sequence[Spot]
) -> tuple[tuple[str, tuple[float, float]], tuple[str, tuple[float, float]]]:
    """
    Where the two texts of a point go: above and below; on both sides on a beam up and down stage;
    beside where another point lies below.
    """
    if not spot.beam_across:
        crowded = any(
            other.beam_across
            and abs(other.at[0] - spot.at[0]) < 1.0
            and 0 < other.at[1] - spot.at[1] < 1.2
            for other in spots
        )
        return ("end", (-24.0, -2.0 if crowded else 11.0)), (
            ("end", (-24.0, 32.0)) if crowded else ("start", (24.0, 11.0))
        )
    below = any(
        abs(other.at[0] - spot.at[0]) < 1.0 and 0 < spot.at[1] - other.at[1] < 1.4
        for other in spots
    )
    return ("middle", (0.0, -24.0)), ("start", (22.0, 42.0)) if below else ("middle", (0.0, 48.0))


def in_words(spots: Sequence[Spot]) -> str:
    """What a plan shows, in the order of worry."""
    over = [spot for spot in spots if spot.state == "over"]
    out = [spot.name for spot in spots if spot.state in ("out", "unknown")]
    loaded = [spot for spot in spots if spot.share > 0 and spot.state != "over"]
    words = [f"{len(spots)} points."]
    words += [f"Over its limit: {'; '.join(spot.says for spot in over)}."] if over else []
    words += [f"Carrying: {'; '.join(spot.says for spot in loaded)}."] if loaded else []
    words += [f"Not to be counted on: {', '.join(out)}."] if out else []
    return " ".join(words)
