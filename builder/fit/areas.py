"""
Parts of the stage as a crew points at them, such as upstage left: whether something stands there,
by its place on the plan or by the part that the house names.
"""

from builder.fit.records import Section, Word
from builder.fit.verdicts import ASK, FITS, SHORT

UP = ("upstage", "downstage")
SIDE = ("left", "right", "centre")
OFF = "wing"
ELSEWHERE = ("pit", "audience", "balcony", "outside")
"""Parts of the house that are no part of the stage."""
CENTRE_SHARE = 6.0
"""The centre is the middle third: a sixth of the width to each side. Common practice, no source."""
OFF_EDGE_M = 2.0
"""What is farther in front of the deck than this is not on the stage. [m]"""


def words_in(area: str, words: tuple[str, ...]) -> str:
    """The one of some words that names a part of the stage, or nothing."""
    for word in area.split(" "):
        if word in words:
            return word
    return ""


def by_area(asked: str, there: str) -> Word:
    """Whether the part of the stage that the house names lies in the part that is asked for."""
    if asked == there:
        return FITS
    if there in ELSEWHERE:
        return SHORT
    open_in = 0
    for words in (UP, SIDE, (OFF,)):
        wanted, found = words_in(asked, words), words_in(there, words)
        if wanted != "" and found != "" and wanted != found:
            return SHORT
        if wanted != "" and found == "":
            open_in += 1
    return ASK if open_in > 0 else FITS


def by_place(asked: str, across_m: float, depth_m: float, stage: Section | None) -> Word:
    """Whether a place on the plan lies in a part of the stage, from the middle of the decks."""
    found = [by_side(asked, across_m, stage), by_depth(asked, depth_m, stage)]
    if words_in(asked, (OFF,)) != "":
        found.append(by_wing(across_m, stage))
    if SHORT in found:
        return SHORT
    return ASK if ASK in found else FITS


def by_side(asked: str, across_m: float, stage: Section | None) -> Word:
    """Whether something is on the side that is asked for."""
    side = words_in(asked, SIDE)
    if side == "left" or side == "right":
        return FITS if (across_m > 0) == (side == "left") else SHORT
    if side == "":
        return FITS
    corners_m = across_of_decks(stage)
    if len(corners_m) == 0:
        return ASK
    middle_m = (max(corners_m) + min(corners_m)) / 2
    third_m = (max(corners_m) - min(corners_m)) / CENTRE_SHARE
    return FITS if abs(across_m - middle_m) <= third_m else SHORT


def by_depth(asked: str, depth_m: float, stage: Section | None) -> Word:
    """Whether something is upstage or downstage of the middle, and not in front of the deck."""
    corners_m = depths_of_decks(stage)
    if len(corners_m) == 0:
        return ASK
    if depth_m < min(corners_m) - OFF_EDGE_M:
        return SHORT
    up = words_in(asked, UP)
    is_up = depth_m > (max(corners_m) + min(corners_m)) / 2
    return FITS if up == "" or is_up == (up == "upstage") else SHORT


def by_wing(across_m: float, stage: Section | None) -> Word:
    """Whether something is beside the deck."""
    corners_m = across_of_decks(stage)
    if len(corners_m) == 0:
        return ASK
    return FITS if across_m > max(corners_m) or across_m < min(corners_m) else SHORT


def across_of_decks(stage: Section | None) -> list[float]:
    """How far every corner of the decks is from the centre line. [m]"""
    return [corner[0] for corner in corners_of_decks(stage)]


def depths_of_decks(stage: Section | None) -> list[float]:
    """How far every corner of the decks is upstage of the reference line. [m]"""
    return [corner[1] for corner in corners_of_decks(stage)]


def corners_of_decks(stage: Section | None) -> list[tuple[float, float]]:
    """Every corner of the decks that somebody drew. [m]"""
    corners: list[tuple[float, float]] = []
    if stage is not None:
        for outline in stage["outlines"]:
            if outline["kind"] == "deck":
                corners.extend([(corner[0], corner[1]) for corner in outline["corners"]])
    return corners
