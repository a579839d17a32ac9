"""Whose hangs and loads have their place first, where the acts of a day share steel and power."""

from builder.fit.clock.acts import first_note, last_note
from builder.fit.records import RiderAsked


def turns_of(riders: list[RiderAsked]) -> list[int]:
    """
    The riders by their number, who plays last first, as a headliner does: by their last notes, or
    by their first where not all tell the last. Where these leave it open, all stay in the order in
    which they were given.
    """
    given = list(range(len(riders)))
    for notes in (last_notes(riders), first_notes(riders)):
        known_s = [note_s for note_s in notes if note_s is not None]
        if len(known_s) == len(riders) and is_each_another(known_s):
            return sorted(given, key=lambda index: -known_s[index])
    return given


def last_notes(riders: list[RiderAsked]) -> list[float | None]:
    """When the last note of each act ends, None where it does not tell. [s]"""
    return [None if rider["clock"] is None else last_note(rider["clock"]) for rider in riders]


def first_notes(riders: list[RiderAsked]) -> list[float | None]:
    """When the first note of each act is, None where it does not tell. [s]"""
    return [None if rider["clock"] is None else first_note(rider["clock"]) for rider in riders]


def is_each_another(notes_s: list[float]) -> bool:
    """Whether no two notes are at one time. [s]"""
    return all(notes_s.count(note_s) == 1 for note_s in notes_s)
