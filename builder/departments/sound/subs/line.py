"""The sub line: the delay of each sub, what the arc covers and what it costs."""

from collections.abc import Iterator, Sequence
from math import sqrt

from builder.cautions import NOISE
from builder.departments.sound.areas.geometry import places_in_line_m
from builder.departments.sound.description.loudspeakers import SubLine
from builder.departments.sound.description.placed import PlacedSubs, lacking_of_subs
from builder.formulas.sources import COMMON_PRACTICE
from builder.formulas.subs import arc_delays_ms, arc_radius_m, coverage_width_deg, on_axis_loss_db
from builder.pack import Figure, Input, Item, Reference, Value, Working
from builder.reading.measures import System, shown
from builder.reading.quantities import Across, Length
from builder.working import Formula, figure, missing, worked

LEAVES_OUT = (
    "Subs are points that radiate alike all round. Walls, the stage front and the audience are left"
    " out."
)
STANDING = "Each sub that plays is counted where it stands."


def radius_m(subs: PlacedSubs) -> float | None:
    """
    The radius of the arc, as stated or from its angle; None where the line is straight or has one
    sub.
    """
    if subs.arc_radius is not None:
        return subs.arc_radius.m
    if subs.arc is None or subs.arc.deg <= 0 or subs.count < 2:
        return None
    return arc_radius_m(places_in_line_m(subs), arc_deg=subs.arc.deg)


def delays_ms(subs: PlacedSubs, *, speed_m_s: float) -> tuple[float, ...]:
    """The delay of each sub, from stage right. A straight line has none."""
    radius = radius_m(subs)
    if radius is None:
        return (0.0,) * subs.count
    return arc_delays_ms(places_in_line_m(subs), radius_m=radius, speed_m_s=speed_m_s)


