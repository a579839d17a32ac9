"""Whose hangs and loads have their place first, where the acts of a day share steel and power."""

from builder.fit.clock.acts import first_note
from builder.fit.records import RiderAsked


def turns_of(riders: list[RiderAsked]) -> list[int]:
    """
    The riders by their number: whose first note is the latest comes first, as a headliner's does.
    Where one tells no first note, or two tell the same, all stay in the order in which they were
    given.
    """
    given = list(range(len(riders)))
    notes: list[float] = []
    for rider in riders:
        clock = rider["clock"]
        note = None if clock is None else first_note(clock)
        if note is None or note in notes:
            return given
        notes.append(note)
    return sorted(given, key=lambda index: -notes[index])
