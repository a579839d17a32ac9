"""
The neutral as a conductor with a limit of its own: what stands on it, what is left, and from which
third harmonic it binds before the lines.
"""

from collections.abc import Iterator, Sequence
from math import fsum, hypot

from builder.cautions import ELECTRICITY
from builder.departments.power.amounts import (
    PER_PHASE_LEAVES_OUT,
    UNSURE_LINES,
    ampere,
    percent,
    phase_sizes,
    rounded,
)
from builder.departments.power.circuits.open_limits import lacking_limits, not_taken_off
from builder.departments.power.circuits.sources import (
    Limit,
    Source,
    limits_open,
    neutral_of,
    said_of_neutral,
)
from builder.departments.power.circuits.tree import Network
from builder.departments.power.circuits.turning import (
    BindsTurning,
    LeftInNeutralTurning,
    NeutralTurning,
    parts_on,
)
from builder.departments.power.description import Generator
from builder.departments.power.subjects import told
from builder.formulas.circuits import limit_a
from builder.formulas.load_ratings import cable_rating_with_third_harmonic_a
from builder.formulas.neutral_limits import (
    largest_part_a,
    third_harmonic_that_fills_neutral,
)
from builder.formulas.phasors import PHASES, neutral_current
from builder.pack import Figure, Finding, Input, Item, Level, Value, not_less, not_more, turned_by
from builder.reading.absent import Absent
from builder.working import figure, missing, worked

LEAVES_OUT = (
    "Loads of unknown size, neutrals further up, higher triplens, and what a visitor's single-phase"
    " loads return. Third harmonics are added as if all were in step."
)
ROUNDING = 1e-6


def neutral_figures(item: Item, name: str, network: Network) -> Iterator[Figure]:
    """
    Current, limit, what is left, and the third harmonic that fills it; for whatever has several
    lines.
    """
    source = network.sources[name]
    if len(source.phases) < 2 or said_of_neutral(source) is Absent.NONE:
        return
    if network.below(name) or network.unmeasured_below(name):
        yield current_figure(item, source, network)
    limit = neutral_of(source)
    # A load that nobody has measured may fill a neutral or empty it: neither end is known.
    unmeasured = network.unmeasured_below(name)
    if limit is None or unmeasured:
        yield without_left(item, limit, unmeasured)
        return
    yield left_figure(item, source, limit, network)
    if len(source.phases) == len(PHASES):
        yield from binding_figure(item, source, limit, network)


def without_left(item: Item, limit: Limit | None, unmeasured: Sequence[str]) -> Figure:
    """That nothing is told to be left in the neutral, and what is missing for it."""
    inputs = [Input(what, "not known") for what in unmeasured]
    if limit:
        inputs.insert(0, Input("Neutral", f"{limit.current_a:.4g} A, by its {limit.what}"))
    rating = [] if limit else ["its neutral's rating"]
    return missing(
        f"{item.key}.neutral-left",
        "Left in the neutral",
        worked(neutral_current, inputs=inputs),
        [*rating, *(f"what {what} draws" for what in unmeasured)],
        caution=ELECTRICITY,
    )


