"""A position on the globe as navigators take it: `54.0000 N, 8.2000 E`, or with minus signs."""

import re

_PART = re.compile(
    r"(?P<before>[NSEW])?\s*(?P<degrees>-?\d+(?:\.\d+)?)\s*°?"
    r"(?:\s*(?P<minutes>\d+(?:\.\d+)?)\s*['′])?"
    r"(?:\s*(?P<seconds>\d+(?:\.\d+)?)\s*[\"″])?"
    r"\s*(?P<after>[NSEW])?\b",
    re.IGNORECASE,
)
MOST = {"latitude": 90.0, "longitude": 180.0}


def beyond_globe(text: str) -> str:
    """
    Why a position is nowhere on earth; empty where it is somewhere, or cannot be read.

    Words are not positions: where a text does not hold two numbers, nothing is said.
    """
    parts = [match for match in _PART.finditer(text) if match["degrees"]]
    if len(parts) != 2:
        return ""
    for number, part in enumerate(parts):
        sign = (part["after"] or part["before"] or "NE"[number]).upper()
        which = "latitude" if sign in "NS" else "longitude"
        degrees = abs(float(part["degrees"]))
        for name, whole in (("minutes", "degree"), ("seconds", "minute")):
            if part[name] and float(part[name]) >= 60:
                return f"{part[name]} {name} are more than a {whole} has"
        degrees += float(part["minutes"] or 0) / 60 + float(part["seconds"] or 0) / 3600
        if degrees > MOST[which]:
            return f"{which} ends at {MOST[which]:g} degrees"
    return ""
