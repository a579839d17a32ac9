"""
What the house should know about its sound: what does not add up in the description.

What the field shows is found in ``coverage.py``.
"""

from collections.abc import Iterator, Mapping

from builder.confirming import odd
from builder.departments.sound.areas.ears import uneven
from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import Fill, Hang, Model, SubLine
from builder.departments.sound.description.placed import DrawnArea, KnownModel, is_drawn_area
from builder.departments.sound.hanging import (
    Models,
    every_model_of,
    hangs_of,
    lacking_weights,
    models_of,
)
from builder.exchange import Air
from builder.formulas.air import GREATEST_TEMPERATURE_C, LEAST_TEMPERATURE_C
from builder.formulas.areas import FLATNESS_M
from builder.pack import Finding, Level
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.quantities import Duration
from builder.stating import place

Part = Hang | SubLine | Fill
LONGEST_DELAY_S = 1.0
"""Longer than any system in one venue needs: 343 m of path."""
LEAST_HUMIDITY_PERCENT, GREATEST_HUMIDITY_PERCENT = 5.0, 99.0
OCTAVES_HZ = (63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0, 8000.0)
NARROW_FROM_HZ = 500.0
"""Below this a box of usual size covers so widely that nobody misses the maker's figure."""


def subs_of(sound: Sound) -> tuple[SubLine, ...]:
    """The sub lines that are described."""
    return () if isinstance(sound.subs, Absent) else sound.subs


def fills_of(sound: Sound) -> tuple[Fill, ...]:
    """The fills that are described."""
    return () if isinstance(sound.fills, Absent) else sound.fills


def findings(sound: Sound, air: Air | None) -> Iterator[Finding]:
    """Everything in the description that the house should look at."""
    models = models_of(sound)
    for hang in hangs_of(sound):
        yield from of_hang(hang, every_model_of(sound))
    for subs in subs_of(sound):
        yield from silent_subs(subs)
    for area in sound.audience:
        yield from bending(area) if is_drawn_area(area) else ()
    yield from long_delays(sound)
    yield from bands_not_given(sound, models)
    yield from drives(sound)
    yield from strange_air(air)


def of_hang(hang: Hang, models: Mapping[str, Model]) -> Iterator[Finding]:
    """A hang without boxes, with a splay that does not fit, or that nobody can weigh."""
    if hang.boxes == 0:
        yield Finding(
            Level.CAUTION,
            "hang-without-boxes",
            f"{hang.name} has no boxes. It is left out of every figure.",
            place=place(hang.where("boxes")),
        )
        return
    if isinstance(hang.boxes, Absent):
        return
    if is_unknown(hang.splay) or (hang.splay is Absent.NOT_STATED and hang.boxes > 1):
        yield Finding(
            Level.NOTE,
            "splay-unknown",
            f"The splay of {hang.name} is not known, so there are no maps and no levels yet.",
            place=place(hang.where("splay")),
        )
    elif not isinstance(hang.splay, Absent) and len(hang.splay) != hang.boxes - 1:
        wrong = len(hang.splay) - (hang.boxes - 1)
        mend = f"Take {wrong} out of splay" if wrong > 0 else f"Add {-wrong} to splay"
        sentence = (
            f"{hang.name} has {hang.boxes} boxes and {len(hang.splay)} splay angles. There should"
            f" be {hang.boxes - 1}, one between each box and the next. {mend}, or write boxes:"
            f" {len(hang.splay) + 1}. The maps do not contain this hang until they fit."
        )
        yield Finding(Level.CAUTION, "splay-mismatch", sentence, place=place(hang.where("splay")))
    model = models.get(hang.model)
    if model and (lacking := lacking_weights(hang, model)):
        yield Finding(
            Level.CAUTION,
            "hang-weight-incomplete",
            f"{hang.name} cannot be weighed: {' and '.join(lacking)} is not known, or one end"
            " of it alone.",
            place=place(hang.where("frame")),
        )


def silent_subs(subs: SubLine) -> Iterator[Finding]:
    """Subs of a line that do not play."""
    if isinstance(subs.out_of_service, Absent) or not isinstance(subs.count, int):
        return
    out = sorted(set(subs.out_of_service))
    if not out:
        return
    names = f"Sub {out[0]}" if len(out) == 1 else f"Subs {', '.join(map(str, out))}"
    verb = "is" if len(out) == 1 else "are"
    sentence = (
        f"{names} of {subs.name}, counted from stage right, {verb} out of service:"
        f" {subs.count - len(out)} of {subs.count} play. The maps and the figures of the arc are"
        " without what is silent."
    )
    yield Finding(
        Level.NOTE, "sub-out-of-service", sentence, place=place(subs.where("out_of_service"))
    )