def current_figure(item: Item, source: Source, network: Network) -> Figure:
    """What the house's loads carry in the neutral."""
    stands = network.standing[source.name]
    sizes = phase_sizes(stands, source.phases)
    names = [
        Input(phase, f"{size_a:.4g} A") for phase, size_a in zip(source.phases, sizes, strict=True)
    ]
    third, fundamental = stands.neutral.third_harmonic_a, rounded(stands.neutral.fundamental_a)
    steps = [f"√({fundamental:.4g}² + {third:.4g}²) = {rounded(stands.neutral.total_a):.4g} A"]
    working = worked(
        neutral_current,
        inputs=[*names, Input("Third harmonics", f"{third:.4g} A")],
        steps=steps,
        leaves_out=PER_PHASE_LEAVES_OUT,
    )
    key, label = f"{item.key}.neutral-current", "Neutral current"
    value = ampere(rounded(stands.neutral.total_a))
    thirds = network.unknown_thirds_below(source.name)
    lacking = [f"what {what} draws" for what in network.unmeasured_below(source.name)]
    lacking += [f"the third harmonic of {what}" for what in thirds]
    unmeasured = network.unmeasured_below(source.name)
    if unmeasured or (thirds and not stands.sure):
        unknown = [Input(what, "not known") for what in (*unmeasured, *thirds)]
        nothing = worked(neutral_current, inputs=[*names, *unknown])
        return missing(key, label, nothing, lacking, caution=ELECTRICITY)
    if thirds:
        note = f"without {' and '.join(lacking)}, which is not known"
        return figure(key, label, not_less(value), working, caution=ELECTRICITY, note=note)
    if not stands.sure:
        return figure(key, label, not_more(value), working, caution=ELECTRICITY, note=UNSURE_LINES)
    turning = NeutralTurning(parts_on(source.name, network))
    return turned_by(figure(key, label, value, working, caution=ELECTRICITY), turning)


def most_a(source: Source, network: Network) -> float:
    """
    The most that the house's loads may put on the neutral: what takes from it may be off. [A]
    """
    returned = [sum(load.currents) for load in network.seen[source.name]]
    third_a = network.standing[source.name].neutral.third_harmonic_a
    return hypot(largest_part_a(returned), third_a)


def left_a(source: Source, limit: Limit, network: Network) -> float:
    """What the neutral may still carry for hours, never below nothing. [A]"""
    return max(0.0, limit.current_a * source.share - most_a(source, network))


def left_figure(item: Item, source: Source, limit: Limit, network: Network) -> Figure:
    """The limit of the neutral for hours less what stands on it."""
    stands_a = rounded(most_a(source, network))
    value = left_a(source, limit, network)
    steps = [
        f"{limit.current_a:.4g} A × {source.share * 100:.4g} % − {stands_a:.4g} A = {value:.4g} A"
    ]
    inputs = [
        Input("Neutral", f"{limit.current_a:.4g} A, by its {limit.what}"),
        Input("Most in the neutral, whichever loads are off", f"{stands_a:.4g} A"),
    ]
    working = worked(
        limit_a, neutral_current, largest_part_a, inputs=inputs, steps=steps, leaves_out=LEAVES_OUT
    )
    thirds = network.unknown_thirds_below(source.name)
    less = [f"less the third harmonic of {', '.join(thirds)}, which is not known"] if thirds else []
    machine = source.record
    taken_off = isinstance(machine, Generator) and any(not_taken_off(machine))
    is_open = thirds or limits_open(source) or not source.share_said or taken_off
    found = figure(
        f"{item.key}.neutral-left",
        "Left in the neutral",
        not_more(ampere(value)) if is_open else ampere(value),
        working,
        caution=ELECTRICITY,
        note="; ".join([f"by its {limit.what}", *less]),
    )
    return found if is_open else turned_by(found, left_turning(source, limit, network))


def left_turning(source: Source, limit: Limit, network: Network) -> LeftInNeutralTurning:
    """What is left in a neutral by what it is made of."""
    return LeftInNeutralTurning(parts_on(source.name, network), limit.current_a * source.share)


