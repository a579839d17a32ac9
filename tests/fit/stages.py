"""Small stages and stage plots for tests by hand."""

from typing import Any

from builder.fit.interpreter import fit
from tests.fit.plot_pairs import box
from tests.fit.sample import RULES, Record, item, rider, value

DECK = box(-8.0, 8.0, 0.0, 10.0)


def outline(kind: str, name: str, corners: list[list[float]]) -> Record:
    """A shape on the plan."""
    return {"kind": kind, "name": name, "corners": corners}


def stage(
    *more: tuple[Record, list[list[float]]], deck: list[list[float]] = DECK, **values: Record
) -> Record:
    """A pack with a deck of 16 m by 10 m, 5 kPa and 500 kg, and more items with their outlines."""
    carries = {
        "load": value("5 kPa", 5000.0),
        "point_load": value("500 kg", 500.0),
        "clear_height": value("6 m", 6.0),
    }
    items = [item("deck", "Deck", **{**carries, **values}), *(each for each, _ in more)]
    outlines = [
        outline("deck", "Deck", deck),
        *(outline(each["kind"], each["name"], corners) for each, corners in more if corners),
    ]
    section = {
        "key": "stage",
        "title": "Stage",
        "cautions": ["Take care."],
        "outlines": outlines,
        "items": items,
    }
    return {
        "venue": "Hall",
        "revision": {"number": "1", "on": "2026-01-11"},
        "rules": RULES,
        "sections": [section],
        "spaces": [],
        "shared": [],
    }


def piece(
    name: str = "Riser",
    at: tuple[float, float] | None = (0.0, 5.0),
    size: tuple[float, float] = (2.0, 2.0),
    **more: Any,
) -> Record:
    """A rectangle of a plot, its centre and its size in metres."""
    blank = {
        "name": name,
        "line": 5,
        "need": f"{size[0]:g} m wide",
        "strictness": "must",
        "turned_deg": 0.0,
        "on": "",
        "lane": False,
        "around": "",
        "stays": "",
    }
    loads = {"height_m": None, "weight_kg": None, "foot_kg": None}
    place = {
        "across_m": at[0] if at else None,
        "upstage_m": at[1] if at else None,
        "width_m": size[0],
        "depth_m": size[1],
    }
    return {**blank, **loads, **place, **more}


def plot(*pieces: Record) -> Record:
    """A stage plot as a requirement."""
    blank = {
        "act": "Act",
        "line": 3,
        "sort": "plot",
        "department": "stage",
        "title": "Stage plot",
        "need": "x",
        "strictness": "must",
    }
    return {**blank, "carried": "house", "rectangles": list(pieces)}


def plotted(pack: Record, *pieces: Record, configuration: str = "") -> Record:
    """The verdict on a plot."""
    asked = rider(plot(*pieces), configuration=configuration)
    found: Record = fit(pack, [asked])["verdicts"][0]
    return found


def word(pack: Record, *pieces: Record) -> str:
    """The verdict's word."""
    return str(plotted(pack, *pieces)["verdict"])
