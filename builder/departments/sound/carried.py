"""Loudspeakers are no better than the hang of rigging.yml that carries them."""

from collections.abc import Mapping

from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import Hang
from builder.reading.absent import Absent
from builder.reading.references import spelling
from builder.reading.standing_on import CONDITIONS, OUT, UNKNOWN, hardest, state_words

CARRIER = "{hang}, which carries it, is {state}."


def as_carried(sound: Sound, states: Mapping[str, str]) -> Sound:
    """The same sound, with hangs out of service, or perhaps so, whose carrier is."""
    if isinstance(sound.hangs, Absent):
        return sound
    hangs = tuple(hang_as_carried(hang, states) for hang in sound.hangs)
    return sound if hangs == sound.hangs else sound.model_copy(update={"hangs": hangs})


def hang_as_carried(hang: Hang, states: Mapping[str, str]) -> Hang:
    """One hang; it says what carries it where that makes it worse."""
    if isinstance(hang.carried_by, Absent):
        return hang
    state = states.get(spelling(hang.carried_by), "")
    if state not in (OUT, UNKNOWN) or hardest([hang.condition, state], CONDITIONS) != state:
        return hang
    if hang.condition == state:
        return hang
    why = CARRIER.format(hang=hang.carried_by, state=state_words(state))
    note = f"{hang.note} {why}" if hang.note else why
    return hang.model_copy(update={"condition": state, "note": note})