def bending(area: DrawnArea) -> Iterator[Finding]:
    """A floor that bends: its corners do not lie on one slope."""
    if uneven(area):
        sentence = (
            f"The corners of {area.name} do not lie on one slope within {FLATNESS_M * 1000:g} mm."
            " Split the area where the floor bends. Until then it has no map."
        )
        yield Finding(Level.CAUTION, "area-uneven", sentence, place=place(area.where("corners")))


def long_delays(sound: Sound) -> Iterator[Finding]:
    """Delays longer than any path in a venue."""
    stated: list[tuple[Part, str, Duration | Absent | None]] = [
        (hang, "delay", hang.delay) for hang in hangs_of(sound)
    ]
    stated += [(subs, "delay", subs.delay) for subs in subs_of(sound)]
    stated += [(fill, "after", fill.after) for fill in fills_of(sound)]
    for part, key, delay in stated:
        if isinstance(delay, Duration) and delay.s > LONGEST_DELAY_S:
            yield odd(
                "delay-long",
                f"{part.name} has a delay of {delay.text}, which is {343 * delay.s:,.0f} m of"
                " path.",
                part.where(key),
                question=" Are these milliseconds?",
                asks_about=delay.text,
            )


def bands_not_given(sound: Sound, models: Models) -> Iterator[Finding]:
    """
    Octaves that a model plays and its maker gives no coverage for, where coverage is no longer all
    round.
    """
    used = {hang.model for hang in hangs_of(sound)} | {fill.model for fill in fills_of(sound)}
    for model in models.values():
        if model.name in used and (bands := lacking_bands_hz(model)):
            words = ", ".join(band_name(hertz) for hertz in bands)
            sentence = (
                f"{model.name} has no maker's coverage at {words}. The maps take the nearest stated"
                " band, or a piston as wide as the box."
            )
            yield Finding(
                Level.NOTE, "coverage-not-given", sentence, place=place(model.where("coverage"))
            )


def lacking_bands_hz(model: KnownModel) -> tuple[float, ...]:
    """The octaves within a model's range, from 500 Hz, that its maker gives no coverage for."""
    given = {entry.band.hz for entry in model.coverage}
    return tuple(
        hertz
        for hertz in OCTAVES_HZ
        if max(model.lowest.hz, NARROW_FROM_HZ) <= hertz <= model.highest.hz and hertz not in given
    )


def band_name(hertz: float) -> str:
    """An octave by its nominal middle, as people say it."""
    return f"{hertz / 1000:g} kHz" if hertz >= 1000 else f"{hertz:g} Hz"


def drives(sound: Sound) -> Iterator[Finding]:
    """Drive lines that feed something not described, and parts of the system that no line feeds."""
    if isinstance(sound.drive_lines, Absent):
        return
    parts: list[Part] = [*hangs_of(sound), *subs_of(sound), *fills_of(sound)]
    names = {part.name for part in parts} | {box.name for box in listed(sound.boxes)}
    fed = {name for line in sound.drive_lines for name in line.feeds}
    for line in sound.drive_lines:
        if strangers := sorted(set(line.feeds) - names):
            sentence = (
                f"The drive line {line.name} feeds {', '.join(strangers)}, which is not described"
                " as a hang, sub line, fill or boxes."
            )
            yield Finding(
                Level.CAUTION, "drive-feeds-nothing", sentence, place=place(line.where("feeds"))
            )
    for part in parts:
        if part.name not in fed and part.condition == "in service":
            yield Finding(
                Level.NOTE,
                "not-driven",
                f"No drive line feeds {part.name}. Say which does, or leave a note.",
                place=place(part.where("name")),
            )


def strange_air(air: Air | None) -> Iterator[Finding]:
    """Air for which the absorption formula does not hold."""
    if air is None:
        return
    if not LEAST_HUMIDITY_PERCENT <= air.humidity_percent <= GREATEST_HUMIDITY_PERCENT:
        sentence = (
            f"The house's air has {air.humidity_percent:g} % humidity, which no audience sits in."
            " Maps and delays need the usual value of a show."
        )
        yield Finding(Level.CAUTION, "air-implausible", sentence, "house.identity")
    elif not LEAST_TEMPERATURE_C <= air.temperature_c <= GREATEST_TEMPERATURE_C:
        sentence = (
            f"The house's air is {air.temperature_c:g} °C. The absorption of sound is only known"
            " from −20 to 50 °C."
        )
        yield Finding(Level.CAUTION, "air-implausible", sentence, "house.identity")
