"""
What is left of a limit on the equivalent level, and what a level does to the ears of those who work
in it.
"""

from collections.abc import Iterator, Sequence
from math import floor

from builder.cautions import NOISE
from builder.departments.sound.description.positions import ClaimedLevel
from builder.exchange import SoundLimit
from builder.fit.levels.wish import names_mix
from builder.formulas.levels import (
    NIOSH,
    OSHA,
    NoiseCriterion,
    allowed_hours,
    noise_dose_percent,
    remaining_level_db,
)
from builder.pack import Figure, Input, Item, Value
from builder.reading.absent import is_unknown
from builder.reading.in_part import as_written
from builder.reading.quantities import Level
from builder.working import figure, missing, worked

SHARES = (1 / 6, 1 / 3, 1 / 2, 3 / 4)
"""When one looks at the meter: of an hour, after 10, 20, 30 and 45 minutes."""
OVER_DB = (1, 3)
CRITERIA = (("niosh", "85 dB(A), 3 dB", NIOSH), ("osha", "90 dB(A), 5 dB", OSHA))
WORKED_HOURS = 2.0


def budget_items(limits: Sequence[SoundLimit]) -> Iterator[Item]:
    """
    For each limit on an equivalent level: what the rest of its time may hold after a stretch above
    it.
    """
    for number, limit in enumerate(limits, 1):
        if limit.metric != "equivalent level" or limit.over_min <= 0:
            continue
        for share in SHARES:
            key, gone_min = f"sound.budget.{number}-{share * 100:.0f}", share * limit.over_min
            figures = tuple(budget_figure(limit, over_db, gone_min, key) for over_db in OVER_DB)
            yield Item(
                key=key,
                kind="budget",
                name=f"{limit.name}, {written(limit)}: after {gone_min:.3g} min",
                figures=figures,
            )


def written(limit: SoundLimit) -> str:
    """A limit as it is said."""
    return f"{limit.level_db:g} {unit(limit.weighting)} over {limit.over_min:g} min"


def unit(weighting: str) -> str:
    """The unit of a weighted level."""
    return f"dB({weighting})" if weighting else "dB"


def budget_figure(limit: SoundLimit, over_db: int, gone_min: float, key: str) -> Figure:
    """The level left for the rest of the time, after so long at so much above the limit."""
    left_db = remaining_level_db(
        limit_db=limit.level_db,
        period_min=limit.over_min,
        level_so_far_db=limit.level_db + over_db,
        elapsed_min=gone_min,
    )
    work = worked(
        remaining_level_db,
        inputs=budget_inputs(limit, over_db, gone_min),
        steps=(budget_step(limit, over_db, gone_min, left_db),),
        leaves_out="A limit that rolls on: there every stretch of that length counts.",
    )
    value = (
        Value("nothing")
        if left_db is None
        else Value(f"{left_db:.1f} {unit(limit.weighting)}", number=left_db, unit="dB")
    )
    label = f"At {over_db} dB above, left for the rest"
    return figure(f"{key}.plus_{over_db}", label, value, work, caution=NOISE)


def budget_inputs(limit: SoundLimit, over_db: int, gone_min: float) -> tuple[Input, ...]:
    """The limit, and what was played of its time at which level."""
    return (
        Input("L_lim", f"{limit.level_db:g} {unit(limit.weighting)}"),
        Input("T", f"{limit.over_min:g} min"),
        Input("L_eq so far", f"{limit.level_db + over_db:g} {unit(limit.weighting)}"),
        Input("t", f"{gone_min:.3g} min"),
    )


def budget_step(limit: SoundLimit, over_db: int, gone_min: float, left_db: float | None) -> str:
    """How long at the limit's own level is left, and the level that fills the rest with it."""
    rest_min = limit.over_min - gone_min
    left_min = limit.over_min - gone_min * 10 ** (over_db / 10)
    minutes = (
        f"At the limit's level, {limit.over_min:g} − {gone_min:.3g} × 10^({over_db}/10) ="
        f" {left_min:.2f} min are left for {rest_min:.3g} min."
    )
    if left_db is None:
        return minutes
    spread = f"{limit.level_db:g} + 10 lg({left_min:.2f}/{rest_min:.3g}) = {left_db:.1f}"
    return f"{minutes} {spread}"