def playing(subs: PlacedSubs, speed_m_s: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Places along the line and delays of those that play."""
    pairs = zip(
        range(1, subs.count + 1),
        places_in_line_m(subs),
        delays_ms(subs, speed_m_s=speed_m_s),
        strict=True,
    )
    kept = [(place, delay) for number, place, delay in pairs if number not in subs.out_of_service]
    return tuple(place for place, _ in kept), tuple(delay for _, delay in kept)


def line_figures(subs: PlacedSubs, key: str, system: System) -> Iterator[Figure]:
    """How many play, and the radius of the arc."""
    yield playing_figure(subs.count, subs.out_of_service, key)
    if subs.arc is not None or subs.arc_radius is not None:
        yield radius_figure(subs, key, system)


def unplaced_figures(subs: SubLine, key: str) -> Iterator[Figure]:
    """What stands for the figures of a line of which something is not known."""
    lacks, out = lacking_of_subs(subs), subs.out_of_service
    if isinstance(subs.count, int) and isinstance(out, tuple):
        yield playing_figure(subs.count, out, key)
    else:
        yield missing(f"{key}.playing", "Subs that play", worked(arc_delays_ms, inputs=()), lacks)
    unknown = worked(arc_delays_ms, inputs=(), leaves_out=LEAVES_OUT)
    yield missing(f"{key}.delays", "Delays and coverage", unknown, lacks)


def unheard_line(key: str, lacks: Sequence[str]) -> Figure:
    """What stands for the coverage of a line of whose model something is not known."""
    unknown = worked(coverage_width_deg, inputs=(), leaves_out=LEAVES_OUT)
    return missing(f"{key}.covers", "Coverage by frequency", unknown, lacks, caution=NOISE)


def playing_figure(count: int, out: tuple[int, ...], key: str) -> Figure:
    """How many subs of the line play."""
    plays = count - len(set(out))
    inputs = (
        Input("Subs", str(count)),
        Input("Out of service", ", ".join(map(str, out)) or "none"),
    )
    steps = (f"{count} − {count - plays} = {plays}",)
    counted = Working(
        "playing = subs − those out of service",
        inputs,
        (Reference(COMMON_PRACTICE.key, "counting", COMMON_PRACTICE.title),),
        steps,
    )
    return figure(
        f"{key}.playing",
        "Subs that play",
        Value(f"{plays} of {count}", number=float(plays)),
        counted,
    )


def radius_figure(subs: PlacedSubs, key: str, system: System) -> Figure:
    """The radius of the arc."""
    radius = radius_m(subs)
    inputs = (
        Input("L, first to last sub", length_text(subs, system)),
        Input("A, arc", subs.arc.text if subs.arc else "by radius"),
    )
    if radius is None:
        return missing(
            f"{key}.radius",
            "Radius of the arc",
            worked(arc_radius_m, inputs=inputs),
            ("an arc above 0 and two subs",),
        )
    text, also = shown(Length, radius, 2, system)
    half = places_in_line_m(subs)[-1]
    steps = (
        (f"({half * 2:.2f} m / 2) / sin({subs.arc.deg:g}° / 2) = {radius:.2f} m",)
        if subs.arc
        else ()
    )
    return figure(
        f"{key}.radius",
        "Radius of the arc",
        Value(text, also, radius, "m"),
        worked(arc_radius_m, inputs=inputs, steps=steps),
    )


def length_text(subs: PlacedSubs, system: System) -> str:
    """The length of the line between the outer middles."""
    return shown(Length, (subs.count - 1) * subs.spacing.m, 2, system)[0]


def working_at(
    subs: PlacedSubs, hertz: float, speed_m_s: float, formula: Formula, step: str
) -> Working:
    """The working of a figure at one frequency."""
    inputs = (
        Input("Frequency", f"{hertz:g} Hz"),
        Input("Speed of sound", f"{speed_m_s:.1f} m/s"),
        Input("Subs that play", f"{len(playing(subs, speed_m_s)[0])} at {subs.spacing.text}"),
        Input(
            "Arc",
            subs.arc.text if subs.arc else subs.arc_radius.text if subs.arc_radius else "none",
        ),
    )
    return worked(formula, inputs=inputs, steps=(step,), leaves_out=f"{STANDING} {LEAVES_OUT}")


def coverage_figure(subs: PlacedSubs, key: str, hertz: float, speed_m_s: float) -> Figure:
    """How wide the line covers to −6 dB as it is set, far away."""
    places, delays = playing(subs, speed_m_s)
    width = coverage_width_deg(places, delays, frequency_hz=hertz, speed_m_s=speed_m_s)
    step = (
        "The first angle on each side where the sum of all phasors is half of that straight ahead."
        " It is not the angle of the arc."
    )
    working = working_at(subs, hertz, speed_m_s, coverage_width_deg, step)
    return figure(
        f"{key}.covers", "Covers to −6 dB, as set", width_value(width), working, caution=NOISE
    )


def straight_figure(subs: PlacedSubs, key: str, hertz: float, speed_m_s: float) -> Figure:
    """The same without delays."""
    places, _ = playing(subs, speed_m_s)
    width = coverage_width_deg(
        places, (0.0,) * len(places), frequency_hz=hertz, speed_m_s=speed_m_s
    )
    working = working_at(subs, hertz, speed_m_s, coverage_width_deg, "All delays taken as 0 ms.")
    return figure(
        f"{key}.straight", "Covers, no delays", width_value(width), working, caution=NOISE
    )


def width_value(width_deg: float | None) -> Value:
    """A coverage, or that it has no edge."""
    return (
        Value("to the sides and beyond")
        if width_deg is None
        else Value(f"{width_deg:.0f} deg", number=width_deg, unit="deg")
    )


def loss_figure(subs: PlacedSubs, key: str, hertz: float, speed_m_s: float) -> Figure:
    """What the delays cost straight ahead."""
    places, delays = playing(subs, speed_m_s)
    loss = on_axis_loss_db(places, delays, frequency_hz=hertz, speed_m_s=speed_m_s) + 0.0
    step = f"{len(places)} subs in phase would be {loss:.1f} dB louder straight ahead."
    value = Value(f"{loss:.1f} dB", number=loss, unit="dB")
    return figure(
        f"{key}.costs",
        "Costs straight ahead",
        value,
        working_at(subs, hertz, speed_m_s, on_axis_loss_db, step),
        caution=NOISE,
    )


def sub_items(subs: PlacedSubs, line_key: str, system: System, speed_m_s: float) -> Iterator[Item]:
    """Each sub with its place and delay: the table an engineer types in."""
    places, delays = places_in_line_m(subs), delays_ms(subs, speed_m_s=speed_m_s)
    radius = radius_m(subs)
    for number, along_m, delay_ms in zip(range(1, subs.count + 1), places, delays, strict=True):
        key = f"sound.sub.{line_key.rsplit('.', 1)[-1]}-{number}"
        out = number in subs.out_of_service
        yield Item(
            key=key,
            kind="sub",
            name=f"{subs.name}, number {number}",
            figures=(
                place_figure(subs, key, along_m, system),
                delay_figure(subs, key, along_m, delay_ms, radius, speed_m_s),
            ),
            condition="out of service" if out else "in service",
            unit_of=line_key,
        )


def place_figure(subs: PlacedSubs, key: str, along_m: float, system: System) -> Figure:
    """Where one sub stands across the stage."""
    across = subs.at.across.m + along_m
    text, also = shown(Across, across, 2, system)
    inputs = (Input("Middle of the line", subs.at.across.text), Input("Spacing", subs.spacing.text))
    step = f"{subs.at.across.m:g} m + {along_m:+.3f} m = {across:+.3f} m"
    working = worked(
        arc_delays_ms,
        inputs=inputs,
        steps=(step,),
        equation="x_i = middle + (i − (n + 1)/2) × spacing",
    )
    return figure(f"{key}.across", "Across", Value(text, also, across, "m"), working)


def delay_figure(
    subs: PlacedSubs,
    key: str,
    along_m: float,
    delay_ms: float,
    radius: float | None,
    speed_m_s: float,
) -> Figure:
    """The delay of one sub."""
    inputs = (
        Input("x_i, from the middle of the line", f"{along_m:+.3f} m"),
        Input("r, radius", "straight" if radius is None else f"{radius:.3f} m"),
        Input("c, speed of sound", f"{speed_m_s:.1f} m/s"),
    )
    least = (
        0.0
        if radius is None
        else min(radius - sqrt(radius**2 - place**2) for place in places_in_line_m(subs))
    )
    step = (
        ""
        if radius is None
        else (
            f"({radius:.3f} − √({radius:.3f}² − {along_m:.3f}²) − {least:.4f}) / {speed_m_s:.1f} ="
            f" {delay_ms:.2f} ms"
        )
    )
    working = worked(
        arc_delays_ms, inputs=inputs, steps=(step,) if step else (), leaves_out=LEAVES_OUT
    )
    value = Value(f"{delay_ms:.2f} ms", number=delay_ms / 1000, unit="s")
    return figure(f"{key}.delay", "Delay", value, working)