def binding_figure(item: Item, source: Source, limit: Limit, network: Network) -> Iterator[Figure]:
    """
    From which third harmonic of an even load the neutral is full before the lines are; not told
    where nothing is free. Where a limit or a continuous share is open, that is what is missing.
    """
    key, label = f"{item.key}.neutral-binds", "Neutral binds from a third harmonic of"
    if unsaid := lacking_limits(source.name, network):
        neutral = Input("Neutral", f"{limit.current_a:.4g} A, by its {limit.what}")
        working = worked(third_harmonic_that_fills_neutral, inputs=[neutral])
        yield missing(key, label, working, unsaid, caution=ELECTRICITY)
        return
    free_a = max(0.0, min(network.standing[source.name].free_a))
    if free_a <= 0 or network.lacking_above(source.name):
        return
    left = left_a(source, limit, network)
    share = third_harmonic_that_fills_neutral(neutral_left_a=left, line_a=free_a)
    inputs = [
        Input("Left in the neutral", f"{left:.4g} A"),
        Input("Free on the fullest line", f"{free_a:.4g} A"),
    ]
    working = worked(
        third_harmonic_that_fills_neutral,
        inputs=inputs,
        steps=[f"{left:.4g} A / (3 × {free_a:.4g} A) = {share * 100:.3g} %"],
        leaves_out=LEAVES_OUT,
    )
    if share > 1:
        yield figure(key, label, Value("none: the lines bind first"), working, caution=ELECTRICITY)
    else:
        note = "of an even load that fills the lines"
        binds = figure(key, label, percent(share * 100), working, caution=ELECTRICITY, note=note)
        turning = BindsTurning(left_turning(source, limit, network), free_a)
        is_open = network.unknown_thirds_below(source.name)
        yield binds if is_open else turned_by(binds, turning)


def neutral_findings(source: Source, network: Network) -> Iterator[Finding]:
    """
    A neutral that the house's loads overload, one smaller than its lines, and a cable that third
    harmonics ask more of than its rating.
    """
    limit = neutral_of(source)
    if limit is None or len(source.phases) < 2:
        return
    total_a = network.standing[source.name].neutral.total_a
    hours_a = limit.current_a * source.share
    if total_a > limit.current_a + ROUNDING:
        sentence = (
            f"The neutral of {source.name} carries {total_a:.1f} A of standing loads, and it may"
            f" carry {limit.current_a:.4g} A ({limit.what})."
        )
        yield told(Level.DANGER, "neutral-over-rating", sentence, source.record)
    elif total_a > hours_a + ROUNDING:
        sentence = (
            f"The neutral of {source.name} carries {total_a:.1f} A of standing loads. For hours on"
            f" end it may carry {hours_a:.4g} A ({limit.what})."
        )
        yield told(Level.CAUTION, "neutral-over-continuous", sentence, source.record)
    if source.binding and limit.current_a < source.binding.current_a - ROUNDING:
        sentence = (
            f"The neutral of {source.name} may carry {limit.current_a:.4g} A, and each line"
            f" {source.binding.current_a:.4g} A. Single-phase loads on one line fill it before the"
            " line is full."
        )
        yield told(Level.CAUTION, "neutral-under-lines", sentence, source.record, "neutral_rating")
    yield from harmonics_over_cable(source, network)


def harmonics_over_cable(source: Source, network: Network) -> Iterator[Finding]:
    """
    Standing loads whose third harmonics ask a larger cable than the rating tells of, by the factors
    for cables of four or five cores.
    """
    stands = network.standing[source.name]
    sizes = phase_sizes(stands, source.phases)
    if (
        source.binding is None
        or len(sizes) < len(PHASES)
        or not fsum(sizes)
        or getattr(source.record, "feeder", None) is None
    ):
        return
    share = stands.neutral.third_harmonic_a / fsum(sizes)
    needed_a = cable_rating_with_third_harmonic_a(line_a=max(sizes), third_harmonic_share=share)
    if needed_a > source.binding.current_a + ROUNDING:
        sentence = (
            f"Standing loads on {source.name} draw up to {max(sizes):.1f} A a line with"
            f" {share * 100:.0f} % third harmonic. A feeder of four or five cores then needs a"
            f" rating of {needed_a:.1f} A, and {source.name} is rated"
            f" {source.binding.current_a:.4g} A."
        )
        yield told(Level.CAUTION, "harmonics-over-cable", sentence, source.record, "feeder")
