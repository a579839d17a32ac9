"""
The ground of the laws of a whole house: a change of a venue's files, what its pack then promises,
and what each need of several shows is then told, each need by itself and each show as a whole.

Each need is judged by itself too, for what one need cannot have any more may become free for the
next, and a house fares best in another configuration where one is worse than before.
"""

import json
from collections.abc import Callable, Mapping
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from typing import Any

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack, RiderAsked
from builder.fit.verdicts import RANK
from builder.pack import Pack
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from tests.remembering import remember
from tests.sweep import composed, folder, riders

HOUSES = ("demo", "quarry")
Files = dict[str, Any]
Ends = tuple[float, float]
PROMISES = (
    "at_mix",
    "at-once",
    "can-send",
    "capacity_at_fork_end",
    "drop-left",
    "free",
    "free-kva",
    "free-least",
    "full-at-once",
    "left",
    "neutral-left",
    "playing",
    "room-above",
    "stations",
    "working-ways",
)
"""The figures that tell what is left, free, or how many there are."""
OF_LINES = ("pair", "stage-to-mix", "reaching")
"""The items whose every figure counts lines."""
HAIR = 1e-9
UNKNOWN = -1.0


@dataclass(frozen=True, slots=True)
class Change:
    """A change of one file of a house."""

    house: str
    file: str
    what: str
    make: Callable[[Any], None]

    def __str__(self) -> str:
        return f"{self.house}/{self.file} {self.what}"


def files_with(change: Change) -> Files:
    """The house's files with the change made."""
    data = deepcopy(composed(change.house)[change.file])
    change.make(data)
    return {**composed(change.house), change.file: data}


def pack_with(change: Change) -> Pack | None:
    """The pack of a changed house; None where the change cannot be read."""
    try:
        return pack_of_files(change.house, files_with(change))
    except Refused:
        return None


def pack_of_files(house: str, files: Files) -> Pack:
    """The pack of a house's data. What is unchanged is not computed again."""
    there = folder(house)
    texts = {
        file: there.texts[file]
        if data == composed(house)[file]
        else json.dumps(data, indent=1, ensure_ascii=False)
        for file, data in files.items()
    }
    remember()
    return pack_of(venue_of(texts, there.photos))


@cache
def unchanged_pack(house: str) -> Pack:
    """The pack of a house as it is, computed once a process."""
    return pack_of(venue_of(folder(house).texts, folder(house).photos))


def promises(pack: Pack) -> dict[str, Ends]:
    """What each figure of what is left, free or how many is at least and at most."""
    return {
        figure.key: figure_ends(figure.value)
        for section in pack.sections
        for item in section.items
        for figure in item.figures
        if is_promise(item.kind, figure.key[len(item.key) + 1 :])
    }


def is_promise(kind: str, name: str) -> bool:
    """Whether a figure promises something."""
    return kind in OF_LINES or name.split(".")[0] in PROMISES


def figure_ends(value: Any) -> Ends:
    """A value's ends; next to nothing where it is not known."""
    low, high = value.ends if value else (None, None)
    return (UNKNOWN if low is None else low, UNKNOWN if high is None else high)


def raised(before: Mapping[str, Ends], after: Mapping[str, Ends]) -> list[str]:
    """The promises that became more."""
    return [
        f"{key}: {before[key]} -> {ends}"
        for key, ends in after.items()
        if key in before and is_more(before[key], ends)
    ]


def is_more(before: Ends, after: Ends) -> bool:
    """Whether either end is higher than it was. What was unknown at the top had no end there."""
    (low, high), (new_low, new_high) = before, after
    if new_low > max(low, 0.0) + hair(low):
        return True
    return high != UNKNOWN and new_high > high + hair(high)


def hair(number: float) -> float:
    """What rounding may do to a number."""
    return HAIR * max(1.0, abs(number))


Need = tuple[str, int, str]
LITTLE, MUCH = "Small Hours", "Long Reach"
"""The acts that ask a little of everything, and a little more than there is."""


def answers(record: FitPack) -> dict[Need, str]:
    """The verdicts on all shows."""
    return answers_of(record, riders())


def answers_of(record: FitPack, shows: tuple[RiderAsked, ...]) -> dict[Need, str]:
    """
    The verdict on some shows as a whole, and of those that ask all that can be asked the one on
    each need by itself.
    """
    found: dict[Need, str] = {}
    for show in shows:
        found[show["act"], -1, "as a whole"] = fit(record, [show])["verdict"]
        for number, need in enumerate(show["requirements"]):
            if show["act"] in (LITTLE, MUCH):
                alone: RiderAsked = {**show, "requirements": [need]}
                verdict = fit(record, [alone])["verdicts"][0]["verdict"]
                found[show["act"], number, need["title"]] = verdict
    return found


@cache
def usual_answers(house: str) -> Mapping[Need, str]:
    """The verdicts on a house as it is."""
    return answers(fit_record(unchanged_pack(house)))


@cache
def usual_promises(house: str) -> Mapping[str, Ends]:
    """What a house as it is promises."""
    return promises(unchanged_pack(house))


def better(before: Mapping[Need, str], after: Mapping[Need, str]) -> list[str]:
    """The verdicts that became better; a note that is gone makes none better."""
    return [
        f"{need}: {before[need]} -> {word}"
        for need, word in after.items()
        if RANK[plain(word)] < RANK[plain(before[need])]
    ]


def other(before: Mapping[Need, str], after: Mapping[Need, str]) -> list[str]:
    """The verdicts that became others, notes aside."""
    return [
        f"{need}: {was} -> {word}"
        for (need, word), was in zip(after.items(), before.values(), strict=True)
        if plain(word) != plain(was)
    ]


def plain(word: str) -> str:
    """A fit, with or without a note."""
    return "fits" if word.startswith("fits") else word
