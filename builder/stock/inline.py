"""Edits within brackets: `{name: A, count: 2}` and `[7, 9]`."""

from builder.stock.splice import Splice
from builder.stock.spots import Spot
from builder.stock.wording import Data, written


def inline_part(found: Spot, after: int, part: str) -> Splice:
    """A part added behind the one numbered ``after``; first where that is -1."""
    if not found.parts:
        return Splice(found.start + 1, "", part)
    if after < 0:
        return Splice(found.starts()[0], "", f"{part}, ")
    return Splice(found.parts[after].end, "", f", {part}")


def appended_inline(value: Data) -> str:
    """A value as an entry of a list in brackets."""
    return written(value, flow=True)


def without_inline(text: str, found: Spot, place: int) -> Splice:
    """
    A part taken out with the comma that divided it from its neighbour.

    Where the brackets run over lines, the other lines stay.
    """
    starts, ends = found.starts(), [part.end for part in found.parts]
    start, end = starts[place], ends[place]
    if place and "\n" not in text[ends[place - 1] : start]:
        start = ends[place - 1]
    elif place + 1 < len(starts):
        end = (
            starts[place + 1]
            if "\n" not in text[end : starts[place + 1]]
            else past_comma(text, end)
        )
    return Splice(start, text[start:end], "")


def past_comma(text: str, position: int) -> int:
    """Behind the comma that follows a value, where one follows on its line."""
    rest = text[position:].lstrip(" ")
    return len(text) - len(rest) + 1 if rest.startswith(",") else position
