"""What a wished level says, and what it leaves out. Nothing of it is guessed."""

from builder.fit.levels.sentences import NO_METRIC, NO_PLACE, NO_TIME, NO_WEIGHTING
from builder.fit.records import LevelAsked, Section
from builder.fit.sections import items_of

EQUIVALENT = "equivalent level"
MIX_WORDS = (
    "mix position",
    "the mix position",
    "foh",
    "foh position",
    "front of house",
    "front-of-house",
)


def weighting(text: str) -> str:
    """The weighting that a level's words name: A, C, or none."""
    words = text.replace(" ", "")
    for letter in ("A", "C"):
        if words.find(f"dB({letter})") >= 0 or words.find(f"dB{letter}") >= 0:
            return letter
    return ""


def lacking(requirement: LevelAsked) -> list[str]:
    """What a wished level does not say."""
    lacks: list[str] = []
    if requirement["weighting"] == "":
        lacks.append(NO_WEIGHTING)
    if requirement["metric"] == "":
        lacks.append(NO_METRIC)
    if requirement["metric"] == EQUIVALENT and requirement["over_s"] is None:
        lacks.append(NO_TIME)
    if requirement["place"] == "":
        lacks.append(NO_PLACE)
    return lacks


def name_of_mix(sound: Section | None) -> str:
    """The house's own name of the mix position, in small letters."""
    for item in items_of(sound, "mix"):
        return item["name"].lower()
    return MIX_WORDS[0]


def is_mix(place: str, sound: Section | None) -> bool:
    """Whether a place is the mix position: by the house's own name, or as the trade calls it."""
    return names_mix(place, name_of_mix(sound))


def names_mix(place: str, mix: str) -> bool:
    """Whether a place is the one that a house calls ``mix`` in small letters."""
    return place_meant(place, mix) == MIX_WORDS[0]


def place_meant(place: str, mix: str) -> str:
    """A place in small letters; the mix position by whichever of its names."""
    name = place.lower()
    return MIX_WORDS[0] if name == mix or name in MIX_WORDS else name