def dose_items(
    claims: Sequence[ClaimedLevel], limits: Sequence[SoundLimit], mix_place: str
) -> Iterator[Item]:
    """What the levels claimed or allowed at the mix position mean for whoever works there."""
    heard: list[tuple[str, float | None]] = [
        claimed(claim) for claim in claims if may_be_dba(claim) and at_mix(claim, mix_place)
    ]
    heard += [
        (f"{limit.name}: {written(limit)}", limit.level_db)
        for limit in limits
        if limit.weighting == "A"
        and limit.metric == "equivalent level"
        and names_mix(limit.measured_at, mix_place.lower())
    ]
    for number, (name, level_dba) in enumerate(heard, 1):
        key = f"sound.dose.{number}"
        figures = lacking_dose(key) if level_dba is None else dose_figures(level_dba, key)
        yield Item(key=key, kind="dose", name=name, figures=tuple(figures))


def may_be_dba(claim: ClaimedLevel) -> bool:
    """Whether a claim is A-weighted, or may be, for nobody knows it."""
    return not isinstance(claim.level, Level) or claim.level.weighting == "A"


def claimed(claim: ClaimedLevel) -> tuple[str, float | None]:
    """
    A claim in words with its level, None where there is no one level, or nobody knows whether it is
    an equivalent level there. [dB(A)]
    """
    if isinstance(claim.level, Level):
        is_sure = not (is_unknown(claim.metric) or is_unknown(claim.at))
        return f"Claimed: {claim.level.text}", claim.level.db if is_sure else None
    return f"Claimed: {as_written(claim.level)}", None


def lacking_dose(key: str) -> Iterator[Figure]:
    """That nothing is told of a dose without a level."""
    for name, words, _ in CRITERIA:
        work, label = worked(allowed_hours, inputs=()), f"Day's dose full after, {words}"
        lacks = ("an equivalent level known to be at the mix position",)
        yield missing(f"{key}.{name}", label, work, lacks, caution=NOISE)


def at_mix(claim: ClaimedLevel, mix_place: str) -> bool:
    """
    Whether a claim is an equivalent level at the mix position, or may be, for nobody knows it: no
    other can be a dose there.
    """
    may_be_mean = claim.metric == "equivalent level" or is_unknown(claim.metric)
    return may_be_mean and (claim.at == mix_place or is_unknown(claim.at))


DOSE_LEAVES_OUT = (
    "Hearing protection, breaks, and the rest of the day. Which criterion holds is said by the"
    " local law."
)


def dose_figures(level_dba: float, key: str) -> Iterator[Figure]:
    """By each criterion: after how long a day's dose is full, and what two hours fill."""
    for name, words, criterion in CRITERIA:
        yield full_figure(f"{key}.{name}", words, level_dba, criterion)
        yield two_hours_figure(f"{key}.{name}_two_hours", words, level_dba, criterion)


def full_figure(key: str, words: str, level_dba: float, criterion: NoiseCriterion) -> Figure:
    """After how long at a level a day's dose is full."""
    hours = allowed_hours(level_dba, criterion)
    step = (
        f"8 h / 2^(({level_dba:g} − {criterion.level_dba:g}) / {criterion.exchange_db:g}) ="
        f" {hours:.3g} h"
    )
    work = worked(
        allowed_hours,
        inputs=criterion_inputs(level_dba, criterion),
        steps=(step,),
        leaves_out=DOSE_LEAVES_OUT,
    )
    # Rounded down: a time that someone may work must not grow by rounding.
    text = f"{floor(hours * 60)} min" if hours < 2 else f"{floor(hours * 10) / 10:.1f} h"
    value = Value(text, number=hours * 3600, unit="s")
    return figure(key, f"Day's dose full after, {words}", value, work, caution=NOISE)


def two_hours_figure(key: str, words: str, level_dba: float, criterion: NoiseCriterion) -> Figure:
    """How much of a day's dose two hours at a level fill."""
    hours = allowed_hours(level_dba, criterion)
    dose = noise_dose_percent([(level_dba, WORKED_HOURS)], criterion)
    inputs = (
        *criterion_inputs(level_dba, criterion),
        Input("Time at work", f"{WORKED_HOURS:g} h"),
    )
    work = worked(
        noise_dose_percent,
        inputs=inputs,
        steps=(f"100 × {WORKED_HOURS:g} h / {hours:.3g} h = {dose:.0f} %",),
        leaves_out=DOSE_LEAVES_OUT,
    )
    value = Value(f"{dose:.0f} %", number=dose / 100, unit="1")
    return figure(key, f"{WORKED_HOURS:g} h fill, {words}", value, work, caution=NOISE)


def criterion_inputs(level_dba: float, criterion: NoiseCriterion) -> tuple[Input, ...]:
    """What a dose is counted from."""
    return Input("Level at the ear", f"{level_dba:g} dB(A)"), Input(
        "Criterion", f"{criterion.name}: {criterion.level_dba:g} dB(A) over 8 h"
    )
